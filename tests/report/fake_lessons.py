"""Lessons made up without the engine, so that pages can be drawn for any hole at once."""

from __future__ import annotations

import fake_answers
import numpy as np

from simulator.hole import load_hole
from simulator.hole.yardage import measure
from simulator.strategy.aims import AimCurve
from simulator.strategy.lesson import Lesson, _score_shares
from simulator.strategy.patterns import ClubPattern, _between, _edges
from simulator.strategy.places import place
from simulator.strategy.result import TIE_STROKES, Answer
from simulator.strategy.targets import green_target
from simulator.strategy.worth import ValueMap

HOLES = ("withy-drain", "eel-trap", "long-sluice")
"""The busiest, the plainest, the longest."""

SHORT = (
    {"club": "7-iron", "carry_yd": 147.0, "score": 3.4, "aim_offset_yd": 2.0},
    {"club": "6-iron", "carry_yd": 157.0, "score": 3.5, "difference": 0.1, "aim_offset_yd": -4.0},
)


def lesson(name: str = "withy-drain", who: str = "barnaby", answer: Answer | None = None) -> Lesson:
    """A lesson on a demo hole; the numbers are made up, the hole is real."""
    hole = load_hole(name) if answer is None else answer.hole
    short = hole.par == 3
    if answer is None:
        answer = fake_answers.answer(hole, who, **({"clubs": SHORT} if short else {}))
    approach = answer
    if not short:
        approach = fake_answers.answer(
            hole, who, start=place("150 out", hole), question="plan", clubs=SHORT
        )
    return Lesson(
        answer=answer,
        yardage=measure(hole, (answer.start.x_yd, answer.start.y_yd)),
        curves=tuple(_curve(answer, k) for k in range(len(answer.alternatives))),
        scores=_score_shares(answer),
        value=_value(answer),
        approach=approach,
        target=green_target(approach),
        patterns=tuple(_pattern(club.name, club.carry_yd, k) for k, club in enumerate(answer.player.clubs)
                       if club.carry_yd > 1.0),
    )  # fmt: skip


def _curve(answer: Answer, k: int) -> AimCurve:
    one = answer.alternatives[k]
    aims = one.aim_offset_yd + np.arange(-50.0, 50.5, 1.0)
    scores = one.score.value + 4e-4 * (aims - one.aim_offset_yd) ** 2
    half = (TIE_STROKES / 4e-4) ** 0.5
    return AimCurve(
        k, one.club, one.flight, one.carry_yd, aims, scores, np.full(aims.size, 0.006), one.aim_offset_yd,
        (one.aim_offset_yd - half, one.aim_offset_yd + half), 0.14, 0.14,
    )  # fmt: skip


def _value(answer: Answer) -> ValueMap:
    xy = answer.best.finishes_yd
    low, high = np.quantile(xy, 0.05, axis=0) - 25.0, np.quantile(xy, 0.95, axis=0) + 25.0
    x, y = np.arange(low[0], high[0], 2.0), np.arange(low[1], high[1], 2.0)
    pin = answer.hole.pin
    out = np.hypot(x[None] - pin.x_yd, y[:, None] - pin.y_yd)
    middle = np.median(xy, axis=0)
    return ValueMap(
        x, y, 2.5 + 0.012 * out + 0.004 * np.abs(x[None]), (float(middle[0]), float(middle[1])),
        2.5 + 0.012 * float(np.hypot(*(middle - (pin.x_yd, pin.y_yd)))), "fairway", 0.12, 0.12, {"rough": 0.2},
    )  # fmt: skip


def _pattern(club: str, carry_yd: float, seed: int) -> ClubPattern:
    luck = np.random.default_rng(seed)
    rest = np.column_stack(
        [0.08 * carry_yd * luck.standard_normal(2000), carry_yd * (1.05 + 0.06 * luck.standard_normal(2000))]
    )
    across, along = rest[:, 0], rest[:, 1]
    return ClubPattern(club, carry_yd, rest, _between(across), _between(along), _edges(across), _edges(along))
