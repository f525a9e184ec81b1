"""The report as one HTML file: alone, small, well formed, in order, and texts that stay texts."""

from __future__ import annotations

import re
import warnings
from dataclasses import replace
from xml.etree import ElementTree as ET

import html5lib

from costcompare.case import Case
from costcompare.comparison import Comparison
from costcompare.views import numbers
from costcompare.views.figures import look
from costcompare.views.report import report_html
from costcompare.views.wording.bill import bill_lines

XHTML = "{http://www.w3.org/1999/xhtml}"
HOSTILE = '</title><script>alert(1)</script><img src=x onerror=alert(1)> & "quoted"'


def parsed(page: str) -> ET.Element:
    """The page by the rules of the HTML standard; any fault in it is an error."""
    parser = html5lib.HTMLParser(strict=True)
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        found: ET.Element = parser.parse(page)
    return found


def words(element: ET.Element) -> str:
    return " ".join("".join(element.itertext()).split())


def test_it_is_well_formed_and_small(page: str) -> None:
    assert parsed(page).get("lang") == "en"
    assert len(page.encode()) < 300_000


def test_nothing_comes_from_elsewhere(page: str) -> None:
    plain = page.replace("http://www.w3.org/2000/svg", "")
    assert "://" not in plain
    assert not re.search(r"\b(src|href)=", plain)
    assert "url(" not in plain
    assert "<script" not in plain
    assert "@import" not in plain


def test_headings_come_in_order(page: str) -> None:
    levels = [
        int(element.tag[-1])
        for element in parsed(page).iter()
        if re.fullmatch(rf"{XHTML}h\d", str(element.tag))
    ]
    assert levels == [1] + [2] * 8


def test_tables_have_captions_and_heads_and_drawings_have_titles(page: str) -> None:
    root = parsed(page)
    tables = list(root.iter(f"{XHTML}table"))
    assert len(tables) == 6
    for table in tables:
        caption = table.find(f"{XHTML}caption")
        assert caption is not None
        assert words(caption)
        heads = [th.get("scope") for th in table.iter(f"{XHTML}th")]
        assert "col" in heads
        assert "row" in heads
    for svg in root.iter("{http://www.w3.org/2000/svg}svg"):
        title = svg.find("{http://www.w3.org/2000/svg}title")
        assert svg.get("aria-hidden") == "true" or (title is not None and words(title))


def test_identities_are_used_once(page: str) -> None:
    found = re.findall(r'\bid="([^"]+)"', page)
    assert len(found) == len(set(found))


def test_colours_follow_the_light(page: str) -> None:
    assert "prefers-color-scheme: dark" in page
    assert "@media print" in page
    body = page.split("</style>", 1)[1]
    assert f'"{look.NOW}"' not in body
    assert "var(--now)" in body
    for name in set(re.findall(r"var\(--(\w+)\)", body)):
        assert page.split("</style>", 1)[0].count(f"--{name}:") == 3, name


def test_it_holds_the_figures_of_the_result(page: str, comparison: Comparison) -> None:
    text = words(parsed(page))
    for choice in comparison.choices:
        assert numbers.dollars_a_year(choice.annual.bill_usd) in text
    for line in bill_lines(comparison):
        assert numbers.dollars(line.usd) in text
    for caution in comparison.cautions:
        assert " ".join(caution.because.split()) in text


def test_a_hostile_title_is_shown_as_text(comparison: Comparison, demo: Case) -> None:
    page = report_html(replace(comparison, title=HOSTILE), demo)
    root = parsed(page)
    assert not list(root.iter(f"{XHTML}script"))
    assert not list(root.iter(f"{XHTML}img"))
    heading = next(root.iter(f"{XHTML}h1"))
    assert words(heading) == HOSTILE


def test_a_stretched_home_is_whole(stretched: Comparison, demo: Case) -> None:
    page = report_html(stretched, demo)
    assert len(page.encode()) < 300_000
    text = words(parsed(page))
    assert all(room.name in text for room in stretched.today.rooms)
