"""Over which years, at which rates and in which money the future is counted."""

from __future__ import annotations

from dataclasses import dataclass, replace

from costcompare.money.factors import present_value, present_value_growing, with_inflation


@dataclass(frozen=True)
class Outlook:
    """The years ahead.

    Rates are real (without inflation) as long as ``inflation`` is only used to take it out
    of amounts that are fixed in dollars; :meth:`nominal` gives the same outlook in the money
    of each year. Both give the same present values.
    """

    study_years: int
    """Whole years that are looked at, at least 1"""
    discount_rate: float
    """A year (0.03 for 3 %)"""
    price_growth: float
    """Of energy, a year"""
    inflation: float = 0.0
    """A year; takes down what is fixed in dollars, such as a tax credit a year later"""
    cost_growth: float = 0.0
    """Of maintenance and of replacements, a year: 0 in real money"""

    def __post_init__(self) -> None:
        if self.study_years < 1:
            raise ValueError(f"the study period must be at least 1 year, not {self.study_years}")
        if not min(self.discount_rate, self.price_growth, self.inflation, self.cost_growth) > -1.0:
            raise ValueError("a rate a year must be above -100 %")

    def nominal(self) -> Outlook:
        """The same outlook in the money of each year."""
        return replace(
            self,
            discount_rate=with_inflation(self.discount_rate, self.inflation),
            price_growth=with_inflation(self.price_growth, self.inflation),
            cost_growth=with_inflation(self.cost_growth, self.inflation),
            inflation=0.0,
        )

    def energy(self, yearly: float, years: float) -> float:
        """Present value of a yearly amount that grows with the price of energy [$]."""
        return yearly * present_value_growing(self.discount_rate, self.price_growth, years)

    def upkeep(self, yearly: float, years: float) -> float:
        """Present value of a yearly amount that grows with costs in general [$]."""
        return yearly * present_value_growing(self.discount_rate, self.cost_growth, years)

    def purchase(self, cost: float, after_years: float) -> float:
        """Present value of something that costs ``cost`` today and is bought later [$]."""
        grown = cost * present_value(self.cost_growth, -after_years)
        return grown * present_value(self.discount_rate, after_years)

    def fixed(self, dollars: float, after_years: float) -> float:
        """Present value of an amount that is fixed in dollars and comes later [$]."""
        rate = with_inflation(self.discount_rate, self.inflation)
        return dollars * present_value(rate, after_years)
