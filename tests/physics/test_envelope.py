"""Chains of capacities against answers worked out by hand."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.physics.envelope import FILM_OUTSIDE, back_substitute, eliminate, sol_air


def test_chain_without_mass_is_a_resistance() -> None:
    """1 W/K, then 2 W/K, ports of 4 W/K at both ends: series conductance 4/11 ... by hand."""
    chain = eliminate(np.array([1.0, 2.0]), np.zeros(3), 4.0, 4.0)
    heat = np.array([4.0 * 20.0, 0.0, 0.0])  # 20 degC beyond the first end, 0 beyond the last
    answer = np.zeros(3)
    back_substitute(heat, np.append(chain.conductance, 0.0), chain.upper, chain.inverse, answer)
    series = 1 / (1 / 4 + 1 / 1 + 1 / 2 + 1 / 4)
    assert 4.0 * (20.0 - answer[0]) == pytest.approx(20.0 * series)
    assert 4.0 * answer[2] == pytest.approx(20.0 * series)


def test_responses_solve_the_same_system_as_numpy() -> None:
    rng = np.random.default_rng(4)
    conductance, storage = rng.uniform(1, 9, 4), rng.uniform(0, 5, 5)
    chain = eliminate(conductance, storage, 3.0, 7.0)
    matrix = np.diag(storage)
    for j, g in enumerate(conductance):
        matrix[j : j + 2, j : j + 2] += g * np.array([[1, -1], [-1, 1]])
    matrix[0, 0] += 3.0
    matrix[-1, -1] += 7.0
    inverse = np.linalg.inv(matrix)
    assert chain.from_first == pytest.approx(inverse[:, 0])
    assert chain.from_last == pytest.approx(inverse[:, -1])


def test_sol_air_by_hand() -> None:
    """600 W/m2 absorbed at 0.6 through 0.04 m2 K/W raises 14.4 K; a sky 10 K colder takes
    0.9 x 4.6 x 10 x 0.04 = 1.656 K off a roof."""
    warm = sol_air(
        np.array([5.0]),
        np.array([600.0]),
        np.array([-5.0]),
        absorptance=0.6,
        emissivity=0.9,
        sky_share=1.0,
    )
    assert warm[0] == pytest.approx(5.0 + 600 * 0.6 * FILM_OUTSIDE - 1.656)
