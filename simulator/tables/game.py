"""THE BORDER: Hole + Player + Conditions -> the arrays of a Game. Past here there are no objects."""

from __future__ import annotations

import math
import tomllib
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from ..hole.model import Hole
from ..hole.surfaces import Lie, Surface
from ..kernels import codes as c
from ..kernels.game import Field, Game, Ground, Trees
from ..units import M_PER_YD, MPS_PER_MPH
from . import rows
from .bag import Bag, day_wind
from .flights import FRACTIONS, PUTT_SLOWS_YDPS2, TILTS_DEG
from .nodes import FINE_REACH_YD, FINE_YD, Nodes, place_nodes
from .rasters import Raster, ground_raster
from .shade import SHADE_YD, clear_raster, shade_raster
from .skips import skip_table

CELL_YD = 1.0
"""Side of a raster cell [yd]."""

DRAFT_REACH = 1.5
"""How much farther from the pin a draft's fine nodes go than the map's. Where a ball is dropped short of an
island's water the bank is too shallow for nodes 20 yd apart: with 1 it was missed by half of six drafts."""

HOLE_OUT_SCALE: float = tomllib.loads(
    Path(__file__).with_name("holing_out.toml").read_text(encoding="utf-8")
)["hole_out_scale"]
"""Multiplier of the chance to hole out from off the green, over the bare geometry of ball and hole; assumed
within the bounds that ``simulator.fits.levels`` states, and fitted there."""


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
        numbers = self.game.ground.numbers
        return math.hypot(numbers[c.PIN_X] - x_yd, numbers[c.PIN_Y] - y_yd)

    def bearing_rad(self, x_yd: float, y_yd: float) -> float:
        """Direction from a place straight to the pin, clockwise from +y [rad]."""
        numbers = self.game.ground.numbers
        return math.atan2(float(numbers[c.PIN_X]) - x_yd, float(numbers[c.PIN_Y]) - y_yd)

    def allowed(self, lie: int) -> list[int]:
        """Rows of the full shots a lie allows."""
        full = range(self.bag.shots.first_part)
        return [k for k in full if self.game.strikes[k, lie, c.STRIKE_ALLOWED] > 0.5]

    def longest_yd(self, code: float, lie: int) -> float:
        """Longest carry that a family of swings has from a lie, 0 where the lie does not allow it.

        Parameters
        ----------
        code : float
            PART_SHOT, PUNCH_SHOT or PUTT_SHOT.
        """
        last = self.game.strikes[self.family(code)[1] - 1, lie]
        return float(last[c.STRIKE_REACH]) if last[c.STRIKE_ALLOWED] > 0.5 else 0.0

    def part_row(self, code: float, lie: int, carry_yd: float) -> int:
        """Row of a family that plays a swing of a carry: the first to reach it, as the kernel has it.

        The kernel reads the carry off an action, ``distance + reach``, which rounding may leave a hair above
        the carry that was meant, and then the next row plays it: give it the carry of the action.
        """
        first, end = self.family(code)
        enough = self.game.strikes[first:end, lie, c.STRIKE_REACH] >= carry_yd
        return first + (int(np.argmax(enough)) if enough.any() else end - first - 1)

    def family(self, code: float) -> tuple[int, int]:
        """First row of a family, and the row behind its last one."""
        return self.bag.shots.families[int(-code) - 1]


def make_sketch(board: Board, hole: Hole) -> Board:
    """The board on which a hole is first searched: the same game, nodes twice as far apart."""
    return _wider(board, hole, board.nodes.reach_yd)


def make_draft(sketch: Board, hole: Hole) -> Board:
    """The board on which is seen where balls come to: nodes twice as far apart as the sketch's."""
    return _wider(sketch, hole, DRAFT_REACH * sketch.nodes.reach_yd)


def _wider(board: Board, hole: Hole, reach_yd: float) -> Board:
    """The same game with nodes twice as far apart, those near the pin up to `reach_yd` from it."""
    coarse_yd, fine_yd = 2.0 * board.nodes.coarse.step_yd, 2.0 * board.nodes.fine.step_yd
    return with_nodes(board, place_nodes(hole, board.raster, coarse_yd, fine_yd, reach_yd))


def make_board(
    hole: Hole,
    bag: Bag,
    raster: Raster | None = None,
    *,
    nodes: Nodes | None = None,
    coarse_yd: float | None = None,
    fine_yd: float = FINE_YD,
    reach_yd: float = FINE_REACH_YD,
    cell_yd: float = CELL_YD,
    hole_out_scale: float = HOLE_OUT_SCALE,
) -> Board:
    """Arrays of one hole for one bag, the value map still empty.

    Parameters
    ----------
    raster : Raster, optional
        The hole's ground if it is made already (of `cell_yd` otherwise).
    nodes : Nodes, optional
        If they are placed already; else they are placed with the spacings given.
    coarse_yd, fine_yd, reach_yd, cell_yd : float
        Node spacings, how far from the pin the second goes, and raster cell [yd], the first by how wooded the
        hole is; tests refine them.
    hole_out_scale : float
        Multiplier of the chance to hole out from off the green; its fit varies it.
    """
    raster = ground_raster(hole, cell_yd) if raster is None else raster
    if len(raster.crowns) > 0 and bag.flights.tracks.shape[0] == 0:
        raise ValueError("the bag was made without the hole's ground: its flights know no trees")
    numbers = np.zeros(c.NUMBERS)
    numbers[c.PIN_X], numbers[c.PIN_Y] = hole.pin.x_yd, hole.pin.y_yd
    _raster_numbers(numbers, raster)
    _flight_numbers(numbers, bag)
    grounds = rows.day_grounds(bag.conditions)
    rows.bounce_numbers(numbers)
    rows.hole_numbers(numbers, grounds[Surface.GREEN])
    rows.relief_numbers(numbers, hole)
    numbers[c.HOLE_OUT_SCALE] = hole_out_scale
    numbers[c.GUESS_BASE], numbers[c.GUESS_PER_YD] = rows.FIRST_GUESS
    numbers[c.LIE_GREEN], numbers[c.LIE_FAIRWAY] = Lie.GREEN, Lie.FAIRWAY
    numbers[c.LIE_ROUGH], numbers[c.LIE_GAIN] = Lie.ROUGH, rows.LIE_GAIN
    numbers[c.SURFACE_FAIRWAY] = Surface.FAIRWAY
    numbers[c.SIDE] = 1.0
    level = not (raster.height.any() or raster.grad_x.any() or raster.grad_y.any())
    relief = np.zeros((1, 1, c.RELIEF_COLUMNS), np.float32)
    if not level:
        relief = relief_cells(raster.height, raster.grad_x, raster.grad_y)
    surfaces = rows.surface_rows(grounds)
    putts = np.concatenate([bag.putts.expected[..., None], bag.putts.chances], axis=-1)
    empty = np.full((1, 1, 1), math.nan)
    game = Game(
        ground=Ground(numbers, raster.surface, relief, surfaces, skip_table(numbers, surfaces, grounds)),
        field=Field(numbers, np.ascontiguousarray(putts), rows.plane_rows(raster), empty, empty),
        feature=raster.feature,
        feature_rows=rows.feature_rows(hole, raster),
        lie_rows=rows.lie_rows(),
        strikes=bag.strikes,
        flights=bag.flights.packed,
        trees=_trees(numbers, raster, bag),
        coarse_plan=np.zeros((1, 1, 1, c.ACTION_COLUMNS), np.float32),
        fine_plan=np.zeros((1, 1, 1, c.ACTION_COLUMNS), np.float32),
    )
    if nodes is None:
        nodes = place_nodes(hole, raster, coarse_yd, fine_yd, reach_yd)
    return with_nodes(Board(game, bag, raster, nodes), nodes)


def relief_cells(height: np.ndarray, grad_x: np.ndarray, grad_y: np.ndarray) -> np.ndarray:
    """Height, slopes and upward normal of every cell side by side, float32[ny, nx, RELIEF_COLUMNS]."""
    upward = 1.0 / np.sqrt(1.0 + grad_x.astype(float) ** 2 + grad_y.astype(float) ** 2)
    return np.stack([height, grad_x, grad_y, upward], axis=-1).astype(np.float32)


def with_nodes(board: Board, nodes: Nodes) -> Board:
    """The board with empty fields for other nodes of the same hole."""
    old = board.game
    numbers = old.ground.numbers.copy()
    numbers[c.COARSE_X0], numbers[c.COARSE_Y0] = nodes.coarse.x0_yd, nodes.coarse.y0_yd
    numbers[c.COARSE_PER_YD] = 1.0 / nodes.coarse.step_yd
    numbers[c.FINE_X0], numbers[c.FINE_Y0] = nodes.fine.x0_yd, nodes.fine.y0_yd
    numbers[c.FINE_PER_YD] = 1.0 / nodes.fine.step_yd
    coarse, fine = (np.full(grid.wanted.shape, math.nan) for grid in (nodes.coarse, nodes.fine))
    plans = (np.full((*field.shape, c.ACTION_COLUMNS), c.NO_SHOT, np.float32) for field in (coarse, fine))
    game = old._replace(
        ground=old.ground._replace(numbers=numbers),
        field=old.field._replace(numbers=numbers, coarse=coarse, fine=fine),
        coarse_plan=next(plans),
        fine_plan=next(plans),
    )
    return Board(game, board.bag, board.raster, nodes)


def _raster_numbers(numbers: np.ndarray, raster: Raster) -> None:
    numbers[c.RASTER_X0] = raster.x0_yd - 0.5 * raster.cell_yd
    numbers[c.RASTER_Y0] = raster.y0_yd - 0.5 * raster.cell_yd
    numbers[c.RASTER_CELL], numbers[c.RASTER_PER_YD] = raster.cell_yd, 1.0 / raster.cell_yd
    numbers[c.SHADE_PER_YD] = 1.0 / SHADE_YD


def _step(nodes: np.ndarray) -> float:
    return float(nodes[1] - nodes[0]) if nodes.size > 1 else 1.0


def _flight_numbers(numbers: np.ndarray, bag: Bag) -> None:
    """Axes of the flight tables, the wind, the putting table and the rows of the families."""
    numbers[c.FRACTION_0], numbers[c.FRACTION_PER] = FRACTIONS[0], 1.0 / _step(FRACTIONS)
    tilts = np.radians(TILTS_DEG)
    numbers[c.TILT_0], numbers[c.TILT_PER] = tilts[0], 1.0 / _step(tilts)
    heights, winds = bag.flights.heights_yd, bag.flights.winds
    numbers[c.HEIGHT_0], numbers[c.HEIGHT_STEP] = heights[0], _step(heights)
    numbers[c.HEIGHTS] = heights.size
    numbers[c.WIND_RING] = float(winds.ring)
    numbers[c.WIND_U_0], numbers[c.WIND_U_PER] = winds.u[0], 1.0 / _step(winds.u)
    numbers[c.WIND_V_0], numbers[c.WIND_V_PER] = winds.v[0], 1.0 / _step(winds.v)
    wind = bag.conditions.wind
    if wind is not None:
        speed, gust = day_wind(bag.conditions)
        numbers[c.WIND_SPEED] = speed * MPS_PER_MPH / M_PER_YD
        numbers[c.WIND_GUST] = gust * MPS_PER_MPH / M_PER_YD
        numbers[c.WIND_BEARING] = bearing = math.radians(wind.from_deg + 180.0)
        numbers[c.WIND_TOWARDS_X], numbers[c.WIND_TOWARDS_Y] = math.sin(bearing), math.cos(bearing)
        numbers[c.WIND_SWING] = math.radians(wind.swing_deg)
    numbers[c.PUTT_STEP] = bag.putts.root_step
    numbers[c.PUTT_SLOWS] = PUTT_SLOWS_YDPS2
    for family, (first, end) in enumerate(bag.shots.families):
        at = c.FAMILY_WIDE * family
        numbers[c.FAMILY_FIRST + at], numbers[c.FAMILY_COUNT + at] = first, end - first


def _trees(numbers: np.ndarray, raster: Raster, bag: Bag) -> Trees:
    """Crowns of the hole; arrays of one cell where no tree stands."""
    if len(raster.crowns) == 0:
        return Trees(
            np.zeros((1, 1), np.uint8),
            np.zeros((1, 1), np.float32),
            np.zeros((1, 1), np.float32),
            np.zeros((1, c.CROWN_COLUMNS)),
            np.zeros((0, 1, 1, 1, 1, 1, 2), np.float32),
        )
    shade = shade_raster(raster)
    crowns = np.ascontiguousarray(raster.crowns, float)
    return Trees(raster.canopy, shade, clear_raster(shade), crowns, bag.flights.tracks)
