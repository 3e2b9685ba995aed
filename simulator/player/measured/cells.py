"""What a row of a file of shots says: a club, and lengths in yards."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping

from ...errors import FileError
from ...toml_text import short_line
from ..names import club_name, kind_of
from .scales import YARDS_IN

LONGEST_YD, WIDEST_YD = 450.0, 200.0
"""A carry or an offset beyond these is a slip of the keyboard, or metres taken for yards [yd]."""

_SIDED = re.compile(
    r"(?P<before>left|right|[lr])?\s*(?P<number>[-+]?\d+(?:\.\d*)?|[-+]?\.\d+)"
    r"\s*(?P<unit>yards?|yds?|met(?:re|er)s?|m|ft|feet|foot)?\s*(?P<after>left|right|[lr])?",
    re.I,
)
"""A cell: a number, its side in letters, a unit of its own."""


def club_of(source: str, where: str, text: str, names: Mapping[str, str]) -> str:
    """The club a cell names, by the mapping file's names first; FileError: it is none, or a putter."""
    said = names.get(text, text)
    name = club_name(said)
    if name is None or kind_of(name) is None:
        raise FileError(
            source, where, f"a club {short_line(text, 30)!r} we do not know",
            "a name such as driver, 3-wood, 7-iron, pw, 56; or its name in the mapping file's [clubs]",
        )  # fmt: skip
    if name == "putter":
        raise FileError(source, where, "a putter", "full shots only")
    return name


def figures(
    source: str, where: str, cells: Mapping[str, str], scale: Mapping[str, float]
) -> tuple[float, float, float]:
    """Carry, offline and total of a row [yd]; a total that is not there is not a number."""
    carry = _number(source, where, "carry", cells["carry"], 0.0, LONGEST_YD, scale["carry"])
    offline = _number(source, where, "offline", cells["offline"], -WIDEST_YD, WIDEST_YD, scale["offline"])
    if not cells["total"]:
        return carry, offline, math.nan
    return (
        carry, offline,
        _number(source, where, "total", cells["total"], 0.0, LONGEST_YD + 100.0, scale["total"]),
    )  # fmt: skip


def _number(source: str, where: str, key: str, text: str, low: float, high: float, yards: float) -> float:
    """A number in yards; ``12 L``, ``5 right`` and ``R12`` are sides, ``150 yds`` has a unit of its own."""
    # a decimal comma, for no shot is a thousand of anything; a minus as typesetters have it
    plain = text.replace(",", ".").replace("\N{MINUS SIGN}", "-")
    found = _SIDED.fullmatch(plain.strip())
    sides = [] if found is None else [s.lower() for s in (found["before"], found["after"]) if s]
    allowed = f"{low:g} to {high:g} yards" + (", left negative, or 12 L and 12 R" if key == "offline" else "")
    if found is None or len(sides) > 1 or (sides and key != "offline"):
        raise FileError(source, f"{where}, {key}", f"{short_line(text, 30)!r}", f"a number: {allowed}")
    value = float(found["number"]) * (YARDS_IN[found["unit"].lower()] if found["unit"] else yards)
    if sides:
        value = -abs(value) if sides[0][0] == "l" else abs(value)
    if not low <= value <= high:
        raise FileError(source, f"{where}, {key}", f"{value:.4g} yards", allowed)
    return value
