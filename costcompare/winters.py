"""The same home in a mild, a typical and a cold winter."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from costcompare.case.facts import Case
from costcompare.comparing import Progress, compare
from costcompare.comparison import Comparison, WinterBill, WinterYear
from costcompare.errors import CaseError, Fault

Winter = Literal["mild", "typical", "cold"]
WINTERS: tuple[Winter, ...] = ("mild", "typical", "cold")


def with_winters(
    comparison: Comparison, case: Case, *, progress: Progress | None = None
) -> Comparison:
    """The comparison with the bills of every choice in three winters.

    A mild and a cold winter are about one in ten each. Raises CaseError where the weather
    of the case is a file: that is one year, and no other winter is known.
    """
    if case.weather.source != "typical":
        rule = "mild and cold winters are made from monthly normals, and this case reads a file"
        raise CaseError([Fault("weather.source", rule, case.weather.source, '"typical"')])
    years = []
    for number, winter in enumerate(WINTERS):
        wish = replace(case.weather, winter=winter)

        def tell(text: str, share: float, number: int = number, winter: str = winter) -> None:
            if progress is not None:
                progress(f"A {winter} winter: {text}", (number + share) / len(WINTERS))

        other = replace(case, weather=wish)
        worked = compare(other, progress=tell)
        years.append(_winter(winter, worked))
    return replace(comparison, winters=tuple(years))


def _winter(name: str, worked: Comparison) -> WinterYear:
    return WinterYear(
        winter=name,
        heating_degree_days_65f=worked.weather.heating_degree_days_65f,
        mean_temperature_degf=worked.weather.mean_temperature_degf,
        choices=tuple(
            WinterBill(
                name=choice.name,
                warmth=choice.warmth,
                bill_usd=choice.annual.bill_usd,
                worst_month_usd=max(month.bill_usd for month in choice.monthly),
                first_year_saving_usd=(worked.today.annual.bill_usd - choice.annual.bill_usd),
            )
            for choice in worked.choices
        ),
    )
