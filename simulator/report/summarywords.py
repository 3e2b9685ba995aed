"""The words of a player's summary of a course, the same on the screen and on paper."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, NamedTuple

from ..player.model import Player
from ..strategy.courseasked import CourseAnswer
from ..strategy.errorbars import Estimate
from ..strategy.rounds import Round, add_up, ranked, worth
from .coursewords import (
    best_of,
    changes,
    club_words,
    held,
    line_legend,
    line_mark,
    pin_words,
    runner_up,
    scenario_words,
    side_words,
    sure_legend,
    sure_words,
    tied_clubs,
    where_words,
)
from .figures import LEAST_COUNT, NOTHING_STROKES, count_words, name_said, score_digits
from .teamwords import MARK
from .units import YARDS, Units

MOST_RANKED = 6
"""Holes named in the ranking; the file of all figures has the rest."""

LEAST_WORTH = 0.05
"""A hole where the habit costs less than this is not named [strokes]."""

HEADS = ("", "hole", "par", "club", "line", "sc", "pen", "dbl", "ahead of", "by", "sure")
"""What stands over the cells of a row."""

RIGHT = (0, 4, 5, 6, 7, 9)
"""Cells of a row that end at the right of their column."""

Results = Sequence[dict[str, Any]]


def whose_words(answer: CourseAnswer, player: Player, results: Results) -> str:
    """Course and player."""
    worked, missing = len(results), answer.missing(player.name)
    holes = "1 hole" if worked == 1 else f"{worked} holes"
    if missing:
        holes = f"{worked} of {worked + missing} holes"
    par = sum(one["answer"]["par"] for one in results)
    return f"{answer.course.name}, {holes}, par {par}; {name_said(player)}"


def asked_words(answer: CourseAnswer, player: Player) -> str:
    """The player's tees, pins, day, and how much was played."""
    plays = f"{answer.sequences:,} plays a club, seed {answer.seed}"
    return f"{where_words(answer, player)}; {scenario_words(answer.scenarios[0])}; {plays}"


def row_words(answer: CourseAnswer, result: dict[str, Any], units: Units = YARDS) -> tuple[str, ...]:
    """A hole: what stands below each of `HEADS`."""
    one, other = best_of(result), runner_up(result)
    plays = answer.sequences
    tied = tied_clubs(result, units)
    beats, by = "", ""
    if other is not None:
        beats = tied[0] if tied else club_words(other, units)
        by = "" if tied else f"{max(other['difference'], 0.0):.2f}"
    return (
        f"{result['number']}",
        result["answer"]["hole"],
        f"{result['answer']['par']}",
        club_words(one, units),
        line_mark(one, units) + (MARK if changes(answer, result) else ""),
        f"{one['expected_score']:.2f}"[:4],
        _count(one["penalty_this_shot"], plays),
        _count(one["double_or_worse"], plays),
        beats,
        "=" if tied else by,
        sure_words(result),
    )


def _count(share: float | None, plays: int) -> str:
    """A count in 100 for a narrow column; below one in 200 a bar under it."""
    if share is None:
        return ""
    words = count_words(share, plays)
    return words if words.isdigit() else "<1"


def legend_words(answer: CourseAnswer, results: Results, units: Units = YARDS) -> str:
    """What the cells of a row count."""
    text = (
        f"{line_legend(results, units)} sc: expected score. pen, dbl: "
        "penalties with this shot, doubles or worse, in 100 plays. ahead of: the next best club, by so many "
        f"strokes; = is as good. {sure_legend(results)}"
    )
    if any(changes(answer, one) for one in results):
        text += f" {MARK}: another club on another of the days (team page)."
    return text


def both(one: Estimate, digits: int | None = None) -> str:
    """Value and error with the digits the error supports; an error that rounds to nothing is still one."""
    places = score_digits(one.standard_error) if digits is None else digits
    value = round(one.value, places) + 0.0  # no minus zero
    error = f"{one.standard_error:.2f}" if one.standard_error >= NOTHING_STROKES else "<0.01"
    return f"{value:.{places}f} +- {error}"


def round_words(answer: CourseAnswer, player: Player, one: Round) -> list[str]:
    """The round: its average, spread and chance of the target; then other days and pins, if any."""
    low, high, share = one.most()
    words = (
        f"Expected round {both(one.best, 1)}, {100.0 * share:.0f} in 100 rounds {low} to {high}; "
        f"by habit {both(one.habit, 1)}: better decisions are worth {both(one.gain, 2)} strokes."
    )
    if one.target is not None and one.breaking is not None and one.breaking_by_habit is not None:
        words += (
            f" Breaks {one.target} in {_percent(one.breaking)} of 100 rounds (by habit "
            f"{_percent(one.breaking_by_habit)})."
        )
    elif one.target is not None:
        words += f" Breaking {one.target} is left out: holes have no answer."
    words += (
        " Rounds: the holes' distributions convolved, each hole independent of the others; a player's good "
        "and bad days spread real rounds wider."
    )
    others = [
        f"{day.name} {both(add_up(found).best, 1)}"
        for day in answer.scenarios[1:]
        if len(found := answer.of(player.name, day.name)) == one.holes
    ]
    others += [
        f"{pin_words(where)} {both(add_up(found).best, 1)}"
        for where in answer.pins[1:]
        if len(found := answer.of(player.name, None, where.name)) == one.holes
    ]
    return [words, f"Other days and pins: {', '.join(map(held, others))}."] if others else [words]


def _percent(chance: Estimate) -> str:
    if chance.value < LEAST_COUNT:
        return "fewer than 1"
    if chance.value > 1.0 - LEAST_COUNT:
        return "more than 99"
    return f"{100.0 * chance.value:.0f} +- {100.0 * chance.standard_error:.1f}"


class Ranked(NamedTuple):
    """A hole of the ranking: its number and name, what a better decision is worth, against which habit."""

    hole: str
    worth: Estimate
    habit: str


def ranking(results: Results, units: Units = YARDS) -> list[Ranked]:
    """Holes where a better decision is worth something that counts, the most first."""
    return [
        Ranked(f"{one['number']} {one['answer']['hole']}", worth(one), _habit(one, units))
        for one in ranked(results)
        if worth(one).value >= LEAST_WORTH
    ][:MOST_RANKED]


def ranking_head(found: Sequence[Ranked]) -> str:
    """What is ranked; the habit too where it is the same on every hole."""
    if not found:
        return "The habit costs nothing that counts on any hole."
    shared = shared_habit(found)
    return f"Strokes a better decision is worth, against the habit{f' ({held(shared)})' if shared else ''}"


def shared_habit(found: Sequence[Ranked]) -> str:
    """The habit where it is the same on every hole of a ranking, else empty."""
    habits = {one.habit for one in found}
    return habits.pop() if len(habits) == 1 else ""


def _habit(result: dict[str, Any], units: Units) -> str:
    one = result["habit"]
    at_flag = units.mark(one["aim_offset_yd"]) == "0"
    return f"{club_words(one, units)} {'at the flag' if at_flag else side_words(one, units)}"
