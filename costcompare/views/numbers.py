"""How numbers are written, the same on the screen, in a report and on the command line.

Projections are rounded so that nobody takes them for promises: a year to ten dollars, a
month to five, whole degrees, whole percents. Only a bill that must add up shows cents. A
number below 0 carries a true minus sign; one that rounds to 0 carries none.

Figures come in the units of the result (°F, Btu/h, $). Inside :func:`written` they are
written in SI units or with another sign of money; nothing is converted between currencies.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, replace
from datetime import date
from typing import Literal

from costcompare.billing.tariff import rounded

MINUS = "\N{MINUS SIGN}"
NEVER = "never"
MISSING = "\N{EN DASH}"
"""Shown where a number has no meaning."""

Units = Literal["customary", "si"]


@dataclass(frozen=True)
class Writing:
    """How figures are written: in which units, with which sign of money."""

    units: Units = "customary"
    currency: str = "$"


AS_IN_THE_RESULT = Writing()

# One for each task or thread, so that two visitors with other units do not meet.
_writing: ContextVar[Writing] = ContextVar("writing", default=AS_IN_THE_RESULT)


@contextmanager
def written(units: Units = "customary", currency: str = "$") -> Iterator[Writing]:
    """Within it every figure is written in these units and with this sign of money."""
    now = Writing(units, currency)
    token = _writing.set(now)
    try:
        yield now
    finally:
        _writing.reset(token)


def write_money_as(sign: str) -> None:
    """From here on, in this context, every amount is written with this sign."""
    _writing.set(replace(_writing.get(), currency=sign))


def in_si() -> bool:
    """Whether figures are being written in SI units."""
    return _writing.get().units == "si"


def currency() -> str:
    """The sign of money that is being written."""
    return _writing.get().currency


def money_prefix() -> str:
    """What stands before an amount: the sign of money, letters apart from it: ``CHF 1,870``."""
    sign = currency()
    return f"{sign}\N{NO-BREAK SPACE}" if sign[-1:].isalpha() else sign


def in_money(text: str) -> str:
    """A unit or a label with the sign of money that is being written: ``€/kWh`` for ``$/kWh``."""
    return text.replace("$", currency())


def degree_unit() -> str:
    """The unit of temperatures that is being written."""
    return "°C" if in_si() else "°F"


YEAR_STEP = 10
"""[$] to which a yearly sum is rounded (judgement: finer would claim what no model knows)"""
MONTH_STEP = 5
"""[$] to which a monthly sum is rounded (judgement, as above)"""

MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


def dollars_a_year(usd: float) -> str:
    """A yearly sum or a price to the nearest ten dollars: ``$1,870``."""
    return _money(_nearest(usd, YEAR_STEP))


def dollars_a_month(usd: float) -> str:
    """A monthly sum to the nearest five dollars: ``$455``."""
    return _money(_nearest(usd, MONTH_STEP))


def dollars_in_a_range(usd: float | None) -> str:
    """One end of a range, to two figures that count, never finer than ten dollars: ``$2,900``."""
    if usd is None:
        return NEVER
    step = max(10.0 ** (math.floor(math.log10(max(abs(usd), 1.0))) - 1), YEAR_STEP)
    return _money(_nearest(usd, int(step)))


def dollars(usd: float) -> str:
    """A stated amount, such as a quoted price, to the dollar: ``$11,200``."""
    return _money(_nearest(usd, 1))


def dollars_and_cents(usd: float) -> str:
    """An amount of a bill to the cent, half a cent upwards: ``$92.62``."""
    return _money(rounded(usd), decimals=2)


BTU_H_IN_A_WATT = 3.412142
"""[Btu/h] in a watt, from the definition of the international table Btu"""
FT_IN_A_M = 1.0 / 0.3048
"""[ft] in a metre, by definition"""
FT2_IN_A_M2 = FT_IN_A_M**2


def about(text: str) -> str:
    """The words that stand before every projection: ``about $1,870``."""
    return f"about {text}"


def between_bills(before_usd: float, after_usd: float) -> float:
    """A yearly saving as anybody finds it who subtracts the two bills as they are written [$].

    Rounded by itself it could differ from them by ten.
    """
    return _nearest(before_usd, YEAR_STEP) - _nearest(after_usd, YEAR_STEP)


def rounds_to_nothing(usd: float) -> bool:
    """Whether a yearly sum would be written as ``$0``."""
    return _nearest(usd, YEAR_STEP) == 0.0


def kwh(energy: float) -> str:
    """Energy to the nearest ten kilowatt hours: ``13,850 kWh``."""
    return f"{_signed(_nearest(energy, 10))} kWh"


def btu_h(heat: float) -> str:
    """A heat flow to ten Btu an hour, from 10,000 on to a hundred: ``8,860 Btu/h``.

    In SI units to ten watts, from 1,000 W on in kilowatts: ``2.6 kW``.
    """
    if in_si():
        watts = heat / BTU_H_IN_A_WATT
        tens = _nearest(watts, 10)
        return f"{_signed(tens)} W" if abs(tens) < 1000.0 else kilowatts(watts / 1000.0)
    return f"{_signed(_nearest(heat, 10 if abs(heat) < 10_000.0 else 100))} Btu/h"


def heat(btu_h_value: float) -> str:
    """A heat flow without its unit, for a column whose head has :func:`heat_unit`: ``8,860``."""
    value = btu_h_value / BTU_H_IN_A_WATT if in_si() else btu_h_value
    return _signed(_nearest(value, 10))


def heat_unit() -> str:
    """The unit of :func:`heat`."""
    return "W" if in_si() else "Btu/h"


def nominal(kbtu_h: float) -> str:
    """A machine's nominal size: ``12 kBtu/h``; in SI units ``3.5 kW``."""
    if in_si():
        return kilowatts(kbtu_h / BTU_H_IN_A_WATT)
    return f"{kbtu_h:g} kBtu/h"


def kilowatts(kw: float) -> str:
    """A power to a tenth of a kilowatt: ``11.9 kW``."""
    return f"{_signed(kw, 1)} kW"


def amperes(amps: float) -> str:
    """A current in whole amperes: ``83 A``."""
    return f"{_signed(_nearest(amps, 1))} A"


def degrees(degf: float) -> str:
    """A temperature in whole degrees: ``68 °F``; in SI units ``20 °C``."""
    if in_si():
        return f"{_signed(_nearest((degf - 32.0) / 1.8, 1))} °C"
    return f"{_signed(_nearest(degf, 1))} °F"


def degrees_of_difference(degf: float) -> str:
    """A difference of temperatures in whole degrees: ``3 °F``; in SI units ``1.7 °C``."""
    if in_si():
        return f"{_signed(degf / 1.8, 1)} °C"
    return f"{_signed(_nearest(degf, 1))} °F"


def shown_degree_degf() -> float:
    """One degree of those that are written, as a difference [F]: 1, or 1.8 in SI units."""
    return 1.8 if in_si() else 1.0


def square_feet(area_ft2: float) -> str:
    """An area: ``380 ft²``; in SI units ``35 m²``."""
    if in_si():
        return f"{_signed(_nearest(area_ft2 / FT2_IN_A_M2, 1))} m²"
    return f"{_signed(_nearest(area_ft2, 1))} ft²"


def heat_per_area(btu_h_ft2: float) -> str:
    """A heat flow on the floor area: ``23 Btu/h a square foot``; in SI ``72 W a square metre``."""
    if in_si():
        watts = btu_h_ft2 / BTU_H_IN_A_WATT * FT2_IN_A_M2
        return f"{_signed(_nearest(watts, 1))} W a square metre"
    return f"{_signed(_nearest(btu_h_ft2, 1))} Btu/h a square foot"


def heat_per_degree(btu_h_degf: float) -> str:
    """A heat loss for each degree: ``660 Btu/h for each °F``; in SI ``350 W for each °C``."""
    if in_si():
        return f"{_signed(_nearest(btu_h_degf * 1.8 / BTU_H_IN_A_WATT, 5))} W for each °C"
    return f"{_signed(_nearest(btu_h_degf, 10))} Btu/h for each °F"


def wind(mph: float) -> str:
    """A speed of the wind: ``9 mph``; in SI units ``4.0 m/s``."""
    return f"{_signed(mph * 0.44704, 1)} m/s" if in_si() else f"{_signed(_nearest(mph, 1))} mph"


def degree_days(days_65f: float) -> str:
    """Heating degree days with their base: ``4,232 heating degree days (65 °F)``."""
    number = days_65f / 1.8 if in_si() else days_65f
    base = "18.3 °C" if in_si() else "65 °F"
    return f"{_signed(_nearest(number, 1))} heating degree days ({base})"


def feet(height_ft: float) -> str:
    """A height to a tenth: ``6.5 ft``, ``7 ft``; in SI units ``2.1 m``."""
    if in_si():
        return f"{height_ft / FT_IN_A_M:.1f} m"
    return f"{height_ft:.1f}".removesuffix(".0") + " ft"


def percent(share: float) -> str:
    """A share in whole percents: 0.256 is ``26 %``."""
    return f"{_signed(_nearest(100.0 * share, 1))} %"


def rate(share: float) -> str:
    """A rate a year, to two decimals where it has them: ``7.99 %``, ``3 %``."""
    text = f"{abs(100.0 * share):.2f}".rstrip("0").rstrip(".")
    return f"{MINUS if share < 0.0 and text != '0' else ''}{text} %"


def dollars_an_hour(usd: float) -> str:
    """Money of an hour, to five cents: ``$1.35``."""
    return _money(_nearest(100.0 * usd, 5) / 100.0, 2)


def one_figure(number: float) -> str:
    """A number to its first figure: 3.4 is ``3``, 0.27 is ``0.3``."""
    if number == 0.0 or not math.isfinite(number):
        return "0" if number == 0.0 else MISSING
    step = 10.0 ** math.floor(math.log10(abs(number)))
    return quantity(round(number / step) * step)


def tenths_of_a_percent(share: float) -> str:
    """A small share to a tenth of a percent: 0.0123 is ``1.2 %``."""
    return f"{_signed(100.0 * share, 1)} %"


def hours(number: float) -> str:
    """A number of hours: ``1,234 hours``."""
    whole = _nearest(number, 1)
    return f"{_signed(whole)} {'hour' if whole == 1.0 else 'hours'}"


def years(number: float | None) -> str:
    """A span of years, one decimal below ten, whole from there: ``9.7 years``; or ``never``."""
    if number is None:
        return NEVER
    written = _signed(number, 1) if round(abs(number), 1) < 10.0 else _signed(_nearest(number, 1))
    return f"{written} {'year' if written == '1.0' else 'years'}"


def ratio(number: float | None) -> str:
    """A plain ratio to one decimal: ``1.4``."""
    return MISSING if number is None else _signed(number, 1)


def count(number: float) -> str:
    """A whole number with its thousands: ``8,760``."""
    return _signed(_nearest(number, 1))


def quantity(number: float) -> str:
    """A fact of any size, as few digits as say it: ``0.72``, ``1,850``."""
    if not math.isfinite(number):
        return MISSING
    digits = 0 if abs(number) >= 1000.0 else max(0, 3 - math.floor(math.log10(abs(number) or 1.0)))
    text = f"{abs(number):,.{digits}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return text if number >= 0.0 or text == "0" else MINUS + text


def month_name(month: int) -> str:
    """1 is ``January``."""
    return MONTHS[month - 1]


def day_and_month(month: int, day: int) -> str:
    """``January 15``."""
    return f"{month_name(month)} {day}"


def month_reached(start: date, after_years: float) -> str:
    """The month that lies so many years after a day: ``March 2035``."""
    months = start.year * 12 + start.month - 1 + math.floor(12.0 * after_years)
    return f"{MONTHS[months % 12]} {months // 12}"


def _nearest(number: float, step: int) -> float:
    """The multiple of ``step`` that is nearest, halves away from 0."""
    return math.copysign(math.floor(abs(number) / step + 0.5) * step, number)


def _money(usd: float, decimals: int = 0) -> str:
    sign = MINUS if round(usd, decimals) < 0.0 else ""
    return f"{sign}{money_prefix()}{abs(usd):,.{decimals}f}"


def _signed(number: float, decimals: int = 0) -> str:
    sign = MINUS if round(number, decimals) < 0.0 else ""
    return f"{sign}{abs(number):,.{decimals}f}"
