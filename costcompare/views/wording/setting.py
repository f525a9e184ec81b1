"""Part four: if you move the thermostat."""

from __future__ import annotations

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.thermostat import Sweep, SweepChoice
from costcompare.views import numbers
from costcompare.views.wording.naming import TODAY, capital


def thermostat_words(sweep: Sweep, setting_degf: float, *, held: bool) -> str:
    """How the thermostat is set, as it stands after a comma."""
    day = f"set to {numbers.degrees(setting_degf)}"
    if held:
        return f"{day} day and night"
    return f"{day} and {numbers.degrees(setting_degf - sweep.setback_degf)} at night"


def setting_answer(sweep: Sweep, name: str, setting_degf: float, *, held: bool) -> str:
    """The bills of today's system and of the choice at one setting, in a sentence."""
    chosen = swept(sweep, name)
    bills = [
        numbers.dollars_a_year(choice.at(setting_degf, held=held).bill_usd)
        for choice in (swept(sweep, None), chosen)
    ]
    set_so = capital(thermostat_words(sweep, setting_degf, held=held))
    return _both_bills(set_so, bills, name, alone=chosen.is_today)


def wanted_answer(comparison: Comparison, name: str) -> str:
    """The bills of today's system and of the choice at the wanted warmth, in a sentence."""
    today = comparison.choice(comparison.today.name, AS_WANTED)
    chosen = comparison.choice(name, AS_WANTED)
    bills = [numbers.dollars_a_year(choice.annual.bill_usd) for choice in (today, chosen)]
    return _both_bills(capital(AS_WANTED), bills, chosen.name, alone=chosen.is_today)


def degree_text(choice: SweepChoice, setting_degf: float) -> str:
    """What one more degree costs a year; a dash where the setting is an end of the range."""
    usd = choice.one_degree_usd(setting_degf)
    return "–" if usd is None else numbers.dollars_a_year(usd)


def night_answer(sweep: Sweep, name: str, setting_degf: float) -> str:
    """What turning down at night does to both bills, in a sentence."""
    today, chosen = swept(sweep, None), swept(sweep, name)
    lower = numbers.degrees_of_difference(sweep.setback_degf)
    parts = [f"{_night_effect(today, setting_degf)} with {TODAY}"]
    if not chosen.is_today:
        parts.append(f"{_night_effect(chosen, setting_degf)} with “{chosen.name}”")
    return f"Turning down by {lower} at night ({sweep.night_hours}) {' and '.join(parts)}."


def swept(sweep: Sweep, name: str | None) -> SweepChoice:
    """Today's system for None, else the choice of that name; KeyError when there is none."""
    for choice in sweep.choices:
        if choice.is_today if name is None else choice.name == name:
            return choice
    raise KeyError(name)


def _both_bills(set_so: str, bills: list[str], name: str, *, alone: bool) -> str:
    other = "" if alone else f" and “{name}” about {bills[1]}"
    return f"{set_so}, {TODAY} costs about {bills[0]} a year{other}."


def _night_effect(choice: SweepChoice, setting_degf: float) -> str:
    held = choice.at(setting_degf, held=True).bill_usd
    lowered = choice.at(setting_degf, held=False).bill_usd
    change = lowered - held
    if numbers.rounds_to_nothing(change):
        return "changes the bill by next to nothing"
    amount = numbers.dollars_a_year(abs(change))
    return f"takes about {amount} a year off" if change < 0 else f"adds about {amount} a year"
