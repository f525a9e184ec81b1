"""Cautions about what lies under the floor: pipes, damp, and the floor itself."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.case.facts import Case
from costcompare.cautions.seen import Seen, all_named, degf, named
from costcompare.comparison import Caution, CrawlspaceYear

COLDER = 1.5
"""[K] by which a colder crawlspace is worth a word (judgement)"""
MORE_FROST = 24
"""[h a year] below freezing that are worth a word (judgement)"""
DAMPER = 0.05
"""Share of the year by which more damp hours are worth a word (judgement)"""
COOLER_FLOOR = 0.5
"""[K] by which a cooler floor is worth a word (judgement)"""


def pipes(case: Case, today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Water pipes in a crawlspace that freezes now or runs colder than now."""
    space, now = case.home.crawlspace, today.under_floor
    if space is None or now is None:
        return []
    colder = [option for option in options if _colder(now, option.under_floor)]
    freezes = now.hours_below_freezing > 0
    if not colder and not (freezes and space.water_pipes):
        return []
    where = ("Some choices leave the crawlspace colder than it is now. " if colder else "") + (
        "It freezes under the floor as things are. " if freezes else ""
    )
    if space.water_pipes:
        what = (
            "Insulate the water pipes and stop the drafts at them in the same job; use heat "
            "cable only of a kind approved for it, fitted by a licensed trade."
        )
    else:
        what = "Look for water pipes, traps and hose taps under the floor before the work."
    lines = [f"today {_cold(now)}"]
    lines += [f"{named(o)} {_cold(o.under_floor)}" for o in colder if o.under_floor is not None]
    return [
        Caution(
            "Pipes under the floor",
            where + what,
            "the coldest hour and the hours below 32 °F in the crawlspace, at the warmth you "
            f"want, are: {'; '.join(lines)}; outdoors it is below 20 °F, where pipes in an "
            f"unheated space begin to be at risk, for {now.hours_outdoors_below_20f:,} hours",
        )
    ]


def _colder(now: CrawlspaceYear, then: CrawlspaceYear | None) -> bool:
    if then is None:
        return False
    return (
        now.coldest_night_degc - then.coldest_night_degc > COLDER
        or now.minimum_temperature_degc - then.minimum_temperature_degc > COLDER
        or then.hours_below_freezing > now.hours_below_freezing + MORE_FROST
    )


def _cold(space: CrawlspaceYear) -> str:
    return f"{degf(space.minimum_temperature_degc)} and {space.hours_below_freezing:,} hours"


def damp(case: Case, today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Bare ground, closed vents over bare ground, or a crawlspace that gets damper."""
    space, now = case.home.crawlspace, today.under_floor
    if space is None or now is None:
        return []
    reasons = []
    if not space.ground_cover:
        reasons.append("the ground is bare")
    damper = [
        o for o in options if o.under_floor and o.under_floor.damp_share > now.damp_share + DAMPER
    ]
    if damper:
        shares = [
            f"{100 * o.under_floor.damp_share:.0f} % with {named(o)}"
            for o in damper
            if o.under_floor
        ]
        reasons.append(
            f"the damp share of the year goes from {100 * now.damp_share:.0f} % to "
            + " and ".join(shares)
        )
    closed = [o for o in options if _closes_vents(today, o)]
    if closed:
        reasons.append(f"vents are closed with {all_named(closed)}")
    if not reasons:
        return []
    return [
        Caution(
            "Damp and radon",
            "Cover bare ground and mend drainage before vents are closed, ducts are sealed or "
            "the floor is insulated. Test for radon before and after, and look for mould after "
            "the first year.",
            "; ".join(reasons),
        )
    ]


def _closes_vents(today: Seen, option: Seen) -> bool:
    before, after = today.home.crawlspace, option.home.crawlspace
    return before is not None and after is not None and before.vents != after.vents == "closed"


def cold_floors(today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Floors that run cooler than with today's system at the same warmth."""
    now = today.under_floor
    if now is None:
        return []
    cooler = [
        (o, o.under_floor.floor_winter_degc)
        for o in options
        if o.under_floor and now.floor_winter_degc - o.under_floor.floor_winter_degc > COOLER_FLOOR
    ]
    if not cooler:
        return []
    figures = ", ".join(f"{degf(face)} with {named(option)}" for option, face in cooler)
    return [
        Caution(
            "Cool floors",
            "With less warmth under it or in the room the floor can feel cooler than now. "
            "Insulation tight against the boards helps.",
            f"the floor over the crawlspace averages {degf(now.floor_winter_degc)} in winter days "
            f"today, {figures}, all at the warmth you want",
        )
    ]
