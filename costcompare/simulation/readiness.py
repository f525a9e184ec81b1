"""Whether the hourly model is compiled for this machine, and what to say while it is not."""

from __future__ import annotations

from typing import Any

from costcompare.physics.compiled import FOLDER
from costcompare.simulation.loop import step_year, step_years

PREPARING = "Preparing the hourly model for this machine, on the first run only"


def doing_one(what: str) -> str:
    """``what`` is being done with homes one by one, or what comes before it on the first run."""
    return what if _ready(step_year) else PREPARING


def doing_many(what: str) -> str:
    """The same with homes side by side, for which the model is compiled apart."""
    return what if _ready(step_years) else PREPARING


def _ready(kernel: Any) -> bool:
    """True where the kernel was called before, or its code lies on the disk."""
    if getattr(kernel, "signatures", True):  # without a compiler there is nothing to wait for
        return True
    return any(FOLDER.rglob(f"*.{kernel.__name__}-*.nbi"))
