"""The course as a player reads it: a line a hole, the round, and where a better decision is worth most."""

from __future__ import annotations

from typing import Any

from ..player.model import Player
from ..strategy.courseasked import CourseAnswer
from ..strategy.rounds import add_up
from .coursewords import held
from .figures import plain_spaces
from .screen import side_by_side, wrap
from .summarywords import (
    RIGHT,
    asked_words,
    both,
    legend_words,
    ranking,
    ranking_head,
    round_words,
    row_words,
    shared_habit,
    whose_words,
)
from .teamwords import ahead_words, owed_words
from .units import YARDS, Units

_WIDTHS = (2, 12, 1, 12, 5, 4, 3, 3, 12, 4, 12)
_HEAD = "   hole        par club          line   sc pen dbl ahead of       by sure"


def course_summary(answer: CourseAnswer, target: int | None = None, units: Units = YARDS) -> str:
    """The summary of every player, one after the other, and the holes that have no answer."""
    parts = [_player(answer, player, target, units) for player in answer.players if answer.of(player.name)]
    if answer.failures:
        parts.append("\n".join(failure_lines(answer)))
    parts.append(_wrap(owed_words(answer)))
    return plain_spaces("\n\n".join(parts))


def failure_lines(answer: CourseAnswer) -> list[str]:
    """One line for each hole, or part of one, that has no answer."""
    lines = []
    for one in answer.failures:
        of = ", ".join(part for part in (one.player, one.scenario, one.pins) if part)
        number = f"hole {one.number}" if one.number is not None else one.hole
        lines.append(f"no answer for {number}{f' ({of})' if of else ''}: {one.message}")
    return lines


def _player(answer: CourseAnswer, player: Player, target: int | None, units: Units) -> str:
    results = answer.of(player.name)
    lines = [_wrap(f"{whose_words(answer, player, results)}; {asked_words(answer, player)}"), ""]
    lines.append(_HEAD)
    lines += [line for one in results for line in _row(answer, one, units)]
    lines += ["", _wrap(legend_words(answer, results, units)), ""]
    one = add_up(results, target, missing=answer.missing(player.name))
    lines += map(_wrap, round_words(answer, player, one))
    lines += ["", _wrap(_ranking(results, units)), _wrap(ahead_words(results, units))]
    return "\n".join(lines)


def _row(answer: CourseAnswer, result: dict[str, Any], units: Units) -> list[str]:
    cells = [
        f"{words:>{wide}}" if k in RIGHT else words
        for k, (words, wide) in enumerate(zip(row_words(answer, result, units), _WIDTHS, strict=True))
    ]
    return side_by_side(cells, _WIDTHS)


def _ranking(results: list[dict[str, Any]], units: Units) -> str:
    found = ranking(results, units)
    if not found:
        return ranking_head(found)
    shared = shared_habit(found)
    words = [
        f"{held(one.hole)} {held(both(one.worth, 2))}{'' if shared else f' ({held(one.habit)})'}"
        for one in found
    ]
    return f"{ranking_head(found)}: {'; '.join(words)}."


def _wrap(words: str) -> str:
    return "\n".join(wrap(words))
