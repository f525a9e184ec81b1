"""Figures against the limits of the trade; each limit says how it is known."""

from __future__ import annotations

import math
from functools import cache

from costcompare.equipment.machine import rows
from costcompare.sizing.results import RuleCheck

MAXIMUM_AT_DESIGN = "heat pump maximum over load at design"
MINIMUM_AT_47_F = "heat pump minimum over load at 47 F"
ELECTRIC_HEAT = "electric heat over load"
BELOW_MINIMUM = "share of heating hours below minimum"
HEAD_NOMINAL = "head nominal over load at design"
WITH_STRIPS = "heat pump and strips over load at design"
ROOM_HEATER = "room heater over load at design"
SINGLE_SPEED_BALANCE = "balance point of a single-speed heat pump in F"
STRIPS = "strips over load at design"

ELEMENT_STEP = 5000.0
"""[W] furnaces and strips come in steps of this size (from memory)"""


@cache
def _rules() -> dict[str, dict[str, str]]:
    return {row["rule"]: row for row in rows("sizing_rules.csv")}


def check(rule: str, value: float) -> RuleCheck:
    """A figure against the limits of a rule; KeyError for a rule that is not in the table."""
    row = _rules()[rule]
    low = float(row["low"]) if row["low"] else None
    high = float(row["high"]) if row["high"] else None
    kept = (low is None or value >= low) and (high is None or value <= high)
    return RuleCheck(rule, value, low, high, kept, row["known"], row["source"])


def electric_heat(output: float, load: float) -> RuleCheck:
    """Resistance heat [W] against a load [W]; the next step of size is always allowed."""
    found = check(ELECTRIC_HEAT, output / load)
    step = math.ceil(load / ELEMENT_STEP) * ELEMENT_STEP
    kept = found.is_kept or load <= output <= step
    return RuleCheck(
        found.rule, found.value, found.low, found.high, kept, found.known, found.source
    )
