"""Reading the flight tables: where a strike comes down and how, in the wind of the moment."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import in_place, kernel
from .game import Landing
from .ground import height_at


@in_place
def _corner(flights, shot, u, v, f, t, h, a, d):
    """Flight at one wind and height node, bilinear in carry fraction (a) and tilt (d)."""
    shot, u, v = np.uintp(shot), np.uintp(u), np.uintp(v)
    f, t, h = np.uintp(f), np.uintp(t), np.uintp(h)
    g, w = f + np.uintp(1), t + np.uintp(1)
    p, q, r, s = (1.0 - a) * (1.0 - d), a * (1.0 - d), (1.0 - a) * d, a * d
    return (
        p * flights[shot, u, v, f, t, h, 0]
        + q * flights[shot, u, v, g, t, h, 0]
        + r * flights[shot, u, v, f, w, h, 0]
        + s * flights[shot, u, v, g, w, h, 0],
        p * flights[shot, u, v, f, t, h, 1]
        + q * flights[shot, u, v, g, t, h, 1]
        + r * flights[shot, u, v, f, w, h, 1]
        + s * flights[shot, u, v, g, w, h, 1],
        p * flights[shot, u, v, f, t, h, 2]
        + q * flights[shot, u, v, g, t, h, 2]
        + r * flights[shot, u, v, f, w, h, 2]
        + s * flights[shot, u, v, g, w, h, 2],
        p * flights[shot, u, v, f, t, h, 3]
        + q * flights[shot, u, v, g, t, h, 3]
        + r * flights[shot, u, v, f, w, h, 3]
        + s * flights[shot, u, v, g, w, h, 3],
        p * flights[shot, u, v, f, t, h, 4]
        + q * flights[shot, u, v, g, t, h, 4]
        + r * flights[shot, u, v, f, w, h, 4]
        + s * flights[shot, u, v, g, w, h, 4],
        p * flights[shot, u, v, f, t, h, 5]
        + q * flights[shot, u, v, g, t, h, 5]
        + r * flights[shot, u, v, f, w, h, 5]
        + s * flights[shot, u, v, g, w, h, 5],
    )


@kernel
def _more(p, q, w):
    """p + w q, column by column."""
    return (
        p[0] + w * q[0],
        p[1] + w * q[1],
        p[2] + w * q[2],
        p[3] + w * q[3],
        p[4] + w * q[4],
        p[5] + w * q[5],
    )


@kernel
def _mix(p, q, w):
    """p + w (q - p), column by column."""
    return (
        p[0] + w * (q[0] - p[0]),
        p[1] + w * (q[1] - p[1]),
        p[2] + w * (q[2] - p[2]),
        p[3] + w * (q[3] - p[3]),
        p[4] + w * (q[4] - p[4]),
        p[5] + w * (q[5] - p[5]),
    )


@kernel
def node_of(value, start, per, count):
    """(lower node, share of the way to the next) of a value on an even axis, `per` nodes a unit, clamped."""
    if count == 1:
        return 0, 0.0
    place = min(max((value - start) * per, 0.0), count - 1.0)
    node = min(int(place), count - 2)
    return node, place - node


@kernel
def mirror_of(numbers, cross_wind):
    """-1 where a flight is read as the mirror image of one in wind from the left, else 1.

    Only straight shots are their own mirror images: with a curved one in the bag the table knows both sides.
    """
    return -1.0 if cross_wind < 0.0 and numbers[c.CROSS_0] == 0.0 else 1.0


@in_place
def fly(numbers, flights, shot, fraction, tilt, node, along_wind, cross_wind):
    """Flight of a strike down to one landing-height node, linear between the nodes of all other axes.

    Parameters
    ----------
    shot : int
        Shot row.
    fraction : float
        Still-air carry of the strike over the shot's stock carry.
    tilt : float
        Tilt of the spin axis, right positive [rad].
    node : int
        Landing-height node.
    along_wind, cross_wind : float
        Wind along the start line (helping positive) and across it (towards the right) [yd/s].

    Returns
    -------
    along, side, v_along, v_side, v_down, spin : float
        yd, yd/s and rad/s, in the frame of the start direction.
    """
    _, alongs, crosses, fractions, tilts, _, _ = flights.shape
    mirror = mirror_of(numbers, cross_wind)
    f, a = node_of(fraction, numbers[c.FRACTION_0], numbers[c.FRACTION_PER], fractions)
    t, d = node_of(mirror * tilt, numbers[c.TILT_0], numbers[c.TILT_PER], tilts)
    u, wu = node_of(along_wind, numbers[c.ALONG_0], numbers[c.ALONG_PER], alongs)
    v, wv = node_of(mirror * cross_wind, numbers[c.CROSS_0], numbers[c.CROSS_PER], crosses)
    flight = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
    for corner in range(4):  # of the wind; most days have one. One call, copied once
        du, dv = corner & 1, corner >> 1
        share = (wu if du else 1.0 - wu) * (wv if dv else 1.0 - wv)
        if share > 0.0:
            flight = _more(flight, _corner(flights, shot, u + du, v + dv, f, t, node, a, d), share)
    return (flight[0], mirror * flight[1], flight[2], mirror * flight[3], flight[4], flight[5])


@kernel
def moment_wind(numbers, gust, swing):
    """Velocity of the wind along x and y [yd/s] for two uniform numbers about 0 (-1/2 to 1/2)."""
    speed = numbers[c.WIND_SPEED] + 2.0 * gust * numbers[c.WIND_GUST]
    if speed == 0.0:
        return 0.0, 0.0
    bearing = numbers[c.WIND_BEARING] + 2.0 * swing * numbers[c.WIND_SWING]
    return speed * math.sin(bearing), speed * math.cos(bearing)


@in_place
def land(ground, flights, x, y, shot, bearing, fraction, tilt, wind_x, wind_y):
    """Landing of a strike.

    On hilly ground the ball comes down where its fall between two landing-height nodes meets the ground,
    both taken to be straight there. `wind_x`, `wind_y` is the velocity of the wind [yd/s].
    """
    numbers = ground.numbers
    sin_b, cos_b = math.sin(bearing), math.cos(bearing)
    along_wind, cross_wind = wind_x * sin_b + wind_y * cos_b, wind_x * cos_b - wind_y * sin_b
    nodes = flights.shape[5]
    k = nodes // 2  # the ball's own height
    flight = fly(numbers, flights, shot, fraction, tilt, k, along_wind, cross_wind)
    if nodes > 1:
        level = height_at(ground, x, y)
        z = numbers[c.HEIGHT_0] + k * numbers[c.HEIGHT_STEP]
        gap = (
            height_at(
                ground, x + flight[0] * sin_b + flight[1] * cos_b, y + flight[0] * cos_b - flight[1] * sin_b
            )
            - level
            - z
        )
        step = 1 if gap > 0.0 else -1  # the ground is higher there: the ball comes down earlier
        for _ in range(nodes):
            if not 0 <= k + step < nodes:
                break
            k += step
            z += step * numbers[c.HEIGHT_STEP]
            other = fly(numbers, flights, shot, fraction, tilt, k, along_wind, cross_wind)
            new_gap = (
                height_at(
                    ground, x + other[0] * sin_b + other[1] * cos_b, y + other[0] * cos_b - other[1] * sin_b
                )
                - level
                - z
            )
            if new_gap * gap <= 0.0:
                flight = _mix(flight, other, gap / (gap - new_gap) if gap != new_gap else 0.0)
                break
            flight, gap = other, new_gap
    along, side, v_along, v_side, down, spin = flight
    return Landing(
        x + along * sin_b + side * cos_b,
        y + along * cos_b - side * sin_b,
        v_along * sin_b + v_side * cos_b,
        v_along * cos_b - v_side * sin_b,
        down,
        spin,
        along,
        side,
        0.0,
    )
