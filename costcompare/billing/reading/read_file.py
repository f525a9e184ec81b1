"""Bills of a file: told apart by what stands in it, read, judged."""

from __future__ import annotations

from pathlib import Path

from costcompare.billing.reading.bills import Bills
from costcompare.billing.reading.delimited import content_of, table_of, text_of
from costcompare.billing.reading.headers import Header, uses
from costcompare.billing.reading.histories import is_history, printed_bills
from costcompare.billing.reading.intervals import read_intervals
from costcompare.billing.reading.meter_file import is_meter_file, read_meter_file
from costcompare.billing.reading.meter_tree import tree_of
from costcompare.billing.reading.months import monthly
from costcompare.billing.reading.traps import judged
from costcompare.errors import BillsError, Fault

EXAMPLE = "a CSV with columns such as from, to, kwh, dollars, read (docs/bills.md), or the XML"


def read_bills(source: str | bytes | Path, *, name: str = "") -> Bills:
    """The bills of a file, of its bytes or of its text.

    ``source`` is a path (a :class:`Path`, or text of one line), bytes, or the text itself.
    Raises :class:`BillsError` with sentences where nothing can be read as bills.
    """
    if isinstance(source, str) and "\n" not in source and "<" not in source:
        source = Path(source)
    if isinstance(source, Path):
        name = name or source.name
        source = content_of(source)
    name = name or "the bills"
    if isinstance(source, str):
        source = source.encode("utf-8", errors="replace")
    text = text_of(source, name)
    if text.lstrip("\ufeff \t\r\n").startswith("<"):
        return _of_xml(text.lstrip("\ufeff \t\r\n"), name)
    return _of_table(text, name)


def _of_xml(text: str, name: str) -> Bills:
    root = tree_of(text, name)
    if not is_meter_file(root):
        rule = "is XML, but not of the open standard of meters (ESPI, NAESB REQ.21)"
        raise BillsError([Fault(name, rule, instead=EXAMPLE)])
    printed, intervals, notes = read_meter_file(root, name)
    if not printed and intervals:
        printed, more = monthly(intervals)
        notes = [*notes, *more]
    return _some(judged(printed, notes, intervals=intervals, source=name), name)


def _of_table(text: str, name: str) -> Bills:
    rows = table_of(text, _has_use)
    if rows is None:
        rule = "has no row of headers with days and use"
        first = next((line for line in text.splitlines() if line.strip()), "")
        raise BillsError([Fault(name, rule, given=f"first line '{first[:60]}'", instead=EXAMPLE)])
    if is_history(rows):
        printed, notes = printed_bills(rows)
        return _some(judged(printed, notes, source=name), name)
    intervals, notes = read_intervals(rows)
    printed, more = monthly(intervals)
    found = judged(printed, [*notes, *more], intervals=intervals, source=name)
    return _some(found, name)


def _has_use(header: Header) -> bool:
    dated = header.of("from", "to", "day", "moment", "month") is not None
    return dated and bool(uses(header) or header.clock)


def _some(bills: Bills, name: str) -> Bills:
    """The bills, or the reasons why there are none."""
    if bills.bills or bills.left_out:
        return bills
    reasons = [Fault(name, note.sentence().rstrip(".")) for note in bills.notes]
    rule = "holds no bill that can be used"
    raise BillsError([Fault(name, rule, instead=EXAMPLE), *reasons])
