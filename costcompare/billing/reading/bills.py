"""What was read: bills by the days of their reads, meter intervals, and what was found in them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import Literal

ReadKind = Literal["actual", "estimated", "customer", "unknown"]
"""How the meter was read at the end of a bill"""


@dataclass(frozen=True)
class Note:
    """Something in the bills that would mislead, and what was done about it."""

    rule: str
    """The rule that found it, a key of :data:`costcompare.billing.reading.rules.RULES`"""
    found: str
    done: str

    def sentence(self) -> str:
        """The note as a line of text."""
        return f"{self.found} {self.done}"


@dataclass(frozen=True)
class Bill:
    """The electricity between two reads of the meter."""

    begins: date
    """Day of the read that it starts with"""
    ends: date
    """Day of the read that it ends with: the first day of the next bill"""
    kwh: float
    """Bought from the grid"""
    dollars: float | None = None
    """Current charges for this electricity alone; None where they are not known"""
    read: ReadKind = "unknown"
    printed: int = 1
    """Number of printed bills that were put together in it"""
    export_kwh: float = 0.0
    """Given to the grid"""

    @property
    def days(self) -> int:
        """Days between the reads; the day of a read is counted once."""
        return (self.ends - self.begins).days

    @property
    def kwh_per_day(self) -> float:
        """Mean use [kWh/day]."""
        return self.kwh / self.days

    @property
    def dates(self) -> str:
        """``2025-12-18 to 2026-01-18``."""
        return f"{self.begins.isoformat()} to {self.ends.isoformat()}"


@dataclass(frozen=True)
class Interval:
    """What the meter counted in one interval."""

    start: datetime
    """On the local clock; with its offset from UTC where the file says it"""
    hours: float
    kwh: float
    """Bought from the grid"""
    dollars: float | None = None
    estimated: bool = False
    export_kwh: float = 0.0


@dataclass(frozen=True)
class Bills:
    """Bills that can be used, in order of time, without overlap."""

    bills: tuple[Bill, ...]
    notes: tuple[Note, ...] = ()
    left_out: tuple[Bill, ...] = ()
    """Bills that were read and not kept; the notes say why"""
    intervals: tuple[Interval, ...] = ()
    """Where the source has them"""
    source: str = "typed bills"
    """Name of the file"""

    @property
    def kwh(self) -> float:
        """All that was bought."""
        return sum(bill.kwh for bill in self.bills)

    @property
    def days(self) -> int:
        """Days of all bills."""
        return sum(bill.days for bill in self.bills)

    @property
    def has_export(self) -> bool:
        """Whether the house gives electricity to the grid."""
        return any(bill.export_kwh > 0.0 for bill in (*self.bills, *self.left_out))
