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

from ._compile import kernel, table_entry

MAX_STEPS = 400
"""Longest flight in steps; a real one takes about 75."""


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


@kernel
def _acceleration(air, z, vx, vy, vz, spin, nx, ny, nz, wind_side, wind_along):
    share = 1.0
    if air.roughness > 0.0:
        share = math.log(max(z, air.roughness) / air.roughness) / math.log(air.wind_height / air.roughness)
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


@kernel
def between(p0, v0, p1, v1, step, s):
    """Position and velocity at share `s` of a step: the cubic that meets both ends (Hermite)."""
    d = p1 - p0
    a = step * v0
    b = 3.0 * d - step * (2.0 * v0 + v1)
    c = step * (v0 + v1) - 2.0 * d
    return p0 + s * (a + s * (b + s * c)), (a + s * (2.0 * b + 3.0 * c * s)) / step


@kernel
def _fall_through(path, i, step, height):
    """Share of step i at which the ball falls through `height`; (share, whether it was that high)."""
    low, high = 0.0, 1.0
    risen = True
    z0, w0, z1, w1 = path[i, 2], path[i, 5], path[i + 1, 2], path[i + 1, 5]
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


@kernel
def fly(air, speed, launch, spin, tilt, wind_side, wind_along, heights, path, landing):
    """Fly one strike down to each landing height.

    Parameters
    ----------
    air : Air
    speed, launch, spin, tilt : float
        Ball speed [yd/s], launch angle [rad], backspin [rad/s], tilt of the spin axis about the
        line of launch [rad]; a positive tilt curves the ball to the right.
    wind_side, wind_along : float
        Wind velocity to the right of and along the strike's own line [yd/s].
    heights : float64[nh]
        Landing heights above the start [yd], met on the way down.
    path : float64[MAX_STEPS + 1, 6]
        Filled: x, y, z and velocities at every step.
    landing : float64[nh, 6]
        Filled: along, side [yd], v_along, v_side, v_down [yd/s], spin [rad/s]. If the strike never
        gets as high as a landing height the row is that of its highest point, with v_down = 0.

    Returns
    -------
    apex : float
        Greatest height [yd].
    steps : int
        Steps in `path`.
    end_share : float
        Share of the last step at which the lowest landing height is met.
    """
    step = air.step_s
    half = 0.5 * step
    nx = math.cos(tilt)
    ny = math.sin(tilt) * math.sin(launch)
    nz = -math.sin(tilt) * math.cos(launch)
    fade = math.exp(-air.spin_decay * half)
    ratio = spin * air.radius / max(speed, 1e-9)
    blend = min(max((ratio - air.blend_from) / (air.blend_to - air.blend_from), 0.0), 1.0)
    blend = blend * blend * (3.0 - 2.0 * blend)
    steeper = air.land_low + blend * (air.land_high - air.land_low)

    x, y, z = 0.0, 0.0, 0.0
    vx, vy, vz = 0.0, speed * math.cos(launch), speed * math.sin(launch)
    path[0, 0], path[0, 1], path[0, 2], path[0, 3], path[0, 4], path[0, 5] = x, y, z, vx, vy, vz
    left = heights.shape[0]
    lowest = heights[0]
    for j in range(left):
        lowest = min(lowest, heights[j])
        landing[j, 4] = -1.0  # not met yet
    apex = 0.0
    end_share = 1.0
    i = 0
    while i < MAX_STEPS and left > 0:
        w1 = spin * fade
        w2 = w1 * fade
        ax, ay, az = _acceleration(air, z, vx, vy, vz, spin, nx, ny, nz, wind_side, wind_along)
        bvx, bvy, bvz = vx + half * ax, vy + half * ay, vz + half * az
        bx, by, bz = _acceleration(air, z + half * vz, bvx, bvy, bvz, w1, nx, ny, nz, wind_side, wind_along)
        cvx, cvy, cvz = vx + half * bx, vy + half * by, vz + half * bz
        cx, cy, cz = _acceleration(air, z + half * bvz, cvx, cvy, cvz, w1, nx, ny, nz, wind_side, wind_along)
        dvx, dvy, dvz = vx + step * cx, vy + step * cy, vz + step * cz
        dx, dy, dz = _acceleration(air, z + step * cvz, dvx, dvy, dvz, w2, nx, ny, nz, wind_side, wind_along)
        x += step / 6.0 * (vx + 2.0 * (bvx + cvx) + dvx)
        y += step / 6.0 * (vy + 2.0 * (bvy + cvy) + dvy)
        z += step / 6.0 * (vz + 2.0 * (bvz + cvz) + dvz)
        vx += step / 6.0 * (ax + 2.0 * (bx + cx) + dx)
        vy += step / 6.0 * (ay + 2.0 * (by + cy) + dy)
        vz += step / 6.0 * (az + 2.0 * (bz + cz) + dz)
        row = i + 1
        path[row, 0], path[row, 1], path[row, 2] = x, y, z
        path[row, 3], path[row, 4], path[row, 5] = vx, vy, vz
        if vz <= 0.0:
            if path[i, 5] > 0.0 or i == 0:
                s = _fall_through(path, i, step, 1e30)[0]
                apex = max(between(path[i, 2], path[i, 5], z, vz, step, s)[0], 0.0)
            for j in range(heights.shape[0]):
                if landing[j, 4] < 0.0 and z < heights[j]:
                    s, risen = _fall_through(path, i, step, heights[j])
                    _land(
                        path,
                        i,
                        step,
                        s,
                        risen,
                        steeper,
                        spin * math.exp(-air.spin_decay * step * s),
                        landing[j],
                    )
                    left -= 1
                    if heights[j] == lowest:
                        end_share = s
        spin = w2
        i += 1
    for j in range(heights.shape[0]):
        if landing[j, 4] < 0.0:  # out of steps: cannot happen to a golf ball, but leave no rubbish
            _land(path, i - 1, step, 1.0, False, steeper, spin, landing[j])
    return apex, i, end_share


@kernel
def _land(path, i, step, s, risen, steeper, spin, out):
    side, v_side = between(path[i, 0], path[i, 3], path[i + 1, 0], path[i + 1, 3], step, s)
    along, v_along = between(path[i, 1], path[i, 4], path[i + 1, 1], path[i + 1, 4], step, s)
    v_down = 0.0
    if risen:
        v_down = max(-between(path[i, 2], path[i, 5], path[i + 1, 2], path[i + 1, 5], step, s)[1], 0.0)
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
    """`fly` for one strike on a bearing, called from Python; returns the apex [yd] and fills `landing`."""
    path = np.empty((MAX_STEPS + 1, 6))
    sine, cosine = math.sin(bearing), math.cos(bearing)
    return fly(
        air,
        speed,
        launch,
        spin,
        tilt,
        air.wind_x * cosine - air.wind_y * sine,
        air.wind_x * sine + air.wind_y * cosine,
        heights,
        path,
        landing,
    )[0]
