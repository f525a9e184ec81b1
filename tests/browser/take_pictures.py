"""Take the pictures of the page that the documentation shows.

Run it as ``python -m tests.browser.take_pictures``; it writes docs/pictures/.
"""

from __future__ import annotations

from pathlib import Path

from tests.browser.chromium import PATIENCE_MS, SIZES, browser_at, find_browser, open_page, served

PICTURES = Path(__file__).parents[2] / "docs" / "pictures"
PARTS = ("bill", "running", "rooms", "thermostat", "money", "sure")


def take_pictures(path: str) -> None:
    """The first screen at every size, and each part on a tablet."""
    PICTURES.mkdir(parents=True, exist_ok=True)
    with served() as address, browser_at(path) as browser:
        for name, (width, height) in SIZES.items():
            page = browser.new_page(viewport={"width": width, "height": height})
            open_page(page, address)
            page.wait_for_timeout(1000)  # plotly draws once more after its data is there
            page.screenshot(path=PICTURES / f"{name}.png")
            if name == "tablet":
                page.locator("#ranges-hold", has_text="homes").wait_for(timeout=PATIENCE_MS)
                page.wait_for_timeout(2000)
                page.add_style_tag(content=".chooser { display: none }")
                for part in PARTS:
                    page.locator(f"#{part}").screenshot(path=PICTURES / f"{part}.png")
            page.close()


if __name__ == "__main__":
    found = find_browser()
    if found is None:
        raise SystemExit("No Chromium was found; name one in the environment variable CHROME.")
    take_pictures(found)
