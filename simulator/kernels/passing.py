"""Balls of a volley past the trees: side by side to the first crown, then each through it or down from it."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from . import volley as v
from ._compile import apart, kernel
from .air import cell_of
from .game import Landing
from .touchdown import touch_down
from .trees import NO_HIT, first_branch, wide_cell


@kernel
def bend_of(along, side):
    """How a flight's way over the ground bends, and how far along its line a yard of that way takes it.

    It is taken to bend as the square of the way flown to its landing, `along` and `side`; the second is where
    it bends most, at the end: a stride so much shorter is as long as it may be anywhere.
    """
    along = max(along, 1.0)
    slope = 2.0 * side / along
    return side / (along * along), 1.0 / math.sqrt(1.0 + slope * slope)


@kernel
def walk_to_trees(numbers, clear, balls, count):
    """How far along its start line each flight first comes near a crown: NEAR [yd]; NO_HIT where it does not.

    The way over the ground is crossed in strides as long as the nearest crown is far. A stride waits for the
    look that gives its length: all balls take one, then all the next, and those that are there leave the
    ranks.
    """
    for k in range(count):
        i = np.uintp(k)
        balls[v.WALKS + i], balls[v.WAY + i], balls[v.NEAR + i] = k, 0.0, NO_HIT
        balls[v.BEND + i], balls[v.STRAIGHT + i] = bend_of(balls[v.ALONG + i], balls[v.SIDE + i])
    while count > 0:
        still = np.uintp(0)
        for k in range(count):
            i = np.uintp(int(balls[v.WALKS + np.uintp(k)]))
            way, line_x, line_y = balls[v.WAY + i], balls[v.LINE_X + i], balls[v.LINE_Y + i]
            off = balls[v.BEND + i] * way * way
            x = balls[v.FROM_X + i] + way * line_x + off * line_y
            y = balls[v.FROM_Y + i] + way * line_y - off * line_x
            stride = wide_cell(numbers, clear, x, y)
            if stride <= 0.0:
                balls[v.NEAR + i] = way
            way += stride * balls[v.STRAIGHT + i]
            balls[v.WAY + i], balls[v.WALKS + still] = way, i
            still += np.uintp(1 if stride > 0.0 and way < balls[v.ALONG + i] else 0)
        count = int(still)


@kernel
def _among_trees(game, balls, i):
    """Take a ball that comes near a crown past it, or let it drop from a branch.

    After a hit the ball keeps a uniform share of its remaining carry in a direction of chance, then
    drops. Fitted to published averages by the border's numbers.
    """
    numbers = game.ground.numbers
    x, y, shot = balls[v.FROM_X + i], balls[v.FROM_Y + i], int(balls[v.SHOT + i])
    line_x, line_y, along = balls[v.LINE_X + i], balls[v.LINE_Y + i], balls[v.ALONG + i]
    fraction, tilt = balls[v.FRACTION + i], balls[v.AXIS + i]
    wind_x, wind_y = balls[v.WIND_X + i], balls[v.WIND_Y + i]
    way, side, height = first_branch(
        game,
        x,
        y,
        shot,
        line_x,
        line_y,
        cell_of(numbers, game.flights, fraction, tilt, wind_x, wind_y, line_x, line_y),
        balls[v.NEAR + i],
        along,
        balls[v.BEND + i],
        balls[v.STRAIGHT + i],
        -math.log(balls[v.HIT + i]),
    )
    if way == NO_HIT:
        return
    hit_x, hit_y = x + way * line_x + side * line_y, y + way * line_y - side * line_x
    left = max(along - way, 0.0) * numbers[c.TREE_KEEP] * balls[v.KEEP + i]
    turn = 6.283185307179586 * balls[v.TURN + i]
    head_x, head_y = math.sin(turn), math.cos(turn)
    speed = numbers[c.TREE_SPEED]
    fall = math.sqrt(2.0 * numbers[c.GRAVITY] * max(height, 0.5))
    drop = Landing(
        hit_x + left * head_x,
        hit_y + left * head_y,
        speed * head_x,
        speed * head_y,
        fall,
        0.0,
        way,
        side,
        1.0,
    )
    touch_down(game.ground, game.strikes, balls, i, drop)


@apart
def past_trees(game, balls, count):
    """Take the balls of a volley that were struck past the trees: some drop from a branch on the way.

    Parameters
    ----------
    balls : float64[ROOM]
        As `descent.come_down` left it.
    count : int
        Balls of the volley.
    """
    if game.trees.canopy.shape[0] == 1:
        return
    walk_to_trees(game.ground.numbers, game.trees.clear, balls, count)
    for k in range(count):
        i = np.uintp(k)
        if balls[v.NEAR + i] < NO_HIT:
            _among_trees(game, balls, i)
