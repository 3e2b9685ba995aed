"""From the strike to the landing: the balls of a volley come down side by side.

A flight waits for its place in the tables, the ground's height for where the flight ends, the fall to the
ground for that height: one ball after another, the processor waits too. So some balls take one step, then all
of them the next. And a flight is read down to three heights at once, whose columns lie on end: 24 numbers,
which the compiler sums several at a time, cost less than six, which it does not.
"""

from __future__ import annotations

import numpy as np

from . import codes as c
from . import volley as v
from ._compile import apart, in_place, kernel
from .air import column_of_flight, fly
from .game import Cell, Landing
from .ground import height_at
from .touchdown import touch_down

FLOWN_WIDE = 3 * c.FLIGHT_WIDE
"""Numbers of a flight down to three heights."""


@in_place
def note_cell(balls, i, cell):
    """Note where the strike of a ball is in the flight tables."""
    balls[v.NODE_U + i], balls[v.SHARE_U + i] = cell.u, cell.wu
    balls[v.NODE_V + i], balls[v.SHARE_V + i] = cell.v, cell.wv
    balls[v.NODE_F + i], balls[v.SHARE_F + i] = cell.f, cell.wf
    balls[v.NODE_T + i], balls[v.SHARE_T + i] = cell.t, cell.wt
    balls[v.MIRROR + i] = cell.mirror


@in_place
def _cell(balls, i):
    """What `note_cell` noted."""
    return Cell(
        int(balls[v.NODE_U + i]),
        balls[v.SHARE_U + i],
        int(balls[v.NODE_V + i]),
        balls[v.SHARE_V + i],
        int(balls[v.NODE_F + i]),
        balls[v.SHARE_F + i],
        int(balls[v.NODE_T + i]),
        balls[v.SHARE_T + i],
        balls[v.MIRROR + i],
    )


@in_place
def _fly_three(flights, shot, cell, first, balls, flown):
    """Flight of a strike down to three heights, from `first` on the table's last axis, put at `flown`.

    Not mirrored; sums as `air.fly` does, to the bit.
    """
    shot, first = np.uintp(shot), np.uintp(first)
    for j in range(FLOWN_WIDE):
        balls[flown + np.uintp(j)] = 0.0
    for corner in range(4):  # of the wind; most days have one or two
        du, dv = corner & 1, corner >> 1
        share = (cell.wu if du else 1.0 - cell.wu) * (cell.wv if dv else 1.0 - cell.wv)
        if share > 0.0:
            at_u, at_v = np.uintp(cell.u + du), np.uintp(cell.v + dv)
            for j in range(FLOWN_WIDE):
                i = np.uintp(j)
                balls[flown + i] += share * column_of_flight(flights, shot, at_u, at_v, cell, first + i)


@in_place
def _read(balls, i, flown):
    """One of the flights of a ball in the room, at `flown`."""
    mirror = balls[v.MIRROR + i]
    return (
        balls[flown],
        mirror * balls[flown + np.uintp(1)],
        balls[flown + np.uintp(2)],
        mirror * balls[flown + np.uintp(3)],
        balls[flown + np.uintp(4)],
        balls[flown + np.uintp(5)],
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


@in_place
def _height_under(ground, balls, i, along, side):
    """Height of the ground under a place so far along a ball's start line and to its right [yd]."""
    line_x, line_y = balls[v.LINE_X + i], balls[v.LINE_Y + i]
    x, y = balls[v.FROM_X + i], balls[v.FROM_Y + i]
    return height_at(ground, x + along * line_x + side * line_y, y + along * line_y - side * line_x)


@in_place
def _land(ground, strikes, balls, i, flight):
    """Bring a ball down where its flight ends."""
    along, side, v_along, v_side, down, spin = flight
    line_x, line_y = balls[v.LINE_X + i], balls[v.LINE_Y + i]
    landing = Landing(
        balls[v.FROM_X + i] + along * line_x + side * line_y,
        balls[v.FROM_Y + i] + along * line_y - side * line_x,
        v_along * line_x + v_side * line_y,
        v_along * line_y - v_side * line_x,
        down,
        spin,
        along,
        side,
        0.0,
    )
    touch_down(ground, strikes, balls, i, landing)


@apart
def _down_a_cliff(ground, flights, balls, i, flight, node, z, gap, step):
    """Flight on from a height node to where the ball's fall to one farther off meets the ground."""
    nodes = int(ground.numbers[c.HEIGHTS])
    cell, shot = _cell(balls, i), int(balls[v.SHOT + i])
    for _ in range(nodes):
        if not 0 <= node + step < nodes:
            break
        node += step
        z += step * ground.numbers[c.HEIGHT_STEP]
        other = fly(flights, shot, cell, node)
        new_gap = _height_under(ground, balls, i, other[0], other[1]) - balls[v.LEVEL + i] - z
        if new_gap * gap <= 0.0:
            return _mix(flight, other, gap / (gap - new_gap) if gap != new_gap else 0.0)
        flight, gap = other, new_gap
    return flight


@in_place
def _come_down_a_hill(game, balls, start, count):
    """Bring `count` balls down from `start` on, where their fall between two height nodes meets the ground.

    It is taken to be straight there.
    """
    ground, flights = game.ground, game.flights
    step_yd = ground.numbers[c.HEIGHT_STEP]
    own = int(ground.numbers[c.HEIGHTS]) // 2  # the node of the ball's own height
    z = ground.numbers[c.HEIGHT_0] + own * step_yd
    wide, middle = np.uintp(FLOWN_WIDE), np.uintp(c.FLIGHT_WIDE)
    for k in range(count):
        i, flown = np.uintp(start + k), v.FLOWN + np.uintp(k) * wide
        _fly_three(flights, int(balls[v.SHOT + i]), _cell(balls, i), (own - 1) * c.FLIGHT_WIDE, balls, flown)
    for k in range(count):
        i, flown = np.uintp(start + k), v.FLOWN + np.uintp(k) * wide + middle
        level = height_at(ground, balls[v.FROM_X + i], balls[v.FROM_Y + i])
        side = balls[v.MIRROR + i] * balls[flown + np.uintp(1)]
        balls[v.LEVEL + i] = level
        balls[v.GAP + i] = _height_under(ground, balls, i, balls[flown], side) - level - z
    for k in range(count):
        i, flown = np.uintp(start + k), v.FLOWN + np.uintp(k) * wide
        gap = balls[v.GAP + i]
        up = gap > 0.0  # the ground is higher there: the ball comes down earlier
        flight = _read(balls, i, flown + middle)
        other = _read(balls, i, flown + middle + middle if up else flown)
        step = 1 if up else -1
        new_z = z + step * step_yd
        new_gap = _height_under(ground, balls, i, other[0], other[1]) - balls[v.LEVEL + i] - new_z
        if new_gap * gap <= 0.0:
            flight = _mix(flight, other, gap / (gap - new_gap) if gap != new_gap else 0.0)
        else:
            flight = _down_a_cliff(ground, flights, balls, i, other, own + step, new_z, new_gap, step)
        _land(ground, game.strikes, balls, i, flight)


@apart
def come_down(game, balls, count):
    """Bring the balls of a volley that were struck down where they land if no tree is in the way.

    Parameters
    ----------
    balls : float64[ROOM]
        As `shot.strike` left it.
    count : int
        Balls of the volley.
    """
    if game.ground.numbers[c.HEIGHTS] > 1.0:
        for start in range(0, count, v.FLYING):
            _come_down_a_hill(game, balls, start, min(count - start, v.FLYING))
        return
    for k in range(count):
        i = np.uintp(k)
        flight = fly(game.flights, int(balls[v.SHOT + i]), _cell(balls, i), 0)
        _land(game.ground, game.strikes, balls, i, flight)
