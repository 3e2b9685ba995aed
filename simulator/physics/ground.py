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
from dataclasses import dataclass, replace

from .aero import GRAVITY_MPS2
from .putting import DEFAULT_STIMP_FT, deceleration_mps2

TILT_RAD = math.radians(15.4)
TILT_SPEED_MPS = 18.6
TILT_ANGLE_RAD = math.radians(44.4)
"""The contact plane tips by TILT_RAD at TILT_SPEED_MPS and TILT_ANGLE_RAD from the vertical (Penner 2002)."""

TILT_MOST_MPS = 26.8
"""A faster ball tips the plane no more than one of this speed: 60 mph, at which tour drivers land, the
fastest that the law is held against published runs by (assumed: the law is linear in speed, and would stop a
ball that comes in low and fast: downwind a drive would run the shorter, the stronger the wind)."""

TILT_MOST_RAD = math.radians(50.0)
"""The contact plane never tips further, nor past square to the ball's path (assumed: the law is linear and
would tip over for a fast ball on soft ground)."""

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

HOP_LEAST_MPS = 0.6
"""The ball rolls once it would leave the ground slower than this (upwards): a hop of 18 mm, about as high as
fairway grass is mown. Chosen so that runs meet the published ones (a tour driver 24.5 yd on medium fairway,
published 20 to 25; an amateur's driver and 3-wood 25.9 and 23.4 yd, published 23.7 and 24.1); with
0.25 m/s, as the law is often stated, the tour driver runs 28.9 yd."""


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


FIRMNESS = {"soft": 0.0, "medium": 0.5, "firm": 1.0}
"""Where the three worded grounds stand on the scale of firmness, 0 to 1 (a scale of this project)."""


def rolling_friction_of_green(stimp_ft: float) -> float:
    """Rolling friction of a green of a Stimpmeter reading [ft]: its deceleration over g."""
    return deceleration_mps2(stimp_ft) / GRAVITY_MPS2


_FAIRWAY_ROWS = (
    Ground(1.25, 0.75, 0.45, 0.22, "tuned to soft tour weeks: a driver runs about 10 yd, an iron a yard or "
           "two (trade reports, second hand)"),
    Ground(1.00, 1.00, 0.40, 0.16, "Penner 2002 as it is; published run of tour drivers: 20 yd (289 total, "
           "269 carry: GolfWRX 2013), 25 yd (299.9, 275: Golf Monthly 2023-12)"),
    Ground(0.75, 1.12, 0.38, 0.12, "tuned to a firm, windy event of 2008: drivers ran 30 yd (high balls) to "
           "57 (low ones), 37 the field's leader (pgatour.com)"),
)  # fmt: skip
_GREEN_ROWS = (
    Ground(1.30, 0.75, 0.40, rolling_friction_of_green(9.0), "assumed scales: a tour 5-iron runs about 3 yd"),
    Ground(1.00, 1.00, 0.40, rolling_friction_of_green(10.5), "Penner 2002 bounce as it is"),
    Ground(
        0.80, 1.10, 0.38, rolling_friction_of_green(12.0), "assumed scales: a tour 5-iron runs about 24 yd"
    ),
)

FIRMNESS_ROWS: dict[str, tuple[Ground, Ground, Ground]] = {
    "FAIRWAY": _FAIRWAY_ROWS,
    "TEE": _FAIRWAY_ROWS,
    "GREEN": _GREEN_ROWS,
}
"""Soft, medium and firm ground of the surfaces whose firmness is known; every other surface has one ground.

A green's rows roll at the Stimpmeter readings its firmness usually goes with, 9, 10.5 and 12 ft (common
practice)."""

_FAIRWAY = _FAIRWAY_ROWS[1]
_ROUGH = Ground(1.15, 0.60, 0.50, 0.45, "assumed scales: a tour driver runs about half as far as on fairway")
_HEAVY = Ground(1.40, 0.35, 0.60, 1.00, "assumed scales: a tour driver runs about 5 yd, an iron under 1")
_SAND = Ground(2.00, 0.10, 0.80, 1.50, "assumed scales: the ball stays where it pitches", skips=False)

GROUNDS: dict[str, Ground] = {
    "ROUGH": _ROUGH,
    "FAIRWAY": _FAIRWAY,
    "TEE": replace(_FAIRWAY, source="assumed: as fairway"),
    "HEAVY_ROUGH": _HEAVY,
    "BUNKER": _SAND,
    "GREEN": replace(
        _GREEN_ROWS[1],
        rolling_friction=rolling_friction_of_green(DEFAULT_STIMP_FT),
        source="Penner 2002 bounce; rolls as a putt does at the default Stimpmeter reading",
    ),
    "TREES": replace(_ROUGH, source="assumed: the floor under trees as rough"),
    "DRY_PENALTY": replace(_HEAVY, source="assumed: as heavy rough"),
    "OUT_OF_BOUNDS": replace(_ROUGH, source="assumed: as rough"),
    "PATH": Ground(
        0.50, 1.30, 0.40, 0.06, "assumed: a hard path tips less, gives back more, slows a ball little"
    ),
}
"""By name of surface, on medium ground. Water has none: the ball is gone."""


def ground_of(name: str, firmness: float = 0.5, stimp_ft: float | None = DEFAULT_STIMP_FT) -> Ground:
    """Ground of a surface at the day's firmness and speed of greens.

    Parameters
    ----------
    name : str
        Name of a surface, a key of `GROUNDS`.
    firmness : float
        0 soft, 0.5 medium, 1 firm; straight lines between. Surfaces without `FIRMNESS_ROWS` do not know it.
    stimp_ft : float, optional
        Stimpmeter reading [ft] above 0, which settles how a ball rolls on a green; None: the reading that
        usually goes with the firmness. The bounce is the firmness's alone.

    Raises
    ------
    ValueError
        A firmness outside 0 to 1, or a reading that is not above 0.
    KeyError
        A surface that has no ground (water).
    """
    if not 0.0 <= firmness <= 1.0:
        raise ValueError(f"firmness {firmness}: 0 to 1 is allowed")
    if stimp_ft is not None and not (math.isfinite(stimp_ft) and stimp_ft > 0.0):
        raise ValueError(f"Stimpmeter reading {stimp_ft} ft: above 0 is allowed")
    ground = GROUNDS[name]
    if name not in FIRMNESS_ROWS:
        return ground
    low, high = FIRMNESS_ROWS[name][:2] if firmness <= 0.5 else FIRMNESS_ROWS[name][1:]
    share = 2.0 * firmness if firmness <= 0.5 else 2.0 * firmness - 1.0

    def between(a: float, b: float) -> float:
        return a + share * (b - a)

    roll = between(low.rolling_friction, high.rolling_friction)
    if name == "GREEN" and stimp_ft is not None:
        roll = rolling_friction_of_green(stimp_ft)
    ends = [row.source for row, part in ((low, 1.0 - share), (high, share)) if part > 0.0]
    return replace(
        ground,
        tilt_scale=between(low.tilt_scale, high.tilt_scale),
        restitution_scale=between(low.restitution_scale, high.restitution_scale),
        friction=between(low.friction, high.friction),
        rolling_friction=roll,
        source=ground.source if firmness == 0.5 else "; between that and: ".join(ends),
    )
