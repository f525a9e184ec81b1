"""The house fitted to its real bills: its uncertain facts moved until it explains them.

::

    case -> uncertain facts -> the likely house and its slopes -+
    bills -> days, errors ---------------------------------------+-> most likely facts, spreads
                                                                 -> homes that explain the bills

==================  =========================================================================
``house_fit``       the fit itself
``bill_days``       bills against the days of the year, and how far each can be trusted
``house_model``     what a house with its facts moved would have on its bills
``gauss_newton``    the most likely facts and how certain they are, for any model
``reporting``       what a fit says, from what it found
``judging``         agreement, contradictions, and the bill to ask for next
``results``         what a fit says
==================  =========================================================================
"""

from costcompare.fitting.house_fit import MEMBERS, fit_house
from costcompare.fitting.results import FittedHouse, HouseFit

__all__ = ["MEMBERS", "FittedHouse", "HouseFit", "fit_house"]
