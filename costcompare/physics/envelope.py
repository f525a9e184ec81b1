"""Layered surfaces as chains of capacities, stepped exactly.

A chain is a row of temperature nodes: its two faces and the borders between its layers.
Every coefficient is constant, and heat enters a chain only at its two ends, so it is solved
once, as modes that decay apart from each other: an hour costs a few products a mode, and is
exact for heat that stands still over it.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

FILM_LEVEL = 0.13
FILM_UP = 0.10
FILM_DOWN = 0.17
FILM_OUTSIDE = 0.04
"""Surface resistances [m2 K/W]: ISO 6946:2017, table 7"""

INSIDE_RADIATIVE = 5.13
"""[W/(m2 K)] 0.9 x 5.7: ISO 6946:2017, annex C, surfaces of emissivity 0.9 at 20 degC"""
INSIDE_CONVECTIVE_LEVEL = 2.5
INSIDE_CONVECTIVE_UP = 5.0
INSIDE_CONVECTIVE_DOWN = 0.7
"""[W/(m2 K)] ISO 6946:2017, annex C, by the direction of the heat flow"""

SKY_RADIATIVE = 4.6
"""[W/(m2 K)] of a black surface near 0 degC: 4 sigma T^3"""
SKY_SHARE_WALL = 0.354
"""Half the hemisphere, times the square root of a half for the warm air near the
horizon (Walton 1983, from memory)"""
SKY_SHARE_ROOF = 1.0


class Responses(NamedTuple):
    """Mean temperatures of a chain's two faces over a step per watt into a face [K/W]."""

    first: NDArray[np.float64]
    """Of the first face, to heat into it"""
    last: NDArray[np.float64]
    """Of the last face, to heat into it"""
    through: NDArray[np.float64]
    """Of either face, to heat into the other"""


class Modes(NamedTuple):
    """A chain as modes that decay apart from each other, shapes (..., modes).

    A step is ``w = decay w + first q1 + last q2`` with the heat into the two faces [W], which
    stands still over the step. The first face then has the mean temperature
    ``first . w_before + responses.first q1 + responses.through q2``, the last face likewise.
    """

    decay: NDArray[np.float64]
    """Share of a mode that is left after a step, between 0 and 1"""
    first: NDArray[np.float64]
    last: NDArray[np.float64]
    stored: NDArray[np.float64]
    """Heat in the chain over a step, per mode: the sum of ``stored w`` is that of capacity
    over time step times temperature [W]; ``w = T stored`` where all of the chain has T"""


def solved(
    conductance: NDArray[np.float64],
    storage: NDArray[np.float64],
    first_port: NDArray[np.float64],
    last_port: NDArray[np.float64],
) -> tuple[Modes, Responses]:
    """A chain over a step, exactly: as modes, slowest first, with what its faces feel at once.

    ``conductance`` [W/K] between neighbours, shape (..., n-1); ``storage`` [W/K] capacity
    over time step, shape (..., n); ports: the sum of conductances [W/K] from the first and
    from the last node to whatever lies beyond, shape (...). Nodes without storage keep nothing
    and need no mode; all chains of a call have storage in equally many nodes.

    With S the storages and K the conductances a chain obeys ``S dT = (q - K T) ds`` over a step
    s from 0 to 1. Its modes are found from ``A = 1 / (S + K)``, which is never singular:
    ``sqrt(S) A sqrt(S)`` has the eigenvalues ``d = 1 / (1 + x)`` with the rates ``x`` of decay.
    """
    inverse = _implicit(conductance, storage, first_port, last_port)
    root = np.sqrt(storage)
    kept = int(np.count_nonzero(storage.reshape(-1, storage.shape[-1])[0] > 0.0))
    shrunk, shape = np.linalg.eigh(root[..., :, None] * inverse * root[..., None, :])
    shrunk, shape = shrunk[..., ::-1][..., :kept], shape[..., :, ::-1][..., :kept]
    weighted = root[..., :, None] * shape
    rate = 1.0 / shrunk - 1.0
    # A mode of 1 has this mean over the step, and heat that stands still brings it as far.
    mean = _mean_of_decay(rate)
    # A face as a mode of 1 has it, and what it feels of heat that no mode holds.
    first = np.einsum("...n,...nm->...m", inverse[..., 0, :], weighted) / shrunk
    last = np.einsum("...n,...nm->...m", inverse[..., -1, :], weighted) / shrunk
    held = _mean_of_rise(rate, mean) - shrunk
    felt = Responses(
        inverse[..., 0, 0] + np.sum(held * first * first, axis=-1),
        inverse[..., -1, -1] + np.sum(held * last * last, axis=-1),
        inverse[..., 0, -1] + np.sum(held * first * last, axis=-1),
    )
    stored = np.sum(weighted, axis=-2)
    return Modes(np.exp(-rate), mean * first, mean * last, stored), felt


NO_DECAY = 1e-6
"""Rate below which a mode is taken as one that does not decay at all, by its series"""


def _mean_of_decay(rate: NDArray[np.float64]) -> NDArray[np.float64]:
    """Mean of exp(-rate s) over s from 0 to 1."""
    some = np.maximum(rate, NO_DECAY)
    return np.where(rate > NO_DECAY, -np.expm1(-some) / some, 1.0 - rate / 2.0)


def _mean_of_rise(rate: NDArray[np.float64], mean: NDArray[np.float64]) -> NDArray[np.float64]:
    """Mean over the step of what a mode gains from heat of 1 that stands still."""
    some = np.maximum(rate, NO_DECAY)
    return np.where(rate > NO_DECAY, (1.0 - mean) / some, 0.5 - rate / 6.0)


def _implicit(
    conductance: NDArray[np.float64],
    storage: NDArray[np.float64],
    first_port: NDArray[np.float64],
    last_port: NDArray[np.float64],
) -> NDArray[np.float64]:
    """``1 / (S + K)`` [K/W], shape (..., n, n), of what :func:`solved` is given."""
    count = storage.shape[-1]
    place = np.arange(count)
    system = np.zeros((*storage.shape, count))
    system[..., place, place] = storage
    system[..., 0, 0] += first_port
    system[..., -1, -1] += last_port
    low, high = place[:-1], place[1:]
    system[..., low, low] += conductance
    system[..., high, high] += conductance
    system[..., low, high] = -conductance
    system[..., high, low] = -conductance
    inverse: NDArray[np.float64] = np.linalg.inv(system)
    return inverse


def sol_air(
    outdoor: NDArray[np.float64],
    sun: NDArray[np.float64],
    sky: NDArray[np.float64],
    *,
    absorptance: float,
    emissivity: float,
    sky_share: float,
) -> NDArray[np.float64]:
    """Outdoor temperature that would give the same heat flow as sun and sky do [degC].

    ``outdoor`` and ``sky`` [degC], ``sun`` [W/m2] on the surface; the outside film is the
    0.04 m2 K/W of ISO 6946. Shapes are those of ``outdoor``.
    """
    absorbed = absorptance * sun
    lost = emissivity * SKY_RADIATIVE * sky_share * (outdoor - sky)
    return outdoor + (absorbed - lost) * FILM_OUTSIDE
