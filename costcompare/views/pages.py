"""What compare, explain and thermostat print, as blocks for a terminal."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from costcompare.comparison import (
    AS_LIVED,
    AS_WANTED,
    Choice,
    Comparison,
    MonthParts,
    Part,
    Warmth,
)
from costcompare.thermostat import SettingYear, Sweep, SweepChoice
from costcompare.views import numbers
from costcompare.views.money_page import money_blocks
from costcompare.views.ranges_page import how_sure
from costcompare.views.tariff_page import other_prices
from costcompare.views.terminal import Heading, Page, Points, Sentences, Table
from costcompare.views.under_floor import under_the_floor
from costcompare.views.wording.bill import adding_up, plain_part, worst_month
from costcompare.views.wording.naming import as_a_label
from costcompare.views.wording.notice import estimate_notice, house_answer
from costcompare.views.wording.payback import differences
from costcompare.views.wording.sureness import weather_answer

CENT = 0.01

SAVINGS = (
    "Saving now is against your bill as you live now; saving at the same warmth is against "
    "today’s system kept as warm. Payback and net savings count the saving now, in today’s value "
    "of money."
)

SWEEP_ESTIMATE = (
    "Estimate, not a guarantee. What you save depends on the weather, on how warm you keep the "
    "house, on prices and on the installation."
)


def comparison_page(
    comparison: Comparison,
    *,
    installed_on: date | None = None,
    outdoor_degf: float | None = None,
) -> Page:
    """``compare``: weather, choices, rooms, cautions, assumptions and how sure we are.

    ``installed_on`` is the day of the installation, ``outdoor_degf`` a temperature outdoors
    for which the cost of an hour was asked.
    """
    return [
        Heading(comparison.title),
        Sentences(weather_answer(comparison)),
        *_running(comparison, AS_LIVED),
        *_running(comparison, AS_WANTED),
        Sentences(SAVINGS),
        *money_blocks(comparison, installed_on, outdoor_degf),
        *other_prices(comparison),
        Heading("Which rooms stay warm, in hours of the year in which somebody wants them warm"),
        *_rooms([c for c in comparison.choices if c.is_today or c.warmth != AS_LIVED]),
        *under_the_floor([c for c in comparison.choices if c.is_today or c.warmth != AS_LIVED]),
        *_listed(
            "Look out for", [f"{c.topic}: {c.text} ({c.because})" for c in comparison.cautions]
        ),
        *_listed("What we assumed", comparison.assumptions),
        *how_sure(comparison),
        Sentences(estimate_notice(comparison)),
    ]


def _listed(heading: str, items: Sequence[str]) -> list[Heading | Points]:
    return [Heading(heading), Points(tuple(items))] if items else []


def _running(comparison: Comparison, warmth: Warmth) -> list[Heading | Table]:
    """What each choice costs to run at one warmth, and when the money comes back."""
    columns = ("choice", "bill a year", "saving now", *_WORDS[warmth], "warm hours", *_MONEY)
    today = comparison.today
    rows = tuple(
        (as_a_label(choice), *_bill_cells(choice), _warm_hours(choice), *_money_cells(choice))
        for choice in comparison.choices
        if choice.warmth == warmth
    )
    heading = f"What each choice costs to run, {warmth}"
    if warmth != today.warmth:
        heading += f" (now {numbers.dollars_a_year(today.annual.bill_usd)})"
    return [Heading(heading), Table(columns, rows)]


_WORDS: dict[Warmth, tuple[str, ...]] = {AS_LIVED: (), AS_WANTED: ("saving at the same warmth",)}
_MONEY = ("price", "payback", "net savings")


def _bill_cells(choice: Choice) -> tuple[str, ...]:
    """The bill, the saving now and, at the warmth you want, the saving at the same warmth."""
    bill = numbers.dollars_a_year(choice.annual.bill_usd)
    written = differences(choice)
    now = numbers.MISSING if written is None else numbers.dollars_a_year(written.first_year)
    if not _WORDS[choice.warmth]:
        return bill, now
    same = None if written is None or choice.is_today else written.same_warmth
    return bill, now, numbers.MISSING if same is None else numbers.dollars_a_year(same)


def _warm_hours(choice: Choice) -> str:
    wanted = sum(room.wanted_hours for room in choice.rooms)
    warm = sum(room.comfort_hours for room in choice.rooms)
    return numbers.percent(warm / wanted) if wanted else numbers.MISSING


def _money_cells(choice: Choice) -> tuple[str, str, str]:
    """Price less confirmed incentives, discounted payback, net savings."""
    money = choice.money
    if money is None or choice.is_today:
        return (numbers.MISSING,) * 3
    back = money.discounted_payback_years
    studied = len(money.yearly_position_usd) - 1
    return (
        numbers.dollars(money.installed_cost_usd - money.incentives_usd),
        f"not in {studied} years" if back is None else numbers.years(back),
        numbers.dollars_a_year(money.net_savings_usd),
    )


def _rooms(choices: Sequence[Choice]) -> list[Heading | Table]:
    """A small table for each choice, under its name and warmth."""
    blocks: list[Heading | Table] = []
    for choice in choices:
        blocks += [Heading(f"{as_a_label(choice)}, {choice.warmth}"), _room_table(choice)]
    return blocks


def _room_table(choice: Choice) -> Table:
    columns = ("room", "hours wanted", "warm", "too cold", "too hot", "winter mean", "coldest")
    rows = tuple(
        (
            room.name,
            numbers.count(room.wanted_hours),
            numbers.count(room.comfort_hours),
            numbers.count(room.cold_hours),
            numbers.count(room.hot_hours),
            numbers.degrees(room.winter_mean_degf) if room.wanted_hours else numbers.MISSING,
            numbers.degrees(room.minimum_temperature_degf),
        )
        for room in choice.rooms
    )
    return Table(columns, rows)


def explanation_page(comparison: Comparison) -> Page:
    """``explain``: the parts of today's year and of its worst month, to the cent."""
    month = worst_month(comparison)
    by_month = {entry.month: entry for entry in comparison.explanation_by_month}
    return [
        Heading(comparison.title),
        Sentences(weather_answer(comparison)),
        Heading("Where a year’s money goes, as you live now"),
        _parts(comparison.explanation),
        *_worst_month(by_month.get(month)),
        Sentences(
            "Each part is priced at the average energy price of its month, so the parts add up "
            "to the bill. What a cure saves is the difference of two bills, never one of these "
            "parts: see costcompare compare."
        ),
        *_cross_check(comparison),
        Sentences(estimate_notice(comparison)),
    ]


def _cross_check(comparison: Comparison) -> list[Sentences]:
    """What the ducts deliver, by the hourly model and by the standard's steady formula."""
    ducts = comparison.today.ducts
    if ducts is None:
        return []
    hourly = numbers.percent(ducts.delivery_effectiveness)
    steady = numbers.percent(ducts.standard_delivery_effectiveness)
    return [
        Sentences(
            f"A cross-check of the ducts: hour by hour {hourly} of the heat put into them comes "
            f"out of the registers; the steady formula of the standard for duct efficiency gives "
            f"{steady} at the winter’s mean temperatures."
        )
    ]


def _worst_month(entry: MonthParts | None) -> list[Heading | Table]:
    if entry is None:
        return []
    name = numbers.month_name(entry.month)
    return [Heading(f"Where the money goes in the worst month, {name}"), _parts(entry.parts)]


def _parts(parts: Sequence[Part]) -> Table:
    """The parts and their sum; cents are shared out so that the shown lines add up."""
    cents = adding_up([part.usd for part in parts], CENT)
    rows = [
        (plain_part(part.part), numbers.count(part.kwh), numbers.dollars_and_cents(usd))
        for part, usd in zip(parts, cents, strict=True)
    ]
    total = sum(part.usd for part in parts)
    energy = sum(part.kwh for part in parts)
    rows.append(("The bill", numbers.count(energy), numbers.dollars_and_cents(total)))
    return Table(("part", "kWh", "dollars"), tuple(rows))


def sweep_page(title: str, sweep: Sweep) -> Page:
    """``thermostat``: for each choice the bill and the warmth at every setting."""
    page: list[Heading | Sentences | Table] = [Heading(title)]
    for choice in sweep.choices:
        page += [Heading(choice.name), _settings(choice)]
    back = numbers.degrees_of_difference(sweep.setback_degf)
    page.append(
        Sentences(
            f"Held is the same setting day and night; set back is {back} lower in the hours "
            f"{sweep.night_hours}. Warm hours are counted against the "
            f"{numbers.degrees(sweep.wanted_degf)} that you want, whatever the setting."
        )
    )
    page.append(Sentences(f"{house_answer(sweep.fitted_bills)} {SWEEP_ESTIMATE}"))
    return page


def _settings(choice: SweepChoice) -> Table:
    columns = (
        "setting",
        "held: a year",
        "worst month",
        "one more degree",
        "warm hours",
        "set back: a year",
        "set back: warm hours",
    )
    held = {year.setting_degf: year for year in choice.years if year.held}
    lowered = {year.setting_degf: year for year in choice.years if not year.held}
    rows = tuple(
        (
            numbers.degrees(setting),
            numbers.dollars_a_year(year.bill_usd),
            f"{numbers.dollars_a_month(year.worst_month_usd)} in "
            f"{numbers.month_name(year.worst_month)}",
            _one_degree(choice, setting),
            _warm(year),
            *_set_back(lowered.get(setting)),
        )
        for setting, year in held.items()
    )
    return Table(columns, rows)


def _one_degree(choice: SweepChoice, setting: float) -> str:
    usd = choice.one_degree_usd(setting)
    return numbers.MISSING if usd is None else numbers.dollars_a_year(usd)


def _set_back(year: SettingYear | None) -> tuple[str, str]:
    if year is None:
        return numbers.MISSING, numbers.MISSING
    return numbers.dollars_a_year(year.bill_usd), _warm(year)


def _warm(year: SettingYear) -> str:
    return numbers.percent(year.warm_hours / year.wanted_hours if year.wanted_hours else 1.0)
