"""A browser and a served page, for tests and for pictures."""

from __future__ import annotations

import logging
import os
import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser, Page, expect, sync_playwright
from werkzeug.serving import make_server

from costcompare.views.dashboard import make_app

NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome")
PATIENCE_MS = 300_000
"""How long the first opening may take before it is given up: code may have to be compiled"""
STEP_MS = 90_000
"""How long a step may take after that: a slow machine is no failure"""
SIZES = {"phone": (390, 844), "tablet": (820, 1180), "laptop": (1280, 800)}
"""Widths and heights of the three screens the page is made for [px]"""


def find_browser() -> str | None:
    """The browser of the environment variable CHROME, or one that is installed."""
    return os.environ.get("CHROME") or next(filter(None, map(shutil.which, NAMES)), None)


@contextmanager
def served() -> Iterator[str]:
    """The page on the example home at a free port; gives its address."""
    logging.getLogger("werkzeug").setLevel(logging.ERROR)  # else a line for every request
    server = make_server("127.0.0.1", 0, make_app().server, threaded=True)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.port}/"
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


@contextmanager
def browser_at(path: str) -> Iterator[Browser]:
    """A headless browser."""
    arguments = ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage"]
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=arguments)
        try:
            yield browser
        finally:
            browser.close()


def open_page(page: Page, address: str) -> None:
    """Open the page and wait until the slider's settings are worked out."""
    expect.set_options(timeout=PATIENCE_MS)
    page.set_default_timeout(PATIENCE_MS)
    page.goto(address)
    settled(page)
    expect.set_options(timeout=STEP_MS)
    page.set_default_timeout(STEP_MS)


def settled(page: Page) -> None:
    """Wait until nothing is being worked out, and part four and every chart show something."""
    page.locator("#chosen-at-bill", has_text="$").wait_for()
    page.locator("#busy").wait_for(state="hidden")
    page.locator("#setting-shown.is-waiting").wait_for(state="detached")
    expect(page.locator("figure[aria-label='A chart']")).to_have_count(0)


def open_form(page: Page) -> None:
    """Open the visit form and wait until it is drawn."""
    page.get_by_role("button", name="Facts of this home").click()
    expect(page.locator("#stop-money")).to_be_visible()


def answer(page: Page, place: str, text: str) -> None:
    """Type an answer into a field of the form and leave it, opening the lines around it."""
    field = page.locator(f"#ask-{place}")
    field.evaluate(
        "field => { for (let line = field.closest('details'); line;"
        " line = line.parentElement.closest('details')) line.open = true; }"
    )
    field.fill(text)
    field.press("Tab")
