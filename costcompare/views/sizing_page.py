"""What ``size`` prints: rooms, machines, electricity, settings, as blocks for a terminal."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.bill_heat_loss import BillHeatLoss
from costcompare.settings import SettingsCard
from costcompare.sizing import ChoiceFit, Sizing
from costcompare.views.terminal import Block, Heading, Page, Points, Sentences
from costcompare.views.wording.bill_heat_loss import (
    NO_BILLS,
    USED,
    both_losses_answer,
    meaning_answer,
)
from costcompare.views.wording.machines import (
    check_text,
    fit_answer,
    limits_answer,
    machine_answer,
    second_rooms_answers,
)
from costcompare.views.wording.naming import TODAY, capital
from costcompare.views.wording.panel import circuit_answer, panel_answer
from costcompare.views.wording.room_needs import (
    RANKING,
    changed_answer,
    conditions_answer,
    house_answer,
    ranking_answer,
    room_answer,
    smallest_note,
)
from costcompare.views.wording.settings_card import card_answers

ESTIMATE = (
    "An estimate from the facts of the case. It helps to choose and to check; it is no load "
    "calculation for a permit, no wiring plan and no commissioning sheet."
)


def sizing_page(
    sizing: Sizing, cards: Sequence[SettingsCard], by_bills: BillHeatLoss | None = None
) -> Page:
    """Room by room, machine by machine, then circuits, settings, questions and cautions.

    ``by_bills`` is the heat loss by the bills of the case, where it holds any.
    """
    design = sizing.design
    now, *changed = sizing.loads
    page: list[Block] = [
        Heading(sizing.title),
        Sentences(conditions_answer(design)),
        Heading("What the house needs, room by room"),
        Sentences(house_answer(now, design)),
        Points(tuple(room_answer(room, design) for room in now.rooms)),
        Sentences(smallest_note(sizing)),
    ]
    page += [Sentences(changed_answer(load, now, design)) for load in changed]
    page += _by_bills(by_bills, sizing)
    page += [
        Heading("Which rooms would gain most from a head"),
        Points(tuple(ranking_answer(room) for room in sizing.ranking)),
        Sentences(RANKING),
    ]
    for fit in sizing.choices:
        page += _machines(fit, sizing)
    limits = limits_answer(sizing.choices)
    page += [Sentences(limits)] if limits else []
    for fit in sizing.choices:
        page += _panel(fit)
    for card in cards:
        page += [Heading(f"What to set with “{card.option}”"), Points(card_answers(card))]
    if sizing.questions:
        page += [Heading("Ask on site"), Points(sizing.questions)]
    page += [
        Heading("Look out for"),
        Points(tuple(f"{c.topic}: {c.text} ({c.because})" for c in sizing.cautions)),
        Sentences(ESTIMATE),
    ]
    return page


def _by_bills(loss: BillHeatLoss | None, sizing: Sizing) -> list[Block]:
    if loss is None:
        return [Sentences(NO_BILLS)]
    said = [both_losses_answer(loss, sizing.design), meaning_answer(loss), USED]
    return [
        Heading("The same loss by the bills"),
        *(Sentences(text) for text in said if text),
    ]


def _machines(fit: ChoiceFit, sizing: Sizing) -> list[Block]:
    name = capital(TODAY) if fit.is_today else f"“{fit.name}”"
    points = [machine_answer(machine, sizing.design) for machine in fit.machines]
    points += second_rooms_answers(fit.second_rooms)
    points += [f"All heads together: {check_text(c)}." for c in fit.checks if not c.is_kept]
    return [
        Heading(f"{name} against the house"),
        Sentences(fit_answer(fit, sizing.design)),
        *([Points(tuple(points))] if points else []),
    ]


def _panel(fit: ChoiceFit) -> list[Block]:
    if fit.electricity is None:
        return []
    circuits = [circuit_answer(one, comes=False) for one in fit.electricity.freed]
    circuits += [circuit_answer(one, comes=True) for one in fit.electricity.added]
    return [
        Heading(f"Electricity with “{fit.name}”, for a licensed electrician"),
        Sentences(panel_answer(fit.electricity)),
        *([Points(tuple(circuits))] if circuits else []),
    ]
