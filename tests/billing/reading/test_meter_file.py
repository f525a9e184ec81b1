"""Meter files of the open standard: our own example with known answers, and what is refused."""

from __future__ import annotations

from datetime import date, datetime, timedelta, timezone

import pytest

from costcompare.billing.reading import read_bills
from costcompare.errors import BillsError
from tests.billing.reading.meter_example import (
    COSTS,
    STARTS,
    VALUES,
    example,
    reading,
    reading_type,
    summary,
)

PACIFIC = timezone(timedelta(hours=-8))


@pytest.mark.parametrize("name", ["UsageSummary", "ElectricPowerUsageSummary"])
def test_the_example(name: str) -> None:
    bills = read_bills(example(name=name))
    assert [i.start for i in bills.intervals] == [
        datetime(2026, 1, 15, hour, tzinfo=PACIFIC) for hour in (0, 1, 2)
    ]
    assert [i.kwh for i in bills.intervals] == pytest.approx([4.35, 4.80, 5.25], abs=1e-12)
    assert [i.estimated for i in bills.intervals] == [False, False, True]
    kwh = sum(i.kwh for i in bills.intervals)
    dollars = sum(i.dollars or 0.0 for i in bills.intervals)
    assert kwh == pytest.approx(14.4, abs=1e-12)
    assert dollars == pytest.approx(1.94400, abs=1e-9)
    assert dollars / kwh == pytest.approx(0.13500, abs=1e-9)
    (bill,) = bills.bills
    assert (bill.begins, bill.ends, bill.days) == (date(2025, 12, 18), date(2026, 1, 18), 31)
    assert bill.dollars == pytest.approx(492.75, abs=1e-9)
    assert bill.kwh == pytest.approx(3650.0, abs=1e-9)
    assert [note.rule for note in bills.notes] == ["doubled entry"]


def test_a_file_of_bytes_is_read_alike() -> None:
    assert read_bills(example().encode()) == read_bills(example())


def test_the_clock_goes_forward_in_march() -> None:
    # 2026-07-15T07:00:00Z is midnight of a summer day in the zone of the example.
    bills = read_bills(example(readings=(reading(1784098800, 1000, 0),)))
    assert bills.intervals[0].start.replace(tzinfo=None) == datetime(2026, 7, 15, 0, 0)  # noqa: DTZ001


def test_a_local_clock_written_as_utc_is_found() -> None:
    bills = read_bills(example(bill=summary(start=1766016000)))
    assert bills.bills[0].begins == date(2025, 12, 18)
    assert bills.bills[0].days == 31
    assert any(note.rule == "local clock" for note in bills.notes)


def test_values_for_other_weather_are_no_use() -> None:
    given = (reading(STARTS[0], VALUES[0], COSTS[0], 15), reading(STARTS[1], VALUES[1], COSTS[1]))
    bills = read_bills(example(readings=given))
    assert [i.kwh for i in bills.intervals] == [4.8]
    assert any(note.rule == "quality" for note in bills.notes)


def test_power_is_multiplied_by_its_hours_and_dials_are_differenced() -> None:
    power = read_bills(
        example(kind=reading_type(unit=38, tens=3), readings=(reading(STARTS[0], 2, 0),))
    )
    assert power.intervals[0].kwh == pytest.approx(2.0)
    dial = tuple(
        reading(start, value, 0) for start, value in zip(STARTS, (100, 103, 107), strict=True)
    )
    counted = read_bills(example(kind=reading_type(tens=3, behaviour=3), readings=dial))
    assert [i.kwh for i in counted.intervals] == pytest.approx([3.0, 4.0])


def test_what_goes_to_the_grid_is_no_use() -> None:
    bills = read_bills(example(kind=reading_type(flow=19), readings=(reading(STARTS[0], 900, 0),)))
    assert bills.intervals[0].kwh == 0.0
    assert bills.intervals[0].export_kwh == pytest.approx(0.9)


def test_gas_is_refused_in_plain_words() -> None:
    with pytest.raises(BillsError, match="holds no electricity"):
        read_bills(example(service=1))
    with pytest.raises(BillsError, match="no electricity"):
        read_bills(example(kind=reading_type(unit=169), bill="<x/>"))


@pytest.mark.parametrize(
    "head",
    [
        '<!DOCTYPE feed [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>',
        '<!DOCTYPE feed SYSTEM "file:///etc/hosts">',
        '<!DOCTYPE feed [<!ENTITY x SYSTEM "file:///etc/hosts">]>',
    ],
)
def test_entities_are_refused_before_they_grow(head: str) -> None:
    text = f'{head}<feed xmlns="http://www.w3.org/2005/Atom">x</feed>\n'
    with pytest.raises(BillsError, match="declares a document type or entities"):
        read_bills(text)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("<feed>\n", "no complete XML"),
        ("<feed></feed>\n", "not of the open standard"),
        ("<a>" * 60 + "</a>" * 60, "deeper"),
    ],
)
def test_other_xml_is_refused(text: str, said: str) -> None:
    with pytest.raises(BillsError, match=said):
        read_bills(text)
