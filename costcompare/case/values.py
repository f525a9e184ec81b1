"""Types of the values in a case file: each reads what was written or says the rule.

A field of :mod:`costcompare.case.document` is annotated with one of these. A value that
breaks its rule raises a ``PydanticCustomError`` that carries rule, given and instead, so
that every fault of a file comes out of one validation, in the same words.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from difflib import get_close_matches
from typing import Annotated, Any, NoReturn

from pydantic import GetCoreSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from costcompare.case.hours import days_of_bill, days_of_year, hours_of_day, months_of_year
from costcompare.case.tariff_facts import HOLIDAY_NAMES, HOLIDAY_SETS, YearDays
from costcompare.units import KINDS, KindName, UnitError, parse


def shown(given: object) -> str:
    """What was given, as the user would recognise it, on one short line."""
    if isinstance(given, str):
        text = f'"{given}"'
    elif isinstance(given, bool):
        text = str(given).lower()
    elif isinstance(given, dict):
        text = "a table with " + ", ".join(map(str, given)) if given else "an empty table"
    elif isinstance(given, list | tuple):
        text = f"a list of {len(given)}"
    else:
        text = str(given)
    text = " ".join(text.split())
    return text if len(text) <= 80 else text[:77] + "..."


def refuse(rule: str, given: object, instead: str = "") -> NoReturn:
    """Raise the error that becomes a fault."""
    parts = {"rule": rule, "given": shown(given), "instead": instead}
    raise PydanticCustomError("case", "{rule}", parts)


class Rule:
    """A validator that pydantic calls instead of its own."""

    def read(self, given: Any) -> Any:
        raise NotImplementedError

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)


@dataclass(frozen=True)
class Measure(Rule):
    """A value with a unit; limits are written in a unit too."""

    kind: KindName
    above: str | None = None
    at_least: str | None = None
    at_most: str | None = None

    def read(self, given: Any) -> float:
        example = f'for example "{KINDS[self.kind].example}"'
        if isinstance(given, dict):
            refuse("needs a likely value beside low and high", given, 'likely = "..."')
        try:
            value = parse(given, self.kind)
        except UnitError as error:
            refuse(error.rule, given, error.instead)
        if self.above is not None and not value > parse(self.above, self.kind):
            refuse(f"must be more than {self.above}", given, example)
        if self.at_least is not None and value < parse(self.at_least, self.kind):
            refuse(f"must be at least {self.at_least}", given, example)
        if self.at_most is not None and value > parse(self.at_most, self.kind):
            percent = self.kind == "fraction" and "%" not in str(given)
            better = f'"{given} %" if percent is meant' if percent else example
            refuse(f"must be at most {self.at_most}", given, better)
        return value


@dataclass(frozen=True)
class Number(Rule):
    """A plain number."""

    low: float
    high: float

    def read(self, given: Any) -> float:
        if isinstance(given, bool) or not isinstance(given, int | float):
            refuse("must be a number without quotes", given, "for example 35.6")
        if not self.low <= given <= self.high:
            refuse(f"must be from {self.low:g} to {self.high:g}", given)
        return float(given)


@dataclass(frozen=True)
class Whole(Rule):
    """A whole number."""

    low: int
    high: int

    def read(self, given: Any) -> int:
        if isinstance(given, bool) or not isinstance(given, int):
            refuse(f"must be a whole number{self._range()}", given)
        if not self.low <= given <= self.high:
            refuse(f"must be a whole number{self._range()}", given)
        return given

    def _range(self) -> str:
        return f", {self.low}" if self.low == self.high else f" from {self.low} to {self.high}"


@dataclass(frozen=True)
class Text(Rule):
    """One line of text that is not empty."""

    longest: int = 80

    def read(self, given: Any) -> str:
        if not isinstance(given, str):
            refuse("must be text in quotes", given)
        if not given.strip() or len(given) > self.longest or not given.isprintable():
            refuse(f"must be one line of 1 to {self.longest} characters", given)
        return given.strip()


@dataclass(frozen=True)
class Words(Rule):
    """One of a few set phrases."""

    choices: tuple[str, ...]

    def read(self, given: Any) -> str:
        if not isinstance(given, str) or given not in self.choices:
            refuse(
                f"must be one of: {'; '.join(self.choices)}", given, nearest(given, self.choices)
            )
        return given


@dataclass(frozen=True)
class Flag(Rule):
    """True or false."""

    def read(self, given: Any) -> bool:
        if not isinstance(given, bool):
            refuse("must be true or false, without quotes", given)
        return given


@dataclass(frozen=True)
class Day(Rule):
    """A day of the calendar."""

    def read(self, given: Any) -> date:
        if isinstance(given, date) and not isinstance(given, datetime):
            return given
        if isinstance(given, str):
            try:
                return date.fromisoformat(given.strip())
            except ValueError:
                pass
        refuse("must be a day of the calendar", given, "for example 2027-03-01")


@dataclass(frozen=True)
class Clock(Rule):
    """Hours of the day, months of the year, days: text that a reader understands."""

    reader: Callable[[str], Any]
    example: str

    def read(self, given: Any) -> Any:
        example = f'for example "{self.example}"'
        if not isinstance(given, str):
            refuse("must be text in quotes", given, example)
        try:
            return self.reader(given)
        except ValueError as error:
            refuse(str(error), given, example)


class Holiday(Rule):
    """A day of the calendar, the name of a holiday of every year, or of a set of them."""

    def read(self, given: Any) -> date | str:
        names = (*HOLIDAY_SETS, *HOLIDAY_NAMES)
        if isinstance(given, str) and (name := given.strip().lower()) in names:
            return name
        try:
            return Day().read(given)
        except PydanticCustomError:
            rule = f"must be a day such as 2027-12-25, or one of: {'; '.join(names)}"
            refuse(rule, given, nearest(given, names))


@dataclass(frozen=True)
class Ceiling(Rule):
    """A height, or the low and high side of a sloping ceiling; read as (low, high) [m]."""

    height: Measure = Measure("length", at_least="5 ft", at_most="40 ft")

    def read(self, given: Any) -> tuple[float, float]:
        if not isinstance(given, dict):
            height = self.height.read(given)
            return height, height
        if set(given) != {"low", "high"}:
            refuse(
                "a sloping ceiling needs low and high", given, '{ low = "8 ft", high = "15 ft" }'
            )
        low, high = self.height.read(given["low"]), self.height.read(given["high"])
        if low > high:
            refuse("low must not be above high", f"{given['low']} and {given['high']}")
        return low, high


def nearest(given: object, choices: tuple[str, ...] | list[str]) -> str:
    """The choice that looks most like what was given, quoted, or nothing."""
    close = get_close_matches(str(given)[:80].lower(), [c.lower() for c in choices], 1, 0.6)
    by_lower = {c.lower(): c for c in choices}
    return f'"{by_lower[close[0]]}"' if close else ""


Name = Annotated[str, Text()]
OnOff = Annotated[bool, Flag()]
DayOfYear = Annotated[date, Day()]
Hours = Annotated[tuple[bool, ...], Clock(hours_of_day, "6-23")]
Months = Annotated[tuple[bool, ...], Clock(months_of_year, "10-3")]
Dates = Annotated[YearDays, Clock(days_of_year, "06-15 to 09-14")]
BillDays = Annotated[tuple[int, int], Clock(days_of_bill, "27-34")]
HolidayName = Annotated[date | str, Holiday()]
CeilingHeight = Annotated[tuple[float, float], Ceiling()]
Length = Annotated[float, Measure("length", at_least="0 ft", at_most="1000 ft")]
LineSet = Annotated[float, Measure("length", at_least="0 ft", at_most="300 ft")]
Height = Annotated[float, Measure("length", above="0 ft", at_most="40 ft")]
Opening = Annotated[float, Measure("length", at_least="1 in", at_most="40 ft")]
Area = Annotated[float, Measure("area", above="0 ft2", at_least="1 ft2", at_most="100000 ft2")]
WindowArea = Annotated[float, Measure("area", at_least="0 ft2", at_most="10000 ft2")]
Setting = Annotated[float, Measure("temperature", at_least="35 F", at_most="95 F")]
Outdoors = Annotated[float, Measure("temperature", at_least="-60 F", at_most="80 F")]
TestedAt = Annotated[float, Measure("temperature", at_least="-40 F", at_most="125 F")]
Difference = Annotated[float, Measure("temperature_difference", at_least="0 F", at_most="20 F")]
Airflow = Annotated[float, Measure("airflow", at_least="10 cfm", at_most="20000 cfm")]
Draught = Annotated[float, Measure("airflow", at_least="0 cfm", at_most="5000 cfm")]
FireHeat = Annotated[float, Measure("capacity", at_least="0 W", at_most="200 kBtu/h")]
Power = Annotated[float, Measure("power", at_least="0 W", at_most="5 kW")]
PointPower = Annotated[float, Measure("power", at_least="10 W", at_most="50 kW")]
Output = Annotated[float, Measure("output", at_least="100 W", at_most="200 kW")]
Capacity = Annotated[float, Measure("capacity", at_least="1 kBtu/h", at_most="240 kBtu/h")]
Insulation = Annotated[float, Measure("resistance", at_least="R-0", at_most="R-150")]
Resistance = Annotated[float, Measure("resistance", above="R-0", at_most="R-150")]
UFactor = Annotated[float, Measure("u_factor", above="0 W/m2/K", at_most="10 W/m2/K")]
Use = Annotated[float, Measure("energy_rate", at_least="0 W", at_most="50000 kWh/month")]
MonthlyEnergy = Annotated[float, Measure("monthly_energy", above="0 kWh")]
Share = Annotated[float, Measure("fraction", at_least="0 %", at_most="100 %")]
LeakFlow = Annotated[float, Measure("airflow", at_least="0 cfm", at_most="3000 cfm")]
LeakShare = Annotated[float, Measure("fraction", at_least="0 %", at_most="90 %")]
Rate = Annotated[float, Measure("fraction", at_least="-20 %", at_most="50 %")]
Money = Annotated[float, Measure("money", at_least="0 $", at_most="10000000 $")]
MoneyMonthly = Annotated[float, Measure("money_per_month", at_least="0 $/month")]
MoneyYearly = Annotated[float, Measure("money_per_year")]
Price = Annotated[float, Measure("price_per_kwh", at_least="-1 $/kWh", at_most="10 $/kWh")]
KwPrice = Annotated[float, Measure("price_per_kw", at_least="0 $/kW", at_most="1000 $/kW")]
MoneyDaily = Annotated[float, Measure("money_per_day", at_least="0 $/day")]
DailyEnergy = Annotated[float, Measure("daily_energy", above="0 kWh/day")]
AnyMoneyMonthly = Annotated[float, Measure("money_per_month")]
AnyShare = Annotated[float, Measure("fraction", at_least="-100 %", at_most="100 %")]
Years = Annotated[float, Measure("duration_years", at_least="1 year", at_most="100 year")]
YearsLeft = Annotated[float, Measure("duration_years", at_least="0 year", at_most="100 year")]
Term = Annotated[float, Measure("duration_years", above="0 year", at_most="40 year")]
Interest = Annotated[float, Measure("fraction", at_least="0 %", at_most="50 %")]
EmissionFactor = Annotated[
    float, Measure("emission_factor", at_least="0 kg/kWh", at_most="3 kg/kWh")
]
AirChanges = Annotated[float, Measure("air_changes", at_least="0 1/h", at_most="20 1/h")]
Conductivity = Annotated[float, Measure("conductivity", above="0 W/m/K")]
Density = Annotated[float, Measure("density", at_least="0 kg/m3")]
HeatCapacity = Annotated[float, Measure("heat_capacity", at_least="0 J/kg/K")]
