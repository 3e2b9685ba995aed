"""THE BORDER: Hole + Player -> the arrays of a Game. Past here there are no objects."""

from __future__ import annotations

import math
import tomllib
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from ..hole.model import Hole
from ..hole.rules import LOCAL_RULE_E5, OPTIONS, Situation, Way
from ..hole.surfaces import LIE_OF, Lie, Surface
from ..kernels import codes as c
from ..kernels.game import Field, Game, Ground
from ..physics import ground as bounce
from ..physics import putting
from ..physics.aero import BALL_RADIUS_M, GRAVITY_MPS2
from ..player.model import Player
from ..units import M_PER_YD
from .airs import flight_air
from .flights import FRACTIONS, TILTS_DEG, FlightTables, flight_tables
from .nodes import COARSE_YD, FINE_YD, Nodes, place_nodes
from .putts import PuttTable, putt_table
from .rasters import Raster, ground_raster
from .shots import Shot, list_shots
from .skips import SKIP_BELOW_YDPS, SKIP_STEP, skip_table
from .strikes import strike_rows

CELL_YD = 1.0
"""Side of a raster cell [yd]."""

HOLE_OUT_SCALE: float = tomllib.loads(
    Path(__file__).with_name("holing_out.toml").read_text(encoding="utf-8")
)["hole_out_scale"]
"""Multiplier of the chance to hole out from off the green, over the bare geometry of ball and hole; assumed
within the bounds that ``simulator/fits/holing_out.py`` states, and fitted there."""

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


@dataclass(frozen=True)
class Bag:
    """What does not depend on the hole: a player's shots, flights and putting today."""

    shots: tuple[Shot, ...]
    first_part: int
    flights: FlightTables
    strikes: np.ndarray
    putts: PuttTable


@dataclass(frozen=True)
class Board:
    """A game ready to be solved, with what is needed to read it back.

    Attributes
    ----------
    game : Game
    bag : Bag
    raster : Raster
    nodes : Nodes
    """

    game: Game
    bag: Bag
    raster: Raster
    nodes: Nodes

    def distance_yd(self, x_yd: float, y_yd: float) -> float:
        """Straight distance from a place to the pin."""
        return math.hypot(self.game.numbers[c.PIN_X] - x_yd, self.game.numbers[c.PIN_Y] - y_yd)

    def allowed(self, lie: int) -> list[int]:
        """Rows of the full shots a lie allows."""
        return [k for k in range(self.bag.first_part) if self.game.strikes[k, lie, c.STRIKE_ALLOWED] > 0.5]

    def longest_part_yd(self, lie: int) -> float:
        """Longest carry a part swing has from a lie."""
        last = self.game.strikes[-1, lie]
        return float(last[c.STRIKE_CARRY] * last[c.STRIKE_FRACTION])


def make_bag(player: Player, threads: int = 1) -> Bag:
    """Shots, flights, strikes and putting of a player, in still air on level ground."""
    shots, first_part = list_shots(player)
    air = flight_air()
    flights = flight_tables(shots, first_part, air, air, threads=threads)
    skill = player.putting
    putts = putt_table(
        skill.angle_sd_deg, skill.distance_sd, angle_growth_deg_per_ft=skill.angle_growth_deg_per_ft
    )
    return Bag(shots, first_part, flights, strike_rows(shots, flights), putts)


def _surface_rows() -> np.ndarray:
    rows = np.zeros((len(Surface), c.SURFACE_COLUMNS))
    for surface in Surface:
        rows[surface, c.SURFACE_FATE] = FATES.get(surface, c.FATE_PLAY)
        rows[surface, c.SURFACE_LIE] = LIE_OF.get(surface, -1)
        ground = bounce.GROUNDS.get(surface.name)
        if ground is not None:
            rows[surface, c.SURFACE_TILT] = ground.tilt_scale
            rows[surface, c.SURFACE_RESTITUTION] = ground.restitution_scale
            rows[surface, c.SURFACE_FRICTION] = ground.friction
    return rows


def _feature_rows(hole: Hole) -> np.ndarray:
    rows = np.zeros((len(hole.features) + 1, c.FEATURE_COLUMNS))
    for k, feature in enumerate(hole.features, start=1):
        rows[k, c.FEATURE_LOST] = feature.lost_chance
        if feature.relief is not None:
            situation = Situation.RED if feature.relief == "red" else Situation.YELLOW
            rows[k, c.FEATURE_LATERAL] = any(o.way is Way.LATERAL for o in OPTIONS[situation])
    return rows


def _lie_rows() -> np.ndarray:
    rows = np.full(len(Lie), c.UNPLAYABLE_NEVER, np.int64)
    for lie, code in UNPLAYABLE.items():
        rows[lie] = code
    return rows


def _relief_numbers(numbers: np.ndarray, hole: Hole) -> None:
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


def _bounce_numbers(numbers: np.ndarray) -> None:
    numbers[c.GRAVITY] = GRAVITY_MPS2 / M_PER_YD
    numbers[c.BALL_RADIUS] = BALL_RADIUS_M / M_PER_YD
    # theta = TILT_RAD (v / TILT_SPEED) (phi / TILT_ANGLE), with v in yd/s
    numbers[c.BOUNCE_TILT] = bounce.TILT_RAD / (bounce.TILT_SPEED_MPS / M_PER_YD * bounce.TILT_ANGLE_RAD)
    e0, e1, e2 = bounce.RESTITUTION
    numbers[c.BOUNCE_E0], numbers[c.BOUNCE_E1] = e0, e1 * M_PER_YD
    numbers[c.BOUNCE_E2] = e2 * M_PER_YD**2
    numbers[c.BOUNCE_N_CAP] = bounce.RESTITUTION_LIMIT_MPS / M_PER_YD
    numbers[c.BOUNCE_E_FLOOR] = bounce.RESTITUTION_FAST
    numbers[c.BOUNCE_E_MOST] = bounce.RESTITUTION_MOST
    numbers[c.BOUNCE_TIP_MOST] = bounce.TILT_MOST_RAD
    numbers[c.BOUNCE_STOP] = SKIP_BELOW_YDPS
    numbers[c.BOUNCE_LEAST] = bounce.HOP_LEAST_MPS / M_PER_YD
    numbers[c.SKIP_STEP] = SKIP_STEP
    numbers[c.ROLL_SLOPE] = putting.SLOPE_SHARE


def _hole_numbers(numbers: np.ndarray) -> None:
    numbers[c.HOLE_HALF_WIDTH] = putting.HOLE_RADIUS_M / M_PER_YD
    slowing = bounce.GROUNDS["GREEN"].rolling_friction * GRAVITY_MPS2
    numbers[c.CAPTURE_PAST] = putting.CAPTURE_LIMIT_MPS**2 / (2.0 * slowing) / M_PER_YD


def make_sketch(
    hole: Hole,
    bag: Bag,
    *,
    coarse_yd: float = COARSE_YD,
    fine_yd: float = FINE_YD,
    cell_yd: float = CELL_YD,
    hole_out_scale: float = HOLE_OUT_SCALE,
) -> Board:
    """The board on which a hole is first searched: the same ground, nodes twice as far apart."""
    return make_board(
        hole,
        bag,
        coarse_yd=2.0 * coarse_yd,
        fine_yd=2.0 * fine_yd,
        cell_yd=cell_yd,
        hole_out_scale=hole_out_scale,
    )


def make_board(
    hole: Hole,
    bag: Bag,
    *,
    coarse_yd: float = COARSE_YD,
    fine_yd: float = FINE_YD,
    cell_yd: float = CELL_YD,
    hole_out_scale: float = HOLE_OUT_SCALE,
) -> Board:
    """Arrays of one hole for one bag, the value map still empty.

    Parameters
    ----------
    coarse_yd, fine_yd, cell_yd : float
        Node spacings and raster cell [yd]; tests refine them.
    hole_out_scale : float
        Multiplier of the chance to hole out from off the green; its fit varies it.
    """
    raster = ground_raster(hole, cell_yd)
    nodes = place_nodes(hole, raster, coarse_yd, fine_yd)
    numbers = np.zeros(c.NUMBERS)
    numbers[c.PIN_X], numbers[c.PIN_Y] = hole.pin.x_yd, hole.pin.y_yd
    numbers[c.RASTER_X0] = raster.x0_yd - 0.5 * raster.cell_yd
    numbers[c.RASTER_Y0] = raster.y0_yd - 0.5 * raster.cell_yd
    numbers[c.RASTER_CELL], numbers[c.RASTER_PER_YD] = raster.cell_yd, 1.0 / raster.cell_yd
    numbers[c.FRACTION_0], numbers[c.FRACTION_STEP] = FRACTIONS[0], FRACTIONS[1] - FRACTIONS[0]
    tilts = np.radians(TILTS_DEG)
    numbers[c.TILT_0], numbers[c.TILT_STEP] = tilts[0], tilts[1] - tilts[0]
    heights = bag.flights.heights_yd
    numbers[c.HEIGHT_0], numbers[c.HEIGHT_STEP] = (
        heights[0],
        heights[1] - heights[0] if heights.size > 1 else 1.0,
    )
    _bounce_numbers(numbers)
    _hole_numbers(numbers)
    numbers[c.HOLE_OUT_SCALE] = hole_out_scale
    _relief_numbers(numbers, hole)
    numbers[c.PUTT_STEP] = bag.putts.root_step
    numbers[c.COARSE_X0], numbers[c.COARSE_Y0] = nodes.coarse.x0_yd, nodes.coarse.y0_yd
    numbers[c.COARSE_STEP] = nodes.coarse.step_yd
    numbers[c.FINE_X0], numbers[c.FINE_Y0] = nodes.fine.x0_yd, nodes.fine.y0_yd
    numbers[c.FINE_STEP] = nodes.fine.step_yd
    numbers[c.GUESS_BASE], numbers[c.GUESS_PER_YD] = FIRST_GUESS
    numbers[c.PART_FIRST], numbers[c.PART_COUNT] = bag.first_part, len(bag.shots) - bag.first_part
    numbers[c.LIE_GREEN], numbers[c.LIE_FAIRWAY], numbers[c.LIE_ROUGH] = Lie.GREEN, Lie.FAIRWAY, Lie.ROUGH
    numbers[c.LIE_GAIN] = LIE_GAIN
    numbers[c.SURFACE_FAIRWAY] = Surface.FAIRWAY
    numbers[c.SIDE] = 1.0
    level = not (raster.height.any() or raster.grad_x.any() or raster.grad_y.any())
    relief = (
        np.zeros((3, 1, 1), np.float32) if level else np.stack([raster.height, raster.grad_x, raster.grad_y])
    )
    putts = np.concatenate([bag.putts.expected[..., None], bag.putts.chances], axis=-1)
    rows = _surface_rows()
    coarse = np.full(nodes.coarse.wanted.shape, math.nan)
    fine = np.full(nodes.fine.wanted.shape, math.nan)
    game = Game(
        ground=Ground(numbers, raster.surface, relief, rows, skip_table(numbers, rows)),
        field=Field(numbers, putts, coarse, fine),
        feature=raster.feature,
        feature_rows=_feature_rows(hole),
        lie_rows=_lie_rows(),
        strikes=bag.strikes,
        flights=bag.flights.flights,
        coarse_plan=np.full((*coarse.shape, c.ACTION_COLUMNS), -2.0, np.float32),
        fine_plan=np.full((*fine.shape, c.ACTION_COLUMNS), -2.0, np.float32),
    )
    return Board(game, bag, raster, nodes)
