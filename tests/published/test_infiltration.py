"""Infiltration against the worked example of the handbook's two models.

Source: ASHRAE Handbook of Fundamentals, chapter 16, basic and enhanced model, from memory;
the example (1,500 ft2, one storey, shelter class 3, crawlspace, no flue, 2,000 cfm at 50 Pa)
was computed from the tables. Agreement asked for: 1 %.
"""

from __future__ import annotations

import pytest

from costcompare.physics import infiltration

CFM50 = 0.9439  # [m3/s] 2,000 cfm
EXPONENT = 0.65


@pytest.mark.parametrize(
    ("difference", "wind", "basic", "enhanced"),
    [(20.0, 4.0, 0.05346, 0.03137), (10.0, 3.0, 0.03894, 0.02032), (0.0, 5.0, 0.04677, 0.01865)],
)
def test_worked_example(difference: float, wind: float, basic: float, enhanced: float) -> None:
    coefficient = infiltration.leakage_coefficient(CFM50, EXPONENT)
    area = infiltration.effective_leakage_area(coefficient, EXPONENT)
    assert coefficient == pytest.approx(0.07423, rel=1e-3)
    assert area == pytest.approx(709.1e-4, rel=2e-3)
    by_basic = infiltration.basic(
        area, infiltration.BASIC_STACK[0], infiltration.BASIC_WIND[0, 2], difference, wind
    )
    assert by_basic == pytest.approx(basic, rel=0.01)
    at_house = wind * infiltration.WIND_SPEED_MULTIPLIER[0] * infiltration.SHELTER_FACTOR[2]
    by_enhanced = infiltration.enhanced(
        coefficient,
        EXPONENT,
        infiltration.STACK_COEFFICIENT[0],
        infiltration.WIND_COEFFICIENT_CRAWLSPACE[0],
        difference,
        at_house,
    )
    assert by_enhanced == pytest.approx(enhanced, rel=0.01)
