"""What is kept of a comparison."""

from __future__ import annotations

from pathlib import Path

import pytest

from costcompare.batch.results import option_lines
from costcompare.case import read_case
from costcompare.comparing import compare
from costcompare.comparison import AS_WANTED


def test_the_lines_are_those_of_the_comparison(like: Path) -> None:
    comparison = compare(read_case(like))
    lines = option_lines(comparison)
    assert [line.option for line in lines] == ["Seal and wrap the ducts", "Insulate the floor"]
    for line in lines:
        choice = comparison.choice(line.option, AS_WANTED)
        now = comparison.today.annual.bill_usd
        assert line.bill_after_usd == choice.annual.bill_usd
        assert line.first_year_saving_usd == pytest.approx(now - line.bill_after_usd)
        assert line.same_warmth_saving_usd == pytest.approx(
            line.bill_now_at_wanted_warmth_usd - line.bill_after_usd
        )
        rooms = sum(room.wanted_hours for room in choice.rooms)
        assert line.warmth_gained_hours == pytest.approx(
            (line.warm_after_percent - line.warm_now_percent) / 100.0 * rooms
        )
