"""Whether the range that a fit states holds the truth as often as it says.

Houses are drawn from the spreads of a case's facts; their bills are made by the model and
blurred by the fit's own errors; the fit sees the bills alone. Of the stated ranges of eight
in ten, eight in ten should hold the true heating of the year. Run with

    python -m tests.fitting.recovery --houses 200

which prints the table of docs/validation.md.
"""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.reading import Bill, Bills
from costcompare.case.facts import Case
from costcompare.fitting import fit_house
from costcompare.fitting.bill_days import day_counts, errors
from costcompare.fitting.house_model import HouseModel, Predicted, on_bills
from costcompare.uncertainty import uncertain_facts
from costcompare.weather import Weather

Floats = NDArray[np.float64]

MONTHS: dict[str, tuple[int, ...]] = {
    "1 bill (January)": (1,),
    "3 bills (January, May, October)": (1, 5, 10),
    "12 bills": tuple(range(1, 13)),
}
SEED = 20261125
AT_ONCE = 50


@dataclass(frozen=True)
class Recovery:
    """How often and how tightly the truth was found with so many bills."""

    bills: str
    houses: int
    held: int
    """Ranges that hold the true yearly heating"""
    width: float
    """Median of high over low"""
    width_before: float
    """The same without bills"""
    off: float
    """Median of the absolute error of the likely value, as a share of the truth"""


def recovered(case: Case, weather: Weather, houses: int, seed: int = SEED) -> list[Recovery]:
    """Fit every house with each number of bills."""
    model = HouseModel(case, uncertain_facts(case), weather)
    slopes = model.slopes()
    rng = np.random.default_rng(seed)
    true = _true_houses(model, rng.standard_normal((houses, len(model.facts))))
    rows = []
    for words, months in MONTHS.items():
        held, widths, off, before = 0, [], [], 1.0
        for house in range(houses):
            bills = _blurred(true, house, months, rng)
            fit = fit_house(
                case,
                bills,
                weather=weather,
                weather_is_of_the_bills=True,
                members=1,
                slopes=slopes,
            ).report
            low, likely, high = _ends(fit.yearly_heating_kwh)
            truth = float(true.heating[house].sum())
            held += low <= truth <= high
            widths.append(high / low)
            off.append(abs(likely - truth) / truth)
            first = _ends(fit.yearly_heating_said_kwh)
            before = first[2] / first[0]
        rows.append(
            Recovery(words, houses, held, float(np.median(widths)), before, float(np.median(off)))
        )
    return rows


def _ends(band: object) -> tuple[float, float, float]:
    values = (band.low, band.likely, band.high)  # type: ignore[attr-defined]
    return float(values[0]), float(values[1]), float(values[2])


def _true_houses(model: HouseModel, z: Floats) -> Predicted:
    parts = [model.predicted(z[n : n + AT_ONCE]) for n in range(0, len(z), AT_ONCE)]
    return Predicted(
        np.concatenate([part.electricity for part in parts]),
        np.concatenate([part.heating for part in parts]),
    )


def _blurred(true: Predicted, house: int, months: Sequence[int], rng: np.random.Generator) -> Bills:
    """The house's bills of those months, each off by the error that the fit takes."""
    plain = [
        Bill(date(2025, m, 1), date(2025 + m // 12, m % 12 + 1, 1), 0.0, read="actual")
        for m in months
    ]
    counts = day_counts(plain)
    kwh = on_bills(true.electricity[house], counts)
    exact = [
        Bill(bill.begins, bill.ends, float(use), read="actual")
        for bill, use in zip(plain, kwh, strict=True)
    ]
    error = errors(exact, kwh, on_bills(true.heating[house], counts), by_degree=None)
    blurred = kwh + error * rng.standard_normal(len(kwh))
    return Bills(
        tuple(
            Bill(bill.begins, bill.ends, float(use), read="actual")
            for bill, use in zip(exact, blurred, strict=True)
        )
    )


def main() -> None:
    """Print the table."""
    from costcompare.case import example_path, read_case
    from costcompare.comparing import weather_of

    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--houses", type=int, default=200)
    parser.add_argument("--case", default="demo")
    asked = parser.parse_args()
    case = read_case(example_path(asked.case))
    print("| bills | houses | ranges that hold the truth | high over low | before | off by |")
    print("|---|---|---|---|---|---|")
    for row in recovered(case, weather_of(case), asked.houses):
        print(
            f"| {row.bills} | {row.houses} | {row.held} ({100 * row.held / row.houses:.0f} %) "
            f"| {row.width:.2f} | {row.width_before:.2f} | {100 * row.off:.1f} % |"
        )


if __name__ == "__main__":
    main()
