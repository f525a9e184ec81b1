"""Duct efficiency against worked cases of the standard method.

Source: the equations of ASHRAE Standard 152 (heating), from memory. No worked example of the
standard was to be had: the cases below were computed twice, once by the closed form and
once by following the air, in inch-pound and in SI units. Agreement asked for: 1e-4.
"""

from __future__ import annotations

import math

import pytest

from costcompare.physics.air import half_fan_inflow
from costcompare.physics.ducts import (
    air_path,
    conduction_factor,
    delivery_effectiveness,
    load_factor,
    regained_effectiveness,
)

CFM = 4.719474e-4  # [m3/s]
SQUARE_FOOT = 0.09290304  # [m2]
BTU_H = 0.29307107  # [W]
R_UNIT = 0.1761102  # [m2 K/W]
K = 1207.19
ROOM, CRAWLSPACE, OUTDOORS = 20.0, (46 - 32) / 1.8, (38 - 32) / 1.8
REGAIN = 0.12

# name: heat [Btu/h], R, supply leak, return leak, DE, DE with regain, DSE, cyclic loss, register F
CASES = {
    "C1 old leaky furnace": (51182.13, 4.0, 0.15, 0.10, 0.6971, 0.7280, 0.6766, 0.05, 106.8677),
    "C2 sealed": (51182.13, 4.0, 0.04, 0.03, 0.8153, 0.8358, 0.7910, 0.05, 108.2457),
    "C3 heat pump": (24000.0, 4.0, 0.15, 0.10, 0.6101, 0.6452, 0.5809, 0.05, 83.9514),
    "C6 perfect": (51182.13, math.inf, 0.0, 0.0, 1.0, 1.0, 1.0, 0.0, 115.3909),
    "C7 sealed and wrapped": (51182.13, 8.0, 0.04, 0.03, 0.8793, 0.8921, 0.8445, 0.05, 111.4075),
}


@pytest.mark.parametrize("name", CASES)
def test_worked_cases(name: str) -> None:
    heat, r, supply, back, expected, expected_regain, expected_system, cyclic, register = CASES[
        name
    ]
    flow, heat_w = 1000 * CFM, heat * BTU_H
    supply_area, return_area = 405 * SQUARE_FOOT, 75 * SQUARE_FOOT
    effectiveness = delivery_effectiveness(
        airflow=flow,
        heat_output=heat_w,
        supply_leakage=supply,
        return_leakage=back,
        supply_area=supply_area,
        return_area=return_area,
        resistance=r * R_UNIT,
        room=ROOM,
        around=CRAWLSPACE,
    )
    assert effectiveness == pytest.approx(expected, abs=1e-4)

    return_factor = conduction_factor(return_area, K, flow, r * R_UNIT)
    with_regain = regained_effectiveness(
        effectiveness,
        regain=REGAIN,
        return_leakage=back,
        return_factor=return_factor,
        rise=heat_w / (K * flow),
        difference=ROOM - CRAWLSPACE,
    )
    assert with_regain == pytest.approx(expected_regain, abs=1e-4)

    natural = 80 * CFM
    load = load_factor(
        inflow_on=half_fan_inflow(natural, (supply - back) * flow),
        inflow_off=natural,
        heat_output=heat_w,
        effectiveness=with_regain,
        difference=ROOM - OUTDOORS,
    )
    assert with_regain * load * (1 - cyclic) == pytest.approx(expected_system, abs=1e-4)

    path = air_path(
        ROOM,
        CRAWLSPACE,
        heat_w / (K * flow),
        1 - back,
        return_factor,
        conduction_factor(supply_area, K, flow, r * R_UNIT),
    )
    assert path.register * 1.8 + 32 == pytest.approx(register, abs=1e-2)


def test_half_fan_rule() -> None:
    """Palmiter and Bond 1991 (from memory): 80 cfm natural with 50, 100, 160 cfm unbalanced."""
    for extraction, expected in ((50, 105), (100, 130), (160, 160), (200, 200), (-50, 55)):
        found = half_fan_inflow(80 * CFM, extraction * CFM) / CFM
        assert found == pytest.approx(expected, abs=1e-9)
