"""The contractor's sheet: loads, machines, circuits, backup and the money of one option."""

from __future__ import annotations

from datetime import date

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.settings import SettingsCard
from costcompare.sizing import ChoiceFit, Circuit, HomeLoad, Sizing
from costcompare.views import numbers
from costcompare.views.report.catalogue import ENGLISH, Catalogue
from costcompare.views.report.contractor_machines import machine_table, outside_points
from costcompare.views.report.contractor_money import money_table
from costcompare.views.report.dates import subtitle
from costcompare.views.report.look_out import caution_section
from costcompare.views.report.pieces import Cell, Document, Figure, Point, Section, Table
from costcompare.views.wording.machines import fit_answer, second_rooms_answers
from costcompare.views.wording.naming import capital
from costcompare.views.wording.panel import panel_answer
from costcompare.views.wording.restating import restated
from costcompare.views.wording.room_needs import changed_answer, conditions_answer, house_answer
from costcompare.views.wording.settings_card import card_answers

CONTROL_SETTINGS = ("Strips", "Old furnace’s thermostat", "Room heaters", "Night")
"""Sentences of the settings card that concern backup, by how they begin"""


def contractor_document(
    comparison: Comparison,
    sizing: Sizing,
    card: SettingsCard,
    *,
    installed_on: date,
    made_on: date | None = None,
    words: Catalogue = ENGLISH,
) -> Document:
    """What a contractor needs of one option: that of the card.

    Raises KeyError when the comparison or the sizing does not hold it.
    """
    fit = sizing.choice(card.option)
    sections = (
        _needs(sizing, fit, words),
        _machines(sizing, fit, words),
        _panel(fit, words),
        _backup(card, words),
        _money(comparison, card.option, installed_on, words),
        Section(
            "ask", words.ask, points=tuple(Point("", restated(text)) for text in sizing.questions)
        ),
        caution_section(comparison, words),
    )
    return Document(
        language=words.language,
        paper="a4" if numbers.in_si() else "us-letter",
        overline=words.contractor,
        title=comparison.title,
        subtitle=subtitle(f"{card.option} · {comparison.weather.station}", made_on, words),
        lead="",
        figures=_figures(sizing, fit, words),
        sections=tuple(s for s in sections if s.answers or s.tables or s.points),
        notice=words.contractor_notice,
        footer=f"{comparison.title} · {words.estimate}",
        page_of=words.page_of,
    )


def _load(sizing: Sizing, fit: ChoiceFit) -> HomeLoad:
    """The home as the choice leaves it."""
    return next((load for load in sizing.loads if fit.name in load.choices), sizing.loads[0])


def _figures(sizing: Sizing, fit: ChoiceFit, words: Catalogue) -> tuple[Figure, ...]:
    cold = numbers.degrees(sizing.design.outdoor_degf)
    covered = fit.heat_pump_coverage
    most = fit.heat_pump_at_design_btu_h if covered is not None else fit.electric_heat_btu_h
    share = fit.backup_kwh / fit.heating_kwh if fit.heating_kwh > 0.0 else 0.0
    return (
        Figure(
            words.load_figure,
            numbers.btu_h(fit.load_btu_h),
            words.at_outdoors.format(cold),
            "whole",
        ),
        Figure(
            words.pump_figure if covered is not None else words.resistance_figure,
            numbers.btu_h(most),
            words.of_the_load.format(numbers.percent(covered))
            if covered is not None
            else words.at_outdoors.format(cold),
            "chosen",
        ),
        Figure(
            words.backup_figure,
            numbers.kwh(fit.backup_kwh),
            words.of_heating.format(numbers.percent(share), numbers.kwh(fit.heating_kwh)),
            "now",
        ),
    )


def _needs(sizing: Sizing, fit: ChoiceFit, words: Catalogue) -> Section:
    design, load = sizing.design, _load(sizing, fit)
    answers = [house_answer(sizing.loads[0], design), conditions_answer(design)]
    if load is not sizing.loads[0]:
        answers.insert(1, changed_answer(load, sizing.loads[0], design))
    unit = numbers.heat_unit()
    head = (
        words.room,
        words.area,
        words.heat_at.format(numbers.degrees(design.outdoor_degf), unit),
        words.heat_at.format(numbers.degrees(47.0), unit),
        words.falls_to,
        words.cooling_most.format(unit),
        words.smallest_head,
    )
    rows = tuple(
        (
            Cell(room.name),
            Cell(numbers.square_feet(room.floor_area_ft2)),
            Cell(numbers.heat(room.heat_btu_h), strong=True),
            Cell(numbers.heat(room.heat_at_47f_btu_h)),
            Cell(numbers.degrees(room.without_own_heat_degf)),
            Cell(numbers.heat(room.cooling_btu_h)),
            Cell(words.too_big if room.smallest_head_is_too_big else words.fits),
        )
        for room in load.rooms
    )
    table = Table("loads", words.loads_table, tuple(Cell(text) for text in head), rows)
    return Section("needs", words.needs, tuple(answers), (table,))


def _machines(sizing: Sizing, fit: ChoiceFit, words: Catalogue) -> Section:
    points = outside_points(fit, words)
    points += [Point("", text) for text in second_rooms_answers(fit.second_rooms)]
    tables = (machine_table(fit, sizing.design, words),) if fit.machines else ()
    answers = (fit_answer(fit, sizing.design),)
    return Section("machines", words.machines, answers, tables, points=tuple(points))


def _panel(fit: ChoiceFit, words: Catalogue) -> Section:
    if fit.electricity is None:
        return Section("panel", words.panel)
    rows = [_circuit(one, words.goes, words) for one in fit.electricity.freed]
    rows += [_circuit(one, words.comes, words) for one in fit.electricity.added]
    head = (words.circuit, words.goes_or_comes, words.amps, words.breaker, words.circuits)
    table = Table("circuits", words.circuits_table, tuple(Cell(text) for text in head), tuple(rows))
    answers = (panel_answer(fit.electricity),)
    return Section("panel", words.panel, answers, (table,) if rows else ())


def _circuit(circuit: Circuit, way: str, words: Catalogue) -> tuple[Cell, ...]:
    low, high = circuit.breaker_low_amps, circuit.breaker_high_amps
    breaker = numbers.MISSING
    if low is not None and high is not None:
        shown = (numbers.count(low), numbers.count(high))
        breaker = (
            f"{shown[0]} A" if low == high else words.from_to.format(shown[0], f"{shown[1]} A")
        )
    return (
        Cell(capital(restated(circuit.machine))),
        Cell(way),
        Cell(numbers.amperes(circuit.circuit_amps)),
        Cell(breaker),
        Cell(numbers.count(circuit.parts)),
    )


def _backup(card: SettingsCard, words: Catalogue) -> Section:
    points = []
    for answer in card_answers(card):
        head, _colon, text = answer.partition(": ")
        if head.startswith(CONTROL_SETTINGS):
            points.append(Point(head, capital(text)))
    return Section("backup", words.backup, points=tuple(points))


def _money(comparison: Comparison, name: str, installed_on: date, words: Catalogue) -> Section:
    choice = comparison.choice(name, AS_WANTED)
    if choice.money is None or choice.is_today:
        return Section("life", words.life_cycle)
    table = money_table(comparison, name, installed_on, words)
    return Section("life", words.life_cycle, tables=(table,))


def _questions(sizing: Sizing, words: Catalogue) -> Section:
    points = tuple(Point("", restated(question)) for question in sizing.questions)
    return Section("ask", words.ask, points=points)
