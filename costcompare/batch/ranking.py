"""The table of all homes, the best first."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import asdict, dataclass, fields
from typing import Literal

import pandas as pd

from costcompare.batch.results import HomeDone, OptionLine

RankedBy = Literal["saving", "payback", "warmth"]
RANKINGS: tuple[RankedBy, ...] = ("saving", "payback", "warmth")

_SORTED_BY = {
    "saving": ("first_year_saving_usd", False),
    "payback": ("simple_payback_years", True),
    "warmth": ("warmth_gained_hours", False),
}
"""The column of a ranking, and whether the smallest comes first"""

KEY = "key"
"""Two homes of a list may have the same name: they are told apart by their key"""

RANKS = tuple(f"rank_by_{name}" for name in RANKINGS)


@dataclass(frozen=True)
class Ranking:
    """The homes that were worked out, and those that were not."""

    table: pd.DataFrame
    """One row a home and option: rank of the home by each ranking, then OptionLine's fields"""
    left_out: tuple[HomeDone, ...]


def ranked(homes: Iterable[HomeDone], by: RankedBy = "saving", *, every: bool = False) -> Ranking:
    """The homes in the order of a ranking, each with its best option, or ``every`` option.

    The best option of a home is the one that the same ranking puts first. Where two are
    equal, larger net savings come first, then the name: the order never hangs on which
    home was finished first. A payback that never comes stands last.
    """
    rows, left_out = [], []
    for home in homes:
        if home.faults:
            left_out.append(home)
        rows += [{KEY: home.key, "home": home.home} | asdict(line) for line in home.options]
    columns = ["home", *(field.name for field in fields(OptionLine))]
    table = pd.DataFrame(rows, columns=[KEY, *columns])
    for name in RANKINGS:
        best = _best(_ordered(table, name))
        order = {key: place for place, key in enumerate(best[KEY], start=1)}
        table[f"rank_by_{name}"] = table[KEY].map(order).astype("int64")
    table = _ordered(table, by)
    table = table.sort_values(f"rank_by_{by}", kind="stable") if every else _best(table)
    table = table[["home", *RANKS, *columns[1:]]].reset_index(drop=True)
    return Ranking(table, tuple(sorted(left_out, key=lambda home: home.home)))


def _ordered(table: pd.DataFrame, by: RankedBy) -> pd.DataFrame:
    column, rising = _SORTED_BY[by]
    key = table[column].astype("float64").fillna(math.inf if rising else -math.inf)
    return (
        table.assign(_key=key)
        .sort_values(
            ["_key", "net_savings_usd", "home", "option"], ascending=[rising, False, True, True]
        )
        .drop(columns="_key")
    )


def _best(table: pd.DataFrame) -> pd.DataFrame:
    return table.drop_duplicates(KEY, keep="first")
