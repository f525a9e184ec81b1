"""The local clock of a meter's file: seconds since 1970 in UTC, an offset, and its summer rule."""

from __future__ import annotations

import calendar
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, timezone

from costcompare.billing.reading.meter_tree import Element

A_DAY_S = 86_400
LAST_EPOCH = 4_102_444_800
"""[s] 2100-01-01: later times are no times"""


@dataclass(frozen=True)
class Change:
    """When clocks change: the ``which``-th ``weekday`` (Monday 0) of a month, at an hour."""

    month: int
    which: int
    weekday: int
    hour: int

    def moment(self, year: int) -> datetime:
        """The change in a year on the clock before it, without zone."""
        last = calendar.monthrange(year, self.month)[1]
        days = [
            day
            for day in range(1, last + 1)
            if datetime(year, self.month, day, tzinfo=UTC).weekday() == self.weekday
        ]
        day = days[-1] if self.which > len(days) else days[self.which - 1]
        return datetime(year, self.month, day, self.hour)  # noqa: DTZ001 - a local clock


def change_of(text: str) -> Change | None:
    """A rule of NAESB REQ.21 ``DstRuleType`` as hexadecimal digits; None where it holds none.

    Bits: seconds 0-11, hour 12-16, day of the week 17-19 (7 Sunday), day of the month 20-24,
    operator 25-27 (2 to 6: first to fifth or last), month 28-31. The layout is from memory; it
    gives the rule of the United States for the values that their files hold.
    """
    try:
        bits = int(text, 16)
    except ValueError:
        return None
    month, operator, weekday = bits >> 28 & 15, bits >> 25 & 7, bits >> 17 & 7
    if not (1 <= month <= 12 and 1 <= weekday <= 7 and 2 <= operator <= 6):
        return None
    return Change(month, operator - 1, weekday - 1, min(bits >> 12 & 31, 23))


@dataclass(frozen=True)
class LocalClock:
    """How seconds since 1970 are told on the clock of the house."""

    offset_s: int = 0
    summer_s: int = 0
    begins: Change | None = None
    ends: Change | None = None
    told_as_local: bool = False
    """The seconds are the local clock's own, written as if they were UTC"""

    def moment(self, epoch: int) -> datetime:
        """The local moment with its offset from UTC."""
        if self.told_as_local:
            plain = datetime.fromtimestamp(epoch, UTC).replace(tzinfo=None)
            summer = self._is_summer(plain)
            zone = self.offset_s + (self.summer_s if summer else 0)
            return plain.replace(tzinfo=timezone(timedelta(seconds=zone)))
        standard = datetime.fromtimestamp(epoch, UTC) + timedelta(seconds=self.offset_s)
        summer = self._is_summer_in_standard(standard.replace(tzinfo=None))
        zone = self.offset_s + (self.summer_s if summer else 0)
        return datetime.fromtimestamp(epoch, timezone(timedelta(seconds=zone)))

    def _is_summer(self, local: datetime) -> bool:
        if self.begins is None or self.ends is None:
            return False
        return self.begins.moment(local.year) <= local < self.ends.moment(local.year)

    def _is_summer_in_standard(self, standard: datetime) -> bool:
        """The end is told on the summer clock, an hour later than standard time."""
        if self.begins is None or self.ends is None:
            return False
        last = self.ends.moment(standard.year) - timedelta(seconds=self.summer_s)
        return self.begins.moment(standard.year) <= standard < last


def clock_of(root: Element, period_starts: Iterable[int]) -> LocalClock:
    """The clock that a file tells; UTC where it tells none.

    Where every billing period begins at midnight UTC although the house keeps another clock,
    the file has written local time as UTC.
    """
    told = next((e for e in root.walk() if e.name == "LocalTimeParameters"), None)
    if told is None:
        return LocalClock()
    offset = told.integer("tzOffset") or 0
    summer = told.integer("dstOffset") or 0
    if abs(offset) > A_DAY_S or abs(summer) > A_DAY_S // 4:
        return LocalClock()
    clock = LocalClock(
        offset, summer, change_of(told.value("dstStartRule")), change_of(told.value("dstEndRule"))
    )
    starts = list(period_starts)
    at_utc = starts and all(start % A_DAY_S == 0 for start in starts)
    moments = [clock.moment(start) for start in starts]
    at_local = all((m.hour, m.minute) == (0, 0) for m in moments)
    if at_utc and not at_local:
        return LocalClock(offset, summer, clock.begins, clock.ends, told_as_local=True)
    return clock
