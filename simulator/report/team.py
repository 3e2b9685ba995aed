"""The team page: holes down, players across, club and line in each cell."""

from __future__ import annotations

import math
from typing import Any

from ..strategy.course import CourseAnswer
from ..strategy.rounds import add_up
from .cautions import LOOK, RULES
from .coursewords import (
    best_of,
    changes,
    club_words,
    day_words,
    held,
    line_legend,
    line_words,
    share_words,
    sure_legend,
    where_words,
)
from .figures import plain_spaces
from .screen import COLUMNS, side_by_side, wrap
from .units import YARDS, Units

LABEL, GAP = 17, "  "
"""Width of the first column (number, name and par of a hole), and what parts columns."""

CELL, SURE_CELL, WIDEST_CELL = 13, 19, 30
"""Width of a player's column: least without and with how sure each choice is, and most.

As many players side by side as fit, the rest below, blocks filled alike; what is too long for its column goes
on in the line below.
"""

Notes = dict[tuple[str, str], list[str]]
"""What changes: for a player and a day, the clubs of its holes."""


def team_page(answer: CourseAnswer, units: Units = YARDS) -> str:
    """Every player's club and line, cells that change with the day marked, and what they change to."""
    players = [player.name for player in answer.players if answer.of(player.name)]
    sure = any(share_words(one) for one in answer.results)
    day = answer.scenarios[0]
    lines = wrap(f"{answer.course.name}: {day_words(day)}; {where_words(answer)}")
    notes: Notes = {}
    line = line_legend(units)
    lines += wrap(f"{line} {sure_legend(answer.results).replace('sure: for', 'Then for')}" if sure else line)
    side = _side_by_side(players, SURE_CELL if sure else CELL)
    for first in range(0, len(players), side):
        lines += ["", *_block(answer, players[first : first + side], notes, _cell_width(side), units)]
    lines.append("")
    if len(answer.scenarios) == 1:
        lines += wrap("One day only: nothing is known of what the wind would change.")
    elif notes:
        lines += wrap("* changes with the day:")
        for (player, other), holes in notes.items():
            lines += wrap(f"{player} in {other}: {'; '.join(map(held, holes))}.", "    ", "  ")
    else:
        others = ", ".join(one.name for one in answer.scenarios[1:])
        lines += wrap(f"No club changes on the other days: {others}.")
    if answer.failures:
        numbers = sorted({f"{one.number if one.number is not None else one.hole}" for one in answer.failures})
        lines += wrap(f"Without an answer, in part at least: {', '.join(numbers)}.")
    ahead = max((one["answer"]["clear_beyond_yd"] for one in answer.results), default=0)
    lines += wrap(f"Nobody ahead nearer than {units.length(ahead)} on any hole with these clubs. {LOOK}")
    lines += wrap(RULES)
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


def _block(answer: CourseAnswer, players: list[str], notes: Notes, wide: int, units: Units) -> list[str]:
    by_player = {name: {one["number"]: one for one in answer.of(name)} for name in players}
    widths = (LABEL, *(wide for _ in players))
    lines = side_by_side(("", *players), widths, GAP)
    for number, hole in answer.course.numbered():
        cells = []
        for name in players:
            result = by_player[name].get(number)
            cells.append("-" if result is None else _cell(answer, result, notes, units))
        lines += side_by_side((f"{number:>2} {hole.name} {hole.par}", *cells), widths, GAP)
    totals = []
    for name in players:
        results = answer.of(name)
        totals.append(f"{add_up(results).best.value:.1f}" if results else "-")
    return lines + side_by_side(("expected", *totals), widths, GAP)


def _cell(answer: CourseAnswer, result: dict[str, Any], notes: Notes, units: Units) -> str:
    one = best_of(result)
    changed = changes(answer, result)
    for day, other in changed:
        words = f"{result['number']} {club_words(other, units)} {line_words(other, units)}"
        notes.setdefault((result["answer"]["player"], day), []).append(words)
    line = line_words(one, units) + ("*" if changed else "")
    return f"{club_words(one, units)} {held(f'{line} {share_words(result)}'.rstrip())}"
