"""Stories that the built-in examples tell, as the trade knows them (common practice, no source)."""

from __future__ import annotations

from functools import cache

from costcompare import compare
from costcompare.case import example_path, read_case
from costcompare.comparison import AS_LIVED, AS_WANTED, Comparison


@cache
def example(name: str) -> Comparison:
    return compare(read_case(example_path(name)))


def test_putting_the_controls_right_pays_back_long_before_a_new_machine() -> None:
    """A compressor locked out in any frost and strips on a hair trigger: a service visit."""
    comparison = example("wrong_settings")
    right = comparison.choice("Put the controls right", AS_LIVED)
    new = comparison.choice("A variable heat pump, ducts sealed", AS_LIVED)
    assert right.money is not None
    assert new.money is not None
    assert right.annual.backup_kwh < 0.2 * comparison.today.annual.backup_kwh
    assert right.money.simple_payback_years is not None
    assert right.money.simple_payback_years < 2.0
    assert new.money.simple_payback_years is not None
    assert new.money.simple_payback_years > 10.0


def test_saving_as_you_live_is_less_than_saving_at_the_same_warmth() -> None:
    """A family that keeps a cool house saves less cash than one that paid for warmth."""
    comparison = example("demo")
    for choice in comparison.choices[2:]:
        if choice.warmth == AS_WANTED and choice.money is not None:
            assert choice.money.same_warmth_saving_usd is not None
            assert choice.money.first_year_saving_usd < choice.money.same_warmth_saving_usd
