"""The leave-behind: what one home's comparison says, part by part, as finished texts."""

from __future__ import annotations

from datetime import date

from costcompare.case.facts import Case
from costcompare.comparison import Comparison
from costcompare.thermostat import Sweep
from costcompare.views import numbers
from costcompare.views.report import home_money, home_rooms, home_running, home_sure, home_why
from costcompare.views.report.catalogue import ENGLISH, Catalogue
from costcompare.views.report.dates import subtitle
from costcompare.views.report.look_out import caution_section
from costcompare.views.report.pieces import Document, Figure
from costcompare.views.wording.headline import headline
from costcompare.views.wording.naming import choosable


def home_document(
    comparison: Comparison,
    case: Case,
    *,
    option: str | None = None,
    sweep: Sweep | None = None,
    made_on: date | None = None,
    words: Catalogue = ENGLISH,
) -> Document:
    """The report of a home: today against one option, and all choices side by side.

    ``option`` is the one set against today, the first where none is named; KeyError when
    there is no such option. ``sweep`` holds today and that option; without it the part of
    the thermostat says what is known without it.
    """
    name = choosable(comparison)[0] if option is None else option
    said = headline(comparison, name)
    return Document(
        language=words.language,
        paper="a4" if numbers.in_si() else "us-letter",
        overline=words.report,
        title=comparison.title,
        subtitle=subtitle(comparison.weather.station, made_on, words),
        lead=said.lead,
        figures=(
            Figure(words.a_year_now, numbers.about(said.now), said.now_note, "now"),
            Figure(words.a_year_after, numbers.about(said.after), said.after_note, "chosen"),
            Figure(
                words.warm_hours,
                words.warm_from_to.format(said.warm_now, said.warm_after),
                said.warm_note,
                "whole",
            ),
        ),
        sections=(
            home_why.section(comparison, case, words),
            home_running.section(comparison, name, words),
            home_sure.first_section(comparison, name, words),
            home_sure.section(comparison, name, words),
            home_rooms.section(comparison, name, words),
            home_rooms.setting_section(comparison, name, sweep, words),
            home_money.section(comparison, case, name, words),
            caution_section(comparison, words),
        ),
        notice=words.notice,
        footer=f"{comparison.title} · {words.estimate}",
        page_of=words.page_of,
        new_page="rooms",
    )
