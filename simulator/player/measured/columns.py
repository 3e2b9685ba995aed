"""Which column of a file of shots is what: found by its heading, or as somebody says."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from ...errors import FileError
from ...toml_text import short_line
from ..check import Section, read_toml
from ..names import did_you_mean

SPELLINGS = {
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
        headings.only(tuple(SPELLINGS))
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


def column(source: str, heads: list[str], key: str, asked: str | None) -> int | None:
    """Index of a column; None where the file has no totals and none were asked for."""
    names = [head.strip() for head in heads]
    if asked is not None:
        if asked not in names:
            near = did_you_mean(asked, names)
            raise FileError(source, "headings", f"no column {asked!r}{near}", ", ".join(names)[:200])
        return names.index(asked)
    for spelling in SPELLINGS[key]:
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


def _letters(heading: str) -> str:
    return re.sub(r"[^a-z]", "", re.sub(r"[(\[].*?[)\]]|_(yd|yds|m|ft)\b", "", heading.casefold()))
