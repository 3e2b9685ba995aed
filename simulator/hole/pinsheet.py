"""Hole-location sheets: a CSV file of hole, paces on, and paces from the left or the right edge, or words."""

from __future__ import annotations

import csv
import io
import re
from pathlib import Path

from simulator.errors import FileError
from simulator.files import decoded, read_bytes
from simulator.hole.pins import PinPlace, names_a_part, read_pin_place

COLUMNS = ("hole", "on", "left", "right", "side")
"""Columns of a sheet; `hole` and `on` are needed. A pin is counted from one side: a number under `left` or
`right`, or ``L5``, ``5 right``, ``C`` under `side`; from none it is half way across. Under `on` may stand
words too: ``back left``, ``middle``, ``22 on, 5 left``."""

_HEADS = {
    "hole no": "hole", "hole number": "hole", "no": "hole", "paces on": "on", "depth": "on", "deep": "on",
    "l": "left", "from left": "left", "r": "right", "from right": "right",
    "pin": "on", "position": "on", "location": "on", "flag": "on",
}  # fmt: skip
"""Column names as they are scribbled, and the one of `COLUMNS` each is."""

_DEPTH = ("depth", "deep")

_PACES = re.compile(r"(\d+(?:\.\d+)?)\s*(?:paces?|p|steps?|yards?|yds?|yd|y)(?:\s+on)?")
"""A number with its word; paces are yards."""

EXAMPLE = "hole,on,left,right with a line such as 7,22,5,"

MOST_PACES = 100.0
"""Longest distance on a sheet [paces]: more than any green is deep. A limit on slips."""

MOST_BYTES = 100_000
"""Largest sheet read [bytes]: a hundred times one of 99 holes."""

_SIDE = re.compile(r"(?:(l|left|r|right)\s*(\d+(?:\.\d+)?)|(\d+(?:\.\d+)?)\s*(l|left|r|right))")
_SIDES_IN_WORDS = {"": "", "l": "left", "left": "left", "r": "right", "right": "right"}
_MIDDLE = ("", "c", "centre", "center", "middle", "m", "0")


def read_pin_sheet(path: str | Path) -> dict[int, PinPlace | str]:
    """Pins by hole number: paces, or words for a part of the green (`pins.pin_from_words`).

    Parameters
    ----------
    path : str or Path
        CSV (RFC 4180) with a line of column names, `COLUMNS` in any order; paces are yards. Spreadsheets'
        semicolons and tabs are understood, "12 paces" and heads such as "Hole No." and "Depth" too. A hole
        with nothing behind it is passed over.

    Raises
    ------
    FileError
        One line naming the line of the file, what was found and what is allowed.
    """
    source = str(path)
    text = decoded(read_bytes(path, source, MOST_BYTES, f"a CSV file: {EXAMPLE}"), source)
    first = text.partition("\n")[0]
    comma = max(",;\t", key=first.count)
    try:
        rows = list(csv.reader(io.StringIO(text), delimiter=comma, strict=True))
    except csv.Error as error:
        raise FileError(source, "", f"a line that is not CSV ({error})", EXAMPLE) from None
    if not rows:
        raise FileError(source, "", "an empty file", EXAMPLE)
    heads = [re.sub(r"\(.*?\)", "", name).strip().rstrip(".").casefold() for name in rows[0]]
    names = [_HEADS.get(name, name) for name in heads]
    if names.count("on") > 1:  # beside paces on it is the green's
        names = ["" if head in _DEPTH else name for head, name in zip(heads, names, strict=True)]
    for name in filter(None, names):
        if name not in COLUMNS or names.count(name) > 1:
            raise FileError(source, "line 1", f"the column {name!r}", ", ".join(COLUMNS))
    if "hole" not in names or "on" not in names:
        raise FileError(source, "line 1", f"columns {', '.join(names)}", "hole and on among them")
    pins: dict[int, PinPlace | str] = {}
    for line, cells in enumerate(rows[1:], start=2):
        if not any(cell.strip() for cell in cells):
            continue
        if len(cells) > len(names):
            raise FileError(source, f"line {line}", f"{len(cells)} cells", f"{len(names)}, as line 1 has")
        row = dict.fromkeys(names, "") | dict(zip(names, (c.strip().casefold() for c in cells), strict=False))
        number = _whole(source, line, row["hole"])
        if number in pins:
            raise FileError(source, f"line {line}", f"hole {number} a second time", "each hole once")
        if not any(text for name, text in row.items() if name not in ("hole", "")):
            continue  # a hole left blank has its first pin, as one that is not on the sheet
        if (told := _in_words(row)) is not None:
            pins[number] = told
            continue
        on = _paces(source, line, "on", row["on"])
        side, beside = _side(source, line, row)
        pins[number] = PinPlace(on, side, beside)
    return pins


def _in_words(row: dict[str, str]) -> PinPlace | str | None:
    """A pin in words, with a side in words beside them; None where they are none."""
    on, side = row["on"], _SIDES_IN_WORDS.get(row.get("side", ""))
    if not on or side is None or row.get("left") or row.get("right"):
        return None
    words = f"{on} {side}".strip()
    return words if names_a_part(words) else read_pin_place(words)


def _whole(source: str, line: int, text: str) -> int:
    if not text.isascii() or not text.isdigit() or len(text) > 3:
        raise FileError(source, f"line {line}, hole", repr(text)[:40], "a hole number")
    return int(text)


def _paces(source: str, line: int, column: str, text: str) -> float:
    told = _PACES.fullmatch(text)
    try:
        value = float(told[1] if told else text)
    except ValueError:
        value = -1.0
    if not 0.0 <= value <= MOST_PACES:
        allowed = f"paces from 0 to {MOST_PACES:g}" + (', or words: "back left"' if column == "on" else "")
        raise FileError(source, f"line {line}, {column}", repr(text)[:40], allowed)
    return value


def _side(source: str, line: int, row: dict[str, str]) -> tuple[int, float]:
    given = {name: row[name] for name in ("left", "right") if row.get(name)}
    words = row.get("side", "")
    if len(given) + (words != "") > 1:
        raise FileError(source, f"line {line}", "the pin from two sides", "one of left, right and side")
    for name, text in given.items():
        return (-1 if name == "left" else 1), _paces(source, line, name, text)
    if words in _MIDDLE:
        return 0, 0.0
    found = _SIDE.fullmatch(words)
    if not found:
        raise FileError(source, f"line {line}, side", repr(words)[:40], "L5, 5 right or C")
    number, side = (found[2], found[1]) if found[1] else (found[3], found[4])
    return (-1 if side[0] == "l" else 1), _paces(source, line, "side", number)
