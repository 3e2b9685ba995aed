"""Expected score against aim: the flat bottom, and where it turns into a cliff."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ..tables.luck import strike_sets
from . import streams
from .alternative import Alternative
from .errorbars import mean, total
from .result import TIE_STROKES
from .search import run_about
from .tries import Place

WIDE_DEG, STEP_DEG = 15.0, 0.5
"""Aims either side of the best, and their spacing [deg]."""

PAST_DEG = 5.0
"""Another alternative's line is on the curve too, and so far beyond it [deg]."""

SETS, STRIKES = 16, 256
"""Scrambles of the strikes that value an aim, and strikes in each: the same for every aim."""


@dataclass(frozen=True)
class AimCurve:
    """What one club scores by where it is aimed.

    Attributes
    ----------
    index : int
        Of the alternative in the answer.
    club, flight : str
    carry_yd : float
    aims_yd : float64[n]
        Aim offsets at stock carry from the straight line ball to pin, right positive.
    scores, margins : float64[n]
        Expected strokes and half their 95 % intervals: the alternative's own score at its own aim, and from
        there what the value map says another aim costs.
    best_yd : float
        The aim with the lowest of them.
    tie_yd : tuple of float
        First and last aim about it that score within `TIE_STROKES` of it: the alternative's own, so that
        every page says the same; of a line that was asked for those of the curve.
    ten_left, ten_right : float or None
        Strokes that ten yards beyond either end of that band cost over the best; None beyond the curve.
    map_gap : float
        What value map and sequences differ by on the alternative, where that is more than the tie band and
        their errors; else 0. The map may then be wrong by as much about any other aim, and `margins` allow
        for it: it is what the curve goes by away from the alternative's own aim.
    """

    index: int
    club: str
    flight: str
    carry_yd: float
    aims_yd: np.ndarray
    scores: np.ndarray
    margins: np.ndarray
    best_yd: float
    tie_yd: tuple[float, float]
    ten_left: float | None
    ten_right: float | None
    map_gap: float = 0.0


TEN_YD = 10.0
"""How far beyond the flat bottom the cliff is measured [yd]."""


def aim_curve(
    place: Place, one: Alternative, index: int, value: float, seed: int, others: Sequence[Alternative] = ()
) -> AimCurve:
    """Value every aim of one alternative with the same strikes, from its own score on.

    Parameters
    ----------
    place : Place
    one : Alternative
        Its club, flight and carry are kept; only the aim is varied.
    index : int
        Of the alternative in the answer.
    value : float
        Strokes from the place, for a stroke that is replayed.
    seed : int
    others : sequence of Alternative
        Whose lines must be on the curve as well: this club down the other's line is the first thing asked.
    """
    turn = one.turn_rad()
    away = [math.degrees(other.turn_rad() - turn) for other in others]
    left = round(max([WIDE_DEG, *(PAST_DEG - step for step in away)]) / STEP_DEG)
    right = round(max([WIDE_DEG, *(PAST_DEG + step for step in away)]) / STEP_DEG)
    turns = turn + math.radians(STEP_DEG) * np.arange(-left, right + 1)
    assert one.action is not None
    actions = np.repeat(one.action[None], turns.size, axis=0)
    actions[:, 1] = turns
    found = place.values(actions, value, strike_sets(seed + streams.AIM_CURVE, SETS, STRIKES))
    sets = found[:, :, 0] + value * found[:, :, 1]
    over = sets - sets[left]  # over the alternative's own aim, strike by strike
    along = [total([one.score, mean(step)]) for step in over]
    scores = np.array([figure.value for figure in along])
    gap = abs(one.map_score.value - one.score.value)
    gap = gap if gap > TIE_STROKES + 3.0 * one.score.standard_error else 0.0
    elsewhere = np.arange(len(turns)) != left
    aims = one.carry_yd * np.sin(turns)
    best = int(np.argmin(scores))
    if one.aim_given:
        first, last = (float(aims[k]) for k in run_about(scores <= scores[best] + TIE_STROKES, best))
    else:
        first, last = min(one.aims_yd[0], float(aims[best])), max(one.aims_yd[1], float(aims[best]))
    return AimCurve(
        index=index, club=one.club, flight=one.flight, carry_yd=one.carry_yd, aims_yd=aims, scores=scores,
        margins=np.array([figure.margin for figure in along]) + gap * elsewhere, best_yd=float(aims[best]),
        tie_yd=(first, last),
        ten_left=_beyond(aims, scores, best, first - TEN_YD),
        ten_right=_beyond(aims, scores, best, last + TEN_YD),
        map_gap=gap,
    )  # fmt: skip


def _beyond(aims: np.ndarray, scores: np.ndarray, best: int, aim_yd: float) -> float | None:
    if not aims[0] <= aim_yd <= aims[-1]:
        return None
    return float(np.interp(aim_yd, aims, scores) - scores[best])
