"""Tables of bills and of meters as utilities export them, every one a made-up example."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from costcompare.billing.reading import Bills, read_bills
from costcompare.errors import BillsError


def rules(bills: Bills) -> list[str]:
    return [note.rule for note in bills.notes]


def periods(bills: Bills) -> list[tuple[str, float]]:
    return [(bill.dates, bill.kwh) for bill in bills.bills]


def lines(*given: str) -> str:
    return "\n".join(given) + "\n"


TWO = [("2025-12-18 to 2026-01-18", 3650.0), ("2026-01-18 to 2026-02-17", 2950.5)]


@pytest.mark.parametrize(
    "text",
    [
        lines(
            "from,to,kwh,dollars,read",
            '2025-12-18,2026-01-18,"3,650",492.75,actual',
            '2026-01-18,2026-02-17,"2,950.5",401,actual',
        ),
        lines(
            "Period start;Period end;kWh;Amount",
            "18.12.2025;18.01.2026;3.650,0;492,75",
            "18.01.2026;17.02.2026;2.950,5;401,00",
        ),
        lines(
            "\ufeffService From\tService To\tUsage (kWh)\tCurrent Charges",
            "12/18/2025\t1/18/2026\t3650\t$492.75",
            "1/18/2026\t2/17/2026\t2950.5\t$401.00",
        ),
        lines(
            "Account,1234",
            "Address,1 Long Road",
            "",
            "Read Date,Days,Total kWh,Cost",
            "1/18/2026,31,3650,$492.75 ",
            "2/17/26,30,2950.5,401",
        ),
        lines(
            "Bill start date,Bill end date,Consumption,Unit,Total charges",
            'Dec 18 2025,"Jan 18, 2026",3650,kWh,492.75',
            "18-Jan-2026,17-Feb-2026,2950.5,kWh,401.00",
        ),
        lines(
            "Start Date,End Date,On-peak kWh,Off-peak kWh,Bill",
            "2025-12-18,2026-01-18,1650,2000,492.75",
            "2026-01-18,2026-02-17,950.5,2000,401",
        ),
        lines(
            "Billing period,kWh,Amount",
            "12/18/2025 - 1/18/2026,3650,492.75",
            "1/18/2026 - 2/17/2026,2950.5,401",
        ),
    ],
    ids=["plain", "semicolons", "tabs", "read days", "words", "parts", "one cell"],
)
def test_a_history_is_read_by_the_meaning_of_its_headers(text: str) -> None:
    bills = read_bills(text)
    assert periods(bills) == TWO
    assert [bill.dollars for bill in bills.bills] == [492.75, 401.0]


def test_bytes_in_other_encodings_are_read_alike(tmp_path: Path) -> None:
    text = "from,to,kWh,Café\n2025-12-18,2026-01-18,3650,x\n2026-01-18,2026-02-17,2950.5,\n"
    for encoding in ("utf-8", "utf-8-sig", "utf-16", "latin-1"):
        path = tmp_path / f"{encoding}.csv"
        path.write_bytes(text.replace("\n", "\r\n").encode(encoding))
        assert periods(read_bills(path)) == TWO
        assert periods(read_bills(str(path))) == TWO
        assert read_bills(path).source == path.name


def test_last_days_that_are_counted_in_are_moved_to_the_read() -> None:
    bills = read_bills("start,end,kwh\n2025-12-18,2026-01-17,3650\n2026-01-18,2026-02-16,2950.5\n")
    assert periods(bills) == TWO
    assert rules(bills) == ["end days"]


def test_days_before_months_are_found() -> None:
    bills = read_bills("from,to,kwh\n18/12/2025,18/1/2026,3650\n18/1/2026,17/2/2026,2950.5\n")
    assert periods(bills) == TWO
    assert "day first" in rules(bills)


def test_months_by_name_are_told() -> None:
    bills = read_bills("Month,kWh\nJan 2026,3650\nFebruary 2026,2950\n")
    assert [bill.days for bill in bills.bills] == [31, 28]
    assert rules(bills) == ["month names"]


def test_the_first_of_the_reads_alone_opens_the_second() -> None:
    bills = read_bills("Read date,kWh\n1/18/2026,3650\n2/17/2026,2950\n3/19/2026,2000\n")
    assert [bill.dates[:10] for bill in bills.bills] == ["2026-01-18", "2026-02-17"]


def hours(first: datetime, last: datetime, minutes: int = 60) -> list[datetime]:
    step = timedelta(minutes=minutes)
    return [first + i * step for i in range(int((last - first) / step))]


def long_table(stamps: Sequence[datetime], value: str = "1.5", unit: str = "kWh") -> str:
    lines = ["Name,A Family", "Service,Main", "", "TYPE,DATE,START TIME,END TIME,USAGE,UNITS,COST,NOTES"]  # noqa: E501  # fmt: skip
    lines += [
        f'Electric usage,{at:%m/%d/%Y},{at:%H:%M},{at:%H:59},"{value}",{unit},$0.20 ,'
        for at in stamps
    ]
    return "\n".join(lines)


OCTOBER, DECEMBER = datetime(2025, 10, 1), datetime(2025, 12, 1)  # noqa: DTZ001
FALL_BACK = datetime(2025, 11, 2, 1)  # noqa: DTZ001


def test_hours_of_a_meter_are_summed_by_month_and_the_doubled_hour_is_two() -> None:
    stamps = hours(OCTOBER, DECEMBER)
    bills = read_bills("\ufeff" + long_table(sorted([*stamps, FALL_BACK])))
    assert [bill.kwh for bill in bills.bills] == [744 * 1.5, 721 * 1.5]
    assert bills.bills[0].dollars == pytest.approx(744 * 0.20)
    assert rules(bills) == ["doubled hour", "calendar months"]
    assert len(bills.intervals) == 744 + 721


def test_march_has_743_hours_and_none_is_missing() -> None:
    march = hours(datetime(2026, 3, 1), datetime(2026, 4, 1))  # noqa: DTZ001
    skipped = [at for at in march if at != datetime(2026, 3, 8, 2)]  # noqa: DTZ001
    bills = read_bills(long_table(skipped))
    assert bills.bills[0].kwh == pytest.approx(743 * 1.5)
    assert rules(bills) == ["calendar months"]


def test_quarter_hours_in_kilowatts_are_a_quarter_of_the_energy() -> None:
    stamps = hours(OCTOBER, datetime(2025, 11, 1), minutes=15)  # noqa: DTZ001
    bills = read_bills(long_table(stamps, value="4.0", unit="kW"))
    assert bills.bills[0].kwh == pytest.approx(744 * 4.0)


def test_entries_that_come_twice_are_counted_once() -> None:
    stamps = hours(OCTOBER, datetime(2025, 11, 1))  # noqa: DTZ001
    bills = read_bills(long_table([*stamps, *stamps[:50]]))
    assert bills.bills[0].kwh == pytest.approx(744 * 1.5)
    assert "doubled entry" in rules(bills)


def test_missing_hours_are_made_up_to_a_tenth_and_told() -> None:
    stamps = hours(OCTOBER, DECEMBER)
    few = [at for i, at in enumerate(stamps) if i % 20 or at.month == 11]
    bills = read_bills(long_table(few))
    assert bills.bills[0].kwh == pytest.approx(744 * 1.5)
    assert "missing intervals" in rules(bills)
    many = [at for i, at in enumerate(stamps) if i % 5 or at.month == 11]
    bills = read_bills(long_table(many))
    assert [bill.begins.month for bill in bills.bills] == [11]
    assert "part month" in rules(bills)


def wide(count: int, names: Sequence[str], value: str = "1.0") -> str:
    lines = [",".join(["Date", *names])]
    for day in range(31):
        at = date(2026, 1, 1) + timedelta(days=day)
        lines.append(",".join([f"{at:%m/%d/%Y}", *([value] * count)]))
    return "\n".join(lines)


@pytest.mark.parametrize(
    "names",
    [
        [f"{h}:00" for h in range(24)],
        [f"HE{h:02d}" for h in range(1, 25)],
        [f"Hour {h}" for h in range(1, 25)],
        [f"{(h % 12) or 12}:00 {'AM' if h < 12 else 'PM'}" for h in range(24)],
        [f"{h:02d}:00 - {h + 1:02d}:00" for h in range(24)],
    ],
)
def test_a_day_a_line(names: list[str]) -> None:
    bills = read_bills(wide(24, names))
    assert periods(bills) == [("2026-01-01 to 2026-02-01", 744.0)]
    assert bills.intervals[5].start == datetime(2026, 1, 1, 5)  # noqa: DTZ001


def test_a_day_of_quarter_hours_a_line() -> None:
    names = [f"{q // 4:02d}:{15 * (q % 4):02d}" for q in range(96)]
    bills = read_bills(wide(96, names, value="0.25"))
    assert bills.bills[0].kwh == pytest.approx(744.0)
    assert bills.intervals[1].hours == 0.25


def test_what_is_given_to_the_grid_is_kept_apart() -> None:
    signed = read_bills(wide(24, [f"{h}:00" for h in range(24)], value="-0.5").replace(",-0.5", ",2.0", 400))  # noqa: E501  # fmt: skip
    assert signed.bills[0].kwh == pytest.approx(800.0)
    assert signed.bills[0].export_kwh == pytest.approx(344 * 0.5)
    split = read_bills(
        "Start date,End date,Import kWh,Export kWh\n2026-01-01,2026-02-01,900,350\n"
        "2026-02-01,2026-03-01,700,400\n"
    )
    assert [(b.kwh, b.export_kwh) for b in split.bills] == [(900.0, 350.0), (700.0, 400.0)]
    assert "export" in rules(split)


def test_gas_in_the_same_file_is_left_alone() -> None:
    text = (
        "TYPE,START DATE,END DATE,USAGE,UNITS,COST\n"
        "Electric billing,2026-01-01,2026-02-01,900,kWh,100\n"
        "Natural gas billing,2026-01-01,2026-02-01,90,therms,80\n"
    )
    bills = read_bills(text)
    assert periods(bills) == [("2026-01-01 to 2026-02-01", 900.0)]
    assert "other services" in rules(bills)
    with pytest.raises(BillsError, match="no bill that can be used"):
        read_bills(text.replace("Electric billing", "Natural gas billing"))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("hello\n", "has no row of headers with days and use"),
        ("\n", "has no row of headers with days and use"),
        ("from,to,kwh\n", "holds no bill that can be used"),
        ("from,to,kwh\nx,y,z\n", "1 lines hold no dates or no use"),
        ("\x00\x01\x02\n", "is no text"),
    ],
)
def test_what_is_no_bill_gets_a_sentence(text: str, said: str) -> None:
    with pytest.raises(BillsError) as caught:
        read_bills(text)
    assert said in str(caught.value)


def test_a_file_that_is_not_there_gets_a_sentence() -> None:
    with pytest.raises(BillsError, match=r"no-such-bills\.csv: cannot be read"):
        read_bills("no-such-bills.csv")
