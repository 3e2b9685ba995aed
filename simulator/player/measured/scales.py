"""The unit each column of a file of shots is in: by its heading, a row of units, or the other columns."""

from __future__ import annotations

import re
from collections.abc import Mapping

from ...errors import FileError
from ...toml_text import short_line
from ...units import FT_PER_YD, M_PER_YD
from .columns import Columns

YARDS_IN = {
    **dict.fromkeys(("yd", "yds", "yard", "yards"), 1.0),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), 1.0 / M_PER_YD),
    **dict.fromkeys(("ft", "feet", "foot"), 1.0 / FT_PER_YD),
}
"""Yards in a unit, as people write it."""

_ANGLES = ("deg", "degs", "degree", "degrees", "\N{DEGREE SIGN}")

_UNIT_BEHIND = re.compile(r"[(\[_\s]\s*([a-z\N{DEGREE SIGN}]+)\s*[)\]]?\s*$")
"""The unit behind a heading: "Carry (m)", "carry_yd", "Side [ft]"."""


def units_row(rows: list[list[str]], at: Mapping[str, int | None]) -> tuple[int, list[str]]:
    """Index of the first row of shots, and the headings with the units a row under them may have."""
    heads = rows[0]
    column = at["carry"]
    if len(rows) < 2 or column is None or column >= len(rows[1]):
        return 1, heads
    if rows[1][column].strip(" ()[]").casefold() not in YARDS_IN:
        return 1, heads
    units = [cell.strip(" ()[]") for cell in rows[1]] + [""] * len(heads)
    return 2, [f"{head} ({unit})" if unit else head for head, unit in zip(heads, units, strict=False)]


def scales(source: str, heads: list[str], at: Mapping[str, int | None], columns: Columns) -> dict[str, float]:
    """Yards in one unit of each column: as it says, else as the others say, else as `Columns.unsaid`.

    A side in feet says nothing of the carries beside it.
    """
    keys = ("carry", "total", "offline")
    if columns.units is not None:
        return dict.fromkeys(keys, YARDS_IN[columns.units])
    said = {key: _said_unit(source, heads, at[key]) for key in keys}
    others = [unit for unit in said.values() if unit is not None and unit != YARDS_IN["ft"]]
    unsaid = others[0] if others else YARDS_IN[columns.unsaid]
    return {key: unsaid if unit is None else unit for key, unit in said.items()}


def _said_unit(source: str, heads: list[str], column: int | None) -> float | None:
    """Yards in the unit a heading names, None where it names none."""
    found = None if column is None else _UNIT_BEHIND.search(heads[column].strip().casefold())
    if column is None or found is None:
        return None
    if found[1] in _ANGLES:
        named = short_line(heads[column], 40)
        raise FileError(source, "headings", f"an angle, {named!r}", "yards, metres or feet")
    return YARDS_IN.get(found[1])
