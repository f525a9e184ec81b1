"""How well computed bills meet measured ones, and how far a saving can be trusted.

ASHRAE Guideline 14 forms (its body was not at hand: quoted from memory and from papers that use
it); the polynomial for k is that of Sun and Baltazar (2013), read.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from scipy import stats

MONTHLY_NMBE, MONTHLY_CV = 0.05, 0.15
"""Limits of a calibrated simulation by the month (ASHRAE Guideline 14, read in several papers)"""
HOURLY_NMBE, HOURLY_CV = 0.10, 0.30
"""and by the hour (the same)"""
K_GUIDELINE = 1.26
"""Factor for a year of months (ASHRAE Guideline 14, from memory)"""
K_POLYNOMIAL = (-0.00022, 0.03306, 0.94054)
"""a, b, d of k = a M2 + b M + d for M monthly bills of the reporting period (Sun and Baltazar)"""


def cv_rmse(
    measured: Sequence[float] | np.ndarray,
    computed: Sequence[float] | np.ndarray,
    parameters: int,
) -> float:
    """Root of the squares over n less the parameters, as a share of the mean measured."""
    m, c = np.asarray(measured, dtype=float), np.asarray(computed, dtype=float)
    return float(np.sqrt(((m - c) ** 2).sum() / (len(m) - parameters)) / m.mean())


def nmbe(
    measured: Sequence[float] | np.ndarray,
    computed: Sequence[float] | np.ndarray,
    parameters: int,
) -> float:
    """Sum of measured less computed over (n less the parameters) times the mean measured."""
    m, c = np.asarray(measured, dtype=float), np.asarray(computed, dtype=float)
    return float((m - c).sum() / ((len(m) - parameters) * m.mean()))


def k_of(months: float) -> float:
    """The factor k for that many monthly bills after the change (Sun and Baltazar)."""
    a, b, d = K_POLYNOMIAL
    return a * months**2 + b * months + d


def fractional_savings_uncertainty(
    cv: float,
    saving_share: float,
    *,
    before: int,
    after: int,
    parameters: int = 3,
    confidence: float = 0.9,
    k: float = K_GUIDELINE,
) -> float:
    """The uncertainty of a saving as a share of it.

    FSU = t k CV sqrt((1 + 2/P)(1/Q)) / F with P bills before, Q after, F the share that is saved
    (Guideline 14 form for bills, whose residuals are taken as independent). It is statistical
    alone: a change of habits is outside it. Infinite where nothing is saved.
    """
    if saving_share == 0.0 or before <= parameters or after <= 0:
        return math.inf
    t = float(stats.t.ppf(0.5 + confidence / 2.0, before - parameters))
    return t * k * cv * math.sqrt((1.0 + 2.0 / before) / after) / abs(saving_share)
