"""The ball and how the air holds it: values and where they are from.

The aerodynamic form (saturating lift, drag that grows with lift, both times a weak Reynolds-number
factor) follows the wind-tunnel table of Bearman & Harvey, "Golf ball aerodynamics", Aeronautical
Quarterly 27 (1976) 112-122, whose least-squares digest for speeds above 20 m/s is
``Cd = 0.2276 + 0.372 S + 0.019 (1e5/Re - 1)``, ``Cl = 0.508 S / (S + 0.187) [1 + 0.11 (1e5/Re - 1)]``.
The four constants were then fitted by least squares to the published tour averages (ball speed,
launch, spin -> carry, apex, landing angle; 46 rows, men's and women's tours, two editions; copied
with their tolerances in ``tests/truth/data/tour_flights.csv``), with weak targets for the published
effects of temperature, altitude and headwind.
"""

from __future__ import annotations

import math

BALL_MASS_KG = 0.04593
"""Greatest mass allowed, 1.620 oz: Equipment Rules of golf (from memory)."""

BALL_DIAMETER_M = 0.04267
"""Least diameter allowed, 1.680 in: Equipment Rules of golf (from memory)."""

BALL_RADIUS_M = BALL_DIAMETER_M / 2.0
BALL_AREA_M2 = math.pi * BALL_RADIUS_M**2

GRAVITY_MPS2 = 9.80665
"""Standard gravity, exact by definition."""

DRAG_AT_NO_SPIN = 0.142
"""cd0 of Cd = (cd0 + cd1 f) h; fitted as said above."""

DRAG_WITH_LIFT = 0.327
"""cd1 of Cd = (cd0 + cd1 f) h; fitted."""

LIFT_LIMIT = 0.512
"""cl of Cl = cl f h; fitted."""

HALF_SPIN_RATIO = 0.158
"""s_half of f = S / (S + s_half), S = w R / |u|; fitted (Bearman & Harvey's own table: 0.187)."""

REYNOLDS_REFERENCE = 1.0e5
"""re_ref of h = (re_ref / Re)^(1/4); the fourth root was fixed before fitting."""

REYNOLDS_LEAST = 3.0e4
"""Below this Reynolds number h is held: no data there."""

SPIN_DECAY_PER_S = 0.04
"""Share of its spin a ball loses a second: 4 %/s, a radar maker's figure of October 2010, quoted at
tutelman.com/golf/ballflight/spinDecay.php (another measurement there: 3.3 %/s)."""

LANDING_STEEPER_LOW_SPIN_DEG = -2.0
LANDING_STEEPER_HIGH_SPIN_DEG = 3.0
"""Added to the landing angle before the bounce: against the 46 rows the model lands 2 deg too steep for
drivers and 3 deg too shallow for all other clubs; with this, what is left is about 1.7 deg rms."""

LANDING_BLEND_SPIN_RATIOS = (0.085, 0.105)
"""Spin ratios at launch, w0 R / v0, between which the two corrections are blended: the tour drivers have
0.072-0.091, every other club 0.088 and more."""

STEP_S = 0.1
"""Runge-Kutta step: against 0.0025 s it moves the carry by < 0.001 yd."""
