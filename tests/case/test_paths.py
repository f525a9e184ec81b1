"""Dotted paths into a case."""

import pytest

from costcompare.case.paths import described, find_row, join, split


@pytest.mark.parametrize(
    ("path", "parts"),
    [
        ("rooms.hall.floor_area", ["rooms", "hall", "floor_area"]),
        ("rooms.living room.storey", ["rooms", "living room", "storey"]),
        ('options."No. 2".life', ["options", "No. 2", "life"]),
    ],
)
def test_a_path_is_split_and_joined(path: str, parts: list[str]) -> None:
    assert split(path) == parts
    assert join(parts) == path


@pytest.mark.parametrize("path", ["", "a..b", ".a", "a.", 'a."b'])
def test_what_is_no_path_is_refused(path: str) -> None:
    with pytest.raises(ValueError, match="has a"):
        split(path)


def test_rows_are_named_by_name_or_counted_from_one() -> None:
    document = {"rooms": [{"name": "hall"}, {"floor_area": 1}], "x": {"y": 1}}
    assert described(("rooms", 0, "storey"), document) == "rooms.hall.storey"
    assert described(("rooms", 1, "storey"), document) == "rooms.2.storey"
    assert described(("x", "y"), document) == "x.y"
    assert find_row(document["rooms"], "hall") == 0
    assert find_row(document["rooms"], "2") == 1
    assert find_row(document["rooms"], "3") is None
    assert find_row(document["rooms"], "bath") is None
