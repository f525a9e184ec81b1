"""Every fixed text of the report, the card and the sheet, in one place.

Another language is another :class:`Catalogue`; the sentences with figures in them are in
:mod:`costcompare.views.wording`. ``{}`` stands for what is filled in.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Catalogue:
    """The fixed texts in one language."""

    language: str
    """BCP 47 code"""
    report: str
    """What the document is called"""
    report_for: str
    made_on: str
    estimate: str
    """What stands at the foot of every page"""
    notice: str
    page_of: str
    """``{}`` page, ``{}`` of how many"""
    contents: str

    a_year_now: str
    a_year_after: str
    warm_hours: str
    warm_from_to: str

    bill: str
    running: str
    rooms: str
    thermostat: str
    money: str
    sure: str
    first_things: str
    cautions: str
    assumptions: str

    bill_table: str
    part: str
    a_year: str
    duct_key: str
    bill_picture: str
    number: str
    heat: str

    running_table: str
    choice: str
    now_badge: str
    each_month: str
    year_lived: str
    year_wanted: str
    warm_lived: str
    warm_wanted: str
    warm_key: str

    rooms_table: str
    room: str
    winter_now: str
    winter_after: str
    rooms_key: str

    chart_bill: str
    chart_warm: str
    setting_picture: str
    degree: str
    no_sweep: str

    money_table: str
    to_install: str
    saving_lived: str
    saving_wanted: str
    back_lived: str
    back_wanted: str
    left_over: str
    less: str
    more: str
    no_change: str
    not_within: str
    chart_position: str
    money_picture: str
    no_options: str

    known_table: str
    measured: str
    seen: str
    guessed: str
    known: str
    facts: str
    first_things_key: str


ENGLISH = Catalogue(
    language="en",
    report="What heating this home costs, and what would change it",
    report_for="For {}",
    made_on="Worked out on {}",
    estimate="An estimate from the facts of this home, not a promise.",
    notice=(
        "Everything here is an estimate for one year of weather. It replaces no visit, no "
        "measurement, no load calculation and no offer. Electrical work, refrigerant, asbestos "
        "and burning appliances are for licensed trades under the local code."
    ),
    page_of="Page {} of {}",
    contents="In this report",
    a_year_now="A year now",
    a_year_after="A year after",
    warm_hours="Warm hours",
    warm_from_to="{} → {} of 100",
    bill="Why the bill is what it is",
    running="What each choice costs to run",
    rooms="Which rooms stay warm",
    thermostat="If you move the thermostat",
    money="When the money comes back",
    sure="How sure we are",
    first_things="First things first",
    cautions="Before anybody starts work",
    assumptions="What was assumed",
    bill_table="The parts of today’s bill; they add up to it",
    part="What it pays for",
    a_year="A year",
    duct_key="What becomes of the heat that goes into the ducts",
    bill_picture="The house cut open: {}",
    number="No.",
    heat="Heat that",
    running_table="Each choice: the bill of every month and of the year, and the warm hours",
    choice="Choice",
    now_badge="now",
    each_month="January to December, as you live now",
    year_lived="A year, as you live now",
    year_wanted="A year, at the warmth you want",
    warm_lived="Warm of 100, as you live now",
    warm_wanted="Warm of 100, at the warmth you want",
    warm_key=(
        "Warm hours of 100 are counted while somebody uses the room: neither too cold nor too hot."
    ),
    rooms_table="Warm hours of 100 in each room; options at the warmth you want",
    room="Room",
    winter_now="In winter now",
    winter_after="In winter with {}",
    rooms_key="“In winter” is the mean over the hours in use, December to February.",
    chart_bill="Bill a year",
    chart_warm="Warm hours of 100",
    setting_picture="The bill of a year at each thermostat setting, held day and night. {}",
    degree=(
        "One more degree, around {}, costs about {} a year with today’s system and about {} "
        "with {}."
    ),
    no_sweep="The settings were not tried for this report.",
    money_table="What each option costs and brings in, confirmed incentives taken off",
    to_install="To install",
    saving_lived="First year, as you live now",
    saving_wanted="First year, at the warmth you want",
    back_lived="Money back, as you live now",
    back_wanted="Money back, at the warmth you want",
    left_over="Left over after {} years, as you live now",
    less="{} less",
    more="{} more",
    no_change="no change",
    not_within="not in {} years",
    chart_position="Out of pocket so far",
    money_picture="Money out of pocket year by year, as you live now. {}",
    no_options="This case holds no option, so nothing is bought and no money comes back.",
    known_table="How the facts behind these figures are known",
    measured="measured",
    seen="seen",
    guessed="guessed",
    known="Known",
    facts="Facts",
    first_things_key=(
        "Each alone, as you live now, the quickest to come back first. Two together save less than "
        "the sum of both."
    ),
)
