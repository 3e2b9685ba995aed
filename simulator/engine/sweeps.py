"""A sweep over the nodes of a value map, band by band outwards from the pin, and what it starts from."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from ..errors import NoAnswerError
from ..kernels import choosing, solve, volley
from ..kernels import codes as c
from ..kernels.game import Game
from ..tables.game import Board
from .effort import Effort
from .threads import share

AIMS_DEG = (0.0, -7.0, 7.0, -3.5, 3.5, -12.0, 12.0, -19.0, 19.0, -28.0, 28.0)
"""Aims off the pin first tried at a node [deg], the first three of them with every club."""

WIDE_AIMS_DEG = (0.0, -12.0, 12.0, -25.0, 25.0, -40.0, 40.0, -60.0, 60.0, -90.0, 90.0)
"""Aims of a recovery: out sideways is one of them [deg]."""

CLIFF_STROKES = 0.1
"""A value that bends by more than this between two nodes has a cliff there, not a curve [strokes]."""


@dataclass(frozen=True)
class Luck:
    """Strikes that screen, decide and value."""

    few: np.ndarray
    more: np.ndarray
    commit: np.ndarray
    many: np.ndarray


def sweep(
    board: Board,
    game: Game,
    nodes: np.ndarray,
    seeds: np.ndarray,
    means: tuple[np.ndarray, np.ndarray],
    luck: Luck,
    effort: Effort,
    search: bool,
    threads: int,
) -> np.ndarray:
    """One sweep over all bands, committing band by band; float64[n, 4] of value and action.

    `means` holds what is known of the nodes of both grids, each over its cell; it is kept up to date.
    """
    table, place = board.nodes.table, board.nodes.place
    values, plans = (game.field.coarse, game.field.fine), (game.coarse_plan, game.fine_plan)
    count = len(table)
    whole = {0, 1}
    out = np.empty((count, 4))
    aims, wide = np.radians(AIMS_DEG), np.radians(WIDE_AIMS_DEG)
    steps = np.arange(effort.band_yd, table[-1, 3] + effort.band_yd, effort.band_yd)
    edges = np.unique(np.concatenate([[0], np.searchsorted(table[:, 3], steps), [count]]))
    for first, last in zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True):

        def work(a: int, b: int, first: int = first) -> None:
            solve.solve_nodes(
                game,
                int(search),
                nodes,
                seeds,
                first + a,
                first + b,
                aims,
                wide,
                luck.few,
                luck.more,
                luck.commit if search else luck.many,
                *room_to_choose(),
                out,
            )

        share(work, last - first, 4, threads)
        for grid in (0, 1):
            rows = first + np.flatnonzero(place[first:last, 0] == grid)
            if not rows.size:
                continue
            at = tuple(place[rows, 1:].T)
            means[grid][at] = out[rows, 0]
            plans[grid][at] = out[rows, 1:]
            if grid in whole:  # guesses farther out too
                values[grid][...] = sharpened(means[grid])
                whole.remove(grid)
            else:
                _sharpen_about(at[1], at[2], means[grid], values[grid])
    if not np.isfinite(out).all():
        raise NoAnswerError("the value map has no finite value somewhere: no shot of this bag gets home")
    return out


def room_to_choose() -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """What one call of `solve_nodes` works in."""
    candidates = np.empty((choosing.MOST_CANDIDATES + choosing.KEPT + 1, 4))
    return candidates, np.empty(choosing.KEPT, np.int64), np.empty(volley.ROOM)


def _sharpen_about(rows: np.ndarray, columns: np.ndarray, means: np.ndarray, values: np.ndarray) -> None:
    """Sharpen anew what nodes whose means are new have a part in: themselves and the nodes beside them."""
    first = int(rows.min()), int(columns.min())
    last = int(rows.max()), int(columns.max())
    seen = tuple(slice(max(low - 2, 0), high + 3) for low, high in zip(first, last, strict=True))
    inner = tuple(slice(max(low - 1, 0), high + 2) for low, high in zip(first, last, strict=True))
    within = tuple(slice(a.start - b.start, a.stop - b.start) for a, b in zip(inner, seen, strict=True))
    values[:, inner[0], inner[1]] = sharpened(means[:, seen[0], seen[1]])[:, within[0], within[1]]


def sharpened(means: np.ndarray) -> np.ndarray:
    """Node values whose linear reading has these means over the nodes' cells, float64[lies, rows, columns].

    A node is valued over its cell, which rounds off a curved value by h^2 / 24 of its second derivative;
    reading between nodes adds h^2 / 12 on average. Taking an eighth of the second difference off undoes both.
    Where a neighbour is missing nothing is taken off on that axis, nor at the edge of a cliff, where it
    would dig a hole for the search to fall into.
    """
    out = means.copy()
    for axis in (1, 2):
        inner = [slice(None)] * 3
        before, after = inner.copy(), inner.copy()
        inner[axis], before[axis], after[axis] = slice(1, -1), slice(None, -2), slice(2, None)
        bend = (means[tuple(before)] + means[tuple(after)]) - 2.0 * means[tuple(inner)]
        curved = np.abs(bend) < CLIFF_STROKES  # also false where there is no number
        out[tuple(inner)] -= 0.125 * np.where(curved, bend, 0.0)
    return out


def empty_game(board: Board) -> Game:
    """The board's game with fields of its own to be filled."""
    old = board.game
    field = old.field._replace(coarse=old.field.coarse.copy(), fine=old.field.fine.copy())
    return old._replace(field=field, coarse_plan=old.coarse_plan.copy(), fine_plan=old.fine_plan.copy())


def fill(game: Game, board: Board, values: np.ndarray) -> None:
    """Write a first guess into the fields."""
    place = board.nodes.place
    for grid, field in enumerate((game.field.coarse, game.field.fine)):
        rows = np.flatnonzero(place[:, 0] == grid)
        field[tuple(place[rows, 1:].T)] = values[rows]


def guesses(board: Board) -> np.ndarray:
    """First guess of the value of each node of a board nothing is known of."""
    base, per_yd = board.game.ground.numbers[c.GUESS_BASE], board.game.ground.numbers[c.GUESS_PER_YD]
    return np.asarray(base + per_yd * board.nodes.table[:, 3])


def from_other(board: Board, sketch: Board) -> tuple[np.ndarray, np.ndarray]:
    """Known values and up to four seeds of each node, from a coarser map of the same hole."""
    table = board.nodes.table
    x, y, lie = table[:, 0], table[:, 1], table[:, 2].astype(int)
    values, seeds = np.full((len(table), 4), np.nan), np.full((len(table), 4, 3), c.NO_SHOT)
    inside = sketch.nodes.fine.holds(x, y)
    game = sketch.game
    for rows, nodes, field, plan in (
        (np.flatnonzero(~inside), sketch.nodes.coarse, game.field.coarse, game.coarse_plan),
        (np.flatnonzero(inside), sketch.nodes.fine, game.field.fine, game.fine_plan),
    ):
        j, i = nodes.corners(x[rows], y[rows])
        values[rows] = field[lie[rows, None], j, i]
        seeds[rows] = plan[lie[rows, None], j, i]
    known = np.isfinite(values)
    total = np.where(known, values, 0.0).sum(axis=1)
    guess = np.where(known.any(axis=1), total / np.maximum(known.sum(axis=1), 1), guesses(board))
    return guess, seeds
