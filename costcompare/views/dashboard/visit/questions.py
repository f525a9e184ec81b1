"""What a visit asks, in the order in which one walks through a home.

Within a stop the first questions are those whose answers move the figures most; finer points
stand behind a line that opens. What each value may be stands in the reader of cases alone.
"""

from __future__ import annotations

from dataclasses import dataclass

from costcompare.case.paths import Location


@dataclass(frozen=True)
class Question:
    """One fact that is asked for."""

    at: Location
    """Where its answer stands in a case document"""
    label: str
    """What it is, with the unit in which a bare number is read"""
    hint: str = ""
    finer: bool = False
    """Whether it waits behind the line that opens"""
    plain: bool = False
    """Whether there is nothing to know about it: a name, a choice"""


@dataclass(frozen=True)
class Stop:
    """One place of the walk with its questions."""

    key: str
    name: str
    about: str
    questions: tuple[Question, ...]


def _ask(path: str, label: str, hint: str = "", *, finer: bool = False) -> Question:
    return Question(tuple(path.split(".")), label, hint, finer)


STOPS = (
    Stop(
        "place",
        "The place and the house",
        "The winter comes from the place, the size of every loss from the house.",
        (
            Question(("title",), "What to call this home", plain=True),
            _ask("site.latitude", "Latitude, degrees north", "a map on a phone shows it"),
            _ask("site.longitude", "Longitude, degrees east", "west is negative, such as -82.55"),
            _ask("house.floor_area", "Floor area, ft2", "heated rooms alone"),
            _ask("house.built", "Year built"),
            _ask("house.foundation", "What the house stands on"),
            _ask("house.storeys", "Storeys"),
            _ask("house.bedrooms", "Bedrooms"),
            _ask("site.elevation", "Height above the sea, ft", finer=True),
            _ask("site.time_zone", "Time zone", "such as America/New_York", finer=True),
            _ask("site.shelter", "Shelter from wind", "1 none to 5 close neighbours", finer=True),
            _ask("site.design_temperature", "Design temperature, F", finer=True),
            _ask("weather.winter", "Which winter", finer=True),
        ),
    ),
    Stop(
        "family",
        "The family and its thermostat",
        "Nothing moves the figures more than how warm they live and would like to live.",
        (
            _ask("thermostat.day", "Thermostat now, by day, F", "read it off, do not ask"),
            _ask("thermostat.wanted", "The warmth they would like, F"),
            _ask("thermostat.night", "Thermostat now, at night, F"),
            _ask("thermostat.wanted_night", "The warmth they would like at night, F"),
            _ask("house.people", "People who live here"),
            _ask(
                "other_use.electricity",
                "Electricity beside heating and hot water, kWh/month",
                "the bill of a mild month less hot water says it",
            ),
            _ask("other_use.hot_water", "Electricity for hot water, kWh/month"),
            _ask("thermostat.night_hours", "Hours of night", "such as 22-6", finer=True),
            _ask("thermostat.cooling", "Cooling setting in summer, F", finer=True),
            _ask(
                "other_use.share_to_rooms",
                "Share of that electricity that warms rooms, %",
                finer=True,
            ),
            _ask("comfort.below", "Cold counts from so much below wanted, F", finer=True),
            _ask("comfort.above", "Hot counts from so much above cooling, F", finer=True),
        ),
    ),
    Stop(
        "price",
        "The price on the bill",
        "Every amount comes from it; it stands on the last bill.",
        (
            _ask("tariff.price", "Price of electricity, $/kWh"),
            _ask("tariff.customer_charge", "Fixed charge, $/month"),
            _ask("tariff.tax", "Taxes on the bill, %"),
            _ask("tariff.daily_charge", "Fixed charge by the day, $/day", finer=True),
            _ask("tariff.minimum_bill", "Smallest bill, $/month", finer=True),
            _ask("tariff.name", "Name of the tariff", finer=True),
            _ask("tariff.currency", "Sign of money", "such as €; nothing is converted", finer=True),
        ),
    ),
    Stop(
        "heating",
        "The heating now and its ducts",
        "What the ducts lose is the largest thing that nobody in the house can see.",
        (
            _ask("today.kind", "What heats the house now"),
            _ask("today.output", "Its heat output, kW", "on the nameplate"),
            _ask("today.ducts.location", "Where the ducts run"),
            _ask("today.ducts.condition", "Condition of the ducts"),
            _ask("today.ducts.insulation", "Insulation of the ducts, R"),
            _ask("today.thermostat_room", "Room with the thermostat"),
            _ask("today.ducts.supply_leakage", "Supply leakage measured, % of airflow", finer=True),
            _ask("today.ducts.return_leakage", "Return leakage measured, % of airflow", finer=True),
            _ask("today.ducts.return_path", "How the return air comes back", finer=True),
            _ask("today.ducts.share_outside", "Share of the ducts that runs there, %", finer=True),
            _ask("today.blower.airflow", "Airflow of the blower, cfm", finer=True),
            _ask("today.blower.power", "Power of the blower, W", finer=True),
        ),
    ),
    Stop(
        "under",
        "Under the floor",
        "Look before you guess: insulation that has fallen down counts for nothing.",
        (
            _ask("house.floor_insulation", "Insulation under the floor, R"),
            _ask("house.floor_insulation_condition", "How it hangs"),
            _ask("crawlspace.vents", "Crawlspace vents"),
            _ask("crawlspace.water_pipes", "Water pipes in the crawlspace"),
            _ask("crawlspace.ground_cover", "Ground covered with plastic"),
            _ask("crawlspace.height", "Height of the crawlspace, ft", finer=True),
        ),
    ),
    Stop(
        "shell",
        "Attic, walls, windows, draughts",
        "What the house itself loses, largest first in most older homes.",
        (
            _ask("house.attic_insulation", "Insulation above the ceiling, R"),
            _ask("house.wall_insulation", "Insulation in the walls, R"),
            _ask(
                "house.air_leakage_at_50_pa",
                "Air leakage at 50 Pa, cfm",
                "from a blower-door test",
            ),
            _ask("house.window_panes", "Panes of the windows"),
            _ask("house.window_u_factor", "U-factor of the windows, Btu/h/ft2/F", finer=True),
            _ask("house.window_solar_gain", "Sun that the panes let in, %", finer=True),
            _ask("house.window_shading", "Sun that reaches the windows, %", finer=True),
            _ask("house.air_changes", "Or air changes, 1/h", finer=True),
            _ask("house.flue", "An open flue or chimney", finer=True),
        ),
    ),
)
"""Stops whose questions are always the same; rooms, doorways and options come after them"""

MONEY = Stop(
    "money",
    "Money",
    "When it would be done, and what money is worth to them.",
    (
        _ask("money.installed_on", "Day of installation", "such as 2027-04-15"),
        _ask("money.study_years", "Years to look ahead"),
        _ask("money.discount_rate", "Interest above inflation, %"),
        _ask("money.price_growth", "Growth of the price of electricity above inflation, %"),
        _ask("money.move_in_years", "Years until they may move out"),
        _ask("money.inflation", "Inflation, %", finer=True),
    ),
)

FIRST = (
    ("thermostat.wanted", "how warm they want it moves every figure most"),
    ("thermostat.day", "how warm they live now is what today’s bill hangs on"),
    ("site.latitude", "the winter comes from the place"),
    ("site.longitude", "the winter comes from the place"),
    ("house.floor_area", "every loss grows with it"),
    ("tariff.price", "every amount comes from it"),
    ("tariff.tiers.0.price", "every amount comes from it"),
    ("house.wall_insulation", "walls lose more than anything else in most older homes"),
    ("house.air_leakage_at_50_pa", "it cannot be seen, and a test settles it"),
    ("today.ducts.condition", "it decides how much heat never reaches a room"),
    ("today.ducts.location", "it decides where lost heat goes"),
    ("house.attic_insulation", "it is quick to look at"),
    ("house.foundation", "it decides what lies under the rooms"),
    ("house.floor_insulation", "it may have fallen down"),
    ("house.built", "every guess follows the years of the house"),
    ("today.ducts.insulation", "it is quick to look at"),
    ("other_use.electricity", "what is left of the bill is heating"),
    ("other_use.hot_water", "what is left of the bill is heating"),
    ("thermostat.night", "nights are a third of the winter"),
    ("house.window_panes", "it is quick to look at"),
    ("today.output", "it decides what the coldest night can ask for"),
    ("house.people", "people warm a house and use hot water"),
)
"""Facts to ask for while they are guesses, by how much they move the answer, until the ranges of
the home itself are worked out. Judgement: in
trial homes the warmth wanted moved the saving most, then the losses of the house, the ducts and
the weather, then the base load; the machine itself least."""
EVERYTHING = frozenset(
    {
        ("site", "latitude"),
        ("site", "longitude"),
        ("house", "floor_area"),
        ("tariff", "price"),
        ("tariff", "tiers", 0, "price"),
    }
)
"""Places that stand first while they are guesses, whatever the ranges say: no range holds them"""
LEAST_SHARE = 0.02
"""A finer point with less of the range is not asked for first (judgement)"""
MOST_FIRST = 5
"""How many of them are named at once"""
