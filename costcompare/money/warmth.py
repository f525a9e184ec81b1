"""The four bills that must not be mixed up, and what warmth is worth.

    1  today's system, as you live now          2  the new system, as you live now
    4  today's system, at the warmth you want   3  the new system, at the warmth you want

The cash that comes back is row 1 less row 3, or row 1 less row 2 for who stays as cool as
now: the two differ by what the added warmth costs with the new system. What the added
warmth would cost with today's system, row 4 less row 1, is comfort; it is never added to
cash.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class FourRows:
    """The four bills of one option, and their differences."""

    name: str
    today_as_lived_usd: float
    new_as_lived_usd: float
    new_as_wanted_usd: float
    today_as_wanted_usd: float
    saving_as_lived_usd: float
    """Row 1 less row 2"""
    saving_as_wanted_usd: float
    """Row 1 less row 3"""
    added_warmth_new_usd: float
    """Row 3 less row 2: what the added warmth costs with the new system"""
    warmth_worth_usd: float
    """Row 4 less row 1: what it would cost with today's system"""
    same_warmth_saving_usd: float
    """Row 4 less row 3"""
    degrees_warmer_degf: float
    """How much warmer the wanted setting is, over day and night, a difference"""
    today_one_degree_usd: float | None
    """What one of these degrees costs a year with today's system; None where none is wanted"""
    new_one_degree_usd: float | None
    """The same with the new system"""


def four_rows(
    name: str,
    *,
    today: tuple[float, float],
    new: tuple[float, float],
    degrees_warmer_degf: float,
) -> FourRows:
    """The four rows from two bills a year each [$]: as you live now, at the warmth you want."""
    worth, added = today[1] - today[0], new[1] - new[0]
    warmer = degrees_warmer_degf
    return FourRows(
        name=name,
        today_as_lived_usd=today[0],
        new_as_lived_usd=new[0],
        new_as_wanted_usd=new[1],
        today_as_wanted_usd=today[1],
        saving_as_lived_usd=today[0] - new[0],
        saving_as_wanted_usd=today[0] - new[1],
        added_warmth_new_usd=added,
        warmth_worth_usd=worth,
        same_warmth_saving_usd=today[1] - new[1],
        degrees_warmer_degf=warmer,
        today_one_degree_usd=worth / warmer if warmer > 0.0 else None,
        new_one_degree_usd=added / warmer if warmer > 0.0 else None,
    )
