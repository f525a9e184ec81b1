"""The report as PDF: pages, tags, figures, the same bytes, and texts that stay texts."""

from __future__ import annotations

import pickle
import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from costcompare.billing.tariff import rounded
from costcompare.case import Case
from costcompare.comparing import compare
from costcompare.comparison import Comparison
from costcompare.thermostat import Sweep
from costcompare.views import numbers
from costcompare.views.report import report_pdf
from costcompare.views.wording.bill import bill_lines
from tests.views.report.conftest import DAY, read, text_of

HOSTILE = '#read("/etc/hosts") *bold* $x^2$ <b>&amp; @x \\ "quoted" // [a](b) `c`'


def test_it_is_tagged_and_says_what_it_is(report: bytes, comparison: Comparison) -> None:
    root = read(report).trailer["/Root"]
    assert bool(root["/MarkInfo"]["/Marked"])
    assert root["/StructTreeRoot"] is not None
    assert root["/Lang"] == "en"
    assert bool(root["/ViewerPreferences"]["/DisplayDocTitle"])
    assert b"pdfuaid:part" in root["/Metadata"].get_object().get_data()
    metadata = read(report).metadata
    assert metadata is not None
    assert str(metadata.title).startswith(comparison.title)


def kinds_of_tags(report: bytes) -> Iterator[str]:
    seen: set[int] = set()
    left = [read(report).trailer["/Root"]["/StructTreeRoot"]]
    while left:
        node = left.pop().get_object()
        if isinstance(node, list):
            left += node
        elif hasattr(node, "get") and id(node) not in seen:
            seen.add(id(node))
            if "/S" in node:
                yield str(node["/S"])
            if "/K" in node:
                left.append(node["/K"])


def test_headings_tables_and_pictures_are_told_apart(report: bytes) -> None:
    tags = list(kinds_of_tags(report))
    assert tags.count("/H1") == 1
    assert tags.count("/H2") == 8
    assert tags.count("/Table") == 6
    assert tags.count("/Figure") >= 3
    assert "/TH" in tags


def test_it_has_two_pages(report: bytes) -> None:
    assert len(read(report).pages) == 2
    assert "Page 1 of 2" in text_of(report)


def test_other_homes_have_two_pages_at_most(example: Case) -> None:
    made = report_pdf(compare(example), example, made_on=DAY)
    assert len(read(made).pages) <= 2


def test_six_options_and_twelve_rooms_have_two_pages(large: Comparison, demo: Case) -> None:
    made = report_pdf(large, demo, made_on=DAY)
    assert len(read(made).pages) == 2
    text = text_of(made)
    assert all(room.name in text for room in large.today.rooms)


def test_long_names_many_options_and_rooms_still_fit(stretched: Comparison, demo: Case) -> None:
    made = report_pdf(stretched, demo, made_on=DAY)
    assert len(read(made).pages) <= 3
    text = text_of(made)
    for choice in stretched.choices[2:]:
        assert choice.name in text
    for room in stretched.today.rooms:
        assert room.name in text


def shown(comparison: Comparison, case: Case, sweep: Sweep) -> set[str]:
    """Every amount that the result holds, as it is written."""
    amounts: set[float] = {incentive.amount for incentive in case.money.incentives}
    for choice in comparison.choices:
        amounts |= {choice.annual.bill_usd, *(month.bill_usd for month in choice.monthly)}
        money = choice.money
        if money is not None:
            price = money.installed_cost_usd - money.incentives_usd
            amounts |= {price, money.net_savings_usd}
            # Savings are the differences of bills as they are written.
            bills = [one.annual.bill_usd for one in comparison.choices[:2]]
            apart = {numbers.between_bills(one, choice.annual.bill_usd) for one in bills}
            amounts |= apart | {numbers.between_bills(bills[1], bills[0])}
    for one in sweep.choices:
        amounts |= {one.one_degree_usd(at) or 0.0 for at in sweep.settings_degf}
        for at in sweep.settings_degf:
            amounts.add(one.at(at, held=False).bill_usd - one.at(at).bill_usd)
    lines = bill_lines(comparison)
    ducts = sum(line.usd for line in lines if line.is_duct)
    written = {numbers.dollars(line.usd) for line in lines}
    written |= {numbers.dollars(usd) for usd in (ducts, sum(line.usd for line in lines))}
    for usd in amounts:
        written |= {numbers.dollars_a_year(abs(usd)), numbers.dollars_a_month(usd)}
        written.add(numbers.dollars_a_year(usd))
    return written


def test_every_amount_is_one_of_the_result(
    report: bytes, comparison: Comparison, demo: Case, swept: Sweep
) -> None:
    text = text_of(report)
    scale = re.search(r"Bill a year(.*?)Warm hours of 100", text)
    assert scale is not None  # the scale of the chart is round, not a result
    found = set(re.findall(r"−?\$[\d,]*\d", text.replace(scale[1], "")))
    assert len(found) > 30
    chart = {"$0"} | {f"{sign}${n}0,000" for n in (1, 2, 3, 4, 5) for sign in ("", "−")}
    assert found - shown(comparison, demo, swept) - chart == set()


def test_the_figures_of_the_result_are_in_it(
    report: bytes, comparison: Comparison, option: str
) -> None:
    text = text_of(report)
    for choice in comparison.choices:
        assert numbers.dollars_a_year(choice.annual.bill_usd) in text
    for caution in comparison.cautions:
        assert caution.text in text
    for line in bill_lines(comparison):
        assert numbers.dollars(line.usd) in text
    assert rounded(sum(line.usd for line in bill_lines(comparison))) % numbers.YEAR_STEP == 0.0
    assert option in text


def test_another_result_is_another_text(comparison: Comparison, demo: Case, report: bytes) -> None:
    today = replace(comparison.today, annual=replace(comparison.today.annual, bill_usd=98_760.0))
    changed = replace(comparison, choices=(today, *comparison.choices[1:]))
    text = text_of(report_pdf(changed, demo, made_on=DAY))
    assert "about $98,760" in text
    assert "$98,760" not in text_of(report)


MADE = """
import pickle, sys
from datetime import date
comparison, case = pickle.load(sys.stdin.buffer)
from costcompare.views.report import report_pdf
sys.stdout.buffer.write(report_pdf(comparison, case, made_on=date(2027, 1, 15)))
"""


def test_another_process_makes_the_same_bytes(comparison: Comparison, demo: Case) -> None:
    own = report_pdf(comparison, demo, made_on=DAY)
    given = pickle.dumps((comparison, demo))
    done = subprocess.run(
        [sys.executable, "-c", MADE],
        input=given,
        capture_output=True,
        check=True,
        cwd=Path("/"),
        env={"PYTHONPATH": str(Path(__file__).parents[3]), "TZ": "Asia/Tokyo", "LANG": "C"},
    )
    assert done.stdout == own


def test_a_hostile_title_is_shown_as_text(comparison: Comparison, demo: Case) -> None:
    hostile = replace(comparison, title=HOSTILE)
    assert " ".join(HOSTILE.split()) in text_of(report_pdf(hostile, demo))


def test_letters_that_the_fonts_lack_do_not_stop_it(comparison: Comparison, demo: Case) -> None:
    made = report_pdf(replace(comparison, title="Дом 家 🏠 \u202e\u0301 Haus"), demo)
    assert "Haus" in text_of(made)


def test_without_a_day_there_is_no_date_in_it(comparison: Comparison, demo: Case) -> None:
    metadata = read(report_pdf(comparison, demo)).metadata
    assert metadata is not None
    assert metadata.creation_date is None
    dated = read(report_pdf(comparison, demo, made_on=DAY)).metadata
    assert dated is not None
    assert dated.creation_date is not None
    assert dated.creation_date.date() == DAY
