"""The value map: solved, and valued anew with its plan held."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from ..errors import NoAnswerError
from ..kernels import choosing, solve
from ..kernels import codes as c
from ..kernels.game import Game
from ..tables.game import Board
from ..tables.luck import strike_sets
from .effort import LONG, LONG_STROKES, Effort, Traffic, node_rows, seed_idle
from .threads import share

AIMS_DEG = (0.0, -7.0, 7.0, -3.5, 3.5, -12.0, 12.0, -19.0, 19.0, -28.0, 28.0)
"""Aims off the pin first tried at a node [deg], the first three of them with every club."""

WIDE_AIMS_DEG = (0.0, -12.0, 12.0, -25.0, 25.0, -40.0, 40.0, -60.0, 60.0, -90.0, 90.0)
"""Aims of a recovery: out sideways is one of them [deg]."""

CLIFF_STROKES = 0.1
"""A value that bends by more than this between two nodes has a cliff there, not a curve [strokes]."""

SETTLED_STROKES, MOST_SWEEPS = 0.1, 30
"""The chosen actions are valued anew until a sweep moves the nodes by less than this on average, each counted
as its strikes [strokes]. Once does on nearly every hole (0.02 to 0.07 on the demo holes, the luck of the
strikes). Where most balls come down in water and are dropped farther from the hole, every sweep sees one more
of them."""


@dataclass(frozen=True)
class _Luck:
    """Strikes that screen, decide and value."""

    few: np.ndarray
    more: np.ndarray
    commit: np.ndarray
    many: np.ndarray


def solve_map(
    board: Board,
    *,
    seed: int,
    sketch: Board | None = None,
    draft: Board | None = None,
    balls: Callable[[Board, int], Traffic] | None = None,
    effort: Effort | None = None,
    threads: int = 1,
) -> Board:
    """The board with its value map and plan filled in.

    Strokes to hole out by dynamic programming outwards from the pin, in bands of distance. Inside a band
    every node reads only values committed before it, so the order of work does not matter.

    Parameters
    ----------
    board : Board
    seed : int
        Of the strikes.
    sketch : Board, optional
        The same hole with nodes farther apart. It is solved first, by searching every action; the nodes
        of `board` then start from its values and from the actions of the nodes around them. Without it
        every node of `board` is searched.
    draft : Board, optional
        The same hole with nodes farther apart still, solved before the sketch with few strikes to see where
        balls come to. Only there are all actions searched on the sketch, and nodes beside which few balls
        lie are worked with fewer strikes. Without it all are worked alike.
    balls : callable
        With a draft. Given a solved board and how many sequences to follow: where balls come to.
    effort : Effort
        Unless it is given, by the strokes it takes to hole out as seen on the draft: see `LONG_STROKES`.
    threads : int
    """
    given, effort = effort, effort or Effort()
    if sketch is None:
        return _worked(board, *_nothing_known(board), None, seed, effort, threads)
    places = None
    known = _nothing_known(sketch)
    if draft is not None and balls is not None:
        quick = replace(effort, few=max(effort.few // 2, 1), more=effort.draft, commit=effort.draft, again=0)
        first = _worked(draft, *_nothing_known(draft), None, seed + 20, quick, threads)
        seen = balls(first, effort.followed)
        known, places = _from_sketch(sketch, first), seen.places
        if given is None and seen.strokes >= LONG_STROKES:
            effort = LONG
    rough = replace(effort, more=effort.sketch, again=0)
    drawn = _worked(sketch, *known, places, seed + 10, rough, threads, anew=True)
    if places is not None and balls is not None:
        places = balls(drawn, effort.followed).places
    return _worked(board, *_from_sketch(board, drawn), places, seed, effort, threads)


def _worked(
    board: Board,
    known: np.ndarray,
    seeds: np.ndarray,
    places: np.ndarray | None,
    seed: int,
    effort: Effort,
    threads: int,
    anew: bool = False,
) -> Board:
    """The board solved, from what is known of its nodes' values and actions; see `solve_map`.

    Parameters
    ----------
    known : float64[n]
    seeds : float64[n, k, 3]
    places : float64[n, 3] or None
        Where balls come to: what no ball reads keeps its first seed.
    anew : bool
        Every action is searched at the nodes most often read. The values it is searched on are no guesses
        any more, so a drop farther from the hole is seen for what it is.
    """
    luck = _Luck(
        *(
            strike_sets(seed + k, effort.scrambles, count)
            for k, count in enumerate((effort.few, effort.more, effort.commit, effort.many))
        )
    )
    game = _empty_game(board)
    seeded = seeds[:, 0, 0] != c.NO_SHOT
    if seeded.any():
        _fill(game, board, known)
    nodes, seeds = node_rows(board, known, effort, places), seeds.copy()
    if places is None:
        far = (board.nodes.off_line_yd > effort.far_yd) & seeded
        nodes[far, 7] = np.minimum(nodes[far, 7], 2 * effort.few)
    else:
        seed_idle(nodes, seeds, effort.least)
        if anew:
            seeds[nodes[:, 7] >= effort.more // 2] = c.NO_SHOT
    means = game.field.coarse.copy(), game.field.fine.copy()
    out = _sweep(board, game, nodes, seeds, means, luck, effort, True, threads)
    sweeps, moved = 0, 0.0
    while sweeps < effort.again or (moved > SETTLED_STROKES and sweeps < MOST_SWEEPS):
        nodes[:, 3] = out[:, 0]
        seeds = np.ascontiguousarray(out[:, None, 1:])
        out = _sweep(board, game, nodes, seeds, means, luck, effort, False, threads)
        moved = float(np.average(np.abs(out[:, 0] - nodes[:, 3]), weights=nodes[:, 8]))
        sweeps += 1
    return replace(board, game=game)


def revalue_map(
    board: Board,
    held: Board,
    *,
    seed: int,
    instead: np.ndarray | None = None,
    also: Callable[[np.ndarray, np.ndarray], np.ndarray] | None = None,
    places: np.ndarray | None = None,
    effort: Effort | None = None,
    threads: int = 1,
) -> Board:
    """The board with the plan of another map of the same hole, and what that plan is worth on it.

    The plan is held: nothing is searched. Of an optimal plan this is the value anew to first order in
    whatever changed (the envelope theorem), and always a bound from above.

    Parameters
    ----------
    board : Board
        The hole with what changed: another bag's rows, nodes farther apart. Its shots must stand in the
        order of the other's.
    held : Board
        Solved.
    seed : int
        Of the strikes.
    instead : int64[shots], optional
        Shot row played where the plan has each: for a player whose clubs carry other distances, the one that
        carries as far as the plan meant. Part swings are told by their reach and stay.
    also : callable, optional
        Given the nodes, float64[n, 4] of x, y, lie and distance, and the actions held there, float64[n, 3]:
        others to try beside them, float64[n, k, 3] with k up to 3. The best is then refined and taken. For a
        change too great to hold the plan in.
    places : float64[n, 3], optional
        Where balls come to: x, y [yd] and lie. Nodes beside which few of them lie get fewer strikes.
    effort : Effort
        `many` strikes value each node, once and then `again` times; `more` choose where there is a choice.
    threads : int
    """
    effort = effort or Effort()
    more = strike_sets(seed + 1, effort.scrambles, effort.more)
    many = strike_sets(seed + 3, effort.scrambles, effort.many)
    luck = _Luck(more, more, many, many)
    known, seeds = _from_sketch(board, held)
    plan = _held_plan(board, held, seeds)
    if instead is not None:
        full = plan[:, 0, 0] >= 0.0
        plan[full, 0, 0] = instead[plan[full, 0, 0].astype(int)]
    if also is not None:
        plan = np.concatenate([plan, also(board.nodes.table, plan[:, 0])], axis=1)
    game = _empty_game(board)
    _fill(game, board, known)
    # what is held is valued as it is played, blended between the nodes: it has to be in its place first
    for grid, actions in enumerate((game.coarse_plan, game.fine_plan)):
        rows = np.flatnonzero(board.nodes.place[:, 0] == grid)
        actions[tuple(board.nodes.place[rows, 1:].T)] = plan[rows, 0]
    nodes = node_rows(board, known, effort, places)
    means = game.field.coarse.copy(), game.field.fine.copy()
    for sweep in range(1 + effort.again):
        out = _sweep(board, game, nodes, plan, means, luck, effort, also is not None and sweep == 0, threads)
        nodes[:, 3], plan = out[:, 0], np.ascontiguousarray(out[:, None, 1:])
    return replace(board, game=game)


def _sweep(
    board: Board,
    game: Game,
    nodes: np.ndarray,
    seeds: np.ndarray,
    means: tuple[np.ndarray, np.ndarray],
    luck: _Luck,
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
            values[grid][...] = sharpened(means[grid])
    if not np.isfinite(out).all():
        raise NoAnswerError("the value map has no finite value somewhere: no shot of this bag gets home")
    return out


def room_to_choose() -> tuple[np.ndarray, np.ndarray]:
    """What one call of `solve_nodes` works in."""
    return np.empty((choosing.MOST_CANDIDATES + choosing.KEPT + 1, 4)), np.empty(choosing.KEPT, np.int64)


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


def _empty_game(board: Board) -> Game:
    """The board's game with fields of its own to be filled."""
    old = board.game
    field = old.field._replace(coarse=old.field.coarse.copy(), fine=old.field.fine.copy())
    return old._replace(field=field, coarse_plan=old.coarse_plan.copy(), fine_plan=old.fine_plan.copy())


def _fill(game: Game, board: Board, values: np.ndarray) -> None:
    """Write a first guess into the fields."""
    place = board.nodes.place
    for grid, field in enumerate((game.field.coarse, game.field.fine)):
        rows = np.flatnonzero(place[:, 0] == grid)
        field[tuple(place[rows, 1:].T)] = values[rows]


def _guesses(board: Board) -> np.ndarray:
    """First guess of the value of each node of a board nothing is known of."""
    base, per_yd = board.game.ground.numbers[c.GUESS_BASE], board.game.ground.numbers[c.GUESS_PER_YD]
    return np.asarray(base + per_yd * board.nodes.table[:, 3])


def _nothing_known(board: Board) -> tuple[np.ndarray, np.ndarray]:
    """Values of a first guess, and no seeds."""
    return _guesses(board), np.full((len(board.nodes.table), 1, 3), c.NO_SHOT)


def _from_sketch(board: Board, sketch: Board) -> tuple[np.ndarray, np.ndarray]:
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
    guess = np.where(known.any(axis=1), total / np.maximum(known.sum(axis=1), 1), _guesses(board))
    return guess, seeds


def _held_plan(board: Board, held: Board, seeds: np.ndarray) -> np.ndarray:
    """One action for each node of a board, float64[n, 1, 3]: of the nearest of another's nodes round it, else
    of the nearest of its lie."""
    valid = seeds[:, :, 0] != c.NO_SHOT
    plan = seeds[np.arange(len(seeds)), valid.argmax(axis=1)]
    place = held.nodes.place
    for k in np.flatnonzero(~valid.any(axis=1)):
        x, y, lie = board.nodes.table[k, :3]
        table = held.nodes.table
        away = np.hypot(table[:, 0] - x, table[:, 1] - y) + np.where(table[:, 2] == lie, 0.0, 1e6)
        grid, *at = place[int(np.argmin(away))]
        plan[k] = (held.game.coarse_plan, held.game.fine_plan)[grid][tuple(at)]
    return np.ascontiguousarray(plan[:, None])
