"""Present value: what money of a later year is worth today.

The factors of the life-cycle cost method of NIST Handbook 135 and ASTM E917 (formulas from
memory; checked against the values that other publications quote from the handbook, see
tests/published). Money is counted at the end of each year. With d the discount rate, e the
growth of a yearly amount, and n the years:

    SPV(d, n)     = (1 + d)^-n                                       one amount
    UPV(d, n)     = (1 - (1 + d)^-n) / d                             an equal amount a year
    UPV*(d, e, n) = (1 + e) / (d - e) (1 - ((1 + e) / (1 + d))^n)    an amount that grows
"""

from __future__ import annotations

import math


def present_value(discount_rate: float, years: float) -> float:
    """SPV: the value today of one dollar after ``years``."""
    return math.exp(-years * math.log1p(discount_rate))


def present_value_yearly(discount_rate: float, years: float) -> float:
    """UPV: the value today of one dollar a year; ``years`` itself at a rate of 0."""
    return present_value_growing(discount_rate, 0.0, years)


def present_value_growing(discount_rate: float, growth: float, years: float) -> float:
    """UPV*: the value today of a dollar a year that grows, ``1 + growth`` at the end of year 1."""
    step = math.log1p(growth) - math.log1p(discount_rate)
    if step == 0.0:
        return years
    # The closed form with its differences taken by expm1: exact where growth and discount
    # rate nearly cancel.
    return math.exp(step) * math.expm1(step * years) / math.expm1(step)


def with_inflation(real: float, inflation: float) -> float:
    """The nominal rate of a real one: (1 + D) = (1 + d) (1 + I)."""
    return (1.0 + real) * (1.0 + inflation) - 1.0
