"""Part one: why the bill is what it is."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from costcompare.comparison import Comparison, DuctYear, Part
from costcompare.views import numbers
from costcompare.views.wording.headline import of_100

PLAIN_PARTS: dict[str, str] = {
    "walls and glass": "Warmth through walls, windows and ceilings",
    "air leaking": "Warming the air that leaks in",
    "floor": "Warmth through the floor",
    "ducts by conduction": "Warmth through the walls of the ducts",
    "supply leak": "Warm air leaking out of the ducts",
    "return leak": "Cold air drawn into the ducts",
    "air pulled in by the fan": "Cold air the fan pulls into the rooms",
    "blower": "Running the fan",
    "standby": "Equipment standing by",
    "hot water": "Hot water",
    "other use": "Lights, cooking and everything else",
    "cooling": "Cooling",
    "demand charges": "Charges for the highest hour of each month",
    "fixed charges": "Charges that do not depend on use",
    "taxes": "Taxes",
    "free heat": "Taken off: warmth from sun, people and appliances",
}
"""The parts of an explanation in a family's words."""

DUCT_PARTS = frozenset(
    {"ducts by conduction", "supply leak", "return leak", "air pulled in by the fan"}
)
"""Parts that would not be there without ducts outside the rooms."""


@dataclass(frozen=True)
class BillLine:
    """One part of the bill as it is shown; amounts add up to the shown total."""

    part: str
    label: str
    usd: float
    """Rounded so that all lines add up"""
    worst_month_usd: float
    """Rounded so that all lines add up"""
    kwh: float
    is_duct: bool


def plain_part(part: str) -> str:
    """A part of the explanation in plain words; an unknown one keeps its own."""
    return PLAIN_PARTS.get(part, part[:1].upper() + part[1:])


def bill_lines(comparison: Comparison) -> tuple[BillLine, ...]:
    """Today's bill by part: ducts first, then by size, what heats along last."""
    worst = worst_month(comparison)
    by_month = {entry.month: entry.parts for entry in comparison.explanation_by_month}
    year = _rounded(comparison.explanation)
    month = _rounded(by_month[worst])
    lines = [
        BillLine(
            part=part.part,
            label=plain_part(part.part),
            usd=year[part.part],
            worst_month_usd=month.get(part.part, 0.0),
            kwh=part.kwh,
            is_duct=part.part in DUCT_PARTS,
        )
        for part in comparison.explanation
    ]
    shown = [line for line in lines if line.usd or line.worst_month_usd]
    return tuple(sorted(shown, key=lambda line: (not line.is_duct, line.usd < 0, -line.usd)))


def worst_month(comparison: Comparison) -> int:
    """The month with today's highest bill, 1 to 12."""
    return max(comparison.today.monthly, key=lambda month: month.bill_usd).month


def bill_answer(comparison: Comparison) -> str:
    """What the bill is made of, in a sentence."""
    lines = bill_lines(comparison)
    total = sum(line.usd for line in lines)
    ducts = sum(line.usd for line in lines if line.is_duct)
    if ducts > 0:
        return (
            f"Of the {numbers.dollars_a_year(total)} a year, about "
            f"{numbers.dollars_a_year(ducts)} pays for heat that the ducts lose "
            "before it reaches a room."
        )
    largest = max(lines, key=lambda line: line.usd)
    label = largest.label[:1].lower() + largest.label[1:]
    return (
        f"The largest part of the {numbers.dollars_a_year(total)} a year is {label}: "
        f"about {numbers.dollars_a_year(largest.usd)}."
    )


def ducts_answer(ducts: DuctYear) -> str:
    """What becomes of the heat that goes into the ducts, in a sentence."""
    arriving = of_100(ducts.delivery_effectiveness)
    put_in = heat_put_in(ducts)
    back = (
        f", and another {of_100(ducts.regained_kwh / put_in)} come back, because the ducts warm "
        "the space they run in"
        if ducts.regained_kwh > 0 and put_in > 0
        else ""
    )
    return f"Of every 100 kWh of heat put into the ducts, {arriving} reach the rooms{back}."


def heat_put_in(ducts: DuctYear) -> float:
    """What the heater gave to the air of the ducts [kWh]."""
    return (
        ducts.delivered_kwh
        + ducts.lost_conduction_kwh
        + ducts.lost_supply_leak_kwh
        + ducts.return_leak_kwh
    )


def adding_up(values: Sequence[float], step: float) -> list[float]:
    """Values rounded to a step so that they add up to their rounded total.

    Each is rounded down, and the steps still missing go to the largest remainders.
    """
    scaled = [value / step for value in values]
    floors = [math.floor(value) for value in scaled]
    missing = round(sum(scaled)) - sum(floors)
    by_remainder = sorted(range(len(scaled)), key=lambda index: floors[index] - scaled[index])
    for index in by_remainder[:missing]:
        floors[index] += 1
    return [floor * step for floor in floors]


def _rounded(parts: Sequence[Part]) -> dict[str, float]:
    rounded = adding_up([part.usd for part in parts], numbers.YEAR_STEP)
    return {part.part: usd for part, usd in zip(parts, rounded, strict=True)}
