"""What a result was made from, in 64 hexadecimal digits: inputs, program and libraries."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np
import shapely

NOT_CONTENT = frozenset({"source"})
"""Fields that say where something was read, not what it is."""

_PACKAGE = Path(__file__).resolve().parents[1]

_MAKES_NUMBERS = (
    "units.py", "engine", "kernels", "physics", "tables", "hole", "player", "conditions", "strategy",
)  # fmt: skip


def digest_of(*things: Any) -> str:
    """SHA-256 of the content of plain values, frozen dataclasses, arrays and areas, and of the program.

    Raises
    ------
    TypeError
        For anything else: what has no stable content must not pass for equal.
    """
    found = hashlib.sha256(program_digest().encode())
    for thing in things:
        _feed(found, thing)
    return found.hexdigest()


def _feed(found: Any, thing: Any) -> None:
    if thing is None or isinstance(thing, bool | int | float | str):
        found.update(f"{type(thing).__name__}:{thing!r};".encode())
    elif isinstance(thing, np.generic):
        _feed(found, thing.item())
    elif isinstance(thing, np.ndarray):
        found.update(f"array:{thing.dtype.str}:{thing.shape};".encode())
        found.update(np.ascontiguousarray(thing).tobytes())
    elif isinstance(thing, shapely.Geometry):
        found.update(b"area:" + shapely.to_wkb(thing))
    elif isinstance(thing, Mapping):
        found.update(f"map:{len(thing)};".encode())
        for key in sorted(thing, key=str):
            _feed(found, key)
            _feed(found, thing[key])
    elif isinstance(thing, tuple | list):
        found.update(f"row:{len(thing)};".encode())
        for item in thing:
            _feed(found, item)
    elif is_dataclass(thing) and not isinstance(thing, type):
        found.update(f"{type(thing).__name__};".encode())
        for one in fields(thing):
            if one.name not in NOT_CONTENT:
                _feed(found, one.name)
                _feed(found, getattr(thing, one.name))
    else:
        raise TypeError(f"a {type(thing).__name__} has no digest")


@lru_cache(maxsize=1)
def program_digest() -> str:
    """Of the versions and of every file of the package that has a part in the numbers."""
    import numba
    import scipy

    from .. import __version__

    found = hashlib.sha256()
    for part in (__version__, np.__version__, numba.__version__, scipy.__version__, shapely.__version__):
        found.update(f"{part};".encode())
    for name in _MAKES_NUMBERS:
        top = _PACKAGE / name
        for file in sorted(top.rglob("*")) if top.is_dir() else [top]:
            if file.is_file() and file.suffix in (".py", ".toml", ".npy", ".csv"):
                found.update(f"{file.relative_to(_PACKAGE).as_posix()};".encode())
                found.update(file.read_bytes())
    return found.hexdigest()
