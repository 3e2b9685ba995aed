"""Sense: with every spread shrunk to near zero the map gives the score of perfect play.

Perfect play is found by a search of its own: fewest strokes through the graph of places that the clubs'
carries and runs reach, breadth first, on shapely's outlines; then one putt. The search is made twice, once
granting and once refusing every doubtful shot (an edge within `DOUBT_YD`): where both agree the number of
strokes does not hang on a yard of run.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
import shapely
from small_games import hole_of
from solved import SEED, THREADS, player_named, searched, with_clubs

from simulator import engine
from simulator.hole.model import Hole
from simulator.hole.surfaces import Lie, Surface
from simulator.kernels import codes as c
from simulator.tables.bag import Bag, make_bag
from simulator.tables.game import Board, make_board, make_sketch

TINY = 1e-6
DOUBT_YD = 3.0
GRID_YD = 3.0
"""Places closer than this are one place of the graph."""

TURNS = np.radians(np.arange(-60.0, 60.1, 3.0))
"""Directions tried off the straight line to the pin."""

FEW = engine.Effort(few=16, more=32, near=32, sketch=32, commit=16, many=32)
"""All strikes of a node are one shot but for their place in its cell."""

OPEN = """
name = "Open"
par = {par}
length_yd = {length}
green = [{{ name = "green", front_yd = {front}, depth_yd = 34, width_yd = 34 }}]
pin = [{{ name = "middle", on_yd = 17 }}]
fairway = [{{ name = "common", from_yd = -40, to_yd = 700, left_yd = -220, right_yd = 220 }}]
"""



def hole_text(length: float, lake: str = "") -> str:
    """TOML of the open hole, a lake in it if one is given."""
    par = 3 if length < 240 else 4 if length < 400 else 5
    return OPEN.format(length=length, front=length - 17, par=par) + lake


LAKE = 'penalty_area = [{{ name = "lake", colour = "{colour}", points_yd = {points} }}]\n'

HOLES: dict[str, tuple[float, str, list[list[float]]]] = {
    # length, colour, corners of the lake (station, offset)
    "one shot": (140, "red", [[30, -90], [30, 90], [90, 90], [90, -90]]),
    "two shots": (372, "red", [[150, -90], [150, 90], [190, 90], [190, -90]]),
    "lay up twice": (462, "yellow", [[188, -230], [188, 230], [300, 230], [300, -230]]),
    "round the lake": (500, "red", [[120, -230], [120, 50], [465, 50], [465, -230]]),
    "three full shots": (585, "yellow", [[300, -230], [300, 40], [360, 40], [360, -230]]),
}


def perfect_bag() -> Bag:
    """Isolde without luck: solid strikes, no bias, no spread, no mishits; perfect lies and putts."""
    player = with_clubs(
        player_named("isolde"), direction_sd_deg=TINY, distance_sd_pct=TINY, bias_right_deg=0.0,
        bias_long_pct=0.0, mishit_rate=0.0,
    )  # fmt: skip
    none = np.full_like(player.part.carry_yd, TINY)
    part = replace(player.part, direction_sd_deg=none, distance_sd_pct=none, mishit_rate=0.0 * none)
    putting = replace(player.putting, angle_sd_deg=TINY, distance_sd=TINY, angle_growth_deg_per_ft=0.0)
    bag = make_bag(replace(player, part=part, putting=putting), threads=THREADS)
    strikes = bag.strikes.copy()
    strikes[..., c.STRIKE_LIE_SD] = 0.0
    return replace(bag, strikes=strikes)


def no_luck_holing_out(board: Board) -> Board:
    """The board with no chance to hole out from off the green: that chance is luck too."""
    numbers = board.game.numbers.copy()
    numbers[c.HOLE_OUT_SCALE] = 0.0
    game = board.game
    game = game._replace(
        ground=game.ground._replace(numbers=numbers), field=game.field._replace(numbers=numbers)
    )
    return replace(board, game=game)


@pytest.fixture(scope="module")
def bag() -> Bag:
    return perfect_bag()


@pytest.fixture(scope="module")
def reaches(bag: Bag) -> dict[Lie, np.ndarray]:
    """Carry and carry with run [yd] on mown ground of every shot, from the tee and from the fairway."""
    board = make_board(hole_of(hole_text(660)), bag)
    out = {}
    for lie in (Lie.TEE, Lie.FAIRWAY):
        rows = []
        for row in range(bag.shots.first_punch):  # full and part swings; punches are for under trees
            if bag.strikes[row, lie, c.STRIKE_ALLOWED] < 0.5:
                continue
            action = np.array([row, 0.0, 0.0])
            one = engine.play(board, 0.0, 0.0, lie, action, action, 5.0, seed=1, sequences=2, most_strokes=1)
            rows.append((one.landing_yd[0, 1], one.rest_yd[0, 1]))
            assert abs(one.rest_yd[0, 0]) < 0.01
        out[lie] = np.array(rows)
    return out


def fewest_strokes(hole: Hole, reaches: dict[Lie, np.ndarray], grant: bool) -> int:
    """Strokes to come to rest on the green, breadth first from the tee, doubtful shots granted or not."""
    doubt = DOUBT_YD if grant else -DOUBT_YD
    green = hole.green.buffer(doubt)
    water = shapely.union_all([f.area for f in hole.features if f.surface is Surface.WATER]).buffer(-doubt)
    shapely.prepare(green)
    shapely.prepare(water)
    seen: set[tuple[int, int]] = set()
    front, lie = np.zeros((1, 2)), Lie.TEE
    for strokes in range(1, 8):
        to_pin = np.arctan2(hole.pin.x_yd - front[:, 0], hole.pin.y_yd - front[:, 1])
        bearing = to_pin[:, None, None] + TURNS[None, :, None]
        carry, rest = reaches[lie][:, 0], reaches[lie][:, 1]

        def place(length: np.ndarray, front: np.ndarray = front, bearing: np.ndarray = bearing) -> np.ndarray:
            x = front[:, 0, None, None] + length * np.sin(bearing)
            y = front[:, 1, None, None] + length * np.cos(bearing)
            return np.stack([x, y], axis=-1).reshape(-1, 2)

        down, still = place(carry), place(rest)
        if grant:  # landing or rest on the green will do
            home = shapely.contains_xy(green, *down.T) | shapely.contains_xy(green, *still.T)
        else:  # the rest must be on it wherever the run stops: on the green it may be shorter
            lands_on = shapely.contains_xy(green, *down.T)
            home = lands_on & shapely.contains_xy(green, *still.T)
        if home.any():
            return strokes
        inside = (np.abs(still[:, 0]) < 75.0) & (still[:, 1] > -10.0) & (still[:, 1] < hole.length_yd + 40.0)
        down, still = down[inside], still[inside]
        dry = np.ones(len(still), dtype=bool)
        low, high = np.array(water.bounds).reshape(2, 2)  # a line beside this box is dry, whatever its shape
        near = np.flatnonzero(
            (np.maximum(down, still) >= low).all(axis=1) & (np.minimum(down, still) <= high).all(axis=1)
        )
        dry[near] = ~shapely.intersects(water, shapely.linestrings(np.stack([down[near], still[near]], axis=1)))
        cells = np.unique(np.round(still[dry] / GRID_YD).astype(int), axis=0)
        fresh = [tuple(cell) for cell in cells.tolist() if tuple(cell) not in seen]
        seen.update(fresh)
        if grant is False and not fresh:
            break
        front, lie = GRID_YD * np.array(fresh, dtype=float), Lie.FAIRWAY
    return 99


@pytest.mark.parametrize("name", HOLES)
def test_perfect_play(name: str, bag: Bag, reaches: dict[Lie, np.ndarray]) -> None:
    """Value of the tee = fewest strokes to the green + one putt.

    Within 0.001: nothing is random, and round these holes no stroke hangs on a few yards.
    """
    length, colour, points = HOLES[name]
    hole = hole_of(hole_text(length, LAKE.format(colour=colour, points=points)))
    fewest = fewest_strokes(hole, reaches, grant=False)
    assert fewest == fewest_strokes(hole, reaches, grant=True) < 9
    board = no_luck_holing_out(make_board(hole, bag))
    sketch = make_sketch(board, hole)
    board = engine.solve_map(board, sketch=sketch, seed=SEED, effort=FEW, threads=THREADS)
    value = searched(board)[1]
    # a map of cells of eight yards reads a step of a whole stroke between nodes to a hundredth or two
    assert math.isclose(value, fewest + 1.0, abs_tol=0.02), (value, fewest)
