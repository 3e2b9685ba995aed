"""The question: which club, which line? Map, search, then independent sequences."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import numpy as np

from ..conditions import Conditions
from ..engine import MOST_STROKES, Effort
from ..errors import NoAnswerError, UsageError
from ..hole.model import Hole
from ..player.model import Player
from ..tables.game import CELL_YD
from ..tables.nodes import COARSE_YD, FINE_YD
from . import estimate
from .asked import against_choice, asked_club, find_choices
from .confidence import Flip
from .day import day_note
from .flips import all_flips, edge_doubt
from .goals import Goal, GoalLine, chance_difference, recommended, tied_with
from .plausible import BRIEF, FULL, Form, confidence
from .plays import FIRST_SETS, FIRST_STRIKES, Plays
from .question import Clock, Progress, Question, question, silent, solve
from .reaching import reacher, with_goal
from .rescore import rescore
from .result import TIE_STROKES, Answer, Start
from .search import Choice, Place

MAP_TOLERANCE = 0.015
"""Map and sequences farther apart than this and three standard errors: a warning [strokes]."""


def plan(
    hole: Hole,
    player: Player,
    *,
    conditions: Conditions | None = None,
    start: Start | None = None,
    sequences: int = 20_000,
    seed: int = 1,
    quick: bool = False,
    brief: bool = False,
    progress: Progress | None = None,
    threads: int | None = None,
    goal: Goal | None = None,
    against: str | None = None,
) -> Answer:
    """The best club and line from a place, and every leading alternative.

    Parameters
    ----------
    hole : Hole
        With the tee and pin in use chosen (`Hole.with_tee`, `Hole.with_pin`).
    player : Player
    conditions : Conditions, optional
        Wind, air, firmness and green speed; still air on medium ground when left out.
    start : Start, optional
        Where the question is asked from; the tee in use when left out.
    sequences : int
        Full sequences played for each alternative.
    seed : int
        Same seed, same answer, whatever the thread count.
    quick : bool
        Take the player as exact: neither confidence nor what would turn the answer is worked out.
    brief : bool
        Unless `quick`: confidence by the brief form (`plausible.BRIEF`), and not what would turn the answer.
    progress : callable, optional
        Told in a few words what is being waited for.
    threads : int, optional
        All cores when left out.
    goal : Goal, optional
        What the recommendation goes by; the lowest average score when left out.
    against : str, optional
        A club, with an aim (``"driver@-8"``) or straight at the pin, that is measured beside the
        alternatives without being one of them, with the same luck: `Answer.against`.

    Raises
    ------
    UsageError
        A number out of its range, or a place nobody can play from.
    NoAnswerError
        No club of the bag may be played from there.
    """
    asked = question(
        "plan", hole, player, (), conditions=conditions, start=start, sequences=sequences, seed=seed,
        threads=threads, goal=goal, against=against,
    )  # fmt: skip
    say, clock, form = progress or silent, Clock(), BRIEF if brief else FULL
    return answer_at(solve(asked, say, clock), asked, say, clock, None if quick else form, turns=not brief)


def compare(
    hole: Hole,
    player: Player,
    clubs: Sequence[str],
    *,
    conditions: Conditions | None = None,
    start: Start | None = None,
    sequences: int = 20_000,
    seed: int = 1,
    quick: bool = False,
    progress: Progress | None = None,
    threads: int | None = None,
    goal: Goal | None = None,
) -> Answer:
    """The clubs asked about, each at its best aim (or at the one given): "driver or 3-wood here?"

    Parameters
    ----------
    clubs : sequence of str
        Club names, or with an aim: ``"driver@-8"`` is 8 yards left of the pin line at stock carry,
        ``"driver@-3deg"`` three degrees left.

    Other parameters, and errors: see `plan`. A better club that nobody asked about is added.
    """
    if not clubs:
        raise UsageError("no club to compare: name at least one, for example driver")
    asked = question(
        "compare", hole, player, tuple(clubs), conditions=conditions, start=start, sequences=sequences,
        seed=seed, threads=threads, goal=goal,
    )  # fmt: skip
    say, clock = progress or silent, Clock()
    return answer_at(solve(asked, say, clock), asked, say, clock, None if quick else FULL)


MOST_CUT = 0.05
"""Share of plays that may be cut before a mean of scores is no answer (assumed): each is cut at 60."""


def answer_at(
    place: Place, asked: Question, say: Progress, clock: Clock, form: Form | None, turns: bool = True
) -> Answer:
    """The answer of a question whose hole is solved.

    Parameters
    ----------
    place : Place
        Where it is asked from.
    form : Form or None
        Of the confidence; None takes the player as exact.
    turns : bool
        With confidence: what would turn the answer too.
    """
    bag, start = place.board.bag, asked.start
    wanted = [asked_club(asked.player, text, bag.shots.shots[: bag.shots.first_part]) for text in asked.clubs]
    say("clubs and lines")
    found = find_choices(place, asked.seed, wanted)
    look = None
    if asked.goal is not None:
        look = reacher(place, found, asked.goal, asked.hole, start, asked.seed)
        found = with_goal(look, found, asked=bool(wanted))
    choices, home, value = found.choices, found.home, found.value
    if value > MOST_STROKES:
        raise NoAnswerError(
            f"no shot of this bag gets home from {start.words}: {MOST_STROKES} strokes would not be enough"
        )
    clock.lap("search")
    say("sequences")
    plays = Plays(place, start, asked.hole, home.action, value, asked.seed, asked.sequences)
    played = [plays.play(choice) for choice in choices]
    clock.lap("sequences")
    scores = [estimate.score(p) for p in played]
    lowest = best = _recommended(choices, played, home)
    hits = [] if asked.goal is None else [asked.goal.hits(p.sequences, asked.hole, start) for p in played]
    if hits:
        best = recommended(hits, [score.value for score in scores], found.chosen)
    cut = float((played[lowest].sequences.score >= MOST_STROKES).mean())
    if cut > MOST_CUT:
        raise NoAnswerError(
            f"{100.0 * cut:.0f} in 100 plays from {start.words} are not home after {MOST_STROKES} strokes: "
            "scores of such a hole say nothing"
        )
    order = [best] + sorted((k for k in range(len(choices)) if k != best), key=lambda k: scores[k].value)
    differences = {k: estimate.difference(played[k], played[best]) for k in order}
    tied = tuple(
        n
        for n, k in enumerate(order)
        if k == best or abs(differences[k].value) < max(TIE_STROKES, differences[k].margin)
    )
    if hits:
        level = tied_with(best, hits)
        tied = tuple(n for n, k in enumerate(order) if k in level)
    alternatives = tuple(
        plays.alternative(
            choices[k], played[k], differences[k], k in found.asked, k in found.given,
            (hits[k], hits[best]) if hits else None, None if look is None else look.band_yd(choices[k]),
        )
        for k in order
    )  # fmt: skip
    goal_line = None
    if asked.goal is not None and best in found.averages:
        goal_line = _goal_line(plays, found.averages[best], played[best], hits[best], asked.goal)
    ahead = plays.clear_beyond_yd(choices)
    against = None
    if asked.against is not None:
        choice = against_choice(place, asked.player, asked.against, value, asked.seed)
        beside = plays.play(choice)
        against = plays.alternative(
            choice, beside, estimate.difference(beside, played[best]), asked=False, given=True
        )
    clock.lap("figures")
    sure, flips = None, tuple[Flip, ...]()
    if form is not None and len(choices) > 1 and asked.goal is None:
        say("plausible versions of the player")
        again = rescore(
            place, asked.hole, [choices[k] for k in order], [k in found.given for k in order],
            np.array([differences[k].value for k in order]), value, asked.seed,
        )  # fmt: skip
        errors = np.array([differences[k].standard_error for k in order])
        edge = edge_doubt(again, asked.hole, alternatives, asked.seed)
        sure = confidence(again, asked.player, errors, asked.seed, edge, form)
        clock.lap("confidence")
        if turns:
            say("what would turn the answer")
            flips = all_flips(again, asked.hole, asked.player, alternatives, asked.seed)
            clock.lap("flips")
    return Answer(
        question=asked.kind,
        hole=asked.hole,
        player=asked.player,
        conditions=asked.conditions,
        start=start,
        seed=asked.seed,
        sequences=asked.sequences,
        value_map_score=value + (start.played or 0),
        recommended=0,
        tied=tied,
        alternatives=alternatives,
        clear_beyond_yd=ahead,
        day=day_note(bag, choices[best].row, alternatives[0].aim_bearing_deg),
        warnings=_warnings(choices, played, order),
        settings=_settings(),
        seconds=clock.laps,
        goal=asked.goal,
        goal_line=goal_line,
        lowest_score=order.index(lowest),
        confidence=sure,
        flips=flips,
        against=against,
    )


def _goal_line(
    plays: Plays, average: Choice, one: estimate.PlayedChoice, hits: np.ndarray, goal: Goal
) -> GoalLine:
    """The recommended line of a goal against the club's best line for the average, with the same luck."""
    other = plays.play(average)
    return GoalLine(
        average_aim_offset_yd=average.carry_yd * math.sin(float(average.action[1])),
        cost=estimate.difference(one, other),
        gain=chance_difference(hits, goal.hits(other.sequences, plays.hole, plays.start)),
    )


def _recommended(choices: list[Choice], played: list[estimate.PlayedChoice], home: Choice) -> int:
    """The map's choice, unless another is better by the margin of their paired difference."""
    best = next(k for k, choice in enumerate(choices) if choice is home)
    for k in range(len(choices)):
        gain = estimate.difference(played[best], played[k])
        if k != best and gain.value > gain.margin:
            best = k
    return best


def _warnings(
    choices: list[Choice], played: list[estimate.PlayedChoice], order: list[int]
) -> tuple[str, ...]:
    out = []
    for k in order:
        rest = estimate.score(played[k])
        gap = float(played[k].rest.mean())
        if abs(gap) > MAP_TOLERANCE + 3.0 * rest.standard_error:
            out.append(
                f"value map and sequences differ by {gap:+.3f} strokes for alternative "
                f"{order.index(k)}: more than their errors allow"
            )
    return tuple(out)


def _settings() -> dict[str, Any]:
    import numba

    from .. import __version__

    effort = Effort()
    return {
        "holesim": __version__,
        "numpy": np.__version__,
        "numba": numba.__version__,
        "raster_cell_yd": CELL_YD,
        "node_spacing_yd": COARSE_YD,
        "node_spacing_near_pin_yd": FINE_YD,
        "strikes_screen": effort.few,
        "strikes_decide": effort.more,
        "strikes_value": effort.many,
        "first_shot_scrambles": FIRST_SETS,
        "first_shot_strikes": FIRST_STRIKES,
        "tie_strokes": TIE_STROKES,
    }
