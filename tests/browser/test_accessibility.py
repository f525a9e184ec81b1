"""Nothing on the page that axe-core knows to be an obstacle (WCAG 2.2 AA, best practice)."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser

AXE = Path(__file__).with_name("axe.min.js").read_text(encoding="utf-8")
RULES = "{runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice']}"
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
    for summary in page.locator("summary").all():
        summary.click()
    assert obstacles(page) == []


def test_nor_with_the_drawer_open(page: Page) -> None:
    page.get_by_role("button", name="Facts of this home").click()
    expect(page.get_by_role("dialog")).to_be_visible()
    page.locator("#fact-day").fill("fish")
    page.get_by_role("button", name="Work it out again").click()
    expect(page.locator("#faults")).to_contain_text("fish")
    assert obstacles(page) == []


def test_every_chart_says_in_words_what_it_shows(page: Page) -> None:
    for figure in page.locator("figure").all():
        name = figure.get_attribute("aria-label") or ""
        assert any(letter.isdigit() for letter in name), name


def test_fingers_find_everything(page: Page) -> None:
    for target in page.locator("button:visible, summary, .contents a, #choice").all():
        box = target.bounding_box()
        assert box is not None
        assert box["height"] >= SMALLEST_TARGET_PX, target.inner_text()
