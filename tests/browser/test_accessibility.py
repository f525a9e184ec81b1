"""Nothing on the page that axe-core knows to be an obstacle (WCAG 2.2 AA, best practice)."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.chromium import SIZES, answer, open_form

pytestmark = pytest.mark.browser

AXE = Path(__file__).with_name("axe.min.js").read_text(encoding="utf-8")
RULES = """{
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'],
  resultTypes: ['violations'],
}"""
"""Every rule is checked; only violations are written down place by place, which takes most time"""
SMALLEST_TARGET_PX = 44


def obstacles(page: Page) -> list[str]:
    """Every violation with the first place where it was found."""
    page.evaluate(AXE)
    found = page.evaluate(f"axe.run(document, {RULES})")
    assert len(found["passes"]) > 20
    return [
        f"{violation['id']}: {violation['nodes'][0]['html'][:200]}"
        for violation in found["violations"]
    ]


def test_the_page_has_no_obstacles(page: Page) -> None:
    assert obstacles(page) == []


def test_nor_with_every_table_open(page: Page) -> None:
    for summary in page.locator("summary:visible").all():
        summary.click()
    assert obstacles(page) == []


@pytest.mark.parametrize("size", ["phone", "laptop"])
def test_nor_with_the_form_open_and_an_answer_wrong(page: Page, size: str) -> None:
    width, height = SIZES[size]
    page.set_viewport_size({"width": width, "height": height})
    open_form(page)
    for line in page.locator("#visit-form details > summary").all():
        line.evaluate("line => { line.parentElement.open = true; }")
    answer(page, "thermostat-day", "fish")
    expect(page.locator("#ask-thermostat-day-wrong")).to_contain_text("fish")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert page.locator("#visit").evaluate("it => it.scrollWidth <= it.clientWidth")
    assert obstacles(page) == []


def test_every_chart_says_in_words_what_it_shows(page: Page) -> None:
    for figure in page.locator("figure:visible").all():
        name = figure.get_attribute("aria-label") or ""
        assert any(letter.isdigit() for letter in name), name


def test_fingers_find_everything(page: Page) -> None:
    open_form(page)
    for stop in ("place", "rooms", "options"):
        page.locator(f"#stop-{stop} > summary").click()
    # All at one moment: what the page draws anew in between is not missed half way.
    small = page.evaluate(
        """least => [...document.querySelectorAll(
             'button, summary, .contents a, #choice, #visit input, #visit select')]
           .filter(it => it.checkVisibility({ visibilityProperty: true }))
           .map(it => [it.outerHTML.slice(0, 120), it.getBoundingClientRect().height])
           .filter(([, height]) => height < least)""",
        SMALLEST_TARGET_PX,
    )
    assert small == []
