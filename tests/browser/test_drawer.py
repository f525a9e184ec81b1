"""The adviser's drawer: change facts, undo, go back; nobody else sees it."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.chromium import open_page, settled

pytestmark = pytest.mark.browser


def open_drawer(page: Page) -> None:
    page.get_by_role("button", name="Facts of this home").click()
    expect(page.get_by_role("dialog")).to_be_visible()


def work_again(page: Page, said: str) -> None:
    page.get_by_role("button", name="Work it out again").click()
    expect(page.locator("#said")).to_contain_text(said)


def test_a_changed_fact_changes_the_page_and_can_be_taken_back(page: Page) -> None:
    before = page.locator("#now").inner_text()
    open_drawer(page)
    page.locator("#fact-day").fill("68 F")
    work_again(page, "Worked out again")
    expect(page.locator("#now")).not_to_have_text(before)
    changed = page.locator("#now").inner_text()
    assert changed in page.locator("#said").inner_text()
    assert before in page.locator("#said").inner_text()
    expect(page.locator("#fact-day")).to_have_value("68 F")
    page.get_by_role("button", name="Undo the last change").click()
    expect(page.locator("#now")).to_have_text(before)
    expect(page.get_by_role("button", name="Undo the last change")).to_be_disabled()
    page.locator("#fact-day").fill("68 F")
    work_again(page, changed)
    page.get_by_role("button", name="Back to the case as opened").click()
    expect(page.locator("#now")).to_have_text(before)
    settled(page)


def test_a_wrong_value_is_explained_and_nothing_is_lost(page: Page) -> None:
    before = page.locator("#now").inner_text()
    open_drawer(page)
    page.locator("#fact-day").fill("fish")
    page.locator("#fact-attic").fill("R-38")
    page.locator("#fact-leakage").fill("very")
    work_again(page, "Nothing was changed.")
    faults = page.locator("#faults")
    expect(faults.locator("li")).to_have_count(2)
    expect(faults).to_contain_text("Thermostat now, by day: ")
    expect(faults).to_contain_text("fish")
    expect(faults).to_contain_text("Air leakage of the house: ")
    expect(page.locator("#fact-day")).to_have_value("fish")
    expect(page.locator("#fact-attic")).to_have_value("R-38")
    expect(page.locator("#fact-day")).to_have_attribute("aria-invalid", "true")
    assert page.locator("#now").inner_text() == before
    page.locator("#fact-day").fill("")
    page.locator("#fact-leakage").fill("")
    work_again(page, "Worked out again")
    expect(faults).to_be_empty()
    expect(page.locator("#fact-attic")).to_have_value("R-38")
    settled(page)


def test_what_one_visitor_changes_no_other_sees(page: Page, browser: Browser, address: str) -> None:
    before = page.locator("#now").inner_text()
    open_drawer(page)
    page.locator("#fact-price").fill("0.30 $/kWh")
    work_again(page, "Worked out again")
    expect(page.locator("#now")).not_to_have_text(before)
    changed = page.locator("#now").inner_text()
    settled(page)
    other = browser.new_context()
    theirs = other.new_page()
    open_page(theirs, address)
    assert theirs.locator("#now").inner_text() == before
    other.close()
    page.reload()
    settled(page)
    expect(page.locator("#now")).to_have_text(changed)


def test_the_drawer_closes_by_key_and_gives_the_focus_back(page: Page) -> None:
    open_drawer(page)
    page.keyboard.press("Escape")
    expect(page.get_by_role("dialog")).to_be_hidden()
    expect(page.get_by_role("button", name="Facts of this home")).to_be_focused()
