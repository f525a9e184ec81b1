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


WORKED = infiltration.Envelope(height=2.5, ceiling_and_floor=0.5)


def test_full_form_of_the_enhanced_model() -> None:
    """20 K, 4 m/s at the station (x 0.48 x 0.70 at the house): 0.03415 m3/s, within 0.1 %.

    The figure was worked out by a second hand from the equations of Walker and Wilson 1998
    (from memory), with half of the leaks in walls and no difference of ceiling and floor.
    """
    flow = infiltration.full_enhanced(
        0.07423, EXPONENT, WORKED, inside=20.0, outside=0.0, speed=0.70 * 0.48 * 4.0
    )
    assert flow == pytest.approx(0.03415, rel=1e-3)


def test_the_tables_follow_from_the_full_form() -> None:
    """Coefficients implied by the full form against the tables, no flue: within 7 %."""
    pressure = infiltration.REFERENCE_DENSITY / 293.15 * infiltration.GRAVITY * 2.5 / 293.15
    stack = infiltration.stack_factor(EXPONENT, WORKED) * pressure**EXPONENT
    wind = infiltration.wind_factor(EXPONENT, WORKED) * (0.5 * 1.2041) ** EXPONENT
    assert stack == pytest.approx(infiltration.STACK_COEFFICIENT[0], rel=0.07)
    assert wind == pytest.approx(infiltration.WIND_COEFFICIENT_CRAWLSPACE[0], rel=0.07)


def test_a_flue_changes_the_full_form_as_it_changes_the_tables() -> None:
    """One storey, a fifth of the leaks in a flue of twice the height: ratios within 6 %."""
    flue = WORKED._replace(ceiling_and_floor=0.4, flue=0.2, flue_height=2.0)
    slab, slab_flue = (e._replace(crawlspace=False) for e in (WORKED, flue))
    ratios = (
        infiltration.stack_factor(EXPONENT, flue) / infiltration.stack_factor(EXPONENT, WORKED),
        infiltration.wind_factor(EXPONENT, flue) / infiltration.wind_factor(EXPONENT, WORKED),
        infiltration.wind_factor(EXPONENT, slab_flue) / infiltration.wind_factor(EXPONENT, slab),
    )
    tables = (
        infiltration.STACK_COEFFICIENT_FLUE[0] / infiltration.STACK_COEFFICIENT[0],
        infiltration.WIND_COEFFICIENT_CRAWLSPACE_FLUE[0]
        / infiltration.WIND_COEFFICIENT_CRAWLSPACE[0],
        infiltration.WIND_COEFFICIENT_SLAB_FLUE[0] / infiltration.WIND_COEFFICIENT_SLAB[0],
    )
    assert ratios == pytest.approx(tables, rel=0.06)
