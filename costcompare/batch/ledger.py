"""The file of finished homes: one line a home, written as soon as the home is done.

A run that was stopped, or whose machine lost its power, leaves whole lines and perhaps the
beginning of one more, which is passed over. The next run reads the lines and works out
only what is missing.
"""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from pathlib import Path
from types import TracebackType
from typing import IO

from costcompare.batch.results import HomeDone

SUFFIX = ".unfinished"
"""Ending of the ledger's name behind that of the table"""


class Ledger:
    """Finished homes on disk; a context manager that holds the file open for appending."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self._file: IO[str] | None = None

    @classmethod
    def beside(cls, target: Path) -> Ledger:
        """The ledger of a table that is to be written."""
        return cls(target.with_name(target.name + SUFFIX))

    def __enter__(self) -> Ledger:
        self._cut_to_whole_lines()
        self._file = self.path.open("a", encoding="utf-8")
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._file is not None:
            self._file.close()
            self._file = None

    def keys(self) -> set[str]:
        """The keys of the homes that are done."""
        return {home.key for home in self.homes()}

    def homes(self) -> Iterator[HomeDone]:
        """The homes that are done, in the order in which they were finished."""
        if not self.path.exists():
            return
        with self.path.open(encoding="utf-8", errors="replace") as lines:
            for line in lines:
                home = _home(line)
                if home is not None:
                    yield home

    def add(self, home: HomeDone) -> None:
        """Write a home to the disk, through all buffers."""
        if self._file is None:
            raise ValueError("the ledger is not open")
        self._file.write(json.dumps(home.as_record(), allow_nan=False) + "\n")
        self._file.flush()
        os.fsync(self._file.fileno())

    def remove(self) -> None:
        """Take the file away, once the table is written."""
        self.path.unlink(missing_ok=True)

    def _cut_to_whole_lines(self) -> None:
        """Take off the beginning of a line that a kill left, so that the next starts anew."""
        if not self.path.exists():
            return
        text = self.path.read_bytes()
        whole = text[: text.rfind(b"\n") + 1]
        if whole != text:
            self.path.write_bytes(whole)


def _home(line: str) -> HomeDone | None:
    try:
        return HomeDone.from_record(json.loads(line))
    except (ValueError, KeyError, TypeError):
        return None
