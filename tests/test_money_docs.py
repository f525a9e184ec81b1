"""docs/money.md can be followed with a pocket calculator, and it is what the program does."""

from __future__ import annotations

import ast
import operator
import re
from pathlib import Path

import pytest

from costcompare.case.facts import Finance
from costcompare.money.financing import way_to_pay
from costcompare.money.life_cycle import LifeCycle, OldSystem, Purchase, assess
from costcompare.money.outlook import Outlook
from costcompare.money.warmth import four_rows

PAGE = (Path(__file__).parent.parent / "docs" / "money.md").read_text(encoding="utf-8")
LINE = re.compile(r"^\| (\d+) \| [^|]+ \| `([^`]+)` \| (-?[\d.]+)[^|]* \|$", re.MULTILINE)
LINES = {int(number): (keys, shown) for number, keys, shown in LINE.findall(PAGE)}
KEYS = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
    ast.Pow: operator.pow,
}


def keyed(keys: str) -> float:
    """What a pocket calculator shows for the keys of a line."""

    def of(node: ast.expr) -> float:
        if isinstance(node, ast.Constant):
            return float(node.value)  # type: ignore[arg-type]
        assert isinstance(node, ast.BinOp)
        return float(KEYS[type(node.op)](of(node.left), of(node.right)))

    return of(ast.parse(keys.replace("^", "**"), mode="eval").body)


def shown(line: int) -> float:
    return float(LINES[line][1])


def step(line: int) -> float:
    """One of the last digit that a line shows."""
    return 10.0 ** -len(LINES[line][1].partition(".")[2])


def test_the_lines_are_numbered_without_a_gap() -> None:
    assert sorted(LINES) == list(range(1, 42))
    assert len(re.findall(r"^\| \d+ \|", PAGE, re.MULTILINE)) == 41


@pytest.mark.parametrize("line", sorted(LINES))
def test_a_line_shows_what_its_keys_give(line: int) -> None:
    assert keyed(LINES[line][0]) == pytest.approx(shown(line), abs=0.5001 * step(line))


def agrees(line: int, value: float, steps: float = 1.0) -> None:
    """The program says what the line shows, within so many of its last digit."""
    assert value == pytest.approx(shown(line), abs=(steps + 0.5) * step(line)), line


def test_the_four_bills() -> None:
    rows = four_rows("x", today=(2400.0, 2900.0), new=(1100.0, 1250.0), degrees_warmer_degf=5.0)
    for lines, value in (
        ((1, 7), rows.saving_as_wanted_usd),
        ((2, 4), rows.same_warmth_saving_usd),
        ((3,), rows.warmth_worth_usd),
        ((5,), rows.added_warmth_new_usd),
        ((6,), rows.saving_as_lived_usd),
        ((8,), rows.today_one_degree_usd),
        ((9,), rows.new_one_degree_usd),
    ):
        assert value is not None
        for line in lines:
            agrees(line, value, 0.0)


def option(outlook: Outlook, old: OldSystem | None = None) -> LifeCycle:
    purchase = Purchase(
        installed_cost=10_000.0,
        yearly_saving=1150.0,
        life=15.0,
        incentives=500.0,
        maintenance=50.0,
        old_system=old,
    )
    return assess(purchase, outlook)


def test_payback_and_net_savings() -> None:
    result = option(Outlook(15, 0.03, 0.0))
    agrees(10, result.net_cost_usd, 0.0)
    for line, value in (
        (12, result.simple_payback_years),
        (15, result.energy_savings_usd),
        (16, result.maintenance_usd),
        (17, result.net_savings_usd),
        (18, result.savings_to_investment_ratio),
        (19, result.adjusted_internal_rate_of_return),
        (24, result.discounted_payback_years),
    ):
        assert value is not None
        agrees(line, value)
    agrees(21, -result.yearly_position_usd[10])
    agrees(23, result.yearly_position_usd[11])
    agrees(35, result.yearly_position_usd[7])
    agrees(36, result.yearly_with_residual_usd[7] - result.yearly_position_usd[7])


def test_growth_and_inflation() -> None:
    real = Outlook(15, 0.03, 0.01, inflation=0.025)
    agrees(27, option(real).net_savings_usd)
    agrees(27, option(real.nominal()).net_savings_usd)
    agrees(28, real.nominal().discount_rate)
    agrees(29, real.nominal().price_growth)


def test_the_old_furnace() -> None:
    old = OldSystem(remaining_life=6.0, replacement_cost=4500.0, life=15.0)
    result = option(Outlook(15, 0.03, 0.0), old)
    agrees(33, result.net_savings_usd, 2.0)
    assert shown(31) - shown(32) == pytest.approx(result.avoided_replacements_usd, abs=1.0)


def test_the_loan() -> None:
    loan = Finance("bank", "loan", 0.0799, 120, 0.0, 0.0, None, 0.0, 0.0)
    way = way_to_pay(loan, 9500.0, [1150.0 / 12.0] * 12, discount_rate=0.05)
    agrees(39, way.payment_usd)
    # A cent of the payment is more in 120 of them.
    agrees(40, way.total_paid_usd, 60.0)
    agrees(41, way.first_year_balance_usd, 6.0)
