"""What is known about the price of electricity: frozen facts, in dollars and kWh.

Everything that a printed bill may show has a place here; docs/tariffs.md says in which order
the lines are worked out. A tariff is hashable, so that what is checked once stays checked.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

LineGroup = Literal[
    "energy", "demand", "riders", "fixed", "percentages", "minimum", "credits", "taxes"
]
"""Kinds of lines in the order in which they are worked out: what a base can name"""

DayKind = Literal["all", "weekdays", "weekends"]
Proration = Literal["calendar month", "none", "30 days", "average month"]
MidBillSplit = Literal["by days", "by use"]
Rounding = Literal["none", "lines", "total"]
ReadingTime = Literal["start of day", "end of day"]
Observed = Literal["as dated", "monday after sunday", "nearest weekday"]
Netting = Literal["none", "hour", "month"]
Unused = Literal["lapses", "paid"]
Overlaps = Literal["refused", "first wins"]

HOLIDAY_NAMES = (
    "new year's day",
    "martin luther king day",
    "presidents' day",
    "good friday",
    "memorial day",
    "juneteenth",
    "independence day",
    "labor day",
    "columbus day",
    "veterans day",
    "thanksgiving",
    "day after thanksgiving",
    "christmas eve",
    "christmas day",
)
HOLIDAY_SETS: dict[str, tuple[str, ...]] = {
    "usual six": (
        "new year's day",
        "memorial day",
        "independence day",
        "labor day",
        "thanksgiving",
        "christmas day",
    ),
    "us federal": (
        "new year's day",
        "martin luther king day",
        "presidents' day",
        "memorial day",
        "juneteenth",
        "independence day",
        "labor day",
        "columbus day",
        "veterans day",
        "thanksgiving",
        "christmas day",
    ),
}
"""Sets of holidays by name. Sources: the six holidays that North American tariffs and grid
practice treat as off-peak (common practice, no source); 5 U.S.C. 6103(a) (from memory)."""

ALL_MONTHS, ALL_HOURS = (True,) * 12, (True,) * 24


@dataclass(frozen=True)
class YearDays:
    """Days of every year from one day to another, both included; may run over the new year."""

    first: tuple[int, int]
    """Month 1 to 12 and day"""
    last: tuple[int, int]

    def hold(self, day: date) -> bool:
        """Whether the day is one of them."""
        here = (day.month, day.day)
        if self.first <= self.last:
            return self.first <= here <= self.last
        return here >= self.first or here <= self.last


def holds_on(months: tuple[bool, ...], days: YearDays | None, day: date) -> bool:
    """Whether something that is stated by months, or by days of the year, holds on a day."""
    return days.hold(day) if days is not None else months[day.month - 1]


@dataclass(frozen=True)
class Tier:
    """One block of a tiered price."""

    up_to: float | None
    """Upper end [kWh a month, or kWh a day where ``daily``], None for the last tier"""
    price: float
    """[$/kWh]"""
    daily: bool = False
    """The end is an allowance for each day of the bill"""


@dataclass(frozen=True)
class Period:
    """A time-of-use period; the first period that matches an hour prices it."""

    name: str
    months: tuple[bool, ...]
    """12 flags, January first"""
    days: DayKind
    hours: tuple[bool, ...]
    """24 flags, local clock, labelled by the start of the hour"""
    price: float
    """[$/kWh]"""
    dates: YearDays | None = None
    """In place of ``months``"""


@dataclass(frozen=True)
class Season:
    """Tiers that hold in some months, or between some days, only."""

    name: str
    months: tuple[bool, ...]
    tiers: tuple[Tier, ...]
    dates: YearDays | None = None
    """In place of ``months``"""


@dataclass(frozen=True)
class DemandCharge:
    """A price for the highest hour of a bill."""

    name: str
    price: float
    """[$/kW a month]"""
    months: tuple[bool, ...] = ALL_MONTHS
    days: DayKind = "all"
    hours: tuple[bool, ...] = ALL_HOURS
    """The window in which it is measured; the hour that begins at the label"""
    ratchet: float = 0.0
    """Share of the highest of the eleven bills before, below which it is not billed"""


@dataclass(frozen=True)
class Rider:
    """An amount on top: for each kWh, a month, or a share of other lines."""

    name: str
    per_kwh: float = 0.0
    """[$/kWh], negative for a credit"""
    per_month: float = 0.0
    """[$ a month], counted with the fixed charges"""
    share: float = 0.0
    """Of the lines named by ``on``"""
    on: tuple[LineGroup, ...] = ("energy",)
    months: tuple[bool, ...] = ALL_MONTHS


@dataclass(frozen=True)
class Tax:
    """A tax or fee: a share of the lines named by ``on``; "taxes" there are those before it."""

    name: str
    share: float
    on: tuple[LineGroup, ...] = (
        "energy",
        "demand",
        "riders",
        "fixed",
        "percentages",
        "minimum",
        "credits",
    )


@dataclass(frozen=True)
class Export:
    """What is given for energy fed into the grid."""

    netting: Netting = "none"
    """Over how long export is taken off what is bought, kWh for kWh, before it is priced:
    a month with a bank that carries on, an hour, or not at all"""
    price: float = 0.0
    """[$/kWh] for what is not taken off"""
    offsets: tuple[LineGroup, ...] = ("energy", "demand", "riders", "percentages")
    """The lines that the credit may pay"""
    true_up: int = 12
    """Month, 1 to 12, whose bill ends the year of the bank"""
    unused: Unused = "lapses"
    """What becomes of the bank, and of credit that paid no line, in that bill"""


@dataclass(frozen=True)
class Conventions:
    """How a utility counts, where utilities differ; docs/tariffs.md explains each."""

    proration: Proration = "calendar month"
    whole_month: tuple[int, int] | None = None
    """A bill of so many days [least, most] is one month, whatever the proration"""
    split: MidBillSplit = "by days"
    """How the energy of a bill is shared where a price or season changes within it"""
    rounding: Rounding = "none"
    reads: ReadingTime = "start of day"
    """When the meter is read: whether the day of a reading belongs to the bill after or before"""
    overlaps: Overlaps = "refused"
    """Whether periods may share hours without one lying inside the other"""


@dataclass(frozen=True)
class Tariff:
    """The price of electricity.

    Energy is priced by ``periods`` where one matches the hour, and what is left by the
    tiers of the season, or by ``tiers`` where no season matches.
    """

    name: str
    customer_charge: float
    """[$ a month]"""
    tiers: tuple[Tier, ...]
    seasons: tuple[Season, ...] = ()
    periods: tuple[Period, ...] = ()
    holidays: tuple[date, ...] = ()
    """Days that count as weekend"""
    tax: float = 0.0
    """Share of all other lines"""
    minimum_bill: float = 0.0
    """[$ a month] before tax"""
    daily_charge: float = 0.0
    """[$ a day], on top of the customer charge"""
    holiday_names: tuple[str, ...] = ()
    """Of :data:`HOLIDAY_NAMES`: holidays of every year"""
    observed: Observed = "monday after sunday"
    """Where the named holidays are moved that fall on a weekend"""
    demand: tuple[DemandCharge, ...] = ()
    riders: tuple[Rider, ...] = ()
    minimum_counts: tuple[LineGroup, ...] = ("energy", "demand", "riders", "fixed", "percentages")
    """Lines that count towards the minimum bill"""
    taxes: tuple[Tax, ...] = ()
    export: Export = Export()
    conventions: Conventions = Conventions()
    ends: date | None = None
    """Last day on which the tariff holds"""
    changes: tuple[Change, ...] = ()
    """Later prices, in the order of their days"""
    currency: str = "$"
    """The sign of the money that all amounts of the case are in"""

    def on(self, day: date) -> Tariff:
        """The prices that hold on a day: these, or those of the last change before it."""
        now = self
        for change in self.changes:
            if change.starts <= day:
                now = change.tariff
        return now


@dataclass(frozen=True)
class Change:
    """Prices that hold from a day on."""

    starts: date
    tariff: Tariff
    """All prices from then on, changed or not; its own ``changes`` are empty"""
