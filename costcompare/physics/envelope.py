"""Layered surfaces as chains of capacities, stepped implicitly.

A chain is a row of temperature nodes: its two faces and the borders between its layers.
Every coefficient is constant, so the elimination of the tridiagonal system is done once;
an hour costs one forward and one backward pass. Heat enters a chain only at its two ends.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled

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


class Elimination(NamedTuple):
    """One chain, eliminated: everything an hour needs."""

    conductance: NDArray[np.float64]
    """Between neighbours [W/K], shape (n-1,)"""
    storage: NDArray[np.float64]
    """Capacity over the time step [W/K], shape (n,)"""
    upper: NDArray[np.float64]
    """Modified upper diagonal, shape (n,)"""
    inverse: NDArray[np.float64]
    """Inverse pivots [K/W], shape (n,)"""
    from_first: NDArray[np.float64]
    """Temperatures per watt put into the first node [K/W], shape (n,)"""
    from_last: NDArray[np.float64]
    """Temperatures per watt put into the last node [K/W], shape (n,)"""


@compiled
def back_substitute(
    heat: NDArray[np.float64],
    conductance: NDArray[np.float64],
    upper: NDArray[np.float64],
    inverse: NDArray[np.float64],
    answer: NDArray[np.float64],
) -> None:
    """Temperatures of an eliminated chain from the heat into its nodes, into ``answer``."""
    count = heat.shape[0]
    answer[0] = heat[0] * inverse[0]
    for j in range(1, count):
        answer[j] = (heat[j] + conductance[j - 1] * answer[j - 1]) * inverse[j]
    for j in range(count - 2, -1, -1):
        answer[j] += upper[j] * answer[j + 1]


def eliminate(
    conductance: NDArray[np.float64],
    storage: NDArray[np.float64],
    first_port: float,
    last_port: float,
) -> Elimination:
    """Eliminate a chain once for a constant time step.

    ``conductance`` [W/K] between neighbours, shape (n-1,); ``storage`` [W/K] capacity over
    time step, shape (n,); ports: the sum of conductances [W/K] from the first and from the
    last node to whatever lies beyond.
    """
    count = storage.shape[0]
    diagonal = storage.astype(float).copy()
    diagonal[0] += first_port
    diagonal[-1] += last_port
    diagonal[:-1] += conductance
    diagonal[1:] += conductance
    upper = np.zeros(count)
    inverse = np.zeros(count)
    pivot = diagonal[0]
    for j in range(count):
        if j > 0:
            pivot = diagonal[j] - conductance[j - 1] * upper[j - 1]
        inverse[j] = 1.0 / pivot
        upper[j] = conductance[j] * inverse[j] if j < count - 1 else 0.0
    responses = []
    for end in (0, count - 1):
        heat = np.zeros(count)
        heat[end] = 1.0
        answer = np.zeros(count)
        back_substitute(heat, conductance.astype(float), upper, inverse, answer)
        responses.append(answer)
    return Elimination(conductance, storage, upper, inverse, responses[0], responses[1])


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
