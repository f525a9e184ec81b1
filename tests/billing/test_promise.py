"""A comparison that was saved, read back."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from costcompare.billing.promise import promises_of, read_promises
from costcompare.errors import BillsError


def choice(name: str, kwh: float, *, today: bool = False, warmth: str = "as you live now") -> Any:
    return {
        "name": name,
        "warmth": warmth,
        "is_today": today,
        "annual": {"electricity_kwh": kwh, "heating_kwh": kwh / 2, "cooling_kwh": 10.0},
        "money": None if today else {"first_year_saving_usd": 500.0},
        "range": None if today else {"first_year_saving_usd": {"low": 300.0, "high": 700.0}},
    }


SAVED = {
    "choices": [
        choice("now", 20000.0, today=True),
        choice("now", 24000.0, today=True, warmth="at the warmth you want"),
        choice("a head", 14000.0),
        choice("a head", 16000.0, warmth="at the warmth you want"),
        choice("ducts", 17000.0),
    ]
}


def test_each_warmth_is_held_against_today_as_they_lived() -> None:
    first, second = promises_of(SAVED)
    assert (first.option, first.saving_kwh, first.warmth) == ("a head", 6000.0, "as you live now")
    assert second.saving_kwh == 4000.0
    assert (first.saving_usd, first.low_usd, first.high_usd) == (500.0, 300.0, 700.0)
    assert promises_of(SAVED, "ducts")[0].saving_kwh == 3000.0


def test_a_file_without_ranges(tmp_path: Path) -> None:
    plain = {**choice("a", 1.0), "range": None}
    path = tmp_path / "sale.json"
    path.write_text(json.dumps({"choices": [*SAVED["choices"][:2], plain]}), encoding="utf-8")
    assert read_promises(path)[0].low_usd is None


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{", "is no JSON"),
        ("[]", "is no saved comparison"),
        ('{"choices": []}', "is no saved comparison"),
        ('{"choices": [{"name": "x"}]}', "is no saved comparison"),
        (json.dumps({"choices": SAVED["choices"][:1]}), "holds no option"),
        ("[" * 100000, "is no JSON"),
    ],
)
def test_what_is_no_promise(tmp_path: Path, text: str, said: str) -> None:
    path = tmp_path / "sale.json"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(BillsError, match=said):
        read_promises(path)


def test_an_option_that_was_not_offered() -> None:
    with pytest.raises(BillsError, match="must be an option of it: a head; ducts"):
        promises_of(SAVED, "a stove")
