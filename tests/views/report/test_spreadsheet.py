"""The table for a spreadsheet: whole, with units, and nothing in it runs."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import pytest

from costcompare.comparison import Comparison
from costcompare.views.report import export_csv


def rows_of(text: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline="")))


def test_every_month_and_every_room_is_in_it(comparison: Comparison) -> None:
    rows = rows_of(export_csv(comparison))
    first = next(n for n, row in enumerate(rows) if row and row[0] == "Choice")
    months = rows[first + 1 : first + 1 + 12 * len(comparison.choices)]
    told = [(c.name, c.warmth, m) for c in comparison.choices for m in c.monthly]
    for row, (name, warmth, month) in zip(months, told, strict=True):
        assert row[:3] == [name, warmth, str(month.month)]
        assert float(row[3]) == pytest.approx(month.electricity_kwh, abs=0.05)
        assert float(row[6]) == pytest.approx(month.bill_usd, abs=0.005)
    rooms = rows[first + 3 + len(months) :]
    told_rooms = [(c.name, r) for c in comparison.choices for r in c.rooms]
    for row, (name, room) in zip(rooms, told_rooms, strict=True):
        assert row[0] == name
        assert row[2] == room.name
        assert int(row[4]) == room.comfort_hours


def test_heads_carry_units(comparison: Comparison) -> None:
    heads = [row for row in rows_of(export_csv(comparison)) if row and row[0] == "Choice"]
    assert len(heads) == 2
    assert heads[0][3:] == ["Electricity (kWh)", "Heating (kWh)", "Cooling (kWh)", "Bill ($)"]
    assert heads[1][7] == "Coldest hour (°F)"
    euros = rows_of(export_csv(replace(comparison, currency="€"), units="si"))
    heads = [row for row in euros if row and row[0] == "Choice"]
    assert heads[0][6] == "Bill (€)"
    assert heads[1][7] == "Coldest hour (°C)"


def test_it_opens_in_a_spreadsheet(comparison: Comparison) -> None:
    text = export_csv(comparison)
    assert text.startswith("\ufeff")
    assert text.count("\r\n") == text.count("\n")


@pytest.mark.parametrize(
    "hostile",
    ['=HYPERLINK("x")', "+1", "-1+1", "@SUM(A1)", "\t=1", " =1", "\u00a0=1", "\r=1"],
)
def test_no_text_becomes_a_formula(comparison: Comparison, hostile: str) -> None:
    today = replace(comparison.today, name=hostile)
    room = replace(today.rooms[0], name=hostile)
    today = replace(today, rooms=(room, *today.rooms[1:]))
    text = export_csv(replace(comparison, title=hostile, choices=(today,)))
    found = [cell for row in rows_of(text) for cell in row if hostile.strip() in cell]
    assert len(found) == 2 + 12 + len(today.rooms)
    assert all(cell.startswith("'") for cell in found)


def test_a_figure_below_zero_stays_a_figure(comparison: Comparison) -> None:
    month = replace(comparison.today.monthly[0], bill_usd=-12.5)
    today = replace(comparison.today, monthly=(month, *comparison.today.monthly[1:]))
    assert ",-12.5\r\n" in export_csv(replace(comparison, choices=(today,)))
