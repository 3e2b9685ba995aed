"""Solving the nodes of the value map."""

from __future__ import annotations

from . import codes as c
from ._compile import entry
from .choosing import MOST_CANDIDATES, choose
from .scoring import closed, score_action


@entry
def solve_nodes(
    game, search, nodes, seeds, first, last, aims, wide_aims, few, more, many, room, picked, balls, out
):
    """Value and action of nodes[first:last] from committed values.

    Parameters
    ----------
    game : Game
    search : int
        1 to choose an action, 0 to value the plan as it stands; `seeds` then hold the node's action.
    nodes : float64[n, 9]
        x, y [yd], lie, known value, scramble, side of the node's cell [yd], strikes that screen, that
        decide and that value. Balls anywhere in the cell are played as the node says, so an action is chosen
        and valued over the whole cell. A node that no strikes value keeps the value it is known by.
    seeds : float64[n, k, ACTION_COLUMNS]
        Actions good nearby, NO_SHOT where there is none.
    first, last : int
        Which nodes.
    aims, wide_aims : float64[k]
        Aims off the pin to try first [rad]; from recovery lies the wide ones too.
    few, more, many : float64[scrambles, strikes, STRIKE_LUCK]
        Strikes that screen, decide and value. `many` never chooses: a value from the strikes that chose
        it would be too low.
    room : float64[MOST_CANDIDATES + KEPT + 1, 4]
    picked : int64[KEPT]
    balls : float64[ROOM]
        To work in, of this call alone; `balls` is explained in volley.py.
    out : float64[n, 4]
        Written: value, shot, aim, reach.
    """
    scratch, tries, best = room[:MOST_CANDIDATES], room[MOST_CANDIDATES:-1], room[-1]
    for k in range(first, last):
        x, y, lie, replay, scramble = (
            nodes[k, 0],
            nodes[k, 1],
            int(nodes[k, 2]),
            nodes[k, 3],
            int(nodes[k, 4]),
        )
        spread = nodes[k, 5]
        for q in range(3):
            best[q] = seeds[k, 0, q]
        if search == 1:
            choose(
                game,
                x,
                y,
                lie,
                spread,
                replay,
                seeds[k],
                aims,
                wide_aims,
                few[scramble, : int(nodes[k, 6])],
                more[scramble, : int(nodes[k, 7])],
                balls,
                scratch,
                tries,
                picked,
                best,
            )
        shot = best[0] if search == 1 else c.BY_PLAN
        valuing = many[scramble, : int(nodes[k, 8])]
        out[k, 0] = replay
        if valuing.shape[0] > 0:
            cost, again = score_action(
                game, x, y, lie, spread, shot, best[1], best[2], replay, valuing, balls
            )
            out[k, 0] = closed(cost, again)
        for q in range(3):
            out[k, q + 1] = best[q]
