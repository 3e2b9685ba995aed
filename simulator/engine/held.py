"""A map valued anew with the plan of another held."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from ..kernels import codes as c
from ..tables.game import Board
from ..tables.luck import strike_sets
from .effort import Effort, node_rows
from .sweeps import Luck, empty_game, fill, from_other, sweep


@dataclass(frozen=True)
class Held:
    """The plan of a solved map on the nodes of a board: what every board with those nodes is valued from.

    Attributes
    ----------
    known : float64[n]
        Values of the nodes by the solved map.
    plan : float64[n, 3]
        The action held at each.
    rows : float64[n, 9]
        As `solve_nodes` reads them.
    luck : Luck
    effort : Effort
    """

    known: np.ndarray
    plan: np.ndarray
    rows: np.ndarray
    luck: Luck
    effort: Effort


def hold_plan(
    board: Board,
    solved: Board,
    *,
    seed: int,
    places: np.ndarray | None = None,
    effort: Effort | None = None,
) -> Held:
    """The plan of another map of the same hole, on this board's nodes.

    Parameters
    ----------
    board : Board
        With the nodes to be valued; nothing else of it is read.
    solved : Board
    seed : int
        Of the strikes.
    places : float64[n, 3], optional
        Where balls come to: x, y [yd] and lie. Nodes beside which few of them lie get fewer strikes.
    effort : Effort
        `many` strikes value each node, once and then `again` times; `more` choose where there is a choice.
    """
    effort = effort or Effort()
    more = strike_sets(seed + 1, effort.scrambles, effort.more)
    many = strike_sets(seed + 3, effort.scrambles, effort.many)
    known, seeds = from_other(board, solved)
    rows = node_rows(board, known, effort, places)
    return Held(known, _nearest(board, solved, seeds), rows, Luck(more, more, many, many), effort)


def revalue_map(
    board: Board,
    held: Held,
    *,
    instead: np.ndarray | None = None,
    also: Callable[[np.ndarray, np.ndarray], np.ndarray] | None = None,
    threads: int = 1,
) -> Board:
    """The board with a held plan, and what that plan is worth on it.

    The plan is held: nothing is searched. Of an optimal plan this is the value anew to first order in
    whatever changed (the envelope theorem), and always a bound from above.

    Parameters
    ----------
    board : Board
        The hole with what changed: another bag's rows, another wind. Its nodes must be those the plan is held
        on, its shots in the order of the solved map's.
    held : Held
    instead : int64[shots], optional
        Shot row played where the plan has each: for a player whose clubs carry other distances, the one that
        carries as far as the plan meant. Part swings are told by their reach and stay.
    also : callable, optional
        Given the nodes, float64[n, 4] of x, y, lie and distance, and the actions held there, float64[n, 3]:
        others to try beside them, float64[n, k, 3] with k up to 3. The best is then refined and taken. For a
        change too great to hold the plan in.
    threads : int
    """
    plan = held.plan.copy()
    if instead is not None:
        full = plan[:, 0] >= 0.0
        plan[full, 0] = instead[plan[full, 0].astype(int)]
    game = empty_game(board)
    fill(game, board, held.known)
    # what is held is valued as it is played, blended between the nodes: it has to be in its place first
    for grid, actions in enumerate((game.coarse_plan, game.fine_plan)):
        rows = np.flatnonzero(board.nodes.place[:, 0] == grid)
        actions[tuple(board.nodes.place[rows, 1:].T)] = plan[rows]
    tried = plan[:, None]
    if also is not None:
        tried = np.concatenate([tried, also(board.nodes.table, plan)], axis=1)
    nodes = held.rows.copy()
    means = game.field.coarse.copy(), game.field.fine.copy()
    for turn in range(1 + held.effort.again):
        choose = also is not None and turn == 0
        out = sweep(board, game, nodes, tried, means, held.luck, held.effort, choose, threads)
        nodes[:, 3], tried = out[:, 0], np.ascontiguousarray(out[:, None, 1:])
    return replace(board, game=game)


def _nearest(board: Board, solved: Board, seeds: np.ndarray) -> np.ndarray:
    """One action for each node of a board, float64[n, 3]: of the nearest of another's nodes round it, else
    of the nearest of its lie."""
    valid = seeds[:, :, 0] != c.NO_SHOT
    plan = seeds[np.arange(len(seeds)), valid.argmax(axis=1)]
    place = solved.nodes.place
    for k in np.flatnonzero(~valid.any(axis=1)):
        x, y, lie = board.nodes.table[k, :3]
        table = solved.nodes.table
        away = np.hypot(table[:, 0] - x, table[:, 1] - y) + np.where(table[:, 2] == lie, 0.0, 1e6)
        grid, *at = place[int(np.argmin(away))]
        plan[k] = (solved.game.coarse_plan, solved.game.fine_plan)[grid][tuple(at)]
    return plan
