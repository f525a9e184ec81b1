"""The ducts of a system: place, leaks, insulation, areas."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from costcompare.case.defaults import duct_default, house_default
from costcompare.case.document import DuctsTable
from costcompare.case.facts import DuctLocation, Ducts, Foundation
from costcompare.case.setup import Setup


def _usual_location(foundation: Foundation) -> DuctLocation:
    places: dict[Foundation, DuctLocation] = {
        "slab": "attic",
        "basement": "basement",
        "manufactured home": "belly",
    }
    return places.get(foundation, "crawlspace")


def ducts_of(setup: Setup, table: DuctsTable | None, before: Ducts | None, airflow: float) -> Ducts:
    """The ducts of a system: as stated, as ``before`` where nothing else is said, or filled.

    ``airflow`` [m3/s] is the blower's: leaks that were measured as flows are shares of it.
    """
    if before is not None and table is None:
        return before
    table = table or DuctsTable()
    path, ledger = f"{setup.path}.ducts", setup.ledger
    location = table.location or (before.location if before else None)
    if location is None:
        location = _usual_location(setup.home.house.foundation)
        ledger.note(f"{path}.location", location, "judgement: under or over the rooms")
    stated = _stated_tightness(setup, table, airflow)
    condition, leaks = _condition(setup, table, before, stated)
    measured = table.condition is None and stated.supply_leakage is not None
    house = setup.home.house
    upper = setup.default("ducts.upper_storeys_factor") if house.storeys > 1 else 1.0
    supply_area, return_area = table.supply_area, table.return_area
    if supply_area is None and before is not None:
        supply_area = before.supply_area
    if return_area is None and before is not None:
        return_area = before.return_area
    if supply_area is None:
        supply_area = _area(setup, "supply", house.floor_area * upper)
    if return_area is None:
        return_area = _area(setup, "return", house.floor_area)
    share = table.share_outside
    if share is None and before is not None:
        share = before.share_outside
    branches: Mapping[str, str] = table.branches or {}
    if table.branches is None and before is not None and table.condition is None:
        branches = before.branches
    return Ducts(
        location=location,
        supply_leakage=leaks.supply_leakage,
        return_leakage=leaks.return_leakage,
        resistance=leaks.resistance,
        supply_area=supply_area,
        return_area=return_area,
        share_outside=ledger.measure(share, f"{path}.share_outside", "ducts.share_outside"),
        cyclic_loss=_cyclic_loss(setup, table, before),
        branches=branches,
        condition="measured values" if measured else condition,
    )


@dataclass(frozen=True)
class _Stated:
    """What the case says of leaks and insulation; None for what it does not."""

    supply_leakage: float | None
    return_leakage: float | None
    resistance: float | None


def _stated_tightness(setup: Setup, table: DuctsTable, airflow: float) -> _Stated:
    """Leaks as shares of the airflow, whether stated as shares, as flows or by return path."""
    supply, back = table.supply_leakage, table.return_leakage
    if supply is None and table.supply_leakage_at_25_pa is not None:
        supply = flow_share(table.supply_leakage_at_25_pa, airflow)
    if back is None and table.return_leakage_at_25_pa is not None:
        back = flow_share(table.return_leakage_at_25_pa, airflow)
    path = {"panned joists": "ducts.return_panned", "open to the space": "ducts.return_open"}
    if back is None and table.return_path in path:
        back = setup.fill(None, "ducts.return_leakage", path[table.return_path])
    return _Stated(supply, back, table.insulation)


@dataclass(frozen=True)
class _Tightness:
    supply_leakage: float
    return_leakage: float
    resistance: float


def _condition(
    setup: Setup, table: DuctsTable, before: Ducts | None, said: _Stated
) -> tuple[str, _Tightness]:
    """The words for the ducts' condition, and the leaks and insulation that follow."""
    built, ledger, path = setup.home.house.built, setup.ledger, f"{setup.path}.ducts"
    stated = (said.supply_leakage, said.return_leakage, said.resistance)
    if table.condition is None and before is not None:
        kept = (before.supply_leakage, before.return_leakage, before.resistance)
        chosen = [k if s is None else s for s, k in zip(stated, kept, strict=True)]
        return before.condition, _Tightness(*chosen)
    condition: str = table.condition or ""
    if not condition and None not in stated:
        condition = "average"
    elif not condition and setup.today is not None:
        condition = "sealed and tested"
        ledger.note(f"{path}.condition", condition, "judgement: new ducts are sealed and tested")
    elif not condition:
        condition = ledger.words(None, f"{path}.condition", "ducts.condition")
    usual = duct_default(condition, built)
    better = max(usual.resistance, before.resistance) if before else usual.resistance
    source = f"{condition}: {usual.source}"
    supply, back, resistance = stated
    if supply is None:
        supply = ledger.filled(
            f"{path}.supply_leakage", usual.supply_leakage, "fraction", source=source
        )
    if back is None:
        back = ledger.filled(
            f"{path}.return_leakage", usual.return_leakage, "fraction", source=source
        )
    if resistance is None:
        resistance = ledger.filled(f"{path}.insulation", better, "resistance", source=source)
    return condition, _Tightness(supply, back, resistance)


def _cyclic_loss(setup: Setup, table: DuctsTable, before: Ducts | None) -> float:
    """Heat left in the ducts at short runs, by what they are made of."""
    if table.material is None and before is not None:
        return before.cyclic_loss
    material = table.material or setup.ledger.words(
        None, f"{setup.path}.ducts.material", "ducts.material"
    )
    return setup.default(f"ducts.cyclic_loss_{material}")


def flow_share(flow: float, airflow: float) -> float:
    """A leak measured at 25 Pa as a share of the blower's airflow, both in [m3/s].

    The ducts are taken to run at 25 Pa on average, so that the measured flow is the flow
    in use (the default of ASHRAE Standard 152, from memory).
    """
    return min(flow / airflow, 0.9)


def _area(setup: Setup, side: str, floor_area: float) -> float:
    row = house_default(f"ducts.{side}_area_share", setup.home.house.built)
    path = f"{setup.path}.ducts.{side}_area"
    return setup.ledger.filled(path, row.number * floor_area, "area", source=row.source)
