"""Today's equipment and that of every kind of option, as the case makes them."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case import Case
from costcompare.case.facts import Option, System

from .cases import TWO_ROOMS, case

CFM = 0.3048**3 / 60.0  # [m3/s]
FT2 = 0.3048**2  # [m2]
R = 0.176110184  # [m2 K/W]
TON = 12000 * 1055.05585262 / 3600.0  # [W]
HEADS = {
    "name": "x",
    "kind": "ductless heat pump",
    "installed_cost": "$9,000",
    "units": [{"class": "single-zone cold-climate", "size": "15 kBtu/h", "room": "big room"}],
}
DUCTED = {
    "name": "x",
    "kind": "ducted heat pump",
    "installed_cost": "$9,000",
    "units": [{"class": "ducted variable", "size": "3 tons"}],
}


def optioned(base: dict[str, Any], *, today: Any = None, **changes: Any) -> tuple[Case, Option]:
    """A case of two rooms with one option."""
    made = case(rooms=TWO_ROOMS, today=today or {}, options=[{**base, **changes}])
    return made, made.options[0]


def test_a_furnace_with_what_is_left_out() -> None:
    today = case().today
    assert today.kind == "electric furnace"
    assert today.thermostat_room == "hall"
    assert today.blower is not None
    # 60 cfm a kW of a 15 kW furnace, 0.5 W a cfm
    assert today.blower.airflow == pytest.approx(900 * CFM)
    assert today.blower.power == pytest.approx(450.0)
    assert today.ducts is not None
    assert today.ducts.supply_area == pytest.approx(0.27 * 1500 * FT2)
    assert today.ducts.return_area == pytest.approx(0.05 * 1500 * FT2)
    assert (today.ducts.supply_leakage, today.ducts.return_leakage) == pytest.approx((0.15, 0.10))
    assert today.ducts.resistance == pytest.approx(3 * R)
    assert sum(today.registers.values()) == pytest.approx(1.0)


def test_an_upper_storey_shortens_the_ducts_outside() -> None:
    ducts = case(house={"storeys": 2}).today.ducts
    assert ducts is not None
    assert ducts.supply_area == pytest.approx(0.65 * 0.27 * 1500 * FT2)


def test_stated_values_win_over_words() -> None:
    stated = {
        "location": "crawlspace",
        "condition": "average",
        "supply_leakage": "20 %",
        "insulation": "R-8",
    }
    ducts = case(today={"ducts": stated}).today.ducts
    assert ducts is not None
    assert (ducts.supply_leakage, ducts.return_leakage) == pytest.approx((0.20, 0.08))
    assert ducts.resistance == pytest.approx(8 * R)
    measured = {"supply_leakage": "20 %", "return_leakage": "5 %", "insulation": "R-8"}
    ducts = case(today={"ducts": measured}).today.ducts
    assert ducts is not None
    assert ducts.condition == "measured values"


def test_register_shares_are_brought_to_one() -> None:
    made = case(
        rooms=TWO_ROOMS, today={"ducts": {"registers": {"big room": "70 %", "bedroom": 0.31}}}
    )
    assert made.today.registers["big room"] == pytest.approx(0.7 / 1.01)


def test_improve_is_todays_system_with_facts_changed() -> None:
    changes = {"today.ducts.condition": "sealed and tested", "house.floor_insulation": "R-25"}
    improve = {"name": "x", "kind": "improve", "installed_cost": "$9", "set": changes}
    made, option = optioned(improve)
    assert option.system.ducts is not None
    assert made.today.ducts is not None
    assert option.system.ducts.supply_leakage == pytest.approx(0.04)
    assert made.today.ducts.supply_leakage == pytest.approx(0.15)
    assert option.system.furnace_output == made.today.furnace_output
    floors = [home.house.constructions.floor for home in (made.home, option.home)]
    assert floors[1].resistance > floors[0].resistance + 2.0


def test_sealing_outdates_measured_leaks() -> None:
    today = {"ducts": {"supply_leakage": "22 %", "return_leakage": "18 %", "insulation": "R-5"}}
    changes = {"today.ducts.condition": "sealed and tested"}
    improve = {"name": "x", "kind": "improve", "installed_cost": "$9", "set": changes}
    _, option = optioned(improve, today=today)
    assert option.system.ducts is not None
    assert option.system.ducts.supply_leakage == pytest.approx(0.04)
    assert option.system.ducts.resistance == pytest.approx(5 * R)


def test_an_option_without_changes_shares_todays_home() -> None:
    made, option = optioned(HEADS)
    assert option.home is made.home


def test_a_ducted_heat_pump_takes_todays_ducts() -> None:
    made, option = optioned(DUCTED)
    system = option.system
    assert system.ducts == made.today.ducts
    assert system.registers == made.today.registers
    assert system.ducted_unit is not None
    assert system.ducted_unit.size == pytest.approx(3 * TON)
    assert system.ducted_unit.room == made.today.thermostat_room
    assert system.blower is not None
    assert made.today.blower is not None
    assert system.blower.airflow == made.today.blower.airflow
    assert system.blower.variable
    # 0.30 W a cfm at 900 cfm
    assert system.blower.power == pytest.approx(270.0)
    assert (system.furnace_output, system.strip_output) == (0.0, 0.0)


def test_a_single_speed_unit_keeps_todays_blower() -> None:
    unit = {"class": "ducted single-speed", "size": "3 tons"}
    made, option = optioned(DUCTED, units=[unit])
    assert option.system.blower == made.today.blower


@pytest.mark.parametrize("how", ["set", "ducts"])
def test_the_same_on_sealed_ducts(how: str) -> None:
    changes: dict[str, Any] = {"ducts": {"condition": "sealed and tested"}}
    if how == "set":
        changes = {"set": {"today.ducts.condition": "sealed and tested"}}
    made, option = optioned(DUCTED, **changes)
    ducts, before = option.system.ducts, made.today.ducts
    assert ducts is not None
    assert before is not None
    assert ducts.supply_leakage == pytest.approx(0.04)
    assert ducts.supply_area == before.supply_area
    assert ducts.location == before.location


def test_strips_have_a_size_and_a_lockout() -> None:
    backup = {"kind": "strips", "size": "15 kW", "lockout": "35 F"}
    _, option = optioned(DUCTED, backup=backup)
    assert option.system.strip_output == 15000.0
    assert option.system.strip_lockout == pytest.approx(5.0 / 3.0)
    _, option = optioned(DUCTED, backup={"kind": "strips"})
    assert (option.system.strip_output, option.system.strip_lockout) == (10000.0, None)


def test_ductless_heads_leave_the_ducts() -> None:
    _, option = optioned(HEADS)
    system = option.system
    assert system.ducts is None
    assert system.blower is None
    assert system.furnace_output == 0.0
    assert [(head.room, head.setpoint) for head in system.heads] == [("big room", None)]
    assert not system.old_ducts_left_open
    _, option = optioned(HEADS, old_ducts_left_open=True)
    assert option.system.old_ducts_left_open


def test_a_kept_furnace_keeps_its_ducts_and_a_lower_setting() -> None:
    made, option = optioned(HEADS, backup={"kind": "keep furnace", "setpoint": "60 F"})
    system, today = option.system, made.today
    assert system.furnace_output == today.furnace_output
    assert (system.ducts, system.blower, system.registers) == (
        today.ducts,
        today.blower,
        today.registers,
    )
    assert system.furnace_setpoint == pytest.approx((60 - 32) / 1.8)
    _, option = optioned(HEADS, backup={"kind": "keep furnace"})
    assert option.system.furnace_setpoint == pytest.approx((64 - 10 - 32) / 1.8)


def heated(system: System) -> dict[str, float]:
    return {heater.room: heater.output for heater in system.heaters}


def test_room_heaters_as_backup() -> None:
    _, option = optioned(HEADS, backup={"kind": "room heaters"})
    assert heated(option.system) == {"bedroom": 1500.0}
    both = {"kind": "room heaters", "rooms": ["big room", "bedroom"], "size": "2 kW"}
    _, option = optioned(HEADS, backup=both)
    assert heated(option.system) == {"big room": 2000.0, "bedroom": 2000.0}
    one = {"kind": "room heaters", "room": "big room", "setpoint": "60 F"}
    _, option = optioned(HEADS, backup=one)
    assert option.system.heaters[0].setpoint == pytest.approx((60 - 32) / 1.8)


def test_a_home_heated_by_room_heaters() -> None:
    today = {"kind": "room heaters", "output": None, "ducts": None}
    made = case(rooms=TWO_ROOMS, today=today)
    assert made.today.ducts is None
    # 10 W a square foot, in steps of 250 W
    assert heated(made.today) == {"big room": 9000.0, "bedroom": 6000.0}
    made = case(rooms=TWO_ROOMS, today={**today, "output": "5 kW"})
    assert heated(made.today) == pytest.approx({"big room": 3000.0, "bedroom": 2000.0})
    listed = [{"room": "bedroom", "output": "1 kW", "setpoint": "62 F"}]
    made = case(rooms=TWO_ROOMS, today={**today, "heaters": listed})
    assert heated(made.today) == {"bedroom": 1000.0}


def test_a_ducted_heat_pump_where_there_were_no_ducts() -> None:
    today = {"kind": "room heaters", "output": None, "ducts": None}
    _, option = optioned(DUCTED, today=today)
    system = option.system
    assert system.ducts is not None
    assert (system.ducts.condition, system.ducts.location) == ("sealed and tested", "crawlspace")
    assert system.blower is not None
    assert system.blower.airflow == pytest.approx(3 * 400 * CFM)


def test_an_ideal_system_has_no_machines() -> None:
    today = case(today={"kind": "ideal", "output": None, "ducts": None}).today
    assert (today.kind, today.ducts, today.heads, today.heaters) == ("ideal", None, (), ())


def test_money_of_an_option() -> None:
    _, option = optioned(HEADS)
    assert (option.installed_cost, option.life, option.maintenance) == (9000.0, 15.0, 100.0)
    _, option = optioned(HEADS, life="12 year", maintenance="90 $/year")
    assert (option.life, option.maintenance) == (12.0, 90.0)
