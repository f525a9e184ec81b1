"""Facts moved one at a time, and figures whose parts are known."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.ranges.drivers import drivers, one_at_a_time
from costcompare.uncertainty import Distribution, Draws, UncertainFact
from costcompare.uncertainty.distributions import Z90
from costcompare.uncertainty.uncertain_facts import Scope


def fact(name: str, scope: Scope = "home") -> UncertainFact:
    spread = Distribution("normal", 0.0, -1.0, 1.0)
    return UncertainFact(name, name, f"about {name}", "seen", scope, spread)


def standard(facts: tuple[UncertainFact, ...], members: int = 64) -> Draws:
    """Draws with a mean of 0 and a standard deviation of 1 in each column."""
    z = np.random.default_rng(0).standard_normal((members, len(facts)))
    return Draws(facts, (z - z.mean(axis=0)) / z.std(axis=0))


def test_each_fact_has_two_homes_that_differ_in_it_alone() -> None:
    homes = one_at_a_time(standard((fact("a"), fact("b"))))
    assert homes.z == pytest.approx(np.array([[-Z90, 0], [Z90, 0], [0, -Z90], [0, Z90]]))


def test_swings_and_shares_of_a_sum() -> None:
    homes = one_at_a_time(standard((fact("a"), fact("b"), fact("c"))))
    a, b, _ = homes.z.T
    found = drivers(homes, 1000.0 - 10.0 * a + 30.0 * b)
    assert [one.path for one in found] == ["b", "a"]
    assert [one.share for one in found] == pytest.approx([0.9, 0.1])
    assert [one.swing_usd for one in found] == pytest.approx([60.0 * Z90, -20.0 * Z90])


def test_facts_of_money_and_facts_that_do_not_vary_drive_no_bill() -> None:
    draws = standard((fact("a"), fact("growth", "money"), fact("fixed")))
    draws.z[:, 2] = 0.5
    homes = one_at_a_time(draws)
    assert homes.z.shape == (2, 3)
    assert [one.path for one in drivers(homes, homes.z[:, 0])] == ["a"]
    assert drivers(homes, np.full(2, 7.0)) == ()
