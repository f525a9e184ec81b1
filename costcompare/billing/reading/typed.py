"""Bills that a case lists, or the file of bills that it names."""

from __future__ import annotations

from pathlib import Path

from costcompare.billing.reading.bills import Bills
from costcompare.billing.reading.histories import Printed
from costcompare.billing.reading.read_file import read_bills
from costcompare.billing.reading.traps import judged
from costcompare.case.bill_facts import StatedBills


def bills_of(stated: StatedBills, directory: Path | None = None) -> Bills:
    """The bills of a case, judged by the same rules as those of a file.

    ``directory`` is the folder of the case. Raises :class:`BillsError` where a file is named that
    cannot be read as bills.
    """
    if stated.file is not None:
        return read_bills(directory / stated.file if directory else stated.file)
    printed = [
        Printed(bill.begins, bill.ends, bill.kwh, bill.dollars, bill.read) for bill in stated.rows
    ]
    return judged(printed, source="the bills of the case")
