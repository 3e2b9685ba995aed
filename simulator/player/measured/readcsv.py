"""Measured shots in a CSV file: which column is what, in which unit, and what is nonsense."""

from __future__ import annotations

import csv
import io
import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

from ...errors import FileError
from ...files import decoded, read_bytes
from ...toml_text import short_line
from ...units import FT_PER_YD, M_PER_YD
from ..check import Section, read_toml
from ..names import club_name, did_you_mean, kind_of

MOST_BYTES = 20_000_000
"""Largest file read [bytes]: some hundred thousand shots."""

LONGEST_YD, WIDEST_YD = 450.0, 200.0
"""A carry or an offset beyond these is a slip of the keyboard, or metres taken for yards [yd]."""

_SPELLINGS = {
    "club": ("club", "clubname", "clubtype", "schlager", "baton"),
    "carry": ("carry", "carrydistance", "carrydist", "carrylength"),
    "offline": (
        "offline",
        "side",
        "lateral",
        "carryside",
        "offlinecarry",
        "sidecarry",
        "offset",
        "sidedistance",
    ),
    "total": ("total", "totaldistance", "totaldist", "totallength"),
}  # fmt: skip
"""Headings taken for each column, letters only, any unit in brackets left out."""

_UNIT = {
    **dict.fromkeys(("yd", "yds", "yard", "yards"), 1.0),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), 1.0 / M_PER_YD),
    **dict.fromkeys(("ft", "feet", "foot"), 1.0 / FT_PER_YD),
}
"""Yards in a unit, as people write it."""

_ANGLES = ("deg", "degs", "degree", "degrees", "\N{DEGREE SIGN}")

_UNIT_BEHIND = re.compile(r"[(\[_\s]\s*([a-z\N{DEGREE SIGN}]+)\s*[)\]]?\s*$")
"""The unit behind a heading: "Carry (m)", "carry_yd", "Side [ft]"."""

_SIDED = re.compile(
    r"(?P<before>left|right|[lr])?\s*(?P<number>[-+]?\d+(?:\.\d*)?|[-+]?\.\d+)"
    r"\s*(?P<unit>yards?|yds?|met(?:re|er)s?|m|ft|feet|foot)?\s*(?P<after>left|right|[lr])?",
    re.I,
)
"""A cell: a number, its side in letters, a unit of its own."""

SLIPS_SHARE, LEAST_SLIPS = 0.1, 3
"""Rows that cannot be read and are left aside: this share of all, and so many in any case; more are a file of
something else (assumed)."""

MOST_NAMED = 12
"""Rows that one message names."""


@dataclass(frozen=True)
class Columns:
    """How a file is to be read; every field may be left out.

    Attributes
    ----------
    headings : mapping of str to str
        Heading in the file for any of ``club``, ``carry``, ``offline``, ``total``.
    clubs : mapping of str to str
        The file's names of clubs, to names we know.
    units : str or None
        ``"yards"`` or ``"metres"``; None: by the heading ("Carry (m)") or a row of units under
        it, else by the other columns', else `unsaid`.
    left_positive : bool
        The file counts left as positive.
    unsaid : str
        Unit of a column whose heading names none, where no other column does.
    """

    headings: Mapping[str, str] = field(default_factory=dict)
    clubs: Mapping[str, str] = field(default_factory=dict)
    units: str | None = None
    left_positive: bool = False
    unsaid: str = "yards"

    @classmethod
    def from_file(cls, path: str | Path) -> Columns:
        """Read a mapping file: ``units``, ``left_positive``, ``[columns]`` and ``[clubs]``.

        Raises
        ------
        FileError
            Anything in it that cannot be used.
        """
        source = short_line(path, 200)
        top = Section(source, "", read_toml(Path(path), source, "a mapping"))
        top.only(("units", "left_positive", "columns", "clubs"))
        headings = Section(source, "columns", top.table.get("columns", {}))
        headings.only(tuple(_SPELLINGS))
        clubs = Section(source, "clubs", top.table.get("clubs", {}))
        left = top.table.get("left_positive", False)
        if not isinstance(left, bool):
            top.refuse("left_positive", short_line(left, 40), "true or false")
        units = top.text("units")
        if units is not None and units not in ("yards", "metres"):
            top.refuse("units", repr(units), "yards or metres")
        return cls(
            {key: str(headings.text(key)) for key in headings.table},
            {str(key): str(clubs.text(key)) for key in clubs.table},
            units,
            left,
        )


@dataclass(frozen=True)
class Read:
    """What a file of shots holds.

    Attributes
    ----------
    shots : mapping of str to Shots
        By club, in the order the clubs appear.
    left_aside : tuple of str
        Rows that could not be read, each with its reason.
    """

    shots: Mapping[str, Shots]
    left_aside: tuple[str, ...]


@dataclass(frozen=True)
class Shots:
    """Measured shots of one club.

    Attributes
    ----------
    club : str
        Simple name.
    carry_yd, offline_yd : float64[shots]
        Straight from the ball to where it came down, as launch monitors and lasers measure a carry (common
        practice), and how far right of the target line that is.
    total_yd : float64[shots] or None
        Carry and run, where the file has it.
    """

    club: str
    carry_yd: np.ndarray
    offline_yd: np.ndarray
    total_yd: np.ndarray | None

    @property
    def direction_deg(self) -> np.ndarray:
        """Direction of each shot, right positive [deg]; wider than long counts as square to the line."""
        share = np.divide(
            self.offline_yd, self.carry_yd, out=np.sign(self.offline_yd), where=self.carry_yd > 0.0
        )
        return np.degrees(np.arcsin(np.clip(share, -1.0, 1.0)))


def read_shots(path: str | Path, columns: Columns | None = None) -> Read:
    """Shots by club; a few rows that cannot be read are left aside and named.

    Parameters
    ----------
    path : path of a CSV file
        Comma, semicolon or tab; the first row holds the headings; rows without club and carry are skipped.
    columns : Columns, optional

    Raises
    ------
    FileError
        No such file, a column that is not found, more than a tenth of the rows (and more than three, or half
        of a short file) that are no golf shots: all are named.
    """
    columns = columns or Columns()
    source = short_line(path, 200)
    rows = _rows(Path(path), source)
    if not rows:
        raise FileError(source, "", "an empty file", "a row of headings and a row for every shot")
    heads = rows[0]
    at = {key: _column(source, heads, key, columns.headings.get(key)) for key in _SPELLINGS}
    first, heads = _units_row(rows, at)
    scale = _scales(source, heads, at, columns)
    found: dict[str, list[tuple[float, float, float]]] = {}
    wrong: list[FileError] = []
    for number, row in enumerate(rows[first:], start=first + 1):
        cells = {key: row[k].strip() if k is not None and k < len(row) else "" for key, k in at.items()}
        if not cells["club"] and not cells["carry"]:
            continue
        where = f"row {number}"
        try:
            club = _club(source, where, cells["club"], columns.clubs)
            carry, offline, total = _figures(source, where, cells, scale)
        except FileError as error:
            wrong.append(error)
            continue
        found.setdefault(club, []).append((carry, -offline if columns.left_positive else offline, total))
    _check_slips(source, wrong, sum(map(len, found.values())))
    if not found:
        raise FileError(source, "", "headings and no shot", "a row for every shot")
    shots = {club: _shots(club, np.array(values)) for club, values in found.items()}
    return Read(shots, tuple(f"{one.where}: {one.found}" for one in wrong))


def _figures(
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


def _check_slips(source: str, wrong: list[FileError], good: int) -> None:
    """Refuse a file of which too much cannot be read, naming all of it in one line."""
    most = max(LEAST_SLIPS, int(SLIPS_SHARE * (len(wrong) + good)))
    if not wrong or (len(wrong) <= most and len(wrong) < good):
        return
    if len(wrong) == 1:
        raise wrong[0]
    named = "; ".join(f"{one.where}: {one.found}" for one in wrong[:MOST_NAMED])
    more = f" and {len(wrong) - MOST_NAMED} more" if len(wrong) > MOST_NAMED else ""
    allowed = dict.fromkeys(one.allowed for one in wrong)
    raise FileError(
        source, "", f"{len(wrong)} of {len(wrong) + good} rows that cannot be read ({named}{more})",
        f"{'; '.join(list(allowed)[:3])} (up to a tenth of the rows is left aside)",
    )  # fmt: skip


def _shots(club: str, values: np.ndarray) -> Shots:
    total = values[:, 2]
    return Shots(club, values[:, 0], values[:, 1], None if np.isnan(total).all() else total)


def _rows(path: Path, source: str) -> list[list[str]]:
    text = decoded(read_bytes(path, source, MOST_BYTES, "a CSV file of shots"), source)
    first = text.split("\n", 1)[0]
    mark = max(",;\t", key=first.count)
    try:
        rows = list(csv.reader(io.StringIO(text), delimiter=mark, strict=False))
    except csv.Error as error:
        found = f"a row that is not CSV ({short_line(error, 90)})"
        raise FileError(source, "", found, "a CSV file of shots") from None
    return [row for row in rows if any(cell.strip() for cell in row)]


def _letters(heading: str) -> str:
    return re.sub(r"[^a-z]", "", re.sub(r"[(\[].*?[)\]]|_(yd|yds|m|ft)\b", "", heading.casefold()))


def _column(source: str, heads: list[str], key: str, asked: str | None) -> int | None:
    """Index of a column; None where the file has no totals and none were asked for."""
    names = [head.strip() for head in heads]
    if asked is not None:
        if asked not in names:
            near = did_you_mean(asked, names)
            raise FileError(source, "headings", f"no column {asked!r}{near}", ", ".join(names)[:200])
        return names.index(asked)
    for spelling in _SPELLINGS[key]:
        for k, head in enumerate(names):
            if _letters(head) == spelling:
                return k
    if key == "total":
        return None
    shown = ", ".join(short_line(name, 30) for name in names)[:160]
    raise FileError(
        source,
        "headings",
        f"no column for {key} among {shown}",
        f"a column named {key}, or --columns {key}=NAME",
    )


def _units_row(rows: list[list[str]], at: Mapping[str, int | None]) -> tuple[int, list[str]]:
    """Index of the first row of shots, and the headings with the units a row under them may have."""
    heads = rows[0]
    column = at["carry"]
    if len(rows) < 2 or column is None or column >= len(rows[1]):
        return 1, heads
    if rows[1][column].strip(" ()[]").casefold() not in _UNIT:
        return 1, heads
    units = [cell.strip(" ()[]") for cell in rows[1]] + [""] * len(heads)
    return 2, [f"{head} ({unit})" if unit else head for head, unit in zip(heads, units, strict=False)]


def _scales(
    source: str, heads: list[str], at: Mapping[str, int | None], columns: Columns
) -> dict[str, float]:
    """Yards in one unit of each column: as it says, else as the others say, else as `Columns.unsaid`.

    A side in feet says nothing of the carries beside it.
    """
    keys = ("carry", "total", "offline")
    if columns.units is not None:
        return dict.fromkeys(keys, _UNIT[columns.units])
    said = {key: _said_unit(source, heads, at[key]) for key in keys}
    others = [unit for unit in said.values() if unit is not None and unit != _UNIT["ft"]]
    unsaid = others[0] if others else _UNIT[columns.unsaid]
    return {key: unsaid if unit is None else unit for key, unit in said.items()}


def _said_unit(source: str, heads: list[str], column: int | None) -> float | None:
    """Yards in the unit a heading names, None where it names none."""
    found = None if column is None else _UNIT_BEHIND.search(heads[column].strip().casefold())
    if column is None or found is None:
        return None
    if found[1] in _ANGLES:
        named = short_line(heads[column], 40)
        raise FileError(source, "headings", f"an angle, {named!r}", "yards, metres or feet")
    return _UNIT.get(found[1])


def _club(source: str, where: str, text: str, names: Mapping[str, str]) -> str:
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


def _number(source: str, where: str, key: str, text: str, low: float, high: float, yards: float) -> float:
    """A number in yards; ``12 L``, ``5 right`` and ``R12`` are sides, ``150 yds`` has a unit of its own."""
    # a decimal comma, for no shot is a thousand of anything; a minus as typesetters have it
    plain = text.replace(",", ".").replace("\N{MINUS SIGN}", "-")
    found = _SIDED.fullmatch(plain.strip())
    sides = [] if found is None else [s.lower() for s in (found["before"], found["after"]) if s]
    allowed = f"{low:g} to {high:g} yards" + (", left negative, or 12 L and 12 R" if key == "offline" else "")
    if found is None or len(sides) > 1 or (sides and key != "offline"):
        raise FileError(source, f"{where}, {key}", f"{short_line(text, 30)!r}", f"a number: {allowed}")
    value = float(found["number"]) * (_UNIT[found["unit"].lower()] if found["unit"] else yards)
    if sides:
        value = -abs(value) if sides[0][0] == "l" else abs(value)
    if not low <= value <= high:
        raise FileError(source, f"{where}, {key}", f"{value:.4g} yards", allowed)
    return value
