"""Chains of capacities against answers worked out by hand."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.linalg import expm

from costcompare.physics.envelope import FILM_OUTSIDE, sol_air, solved


def test_chain_without_mass_is_a_resistance() -> None:
    """1 W/K, then 2 W/K, ports of 4 W/K at both ends: series conductance 4/11 ... by hand."""
    ports = np.array(4.0), np.array(4.0)
    _none, chain = solved(np.array([1.0, 2.0]), np.zeros(3), *ports)
    series = 1 / (1 / 4 + 1 / 1 + 1 / 2 + 1 / 4)
    into_first = 4.0 * 20.0  # 20 degC beyond the first end, 0 beyond the last
    assert 4.0 * (20.0 - chain.first * into_first) == pytest.approx(20.0 * series)
    assert 4.0 * chain.through * into_first == pytest.approx(20.0 * series)


def test_one_capacity_behind_a_film_by_hand() -> None:
    """S = 2 W/K behind 3 W/K, from 0 towards 10 degC: after a step 10 (1 - exp(-1.5)) = 7.768698,
    on the way on average 10 (1 - (1 - exp(-1.5)) / 1.5) = 4.820868."""
    chain, face = solved(np.zeros(0), np.array([2.0]), np.array(3.0), np.array(0.0))
    assert chain.decay == pytest.approx([np.exp(-1.5)])
    assert face.first * 30.0 == pytest.approx(4.820868, abs=1e-6)
    assert chain.first[0] * 30.0 * chain.stored[0] / 2.0 == pytest.approx(7.768698, abs=1e-6)


def test_ten_steps_as_the_matrix_exponential_has_them() -> None:
    """A random chain with heat that stands still over each step, against scipy's ``expm``."""
    rng = np.random.default_rng(4)
    conductance, storage = rng.uniform(1, 9, 4), rng.uniform(0.5, 5, 5)
    chain, face = solved(conductance, storage, np.array(3.0), np.array(7.0))
    matrix = _conductances(conductance, 3.0, 7.0) / storage[:, None]
    temperature, mode = np.full(5, 16.0), 16.0 * chain.stored
    for heat in rng.uniform(-30, 60, (10, 2)):
        # Temperatures, their sums over the step, and a one that carries the heat.
        rates = np.zeros((11, 11))
        rates[:5, :5] = -matrix
        rates[[0, 4], 10] = heat / storage[[0, 4]]
        rates[5:10, :5] = np.eye(5)
        after = expm(rates) @ np.concatenate([temperature, np.zeros(5), [1.0]])
        first = chain.first @ mode + face.first * heat[0] + face.through * heat[1]
        last = chain.last @ mode + face.through * heat[0] + face.last * heat[1]
        mode = chain.decay * mode + chain.first * heat[0] + chain.last * heat[1]
        temperature = after[:5]
        assert (first, last) == pytest.approx((after[5], after[9]))
        assert chain.stored @ mode == pytest.approx(storage @ temperature)


def test_borders_without_mass_need_no_mode_and_are_next_to_none() -> None:
    """The same chain with next to nothing where it has nothing."""
    rng = np.random.default_rng(5)
    conductance, storage = rng.uniform(1, 9, 4), rng.uniform(0.5, 5, 5)
    storage[[0, 2]] = 0.0
    ports = np.array(3.0), np.array(7.0)
    chain, face = solved(conductance, storage, *ports)
    assert chain.decay.shape == (3,)
    assert np.all((chain.decay > 0.0) & (chain.decay < 1.0))
    light, felt = solved(conductance, np.where(storage > 0.0, storage, 1e-7), *ports)
    assert light.decay[:3] == pytest.approx(chain.decay, rel=1e-5)
    assert tuple(felt) == pytest.approx(tuple(face), rel=1e-5)


def test_a_chain_that_nothing_touches_keeps_its_heat() -> None:
    """No port at either end: one mode does not decay, 6 W warm 3 W/K by 2 K, by half on average."""
    chain, face = solved(np.array([5.0]), np.array([1.5, 1.5]), np.array(0.0), np.array(0.0))
    assert chain.decay[0] == pytest.approx(1.0)
    mode = chain.first * 3.0 + chain.last * 3.0
    assert chain.stored @ mode / 3.0 == pytest.approx(2.0)
    assert 3.0 * face.first + 3.0 * face.through == pytest.approx(1.0)


def test_a_thick_slab_takes_up_heat_with_the_root_of_time() -> None:
    """A half-infinite body whose face jumps by 1 K takes up 2 e sqrt(t / pi) with its effusivity e
    (Carslaw and Jaeger, Conduction of Heat in Solids, 1959, section 2.5, from memory)."""
    conductivity, heat_of_volume, hour, slices = 1.4, 2.0e6, 3600.0, 400
    thick = 0.5 / slices
    conductance = np.full(slices, conductivity / thick)
    storage = np.full(slices + 1, heat_of_volume * thick / hour)
    storage[[0, -1]] /= 2.0
    film = 1e7  # next to none
    chain, face = solved(conductance, storage, np.array(film), np.array(0.0))
    taken = film * (1.0 - face.first * film) * hour
    by_book = 2.0 * np.sqrt(conductivity * heat_of_volume * hour / np.pi)
    assert taken == pytest.approx(by_book, rel=0.01)
    assert chain.stored @ (chain.first * film) * hour == pytest.approx(taken, rel=1e-4)


def _conductances(conductance: NDArray[np.float64], first: float, last: float) -> Any:
    matrix = np.zeros((len(conductance) + 1,) * 2)
    for j, g in enumerate(conductance):
        matrix[j : j + 2, j : j + 2] += g * np.array([[1, -1], [-1, 1]])
    matrix[0, 0] += first
    matrix[-1, -1] += last
    return matrix


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
