"""Every error that the package raises on purpose.

    CostCompareError
    ├── InputError          what the user gave is wrong: exit code 2, one Fault a line
    │   ├── CaseError       a case file, an override, a new case
    │   ├── WeatherError    a weather file or table, a place without a station
    │   ├── TariffError     a tariff that cannot price a year
    │   ├── BillsError      a file of bills, typed bills, temperatures that go with them
    │   └── OverwriteError      something would be overwritten without --force
    └── SimulationError     the model could not find an answer: exit code 1

An :class:`InputError` carries every fault that was found, not the first one.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True)
class Fault:
    """One thing that is wrong with an input, in words a person can act on."""

    path: str
    """Where: a dotted path in the case (``rooms.hall.floor_area``), a file, a file and a row."""
    rule: str
    """What must hold: ``must be more than 0 ft2``."""
    given: str = ""
    """What was given instead, as the user wrote it; empty when nothing was given."""
    instead: str = ""
    """What to write: ``for example "380 ft2"``."""

    def sentence(self) -> str:
        """The fault as one line of text."""
        given = f" (given: {self.given})" if self.given else ""
        instead = f" Write {self.instead}." if self.instead else ""
        return f"{self.path}: {self.rule}{given}.{instead}"


class CostCompareError(Exception):
    """The root of every error raised on purpose."""


class InputError(CostCompareError):
    """What the user gave cannot be used; ``faults`` holds every reason."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults: tuple[Fault, ...] = tuple(faults)
        super().__init__("\n".join(fault.sentence() for fault in self.faults))


class CaseError(InputError):
    """A case file, an override or a new case is wrong."""


class WeatherError(InputError):
    """A weather file or table is wrong, or no station lies near the place."""


class TariffError(InputError):
    """A tariff cannot price the year it is asked to price."""


class BillsError(InputError):
    """Bills, the temperatures beside them or a stored promise cannot be read or used."""


class OverwriteError(InputError):
    """A file is in the way and was not to be overwritten."""


class SimulationError(CostCompareError):
    """The hourly model found no answer; a fault of the program, not of the user."""
