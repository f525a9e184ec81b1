"""What is left behind on the table: the report of a home, as PDF, as HTML, as tables.

pieces, choices, letters     what a document is made of; badges of choices; letters of the fonts
catalogue                    every fixed text, one object a language
home_report                  the report, with its parts in home_why, home_running, home_rooms,
                             home_money, home_sure
charts                       line charts as SVG
pdf, html_page               a document set as tagged PDF, or as one HTML file

``sweep`` holds today and the option at the settings of :func:`tried_settings`. Without
``made_on`` no date is shown or written into the file. Nothing reads the clock, the system's
fonts or the network: the same arguments give the same bytes.
"""

from __future__ import annotations

from datetime import date

from costcompare.case.facts import Case
from costcompare.comparison import Comparison
from costcompare.thermostat import Sweep
from costcompare.views import numbers
from costcompare.views.report.home_report import home_report
from costcompare.views.report.home_rooms import tried_settings
from costcompare.views.report.html_page import html_page
from costcompare.views.report.pdf import pdf

__all__ = ["report_html", "report_pdf", "tried_settings"]


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
    with numbers.written(units):
        document = home_report(comparison, case, option=option, sweep=sweep, made_on=made_on)
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
    with numbers.written(units):
        document = home_report(comparison, case, option=option, sweep=sweep, made_on=made_on)
    return html_page(document)
