"""What an hour of heating costs by the temperature outdoors."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare import tonight
from costcompare.billing.tariff import needs_hours, year_bill
from costcompare.case import example_path, read_case
from costcompare.case.tariff_facts import Rounding
from costcompare.comparing import simulate
from costcompare.comparison import OutdoorHour
from costcompare.tonight import at_outdoors, hours_by_outdoors

HOURS = (OutdoorHour(20.0, 100, 10.0, 1.2), OutdoorHour(30.0, 300, 8.0, 0.9))


def test_the_hours_of_a_year_add_up_to_its_heating() -> None:
    case = read_case(example_path("demo"))
    year = simulate(case)
    bill = year_bill(case.tariff, year.electricity / 1000.0, year.index, case.home.site.time_zone)
    hours = hours_by_outdoors(year, case.tariff, bill, case.home.site.time_zone)
    warm = year.equipment_heat > 0.0
    heating = float((year.heating + year.fan)[warm].sum()) / 1000.0
    gathered = sum(hour.heating_kw * hour.hours for hour in hours)
    # A few of the coldest and the warmest hours are too rare to speak of.
    assert gathered == pytest.approx(heating, rel=0.02)
    # The colder it is, the dearer, at no less than the tier's first price with its tax.
    costs = [hour.usd_per_hour for hour in hours if hour.outdoor_degf <= 50.0]
    assert costs == sorted(costs, reverse=True)
    for hour in hours:
        price = hour.usd_per_hour / hour.heating_kw
        assert 0.126 * 1.025 - 1e-9 <= price <= 0.142 * 1.025 + 1e-9


@pytest.mark.parametrize("rounding", ["none", "lines", "total"])
def test_hours_priced_by_the_month_cost_what_they_cost_hour_by_hour(
    rounding: Rounding, monkeypatch: pytest.MonkeyPatch
) -> None:
    case = read_case(example_path("demo"))
    tariff = replace(case.tariff, conventions=replace(case.tariff.conventions, rounding=rounding))
    assert not needs_hours(tariff)
    year, zone = simulate(case), case.home.site.time_zone
    bill = year_bill(tariff, year.electricity / 1000.0, year.index, zone)
    by_month = hours_by_outdoors(year, tariff, bill, zone)
    monkeypatch.setattr(tonight, "needs_hours", lambda _tariff: True)
    for one, other in zip(by_month, hours_by_outdoors(year, tariff, bill, zone), strict=True):
        assert one.usd_per_hour == pytest.approx(other.usd_per_hour, rel=1e-9)


def test_with_prices_by_the_time_of_day_an_hour_costs_one_of_them() -> None:
    case = read_case(example_path("summer_peak"))
    assert needs_hours(case.tariff)
    year, zone = simulate(case), case.home.site.time_zone
    bill = year_bill(case.tariff, year.electricity / 1000.0, year.index, zone)
    hours = hours_by_outdoors(year, case.tariff, bill, zone)
    assert hours
    kwh = sum(hour.heating_kw * hour.hours for hour in hours)
    usd = sum(hour.usd_per_hour * hour.hours for hour in hours)
    rates = (case.tariff, *(season for season in case.tariff.seasons))
    every = [tier.price for one in rates for tier in one.tiers]
    every += [period.price for period in case.tariff.periods]
    riders = sum(rider.per_kwh or 0.0 for rider in case.tariff.riders)
    assert min(every) + riders <= usd / kwh <= 1.25 * (max(every) + riders)


def test_between_two_temperatures_and_outside_of_all() -> None:
    assert at_outdoors(HOURS, 25.0) == pytest.approx(1.05)
    assert at_outdoors(HOURS, 34.0) == pytest.approx(0.9)
    assert at_outdoors(HOURS, 14.0) is None
    assert at_outdoors(HOURS, 36.0) is None
    assert at_outdoors((), 30.0) is None
