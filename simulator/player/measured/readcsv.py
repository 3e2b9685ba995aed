"""A CSV file of measured shots, read by club; of a few rows that are nonsense the rest is read."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import numpy as np

from ...errors import FileError
from ...files import decoded, read_bytes
from ...toml_text import short_line
from .cells import club_of, figures
from .columns import SPELLINGS, Columns, column
from .scales import scales, units_row
from .shots import Read, Shots

MOST_BYTES = 20_000_000
"""Largest file read [bytes]: some hundred thousand shots."""

SLIPS_SHARE, LEAST_SLIPS = 0.1, 3
"""Rows that cannot be read and are left aside: this share of all, and so many in any case; more are a file of
something else (assumed)."""

MOST_TITLES = 12
"""Rows that may stand above the headings (assumed)."""

MOST_NAMED = 12
"""Rows that one message names."""


def read_shots(path: str | Path, columns: Columns | None = None) -> Read:
    """Shots by club; a few rows that cannot be read are left aside and named.

    Parameters
    ----------
    path : path of a CSV file
        Comma, semicolon or tab; the first row, or the first below a few of titles, holds the headings;
        rows without club and carry are skipped.
    columns : Columns, optional

    Raises
    ------
    FileError
        No such file, a column that is not found, more than a tenth of the rows (and more than three, or half
        of a short file) that are no golf shots: all are named.
    """
    columns = columns or Columns()
    source = short_line(path, 200)
    rows, above = _rows(Path(path), source, columns)
    if not rows:
        raise FileError(source, "", "an empty file", "a row of headings and a row for every shot")
    at = _columns(source, rows[above], columns)
    first, heads = units_row(rows[above:], at)
    first += above
    scale = scales(source, heads, at, columns)
    found: dict[str, list[tuple[float, float, float]]] = {}
    wrong: list[FileError] = []
    for number, row in enumerate(rows[first:], start=first + 1):
        cells = {key: row[k].strip() if k is not None and k < len(row) else "" for key, k in at.items()}
        if not cells["club"] and not cells["carry"]:
            continue
        where = f"row {number}"
        try:
            club = club_of(source, where, cells["club"], columns.clubs)
            carry, offline, total = figures(source, where, cells, scale)
        except FileError as error:
            wrong.append(error)
            continue
        found.setdefault(club, []).append((carry, -offline if columns.left_positive else offline, total))
    _check_slips(source, wrong, sum(map(len, found.values())))
    if not found:
        raise FileError(source, "", "headings and no shot", "a row for every shot")
    shots = {club: _shots(club, np.array(values)) for club, values in found.items()}
    return Read(shots, tuple(f"{one.where}: {one.found}" for one in wrong))


def _columns(source: str, heads: list[str], columns: Columns) -> dict[str, int | None]:
    return {key: column(source, heads, key, columns.headings.get(key)) for key in SPELLINGS}


def _titles_above(rows: list[list[str]], columns: Columns) -> int | None:
    """How many rows ("Session 12 March, bay 4") stand above the headings; None where none are found."""
    for k, row in enumerate(rows[:MOST_TITLES]):
        try:
            _columns("", row, columns)
        except FileError:
            continue
        return k
    return None


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


def _rows(path: Path, source: str, columns: Columns) -> tuple[list[list[str]], int]:
    """The rows that say anything, and which of them holds the headings."""
    text = decoded(read_bytes(path, source, MOST_BYTES, "a CSV file of shots"), source)
    first = text.split("\n", 1)[0]
    marks = sorted(",;\t", key=first.count, reverse=True)
    every = [_cells(text, mark, source) for mark in marks]
    above = [_titles_above(rows, columns) for rows in every]
    return next(((rows, k) for rows, k in zip(every, above, strict=True) if k is not None), (every[0], 0))


def _cells(text: str, mark: str, source: str) -> list[list[str]]:
    try:
        rows = list(csv.reader(io.StringIO(text), delimiter=mark, strict=False))
    except csv.Error as error:
        found = f"a row that is not CSV ({short_line(error, 90)})"
        raise FileError(source, "", found, "a CSV file of shots") from None
    return [row for row in rows if any(cell.strip() for cell in row)]
