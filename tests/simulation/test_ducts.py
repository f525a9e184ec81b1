"""Damage, measured leaks and leftovers of ducts, on the demo household."""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
import pytest

from costcompare import simulate, typical_year
from costcompare.case import case_from_document, example_path, override, read_document
from costcompare.case.facts import System
from costcompare.simulation import HourlyResult
from costcompare.weather import Weather

ROOM = "corner bedroom"


@cache
def demo() -> dict[str, Any]:
    return dict(read_document(example_path("demo")))


@cache
def weather() -> Weather:
    return typical_year(37.27, -79.94)


def changed(*changes: str) -> tuple[System, HourlyResult]:
    document = demo()
    for change in changes:
        document = override(document, change)
    case = case_from_document(document)
    return case.today, simulate(case, weather=weather())


def room_mean(year: HourlyResult, name: str) -> float:
    """Mean of January [degC]."""
    return float(year.room_temperature[:744, year.room_names.index(name)].mean())


def test_a_fallen_branch_costs_money_and_warmth() -> None:
    _, whole = changed()
    _, fallen = changed(f'today.ducts.branches={{ "{ROOM}" = "fallen" }}')
    assert fallen.heating.sum() > 1.01 * whole.heating.sum()
    assert room_mean(fallen, ROOM) < room_mean(whole, ROOM) - 0.5
    assert fallen.space_temperature["crawlspace"][:744].mean() > (
        whole.space_temperature["crawlspace"][:744].mean()
    )
    assert fallen.energy_balance_error < 1e-6


def test_a_crushed_branch_costs_warmth_in_its_room() -> None:
    _, whole = changed()
    _, crushed = changed(f'today.ducts.branches={{ "{ROOM}" = "crushed" }}')
    assert room_mean(crushed, ROOM) < room_mean(whole, ROOM) - 0.3
    assert crushed.heating.sum() == pytest.approx(whole.heating.sum(), rel=0.05)


def test_a_measured_leak_is_a_share_of_the_airflow() -> None:
    """120 cfm at 25 Pa of a blower of 1,200 cfm: a tenth."""
    system, _ = changed(
        "today.blower.airflow=1200 cfm", "today.ducts.supply_leakage_at_25_pa=120 cfm"
    )
    assert system.ducts is not None
    assert system.ducts.supply_leakage == pytest.approx(0.1)


def test_a_return_that_stands_open_draws_crawlspace_air() -> None:
    system, open_return = changed('today.ducts.return_path="open to the space"')
    assert system.ducts is not None
    assert system.ducts.return_leakage == pytest.approx(0.4)
    _, ducted = changed("today.ducts.return_leakage=10 %")
    assert open_return.ducts is not None
    assert ducted.ducts is not None
    assert open_return.ducts.return_leak.sum() > 2.0 * ducted.ducts.return_leak.sum()


def test_heat_is_left_in_the_ducts_at_short_runs() -> None:
    metal_system, metal = changed('today.ducts.material="metal"')
    flexible_system, flexible = changed('today.ducts.material="flexible"')
    assert metal_system.ducts is not None
    assert flexible_system.ducts is not None
    assert metal_system.ducts.cyclic_loss > flexible_system.ducts.cyclic_loss
    assert metal.heating.sum() > flexible.heating.sum()
    assert metal.energy_balance_error < 1e-6


def test_open_boots_leak_and_capped_ones_do_not() -> None:
    document = demo()
    ductless = next(o for o in document["options"] if o["kind"] == "ductless heat pump")
    name = ductless["name"]
    bought = []
    for left_open in ("false", "true"):
        changed_document = override(document, f'options."{name}".old_ducts_left_open={left_open}')
        case = case_from_document(changed_document)
        year = simulate(case, name, weather=weather())
        bought.append(year.electricity.sum())
        assert np.isfinite(bought).all()
    assert bought[1] > bought[0]
