"""What check and new print: every fact of a case, as blocks for a terminal."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.case.facts import Case, Fact
from costcompare.comparison import FactLine
from costcompare.views import numbers
from costcompare.views.terminal import Heading, Page, Sentences, Table
from costcompare.views.wording.sureness import fact_value


def case_page(case: Case) -> Page:
    """``check``: every fact as it was understood, how it is known and where it comes from."""
    page: list[Heading | Sentences | Table] = [
        Heading(case.title),
        Sentences("The case can be used. This is how it was understood:"),
    ]
    groups: dict[str, list[Fact]] = {}
    for fact in case.facts:
        groups.setdefault(_group(fact.path), []).append(fact)
    for group, facts in groups.items():
        page += [Heading(group or "case"), _facts(group, facts)]
    return page


def _group(path: str) -> str:
    """The table of the case that a fact stands in: ``rooms.hall`` of ``rooms.hall.floor_area``."""
    parts = path.split(".")
    depth = 2 if parts[0] in ("rooms", "options") else 1
    return ".".join(parts[: min(depth, len(parts) - 1)])


def _facts(group: str, facts: Sequence[Fact]) -> Table:
    """Facts under their shortened paths; the column of ranges only where there is one."""
    start = len(group) + 1 if group else 0
    ranges = any(_spread(fact) for fact in facts)
    columns = ("fact", "value", *(("low to high",) if ranges else ()), "known", "source")
    rows = tuple(
        (
            fact.path[start:],
            _value(fact),
            *((_spread(fact),) if ranges else ()),
            fact.known,
            fact.source,
        )
        for fact in facts
    )
    return Table(columns, rows, left=frozenset(range(len(columns))))


def _value(fact: Fact) -> str:
    """The value with its unit; a plain number such as a year without a thousands comma."""
    if isinstance(fact.value, float | int) and not isinstance(fact.value, bool) and not fact.unit:
        return f"{fact.value:g}".replace("-", numbers.MINUS)
    return fact_value(_line(fact))


def _line(fact: Fact) -> FactLine:
    return FactLine(fact.path, fact.value, fact.unit, fact.known, fact.source)


def _spread(fact: Fact) -> str:
    if fact.low is None or fact.high is None:
        return ""
    return f"{numbers.quantity(fact.low)} to {numbers.quantity(fact.high)}"
