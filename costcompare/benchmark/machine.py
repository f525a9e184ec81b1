"""The machine that a benchmark ran on: its name, its memory, what its arithmetic can do."""

from __future__ import annotations

import os
import platform
import sys
import time
from dataclasses import dataclass
from pathlib import Path

import numba
import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled_whole

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


STEPS, TIMES, LENGTH = 32, 2000, 512


@compiled_whole
def _multiply_and_add(values: Floats, times: int) -> None:
    for _ in range(times):
        for i in range(values.shape[0]):
            value = values[i]
            for _step in range(STEPS):
                value = value * 0.999 + 0.001
            values[i] = value


def peak_flops() -> float:
    """Multiplications and additions a second of one core, best of five, measured [1/s]."""
    values = np.ones(LENGTH)
    _multiply_and_add(values, 1)
    best = np.inf
    for _ in range(5):
        begun = time.process_time()
        _multiply_and_add(values, TIMES)
        best = min(best, time.process_time() - begun)
    return 2.0 * STEPS * LENGTH * TIMES / best
