"""The HTML report opened from a disk with no network: readable, quiet, free of obstacles."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from costcompare.case import example_path, read_case
from costcompare.comparing import TODAY, compare
from costcompare.thermostat import sweep
from costcompare.views.report import report_html, tried_settings
from tests.browser.chromium import SIZES
from tests.browser.conftest import Heard
from tests.browser.test_accessibility import obstacles

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    case = read_case(example_path("demo"))
    name = case.options[0].name
    settings = tried_settings(case.home.thermostat.wanted)
    swept = sweep(case, settings, only={TODAY, name})
    made = report_html(compare(case), case, option=name, sweep=swept, made_on=date(2027, 1, 15))
    path = tmp_path_factory.mktemp("left") / "report.html"
    path.write_text(made, encoding="utf-8")
    return path


@pytest.fixture(params=["light", "dark"])
def left(
    request: pytest.FixtureRequest, browser: Browser, file: Path, heard: Heard
) -> Iterator[Page]:
    context = browser.new_context(color_scheme=request.param, offline=True)
    opened = context.new_page()
    heard.listen(opened)
    opened.goto(file.as_uri())
    yield opened
    context.close()
    assert heard.messages == []
    assert heard.hosts <= {"-"}


@pytest.mark.parametrize("size", SIZES)
def test_it_fits_every_screen_and_has_no_obstacles(left: Page, size: str) -> None:
    width, height = SIZES[size]
    left.set_viewport_size({"width": width, "height": height})
    assert left.evaluate("document.documentElement.scrollWidth") <= width
    assert obstacles(left) == []


def test_letters_in_drawings_stand_out_from_what_is_behind_them(left: Page) -> None:
    """Axe does not look at drawings: their text against the card, WCAG 2.2 at 4.5 to 1."""
    card = left.evaluate("getComputedStyle(document.querySelector('.part')).backgroundColor")
    fills = left.evaluate(
        "[...document.querySelectorAll('svg text')].map(text => getComputedStyle(text).fill)"
    )
    assert fills
    assert min(contrast(fill, card) for fill in set(fills)) >= 4.5


def contrast(first: str, second: str) -> float:
    """Contrast of two colours written as ``rgb(r, g, b)`` (WCAG 2.2, relative luminance)."""
    light, dark = sorted((luminance(first), luminance(second)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def luminance(colour: str) -> float:
    parts = [int(part) / 255.0 for part in colour.removeprefix("rgb(").rstrip(")").split(",")]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
