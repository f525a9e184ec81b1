"""The house fitted to the bills that its own case holds."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from costcompare.billing.reading import bills_of
from costcompare.case.facts import Case, Home
from costcompare.comparing import compare
from costcompare.comparison import Comparison
from costcompare.fitting.house_fit import fit_house
from costcompare.fitting.results import FittedHouse
from costcompare.simulation import doing_many
from costcompare.weather import Weather

Told = Callable[[str, float], None]
"""Called with what is done and the share that is done"""


def fitted_to_own_bills(
    case: Case, weather: Weather, *, members: int = 1, progress: Told | None = None
) -> FittedHouse | None:
    """The house of a case that holds bills, fitted to them; None without bills.

    ``members`` homes are drawn for ranges. Raises BillsError where the file of the bills
    cannot be read, CaseError where none can be used.
    """
    if case.bills is None:
        return None
    tell = progress or (lambda _text, _share: None)
    words = "Fitting the house to its bills"
    tell(doing_many(words), 0.0)
    return fit_house(
        case,
        bills_of(case.bills, case.directory),
        weather=weather,
        weather_is_of_the_bills=weather.source == "measured",
        members=members,
        progress=lambda share: tell(words, share),
    )


def compare_fitted(
    fitted: FittedHouse, *, weather: Weather, progress: Told | None = None
) -> Comparison:
    """The comparison of a fitted house, which says to how many bills it is fitted."""
    comparison = compare(fitted.likely, weather=weather, progress=progress)
    return replace(comparison, fitted_bills=len(fitted.report.bills))


def with_stated_thermostat(fitted: Case, stated: Case) -> Case:
    """A fitted house whose thermostats stand where its people say.

    For questions that set them anyhow: what each setting costs, what is lost when it is so
    cold outdoors.
    """
    home = _set(fitted.home, stated.home)
    return replace(
        fitted,
        home=home,
        options=tuple(
            replace(one, home=home if one.home is fitted.home else _set(one.home, said.home))
            for one, said in zip(fitted.options, stated.options, strict=True)
        ),
    )


def _set(home: Home, stated: Home) -> Home:
    return replace(home, thermostat=stated.thermostat)
