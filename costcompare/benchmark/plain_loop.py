"""The same hours as a plain loop in Python over NumPy arrays, in a process of its own.

``python -m costcompare.benchmark.plain_loop CASE FIRST HOURS`` with NUMBA_DISABLE_JIT=1 runs the
functions of the hourly model uncompiled, those over whole arrays written anew with NumPy, and
prints what an hour takes and how often its small system was solved.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from costcompare.case import read_case
from costcompare.comparing import setpoints, weather_of
from costcompare.comparison import AS_LIVED
from costcompare.simulation import hour, loop, recording, surface_step
from costcompare.simulation.airflows import add_airing, add_doors
from costcompare.simulation.assembly import assemble
from costcompare.simulation.environment import environment
from costcompare.simulation.network import Chains, Model, Order
from costcompare.simulation.run import step_through
from costcompare.simulation.state import Conditions, Memory, Work

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class PlainLoop:
    """What an hour costs without a compiler."""

    seconds_an_hour: float
    solutions_an_hour: float
    """How often the small system of the air nodes was solved"""
    heating_kwh: float


def plain_loop(case_file: Path, first: int, hours: int) -> PlainLoop:
    """Run the stretch in a process that does not compile."""
    package = Path(__file__).parents[2]
    found = [str(package), *filter(None, [os.environ.get("PYTHONPATH")])]
    answer = subprocess.run(  # noqa: S603 - our own module, no shell
        [
            sys.executable,
            "-m",
            "costcompare.benchmark.plain_loop",
            case_file,
            str(first),
            str(hours),
        ],
        env=os.environ
        | {
            "NUMBA_DISABLE_JIT": "1",
            "OPENBLAS_NUM_THREADS": "1",
            "PYTHONPATH": os.pathsep.join(found),
        },
        check=True,
        capture_output=True,
        text=True,
    )
    return PlainLoop(**json.loads(answer.stdout))


def forward(chains: Chains, boundary: Floats, sun: Floats, m: Memory, dark: bool) -> None:
    """``surfaces_forward`` with NumPy."""
    del dark
    count = chains.face_first.shape[0]
    m.given[chains.outer_end] = chains.outer_value * boundary[chains.outer_column]
    m.given[chains.lit_end] = chains.lit_share * sun[chains.lit_room]
    first, last = m.given[:count], m.given[count:]
    m.face[:count] = chains.face_first * first + chains.through * last
    m.face[count:] = chains.through * first + chains.face_last * last
    for start, stop in zip(chains.row[:-1], chains.row[1:], strict=True):
        m.face[: stop - start] += chains.first[start:stop] * m.modes[start:stop]
        m.face[count : count + stop - start] += chains.last[start:stop] * m.modes[start:stop]
    node = _touched(chains, m)
    face = m.face[chains.touch_end]
    np.add.at(m.into_air, node, chains.touch_air_back * face)
    np.add.at(m.into_radiant, node, chains.touch_radiant_back * face)


def _touched(chains: Chains, m: Memory) -> NDArray[np.int64]:
    """The air node that each end touches."""
    return np.repeat(np.arange(len(m.node)), np.diff(chains.touch_row).astype(np.int64))


def finish(chains: Chains, m: Memory) -> None:
    """``surfaces_finish`` with NumPy."""
    count = chains.face_first.shape[0]
    m.drive[:] = m.given
    node = _touched(chains, m)
    m.drive[chains.touch_end] += chains.touch_air * m.node[node]
    m.drive[chains.touch_end] += chains.touch_radiant * m.radiant[node]
    for start, stop in zip(chains.row[:-1], chains.row[1:], strict=True):
        by_first = chains.first[start:stop] * m.drive[: stop - start]
        by_last = chains.last[start:stop] * m.drive[count : count + stop - start]
        m.modes[start:stop] = chains.decay[start:stop] * m.modes[start:stop] + by_first + by_last


def content(chains: Chains, m: Memory) -> float:
    """``surface_content`` with NumPy."""
    return float(chains.stored @ m.modes)


def reached(chains: Chains, m: Memory) -> None:
    """``faces_reached`` with NumPy."""
    count = chains.face_first.shape[0]
    moved = m.drive - m.given
    m.face[:count] += chains.face_first * moved[:count] + chains.through * moved[count:]
    m.face[count:] += chains.through * moved[:count] + chains.face_last * moved[count:]


def opened(conditions: Conditions, model: Model, work: Work) -> None:
    """``open_doorways`` with NumPy."""
    known = model.air.nodes
    work.base_flat[:] = work.still_flat
    work.base[:, known] = conditions.right[:known]
    add_doors(work.base, known, model.doors, work.doorways)
    outdoor = conditions.outside.temperature
    add_airing(work.base, known, model.air, outdoor, conditions.airing)


class Counter:
    """Solves the small system with NumPy, and counts."""

    def __init__(self) -> None:
        self.count = 0
        self.solved: Floats = np.zeros((0, 0))

    def eliminate(self, matrix: Floats, order: Order, inverse: Floats) -> None:
        """``eliminate`` with NumPy: all columns at once, no pivots kept."""
        del inverse
        self.count += 1
        known, places = matrix.shape[0], order.pivot.astype(int)
        self.solved = np.zeros((known, matrix.shape[1] - known))
        self.solved[places] = np.linalg.solve(
            matrix[np.ix_(places, places)], matrix[places, known:]
        )

    def substitute(self, matrix: Floats, order: Order, inverse: Floats, answer: Floats) -> None:
        """``substitute``: what :meth:`eliminate` has solved already."""
        del matrix, order, inverse
        answer[:] = self.solved

    def warmed(
        self, matrix: Floats, order: Order, inverse: Floats, node: int, rise: Floats
    ) -> None:
        """``warmed_by_a_watt`` with NumPy."""
        del inverse
        known, places = matrix.shape[0], order.pivot.astype(int)
        one = np.zeros(known)
        one[node] = 1.0
        rise[places] = np.linalg.solve(matrix[np.ix_(places, places)], one[places])


def main(case_file: str, first: int, hours: int) -> None:
    """Run the stretch and print what it took."""
    counter = Counter()
    for module, name, plain in (
        (hour, "eliminate", counter.eliminate),
        (hour, "substitute", counter.substitute),
        (hour, "open_doorways", opened),
        (recording, "warmed_by_a_watt", counter.warmed),
        (recording, "faces_reached", reached),
        (loop, "surface_content", content),
        (surface_step, "surface_content", content),
        (loop, "surfaces_forward", forward),
        (loop, "surfaces_finish", finish),
    ):
        assert hasattr(module, name)
        setattr(module, name, plain)
    case = read_case(Path(case_file))
    lived = setpoints(case.home, AS_LIVED)
    around = environment(weather_of(case))
    whole = assemble(case.home, case.today, around, lived, with_twin=False)
    order = np.arange(first, first + hours, dtype=np.uint64)
    year = whole.drive.year._replace(order=order, recorded_from=0)
    part = replace(whole, drive=whole.drive._replace(year=year))
    begun = time.process_time()
    record = step_through(part, explained=False)
    taken = time.process_time() - begun
    heating = float((record.main + record.strips).sum()) / 1000.0
    sys.stdout.write(json.dumps(vars(PlainLoop(taken / hours, counter.count / hours, heating))))


if __name__ == "__main__":
    main(sys.argv[1], int(sys.argv[2]), int(sys.argv[3]))
