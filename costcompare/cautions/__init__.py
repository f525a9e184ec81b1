"""What to look out for before anybody touches the house; tied to the facts and the results.

Nothing here replaces a licensed trade, a local code or a test on site. The triggers are
common practice (no source) unless a source is named.

people       cold rooms and health, very low settings, power cuts
crawlspace   pipes, damp and radon, cold floors
burning      flues, closed vents, open fires
materials    asbestos, vermiculite, lead paint
ducts        abandoned ducts, closed doors, sealing the return alone
machines     electricity, refrigerant, hours too cold for a machine, the old furnace, strips,
             setback, summer bills
rooms        rooms without heat of their own, fresh air
work         licensed trades and local codes, manufactured homes, incentives
"""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.case.facts import Case
from costcompare.cautions import (
    burning,
    crawlspace,
    ducts,
    machines,
    materials,
    people,
    rooms,
    work,
)
from costcompare.cautions.seen import Seen
from costcompare.comparison import Caution

__all__ = ["Seen", "cautions"]


def cautions(case: Case, today: Seen, options: Sequence[Seen]) -> tuple[Caution, ...]:
    """Every caution that the facts or the results call for, the most urgent first.

    ``today`` and ``options`` are years at the warmth the family wants.
    """
    return (
        *people.cold_rooms(case, options),
        *crawlspace.pipes(case, today, options),
        *people.low_setting(case),
        *burning.appliances(case, today, options),
        *burning.closed_vents(today, options),
        *materials.old_materials(case, today, options),
        *crawlspace.damp(case, today, options),
        *ducts.abandoned(today, options),
        *ducts.return_alone(today, options),
        *ducts.closed_doors(today, options),
        *crawlspace.cold_floors(today, options),
        *rooms.without_heat(options),
        *rooms.fresh_air(today, options),
        *machines.electricity(today, options),
        *machines.refrigerant(today, options),
        *work.manufactured_home(case, today, options),
        *machines.too_cold(options),
        *machines.old_furnace(options),
        *machines.strips(options),
        *machines.setback(case, options),
        *machines.summer(today, options),
        *burning.open_fire(today),
        *people.power_cuts(case),
        *work.incentives(case),
        *work.licensed_trades(options),
    )
