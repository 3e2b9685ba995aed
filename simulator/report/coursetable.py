"""The course as a player reads it: a line a hole, the round, and where a better decision is worth most."""

from __future__ import annotations

from typing import Any

from ..player.model import Player
from ..strategy.course import CourseAnswer
from ..strategy.errorbars import Estimate
from ..strategy.rounds import add_up, ranked, worth
from .cautions import LOOK, RULES
from .coursewords import (
    best_of,
    changes,
    club_words,
    day_words,
    held,
    line_legend,
    line_words,
    pin_words,
    runner_up,
    sure_legend,
    sure_words,
    tied_clubs,
    where_words,
)
from .figures import count_words, plain_spaces, score_digits
from .screen import side_by_side, wrap
from .units import YARDS, Units

MOST_RANKED = 6
"""Holes named in the ranking; the file of all figures has the rest."""

LEAST_WORTH = 0.05
"""A hole where the habit costs less than this is not named [strokes]."""

_WIDTHS = (2, 12, 1, 12, 5, 4, 3, 3, 12, 4, 12)
_HEAD = "   hole        par club          line   sc pen dbl ahead of       by sure"


def course_summary(answer: CourseAnswer, target: int | None = None, units: Units = YARDS) -> str:
    """The summary of every player, one after the other, and the holes that have no answer."""
    parts = [_player(answer, player, target, units) for player in answer.players if answer.of(player.name)]
    if answer.failures:
        parts.append("\n".join(failure_lines(answer)))
    parts.append(_wrap(RULES))
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
    of = f" ({player.handicap:g})" if player.handicap is not None else ""
    holes = "1 hole" if len(results) == 1 else f"{len(results)} holes"
    head = (
        f"{answer.course.name}, {holes}, par {sum(r['answer']['par'] for r in results)}; "
        f"{player.name}{of}; {where_words(answer)}; {day_words(answer.scenarios[0])}; "
        f"{answer.sequences:,} plays a club, seed {answer.seed}"
    )
    lines = [_wrap(head), ""]
    lines.append(_HEAD)
    lines += [line for one in results for line in _row(answer, one, units)]
    lines += ["", _wrap(_legend(answer, results, units))]
    lines += ["", *_round(answer, player, results, target), "", _wrap(_ranking(results, units))]
    ahead = max(one["answer"]["clear_beyond_yd"] for one in results)
    lines.append(
        _wrap(f"Nobody ahead nearer than {units.length(ahead)} on any hole with these clubs. {LOOK}")
    )
    return "\n".join(lines)


def _legend(answer: CourseAnswer, results: list[dict[str, Any]], units: Units) -> str:
    text = (
        f"{line_legend(units)} sc: expected score. pen, dbl: "
        "penalties with this shot, doubles or worse, in 100 plays. ahead of: the next best club, by so many "
        f"strokes; = is as good. {sure_legend(results)}"
    )
    if any(changes(answer, one) for one in results):
        text += " *: another club on another of the days (team page)."
    return text


def _row(answer: CourseAnswer, result: dict[str, Any], units: Units) -> list[str]:
    one, other = best_of(result), runner_up(result)
    plays = answer.sequences
    mark = "*" if changes(answer, result) else ""
    tied = tied_clubs(result, units)
    beats, by = "", ""
    if other is not None:
        beats = tied[0] if tied else club_words(other, units)
        by = "" if tied else f"{max(other['difference'], 0.0):.2f}"
    cells = (
        f"{result['number']:>2}",
        result["answer"]["hole"],
        f"{result['answer']['par']}",
        club_words(one, units),
        f"{line_words(one, units) + mark:>5}",
        f"{one['expected_score']:.2f}"[:4],
        f"{_count(one['penalty_this_shot'], plays):>3}",
        f"{_count(one['double_or_worse'], plays):>3}",
        beats,
        f"{'=' if tied else by:>4}",
        sure_words(result),
    )
    return side_by_side(cells, _WIDTHS)


def _count(share: float | None, plays: int) -> str:
    """A count in 100 for a narrow column; below one in 200 a bar under it."""
    if share is None:
        return ""
    words = count_words(share, plays)
    return words if words.isdigit() else "<1"


def both(one: Estimate, digits: int | None = None) -> str:
    """Value and error with the digits the error supports."""
    places = score_digits(one.standard_error) if digits is None else digits
    return f"{one.value:.{places}f} +- {one.standard_error:.{max(places, 2)}f}"


def _round(
    answer: CourseAnswer, player: Player, results: list[dict[str, Any]], target: int | None
) -> list[str]:
    one = add_up(results, target)
    lines = [
        f"Expected round {both(one.best, 1)}, 8 in 10 rounds {one.quantile(0.1)} to {one.quantile(0.9)}; "
        f"by habit {both(one.habit, 1)}: better decisions are worth {both(one.gain, 2)} strokes."
    ]
    if target is not None and one.breaking is not None and one.breaking_by_habit is not None:
        lines[0] += (
            f" Breaks {target} in {_percent(one.breaking)} rounds of 100 (by habit "
            f"{_percent(one.breaking_by_habit)})."
        )
    lines[0] += (
        " Rounds: the holes' distributions convolved, each hole independent of the others; a player's good "
        "and bad days spread real rounds wider."
    )
    others = [
        f"{day.name} {both(add_up(found).best, 1)}"
        for day in answer.scenarios[1:]
        if len(found := answer.of(player.name, day.name)) == len(results)
    ]
    for where in answer.pins[1:]:
        found = answer.of(player.name, None, where.name)
        if len(found) == len(results):
            others.append(f"{pin_words(where)} {both(add_up(found).best, 1)}")
    if others:
        lines.append("Other days and pins: " + ", ".join(held(words) for words in others) + ".")
    return [_wrap(line) for line in lines]


def _percent(chance: Estimate) -> str:
    if chance.value < 0.005:
        return "fewer than 1"
    if chance.value > 0.995:
        return "more than 99"
    return f"{100.0 * chance.value:.0f} +- {100.0 * chance.standard_error:.1f}"


def _ranking(results: list[dict[str, Any]], units: Units) -> str:
    named = [one for one in ranked(results) if worth(one).value >= LEAST_WORTH][:MOST_RANKED]
    if not named:
        return "The habit costs nothing that counts on any hole."
    habits = {_habit(one, units) for one in named}
    shared = habits.pop() if len(habits) == 1 else ""
    words = []
    for one in named:
        apart = "" if shared else f" ({_habit(one, units)})"
        hole, strokes = held(f"{one['number']} {one['answer']['hole']}"), held(both(worth(one), 2))
        words.append(f"{hole} {strokes}{apart}")
    habit = f" ({shared})" if shared else ""
    return f"Strokes a better decision is worth, against the habit{habit}: " + "; ".join(words) + "."


def _habit(result: dict[str, Any], units: Units) -> str:
    one = result["habit"]
    club, line = club_words(one, units), line_words(one, units)
    return held(f"{club} at the flag" if line == "pin" else f"{club} {line}")


def _wrap(words: str) -> str:
    return "\n".join(wrap(words))
