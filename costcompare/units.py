"""Text with a unit to SI numbers, and back: the only module that knows pint.

People write ``68 F``, ``R-19``, ``1200 cfm``, ``$0.12/kWh``, ``12 kBtu/h``. What a unit
letter means depends on the field it stands in (``F`` is a temperature in one and a
difference in another, never a farad), so every field has a kind:

* :func:`parse` turns text into the SI value of a kind, or says what to write instead;
* :func:`show` turns an SI value into text that :func:`parse` reads back;
* :func:`customary` gives the number and the unit that people here use.

Calendar and money factors are plain numbers of this module: pint's year is 365.25 days.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

import pint

KindName = Literal[
    "length",
    "area",
    "temperature",
    "temperature_difference",
    "airflow",
    "power",
    "output",
    "capacity",
    "resistance",
    "u_factor",
    "energy_rate",
    "monthly_energy",
    "money",
    "money_per_month",
    "money_per_year",
    "price_per_kwh",
    "price_per_kw",
    "money_per_day",
    "daily_energy",
    "fraction",
    "duration_years",
    "air_changes",
    "conductivity",
    "density",
    "heat_capacity",
    "emission_factor",
]
"""What a number can stand for; each has one SI unit, given in :data:`KINDS`."""

HOURS_A_MONTH = 730.0
"""[h] a twelfth of the program's year of 8,760 hours"""
DAYS_A_MONTH = 365.0 / 12.0
"""[d]"""


class UnitError(ValueError):
    """A text that is not a value of the kind; the parts make one sentence."""

    def __init__(self, rule: str, given: str, instead: str) -> None:
        self.rule = rule
        self.given = given
        self.instead = instead
        super().__init__(f"{rule} (given: {given}). Write {instead}.")


@dataclass(frozen=True)
class Kind:
    """How one kind of value is written."""

    noun: str
    si: str
    """Unit of the parsed number, as pint writes it; for money and time a plain label"""
    example: str
    units: Mapping[str, str | float]
    """Unit as written (lower case, no spaces) to pint's name, or to a plain factor"""
    written: str
    """Units named in a message"""
    label: str
    """Unit in which :func:`show` and :func:`customary` write"""
    bare_number: bool = False
    """True where a number without a unit is understood"""


def _table(spellings: Mapping[str, str | float]) -> dict[str, str | float]:
    """A unit for each spelling of a line of spellings."""
    return {unit: factor for line, factor in spellings.items() for unit in line.split()}


_POWER = _table(
    {
        "w watt watts": "W",
        "kw": "kW",
        "btu/h btuh btu": "btu_table/hour",
        "kbtu/h kbtuh kbtu mbh": "kbtu_table/hour",
        "ton tons": "ton_cooling",
        "hp": "horsepower",
    }
)
_ENERGY_RATE = _table(
    {
        "kwh/month kwh/mo": 1000.0 / HOURS_A_MONTH,
        "kwh/year kwh/yr kwh/y kwh/a": 1000.0 / 8760.0,
        "kwh/day kwh/d": 1000.0 / 24.0,
        "w": 1.0,
        "kw": 1000.0,
    }
)
_MONEY_MONTHLY = _table(
    {
        "$/month $/mo": 1.0,
        "$/year $/yr $/y $/a": 1.0 / 12.0,
        "$/day $/d": DAYS_A_MONTH,
    }
)
_MONEY_YEARLY = _table({"$/year $/yr $/y $/a": 1.0, "$/month $/mo": 12.0})
_YEARS = _table({"year years yr yrs y a": 1.0, "month months mo": 1.0 / 12.0})
_R_VALUE_UNITS = _table(
    {
        "r hft2f/btu ft2hf/btu hft2/btuf": "hour*ft**2*delta_degF/btu_table",
        "rsi m2k/w m2/w/k": "m**2*K/W",
    }
)
_CONDUCTIVITY = _table(
    {
        "w/m/k w/mk w/m/c": "W/m/K",
        "btu/h/ft/f btu/hftf": "btu_table/hour/ft/delta_degF",
        "btuin/h/ft2/f btuin/hft2f": "btu_table*inch/hour/ft**2/delta_degF",
    }
)
_HEAT_CAPACITY = _table(
    {
        "j/kg/k j/kgk": "J/kg/K",
        "kj/kg/k kj/kgk": "kJ/kg/K",
        "btu/lb/f btu/lbf": "btu_table/lb/delta_degF",
    }
)
_U_FACTOR = _table(
    {
        "btu/h/ft2/f btu/hft2f btu/h/sqft/f btu/h-ft2-f": "btu_table/hour/ft**2/delta_degF",
        "w/m2/k w/m2k w/m2/c w/m2c": "W/m**2/K",
    }
)
_AREA = _table(
    {"ft2 sqft squarefeet squarefoot sf": "ft**2", "m2 sqm": "m**2", "in2 sqin": "inch**2"}
)
_LENGTH = _table(
    {
        "ft foot feet '": "ft",
        'in inch inches "': "inch",
        "yd yard yards": "yd",
        "m meter meters": "m",
        "cm": "cm",
        "mm": "mm",
    }
)
_AIRFLOW = _table(
    {
        "cfm cfm50 ft3/min": "ft**3/minute",
        "m3/s": "m**3/s",
        "m3/h": "m**3/hour",
        "l/s": "L/s",
    }
)
_TEMPERATURE = _table({"f fahrenheit": "degF", "c celsius": "degC", "k kelvin": "K"})
_DIFFERENCE = _table({"f fahrenheit": "delta_degF", "c celsius k kelvin": "K"})
_SHARE = {"": 1.0, "%": 0.01, "percent": 0.01}
_DENSITY = _table({"kg/m3": "kg/m**3", "lb/ft3": "lb/ft**3"})
_PRICE = _table({"$/kwh": 1.0, "c/kwh": 0.01})
_KW_PRICE = _table({"$/kw $/kw/month $/kw/mo $/kwmonth": 1.0})
_MONEY_DAILY = _table({"$/day $/d": 1.0})
_DAILY_ENERGY = _table({"kwh/day kwh/d": 1.0})
_EMISSIONS = _table(
    {
        "kg/kwh kgco2/kwh kgco2e/kwh": 1.0,
        "g/kwh gco2/kwh gco2e/kwh kg/mwh": 0.001,
        "lb/kwh lbco2/kwh": 0.45359237,  # the international pound, exactly
        "lb/mwh lbs/mwh lbco2/mwh lbco2e/mwh": 0.00045359237,
    }
)
_ENERGY = _table({"kwh/month kwh/mo kwh": 1.0})
_CHANGES = _table({"1/h /h ach airchanges/h": 1.0})
_MONEY = _table({"$": 1.0, "k$": 1000.0})

KINDS: Mapping[KindName, Kind] = {
    "length": Kind("a length", "m", "24 ft", _LENGTH, "ft, in, m, cm, mm", "ft"),
    "area": Kind("an area", "m**2", "380 ft2", _AREA, "ft2, m2", "ft2"),
    "temperature": Kind("a temperature", "degC", "68 F", _TEMPERATURE, "F, C", "F"),
    "temperature_difference": Kind(
        "a difference of temperatures", "K", "2 F", _DIFFERENCE, "F, C, K", "F"
    ),
    "airflow": Kind("an airflow", "m**3/s", "1200 cfm", _AIRFLOW, "cfm, m3/s, m3/h, L/s", "cfm"),
    "power": Kind("a power", "W", "550 W", _POWER, "W, kW, Btu/h", "W"),
    "output": Kind("a heat output", "W", "20 kW", _POWER, "kW, W, kBtu/h", "kW"),
    "capacity": Kind("a capacity", "W", "12 kBtu/h", _POWER, "kBtu/h, Btu/h, tons, kW", "kBtu/h"),
    "resistance": Kind(
        "an R-value", "m**2*K/W", "R-19", _R_VALUE_UNITS, "R-19, m2 K/W", "h ft2 F/Btu"
    ),
    "u_factor": Kind(
        "a U-factor",
        "W/m**2/K",
        "0.75 Btu/h/ft2/F",
        _U_FACTOR,
        "Btu/h/ft2/F, W/m2/K",
        "Btu/h/ft2/F",
    ),
    "energy_rate": Kind(
        "a use of energy over time",
        "W",
        "620 kWh/month",
        _ENERGY_RATE,
        "kWh/month, kWh/year, kWh/day, W",
        "kWh/month",
    ),
    "monthly_energy": Kind(
        "an amount of energy a month",
        "kWh/month",
        "800 kWh/month",
        _ENERGY,
        "kWh/month",
        "kWh/month",
    ),
    "money": Kind("an amount of money", "$", "11200 $", _MONEY, "$", "$"),
    "money_per_month": Kind(
        "an amount of money a month",
        "$/month",
        "12.50 $/month",
        _MONEY_MONTHLY,
        "$/month, $/day, $/year",
        "$/month",
    ),
    "money_per_year": Kind(
        "an amount of money a year",
        "$/year",
        "150 $/year",
        _MONEY_YEARLY,
        "$/year, $/month",
        "$/year",
    ),
    "price_per_kwh": Kind(
        "a price of electricity", "$/kWh", "0.125 $/kWh", _PRICE, "$/kWh, cents/kWh", "$/kWh"
    ),
    "price_per_kw": Kind(
        "a price of the highest demand a month", "$/kW", "9.50 $/kW", _KW_PRICE, "$/kW", "$/kW"
    ),
    "money_per_day": Kind(
        "an amount of money a day", "$/day", "0.45 $/day", _MONEY_DAILY, "$/day", "$/day"
    ),
    "daily_energy": Kind(
        "an amount of energy a day", "kWh/day", "20 kWh/day", _DAILY_ENERGY, "kWh/day", "kWh/day"
    ),
    "fraction": Kind("a share", "1", "18 %", _SHARE, "%", "%", bare_number=True),
    "duration_years": Kind("a number of years", "year", "15 year", _YEARS, "year", "year"),
    "air_changes": Kind(
        "a number of air changes an hour", "1/h", "0.4 1/h", _CHANGES, "1/h", "1/h"
    ),
    "conductivity": Kind(
        "a conductivity", "W/m/K", "0.16 W/m/K", _CONDUCTIVITY, "W/m/K, Btu/h/ft/F", "W/m/K"
    ),
    "density": Kind("a density", "kg/m**3", "800 kg/m3", _DENSITY, "kg/m3, lb/ft3", "kg/m3"),
    "heat_capacity": Kind(
        "a specific heat",
        "J/kg/K",
        "1090 J/kg/K",
        _HEAT_CAPACITY,
        "J/kg/K, Btu/lb/F",
        "J/kg/K",
    ),
    "emission_factor": Kind(
        "an emission factor",
        "kg/kWh",
        "0.35 kg/kWh",
        _EMISSIONS,
        "kg/kWh, lb/MWh",
        "kg/kWh",
    ),
}

_NUMBER = r"[-+]?(?:\d{1,3}(?:,\d{3})+(?:\.\d*)?|\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d{1,3})?"
_VALUE = re.compile(rf"({_NUMBER})(.*)", re.DOTALL)
_MONEY_FIRST = re.compile(r"([-+]?)\s*[$€£¥]\s*(.*)", re.DOTALL)
_R_VALUE = re.compile(rf"(RSI|R)\s*-?\s*({_NUMBER})", re.IGNORECASE)
_FEET_AND_INCHES = re.compile(
    r"(\d+(?:\.\d+)?)\s*(?:'\s*(\d+(?:\.\d+)?)\s*(?:\"|in|inch|inches|'')?"
    r"|(?:ft|feet|foot)\s*(\d+(?:\.\d+)?)\s*(?:\"|in|inch|inches))"
)
_SPELLINGS = (
    (re.compile(r"\s+per\s+|\bper\s+"), "/"),
    # Whatever the money: a case is in one currency, and nothing is converted.
    (re.compile(r"dollars?|us\s?\$|usd|[€£¥]"), "$"),
    (re.compile(r"\bcents?\b|¢"), "c"),
    (re.compile(r"hours?|hrs?"), "h"),
    (re.compile(r"sq\.?\s*(?=ft|feet|foot|in|m)|square\s*(?=ft|feet|foot)"), "sq"),
    (re.compile(r"sq(?:feet|foot)"), "sqft"),
    (re.compile(r"deg(?:rees?)?\.?\s*"), ""),
    (re.compile(r"[\s*^()·⋅.]"), ""),
)
_MARKS = str.maketrans(
    {
        "\N{SUPERSCRIPT TWO}": "2",
        "\N{SUPERSCRIPT THREE}": "3",
        "\N{DEGREE SIGN}": "",
        "\N{MINUS SIGN}": "-",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{PRIME}": "'",
        "\N{DOUBLE PRIME}": '"',
    }
)


@cache
def _registry() -> Any:
    registry: Any = pint.UnitRegistry()
    # The trade's Btu is that of the International Table, exactly; pint's own is rounded.
    registry.define("btu_table = 1055.05585262 joule")
    registry.define("kbtu_table = 1000 btu_table")
    registry.define("ton_cooling = 12000 btu_table / hour")
    return registry


def _convert(number: float, source: str, target: str) -> float:
    """A number from one pint unit to another."""
    return float(_registry().Quantity(number, source).to(target).magnitude)


def _spelt(unit: str) -> str:
    """A unit as people write it, brought to the spelling of the tables."""
    text = unit.translate(_MARKS).lower()
    for pattern, plain in _SPELLINGS:
        text = pattern.sub(plain, text)
    return text


def _refuse(kind: Kind, given: object, rule: str | None = None) -> UnitError:
    text = f'"{given}"' if isinstance(given, str) else str(given)
    return UnitError(
        rule or f"must be {kind.noun} ({kind.written})", text[:80], f'for example "{kind.example}"'
    )


def _split(text: str, name: KindName) -> tuple[str, str] | None:
    """Number and unit of a text, or None where it does not start with a number."""
    if name == "resistance" and (match := _R_VALUE.fullmatch(text)):
        return match[2], match[1]
    if match := _MONEY_FIRST.fullmatch(text):
        value = _VALUE.fullmatch(match[2])
        if value is None:
            return None
        thousands = value[2][:1].lower() == "k"
        return match[1] + value[1], f"k${value[2][1:]}" if thousands else f"${value[2]}"
    value = _VALUE.fullmatch(text)
    return (value[1], value[2]) if value else None


def parse(given: object, name: KindName) -> float:
    """The SI value of what was written for a kind.

    ``given`` is text with a unit, or a bare number where the kind allows one. Raises
    :class:`UnitError`, whose parts say what must hold and what to write.
    """
    kind = KINDS[name]
    if isinstance(given, bool) or not isinstance(given, str | int | float):
        raise _refuse(kind, given)
    if not isinstance(given, str):
        if not kind.bare_number:
            raise _refuse(kind, given, f"needs a unit ({kind.written})")
        return _finite(kind, given, given)
    text = given.strip().translate(_MARKS)
    if name == "length" and (feet := _FEET_AND_INCHES.fullmatch(text)):
        return _convert(float(feet[1]) + float(feet[2] or feet[3]) / 12.0, "ft", "m")
    parts = _split(text, name)
    if parts is None:
        raise _refuse(kind, given)
    number = _finite(kind, given, float(parts[0].replace(",", "")))
    unit = _spelt(parts[1])
    if unit == "" and not kind.bare_number:
        raise _refuse(kind, given, f"needs a unit ({kind.written})")
    factor = kind.units.get(unit)
    if factor is None:
        raise _refuse(kind, given)
    if isinstance(factor, str):
        value = _finite(kind, given, _convert(number, factor, kind.si))
        # The offset of a temperature leaves dust: 68 F would be 20.00000000000006 degC.
        return round(value, 12) if name == "temperature" else value
    return _finite(kind, given, number * factor)


def _finite(kind: Kind, given: object, number: float) -> float:
    try:
        value = float(number)
    except OverflowError:
        value = math.inf
    if not math.isfinite(value):
        raise _refuse(kind, given, "must be a finite number")
    return value


def customary(value: float, name: KindName) -> tuple[float, str]:
    """An SI value as a number in the unit people here use, and that unit."""
    kind = KINDS[name]
    factor = kind.units[_spelt(kind.label)]
    if isinstance(factor, str):
        return _convert(value, kind.si, factor), kind.label
    return value / factor, kind.label


def _digits(number: float) -> str:
    """A number to four significant digits, with commas in thousands."""
    if number == 0.0:
        return "0"
    places = max(0, 3 - math.floor(math.log10(abs(number))))
    text = f"{number:,.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def show(value: float, name: KindName) -> str:
    """An SI value as text, to four significant digits; :func:`parse` reads it back."""
    number, label = customary(value, name)
    if name == "resistance":
        return f"R-{_digits(number)}"
    if name in {"money", "money_per_month", "money_per_year", "price_per_kwh"}:
        sign = "-" if number < 0 else ""
        cents = f"{abs(number):,.2f}".removesuffix(".00")
        amount = _digits(abs(number)) if name == "price_per_kwh" else cents
        return f"{sign}${amount}{label[1:]}"
    return f"{_digits(number)} {label}"
