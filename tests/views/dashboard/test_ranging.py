"""Part six once the ranges are there, and how they come about on the server."""

from __future__ import annotations

import pytest

from costcompare.case import example_path, read_document
from costcompare.comparison import Comparison
from costcompare.views.dashboard import workbench
from costcompare.views.dashboard.pieces import texts
from costcompare.views.dashboard.ranging import range_part
from costcompare.views.dashboard.workbench import Workbench


def test_part_six_shows_ranges_and_one_bar_a_driver(ranged: Comparison, option: str) -> None:
    today, saving, says, label, bars, hold, table = range_part(ranged, option)
    assert "between $2,900 and $4,400 a year" in today
    assert f"“{option}”" in saving
    assert says.startswith("How far each fact alone moves the first year’s saving with")
    assert f"“{option}”" in says
    assert "how much air the ducts lose (guessed)" in texts(bars)
    assert "$420" in label
    assert "64 homes were worked out" in hold
    shown = texts(table)
    assert all(any(choice.name in text for text in shown) for choice in ranged.choices[2:])


def test_without_an_option_today_is_shown(ranged: Comparison) -> None:
    _today, saving, *_ = range_part(ranged, ranged.today.name)
    assert saving == ""


def test_asking_on_ends_in_ranges(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(workbench, "MEMBERS", 2)
    document = read_document(example_path("demo"))
    document["options"], document["money"]["incentives"] = document["options"][:1], []
    bench = Workbench(document)
    known = bench.worked(bench.opened)
    shares = []
    whole = None
    while whole is None:
        share, whole = bench.ranges_on(known)
        shares.append(share)
    assert shares == sorted(shares)
    assert shares[-1] == 1.0
    assert all(choice.range is not None for choice in whole.choices)
    assert known.comparison.today.range is None
    assert bench.ranges_on(known) == (1.0, whole)
