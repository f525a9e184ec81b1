"""The rules of honest claims: they catch what they should, and nothing shown breaks them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache
from typing import Any

import pytest

from costcompare.case import Case, example_names, example_path, read_case, read_document
from costcompare.comparing import compare, weather_of
from costcompare.comparison import AS_LIVED, AS_WANTED, Comparison
from costcompare.ranges import NOTE as RANGES_NOTE
from costcompare.settings import settings
from costcompare.sizing import size
from costcompare.thermostat import sweep
from costcompare.views.batch_page import PAGE_NOTICE as BATCH_NOTICE
from costcompare.views.case_page import case_page
from costcompare.views.dashboard.filling_trade import trade_part
from costcompare.views.dashboard.six_parts import six_parts
from costcompare.views.dashboard.skeleton import skeleton
from costcompare.views.dashboard.visit.form import visit_form
from costcompare.views.dashboard.visit.intake import taken_in
from costcompare.views.dashboard.visit.money_rows import ROW_KINDS
from costcompare.views.dashboard.visit.questions import MONEY, STOPS
from costcompare.views.pages import (
    SWEEP_ESTIMATE,
    comparison_page,
    explanation_page,
    sweep_page,
)
from costcompare.views.report.card_sheet import card_document
from costcompare.views.report.catalogue import ENGLISH
from costcompare.views.report.contractor_sheet import contractor_document
from costcompare.views.report.home_report import home_document
from costcompare.views.sizing_page import ESTIMATE as SIZING_ESTIMATE
from costcompare.views.sizing_page import sizing_page
from costcompare.views.terminal import plain_lines
from costcompare.views.wording.asking import UNWEIGHED
from costcompare.views.wording.headline import headline
from costcompare.views.wording.naming import choosable
from costcompare.views.wording.notice import basis_answer, estimate_notice
from costcompare.views.wording.outdoors import tonight_answer
from costcompare.views.wording.payback import incentives_answer, payback_answer, savings
from costcompare.views.wording.rooms_plan import SCHEMATIC, plan_answer, room_label
from costcompare.views.wording.rules import RULES, broken_rules
from costcompare.views.wording.running import running_answer, summer_answer
from costcompare.views.wording.setting import night_answer, setting_answer
from costcompare.views.wording.settings_card import card_answers
from costcompare.views.wording.ways_to_pay import way_answer
from costcompare.views.wording.years_ahead import years_answers

PLANTED = (
    ("Your savings are guaranteed.", "nothing is guaranteed"),
    ("We guarantee 40 % less.", "nothing is guaranteed"),
    ("Save up to $900 a year.", "no upper end alone"),
    ("Bills are lower by up to half.", "no upper end alone"),
    ("Up to 60 % of homes see it.", "no upper end alone"),
    ("The thermostat is free.", "nothing is free"),
    ("Installed for free this month.", "nothing is free"),
    ("It pays for itself in three years.", "nothing pays for itself"),
    ("They pay for themselves.", "nothing pays for itself"),
    ("Eliminate your heating bill.", "nothing is eliminated"),
    ("You will save $900 a year.", "nobody is promised a saving"),
    ("It will surely save money.", "nobody is promised a saving"),
    ("A risk-free step.", "no promise"),
    ("It saves 40 % with ease.", "a share saved says of what"),
)
HONEST = (
    "Estimate, not a guarantee.",
    "The free heat of sun and people is a negative part.",
    "Keep it free of leaves; the wall is frost-free.",
    "The first tier goes up to 800 kWh a month.",
    "From $620 up to the roof.",
    "The parts of the saving add up to it.",
    "It saves about 40 % of the heating.",
    "The saving is likely $620 to $900 a year.",
    "Of the saving a quarter is taken as warmth.",
)


@pytest.mark.parametrize(("text", "rule"), PLANTED)
def test_what_is_planted_is_caught(text: str, rule: str) -> None:
    found = broken_rules(text)
    assert rule in [one.rule for one in found]
    assert all(one.found and one.instead for one in found)


@pytest.mark.parametrize("text", HONEST)
def test_what_is_honest_passes(text: str) -> None:
    assert broken_rules(text) == ()


def test_every_rule_has_a_planted_text() -> None:
    assert {rule.name for rule in RULES} == {rule for _, rule in PLANTED}


@cache
def example(name: str) -> tuple[Case, Comparison]:
    case = read_case(example_path(name))
    return case, compare(case)


def texts(value: Any) -> Iterator[str]:
    """Every text inside a result, a document, a page or a tree of elements."""
    if isinstance(value, str):
        yield value
    elif is_dataclass(value) and not isinstance(value, type):
        for field in fields(value):
            yield from texts(getattr(value, field.name))
    elif isinstance(value, dict):
        yield from texts(list(value.values()))
    elif isinstance(value, list | tuple):
        for item in value:
            yield from texts(item)
    elif hasattr(value, "to_plotly_json"):
        yield from texts(value.to_plotly_json()["props"])


def sentences(name: str) -> Iterator[str]:
    """Everything that a customer can read of an example: terminal, page, report."""
    case, comparison = example(name)
    installed_on = case.money.installed_on
    yield from plain_lines(comparison_page(comparison, installed_on=installed_on))
    yield from plain_lines(explanation_page(comparison))
    yield estimate_notice(comparison)
    for option in choosable(comparison):
        yield from texts(headline(comparison, option))
        yield from texts(home_document(comparison, case, option=option))
        yield tonight_answer(comparison, option)
        for warmth in (AS_LIVED, AS_WANTED):
            choice = comparison.choice(option, warmth)
            yield basis_answer(comparison, warmth)
            yield running_answer(comparison, option, warmth)
            yield summer_answer(comparison, option, warmth)
            yield payback_answer(comparison, option, warmth, installed_on)
            yield from texts(savings(choice, AS_LIVED))
            if choice.money is not None:
                yield incentives_answer(choice.money.incentives)
                yield from years_answers(choice.money, installed_on)
                yield from map(way_answer, choice.money.ways_to_pay)


@pytest.mark.parametrize("name", example_names())
def test_no_sentence_of_an_example_breaks_a_rule(name: str) -> None:
    found = list(sentences(name))
    assert len(found) > 200
    broken = [(one.rule, text) for text in found for one in broken_rules(text)]
    assert broken == []


def trade_sentences(name: str) -> Iterator[str]:
    """What is read with one option in hand: thermostat, sizing, card, contractor's sheet."""
    case, comparison = example(name)
    option = choosable(comparison)[0]
    weather = weather_of(case)
    kept = replace(case, options=tuple(o for o in case.options if o.name == option))
    sizing = size(kept, weather=weather)
    card = settings(case, option, weather=weather, sizing=sizing)
    wanted = case.home.thermostat.wanted
    swept = sweep(kept, [wanted - 2.0, wanted], weather=weather)
    yield from plain_lines(sweep_page(case.title, swept))
    for degf in swept.settings_degf:
        yield setting_answer(swept, option, degf, held=True)
        yield night_answer(swept, option, degf)
    yield from plain_lines(sizing_page(sizing, [card]))
    yield from card_answers(card)
    yield from texts(card_document(card, case.title))
    yield from texts(
        contractor_document(comparison, sizing, card, installed_on=case.money.installed_on)
    )
    yield from texts(trade_part(sizing, card))


def page_sentences(name: str) -> Iterator[str]:
    """The facts as a command and the visit form show them, and the plan of the rooms."""
    case, comparison = example(name)
    yield from plain_lines(case_page(case))
    document = read_document(example_path(name))
    yield from texts(visit_form(taken_in(document, document), case))
    for choice in comparison.choices:
        labels = [room_label(room, case.today) for room in choice.rooms]
        yield plan_answer(labels, choice.warmth)


@pytest.mark.parametrize("name", example_names())
def test_nor_does_one_of_the_trade_or_of_the_form(name: str) -> None:
    found = [*trade_sentences(name), *page_sentences(name)]
    assert len(found) > 300
    broken = [(one.rule, text) for text in found for one in broken_rules(text)]
    assert broken == []


def test_no_fixed_text_breaks_a_rule() -> None:
    fixed = [
        *(*texts(ENGLISH), *texts(six_parts()), *texts(skeleton())),
        *(SWEEP_ESTIMATE, SIZING_ESTIMATE, BATCH_NOTICE, RANGES_NOTE, SCHEMATIC, UNWEIGHED),
        *texts([*STOPS, MONEY]),
        *texts([[kind.one, list(kind.asks)] for kind in ROW_KINDS.values()]),
    ]
    assert len(fixed) > 100
    assert [(one.rule, text) for text in fixed for one in broken_rules(text)] == []


def test_the_notice_says_what_the_estimate_rests_on() -> None:
    _case, comparison = example("new_mover")
    notice = estimate_notice(comparison)
    for part in (
        "Estimate, not a guarantee.",
        "no real bills of this home",
        "a typical year at",
        "67 °F by day and 64 °F at night now, 69 °F by day and 66 °F at night as wanted",
        "“city residential (invented)”",
        "generic classes of machines",
        "Incentives checked on 2027-02-20, some not checked; unconfirmed ones are not in the",
        "After one heating season",
    ):
        assert part in notice
    basis = basis_answer(comparison, AS_WANTED)
    assert "69 °F by day and 66 °F at night" in basis
    assert "over 15 years" in basis
