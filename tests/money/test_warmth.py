"""The four rows, and the identities that keep them apart."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.money.warmth import four_rows

bills = st.floats(200.0, 9000.0)


@given(bills, bills, bills, bills, st.floats(0.0, 12.0))
def test_the_rows_add_up(
    lived: float, wanted: float, new_lived: float, new_wanted: float, warmer: float
) -> None:
    rows = four_rows(
        "x", today=(lived, wanted), new=(new_lived, new_wanted), degrees_warmer_degf=warmer
    )
    # Cash at the wanted warmth is cash as you live now less what the added warmth costs.
    assert rows.saving_as_wanted_usd == pytest.approx(
        rows.saving_as_lived_usd - rows.added_warmth_new_usd, abs=1e-9
    )
    # At the same warmth the saving is cash and the worth of the warmth together.
    assert rows.same_warmth_saving_usd == pytest.approx(
        rows.saving_as_wanted_usd + rows.warmth_worth_usd, abs=1e-9
    )


def test_one_degree() -> None:
    rows = four_rows("x", today=(2949.0, 4886.0), new=(1480.0, 1865.0), degrees_warmer_degf=8.0)
    assert rows.saving_as_wanted_usd == pytest.approx(1084.0)
    assert rows.warmth_worth_usd == pytest.approx(1937.0)
    assert rows.today_one_degree_usd == pytest.approx(242.125)
    assert rows.new_one_degree_usd == pytest.approx(48.125)
    cool = four_rows("x", today=(1.0, 1.0), new=(1.0, 1.0), degrees_warmer_degf=0.0)
    assert cool.today_one_degree_usd is cool.new_one_degree_usd is None
