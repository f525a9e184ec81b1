"""Cautions about the work itself: who may do it, under which rules, with whose money."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.case.facts import Case
from costcompare.cautions.seen import Seen, all_named
from costcompare.comparison import Caution


def licensed_trades(options: Sequence[Seen]) -> list[Caution]:
    """Work on a house is for those who may do it; a figure is an estimate, whoever does it."""
    if not options:
        return []
    return [
        Caution(
            "Licensed trades and local codes",
            "Ask which permits and inspections the place requires, and for the licence and the "
            "insurance of whoever does the work. The figures here are an estimate: no load "
            "calculation, no design and no offer.",
            f"work on the house is proposed with {all_named(options)}",
        )
    ]


def manufactured_home(case: Case, today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Machines, ducts and belly of a manufactured home."""
    if case.home.house.foundation != "manufactured home":
        return []
    touched = [
        o
        for o in options
        if o.system != today.system or o.home.house.constructions != today.home.house.constructions
    ]
    if not touched:
        return []
    return [
        Caution(
            "Manufactured home",
            "Furnaces and heat pumps must be listed for manufactured homes. Mend the bottom board "
            "wherever it is opened, and leave tie-downs and frame as they are.",
            f"it is a manufactured home, worked on with {all_named(touched)}",
        )
    ]


def incentives(case: Case) -> list[Caution]:
    """Money that somebody may pay, and that nobody has promised yet."""
    open_ones = [one for one in case.money.incentives if one.status != "confirmed"]
    if not open_ones:
        return []
    names = " and ".join(f"“{one.name}” ({one.status})" for one in open_ones[:2])
    more = f" and {len(open_ones) - 2} more" if len(open_ones) > 2 else ""
    return [
        Caution(
            "Incentives",
            "Have an incentive approved in writing before the work begins: many are lost by "
            "starting early or by a machine that is not on the list.",
            f"not confirmed and in no figure here: {names}{more}",
        )
    ]
