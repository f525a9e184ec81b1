"""From one bill to the next, in parts that add up."""

from __future__ import annotations

from datetime import date

import pytest

from costcompare.billing.change import between
from costcompare.billing.degree_days import fit
from costcompare.billing.reading.bills import Bill
from tests.billing.synthetic_year import TEMPERATURES, bills, uses


def test_by_hand_without_weather() -> None:
    earlier = Bill(date(2025, 1, 1), date(2025, 1, 31), 3000.0, 300.0)
    later = Bill(date(2025, 1, 31), date(2025, 3, 5), 3960.0, 475.2)
    change = between(earlier, later)
    assert (change.change_kwh, change.days_kwh, change.use_kwh) == (960.0, 300.0, 660.0)
    assert change.weather_kwh is None
    assert change.days_usd == pytest.approx(30.0)
    assert change.use_usd == pytest.approx(66.0)
    assert change.price_usd == pytest.approx(3960.0 * 0.02)
    assert change.change_usd == pytest.approx(175.2)


def test_the_parts_add_up_and_weather_explains_what_it_made() -> None:
    made = bills(uses())
    line = fit(made, TEMPERATURES)
    earlier = Bill(made[8].begins, made[8].ends, made[8].kwh, 90.0)
    later = Bill(made[11].begins, made[11].ends, made[11].kwh + 150.0, 240.0)
    change = between(earlier, later, line, TEMPERATURES)
    assert change.weather_kwh is not None
    assert change.use_kwh == pytest.approx(150.0, abs=1e-6)
    assert change.days_kwh + change.weather_kwh + change.use_kwh == pytest.approx(change.change_kwh)
    parts = (change.days_usd, change.weather_usd, change.use_usd, change.price_usd)
    assert sum(part or 0.0 for part in parts) == pytest.approx(150.0)


def test_weather_is_not_told_without_its_days() -> None:
    made = bills(uses())
    line = fit(made, TEMPERATURES)
    assert between(made[0], bills(uses(), later=3)[0], line, TEMPERATURES).weather_kwh is None
