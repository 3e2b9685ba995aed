"""Reading fields of a bag file; every refusal is one FileError: place, what was found, what is allowed."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any, NoReturn

from .. import files
from ..errors import FileError
from ..toml_text import short_line
from ..units import M_PER_YD
from .model import MOST_MISHITS
from .names import did_you_mean

LARGEST_FILE_BYTES = 1_000_000
"""A bag is a page of text; anything above this is some other file."""


LIMITS = {
    "direction_sd_deg": (0.0, 30.0),
    "distance_sd_pct": (0.0, 60.0),
    "bias_right_deg": (-20.0, 20.0),
    "bias_long_pct": (-40.0, 40.0),
    "mishit_rate": (0.0, MOST_MISHITS),
    "mishit_loss_pct": (0.0, 90.0),
    "mishit_distance_sd_pct": (0.0, 90.0),
    "mishit_direction_factor": (0.5, 10.0),
}
"""What a file may say of a club, wide enough for any golfer."""


def read_toml(path: Path, source: str, what: str) -> dict[str, Any]:
    """Contents of a TOML file; every failure to get them is a FileError."""
    return files.read_toml(path, source, LARGEST_FILE_BYTES, f"{what} file in TOML")


def shown(value: object) -> str:
    """A found value in the words of a file."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return f"the text {short_line(value, 40)!r}"
    if isinstance(value, float) and not math.isfinite(value):
        return "not a number" if math.isnan(value) else "infinity"
    if isinstance(value, dict):
        return "a section"
    if isinstance(value, list):
        return f"a list of {len(value)}"
    return short_line(value, 40) if isinstance(value, (int, float)) else f"a {type(value).__name__}"


class Section:
    """One table of a file: hands out checked values and refuses what it was not asked for.

    Parameters
    ----------
    source : str
        Name of the file for messages.
    where : str
        Name of the section for messages; empty at the top.
    table : Mapping
        What the file holds there.
    """

    def __init__(self, source: str, where: str, table: object) -> None:
        self.source, self.where = source, where
        if not isinstance(table, Mapping):
            raise FileError(source, where, shown(table), "a section with keys of its own")
        self.table: Mapping[str, Any] = table

    def place(self, key: str) -> str:
        """Section and key as messages name them."""
        return f"{self.where}, {key}" if self.where else key

    def refuse(self, key: str, found: str, allowed: str) -> NoReturn:
        """Raise the FileError for one key."""
        raise FileError(self.source, self.place(key), found, allowed)

    def only(self, keys: Iterable[str]) -> None:
        """Refuse any key not in ``keys``, with the nearest known one."""
        known = list(keys)
        for key in self.table:
            if key not in known:
                word = short_line(key, 40)
                raise FileError(
                    self.source,
                    self.where,
                    f"unknown key {word!r}{did_you_mean(word, known)}",
                    ", ".join(known),
                )

    def number(self, key: str, low: float, high: float) -> float | None:
        """Finite number in [low, high], or None when the key is not there."""
        if key not in self.table:
            return None
        return self._checked(key, self.table[key], low, high)

    def numbers(self, key: str, low: float, high: float) -> list[float] | None:
        """Non-empty list of finite numbers in [low, high], or None when the key is not there."""
        if key not in self.table:
            return None
        values = self.table[key]
        if not isinstance(values, list) or not values:
            self.refuse(key, shown(values), "a list of numbers")
        return [self._checked(f"{key}[{i}]", v, low, high) for i, v in enumerate(values, start=1)]

    def length_unit(self, stem: str) -> tuple[str, float]:
        """Key in use and its yards per unit for a length given as ``stem_yd`` or ``stem_m``, not both."""
        if f"{stem}_yd" in self.table and f"{stem}_m" in self.table:
            self.refuse(f"{stem}_yd and {stem}_m", "both", "one of the two")
        return (f"{stem}_m", 1.0 / M_PER_YD) if f"{stem}_m" in self.table else (f"{stem}_yd", 1.0)

    def length_yd(self, stem: str, low_yd: float, high_yd: float) -> float | None:
        """Length in yards from ``stem_yd`` or ``stem_m``, or None."""
        key, yards = self.length_unit(stem)
        value = self.number(key, low_yd / yards, high_yd / yards)
        return None if value is None else value * yards

    def text(self, key: str, longest: int = 60) -> str | None:
        """Printable, non-empty text, or None."""
        if key not in self.table:
            return None
        value = self.table[key]
        if not isinstance(value, str) or not value.strip() or not value.isprintable() or len(value) > longest:
            self.refuse(key, shown(value), f"a text of 1 to {longest} printable characters")
        return value.strip()

    def _checked(self, key: str, value: object, low: float, high: float) -> float:
        allowed = f"a number from {low:.4g} to {high:.4g}"
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            self.refuse(key, shown(value), allowed)
        if not low <= value <= high:  # also catches NaN
            self.refuse(key, shown(value), allowed)
        return float(value)
