"""Everything the pictures of a lesson are drawn from: the answer, and what stands behind it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from ..conditions import Conditions
from ..errors import UsageError
from ..hole.model import Hole
from ..hole.surfaces import LIE_OF, LIE_WORDS, WORDS
from ..hole.yardage import Yardage, measure
from ..player.model import Player
from .aims import AimCurve, aim_curve
from .alternative import Alternative
from .answering import answer_at, never
from .ground import likeliest, surfaces_at
from .patterns import ClubPattern, club_patterns
from .plausible import FULL
from .question import Clock, Progress, Question, question, solve
from .result import Answer, Start
from .targets import GreenTarget, green_target
from .tries import Place
from .worth import ValueMap, value_map

MOST_CURVES = 4
"""Clubs whose score against aim is drawn."""

ON_GREEN_YD = 45.0
"""A shot that usually leaves less than this is played at the green [yd]."""

GETS_THERE = 0.25
"""Nor is it where fewer of its balls get as far as the front of the green; chosen."""

MOST_SHOTS = 4
"""Shots looked ahead for the one that is played at the green."""

APPROACH_SEQUENCES = 5_000
"""Plays of each alternative of the later shots."""


@dataclass(frozen=True)
class ScoreShares:
    """How often each score comes up, by alternative.

    Attributes
    ----------
    names : tuple of str
        ``"birdie or better"``, ``"par"``, ... or strokes from here where par has no meaning.
    shares, errors : float64[alternatives, names]
        Rows in the order of `Answer.alternatives`; each adds up to 1.
    """

    names: tuple[str, ...]
    shares: np.ndarray
    errors: np.ndarray


@dataclass(frozen=True)
class Lesson:
    """A lesson on one shot of one hole.

    Attributes
    ----------
    answer : Answer
    yardage : Yardage
        Straight distances from the ball.
    curves : tuple of AimCurve
        The recommended alternative first, then the others as in the answer, `MOST_CURVES` at the most; one
        for each shot, whatever lines it was asked about on.
    scores : ScoreShares
    value : ValueMap
        Round the finishes of the recommended shot.
    approach : Answer
        The shot at the green: of the answer itself where it goes there, else from the middle of what the
        recommended shots leave.
    target : GreenTarget
        Of the approach's recommended shot.
    patterns : tuple of ClubPattern
        Every club of the bag but the putter, longest first.
    """

    answer: Answer
    yardage: Yardage
    curves: tuple[AimCurve, ...]
    scores: ScoreShares
    value: ValueMap
    approach: Answer
    target: GreenTarget
    patterns: tuple[ClubPattern, ...]


def lesson(
    hole: Hole,
    player: Player,
    clubs: Sequence[str] = (),
    *,
    conditions: Conditions | None = None,
    start: Start | None = None,
    sequences: int = 20_000,
    seed: int = 1,
    quick: bool = False,
    progress: Progress | None = None,
    threads: int | None = None,
) -> Lesson:
    """Answer a question and work out what its pictures show; the hole is solved once.

    Parameters
    ----------
    clubs : sequence of str
        Clubs to set against one another as in `compare`; without any, the best of the bag as in `plan`.
    quick : bool
        Take the player as exact: the verdict without confidence. The shot at the green always does.

    Other parameters, and errors: see `simulator.strategy.ask.plan`.
    """
    asked = question(
        "compare" if clubs else "plan", hole, player, clubs, conditions=conditions, start=start,
        sequences=sequences, seed=seed, threads=threads,
    )  # fmt: skip
    clock = Clock(progress)
    place = solve(asked, clock)
    answer = answer_at(place, asked, clock, None if quick else FULL, turns=never)
    clock.say("aims")
    curves = _aim_curves(place, answer, seed)
    clock.say("what a place is worth")
    value = value_map(place, answer.best, hole, seed)
    clock.say("the shot at the green")
    approach = _approach(place, asked, answer, progress)
    clock.say("patterns")
    return Lesson(
        answer=answer,
        yardage=measure(hole, answer.start.xy_yd),
        curves=curves,
        scores=_score_shares(answer),
        value=value,
        approach=approach,
        target=green_target(approach),
        patterns=club_patterns(place, seed),
    )


def _aim_curves(place: Place, answer: Answer, seed: int) -> tuple[AimCurve, ...]:
    """A curve for each of the leading shots, wide enough for every line it was asked about on."""
    lines: dict[tuple[str, str, float], list[int]] = {}  # of each shot, that of the recommended first
    for k in sorted(range(len(answer.alternatives)), key=lambda k: k != answer.recommended):
        one = answer.alternatives[k]
        lines.setdefault((one.club, one.flight, one.carry_yd), []).append(k)
    shots = list(lines.values())[:MOST_CURVES]
    on_them = [answer.alternatives[k] for k in sorted(k for shot in shots for k in shot)]
    home = answer.value_map_score.value - (answer.start.played or 0)
    return tuple(aim_curve(place, answer.alternatives[k], k, home, seed, on_them) for k, *_ in shots)


def _score_shares(answer: Answer) -> ScoreShares:
    """Shares of the plain sequences; the last class holds all that is worse."""
    par, known = answer.hole.par, answer.start.played is not None
    names: tuple[str, ...]
    if known:
        edges = [par - 1, par, par + 1, par + 2]
        names = ("birdie or better", "par", "bogey", "double", "triple or worse")
    else:
        middle = int(np.median(answer.best.scores))
        edges = [max(middle - 1, 1) + k for k in range(4)]
        names = (f"{edges[0]} or fewer", *(str(edge) for edge in edges[1:]), f"{edges[-1] + 1} or more")
    rows = []
    for one in answer.alternatives:
        index = np.searchsorted(edges, one.scores)  # a score of edges[k] is in class k
        rows.append(np.bincount(index, minlength=len(names)) / one.scores.size)
    shares = np.array(rows)
    n = answer.sequences
    kept = np.clip(shares, 1.0 / n, 1.0 - 1.0 / n)
    return ScoreShares(names, shares, np.sqrt(kept * (1.0 - kept) / n))


def _approach(place: Place, asked: Question, answer: Answer, progress: Progress | None) -> Answer:
    """The answer for the shot that is played at the green, following the recommended ones to it."""
    for _ in range(MOST_SHOTS):
        short = green_target(answer).misses["short"].value
        if answer.best.leaves_yd["p50"].value < ON_GREEN_YD and 1.0 - short >= GETS_THERE:
            return answer
        try:
            start = leave_of(answer.best, answer)
        except UsageError:
            return answer
        later = replace(
            asked, kind="plan", clubs=(), start=start, sequences=min(asked.sequences, APPROACH_SEQUENCES)
        )
        there = replace(place, x_yd=start.x_yd, y_yd=start.y_yd, lie=int(later.lie))
        answer = answer_at(there, later, Clock(progress), None)
    return answer


def leave_of(one: Alternative, answer: Answer) -> Start:
    """The middle of what a shot leaves: the finish nearest to the middle of those on its likeliest ground.

    Raises
    ------
    UsageError
        No ball came to rest where a shot is planned from.
    """
    hole, xy = answer.hole, one.finishes_yd
    found = likeliest(xy, surfaces_at(hole, xy[:, 0], xy[:, 1]))
    if found is None:
        raise UsageError(f"{one.club}: no ball comes to rest where a shot is planned from")
    (x, y), ground = found
    out = hole.out_yd(float(x), float(y))
    played = None if answer.start.played is None else answer.start.played + 1
    words = f"{out:.0f} yd out, {WORDS[ground]}"
    return Start(float(x), float(y), LIE_WORDS[LIE_OF[ground]], words, out, played)
