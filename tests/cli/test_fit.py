"""``costcompare fit``: what it prints, writes and refuses."""

from __future__ import annotations

import json
from dataclasses import fields
from pathlib import Path

import pytest

from costcompare.fitting.results import Finding, FittedBill, FittedFact, HouseFit, NextBill
from tests.cli.conftest import Run

PAGE = (Path(__file__).parents[2] / "docs" / "fit.md").read_text(encoding="utf-8")
BILLS = """from,to,kwh,dollars,read
2025-12-18,2026-01-19,4120,560.00,actual
2026-01-19,2026-02-17,3380,462.00,estimated
2026-02-17,2026-03-18,2900,398.00,actual
"""


@pytest.fixture
def bills(tmp_path: Path) -> str:
    path = tmp_path / "bills.csv"
    path.write_text(BILLS, encoding="utf-8")
    return str(path)


def test_the_page_holds_what_the_file_holds(run: Run, home: str, bills: str) -> None:
    result = run("fit", home, "--bills", bills, "--json", "fit.json")
    assert result.exit_code == 0, result.stderr
    document = json.loads(Path("fit.json").read_text(encoding="utf-8"))
    # The estimated read is put together with the bill behind it.
    assert [bill["measured_kwh"] for bill in document["bills"]] == [4120.0, 6280.0]
    low, likely, high = (document["yearly_heating_kwh"][end] for end in ("low", "likely", "high"))
    assert low < likely < high
    assert f"{round(likely, -1):,.0f} kWh a year" not in result.stdout  # it is "about" that
    assert f"about {round(likely / 10) * 10:,.0f} kWh" in result.stdout
    assert "estimated" in result.stdout
    assert "The bill to fetch next is one of" in result.stdout
    assert "typical year" in result.stdout


def test_a_former_owner_is_told_of(run: Run, home: str, bills: str) -> None:
    result = run("fit", home, "--bills", bills, "--former-owner")
    assert result.exit_code == 0, result.stderr
    assert "Whoever paid these bills seems to have kept the house at about" in result.stdout


def test_no_bills_are_asked_for(run: Run, home: str) -> None:
    result = run("fit", home)
    assert result.exit_code == 2
    assert "--bills: is needed: the case holds no bills" in result.stderr
    assert run("fit", home, "--bills", "nowhere.csv").exit_code == 2


@pytest.fixture
def with_bills(home: str, tmp_path: Path) -> Path:
    """The small home with a bill that is dearer than what is said of it."""
    rows = """
[[bills]]
from = 2025-12-18
to = 2026-01-19
kwh = 5600
"""
    path = tmp_path / "with_bills.toml"
    path.write_text(Path(home).read_text(encoding="utf-8") + rows, encoding="utf-8")
    return path


def test_a_case_with_bills_is_compared_as_a_fitted_house(
    run: Run, home: str, with_bills: Path
) -> None:
    plain = run("compare", home, "--members", "8", "--json", "-")
    fitted = run("compare", str(with_bills), "--members", "8", "--json", "-")
    assert fitted.exit_code == 0, fitted.stderr
    one, other = json.loads(plain.stdout), json.loads(fitted.stdout)
    assert "The house is fitted to 1 bill" in other["assumptions"][-1]
    assert (one["fitted_bills"], other["fitted_bills"]) == (0, 1)
    assert "Based on: 1 real bill of this home" in run(
        "compare", str(with_bills), "--members", "0"
    ).stdout.replace("\n", " ")
    before, after = (document["choices"][0] for document in (one, other))
    assert after["annual"]["bill_usd"] > before["annual"]["bill_usd"]
    assert after["range"]["bill_usd"]["likely"] > before["range"]["bill_usd"]["likely"]
    assert run("fit", str(with_bills)).exit_code == 0


def test_settings_and_explanation_stand_on_the_fitted_house(
    run: Run, home: str, with_bills: Path
) -> None:
    words = ("--from", "64 F", "--to", "66 F", "--json", "-")
    one = json.loads(run("thermostat", home, *words).stdout)
    other = json.loads(run("thermostat", str(with_bills), *words).stdout)
    assert (one["fitted_bills"], other["fitted_bills"]) == (0, 1)
    # The settings stay what they are; the same setting costs more in a house that leaks more.
    assert other["settings_degf"] == one["settings_degf"]
    assert other["wanted_degf"] == one["wanted_degf"]
    for before, after in zip(one["choices"], other["choices"], strict=True):
        assert after["years"][0]["bill_usd"] > before["years"][0]["bill_usd"]
    shown = run("thermostat", str(with_bills), *words[:4]).stdout
    assert "The house is fitted to 1 real bill of this home." in " ".join(shown.split())
    shown = run("thermostat", home, *words[:4]).stdout
    assert "held against no real bill" in " ".join(shown.split())
    plain, fitted = (
        json.loads(run("explain", path, "--json", "-").stdout) for path in (home, str(with_bills))
    )
    assert (plain["fitted_bills"], fitted["fitted_bills"]) == (0, 1)
    bills = [one["choices"][0]["annual"]["bill_usd"] for one in (plain, fitted)]
    assert bills[1] > bills[0]
    assert sum(part["usd"] for part in fitted["explanation"]) == pytest.approx(bills[1])


@pytest.mark.parametrize("kind", [HouseFit, FittedBill, FittedFact, NextBill, Finding])
def test_every_field_is_documented(kind: type) -> None:
    for field in fields(kind):
        assert f"`{field.name}`" in PAGE, field.name
