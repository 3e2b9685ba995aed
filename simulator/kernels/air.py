"""Reading the flight tables: where a strike comes down and how, in the wind of the moment."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import in_place, kernel
from .angles import quick_angle
from .game import Cell, Landing
from .ground import height_at


@in_place
def _corner(flights, shot, u, v, h, cell):
    """Flight at one wind and height node, bilinear in carry fraction and tilt."""
    shot, u, v, h = np.uintp(shot), np.uintp(u), np.uintp(v), np.uintp(h)
    f, t, a, d = np.uintp(cell.f), np.uintp(cell.t), cell.wf, cell.wt
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


@in_place
def cell_of(numbers, flights, fraction, tilt, wind_x, wind_y, line_x, line_y):
    """Where a strike is in the flight tables.

    The wind has two axes: how fast it blows along the start line (helping positive) and across it (towards
    the right); or, on a day of one wind, only which way it blows off the start line, half as much to read.
    Only straight shots are their own mirror images in wind from the other side: with a curved one in the bag
    the tables know both.

    Parameters
    ----------
    fraction : float
        Still-air carry of the strike over the shot's stock carry.
    tilt : float
        Tilt of the spin axis, right positive [rad].
    wind_x, wind_y : float
        Velocity of the wind of the moment [yd/s].
    line_x, line_y : float
        Unit vector along the start line.

    Returns
    -------
    Cell
    """
    first, second = 0.0, 0.0
    if wind_x != 0.0 or wind_y != 0.0:
        first, second = wind_x * line_x + wind_y * line_y, wind_x * line_y - wind_y * line_x
        if numbers[c.WIND_RING] > 0.5:
            turn = quick_angle(abs(second), abs(first))
            second = math.copysign(turn if first > 0.0 else math.pi - turn, second)
    mirror = -1.0 if second < 0.0 and numbers[c.WIND_V_0] == 0.0 else 1.0
    _, us, vs, fractions, tilts, _, _ = flights.shape
    u, wu = node_of(first, numbers[c.WIND_U_0], numbers[c.WIND_U_PER], us)
    v, wv = node_of(mirror * second, numbers[c.WIND_V_0], numbers[c.WIND_V_PER], vs)
    f, wf = node_of(fraction, numbers[c.FRACTION_0], numbers[c.FRACTION_PER], fractions)
    t, wt = node_of(mirror * tilt, numbers[c.TILT_0], numbers[c.TILT_PER], tilts)
    return Cell(u, wu, v, wv, f, wf, t, wt, mirror)


@in_place
def fly(flights, shot, cell, node):
    """Flight of a strike down to one landing-height node, linear between the nodes of all other axes.

    Parameters
    ----------
    shot : int
        Shot row.
    cell : Cell
    node : int
        Landing-height node.

    Returns
    -------
    along, side, v_along, v_side, v_down, spin : float
        yd, yd/s and rad/s, in the frame of the start direction.
    """
    flight = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
    for corner in range(4):  # of the wind; most days have one or two. One call, copied once
        du, dv = corner & 1, corner >> 1
        share = (cell.wu if du else 1.0 - cell.wu) * (cell.wv if dv else 1.0 - cell.wv)
        if share > 0.0:
            flight = _more(flight, _corner(flights, shot, cell.u + du, cell.v + dv, node, cell), share)
    mirror = cell.mirror
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
def _height_under(ground, x, y, line_x, line_y, flight):
    """Height of the ground under the end of a flight [yd]."""
    along, side = flight[0], flight[1]
    return height_at(ground, x + along * line_x + side * line_y, y + along * line_y - side * line_x)


@in_place
def land(ground, flights, x, y, shot, line_x, line_y, cell):
    """Landing of a strike that starts along a line, given by its unit vector.

    On hilly ground the ball comes down where its fall between two landing-height nodes meets the ground,
    both taken to be straight there.
    """
    numbers = ground.numbers
    nodes = flights.shape[5]
    k = nodes // 2  # the ball's own height
    flight = fly(flights, shot, cell, k)
    if nodes > 1:
        level = height_at(ground, x, y)
        z = numbers[c.HEIGHT_0] + k * numbers[c.HEIGHT_STEP]
        gap = _height_under(ground, x, y, line_x, line_y, flight) - level - z
        step = 1 if gap > 0.0 else -1  # the ground is higher there: the ball comes down earlier
        for _ in range(nodes):
            if not 0 <= k + step < nodes:
                break
            k += step
            z += step * numbers[c.HEIGHT_STEP]
            other = fly(flights, shot, cell, k)
            new_gap = _height_under(ground, x, y, line_x, line_y, other) - level - z
            if new_gap * gap <= 0.0:
                flight = _mix(flight, other, gap / (gap - new_gap) if gap != new_gap else 0.0)
                break
            flight, gap = other, new_gap
    along, side, v_along, v_side, down, spin = flight
    return Landing(
        x + along * line_x + side * line_y,
        y + along * line_y - side * line_x,
        v_along * line_x + v_side * line_y,
        v_along * line_y - v_side * line_x,
        down,
        spin,
        along,
        side,
        0.0,
    )
