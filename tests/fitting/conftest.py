"""A small home, its year, and bills that its own model makes."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np
import pytest

from costcompare.billing.reading import Bill, Bills
from costcompare.case import case_from_document
from costcompare.case.facts import Case
from costcompare.case.new import new_case
from costcompare.comparing import weather_of
from costcompare.fitting.bill_days import day_counts
from costcompare.fitting.house_model import HouseModel, Slopes, on_bills
from costcompare.uncertainty import uncertain_facts
from costcompare.weather import Weather

MakeBills = Callable[..., Bills]


@dataclass(frozen=True)
class Home:
    case: Case
    weather: Weather
    model: HouseModel
    slopes: Slopes
    """Of the likely house"""

    def bills(self, months: Sequence[int], factor: float = 1.0, **moved: float) -> Bills:
        """Bills of those months by the house with facts moved, every one times a factor."""
        z = np.zeros(len(self.model.facts))
        names = [fact.name for fact in self.model.facts]
        for name, number in moved.items():
            z[names.index(name.replace("__", "."))] = number
        plain = [
            Bill(date(2025, m, 1), date(2025 + m // 12, m % 12 + 1, 1), 0.0, read="actual")
            for m in months
        ]
        kwh = on_bills(self.model.predicted(z[None, :]).electricity[0], day_counts(plain))
        return Bills(
            tuple(
                Bill(bill.begins, bill.ends, factor * float(use), read="actual")
                for bill, use in zip(plain, kwh, strict=True)
            )
        )


@pytest.fixture(scope="session")
def fitted_home() -> Home:
    case = case_from_document(tomllib.loads(new_case(title="A small home (invented)")))
    weather = weather_of(case)
    model = HouseModel(case, uncertain_facts(case), weather)
    return Home(case, weather, model, model.slopes())
