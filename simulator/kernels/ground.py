"""What a ball does on the ground: cell look-ups, bounce, run and rest."""

from __future__ import annotations

import math

from . import codes as c
from ._compile import kernel


@kernel
def cell_of(game, x, y):
    """Raster row and column of a place [yd]; places off the raster take its nearest cell."""
    numbers = game.numbers
    column = int(math.floor((x - numbers[c.RASTER_X0]) / numbers[c.RASTER_CELL] + 0.5))
    row = int(math.floor((y - numbers[c.RASTER_Y0]) / numbers[c.RASTER_CELL] + 0.5))
    rows, columns = game.surface.shape
    return min(max(row, 0), rows - 1), min(max(column, 0), columns - 1)


@kernel
def surface_at(game, x, y):
    """Surface code of a place."""
    row, column = cell_of(game, x, y)
    return int(game.surface[row, column])


@kernel
def fate_at(game, x, y):
    """What happens to a ball that rests at a place."""
    return int(game.surface_rows[surface_at(game, x, y), c.SURFACE_FATE])


@kernel
def slope_at(game, row, column):
    """Height [yd] and slopes along x and y of a cell."""
    if game.relief.shape[1] == 1:
        return 0.0, 0.0, 0.0
    return (float(game.relief[0, row, column]), float(game.relief[1, row, column]),
            float(game.relief[2, row, column]))


@kernel
def is_penalty(fate):
    """Whether a fate is that of a penalty area, wet or dry."""
    return fate == c.FATE_PENALTY_WET or fate == c.FATE_PENALTY_DRY


@kernel
def bounce(numbers, row, tangent, into, spin):
    """One impact: speeds along and into the surface [yd/s] and backspin [rad/s] -> after it.

    The plane of contact tips back against the ball, restitution falls with impact speed, and the
    ball leaves rolling where friction can make it, sliding otherwise: Penner, "The run of a golf
    ball", Can. J. Phys. 80 (2002) 931-940 (equations from memory). `row` scales the tilt, the
    restitution and the friction by surface.

    Returns
    -------
    tangent, out, spin : float
        Speed along the surface, speed away from it, backspin (negative = topspin).
    """
    speed = math.sqrt(tangent * tangent + into * into)
    steepness = math.atan2(tangent, into)  # from the vertical
    tip = numbers[c.BOUNCE_TILT] * speed * steepness * row[c.SURFACE_TILT]
    sin_tip, cos_tip = math.sin(tip), math.cos(tip)
    along = tangent * cos_tip - into * sin_tip
    normal = into * cos_tip + tangent * sin_tip
    if normal <= numbers[c.BOUNCE_N_CAP]:
        restitution = numbers[c.BOUNCE_E0] + normal * (numbers[c.BOUNCE_E1] + normal * numbers[c.BOUNCE_E2])
    else:
        restitution = numbers[c.BOUNCE_E_FLOOR]
    restitution *= row[c.SURFACE_RESTITUTION]
    radius = numbers[c.BALL_RADIUS]
    slip = along + radius * spin
    grip = row[c.SURFACE_FRICTION] * (1.0 + restitution) * normal
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
def entry_point(game, x, y, back_x, back_y):
    """Last place outside a penalty area on the straight way from (back_x, back_y) to (x, y) inside it."""
    away_x, away_y = back_x - x, back_y - y
    length = math.sqrt(away_x * away_x + away_y * away_y)
    step = game.numbers[c.RASTER_CELL]
    steps = int(length / step)
    for k in range(1, steps + 1):
        px, py = x + away_x * (k * step / length), y + away_y * (k * step / length)
        if not is_penalty(fate_at(game, px, py)):
            return px, py
    return back_x, back_y


@kernel
def run_out(game, x, y, vx, vy, down, spin):
    """Bounce and run from the landing to rest, on the slope and across surfaces.

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
        Last place outside a penalty area, meaningful when it rests in one it did not land in.
    entered : bool
        Whether it entered a penalty area on the ground.
    head_x, head_y : float
        Unit direction of the last movement.
    rolled : float
        Length of the final roll [yd].
    """
    numbers = game.numbers
    gravity = numbers[c.GRAVITY]
    entry_x, entry_y, entered = x, y, False
    row, column = cell_of(game, x, y)
    surface = int(game.surface[row, column])
    inside = is_penalty(int(game.surface_rows[surface, c.SURFACE_FATE]))
    speed = math.sqrt(vx * vx + vy * vy)
    head_x, head_y = (vx / speed, vy / speed) if speed > 1e-9 else (0.0, 1.0)
    roll = 0.0
    for _ in range(30):  # hops
        surface_row = game.surface_rows[surface]
        if surface_row[c.SURFACE_FATE] == c.FATE_PENALTY_WET:
            return x, y, entry_x, entry_y, entered, head_x, head_y, 0.0
        _, grad_x, grad_y = slope_at(game, row, column)
        # speed into and along the local plane; (nx, ny, nz) is its upward unit normal
        nz = 1.0 / math.sqrt(1.0 + grad_x * grad_x + grad_y * grad_y)
        nx, ny = -grad_x * nz, -grad_y * nz
        into = down * nz - vx * nx - vy * ny
        tx, ty, tz = vx + into * nx, vy + into * ny, -down + into * nz
        tangent = math.sqrt(tx * tx + ty * ty + tz * tz)
        if tangent > 1e-9:
            tx, ty, tz = tx / tangent, ty / tangent, tz / tangent
        else:
            tx, ty, tz = head_x, head_y, 0.0
        along, out, spin = bounce(numbers, surface_row, tangent, max(into, 0.0), spin)
        if out < numbers[c.BOUNCE_STOP]:
            roll = 5.0 / 7.0 * along - 2.0 / 7.0 * numbers[c.BALL_RADIUS] * spin
            head_x, head_y = tx, ty
            break
        vx, vy = along * tx + out * nx, along * ty + out * ny
        up = along * tz + out * nz
        # until the ball meets the plane again; the fall below it is gravity's share along the normal
        time = 2.0 * out / (gravity * nz)
        old_x, old_y = x, y
        x, y = x + vx * time, y + vy * time
        down = gravity * time - up
        row, column = cell_of(game, x, y)
        surface = int(game.surface[row, column])
        now_inside = is_penalty(int(game.surface_rows[surface, c.SURFACE_FATE]))
        if now_inside and not inside:
            entry_x, entry_y = entry_point(game, x, y, old_x, old_y)
            entered = True
        inside = now_inside
    if roll < 0.0:
        roll, head_x, head_y = -roll, -head_x, -head_y
    flat = math.sqrt(head_x * head_x + head_y * head_y)
    if flat > 1e-9:
        head_x, head_y = head_x / flat, head_y / flat
    vx, vy = roll * head_x, roll * head_y
    rolled = 0.0
    step = numbers[c.RASTER_CELL]
    for _ in range(400):
        speed = math.sqrt(vx * vx + vy * vy)
        if speed < 1e-6:
            break
        head_x, head_y = vx / speed, vy / speed
        _, grad_x, grad_y = slope_at(game, row, column)
        drag = game.surface_rows[surface, c.SURFACE_ROLL] * gravity
        pull = numbers[c.ROLL_SLOPE] * gravity
        slow = drag + pull * (grad_x * head_x + grad_y * head_y)
        length = step
        if slow > 0.0 and speed * speed <= 2.0 * slow * step:
            length = speed * speed / (2.0 * slow)
        old_x, old_y = x, y
        x, y = x + head_x * length, y + head_y * length
        rolled += length
        squared = speed * speed - 2.0 * slow * length
        fresh = math.sqrt(squared) if squared > 1e-12 else 0.0
        # the slope's pull across the path turns the ball; along the path it is in `slow` already
        across = -pull * (grad_y * head_x - grad_x * head_y)
        turn = across * (2.0 * length / (speed + fresh)) if fresh > 0.0 else 0.0
        vx, vy = fresh * head_x - turn * head_y, fresh * head_y + turn * head_x
        row, column = cell_of(game, x, y)
        surface = int(game.surface[row, column])
        fate = int(game.surface_rows[surface, c.SURFACE_FATE])
        now_inside = is_penalty(fate)
        if now_inside and not inside:
            entry_x, entry_y, entered = old_x, old_y, True
        inside = now_inside
        if fate == c.FATE_PENALTY_WET or fresh == 0.0:
            break
    return x, y, entry_x, entry_y, entered, head_x, head_y, rolled
