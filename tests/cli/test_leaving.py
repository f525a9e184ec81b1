"""``costcompare report``: what it writes and what it refuses."""

from __future__ import annotations

import io
import json
from pathlib import Path

from pypdf import PdfReader

from tests.cli.conftest import Run

PLAIN = ("--members", "0")
"""Without ranges, which take a while"""


def test_it_writes_a_pdf_and_the_comparison(run: Run, home: str) -> None:
    made = run(
        *("report", home, "-o", "left.pdf", "--date", "2027-01-15"),
        *("--json", "left.json", "--members", "4"),
    )
    assert made.exit_code == 0, made.stderr
    assert made.stdout == ""
    pages = PdfReader(io.BytesIO(Path("left.pdf").read_bytes())).pages
    assert 1 <= len(pages) <= 2
    text = " ".join(" ".join(page.extract_text() for page in pages).split())
    assert "A small home (invented)" in text
    assert "Worked out on January 15, 2027" in text
    document = json.loads(Path("left.json").read_text(encoding="utf-8"))
    bill = document["choices"][0]["annual"]["bill_usd"]
    assert f"${round(bill, -1):,.0f}" in text
    assert "In 8 of 10 homes" in text
    assert document["data_quality"]["members"] == 4


def test_it_writes_a_page_in_other_units(run: Run, home: str) -> None:
    made = run("report", home, "-o", "left.html", "--units", "si", "--date", "none", *PLAIN)
    assert made.exit_code == 0, made.stderr
    page = Path("left.html").read_text(encoding="utf-8")
    assert "°C" in page
    assert "Worked out on" not in page


def test_every_fault_is_told_at_once_and_nothing_is_written(run: Run, home: str) -> None:
    refused = run(
        *("report", home, "-o", "left.doc", "--units", "metric"),
        *("--date", "soon", "--option", "Nothing", "--set", "house.floor_area=much"),
    )
    assert refused.exit_code == 2
    assert refused.stderr.startswith("4 things are wrong:"), refused.stderr
    for named in ("--output", "--units", "--date", "house.floor_area"):
        assert f"  {named}: " in refused.stderr
    named = run("report", home, "-o", "left.pdf", "--option", "Nothing")
    assert named.exit_code == 2
    assert "--option: no option has this name (given: Nothing)" in named.stderr
    assert not list(Path().iterdir())


def test_a_file_is_not_overwritten(run: Run, home: str) -> None:
    Path("left.pdf").write_text("mine", encoding="utf-8")
    assert run("report", home, "-o", "left.pdf").exit_code == 2
    assert Path("left.pdf").read_text(encoding="utf-8") == "mine"


def test_it_writes_the_card_the_sheet_and_the_table(run: Run, home: str) -> None:
    for sheet in ("settings", "contractor"):
        made = run("report", home, "-o", f"{sheet}.pdf", "--sheet", sheet, "--date", "none")
        assert made.exit_code == 0, made.stderr
        assert made.stderr == f"Wrote {sheet}.pdf\n"
        text = PdfReader(f"{sheet}.pdf").pages[0].extract_text()
        assert "Seal and wrap the ducts" in text
    assert run("report", home, "-o", "left.csv").exit_code == 0
    assert Path("left.csv").read_text(encoding="utf-8").startswith('\ufeff"Home",')


def test_a_sheet_needs_an_option(run: Run) -> None:
    assert run("new", "plain.toml").exit_code == 0
    refused = run("report", "plain.toml", "-o", "card.pdf", "--sheet", "settings")
    assert refused.exit_code == 2
    assert "--sheet: the sheet settings is about an option, and this case holds none" in (
        refused.stderr
    )
    table = run("report", "plain.toml", "-o", "card.csv", "--sheet", "contractor")
    assert table.exit_code == 2
    assert table.stderr.startswith("2 things are wrong:")
    plain = run("report", "plain.toml", "-o", "plain.pdf", *PLAIN)
    assert plain.exit_code == 0, plain.stderr


def test_the_sign_of_money_is_that_of_the_case(run: Run, home: str) -> None:
    euros = ("--set", "tariff.currency=€")
    assert run("report", home, "-o", "left.html", *PLAIN, *euros).exit_code == 0
    page = Path("left.html").read_text(encoding="utf-8")
    assert "€" in page
    assert "$" not in page
    shown = run("compare", home, *PLAIN, *euros).stdout
    assert "€" in shown
    assert "$" not in shown
    assert "$" in run("compare", home, *PLAIN).stdout
