"""How kernels are compiled, and where the compiled code is kept.

A kernel that is edited leaves a stale compiled caller in numba's cache when the caller
stands in another file. The cache folder therefore carries a hash of every physics and
simulation source: an edit anywhere starts a fresh folder.
"""

from __future__ import annotations

import hashlib
import os
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import numba

F = TypeVar("F", bound=Callable[..., object])


def _sources_key() -> str:
    package = Path(__file__).resolve().parent.parent
    digest = hashlib.sha256(numba.__version__.encode())
    for folder in ("physics", "simulation"):
        for source in sorted((package / folder).glob("*.py")):
            digest.update(source.name.encode())
            digest.update(source.read_bytes())
    return digest.hexdigest()[:16]


def _user_cache() -> Path:
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA", Path.home() / "AppData" / "Local"))
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches"
    return Path(os.environ.get("XDG_CACHE_HOME", Path.home() / ".cache"))


def cache_folder() -> Path:
    """The folder of the compiled code for the sources as they are; made when missing."""
    folder = _user_cache() / "costcompare" / f"compiled-{_sources_key()}"
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError:  # a home that cannot be written to: compile for this run alone
        folder = Path(tempfile.mkdtemp(prefix="costcompare-compiled-"))
    return folder


FOLDER = cache_folder()
WARM = any(FOLDER.rglob("*.nbi"))
"""True where compiled code of these sources was found: no waiting on the first run."""

numba.config.CACHE_DIR = str(FOLDER)  # type: ignore[attr-defined] # set when numba starts


SAME_ANSWER = {"contract", "nsz", "arcp"}
"""Freedoms with single sums and products. Their order must stay as written: a loop is compiled
twice, and which of the two runs hangs on where its arrays happen to lie in memory; with the
freedom to reorder, one run in fifty differed from the others in the last digits (measured). Not
a number and infinity keep their meaning."""


def compiled(function: F) -> F:
    """Compile a kernel with numba, cached on disk, without holding the interpreter lock.

    Kernels allocate nothing: numba's counting of array references is switched off, which
    would otherwise take most of the time of a loop over small arrays. They are built into
    their callers: a call that hands over a home as a hundred arrays costs more than most
    kernels do.
    """
    result: F = numba.njit(**_options(), forceinline=True)(function)
    return result


def compiled_whole(function: F) -> F:
    """Compile a kernel that Python calls, with all that it calls built into it."""
    result: F = numba.njit(**_options())(function)
    return result


def _options() -> dict[str, Any]:
    return {
        "cache": True,
        "nogil": True,
        "error_model": "numpy",
        "_nrt": False,
        "fastmath": SAME_ANSWER,
    }
