"""What was said at the sale: a comparison that was saved, read back as the promise it holds."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from costcompare.billing.reading.delimited import content_of
from costcompare.errors import BillsError, Fault

AS_LIVED, AS_WANTED = "as you live now", "at the warmth you want"
INSTEAD = "the file that costcompare compare --json wrote"


@dataclass(frozen=True)
class Promise:
    """A year before and after at one warmth, as it was computed at the sale."""

    option: str
    warmth: str
    before_kwh: float
    after_kwh: float
    saving_kwh: float
    heating_after_kwh: float
    cooling_after_kwh: float
    saving_usd: float | None
    low_usd: float | None
    high_usd: float | None
    """Eight in ten homes that fit what was known lay between"""


def promises_of(document: Any, option: str | None = None) -> tuple[Promise, ...]:
    """What a saved comparison says of one option at each warmth, against today as they lived.

    Without a name that is the first option. Raises :class:`BillsError` where it holds none.
    """
    try:
        choices: Sequence[Mapping[str, Any]] = document["choices"]
        before = float(choices[0]["annual"]["electricity_kwh"])
        options = [one for one in choices if not one["is_today"]]
        names = list(dict.fromkeys(str(one["name"]) for one in options))
        if option is not None and option not in names:
            known = "; ".join(names) or "none"
            raise BillsError([Fault("--option", f"must be an option of it: {known}", option)])
        wanted = option or (names[0] if names else "")
        found = tuple(_promise(one, before) for one in options if one["name"] == wanted)
    except (KeyError, TypeError, ValueError, IndexError):
        rule = "is no saved comparison"
        raise BillsError([Fault("the promise", rule, instead=INSTEAD)]) from None
    if not found:
        raise BillsError([Fault("the promise", "holds no option", instead=INSTEAD)])
    return found


def read_promises(path: Path, option: str | None = None) -> tuple[Promise, ...]:
    """The promises of a file."""
    try:
        document = json.loads(content_of(path).decode("utf-8-sig"))
    except (ValueError, RecursionError):
        raise BillsError([Fault(path.name, "is no JSON", instead=INSTEAD)]) from None
    return promises_of(document, option)


def _promise(choice: Mapping[str, Any], before: float) -> Promise:
    annual, money, spread = choice["annual"], choice.get("money"), choice.get("range")
    band = (spread or {}).get("first_year_saving_usd") or {}
    after = float(annual["electricity_kwh"])
    return Promise(
        option=str(choice["name"]),
        warmth=str(choice["warmth"]),
        before_kwh=before,
        after_kwh=after,
        saving_kwh=before - after,
        heating_after_kwh=float(annual["heating_kwh"]),
        cooling_after_kwh=float(annual["cooling_kwh"]),
        saving_usd=_number(money, "first_year_saving_usd"),
        low_usd=_number(band, "low"),
        high_usd=_number(band, "high"),
    )


def _number(table: Any, name: str) -> float | None:
    value = table.get(name) if isinstance(table, Mapping) else None
    return float(value) if isinstance(value, int | float) else None
