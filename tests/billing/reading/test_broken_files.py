"""Five hundred broken files: each gives bills or sentences, never anything else."""

from __future__ import annotations

import random

import pytest

from costcompare.billing.reading import Bills, read_bills
from costcompare.errors import BillsError
from tests.billing.reading.meter_example import example
from tests.billing.reading.test_layouts import OCTOBER, hours, long_table, wide
from tests.billing.reading.test_traps import HEAD, USES, year

GOOD = [
    HEAD + "\n".join(",".join(line) for line in year(USES)) + "\n",
    long_table(hours(OCTOBER, OCTOBER.replace(day=9))),
    wide(24, [f"{h}:00" for h in range(24)]),
    example(),
    "Read Date;Days;kWh;Amount Due\n18.01.2026;31;3.650,5;900\n17.02.2026;30;3000;1500\n",
    "meter,from,to,previous reading,current reading,kwh,multiplier\nA,1/1/25,2/1/25,1,2,40,40\n",
]
PIECES = [
    b"\x00", b"\xff\xfe", b'"', b",", b"\n", b"<", b">", b"&x;", b"nan", b"inf", b"-", b"1e308",
    b"9999999999999999999999", b"2026-02-30", b"13/13/2026", b"kwh,kwh,kwh", b"\xf0\x9f\x92\xa1",
    b"<!DOCTYPE a [<!ENTITY x 'y'>]>", b"<start>-5</start>", b"24:61", b"0001-01-01", b"9999-12-31",
    b"12/31/9999", b"()", b"$", b"from,to", b"<duration>999999999999</duration>", b"CR",
    b"<powerOfTenMultiplier>99</powerOfTenMultiplier>", b"\xe2\x88\x92", b"\r", b";", b"\t",
]  # fmt: skip


def broken(number: int) -> bytes:
    """A good file with a few things wrong, or noise; the same number gives the same file."""
    chance = random.Random(number)  # noqa: S311 - no secret
    if number % 25 == 0:
        return chance.randbytes(chance.randrange(2000))
    content = bytearray(chance.choice(GOOD).encode("utf-8"))
    for _ in range(chance.randint(1, 30)):
        at = chance.randrange(len(content) + 1)
        match chance.randrange(5):
            case 0:
                content[at:at] = chance.choice(PIECES)
            case 1:
                del content[at : at + chance.randrange(40)]
            case 2:
                content[at : at + 1] = chance.randbytes(1)
            case 3:
                content[at:at] = content[at : at + chance.randrange(200)]
            case _:
                content[at : at + 6] = chance.choice(PIECES)
        if not content:
            break
    return bytes(content[: chance.randrange(len(content) + 1)] if number % 7 == 0 else content)


@pytest.mark.parametrize("hundred", range(5))
def test_a_broken_file_gives_bills_or_sentences(hundred: int) -> None:
    found = [outcome(broken(number)) for number in range(100 * hundred, 100 * hundred + 100)]
    refused = [one for one in found if isinstance(one, BillsError)]
    read = [one for one in found if isinstance(one, Bills)]
    assert min(len(refused), len(read)) > 10
    for error in refused:
        assert error.faults
        assert all(len(fault.sentence()) > 20 for fault in error.faults)
    for bills in read:
        check(bills)


def outcome(content: bytes) -> Bills | BillsError:
    try:
        return read_bills(content)
    except BillsError as error:
        return error


def check(bills: Bills) -> None:
    """What holds for all that is read: in order, without overlap, with finite use above 0."""
    for bill in bills.bills:
        assert 0.0 < bill.kwh < 1e12
        assert bill.days > 0
    for earlier, later in zip(bills.bills, bills.bills[1:], strict=False):
        assert earlier.ends <= later.begins
    for note in bills.notes:
        assert len(note.sentence()) > 20
