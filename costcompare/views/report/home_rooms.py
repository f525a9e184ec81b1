"""Parts three and four of the report: the rooms, and the thermostat."""

from __future__ import annotations

import math

from costcompare.comparison import AS_WANTED, Choice, Comparison, RoomYear
from costcompare.thermostat import Sweep, SweepChoice
from costcompare.views import numbers
from costcompare.views.figures.setting import nearest
from costcompare.views.report.catalogue import Catalogue
from costcompare.views.report.charts import Line, Panel, line_chart
from costcompare.views.report.choices import Marks
from costcompare.views.report.pieces import Cell, Picture, Section, Table
from costcompare.views.wording.headline import of_100
from costcompare.views.wording.naming import in_a_sentence
from costcompare.views.wording.running import choices_at
from costcompare.views.wording.setting import night_answer, swept, wanted_answer
from costcompare.views.wording.warmth import coldest_day_answer, hot_answer, rooms_answer


def section(comparison: Comparison, name: str, words: Catalogue) -> Section:
    """Every room in a row, every choice in a column."""
    answers = (
        rooms_answer(comparison, name),
        coldest_day_answer(comparison, name),
        hot_answer(comparison, name),
    )
    marks = Marks(comparison, name, words)
    choices = (
        comparison.today,
        *(choice for choice in choices_at(comparison, AS_WANTED) if not choice.is_today),
    )
    chosen = comparison.choice(name, AS_WANTED)
    head = (
        Cell(words.room),
        *(Cell(mark=marks.of(choice)) for choice in choices),
        Cell(words.winter_now),
        Cell(words.winter_after.format(marks.of(chosen).letter)),
    )
    rows = tuple(
        (
            Cell(room.name),
            *(_warm(choice, room.name, marks) for choice in choices),
            Cell(_winter(room)),
            Cell(_winter(_room(chosen, room.name))),
        )
        for room in comparison.today.rooms
    )
    table = Table("rooms", words.rooms_table, head, rows, words.rooms_key)
    return Section("rooms", words.rooms, tuple(a for a in answers if a), (table,))


def _warm(choice: Choice, name: str, marks: Marks) -> Cell:
    room = _room(choice, name)
    if not room.wanted_hours:
        return Cell(numbers.MISSING)
    share = room.comfort_hours / room.wanted_hours
    tone = marks.of(choice).tone
    return Cell(of_100(share), bar=(0.0, share), tone=tone, strong=tone == "chosen")


def _room(choice: Choice, name: str) -> RoomYear:
    return next(room for room in choice.rooms if room.name == name)


def _winter(room: RoomYear) -> str:
    if math.isnan(room.winter_mean_degf):
        return numbers.MISSING
    return numbers.degrees(room.winter_mean_degf)


def setting_section(
    comparison: Comparison, name: str, sweep: Sweep | None, words: Catalogue
) -> Section:
    """Bill and warm hours over the thermostat's setting, and what a degree and a night bring."""
    if sweep is None:
        answers = (wanted_answer(comparison, name), words.no_sweep)
        return Section("thermostat", words.thermostat, answers)
    at = nearest(sweep.settings_degf, sweep.wanted_degf)
    answers = (
        _degree(comparison, name, sweep, words) or wanted_answer(comparison, name),
        night_answer(sweep, name, at),
    )
    picture = Picture(
        _setting_chart(comparison, name, sweep, words),
        words.setting_picture.format(" ".join(answer for answer in answers if answer)),
    )
    return Section(
        "thermostat",
        words.thermostat,
        tuple(answer for answer in answers if answer),
        pictures=(picture,),
    )


def _degree(comparison: Comparison, name: str, sweep: Sweep, words: Catalogue) -> str:
    """What one more degree costs with both; nothing where it is an end of the range."""
    at = nearest(sweep.settings_degf, sweep.wanted_degf)
    chosen = comparison.choice(name, AS_WANTED)
    prices = [choice.one_degree_usd(at) for choice in _both(sweep, name)]
    if None in prices or chosen.is_today:
        return ""
    now, later = (
        numbers.dollars_a_year(usd * numbers.shown_degree_degf())
        for usd in prices
        if usd is not None
    )
    return words.degree.format(numbers.degrees(at), now, later, in_a_sentence(chosen))


def _both(sweep: Sweep, name: str) -> tuple[SweepChoice, ...]:
    """Today and the option, or today alone where there is no option."""
    today = swept(sweep, None)
    chosen = swept(sweep, name)
    return (today,) if chosen.is_today else (today, chosen)


def _setting_chart(comparison: Comparison, name: str, sweep: Sweep, words: Catalogue) -> str:
    marks = Marks(comparison, name, words)
    bills, warmth = [], []
    for swept_choice in _both(sweep, name):
        years = sorted((y for y in swept_choice.years if y.held), key=lambda y: y.setting_degf)
        which = comparison.today.name if swept_choice.is_today else name
        mark = marks.of(comparison.choice(which, AS_WANTED))
        bills.append(Line(mark.letter, mark.tone, tuple(y.bill_usd for y in years)))
        warm = tuple(
            100.0 * y.warm_hours / y.wanted_hours if y.wanted_hours else 100.0 for y in years
        )
        warmth.append(Line(mark.letter, mark.tone, warm))
    at = nearest(sweep.settings_degf, sweep.wanted_degf)
    settings = sorted(sweep.settings_degf)
    panels = (
        Panel(words.chart_bill, tuple(bills), numbers.dollars, 84.0, least=0.0),
        Panel(words.chart_warm, tuple(warmth), numbers.count, 60.0, least=0.0, most=100.0),
    )
    ticks = tuple(
        numbers.degrees(setting) if number % 2 == 0 else ""
        for number, setting in enumerate(settings)
    )
    return line_chart(panels, ticks, marked=settings.index(at))


def tried_settings(wanted_degc: float) -> list[float]:
    """The settings [degC] that a report tries: whole steps of what is written, around the wanted.

    Steps are 2 °F, or 1 °C where figures are written in SI units.
    """
    step = 1.0 if numbers.in_si() else 2.0 / 1.8
    return [wanted_degc + number * step for number in range(-5, 4)]
