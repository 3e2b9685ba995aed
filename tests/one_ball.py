"""The kernels of a volley with one ball in it: a shot, or a ball that comes down."""

from __future__ import annotations

import math
from typing import Any

import numba
import numpy as np

from simulator.kernels import volley as v
from simulator.kernels.descent import come_down
from simulator.kernels.passing import past_trees
from simulator.kernels.rest import bring_down, come_to_rest
from simulator.kernels.shot import settle, strike


def _compiled(function: Any) -> Any:
    return function if numba.config.DISABLE_JIT else numba.njit(error_model="numpy")(function)


@_compiled
def play_shot(game, x, y, lie, shot, bearing, scale, replay, luck):  # type: ignore[no-untyped-def]
    """One shot, struck, brought to rest and settled."""
    balls = np.empty(v.ROOM)
    strike(game, balls, 0, x, y, lie, shot, math.sin(bearing), math.cos(bearing), 0.0, scale, luck)
    come_down(game, balls, 1)
    past_trees(game, balls, 1)
    come_to_rest(game.ground, balls, 1)
    return settle(game, balls, 0, replay)


@_compiled
def run_out(ground, x, y, vx, vy, down, spin):  # type: ignore[no-untyped-def]
    """One landing run out: x, y, last place outside a penalty area, whether it entered one, heading, roll."""
    balls = np.empty(v.ROOM)
    balls[v.ENTRY_X] = math.nan
    bring_down(balls, 0, x, y, vx, vy, down, spin)
    come_to_rest(ground, balls, 1)
    entered = not math.isnan(balls[v.ENTRY_X])
    return (
        balls[v.REST_X], balls[v.REST_Y], balls[v.ENTRY_X], balls[v.ENTRY_Y], entered,
        balls[v.HEAD_X], balls[v.HEAD_Y], balls[v.ROLL],
    )  # fmt: skip
