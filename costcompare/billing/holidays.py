"""Holidays of a year by rule, for tariffs that count them as weekend.

Rules of the days of 5 U.S.C. 6103(a) (from memory) and of four more that tariffs name; Easter
by the anonymous Gregorian algorithm (Meeus, Astronomical Algorithms, chapter 8, from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta
from functools import lru_cache

from costcompare.case.tariff_facts import Observed

MONDAY, THURSDAY, SATURDAY, SUNDAY = 0, 3, 5, 6
LAST = -1


def weekday_of_month(year: int, month: int, weekday: int, number: int) -> date:
    """The first, second ... or :data:`LAST` weekday (0 for Monday) of a month."""
    if number == LAST:
        following = date(year + month // 12, month % 12 + 1, 1)
        return following - timedelta(days=(following.weekday() - weekday - 1) % 7 + 1)
    first = date(year, month, 1)
    return first + timedelta(days=(weekday - first.weekday()) % 7 + 7 * (number - 1))


def easter(year: int) -> date:
    """Easter Sunday of the Gregorian calendar."""
    golden = year % 19
    century = year // 100
    moon = (19 * golden + century - century // 4 - (8 * century + 13) // 25 + 15) % 30
    moon -= (moon // 28) * (1 - (29 // (moon + 1)) * ((21 - golden) // 11))
    sunday = (year + year // 4 + moon + 2 - century + century // 4) % 7
    after = moon - sunday + 28
    return date(year, 3, 1) + timedelta(days=after - 1)


def _fixed(month: int, day: int) -> Callable[[int], date]:
    return lambda year: date(year, month, day)


def _floating(month: int, weekday: int, number: int) -> Callable[[int], date]:
    return lambda year: weekday_of_month(year, month, weekday, number)


RULES: dict[str, Callable[[int], date]] = {
    "new year's day": _fixed(1, 1),
    "martin luther king day": _floating(1, MONDAY, 3),
    "presidents' day": _floating(2, MONDAY, 3),
    "good friday": lambda year: easter(year) - timedelta(days=2),
    "memorial day": _floating(5, MONDAY, LAST),
    "juneteenth": _fixed(6, 19),
    "independence day": _fixed(7, 4),
    "labor day": _floating(9, MONDAY, 1),
    "columbus day": _floating(10, MONDAY, 2),
    "veterans day": _fixed(11, 11),
    "thanksgiving": _floating(11, THURSDAY, 4),
    "day after thanksgiving": lambda year: (
        weekday_of_month(year, 11, THURSDAY, 4) + timedelta(days=1)
    ),
    "christmas eve": _fixed(12, 24),
    "christmas day": _fixed(12, 25),
}
"""The day of each named holiday in a year"""


@lru_cache(maxsize=256)
def holidays(names: tuple[str, ...], year: int, observed: Observed) -> frozenset[date]:
    """The days of a year that count as weekend.

    ``observed`` says where a holiday is moved that falls on a weekend: nowhere, from Sunday
    to Monday, or from Saturday to Friday and from Sunday to Monday. A new year's day that is
    moved to the last day of the year before belongs to that year.
    """
    days = (_observed(RULES[name](y), observed) for name in names for y in (year, year + 1))
    return frozenset(day for day in days if day.year == year)


def _observed(day: date, observed: Observed) -> date:
    if observed != "as dated" and day.weekday() == SUNDAY:
        return day + timedelta(days=1)
    if observed == "nearest weekday" and day.weekday() == SATURDAY:
        return day - timedelta(days=1)
    return day
