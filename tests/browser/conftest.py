"""The page in a real browser: skipped where none is installed, a failure in CI."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass, field
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.chromium import browser_at, find_browser, open_page, served


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    path = find_browser()
    if path is None:
        reason = "no Chromium was found; name one in the environment variable CHROME"
        if os.environ.get("CI"):
            pytest.fail(reason)
        pytest.skip(reason)
    with browser_at(path) as launched:
        yield launched


@pytest.fixture(scope="session")
def address() -> Iterator[str]:
    with served() as where:
        yield where


@dataclass
class Heard:
    """What a page said and asked for while it was used."""

    messages: list[str] = field(default_factory=list)
    hosts: set[str] = field(default_factory=set)

    def listen(self, page: Page) -> None:
        page.on("console", lambda message: self.messages.append(message.text))
        page.on("pageerror", lambda error: self.messages.append(str(error)))
        page.on("request", lambda request: self.hosts.add(urlsplit(request.url).hostname or "-"))


@pytest.fixture
def heard() -> Heard:
    return Heard()


@pytest.fixture
def page(browser: Browser, address: str, heard: Heard) -> Iterator[Page]:
    """The page as a new visitor on a tablet sees it; it must not complain or ask outside."""
    context = browser.new_context(viewport={"width": 820, "height": 1180})
    opened = context.new_page()
    heard.listen(opened)
    open_page(opened, address)
    yield opened
    context.close()
    assert heard.messages == []
    assert heard.hosts <= {"127.0.0.1", "-"}  # a picture in the page itself has no host
