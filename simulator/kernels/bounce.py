"""One impact of a ball on the ground."""

from __future__ import annotations

import math

from . import codes as c
from ._compile import in_place, kernel


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
    restitution = numbers[c.BOUNCE_E0] + normal * (numbers[c.BOUNCE_E1] + normal * numbers[c.BOUNCE_E2])
    restitution = restitution if normal <= numbers[c.BOUNCE_N_CAP] else numbers[c.BOUNCE_E_FLOOR]
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
