"""The heat loss by the bills beside the one by the survey, in sentences."""

from __future__ import annotations

from costcompare.bill_heat_loss import BillHeatLoss
from costcompare.sizing import DesignConditions
from costcompare.views import numbers
from costcompare.views.wording.naming import plural

NO_BILLS = (
    "The case holds no real bills, so this loss rests on the survey alone. With a bill of winter "
    "and one of May or September it can be held against what the house really used."
)
USED = (
    "The machines here are held against the loss by the survey. Too large a machine costs more "
    "and goes on and off; too small a one leaves the coldest hours to resistance heat, or cold."
)


def both_losses_answer(loss: BillHeatLoss, design: DesignConditions) -> str:
    """The two losses, for the coldest hour and for each degree, and how far apart they are."""
    fitted, each = loss.fitted_btu_h, loss.fitted_btu_h_per_degf
    bills = f"{numbers.count(loss.bills)} real {plural(loss.bills, 'bill', 'bills')}"
    low, likely, high = (
        numbers.btu_h(one or 0.0) for one in (fitted.low, fitted.likely, fitted.high)
    )
    return (
        f"By the survey the house loses {numbers.btu_h(loss.survey_btu_h)} at "
        f"{numbers.degrees(design.outdoor_degf)}, "
        f"{numbers.heat_per_degree(loss.survey_btu_h_per_degf)}. By {bills} it loses "
        f"{numbers.about(likely)}, in 8 of 10 homes that explain them between {low} and {high}; "
        f"{numbers.heat_per_degree(each.likely or 0.0)}. {_apart(loss)}"
    )


def _apart(loss: BillHeatLoss) -> str:
    share = numbers.percent(abs(loss.disagreement))
    side = "less" if loss.disagreement < 0.0 else "more"
    if loss.verdict == "the same":
        return f"That is {share} {side}: the two agree as far as the bills can tell."
    return f"That is {share} {side} by the bills, and one of the two is wrong."


def meaning_answer(loss: BillHeatLoss) -> str:
    """What a disagreement may come from; empty where the two agree."""
    said = []
    if loss.verdict == "less by the bills":
        said.append(
            "If the bills are right, machines chosen by the survey are larger than the house "
            "needs. Bills also look low where rooms stood cold or closed off, wood was burnt, or "
            "the thermostat was lower than said: ask for that before choosing a smaller one."
        )
    if loss.verdict == "more by the bills":
        said.append(
            "If the bills are right, machines chosen by the survey are too small for the coldest "
            "hours. Look for leaks and missing insulation that the survey did not see. Bills also "
            "look high where it was kept warmer than said, or where plug-in heaters or a car were "
            "on them: ask for that before choosing a larger one."
        )
    if loss.colder_than_said:
        said.append("These bills fit only if the house is kept clearly colder than was said.")
    if loss.unexplained_bills:
        count = loss.unexplained_bills
        said.append(
            f"{numbers.count(count)} of the bills {plural(count, 'does', 'do')} not fit the house "
            "at all: “costcompare fit” says which, and what usually lies behind it."
        )
    return " ".join(said)
