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
    warm_and_range_key: str

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

    card: str
    card_lead: str
    card_notice: str
    settings: str
    care: str
    care_points: tuple[str, ...]
    amiss: str
    amiss_points: tuple[str, ...]
    tile_heads: str
    tile_furnace: str
    tile_furnace_note: str
    tile_strips: str
    tile_strips_note: str
    tile_heaters: str
    tile_night: str
    night_notes: tuple[str, str, str]
    """Hold, set back, either"""
    night_hold: str
    night_back: str
    night_either: str

    contractor: str
    contractor_notice: str
    load_figure: str
    at_outdoors: str
    pump_figure: str
    resistance_figure: str
    of_the_load: str
    backup_figure: str
    of_heating: str
    needs: str
    loads_table: str
    area: str
    heat_at: str
    falls_to: str
    cooling_most: str
    smallest_head: str
    too_big: str
    fits: str
    machines: str
    machines_table: str
    machines_note: str
    machine: str
    machine_in: str
    load_at: str
    most_at: str
    covers: str
    least_at: str
    below_least: str
    at_most: str
    balance: str
    always_covers: str
    outside: str
    all_heads: str
    panel: str
    circuits_table: str
    circuit: str
    goes_or_comes: str
    goes: str
    comes: str
    amps: str
    breaker: str
    from_to: str
    or_never: str
    circuits: str
    backup: str
    life_cycle: str
    life_table: str
    figure: str
    discounted: str
    ratio: str
    rate: str
    over_the_years: str
    as_today: str
    energy_saved: str
    upkeep: str
    bought_again: str
    not_bought_again: str
    left_at_end: str
    ask: str

    home: str
    weather: str
    warmth: str
    month: str
    csv_months: tuple[str, str, str]
    csv_bill: str
    csv_rooms: tuple[str, str, str, str]
    csv_coldest: str
    csv_winter: str
    csv_unmet: str


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
    warm_and_range_key=(
        "Warm hours of 100 are counted while somebody uses the room: neither too cold nor too hot. "
        "Below each bill, the range of 8 of 10 homes that fit these facts."
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
    card="Settings card",
    card_lead="With “{}” in place, and the {} you want where you sit, set it like this.",
    card_notice=(
        "Worked out for this home and one year of weather. Whoever lives here knows best what is "
        "comfortable: change one setting by one degree, wait two days, and change it again if you "
        "must."
    ),
    settings="What to set, and why",
    care="Through the winter",
    care_points=(
        "Look at the filters once a month and clean them: a choked filter costs warmth and money.",
        "Keep snow, ice and leaves a hand’s breadth and more away from the outdoor unit.",
        "Long runs at a low hum are right. Steam and a pause while it thaws itself are, too.",
        "Keep doors open to rooms that have no heat of their own.",
    ),
    amiss="When something is amiss",
    amiss_points=(
        "A room stays too cold, or backup heat runs on a mild day: call whoever fitted it.",
        "A smell of burning, water at a unit, a breaker that trips again: switch it off and call.",
        "No heat in hard frost: use what backup there is, and let taps on outside walls drip.",
    ),
    tile_heads="Heads",
    tile_furnace="Old furnace",
    tile_furnace_note="and leave it there",
    tile_strips="Strips locked out above",
    tile_strips_note="outdoors",
    tile_heaters="Room heaters",
    tile_night="At night",
    night_notes=(
        "turning down by {} adds about {} a year",
        "turning down by {} takes about {} a year off",
        "turning down by {} changes the bill by next to nothing",
    ),
    night_hold="hold",
    night_back="set back",
    night_either="as you like",
    contractor="Sheet for the contractor",
    contractor_notice=(
        "An estimate from the facts of the case. It helps to choose and to check; it is no load "
        "calculation for a permit, no wiring plan and no commissioning sheet. The data sheet and "
        "the nameplate of the machine, the local code and a licensed trade decide."
    ),
    load_figure="Heat needed",
    at_outdoors="at {} outdoors",
    pump_figure="Heat pumps give",
    resistance_figure="Electric heat gives",
    of_the_load="{} of the load",
    backup_figure="Resistance heat a year",
    of_heating="{} of {} for heating, at the warmth you want",
    needs="What the house needs",
    loads_table="Loads of the rooms with this option",
    area="Floor",
    heat_at="Heat at {}, {}",
    falls_to="Without own heat",
    cooling_most="Cooling, hot day, {}",
    smallest_head="Smallest head",
    too_big="too big",
    fits="fits",
    machines="The machines of this option",
    machines_table="Each machine against its load",
    machines_note=(
        "Hours are those of the year at the warmth you want, with their share of the hours of "
        "heating. “On and off” are hours with less than the minimum."
    ),
    machine="Machine",
    machine_in="{}, {}",
    load_at="Load at {}, {}",
    most_at="Most at {}, {}",
    covers="Covers",
    least_at="Least at {}, {}",
    below_least="Hours on and off",
    at_most="Hours at its most",
    balance="Balance point",
    always_covers="always covers",
    outside="Outside the usual limits: {}.",
    all_heads="All heads together",
    panel="Electricity, for a licensed electrician",
    circuits_table="Circuits that come and go, at 240 V",
    circuit="Machine",
    goes_or_comes="",
    goes="goes",
    comes="comes",
    amps="Circuit",
    breaker="Breaker",
    from_to="{} to {}",
    or_never="{} or never",
    circuits="Circuits, at least",
    backup="Backup and controls",
    life_cycle="The money over the years",
    life_table="Life-cycle figures of this option against today, in today’s value",
    figure="Figure",
    discounted="Years to pay back, in today’s value",
    ratio="Savings-to-investment ratio",
    rate="Adjusted internal rate of return",
    over_the_years="All bills and costs over the years",
    as_today="The same going on as today",
    energy_saved="Energy saved, in today’s value",
    upkeep="Upkeep, in today’s value",
    bought_again="Bought again, in today’s value",
    not_bought_again="Today’s system not bought again, in today’s value",
    left_at_end="Left at the end, in today’s value",
    ask="Ask on site",
    home="Home",
    weather="Weather",
    warmth="Warmth",
    month="Month (1 to 12)",
    csv_months=("Electricity (kWh)", "Heating (kWh)", "Cooling (kWh)"),
    csv_bill="Bill",
    csv_rooms=("Wanted hours (h)", "Warm hours (h)", "Cold hours (h)", "Hot hours (h)"),
    csv_coldest="Coldest hour ({})",
    csv_winter="Mean of winter hours in use ({})",
    csv_unmet="Heat lacking (kWh)",
)
