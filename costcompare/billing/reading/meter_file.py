"""Meter files of the open ESPI standard (NAESB REQ.21): Atom entries that point at each other.

Codes are those of the standard's enumerations as its public schema documents them. The link
between entries is their addresses, never their place in the file; both generations of the name
of a bill's summary are read.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import timedelta
from itertools import pairwise

from costcompare.billing.reading.bills import Interval, Note
from costcompare.billing.reading.histories import Printed
from costcompare.billing.reading.intervals import in_order
from costcompare.billing.reading.meter_clock import LAST_EPOCH, LocalClock, clock_of
from costcompare.billing.reading.meter_tree import Element
from costcompare.errors import BillsError, Fault

ELECTRICITY = 0
"""Kind of a service (ServiceKind)"""
WATT_HOUR, WATT = 72, 38
"""Units that are electricity (UomType)"""
OTHER_UNITS: Mapping[int, str] = {132: "Btu", 169: "therm", 119: "cubic feet", 42: "cubic metres"}
FROM_HOME = 19
"""Flow direction of what the home gives to the grid; 1 is to the home, 4 is net (FlowDirection)"""
COUNTING_ON = frozenset({1, 3})
"""Accumulations that are a dial: each value less the one before is the use (1 bulk, 3 sum)"""
ESTIMATED = frozenset({8, 9, 10, 12})
"""Qualities: from history, by interpolation, questionable, projected (QualityOfReading)"""
OTHER_WEATHER = 15
"""Quality of values made for normal weather: no use that ever was"""
COST_UNIT = 1e-5
"""[$] of a cost: hundred-thousandths of the currency"""
DOLLARS = 840
"""US dollar (ISO 4217)"""
SUMMARIES = frozenset({"UsageSummary", "ElectricPowerUsageSummary"})
MOST_TENS = 12
"""Multipliers go from -12 to 12"""
AN_HOUR_S = 3600.0
READ_PLAY = timedelta(hours=2)
"""By which a period may begin before midnight: clocks of meters (judgement)"""


@dataclass(frozen=True)
class Entry:
    """One resource, where it is and what it points at."""

    resource: Element
    own: str
    up: str
    related: tuple[str, ...]

    def belongs_to(self, other: Entry) -> bool:
        """Whether an address says that this one lies under the other, or the other names it."""
        if other.own and any(_is_under(place, other.own) for place in (self.own, self.up)):
            return True
        return any(place and place in other.related for place in (self.own, self.up))


def _is_under(place: str, folder: str) -> bool:
    return place == folder or place.startswith(f"{folder.rstrip('/')}/")


def entries_of(root: Element) -> list[Entry]:
    """Every resource of a feed."""
    found = []
    for entry in (e for e in root.walk() if e.name == "entry"):
        content = entry.first("content")
        links: dict[str, list[str]] = {}
        for link in entry.all("link"):
            links.setdefault(link.attributes.get("rel", ""), []).append(
                link.attributes.get("href", "").strip()
            )
        own, up = (next(iter(links.get(name, [])), "") for name in ("self", "up"))
        related = tuple(links.get("related", []))
        found += [Entry(one, own, up, related) for one in (content.inside if content else [])]
    return found


def is_meter_file(root: Element) -> bool:
    """Whether an XML document is of the standard."""
    return any("espi" in element.space for element in root.walk())


def read_meter_file(root: Element, name: str) -> tuple[list[Printed], list[Interval], list[Note]]:
    """Bills and intervals of the electricity in a file, and what was found on the way."""
    entries = entries_of(root)
    others = [e for e in entries if _other_service(e)]
    kept = [
        e for e in entries if e not in others and not any(e.belongs_to(other) for other in others)
    ]
    if others and not any(e.resource.name == "UsagePoint" for e in kept):
        rule = "holds no electricity, only another service"
        raise BillsError([Fault(name, rule, instead="the file of the electric meter")])
    notes = []
    if others:
        what = f"{len(others)} meters are of gas, water or another service."
        notes.append(Note("other services", what, "Not counted."))
    summaries = [e.resource for e in kept if e.resource.name in SUMMARIES]
    starts = [s.integer("billingPeriod", "start") for s in summaries]
    clock = clock_of(root, [start for start in starts if start is not None])
    if clock.told_as_local:
        what = "Every bill begins at midnight UTC although the house keeps another clock."
        notes.append(Note("local clock", what, "Taken as the local clock, written as UTC."))
    intervals, more = _intervals(kept, clock)
    bills = [bill for s in summaries if (bill := _bill(s, clock, intervals)) is not None]
    return bills, intervals, [*notes, *more]


def _other_service(entry: Entry) -> bool:
    if entry.resource.name != "UsagePoint":
        return False
    kind = entry.resource.integer("ServiceCategory", "kind")
    return kind is not None and kind != ELECTRICITY


@dataclass(frozen=True)
class _Type:
    """What the values of a meter mean."""

    kwh: float
    """[kWh] of a value, or [kW] where it is a power"""
    is_power: bool
    from_home: bool
    counts_on: bool
    is_dollars: bool


def _type(resource: Element | None) -> _Type | str:
    """What a reading type says, or the unit that is no electricity."""
    if resource is None:
        return _Type(0.001, is_power=False, from_home=False, counts_on=False, is_dollars=True)
    unit = resource.integer("uom")
    if unit not in (None, WATT_HOUR, WATT):
        return OTHER_UNITS.get(unit or 0, f"the unit of code {unit}")
    tens = resource.integer("powerOfTenMultiplier") or 0
    if abs(tens) > MOST_TENS:
        return f"the multiplier of code {tens}"
    return _Type(
        10.0**tens / 1000.0,
        is_power=unit == WATT,
        from_home=resource.integer("flowDirection") == FROM_HOME,
        counts_on=resource.integer("accumulationBehaviour") in COUNTING_ON,
        is_dollars=resource.integer("currency") in (None, 0, DOLLARS),
    )


def _intervals(entries: Sequence[Entry], clock: LocalClock) -> tuple[list[Interval], list[Note]]:
    types = [e for e in entries if e.resource.name == "ReadingType"]
    meters = [e for e in entries if e.resource.name == "MeterReading"]
    blocks = [e for e in entries if e.resource.name == "IntervalBlock"]
    by_type: dict[int, list[Element]] = {}
    for block in blocks:
        kind = _type_of(block, meters, types)
        by_type.setdefault(types.index(kind) if kind else -1, []).append(block.resource)
    notes: list[Note] = []
    series: list[list[Interval]] = []
    for place, found in by_type.items():
        kind_read = _type(types[place].resource if place >= 0 else None)
        if isinstance(kind_read, str):
            what = f"Some values are in {kind_read}, which is no electricity."
            notes.append(Note("other services", what, "Not counted."))
            continue
        intervals, more = _of_blocks(found, kind_read, clock)
        notes += more
        if intervals:
            series.append(intervals)
    return _together(series, notes), notes


def _type_of(block: Entry, meters: Sequence[Entry], types: Sequence[Entry]) -> Entry | None:
    for meter in meters:
        if block.belongs_to(meter):
            for kind in types:
                if kind.own in meter.related or kind.belongs_to(meter):
                    return kind
    return types[0] if len(types) == 1 else None


def _of_blocks(
    blocks: Iterable[Element], kind: _Type, clock: LocalClock
) -> tuple[list[Interval], list[Note]]:
    """The intervals of one series of values."""
    found: list[Interval] = []
    refused = other_weather = 0
    for reading in _readings(blocks):
        start = reading.integer("timePeriod", "start")
        length = reading.integer("timePeriod", "duration")
        value = reading.integer("value")
        if start is None or not length or value is None or not 0 < start < LAST_EPOCH:
            refused += 1
            continue
        qualities = {q.integer("quality") for q in reading.all("ReadingQuality")}
        if OTHER_WEATHER in qualities:
            other_weather += 1
            continue
        found.append(_interval(reading, kind, clock, estimated=bool(qualities & ESTIMATED)))
    ordered, notes = in_order(found)
    if kind.counts_on:
        ordered = _differences(ordered)
    if refused:
        what = f"{refused} values have no time or no number."
        notes.append(Note("unreadable line", what, "Left out; they count as missing."))
    if other_weather:
        what = f"{other_weather} values are made for normal weather."
        notes.append(Note("quality", what, "Left out: they are no use that ever was."))
    return ordered, notes


def _readings(blocks: Iterable[Element]) -> Iterator[Element]:
    for block in blocks:
        yield from block.all("IntervalReading")


def _interval(reading: Element, kind: _Type, clock: LocalClock, *, estimated: bool) -> Interval:
    hours = (reading.integer("timePeriod", "duration") or 0) / AN_HOUR_S
    value = (reading.integer("value") or 0) * kind.kwh * (hours if kind.is_power else 1.0)
    cost = reading.integer("cost")
    out = value if kind.from_home else max(-value, 0.0)
    return Interval(
        clock.moment(reading.integer("timePeriod", "start") or 0),
        hours,
        0.0 if kind.from_home else max(value, 0.0),
        cost * COST_UNIT if cost is not None and kind.is_dollars else None,
        estimated,
        out,
    )


def _differences(dial: Sequence[Interval]) -> list[Interval]:
    """Use from a dial that counts on: each interval is the next value less its own."""
    return [
        Interval(
            now.start,
            (later.start - now.start) / timedelta(hours=1),
            max(later.kwh - now.kwh, 0.0),
            now.dollars,
            now.estimated or later.estimated,
            max(later.export_kwh - now.export_kwh, 0.0),
        )
        for now, later in pairwise(dial)
    ]


def _together(series: Sequence[Sequence[Interval]], notes: list[Note]) -> list[Interval]:
    """What was bought, with what was given to the grid beside it.

    Of several series of what was bought that cover the same time, such as hours and days, the
    finest is taken.
    """
    bought = [s for s in series if any(i.kwh > 0.0 for i in s)]
    given = [s for s in series if s not in bought]
    if not bought:
        return list(series[0]) if series else []
    bought.sort(key=lambda s: (min(i.hours for i in s), -len(s)))
    if len(bought) > 1:
        what = f"There are {len(bought)} series of use of the same house."
        notes.append(Note("doubled entry", what, "The finest one is counted."))
    out: dict[object, float] = {}
    for interval in (i for s in given for i in s):
        out[interval.start] = out.get(interval.start, 0.0) + interval.export_kwh
    return [
        Interval(
            i.start,
            i.hours,
            i.kwh,
            i.dollars,
            i.estimated,
            i.export_kwh + out.get(i.start, 0.0),
        )
        for i in bought[0]
    ]


def _bill(summary: Element, clock: LocalClock, intervals: Sequence[Interval]) -> Printed | None:
    start = summary.integer("billingPeriod", "start")
    length = summary.integer("billingPeriod", "duration")
    if start is None or not length or not (start > 0 and start + length < LAST_EPOCH):
        return None
    begins = (clock.moment(start) + READ_PLAY).date()
    ends = (clock.moment(start + length) + READ_PLAY).date()
    inside = [i for i in intervals if begins <= i.start.date() < ends]
    kwh = _consumption(summary)
    if kwh is None and inside:
        kwh = sum(i.kwh for i in inside)
    if kwh is None or begins >= ends:
        return None
    cost = summary.integer("billLastPeriod")
    is_dollars = summary.integer("currency") in (None, 0, DOLLARS)
    quality = summary.integer("qualityOfReading")
    return Printed(
        begins,
        ends,
        kwh,
        cost * COST_UNIT if cost is not None and is_dollars else None,
        "unknown" if quality is None else "estimated" if quality in ESTIMATED else "actual",
        sum(i.export_kwh for i in inside),
    )


def _consumption(summary: Element) -> float | None:
    """[kWh] of the last period, where its unit is that of energy."""
    for name in ("overallConsumptionLastPeriod", "currentBillingPeriodOverAllConsumption"):
        total = summary.first(name)
        if total is None or total.integer("uom") not in (None, WATT_HOUR):
            continue
        tens, value = total.integer("powerOfTenMultiplier") or 0, total.integer("value")
        if value is not None and abs(tens) <= MOST_TENS:
            return value * 10.0**tens / 1000.0
    return None
