"""The first screen: what it says is what the results say."""

from __future__ import annotations

import re

import pytest

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.thermostat import Sweep
from costcompare.views import numbers
from costcompare.views.wording.headline import headline, of_100, year_of_setting
from costcompare.views.wording.setting import swept as choice_of


def test_every_number_of_the_first_sentence_is_a_result(
    comparison: Comparison, option: str
) -> None:
    shown = headline(comparison, option)
    now, after = comparison.today, comparison.choice(option, AS_WANTED)
    warm = [
        100 * sum(r.comfort_hours for r in c.rooms) / sum(r.wanted_hours for r in c.rooms)
        for c in (now, after)
    ]
    without_name = shown.lead.replace(option, "")
    assert re.findall(r"\$\d+(?:,\d{3})*", without_name) == [
        numbers.dollars_a_year(now.annual.bill_usd),
        numbers.dollars_a_year(after.annual.bill_usd),
    ]
    assert re.findall(r"warm in (\d+) of", without_name) == [str(round(share)) for share in warm]
    assert shown.now in shown.lead
    assert shown.after in shown.lead
    assert shown.slim_bill == f"{shown.now} → {shown.after} a year"


def test_the_worst_month_stands_under_the_year(comparison: Comparison, option: str) -> None:
    worst = max(comparison.today.monthly, key=lambda month: month.bill_usd)
    note = headline(comparison, option).now_note
    assert numbers.dollars_a_month(worst.bill_usd) in note
    assert numbers.month_name(worst.month) in note
    assert note.endswith("as you live now")


def test_a_setting_moves_what_comes_after_and_leaves_what_is_now(
    comparison: Comparison, swept: Sweep, option: str
) -> None:
    year = choice_of(swept, option).at(62.0)
    shown = headline(comparison, option, year_of_setting(year, "set to 62 °F day and night"))
    assert shown.now == headline(comparison, option).now
    assert shown.after == numbers.dollars_a_year(year.bill_usd)
    assert "set to 62 °F day and night" in shown.lead


@pytest.mark.parametrize(
    ("share", "text"),
    [(0.0, "0"), (0.001, "1"), (0.444, "44"), (0.999, "99"), (1.0, "100")],
)
def test_all_and_none_are_said_of_all_and_none_alone(share: float, text: str) -> None:
    assert of_100(share) == text
