"""The one decorator that compiles kernels, and the cache it compiles into.

numba's own cache looks only at the file a function stands in: edit a helper in another file and
the caller goes on returning the old answer. Here the cache folder is named after the sources of
*all* kernels and the numba version, so any edit starts a fresh folder. If no folder can be
written (numba would raise at import), kernels compile in memory for this process (`_keep.py`).
"""

from __future__ import annotations

import hashlib
import os
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

# A tenth less compiling than at numba's own level 3, and the same speed: at this level too the loops over a
# volley work several balls at once. At level 1 they are a tenth slower. Read by numba when it is imported.
os.environ.setdefault("NUMBA_OPT", "2")

import numba

from ._inner import Apart, Inner
from ._keep import Kept

_ENTRIES: dict[str, Any] = {}

# numba's published types know neither its configuration nor the switch of its memory manager
_njit: Any = numba.njit
_config: Any = numba.config


def _sources_digest() -> str:
    digest = hashlib.sha256(numba.__version__.encode())
    for source in sorted(Path(__file__).parent.glob("*.py")):
        digest.update(source.name.encode())
        digest.update(source.read_bytes())
    return digest.hexdigest()[:16]


def _cache_root() -> Path:
    chosen = os.environ.get("HOLESIM_CACHE_DIR")
    if chosen:
        return Path(chosen)
    base = os.environ.get("XDG_CACHE_HOME") or os.path.join(os.path.expanduser("~"), ".cache")
    return Path(base) / "holesim"


def _why_not_writable(folder: Path) -> str:
    """Empty where it can be written."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=folder):
            return ""
    except (OSError, ValueError, RuntimeError) as error:  # a zero byte in the path; a ring of links
        return getattr(error, "strerror", None) or str(error)


_WANTED_FOLDER = _cache_root() / f"kernels-{_sources_digest()}"
_WHY_NOT = _why_not_writable(_WANTED_FOLDER)
CACHE_FOLDER: Path | None = None if _WHY_NOT else _WANTED_FOLDER
"""Where compiled kernels are kept; None where nothing can be written."""


# no fast mathematics: whether a product is fused into a sum depends on what was inlined where, and so on
# whether this process compiled the function or read it from disk
# no entry for callers in C, of whom there are none: a seventh less compiling
_OPTIONS = {"nogil": True, "error_model": "numpy", "no_cfunc_wrapper": True}


def _kept(compiled: Any) -> Kept:
    """Where numba keeps a function, in our folder: numba's cache behind a guard."""
    if CACHE_FOLDER is None:
        return Kept(None, _WANTED_FOLDER, _WHY_NOT)
    before = _config.CACHE_DIR
    _config.CACHE_DIR = str(CACHE_FOLDER)
    try:
        compiled.enable_caching()
        return Kept(compiled._cache, CACHE_FOLDER)
    except (RuntimeError, OSError) as error:  # the folder is gone again, or the disk is full since
        return Kept(None, CACHE_FOLDER, getattr(error, "strerror", None) or str(error))
    finally:
        _config.CACHE_DIR = before


# `forceinline` is said of every one: what is compiled on behalf of another else takes over the other's
def _inner(function: Callable[..., Any], kind: type[Inner] = Inner, **how: Any) -> Any:
    if _config.DISABLE_JIT:
        return function
    options = {**_OPTIONS, "nopython": True, "_nrt": False, "no_cpython_wrapper": True, **how}
    compiled = kind(function, targetoptions=options)
    compiled._cache = _kept(compiled)
    return compiled


def kernel(function: Callable[..., Any]) -> Any:
    """Compile `function` with numba: no Python objects, no lock held, cached on disk if it can be.

    A kernel owns no memory. Without numba's memory manager no array it is handed is counted in and out
    at every call: atomic counts that two threads fight over cost more than the golf.
    """
    return _inner(function, forceinline=False)


def in_place(function: Callable[..., Any]) -> Any:
    """A kernel of the shot's own path, which the compiler copies to where it is called.

    A call passes every array word by word, seven to nineteen of them, and a shot handed from function to
    function moved hundreds: with that, and with entries that counted references, it took half as long again.
    Not for what is seldom called: it would be copied all the same.
    """
    return _inner(function, forceinline=True)


def apart(function: Callable[..., Any]) -> Any:
    """A kernel for what few shots come to, which the compiler never copies.

    Left to itself it copied the reading of the map twelve times into each shot, for every drop that might be
    looked at, and each level of calls optimised all of them once more.
    """
    return _inner(function, Apart, forceinline=False)


def part(function: Callable[..., Any]) -> Any:
    """A kernel called at one place, compiled as if it were written there.

    For the large steps just under an entry: each level of calls optimises all that is below it once more,
    and four levels of them were an eighth of the first wait. Further down it saved nothing.
    """
    return _inner(function, inline="always")


def entry(function: Callable[..., Any]) -> Any:
    """A kernel called from Python; listed so that its compile time can be told and measured.

    It owns no memory either: in a loop that plays shots, the game's arrays would be counted in and out again
    at every call.
    """
    return _listed(function, _nrt=False)


def table_entry(function: Callable[..., Any]) -> Any:
    """An entry that makes arrays to work in, once for a whole table."""
    return _listed(function)


def _listed(function: Callable[..., Any], **how: Any) -> Any:
    compiled = _njit(**_OPTIONS, **how)(function)
    if not _config.DISABLE_JIT:
        compiled._cache = _kept(compiled)
    _ENTRIES[function.__name__] = compiled
    return compiled


def entries() -> dict[str, Any]:
    """Name -> compiled entry, in the order they were defined."""
    return dict(_ENTRIES)


def waiting_for_compiler(names: list[str]) -> bool:
    """Whether some of these entries have never been compiled on this machine (or cannot be kept)."""
    if _config.DISABLE_JIT:
        return False
    if CACHE_FOLDER is None:
        return any(not _ENTRIES[name].signatures for name in names)
    # the code itself, not its index: a full disk or a kill may leave an index with nothing behind it
    return not all(any(CACHE_FOLDER.rglob(f"*.{name}-*.nbc")) for name in names)
