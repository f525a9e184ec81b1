"""The house fitted to its real bills: its uncertain facts moved until it explains them.

::

    case -> uncertain facts -> the likely house and its slopes -+
    bills -> days, errors ---------------------------------------+-> most likely facts, spreads
                                                                 -> homes that explain the bills

==================  =========================================================================
``house_fit``       the fit itself
``own_bills``       the fit to the bills that a case holds
``bill_days``       bills against the days of the year, and how far each can be trusted
``house_model``     what a house with its facts moved would have on its bills
``gauss_newton``    the most likely facts and how certain they are, for any model
``reporting``       what a fit says, from what it found
``judging``         agreement, contradictions, and the bill to ask for next
``results``         what a fit says
==================  =========================================================================
"""

from pathlib import Path

from costcompare.billing.reading import Bills, read_bills
from costcompare.case.facts import Case
from costcompare.comparing import weather_of
from costcompare.fitting.house_fit import MEMBERS, fit_house
from costcompare.fitting.own_bills import (
    compare_fitted,
    fitted_to_own_bills,
    with_stated_thermostat,
)
from costcompare.fitting.results import FittedHouse, HouseFit
from costcompare.weather import Weather

__all__ = [
    "MEMBERS",
    "FittedHouse",
    "HouseFit",
    "compare_fitted",
    "fit",
    "fit_house",
    "fitted_to_own_bills",
    "with_stated_thermostat",
]


def fit(case: Case, bills: Bills | str | Path, *, weather: Weather | None = None) -> FittedHouse:
    """The house of a case fitted to its real bills, or to those of a file.

    ``weather`` is a year measured in the days of the bills; left out, the year of the case
    stands in and every bill counts for less. Raises :class:`BillsError` and
    :class:`CaseError` with every reason.
    """
    read = bills if isinstance(bills, Bills) else read_bills(Path(bills))
    own = weather is not None or case.weather.source == "measured"
    year = weather if weather is not None else weather_of(case)
    return fit_house(case, read, weather=year, weather_is_of_the_bills=own)
