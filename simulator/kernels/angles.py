"""Small angles without the mathematics library, whose sine, cosine and arctangent were a tenth of a shot."""

from __future__ import annotations

import math

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
def quick_angle(opposite, adjacent):
    """atan(opposite / adjacent) for opposite >= 0 <= adjacent, within 1.2e-5 rad.

    Polynomial 4.4.47 of Abramowitz and Stegun, "Handbook of Mathematical Functions" (from memory).
    """
    low, high = min(opposite, adjacent), max(opposite, adjacent)
    x = low / max(high, 1e-12)
    q = x * x
    low_terms = 0.9998660 - q * 0.3302995
    angle = x * (low_terms + q * q * ((0.1801410 - q * 0.0851330) + q * q * 0.0208351))
    return angle if opposite <= adjacent else 1.5707963267948966 - angle


@kernel
def quick_arccosine(x):
    """acos x for -1 <= x <= 1 within 3e-8 rad.

    Polynomial 4.4.46 of Abramowitz and Stegun, "Handbook of Mathematical Functions" (from memory).
    """
    y = abs(x)
    q = y * y
    low = (1.5707963050 - 0.2145988016 * y) + q * (0.0889789874 - 0.0501743046 * y)
    high = (0.0308918810 - 0.0170881256 * y) + q * (0.0066700901 - 0.0012624911 * y)
    angle = math.sqrt(1.0 - y) * (low + q * q * high)
    return angle if x >= 0.0 else math.pi - angle


@in_place
def line_to(dx, dy, distance):
    """Unit vector along (dx, dy), which is so long; up the hole where that is next to nothing."""
    if distance < 1e-9:
        return 0.0, 1.0
    return dx / distance, dy / distance


@in_place
def turned_line(x, y, angle):
    """A unit vector turned clockwise by an angle [rad]."""
    if abs(angle) < 1.0:
        sine, cosine = quick_sine(angle), quick_cosine(angle)
    else:
        sine, cosine = math.sin(angle), math.cos(angle)
    return x * cosine + y * sine, y * cosine - x * sine
