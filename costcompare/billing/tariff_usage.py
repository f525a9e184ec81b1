"""From metered hours to what a bill prices: energy by period, kilowatts, energy taken off.

Arrays have one row a home, so that many homes are metered at once.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.tariff_lines import Part
from costcompare.billing.tariff_spans import BillSpan, PartSpan
from costcompare.case.tariff_facts import Export, Tariff

Floats = NDArray[np.float64]

REST = "other hours"
"""The name of the energy that no time-of-use period prices, in a usage by period."""


def register_names(rates: Tariff) -> tuple[str, ...]:
    """The names of the registers that a meter keeps for these prices."""
    return (*(period.name for period in rates.periods), REST)


def hourly_parts(span: BillSpan, kwh: Floats) -> tuple[Floats, ...]:
    """Energy by part and register [kWh], each of shape (homes, registers), as it was used."""
    return tuple(
        np.stack([np.take(kwh, hours, axis=1).sum(axis=1) for hours in part.registers], axis=1)
        for part in span.parts
    )


def total_parts(span: BillSpan, totals: Mapping[str, Floats]) -> tuple[Floats, ...]:
    """Energy by part and register [kWh] from a bill's energy by register, by days."""
    homes = max((len(kwh) for kwh in totals.values()), default=1)
    energy = [np.zeros((homes, len(part.registers))) for part in span.parts]
    for name, kwh in totals.items():
        places = [(n, _place(part, name)) for n, part in enumerate(span.parts)]
        found = [(n, place) for n, place in places if place is not None]
        # A register without an hour in the bill is kept where prices name it.
        found = [(n, p) for n, p in found if len(span.parts[n].registers[p])] or found
        days = sum(span.parts[n].days for n, _place_of in found)
        for n, place in found:
            energy[n][:, place] = kwh * (span.parts[n].days / days)
    return tuple(energy)


def _place(part: PartSpan, name: str) -> int | None:
    names = register_names(part.rates)
    return names.index(name) if name in names else None


def shared_by_days(span: BillSpan, energy: tuple[Floats, ...]) -> tuple[Floats, ...]:
    """The same energy, shared by days over the parts whose registers measure the same hours.

    A meter that is read once a bill cannot say on which side of a change of price its energy
    lies; utilities share it by days.
    """
    if len(span.parts) == 1:
        return energy
    patterns = [part.pattern for part in span.parts]
    shared = []
    for part, pattern in zip(span.parts, patterns, strict=True):
        alike = [n for n, other in enumerate(patterns) if other == pattern]
        days = sum(span.parts[n].days for n in alike)
        columns = []
        for name in register_names(part.rates):
            places = [(n, _place(span.parts[n], name)) for n in alike]
            total = sum((energy[n][:, p] for n, p in places if p is not None), np.float64(0.0))
            columns.append(total * (part.days / days) + np.zeros(len(energy[0])))
        shared.append(np.stack(columns, axis=1))
    return tuple(shared)


def highest_kw(spans: Sequence[BillSpan], kwh: Floats) -> list[dict[str, Floats]]:
    """The kilowatts that each bill charges, by the name of the charge.

    The highest hourly mean in the window, but no less than the ratchet's share of the
    eleven bills before; the year repeats itself, so January looks back on December.
    """
    measured = [
        {
            name: np.take(kwh, hours, axis=1).max(axis=1) if len(hours) else np.zeros(len(kwh))
            for name, hours in span.windows.items()
        }
        for span in spans
    ]
    ratchets = {
        charge.name: charge.ratchet
        for span in spans
        for part in span.parts
        for charge in part.rates.demand
    }
    highest = {
        name: np.max([one[name] for one in measured if name in one], axis=0) for name in ratchets
    }
    return [
        {
            name: np.maximum(kw, ratchets[name] * highest[name])
            if len(spans[n].windows[name])
            else kw
            for name, kw in one.items()
        }
        for n, one in enumerate(measured)
    ]


def netted_hours(export: Export, kwh: Floats, exported: Floats) -> tuple[Floats, Floats]:
    """Bought and exported energy of each hour after netting within the hour, where it holds."""
    if export.netting != "hour":
        return kwh, exported
    return np.maximum(kwh - exported, 0.0), np.maximum(exported - kwh, 0.0)


Bank = Mapping[str, Floats]
"""Exported energy not yet taken off [kWh], by register"""


def netted_month(
    span_parts: Sequence[Part], exported: Sequence[Floats], bank: Bank
) -> tuple[tuple[Part, ...], dict[str, Floats]]:
    """The parts with what was exported, and what is banked, taken off; and the new bank.

    Each register is netted by itself: energy exported in a period pays for that period.
    """
    bought: dict[str, Floats] = {}
    stored = dict(bank)
    for part, out in zip(span_parts, exported, strict=True):
        for place, name in enumerate(register_names(part.rates)):
            bought[name] = bought.get(name, 0.0) + part.energy[:, place]
            stored[name] = stored.get(name, 0.0) + out[:, place]
    kept = {}
    for name, kwh in bought.items():
        used = np.minimum(kwh, stored[name])
        stored[name] = stored[name] - used
        kept[name] = np.divide(kwh - used, kwh, out=np.zeros_like(kwh), where=kwh > 0.0)
    parts = tuple(
        Part(
            part.rates,
            part.since,
            part.season,
            part.days,
            part.energy * np.stack([kept[n] for n in register_names(part.rates)], axis=1),
        )
        for part in span_parts
    )
    return parts, stored


def banked(bank: Bank) -> Floats | float:
    """All energy of a bank [kWh]."""
    return sum(bank.values(), 0.0)


def parts_of(span: BillSpan, energy: Sequence[Floats]) -> tuple[Part, ...]:
    """The parts of a bill with their energy."""
    return tuple(
        Part(part.rates, part.since, part.season, float(part.days), kwh)
        for part, kwh in zip(span.parts, energy, strict=True)
    )
