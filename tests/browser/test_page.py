"""The page as a visitor uses it."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.chromium import PATIENCE_MS, SIZES, answer, open_form, open_page, settled
from tests.browser.conftest import Heard

pytestmark = pytest.mark.browser

PARTS = [
    "Why the bill is what it is",
    "What each choice costs to run",
    "Which rooms stay warm",
    "If you move the thermostat",
    "When the money comes back",
    "How sure we are",
]
MOVED = ("#after", "#warm-after", "#lead", "#slim-bill", "#setting-answer", "#chosen-at-bill")
"""What the slider moves together"""


def text(page: Page, place: str) -> str:
    return page.locator(place).inner_text()


def stored(page: Page, store: str) -> object:
    """What a store of the page holds."""
    return page.evaluate(f"window.dash_component_api.getLayout('{store}').props.data")


def test_it_shows_the_six_parts_under_one_heading(page: Page, heard: Heard) -> None:
    assert page.title() == "costcompare: what a home’s heating costs"
    assert page.locator("h1").count() == 1
    shown = page.locator("main h2:visible").all_inner_texts()
    assert shown == [*PARTS, "What to leave on the table"]
    for said in page.locator("p.answer:visible").all():
        assert said.inner_text().strip(), said
    assert heard.messages == []
    assert "127.0.0.1" in heard.hosts


def test_the_slider_moves_figures_sentences_and_table_together(page: Page) -> None:
    before = {place: page.locator(place).text_content() or "" for place in MOVED}
    slider = page.get_by_role("slider")
    slider.focus()
    for _ in range(4):
        page.keyboard.press("ArrowLeft")
    setting = float(slider.get_attribute("aria-valuenow") or "nan")
    book = stored(page, "book")
    assert isinstance(book, dict)
    shown = next(p for p in book["held"]["pages"] if p["setting"] == setting)
    expect(page.locator("#setting-answer")).to_have_text(shown["answer"])
    for place in MOVED:
        expect(page.locator(place)).not_to_have_text(before[place])
    bill = text(page, "#after")
    # The slim line is out of sight while the figures are in view: its text is compared as it
    # stands in the document, which is the same whether it is shown or not.
    for place in ("#lead", "#slim-bill", "#setting-answer", "#chosen-at-bill"):
        expect(page.locator(place)).to_contain_text(bill)
    warm = text(page, "#warm-after")
    expect(page.locator("#lead")).to_contain_text(f"warm in {warm} of 100.")
    assert page.get_by_label("Same at night").is_checked()


def test_the_prose_is_the_page_of_the_book_at_the_slider(page: Page) -> None:
    slider = page.get_by_role("slider")
    slider.focus()
    for key in ("ArrowLeft", "ArrowLeft", "ArrowRight"):
        page.keyboard.press(key)
    setting = float(slider.get_attribute("aria-valuenow") or "nan")
    book = stored(page, "book")
    assert isinstance(book, dict)
    shown = next(p for p in book["held"]["pages"] if p["setting"] == setting)
    expect(page.locator("#setting-answer")).to_have_text(shown["answer"])
    expect(page.locator("#lead")).to_have_text(shown["headline"]["lead"])
    marks = page.evaluate(
        "[1, 5].map(n => document.querySelector('#setting-chart .js-plotly-plot').data[n].y[0])"
    )
    assert marks == shown["bills_usd"]


def test_night_and_wanted_are_chosen_beside_the_slider(page: Page) -> None:
    wanted = text(page, "#setting-answer")
    start = page.get_by_role("slider").get_attribute("aria-valuenow")
    page.get_by_text("Lower at night").click()
    expect(page.locator("#setting-answer")).to_contain_text("at night")
    page.get_by_role("slider").focus()
    page.keyboard.press("ArrowLeft")
    expect(page.get_by_label("Lower at night")).to_be_checked()
    page.get_by_text("As you want it").click()
    expect(page.locator("#setting-answer")).to_have_text(wanted)
    assert page.get_by_role("slider").get_attribute("aria-valuenow") == start


def test_another_choice_changes_every_part_that_shows_it(page: Page) -> None:
    places = ("#lead", "#running-answer", "#rooms-answer", "#setting-answer", "#money-answer")
    before = {place: text(page, place) for place in places}
    page.locator("#choice").click()
    other = page.get_by_role("option").nth(2)
    name = other.inner_text()
    other.click()
    for place in places:
        expect(page.locator(place)).to_contain_text(f"“{name}”")
    settled(page)
    assert all(text(page, place) != before[place] for place in places)
    bill = text(page, "#chosen-at-bill")
    expect(page.locator("#setting-answer")).to_contain_text(bill)


def test_the_switches_of_warmth_change_their_part_alone(page: Page) -> None:
    money = text(page, "#money-answer")
    page.locator("#running").get_by_text("As you live now").click()
    expect(page.locator("#running-answer")).to_contain_text("As you live now")
    assert text(page, "#money-answer") == money
    page.locator("#money").get_by_text("As you live now").click()
    expect(page.locator("#money-answer")).to_contain_text("as you live now")


def test_tables_hold_the_numbers_of_the_sentences(page: Page) -> None:
    page.locator("#bill summary").click()
    total = page.locator("#bill-table tfoot td").first
    assert total.inner_text() == text(page, "#now")
    page.locator("#running summary").click()
    bills = page.locator("#running-table tfoot td").all_inner_texts()
    for bill in re.findall(r"\$\d+(?:,\d{3})*", text(page, "#running-answer")):
        assert bill in bills
    page.get_by_text("Show every fact with its source").click()
    assert page.locator("#facts-table tbody tr").count() > 30


def test_the_ranges_come_last(page: Page) -> None:
    expect(page.locator("#ranges")).to_be_visible(timeout=PATIENCE_MS)
    expect(page.locator("#ranging")).to_be_empty()
    assert "In 8 of 10 homes" in text(page, "#range-answer")
    assert page.locator("#drivers .bar").count() >= 4
    assert "$" in (page.locator("#drivers-figure").get_attribute("aria-label") or "")
    open_form(page)
    expect(page.locator(".ask-first")).to_contain_text("By how much they move the saving with")
    field = page.locator("#ask-house-wall_insulation-worth")
    expect(field).to_contain_text("Worth asking: alone it moves the saving by about $")
    answer(page, "house-wall_insulation", "11")
    page.locator("#ask-house-wall_insulation-known").select_option("measured")
    expect(field).to_be_empty()
    expect(page.locator(".ask-first")).to_contain_text("worked out again now")
    expect(page.locator("#narrowed")).to_contain_text(
        "The range of the saving: ", timeout=PATIENCE_MS
    )
    expect(page.locator(".ask-first")).not_to_contain_text("worked out again now")


@pytest.mark.parametrize("size", SIZES)
def test_nothing_is_wider_than_the_screen(browser: Browser, address: str, size: str) -> None:
    width, height = SIZES[size]
    page = browser.new_page(viewport={"width": width, "height": height})
    open_page(page, address)
    for summary in page.locator("summary:visible").all():
        summary.click()
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.close()


def test_the_slim_line_shows_when_the_figures_are_out_of_sight(page: Page) -> None:
    slim = page.locator(".slim")
    expect(slim).to_be_hidden()
    page.locator("#money").scroll_into_view_if_needed()
    expect(slim).to_be_visible()
    expect(page.locator("#slim-bill")).to_contain_text(text(page, "#now"))


def test_the_keyboard_comes_to_the_answer_first(page: Page) -> None:
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Skip to the answer"
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"
