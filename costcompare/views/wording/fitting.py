"""What a fit to real bills says, in sentences computed from its result."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from costcompare.comparison import Band, Comparison
from costcompare.fitting.results import Finding, FittedBill, FittedFact, HouseFit
from costcompare.views import numbers
from costcompare.views.wording.naming import listed, plural

LITTLE_LEARNED = 0.1
"""A fact that the bills narrow by less is still as open as before (judgement)"""
HARDLY_MOVED = 0.25
"""[standard deviations] that a fact's middle moves without telling much (judgement)"""
ONE_IN_TEN = 1.2816
"""[standard errors] beyond which one bill in ten lies on either side, of a normal distribution"""
MOST_NAMED = 3


def heating_answer(fit: HouseFit) -> str:
    """The heating of a year with the bills, and without them."""
    count, said = len(fit.bills), fit.yearly_heating_said_kwh
    return (
        f"By what is said of the house, heating takes {numbers.about(_middle(said))} a year, in 8 "
        f"of 10 such homes between {_between(said)}. With "
        f"{numbers.count(count)} {plural(count, 'bill', 'bills')} it takes "
        f"{numbers.about(_middle(fit.yearly_heating_kwh))}, between "
        f"{_between(fit.yearly_heating_kwh)}."
    )


def assumption(fit: HouseFit) -> str:
    """That a comparison stands on a fitted house, for its assumptions."""
    count = len(fit.bills)
    return (
        f"The house is fitted to {numbers.count(count)} {plural(count, 'bill', 'bills')}: its "
        "uncertain facts are moved, each within what is known of it, until the model explains "
        "them; “costcompare fit” shows how far."
    )


def with_fit_told(comparison: Comparison, fit: HouseFit) -> Comparison:
    """The comparison of a fitted house with that among its assumptions."""
    return replace(comparison, assumptions=(*comparison.assumptions, assumption(fit)))


def explained_answer(fit: HouseFit) -> str:
    """What the bills show, what the house should show by what was said, and as it is fitted."""
    measured = sum(bill.measured_kwh for bill in fit.bills)
    said = sum(bill.said_kwh.likely or 0.0 for bill in fit.bills)
    fitted = sum(bill.computed_kwh.likely or 0.0 for bill in fit.bills)
    near = sum(_is_near(bill) for bill in fit.bills)
    count = len(fit.bills)
    if count == 1:
        one = "is near enough for" if near else "is farther off than one should expect of"
        return (
            f"Your bill shows {numbers.kwh(measured)}. By what is said of the house it should show "
            f"{numbers.about(numbers.kwh(said))}{_off(said, measured)}. The house fitted to it "
            f"comes to {numbers.about(numbers.kwh(fitted))}{_off(fitted, measured)}, which {one} "
            "a single bill."
        )
    return (
        f"Your {numbers.count(count)} bills show {numbers.kwh(measured)} together. By what is said "
        f"of the house they should show {numbers.about(numbers.kwh(said))}{_off(said, measured)}. "
        f"The house fitted to them comes to {numbers.about(numbers.kwh(fitted))}"
        f"{_off(fitted, measured)}; {numbers.count(near)} of {numbers.count(count)} bills lie as "
        "near to it as 8 of 10 should."
    )


def _is_near(bill: FittedBill) -> bool:
    apart = abs(bill.measured_kwh - (bill.computed_kwh.likely or 0.0))
    return apart <= ONE_IN_TEN * bill.error_kwh


def _off(computed: float, measured: float) -> str:
    """How far a computed figure is from the measured one; empty where nothing was measured."""
    if measured <= 0.0:
        return ""
    share = computed / measured - 1.0
    told = numbers.percent(abs(share))
    if told == numbers.percent(0.0):
        return ", the same"
    return f", {told} {'more' if share > 0.0 else 'less'}"


def bill_label(bill: FittedBill) -> str:
    """The days of a bill, short: ``Dec 18, 2025 to Jan 18, 2026``."""
    begins, ends = date.fromisoformat(bill.begins), date.fromisoformat(bill.ends)
    first, last = (f"{numbers.month_name(day.month)[:3]} {day.day}" for day in (begins, ends))
    if begins.year == ends.year:
        return f"{first} to {last}, {ends.year}"
    return f"{first}, {begins.year} to {last}, {ends.year}"


def has_moved(fact: FittedFact) -> bool:
    """Whether the bills changed what can be said of a fact."""
    return abs(fact.moved) >= HARDLY_MOVED or fact.learned >= LITTLE_LEARNED


def moved_answer(fit: HouseFit) -> str:
    """Which facts the bills moved most, and how many they hardly moved."""
    moved = [fact for fact in fit.facts if has_moved(fact)]
    still = len(fit.facts) - len(moved)
    if not moved:
        return "The bills agree with what was said: they hardly moved any fact of the house."
    named = listed([fact.words for fact in moved[:MOST_NAMED]])
    rest = ""
    if still:
        hardly = plural(still, "fact is hardly moved", "facts are hardly moved")
        rest = f" {numbers.count(still)} other {hardly}."
    return f"To explain the bills, the house changed most in {named}.{rest}"


def stands_answer(comparison: Comparison) -> str:
    """In one line, that a page stands on the fitted house; empty without bills."""
    count = comparison.fitted_bills
    if not count:
        return ""
    bills = plural(count, "real bill", "real bills")
    return (
        f"Every figure on this page stands on the house fitted to its {numbers.count(count)} "
        f"{bills}."
    )


def agreement_answer(fit: HouseFit) -> str:
    """How well measured and computed agree, against the limits of calibrated models."""
    off, scatter = (
        numbers.tenths_of_a_percent(abs(fit.mean_bias)),
        numbers.tenths_of_a_percent(fit.scatter),
    )
    said = f"The fitted house misses all bills together by {off} and single ones by {scatter}."
    if fit.within_limits is None:
        return f"{said} With fewer than twelve bills there is no limit to hold that against."
    verdict = "within" if fit.within_limits else "outside"
    return f"{said} That is {verdict} the limits of 5 % and 15 % for monthly calibrated models."


def weather_answer(fit: HouseFit) -> str:
    """Whether the bills met their own weather."""
    if fit.weather_is_of_the_bills:
        return f"The bills are held against the weather of their own days ({fit.weather})."
    return (
        f"The bills are held against a typical year ({fit.weather}), because the weather of their "
        "own days was not given: every bill counts for less. A file of that year’s weather "
        "narrows the range."
    )


def open_answer(fit: HouseFit) -> str:
    """What the bills cannot tell: the facts that they leave as open as before."""
    still = [fact.words for fact in fit.facts if fact.learned < LITTLE_LEARNED][:MOST_NAMED]
    if not still:
        return ""
    return (
        "Bills fix how much the house uses, less how it comes about: they leave nearly as open as "
        f"before {listed(still)}."
    )


def next_answer(fit: HouseFit) -> str:
    """Which bill to fetch next."""
    if fit.next_bill is None:
        return "No bill of another month would narrow the range by a twentieth."
    month = numbers.month_name(fit.next_bill.month)
    return (
        f"The bill to fetch next is one of {month}: it would make the range of the yearly heating "
        f"{numbers.percent(fit.next_bill.narrower)} narrower."
    )


def owner_answer(fit: HouseFit) -> str:
    """What a former owner kept the house at; empty for the family's own bills."""
    if not fit.former_owner:
        return ""
    day = next((fact for fact in fit.facts if fact.name == "thermostat.day"), None)
    if day is None or None in (day.fitted.low, day.fitted.likely, day.fitted.high):
        return ""
    low, likely, high = (numbers.degrees(value or 0.0) for value in _ends(day.fitted))
    return (
        f"Whoever paid these bills seems to have kept the house at {numbers.about(likely)} by day, "
        f"between {low} and {high} in 8 of 10 cases; a house of which rooms stood cold looks the "
        "same on its bills."
    )


def finding_sentence(finding: Finding) -> str:
    """One contradiction, with what usually lies behind it."""
    if finding.topic == "temperature":
        side = "warmer" if finding.deviations > 0.0 else "colder"
        return (
            f"The bills fit only if the house is kept clearly {side} than was said: ask again for "
            "the settings by day, by night and when nobody is home."
        )
    if finding.topic == "too little":
        return (
            f"The bill of {finding.subject} shows much less than the house should use: wood or "
            "another heat that is not on it, rooms closed off, days away, or an estimated read."
        )
    if finding.topic == "too much":
        return (
            f"The bill of {finding.subject} shows much more than the house should use: plug-in "
            "heaters, a guest, a new appliance, a fault, or an estimated read."
        )
    return f"The bills fit only if {finding.subject} is far from what was said: look at it again."


def fact_cells(fact: FittedFact) -> tuple[str, str, str, str]:
    """A fact, as said, as fitted, and how much narrower."""
    return (
        fact.words,
        _range(fact.said, fact.unit),
        _range(fact.fitted, fact.unit),
        numbers.percent(max(fact.learned, 0.0)),
    )


def fact_triples(fact: FittedFact) -> tuple[str, ...]:
    """A fact with its unit, as said and as fitted: likely, low, high of each; then what moved."""
    name = f"{fact.words}, {_unit(fact.unit)}" if fact.unit else fact.words
    numbers_of = [
        _value(value)
        for band in (fact.said, fact.fitted)
        for value in (band.likely or 0.0, band.low or 0.0, band.high or 0.0)
    ]
    what = "moved" if has_moved(fact) else "hardly moved"
    return (name, *numbers_of, numbers.percent(max(fact.learned, 0.0)), what)


def _range(band: Band, unit: str) -> str:
    low, likely, high = (_value(value) for value in _ends(band))
    return f"{likely} ({low} to {high}) {_unit(unit)}".rstrip()


def _value(number: float) -> str:
    """Three digits: what bills say of a fact holds no more."""
    return numbers.quantity(float(f"{number:.3g}"))


def _unit(unit: str) -> str:
    return unit.replace("degF", "°F").replace("degC", "°C")


def _ends(band: Band) -> tuple[float, float, float]:
    return band.low or 0.0, band.likely or 0.0, band.high or 0.0


def _middle(band: Band) -> str:
    return numbers.kwh(band.likely or 0.0)


def _between(band: Band) -> str:
    return f"{numbers.kwh(band.low or 0.0)} and {numbers.kwh(band.high or 0.0)}"
