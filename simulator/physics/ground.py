"""How the ground takes a bouncing and rolling ball: constants and where they are from.

Bounce law: A. R. Penner, "The run of a golf ball", Can. J. Phys. 80 (2002) 931 (equations from memory,
agreeing with several independent public re-implementations). At impact speed v and angle phi from the
vertical the contact plane tips back against the ball by

    theta = 15.4 deg (v / 18.6 m/s) (phi / 44.4 deg)                    x tilt_scale
    e = 0.510 - 0.0375 n + 0.000903 n^2  (n <= 20 m/s; 0.120 above)      x restitution_scale

with u along and n into that plane. The ball grips if ``2/7 |u + R w| <= mu (1 + e) n`` (w backspin) and
leaves rolling, ``u' = 5/7 u - 2/7 R w``; else it slides, ``u' = u - mu (1 + e) n`` and
``w' = w - 5/2 mu (1 + e) n / R``. At the end it rolls: ``v^2 / (2 mu_r g)`` on the level.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from .aero import GRAVITY_MPS2
from .putting import DEFAULT_STIMP_FT, deceleration_mps2

TILT_RAD = math.radians(15.4)
TILT_SPEED_MPS = 18.6
TILT_ANGLE_RAD = math.radians(44.4)
"""The contact plane tips by TILT_RAD at TILT_SPEED_MPS and TILT_ANGLE_RAD from the vertical (Penner 2002)."""

TILT_MOST_RAD = math.radians(50.0)
"""The contact plane never tips further, nor past square to the ball's path (assumed: the law is linear and would
tip over for a fast ball on soft ground)."""

RESTITUTION = (0.510, -0.0375, 0.000903)
"""Coefficients of 1, n, n^2 with n in m/s (Penner 2002)."""

RESTITUTION_LIMIT_MPS = 20.0
RESTITUTION_FAST = 0.120
"""Above the limit the restitution is constant (Penner 2002)."""

RESTITUTION_MOST = 0.90
"""No scale may bring it above this (assumed; a golf ball dropped on stone keeps less)."""

ROLL_KEEPS_SPEED = 5.0 / 7.0
ROLL_TAKES_SPIN = 2.0 / 7.0
"""Solid sphere, I = 2/5 m r^2, brought to roll by friction: u' = 5/7 u - 2/7 R w."""

SLIDE_SPIN = 5.0 / 2.0
"""m r^2 / I of a solid sphere."""

HOP_LEAST_MPS = 0.25
"""The ball rolls once it would leave the ground slower than this (upwards)."""


@dataclass(frozen=True)
class Ground:
    """One surface: scales of Penner's tilt and restitution, sliding and rolling friction; and its source."""

    tilt_scale: float
    restitution_scale: float
    friction: float
    rolling_friction: float
    source: str
    skips: bool = True
    """Whether a low ball hops on along it (sand takes it at once)."""


_FAIRWAY = Ground(
    1.00, 1.00, 0.40, 0.16, "Penner 2002 as it is, scale 1; run of a tour driver 24 yd (published 20-25)"
)
_ROUGH = Ground(1.15, 0.60, 0.50, 0.45, "assumed scales: a tour driver runs about half as far as on fairway")
_HEAVY = Ground(1.40, 0.35, 0.60, 1.00, "assumed scales: a tour driver runs about 5 yd, an iron under 1")
_SAND = Ground(2.00, 0.10, 0.80, 1.50, "assumed scales: the ball stays where it pitches", skips=False)

GROUNDS: dict[str, Ground] = {
    "ROUGH": _ROUGH,
    "FAIRWAY": _FAIRWAY,
    "TEE": Ground(1.00, 1.00, 0.40, 0.16, "assumed: as fairway"),
    "HEAVY_ROUGH": _HEAVY,
    "BUNKER": _SAND,
    "GREEN": Ground(
        1.00,
        1.00,
        0.40,
        deceleration_mps2(DEFAULT_STIMP_FT) / GRAVITY_MPS2,
        "Penner 2002 bounce; rolls as a putt does at the default Stimpmeter reading",
    ),
    "TREES": Ground(1.15, 0.60, 0.50, 0.45, "assumed: the floor under trees as rough"),
    "DRY_PENALTY": Ground(1.40, 0.35, 0.60, 1.00, "assumed: as heavy rough"),
    "OUT_OF_BOUNDS": Ground(1.15, 0.60, 0.50, 0.45, "assumed: as rough"),
    "PATH": Ground(
        0.50, 1.30, 0.40, 0.06, "assumed: a hard path tips less, gives back more, slows a ball little"
    ),
}
"""By name of surface. Water has none: the ball is gone."""


def rolling_friction_of_green(stimp_ft: float) -> float:
    """Rolling friction of a green of a Stimpmeter reading [ft]: its deceleration over g."""
    return deceleration_mps2(stimp_ft) / GRAVITY_MPS2
