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

numba.config.CACHE_DIR = str(FOLDER)  # type: ignore[attr-defined] # set when numba starts


OPTIONS: dict[str, Any] = {"nogil": True, "error_model": "numpy", "_nrt": False}
"""Of numba, for every kernel. The compiler is left no freedom with sums and products: it compiles
a loop more than once, for arrays that lie one way and another and for one home and several, and
with freedom to reorder or to contract these differed in their last digits (measured)."""

njit: Any = numba.njit  # its hints leave out some of its options


def compiled(function: F) -> F:
    """Compile a kernel with numba, cached on disk, without holding the interpreter lock.

    Kernels allocate nothing: numba's counting of array references is switched off, which
    would otherwise take most of the time of a loop over small arrays. They are built into
    their callers: a call that hands over a home as a hundred arrays costs more than most
    kernels do.
    """
    result: F = njit(cache=True, no_cfunc_wrapper=True, forceinline=True, **OPTIONS)(function)
    return result


def compiled_inside(function: F) -> F:
    """Compile a kernel that no Python calls, only other kernels.

    It gets no entry for Python, which would take longer to compile than the kernel.
    """
    wrappers = {"no_cpython_wrapper": True, "no_cfunc_wrapper": True}
    result: F = njit(forceinline=True, **wrappers, **OPTIONS)(function)
    return result


def compiled_whole(function: F) -> F:
    """Compile a kernel that Python calls, with all that it calls built into it."""
    result: F = njit(cache=True, no_cfunc_wrapper=True, **OPTIONS)(function)
    return result
