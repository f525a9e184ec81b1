"""What is kept of a home: one line an option, small enough to keep half a million of them."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import Any

from costcompare.comparison import AS_LIVED, AS_WANTED, Choice, Comparison

PERCENT = 100.0


@dataclass(frozen=True)
class OptionLine:
    """One option at one home, at the warmth they want; None means never, or not known."""

    option: str
    installed_cost_usd: float
    bill_now_usd: float
    """A year today, as they live now"""
    bill_now_at_wanted_warmth_usd: float
    bill_after_usd: float
    """A year with the option, at the warmth they want"""
    first_year_saving_usd: float
    """Bill now, as they live now, less the bill after at the warmth they want"""
    same_warmth_saving_usd: float | None
    simple_payback_years: float | None
    net_savings_usd: float
    warm_now_percent: float
    """Share of the wanted room-hours that are warm today, as they live now"""
    warm_after_percent: float
    warmth_gained_hours: int
    """Warm room-hours a year with the option less those of today"""
    fitted_bills: int
    """Real bills that the house was fitted to; 0 where it is as it was said to be"""


@dataclass(frozen=True)
class HomeDone:
    """One home of the list: its options, or what is wrong with it."""

    key: str
    """A digest of everything that the answer hangs on"""
    home: str
    title: str
    options: tuple[OptionLine, ...]
    faults: tuple[str, ...] = ()
    """Sentences; empty for a home that was worked out"""

    def as_record(self) -> dict[str, Any]:
        """Plain dicts and lists for the ledger."""
        return asdict(self)

    @classmethod
    def from_record(cls, record: dict[str, Any]) -> HomeDone:
        """The home of a ledger's line; raises KeyError or TypeError for another layout."""
        return cls(
            key=record["key"],
            home=record["home"],
            title=record["title"],
            options=tuple(OptionLine(**line) for line in record["options"]),
            faults=tuple(record["faults"]),
        )


def option_lines(comparison: Comparison) -> tuple[OptionLine, ...]:
    """The lines of a comparison's options, in its order."""
    today = comparison.today
    at_wanted = comparison.choice(today.name, AS_WANTED)
    warm_now, wanted_now = _warm_hours(today)
    lines = []
    for choice in comparison.choices:
        if choice.is_today or choice.warmth == AS_LIVED or choice.money is None:
            continue
        warm, wanted = _warm_hours(choice)
        lines.append(
            OptionLine(
                option=choice.name,
                installed_cost_usd=choice.money.installed_cost_usd,
                bill_now_usd=today.annual.bill_usd,
                bill_now_at_wanted_warmth_usd=at_wanted.annual.bill_usd,
                bill_after_usd=choice.annual.bill_usd,
                first_year_saving_usd=choice.money.first_year_saving_usd,
                same_warmth_saving_usd=choice.money.same_warmth_saving_usd,
                simple_payback_years=choice.money.simple_payback_years,
                net_savings_usd=choice.money.net_savings_usd,
                warm_now_percent=PERCENT * warm_now / max(wanted_now, 1),
                warm_after_percent=PERCENT * warm / max(wanted, 1),
                warmth_gained_hours=warm - warm_now,
                fitted_bills=comparison.fitted_bills,
            )
        )
    return tuple(lines)


def _warm_hours(choice: Choice) -> tuple[int, int]:
    """Warm and wanted room-hours of a year."""
    warm = sum(room.comfort_hours for room in choice.rooms)
    return warm, sum(room.wanted_hours for room in choice.rooms)
