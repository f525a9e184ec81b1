"""The book of the slider: every setting's finished sentences and figures, made beforehand.

The browser only looks a page up in it, so that the prose, the figures on top and the
chart of part four can never disagree.
"""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.thermostat import Sweep
from costcompare.views import numbers
from costcompare.views.figures.setting import MARKS, nearest, setting_chart, wanted_chart
from costcompare.views.wording import setting as words
from costcompare.views.wording.headline import (
    Headline,
    YearShown,
    headline,
    of_100,
    year_of_choice,
    year_of_setting,
)

WANTED, HELD, LOWERED = "wanted", "held", "lowered"
"""What the thermostat does at night: as the family wants it, the same, lower"""


def make_book(comparison: Comparison, sweep: Sweep, name: str, key: str) -> dict[str, Any]:
    """The pages for one choice: by what the night does, then by setting.

    The chapter ``wanted`` has a single page, the home as compared at the warmth that the
    family wants; ``held`` and ``lowered`` have one for each setting.
    """
    start = nearest(sweep.settings_degf, sweep.wanted_degf)
    return {
        "key": key,
        "choice": name,
        "start": start,
        "marks": list(MARKS),
        WANTED: {
            "pages": [_wanted_page(comparison, sweep, name, start)],
            "chart": wanted_chart(comparison, sweep, name).to_plotly_json(),
        },
        **{
            night: {
                "pages": [
                    _page(comparison, sweep, name, setting_degf, held=held)
                    for setting_degf in sweep.settings_degf
                ],
                "chart": setting_chart(sweep, name, held=held).to_plotly_json(),
            }
            for night, held in ((HELD, True), (LOWERED, False))
        },
    }


def _wanted_page(comparison: Comparison, sweep: Sweep, name: str, start: float) -> dict[str, Any]:
    today = comparison.choice(comparison.today.name, AS_WANTED)
    chosen = comparison.choice(name, AS_WANTED)
    years = [year_of_choice(choice, choice.warmth) for choice in (today, chosen)]
    return _texts(
        setting=start,
        headline=headline(comparison, name),
        answer=words.wanted_answer(comparison, name),
        night_answer=words.night_answer(sweep, name, start),
        years=years,
        degrees=_degrees(sweep, name, start),
    )


def _page(
    comparison: Comparison, sweep: Sweep, name: str, setting_degf: float, *, held: bool
) -> dict[str, Any]:
    thermostat = words.thermostat_words(sweep, setting_degf, held=held)
    years = [
        year_of_setting(choice.at(setting_degf, held=held), thermostat)
        for choice in (words.swept(sweep, None), words.swept(sweep, name))
    ]
    return _texts(
        setting=setting_degf,
        headline=headline(comparison, name, years[1]),
        answer=words.setting_answer(sweep, name, setting_degf, held=held),
        night_answer=words.night_answer(sweep, name, setting_degf),
        years=years,
        degrees=_degrees(sweep, name, setting_degf),
    )


def _degrees(sweep: Sweep, name: str, setting_degf: float) -> list[str]:
    both = (words.swept(sweep, None), words.swept(sweep, name))
    return [words.degree_text(choice, setting_degf) for choice in both]


def _texts(
    *,
    setting: float,
    headline: Headline,
    answer: str,
    night_answer: str,
    years: list[YearShown],
    degrees: list[str],
) -> dict[str, Any]:
    """One page as the browser reads it; rows are today and the choice."""
    return {
        "setting": setting,
        "headline": asdict(headline),
        "answer": answer,
        "night_answer": night_answer,
        "bills": [numbers.dollars_a_year(year.bill_usd) for year in years],
        "warm": [f"{of_100(year.warm_share)} of 100" for year in years],
        "degrees": degrees,
        "bills_usd": [year.bill_usd for year in years],
    }
