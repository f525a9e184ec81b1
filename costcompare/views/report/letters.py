"""Which letters the fonts of the report can show."""

from __future__ import annotations

SHOWN = (
    (0x20, 0x7E),
    (0xA0, 0xAC),
    (0xAE, 0x148),
    (0x14A, 0x17F),
    (0x218, 0x21B),
    (0x386, 0x38A),
    (0x38C, 0x38C),
    (0x38E, 0x3A1),
    (0x3A3, 0x3CE),
    (0x401, 0x45F),
    (0x2010, 0x2015),
    (0x2018, 0x201E),
    (0x2020, 0x2022),
    (0x2026, 0x2026),
    (0x20A0, 0x20BF),
    (0x2190, 0x2193),
    (0x2212, 0x2212),
    (0x2248, 0x2248),
    (0x2264, 0x2265),
)
"""First and last code points of what both weights of the bundled Inter hold; a test sets them"""
MISSING = "\N{WHITE SQUARE}"


def showable(text: str) -> str:
    """The text with an empty square for each letter that the fonts lack."""
    return "".join(letter if _is_shown(letter) else MISSING for letter in text)


def _is_shown(letter: str) -> bool:
    code = ord(letter)
    return any(first <= code <= last for first, last in SHOWN)
