"""Single balls on one kind of ground, for tables: runs from their landings, and how low skips slow down."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from . import volley as v
from ._compile import entry
from .bounce import bounce
from .rest import bring_down, come_to_rest


@entry
def fill_runs(ground, landings, balls, out):
    """Run of each landing on the ground at the origin, in the direction it came down.

    Parameters
    ----------
    ground : Ground
        A raster of one cell: the ground is the same everywhere.
    landings : float64[n, FLIGHT_COLUMNS]
        As in the flight table: along, side [yd], v_along, v_side, v_down [yd/s], spin [rad/s].
    balls : float64[ROOM]
        To work in (volley.py).
    out : float64[n]
        Written: run along the line the ball came in on [yd], negative where it spins back.
    """
    count = landings.shape[0]
    for first in range(0, count, v.TOGETHER):
        volley = min(count - first, v.TOGETHER)
        for ball in range(volley):
            landing = landings[first + ball]
            bring_down(balls, ball, 0.0, 0.0, landing[3], landing[2], landing[4], landing[5])
        come_to_rest(ground, balls, volley)
        for ball in range(volley):
            i, vx, vy = np.uintp(ball), landings[first + ball, 3], landings[first + ball, 2]
            speed = max(math.sqrt(vx * vx + vy * vy), 1e-9)
            out[first + ball] = (balls[v.REST_X + i] * vx + balls[v.REST_Y + i] * vy) / speed


@entry
def fill_skips(numbers, surface_row, start, places, speeds):
    """Skips of a ball that starts rolling along the level at a speed, until it hops no more.

    Parameters
    ----------
    numbers : float64[n]
        The game's numbers.
    surface_row : float64[SURFACE_COLUMNS]
        The surface's row (codes.py).
    start : float
        [yd/s]
    places, speeds : float64[n]
        Written: place [yd] and speed [yd/s] after each skip, as many as there is room for.

    Returns
    -------
    skips : int
        How many were written.
    place : float
        Where the last one came down [yd].
    along, spin : float
        Speed [yd/s] and backspin [rad/s] there.
    """
    along, out, spin, place = start, 0.0, -start / numbers[c.BALL_RADIUS], 0.0
    skips = 0
    while skips < places.shape[0]:
        along, out, spin = bounce(
            numbers,
            surface_row[c.SURFACE_TILT],
            surface_row[c.SURFACE_RESTITUTION],
            surface_row[c.SURFACE_FRICTION],
            along,
            out,
            spin,
        )
        if out < numbers[c.BOUNCE_LEAST] or along <= 0.0:
            break
        places[skips], speeds[skips] = place, along
        place += along * 2.0 * out / numbers[c.GRAVITY]
        skips += 1
    return skips, place, along, spin
