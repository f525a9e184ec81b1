"""What is left behind on the table, made on request from a visitor's document."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date
from typing import Any

from flask import Blueprint, Flask, Response, request

from costcompare import thermostat
from costcompare.errors import CaseError, CostCompareError, Fault, InputError
from costcompare.views import report
from costcompare.views.dashboard.visit.doors import file_name, told
from costcompare.views.dashboard.workbench import Workbench, Worked
from costcompare.views.wording.naming import choosable

PDF, HTML, CSV = "application/pdf", "text/html", "text/csv"


def _report(bench: Workbench, worked: Worked, name: str, make: Callable[..., Any]) -> Any:
    """With its ranges where they are there already."""
    comparison = bench.ranged(worked.document) or worked.comparison
    house = worked.set_as_stated
    settings = report.tried_settings(house.home.thermostat.wanted)
    names = {comparison.today.name, name}
    swept = thermostat.sweep(house, settings, only=names, weather=worked.weather)
    return make(comparison, worked.house, option=name, sweep=swept, made_on=_today())


def _card(bench: Workbench, worked: Worked, name: str) -> bytes:
    _sizing, card = bench.trade(worked, name)
    if card is None:
        raise CaseError([Fault("the settings card", "is about an option: add one first")])
    return report.settings_card_pdf(card, worked.case, made_on=_today())


def _contractor(bench: Workbench, worked: Worked, name: str) -> bytes:
    sizing, card = bench.trade(worked, name)
    if card is None:
        raise CaseError([Fault("the contractor’s sheet", "is about an option: add one first")])
    return report.contractor_pdf(worked.comparison, worked.case, sizing, card, made_on=_today())


Maker = Callable[[Workbench, Worked, str], Any]

PAPERS: Mapping[str, tuple[str, str, Maker]] = {
    "report-pdf": ("report.pdf", PDF, lambda b, w, n: _report(b, w, n, report.report_pdf)),
    "report-html": ("report.html", HTML, lambda b, w, n: _report(b, w, n, report.report_html)),
    "card": ("settings-card.pdf", PDF, _card),
    "contractor": ("contractor.pdf", PDF, _contractor),
    "months": ("months-and-rooms.csv", CSV, lambda _b, w, _n: report.export_csv(w.comparison)),
}
"""By what a browser calls them: end of the file's name, type, and how it is made"""

BUTTONS = (
    ("report-pdf", "The report, PDF"),
    ("report-html", "The report, one HTML file"),
    ("card", "Settings card, PDF"),
    ("contractor", "Contractor’s sheet, PDF"),
    ("months", "Months and rooms, CSV"),
)


def _today() -> date:
    return date.today()  # noqa: DTZ011 - the day on the wall of whoever prints it


def hand_out(server: Flask, bench: Workbench) -> None:
    """Give the papers their addresses on a server."""
    blueprint = Blueprint("papers", __name__, url_prefix="/papers")

    @blueprint.post("/<paper>")
    def make(paper: str) -> Response | tuple[Response, int]:
        asked = request.get_json(silent=True)
        if paper not in PAPERS:
            return told(["There is nothing here."], 404)
        if not isinstance(asked, dict):
            return told(["This request cannot be understood."], 400)
        try:
            return _made(bench, paper, asked)
        except InputError as error:
            return told([fault.sentence() for fault in error.faults], 200)
        except CostCompareError as error:
            return told([str(error)], 200)
        except RecursionError:
            return told(["This is nested too deeply to be a case."], 400)

    server.register_blueprint(blueprint)


def _made(bench: Workbench, paper: str, asked: Mapping[str, Any]) -> Response:
    worked = bench.worked(asked.get("document"))
    name = asked.get("option")
    names = choosable(worked.comparison)
    ending, kind, maker = PAPERS[paper]
    content = maker(bench, worked, name if name in names else names[0])
    response = Response(content, mimetype=kind)
    file = f"{file_name(worked.document)}-{ending}"
    response.headers["Content-Disposition"] = f'attachment; filename="{file}"'
    return response
