"""The value map solved."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from ..kernels import codes as c
from ..tables.game import Board
from ..tables.luck import strike_sets
from ..tables.reads import node_reads
from .effort import LONG, LONG_STROKES, Effort, Traffic, node_rows
from .sweeps import Luck, empty_game, fill, from_other, guesses, sweep

SETTLED_STROKES, MOST_SWEEPS = 0.1, 30
"""The chosen actions are valued anew until a sweep moves the nodes by less than this on average, each counted
as its strikes [strokes]. Once does on nearly every hole (0.02 to 0.07 on the demo holes, the luck of the
strikes). Where most balls come down in water and are dropped farther from the hole, every sweep sees one more
of them."""

MOST_UNFORESEEN = 0.02
"""Where a larger share of the balls on the solved map come to nodes that were not worked for them, it is
solved once more with these in view. The demo holes stay below 0.015; it is for water all round, where the
rough maps and the fine one drop the ball in different places."""


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
        known, places = from_other(sketch, first), seen.places
        if given is None and seen.strokes >= LONG_STROKES:
            effort = LONG
    rough = replace(effort, more=effort.sketch, again=0, many=effort.many // 4)  # values are worked again
    drawn = _worked(sketch, *known, places, seed + 10, rough, threads, anew=True)
    start = from_other(board, drawn)
    if places is None or balls is None:
        return _worked(board, *start, None, seed, effort, threads)
    places = balls(drawn, effort.followed).places
    solved = _worked(board, *start, places, seed, effort, threads)
    met = balls(solved, effort.followed // 2).places  # a share is looked for: half of them will do
    if _unforeseen(board, places, met) > MOST_UNFORESEEN:
        solved = _worked(board, *start, np.concatenate([places, met]), seed, effort, threads)
    return solved


def _unforeseen(board: Board, places: np.ndarray, met: np.ndarray) -> float:
    """Share of the readings of balls met on a map that falls to nodes which were worked for none of them."""
    foreseen, now = node_reads(board.nodes, places) > 0.0, node_reads(board.nodes, met)
    return float(now[~foreseen].sum() / max(now.sum(), 1e-9))


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
        Where balls come to.
    anew : bool
        Every action is searched at the nodes most often read. The values it is searched on are no guesses
        any more, so a drop farther from the hole is seen for what it is.
    """
    luck = Luck(
        *(
            strike_sets(seed + k, effort.scrambles, count)
            for k, count in enumerate((effort.few, effort.more, effort.commit, effort.many))
        )
    )
    game = empty_game(board)
    seeded = seeds[:, 0, 0] != c.NO_SHOT
    if seeded.any():
        fill(game, board, known)
    nodes, seeds = node_rows(board, known, effort, places), seeds.copy()
    if places is None:
        far = (board.nodes.off_line_yd > effort.far_yd) & seeded
        nodes[far, 7] = np.minimum(nodes[far, 7], 2 * effort.few)
    elif anew:
        seeds[nodes[:, 7] >= effort.more // 2] = c.NO_SHOT
    means = game.field.coarse.copy(), game.field.fine.copy()
    out = sweep(board, game, nodes, seeds, means, luck, effort, True, threads)
    sweeps, moved = 0, 0.0
    while sweeps < effort.again or (moved > SETTLED_STROKES and sweeps < MOST_SWEEPS):
        nodes[:, 3] = out[:, 0]
        seeds = np.ascontiguousarray(out[:, None, 1:])
        out = sweep(board, game, nodes, seeds, means, luck, effort, False, threads)
        moved = float(np.average(np.abs(out[:, 0] - nodes[:, 3]), weights=nodes[:, 8]))
        sweeps += 1
    return replace(board, game=game)


def _nothing_known(board: Board) -> tuple[np.ndarray, np.ndarray]:
    """Values of a first guess, and no seeds."""
    return guesses(board), np.full((len(board.nodes.table), 1, 3), c.NO_SHOT)
