"""The notice that stands with every estimate, and what a claim rests on, beside the claim."""

from __future__ import annotations

from costcompare.comparison import AS_LIVED, Comparison, FactLine, Warmth
from costcompare.views import numbers
from costcompare.views.wording.naming import listed, plural


def estimate_notice(comparison: Comparison) -> str:
    """Estimate, not a guarantee: what it is based on, what it hangs on, what is not in it."""
    rests = (_bills(comparison), _weather(comparison), _settings(comparison), _tariff(comparison))
    return (
        f"Estimate, not a guarantee. Based on: {'; '.join(rests)}; {_machines(comparison)}. "
        "What you save depends on the weather, on how warm you keep the house, on prices and on "
        f"the installation. {incentives_checked(comparison)} After one heating season, hold the "
        "real bills against it with the weather taken out."
    )


def basis_answer(comparison: Comparison, warmth: Warmth) -> str:
    """What the money of a choice is counted with, to stand beside it."""
    return (
        f"Counted with {_weather(comparison)}, {_setting(comparison, warmth)}, "
        f"{_tariff(comparison)}, moving by {_growth(comparison)} a year against other prices, over "
        f"{_years(comparison)} years."
    )


def incentives_checked(comparison: Comparison) -> str:
    """When the incentives were looked up, and that the open ones are not in the price."""
    lines = [
        line
        for choice in comparison.choices
        if choice.money is not None
        for line in choice.money.incentives
    ]
    if not lines:
        return "No incentive is counted."
    days = sorted({line.checked_on for line in lines if line.checked_on is not None})
    unchecked = any(line.checked_on is None for line in lines)
    checked = f"Incentives checked on {listed(days)}" if days else "Incentives not checked"
    if days and unchecked:
        checked += ", some not checked"
    return f"{checked}; unconfirmed ones are not in the price."


def house_answer(fitted_bills: int) -> str:
    """Whether the house behind the figures was fitted to real bills."""
    if not fitted_bills:
        return "The house is as it was said to be, held against no real bill."
    bills = plural(fitted_bills, "real bill", "real bills")
    return f"The house is fitted to {numbers.count(fitted_bills)} {bills} of this home."


def _bills(comparison: Comparison) -> str:
    count = comparison.fitted_bills
    if not count:
        return "no real bills of this home"
    return f"{numbers.count(count)} real {plural(count, 'bill', 'bills')} of this home"


def _weather(comparison: Comparison) -> str:
    weather = comparison.weather
    kinds = {"typical": "a typical year", "measured": "a measured year"}
    return f"{kinds.get(weather.source, 'a year from a file')} at {weather.station}"


def _settings(comparison: Comparison) -> str:
    now = _setting(comparison, AS_LIVED)
    wanted = _setting(comparison, "at the warmth you want")
    return f"{now} now, {wanted} as wanted"


def _setting(comparison: Comparison, warmth: Warmth) -> str:
    lived = warmth == AS_LIVED
    day = _degrees(comparison, "thermostat.day" if lived else "thermostat.wanted")
    night = _degrees(comparison, "thermostat.night" if lived else "thermostat.wanted_night")
    return f"{day} by day and {night} at night" if night != day else f"{day} day and night"


def _degrees(comparison: Comparison, path: str) -> str:
    fact = _fact(comparison, path)
    value = fact.value if fact is not None else None
    if isinstance(value, bool) or not isinstance(value, int | float):
        return numbers.MISSING
    return numbers.degrees(value)


def _tariff(comparison: Comparison) -> str:
    name = _fact(comparison, "tariff.name")
    called = f"“{name.value}”" if name is not None else "of electricity"
    return f"the prices {called} as the case states them"


def _machines(comparison: Comparison) -> str:
    points = any(".points" in fact.path for fact in comparison.facts)
    generic = "generic classes of machines, not a make"
    return (
        f"points from submittal sheets, and {generic}, where there are none" if points else generic
    )


def _growth(comparison: Comparison) -> str:
    fact = _fact(comparison, "money.price_growth")
    if fact is None or not isinstance(fact.value, int | float):
        return numbers.MISSING
    return numbers.rate(fact.value / 100.0 if fact.unit == "%" else fact.value)


def _years(comparison: Comparison) -> str:
    fact = _fact(comparison, "money.study_years")
    return numbers.MISSING if fact is None else str(fact.value)


def _fact(comparison: Comparison, path: str) -> FactLine | None:
    return next((fact for fact in comparison.facts if fact.path == path), None)
