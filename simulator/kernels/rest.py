"""From the landing to rest: balls of a volley bounce side by side, then run on one after another.

Indices are made unsigned where they are made: numba then leaves out the test for negative ones.
"""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from . import volley as v
from ._compile import apart, in_place
from .bounce import bounce
from .ground import column_of, crossing, is_penalty, row_of

MOST_HOPS = 30
"""A ball that still hops then runs on along the ground: down a steep slope hops need not die out."""

MOST_CELLS = 600
"""After so many cells a ball is at rest, even where the slope is too steep for friction to hold it."""


@apart
def _hop(numbers, balls, count):
    """Bounce every ball that moves off the ground under it, and take it to where it meets that plane again.

    Without a branch: the compiler works several balls at once.
    """
    gravity = numbers[c.GRAVITY]
    two_per_gravity = 2.0 / gravity
    for k in range(count):
        i = np.uintp(k)
        vx, vy, down, spin = balls[v.VX + i], balls[v.VY + i], balls[v.DOWN + i], balls[v.SPIN + i]
        nx, ny, nz = balls[v.NORMAL_X + i], balls[v.NORMAL_Y + i], balls[v.NORMAL_Z + i]
        into = down * nz - vx * nx - vy * ny
        tx, ty, tz = vx + into * nx, vy + into * ny, -down + into * nz
        tangent = math.sqrt(tx * tx + ty * ty + tz * tz)
        moves = tangent > 1e-9
        per = 1.0 / (tangent if moves else 1.0)
        head_x = tx * per if moves else balls[v.TOWARDS_X + i]
        head_y = ty * per if moves else balls[v.TOWARDS_Y + i]
        head_z = tz * per if moves else balls[v.TOWARDS_Z + i]
        along, out, spin = bounce(
            numbers,
            balls[v.TILT + i],
            balls[v.BOUNCY + i],
            balls[v.FRICTION + i],
            tangent,
            max(into, 0.0),
            spin,
        )
        balls[v.TOWARDS_X + i], balls[v.TOWARDS_Y + i], balls[v.TOWARDS_Z + i] = head_x, head_y, head_z
        balls[v.OFF_ALONG + i], balls[v.OFF_UP + i], balls[v.SPIN + i] = along, out, spin
        vx, vy = along * head_x + out * nx, along * head_y + out * ny
        time = out * (two_per_gravity / nz)
        x, y = balls[v.X + i], balls[v.Y + i]
        balls[v.WAS_X + i], balls[v.WAS_Y + i] = x, y
        balls[v.X + i], balls[v.Y + i] = x + vx * time, y + vy * time
        balls[v.VX + i], balls[v.VY + i] = vx, vy
        balls[v.DOWN + i] = gravity * time - along * head_z - out * nz


@in_place
def _meet(ground, balls, old, new):
    """Bring a ball that comes down from place `old` of those that move to `new`, with the ground under it.

    Returns whether it moves on; in water it stays, and runs no more.
    """
    numbers, surface, relief, rows = ground.numbers, ground.surface, ground.relief, ground.rows
    ball, x, y = np.uintp(int(balls[v.BALL + old])), balls[v.X + old], balls[v.Y + old]
    row, column = row_of(numbers, surface, y), column_of(numbers, surface, x)
    code = surface[row, column]
    fate = rows[code, c.SURFACE_FATE]
    inside = is_penalty(fate)
    if inside and balls[v.INSIDE + ball] == 0.0:
        at_x, at_y = crossing(ground, x, y, balls[v.WAS_X + old], balls[v.WAS_Y + old], False)
        balls[v.ENTRY_X + ball], balls[v.ENTRY_Y + ball] = at_x, at_y
    balls[v.INSIDE + ball] = 1.0 if inside else 0.0
    if fate == c.FATE_PENALTY_WET:
        balls[v.REST_X + ball], balls[v.REST_Y + ball], balls[v.SPEED + ball] = x, y, 0.0
        balls[v.HEAD_X + ball], balls[v.HEAD_Y + ball] = balls[v.TOWARDS_X + old], balls[v.TOWARDS_Y + old]
        return False
    balls[v.NORMAL_X + new], balls[v.NORMAL_Y + new], balls[v.NORMAL_Z + new] = 0.0, 0.0, 1.0
    if relief.shape[1] > 1:
        nz = float(relief[row, column, c.RELIEF_UP])
        balls[v.NORMAL_X + new] = -relief[row, column, c.RELIEF_X] * nz
        balls[v.NORMAL_Y + new] = -relief[row, column, c.RELIEF_Y] * nz
        balls[v.NORMAL_Z + new] = nz
    balls[v.TILT + new] = rows[code, c.SURFACE_TILT]
    balls[v.BOUNCY + new] = rows[code, c.SURFACE_RESTITUTION]
    balls[v.FRICTION + new] = rows[code, c.SURFACE_FRICTION]
    # a ball that came back takes the way it now goes for ahead
    back = balls[v.OFF_ALONG + old] < 0.0
    balls[v.SPIN + new] = -balls[v.SPIN + old] if back else balls[v.SPIN + old]
    if new != old:
        balls[v.BALL + new] = balls[v.BALL + old]
        balls[v.X + new] = balls[v.X + old]
        balls[v.Y + new] = balls[v.Y + old]
        balls[v.VX + new] = balls[v.VX + old]
        balls[v.VY + new] = balls[v.VY + old]
        balls[v.DOWN + new] = balls[v.DOWN + old]
        balls[v.TOWARDS_X + new] = balls[v.TOWARDS_X + old]
        balls[v.TOWARDS_Y + new] = balls[v.TOWARDS_Y + old]
        balls[v.TOWARDS_Z + new] = balls[v.TOWARDS_Z + old]
    return True


@in_place
def _bounce_on(ground, balls, count):
    """Bounce the balls until each runs along the ground, from REST at SPEED; 0 in water."""
    numbers = ground.numbers
    for hops in range(MOST_HOPS + 1):
        moving = np.uintp(0)
        for k in range(count):
            i = np.uintp(k)
            if hops > 0:
                # low skips of a ball that grips are the business of the table of skips; backspin bounces on
                out, spin = balls[v.OFF_UP + i], balls[v.SPIN + i]
                low = out < numbers[c.BOUNCE_LEAST] or (out < numbers[c.BOUNCE_STOP] and spin <= 0.0)
                if low or hops == MOST_HOPS:
                    ball = np.uintp(int(balls[v.BALL + i]))
                    balls[v.REST_X + ball], balls[v.REST_Y + ball] = balls[v.WAS_X + i], balls[v.WAS_Y + i]
                    balls[v.SPEED + ball] = (
                        5.0 / 7.0 * balls[v.OFF_ALONG + i] - 2.0 / 7.0 * numbers[c.BALL_RADIUS] * spin
                    )
                    balls[v.HEAD_X + ball] = balls[v.TOWARDS_X + i]
                    balls[v.HEAD_Y + ball] = balls[v.TOWARDS_Y + i]
                    continue
            if _meet(ground, balls, i, moving):
                moving += np.uintp(1)
        count = int(moving)
        if count == 0:
            break
        _hop(numbers, balls, count)


@apart
def _roll(numbers, balls, count):
    """Take every ball that runs one cell on, or to where it stops.

    Without a branch: the compiler works several balls at once.
    """
    step, pull = numbers[c.RASTER_CELL], numbers[c.ROLL_SLOPE] * numbers[c.GRAVITY]
    for k in range(count):
        i = np.uintp(k)
        slow, squared = balls[v.SLOWS + i], balls[v.SQUARED + i]
        slope_x, slope_y = balls[v.SLOPE_X + i], balls[v.SLOPE_Y + i]
        head_x, head_y = balls[v.TOWARDS_X + i], balls[v.TOWARDS_Y + i]
        on_level = max(balls[v.ON_LEVEL + i] - 2.0 * slow * step, 0.0)
        slow += pull * (slope_x * head_x + slope_y * head_y)
        left = squared - 2.0 * slow * step
        stops = left <= 0.0
        length = squared / (2.0 * slow) if stops else step
        left = 0.0 if stops else left
        x, y = balls[v.X + i], balls[v.Y + i]
        balls[v.WAS_X + i], balls[v.WAS_Y + i] = x, y
        balls[v.X + i], balls[v.Y + i] = x + head_x * length, y + head_y * length
        balls[v.RUN + i] += length
        # the slope's pull across the path turns the ball by pull x way / speed squared; along the path it is
        # in `slow` already
        half = -pull * (slope_y * head_x - slope_x * head_y) * length / (squared + left)
        half = 0.0 if stops else min(max(half, -0.25), 0.25)  # a rotation by half angles: no sine and no root
        per = 1.0 / (1.0 + half * half)
        cos_turn, sin_turn = (1.0 - half * half) * per, 2.0 * half * per
        balls[v.TOWARDS_X + i] = head_x * cos_turn - head_y * sin_turn
        balls[v.TOWARDS_Y + i] = head_y * cos_turn + head_x * sin_turn
        balls[v.SQUARED + i], balls[v.ON_LEVEL + i] = left, min(on_level, left)


@in_place
def _start_run(numbers, balls, ball):
    """A ball on its way along the ground from REST."""
    speed, per_step = balls[v.SPEED + ball], 1.0 / numbers[c.SKIP_STEP]
    head_x, head_y = balls[v.HEAD_X + ball], balls[v.HEAD_Y + ball]
    if speed < 0.0:  # backspin: down and rolling back, without the skips: the table's first column
        head_x, head_y, per_step = -head_x, -head_y, 0.0
    flat = math.sqrt(head_x * head_x + head_y * head_y)
    if flat > 1e-9:
        head_x, head_y = head_x / flat, head_y / flat
    balls[v.BALL + ball], balls[v.SURFACE + ball] = ball, -1.0
    balls[v.X + ball], balls[v.Y + ball] = balls[v.REST_X + ball], balls[v.REST_Y + ball]
    balls[v.TOWARDS_X + ball], balls[v.TOWARDS_Y + ball] = head_x, head_y
    balls[v.SQUARED + ball] = balls[v.ON_LEVEL + ball] = speed * speed
    balls[v.PER_STEP + ball], balls[v.RUN + ball] = per_step, 0.0


@in_place
def _stop(balls, place):
    """Note where a ball that ran has come to rest."""
    ball = np.uintp(int(balls[v.BALL + place]))
    balls[v.REST_X + ball], balls[v.REST_Y + ball] = balls[v.X + place], balls[v.Y + place]
    balls[v.ROLL + ball] = balls[v.RUN + place]
    balls[v.HEAD_X + ball], balls[v.HEAD_Y + ball] = balls[v.TOWARDS_X + place], balls[v.TOWARDS_Y + place]


@in_place
def _look(ground, balls, old, new):
    """Bring a ball that runs from place `old` of those that do to `new`, with the ground under it.

    Returns whether it runs on.
    """
    numbers, surface, relief, rows = ground.numbers, ground.surface, ground.relief, ground.rows
    x, y = balls[v.X + old], balls[v.Y + old]
    row, column = row_of(numbers, surface, y), column_of(numbers, surface, x)
    code = surface[row, column]
    runs = balls[v.SQUARED + old] >= 1e-12
    if float(code) != balls[v.SURFACE + old]:
        balls[v.SURFACE + old] = float(code)
        ball = np.uintp(int(balls[v.BALL + old]))
        inside = is_penalty(rows[code, c.SURFACE_FATE])
        if inside and balls[v.INSIDE + ball] == 0.0:
            balls[v.ENTRY_X + ball], balls[v.ENTRY_Y + ball] = balls[v.WAS_X + old], balls[v.WAS_Y + old]
        balls[v.INSIDE + ball] = 1.0 if inside else 0.0
        runs = runs and rows[code, c.SURFACE_FATE] != c.FATE_PENALTY_WET
    if not runs:
        _stop(balls, old)
        return False
    per_step, on_level = balls[v.PER_STEP + old], balls[v.ON_LEVEL + old]
    skip = ground.skip
    at = min(int(on_level * per_step), skip.shape[1] - 1)
    balls[v.SLOWS + new] = skip[code, np.uintp(at)]
    balls[v.SLOPE_X + new], balls[v.SLOPE_Y + new] = 0.0, 0.0
    if relief.shape[1] > 1:
        balls[v.SLOPE_X + new] = float(relief[row, column, c.RELIEF_X])
        balls[v.SLOPE_Y + new] = float(relief[row, column, c.RELIEF_Y])
    if new != old:
        balls[v.BALL + new], balls[v.SURFACE + new] = balls[v.BALL + old], balls[v.SURFACE + old]
        balls[v.X + new], balls[v.Y + new] = x, y
        balls[v.TOWARDS_X + new] = balls[v.TOWARDS_X + old]
        balls[v.TOWARDS_Y + new] = balls[v.TOWARDS_Y + old]
        balls[v.SQUARED + new], balls[v.ON_LEVEL + new] = balls[v.SQUARED + old], on_level
        balls[v.PER_STEP + new], balls[v.RUN + new] = per_step, balls[v.RUN + old]
    return True


@in_place
def _run_on(ground, balls, count):
    """Skip and roll the balls along the ground to rest, on the slope and across surfaces.

    The last low skips (there can be fifty) and the roll are one run along the ground whose deceleration by
    speed was read off the hop loop itself (tables/skips.py): so a slope, a stream or a change of surface
    meets the ball anywhere on its way.

    That deceleration belongs to a height of skip, and on the level a speed stands for one. Downhill the
    skips die out while the ball stays fast: so the table is read at the speed the ball would have left on
    the level, until it rolls and only rolling friction holds it.
    """
    for ball in range(count):
        _start_run(ground.numbers, balls, np.uintp(ball))
    for _ in range(MOST_CELLS):
        moving = np.uintp(0)
        for k in range(count):
            if _look(ground, balls, np.uintp(k), moving):
                moving += np.uintp(1)
        count = int(moving)
        if count == 0:
            break
        _roll(ground.numbers, balls, count)
    for k in range(count):
        _stop(balls, np.uintp(k))


@in_place
def bring_down(balls, ball, x, y, vx, vy, down, spin):
    """A ball of a volley that comes down at a place, before its first bounce.

    Parameters
    ----------
    balls : float64[ROOM]
        See `volley`.
    ball : int
        Which of the volley.
    x, y : float
        Landing place [yd].
    vx, vy, down : float
        Landing velocity, `down` positive downwards [yd/s].
    spin : float
        Backspin [rad/s].
    """
    i = np.uintp(ball)
    balls[v.BALL + i] = i
    balls[v.X + i], balls[v.Y + i] = x, y
    balls[v.VX + i], balls[v.VY + i], balls[v.DOWN + i], balls[v.SPIN + i] = vx, vy, down, spin
    tangent = math.sqrt(vx * vx + vy * vy)
    head_x, head_y = (vx / tangent, vy / tangent) if tangent > 1e-9 else (0.0, 1.0)
    balls[v.TOWARDS_X + i], balls[v.TOWARDS_Y + i], balls[v.TOWARDS_Z + i] = head_x, head_y, 0.0
    balls[v.OFF_ALONG + i] = 0.0
    # where it lands in a penalty area it has entered that already
    balls[v.INSIDE + i] = 1.0


@apart
def come_to_rest(ground, balls, count):
    """Bounce and run the balls of a volley from their landings to rest, on the slope and across surfaces.

    High hops are played one by one, those of all balls side by side; then each ball runs. Afterwards stand in
    the room, for each: REST_X, REST_Y, where it rests or goes into water; ROLL, the length of its final run;
    HEAD_X, HEAD_Y, the direction of its last movement; and where it entered a penalty area on the ground
    ENTRY_X, ENTRY_Y, the last place outside. What stood there else is left.

    Parameters
    ----------
    balls : float64[ROOM]
        As `bring_down` left it.
    count : int
        Balls of the volley.
    """
    _bounce_on(ground, balls, count)
    _run_on(ground, balls, count)
