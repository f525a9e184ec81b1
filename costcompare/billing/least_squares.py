"""Weighted least squares with the figures that tell how far to trust it.

Textbook formulas (for example Draper and Smith, Applied Regression Analysis): standard errors are
the square roots of the diagonal of s2 (X'WX)^-1 with s2 the weighted residual variance.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class LeastSquares:
    """A solved line or plane."""

    coefficients: np.ndarray
    standard_errors: np.ndarray
    covariance: np.ndarray
    residuals: np.ndarray
    """Measured less computed, not weighted"""
    sum_of_squares: float
    """Of the weighted residuals"""
    r_squared: float
    """1 less the weighted residuals over the weighted differences from the mean"""
    degrees_of_freedom: int

    @property
    def residual_deviation(self) -> float:
        """Standard deviation of the residuals of weight one."""
        return float(np.sqrt(self.sum_of_squares / self.degrees_of_freedom))


def solve(
    columns: np.ndarray, values: np.ndarray, weights: np.ndarray | None = None
) -> LeastSquares:
    """Coefficients of the columns [n x p] that explain the values [n] best.

    Raises ``ValueError`` where there are no more values than columns or columns depend on each
    other.
    """
    count, parameters = columns.shape
    if count <= parameters:
        raise ValueError(f"{count} values cannot tell {parameters} coefficients")
    if np.linalg.matrix_rank(columns) < parameters:
        raise ValueError("the columns depend on each other")
    weight = np.ones(count) if weights is None else np.asarray(weights, dtype=float)
    root = np.sqrt(weight)
    coefficients = np.linalg.lstsq(columns * root[:, None], values * root, rcond=None)[0]
    residuals = values - columns @ coefficients
    squares = float(weight @ residuals**2)
    about = values - (weight @ values) / weight.sum()
    total = float(weight @ about**2)
    freedom = count - parameters
    covariance = squares / freedom * np.linalg.inv(columns.T @ (columns * weight[:, None]))
    return LeastSquares(
        coefficients,
        np.sqrt(np.diag(covariance)),
        covariance,
        residuals,
        squares,
        1.0 - squares / total if total > 0.0 else 0.0,
        freedom,
    )
