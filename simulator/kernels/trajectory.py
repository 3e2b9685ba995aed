"""Ball flight: one strike through the air.

Frame of a strike: struck from the origin along +y, x to the right, z up; yards, seconds, radians.
Equation of motion (drag and lift in proportion to air density and to relative speed squared):

    u = velocity - wind,  a = k |u| (-Cd u + Cl n x u) - g z,   k = rho A / 2m
    S = w R / |u|,  f = S / (S + s_half),  h = (re_ref / Re)^(1/4)
    Cd = (cd0 + cd1 f) h,  Cl = cl f h,  w(t) = w0 exp(-spin_decay t)

The numbers come in with `Air`; where they are from is said in ``simulator/physics/aero.py``.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from ._compile import apart, in_place, kernel, table_entry

MAX_STEPS = 400
"""Longest flight in steps; a real one takes about 75."""

FAN = 32
"""Flights flown side by side at the most. One waits for itself at every operation; several hardly longer."""

# Columns of FAN numbers in the room of a fan. Their starts are constants: so the compiler knows them apart
X, Y, Z, VX, VY, VZ = (np.uintp(FAN * column) for column in range(6))  # at the start of a step
NX, NY, NZ, SHARE = (np.uintp(FAN * column) for column in range(6, 10))  # axis of spin; share of the wind
STAGE_1, STAGE_2, STAGE_3, STAGE_4 = (np.uintp(FAN * column) for column in (10, 16, 22, 28))
UX, UY, UZ, AX, AY, AZ = (np.uintp(FAN * column) for column in range(6))  # of a stage: velocity, acceleration
FAN_ROOM = FAN * 34


class Air(NamedTuple):
    """Air, ball and aerodynamic constants as floats in yards, seconds and radians."""

    drag_per_yd: float  # rho A / 2m [1/yd]
    nu: float  # kinematic viscosity [yd^2/s]
    gravity: float  # [yd/s^2]
    radius: float  # of the ball [yd]
    cd0: float
    cd1: float
    cl: float
    s_half: float
    re_ref: float
    re_min: float
    spin_decay: float  # [1/s]
    wind_x: float  # the wind's velocity (where it blows to), hole frame [yd/s]
    wind_y: float
    wind_height: float  # height the wind is quoted at [yd]; read only if roughness > 0
    roughness: float  # roughness length of the log law [yd]; 0 = the same wind at every height
    land_low: float  # added to the landing angle of low-spin strikes [rad]
    land_high: float  # and of high-spin strikes [rad]
    blend_from: float  # spin ratios at launch between which the two are blended
    blend_to: float
    step_s: float  # Runge-Kutta step [s]


@in_place
def _acceleration(air, share, vx, vy, vz, spin, nx, ny, nz, wind_side, wind_along):
    """Acceleration of a ball where the wind blows at so much of its quoted strength [yd/s2]."""
    ux = vx - share * wind_side
    uy = vy - share * wind_along
    uz = vz
    speed = max(math.sqrt(ux * ux + uy * uy + uz * uz), 1e-9)
    reynolds = max(2.0 * speed * air.radius / air.nu, air.re_min)
    h = math.sqrt(math.sqrt(air.re_ref / reynolds))
    ratio = spin * air.radius / speed
    f = ratio / (ratio + air.s_half)
    drag = air.drag_per_yd * speed * h * (air.cd0 + air.cd1 * f)
    lift = air.drag_per_yd * speed * h * air.cl * f
    return (
        -drag * ux + lift * (ny * uz - nz * uy),
        -drag * uy + lift * (nz * ux - nx * uz),
        -drag * uz + lift * (nx * uy - ny * ux) - air.gravity,
    )


@apart
def _stage(air, room, count, step, spin, wind_side, wind_along, before, here):
    """One stage of a Runge-Kutta step of each flight of a fan: velocity and acceleration written at `here`.

    `step` is how far on from the start of the step the stage is, along velocity and acceleration of the stage
    `before`. The second loop has no branch and calls nothing: the compiler works several flights at once.
    """
    if air.roughness > 0.0:
        quoted = math.log(air.wind_height / air.roughness)
        for k in range(count):
            i = np.uintp(k)
            z = room[Z + i] + step * room[before + UZ + i]
            room[SHARE + i] = math.log(max(z, air.roughness) / air.roughness) / quoted
    for k in range(count):
        i = np.uintp(k)
        vx = room[VX + i] + step * room[before + AX + i]
        vy = room[VY + i] + step * room[before + AY + i]
        vz = room[VZ + i] + step * room[before + AZ + i]
        ax, ay, az = _acceleration(
            air,
            room[SHARE + i],
            vx,
            vy,
            vz,
            spin,
            room[NX + i],
            room[NY + i],
            room[NZ + i],
            wind_side,
            wind_along,
        )
        room[here + UX + i], room[here + UY + i], room[here + UZ + i] = vx, vy, vz
        room[here + AX + i], room[here + AY + i], room[here + AZ + i] = ax, ay, az


@apart
def _sum(room, count, step):
    """Move place and velocity on by the weighted mean of their rates at the four stages."""
    for column in range(6):
        at = np.uintp(
            FAN * column
        )  # the columns of a stage stand in the order of those they are the rates of
        for k in range(count):
            i = at + np.uintp(k)
            one, two, three, four = room[STAGE_1 + i], room[STAGE_2 + i], room[STAGE_3 + i], room[STAGE_4 + i]
            room[i] += step / 6.0 * (one + 2.0 * (two + three) + four)


@kernel
def _advance(air, room, count, spin, fade, wind_side, wind_along):
    """One step of every flight of a fan."""
    step = air.step_s
    half = 0.5 * step
    w1 = spin * fade
    w2 = w1 * fade
    _stage(air, room, count, 0.0, spin, wind_side, wind_along, STAGE_4, STAGE_1)
    _stage(air, room, count, half, w1, wind_side, wind_along, STAGE_1, STAGE_2)
    _stage(air, room, count, half, w1, wind_side, wind_along, STAGE_2, STAGE_3)
    _stage(air, room, count, step, w2, wind_side, wind_along, STAGE_3, STAGE_4)
    _sum(room, count, step)
    return w2


@kernel
def between(p0, v0, p1, v1, step, s):
    """Position and velocity at share `s` of a step: the cubic that meets both ends (Hermite)."""
    d = p1 - p0
    a = step * v0
    b = 3.0 * d - step * (2.0 * v0 + v1)
    c = step * (v0 + v1) - 2.0 * d
    return p0 + s * (a + s * (b + s * c)), (a + s * (2.0 * b + 3.0 * c * s)) / step


@kernel
def _fall_through(path, n, i, step, height):
    """Share of step i at which flight n falls through `height`; (share, whether it was that high)."""
    low, high = 0.0, 1.0
    risen = True
    z0, w0, z1, w1 = path[i, 2, n], path[i, 5, n], path[i + 1, 2, n], path[i + 1, 5, n]
    if w0 > 0.0:  # the apex is inside this step: the fall begins there
        top_low, top_high = 0.0, 1.0
        for _ in range(40):
            low = 0.5 * (top_low + top_high)
            if between(z0, w0, z1, w1, step, low)[1] > 0.0:
                top_low = low
            else:
                top_high = low
    if between(z0, w0, z1, w1, step, low)[0] < height:
        high = low
        risen = False
    s = low
    if risen:
        for _ in range(60):
            z, w = between(z0, w0, z1, w1, step, s)
            if z >= height:
                low = s
            else:
                high = s
            if abs(z - height) < 1e-9 or high - low < 1e-12:
                break
            s = s - (z - height) / (w * step) if w < 0.0 else 0.5 * (low + high)
            if not (low < s < high):
                s = 0.5 * (low + high)
    return s, risen


@apart
def fly_fan(air, speed, launch, spin, tilts, wind_side, wind_along, lowest, room, path):
    """Fly one strike with its spin axis tilted in several ways, side by side, until all are down.

    Parameters
    ----------
    air : Air
    speed, launch, spin : float
        Ball speed [yd/s], launch angle [rad], backspin [rad/s].
    tilts : float64[n]
        Tilts of the spin axis about the line of launch [rad], FAN at the most; a positive tilt curves the
        ball to the right.
    wind_side, wind_along : float
        Wind velocity to the right of and along the strike's own line [yd/s].
    lowest : float
        Height above the start below which a falling ball is down [yd].
    room : float64[FAN_ROOM]
        To work in.
    path : float64[MAX_STEPS + 1, 6, FAN]
        Filled: x, y, z and velocities of each flight at every step.

    Returns
    -------
    int
        Steps in `path`.
    """
    count = tilts.shape[0]
    fade = math.exp(-air.spin_decay * (0.5 * air.step_s))
    for k in range(count):
        i = np.uintp(k)
        room[NX + i] = math.cos(tilts[k])
        room[NY + i] = math.sin(tilts[k]) * math.sin(launch)
        room[NZ + i] = -math.sin(tilts[k]) * math.cos(launch)
        room[X + i], room[Y + i], room[Z + i] = 0.0, 0.0, 0.0
        room[VX + i], room[VY + i], room[VZ + i] = 0.0, speed * math.cos(launch), speed * math.sin(launch)
        room[SHARE + i] = 1.0
        for column in range(6):  # what the first stage reads of the step before, times nothing
            room[STAGE_4 + np.uintp(FAN * column) + i] = 0.0
    steps = 0
    while True:
        flying = False
        for k in range(count):
            i = np.uintp(k)
            path[steps, 0, k], path[steps, 1, k], path[steps, 2, k] = room[X + i], room[Y + i], room[Z + i]
            path[steps, 3, k], path[steps, 4, k], path[steps, 5, k] = room[VX + i], room[VY + i], room[VZ + i]
            flying = flying or room[VZ + i] > 0.0 or room[Z + i] >= lowest
        if steps == MAX_STEPS or not flying:
            return steps
        spin = _advance(air, room, count, spin, fade, wind_side, wind_along)
        steps += 1


@apart
def come_down(air, speed, spin, heights, lowest, steps, n, path, landing):
    """Where flight `n` of a fan comes down to each landing height.

    Parameters
    ----------
    speed, spin : float
        As it was struck.
    heights : float64[nh]
        Landing heights above the start [yd], met on the way down.
    lowest : float
        The lowest of them.
    steps : int
        Steps in `path`.
    landing : float64[nh, 6]
        Filled: along, side [yd], v_along, v_side, v_down [yd/s], spin [rad/s]. If the strike never
        gets as high as a landing height the row is that of its highest point, with v_down = 0.

    Returns
    -------
    apex : float
        Greatest height [yd].
    steps : int
        Steps until it was down.
    end_share : float
        Share of the last step at which the lowest landing height is met.
    """
    step = air.step_s
    fade = math.exp(-air.spin_decay * (0.5 * step))
    ratio = spin * air.radius / max(speed, 1e-9)
    blend = min(max((ratio - air.blend_from) / (air.blend_to - air.blend_from), 0.0), 1.0)
    blend = blend * blend * (3.0 - 2.0 * blend)
    steeper = air.land_low + blend * (air.land_high - air.land_low)
    left = heights.shape[0]
    for j in range(left):
        landing[j, 4] = -1.0  # not met yet
    apex = 0.0
    end_share = 1.0
    i = 0
    while i < steps and left > 0:
        z, vz = path[i + 1, 2, n], path[i + 1, 5, n]
        if vz <= 0.0:
            if path[i, 5, n] > 0.0 or i == 0:
                s = _fall_through(path, n, i, step, 1e30)[0]
                apex = max(between(path[i, 2, n], path[i, 5, n], z, vz, step, s)[0], 0.0)
            for j in range(heights.shape[0]):
                if landing[j, 4] < 0.0 and z < heights[j]:
                    s, risen = _fall_through(path, n, i, step, heights[j])
                    spun = spin * math.exp(-air.spin_decay * step * s)
                    _land(path, n, i, step, s, risen, steeper, spun, landing[j])
                    left -= 1
                    if heights[j] == lowest:
                        end_share = s
        spin = spin * fade * fade
        i += 1
    for j in range(heights.shape[0]):
        if landing[j, 4] < 0.0:  # out of steps: cannot happen to a golf ball, but leave no rubbish
            _land(path, n, i - 1, step, 1.0, False, steeper, spin, landing[j])
    return apex, i, end_share


@kernel
def _land(path, n, i, step, s, risen, steeper, spin, out):
    side, v_side = between(path[i, 0, n], path[i, 3, n], path[i + 1, 0, n], path[i + 1, 3, n], step, s)
    along, v_along = between(path[i, 1, n], path[i, 4, n], path[i + 1, 1, n], path[i + 1, 4, n], step, s)
    v_down = 0.0
    if risen:
        v_down = max(
            -between(path[i, 2, n], path[i, 5, n], path[i + 1, 2, n], path[i + 1, 5, n], step, s)[1], 0.0
        )
        level = math.hypot(v_along, v_side)
        total = math.hypot(level, v_down)
        # the model's landing angles err by a known amount: turned here, the speed kept
        angle = min(max(math.atan2(v_down, level) + steeper, 0.01), 0.5 * math.pi - 0.01)
        if level > 1e-9:
            v_along *= total * math.cos(angle) / level
            v_side *= total * math.cos(angle) / level
        v_down = total * math.sin(angle)
    out[0], out[1], out[2], out[3], out[4], out[5] = along, side, v_along, v_side, v_down, spin


@table_entry
def fly_one(air, speed, launch, spin, tilt, bearing, heights, landing):
    """One strike on a bearing, called from Python; returns its apex [yd], fills `landing` (`come_down`)."""
    path, room, tilts = np.empty((MAX_STEPS + 1, 6, FAN)), np.empty(FAN_ROOM), np.empty(1)
    tilts[0] = tilt
    sine, cosine = math.sin(bearing), math.cos(bearing)
    wind_side, wind_along = air.wind_x * cosine - air.wind_y * sine, air.wind_x * sine + air.wind_y * cosine
    lowest = heights.min()
    steps = fly_fan(air, speed, launch, spin, tilts, wind_side, wind_along, lowest, room, path)
    return come_down(air, speed, spin, heights, lowest, steps, 0, path, landing)[0]
