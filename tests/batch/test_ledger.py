"""The file of finished homes, as a kill leaves it."""

from __future__ import annotations

from pathlib import Path

import pytest

from costcompare.batch import HomeDone, Ledger
from tests.batch.test_ranking import line


def home(name: str) -> HomeDone:
    return HomeDone(f"key of {name}", name, name, (line("Seal"), line("Wrap", payback=None)))


def test_what_is_written_is_read_again(tmp_path: Path) -> None:
    ledger = Ledger.beside(tmp_path / "out.csv")
    with ledger:
        ledger.add(home("a"))
        ledger.add(HomeDone("k", "b", "", (), ("b: has no options.",)))
    assert list(ledger.homes()) == [home("a"), HomeDone("k", "b", "", (), ("b: has no options.",))]
    assert ledger.keys() == {"key of a", "k"}


def test_half_a_line_is_passed_over_and_the_next_starts_anew(tmp_path: Path) -> None:
    ledger = Ledger.beside(tmp_path / "out.csv")
    with ledger:
        ledger.add(home("a"))
    with ledger.path.open("a", encoding="utf-8") as file:
        file.write('{"key": "half')
    assert [found.home for found in ledger.homes()] == ["a"]
    with ledger:
        ledger.add(home("b"))
    assert [found.home for found in ledger.homes()] == ["a", "b"]


def test_a_line_of_another_layout_is_passed_over(tmp_path: Path) -> None:
    ledger = Ledger(tmp_path / "l")
    ledger.path.write_text('{"key": 1}\n[]\n3\n\n', encoding="utf-8")
    assert list(ledger.homes()) == []


def test_a_closed_ledger_takes_nothing(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="not open"):
        Ledger(tmp_path / "l").add(home("a"))
