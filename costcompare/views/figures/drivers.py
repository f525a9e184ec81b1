"""What drives a range: one bar a fact, as plain values."""

from __future__ import annotations

from costcompare.comparison import Choice, Driver
from costcompare.views import numbers
from costcompare.views.figures.rows import Bar, Tone

MOST_BARS = 8
"""Facts shown; the rest moves little (judgement)"""
TONES: dict[str, Tone] = {"measured": "whole", "seen": "other", "guessed": "now"}


def driver_bars(choice: Choice) -> tuple[Bar, ...]:
    """How far each fact moves the figure of a choice, the most first; empty without ranges."""
    if choice.range is None:
        return ()
    return tuple(_bar(driver) for driver in choice.range.drivers[:MOST_BARS])


def _bar(driver: Driver) -> Bar:
    swing = abs(driver.swing_usd)
    return Bar(
        label=f"{driver.words} ({driver.known})",
        start=0.0,
        value=swing,
        text=numbers.dollars_in_a_range(swing),
        tone=TONES[driver.known],
    )
