"""Whether a tariff can price a year: every fault at once, by its path in the case."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Iterator
from typing import get_args

from costcompare.case.checks.tariff_hours import hour_faults
from costcompare.case.paths import join
from costcompare.case.tariff_facts import (
    HOLIDAY_NAMES,
    DayKind,
    DemandCharge,
    Export,
    LineGroup,
    Period,
    Rider,
    Season,
    Tariff,
    Tier,
)
from costcompare.errors import Fault

GROUPS: tuple[LineGroup, ...] = get_args(LineGroup)
BEFORE_MINIMUM = GROUPS[: GROUPS.index("minimum")]
BEFORE_CREDITS = GROUPS[: GROUPS.index("credits")]


def tariff_faults(tariff: Tariff, at: str = "tariff") -> Iterator[Fault]:
    """Every fault of a tariff, in the order of its lines; ``at`` is its path in the case."""
    found = list(_price_faults(tariff, at))
    yield from found
    yield from _convention_faults(tariff, at)
    yield from _change_faults(tariff, at)
    if not found:
        yield from hour_faults(tariff, at)


def _price_faults(tariff: Tariff, at: str) -> Iterator[Fault]:
    yield from _amount(f"{at}.customer_charge", tariff.customer_charge, "$/month")
    yield from _amount(f"{at}.daily_charge", tariff.daily_charge, "$/day")
    yield from _amount(f"{at}.minimum_bill", tariff.minimum_bill, "$/month")
    yield from _tax_faults(tariff, at)
    if tariff.tiers:
        yield from _tier_faults(f"{at}.tiers", tariff.tiers)
    elif not tariff.periods and not tariff.seasons:
        example = 'for example tiers = [ { price = "0.12 $/kWh" } ]'
        yield Fault(f"{at}.tiers", "must hold at least one price", instead=example)
    yield from _season_faults(at, tariff.seasons)
    yield from _period_faults(at, tariff.periods)
    for charge in tariff.demand:
        yield from _demand_faults(join([at, "demand", charge.name]), charge)
    yield from _repeated(f"{at}.demand", (charge.name for charge in tariff.demand))
    for rider in tariff.riders:
        yield from _rider_faults(join([at, "riders", rider.name]), rider)
    yield from _repeated(f"{at}.riders", (rider.name for rider in tariff.riders))
    yield from _export_faults(f"{at}.export", tariff.export)


def _amount(path: str, value: float, unit: str) -> Iterator[Fault]:
    if not (math.isfinite(value) and value >= 0.0):
        yield Fault(path, f"must be at least 0 {unit}", f"{value:g} {unit}")


def _share(path: str, value: float, example: str, *, below_zero: bool = False) -> Iterator[Fault]:
    low = -1.0 if below_zero else 0.0
    if not low <= value < 1.0:
        rule = f"must lie between {100 * low:.0f} % and 100 %"
        yield Fault(path, rule, f"{value:g}", f'for example "{example}"')


def _tax_faults(tariff: Tariff, at: str) -> Iterator[Fault]:
    yield from _share(f"{at}.tax", tariff.tax, "3 %")
    if tariff.tax and tariff.taxes:
        yield Fault(f"{at}.tax", "give either tax or taxes, not both")
    for tax in tariff.taxes:
        path = join([at, "taxes", tax.name])
        yield from _share(f"{path}.share", tax.share, "3 %")
        yield from _base(f"{path}.on", tax.on, GROUPS)
    yield from _repeated(f"{at}.taxes", (tax.name for tax in tariff.taxes))


def _base(path: str, on: tuple[LineGroup, ...], allowed: Collection[LineGroup]) -> Iterator[Fault]:
    if not on:
        yield Fault(path, "must name at least one kind of line", "", f'for example ["{GROUPS[0]}"]')
    later = [group for group in on if group not in allowed]
    if later:
        rule = f"must be lines that are worked out before: {', '.join(allowed)}"
        yield Fault(path, rule, ", ".join(later))


def _tier_faults(path: str, tiers: tuple[Tier, ...]) -> Iterator[Fault]:
    lower = 0.0
    unit = "kWh/day" if any(tier.daily for tier in tiers) else "kWh/month"
    if any(tier.daily for tier in tiers) and any(
        not tier.daily and tier.up_to is not None for tier in tiers
    ):
        yield Fault(path, "every tier must end by the day, or every tier by the month")
    for number, tier in enumerate(tiers, start=1):
        here = f"{path}.{number}"
        yield from _amount(f"{here}.price", tier.price, "$/kWh")
        if tier.up_to is None:
            if number < len(tiers):
                rule = "must say where it ends, because another tier follows"
                yield Fault(f"{here}.up_to", rule, instead='for example "800 kWh/month"')
            continue
        if not tier.up_to > lower:
            rule = f"must be more than {lower:g} {unit}, where the tier begins"
            yield Fault(f"{here}.up_to", rule, f"{tier.up_to:g} {unit}")
        lower = max(lower, tier.up_to)
    if tiers[-1].up_to is not None:
        rule = "must be left out of the last tier, or energy above it has no price"
        given = f"{tiers[-1].up_to:g} {unit}"
        example = 'one more tier with a price alone, such as { price = "0.14 $/kWh" }'
        yield Fault(f"{path}.{len(tiers)}.up_to", rule, given, example)


def _season_faults(at: str, seasons: tuple[Season, ...]) -> Iterator[Fault]:
    owner: dict[int, str] = {}
    for season in seasons:
        path = join([at, "seasons", season.name])
        if season.dates is None:
            yield from _flags(f"{path}.months", season.months, 12)
        if not season.tiers:
            yield Fault(f"{path}.tiers", "must hold at least one price")
        else:
            yield from _tier_faults(f"{path}.tiers", season.tiers)
        for month, inside in enumerate(season.months if season.dates is None else (), start=1):
            if inside and owner.setdefault(month, season.name) != season.name:
                rule = f'must not share month {month} with the season "{owner[month]}"'
                yield Fault(f"{path}.months", rule)
    yield from _repeated(f"{at}.seasons", (season.name for season in seasons))


def _period_faults(at: str, periods: tuple[Period, ...]) -> Iterator[Fault]:
    for period in periods:
        path = join([at, "periods", period.name])
        yield from _amount(f"{path}.price", period.price, "$/kWh")
        if period.dates is None:
            yield from _flags(f"{path}.months", period.months, 12)
        yield from _window(path, period.days, period.hours)
    yield from _repeated(f"{at}.periods", (period.name for period in periods))


def _window(path: str, days: DayKind, hours: tuple[bool, ...]) -> Iterator[Fault]:
    yield from _flags(f"{path}.hours", hours, 24)
    if days not in get_args(DayKind):
        yield Fault(f"{path}.days", "must be all, weekdays or weekends", str(days))


def _demand_faults(path: str, charge: DemandCharge) -> Iterator[Fault]:
    yield from _amount(f"{path}.price", charge.price, "$/kW")
    yield from _flags(f"{path}.months", charge.months, 12)
    yield from _window(path, charge.days, charge.hours)
    if not 0.0 <= charge.ratchet <= 1.0:
        yield Fault(f"{path}.ratchet", "must lie between 0 % and 100 %", f"{charge.ratchet:g}")


def _rider_faults(path: str, rider: Rider) -> Iterator[Fault]:
    amounts = (rider.per_kwh, rider.per_month, rider.share)
    if not all(math.isfinite(amount) for amount in amounts):
        yield Fault(path, "must be a finite amount")
    if sum(amount != 0.0 for amount in amounts) > 1:
        yield Fault(path, "give one of per_kwh, per_month and share")
    yield from _share(f"{path}.share", rider.share, "3.5 %", below_zero=True)
    yield from _base(f"{path}.on", rider.on, BEFORE_MINIMUM)
    yield from _flags(f"{path}.months", rider.months, 12)


def _export_faults(path: str, export: Export) -> Iterator[Fault]:
    yield from _amount(f"{path}.price", export.price, "$/kWh")
    yield from _base(f"{path}.offsets", export.offsets, BEFORE_CREDITS)
    if export.true_up not in range(1, 13):
        yield Fault(f"{path}.true_up", "must be a month from 1 to 12", str(export.true_up))


def _convention_faults(tariff: Tariff, at: str) -> Iterator[Fault]:
    yield from _base(f"{at}.minimum_counts", tariff.minimum_counts, BEFORE_MINIMUM)
    for name in tariff.holiday_names:
        if name not in HOLIDAY_NAMES:
            yield Fault(f"{at}.holidays", f"must be one of: {', '.join(HOLIDAY_NAMES)}", name)
    length = tariff.conventions.whole_month
    if length is not None and not 1 <= length[0] <= length[1] <= 70:
        rule = "must be from the fewest to the most days, at most 70"
        yield Fault(f"{at}.whole_month", rule, f"{length[0]}-{length[1]}", 'for example "27-34"')


def _change_faults(tariff: Tariff, at: str) -> Iterator[Fault]:
    before = None
    for change in tariff.changes:
        path = f"{at}.changes.{change.starts.isoformat()}"
        if before is not None and change.starts <= before:
            rule = f"must come after the change of {before.isoformat()}"
            yield Fault(path, rule, change.starts.isoformat())
        if tariff.ends is not None and change.starts > tariff.ends:
            rule = f"must not start after the tariff ends, {tariff.ends.isoformat()}"
            yield Fault(path, rule, change.starts.isoformat(), "a later end, or none")
        before = change.starts
        known = {fault.rule for fault in _price_faults(tariff, path)}
        yield from (f for f in _price_faults(change.tariff, path) if f.rule not in known)
        if not known:
            yield from hour_faults(change.tariff, path)


def _flags(path: str, flags: tuple[bool, ...], count: int) -> Iterator[Fault]:
    if len(flags) != count:
        yield Fault(path, f"must say yes or no for each of {count}", f"{len(flags)} flags")
    elif not any(flags):
        yield Fault(path, "must hold at least once in the year")


def _repeated(path: str, names: Iterable[str]) -> Iterator[Fault]:
    seen: set[str] = set()
    for name in names:
        if name in seen:
            yield Fault(f"{path}.{name}", "must have a name of its own", name)
        seen.add(name)
