"""Figures inside finished sentences, in the units that are being written.

Cautions and questions come as sentences of the result, in °F, cfm and kBtu/h. Where SI units are
written their figures are turned here; a difference of temperatures is told by the word after
it.
"""

from __future__ import annotations

import re

from costcompare.views import numbers

_BOTH = re.compile(r"[\d,.]+ °F \(([\d,.]+) °C\)")
_DIFFERENCE = re.compile(r"([\d,.]+) °F(?= (?:lower|higher|warmer|colder|cooler|apart|too)\b)")
_TEMPERATURE = re.compile(r"([−-]?)([\d,.]+) °F")
_AIRFLOW = re.compile(r"([\d,]+) cfm")
_NOMINAL = re.compile(r"([\d.]+) kBtu/h")
L_S_IN_A_CFM = 0.47194745
"""[L/s] in a cubic foot a minute, by definition of the foot"""


def restated(text: str) -> str:
    """The sentence as it is, or with its figures in SI units."""
    if not numbers.in_si():
        return text
    text = _BOTH.sub(r"\1 °C", text)
    text = _DIFFERENCE.sub(lambda m: numbers.degrees_of_difference(_value(m[1])), text)
    text = _TEMPERATURE.sub(
        lambda m: numbers.degrees(-_value(m[2]) if m[1] else _value(m[2])), text
    )
    text = _NOMINAL.sub(lambda m: numbers.nominal(_value(m[1])), text)
    return _AIRFLOW.sub(lambda m: f"{numbers.count(_value(m[1]) * L_S_IN_A_CFM)} L/s", text)


def _value(written: str) -> float:
    return float(written.replace(",", ""))
