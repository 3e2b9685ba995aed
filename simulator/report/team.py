"""The team page: holes down, players across, club and line in each cell."""

from __future__ import annotations

from typing import Any

from ..strategy.course import CourseAnswer
from ..strategy.rounds import add_up
from .cautions import LOOK, RULES
from .coursewords import (
    best_of,
    changes,
    club_words,
    day_words,
    line_words,
    share_words,
    sure_legend,
    where_words,
)
from .figures import plain_spaces
from .screen import COLUMNS, wrap

LABEL, CELL, SURE_CELL = 17, 15, 21
"""Width of the first column, and of a player's without and with how sure each choice is; as many players side
by side as fit, the rest below."""


def team_page(answer: CourseAnswer) -> str:
    """Every player's club and line, cells that change with the day marked, and what they change to."""
    players = [player.name for player in answer.players if answer.of(player.name)]
    sure = any(share_words(one) for one in answer.results)
    cell = SURE_CELL if sure else CELL
    across = (COLUMNS - LABEL) // cell
    day = answer.scenarios[0]
    lines = [f"{answer.course.name}: {day_words(day)}; {where_words(answer)}"]
    notes: list[str] = []
    line = "Line: yards left or right of the pin line at the club's carry."
    lines += wrap(f"{line} {sure_legend(answer.results).replace('sure: for', 'Then for')}" if sure else line)
    for first in range(0, len(players), across):
        lines += ["", *_block(answer, players[first : first + across], notes, cell)]
    lines.append("")
    if len(answer.scenarios) == 1:
        lines += wrap("One day only: nothing is known of what the wind would change.")
    elif notes:
        lines += wrap(f"* changes with the day: {'; '.join(notes)}.")
    else:
        others = ", ".join(one.name for one in answer.scenarios[1:])
        lines += wrap(f"No club changes on the other days: {others}.")
    if answer.failures:
        numbers = sorted({f"{one.number if one.number is not None else one.hole}" for one in answer.failures})
        lines += wrap(f"Without an answer, in part at least: {', '.join(numbers)}.")
    ahead = max((one["answer"]["clear_beyond_yd"] for one in answer.results), default=0)
    lines += wrap(f"Nobody ahead nearer than {ahead} yd on any hole with these clubs. {LOOK}")
    lines += wrap(RULES)
    return plain_spaces("\n".join(line.rstrip() for line in lines))


def _block(answer: CourseAnswer, players: list[str], notes: list[str], wide: int) -> list[str]:
    by_player = {name: {one["number"]: one for one in answer.of(name)} for name in players}
    lines = [f"{'':<{LABEL}}" + "".join(f"{_cut(name):<{wide}}" for name in players)]
    for number, hole in answer.course.numbered():
        cells = []
        for name in players:
            result = by_player[name].get(number)
            cells.append("-" if result is None else _cell(answer, result, notes, wide))
        label = f"{number:>2} {hole.name:.11} {hole.par}"
        lines.append(f"{label:<{LABEL}}" + "".join(f"{cell:<{wide}}" for cell in cells))
    totals = []
    for name in players:
        results = answer.of(name)
        totals.append(f"{add_up(results).best.value:.1f}" if results else "-")
    lines.append(f"{'expected':<{LABEL}}" + "".join(f"{cell:<{wide}}" for cell in totals))
    return lines


def _cell(answer: CourseAnswer, result: dict[str, Any], notes: list[str], wide: int) -> str:
    one = best_of(result)
    changed = changes(answer, result)
    for day, other in changed:
        player = result["answer"]["player"]
        notes.append(f"{result['number']} {player}: {club_words(other)} {line_words(other)} in {day}")
    line = line_words(one) + ("*" if changed else "")
    line += f" {share_words(result)}" if share_words(result) else ""
    return f"{club_words(one)[: wide - 2 - len(line)]} {line}"


def _cut(name: str) -> str:
    return name if len(name) < CELL else name[: CELL - 2] + "."
