"""From a solved hole to the answer: search, independent sequences, what can be told apart."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

import numpy as np

from ..engine import MOST_STROKES, Effort, at_once
from ..errors import NoAnswerError
from ..player.names import with_flight
from ..tables.game import CELL_YD
from . import estimate
from .alternative import Alternative
from .asked import Found, against_choice, asked_club, find_choices
from .day import day_note
from .errorbars import Estimate
from .flips import all_flips, edge_doubt
from .goal_clubs import reacher, with_goal
from .goal_lines import Reacher
from .goals import Goal, GoalLine, chance_difference, recommended, tied_with
from .plausible import Form, confidence
from .plays import FIRST_SETS, FIRST_STRIKES, Plays
from .question import Clock, Question
from .rescore import Rescore, rescore
from .result import TIE_STROKES, Answer
from .tries import Choice, Place
from .undrawn import past_the_drawing, short_of_the_fairway

MAP_TOLERANCE = 0.015
"""Map and sequences farther apart than this and three standard errors: a warning [strokes]."""

MOST_CUT = 0.05
"""Share of plays that may be cut before a mean of scores is no answer (assumed): each is cut at 60."""


Turns = Callable[[Answer], bool]
"""Whether what would turn an answer is wanted too, given all the rest of it."""


def always(_: Answer) -> bool:
    """What would turn the answer is wanted."""
    return True


def never(_: Answer) -> bool:
    """It is not."""
    return False


def answer_at(
    place: Place, asked: Question, clock: Clock, form: Form | None, turns: Turns = always
) -> Answer:
    """The answer of a question whose hole is solved.

    Parameters
    ----------
    place : Place
        Where it is asked from.
    form : Form or None
        Of the confidence; None takes the player as exact.
    turns : callable
        With confidence: whether what would turn the answer is worked out too.
    """
    clock.say("clubs and lines")
    found, look = _searched(place, asked)
    clock.lap("search")
    clock.say("sequences")
    plays = Plays(place, asked.start, asked.hole, found.home.action, found.value, asked.seed, asked.sequences)
    played = [plays.play(choice) for choice in found.choices]
    clock.lap("sequences")
    ranking = _ranked(found, played, asked)
    alternatives = _alternatives(plays, ranking, look, asked.threads)
    goal_line = _goal_line(plays, ranking, asked.goal)
    ahead_yd, ahead_error_yd = plays.clear_beyond_yd(found.choices)
    against = _against(plays, asked, played[ranking.best])
    clock.lap("figures")
    sure, again = None, None
    errors = np.array([ranking.differences[k].standard_error for k in ranking.order])
    if form is not None and len(alternatives) > 1 and asked.goal is None:
        clock.say("plausible versions of the player")
        again = _again(place, asked, ranking)
        edge = edge_doubt(again, alternatives)
        sure = confidence(again, errors, edge, form)
        clock.lap("confidence")
    best = alternatives[0]
    answer = Answer(
        question=asked.kind, hole=asked.hole, player=asked.player, conditions=asked.conditions,
        start=asked.start, seed=asked.seed, sequences=asked.sequences,
        value_map_score=estimate.by_map(found.worth).plus(asked.start.played or 0), tied=ranking.tied,
        alternatives=alternatives, clear_beyond_yd=ahead_yd, clear_beyond_error_yd=ahead_error_yd,
        day=day_note(place.board.bag, found.choices[ranking.best].row, best.aim_bearing_deg),
        warnings=_warnings(asked, alternatives, [played[k] for k in ranking.order]),
        settings=_settings(place), seconds=clock.laps,
        goal=asked.goal, goal_line=goal_line, lowest_score=ranking.order.index(ranking.lowest),
        confidence=sure, against=against,
    )  # fmt: skip
    if again is None or not turns(answer):
        return answer
    clock.say("what would turn the answer")
    flips = all_flips(again, alternatives, errors)
    clock.lap("flips")
    return replace(answer, flips=flips)


def _searched(place: Place, asked: Question) -> tuple[Found, Reacher | None]:
    """The alternatives, each on its line; with a goal, what counts how often a line reaches it."""
    shots = place.board.bag.shots
    wanted = [asked_club(asked.player, text, shots) for text in asked.clubs]
    found, look = find_choices(place, asked.seed, wanted), None
    if asked.goal is not None:
        look = reacher(place, found, asked.goal, asked.start, asked.seed)
        found = with_goal(look, found, asked=bool(wanted))
    refuse_hopeless(found.value, asked.start.words)
    return found, look


def refuse_hopeless(strokes: float, where: str) -> None:
    """Refuse a place worth more strokes than any sequence is played for (NoAnswerError): it is no score."""
    if strokes > MOST_STROKES:
        raise NoAnswerError(
            f"no shot of this bag gets home from {where}: {MOST_STROKES} strokes would not be enough"
        )


@dataclass(frozen=True)
class _Ranking:
    """The choices as they were played, and the order in which they are told.

    Attributes
    ----------
    found : Found
    played : list of PlayedChoice
        One for each of its choices.
    best, lowest : int
        The one that is recommended, and the one that is without a goal.
    order : list of int
        The recommended one, then the others by their average.
    differences : dict of int to Estimate
        Of each to the recommended one, paired.
    tied : tuple of int
        Places in `order` of those that cannot be told from it, its own included.
    hits : list of bool[sequences], or None
        With a goal: which sequences of each reach it.
    """

    found: Found
    played: list[estimate.PlayedChoice]
    best: int
    lowest: int
    order: list[int]
    differences: dict[int, Estimate]
    tied: tuple[int, ...]
    hits: list[np.ndarray] | None


def _ranked(found: Found, played: list[estimate.PlayedChoice], asked: Question) -> _Ranking:
    """Which choice is recommended and which cannot be told from it: by the average, or by the goal."""
    scores = [estimate.score(one).value for one in played]
    lowest = best = best_by_average(found.choices, played, found.home)
    cut = float((played[lowest].sequences.score >= MOST_STROKES).mean())
    if cut > MOST_CUT:
        raise NoAnswerError(
            f"{100.0 * cut:.0f} in 100 plays from {asked.start.words} are not home after {MOST_STROKES} "
            "strokes: scores of such a hole say nothing"
        )
    hits = None
    if asked.goal is not None:
        hits = [asked.goal.hits(one.sequences, asked.start) for one in played]
        best = recommended(hits, scores, found.chosen)
    order = [best, *sorted((k for k in range(len(played)) if k != best), key=lambda k: scores[k])]
    differences = {k: estimate.difference(played[k], played[best]) for k in order}
    if hits is None:
        level = [k for k in order if k == best or _no_difference(differences[k])]
    else:
        level = tied_with(best, hits)
    tied = tuple(n for n, k in enumerate(order) if k in level)
    return _Ranking(found, played, best, lowest, order, differences, tied, hits)


def _no_difference(one: Estimate) -> bool:
    return abs(one.value) < max(TIE_STROKES, one.margin)


def _alternatives(
    plays: Plays, ranking: _Ranking, look: Reacher | None, threads: int
) -> tuple[Alternative, ...]:
    """Every choice, counted, in the order in which they are told: each is one thread's work."""
    found, hits, alone = ranking.found, ranking.hits, plays.alone()
    # a goal's bands are all threads' work
    bands = {} if look is None else {k: look.band(found.choices[k]) for k in ranking.order}

    def counted(k: int) -> Alternative:
        return alone.alternative(
            found.choices[k], ranking.played[k], ranking.differences[k], k in found.asked, k in found.given,
            None if hits is None else (hits[k], hits[ranking.best]),
            bands.get(k),
        )  # fmt: skip

    return tuple(at_once([partial(counted, k) for k in ranking.order], threads))


def _goal_line(plays: Plays, ranking: _Ranking, goal: Goal | None) -> GoalLine | None:
    """The recommended line of a goal against the club's best line for the average, with the same luck."""
    best, averages = ranking.best, ranking.found.averages
    if goal is None or ranking.hits is None or best not in averages:
        return None
    average = averages[best]
    other = plays.play(average)
    return GoalLine(
        average_aim_offset_yd=average.carry_yd * math.sin(float(average.action[1])),
        cost=estimate.difference(ranking.played[best], other),
        gain=chance_difference(ranking.hits[best], goal.hits(other.sequences, plays.start)),
    )


def _against(plays: Plays, asked: Question, best: estimate.PlayedChoice) -> Alternative | None:
    """The club measured beside the alternatives without being one, with their luck."""
    if asked.against is None:
        return None
    choice = against_choice(plays.place, asked.player, asked.against, plays.value, asked.seed)
    beside = plays.play(choice)
    return plays.alternative(choice, beside, estimate.difference(beside, best), asked=False, given=True)


def _again(place: Place, asked: Question, ranking: _Ranking) -> Rescore:
    """The alternatives in their order, ready to be scored anew on other maps."""
    found, order = ranking.found, ranking.order
    behind = np.array([ranking.differences[k].value for k in order])
    choices, given = [found.choices[k] for k in order], [k in found.given for k in order]
    return rescore(place, asked.hole, asked.player, choices, given, behind, found.value, asked.seed)


def best_by_average(choices: list[Choice], played: list[estimate.PlayedChoice], home: Choice) -> int:
    """The map's choice, unless another is better by the margin of their paired difference."""
    best = next(k for k, choice in enumerate(choices) if choice is home)
    for k in range(len(choices)):
        gain = estimate.difference(played[best], played[k])
        if k != best and gain.value > gain.margin:
            best = k
    return best


def _warnings(
    asked: Question, alternatives: tuple[Alternative, ...], played: list[estimate.PlayedChoice]
) -> tuple[str, ...]:
    """What a reader has to know before trusting the figures; both sequences in the same order."""
    out = []
    if side := past_the_drawing(asked.hole, asked.start, alternatives[0]):
        out.append(
            f"the {alternatives[0].club} is played {side} of everything drawn on this hole, where all plays "
            "as open rough: draw or name what a ball would find there"
        )
    if (begins_yd := short_of_the_fairway(asked.hole, asked.start, alternatives[0])) is not None:
        out.append(
            f"most balls of the {alternatives[0].club} end short of the fairway, and nobody said that it "
            f'begins {begins_yd:.0f} yd on: say where, for example "fairway from 100"'
        )
    unsure: dict[str, float] = {}
    for one, plays in zip(alternatives, played, strict=True):
        gap = abs(float(plays.rest.mean()))
        if gap > MAP_TOLERANCE + 3.0 * estimate.score(plays).standard_error:
            name = with_flight(one.club, one.flight or "stock")
            unsure[name] = max(gap, unsure.get(name, 0.0))
    return (*out, *unsure_words(unsure))


def unsure_words(gaps: Mapping[str, float]) -> list[str]:
    """What is said of clubs whose map and plays differ by more than their errors allow [strokes]."""
    if not gaps:
        return []
    *others, last = gaps
    most = f"{max(gaps.values()):.2f} strokes"
    if not others:
        return [
            f"the {last}'s score is less sure than its error says: value map and sequences differ by {most}"
        ]
    return [
        f"the scores of the {', '.join(others)} and {last} are less sure than their errors say: value map "
        f"and sequences differ by up to {most}"
    ]


def _settings(place: Place) -> dict[str, Any]:
    import numba

    from .. import __version__

    effort = Effort()
    return {
        "holesim": __version__,
        "numpy": np.__version__,
        "numba": numba.__version__,
        "raster_cell_yd": CELL_YD,
        "node_spacing_yd": place.board.nodes.coarse.step_yd,
        "node_spacing_near_pin_yd": place.board.nodes.fine.step_yd,
        "strikes_screen": effort.few,
        "strikes_decide": effort.more,
        "strikes_value": effort.many,
        "first_shot_scrambles": FIRST_SETS,
        "first_shot_strikes": FIRST_STRIKES,
        "tie_strokes": TIE_STROKES,
    }
