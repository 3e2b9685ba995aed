"""Rows of constants: surfaces, features, lies, crowns, and the numbers of bounce, hole and relief."""

from __future__ import annotations

import numpy as np

from ..conditions import Conditions
from ..hole.model import Hole
from ..hole.rules import LOCAL_RULE_E5, OPTIONS, Situation, Way, situation_of
from ..hole.surfaces import LIE_OF, Lie, Surface
from ..kernels import codes as c
from ..physics import ground as bounce
from ..physics import putting, trees
from ..physics.aero import BALL_RADIUS_M, GRAVITY_MPS2
from ..units import M_PER_YD
from .rasters import Raster
from .skips import SKIP_BELOW_YDPS, SKIP_STEP

DROP_BACK_YD = 1.0
"""A dropped ball is taken to lie this far behind its reference point [yd]: small beside any shot's spread."""

LIE_GAIN = 0.4
"""Most strokes a drop can gain over playing from rough on the spot, its penalty apart. The tour's gap between
fairway and rough is 0.16 to 0.25 (Broadie, Interfaces 42(2), 2012, table 9); amateurs' is smaller."""

FIRST_GUESS = (2.4, 0.007)
"""Strokes to hole out before anything is known: base and per yard, about a 20-handicap's tee shots
(Course Rating System bogey line 2.8 + d / 160). Overwritten by the first sweep."""

FATES = {
    Surface.GREEN: c.FATE_GREEN,
    Surface.WATER: c.FATE_PENALTY_WET,
    Surface.DRY_PENALTY: c.FATE_PENALTY_DRY,
    Surface.OUT_OF_BOUNDS: c.FATE_OUT,
}

UNPLAYABLE = {
    Lie.HEAVY_ROUGH: c.UNPLAYABLE_GENERAL,
    Lie.TREES: c.UNPLAYABLE_GENERAL,
    Lie.BUNKER: c.UNPLAYABLE_SAND,
}
"""Lies from which an unplayable ball is worth a look. From the others a stroke at the ball always costs less
than a penalty; in a penalty area Rule 19 does not apply."""


def day_grounds(conditions: Conditions) -> dict[Surface, bounce.Ground]:
    """Ground of every surface today; water has none."""
    found = {}
    for surface in Surface:
        if surface.name in bounce.GROUNDS:
            firmness = conditions.firmness_of(surface.name)
            found[surface] = bounce.ground_of(surface.name, firmness, conditions.stimp_ft)
    return found


def surface_rows(grounds: dict[Surface, bounce.Ground]) -> np.ndarray:
    """float64[surfaces, SURFACE_COLUMNS]."""
    rows = np.zeros((len(Surface), c.SURFACE_COLUMNS))
    for surface in Surface:
        rows[surface, c.SURFACE_FATE] = FATES.get(surface, c.FATE_PLAY)
        rows[surface, c.SURFACE_LIE] = LIE_OF.get(surface, -1)
        ground = grounds.get(surface)
        if ground is not None:
            rows[surface, c.SURFACE_TILT] = ground.tilt_scale
            rows[surface, c.SURFACE_RESTITUTION] = ground.restitution_scale
            rows[surface, c.SURFACE_FRICTION] = ground.friction
    return rows


def feature_rows(hole: Hole, raster: Raster) -> np.ndarray:
    """float64[features + 1, FEATURE_COLUMNS]; row 0 is ground nobody drew."""
    rows = np.zeros((len(hole.features) + 1, c.FEATURE_COLUMNS))
    for k, feature in enumerate(hole.features):
        rows[k + 1, c.FEATURE_LOST] = feature.lost_chance
        rows[k + 1, c.FEATURE_PLANE] = max(int(raster.feature_planes[k]), 0)
        if feature.relief is not None:
            options = OPTIONS[situation_of(feature.relief)]
            rows[k + 1, c.FEATURE_LATERAL] = any(option.way is Way.LATERAL for option in options)
    return rows


def lie_rows() -> np.ndarray:
    """int64[lies]: which unplayable-ball options are worth a look."""
    rows = np.full(len(Lie), c.UNPLAYABLE_NEVER, np.int64)
    for lie, code in UNPLAYABLE.items():
        rows[lie] = code
    return rows


def plane_rows(raster: Raster) -> np.ndarray:
    """float64[planes, PLANE_COLUMNS]."""
    rows = np.zeros((len(raster.planes), c.PLANE_COLUMNS))
    rows[:, c.PLANE_SLOPE] = raster.planes[:, 0]
    rows[:, c.PLANE_FALLS_X] = np.sin(raster.planes[:, 1])
    rows[:, c.PLANE_FALLS_Y] = np.cos(raster.planes[:, 1])
    return rows


def bounce_numbers(numbers: np.ndarray) -> None:
    """The bounce law and the run, in yards and seconds."""
    numbers[c.GRAVITY] = GRAVITY_MPS2 / M_PER_YD
    numbers[c.BALL_RADIUS] = BALL_RADIUS_M / M_PER_YD
    # theta = TILT_RAD (v / TILT_SPEED) (phi / TILT_ANGLE), with v in yd/s
    numbers[c.BOUNCE_TILT] = bounce.TILT_RAD / (bounce.TILT_SPEED_MPS / M_PER_YD * bounce.TILT_ANGLE_RAD)
    numbers[c.BOUNCE_TIP_MOST] = bounce.TILT_MOST_RAD
    numbers[c.BOUNCE_TIP_SPEED] = bounce.TILT_MOST_MPS / M_PER_YD
    e0, e1, e2 = bounce.RESTITUTION
    numbers[c.BOUNCE_E0], numbers[c.BOUNCE_E1] = e0, e1 * M_PER_YD
    numbers[c.BOUNCE_E2] = e2 * M_PER_YD**2
    numbers[c.BOUNCE_N_CAP] = bounce.RESTITUTION_LIMIT_MPS / M_PER_YD
    numbers[c.BOUNCE_E_FLOOR] = bounce.RESTITUTION_FAST
    numbers[c.BOUNCE_E_MOST] = bounce.RESTITUTION_MOST
    numbers[c.BOUNCE_STOP] = SKIP_BELOW_YDPS
    numbers[c.BOUNCE_LEAST] = bounce.HOP_LEAST_MPS / M_PER_YD
    numbers[c.SKIP_STEP] = SKIP_STEP
    numbers[c.ROLL_SLOPE] = putting.SLOPE_SHARE
    numbers[c.TREE_KEEP] = trees.KEEP_MOST
    numbers[c.TREE_SPEED] = trees.DROP_SPEED_MPS / M_PER_YD


def hole_numbers(numbers: np.ndarray, green: bounce.Ground) -> None:
    """The hole in the ground and what it holds."""
    numbers[c.HOLE_HALF_WIDTH] = putting.HOLE_RADIUS_M / M_PER_YD
    slowing = green.rolling_friction * GRAVITY_MPS2
    numbers[c.CAPTURE_PAST] = putting.CAPTURE_LIMIT_MPS**2 / (2.0 * slowing) / M_PER_YD


def relief_numbers(numbers: np.ndarray, hole: Hole) -> None:
    """What the Rules charge, from their data."""
    lateral = next(o for o in OPTIONS[Situation.RED] if o.way is Way.LATERAL)
    out_of_sand = next(
        o
        for o in OPTIONS[Situation.UNPLAYABLE_IN_BUNKER]
        if o.way is Way.BACK_ON_LINE and not o.stay_in_bunker
    )
    numbers[c.DROP_BACK] = DROP_BACK_YD
    numbers[c.TWO_CLUBS] = lateral.relief_yd
    numbers[c.PENALTY_STROKES] = lateral.strokes
    numbers[c.SAND_STROKES] = out_of_sand.strokes
    numbers[c.LOCAL_RULE_STROKES] = LOCAL_RULE_E5.strokes if hole.local_rule_e5 else 0.0
