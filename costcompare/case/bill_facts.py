"""What a case says of its real bills: a file of them, or the bills themselves."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Literal


@dataclass(frozen=True)
class StatedBill:
    """One bill as it is listed in a case."""

    begins: date
    """Day of the read that it starts with"""
    ends: date
    """Day of the read that it ends with"""
    kwh: float
    dollars: float | None = None
    read: Literal["actual", "estimated", "customer", "unknown"] = "unknown"


@dataclass(frozen=True)
class StatedBills:
    """A file of bills, or bills that are listed."""

    file: Path | None = None
    """As the case names it; relative to the folder of the case"""
    rows: tuple[StatedBill, ...] = ()
