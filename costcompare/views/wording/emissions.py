"""One line on what the electricity emits, at the factor that the case states."""

from __future__ import annotations

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.views import numbers

TONNE = 1000.0
"""[kg]"""


def emissions_answer(comparison: Comparison, name: str) -> str:
    """How much less an option emits, to one figure; nothing where no factor is stated."""
    stated = comparison.emissions
    if stated is None:
        return ""
    line = next(
        (one for one in stated.choices if one.name == name and one.warmth == AS_WANTED), None
    )
    if line is None:
        return ""
    kg = line.less_than_now_kg
    less = "less" if kg >= 0.0 else "more"
    return (
        f"At {numbers.quantity(stated.factor_kg_per_kwh)} kg of carbon dioxide for each kWh "
        f"({stated.source}), this choice at the warmth you want emits about "
        f"{numbers.one_figure(abs(kg) / TONNE)} t a year {less} than you do now."
    )
