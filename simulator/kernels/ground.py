"""What a ball does on the ground: cell look-ups, bounce, run and rest.

Indices are made unsigned where they are made: numba then leaves out the test for negative ones.
"""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import in_place, kernel

MOST_HOPS = 30
"""A ball that still hops then runs on along the ground: down a steep slope hops need not die out."""


@kernel
def column_of(numbers, surface, x):
    """Raster column of a place [yd]; places off the raster take its nearest cell."""
    column = int((x - numbers[c.RASTER_X0]) * numbers[c.RASTER_PER_YD])  # towards zero: clamped anyway
    return np.uintp(min(max(column, 0), surface.shape[1] - 1))


@kernel
def row_of(numbers, surface, y):
    """Raster row of a place [yd]; places off the raster take its nearest cell."""
    row = int((y - numbers[c.RASTER_Y0]) * numbers[c.RASTER_PER_YD])
    return np.uintp(min(max(row, 0), surface.shape[0] - 1))


@kernel
def surface_at(ground, x, y):
    """Surface code of a place."""
    numbers, surface = ground.numbers, ground.surface
    return int(surface[row_of(numbers, surface, y), column_of(numbers, surface, x)])


@kernel
def fate_at(ground, x, y):
    """What happens to a ball that rests at a place."""
    numbers, surface = ground.numbers, ground.surface
    return int(
        ground.rows[surface[row_of(numbers, surface, y), column_of(numbers, surface, x)], c.SURFACE_FATE]
    )


@kernel
def height_at(ground, x, y):
    """Height of the ground [yd]."""
    if ground.relief.shape[1] == 1:
        return 0.0
    numbers, surface = ground.numbers, ground.surface
    return float(ground.relief[row_of(numbers, surface, y), column_of(numbers, surface, x), c.RELIEF_HEIGHT])


@kernel
def is_penalty(fate):
    """Whether a fate is that of a penalty area, wet or dry."""
    return fate == c.FATE_PENALTY_WET or fate == c.FATE_PENALTY_DRY


@kernel
def quick_sine(x):
    """sin x for |x| < 1 by its series to x^9: within 3e-8. Summed in pairs: a chain of products is slow."""
    q = x * x
    low = 1.0 - q * (1.0 / 6.0)
    return x * (low + q * q * ((1.0 / 120.0 - q * (1.0 / 5040.0)) + q * q * (1.0 / 362880.0)))


@kernel
def quick_cosine(x):
    """cos x for |x| < 1 by its series to x^10: within 3e-9."""
    q = x * x
    low = 1.0 - 0.5 * q
    high = 1.0 / 40320.0 - q * (1.0 / 3628800.0)
    return low + q * q * ((1.0 / 24.0 - q * (1.0 / 720.0)) + q * q * high)


@kernel
def steepness(tangent, into):
    """Angle of impact from the vertical, atan(tangent / into) for tangent >= 0 <= into, within 1e-5 rad.

    Polynomial 4.4.49 of Abramowitz and Stegun, "Handbook of Mathematical Functions" (from memory).
    """
    low, high = min(tangent, into), max(tangent, into)
    x = low / max(high, 1e-12)
    q = x * x
    low_terms = 0.9998660 - q * 0.3302995
    angle = x * (low_terms + q * q * ((0.1801410 - q * 0.0851330) + q * q * 0.0208351))
    return angle if tangent <= into else 1.5707963267948966 - angle


@in_place
def bounce(numbers, tilt, bouncy, friction, tangent, into, spin):
    """One impact: speeds along and into the surface [yd/s] and backspin [rad/s] -> after it.

    The plane of contact tips back against the ball, restitution falls with impact speed, and the
    ball leaves rolling where friction can make it, sliding otherwise: Penner, "The run of a golf
    ball", Can. J. Phys. 80 (2002) 931-940 (equations from memory). `tilt`, `bouncy` and `friction`
    are the surface's: scales of the tilt and of the restitution, and the sliding friction.

    Returns
    -------
    tangent, out, spin : float
        Speed along the surface, speed away from it, backspin (negative = topspin).
    """
    speed = math.sqrt(tangent * tangent + into * into)
    steep = steepness(tangent, into)
    # soft ground gives way until it faces the ball squarely, no further
    tip = numbers[c.BOUNCE_TILT] * min(speed, numbers[c.BOUNCE_TIP_SPEED]) * steep * tilt
    tip = min(tip, min(steep, numbers[c.BOUNCE_TIP_MOST]))
    sin_tip, cos_tip = quick_sine(tip), quick_cosine(tip)
    along = tangent * cos_tip - into * sin_tip
    normal = into * cos_tip + tangent * sin_tip
    restitution = numbers[c.BOUNCE_E_FLOOR]
    if normal <= numbers[c.BOUNCE_N_CAP]:
        restitution = numbers[c.BOUNCE_E0] + normal * (numbers[c.BOUNCE_E1] + normal * numbers[c.BOUNCE_E2])
    restitution = min(restitution * bouncy, numbers[c.BOUNCE_E_MOST])
    radius = numbers[c.BALL_RADIUS]
    slip = along + radius * spin
    grip = friction * (1.0 + restitution) * normal
    if 2.0 / 7.0 * abs(slip) <= grip:
        along = 5.0 / 7.0 * along - 2.0 / 7.0 * radius * spin
        spin = -along / radius
    else:
        push = grip if slip > 0.0 else -grip
        along -= push
        spin -= 2.5 * push / radius
    rebound = restitution * normal
    return along * cos_tip - rebound * sin_tip, rebound * cos_tip + along * sin_tip, spin


@kernel
def is_gone(fate, out):
    """Whether a fate is that of a penalty area; with `out`, that of a ball out of bounds."""
    return fate == c.FATE_OUT if out else is_penalty(fate)


@kernel
def crossing(ground, x, y, back_x, back_y, out):
    """Last place before (x, y) that is not gone (`is_gone`) on the straight way from (back_x, back_y)."""
    away_x, away_y = back_x - x, back_y - y
    length = math.sqrt(away_x * away_x + away_y * away_y)
    step = ground.numbers[c.RASTER_CELL]
    steps = int(length / step)
    for k in range(1, steps + 1):
        px, py = x + away_x * (k * step / length), y + away_y * (k * step / length)
        if not is_gone(fate_at(ground, px, py), out):
            return px, py
    return back_x, back_y


@in_place
def _hop(ground, x, y, vx, vy, down, spin):
    """Bounce until the ball runs along the ground.

    Returns
    -------
    x, y, roll, head_x, head_y : float
        Where the run starts, its speed [yd/s] and direction; speed 0 where the ball came down in water.
    entry_x, entry_y, entered
        As in `run_out`.
    """
    numbers, surface, relief, rows = ground.numbers, ground.surface, ground.relief, ground.rows
    level = relief.shape[1] == 1
    gravity = numbers[c.GRAVITY]
    two_per_gravity = 2.0 / gravity
    entry_x, entry_y, entered = x, y, False
    row, column = row_of(numbers, surface, y), column_of(numbers, surface, x)
    code = surface[row, column]
    inside = is_penalty(rows[code, c.SURFACE_FATE])
    tangent, into = math.sqrt(vx * vx + vy * vy), down
    head_x, head_y, head_z = (vx / tangent, vy / tangent, 0.0) if tangent > 1e-9 else (0.0, 1.0, 0.0)
    nx, ny, nz = 0.0, 0.0, 1.0
    hops = 0
    while True:
        if rows[code, c.SURFACE_FATE] == c.FATE_PENALTY_WET:
            return x, y, 0.0, head_x, head_y, entry_x, entry_y, entered
        if not level:  # speeds along and into the local plane, whose upward unit normal is (nx, ny, nz)
            nz = float(relief[row, column, c.RELIEF_UP])
            nx, ny = -relief[row, column, c.RELIEF_X] * nz, -relief[row, column, c.RELIEF_Y] * nz
            into = down * nz - vx * nx - vy * ny
            tx, ty, tz = vx + into * nx, vy + into * ny, -down + into * nz
            tangent = math.sqrt(tx * tx + ty * ty + tz * tz)
            if tangent > 1e-9:
                per = 1.0 / tangent
                head_x, head_y, head_z = tx * per, ty * per, tz * per
        along, out, spin = bounce(
            numbers,
            rows[code, c.SURFACE_TILT],
            rows[code, c.SURFACE_RESTITUTION],
            rows[code, c.SURFACE_FRICTION],
            tangent,
            max(into, 0.0),
            spin,
        )
        # low skips of a ball that grips are the business of the table of skips; backspin bounces on
        hops += 1
        low = out < numbers[c.BOUNCE_LEAST] or (out < numbers[c.BOUNCE_STOP] and spin <= 0.0)
        if low or hops == MOST_HOPS:
            roll = 5.0 / 7.0 * along - 2.0 / 7.0 * numbers[c.BALL_RADIUS] * spin
            return x, y, roll, head_x, head_y, entry_x, entry_y, entered
        old_x, old_y = x, y
        if level:
            way = along * out * two_per_gravity
            x, y = x + head_x * way, y + head_y * way
            tangent, into = along, out
            if along < 0.0:  # came back: the direction is turned by hand
                tangent, head_x, head_y, spin = -along, -head_x, -head_y, -spin
        else:  # until the ball meets the plane again
            vx, vy = along * head_x + out * nx, along * head_y + out * ny
            time = out * (two_per_gravity / nz)
            x, y = x + vx * time, y + vy * time
            down = gravity * time - along * head_z - out * nz
            if along < 0.0:  # came back: the next impact takes the way it now goes for ahead
                spin = -spin
        row, column = row_of(numbers, surface, y), column_of(numbers, surface, x)
        code = surface[row, column]
        now_inside = is_penalty(rows[code, c.SURFACE_FATE])
        if now_inside and not inside:
            entry_x, entry_y = crossing(ground, x, y, old_x, old_y, False)
            entered = True
        inside = now_inside


@in_place
def run_out(ground, x, y, vx, vy, down, spin):
    """Bounce and run from the landing to rest, on the slope and across surfaces.

    High hops are played one by one. The last low skips (there can be fifty) and the roll are one run
    along the ground whose deceleration by speed was read off the hop loop itself (tables/skips.py): so
    a slope, a stream or a change of surface meets the ball anywhere on its way.

    That deceleration belongs to a height of skip, and on the level a speed stands for one. Downhill the
    skips die out while the ball stays fast: so the table is read at the speed the ball would have left on
    the level, until it rolls and only rolling friction holds it.

    Parameters
    ----------
    x, y : float
        Landing place [yd].
    vx, vy, down : float
        Landing velocity, `down` positive downwards [yd/s].
    spin : float
        Backspin [rad/s].

    Returns
    -------
    x, y : float
        Where the ball rests or goes into water [yd].
    entry_x, entry_y : float
        Last place outside a penalty area, meaningful when it entered one on the ground.
    entered : bool
        Whether it did.
    head_x, head_y : float
        Unit direction of the last movement.
    rolled : float
        Length of the final roll [yd].
    """
    numbers, surface, relief, rows = ground.numbers, ground.surface, ground.relief, ground.rows
    skip, per_step = ground.skip, 1.0 / numbers[c.SKIP_STEP]
    level = relief.shape[1] == 1
    x, y, roll, head_x, head_y, entry_x, entry_y, entered = _hop(ground, x, y, vx, vy, down, spin)
    if roll < 0.0:  # backspin: down and rolling back, without the skips: the table's first column
        roll, head_x, head_y, per_step = -roll, -head_x, -head_y, 0.0
    flat = math.sqrt(head_x * head_x + head_y * head_y)
    if flat > 1e-9:
        head_x, head_y = head_x / flat, head_y / flat
    row, column = row_of(numbers, surface, y), column_of(numbers, surface, x)
    code = surface[row, column]
    inside = is_penalty(rows[code, c.SURFACE_FATE])
    rolled, squared, step = 0.0, roll * roll, numbers[c.RASTER_CELL]
    on_level = squared  # what the speed squared would be on the level, no more than it is
    pull = numbers[c.ROLL_SLOPE] * numbers[c.GRAVITY]
    grad_x, grad_y = 0.0, 0.0
    for _ in range(600):
        if squared < 1e-12:
            break
        slow = skip[code, np.uintp(min(int(on_level * per_step), skip.shape[1] - 1))]
        on_level = max(on_level - 2.0 * slow * step, 0.0)
        if not level:
            grad_x = float(relief[row, column, c.RELIEF_X])
            grad_y = float(relief[row, column, c.RELIEF_Y])
            slow += pull * (grad_x * head_x + grad_y * head_y)
        length, left = step, squared - 2.0 * slow * step
        if left <= 0.0:
            length, left = squared / (2.0 * slow), 0.0
        old_x, old_y = x, y
        x, y = x + head_x * length, y + head_y * length
        rolled += length
        if not level and left > 0.0:
            # the slope's pull across the path turns the ball by pull x way / speed squared; along the path
            # it is in `slow` already
            half = -pull * (grad_y * head_x - grad_x * head_y) * length / (squared + left)
            half = min(max(half, -0.25), 0.25)  # a rotation by half angles: no sine and no root
            per = 1.0 / (1.0 + half * half)
            cos_turn, sin_turn = (1.0 - half * half) * per, 2.0 * half * per
            head_x, head_y = head_x * cos_turn - head_y * sin_turn, head_y * cos_turn + head_x * sin_turn
        squared = left
        on_level = min(on_level, left)
        row, column = row_of(numbers, surface, y), column_of(numbers, surface, x)
        if surface[row, column] != code:
            code = surface[row, column]
            now_inside = is_penalty(rows[code, c.SURFACE_FATE])
            if now_inside and not inside:
                entry_x, entry_y, entered = old_x, old_y, True
            inside = now_inside
            if rows[code, c.SURFACE_FATE] == c.FATE_PENALTY_WET:
                break
    return x, y, entry_x, entry_y, entered, head_x, head_y, rolled
