"""Greens and holes: constants of a putt and where they are from."""

from __future__ import annotations

HOLE_RADIUS_M = 0.0540
"""The hole is 4 1/4 in (108 mm) across: Rules of Golf, definition of "hole"."""

CAPTURE_LIMIT_MPS = 1.63
"""Greatest speed at which a ball over the middle of the hole drops, rim contact included: B. W. Holmes,
"Putting: how a golf ball and hole interact", Am. J. Phys. 59 (1991) 129 (value from memory). Off the
middle by x the limit is ``1.63 [1 - (x / R)^2]`` m/s: A. R. Penner, "The physics of putting", Can. J. Phys.
80 (2002) 83 (from memory); so a ball at v drops within ``R sqrt(1 - v / 1.63)`` of the middle."""

STIMP_RELEASE_MPS = 1.829
"""Speed (6.00 ft/s) at which a ball leaves the Stimpmeter's 30 in groove at 20.5 deg (from memory)."""

SLOPE_SHARE = 5.0 / 7.0
"""k of the pull of a slope, ``k g slope``: a rigid sphere rolling without slipping, I = 2/5 m r^2."""

ANGLE_GROWTH_DEG_PER_FT = 0.03
"""Growth of the starting line's error with distance, for everybody: a longer putt breaks more and is read
worse. Least squares with the tour's skill free gives 0.029 (``python -m simulator.fits.putting``); where no
slope is told the tables know none, so the break is in here."""

TYPICAL_SLOPE = 0.0175
"""Slope (rise over run) assumed to be behind putting figures that tell none: holes are cut on 1-3 % (common
practice). A told slope up to this changes what a putt from above, below or the side is worth, not the
average over the directions; beyond it putting is harder on average too."""

READING_SD = 0.13
"""Sd of the slope as read, as a share of the slope: along the putt (pace) and across it (line) alike, each
for itself. Least squares over four figures of the tour, rounded (``python -m simulator.fits.reading``); the
same for everybody, for want of figures for others."""

STEEPEST_SHARE = 0.15
"""Least deceleration, as a share of the level green's, that is reckoned with. Down a steeper slope a ball
hardly stops or not at all; it is then played as on this one (6.7 % at Stimp 10, 4.8 % at Stimp 14), and no
leave is longer than `FURTHEST_LEAVE_FT`."""

FURTHEST_LEAVE_FT = 30.0
"""A ball that runs on stops at the latest this far past the hole [ft] (assumed): no plane is endless."""

M_PER_FT = 0.3048
"""Exact by definition."""

DEFAULT_STIMP_FT = 10.0
"""Common practice: most surveyed greens ran between 7 and 12 ft."""


def deceleration_mps2(stimp_ft: float) -> float:
    """Deceleration of a ball rolling on a level green [m/s^2].

    A Stimpmeter reading is the distance [ft] a ball released at `STIMP_RELEASE_MPS` rolls, so
    ``a = v^2 / (2 S)``.
    """
    return STIMP_RELEASE_MPS**2 / (2.0 * stimp_ft * M_PER_FT)
