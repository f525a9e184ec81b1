"""Draws: the same numbers everywhere, percentiles as stated, options that keep their own."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
import pytest

from costcompare.case import (
    case_from_document,
    example_names,
    example_path,
    read_case,
    read_document,
)
from costcompare.case.facts import Case
from costcompare.simulation import setpoints_as_wanted
from costcompare.uncertainty import (
    drawn_case,
    kept_setpoints,
    log_prior,
    prior_draws,
    uncertain_facts,
    winter_of,
)


@cache
def case(name: str = "demo") -> Case:
    return read_case(example_path(name))


def column(z: np.ndarray, names: tuple[str, ...], name: str) -> np.ndarray:
    return z[:, names.index(name)]


@pytest.mark.parametrize("name", example_names())
def test_a_likely_member_is_the_case_itself(name: str) -> None:
    facts = uncertain_facts(case(name))
    likely = drawn_case(case(name), facts, np.zeros(len(facts)))
    assert likely.home.site == case(name).home.site
    for got, stated in (
        (likely.home.house.constructions.wall, case(name).home.house.constructions.wall),
        (
            likely.options[0].home.house.constructions.floor,
            case(name).options[0].home.house.constructions.floor,
        ),
    ):
        assert got.resistance == pytest.approx(stated.resistance)
    assert likely.money == case(name).money
    for got_option, option in zip(likely.options, case(name).options, strict=True):
        ducts, own = got_option.system.ducts, option.system.ducts
        if own is not None and ducts is not None:
            assert ducts.supply_leakage == pytest.approx(own.supply_leakage)
            assert ducts.supply_area == pytest.approx(own.supply_area)


def test_the_same_seed_gives_the_same_members_and_another_seed_others() -> None:
    one, two, other = (prior_draws(case(), 16, seed=seed) for seed in (1, 1, 2))
    assert np.array_equal(one.z, two.z)
    assert not np.array_equal(one.z, other.z)
    assert one.member(case(), 3) == two.member(case(), 3)


@pytest.mark.parametrize("members", [1, 5, 64])
def test_any_number_of_members_can_be_drawn(members: int) -> None:
    assert prior_draws(case(), members).z.shape == (members, len(uncertain_facts(case())))


def test_no_member_is_an_error() -> None:
    with pytest.raises(ValueError, match="at least one member"):
        prior_draws(case(), 0)


def test_draws_keep_the_percentiles_of_each_fact() -> None:
    draws = prior_draws(case(), 256)
    for fact in draws.facts:
        if fact.today is None:
            continue
        values = [fact.today.at(z) for z in column(draws.z, draws.names, fact.name)]
        below = np.mean(np.array(values) <= fact.today.low + 1e-12)
        above = np.mean(np.array(values) >= fact.today.high - 1e-12)
        assert (below, above) == (pytest.approx(0.1, abs=0.01), pytest.approx(0.1, abs=0.01))


def test_a_fact_that_becomes_known_leaves_the_draws_of_the_others() -> None:
    document: dict[str, Any] = read_document(example_path("demo"))
    use = "430 kWh/month"
    document["other_use"]["electricity"] = {"likely": use, "low": use, "high": use}
    surer = prior_draws(case_from_document(document), 32)
    draws = prior_draws(case(), 32)
    assert set(draws.names) - set(surer.names) == {"other_use.electricity"}
    for name in surer.names:
        assert np.array_equal(
            column(surer.z, surer.names, name), column(draws.z, draws.names, name)
        )


def test_an_option_keeps_today_s_draw_unless_it_replaces_the_fact() -> None:
    draws = prior_draws(case(), 8)
    for row in range(8):
        member = draws.member(case(), row)
        first, on_old_ducts, *_ = member.options
        today = member.today.ducts
        assert today is not None
        assert first.system.ducts is not None
        assert on_old_ducts.system.ducts is not None
        assert first.system.ducts.supply_leakage <= 0.1
        assert first.system.ducts.supply_area == today.supply_area
        assert on_old_ducts.system.ducts == today
        assert on_old_ducts.home is member.home
        assert first.home.house.leakage == member.home.house.leakage
        assert first.home.house.constructions.floor.resistance > 2.0


def test_what_an_option_replaces_moves_with_the_same_number() -> None:
    draws = prior_draws(case(), 32)
    members = [draws.member(case(), row) for row in range(32)]
    now = [m.home.house.windows.u_factor for m in members]
    new = [m.options[-1].home.house.windows.u_factor for m in members]
    assert np.argsort(now).tolist() == np.argsort(new).tolist()


def test_heads_with_their_own_setting_follow_how_the_house_is_kept() -> None:
    facts = uncertain_facts(case())
    z = np.array([1.0 if fact.name == "thermostat.wanted" else 0.0 for fact in facts])
    warmer = drawn_case(case(), facts, z).home
    stated = setpoints_as_wanted(case().home)
    kept = kept_setpoints(case().home, warmer, wanted=True)
    rise = kept.house - stated.house
    assert rise == pytest.approx(np.full(24, 1.0 / 1.8 / 1.2815515655))
    assert kept.of_unit(21.0) == pytest.approx(stated.of_unit(21.0) + rise)
    assert kept_setpoints(case().home, warmer, wanted=False).house == pytest.approx(
        kept_setpoints(case().home, case().home, wanted=False).house
    )


def test_the_winter_is_drawn_beside_the_home() -> None:
    draws = prior_draws(case(), 128)
    shifts = np.array([draws.winter(row) for row in range(128)])
    assert np.quantile(shifts, [0.1, 0.5, 0.9]) == pytest.approx([-1.4, 0.0, 1.4], abs=0.05)
    cold = replace(case(), weather=replace(case().weather, winter="cold"))
    facts = uncertain_facts(cold)
    assert winter_of(facts, np.ones(len(facts))) == 0.0


def test_the_prior_falls_with_the_square_of_the_distance() -> None:
    z = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 2.0]])
    assert log_prior(z) == pytest.approx([0.0, -0.5, -2.5])
