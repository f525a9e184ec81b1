"""The machines of a choice against the home, in sentences."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from costcompare.sizing import ChoiceFit, DesignConditions, MachineFit, RuleCheck, SecondRoom
from costcompare.views import numbers
from costcompare.views.wording.naming import capital, listed

HIGH_FT = 9.0
MILD_DEGF = 47.0
"""Outdoor temperature of the rating point at which minimums are compared"""


def fit_answer(fit: ChoiceFit, design: DesignConditions) -> str:
    """What all machines of a choice give together, and what is left to resistance heat."""
    if not fit.machines:
        return "There is no machine to size."
    cold = numbers.degrees(design.outdoor_degf)
    load = numbers.btu_h(fit.load_btu_h)
    if fit.heat_pump_coverage is None:
        return (
            f"At {cold} the machines must give {load}{_ducts(fit)}; resistance heat gives "
            f"{numbers.btu_h(fit.electric_heat_btu_h)}. {_lacking(fit)}"
        )
    given = numbers.btu_h(fit.heat_pump_at_design_btu_h)
    share = f"{given} or {numbers.percent(fit.heat_pump_coverage)}"
    pumps = share if fit.heat_pump_at_design_btu_h > 0.0 else "nothing, it is too cold for them"
    return (
        f"At {cold} {load} are needed{_ducts(fit)}; heat pumps give {pumps}. {_balance(fit)} In "
        f"the year at the warmth you want {numbers.kwh(fit.backup_kwh)} of "
        f"{numbers.kwh(fit.heating_kwh)} for heating are resistance heat. {_lacking(fit)}"
    )


def _ducts(fit: ChoiceFit) -> str:
    lone = {machine.kind for machine in fit.machines} <= {"furnace", "ducted heat pump", "strips"}
    return " with what the ducts lose" if lone and fit.machines else ""


def _balance(fit: ChoiceFit) -> str:
    if fit.balance_degf is None:
        return "They cover the load down to the coldest hour of the year."
    return (
        f"Their most meets the load at {numbers.degrees(fit.balance_degf)} outdoors, the balance "
        "point; below it something else must help."
    )


def _lacking(fit: ChoiceFit) -> str:
    if fit.unmet_heat_kwh < 10.0:
        return "Nothing to speak of is lacking in the year."
    return (
        f"{numbers.kwh(fit.unmet_heat_kwh)} of heat are lacking in the year to hold the settings."
    )


def machine_answer(machine: MachineFit, design: DesignConditions) -> str:
    """One machine with its numbers, then the limits of the trade that it does not keep."""
    parts = (
        _against_load(machine, design),
        _stops(machine, design),
        _minimum(machine),
        _hours(machine),
        _height(machine),
        _outside(machine),
    )
    return " ".join(part for part in parts if part)


def _name(machine: MachineFit) -> str:
    size = "" if machine.nominal_kbtu_h is None else f"{numbers.nominal(machine.nominal_kbtu_h)} "
    if machine.kind in ("head", "room heater"):
        return f"{capital(machine.room)}, {size}{machine.kind}"
    if machine.kind == "shared outdoor unit":
        return f"Outdoor unit shared by heads, {size}".rstrip()
    return f"{capital(size + machine.kind)}".strip()


def _against_load(machine: MachineFit, design: DesignConditions) -> str:
    others = machine.heats[1:] if machine.kind == "head" else ()
    with_others = f" with {listed(others)}" if others else ""
    cold = numbers.degrees(design.outdoor_degf)
    text = (
        f"{_name(machine)}: gives {numbers.btu_h(machine.maximum_at_design_btu_h)} at {cold} "
        f"for a load{with_others} of {numbers.btu_h(machine.load_btu_h)}"
    )
    if machine.coverage is not None:
        text += f" ({numbers.percent(machine.coverage)})"
    if machine.nominal_kbtu_h is not None and machine.balance_degf is not None:
        text += f"; balance point {numbers.degrees(machine.balance_degf)}"
    return text + "."


def _stops(machine: MachineFit, design: DesignConditions) -> str:
    """Where it is cut out, if the design temperature lies beyond."""
    stops = machine.stops_below_degf
    if stops is None or stops <= design.outdoor_degf:
        return ""
    return f"It does not run below {numbers.degrees(stops)}."


def _minimum(machine: MachineFit) -> str:
    if machine.minimum_at_47f_btu_h is None or machine.minimum_at_design_btu_h is None:
        return ""
    if machine.single_speed:
        return "It has one speed: it goes on and off whenever less than all of it is needed."
    cold = machine.minimum_at_design_btu_h
    at_cold = f", and {numbers.btu_h(cold)} at the design temperature" if cold > 0.0 else ""
    return (
        f"At its minimum it gives {numbers.btu_h(machine.minimum_at_47f_btu_h)} at "
        f"{numbers.degrees(MILD_DEGF)}, where "
        f"{numbers.btu_h(machine.load_at_47f_btu_h)} are needed{at_cold}."
    )


def _hours(machine: MachineFit) -> str:
    if machine.heating_hours is None or not machine.heating_hours:
        return ""
    below, most = machine.below_minimum_hours or 0, machine.at_maximum_hours or 0
    return (
        f"Of {numbers.hours(machine.heating_hours)} of heating in the year it goes on and off in "
        f"{numbers.count(below)} ({numbers.percent(below / machine.heating_hours)}) and gives all "
        f"it can in {numbers.count(most)}."
    )


def _height(machine: MachineFit) -> str:
    if (
        not machine.is_mounted_high
        or machine.sensor_reads_over_degf is None
        or machine.mounting_height_ft is None
    ):
        return ""
    return (
        f"Its bottom is above {numbers.feet(HIGH_FT)} "
        f"({numbers.feet(machine.mounting_height_ft)}): it stands in the warm air under the "
        "ceiling, reads about "
        f"{numbers.degrees_of_difference(machine.sensor_reads_over_degf)} too warm and is hard to "
        "reach for cleaning. Hang it lower, or take one that stands on the floor."
    )


def _outside(machine: MachineFit) -> str:
    """The limits of the trade that a machine does not keep."""
    broken = [check_text(check) for check in machine.checks if not check.is_kept]
    return f"Outside the usual limits: {listed(broken)}." if broken else ""


def check_text(check: RuleCheck) -> str:
    """A figure beside its limit."""
    return f"{_rule(check.rule)} {_amount(check.rule, check.value)} ({_limit(check)})"


def limits_answer(choices: Sequence[ChoiceFit]) -> str:
    """Every limit that was looked at, and how it is known."""
    checks = [c for fit in choices for machine in fit.machines for c in machine.checks]
    checks += [c for fit in choices for c in fit.checks]
    by_known: dict[str, dict[str, str]] = {}
    for check in checks:
        known = by_known.setdefault(_known(check), {})
        known[check.rule] = f"{_rule(check.rule)} {_limit(check)}"
    if not by_known:
        return ""
    texts = [f"{'; '.join(rules.values())} ({known})" for known, rules in by_known.items()]
    texts = [text if number == 0 else capital(text) for number, text in enumerate(texts)]
    return (
        f"The usual limits: {'. '.join(texts)}. Electric heat of the next 5 kW step above the load "
        "counts as within them. They are rules of the trade, not of this program: a figure outside "
        "is a reason to ask, not a fault by itself."
    )


_RULES = {
    "heat pump maximum over load at design": "most at the design temperature over the load",
    "heat pump minimum over load at 47 F": "minimum over the load at {}",
    "electric heat over load": "electric heat over the load",
    "share of heating hours below minimum": "heating hours on and off",
    "head nominal over load at design": "nominal size over the load",
    "heat pump and strips over load at design": "heat pump and strips over the load",
    "balance point of a single-speed heat pump in F": "balance point of a machine of one speed",
    "strips over load at design": "strips over the load",
    "room heater over load at design": "room heater over the load",
}


def _rule(rule: str) -> str:
    return _RULES[rule].format(numbers.degrees(MILD_DEGF))


def _amount(rule: str, value: float) -> str:
    if rule.endswith(" in F"):
        return numbers.degrees(value)
    return numbers.percent(value) if "share" in rule else f"{value:.2f}"


def _limit(check: RuleCheck) -> str:
    low, high = check.low, check.high
    if low is not None and high is not None:
        return f"{_amount(check.rule, low)} to {_amount(check.rule, high)}"
    if high is not None:
        return f"at most {_amount(check.rule, high)}"
    assert low is not None
    return f"at least {_amount(check.rule, low)}"


def _known(check: RuleCheck) -> str:
    return "common practice, no source" if check.known == "common practice" else check.known


def second_rooms_answers(rooms: Sequence[SecondRoom]) -> Iterator[str]:
    """What comes through the doors to rooms without heat of their own, one sentence a head."""
    by_head: dict[str, list[SecondRoom]] = {}
    for room in rooms:
        by_head.setdefault(room.head, []).append(room)
    for head, others in by_head.items():
        told = listed([_second_room(room) for room in others])
        yield (
            f"Through its open doors the head in the {head} also brings, of the heat that these "
            f"rooms need in the year, {told}. A furnace that is kept is left out of this."
        )


def _second_room(room: SecondRoom) -> str:
    mean = room.winter_mean_degf
    warm = "" if math.isnan(mean) else f" ({numbers.degrees(mean)} there in winter)"
    return f"{numbers.percent(room.arriving_share)} to {room.name}{warm}"
