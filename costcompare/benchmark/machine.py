"""The machine that a benchmark ran on: its name, its memory, what its arithmetic can do."""

from __future__ import annotations

import os
import platform
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

import numba
import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import OPTIONS, njit
from costcompare.simulation import LANES
from costcompare.simulation.lane_arrays import as_lanes

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Computer:
    """What the figures depend on."""

    processor: str
    cores: int
    system: str
    python: str
    numba: str
    numpy: str


def computer() -> Computer:
    """This machine."""
    return Computer(
        processor=_processor(),
        cores=os.cpu_count() or 1,
        system=platform.platform(terse=True),
        python=platform.python_version(),
        numba=numba.__version__,
        numpy=np.__version__,
    )


def _processor() -> str:
    try:
        lines = Path("/proc/cpuinfo").read_text(encoding="utf-8").splitlines()
    except OSError:
        lines = []
    names = [line.split(":", 1)[1].strip() for line in lines if line.startswith("model name")]
    return names[0] if names else platform.processor() or platform.machine()


def memory_mb() -> tuple[float, float]:
    """Memory of this process [MB]: resident now, and its peak; nan where it is not told."""
    resident = peak = float("nan")
    try:
        import resource  # noqa: PLC0415 - not on every system
    except ImportError:
        return resident, peak
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    peak = most / (1024.0**2 if sys.platform == "darwin" else 1024.0)
    try:
        pages = int(Path("/proc/self/statm").read_text(encoding="utf-8").split()[1])
    except OSError:
        return resident, peak
    return pages * os.sysconf("SC_PAGE_SIZE") / 1024.0**2, peak


CHAINS, STEPS = 8, 1_000_000
"""Sums that need not wait for each other, and how often each goes on"""


class _Chains(NamedTuple):
    values: Floats


@njit(cache=True, fastmath={"contract"}, **OPTIONS)  # type: ignore[untyped-decorator]
def _multiply_and_add(chains: _Chains, steps: int) -> None:
    values = as_lanes(chains).values
    a, b, c, d = values[0], values[1], values[2], values[3]
    e, f, g, h = values[4], values[5], values[6], values[7]
    for _ in range(steps):
        a, b, c, d = a * 0.999 + 0.001, b * 0.999 + 0.001, c * 0.999 + 0.001, d * 0.999 + 0.001
        e, f, g, h = e * 0.999 + 0.001, f * 0.999 + 0.001, g * 0.999 + 0.001, h * 0.999 + 0.001
    values[0], values[1], values[2], values[3] = a, b, c, d
    values[4], values[5], values[6], values[7] = e, f, g, h


def peak_flops() -> float:
    """Multiplications and additions a second of one core, best of five, measured [1/s].

    Eight numbers at a time, in registers, a product and a sum in one instruction where the
    processor has it: what the loop, which must fetch its numbers, cannot reach.
    """
    chains = _Chains(np.ones((CHAINS, LANES)))
    _multiply_and_add(chains, 1)
    best = np.inf
    for _ in range(5):
        begun = time.process_time()
        _multiply_and_add(chains, STEPS)
        best = min(best, time.process_time() - begun)
    return 2.0 * LANES * CHAINS * STEPS / best
