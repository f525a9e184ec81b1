"""Percentiles that can be worked out by hand, and what holds for every distribution."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.uncertainty.distributions import KINDS, Z90, Distribution, Kind


def test_a_normal_value_lies_two_half_bells_round_its_likely_one() -> None:
    one = Distribution("normal", 20.0, 18.0, 23.0)
    assert one.at(0.0) == 20.0
    assert one.at(-Z90) == pytest.approx(18.0)
    assert one.at(Z90) == pytest.approx(23.0)
    assert one.at(2.0 * Z90) == pytest.approx(26.0)
    assert one.at(-0.5 * Z90) == pytest.approx(19.0)


def test_a_log_normal_value_doubles_and_halves_alike() -> None:
    one = Distribution("log-normal", 1.0, 0.5, 2.0)
    assert [one.at(n * Z90) for n in (-2, -1, 0, 1, 2)] == pytest.approx([0.25, 0.5, 1, 2, 4])
    assert one.at(0.5 * Z90) == pytest.approx(math.sqrt(2.0))


def test_a_bounded_value_goes_by_its_odds() -> None:
    # Odds 1:1 in the middle, 1:3 and 3:1 at the percentiles, 1:9 and 9:1 twice as far out.
    one = Distribution("bounded", 0.5, 0.25, 0.75, 0.0, 1.0)
    assert [one.at(n * Z90) for n in (-2, -1, 0, 1, 2)] == pytest.approx(
        [0.1, 0.25, 0.5, 0.75, 0.9]
    )
    assert one.at(50.0) <= 1.0


def test_a_bounded_value_at_its_limit_is_cut_off_there() -> None:
    one = Distribution("bounded", 0.0, 0.0, 0.05, 0.0, 0.6)
    assert one.at(-2.0) == 0.0
    assert one.at(Z90) == pytest.approx(0.05)
    assert one.at(3.0) == pytest.approx(0.05 * 3.0 / Z90)


def test_a_triangle_of_equal_sides() -> None:
    # Sides of 1: below a tenth lies sqrt(2 * 0.1) of a side from the end.
    low = -1.0 + math.sqrt(0.2)
    one = Distribution("triangular", 0.0, low, -low)
    assert one.at(0.0) == pytest.approx(0.0)
    assert one.at(-Z90) == pytest.approx(low)
    assert one.at(Z90) == pytest.approx(-low)
    assert one.at(8.0) == pytest.approx(1.0)
    assert one.at(-8.0) == pytest.approx(-1.0)


def test_a_triangle_that_leans_keeps_its_percentiles() -> None:
    one = Distribution("triangular", 1.0, 0.8, 3.0)
    assert one.at(-Z90) == pytest.approx(0.8)
    assert one.at(Z90) == pytest.approx(3.0)
    edge = Distribution("triangular", 1.0, 1.0, 2.0)
    assert edge.at(-Z90) == pytest.approx(1.0)
    assert edge.at(Z90) == pytest.approx(2.0)


@given(
    kind=st.sampled_from(KINDS),
    likely=st.floats(0.1, 0.9),
    below=st.floats(0.0, 1.0),
    above=st.floats(0.0, 1.0),
    numbers=st.lists(st.floats(-4.0, 4.0), min_size=2, max_size=6),
)
def test_every_value_rises_and_keeps_within_its_limits(
    kind: Kind, likely: float, below: float, above: float, numbers: list[float]
) -> None:
    one = Distribution(
        kind, likely, likely * (1.0 - below), likely + (1.0 - likely) * above, 0.0, 1.0
    )
    values = [one.at(z) for z in sorted(numbers)]
    assert values == sorted(values)
    assert all(0.0 <= value <= 1.0 for value in values)
    assert one.at(Z90) == pytest.approx(one.high, abs=1e-6)
    assert one.at(-Z90) == pytest.approx(one.low, abs=1e-6)


@pytest.mark.parametrize("kind", KINDS)
def test_an_exact_value_has_no_spread(kind: Kind) -> None:
    one = Distribution(kind, 3.0, 3.0, 3.0, 0.0, 10.0)
    assert one.exact
    assert {one.at(z) for z in (-3.0, 0.0, 3.0)} == {3.0}


def test_percentiles_out_of_order_are_refused() -> None:
    with pytest.raises(ValueError, match="must rise"):
        Distribution("normal", 1.0, 2.0, 3.0)
