"""The first screen: one sentence, three figures, and the slim line that stays in sight."""

from __future__ import annotations

from dataclasses import dataclass

from costcompare.comparison import AS_WANTED, Choice, Comparison
from costcompare.thermostat import SettingYear
from costcompare.views import numbers
from costcompare.views.wording.naming import in_a_sentence


@dataclass(frozen=True)
class YearShown:
    """What the headline needs of one year, whether it was compared or swept."""

    bill_usd: float
    worst_month: int
    worst_month_usd: float
    warm_hours: int
    wanted_hours: int
    thermostat: str
    """How the thermostat is set, in words that follow a comma"""

    @property
    def warm_share(self) -> float:
        """Warm hours over wanted hours; 1 where nobody wants any."""
        return self.warm_hours / self.wanted_hours if self.wanted_hours else 1.0


@dataclass(frozen=True)
class Headline:
    """Finished texts of the first screen."""

    lead: str
    now: str
    now_note: str
    after: str
    after_note: str
    warm_now: str
    warm_after: str
    warm_note: str
    slim_bill: str
    slim_warmth: str


def year_of_choice(choice: Choice, thermostat: str) -> YearShown:
    """The year of a choice as it was compared."""
    worst = max(choice.monthly, key=lambda month: month.bill_usd)
    return YearShown(
        bill_usd=choice.annual.bill_usd,
        worst_month=worst.month,
        worst_month_usd=worst.bill_usd,
        warm_hours=sum(room.comfort_hours for room in choice.rooms),
        wanted_hours=sum(room.wanted_hours for room in choice.rooms),
        thermostat=thermostat,
    )


def year_of_setting(year: SettingYear, thermostat: str) -> YearShown:
    """The year of a choice at one setting of a sweep."""
    return YearShown(
        bill_usd=year.bill_usd,
        worst_month=year.worst_month,
        worst_month_usd=year.worst_month_usd,
        warm_hours=year.warm_hours,
        wanted_hours=year.wanted_hours,
        thermostat=thermostat,
    )


def headline(comparison: Comparison, name: str, after: YearShown | None = None) -> Headline:
    """The first screen for today against one choice.

    ``after`` is the year of the choice at the setting that is shown; left out, it is the
    choice at the warmth that the family wants.
    """
    chosen = comparison.choice(name, AS_WANTED)
    now = year_of_choice(comparison.today, comparison.today.warmth)
    after = after or year_of_choice(chosen, chosen.warmth)
    with_choice = in_a_sentence(chosen)
    bills = (numbers.dollars_a_year(now.bill_usd), numbers.dollars_a_year(after.bill_usd))
    warmth = (of_100(now.warm_share), of_100(after.warm_share))
    return Headline(
        lead=(
            f"You pay about {bills[0]} a year for electricity now and are warm in {warmth[0]} of "
            f"100 hours; with {with_choice}, {after.thermostat}, it would be about {bills[1]}, "
            f"and warm in {warmth[1]} of 100."
        ),
        now=bills[0],
        now_note=f"{_worst_month(now)}, {now.thermostat}",
        after=bills[1],
        after_note=f"{_worst_month(after)}, {after.thermostat}",
        warm_now=warmth[0],
        warm_after=warmth[1],
        warm_note="of every 100 hours in which a room is in use: neither too cold nor too hot",
        slim_bill=f"{bills[0]} → {bills[1]} a year",
        slim_warmth=f"warm {warmth[0]} → {warmth[1]} of 100",
    )


def of_100(share: float) -> str:
    """A share as so many of a hundred; only all is 100 and only none is 0."""
    if 0.0 < share < 1.0:
        return f"{min(max(round(100.0 * share), 1), 99)}"
    return f"{round(100.0 * share)}"


def _worst_month(year: YearShown) -> str:
    amount = numbers.dollars_a_month(year.worst_month_usd)
    return f"about {amount} in {numbers.month_name(year.worst_month)}"
