"""Long work that goes on a step at a time, whoever asks for the next."""

from __future__ import annotations

import threading

from costcompare.comparison import Comparison
from costcompare.ranges.steps import Steps


class Going:
    """Ranges that are being worked out, whoever asks for the next step."""

    def __init__(self, steps: Steps[Comparison]) -> None:
        self._steps = steps
        self._lock = threading.Lock()
        self._share = 0.0
        self._whole: Comparison | None = None

    @property
    def whole(self) -> Comparison | None:
        """The comparison with ranges where it is there; never waits for a step."""
        return self._whole

    def on(self) -> tuple[float, Comparison | None]:
        """Take the next step: the share that is done, and at the end the comparison."""
        with self._lock:
            if self._share < 1.0 or self._whole is None:
                try:
                    # The last step is done only when the ranges are put together.
                    self._share = min(next(self._steps), 0.99)
                except StopIteration as end:
                    self._share, self._whole = 1.0, end.value
            return self._share, self._whole
