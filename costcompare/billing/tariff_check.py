"""Whether a tariff can price a year: every fault at once, by its path in the case."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from costcompare.case.facts import Period, Season, Tariff, Tier
from costcompare.errors import Fault, TariffError


def check_tariff(tariff: Tariff) -> None:
    """Raise :class:`TariffError` with every fault of the tariff; return nothing else."""
    faults = list(tariff_faults(tariff))
    if faults:
        raise TariffError(faults)


def tariff_faults(tariff: Tariff) -> Iterator[Fault]:
    """Every fault of a tariff, in the order of its lines."""
    yield from _amount("tariff.customer_charge", tariff.customer_charge, "$/month")
    yield from _amount("tariff.minimum_bill", tariff.minimum_bill, "$/month")
    if not 0.0 <= tariff.tax < 1.0:
        given = f"{tariff.tax:g}"
        yield Fault("tariff.tax", "must lie between 0 % and 100 %", given, 'for example "3 %"')
    if tariff.tiers:
        yield from _tier_faults("tariff.tiers", tariff.tiers)
    elif not tariff.periods and not tariff.seasons:
        example = 'for example tiers = [ { price = "0.12 $/kWh" } ]'
        yield Fault("tariff.tiers", "must hold at least one price", instead=example)
    yield from _season_faults(tariff.seasons)
    yield from _period_faults(tariff.periods)


def _amount(path: str, value: float, unit: str) -> Iterator[Fault]:
    if not (math.isfinite(value) and value >= 0.0):
        yield Fault(path, f"must be at least 0 {unit}", f"{value:g} {unit}")


def _tier_faults(path: str, tiers: tuple[Tier, ...]) -> Iterator[Fault]:
    lower = 0.0
    for number, tier in enumerate(tiers, start=1):
        here = f"{path}.{number}"
        yield from _amount(f"{here}.price", tier.price, "$/kWh")
        if tier.up_to is None:
            if number < len(tiers):
                rule = "must say where it ends, because another tier follows"
                yield Fault(f"{here}.up_to", rule, instead='for example "800 kWh/month"')
            continue
        if not tier.up_to > lower:
            rule = f"must be more than {lower:g} kWh/month, where the tier begins"
            yield Fault(f"{here}.up_to", rule, f"{tier.up_to:g} kWh/month")
        lower = max(lower, tier.up_to)
    if tiers[-1].up_to is not None:
        rule = "must be left out of the last tier, or energy above it has no price"
        given = f"{tiers[-1].up_to:g} kWh/month"
        example = 'one more tier with a price alone, such as { price = "0.14 $/kWh" }'
        yield Fault(f"{path}.{len(tiers)}.up_to", rule, given, example)


def _season_faults(seasons: tuple[Season, ...]) -> Iterator[Fault]:
    owner: dict[int, str] = {}
    for season in seasons:
        path = f"tariff.seasons.{season.name}"
        yield from _flags(f"{path}.months", season.months, 12)
        if not season.tiers:
            yield Fault(f"{path}.tiers", "must hold at least one price")
        else:
            yield from _tier_faults(f"{path}.tiers", season.tiers)
        for month, inside in enumerate(season.months, start=1):
            if inside and owner.setdefault(month, season.name) != season.name:
                rule = f'must not share month {month} with the season "{owner[month]}"'
                yield Fault(f"{path}.months", rule)
    yield from _repeated("tariff.seasons", (season.name for season in seasons))


def _period_faults(periods: tuple[Period, ...]) -> Iterator[Fault]:
    for period in periods:
        path = f"tariff.periods.{period.name}"
        yield from _amount(f"{path}.price", period.price, "$/kWh")
        yield from _flags(f"{path}.months", period.months, 12)
        yield from _flags(f"{path}.hours", period.hours, 24)
        if period.days not in ("all", "weekdays", "weekends"):
            rule = "must be all, weekdays or weekends"
            yield Fault(f"{path}.days", rule, str(period.days))
    yield from _repeated("tariff.periods", (period.name for period in periods))


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
