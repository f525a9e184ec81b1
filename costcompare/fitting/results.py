"""What a fit says: bills measured against computed, facts before and after, what to ask next."""

from __future__ import annotations

from dataclasses import dataclass

from costcompare.case.facts import Case
from costcompare.comparison import Band
from costcompare.uncertainty import Draws


@dataclass(frozen=True)
class FittedBill:
    """One bill against the house as it was said to be, and against the fitted one."""

    begins: str
    """Day of the first read, as 2026-01-31"""
    ends: str
    days: int
    read: str
    measured_kwh: float
    said_kwh: Band
    """What the house would use by what is said of it"""
    computed_kwh: Band
    """What the fitted house would use"""
    heating_kwh: float
    """Of the fitted house"""
    error_kwh: float
    """Standard error taken: the read, the model, the weather"""


@dataclass(frozen=True)
class FittedFact:
    """One fact before and after; the three values of each are tenth, middle and ninetieth."""

    name: str
    path: str
    words: str
    known: str
    unit: str
    said: Band
    fitted: Band
    moved: float
    """Standard deviations of what was said by which its middle has moved"""
    learned: float
    """Share of its standard deviation that the bills took away, 0 to 1"""


@dataclass(frozen=True)
class NextBill:
    """The bill that would tell most about the heating of a year."""

    month: int
    """1 to 12"""
    narrower: float
    """Share by which it would narrow the range of the yearly heating"""


@dataclass(frozen=True)
class Finding:
    """Something that the bills and what was said do not agree on."""

    topic: str
    """``temperature``, ``too little``, ``too much`` or ``fact``"""
    subject: str
    """The fact in words, or the dates of the bill"""
    deviations: float
    """How many standard deviations apart"""


@dataclass(frozen=True)
class HouseFit:
    """A house that explains its bills, as far as they go."""

    format: int
    title: str
    weather: str
    weather_is_of_the_bills: bool
    """False where the bills are held against a typical year"""
    bills: tuple[FittedBill, ...]
    facts: tuple[FittedFact, ...]
    """Those that move today's bill, the most moved first"""
    yearly_heating_said_kwh: Band
    """Heating of today's house over the year of weather, before the bills"""
    yearly_heating_kwh: Band
    """The same with the bills"""
    yearly_electricity_kwh: Band
    mean_bias: float
    """NMBE, measured less computed, one parameter counted"""
    scatter: float
    """CV(RMSE), one parameter counted"""
    within_limits: bool | None
    """Mean bias within 5 % and scatter within 15 %; None with fewer than twelve months"""
    findings: tuple[Finding, ...]
    next_bill: NextBill | None
    """None where no further bill would tell much"""
    former_owner: bool
    settled: bool
    notes: tuple[str, ...]
    """What the reading of the bills found"""


@dataclass(frozen=True)
class FittedHouse:
    """What a fit says, and the homes that explain the bills."""

    report: HouseFit
    likely: Case
    """The case with its facts at their most likely values; what a former owner kept it at is
    left out"""
    draws: Draws
    """Homes for ranges, drawn for the case as it was stated"""
