"""The bill that docs/tariffs.md works out by hand is the one that the program works out."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

from costcompare.billing.tariff import Usage, bill, rounded
from costcompare.case.tariff_document import TariffTable
from costcompare.case.tariffs import tariff_of

PAGE = (Path(__file__).parents[2] / "docs" / "tariffs.md").read_text(encoding="utf-8")
SECTION = PAGE[PAGE.index("## One bill by hand") :]
BLOCK = re.search(r"```toml\n(.*?)```", SECTION, re.DOTALL)
assert BLOCK is not None
TARIFF = tariff_of(TariffTable.model_validate(tomllib.loads(BLOCK[1])))
ROWS = [
    [cell.strip() for cell in row.split("|")[1:5]]
    for row in re.findall(r"^\|.*\|$", SECTION[: SECTION.index("The base of")], re.MULTILINE)[2:]
]


def number(text: str) -> float:
    return float(text.split(maxsplit=1)[0].replace(",", ""))


def test_every_line_of_the_page() -> None:
    month = bill(TARIFF, Usage(2150.0, demand_kw=11.4))
    *lines, total = ROWS
    assert [line.name for line in month.lines] == [row[0] for row in lines]
    for line, (_name, amount, price, usd) in zip(month.lines, lines, strict=True):
        assert line.amount == pytest.approx(number(amount))
        assert line.unit == amount.split(maxsplit=1)[1].replace("months", "month")
        assert line.price == pytest.approx(number(price))
        assert line.usd == number(usd)
        assert rounded(number(amount) * number(price)) == line.usd
    assert rounded(month.total_usd) == number(total[3])


def test_the_saving_of_the_page() -> None:
    before = bill(TARIFF, Usage(2150.0, demand_kw=11.4)).total_usd
    after = bill(TARIFF, Usage(1150.0, demand_kw=6.2)).total_usd
    assert f"{rounded(before):.2f} − {rounded(after):.2f} = {rounded(before - after):.2f}" in PAGE
