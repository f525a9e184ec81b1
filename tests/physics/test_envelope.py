"""Chains of capacities against answers worked out by hand."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.physics.envelope import FILM_OUTSIDE, modes, responses, sol_air, stepped


def test_chain_without_mass_is_a_resistance() -> None:
    """1 W/K, then 2 W/K, ports of 4 W/K at both ends: series conductance 4/11 ... by hand."""
    ports = np.array(4.0), np.array(4.0)
    chain = responses(stepped(np.array([1.0, 2.0]), np.zeros(3), *ports))
    series = 1 / (1 / 4 + 1 / 1 + 1 / 2 + 1 / 4)
    into_first = 4.0 * 20.0  # 20 degC beyond the first end, 0 beyond the last
    assert 4.0 * (20.0 - chain.first * into_first) == pytest.approx(20.0 * series)
    assert 4.0 * chain.through * into_first == pytest.approx(20.0 * series)


def test_modes_step_as_the_whole_chain_does() -> None:
    """Ten implicit steps of a random chain, as a matrix and as modes."""
    rng = np.random.default_rng(4)
    conductance, storage = rng.uniform(1, 9, 4), rng.uniform(0.5, 5, 5)
    storage[2] = 0.0  # a border without mass needs no mode
    inverse = stepped(conductance, storage, np.array(3.0), np.array(7.0))
    chain, face = modes(inverse, storage), responses(inverse)
    assert chain.decay.shape == (4,)
    assert np.all((chain.decay > 0.0) & (chain.decay < 1.0))
    temperature, mode = np.full(5, 16.0), 16.0 * chain.stored
    for heat in rng.uniform(-30, 60, (10, 2)):
        first = chain.first @ mode + face.first * heat[0] + face.through * heat[1]
        last = chain.last @ mode + face.through * heat[0] + face.last * heat[1]
        mode = chain.decay * mode + chain.first * heat[0] + chain.last * heat[1]
        known = storage * temperature
        known[[0, -1]] += heat
        temperature = inverse @ known
        assert (first, last) == pytest.approx((temperature[0], temperature[-1]))
        assert chain.stored @ mode == pytest.approx(storage @ temperature)


def test_step_solves_the_same_system_as_numpy() -> None:
    rng = np.random.default_rng(4)
    conductance, storage = rng.uniform(1, 9, 4), rng.uniform(0, 5, 5)
    matrix = np.diag(storage)
    for j, g in enumerate(conductance):
        matrix[j : j + 2, j : j + 2] += g * np.array([[1, -1], [-1, 1]])
    matrix[0, 0] += 3.0
    matrix[-1, -1] += 7.0
    found = stepped(conductance, storage, np.array(3.0), np.array(7.0))
    assert found == pytest.approx(np.linalg.inv(matrix))


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
