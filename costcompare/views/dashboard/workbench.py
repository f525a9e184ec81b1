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
from costcompare.case import case_from_document
from costcompare.case.facts import Case
from costcompare.comparing import compare, weather_of
from costcompare.comparison import Comparison
from costcompare.errors import CostCompareError
from costcompare.fitting import (
    FittedHouse,
    compare_fitted,
    fitted_to_own_bills,
    with_stated_thermostat,
)
from costcompare.ranges import MEMBERS, range_steps
from costcompare.settings import SettingsCard, settings
from costcompare.simulation import LANES
from costcompare.sizing import Sizing, size
from costcompare.thermostat import Sweep, SweepChoice
from costcompare.uncertainty import prior_draws
from costcompare.views.dashboard.going import Going
from costcompare.views.dashboard.visit.intake import taken_in
from costcompare.views.wording.fitting import with_fit_told
from costcompare.weather import Weather

T = TypeVar("T")

SETTINGS_DEGF = tuple(range(58, 75))
"""[degF] the thermostat settings of part four"""
SETTINGS_AT_ONCE = LANES // 2
"""How many settings are worked out before the browser is answered, held and set back: as many years
as are stepped side by side"""
GROUPS = tuple(
    SETTINGS_DEGF[first : first + SETTINGS_AT_ONCE]
    for first in range(0, len(SETTINGS_DEGF), SETTINGS_AT_ONCE)
)
KEPT_HOMES, KEPT_GROUPS = 40, 1200
"""How many results stay in memory, half a megabyte a home, eight kilobytes a group (judgement:
twenty visitors, each with two homes)"""


@dataclass(frozen=True)
class Worked:
    """A home with its facts and what came out."""

    key: str
    document: Mapping[str, Any]
    case: Case
    """As it is stated"""
    weather: Weather
    comparison: Comparison
    """Of the fitted house where the case holds bills"""
    fitted: FittedHouse | None = None

    @property
    def house(self) -> Case:
        """The case that the comparison is of."""
        return self.case if self.fitted is None else self.fitted.likely

    @property
    def set_as_stated(self) -> Case:
        """That house with its thermostats where its people say, for what sets them anyhow."""
        return self.case if self.fitted is None else with_stated_thermostat(self.house, self.case)


class Workbench:
    """The opened case, and everything worked out from it and from visitors' documents.

    Holds nothing about a visitor: results are kept by the facts that they come from.
    """

    def __init__(self, document: Mapping[str, Any], directory: Path | None = None) -> None:
        self.opened: dict[str, Any] = taken_in(document, document)
        self._directory = directory
        self._worked: _Once[Worked] = _Once(KEPT_HOMES)
        self._settings: _Once[Sweep] = _Once(KEPT_GROUPS)
        self._trades: _Once[tuple[Sizing, SettingsCard | None]] = _Once(KEPT_HOMES)
        self._ranges: _Once[Going] = _Once(KEPT_HOMES)
        self._first_answers = _Hurry()
        self.opened_key = key_of(self.opened)

    def worked(self, given: Any) -> Worked:
        """The comparison for a document that a browser gave; raises CostCompareError."""
        document = taken_in(given, self.opened)
        key = key_of(document)

        def work() -> Worked:
            case = case_from_document(document, directory=self._directory)
            weather = weather_of(case)
            with self._first_answers:
                fitted = fitted_to_own_bills(case, weather, members=MEMBERS)
                if fitted is None:
                    comparison = compare(case, weather=weather)
                else:
                    found = compare_fitted(fitted, weather=weather)
                    comparison = with_fit_told(found, fitted.report)
            return Worked(key, document, case, weather, comparison, fitted)

        return self._worked.get(key, work)

    def sweep_on(self, worked: Worked, name: str) -> int:
        """Work out the next few settings of today and one choice; how many are there now.

        A browser asks again until all are there, and stops asking when its visitor has moved
        on: so nothing is worked out that nobody waits for. Raises CostCompareError.
        """
        names = _today_and(worked, name)
        missing = [g for g in GROUPS if not all(self._has(worked, n, g) for n in names)]
        for group in missing[:1]:
            for one in names:
                self._first_answers.let_by()
                self._group(worked, one, group)
        return len(SETTINGS_DEGF) - sum(len(group) for group in missing[1:])

    def swept(self, worked: Worked, name: str) -> Sweep:
        """Today and one choice at every thermostat setting; raises CostCompareError."""
        parts = [
            [self._group(worked, one, group) for group in GROUPS]
            for one in _today_and(worked, name)
        ]
        return replace(
            parts[0][0],
            settings_degf=tuple(setting for part in parts[0] for setting in part.settings_degf),
            choices=tuple(_joined([part.choices[0] for part in of_one]) for of_one in parts),
        )

    def trade(self, worked: Worked, name: str) -> tuple[Sizing, SettingsCard | None]:
        """Today and one choice, sized, with what to set on it; raises CostCompareError.

        Of the house as it is stated: machines are held against its survey.
        """
        stated = worked.case
        options = tuple(option for option in stated.options if option.name == name)

        def work() -> tuple[Sizing, SettingsCard | None]:
            case = replace(stated, options=options)
            sizing = size(case, weather=worked.weather)
            if not options:
                return sizing, None
            return sizing, settings(stated, name, weather=worked.weather, sizing=sizing)

        return self._trades.get(f"{worked.key} {name}", work)

    def ranges_on(self, worked: Worked) -> tuple[float, Comparison | None]:
        """Work the ranges out a step further: the share that is done, at the end the comparison.

        Asked for in the same way as settings, and after them. Raises CostCompareError.
        """

        def begin() -> Going:
            fitted = worked.fitted
            draws = prior_draws(worked.case, MEMBERS) if fitted is None else fitted.draws
            return Going(
                range_steps(worked.comparison, worked.case, weather=worked.weather, draws=draws)
            )

        self._first_answers.let_by()
        return self._ranges.get(worked.key, begin).on()

    def ranged(self, given: Any) -> Comparison | None:
        """The comparison with ranges of a document where it is worked out already; never waits."""
        try:
            key = key_of(taken_in(given, self.opened))
        except CostCompareError:
            return None
        going = self._ranges.there(key)
        return None if going is None else going.whole

    def _has(self, worked: Worked, name: str, group: tuple[int, ...]) -> bool:
        return self._settings.has(f"{worked.key} {group} {name}")

    def _group(self, worked: Worked, name: str, group: tuple[int, ...]) -> Sweep:
        degc = [units.parse(f"{setting} F", "temperature") for setting in group]

        def work() -> Sweep:
            house = worked.set_as_stated
            swept = thermostat.sweep(house, degc, only=(name,), weather=worked.weather)
            return replace(swept, fitted_bills=worked.comparison.fitted_bills)

        return self._settings.get(f"{worked.key} {group} {name}", work)


def _today_and(worked: Worked, name: str) -> list[str]:
    """The names to sweep: today's, and that of the choice where it is another."""
    return list(dict.fromkeys((worked.comparison.today.name, name)))


def _joined(parts: list[SweepChoice]) -> SweepChoice:
    """One choice at every setting from its groups of settings: held ones first."""
    years = [year for part in parts for year in part.years]
    held = tuple(year for year in years if year.held)
    return replace(parts[0], years=held + tuple(year for year in years if not year.held))


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

    def has(self, key: str) -> bool:
        """Whether a result is there without waiting."""
        with self._lock:
            future = self._futures.get(key)
            return future is not None and future.done()

    def there(self, key: str) -> T | None:
        """A result that is there, without waiting and without working it out."""
        with self._lock:
            future = self._futures.get(key)
        return future.result() if future is not None and future.done() else None

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


class _Hurry:
    """First answers that are being worked out: what can wait lets them by."""

    LONGEST_WAIT_S = 5.0
    """[s] so that a steady stream of them holds nobody up for good (judgement)"""

    def __init__(self) -> None:
        self._changed = threading.Condition()
        self._count = 0

    def __enter__(self) -> None:
        with self._changed:
            self._count += 1

    def __exit__(self, *_error: object) -> None:
        with self._changed:
            self._count -= 1
            self._changed.notify_all()

    def let_by(self) -> None:
        """Wait until no first answer is being worked out."""
        with self._changed:
            self._changed.wait_for(lambda: self._count == 0, timeout=self.LONGEST_WAIT_S)
