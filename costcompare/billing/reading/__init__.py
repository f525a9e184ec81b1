"""Reading real bills: typed, as CSV of any layout, as a meter's XML, with every trap told.

read_file     bills of a file, of its bytes or of its text; typed: those listed in a case
bills         what is read: bills, intervals, notes
rules         every trap with its reason and its numbers
traps         the rules in their order; money_traps, slips: those of money, of digits
headers       what a column holds, by the words of its header
delimited     text, separator, the row of headers; found_rows: cells of it
written       numbers, days and times as they are written
histories     tables with a line a bill
intervals     tables with the hours of a meter; months: their sums
meter_file    the open ESPI standard; meter_tree: XML, safely; meter_clock: its clock
"""

from __future__ import annotations

from costcompare.billing.reading.bills import Bill, Bills, Interval, Note, ReadKind
from costcompare.billing.reading.read_file import read_bills
from costcompare.billing.reading.rules import RULES
from costcompare.billing.reading.typed import bills_of
from costcompare.errors import BillsError

__all__ = [
    "RULES",
    "Bill",
    "Bills",
    "BillsError",
    "Interval",
    "Note",
    "ReadKind",
    "bills_of",
    "read_bills",
]
