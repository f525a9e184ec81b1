"""Fans, a fire and its flue: what a case says and what is filled in."""

from __future__ import annotations

import pytest

from .cases import TWO_ROOMS, case, document, sentences

CFM = 0.3048**3 / 60.0  # [m3/s]
KBTU_H = 293.07107  # [W]
BATH_FAN = {"airflow": "50 cfm", "hours": "7-8,18-19", "room": "bedroom"}


def test_no_fan_no_fire_and_no_flue_unless_said() -> None:
    home = case().home
    assert (home.house.fans, home.house.flue, home.fireplace) == ((), False, None)


def test_a_fan_with_its_hours() -> None:
    (fan,) = case(rooms=TWO_ROOMS, house={"fans": [BATH_FAN]}).home.house.fans
    assert (fan.room, fan.airflow) == ("bedroom", pytest.approx(50 * CFM))
    assert [h for h in range(24) if fan.hours[h]] == [7, 18]


def test_an_empty_list_of_fans_is_no_fan() -> None:
    assert case(house={"fans": []}).home.house.fans == ()


def test_a_fire_is_filled_in_and_brings_a_flue() -> None:
    made = case(fireplace={})
    fire = made.home.fireplace
    assert fire is not None
    assert (fire.room, fire.used) == ("living room", True)
    assert (fire.draught, fire.heat) == pytest.approx((200 * CFM, 5 * KBTU_H), rel=1e-5)
    assert [h for h in range(24) if fire.hours[h]] == [18, 19, 20, 21]
    assert [m + 1 for m in range(12) if fire.months[m]] == [1, 2, 3, 11, 12]
    assert made.home.house.flue
    filled = {fact.path: fact.known for fact in made.facts if "fireplace" in fact.path}
    assert set(filled.values()) == {"guessed"}
    assert len(filled) == 6


def test_a_fire_in_a_house_without_a_living_room_is_in_the_largest() -> None:
    fire = case(rooms=TWO_ROOMS, fireplace={"hours": "6-10"}).home.fireplace
    assert fire is not None
    assert fire.room == "big room"
    assert fire.hours[6]


def test_a_flue_may_be_said_to_be_closed_for_good() -> None:
    assert not case(house={"flue": False}, fireplace={}).home.house.flue
    assert case(house={"flue": True}).home.house.flue


def test_an_option_may_stop_the_fire_and_take_a_fan_away() -> None:
    option = {
        "name": "No fire",
        "kind": "improve",
        "installed_cost": "0 $",
        "set": {"fireplace.used": False, "house.fans": []},
    }
    made = case(
        rooms=TWO_ROOMS,
        house={"fans": [BATH_FAN]},
        fireplace={"heat": "9 kBtu/h"},
        options=[option],
    )
    assert made.home.fireplace is not None
    assert made.home.fireplace.used
    changed = made.options[0].home
    assert changed.fireplace is not None
    assert (changed.fireplace.used, changed.house.fans) == (False, ())


@pytest.mark.parametrize(
    ("sections", "sentence"),
    [
        (
            {"house": {"fans": [{**BATH_FAN, "room": "bath"}]}},
            "house.fans.1.room: must be a room of the house: big room; bedroom (given: bath).",
        ),
        (
            {"house": {"fans": [{**BATH_FAN, "hours": "early"}]}},
            "house.fans.1.hours: must be ranges of whole numbers such as 6-9,17-23 "
            '(given: "early"). Write for example "6-23".',
        ),
        (
            {"house": {"fans": [{"airflow": "50 cfm", "room": "bedroom"}]}},
            'house.fans.1.hours: is needed. Write for example hours = "7-8,18-19".',
        ),
        (
            {"house": {"fans": [{**BATH_FAN, "airflow": 50}]}},
            "house.fans.1.airflow: needs a unit (cfm, m3/s, m3/h, L/s) (given: 50). "
            'Write for example "1200 cfm".',
        ),
        (
            {"fireplace": {"room": "living room"}},
            "fireplace.room: must be a room of the house: big room; bedroom (given: living room).",
        ),
        (
            {"fireplace": {"months": "winter"}},
            "fireplace.months: must be ranges of whole numbers such as 6-9,17-23 "
            '(given: "winter"). Write for example "10-3".',
        ),
        (
            {"fireplace": {"heat": "200 W/m2"}},
            "fireplace.heat: ",
        ),
    ],
)
def test_what_is_wrong_is_said(sections: dict[str, object], sentence: str) -> None:
    found = sentences(document(rooms=TWO_ROOMS, **sections))
    assert len(found) == 1
    assert found[0].startswith(sentence)
