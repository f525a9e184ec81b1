"""Reading a year of weather from a file, and writing one.

A file is known by what stands in it, not by its name: EPW, TMY3, TMY2 or our own plain
CSV, each also gzipped. Whatever a file lacks and can be worked out is worked out and said
in ``Weather.note``; all else that is wrong comes as one :class:`WeatherError`.
"""

from __future__ import annotations

import gzip
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from costcompare.errors import Fault, OverwriteError, WeatherError
from costcompare.weather.draft import Draft, finished
from costcompare.weather.plain_file import is_plain, plain_draft, plain_text
from costcompare.weather.station_files import (
    epw_draft,
    is_epw,
    is_tmy2,
    is_tmy3,
    tmy2_draft,
    tmy3_draft,
)
from costcompare.weather.table import Weather

CALENDAR_YEAR = 2027
"""Year whose weekdays the hours get unless another is asked for"""

GZIP_START = b"\x1f\x8b"

LARGEST = 200_000_000
"""[bytes] no year of hours is longer, packed or unpacked"""


class _Format(NamedTuple):
    fits: Callable[[list[str]], bool]
    draft: Callable[[str, Path], Draft]


FORMATS = {
    "EPW": _Format(is_epw, epw_draft),
    "TMY3": _Format(is_tmy3, tmy3_draft),
    "TMY2": _Format(is_tmy2, tmy2_draft),
    "plain CSV": _Format(is_plain, plain_draft),
}


def read_weather(path: str | Path, *, calendar_year: int = CALENDAR_YEAR) -> Weather:
    """A year of weather from an EPW, TMY3, TMY2 or plain CSV file, plain or gzipped.

    ``calendar_year`` is the year that the hours are moved to: a typical year is put together
    from months of many years. Raises :class:`WeatherError` with every fault that was found.
    """
    path = Path(path)
    text = _text(path)
    lines = text[:20_000].splitlines() or [""]
    for form in FORMATS.values():
        if form.fits(lines):
            return finished(form.draft(text, path), calendar_year)
    raise WeatherError(
        [
            Fault(
                path.name,
                "is not a weather file that can be read",
                given=f"first line '{lines[0][:60]}'",
                instead=f"the path of a year of hours as {', '.join(FORMATS)} "
                "(docs/weather.md describes the plain CSV)",
            )
        ]
    )


def write_weather(weather: Weather, path: str | Path, *, force: bool = False) -> None:
    """Write our plain CSV, gzipped where the name ends in ``.gz``.

    Raises :class:`OverwriteError` when something is there already and ``force`` is not set.
    """
    path = Path(path)
    if path.exists() and not force:
        rule = "is there already and was not overwritten"
        raise OverwriteError([Fault(str(path), rule, instead="another name, or use --force")])
    content = plain_text(weather).encode("utf-8")
    if path.suffix == ".gz":
        # No time of writing inside: the same year gives the same bytes.
        content = gzip.compress(content, compresslevel=9, mtime=0)
    try:
        path.write_bytes(content)
    except OSError as reason:
        rule = "cannot be written"
        raise WeatherError([Fault(str(path), rule, given=str(reason.strerror))]) from reason


def _text(path: Path) -> str:
    """The file as text; unzipped where it is gzipped."""
    try:
        content = path.read_bytes() if path.stat().st_size <= LARGEST else None
    except OSError as reason:
        raise WeatherError(
            [
                Fault(
                    str(path),
                    "cannot be read",
                    given=str(reason.strerror),
                    instead="the path of a weather file",
                )
            ]
        ) from reason
    if content is not None and content.startswith(GZIP_START):
        content = _unpacked(content, path)
    if content is None or len(content) > LARGEST:
        rule = f"is larger than a year of hours can be ({LARGEST // 1_000_000} MB)"
        raise WeatherError([Fault(path.name, rule)])
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return content.decode("latin-1")  # some station files carry names in it


def _unpacked(content: bytes, path: Path) -> bytes:
    try:
        return zlib.decompressobj(wbits=zlib.MAX_WBITS | 16).decompress(content, LARGEST + 1)
    except zlib.error as reason:
        rule = "is gzipped but damaged"
        raise WeatherError([Fault(path.name, rule, given=str(reason))]) from reason
