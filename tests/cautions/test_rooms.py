"""Cautions about rooms without heat and about fresh air."""

from __future__ import annotations

import re

from .homes import HEATERS, cautions_of, heat_pump, improve

BARE = "Rooms without heat of their own"


def test_rooms_that_depend_on_open_doors() -> None:
    because = cautions_of(heat_pump())[BARE].because
    assert re.search(r"hall \d+ °F", because)
    assert "living room" not in because


def test_every_head_of_a_shared_outdoor_unit_heats_its_room() -> None:
    heads = [{"room": room, "size": "12 kBtu/h"} for room in ("living room", "hall")]
    unit = {"class": "multi-zone standard", "size": "24 kBtu/h", "heads": heads}
    because = cautions_of(heat_pump() | {"units": [unit]})[BARE].because
    assert "bedroom" in because
    assert "living room" not in because
    assert "hall" not in because


def test_no_such_rooms_with_heaters_or_a_furnace_behind_the_heads() -> None:
    assert BARE not in cautions_of(HEATERS)
    assert BARE not in cautions_of(heat_pump(backup={"kind": "keep furnace"}))
    assert BARE not in cautions_of(heat_pump(backup={"kind": "room heaters"}))


def test_a_house_that_is_made_tight() -> None:
    tight = improve(house__air_leakage_at_50_pa="500 cfm")
    because = cautions_of(tight)["Fresh air"].because
    assert re.search(r"2\.7 times an hour .* against 7\.0 today", because)
    loose = improve(house__air_leakage_at_50_pa="1200 cfm")
    assert "Fresh air" not in cautions_of(loose)
    assert "Fresh air" not in cautions_of(HEATERS)
