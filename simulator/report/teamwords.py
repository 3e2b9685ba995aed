"""The words of the team page, the same on the screen and on paper."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

from ..strategy.courseasked import CourseAnswer
from ..strategy.rounds import add_up
from .cautions import LOOK, RULES
from .coursewords import (
    best_of,
    changes,
    club_words,
    held,
    line_legend,
    line_mark,
    scenario_words,
    share_words,
    side_words,
    sure_legend,
    where_words,
)
from .credits import maps_data
from .figures import join_words
from .units import YARDS, Units

MARK = "*"
"""Behind the line of a cell whose club is no longer as good on another of the days."""

CHANGES = f"{MARK} changes with the day:"
"""What stands before the notes of what cells change to."""

NOTHING = "-"
"""A cell without an answer."""


class TeamCell(NamedTuple):
    """What one player does on one hole: club; line, mark and how sure, held together; whether marked."""

    club: str
    line: str
    changes: bool

    @property
    def words(self) -> str:
        """All of it: "5-iron low 9L* 8/10"."""
        return f"{self.club} {self.line}".strip()


def cell_of(answer: CourseAnswer, result: dict[str, Any] | None, units: Units = YARDS) -> TeamCell:
    """The cell of a result, or of none."""
    if result is None:
        return TeamCell(NOTHING, "", False)
    one = best_of(result)
    changed = bool(changes(answer, result))
    line = line_mark(one, units) + (MARK if changed else "")
    return TeamCell(club_words(one, units), held(f"{line} {share_words(result)}".rstrip()), changed)


def players_of(answer: CourseAnswer) -> list[str]:
    """Names of the players who have an answer on any hole."""
    return [player.name for player in answer.players if answer.of(player.name)]


def head_words(answer: CourseAnswer) -> str:
    """Course, day, tees and pins."""
    return f"{answer.course.name}: {scenario_words(answer.scenarios[0])}; {where_words(answer)}"


def legend_words(answer: CourseAnswer, units: Units = YARDS) -> str:
    """What a cell counts."""
    line = line_legend(answer.results, units)
    if not any(share_words(one) for one in answer.results):
        return line
    return f"{line} {sure_legend(answer.results).replace('sure: for', 'Then for')}"


def expected_words(answer: CourseAnswer, player: str) -> str:
    """Expected strokes of a player's holes together, and of how many where some have no answer."""
    results = answer.of(player)
    if not results:
        return NOTHING
    of = f" ({len(results)} of {len(results) + missing})" if (missing := answer.missing(player)) else ""
    return f"{add_up(results).best.value:.1f}{of}"


def change_notes(answer: CourseAnswer, players: Sequence[str], units: Units = YARDS) -> list[str]:
    """What marked cells change to: a sentence for each player and day, holes that change alike together.

    "Barnaby in north: the driver, 12 left of the middle, on holes 1 and 2; the 7-iron, at the middle, on
    hole 3."
    """
    notes = []
    for name in players:
        holes: dict[str, dict[str, list[str]]] = {}
        for result in answer.of(name):
            for on_day, other in changes(answer, result):
                shot = f"the {club_words(other, units)}, {side_words(other, units)}"
                holes.setdefault(on_day, {}).setdefault(shot, []).append(f"{result['number']}")
        for day in answer.scenarios:
            if day.name in holes:
                found = [f"{held(shot)}, on {_on_holes(on)}" for shot, on in holes[day.name].items()]
                notes.append(f"{name} in {day.name}: {'; '.join(found)}.")
    return notes


def _on_holes(numbers: Sequence[str]) -> str:
    return held(f"hole {numbers[0]}") if len(numbers) == 1 else f"holes {join_words(numbers)}"


def unchanged_words(answer: CourseAnswer) -> str:
    """Why no cell is marked."""
    if len(answer.scenarios) == 1:
        return "One day only: nothing is known of what the wind would change."
    others = ", ".join(one.name for one in answer.scenarios[1:])
    return f"No club changes on the other days: {others}."


def missing_words(answer: CourseAnswer) -> str:
    """Holes that have no answer; empty when all have."""
    if not answer.failures:
        return ""
    numbers = sorted({one.number for one in answer.failures if one.number is not None})
    files = sorted({one.hole for one in answer.failures if one.number is None})
    words = [*map(str, numbers), *files]
    return f"Without an answer, in part at least: {', '.join(words)}."


def ahead_words(results: Sequence[dict[str, Any]], units: Units = YARDS) -> str:
    """How near nobody may be."""
    ahead = max((one["answer"]["clear_beyond_yd"] for one in results), default=0)
    return f"Nobody ahead nearer than {units.clear(ahead)} on any hole with these clubs. {LOOK}"


def owed_words(answer: CourseAnswer) -> str:
    """The Rules, and whose maps the holes were made from."""
    return " ".join([RULES, *maps_data(answer.course.holes)])
