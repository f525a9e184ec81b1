"""Long work in short steps: whoever waits for it decides when to go on."""

from __future__ import annotations

from collections.abc import Callable, Generator
from typing import TypeVar

T = TypeVar("T")

Steps = Generator[float, None, T]
"""Gives the share of the work that is done after each step, 0 to 1, and returns what came out"""


def finished(steps: Steps[T], tell: Callable[[float], None] = lambda _share: None) -> T:
    """Take every step at once; ``tell`` is called with the share that is done after each."""
    while True:
        try:
            tell(next(steps))
        except StopIteration as end:
            result: T = end.value
            return result


def part_of(steps: Steps[T], start: float, end: float) -> Steps[T]:
    """Steps as one part of a longer work, from one share of it to another."""
    while True:
        try:
            share = next(steps)
        except StopIteration as last:
            result: T = last.value
            return result
        yield start + (end - start) * share
