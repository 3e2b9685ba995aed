"""Reading the flight tables: where a strike comes down and how, in the wind of the moment."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import in_place, kernel
from .angles import quick_angle, turned_line
from .game import Cell


@in_place
def column_of_flight(flights, shot, u, v, cell, at):
    """One number of a flight at one node of the wind, bilinear in carry fraction and tilt.

    Parameters
    ----------
    at : uintp
        Its place on the last axis of the tables: a height node's columns are FLIGHT_WIDE on end.
    """
    f, t, a, d = np.uintp(cell.f), np.uintp(cell.t), cell.wf, cell.wt
    g, w = f + np.uintp(1), t + np.uintp(1)
    return (
        (1.0 - a) * (1.0 - d) * flights[shot, u, v, f, t, at]
        + a * (1.0 - d) * flights[shot, u, v, g, t, at]
        + (1.0 - a) * d * flights[shot, u, v, f, w, at]
        + a * d * flights[shot, u, v, g, w, at]
    )


@in_place
def _corner(flights, shot, u, v, h, cell):
    """Flight at one wind and height node."""
    shot, u, v, at = np.uintp(shot), np.uintp(u), np.uintp(v), np.uintp(h * c.FLIGHT_WIDE)
    return (
        column_of_flight(flights, shot, u, v, cell, at),
        column_of_flight(flights, shot, u, v, cell, at + np.uintp(1)),
        column_of_flight(flights, shot, u, v, cell, at + np.uintp(2)),
        column_of_flight(flights, shot, u, v, cell, at + np.uintp(3)),
        column_of_flight(flights, shot, u, v, cell, at + np.uintp(4)),
        column_of_flight(flights, shot, u, v, cell, at + np.uintp(5)),
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
        Still-air carry of the strike over the shot's tabled carry.
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
    _, us, vs, fractions, tilts, _ = flights.shape
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
    towards_x, towards_y = numbers[c.WIND_TOWARDS_X], numbers[c.WIND_TOWARDS_Y]
    x, y = turned_line(towards_x, towards_y, 2.0 * swing * numbers[c.WIND_SWING])
    return speed * x, speed * y
