"""Cautions about pipes, damp and floors."""

from __future__ import annotations

import re

from .homes import HEATERS, cautions_of, improve

PIPES, DAMP, FLOORS = "Pipes under the floor", "Damp and radon", "Cool floors"


def test_pipes_where_an_option_leaves_the_crawlspace_colder() -> None:
    caution = cautions_of(HEATERS)[PIPES]
    assert "Insulate the water pipes" in caution.text
    figures = re.findall(r"(−?\d+) °F and ([\d,]+) hours", caution.because.replace("-", "−"))
    assert len(figures) == 2
    (now, frost_now), (then, frost_then) = figures
    assert int(then.replace("−", "-")) < int(now.replace("−", "-"))
    assert int(frost_then.replace(",", "")) > int(frost_now.replace(",", ""))
    assert re.search(r"below 20 °F, .*, for [\d,]+ hours$", caution.because)


def test_no_word_on_pipes_where_nothing_gets_colder() -> None:
    """Closed vents and leaky ducts keep it above freezing; cooling changes nothing."""
    summer = improve(thermostat__cooling="80 F")
    assert PIPES not in cautions_of(summer, crawlspace={"vents": "closed"})
    assert PIPES not in cautions_of(ducted=False)


def test_pipes_that_freeze_as_things_are() -> None:
    """Open vents, an insulated floor and no ducts: no option is needed."""
    cold = {
        "house": {"foundation": "vented crawlspace"},
        "crawlspace": {"vents": "open", "ground_cover": True},
    }
    assert "as things are" in cautions_of(ducted=False, **cold)[PIPES].text
    dry = {**cold, "crawlspace": {**cold["crawlspace"], "water_pipes": False}}
    assert PIPES not in cautions_of(ducted=False, **dry)


def test_pipes_that_nobody_knows_of() -> None:
    caution = cautions_of(HEATERS, crawlspace={"water_pipes": False})[PIPES]
    assert caution.text.endswith(
        "Look for water pipes, traps and hose taps under the floor before the work."
    )


def test_damp_over_bare_ground() -> None:
    assert "the ground is bare" in cautions_of(crawlspace={"ground_cover": False})[DAMP].because
    assert DAMP not in cautions_of()


def test_damp_where_vents_are_closed() -> None:
    closed = cautions_of(improve(crawlspace__vents="closed"))
    assert "vents are closed with “Better”" in closed[DAMP].because


def test_a_crawlspace_that_gets_damper() -> None:
    bare = {"floor_insulation": "R-0", "foundation": "vented crawlspace"}
    floor = improve(house__floor_insulation="R-30", today__ducts__condition="sealed and tested")
    ground = {"ground_cover": False, "vents": "half"}
    because = cautions_of(floor, house=bare, crawlspace=ground)[DAMP].because
    before, after = re.findall(r"(\d+) %", because)
    assert int(after) >= int(before) + 5
    assert because.endswith("with “Better”")


def test_floors_that_run_cooler_without_ducts() -> None:
    """A bare floor over the crawlspace feels the ducts that are no longer there."""
    bare = {"floor_insulation": "R-0", "foundation": "vented crawlspace"}
    caution = cautions_of(HEATERS, house=bare)[FLOORS]
    now, then = (int(figure) for figure in re.findall(r"(\d+) °F", caution.because))
    assert then < now
    better = improve(house__floor_insulation="R-30")
    assert FLOORS not in cautions_of(better, house=bare)
