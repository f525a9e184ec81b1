"""Letters are shown where both weights of the bundled fonts have them, and only there."""

from __future__ import annotations

import struct
from importlib.resources import files

import pytest

from costcompare.views.report.letters import MISSING, SHOWN, showable

FONTS = files("costcompare.data") / "fonts"


def letters_of(font: bytes) -> set[int]:
    """Code points of a font's character map of format 4 (OpenType 1.9, section cmap)."""
    tables = struct.unpack(">H", font[4:6])[0]
    places = {
        font[12 + 16 * n : 16 + 16 * n]: struct.unpack(">I", font[20 + 16 * n : 24 + 16 * n])[0]
        for n in range(tables)
    }
    cmap = places[b"cmap"]
    count = struct.unpack(">H", font[cmap + 2 : cmap + 4])[0]
    for n in range(count):
        offset = struct.unpack(">I", font[cmap + 8 + 8 * n : cmap + 12 + 8 * n])[0]
        table = cmap + offset
        if struct.unpack(">H", font[table : table + 2])[0] == 4:
            return set(_segments(font, table))
    raise AssertionError("no map of format 4")


def _segments(font: bytes, table: int) -> list[int]:
    size = struct.unpack(">H", font[table + 6 : table + 8])[0] // 2
    ends = struct.unpack(f">{size}H", font[table + 14 : table + 14 + 2 * size])
    start = table + 16 + 2 * size
    starts = struct.unpack(f">{size}H", font[start : start + 2 * size])
    return [
        code
        for first, last in zip(starts, ends, strict=True)
        if last != 0xFFFF
        for code in range(first, last + 1)
    ]


@pytest.mark.parametrize("name", ["inter-regular.otf", "inter-semibold.otf"])
def test_both_weights_hold_what_is_shown(name: str) -> None:
    held = letters_of((FONTS / name).read_bytes())
    wanted = {code for first, last in SHOWN for code in range(first, last + 1)}
    assert wanted - held == set()
    assert ord(MISSING) in held


def test_every_letter_keeps_its_place() -> None:
    assert showable("Ångström 68 °F, $1–2, €, ≈ → −") == "Ångström 68 °F, $1–2, €, ≈ → −"
    assert showable("家 a\u202eb") == f"{MISSING} a{MISSING}b"


def test_the_licence_stands_beside_the_fonts() -> None:
    assert "SIL OPEN FONT LICENSE Version 1.1" in (FONTS / "inter-licence.txt").read_text("utf-8")
