"""The hourly years that a sizing needs, worked out side by side."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor

from costcompare.comparing import Progress
from costcompare.simulation import HourlyResult, doing_one

Job = Callable[[], HourlyResult]


class Runs:
    """Runs years and tells how far it is; ``expected`` is how many there will be in all."""

    def __init__(self, progress: Progress | None, expected: int) -> None:
        self._tell = progress or (lambda _text, _share: None)
        self._expected = max(expected, 1)
        self._done = 0

    def all(self, what: str, jobs: Sequence[Job]) -> list[HourlyResult]:
        """The years of these jobs in their order; the compiled year frees the interpreter."""
        years = []
        self._tell(doing_one(what), self._share())
        with ThreadPoolExecutor(max_workers=os.cpu_count() or 1) as pool:
            for year in pool.map(lambda job: job(), jobs):
                years.append(year)
                self._done += 1
                self._tell(what, self._share())
        return years

    def _share(self) -> float:
        return min(self._done / self._expected, 1.0)
