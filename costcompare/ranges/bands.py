"""From the members of an ensemble to likely, low and high."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from costcompare.comparison import Band

Floats = NDArray[np.float64]

PERCENTILES = (0.1, 0.5, 0.9)


def band(values: Floats) -> Band:
    """The tenth percentile, the median and the ninetieth of figures that may be infinite."""
    # Between a number and never there is nothing to interpolate.
    if np.isfinite(values).all():
        found = np.quantile(values, PERCENTILES)
    else:
        found = np.quantile(values, PERCENTILES, method="inverted_cdf")
    low, likely, high = (float(v) if math.isfinite(v) else None for v in found)
    return Band(low, likely, high)
