"""The check after a winter in sentences, and the letter that tells it to the family."""

from __future__ import annotations

from collections.abc import Mapping

from costcompare.billing.promise import Promise
from costcompare.billing.second_winter import SecondWinter
from costcompare.billing.shortfall import Cause, CauseName
from costcompare.views import numbers
from costcompare.views.wording.naming import listed

ANOTHER_HOUSE = 0.10
"""Share by which bills and estimate may differ before it is said (judgement)"""

ESTIMATE = (
    "An estimate from bills and temperatures. Its range is statistics alone: people, habits and "
    "appliances that changed unsaid are outside it."
)
CAUSES: Mapping[CauseName, str] = {
    "warmer rooms": "The rooms are kept warmer than before",
    "new cooling": "There is cooling now that was not counted",
    "new use": "A car or other new use is on the bill",
    "higher base": "The use that follows no weather went up: hot water, appliances, people",
    "heating above the promise": "Heating takes more than was expected: look whether the old "
    "furnace or the strips still run, at filters, charge, settings and ducts",
    "coldest bills": "The coldest bills lie above the line: resistance heat may come on then",
    "estimated reads": "A read after the work was estimated: wait for the next one",
}


def saving_answer(check: SecondWinter) -> str:
    """The saving with the weather taken out, and its range."""
    less = "less" if check.saving_kwh >= 0.0 else "more"
    text = (
        f"Over {numbers.count(check.after_days)} days after the work the house used "
        f"{numbers.kwh(check.measured_kwh)}. Before it, the same weather would have taken about "
        f"{numbers.kwh(check.expected_kwh)}: {numbers.kwh(abs(check.saving_kwh))} {less}, "
        f"{numbers.percent(abs(check.saving_share))} of the whole use."
    )
    if check.low_kwh is None or check.high_kwh is None:
        return f"{text} How sure that is cannot be told."
    low, high = numbers.kwh(check.low_kwh), numbers.kwh(check.high_kwh)
    sure = (
        "That is shown: with 68 % confidence the uncertainty is at most half of it."
        if check.is_shown
        else "That is not shown: the uncertainty is too large for so small a difference."
    )
    return f"{text} Nine times in ten it lies between {low} and {high}. {sure}"


def year_saving_answer(check: SecondWinter) -> str:
    """The saving of a normal year, as lived in now."""
    weather = f" ({check.before_year.weather})" if check.before_year else ""
    return (
        f"In a normal year{weather} that is about {numbers.kwh(check.year_saving_kwh)}, as the "
        "home is lived in now."
    )


def habits_answer(check: SecondWinter) -> str:
    """What is known to have changed, and the saving without it; empty without any."""
    parts = [
        (check.warmer_kwh, "for warmer rooms"),
        (check.cooling_kwh, "for cooling"),
        (check.car_kwh, "for new use"),
    ]
    said = [f"{numbers.kwh(kwh)} {what}" for kwh, what in parts if abs(kwh) >= 5.0]
    if not said:
        return ""
    return (
        f"Living changed: {listed(said)}, warmth at what it took before. Lived in as before, the "
        f"saving would be about {numbers.kwh(check.same_habits_saving_kwh)}, in a normal year "
        f"{numbers.kwh(check.year_same_habits_kwh)}."
    )


def promise_answer(check: SecondWinter) -> str:
    """Promised against measured; empty without a promise."""
    promise = check.promise
    if promise is None or check.shortfall_kwh is None:
        return ""
    text = (
        f"Expected at the sale with “{promise.option}”, {promise.warmth}: about "
        f"{numbers.kwh(promise.saving_kwh)} a year{_dollars(promise)}. Measured: about "
        f"{numbers.kwh(check.year_saving_kwh)}.{_other_house(check, promise)}"
    )
    short = check.shortfall_kwh
    if check.is_within_uncertainty:
        return f"{text} Within the uncertainty of the check the two are the same."
    if short <= 0.0:
        return f"{text} {numbers.kwh(-short)} more than expected."
    return f"{text} {numbers.kwh(short)} short of it."


def _other_house(check: SecondWinter, promise: Promise) -> str:
    """Where the estimate began with another use than that of the bills."""
    if check.before_year is None:
        return ""
    bills, said = check.before_year.kwh, promise.before_kwh
    if abs(bills - said) <= ANOTHER_HOUSE * bills:
        return ""
    return (
        f" The estimate began with {numbers.kwh(said)} a year before the work; the bills say "
        f"{numbers.kwh(bills)}."
    )


def _dollars(promise: Promise) -> str:
    if promise.saving_usd is None:
        return ""
    if promise.low_usd is None or promise.high_usd is None:
        return f" ({numbers.dollars_a_year(promise.saving_usd)} at the prices of the sale)"
    low, high = numbers.dollars_a_year(promise.low_usd), numbers.dollars_a_year(promise.high_usd)
    return f" ({low} to {high} at the prices of the sale)"


def other_promise_answer(promise: Promise) -> str:
    """A promise at another warmth."""
    return (
        f"Expected at the sale with “{promise.option}”, {promise.warmth}: "
        f"about {numbers.kwh(promise.saving_kwh)} a year."
    )


def cause_answer(cause: Cause) -> str:
    """One cause with what it took."""
    how = "" if cause.is_known else " (from the bills alone)"
    if cause.kwh is None:
        return f"{CAUSES[cause.name]}."
    return f"{CAUSES[cause.name]}: about {numbers.kwh(cause.kwh)} a year{how}."


def letter(check: SecondWinter) -> tuple[str, ...]:
    """The letter to the family, a paragraph a line."""
    lines = [
        "Dear family,",
        "we said that we would look again after the work. This is what your own bills say, with "
        "the weather taken out.",
        saving_answer(check),
        year_saving_answer(check),
        habits_answer(check),
        promise_answer(check),
    ]
    if check.causes and not check.is_within_uncertainty:
        first = "; ".join(cause_answer(cause).rstrip(".") for cause in check.causes[:3])
        lines.append(f"Where it went, as far as the bills tell: {first}. We would like to look.")
    lines.append(ESTIMATE)
    return tuple(line for line in lines if line)
