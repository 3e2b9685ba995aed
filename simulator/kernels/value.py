"""Reading the value map: strokes to hole out from a place and lie, and the action stored there."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import apart, in_place, kernel
from .angles import quick_arccosine

AIM_APART, REACH_APART = 0.09, 10.0
"""Neighbouring nodes whose aims [rad] and reaches [yd] are no farther apart than this play the same way."""


@in_place
def _putt_place(field, plane, x, y):
    """Where a place on the green is in the putting table.

    Returns
    -------
    t, wt, k, wk : int, float, int, float
        Direction and distance: lower node and share of the way to the next.
    """
    numbers = field.numbers
    dx, dy = x - numbers[c.PIN_X], y - numbers[c.PIN_Y]
    distance = math.sqrt(dx * dx + dy * dy)
    place = math.sqrt(distance) / numbers[c.PUTT_STEP]
    k = min(int(place), field.putts.shape[2] - 2)
    wk = min(place - k, 1.0)
    directions = field.putts.shape[1]
    if directions == 1:
        return 0, 0.0, k, wk
    fall = dx * field.planes[plane, c.PLANE_FALLS_X] + dy * field.planes[plane, c.PLANE_FALLS_Y]
    angle = quick_arccosine(min(max(fall / max(distance, 1e-9), -1.0), 1.0))
    turn = angle / 3.141592653589793 * (directions - 1)
    t = min(int(turn), directions - 2)
    return t, turn - t, k, wk


@kernel
def _putt_read(putts, plane, t, wt, k, wk, column):
    """One column of the putting table, linear in direction and distance."""
    value = putts[plane, t, k, column] * (1.0 - wk) + putts[plane, t, k + 1, column] * wk
    if wt > 0.0:
        other = putts[plane, t + 1, k, column] * (1.0 - wk) + putts[plane, t + 1, k + 1, column] * wk
        value += wt * (other - value)
    return value


@in_place
def putts_at(field, plane, x, y):
    """Expected putts from a place on a green plane."""
    t, wt, k, wk = _putt_place(field, plane, x, y)
    return _putt_read(field.putts, plane, t, wt, k, wk, 0)


@kernel
def putts_drawn(field, plane, x, y, u):
    """Number of putts from a place on a green plane for one uniform number."""
    t, wt, k, wk = _putt_place(field, plane, x, y)
    for putts in range(1, 5):
        if u < _putt_read(field.putts, plane, t, wt, k, wk, putts):
            return putts
    return 5


@kernel
def in_fine(numbers, fine, x, y):
    """Whether a place is read from the fine field around the pin."""
    rows, columns = fine.shape[1], fine.shape[2]
    column = (x - numbers[c.FINE_X0]) * numbers[c.FINE_PER_YD]
    row = (y - numbers[c.FINE_Y0]) * numbers[c.FINE_PER_YD]
    return 0.0 <= column < columns - 1.0 and 0.0 <= row < rows - 1.0


@kernel
def guess(numbers, lie, x, y):
    """A first guess of strokes to hole out, where the map has nothing yet."""
    dx, dy = x - numbers[c.PIN_X], y - numbers[c.PIN_Y]
    worse = 0.0 if lie == numbers[c.LIE_FAIRWAY] else 0.25
    return numbers[c.GUESS_BASE] + worse + numbers[c.GUESS_PER_YD] * math.sqrt(dx * dx + dy * dy)


@in_place
def blend(field, lie, column, row):
    """Bilinear reading of a field at fractional node indices; corners without a value are left out."""
    rows, columns = field.shape[1], field.shape[2]
    column = min(max(column, 0.0), columns - 1.0)
    row = min(max(row, 0.0), rows - 1.0)
    i, j = min(int(column), columns - 2), min(int(row), rows - 2)
    a, b = column - i, row - j
    code, left, low = np.uintp(lie), np.uintp(i), np.uintp(j)
    right, high = left + np.uintp(1), low + np.uintp(1)
    value = (1.0 - b) * ((1.0 - a) * field[code, low, left] + a * field[code, low, right]) + b * (
        (1.0 - a) * field[code, high, left] + a * field[code, high, right]
    )
    if value == value:
        return value
    total, weight = 0.0, 0.0
    for dj in range(2):
        for di in range(2):
            value = field[lie, j + dj, i + di]
            if value == value:
                w = (a if di == 1 else 1.0 - a) * (b if dj == 1 else 1.0 - b)
                total += w * value
                weight += w
    return total / weight if weight > 1e-9 else math.nan


@in_place
def reading(field, lie, x, y):
    """Value of a place and lie off the green by the map; NaN where it has none."""
    numbers = field.numbers
    if in_fine(numbers, field.fine, x, y):
        return blend(
            field.fine,
            lie,
            (x - numbers[c.FINE_X0]) * numbers[c.FINE_PER_YD],
            (y - numbers[c.FINE_Y0]) * numbers[c.FINE_PER_YD],
        )
    return blend(
        field.coarse,
        lie,
        (x - numbers[c.COARSE_X0]) * numbers[c.COARSE_PER_YD],
        (y - numbers[c.COARSE_Y0]) * numbers[c.COARSE_PER_YD],
    )


@in_place
def value_at(field, lie, x, y):
    """Strokes to hole out from a place [yd] and lie, by the value map."""
    numbers = field.numbers
    if lie >= numbers[c.LIE_GREEN]:
        return putts_at(field, lie - int(numbers[c.LIE_GREEN]), x, y)
    value = reading(field, lie, x, y)
    return value if value == value else guess(numbers, lie, x, y)


@in_place
def lie_bound(field, x, y):
    """A value no drop near a place beats: its rough's, less the most a better lie is worth.

    Minus infinity where the map knows no rough there. Saves looking at drops where the ball is
    playable anyway.
    """
    value = reading(field, int(field.numbers[c.LIE_ROUGH]), x, y)
    return value - field.numbers[c.LIE_GAIN] if value == value else -math.inf


@apart
def nearest_plan(field, lie, column, row):
    """Row and column of the node nearest to fractional indices that has a value; -1 where none is near."""
    rows, columns = field.shape[1], field.shape[2]
    column = min(max(column, 0.0), columns - 1.0)
    row = min(max(row, 0.0), rows - 1.0)
    j, i = int(row + 0.5), int(column + 0.5)
    if field[lie, j, i] == field[lie, j, i]:
        return j, i
    best, best_j, best_i = 1e9, -1, -1
    for reach in range(1, 5):  # the nodes around first; farther only where none of them is ground of the lie
        for j in range(max(int(row) - reach + 1, 0), min(int(row) + reach, rows - 1) + 1):
            for i in range(max(int(column) - reach + 1, 0), min(int(column) + reach, columns - 1) + 1):
                if field[lie, j, i] == field[lie, j, i]:
                    apart = (column - i) ** 2 + (row - j) ** 2
                    if apart < best:
                        best, best_j, best_i = apart, j, i
        if best_j >= 0:
            break
    return best_j, best_i


@kernel
def blended_plan(field, plan, lie, column, row):
    """Action at fractional node indices: the nearest node's, its aim and reach blended with its neighbours'.

    Only neighbours that play the same shot on nearly the same line count: between two ways round a tree
    there is no middle way.
    """
    j, i = nearest_plan(field, lie, column, row)
    if j < 0:
        return c.NO_SHOT, 0.0, 0.0
    near = plan[lie, j, i]
    shot, near_aim, near_reach = float(near[0]), float(near[1]), float(near[2])
    a, b = column - i, row - j
    if abs(a) > 0.5 or abs(b) > 0.5:  # beyond the edge of the map, or of the lie's ground
        return shot, near_aim, near_reach
    di, dj = 1 if a > 0.0 else -1, 1 if b > 0.0 else -1
    a, b = abs(a), abs(b)
    rows, columns = field.shape[1], field.shape[2]
    total = (1.0 - a) * (1.0 - b)
    aim, reach = total * near_aim, total * near_reach
    for k in range(3):
        jj, ii, w = j + dj, i, (1.0 - a) * b
        if k == 1:
            jj, ii, w = j, i + di, a * (1.0 - b)
        elif k == 2:
            ii, w = i + di, a * b
        if 0 <= jj < rows and 0 <= ii < columns and plan[lie, jj, ii, 0] == shot:
            other_aim, other_reach = float(plan[lie, jj, ii, 1]), float(plan[lie, jj, ii, 2])
            if abs(other_aim - near_aim) < AIM_APART and abs(other_reach - near_reach) < REACH_APART:
                total += w
                aim += w * other_aim
                reach += w * other_reach
    return shot, aim / total, reach / total


@kernel
def plan_at(game, lie, x, y):
    """Action of the map's plan at a place: shot, aim off the pin [rad], reach [yd].

    Shot NO_SHOT where the map holds none.
    """
    numbers = game.field.numbers
    if in_fine(numbers, game.field.fine, x, y):
        return blended_plan(
            game.field.fine,
            game.fine_plan,
            lie,
            (x - numbers[c.FINE_X0]) * numbers[c.FINE_PER_YD],
            (y - numbers[c.FINE_Y0]) * numbers[c.FINE_PER_YD],
        )
    return blended_plan(
        game.field.coarse,
        game.coarse_plan,
        lie,
        (x - numbers[c.COARSE_X0]) * numbers[c.COARSE_PER_YD],
        (y - numbers[c.COARSE_Y0]) * numbers[c.COARSE_PER_YD],
    )
