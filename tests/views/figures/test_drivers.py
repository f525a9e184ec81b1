"""One bar a fact, the most first."""

from __future__ import annotations

from costcompare.comparison import Comparison
from costcompare.views.figures.drivers import driver_bars


def test_a_bar_for_every_driver(ranged: Comparison) -> None:
    bars = driver_bars(ranged.today)
    assert [bar.label for bar in bars] == [
        "how much air the ducts lose (guessed)",
        "how warm it is kept (seen)",
    ]
    assert [bar.value for bar in bars] == [420.0, 210.0]
    assert [bar.text for bar in bars] == ["$420", "$210"]
    assert len({bar.tone for bar in bars}) == 2


def test_no_bar_without_ranges(comparison: Comparison) -> None:
    assert driver_bars(comparison.today) == ()
