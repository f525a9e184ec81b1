"""Figures against limits."""

from __future__ import annotations

import pytest

from costcompare.sizing import rules


@pytest.mark.parametrize(
    ("rule", "value", "kept"),
    [
        (rules.MAXIMUM_AT_DESIGN, 0.99, False),
        (rules.MAXIMUM_AT_DESIGN, 1.0, True),
        (rules.MAXIMUM_AT_DESIGN, 1.25, True),
        (rules.MAXIMUM_AT_DESIGN, 1.26, False),
        (rules.MINIMUM_AT_47_F, 0.5, True),
        (rules.MINIMUM_AT_47_F, 0.51, False),
        (rules.BELOW_MINIMUM, 0.41, False),
        (rules.HEAD_NOMINAL, 2.1, False),
        (rules.WITH_STRIPS, 0.9, False),
        (rules.STRIPS, 1.1, False),
        (rules.ROOM_HEATER, 0.9, False),
        (rules.SINGLE_SPEED_BALANCE, 30.0, True),
    ],
)
def test_limits(rule: str, value: float, kept: bool) -> None:
    found = rules.check(rule, value)
    assert found.is_kept is kept
    assert found.source


def test_a_rule_that_is_not_there() -> None:
    with pytest.raises(KeyError, match="rule of thumb"):
        rules.check("rule of thumb", 1.0)


@pytest.mark.parametrize(
    ("output", "load", "kept"),
    [
        (10_000.0, 6_000.0, True),  # 167 %
        (10_000.0, 5_500.0, True),  # 182 %, but the next step above 5.5 kW
        (15_000.0, 8_000.0, False),  # 188 %, and 10 kW would have done
        (5_000.0, 6_000.0, False),  # too small
        (5_000.0, 1_000.0, True),  # the smallest step there is
    ],
)
def test_electric_heat_or_the_next_step(output: float, load: float, kept: bool) -> None:
    assert rules.electric_heat(output, load).is_kept is kept
