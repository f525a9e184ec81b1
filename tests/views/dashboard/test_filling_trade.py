"""What the contractor's part says."""

from __future__ import annotations

import pytest

from costcompare.case import example_path, read_document
from costcompare.views.dashboard.filling_trade import trade_part
from costcompare.views.dashboard.pieces import texts
from costcompare.views.dashboard.showing import TRADE
from costcompare.views.dashboard.workbench import Workbench


@pytest.fixture(scope="module")
def bench() -> Workbench:
    return Workbench(read_document(example_path("demo")))


def test_it_shows_sizes_minimums_circuits_and_settings(bench: Workbench) -> None:
    worked = bench.worked(bench.opened)
    sizing, card = bench.trade(worked, worked.case.options[3].name)
    filled = trade_part(sizing, card)
    assert set(filled) == set(TRADE)
    machines = texts(filled["machines"])
    assert "Hours below least" in machines
    assert sum(text.startswith("Head in the ") for text in machines) == 4
    assert "comes" in " ".join(texts(filled["circuits"]))
    assert len(texts(filled["settings"])) > 3
    assert filled["estimate"].startswith("An estimate")


def test_a_home_without_options_is_sized_as_it_is(bench: Workbench) -> None:
    bare = {**bench.opened, "options": [], "money": {}}
    worked = bench.worked(bare)
    sizing, card = bench.trade(worked, "Today")
    assert card is None
    filled = trade_part(sizing, card)
    assert filled["panel"] == ""
    assert "settings are about one" in " ".join(texts(filled["settings"]))
