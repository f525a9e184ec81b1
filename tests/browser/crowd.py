"""Twenty visitors at once, each moving the slider for a minute: times and mixed-up answers.

Run it as ``python -m tests.browser.crowd``; docs/performance.md holds what it printed. Every
visitor lives at another thermostat setting, so that an answer meant for another would show.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from dataclasses import dataclass, field
from typing import Any

from playwright.sync_api import Browser, Page, expect

from tests.browser.chromium import PATIENCE_MS, browser_at, find_browser, served

VISITORS = 20
SECONDS = 60.0
PROCESSES = 4
"""Browsers that drive the visitors: one alone would be what is slow"""


@dataclass
class Seen:
    """What one browser's visitors saw."""

    wrong: list[str] = field(default_factory=list)
    repaints_ms: list[float] = field(default_factory=list)


def open_as(browser: Browser, address: str, degf: int, seen: Seen) -> Page:
    """A visitor who lives at a setting, with the page open and answered."""
    page = browser.new_context(viewport={"width": 820, "height": 1180}).new_page()
    page.set_default_timeout(PATIENCE_MS)
    page.on("console", lambda message: seen.wrong.append(message.text))
    page.on("pageerror", lambda error: seen.wrong.append(str(error)))
    page.goto(address)
    page.locator("#now", has_text="$").wait_for()
    page.get_by_role("button", name="Facts of this home").click()
    page.locator("#stop-family > summary").click()
    day = page.locator("#ask-thermostat-day")
    day.fill(f"{degf / 10:.1f} F")
    day.press("Enter")
    return page


def book_of(page: Page) -> dict[str, Any]:
    """The finished pages of the slider."""
    expect(page.locator("#setting")).to_be_attached(timeout=PATIENCE_MS)
    found: dict[str, Any] = page.evaluate("window.dash_component_api.getLayout('book').props.data")
    return found


MOVE = """
async () => {
  const thumb = document.querySelector('[role=slider]');
  const answer = document.getElementById('setting-answer');
  const before = answer.textContent;
  const key = Number(thumb.getAttribute('aria-valuenow')) > 64 ? 'ArrowLeft' : 'ArrowRight';
  const began = performance.now();
  thumb.dispatchEvent(new KeyboardEvent('keydown', { key: key, bubbles: true }));
  while (answer.textContent === before && performance.now() - began < 5000) {
    await new Promise((next) => requestAnimationFrame(next));
  }
  return performance.now() - began;
}
"""


def move(page: Page, seen: Seen) -> None:
    """One step of the slider, timed; what it shows must be this visitor's own page."""
    seen.repaints_ms.append(page.evaluate(MOVE))
    book = book_of(page)
    setting = float(page.get_by_role("slider").get_attribute("aria-valuenow") or "nan")
    shown = page.locator("#setting-answer").text_content()
    pages = [one for night in ("held", "lowered", "wanted") for one in book[night]["pages"]]
    if shown not in [one["answer"] for one in pages if one["setting"] == setting]:
        seen.wrong.append(f"at {setting} it says {shown}")


def drive(address: str, first: int, count: int) -> Seen:
    """Some of the visitors in one browser, from opening to the end of the minute."""
    seen = Seen()
    path = find_browser()
    assert path is not None
    with browser_at(path) as browser:
        pages = {
            degf: open_as(browser, address, degf, seen)
            for degf in range(600 + 5 * first, 600 + 5 * (first + count), 5)
        }
        print(f"visitors {first + 1} to {first + count} have opened", file=sys.stderr)
        for nth, page in enumerate(pages.values(), first + 1):
            page.keyboard.press("Escape")
            page.locator("#setting-shown.is-waiting").wait_for(state="detached")
            page.locator("#chosen-at-bill", has_text="$").wait_for()
            print(f"visitor {nth} has all pages", file=sys.stderr)
        bills = {degf: page.locator("#now").text_content() or "" for degf, page in pages.items()}
        ends = time.monotonic() + SECONDS
        while time.monotonic() < ends:
            for page in pages.values():
                move(page, seen)
        for degf, page in pages.items():
            day = page.evaluate(
                "window.dash_component_api.getLayout('worked').props.data.document.thermostat.day"
            )
            if day != f"{degf / 10:.1f} F":
                seen.wrong.append(f"the visitor of {degf / 10} F has the home of {day}")
        in_order = [float(bill.strip("$").replace(",", "")) for bill in bills.values()]
        if in_order != sorted(in_order):
            seen.wrong.append(f"a warmer home costs less: {bills}")
    return seen


def crowd() -> None:
    """Serve, send the visitors in, and print what they saw."""
    with served() as address:
        each = VISITORS // PROCESSES
        command = [sys.executable, "-m", "tests.browser.crowd", address]
        began = time.monotonic()
        running = [
            subprocess.Popen(
                [*command, str(n * each), str(each)], stdout=subprocess.PIPE, text=True
            )
            for n in range(PROCESSES)
        ]
        told = [process.communicate()[0] for process in running]
        took = time.monotonic() - began
    times, wrong = [], []
    for lines in told:
        for line in lines.splitlines():
            kind, _, text = line.partition(" ")
            (times if kind == "ms" else wrong).append(text)
    repaints = sorted(map(float, times))
    print(f"{VISITORS} visitors, {len(repaints)} moves of the slider, {took:.0f} s in all")
    print(f"repaint: median {statistics.median(repaints):.0f} ms, 95 of 100 within ", end="")
    print(f"{repaints[int(0.95 * len(repaints))]:.0f} ms, longest {repaints[-1]:.0f} ms")
    print(f"wrong: {len(wrong)}")
    for text in wrong[:10]:
        print(text)


if __name__ == "__main__":
    if len(sys.argv) == 4:
        one = drive(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]))
        for ms in one.repaints_ms:
            print("ms", ms)
        for text in one.wrong:
            print("wrong", text.replace("\n", " "))
    else:
        crowd()
