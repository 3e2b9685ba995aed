"""One impact of a ball on the ground."""

from __future__ import annotations

import math

from . import codes as c
from ._compile import in_place
from .angles import quick_angle, quick_cosine, quick_sine


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
    steep = quick_angle(tangent, into)
    # soft ground gives way until it faces the ball squarely, no further
    tip = numbers[c.BOUNCE_TILT] * min(speed, numbers[c.BOUNCE_TIP_SPEED]) * steep * tilt
    tip = min(tip, min(steep, numbers[c.BOUNCE_TIP_MOST]))
    sin_tip, cos_tip = quick_sine(tip), quick_cosine(tip)
    along = tangent * cos_tip - into * sin_tip
    normal = into * cos_tip + tangent * sin_tip
    restitution = numbers[c.BOUNCE_E0] + normal * (numbers[c.BOUNCE_E1] + normal * numbers[c.BOUNCE_E2])
    floor = numbers[c.BOUNCE_E_FLOOR]  # read for every ball: for some of them it is dearer than the bounce
    restitution = restitution if normal <= numbers[c.BOUNCE_N_CAP] else floor
    restitution = min(restitution * bouncy, numbers[c.BOUNCE_E_MOST])
    radius = numbers[c.BALL_RADIUS]
    slip = along + radius * spin
    grip = friction * (1.0 + restitution) * normal
    # both ways it can leave are worked out and one is taken: a branch here would play one ball at a time
    rolling = 5.0 / 7.0 * along - 2.0 / 7.0 * radius * spin
    push = grip if slip > 0.0 else -grip
    grips = 2.0 / 7.0 * abs(slip) <= grip
    along = rolling if grips else along - push
    spin = -rolling / radius if grips else spin - 2.5 * push / radius
    rebound = restitution * normal
    return along * cos_tip - rebound * sin_tip, rebound * cos_tip + along * sin_tip, spin
