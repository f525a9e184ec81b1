"""A dial: how the value of one fact is read off the frozen facts of a home, and how it is set.

Reading a case anew for every member of an ensemble would take far longer than simulating
it; a dial copies the few facts that change. Values are in SI and as effective as the model
takes them: the resistance of a whole wall, not the R-value on the batt.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Generic, TypeVar

from costcompare.case.facts import Construction, Home, Layer, System

LEAST_RESISTANCE = 0.02
"""[m2 K/W] that the most resistive layer of a construction keeps (judgement)"""

Whole = TypeVar("Whole", Home, System)


@dataclass(frozen=True)
class Dial(Generic[Whole]):
    """One fact of a home or of a system."""

    fact: str
    """Its row in the table of spreads"""
    read: Callable[[Whole], float | None]
    """None where there is nothing of the kind"""
    turn: Callable[[Whole, float], Whole]
    """The same with the fact at another value; only where ``read`` gives a number"""
    smooth: bool = True
    """False where the answer moves in steps: nothing can be fitted by its slope"""


def with_resistance(construction: Construction, resistance: float) -> Construction:
    """The construction with its most resistive layer changed until the whole has [m2 K/W]."""
    layers = construction.layers
    place = max(range(len(layers)), key=lambda n: layers[n].resistance)
    rest = construction.resistance - layers[place].resistance
    changed = Layer(max(resistance - rest, LEAST_RESISTANCE), layers[place].capacity)
    return replace(construction, layers=(*layers[:place], changed, *layers[place + 1 :]))
