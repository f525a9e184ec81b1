"""The uncompiled loop is the same algorithm: it finds the same heat."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from costcompare.benchmark.plain_loop import plain_loop
from costcompare.case import example_path, read_case
from costcompare.comparing import setpoints, weather_of
from costcompare.comparison import AS_LIVED
from costcompare.simulation.assembly import assemble
from costcompare.simulation.environment import environment
from costcompare.simulation.run import step_through

HOURS = 24


def test_the_plain_loop_finds_what_the_compiled_one_does() -> None:
    case = read_case(example_path("demo"))
    around = environment(weather_of(case))
    lived = setpoints(case.home, AS_LIVED)
    whole = assemble(case.home, case.today, around, lived, with_twin=False)
    year = whole.drive.year._replace(order=np.arange(HOURS, dtype=np.uint64), recorded_from=0)
    record = step_through(replace(whole, drive=whole.drive._replace(year=year)), explained=False)
    plain = plain_loop(example_path("demo"), 0, HOURS)
    assert plain.heating_kwh == pytest.approx((record.main + record.strips).sum() / 1e3, rel=1e-9)
