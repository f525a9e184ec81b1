"""Meter files: sample feeds of the open ESPI standard (NAESB REQ.21) that are in public.

Read: the figures of two bills of public sample feeds, as quoted by a second hand, with the rule of
the schema's documentation that costs are hundred-thousandths of the currency unit; the two
rules for the change of clocks that sample feeds of the United States carry. Asked: to the cent,
to the watt hour, to the day. Reached: all of it.
"""

from __future__ import annotations

from datetime import datetime

import pytest

from costcompare.billing.reading import read_bills
from costcompare.billing.reading.meter_clock import change_of
from tests.billing.reading.meter_example import example, summary


@pytest.mark.parametrize(
    ("cost", "watt_hours", "dollars"), [(16563000, 496000, 165.63), (6752000, 625716, 67.52)]
)
def test_a_bill_of_a_sample_feed(cost: int, watt_hours: int, dollars: float) -> None:
    told = (
        summary()
        .replace("49275000", str(cost))
        .replace("<value>3650", f"<value>{watt_hours}")
        .replace("<powerOfTenMultiplier>3", "<powerOfTenMultiplier>0")
    )
    (bill,) = read_bills(example(bill=told)).bills
    assert bill.kwh == pytest.approx(watt_hours / 1000.0, abs=1e-9)
    assert bill.dollars == pytest.approx(dollars, abs=1e-9)


@pytest.mark.parametrize(
    ("rule", "year", "changes"),
    [
        ("360E2000", 2026, datetime(2026, 3, 8, 2)),  # noqa: DTZ001
        ("B40E2000", 2026, datetime(2026, 11, 1, 2)),  # noqa: DTZ001
        ("360E2000", 2027, datetime(2027, 3, 14, 2)),  # noqa: DTZ001
        ("B40E2000", 2027, datetime(2027, 11, 7, 2)),  # noqa: DTZ001
    ],
)
def test_the_change_of_clocks(rule: str, year: int, changes: datetime) -> None:
    change = change_of(rule)
    assert change is not None
    assert change.moment(year) == changes
