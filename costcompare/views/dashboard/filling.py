"""What goes into the empty places of the page, part by part, from one worked-out home."""

from __future__ import annotations

from typing import Any

from costcompare.comparison import Warmth
from costcompare.thermostat import Sweep
from costcompare.views import numbers
from costcompare.views.dashboard import pieces
from costcompare.views.dashboard.filling_loans import loan_part
from costcompare.views.dashboard.pieces import node
from costcompare.views.dashboard.workbench import Worked
from costcompare.views.drawings import duct_flows, house_section
from costcompare.views.figures import rows
from costcompare.views.wording import bill, payback, running, setting, sureness
from costcompare.views.wording.money_more import money_answers
from costcompare.views.wording.naming import as_a_label
from costcompare.views.wording.notice import basis_answer

Filled = dict[str, Any]
"""What each named place of the page receives"""


def bill_part(worked: Worked) -> Filled:
    """Part one: the parts of today's bill, and the house with its ducts."""
    comparison = worked.comparison
    lines = bill.bill_lines(comparison)
    worst = numbers.month_name(bill.worst_month(comparison))
    total = numbers.dollars(sum(line.usd for line in lines))
    answer = bill.bill_answer(comparison)
    return {
        "answer": answer,
        "figure": answer,
        "bars": pieces.bar_list(rows.bill_bars(comparison)),
        "table": pieces.table(
            "Today’s bill by part",
            ("Part", "A year", worst, "kWh a year"),
            [
                (
                    line.label,
                    numbers.dollars(line.usd),
                    numbers.dollars(line.worst_month_usd),
                    numbers.kwh(line.kwh),
                )
                for line in lines
            ],
            total=(
                "Together",
                total,
                numbers.dollars(sum(line.worst_month_usd for line in lines)),
                numbers.kwh(sum(line.kwh for line in lines)),
            ),
        ),
        **_ducts(worked),
    }


def _ducts(worked: Worked) -> Filled:
    ducts, today = worked.comparison.today.ducts, worked.house.today.ducts
    if ducts is None or today is None:
        return {
            "ducts_class": "absent",
            "ducts_answer": "",
            "drawing": "",
            "drawing_alt": "",
            "key": None,
        }
    flows = [flow for flow in duct_flows(ducts, today.location) if flow.kwh > 0]
    items = [
        [
            node("span", str(flow.number), class_="badge", style=f"border-color:{flow.colour}"),
            node("span", [node("strong", numbers.kwh(flow.kwh)), f" {flow.words}"]),
        ]
        for flow in flows
    ]
    answer = bill.ducts_answer(ducts)
    return {
        "ducts_class": "",
        "ducts_answer": answer,
        "drawing": pieces.svg_source(house_section(ducts, today.location)),
        "drawing_alt": f"The house cut open, with its ducts. {answer}",
        "key": pieces.bullet_list(items, class_="flow-key"),
    }


def running_part(worked: Worked, name: str, at: Warmth) -> Filled:
    """Part two: twelve months of every choice."""
    comparison = worked.comparison
    answer = running.running_answer(comparison, name, at)
    choices = running.choices_at(comparison, at)
    months = [
        (
            numbers.month_name(month + 1),
            *(numbers.dollars_a_month(choice.monthly[month].bill_usd) for choice in choices),
        )
        for month in range(12)
    ]
    return {
        "answer": answer,
        "figure": answer,
        "rows": pieces.bar_rows(rows.month_rows(comparison, name, at)),
        "summer": running.summer_answer(comparison, name, at),
        "table": pieces.table(
            f"The bill of each month, {at}",
            ("Month", *(as_a_label(choice) for choice in choices)),
            months,
            total=(
                "A year",
                *(numbers.dollars_a_year(choice.annual.bill_usd) for choice in choices),
            ),
        ),
    }


def setting_table(sweep: Sweep, name: str) -> pieces.Tree:
    """Part four: every setting, held, for today and the choice."""
    choices = (setting.swept(sweep, None), setting.swept(sweep, name))
    names = ("now", "after")
    return pieces.table(
        "The bill and the warm hours at each setting, the same day and night",
        (
            "Setting",
            *(f"A year {words}" for words in names),
            *(f"Warm {words}" for words in names),
        ),
        [
            (
                numbers.degrees(degf),
                *(numbers.dollars_a_year(choice.at(degf).bill_usd) for choice in choices),
                *(numbers.count(choice.at(degf).warm_hours) for choice in choices),
            )
            for degf in sweep.settings_degf
        ],
    )


def money_part(worked: Worked, name: str, at: Warmth) -> Filled:
    """Part five: money out of pocket over the years, and the savings told apart."""
    comparison, facts = worked.comparison, worked.house.money
    answer = payback.payback_answer(comparison, name, at, facts.installed_on)
    position = rows.position_rows(comparison, name, at, facts.installed_on)
    return {
        "answer": answer,
        "figure": answer,
        "rows": pieces.bar_rows(position) if position else None,
        "savings": pieces.bullet_list(
            (
                [node("strong", saving.figure), node("span", saving.words)]
                for saving in payback.savings(comparison.choice(name, at), comparison.today.warmth)
            ),
            class_="counts savings",
        ),
        "incentives": payback.incentives_answer(payback.incentives_of(comparison, name)),
        "basis": basis_answer(comparison, at),
        "more": pieces.bullet_list(
            money_answers(comparison, name, at, facts.installed_on), class_="assumptions"
        ),
        "table": _money_table(worked, at),
        **loan_part(comparison, name, at),
    }


def _money_table(worked: Worked, at: Warmth) -> pieces.Tree | None:
    options = [
        choice
        for choice in running.choices_at(worked.comparison, at)
        if choice.money is not None and not choice.is_today
    ]
    if not options:
        return None
    lines = payback.money_lines(options, worked.house.money.installed_on)
    return pieces.table(
        f"The money of each choice, {at}",
        ("Amount", *(as_a_label(choice) for choice in options)),
        lines,
    )


def sure_part(worked: Worked) -> Filled:
    """Part six: how the facts are known, what to check, what was assumed."""
    comparison = worked.comparison
    counts = sureness.known_counts(comparison)
    return {
        "answer": sureness.sureness_answer(comparison),
        "counts": pieces.bullet_list(
            (
                [node("strong", numbers.count(count)), node("span", known)]
                for known, count in counts.items()
            ),
            class_="counts known",
        ),
        "cautions": pieces.bullet_list(
            (
                [
                    node("strong", f"{caution.topic}. "),
                    caution.text,
                    node("em", f" Because {caution.because}."),
                ]
                for caution in comparison.cautions
            ),
            class_="cautions",
        ),
        "weather": sureness.weather_answer(comparison),
        "assumptions": pieces.bullet_list(comparison.assumptions, class_="assumptions"),
        "facts": facts_table(worked),
    }


def facts_table(worked: Worked) -> pieces.Tree:
    """Every fact with how it is known and where it comes from."""
    return pieces.table(
        "The facts behind these figures",
        ("Fact", "Value", "Known", "Source"),
        [
            (sureness.fact_name(fact), sureness.fact_value(fact), fact.known, fact.source)
            for fact in worked.comparison.facts
        ],
    )
