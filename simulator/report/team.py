"""The team page in text: holes down, players across, club and line in each cell."""

from __future__ import annotations

import math

from ..strategy.courseasked import CourseAnswer
from .coursewords import share_words
from .figures import plain_spaces
from .screen import COLUMNS, side_by_side, wrap
from .teamwords import (
    CHANGES,
    ahead_words,
    cell_of,
    change_notes,
    expected_words,
    head_words,
    legend_words,
    missing_words,
    owed_words,
    players_of,
    unchanged_words,
)
from .units import YARDS, Units

LABEL, GAP = 17, "  "
"""Width of the first column (number, name and par of a hole), and what parts columns."""

CELL, SURE_CELL, WIDEST_CELL = 13, 19, 30
"""Width of a player's column: least without and with how sure each choice is, and most.

As many players side by side as fit, the rest below, blocks filled alike; what is too long for its column goes
on in the line below.
"""


def team_page(answer: CourseAnswer, units: Units = YARDS) -> str:
    """Every player's club and line, cells that change with the day marked, and what they change to."""
    players = players_of(answer)
    lines = wrap(head_words(answer)) + wrap(legend_words(answer, units))
    side = _side_by_side(players, SURE_CELL if any(map(share_words, answer.results)) else CELL)
    for first in range(0, len(players), side):
        lines += ["", *_block(answer, players[first : first + side], _cell_width(side), units)]
    lines.append("")
    notes = change_notes(answer, players, units)
    if notes:
        lines += wrap(CHANGES)
        for note in notes:
            lines += wrap(note, "    ", "  ")
    else:
        lines += wrap(unchanged_words(answer))
    for words in (missing_words(answer), ahead_words(answer.results, units), owed_words(answer)):
        lines += wrap(words)
    return plain_spaces("\n".join(line.rstrip() for line in lines))


def _side_by_side(players: list[str], least: int) -> int:
    """Players in a block: as few blocks as can be, filled alike; no part of a name is broken for it."""
    parts = (part for name in players for part in name.replace("-", "- ").split())
    wide = min(max(least, *map(len, parts), 0), WIDEST_CELL)
    most = (COLUMNS - LABEL) // (wide + len(GAP))
    blocks = max(1, math.ceil(len(players) / most))
    return max(1, math.ceil(len(players) / blocks))


def _cell_width(side: int) -> int:
    return min((COLUMNS - LABEL) // side - len(GAP), WIDEST_CELL)


def _block(answer: CourseAnswer, players: list[str], wide: int, units: Units) -> list[str]:
    by_player = {name: {one["number"]: one for one in answer.of(name)} for name in players}
    widths = (LABEL, *(wide for _ in players))
    lines = side_by_side(("   hole, par", *players), widths, GAP)
    for number, hole in answer.course.numbered():
        cells = (cell_of(answer, by_player[name].get(number), units).words for name in players)
        lines += side_by_side((f"{number:>2} {hole.name}, {hole.par}", *cells), widths, GAP)
    totals = (expected_words(answer, name) for name in players)
    return lines + side_by_side(("expected", *totals), widths, GAP)
