"""What the contractor's part shows: loads, machines against them, circuits, settings."""

from __future__ import annotations

from collections.abc import Iterator

from costcompare.settings import SettingsCard
from costcompare.sizing import ChoiceFit, DesignConditions, MachineFit, RoomLoad, Sizing
from costcompare.views import numbers
from costcompare.views.dashboard import pieces
from costcompare.views.dashboard.filling import Filled
from costcompare.views.sizing_page import ESTIMATE
from costcompare.views.wording.machines import fit_answer, machine_answer, second_rooms_answers
from costcompare.views.wording.naming import TODAY, capital
from costcompare.views.wording.panel import circuit_answer, panel_answer
from costcompare.views.wording.room_needs import conditions_answer, house_answer
from costcompare.views.wording.settings_card import card_answers

NONE = "–"


def trade_part(sizing: Sizing, card: SettingsCard | None) -> Filled:
    """Sizes, minimums, hours below them, resistance heat, circuits, settings."""
    design, load = sizing.design, sizing.loads[0]
    fit = sizing.choices[-1]
    cold = numbers.degrees(design.outdoor_degf)
    return {
        "answer": house_answer(load, design),
        "conditions": conditions_answer(design),
        "rooms": pieces.table(
            f"What each room needs at {cold} outdoors, at 47 °F, and on the hottest day",
            ("Room", "Floor", f"Heat at {cold}", "At 47 °F", "Cooling", "Without own heat"),
            [_room(room) for room in load.rooms],
        ),
        "fit": fit_answer(fit, design),
        "machines": _machines(fit, design),
        "notes": _notes(fit, sizing),
        "panel": "" if fit.electricity is None else panel_answer(fit.electricity),
        "circuits": pieces.bullet_list(_circuits(fit), class_="assumptions"),
        "settings": pieces.bullet_list(
            card_answers(card) if card else ("Add an option: settings are about one.",),
            class_="assumptions",
        ),
        "questions": pieces.bullet_list(
            sizing.questions or ("Nothing beyond what the visit form asks.",), class_="assumptions"
        ),
        "estimate": ESTIMATE,
    }


def _room(room: RoomLoad) -> tuple[str, ...]:
    return (
        capital(room.name),
        f"{numbers.count(room.floor_area_ft2)} ft²",
        numbers.btu_h(room.heat_btu_h),
        numbers.btu_h(room.heat_at_47f_btu_h),
        numbers.btu_h(room.cooling_btu_h),
        numbers.degrees(room.without_own_heat_degf),
    )


def _machines(fit: ChoiceFit, design: DesignConditions) -> pieces.Tree | None:
    if not fit.machines:
        return None
    cold = numbers.degrees(design.outdoor_degf)
    name = capital(TODAY) if fit.is_today else fit.name
    return pieces.table(
        f"{name}: each machine against its load",
        (
            "Machine",
            f"Load at {cold}",
            f"Most at {cold}",
            "Covers",
            "Load at 47 °F",
            "Least at 47 °F",
            "Hours below least",
            "Hours at most",
            "Balance point",
        ),
        [_machine(machine) for machine in fit.machines],
    )


def _machine(machine: MachineFit) -> tuple[str, ...]:
    size = "" if machine.nominal_kbtu_h is None else f", {machine.nominal_kbtu_h:.0f} kBtu/h"
    least, balance = machine.minimum_at_47f_btu_h, machine.balance_degf
    is_pump = least is not None
    return (
        f"{capital(machine.kind)} in the {machine.room}{size}",
        numbers.btu_h(machine.load_btu_h),
        numbers.btu_h(machine.maximum_at_design_btu_h),
        NONE if machine.coverage is None else numbers.percent(machine.coverage),
        numbers.btu_h(machine.load_at_47f_btu_h),
        NONE if least is None else numbers.btu_h(least),
        _hours(machine.below_minimum_hours),
        _hours(machine.at_maximum_hours),
        (numbers.degrees(balance) if balance is not None else "always covers") if is_pump else NONE,
    )


def _hours(hours: int | None) -> str:
    return NONE if hours is None else numbers.count(hours)


def _notes(fit: ChoiceFit, sizing: Sizing) -> pieces.Tree:
    """Each machine in sentences, with the limits of the trade that it does not keep."""
    told = [machine_answer(machine, sizing.design) for machine in fit.machines]
    told += second_rooms_answers(fit.second_rooms)
    return pieces.bullet_list(told, class_="assumptions")


def _circuits(fit: ChoiceFit) -> Iterator[str]:
    if fit.electricity is not None:
        yield from (circuit_answer(one, comes=False) for one in fit.electricity.freed)
        yield from (circuit_answer(one, comes=True) for one in fit.electricity.added)
