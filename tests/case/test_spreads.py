"""Values written as a table, and keys without a value."""

from __future__ import annotations

from costcompare.case.spreads import unwrapped


def test_nothing_at_a_key_is_as_if_the_key_were_not_there() -> None:
    plain, _, faults = unwrapped({"units": [{"size": None, "room": "hall"}], "title": None})
    assert plain == {"units": [{"room": "hall"}]}
    assert not faults
