"""The visit form in a browser: answers, steps back, files, rooms, options; nobody else sees it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from pypdf import PdfReader

from costcompare.case import read_case
from tests.browser.chromium import SIZES, answer, open_form, open_page, settled

pytestmark = pytest.mark.browser


def bill(page: Page) -> str:
    """Today's bill as it stands on the page once the last answer is worked out."""
    expect(page.locator("#said")).not_to_contain_text("Working")
    expect(page.locator("#busy")).to_be_hidden()
    return page.locator("#now").text_content() or ""


def test_an_answer_changes_the_page_and_every_step_can_be_taken_back(page: Page) -> None:
    before = bill(page)
    open_form(page)
    answer(page, "thermostat-day", "68")
    expect(page.locator("#now")).not_to_have_text(before)
    expect(page.locator("#ask-thermostat-day")).to_have_value("68 F")
    warmer = bill(page)
    expect(page.locator("#said")).to_contain_text(
        f"now about {warmer} a year, before it was {before}"
    )
    expect(page.locator("#visit-bill")).to_contain_text(warmer)
    answer(page, "house-attic_insulation", "38")
    expect(page.locator("#ask-house-attic_insulation")).to_have_value("R-38")
    expect(page.locator("#now")).not_to_have_text(warmer)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#now")).to_have_text(warmer)
    expect(page.locator("#ask-house-attic_insulation")).to_have_value("R-19")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#now")).to_have_text(before)
    expect(page.get_by_role("button", name="Undo")).to_be_disabled()
    page.get_by_role("button", name="Redo").click()
    expect(page.locator("#now")).to_have_text(warmer)
    page.get_by_role("button", name="Back to the case as opened").click()
    expect(page.locator("#now")).to_have_text(before)
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#now")).to_have_text(warmer)


def test_a_wrong_answer_is_explained_as_typed_and_nothing_is_lost(page: Page) -> None:
    before = bill(page)
    open_form(page)
    page.locator("#stop-family > summary").click()
    field = page.locator("#ask-thermostat-day")
    field.fill("fish")
    wrong = page.locator("#ask-thermostat-day-wrong")
    expect(wrong).to_contain_text('given: "fish"')
    expect(field).to_have_attribute("aria-invalid", "true")
    field.press("Tab")
    answer(page, "house-attic_insulation", "R-38")
    expect(page.locator("#now")).not_to_have_text(before)
    expect(field).to_have_value("fish")
    expect(wrong).to_contain_text("fish")
    field.fill("66")
    expect(wrong).to_be_hidden()
    field.press("Enter")
    expect(field).to_have_value("66 F")
    expect(field).not_to_have_attribute("aria-invalid", "true")


def test_not_knowing_fills_a_guess_and_says_so(page: Page) -> None:
    open_form(page)
    page.locator("#stop-shell > summary").click()
    page.get_by_label("How you know it: Insulation above the ceiling, R").select_option(
        "don’t know"
    )
    taken = page.locator("#ask-house-attic_insulation-taken")
    expect(taken).to_contain_text("Taken as R-19, guessed")
    expect(page.locator("#ask-house-attic_insulation")).to_have_value("")
    first = page.locator(".ask-first")
    expect(first).to_contain_text("Insulation above the ceiling")
    first.get_by_role("button", name="Insulation above the ceiling").click()
    expect(page.locator("#ask-house-attic_insulation")).to_be_focused()
    page.keyboard.type("30")
    page.keyboard.press("Enter")
    expect(taken).to_be_hidden()
    expect(page.locator("#ask-house-attic_insulation-known")).to_have_value("seen")
    page.locator("#ask-house-attic_insulation-known").select_option("measured")
    expect(page.locator("#said")).to_contain_text("Worked out again")


def test_letters_that_are_typed_meanwhile_stay(page: Page) -> None:
    open_form(page)
    answer(page, "thermostat-day", "67")
    night = page.locator("#ask-thermostat-night")
    page.locator("#ask-thermostat-wanted").fill("71 F")  # not yet left when the answer comes
    expect(page.locator("#said")).to_contain_text("Worked out again")
    expect(page.locator("#ask-thermostat-wanted")).to_have_value("71 F")
    expect(page.locator("#ask-thermostat-day")).to_have_value("67 F")
    expect(night).to_have_value("62 F")


def test_rooms_and_options_come_and_go(page: Page) -> None:
    open_form(page)
    page.locator("#stop-rooms > summary").click()
    rooms = page.locator("#stop-rooms .row-card")
    count = rooms.count()
    page.get_by_role("button", name="Add a room").click()
    expect(rooms).to_have_count(count + 1)
    name = rooms.last.get_by_label("Name of this room")
    expect(name).to_be_focused()
    name.fill("reading nook")
    name.press("Enter")
    expect(page.locator("#rooms-answer")).to_be_attached()
    expect(rooms.last.locator("summary").first).to_contain_text("Reading nook")
    expect(page.locator("#rooms-strips")).to_contain_text("Reading nook")
    rooms.nth(1).locator("summary").first.click()
    page.get_by_role("button", name="Remove this room: kitchen").click()
    expect(page.locator("#faults")).to_contain_text("must be a room of the house")
    expect(rooms).to_have_count(count + 1)
    page.get_by_role("button", name="Remove this room: reading nook").click()
    expect(rooms).to_have_count(count)

    page.locator("#stop-options > summary").click()
    options = page.locator("#stop-options .row-card")
    expect(options).to_have_count(5)
    page.get_by_role("button", name="One head in the main room").click()
    expect(options).to_have_count(6)
    expect(page.locator("#stop-options")).to_contain_text("as many as one can talk about")
    options.last.get_by_label("Name of this option").fill("Start small")
    options.last.get_by_label("Name of this option").press("Enter")
    expect(options.last.locator("summary").first).to_contain_text("Start small")
    expect(page.locator("#running-rows")).to_contain_text("Start small")
    options.last.get_by_label("Installed, before incentives, $").first.fill("5500")
    options.last.get_by_label("Installed, before incentives, $").first.press("Enter")
    expect(options.last.locator("summary").first).to_contain_text("5500 $")


def test_what_one_visitor_changes_no_other_sees(page: Page, browser: Browser, address: str) -> None:
    before = bill(page)
    open_form(page)
    answer(page, "tariff-tiers-0-price", "0.30")
    expect(page.locator("#now")).not_to_have_text(before)
    changed = bill(page)
    other = browser.new_context()
    theirs = other.new_page()
    open_page(theirs, address)
    expect(theirs.locator("#now")).to_have_text(before)
    other.close()
    page.reload()
    settled(page)
    expect(page.locator("#now")).to_have_text(changed)
    open_form(page)
    expect(page.get_by_role("button", name="Undo")).to_be_enabled()


def test_the_form_opens_and_closes_by_key_and_gives_the_focus_back(page: Page) -> None:
    button = page.get_by_role("button", name="Facts of this home")
    button.focus()
    page.keyboard.press("Enter")
    expect(page.locator("#visit-name")).to_be_focused()
    expect(button).to_have_attribute("aria-expanded", "true")
    assert page.evaluate("document.querySelector('main').inert")
    page.keyboard.press("Escape")
    expect(page.locator("#visit")).to_be_hidden()
    expect(button).to_be_focused()
    assert not page.evaluate("document.querySelector('main').inert")


@pytest.mark.parametrize("size", SIZES)
def test_a_whole_visit_from_an_empty_form_to_a_saved_case(
    browser: Browser, address: str, size: str, tmp_path: Path
) -> None:
    width, height = SIZES[size]
    context = browser.new_context(viewport={"width": width, "height": height})
    page = context.new_page()
    open_page(page, address)
    open_form(page)
    page.get_by_role("button", name="Start a new home").click()
    expect(page.locator(".ask-first li")).to_have_count(5)
    for place, text in (
        ("title", "A made-up visit"),
        ("site-latitude", "37.3"),
        ("site-longitude", "-79.9"),
        ("house-floor_area", "1500"),
        ("house-built", "1965"),
        ("thermostat-day", "65"),
        ("thermostat-wanted", "70"),
        ("tariff-price", "0.13"),
    ):
        answer(page, place, text)
    for stop in ("heating", "rooms", "options"):
        page.locator(f"#stop-{stop} > summary").click()
    page.locator("#ask-today-ducts-condition").select_option("old, never sealed")
    page.get_by_role("button", name="Write these rooms down").click()
    expect(page.locator("#stop-rooms .row-card")).to_have_count(7)
    for kind in ("Seal and wrap the ducts", "Heads in three rooms"):
        page.get_by_role("button", name=f"{kind}: add this option").click()
        expect(page.locator("#stop-options .row-card", has_text=kind)).to_be_visible()
    expect(page.locator("#title")).to_have_text("A made-up visit")
    with page.expect_download() as downloaded:
        page.get_by_role("button", name="Save this case").click()
    file = tmp_path / downloaded.value.suggested_filename
    downloaded.value.save_as(file)
    assert file.name == "a-made-up-visit.toml"
    case = read_case(file)
    assert [option.name for option in case.options] == [
        "Seal and wrap the ducts",
        "Heads in three rooms",
    ]
    known = {fact.path: fact.known for fact in case.facts}
    assert known["site.latitude"] == "guessed", "how it was known stays until somebody says more"
    expect(page.locator("#running-rows")).to_contain_text("Heads in three rooms")
    is_left_on_the_table(page, tmp_path / "report.pdf")
    if size == "tablet":
        open_form(page)
        opened_again(page, file)
    context.close()


def is_left_on_the_table(page: Page, file: Path) -> None:
    """The report of the visit's home, tagged, with the figures of the page."""
    now = bill(page)
    page.locator("#close-facts").click()
    with page.expect_download() as downloaded:
        page.get_by_role("button", name="The report, PDF").click()
    downloaded.value.save_as(file)
    report = PdfReader(file)
    assert report.trailer["/Root"]["/MarkInfo"]["/Marked"]
    assert len(report.pages) <= 2
    written = " ".join(sheet.extract_text() for sheet in report.pages)
    assert "A made-up visit" in written
    assert now in written


def opened_again(page: Page, file: Path) -> None:
    """A saved case, opened after another home, shows what it showed."""
    shown = bill(page)
    page.get_by_role("button", name="Start a new home").click()
    expect(page.locator("#title")).to_have_text("A home")
    with page.expect_file_chooser() as chooser:
        page.get_by_role("button", name="Open a case").click()
    chooser.value.set_files(file)
    expect(page.locator("#title")).to_have_text("A made-up visit")
    expect(page.locator("#now")).to_have_text(shown)
    assert re.fullmatch(r"\$\d,\d{3}", shown)


def test_a_file_that_is_no_case_is_explained(page: Page, tmp_path: Path) -> None:
    open_form(page)
    for name, content, said in (
        ("a.toml", b"[hous]\nbuilt = 1", "hous: is not a key of a case here"),
        ("b.toml", b"\xff\xfe\x00", "must be text in UTF-8"),
        ("c.toml", b"#" * 300_000, "too large for a case"),
    ):
        file = tmp_path / name
        file.write_bytes(content)
        with page.expect_file_chooser() as chooser:
            page.get_by_role("button", name="Open a case").click()
        chooser.value.set_files(file)
        expect(page.locator("#faults")).to_contain_text(said)
    expect(page.get_by_role("button", name="Undo")).to_be_disabled()


def test_typed_bills_are_set_against_the_house_and_leave_again(page: Page) -> None:
    before = bill(page)
    expect(page.locator("#against-bills")).to_be_hidden()
    open_form(page)
    page.locator("#stop-bills > summary").click()
    page.get_by_label("Type or paste bills").fill("no bill at all")
    page.get_by_role("button", name="Take these bills").click()
    expect(page.locator("#ask-paste-bills-wrong")).to_contain_text("has no row of headers")
    page.get_by_label("Type or paste bills").fill(
        "2026-01-14, 2026-02-13, 5200, 690\n2026-02-13, 2026-03-14, 4400\n"
    )
    page.get_by_role("button", name="Take these bills").click()
    expect(page.locator("#narrowed")).to_contain_text("Took 2 bills.")
    expect(page.get_by_label("Type or paste bills")).to_have_value("")
    expect(page.locator("#now")).not_to_have_text(before, timeout=120_000)
    fitted = bill(page)
    part = page.locator("#against-bills")
    expect(part).to_contain_text("2")
    expect(part.locator("#measured-chart .plot-container")).to_be_attached()
    expect(page.locator("#stands-on")).to_contain_text("2 real bills")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#now")).to_have_text(before)
    expect(part).to_be_hidden()
    page.get_by_role("button", name="Redo").click()
    expect(page.locator("#now")).to_have_text(fitted)


def test_a_file_of_bills_can_be_taken(page: Page, tmp_path: Path) -> None:
    file = tmp_path / "bills.csv"
    file.write_bytes(b"\xef\xbb\xbfAccount 12\r\nStart,End,kWh\r\n12/14/2025,1/14/2026,4800\r\n")
    open_form(page)
    page.locator("#stop-bills > summary").click()
    with page.expect_file_chooser() as chooser:
        page.get_by_role("button", name="Bills from a file").click()
    chooser.value.set_files(file)
    expect(page.locator("#narrowed")).to_contain_text("Took 1 bill.")
    expect(page.locator("#ask-bills-0-kwh")).to_have_value("4800.0")
