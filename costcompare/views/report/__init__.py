"""What is left behind on the table: the report, the settings card, the contractor's sheet.

catalogue                 every fixed text, one object a language
pieces, choices, letters  what a document is made of; badges of choices; letters of the fonts
home_report               the report; its parts in home_why, home_running, home_rooms,
                          home_money, home_sure, look_out
card_sheet                the settings card
contractor_sheet          the contractor's sheet; its tables in contractor_machines and
                          contractor_money
charts                    line charts as SVG
typesetting, web_page     a document as tagged PDF, or as one HTML file
spreadsheet               months and rooms as CSV

``sweep`` holds today and the option at the settings of :func:`tried_settings`. Without
``made_on`` no date is shown or written into the file. Nothing reads the clock, the system's
fonts or the network: the same arguments give the same bytes.
"""

from __future__ import annotations

from datetime import date

from costcompare.case.facts import Case
from costcompare.comparison import Comparison
from costcompare.settings import SettingsCard
from costcompare.sizing import Sizing
from costcompare.thermostat import Sweep
from costcompare.views import numbers
from costcompare.views.report.card_sheet import card_document
from costcompare.views.report.contractor_sheet import contractor_document
from costcompare.views.report.home_report import home_document
from costcompare.views.report.home_rooms import tried_settings
from costcompare.views.report.pieces import Document
from costcompare.views.report.spreadsheet import export_csv
from costcompare.views.report.typesetting import pdf
from costcompare.views.report.web_page import html_page

__all__ = [
    "contractor_html",
    "contractor_pdf",
    "export_csv",
    "report_html",
    "report_pdf",
    "settings_card_html",
    "settings_card_pdf",
    "tried_settings",
]


def report_pdf(
    comparison: Comparison,
    case: Case,
    *,
    option: str | None = None,
    sweep: Sweep | None = None,
    made_on: date | None = None,
    units: numbers.Units = "customary",
) -> bytes:
    """The report as a tagged PDF (PDF/UA-1) of one or two pages.

    ``option`` is the one set against today, the first where none is named; KeyError when
    there is no such option.
    """
    with numbers.written(units, comparison.currency):
        document = home_document(comparison, case, option=option, sweep=sweep, made_on=made_on)
    return pdf(document, made_on=made_on)


def report_html(
    comparison: Comparison,
    case: Case,
    *,
    option: str | None = None,
    sweep: Sweep | None = None,
    made_on: date | None = None,
    units: numbers.Units = "customary",
) -> str:
    """The same as one HTML file that needs no network."""
    with numbers.written(units, comparison.currency):
        document = home_document(comparison, case, option=option, sweep=sweep, made_on=made_on)
    return html_page(document)


def settings_card_pdf(
    card: SettingsCard,
    case: Case,
    *,
    made_on: date | None = None,
    units: numbers.Units = "customary",
) -> bytes:
    """The settings card as a tagged PDF of one page."""
    return pdf(_card(card, case, made_on, units), made_on=made_on, pages=1)


def settings_card_html(
    card: SettingsCard,
    case: Case,
    *,
    made_on: date | None = None,
    units: numbers.Units = "customary",
) -> str:
    """The same as one HTML file."""
    return html_page(_card(card, case, made_on, units))


def contractor_pdf(
    comparison: Comparison,
    case: Case,
    sizing: Sizing,
    card: SettingsCard,
    *,
    made_on: date | None = None,
    units: numbers.Units = "customary",
) -> bytes:
    """The contractor's sheet of the card's option as a tagged PDF of one or two pages.

    Raises KeyError when the comparison or the sizing does not hold that option.
    """
    return pdf(_contractor(comparison, case, sizing, card, made_on, units), made_on=made_on)


def contractor_html(
    comparison: Comparison,
    case: Case,
    sizing: Sizing,
    card: SettingsCard,
    *,
    made_on: date | None = None,
    units: numbers.Units = "customary",
) -> str:
    """The same as one HTML file."""
    return html_page(_contractor(comparison, case, sizing, card, made_on, units))


def _card(card: SettingsCard, case: Case, made_on: date | None, units: numbers.Units) -> Document:
    with numbers.written(units, case.tariff.currency):
        return card_document(card, case.title, made_on=made_on)


def _contractor(
    comparison: Comparison,
    case: Case,
    sizing: Sizing,
    card: SettingsCard,
    made_on: date | None,
    units: numbers.Units,
) -> Document:
    installed_on = case.money.installed_on
    with numbers.written(units, comparison.currency):
        return contractor_document(
            comparison, sizing, card, installed_on=installed_on, made_on=made_on
        )
