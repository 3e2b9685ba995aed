"""How a ball that skips low along the ground slows down, read off the hop loop itself.

A ball that grips leaves each bounce rolling, and then hops in ever lower skips, up to fifty of them. Along
that tail its deceleration depends on its speed and the surface alone. Here the loop is run once for each
surface and its deceleration is written down by speed; the kernel then runs the ball along the ground with it.
"""

from __future__ import annotations

import numpy as np

from ..hole.surfaces import Surface
from ..kernels import codes as c
from ..kernels.runs import fill_skips
from ..physics.ground import ROLL_KEEPS_SPEED, ROLL_TAKES_SPIN, Ground

SKIP_BELOW_YDPS = 1.2
"""Hops that start slower upwards than this are skips: under 2.5 in high."""

SKIP_STEP = 0.5
"""Step of the table in squared speed [(yd/s)^2]: the kernel then needs no root."""

MOST_SKIPS = 500
"""Room for the skips of one ball; none has come to a fifth of it."""

FASTEST_YDPS = 16.0
"""Speeds tabled [yd/s]; a faster ball takes the last column."""


def _tail(
    numbers: np.ndarray, row: np.ndarray, friction: float, start: float
) -> tuple[np.ndarray, np.ndarray]:
    """(place [yd], speed [yd/s]) after each skip of a ball that starts rolling at `start`, to its rest."""
    skipped, fast = np.empty(MOST_SKIPS), np.empty(MOST_SKIPS)
    skips, place, along, spin = fill_skips(numbers, row, start, skipped, fast)
    places, speeds = list(skipped[:skips]), list(fast[:skips])
    roll = max(ROLL_KEEPS_SPEED * along - ROLL_TAKES_SPIN * numbers[c.BALL_RADIUS] * spin, 0.0)
    # the pure roll at the end, at constant deceleration
    for share in np.linspace(1.0, 0.0, 11):
        speed = share * roll
        speeds.append(speed)
        places.append(place + (roll * roll - speed * speed) / (2.0 * friction * numbers[c.GRAVITY]))
    return np.array(places), np.array(speeds)


def skip_table(numbers: np.ndarray, rows: np.ndarray, grounds: dict[Surface, Ground]) -> np.ndarray:
    """Deceleration [yd/s^2], float64[surfaces, squared speeds], column k from k to k + 1 steps.

    Parameters
    ----------
    numbers, rows
        Of the game: the bounce law and the surfaces' scales.
    grounds
        The surfaces' grounds of the day; what has none stops a ball at once.
    """
    edges = np.arange(0.0, FASTEST_YDPS**2 + 0.5 * SKIP_STEP, SKIP_STEP)
    table = np.full((len(rows), edges.size - 1), numbers[c.GRAVITY])
    for surface in Surface:
        ground = grounds.get(surface)
        if ground is None:
            continue
        if not ground.skips:
            table[surface] *= ground.rolling_friction
            continue
        place, speed = _tail(numbers, rows[surface], ground.rolling_friction, FASTEST_YDPS)
        order = np.argsort(speed)
        left = np.interp(edges, speed[order] ** 2, place[order])
        # v^2 = 2 a x between two speeds; the first skip is slower than its start, and faster is like it
        known = int(np.searchsorted(edges, speed.max() ** 2, side="right")) - 1
        table[surface, :known] = 0.5 * SKIP_STEP / np.maximum(-np.diff(left[: known + 1]), 1e-6)
        table[surface, known:] = table[surface, known - 1]
    return table
