"""The years ahead in money of today and in the money of each year."""

from __future__ import annotations

import pytest

from costcompare.money.outlook import Outlook


def test_every_present_value_is_the_same_in_nominal_money() -> None:
    real = Outlook(15, 0.03, 0.01, inflation=0.025)
    nominal = real.nominal()
    for one, other in (
        (real.energy(900.0, 12), nominal.energy(900.0, 12)),
        (real.upkeep(100.0, 7.5), nominal.upkeep(100.0, 7.5)),
        (real.purchase(4500.0, 6.0), nominal.purchase(4500.0, 6.0)),
        (real.fixed(800.0, 1.0), nominal.fixed(800.0, 1.0)),
    ):
        assert one == pytest.approx(other, rel=1e-12)


def test_inflation_eats_what_is_fixed_in_dollars() -> None:
    outlook = Outlook(15, 0.0, 0.0, inflation=0.25)
    assert outlook.fixed(100.0, 1.0) == pytest.approx(80.0)
    assert outlook.purchase(100.0, 1.0) == pytest.approx(100.0)


@pytest.mark.parametrize("changes", [(0, 0.03, 0.0), (5, -1.0, 0.0), (5, 0.03, -1.5)])
def test_impossible_years_and_rates_are_refused(changes: tuple[int, float, float]) -> None:
    with pytest.raises(ValueError, match=r"must be (above|at least)"):
        Outlook(*changes)
