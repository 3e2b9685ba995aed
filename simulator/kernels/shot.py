"""ONE function plays a shot: strike -> flight -> landing -> run -> rest -> rules.

The value solver and the full-sequence simulation both call `play_shot`; nothing else knows the golf.
"""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import inlined, kernel
from .ground import column_of, entry_point, fate_at, height_at, is_penalty, row_of, run_out
from .relief import out_of_bounds, penalty_relief, unplayable
from .value import value_at


@kernel
def intended_shot(numbers, strikes, lie, shot, reach, distance):
    """Row and scale of an action's swing: a full shot is its row; a part swing is found by carry.

    Parameters
    ----------
    shot : float
        Shot row, or PART_SHOT.
    reach : float
        For part swings, intended carry minus the distance to the pin [yd].
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
    first, count = int(numbers[c.PART_FIRST]), int(numbers[c.PART_COUNT])
    carry = max(distance + reach, 1.0)
    row = first + count - 1
    for k in range(first, first + count - 1):
        if strikes[k, lie, c.STRIKE_CARRY] * strikes[k, lie, c.STRIKE_FRACTION] >= carry:
            row = k
            break
    stock = strikes[row, lie, c.STRIKE_CARRY] * strikes[row, lie, c.STRIKE_FRACTION]
    return row, min(carry / max(stock, 1e-6), 1.0)


@kernel
def _corner(flights, shot, b, f, t, h, a, d):
    """Flight at one wind bearing and height node, bilinear in carry fraction (a) and tilt (d)."""
    shot, b, f, t, h = np.uintp(shot), np.uintp(b), np.uintp(f), np.uintp(t), np.uintp(h)
    p, q, r, s = (1.0 - a) * (1.0 - d), a * (1.0 - d), (1.0 - a) * d, a * d
    g, u = f + np.uintp(1), t + np.uintp(1)
    return (
        p * flights[shot, b, f, t, h, 0]
        + q * flights[shot, b, g, t, h, 0]
        + r * flights[shot, b, f, u, h, 0]
        + s * flights[shot, b, g, u, h, 0],
        p * flights[shot, b, f, t, h, 1]
        + q * flights[shot, b, g, t, h, 1]
        + r * flights[shot, b, f, u, h, 1]
        + s * flights[shot, b, g, u, h, 1],
        p * flights[shot, b, f, t, h, 2]
        + q * flights[shot, b, g, t, h, 2]
        + r * flights[shot, b, f, u, h, 2]
        + s * flights[shot, b, g, u, h, 2],
        p * flights[shot, b, f, t, h, 3]
        + q * flights[shot, b, g, t, h, 3]
        + r * flights[shot, b, f, u, h, 3]
        + s * flights[shot, b, g, u, h, 3],
        p * flights[shot, b, f, t, h, 4]
        + q * flights[shot, b, g, t, h, 4]
        + r * flights[shot, b, f, u, h, 4]
        + s * flights[shot, b, g, u, h, 4],
        p * flights[shot, b, f, t, h, 5]
        + q * flights[shot, b, g, t, h, 5]
        + r * flights[shot, b, f, u, h, 5]
        + s * flights[shot, b, g, u, h, 5],
    )


@inlined
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
def fly(numbers, flights, shot, bearing, fraction, tilt, height):
    """Flight of a strike read from the table, linear between its nodes on every axis.

    Parameters
    ----------
    shot : int
        Shot row.
    bearing : float
        Start direction, clockwise from +y [rad]; matters only where the table knows wind.
    fraction : float
        Still-air carry of the strike over the shot's stock carry.
    tilt : float
        Tilt of the spin axis, right positive [rad].
    height : float
        Height of the landing place over the ball [yd].

    Returns
    -------
    along, side, v_along, v_side, v_down, spin : float
        yd, yd/s and rad/s, in the frame of the start direction.
    """
    bearings, heights = flights.shape[1], flights.shape[4]
    a = (fraction - numbers[c.FRACTION_0]) / numbers[c.FRACTION_STEP]
    d = (tilt - numbers[c.TILT_0]) / numbers[c.TILT_STEP]
    a = min(max(a, 0.0), flights.shape[2] - 1.000001)
    d = min(max(d, 0.0), flights.shape[3] - 1.000001)
    f, t = int(a), int(d)
    a, d = a - f, d - t
    b, next_b, wb = 0, 0, 0.0
    if bearings > 1:
        turn = (numbers[c.WIND_BEARING] - bearing) / 6.283185307179586
        place = (turn - math.floor(turn)) * bearings
        b = min(int(place), bearings - 1)
        wb = place - b
        next_b = b + 1 if b + 1 < bearings else 0
    h, wh = 0, 0.0
    if heights > 1:
        place = min(max((height - numbers[c.HEIGHT_0]) / numbers[c.HEIGHT_STEP], 0.0), heights - 1.000001)
        h = int(place)
        wh = place - h
    flight = _corner(flights, shot, b, f, t, h, a, d)
    if wh > 0.0:
        flight = _mix(flight, _corner(flights, shot, b, f, t, h + 1, a, d), wh)
    if wb > 0.0:
        other = _corner(flights, shot, next_b, f, t, h, a, d)
        if wh > 0.0:
            other = _mix(other, _corner(flights, shot, next_b, f, t, h + 1, a, d), wh)
        flight = _mix(flight, other, wb)
    return flight


@kernel
def land(ground, flights, x, y, shot, bearing, fraction, tilt):
    """Landing of a strike: x, y [yd], vx, vy, down [yd/s], spin [rad/s], along, side [yd]."""
    sin_b, cos_b = math.sin(bearing), math.cos(bearing)
    hilly = flights.shape[4] > 1
    level = height_at(ground, x, y) if hilly else 0.0
    height = 0.0
    along, side, v_along, v_side, down, spin = 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
    px, py = x, y
    for _ in range(3 if hilly else 1):  # the landing height depends on the landing place
        along, side, v_along, v_side, down, spin = fly(
            ground.numbers, flights, shot, bearing, fraction, tilt, height
        )
        px, py = x + along * sin_b + side * cos_b, y + along * cos_b - side * sin_b
        if hilly:
            height = height_at(ground, px, py) - level
    return (
        px,
        py,
        v_along * sin_b + v_side * cos_b,
        v_along * cos_b - v_side * sin_b,
        down,
        spin,
        along,
        side,
    )


@kernel
def _flight_entry(ground, x, y, bearing, along, side, px, py):
    """Last place outside a penalty area under a flight that came down inside one.

    The ground track is taken to bend as the square of the way flown.
    """
    sin_b, cos_b = math.sin(bearing), math.cos(bearing)
    step = 2.0 * ground.numbers[c.RASTER_CELL]
    steps = int(along / step)
    back_x, back_y = px, py
    for k in range(1, steps + 1):
        share = 1.0 - k * step / along
        bx = x + along * share * sin_b + side * share * share * cos_b
        by = y + along * share * cos_b - side * share * share * sin_b
        if not is_penalty(fate_at(ground, bx, by)):
            return entry_point(ground, back_x, back_y, bx, by)
        back_x, back_y = bx, by
    return x, y


@kernel
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


@kernel
def play_shot(game, x, y, lie, shot, bearing, scale, replay, mixture, z_speed, z_start, z_tilt, z_lie):
    """Play one shot and settle it by the Rules.

    Parameters
    ----------
    x, y, lie : float, float, int
        Where the ball is.
    shot, bearing, scale : int, float, float
        Shot row, start direction the player means [rad clockwise from +y], part-swing scale.
    replay : float
        Value of playing again from here (stroke and distance).
    mixture : float
        Uniform number: solid or mishit.
    z_speed, z_start, z_tilt, z_lie : float
        Standard normal numbers.

    Returns
    -------
    x, y, lie : float, float, int
        Where the next stroke is played; lie -1 = from the old place.
    cost : float
        Strokes spent, penalties included.
    value : float
        Value of the next place (`replay` for the old one).
    holed : float
        Chance that the ball is in the hole instead.
    lost, lost_cost, lost_x, lost_y, lost_lie, lost_value : float ...
        Chance that the ball is not found instead, and what then follows.
    rest_x, rest_y, surface, feature, land_x, land_y
        Where the ball itself finished, and came down.
    """
    ground, field, strikes = game.ground, game.field, game.strikes
    numbers = ground.numbers
    side = numbers[c.SIDE]
    swing, wide = 1.0 + strikes[shot, lie, c.STRIKE_SD] * z_speed, side
    if mixture < strikes[shot, lie, c.STRIKE_MISHIT_RATE]:
        swing = strikes[shot, lie, c.STRIKE_MISHIT_KEEP] + strikes[shot, lie, c.STRIKE_MISHIT_SD] * z_speed
        wide = side * strikes[shot, lie, c.STRIKE_MISHIT_WIDE]
    swing *= 1.0 + strikes[shot, lie, c.STRIKE_LIE_SD] * z_lie
    fraction = max(scale * strikes[shot, lie, c.STRIKE_FRACTION] * swing, numbers[c.FRACTION_0])
    start = (
        bearing
        + strikes[shot, lie, c.STRIKE_START_BIAS]
        + wide * strikes[shot, lie, c.STRIKE_START_SD] * z_start
    )
    tilt = wide * strikes[shot, lie, c.STRIKE_TILT_SD] * z_tilt
    land_x, land_y, vx, vy, down, spin, along, bend = land(
        ground, game.flights, x, y, shot, start, fraction, tilt
    )
    entry_x, entry_y = x, y
    if is_penalty(fate_at(ground, land_x, land_y)):
        entry_x, entry_y = _flight_entry(ground, x, y, start, along, bend, land_x, land_y)
    rest_x, rest_y, ground_x, ground_y, entered, head_x, head_y, rolled = run_out(
        ground, land_x, land_y, vx, vy, down, spin * strikes[shot, lie, c.STRIKE_SPIN]
    )
    if entered:
        entry_x, entry_y = ground_x, ground_y

    row, column = row_of(numbers, ground.surface, rest_y), column_of(numbers, ground.surface, rest_x)
    surface = int(ground.surface[row, column])
    fate = int(ground.rows[surface, c.SURFACE_FATE])
    feature = int(game.feature[row, column])
    holed, lost, lost_cost, lost_value = 0.0, 0.0, 0.0, 0.0
    lost_x, lost_y, lost_lie = x, y, -1
    if fate == c.FATE_OUT:
        best = out_of_bounds(game, rest_x, rest_y, replay)
    elif is_penalty(fate):
        best = (1e9, x, y, -1, 0.0)
        if fate == c.FATE_PENALTY_DRY:
            in_area = int(ground.rows[surface, c.SURFACE_LIE])
            best = (value_at(field, in_area, rest_x, rest_y), rest_x, rest_y, in_area, 0.0)
        best = penalty_relief(
            game, entry_x, entry_y, game.feature_rows[feature + 1, c.FEATURE_LATERAL] > 0.5, replay, best
        )
    else:
        next_lie = int(ground.rows[surface, c.SURFACE_LIE])
        as_it_lies = value_at(field, next_lie, rest_x, rest_y)
        best = (as_it_lies, rest_x, rest_y, next_lie, 0.0)
        if fate == c.FATE_GREEN:
            holed = hole_out_chance(
                numbers, strikes[shot, lie, c.STRIKE_SIDEWAYS], x, y, rest_x, rest_y, head_x, head_y, rolled
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
    return (
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
    )
