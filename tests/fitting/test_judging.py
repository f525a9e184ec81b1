"""Agreement by the guideline's two figures; a worked example checked apart from the program."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.fitting.judging import mean_bias, scatter

MEASURED = np.array([2450, 2100, 1800, 1200, 800, 650, 620, 640, 700, 1050, 1700, 2300.0])
MODEL = np.array([2350, 2180, 1720, 1260, 830, 640, 600, 655, 735, 1000, 1780, 2240.0])


@pytest.mark.parametrize(
    ("parameters", "bias", "misses"), [(0, 0.124922, 4.421071), (1, 0.136278, 4.617659)]
)
def test_bias_and_scatter(parameters: int, bias: float, misses: float) -> None:
    assert 100.0 * mean_bias(MEASURED, MODEL, parameters) == pytest.approx(bias, abs=1e-6)
    assert 100.0 * scatter(MEASURED, MODEL, parameters) == pytest.approx(misses, abs=1e-6)
