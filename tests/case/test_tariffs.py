"""Tables of tariffs as facts, and what is refused of them, in its words."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from costcompare.case.facts import Change, DemandCharge, Rider, Tax, Tier, YearDays
from costcompare.case.tariff_facts import HOLIDAY_SETS

from .cases import case, document, sentences

FULL: dict[str, Any] = {
    "price": None,
    "customer_charge": "8 $/month",
    "daily_charge": "0.20 $/day",
    "tiers": [{"up_to_daily": "20 kWh/day", "price": "9 cents/kWh"}, {"price": "0.14 $/kWh"}],
    "seasons": [{"name": "hot", "dates": "06-15 to 09-14", "tiers": [{"price": "0.2 $/kWh"}]}],
    "periods": [
        {
            "name": "peak",
            "dates": "12-01 to 02-28",
            "days": "weekdays",
            "hours": "6-9",
            "price": "0.3 $/kWh",
        }
    ],
    "holidays": ["usual six", "christmas eve", date(2027, 3, 3)],
    "holidays_observed": "nearest weekday",
    "demand": [{"price": "4 $/kW", "hours": "14-19", "ratchet": "60 %"}],
    "riders": [
        {"name": "fuel", "per_kwh": "-0.002 $/kWh", "months": "1-6"},
        {"name": "fund", "per_month": "1.20 $/month"},
        {"name": "city", "share": "2 %", "on": ["energy", "fixed"]},
    ],
    "taxes": [{"name": "state", "share": "4 %"}, {"name": "town", "share": "1 %", "on": ["taxes"]}],
    "minimum_bill": "15 $/month",
    "minimum_counts": ["energy", "fixed"],
    "export": {"netting": "month", "price": "0.03 $/kWh", "true_up": 4, "unused": "paid"},
    "proration": "30 days",
    "whole_month": "27-34",
    "split": "by use",
    "rounding": "lines",
    "reads": "end of day",
    "overlaps": "first wins",
    "changes": [{"from": date(2027, 7, 1), "price": "0.15 $/kWh", "tax": "5 %"}],
}


def test_every_key_of_a_tariff_becomes_a_fact() -> None:
    tariff = case(tariff=FULL).tariff
    assert tariff.tiers == (Tier(20.0, pytest.approx(0.09), daily=True), Tier(None, 0.14))
    assert tariff.seasons[0].dates == YearDays((6, 15), (9, 14))
    assert tariff.periods[0].dates == YearDays((12, 1), (2, 28))
    assert tariff.holiday_names == (*HOLIDAY_SETS["usual six"], "christmas eve")
    assert (tariff.holidays, tariff.observed) == ((date(2027, 3, 3),), "nearest weekday")
    window = tuple(14 <= hour < 19 for hour in range(24))
    assert tariff.demand == (DemandCharge("demand", 4.0, hours=window, ratchet=0.6),)
    first_half = tuple(month <= 6 for month in range(1, 13))
    assert tariff.riders == (
        Rider("fuel", per_kwh=-0.002, months=first_half),
        Rider("fund", per_month=1.2),
        Rider("city", share=0.02, on=("energy", "fixed")),
    )
    assert tariff.taxes == (Tax("state", 0.04), Tax("town", 0.01, ("taxes",)))
    assert (tariff.minimum_bill, tariff.minimum_counts) == (15.0, ("energy", "fixed"))
    export = tariff.export
    assert (export.netting, export.price, export.true_up, export.unused) == (
        *("month", 0.03),
        *(4, "paid"),
    )
    rules = tariff.conventions
    assert (rules.proration, rules.whole_month, rules.split) == ("30 days", (27, 34), "by use")
    assert (rules.rounding, rules.reads, rules.overlaps) == ("lines", "end of day", "first wins")


def test_a_change_keeps_what_it_does_not_name() -> None:
    tariff = case(tariff=FULL).tariff
    (change,) = tariff.changes
    assert isinstance(change, Change)
    later = change.tariff
    assert later.tiers == (Tier(None, 0.15),)
    assert (later.tax, later.taxes) == (0.05, ())
    assert (later.seasons, later.riders, later.demand) == (
        *(tariff.seasons, tariff.riders),
        tariff.demand,
    )
    assert tariff.on(date(2027, 6, 30)) is tariff
    assert tariff.on(date(2027, 7, 1)) is later


def test_other_tariffs_have_every_key_too() -> None:
    other = {**{k: v for k, v in FULL.items() if v is not None}, "name": "other"}
    made = case(other_tariffs=[other])
    assert [tariff.name for tariff in made.other_tariffs] == ["other"]
    assert made.other_tariffs[0].demand == case(tariff=FULL).tariff.demand


PEAK = {"name": "peak", "hours": "14-19", "price": "0.3 $/kWh"}


@pytest.mark.parametrize(
    ("tariff", "sentence"),
    [
        (
            {"periods": [PEAK, {"name": "dear", "hours": "18-21", "price": "0.2 $/kWh"}]},
            'tariff.periods.dear: shares hours with the period "peak", which has another price: '
            "weekdays 18-19, weekends 18-19 all year. Write hours that do not meet, or "
            'overlaps = "first wins".',
        ),
        (
            {"periods": [PEAK, {"name": "core", "hours": "15-16", "price": "0.4 $/kWh"}]},
            "tariff.periods.core: is never reached: the periods that stand before it price all its "
            "hours. Write the narrower period first.",
        ),
        (
            {"price": None, "periods": [PEAK]},
            "tariff.tiers: must price the hours that no period prices: weekdays 19-14, weekends "
            '19-14 all year. Write for example tiers = [ { price = "0.12 $/kWh" } ].',
        ),
        (
            {"price": "-0.1 $/kWh"},
            "tariff.tiers.1.price: must be at least 0 $/kWh (given: -0.1 $/kWh).",
        ),
        (
            {"ends": date(2027, 6, 30)},
            "tariff.ends: must not end before the year that is worked out, 2027, does (given: "
            "2027-06-30). Write the prices that follow, as a row of changes, and leave ends out.",
        ),
        (
            {"holidays": [date(2026, 7, 3)]},
            "tariff.holidays: none of the days lies in the year that is worked out, 2027 (given: "
            '2026-07-03). Write holidays of every year by name, such as ["usual six"].',
        ),
        (
            {"riders": [{"name": "fund"}]},
            "tariff.riders.fund: needs one of per_kwh, per_month and share. Write for example "
            'per_kwh = "0.004 $/kWh".',
        ),
        (
            {"riders": [{"name": "fund", "share": "1 %", "on": ["taxes"]}]},
            "tariff.riders.fund.on: must be lines that are worked out before: energy, demand, "
            "riders, fixed, percentages (given: taxes).",
        ),
        (
            {"tax": "1 %", "taxes": [{"name": "state", "share": "1 %"}]},
            "tariff.tax: give either tax or taxes, not both.",
        ),
        (
            {"changes": [{"from": date(2027, 7, 1)}, {"from": date(2027, 6, 1)}]},
            "tariff.changes.2027-06-01: must come after the change of 2027-07-01 (given: "
            "2027-06-01).",
        ),
        (
            {"seasons": [{"name": "hot", "tiers": [{"price": "0.1 $/kWh"}]}]},
            'tariff.seasons.hot: needs months or dates. Write for example months = "6-9".',
        ),
        (
            {"holidays": ["independance day"]},
            "tariff.holidays.1: must be a day such as 2027-12-25, or one of: usual six; us federal;"
            " new year's day; martin luther king day; presidents' day; good friday; memorial day; "
            "juneteenth; independence day; labor day; columbus day; veterans day; thanksgiving; "
            'day after thanksgiving; christmas eve; christmas day (given: "independance day"). '
            'Write "independence day".',
        ),
        (
            {"whole_month": "27"},
            'tariff.whole_month: must be the fewest and the most days such as 27-34 (given: "27"). '
            'Write for example "27-34".',
        ),
        (
            {"seasons": [{"name": "x", "dates": "2-30 to 3-1", "tiers": [{"price": "1 $/kWh"}]}]},
            "tariff.seasons.x.dates: must be two days, month and day, such as 06-15 to 09-14 "
            '(given: "2-30 to 3-1"). Write for example "06-15 to 09-14".',
        ),
    ],
)
def test_what_is_wrong_with_a_tariff_is_said(tariff: dict[str, Any], sentence: str) -> None:
    assert sentences(document(tariff=tariff)) == [sentence]


def test_an_order_that_is_stated_lets_periods_meet() -> None:
    dear = {"name": "dear", "hours": "18-21", "price": "0.2 $/kWh"}
    assert sentences(document(tariff={"periods": [PEAK, dear], "overlaps": "first wins"})) == []
    same = {**dear, "price": "0.3 $/kWh"}
    assert sentences(document(tariff={"periods": [PEAK, same]})) == []


def test_faults_of_all_tariffs_come_at_once() -> None:
    wrong = {"name": "night", "price": "-0.1 $/kWh", "minimum_bill": "5 $/month"}
    found = sentences(document(tariff={"ends": date(2027, 3, 1)}, other_tariffs=[wrong]))
    assert [sentence.split(":")[0] for sentence in found] == [
        "tariff.ends",
        "other_tariffs.night.tiers.1.price",
    ]


def test_other_tariffs_need_names_of_their_own() -> None:
    rows = [{"price": "0.1 $/kWh"}, {"name": "electricity", "price": "0.1 $/kWh"}]
    assert sentences(document(other_tariffs=rows)) == [
        'other_tariffs.1.name: is needed. Write for example name = "time of use".',
        "other_tariffs.electricity: must be the name of one row only (given: 2 rows).",
    ]
