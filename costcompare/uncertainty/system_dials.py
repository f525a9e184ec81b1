"""The dials of a way to heat: ducts, blower, machines."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from costcompare.case.facts import Ducts, HeatPumpUnit, System
from costcompare.uncertainty.dials import Dial


def _duct(read: Callable[[Ducts], float]) -> Callable[[System], float | None]:
    """A fact of ducts outside the rooms."""

    def of_system(system: System) -> float | None:
        ducts = system.ducts
        return None if ducts is None or ducts.location == "inside" else read(ducts)

    return of_system


def _turn_ducts(system: System, **changed: float) -> System:
    assert system.ducts is not None
    return replace(system, ducts=replace(system.ducts, **changed))  # type: ignore[arg-type]


def _turn_area(system: System, value: float) -> System:
    """The return goes with the supply, in proportion."""
    assert system.ducts is not None
    share = value / system.ducts.supply_area
    return _turn_ducts(system, supply_area=value, return_area=share * system.ducts.return_area)


def _turn_airflow(system: System, value: float) -> System:
    """More or less air at the same power."""
    assert system.blower is not None
    return replace(system, blower=replace(system.blower, airflow=value))


def _turn_power(system: System, value: float) -> System:
    assert system.blower is not None
    return replace(system, blower=replace(system.blower, power=value))


def _pumps(system: System) -> bool:
    return bool(system.heads) or system.ducted_unit is not None


def _scaled(unit: HeatPumpUnit, factor: float) -> HeatPumpUnit:
    """A machine that gives and draws ``factor`` times as much."""
    return replace(
        unit,
        size=unit.size * factor,
        heads=tuple(replace(head, size=head.size * factor) for head in unit.heads),
        points=tuple(
            replace(p, capacity=p.capacity * factor, power=p.power * factor) for p in unit.points
        ),
    )


def _turn_capacity(system: System, value: float) -> System:
    ducted = system.ducted_unit
    return replace(
        system,
        heads=tuple(_scaled(unit, value) for unit in system.heads),
        ducted_unit=None if ducted is None else _scaled(ducted, value),
    )


SYSTEM_DIALS: tuple[Dial[System], ...] = (
    Dial(
        "ducts.supply_leakage",
        _duct(lambda ducts: ducts.supply_leakage),
        lambda system, value: _turn_ducts(system, supply_leakage=value),
    ),
    Dial(
        "ducts.return_leakage",
        _duct(lambda ducts: ducts.return_leakage),
        lambda system, value: _turn_ducts(system, return_leakage=value),
    ),
    Dial(
        "ducts.insulation",
        _duct(lambda ducts: ducts.resistance),
        lambda system, value: _turn_ducts(system, resistance=value),
    ),
    Dial("ducts.area", _duct(lambda ducts: ducts.supply_area), _turn_area),
    Dial(
        "blower.airflow",
        lambda system: None if system.blower is None else system.blower.airflow,
        _turn_airflow,
    ),
    Dial(
        "blower.power",
        lambda system: None if system.blower is None else system.blower.power,
        _turn_power,
    ),
    Dial(
        "equipment.field_factor",
        lambda system: system.field_factor if _pumps(system) else None,
        lambda system, value: replace(system, field_factor=value),
    ),
    Dial("equipment.capacity", lambda system: 1.0 if _pumps(system) else None, _turn_capacity),
)
