"""Smooth curves through means, and noise that lasts: the two things a made year is built of."""

from __future__ import annotations

import numpy as np
from scipy.signal import lfilter

DAYS_IN_MONTH = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
MONTH_OF_DAY = np.repeat(np.arange(12), DAYS_IN_MONTH)
"""Month of each of the 365 days, 0 to 11"""
MONTH_OF_HOUR = np.repeat(MONTH_OF_DAY, 24)


def through_means(means: np.ndarray, lengths: np.ndarray | int) -> np.ndarray:
    """A curve of many small steps whose mean over each part is exactly ``means``.

    ``lengths`` is the number of steps of each part. The year goes round: the last part joins
    the first. Where two parts meet the curve has the mean of both, and inside a part it is
    the parabola that keeps the part's mean.
    """
    lengths = np.broadcast_to(lengths, means.shape)
    joint = 0.5 * (np.roll(means, 1) + means)
    begin, end = np.repeat(joint, lengths), np.repeat(np.roll(joint, -1), lengths)
    start = np.concatenate([[0], np.cumsum(lengths)[:-1]])
    step = np.arange(int(lengths.sum())) - np.repeat(start, lengths)
    x = (step + 0.5) / np.repeat(lengths, lengths)
    bulge = 6.0 * (np.repeat(means, lengths) - 0.5 * (begin + end))
    curve = begin + (end - begin) * x + bulge * x * (1.0 - x)
    found = np.add.reduceat(curve, start) / lengths
    return np.asarray(curve + np.repeat(means - found, lengths))


def lasting_noise(chance: np.random.Generator, count: int, persistence: float) -> np.ndarray:
    """Normal noise of mean 0 and deviation 1 in which each step keeps a share of the last.

    A first-order autoregression; ``persistence`` is its correlation from one step to the next.
    """
    fresh = chance.standard_normal(count)
    fresh[1:] *= np.sqrt(1.0 - persistence**2)
    return np.asarray(lfilter([1.0], [1.0, -persistence], fresh))


def month_means(daily: np.ndarray) -> np.ndarray:
    """Mean over the days of each month, shape (12,)."""
    return np.asarray(np.bincount(MONTH_OF_DAY, weights=daily) / DAYS_IN_MONTH)


def month_means_of_hours(hourly: np.ndarray) -> np.ndarray:
    """Mean over the hours of each month, shape (12,)."""
    return np.asarray(np.bincount(MONTH_OF_HOUR, weights=hourly) / (24.0 * DAYS_IN_MONTH))
