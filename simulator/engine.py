"""Validate, allocate, call kernels, wrap: the value map solved, actions valued, sequences played.

Work is dealt to threads in chunks whose results do not depend on who does them, so the numbers are
the same bit for bit at any thread count. Kernels hold no lock while they run.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from .errors import NoAnswerError
from .kernels import codes as c
from .kernels import sequence, solve
from .kernels._compile import waiting_for_compiler
from .tables.game import Board
from .tables.luck import strike_sets

MOST_STROKES = 60
"""A sequence is cut here [strokes]: far past any hole that can be finished."""


@dataclass(frozen=True)
class Effort:
    """How hard the value map is worked.

    Attributes
    ----------
    few, more, many : int
        Quasi-random strikes that screen the actions, that decide among the best, and that value the
        chosen one.
    scrambles : int
        Independent shifts of each set, dealt to the nodes by index.
    band_yd : float
        Depth of the distance bands solved together.
    sweeps : tuple of int
        Modes of the sweeps: 0 search, 1 refine, 2 value only (kernels/solve.py).
    """

    few: int = 16
    more: int = 64
    many: int = 256
    scrambles: int = 16
    band_yd: float = 12.0
    sweeps: tuple[int, ...] = (0, 1, 2)


PART_SWING = c.PART_SHOT
"""Shot code of an action that is a part swing, told by its reach."""


@dataclass(frozen=True)
class Sequences:
    """What full sequences left behind, one entry each.

    Attributes
    ----------
    score : float64[n]
        Strokes from the asked place.
    expected : float64[n]
        The same with putts replaced by their expectation.
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


def _named(out: np.ndarray) -> Sequences:
    """Columns of the kernel's output by name."""
    return Sequences(
        score=out[:, c.OUT_SCORE], expected=out[:, c.OUT_EXPECTED], first_cost=out[:, c.OUT_FIRST_COST],
        first_value=out[:, c.OUT_FIRST_VALUE], rest_yd=out[:, [c.OUT_X, c.OUT_Y]],
        landing_yd=out[:, [c.OUT_LAND_X, c.OUT_LAND_Y]], surface=out[:, c.OUT_SURFACE].astype(np.int64),
        feature=out[:, c.OUT_FEATURE].astype(np.int64), leaves_yd=out[:, c.OUT_LEAVES],
        penalty_first=out[:, c.OUT_PENALTY_FIRST], penalties=out[:, c.OUT_PENALTIES],
        to_green=out[:, c.OUT_TO_GREEN], putts=out[:, c.OUT_PUTTS])


AIMS_DEG = (0.0, -3.0, 3.0, -7.0, 7.0, -12.0, 12.0, -19.0, 19.0)
"""Aims off the pin first tried at a node [deg]."""

WIDE_AIMS_DEG = (0.0, -12.0, 12.0, -25.0, 25.0, -40.0, 40.0, -60.0, 60.0, -90.0, 90.0)
"""Aims of a recovery: out sideways is one of them [deg]."""

ENTRIES = ["solve_nodes", "evaluate", "play", "fill_flights", "fill_putts"]


def default_threads() -> int:
    """Cores this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def must_compile() -> bool:
    """Whether the next answer has to wait for the compiler."""
    return waiting_for_compiler(ENTRIES)


def _share(work: Callable[[int, int], Any], count: int, chunk: int, threads: int) -> None:
    """Call work(first, last) over range(count) in chunks, on so many threads."""
    if threads <= 1 or count <= chunk:
        if count:
            work(0, count)
        return
    with ThreadPoolExecutor(threads) as pool:
        for done in [pool.submit(work, k, min(k + chunk, count)) for k in range(0, count, chunk)]:
            done.result()


def solve_map(board: Board, *, seed: int, effort: Effort | None = None, threads: int = 1) -> Board:
    """The board with its value map and plan filled in.

    Strokes to hole out by dynamic programming outwards from the pin, in bands of distance. Inside a band
    every node reads only values committed before it, so the order of work does not matter.

    Parameters
    ----------
    board : Board
    seed : int
        Of the strikes.
    effort : Effort
    threads : int
    """
    effort = effort or Effort()
    few = strike_sets(seed, effort.scrambles, effort.few)
    more = strike_sets(seed + 1, effort.scrambles, effort.more)
    many = strike_sets(seed + 2, effort.scrambles, effort.many)
    aims, wide = np.radians(AIMS_DEG), np.radians(WIDE_AIMS_DEG)
    table, place = board.nodes.table, board.nodes.place
    count = len(table)
    nodes = np.empty((count, 8))
    nodes[:, :3] = table[:, :3]
    nodes[:, 3] = np.nan
    nodes[:, 4:7] = (-2.0, 0.0, 0.0)
    nodes[:, 7] = np.arange(count) % effort.scrambles
    old = board.game
    field = old.field._replace(coarse=old.field.coarse.copy(), fine=old.field.fine.copy())
    game = old._replace(field=field, coarse_plan=old.coarse_plan.copy(), fine_plan=old.fine_plan.copy())
    values, plans = (field.coarse, field.fine), (game.coarse_plan, game.fine_plan)
    out = np.empty((count, 4))
    bands = np.searchsorted(table[:, 3], np.arange(effort.band_yd, table[-1, 3] + effort.band_yd, effort.band_yd))
    edges = np.unique(np.concatenate([[0], bands, [count]]))
    for mode in effort.sweeps:
        for first, last in zip(edges[:-1], edges[1:], strict=True):

            def work(a: int, b: int, first: int = int(first), mode: int = mode) -> None:
                solve.solve_nodes(game, mode, nodes, first + a, first + b, aims, wide, few, more, many, out)

            _share(work, int(last - first), 8, threads)
            for grid in (0, 1):
                rows = first + np.flatnonzero(place[first:last, 0] == grid)
                at = tuple(place[rows, 1:].T)
                values[grid][at] = out[rows, 0]
                plans[grid][at] = out[rows, 1:4]
            nodes[first:last, 3:7] = out[first:last]
    if not np.isfinite(out).all():
        raise NoAnswerError("the value map has no finite value somewhere: no shot of this bag gets home")
    return replace(board, game=game)


def value_actions(
    board: Board, x_yd: float, y_yd: float, lie: int, actions: np.ndarray, replay: float, strikes: np.ndarray,
    *, threads: int = 1,
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
    actions = np.ascontiguousarray(actions, dtype=float)
    out = np.empty((len(actions), strikes.shape[0], 2))

    def work(first: int, last: int) -> None:
        solve.evaluate(board.game, x_yd, y_yd, lie, actions, replay, strikes, first, last, out)

    pairs = len(actions) * strikes.shape[0]
    _share(work, pairs, max(pairs // (4 * threads), 1), threads)
    return out


def play(
    board: Board, x_yd: float, y_yd: float, lie: int, action: np.ndarray, start_action: np.ndarray,
    start_value: float, *, seed: int, sequences: int, threads: int = 1, most_strokes: int = MOST_STROKES,
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
    """
    out = np.empty((sequences, c.OUT_COLUMNS))
    action = np.ascontiguousarray(action, dtype=float)
    start_action = np.ascontiguousarray(start_action, dtype=float)

    def work(first: int, last: int) -> None:
        sequence.play(board.game, seed, x_yd, y_yd, lie, action, start_action, start_value, most_strokes,
                      first, last, out)

    _share(work, sequences, max(sequences // (8 * threads), 256), threads)
    return _named(out)
