"""Family, adviser and contractor: what each sees, and what is left on the table."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from pypdf import PdfReader

from tests.browser.chromium import answer, open_form, open_page
from tests.browser.test_accessibility import obstacles

pytestmark = pytest.mark.browser


def test_the_family_sees_no_form(page: Page, address: str) -> None:
    page.set_viewport_size({"width": 1280, "height": 800})  # the form stands beside the page
    open_form(page)
    page.get_by_role("link", name="Family").click()
    expect(page.locator("#visit")).to_be_hidden()
    expect(page.locator("#open-facts")).to_be_hidden()
    expect(page.get_by_role("link", name="Family")).to_have_attribute("aria-current", "page")
    assert page.url.endswith("?view=family")
    assert obstacles(page) == []
    open_page(page, f"{address}?view=family")
    expect(page.locator("#open-facts")).to_be_hidden()


def test_the_contractor_sees_sizes_limits_and_circuits(page: Page) -> None:
    expect(page.locator("#trade")).to_be_hidden()
    page.get_by_role("link", name="Contractor").click()
    expect(page.locator("#trade-rooms tbody tr")).to_have_count(9)
    page.locator("#choice").click()
    page.get_by_role("option").nth(3).click()
    expect(page.locator("#trade-machines")).to_contain_text("Head in the living room")
    expect(page.locator("#trade-circuits")).to_contain_text("comes")
    assert page.evaluate("document.documentElement.scrollWidth") <= 820
    assert obstacles(page) == []


def test_the_report_holds_the_figures_of_the_page(page: Page, tmp_path: Path) -> None:
    before = page.locator("#now").text_content()
    open_form(page)
    answer(page, "thermostat-day", "63")
    expect(page.locator("#now")).not_to_have_text(before or "")
    page.keyboard.press("Escape")
    with page.expect_download() as downloaded:
        page.get_by_role("button", name="The report, PDF").click()
    file = tmp_path / "report.pdf"
    downloaded.value.save_as(file)
    expect(page.locator("#papers-said")).to_contain_text("Saved as")
    written = " ".join(sheet.extract_text() for sheet in PdfReader(file).pages)
    for place in ("#now", "#after"):
        assert (page.locator(place).text_content() or "-") in written
