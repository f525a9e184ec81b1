"""Part one of the report: why the bill is what it is."""

from __future__ import annotations

from costcompare.case.facts import Case
from costcompare.comparison import Comparison
from costcompare.views import numbers
from costcompare.views.drawings import duct_flows, house_section
from costcompare.views.figures.rows import Bar, bill_bars
from costcompare.views.report.catalogue import Catalogue
from costcompare.views.report.pieces import Cell, Picture, Section, Table, Tone
from costcompare.views.wording.bill import bill_answer, ducts_answer

FLOW_TONES: dict[str, Tone] = {
    "conduction": "now",
    "supply": "now",
    "return": "cold",
    "induced": "cold",
}


def section(comparison: Comparison, case: Case, words: Catalogue) -> Section:
    """The bars that add up, and the house cut open where its ducts run outside the rooms."""
    answers = [bill_answer(comparison)]
    tables = [_bars(comparison, words)]
    pictures: tuple[Picture, ...] = ()
    ducts = comparison.today.ducts
    place = case.today.ducts
    if ducts is not None and place is not None and ducts.delivered_kwh > 0.0:
        answers.append(ducts_answer(ducts))
        flows = [flow for flow in duct_flows(ducts, place.location) if flow.kwh > 0]
        said = "; ".join(f"{flow.number}: {numbers.kwh(flow.kwh)} {flow.words}" for flow in flows)
        pictures = (Picture(house_section(ducts, place.location), words.bill_picture.format(said)),)
        rows = tuple(
            (
                Cell(str(flow.number), tone=FLOW_TONES.get(flow.key, "other")),
                Cell(flow.words),
                Cell(numbers.kwh(flow.kwh)),
            )
            for flow in flows
        )
        head = (Cell(words.number), Cell(words.heat), Cell(words.a_year))
        tables.append(Table("flows", words.duct_key, head, rows))
    return Section("bill", words.bill, tuple(answers), tuple(tables), pictures)


def _bars(comparison: Comparison, words: Catalogue) -> Table:
    bars = bill_bars(comparison)
    ends = [end for bar in bars for end in (bar.start, bar.start + bar.value)]
    low, high = min(0.0, *ends), max(*ends, 1.0)

    def cells(bar: Bar) -> tuple[Cell, ...]:
        first, last = sorted((bar.start, bar.start + bar.value))
        whole = bar.tone == "whole"
        return (
            Cell(bar.label, strong=whole),
            Cell(bar=((first - low) / (high - low), (last - low) / (high - low)), tone=bar.tone),
            Cell(bar.text, strong=whole),
        )

    head = (Cell(words.part), Cell(), Cell(words.a_year))
    return Table("bars", words.bill_table, head, tuple(cells(bar) for bar in bars))
