"""Units: the exact factors, each defined once.

Everything public is in yards (putts: feet), degrees, mph and degrees Fahrenheit or Celsius as
the name says; kernels use yards, seconds and radians. Files may say metres: they are converted
at the edge by exactly 0.9144.
"""

from __future__ import annotations

import math

M_PER_YD = 0.9144
"""Metres in a yard [m/yd], exact by definition (international yard and pound agreement, 1959)."""

YD_PER_M = 1.0 / M_PER_YD
"""Yards in a metre [yd/m]."""

FT_PER_YD = 3.0
"""Feet in a yard [ft/yd], exact by definition."""

MPS_PER_MPH = 0.44704
"""Metres a second in a mile an hour [m/s per mph], exact by definition."""

RADPS_PER_RPM = 0.10471975511965977
"""Radians a second in a revolution a minute, 2 pi / 60."""


def one_turn_deg(angle_deg: float) -> float:
    """An angle within one turn [deg], 0 <= angle < 360.

    The remainder of a number a hair below zero rounds up to the whole turn: it is taken twice.
    """
    return angle_deg % 360.0 % 360.0


def compass_deg(x: float, y: float) -> float:
    """Direction of (x, y), clockwise from +y [deg], 0 <= bearing < 360."""
    return one_turn_deg(math.degrees(math.atan2(x, y)))
