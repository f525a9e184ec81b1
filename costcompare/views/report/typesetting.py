"""Documents as tagged PDF, the same bytes on every machine.

Fonts come with the program, no date is taken from the clock, and all texts reach the
typesetter as data, so that nothing in them is ever read as markup.
"""

from __future__ import annotations

import json
from datetime import date
from functools import cache
from importlib.resources import as_file, files
from typing import Any, Literal

import typst

from costcompare.comparison import as_document
from costcompare.views.report.letters import showable
from costcompare.views.report.pieces import Document

STANDARD: Literal["ua-1"] = "ua-1"
"""PDF/UA-1, ISO 14289-1: tagged, every picture with words for those who do not see it"""
SCALES = tuple(round(1.0 - 0.02 * step, 2) for step in range(13))
"""Sizes that are tried, the largest first, until the document fits"""
LARGER = (1.08, 1.06, 1.04, 1.02)
"""Sizes for what fits at 1 and has room left; at 1.06 the text of a report is 9 pt"""


@cache
def _fonts() -> typst.Fonts:
    """The fonts that come with the program, and no others."""
    with as_file(files("costcompare.data") / "fonts") as folder:
        return typst.Fonts(include_system_fonts=False, font_paths=[folder])


def pdf(document: Document, *, made_on: date | None = None, pages: int = 2) -> bytes:
    """The document on so many pages, or as few as the smallest type allows.

    ``made_on`` is written into the file; without it the file has no date.
    """
    compiler = _fitted(document, made_on, pages)
    made = compiler.compile(_template(), format="pdf", pdf_standards=[STANDARD])
    assert isinstance(made, bytes)
    return made


def pictures(document: Document, *, ppi: float = 72.0, pages: int = 2) -> list[bytes]:
    """The same pages as PNG pictures, ``ppi`` dots an inch."""
    made = _fitted(document, None, pages).compile(_template(), format="png", ppi=ppi)
    return made if isinstance(made, list) else [made] if made is not None else []


def _fitted(document: Document, made_on: date | None, pages: int) -> typst.Compiler:
    """The compiler at the largest type that fits."""
    day = made_on and {"year": made_on.year, "month": made_on.month, "day": made_on.day}
    text = json.dumps(_shown(as_document(document) | {"made_on": day}))
    tried: list[tuple[int, typst.Compiler]] = []
    for scale in SCALES:
        compiler = _compiler(text, scale)
        tried.append((_pages(compiler), compiler))
        if tried[-1][0] <= pages:
            break
    if len(tried) == 1:
        # It takes no page more than it did, and type as large as those pages hold.
        larger = (_compiler(text, scale) for scale in LARGER)
        return next((one for one in larger if _pages(one) == tried[0][0]), tried[0][1])
    # Where nothing fits, the largest type of those that take the fewest pages.
    return min(tried, key=lambda one: one[0])[1]


def _compiler(text: str, scale: float) -> typst.Compiler:
    return typst.Compiler(
        _template(), font_paths=_fonts(), sys_inputs={"document": text, "scale": str(scale)}
    )


def _template() -> bytes:
    return (files(__package__) / "templates" / "document.typ").read_bytes()


def _pages(compiler: typst.Compiler) -> int:
    return int(json.loads(compiler.query("<pages>", field="value", one=True)))


def _shown(value: Any) -> Any:
    """Every text without letters that the fonts lack."""
    if isinstance(value, str):
        return showable(value)
    if isinstance(value, dict):
        return {key: _shown(item) for key, item in value.items()}
    return [_shown(item) for item in value] if isinstance(value, list) else value
