"""Runs of single landings on one kind of ground, for tables of carries."""

from __future__ import annotations

import math

from ._compile import entry
from .ground import run_out


@entry
def fill_runs(ground, landings, out):
    """Run of each landing on the ground at the origin, in the direction it came down.

    Parameters
    ----------
    ground : Ground
        A raster of one cell: the ground is the same everywhere.
    landings : float64[n, FLIGHT_COLUMNS]
        As in the flight table: along, side [yd], v_along, v_side, v_down [yd/s], spin [rad/s].
    out : float64[n]
        Written: run along the line the ball came in on [yd], negative where it spins back.
    """
    for k in range(landings.shape[0]):
        vx, vy = landings[k, 3], landings[k, 2]
        x, y, _, _, _, _, _, _ = run_out(ground, 0.0, 0.0, vx, vy, landings[k, 4], landings[k, 5])
        speed = max(math.sqrt(vx * vx + vy * vy), 1e-9)
        out[k] = (x * vx + y * vy) / speed
