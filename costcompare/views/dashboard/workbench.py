"""Working out homes on the server, each set of facts once, whoever asks for it."""

from __future__ import annotations

import hashlib
import json
import threading
from collections import OrderedDict
from collections.abc import Callable, Mapping
from concurrent.futures import Future
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Generic, TypeVar

from costcompare import thermostat, units
from costcompare.case import case_from_document, override
from costcompare.case.facts import Case
from costcompare.comparing import compare, weather_of
from costcompare.comparison import Comparison
from costcompare.thermostat import Sweep
from costcompare.weather import Weather

T = TypeVar("T")

SETTINGS_DEGF = tuple(range(58, 75))
"""[degF] the thermostat settings of part four"""
KEPT_HOMES, KEPT_SWEEPS = 12, 60
"""How many results stay in memory (judgement: a visit changes a handful of facts)"""


@dataclass(frozen=True)
class Worked:
    """A home with its facts and what came out."""

    key: str
    document: Mapping[str, Any]
    case: Case
    weather: Weather
    comparison: Comparison


class Workbench:
    """The opened case, and everything worked out from it and from visitors' changes.

    Holds nothing about a visitor: results are kept by the facts that they come from.
    """

    def __init__(self, document: Mapping[str, Any], directory: Path | None = None) -> None:
        self._opened = dict(document)
        self._directory = directory
        self._worked: _Once[Worked] = _Once(KEPT_HOMES)
        self._sweeps: _Once[Sweep] = _Once(KEPT_SWEEPS)
        self.opened_key = key_of(self._opened)

    def changed(self, changes: Mapping[str, str]) -> dict[str, Any]:
        """The opened case with changes carried out; raises CaseError."""
        document = self._opened
        for path, text in changes.items():
            document = override(document, f"{path}={text}")
        return document

    def worked(self, changes: Mapping[str, str]) -> Worked:
        """The comparison for the opened case with changes; raises CostCompareError."""
        document = self.changed(changes)
        key = key_of(document)

        def work() -> Worked:
            case = case_from_document(document, directory=self._directory)
            weather = weather_of(case)
            return Worked(key, document, case, weather, compare(case, weather=weather))

        return self._worked.get(key, work)

    def swept(self, worked: Worked, name: str) -> Sweep:
        """Today and one choice at every thermostat setting; raises CostCompareError.

        Each choice is swept by itself and kept, so that the first one shows soon.
        """
        today = self._swept_alone(worked, worked.comparison.today.name)
        if name == worked.comparison.today.name:
            return today
        return replace(today, choices=today.choices + self._swept_alone(worked, name).choices)

    def _swept_alone(self, worked: Worked, name: str) -> Sweep:
        def work() -> Sweep:
            return thermostat.sweep(
                worked.case, _settings_degc(), only=(name,), weather=worked.weather
            )

        return self._sweeps.get(f"{worked.key} {name}", work)


def _settings_degc() -> list[float]:
    return [units.parse(f"{degf} F", "temperature") for degf in SETTINGS_DEGF]


def key_of(document: Mapping[str, Any]) -> str:
    """A short name that only equal documents share."""
    text = json.dumps(document, sort_keys=True, default=str)
    return hashlib.sha256(text.encode()).hexdigest()[:16]


class _Once(Generic[T]):
    """The last few results by key; a key asked for twice at the same time is worked out once."""

    def __init__(self, kept: int) -> None:
        self._kept = kept
        self._lock = threading.Lock()
        self._futures: OrderedDict[str, Future[T]] = OrderedDict()

    def get(self, key: str, work: Callable[[], T]) -> T:
        with self._lock:
            future = self._futures.get(key)
            mine = future is None
            if future is None:
                future = self._futures[key] = Future()
            self._futures.move_to_end(key)
            while len(self._futures) > self._kept:
                self._futures.popitem(last=False)
        if mine:
            try:
                future.set_result(work())
            except BaseException as error:
                with self._lock:
                    self._futures.pop(key, None)
                future.set_exception(error)
                raise
        return future.result()
