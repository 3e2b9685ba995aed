"""Valuing actions by the map, and playing full sequences."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from ..kernels import choosing, scoring, sequence, volley
from ..kernels import codes as c
from ..tables.game import Board
from .threads import share

MOST_STROKES = 60
"""A sequence is cut here [strokes]: far past any hole that can be finished."""

TRAIL_STROKES = 8
"""Strokes of a sequence whose places are kept by `places_played`: by then few are not on the green."""

PART_SWING, PUNCH_SWING, PUTT_SWING = c.PART_SHOT, c.PUNCH_SHOT, c.PUTT_SHOT
"""Shot codes of actions that are part swings, told by their reach: the stock one and the low one."""

PART_BEYOND, RUNNING_YD, PUTTED_YD = choosing.PART_BEYOND, choosing.RUNNING_YD, choosing.PUTTED_YD
"""Up to so much of the longest the map tries part swings, and nearer than this low running ones too [yd]."""


@dataclass(frozen=True)
class Sequences:
    """What full sequences left behind, one entry each.

    Attributes
    ----------
    score : float64[n]
        Strokes from the asked place.
    expected : float64[n]
        The same on average with less variance: putts are replaced by their expectation and, when asked, the
        luck of later strokes is evened out.
    first_cost, first_value : float64[n]
        Strokes of the first shot with its penalty, and the map's value after it.
    rest_yd, landing_yd : float64[n, 2]
        Where the first shot came to rest (before relief) and came down.
    surface, feature : int64[n]
        Of that rest; feature -1 where nothing was drawn.
    leaves_yd : float64[n]
        Distance to the pin after relief.
    penalty_first, penalties : float64[n]
        Penalty strokes of the first shot, and of the whole sequence.
    to_green : float64[n]
        Strokes until the ball lay on the green or in the hole.
    putts : float64[n]
    branch : float64[n]
        1 where the first shot hit a branch.
    """

    score: np.ndarray
    expected: np.ndarray
    first_cost: np.ndarray
    first_value: np.ndarray
    rest_yd: np.ndarray
    landing_yd: np.ndarray
    surface: np.ndarray
    feature: np.ndarray
    leaves_yd: np.ndarray
    penalty_first: np.ndarray
    penalties: np.ndarray
    to_green: np.ndarray
    putts: np.ndarray
    branch: np.ndarray


def _named(out: np.ndarray) -> Sequences:
    """Columns of the kernel's output by name."""
    return Sequences(
        score=out[:, c.OUT_SCORE],
        expected=out[:, c.OUT_EXPECTED],
        first_cost=out[:, c.OUT_FIRST_COST],
        first_value=out[:, c.OUT_FIRST_VALUE],
        rest_yd=out[:, [c.OUT_X, c.OUT_Y]],
        landing_yd=out[:, [c.OUT_LAND_X, c.OUT_LAND_Y]],
        surface=out[:, c.OUT_SURFACE].astype(np.int64),
        feature=out[:, c.OUT_FEATURE].astype(np.int64),
        leaves_yd=out[:, c.OUT_LEAVES],
        penalty_first=out[:, c.OUT_PENALTY_FIRST],
        penalties=out[:, c.OUT_PENALTIES],
        to_green=out[:, c.OUT_TO_GREEN],
        putts=out[:, c.OUT_PUTTS],
        branch=out[:, c.OUT_BRANCH],
    )


class Opening(NamedTuple):
    """A place, the first shot of every sequence from it, and how a stroke is replayed from it; see `play`."""

    x_yd: float
    y_yd: float
    lie: int
    action: np.ndarray
    start_action: np.ndarray
    start_value: float


def value_actions(
    board: Board,
    x_yd: float,
    y_yd: float,
    lie: int,
    actions: np.ndarray,
    replay: float,
    strikes: np.ndarray,
    *,
    threads: int = 1,
) -> np.ndarray:
    """Mean strokes of actions from one place by the value map, the replayed stroke left open.

    Parameters
    ----------
    actions : float64[n, 3]
        Shot row (or PART_SHOT), aim off the pin [rad], reach [yd].
    replay : float
        Value of playing again from here, which decides between reliefs.
    strikes : float64[sets, strikes, STRIKE_LUCK]

    Returns
    -------
    float64[n, sets, 2]
        Strokes without the replays' values, and the chance of a replay.
    """
    actions, lie = np.ascontiguousarray(actions, dtype=float), int(lie)  # a `Lie` would compile it all anew
    out = np.empty((len(actions), strikes.shape[0], 2))

    def work(first: int, last: int) -> None:
        balls = np.empty(volley.ROOM)
        scoring.evaluate(board.game, x_yd, y_yd, lie, actions, replay, strikes, first, last, balls, out)

    pairs = len(actions) * strikes.shape[0]
    share(work, pairs, max(pairs // (4 * threads), 1), threads)
    return out


def play(
    board: Board,
    x_yd: float,
    y_yd: float,
    lie: int,
    action: np.ndarray,
    start_action: np.ndarray,
    start_value: float,
    *,
    seed: int,
    sequences: int,
    threads: int = 1,
    most_strokes: int = MOST_STROKES,
    evened: bool = False,
) -> Sequences:
    """Full sequences from one place under the map's plan.

    Parameters
    ----------
    action : float64[3]
        First shot of every sequence.
    start_action, start_value
        The map's choice and value at the place, for strokes replayed from it.
    most_strokes : int
        A sequence is cut after so many shots; 1 plays the first shot alone.
    evened : bool
        Try every stroke after the first twice for the expected score, which is worth two to three times the
        sequences for half as much time again. Nothing else of a sequence changes.
    """
    opening = Opening(x_yd, y_yd, lie, action, start_action, start_value)
    return _named(_played(board, opening, seed, sequences, threads, most_strokes, evened, 0)[0])


def places_played(
    board: Board, opening: Opening, *, seed: int, sequences: int, threads: int = 1
) -> np.ndarray:
    """Where full sequences are played from after the first shot, float64[n, 3] of x, y [yd] and lie.

    Places on the green, and the asked place itself, are left out.
    """
    trail = _played(board, opening, seed, sequences, threads, MOST_STROKES, False, TRAIL_STROKES)[1]
    return np.asarray(trail[trail[:, :, 2] >= 0.0])


def _played(
    board: Board,
    opening: Opening,
    seed: int,
    sequences: int,
    threads: int,
    most_strokes: int,
    evened: bool,
    kept: int,
) -> tuple[np.ndarray, np.ndarray]:
    """The kernel's output, and the places of so many strokes of each sequence (lie -1: none)."""
    x_yd, y_yd, lie, action, start_action, start_value = opening
    lie = int(lie)  # a member of `Lie` would compile everything anew
    out, trail = np.empty((sequences, c.OUT_COLUMNS)), np.full((sequences, kept, 3), -1.0)
    action = np.ascontiguousarray(action, dtype=float)
    start_action = np.ascontiguousarray(start_action, dtype=float)

    def work(first: int, last: int) -> None:
        sequence.play(
            board.game,
            seed,
            x_yd,
            y_yd,
            lie,
            action,
            start_action,
            start_value,
            most_strokes,
            evened,
            first,
            last,
            np.empty(volley.ROOM),
            np.empty((volley.TOGETHER, sequence.STATE_COLUMNS)),
            out,
            trail,
        )

    share(work, sequences, max(sequences // (8 * threads), 256), threads)
    return out, trail
