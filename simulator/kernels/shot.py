"""ONE way to play a shot: `strike`, down to its landing (descent.py), past the trees (passing.py), to rest
(rest.py), by the Rules (`settle`).

The value solver and the full-sequence simulation both play volleys of such shots; nothing else knows golf.
"""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from . import volley as v
from ._compile import in_place
from .air import cell_of
from .angles import turned_line
from .descent import note_cell
from .game import Played
from .ground import column_of, crossing, fate_at, is_penalty, row_of
from .pace import pace_of
from .relief import out_of_bounds, penalty_relief, unplayable
from .touchdown import flight_crossing
from .value import value_at


@in_place
def intended_shot(numbers, strikes, lie, shot, reach, distance):
    """Row and scale of an action's swing: a full shot is its row; one of a family is found by carry.

    Parameters
    ----------
    shot : float
        Shot row, or the code of a family; a part swing where there is none (NO_SHOT).
    reach : float
        For a family, intended carry minus the distance to the pin [yd].
    distance : float
        Distance to the pin [yd].

    Returns
    -------
    row : int
    scale : float
        Intended carry over the row's stock carry (1 for a full shot).
    """
    if shot >= 0.0:
        return int(shot), 1.0
    family = 0 if shot < c.PUTT_SHOT else c.FAMILY_WIDE * (int(-shot) - 1)
    first, count = int(numbers[c.FAMILY_FIRST + family]), int(numbers[c.FAMILY_COUNT + family])
    carry = max(distance + reach, 1.0)
    row = first + count - 1
    for k in range(first, first + count - 1):
        if strikes[k, lie, c.STRIKE_REACH] >= carry:
            row = k
            break
    stock = strikes[row, lie, c.STRIKE_REACH]
    return row, min(carry / max(stock, 1e-6), 1.0)


@in_place
def swing_of(game, x, y, lie, shot, aim, reach, distance, to_x, to_y):
    """`intended_shot` from a place; a putt goes by the ground that it has to cross.

    Parameters
    ----------
    aim : float
        Direction the player means [rad clockwise from the pin].
    to_x, to_y : float
        Unit vector towards the pin.
    """
    if shot == c.PUTT_SHOT:
        line_x, line_y = turned_line(to_x, to_y, aim)
        reach = pace_of(game.ground, x, y, line_x, line_y, max(distance + reach, 1.0)) - distance
    return intended_shot(game.ground.numbers, game.strikes, lie, shot, reach, distance)


@in_place
def hole_out_chance(numbers, sideways, from_x, from_y, x, y, head_x, head_y, rolled):
    """Chance that a ball played from off the green and rolled to rest at (x, y) was holed on the way.

    The hole's effective width at the ball's speed over the width of the strip in which this shot could
    as well have rolled; zero unless the last roll passed level with the hole. The strip is half a
    sideways standard deviation either side of the hole: wide enough to keep luck out of the estimate,
    narrow enough that the density is level across it (assumption). The multiplier is fitted to
    published strokes to hole out from 10 and 20 yards.
    """
    dx, dy = x - numbers[c.PIN_X], y - numbers[c.PIN_Y]
    past = dx * head_x + dy * head_y
    if past <= 0.0 or past >= numbers[c.CAPTURE_PAST] or past > rolled:
        return 0.0
    wide = abs(dx * head_y - dy * head_x)
    away_x, away_y = from_x - numbers[c.PIN_X], from_y - numbers[c.PIN_Y]
    strip = 0.5 * sideways * math.sqrt(away_x * away_x + away_y * away_y)
    strip = max(strip, 0.25)
    if wide > strip:
        return 0.0
    # entry speed over the capture limit is the root of (past / limit): constant deceleration
    half_width = numbers[c.HOLE_HALF_WIDTH] * math.sqrt(1.0 - math.sqrt(past / numbers[c.CAPTURE_PAST]))
    return min(numbers[c.HOLE_OUT_SCALE] * half_width / strip, 0.9)


@in_place
def strike(game, balls, ball, x, y, lie, shot, to_x, to_y, aim, scale, luck):
    """Strike a ball of a volley: its start line, and its place in the flight tables (`descent.come_down`).

    Parameters
    ----------
    balls : float64[ROOM]
        See `volley`.
    ball : int
        Which of the volley.
    x, y, lie : float, float, int
        Where the ball is.
    shot, scale : int, float
        Shot row, part-swing scale.
    to_x, to_y, aim : float
        Unit vector towards the pin, and the start direction the player means [rad clockwise from it].
    luck : Luck
    """
    strikes, numbers = game.strikes, game.ground.numbers
    side = numbers[c.SIDE]
    swing, wide = 1.0 + strikes[shot, lie, c.STRIKE_SD] * luck.speed, side
    if luck.mixture < strikes[shot, lie, c.STRIKE_MISHIT_RATE]:
        swing = strikes[shot, lie, c.STRIKE_MISHIT_KEEP] + strikes[shot, lie, c.STRIKE_MISHIT_SD] * luck.speed
        wide = side * strikes[shot, lie, c.STRIKE_MISHIT_WIDE]
    swing *= 1.0 + strikes[shot, lie, c.STRIKE_LIE_SD] * luck.lie
    fraction = max(scale * strikes[shot, lie, c.STRIKE_FRACTION] * swing, numbers[c.FRACTION_0])
    off = strikes[shot, lie, c.STRIKE_START_BIAS] + wide * strikes[shot, lie, c.STRIKE_START_SD] * luck.start
    line_x, line_y = turned_line(to_x, to_y, aim + off)
    tilt = wide * strikes[shot, lie, c.STRIKE_TILT_SD] * luck.tilt
    cell = cell_of(numbers, game.flights, fraction, tilt, luck.wind_x, luck.wind_y, line_x, line_y)
    i = np.uintp(ball)
    note_cell(balls, i, cell)
    balls[v.FROM_X + i], balls[v.FROM_Y + i], balls[v.FROM_LIE + i] = x, y, lie
    balls[v.SHOT + i], balls[v.LINE_X + i], balls[v.LINE_Y + i] = shot, line_x, line_y
    if game.trees.canopy.shape[0] > 1:
        balls[v.FRACTION + i], balls[v.AXIS + i] = fraction, tilt
        balls[v.WIND_X + i], balls[v.WIND_Y + i] = luck.wind_x, luck.wind_y
        balls[v.HIT + i], balls[v.KEEP + i], balls[v.TURN + i] = luck.hit, luck.keep, luck.turn


@in_place
def settle(game, balls, ball, replay):
    """Settle by the Rules a ball of a volley that has come to rest.

    Parameters
    ----------
    balls : float64[ROOM]
        As `come_to_rest` left it.
    ball : int
    replay : float
        Value of playing again from where it was played (stroke and distance).

    Returns
    -------
    Played
    """
    ground, field, strikes = game.ground, game.field, game.strikes
    numbers = ground.numbers
    i = np.uintp(ball)
    x, y, lie = balls[v.FROM_X + i], balls[v.FROM_Y + i], int(balls[v.FROM_LIE + i])
    land_x, land_y = balls[v.LAND_X + i], balls[v.LAND_Y + i]
    rest_x, rest_y = balls[v.REST_X + i], balls[v.REST_Y + i]
    row, column = row_of(numbers, ground.surface, rest_y), column_of(numbers, ground.surface, rest_x)
    surface = int(ground.surface[row, column])
    fate = int(ground.rows[surface, c.SURFACE_FATE])
    feature = int(game.feature[row, column])
    holed, lost, lost_cost, lost_value = 0.0, 0.0, 0.0, 0.0
    lost_x, lost_y, lost_lie = x, y, -1
    if fate == c.FATE_OUT:
        left_x, left_y = rest_x, rest_y  # where it crossed the boundary: the local rule asks
        if numbers[c.LOCAL_RULE_STROKES] > 0.0:
            if fate_at(ground, land_x, land_y) == c.FATE_OUT:
                line_x, line_y = balls[v.LINE_X + i], balls[v.LINE_Y + i]
                along, side = balls[v.ALONG + i], balls[v.SIDE + i]
                left_x, left_y = flight_crossing(
                    ground, x, y, line_x, line_y, along, side, land_x, land_y, True
                )
            else:
                left_x, left_y = crossing(ground, rest_x, rest_y, land_x, land_y, True)
        best = out_of_bounds(game, left_x, left_y, replay)
    elif is_penalty(fate):
        best = (1e9, x, y, -1, 0.0)
        if fate == c.FATE_PENALTY_DRY:
            in_area = int(ground.rows[surface, c.SURFACE_LIE])
            best = (value_at(field, in_area, rest_x, rest_y), rest_x, rest_y, in_area, 0.0)
        lateral = game.feature_rows[feature + 1, c.FEATURE_LATERAL] > 0.5
        best = penalty_relief(game, balls[v.ENTRY_X + i], balls[v.ENTRY_Y + i], lateral, replay, best)
    else:
        next_lie = int(ground.rows[surface, c.SURFACE_LIE])
        if fate == c.FATE_GREEN:
            next_lie += int(game.feature_rows[feature + 1, c.FEATURE_PLANE])
        as_it_lies = value_at(field, next_lie, rest_x, rest_y)
        best = (as_it_lies, rest_x, rest_y, next_lie, 0.0)
        if fate == c.FATE_GREEN:
            holed = hole_out_chance(
                numbers,
                strikes[int(balls[v.SHOT + i]), lie, c.STRIKE_SIDEWAYS],
                x,
                y,
                rest_x,
                rest_y,
                balls[v.HEAD_X + i],
                balls[v.HEAD_Y + i],
                balls[v.ROLL + i],
            )
        elif game.lie_rows[next_lie] != c.UNPLAYABLE_NEVER:
            best = unplayable(game, next_lie, rest_x, rest_y, replay, best)
        lost = game.feature_rows[feature + 1, c.FEATURE_LOST]
        if lost > 0.0:
            gone = out_of_bounds(game, rest_x, rest_y, replay)
            lost_x, lost_y, lost_lie = gone[1], gone[2], gone[3]
            lost_cost, lost_value = 1.0 + gone[4], gone[0] - gone[4]
    total, next_x, next_y, next_lie, penalty = best
    if next_lie < 0:
        next_x, next_y = x, y
    return Played(
        next_x,
        next_y,
        next_lie,
        1.0 + penalty,
        total - penalty,
        holed,
        lost,
        lost_cost,
        lost_x,
        lost_y,
        lost_lie,
        lost_value,
        rest_x,
        rest_y,
        surface,
        feature,
        land_x,
        land_y,
        balls[v.BRANCH + i],
    )
