"""Which facts of a case are uncertain, and how much: today's, and those an option replaces."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Literal, cast

from costcompare.case.constructions import belly, ceiling, floor, wall
from costcompare.case.ducts import flow_share
from costcompare.case.facts import Case, Fact, Home, Known, Option, System
from costcompare.case.paths import join
from costcompare.uncertainty.dials import Dial
from costcompare.uncertainty.distributions import Distribution
from costcompare.uncertainty.home_dials import HOME_DIALS
from costcompare.uncertainty.spreads import PLAIN, Spread, fact_spreads
from costcompare.uncertainty.system_dials import SYSTEM_DIALS
from costcompare.units import KindName, parse

WINTER, PRICE_GROWTH = "weather.winter", "money.price_growth"
"""The two facts that lie neither in the home nor in a system"""

Scope = Literal["home", "system", "weather", "money"]


@dataclass(frozen=True)
class UncertainFact:
    """One fact with its spread, as it is today and in the options that replace it.

    One standard normal number moves it in all of them at once.
    """

    name: str
    """Its row in the table of spreads"""
    path: str
    """Where the case says it"""
    words: str
    known: Known
    scope: Scope
    today: Distribution | None
    """None where today has nothing of the kind"""
    options: Mapping[str, Distribution] = field(default_factory=dict)
    """By the name of the option: only those that replace today's value"""

    @property
    def exact(self) -> bool:
        """True where nothing is uncertain."""
        both = (self.today, *self.options.values())
        return all(one is None or one.exact for one in both)

    def in_option(self, name: str) -> Distribution | None:
        """The distribution in an option: its own, else today's."""
        return self.options.get(name, self.today)


@dataclass(frozen=True)
class _Place:
    """What a statement is about: today's home or that of an option, and all that is said."""

    home: Home
    system: System
    facts: Mapping[str, Fact]


@dataclass(frozen=True)
class _Said:
    """A key of the case that may say a fact, and how its value [SI] becomes the dial's."""

    key: str
    measure: str
    convert: Callable[[float, _Place], float] = lambda value, _place: value


def _floor_from_nominal(nominal: float, place: _Place) -> float:
    if place.home.house.constructions.belly is not None:
        state = place.facts.get("house.belly")
        return belly(nominal, str(state.value) if state else "whole").resistance
    condition = place.facts.get("house.floor_insulation_condition")
    return floor(nominal, str(condition.value) if condition else "tight").resistance


def _share_of_airflow(flow: float, place: _Place) -> float:
    assert place.system.blower is not None
    return flow_share(flow, place.system.blower.airflow)


def _above_day(setting: float, place: _Place) -> float:
    return setting - place.home.thermostat.day


def _leaks(side: str) -> tuple[_Said, ...]:
    key = f"today.ducts.{side}_leakage"
    return (
        _Said(key, "fraction"),
        _Said(f"{key}_at_25_pa", "airflow", _share_of_airflow),
    )


SAID: Mapping[str, tuple[_Said, ...]] = {
    "house.air_leakage_at_50_pa": (
        _Said("house.air_leakage_at_50_pa", "airflow"),
        _Said("house.air_changes", "air_changes"),
    ),
    "house.wall_insulation": (
        _Said("house.wall_insulation", "resistance", lambda r, _: wall(r).resistance),
    ),
    "house.attic_insulation": (
        _Said("house.attic_insulation", "resistance", lambda r, _: ceiling(r).resistance),
    ),
    "house.floor_insulation": (_Said("house.floor_insulation", "resistance", _floor_from_nominal),),
    "thermostat.night": (_Said("thermostat.night", "temperature", _above_day),),
    "thermostat.wanted": (_Said("thermostat.wanted", "temperature", _above_day),),
    "ducts.supply_leakage": _leaks("supply"),
    "ducts.return_leakage": _leaks("return"),
    "ducts.insulation": (_Said("today.ducts.insulation", "resistance"),),
    "ducts.area": (_Said("today.ducts.supply_area", "area"),),
    "blower.airflow": (_Said("today.blower.airflow", "airflow"),),
    "blower.power": (_Said("today.blower.power", "power"),),
}
"""Facts that the case says under another key, in another measure, or under several keys"""
LAYERS = {
    "house.wall_insulation": "constructions.wall.layers",
    "house.attic_insulation": "constructions.ceiling.layers",
    "house.floor_insulation": "constructions.floor.layers",
    "crawlspace.wall": "constructions.crawlspace_wall.layers",
}
"""Where a build-up may be stated in place of an insulation"""
WORDS = {"crawlspace.vents"}
"""Facts that the case says in words: how they are known counts, not their value"""


def uncertain_facts(case: Case) -> tuple[UncertainFact, ...]:
    """The facts of a case that are not exact, in the order of the table of spreads."""
    found: dict[str, UncertainFact] = {}
    for dial in HOME_DIALS:
        found[dial.fact] = _fact(case, dial.fact, "home", _of_home(dial))
    for part in SYSTEM_DIALS:
        found[part.fact] = _fact(case, part.fact, "system", _of_system(part))
    found[WINTER] = _winter(case)
    found[PRICE_GROWTH] = _price_growth(case)
    return tuple(found[name] for name in fact_spreads() if not found[name].exact)


def _winter(case: Case) -> UncertainFact:
    """A winter that was asked for, or measured, is as it is."""
    spread, asked = fact_spreads()[WINTER], case.weather
    open_ = asked.winter == "typical" and asked.source != "measured"
    shift = spread.around(0.0, "guessed") if open_ else None
    return UncertainFact(WINTER, WINTER, spread.words, "guessed", "weather", shift)


def _price_growth(case: Case) -> UncertainFact:
    money, spread = case.money, fact_spreads()[PRICE_GROWTH]
    said: Known = next((f.known for f in case.facts if f.path == PRICE_GROWTH), "guessed")
    growth = spread.between(money.price_growth_low, money.price_growth, money.price_growth_high)
    return UncertainFact(PRICE_GROWTH, PRICE_GROWTH, spread.words, said, "money", growth)


def _of_home(dial: Dial[Home]) -> Callable[[_Place], float | None]:
    return lambda place: dial.read(place.home)


def _of_system(dial: Dial[System]) -> Callable[[_Place], float | None]:
    return lambda place: dial.read(place.system)


def _fact(
    case: Case, name: str, scope: Scope, read: Callable[[_Place], float | None]
) -> UncertainFact:
    spread = fact_spreads()[name]
    said = SAID.get(name, (_Said(name, spread.measure),))
    place = _Place(case.home, case.today, {fact.path: fact for fact in case.facts})
    value = read(place)
    known, today = _known(name, said, place), None
    if value is not None:
        today = _around(spread, value, said, place, known=known)
    own: dict[str, Distribution] = {}
    for option in case.options:
        there = _in_option(option, place)
        changed = read(there)
        if changed is None or changed == value:
            continue
        keys = said if value is None else _own_keys(said, option)
        own[option.name] = _around(spread, changed, keys, there)
        if today is None:
            known = _known(name, keys, there)
    return UncertainFact(name, said[0].key, spread.words, known, scope, today, own)


def _in_option(option: Option, place: _Place) -> _Place:
    """The option's place; what its ``set`` says counts before what the case says of today."""
    prefix = join(["options", option.name, "set"]) + "."
    changed = {prefix + fact.path: fact for fact in option.changed}
    return _Place(option.home, option.system, {**place.facts, **changed})


def _own_keys(said: Sequence[_Said], option: Option) -> tuple[_Said, ...]:
    """The keys under which an option says what it replaces: its ``set``, its own tables."""
    path = join(["options", option.name])
    in_set = [replace(one, key=f"{path}.set.{one.key}") for one in said]
    own = [
        replace(one, key=f"{path}.{one.key.removeprefix('today.')}")
        for one in said
        if one.key.startswith("today.")
    ]
    return (*in_set, *own)


def _known(fact: str, said: Sequence[_Said], place: _Place) -> Known:
    """How a fact is known; what an option sets without more counts as seen."""
    if fact == "equipment.capacity":
        units = [*place.system.heads, *filter(None, [place.system.ducted_unit])]
        return "measured" if all(unit.points for unit in units) else "seen"
    if fact in LAYERS:
        start = LAYERS[fact]
        layers = [one for path, one in place.facts.items() if path.startswith(start)]
        if layers:
            return layers[0].known
    stated = [place.facts[one.key] for one in said if one.key in place.facts]
    return stated[0].known if stated else "guessed"


def _around(
    spread: Spread,
    likely: float,
    said: Sequence[_Said],
    place: _Place,
    *,
    known: Known | None = None,
) -> Distribution:
    """The distribution round a likely value: as the case states it, else as the table has it."""
    one = next((one for one in said if one.key in place.facts), None)
    fact = place.facts[one.key] if one else None
    usual = spread.around(likely, known or (fact.known if fact else "seen"))
    if one is None or fact is None or spread.fact in WORDS:
        return usual
    low, high = (_converted(bound, one, fact, place) for bound in (fact.low, fact.high))
    if low is None and high is None:
        return usual
    return spread.between(
        usual.low if low is None else low, likely, usual.high if high is None else high
    )


def _converted(bound: float | None, said: _Said, fact: Fact, place: _Place) -> float | None:
    """A percentile as the case states it, in the dial's own SI measure."""
    if bound is None:
        return None
    if said.measure in PLAIN:
        return said.convert(float(bound), place)
    value = parse(f"{bound} {fact.unit}", cast(KindName, said.measure))
    return said.convert(value, place)
