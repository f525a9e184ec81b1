"""Reading a case: the whole example, the smallest case, every fault at once."""

from __future__ import annotations

from pathlib import Path

import pytest

from costcompare.case import Case, case_from_document, example_path, read_case, read_document
from costcompare.case.facts import Fact
from costcompare.errors import CaseError

from .cases import TWO_ROOMS, case, document, sentences

FOOT2 = 0.09290304  # [m2]


def fact(made: Case, path: str) -> Fact:
    """The one fact at a path."""
    found = [item for item in made.facts if item.path == path]
    assert len(found) == 1, path
    return found[0]


def test_the_smallest_case_is_whole() -> None:
    made = case()
    assert made.home.house.floor_area == pytest.approx(1500 * FOOT2)
    assert made.home.crawlspace is not None
    assert made.today.furnace_output == 15000.0
    assert made.today.ducts is not None
    assert made.today.blower is not None
    assert made.tariff.tiers[0].price == 0.125
    assert made.home.thermostat.wanted == made.home.thermostat.day
    assert made.options == ()


def test_a_stated_value_is_seen_and_a_filled_one_guessed_with_its_source() -> None:
    made = case(house={"wall_insulation": "R-11"})
    assert fact(made, "house.wall_insulation") == Fact(
        "house.wall_insulation", 11.0, "h ft2 F/Btu", "seen", "the case"
    )
    attic = fact(made, "house.attic_insulation")
    assert (attic.value, attic.known) == (19.0, "guessed")
    assert attic.source.startswith("judgement")


def test_every_fact_has_a_source_and_stands_once() -> None:
    for name in ("demo", "cold_climate"):
        facts = read_case(example_path(name)).facts
        assert all(item.source for item in facts)
        assert len({item.path for item in facts}) == len(facts)


def test_a_value_may_have_a_range() -> None:
    leak = {"likely": "18 %", "low": "12 %", "high": 0.25, "known": "measured"}
    made = case(today={"ducts": {"location": "crawlspace", "supply_leakage": leak}})
    assert made.today.ducts is not None
    assert made.today.ducts.supply_leakage == pytest.approx(0.18)
    found = fact(made, "today.ducts.supply_leakage")
    assert (found.value, found.low, found.high, found.known) == (18.0, 12.0, 25.0, "measured")


def test_plain_numbers_and_words_may_have_a_table_too() -> None:
    built = {"likely": 1974, "low": 1965, "high": 1979, "known": "guessed"}
    made = case(
        house={"built": built, "foundation": {"likely": "slab", "known": "measured"}},
        today={"ducts": {"location": "attic"}},
    )
    found = fact(made, "house.built")
    assert (found.value, found.low, found.high) == (1974, 1965, 1979)
    assert fact(made, "house.foundation").known == "measured"


def test_the_range_of_price_growth_goes_into_the_money() -> None:
    growth = {"likely": "1 %", "low": "0 %", "high": "4 %"}
    money = case(money={"price_growth": growth}).money
    assert (money.price_growth_low, money.price_growth, money.price_growth_high) == (
        0.0,
        0.01,
        0.04,
    )


def test_all_faults_of_a_file_come_at_once() -> None:
    wrong = document(
        titel="x",
        site={"latitude": None},
        house={"floor_area": "-3 ft2", "wall_insulation": 11, "foundation": "slab"},
        thermostat={"day": "164 F"},
        rooms=[
            {"name": "hall", "floor_area": "100 ft", "outside_walls": {"south": "10 ft"}},
            {"name": "hall", "floor_area": "100 ft2"},
        ],
        doorways=[{"between": ["hall", "bth"]}],
        options=[
            {
                "name": "x",
                "kind": "improve",
                "installed_cost": "$9",
                "set": {"house.attic_insulation": "R-x"},
            }
        ],
        tariff={"price": "12 F"},
    )
    assert sorted(sentences(wrong)) == sorted(
        [
            "site.latitude: is needed. Write for example latitude = 35.60.",
            'house.floor_area: must be more than 0 ft2 (given: "-3 ft2").'
            ' Write for example "380 ft2".',
            "house.wall_insulation: needs a unit (R-19, m2 K/W) (given: 11)."
            ' Write for example "R-19".',
            'rooms.hall.floor_area: must be an area (ft2, m2) (given: "100 ft").'
            ' Write for example "380 ft2".',
            'thermostat.day: must be at most 95 F (given: "164 F"). Write for example "68 F".',
            'tariff.price: must be a price of electricity ($/kWh, cents/kWh) (given: "12 F").'
            ' Write for example "0.125 $/kWh".',
            "titel: is not a key of a case here. Write title, if that is meant.",
            "rooms.hall: must be the name of one row only (given: 2 rows).",
            "doorways.1.between: must be a room of the house: hall (given: bth).",
            "today.ducts.location: ducts cannot run in the crawlspace: the house has none"
            " (given: the foundation is a slab).",
            "options.x.set.house.attic_insulation: must be an R-value (R-19, m2 K/W)"
            ' (given: "R-x"). Write for example "R-19".',
        ]
    )


@pytest.mark.parametrize(
    ("table", "sentence"),
    [
        (
            {"low": "3 %", "high": "4 %"},
            "today.ducts.supply_leakage: needs a likely value beside low and high"
            ' (given: a table with low, high). Write likely = "...".',
        ),
        (
            {"likely": "18 %", "low": "20 %"},
            "today.ducts.supply_leakage: low must not be above likely, nor likely above high"
            ' (given: low "20 %").',
        ),
        (
            {"likely": "18 %", "low": "3 F"},
            'today.ducts.supply_leakage.low: must be a share (%) (given: "3 F").'
            ' Write for example "18 %".',
        ),
        (
            {"likely": "18 %", "known": "rumour"},
            "today.ducts.supply_leakage: known must be one of: measured; seen; guessed"
            ' (given: "rumour").',
        ),
        (
            {"likely": "18 %", "hihg": "20 %"},
            "today.ducts.supply_leakage: a value's table may hold likely, low, high and known"
            ' (given: hihg). Write "high".',
        ),
    ],
)
def test_a_wrong_range_is_said(table: dict[str, str], sentence: str) -> None:
    ducts = {"location": "crawlspace", "supply_leakage": table}
    assert sentences(document(today={"ducts": ducts})) == [sentence]


def test_only_numbers_have_ranges() -> None:
    wrong = {"likely": "slab", "low": "slab"}
    found = sentences(document(house={"foundation": wrong}, today={"ducts": None}))
    assert found == ['house.foundation: only a number can have low and high (given: "slab").']


def test_text_that_is_not_toml_is_refused_with_its_line(tmp_path: Path) -> None:
    path = tmp_path / "case.toml"
    path.write_text('title = "x"\nhouse = [\n', encoding="utf-8")
    with pytest.raises(CaseError) as caught:
        read_document(path)
    fault = caught.value.faults[0]
    assert fault.path.startswith("case.toml, ")
    assert fault.rule.startswith("is not TOML: ")
    path.write_text("a = 1\nb = 2\na = 3\n", encoding="utf-8")
    with pytest.raises(CaseError, match=r"case\.toml, line 3, column \d+: is not TOML"):
        read_document(path)


def test_a_missing_file_is_an_input_error(tmp_path: Path) -> None:
    with pytest.raises(CaseError, match="no such file"):
        read_case(tmp_path / "nothing.toml")
    with pytest.raises(CaseError, match="cannot be read"):
        read_case(tmp_path)


def test_overrides_are_carried_out_and_their_faults_come_together() -> None:
    made = read_case(example_path("demo"), ["rooms.hall.floor_area=150 ft2", "thermostat.day=60 F"])
    areas = {room.name: room.floor_area for room in made.home.rooms}
    assert areas["hall"] == pytest.approx(150 * FOOT2)
    assert made.home.thermostat.day == pytest.approx(15.5555556)
    with pytest.raises(CaseError) as caught:
        read_case(example_path("demo"), ["rooms.hal.storey=1", "nothing"])
    assert [fault.path for fault in caught.value.faults] == ["rooms.hal", "nothing"]


def test_relative_files_start_at_the_case(tmp_path: Path) -> None:
    path = tmp_path / "case.toml"
    text = example_path("demo").read_text(encoding="utf-8")
    text = text.replace('source = "typical"', 'source = "file"\nfile = "year.csv"')
    path.write_text(text, encoding="utf-8")
    made = read_case(path)
    assert made.directory == tmp_path.resolve()
    assert made.weather.file == Path("year.csv")


def test_a_document_that_is_no_table_is_refused() -> None:
    with pytest.raises(CaseError, match="must be a table"):
        case_from_document([])  # type: ignore[arg-type]


def test_gains_are_shared_by_area_and_wanted_hours() -> None:
    first, second = case(rooms=TWO_ROOMS).home.rooms
    # 900 ft2 for 16 hours against 600 ft2 for 8 hours: 3 to 1
    assert first.use_share == pytest.approx(0.75)
    assert second.use_share == pytest.approx(0.25)


WHOLE = """
format = 1
title = "A made-up household"

[site]
latitude = 35.60
longitude = -82.55
elevation = "2100 ft"
time_zone = "America/New_York"
shelter = 3
design_temperature = "18 F"

[weather]
source = "typical"
winter = "typical"
calendar_year = 2027

[house]
floor_area = "1850 ft2"
storeys = 1
bedrooms = 3
built = 1971
foundation = "vented crawlspace"
air_leakage_at_50_pa = "2300 cfm"
people = 4
wall_insulation = "R-11"
attic_insulation = "R-19"
floor_insulation = "R-0"
window_u_factor = "0.75 Btu/h/ft2/F"
window_solar_gain = 0.65
window_panes = 2

[other_use]
electricity = "620 kWh/month"
hot_water = "240 kWh/month"
share_to_rooms = 0.6

[[rooms]]
name = "living room"
storey = 1
floor_area = "680 ft2"
ceiling_height = { low = "8 ft", high = "15 ft" }
outside_walls = { south = "24 ft", west = "16 ft" }
windows = { south = "48 ft2", west = "20 ft2" }
below = "crawlspace"
above = "roof"
wanted_hours = "6-23"

[[rooms]]
name = "hall"
floor_area = "170 ft2"

[[rooms]]
name = "back bedroom"
floor_area = "1000 ft2"
outside_walls = { north = "50 ft", east = "20 ft" }

[[doorways]]
between = ["living room", "hall"]
state = "open"

[crawlspace]
vents = "open"
ground_cover = true
water_pipes = true

[thermostat]
day = "64 F"
night = "61 F"
night_hours = "22-6"
wanted = "69 F"
cooling = "76 F"

[comfort]
below = "2 F"
above = "2 F"

[today]
kind = "electric furnace"
output = "20 kW"
thermostat_room = "hall"
blower = { airflow = "1200 cfm", power = "550 W" }
[today.ducts]
location = "crawlspace"
condition = "old, never sealed"
registers = { "living room" = 0.6, "hall" = 0.1, "back bedroom" = 0.3 }

[[options]]
name = "Two heads, furnace kept for the bedrooms"
kind = "ductless heat pump"
backup = { kind = "keep furnace", setpoint = "60 F" }
installed_cost = "11200 $"
life = "15 year"
maintenance = "150 $/year"

[[options.units]]
class = "single-zone cold-climate"
size = "15 kBtu/h"
room = "living room"
mounting_height = "7 ft"
setpoint = "69 F"

[[options.units]]
class = "single-zone cold-climate"
size = "9 kBtu/h"
room = "back bedroom"

[[options]]
name = "Seal and wrap the ducts, insulate the floor"
kind = "improve"
installed_cost = "3900 $"
[options.set]
"today.ducts.condition" = "sealed and tested"
"today.ducts.insulation" = "R-8"
"house.floor_insulation" = "R-25"

[tariff]
name = "two-tier residential"
customer_charge = "12.50 $/month"
tiers = [ { up_to = "800 kWh/month", price = "0.112 $/kWh" }, { price = "0.139 $/kWh" } ]
tax = "3 %"

[money]
installed_on = 2027-03-01
study_years = 15
discount_rate = "3 %"
price_growth = { likely = "0.5 %", low = "-1 %", high = "2.5 %" }
[[money.incentives]]
name = "utility rebate"
amount = "1500 $"
status = "applied for"
expires = 2027-06-30

[bills]
file = "bills.csv"
"""


def test_a_case_that_says_a_little_of_everything(tmp_path: Path) -> None:
    path = tmp_path / "case.toml"
    path.write_text(WHOLE, encoding="utf-8")
    made = read_case(path)
    assert made.home.site.design_temperature == pytest.approx(-70 / 9)
    living = made.home.rooms[0]
    assert (living.ceiling_low, living.ceiling_high) == pytest.approx((8 * 0.3048, 15 * 0.3048))
    assert made.today.registers == pytest.approx(
        {"living room": 0.6, "hall": 0.1, "back bedroom": 0.3}
    )
    heads, improve = made.options
    assert heads.system.heads[0].setpoint == pytest.approx((69 - 32) / 1.8)
    assert heads.system.furnace_setpoint == pytest.approx((60 - 32) / 1.8)
    assert improve.system.ducts is not None
    assert improve.system.ducts.resistance == pytest.approx(8 * 0.1761102, rel=1e-6)
    assert fact(made, "bills.file").value == "bills.csv"


def test_a_wrong_range_is_a_fault_beside_an_option_that_changes_something() -> None:
    document = read_document(example_path("demo"))
    document["house"]["wall_insulation"] = {"likely": "R-7", "low": "R-thick"}
    with pytest.raises(CaseError) as caught:
        case_from_document(document)
    assert [fault.path for fault in caught.value.faults] == ["house.wall_insulation.low"]
