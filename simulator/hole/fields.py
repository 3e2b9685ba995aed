"""Typed reading of one table of a file: every refusal is a FileError of one line."""

from __future__ import annotations

import difflib
import math
from collections.abc import Iterable, Iterator
from typing import Any

import numpy as np

from simulator.errors import FileError
from simulator.units import M_PER_YD

LIMIT_YD = 2000.0
"""Largest length or offset a hole file may hold [yd]: longer than any hole."""

UNITS = {"_yd": 1.0, "_m": 1.0 / M_PER_YD}


def show(value: Any) -> str:
    """A value as one short line for an error message."""
    if isinstance(value, dict):
        return "a table"
    try:
        text = repr(value)
    except (ValueError, RecursionError):  # an integer of thousands of digits, a list nested too deep
        return f"a {type(value).__name__} too long to show"
    return text if len(text) <= 60 else text[:57] + "..."


MOST_ENTRIES = 500
"""Most areas of one kind, tees or pins in a file; a limit on slips, not on holes."""


class Fields:
    """One table of a file, its values checked and its lengths in yards.

    Parameters
    ----------
    source, where : str
        File and table for messages ("" for the top of the file).
    table : dict
    elsewhere : keys that belong to the top of the file, to say so when one strays in here.
    """

    def __init__(self, source: str, where: str, table: Any, elsewhere: tuple[str, ...] = ()) -> None:
        self.source, self.where, self.elsewhere = source, where, elsewhere
        if not isinstance(table, dict):
            raise FileError(source, where, show(table), 'a table of keys, for example {name = "white"}')
        self.table = table

    def error(self, field: str, found: str, allowed: str) -> FileError:
        """A FileError that names this table and one of its fields."""
        where = ", ".join(part for part in (self.where, field) if part)
        return FileError(self.source, where, found, allowed)

    def refuse_unknown(
        self, plain: Iterable[str], lengths: Iterable[str], hints: dict[str, str] | None = None
    ) -> None:
        """Raise for any key that is not one of `plain` or one of `lengths` with _yd or _m.

        `hints` says what is meant by words that look nothing like the right key.
        """
        lengths = tuple(lengths)
        allowed = [*plain, *(stem + unit for stem in lengths for unit in UNITS)]
        for key in self.table:
            if key in allowed:
                continue
            hint = f"{key}_yd" if key in lengths else (hints or {}).get(key)
            near = [hint] if hint else difflib.get_close_matches(key, allowed, n=1)
            if near:
                raise self.error("", f"unknown key {show(key)}", f"perhaps {near[0]}")
            if key in self.elsewhere:
                raise self.error(
                    "",
                    f"the key {key} inside this table",
                    f"{key} above the first [[...]] of the file: TOML reads on to the next one",
                )
            known = [*plain, *(stem + "_yd" for stem in lengths)]
            raise self.error("", f"unknown key {show(key)}", f"{', '.join(known)} (or _m for metres)")

    # -- plain values ------------------------------------------------------------------------

    def text(self, key: str, default: str | None = None, most: int = 60) -> str | None:
        """A name: printable, not blank, at most `most` characters."""
        value = self.table.get(key, default)
        if value is None:
            return None
        if not isinstance(value, str):
            raise self.error(key, show(value), "text in quotes")
        if not value.strip() or len(value) > most or not value.isprintable():
            raise self.error(key, show(value), f"1 to {most} printable characters")
        return value.strip()

    def flag(self, key: str) -> bool:
        """true or false; false when absent."""
        value = self.table.get(key, False)
        if not isinstance(value, bool):
            raise self.error(key, show(value), "true or false")
        return value

    def choice(self, key: str, options: tuple[str, ...]) -> str:
        """One of some words; required."""
        value = self.table.get(key)
        allowed = " or ".join(options)
        if value is None:
            raise self.error(key, "no such key", allowed)
        if value not in options:
            raise self.error(key, show(value), allowed)
        return value

    def integer(self, key: str, low: int, high: int, required: bool = False) -> int | None:
        """A whole number from low to high; None when absent and not required."""
        value = self.table.get(key)
        allowed = f"a whole number from {low} to {high}"
        if value is None and not required:
            return None
        if value is None:
            raise self.error(key, "no such key", allowed)
        if isinstance(value, bool) or not isinstance(value, int) or not low <= value <= high:
            raise self.error(key, show(value), allowed)
        return value

    def number(self, key: str, low: float, high: float, default: float | None = None) -> float | None:
        """A finite number from low to high, or the default when absent."""
        value = self.table.get(key)
        if value is None:
            return default
        return self._finite(key, value, low, high)

    # -- lengths, in yards or metres --------------------------------------------------------

    def has(self, stem: str) -> bool:
        """Whether a length is given, in either unit."""
        return any(stem + unit in self.table for unit in UNITS)

    def key(self, stem: str) -> str:
        """The key a length was given by (stem_yd when absent).

        Raises
        ------
        FileError
            When it is given in both units.
        """
        given = [stem + unit for unit in UNITS if stem + unit in self.table]
        if len(given) == 2:
            raise self.error(stem, f"both {given[0]} and {given[1]}", "one of them")
        return given[0] if given else stem + "_yd"

    def length(
        self, stem: str, default: float | None = None, low: float = -LIMIT_YD, high: float = LIMIT_YD
    ) -> float:
        """A length or offset in yards; limits and default in yards too; required without a default."""
        key = self.key(stem)
        if key not in self.table:
            if default is not None:
                return default
            raise self.error(key, "no such key", f"a number ({stem}_yd or {stem}_m)")
        scale = UNITS[key[len(stem) :]]
        return self._finite(key, self.table[key], low / scale, high / scale) * scale

    def size(self, stem: str) -> float:
        """A length above zero, in yards; required."""
        value = self.length(stem)
        if value <= 0.0:
            key = self.key(stem)
            raise self.error(key, show(self.table[key]), "a number above 0")
        return value

    def lengths(self, stem: str) -> np.ndarray:
        """One length or a list of them, in yards, (n,); required."""
        key = self.key(stem)
        value = self.table.get(key)
        if not isinstance(value, list):
            return np.array([self.length(stem)])
        if not value:
            raise self.error(key, "an empty list", "a number or a list of numbers")
        scale = UNITS[key[len(stem) :]]
        limit = LIMIT_YD / scale
        return np.array([self._finite(key, v, -limit, limit) for v in value]) * scale

    def pairs(self, stem: str, least: int) -> np.ndarray:
        """A list of at least `least` pairs of lengths, in yards, (n, 2); required."""
        return self._rows(stem, least, "pair", "[a, b]", (LIMIT_YD, LIMIT_YD))

    def rings(self, stem: str) -> list[np.ndarray]:
        """A list of rings, each a list of three or more pairs of lengths, in yards, (n, 2); required."""
        key = self.key(stem)
        value = self.table.get(key)
        if not isinstance(value, list) or len(value) > MOST_ENTRIES:
            raise self.error(key, show(value), f"a list of up to {MOST_ENTRIES} rings, [[[x, y], ...], ...]")
        return [Fields(self.source, self.where, {key: ring}).pairs(stem, least=3) for ring in value]

    def triples(
        self, stem: str, least: int, last_limit_yd: float, form: str = "[station, offset, height]"
    ) -> np.ndarray:
        """A list of at least `least` places with a height, in yards, (n, 3); required."""
        return self._rows(stem, least, "triple", form, (LIMIT_YD, LIMIT_YD, last_limit_yd))

    def _rows(self, stem: str, least: int, word: str, form: str, limits_yd: tuple[float, ...]) -> np.ndarray:
        key = self.key(stem)
        value = self.table.get(key)
        scale = UNITS[key[len(stem) :]]
        limits = [limit / scale for limit in limits_yd]
        if not isinstance(value, list) or len(value) < least:
            found = f"{len(value)} of them" if isinstance(value, list) else show(value)
            raise self.error(key, found, f"a list of at least {least} {word}s, [{form}, ...]")
        for row in value:
            if not isinstance(row, list) or len(row) != len(limits):
                raise self.error(key, show(row), f"a {word} of numbers, {form}")
        return scale * np.array(
            [
                [self._finite(key, v, -most, most) for v, most in zip(row, limits, strict=True)]
                for row in value
            ]
        )

    def _finite(self, key: str, value: Any, low: float, high: float) -> float:
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.error(key, show(value), "a number")
        if isinstance(value, float) and not math.isfinite(value):
            raise self.error(key, show(value), "a finite number")
        if not low <= value <= high:  # integers of any size compare exactly with floats
            raise self.error(key, show(value), f"a number from {low:.10g} to {high:.10g}")
        return float(value)


def entries_of(top: Fields, key: str) -> list[Any]:
    """Tables of one kind: none, one, or a list."""
    value = top.table.get(key, [])
    if isinstance(value, dict):
        return [value]
    if not isinstance(value, list):
        raise top.error(key, show(value), f"tables, [[{key}]] or {key} = [{{...}}, {{...}}]")
    if len(value) > MOST_ENTRIES:
        raise top.error(key, f"{len(value)} entries", f"at most {MOST_ENTRIES}")
    return value


def named_entries(top: Fields, key: str) -> Iterator[tuple[Fields, str]]:
    """Fields of each table of a kind and the name it goes by: its own, or its kind and number in the file."""
    word, entries = key.replace("_", " "), entries_of(top, key)
    for number, entry in enumerate(entries, start=1):
        default = word if len(entries) == 1 else f"{word} {number}"
        name = Fields(top.source, default, entry).text("name", default)
        assert name is not None
        where = default if name == default else f"{word} {name!r}"
        yield Fields(top.source, where, entry, elsewhere=top.elsewhere), name
