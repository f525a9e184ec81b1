"""The order of the homes, countable by hand."""

from __future__ import annotations

import itertools

import pytest

from costcompare.batch import RANKINGS, HomeDone, OptionLine, ranked


def line(
    option: str,
    *,
    saving: float = 500.0,
    payback: float | None = 6.0,
    gained: int = 100,
    net: float = 0.0,
) -> OptionLine:
    return OptionLine(
        option=option,
        installed_cost_usd=3000.0,
        bill_now_usd=2000.0,
        bill_now_at_wanted_warmth_usd=2400.0,
        bill_after_usd=2000.0 - saving,
        first_year_saving_usd=saving,
        same_warmth_saving_usd=saving + 400.0,
        simple_payback_years=payback,
        net_savings_usd=net,
        warm_now_percent=40.0,
        warm_after_percent=90.0,
        warmth_gained_hours=gained,
        fitted_bills=0,
    )


HOMES = (
    HomeDone("1", "A", "A", (line("x", saving=300.0, payback=9.0, gained=900),)),
    HomeDone(
        "2",
        "B",
        "B",
        (
            line("x", saving=700.0, payback=None, gained=10),
            line("y", saving=400.0, payback=3.0, gained=20),
        ),
    ),
    HomeDone("3", "C", "C", (line("x", saving=-100.0, payback=None, gained=500),)),
    HomeDone("4", "D", "", (), ("homes.csv, row 5: …",)),
)


@pytest.mark.parametrize(
    ("by", "order"),
    [("saving", ["B", "A", "C"]), ("payback", ["B", "A", "C"]), ("warmth", ["A", "C", "B"])],
)
def test_the_best_home_stands_first(by: str, order: list[str]) -> None:
    assert by in RANKINGS
    ranking = ranked(HOMES, by)  # type: ignore[arg-type]
    assert list(ranking.table["home"]) == order
    assert list(ranking.table[f"rank_by_{by}"]) == [1, 2, 3]
    assert [home.home for home in ranking.left_out] == ["D"]


def test_each_ranking_takes_the_option_that_is_best_by_it() -> None:
    assert ranked(HOMES, "saving").table.set_index("home").loc["B", "option"] == "x"
    assert ranked(HOMES, "payback").table.set_index("home").loc["B", "option"] == "y"


def test_every_option_stands_with_its_home() -> None:
    table = ranked(HOMES, "payback", every=True).table
    assert list(zip(table["home"], table["option"], strict=True)) == [
        ("B", "y"),
        ("B", "x"),
        ("A", "x"),
        ("C", "x"),
    ]


def test_the_order_does_not_hang_on_which_was_finished_first() -> None:
    tables = [ranked(homes, "saving").table for homes in itertools.permutations(HOMES)]
    assert all(table.equals(tables[0]) for table in tables)


def test_two_homes_of_one_name_stay_two() -> None:
    twins = [HomeDone(key, "A", "A", (line("x"),)) for key in ("1", "2")]
    assert list(ranked(twins).table["rank_by_saving"]) == [1, 2]


def test_nothing_to_rank_is_an_empty_table() -> None:
    ranking = ranked([HOMES[3]])
    assert ranking.table.empty
    assert "rank_by_saving" in ranking.table.columns
