"""A tiny benchmark: its ratios are of the same home, and say what they should."""

from __future__ import annotations

import math
from functools import cache

import pytest

from costcompare.benchmark import Benchmark, benchmark, measuring
from costcompare.case import example_path
from costcompare.views.benchmark_page import benchmark_page
from costcompare.views.terminal import Table


@cache
def found() -> Benchmark:
    told: list[float] = []
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(measuring, "BEST_OF", 1)
        patch.setattr(measuring, "PLAIN_HOURS", 6)
        one = benchmark(
            example_path("demo"),
            members=(1, 3),
            integrated_days=4,
            progress=lambda _text, share: told.append(share),
        )
    assert told == sorted(told)
    return one


def test_the_integrator_agrees_on_the_heating() -> None:
    """Half a per cent of the heating is what the hourly step and the thermostat may differ."""
    assert abs(found().heating_difference_to_solve_ivp) < 0.005


def test_the_same_digits_on_any_number_of_threads() -> None:
    assert found().same_digits


def test_every_figure_is_there() -> None:
    one = found()
    assert [(e.members, e.threads) for e in one.ensembles] == [(1, 1), (1, 2), (3, 1), (3, 2)]
    assert one.growth[0].what == "today"
    assert len(one.growth) == 6 + len(measuring.BEDROOMS)
    rooms = [growth.count for growth in one.growth[6:]]
    assert rooms == sorted(set(rooms))
    assert 1.0 <= one.solutions_an_hour < 10.0
    for name in ("times_faster_than_solve_ivp", "times_faster_than_numpy_loop", "share_of_peak"):
        assert math.isfinite(getattr(one, name))
        assert getattr(one, name) > 0.0
    assert one.machine.processor


def test_the_page_shows_what_was_measured() -> None:
    table = next(block for block in benchmark_page(found()) if isinstance(block, Table))
    shown = dict(table.rows)
    assert shown["the same digits on two threads"] == "yes"
    assert shown["two threads against one"] == f"{found().thread_speedup:.2f} times"
