"""The check after a winter on made-up houses whose saving is known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest

from costcompare.billing.promise import AS_LIVED, AS_WANTED, Promise
from costcompare.billing.reading.bills import Bill, Bills, Note
from costcompare.billing.second_winter import Habits, SecondWinter, checked_winter
from costcompare.errors import BillsError
from tests.billing.synthetic_year import (
    DEGF,
    FIRST,
    NOISE,
    READS,
    TEMPERATURES,
    bills,
    degc,
    uses,
)

COLDER = DEGF - 3.0
BOTH = replace(TEMPERATURES, degc=np.concatenate([degc(DEGF), degc(COLDER)]))
"""The year before, and a colder one after"""


def before() -> Bills:
    return Bills(tuple(bills(uses())))


def after(amounts: Sequence[float]) -> Bills:
    return Bills(tuple(bills(amounts, later=1)))


def check(
    amounts: Sequence[float],
    habits: Habits | None = None,
    promises: tuple[Promise, ...] = (),
    notes: tuple[Note, ...] = (),
) -> SecondWinter:
    return checked_winter(
        before(),
        replace(after(amounts), notes=notes),
        BOTH,
        normal=TEMPERATURES,
        habits=habits,
        promises=promises,
    )


def promise(saving: float, heating: float, warmth: str = AS_LIVED) -> Promise:
    return Promise("a head", warmth, 14396.0, 14396.0 - saving, saving, heating, 0.0, None, None, None)  # noqa: E501  # fmt: skip


def test_the_weather_is_taken_out_exactly() -> None:
    found = check(uses(COLDER, slope=0.925))
    assert found.expected_kwh == pytest.approx(sum(uses(COLDER)))
    heating = sum(uses(COLDER)) - 365 * 24.0
    assert found.saving_kwh == pytest.approx(heating / 2.0)
    assert found.year_saving_kwh == pytest.approx((sum(uses()) - 365 * 24.0) / 2.0)
    assert found.is_shown


def test_a_colder_winter_alone_is_no_loss() -> None:
    found = check(uses(COLDER))
    assert found.measured_kwh > sum(uses()) + 1000.0
    assert found.saving_kwh == pytest.approx(0.0, abs=1e-6)
    assert not found.is_shown


def test_the_uncertainty_is_that_of_the_formula() -> None:
    noisy = [use * (1.0 + part) for use, part in zip(uses(), NOISE, strict=True)]
    found = checked_winter(
        Bills(tuple(bills(noisy))), after([0.8 * use for use in uses(COLDER)]), BOTH
    )
    assert found.uncertainty_share == pytest.approx(0.104045 * 0.20 / found.saving_share, abs=2e-5)
    assert found.low_kwh is not None
    assert found.high_kwh is not None
    assert found.low_kwh < found.saving_kwh < found.high_kwh


def test_warmer_rooms_a_car_and_cooling_are_taken_out() -> None:
    warm = uses(COLDER, slope=0.925, balance=61.0)
    plain = check(warm)
    habits = Habits(warmer_degf=4.0, car_kwh_per_month=100.0)
    months = 365.0 / (365.0 / 12.0)
    charged = [use + 100.0 * bill.days / (365.0 / 12.0) for use, bill in zip(warm, bills(warm), strict=True)]  # noqa: E501  # fmt: skip
    found = check(charged, habits)
    assert found.saving_kwh == pytest.approx(plain.saving_kwh - 100.0 * months)
    assert found.car_kwh == pytest.approx(1200.0)
    assert found.warmer_kwh == pytest.approx(sum(uses(COLDER, balance=61.0)) - sum(uses(COLDER)))
    # Lived in as before the new system takes half of what the same warmth took of the old one.
    same = sum(uses(COLDER, balance=61.0)) - sum(warm)
    assert found.same_habits_saving_kwh == pytest.approx(same)


def test_new_cooling_is_found_in_the_bills() -> None:
    at = [(read - FIRST).days for read in READS]
    daily = 24.0 + 0.925 * np.maximum(57.0 - COLDER, 0.0) + 0.8 * np.maximum(COLDER - 62.0, 0.0)
    amounts = [float(daily[a:b].sum()) for a, b in pairwise(at)]
    found = check(amounts, promises=(promise(3500.0, 2800.0),))
    cooling = float((0.8 * np.maximum(COLDER - 62.0, 0.0)).sum())
    assert found.cooling_kwh == pytest.approx(cooling, rel=1e-6)
    assert "new cooling" in [cause.name for cause in found.causes]


def test_what_was_expected_is_held_against_the_year() -> None:
    heating = sum(uses()) - 365 * 24.0
    kept = check(uses(COLDER, slope=0.925), promises=(promise(heating / 2.0, heating / 2.0),))
    assert kept.shortfall_kwh == pytest.approx(0.0, abs=1e-6)
    assert kept.causes == ()
    short = check(uses(COLDER, slope=1.4), promises=(promise(heating / 2.0, heating / 2.0),))
    assert short.shortfall_kwh is not None
    assert short.shortfall_kwh > 500.0
    assert short.is_within_uncertainty is False
    first = short.causes[0]
    assert first.name == "heating above the promise"
    assert first.kwh == pytest.approx(short.shortfall_kwh)


def test_the_promise_of_the_warmth_they_live_at_is_taken() -> None:
    both = (promise(2000.0, 3000.0), promise(900.0, 4000.0, AS_WANTED))
    amounts = uses(COLDER, slope=0.925)
    lived, wanted = check(amounts, None, both), check(amounts, Habits(warmer_degf=3.0), both)
    assert lived.promise is not None
    assert wanted.promise is not None
    assert (lived.promise.warmth, wanted.promise.warmth) == (AS_LIVED, AS_WANTED)
    assert wanted.other_promises == both[:1]


def test_causes_are_ranked() -> None:
    note = Note("estimated read", "The utility estimated a read.", "Put together.")
    found = check(
        uses(COLDER, base=29.0, slope=1.2),
        Habits(warmer_degf=0.0, car_kwh_per_month=40.0),
        (promise(4000.0, 1500.0),),
        (note,),
    )
    names = [cause.name for cause in found.causes]
    assert names[0] == "heating above the promise"
    assert names[1:3] == ["higher base", "new use"]
    assert names[-1] == "estimated reads"
    assert [cause.is_known for cause in found.causes] == [False, False, True, False]


def test_coldest_bills_above_the_line_are_a_cause() -> None:
    amounts = uses(COLDER, slope=0.9)
    means = [
        float(COLDER[(b.begins - FIRST).days : (b.ends - FIRST).days].mean())
        for b in bills(amounts)
    ]
    for i in sorted(range(12), key=lambda i: means[i])[:2]:
        amounts[i] += 500.0
    found = check(amounts, promises=(promise(5000.0, 800.0),))
    assert "coldest bills" in [cause.name for cause in found.causes]


def test_warmth_that_was_expected_is_no_shortfall() -> None:
    wanted = (promise(9000.0, 500.0, AS_WANTED),)
    found = check(uses(COLDER, slope=0.925), Habits(warmer_degf=3.0), wanted)
    assert "warmer rooms" not in [cause.name for cause in found.causes]
    lived = check(uses(COLDER, slope=0.925), Habits(warmer_degf=3.0), (promise(9000.0, 500.0),))
    assert "warmer rooms" in [cause.name for cause in lived.causes]


def test_a_house_without_weather_in_its_bills_cannot_be_checked() -> None:
    flat = [Bill(b.begins, b.ends, 30.0 * b.days) for b in bills(uses())]
    with pytest.raises(BillsError, match="cannot be freed of the weather"):
        checked_winter(Bills(tuple(flat)), after(uses()), BOTH)
