"""Holes, players and boards of a few lines for the tests, and one shot with its results named."""

from __future__ import annotations

import math
import sys
import tempfile
import tomllib
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
from one_ball import play_shot

from simulator import load_player
from simulator.conditions import Conditions
from simulator.engine import solve_map
from simulator.hole.model import Hole
from simulator.hole.sketch import read_sketch
from simulator.kernels.game import Luck
from simulator.player.model import Player
from simulator.tables.bag import Bag, make_bag
from simulator.tables.game import Board, make_board, make_sketch, relief_cells
from simulator.tables.nodes import HELD_YD
from simulator.tables.rasters import ground_raster

RESULT = (
    "x", "y", "lie", "cost", "value", "holed",
    "lost", "lost_cost", "lost_x", "lost_y", "lost_lie", "lost_value",
    "rest_x", "rest_y", "surface", "feature", "land_x", "land_y", "branch",
)  # fmt: skip
"""What `play_shot` returns, in its order."""


def tell(line: str) -> None:
    """Say what was measured (seen with ``pytest -s``)."""
    sys.stdout.write(line + "\n")


def hole_of(text: str) -> Hole:
    """Hole of a sketch written in a test."""
    return read_sketch(tomllib.loads(text), "test hole")


def straight_hole(length_yd: float, *, par: int = 4, green_yd: float = 30.0, more: str = "") -> Hole:
    """A straight hole to a round green with the pin in its middle; `more` are lines of a sketch."""
    return hole_of(
        f'name = "straight"\npar = {par}\nlength_yd = {length_yd}\n'
        f"green = [{{ front_yd = {length_yd - green_yd / 2}, depth_yd = {green_yd}, "
        f"width_yd = {green_yd} }}]\n{more}"
    )


def player_of(text: str) -> Player:
    """Player of a bag file written in a test."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "player.toml"
        path.write_text(text)
        return load_player(path)


CLUBS = ("driver", "7-iron", "54-degree wedge")
THREE_CLUBS = """
name = "three clubs"
handicap = 5
clubs = ["driver", "7-iron", "54-degree wedge"]
"""
"""A bag of the longest, a middle and a steep flight, and their names."""


@cache
def bag_of(text: str) -> Bag:
    """Tables of a demo player by name, or of a bag file written in a test."""
    return make_bag(player_of(text) if "\n" in text or "=" in text else load_player(text), threads=2)


def bag_for(text: str, hole: Hole, conditions: Conditions | None = None) -> Bag:
    """Tables of a player for a hole with heights, slopes or trees: they must know its ground."""
    player = player_of(text) if "=" in text else load_player(text)
    return make_bag(player, conditions, raster=ground_raster(hole), threads=2)


def solved(hole: Hole, bag: Bag, *, seed: int = 1, threads: int = 2, **nodes: float) -> Board:
    """A board with its value map, on nodes as far apart as those of a held plan unless others are asked for."""
    nodes = dict(zip(("coarse_yd", "fine_yd"), HELD_YD, strict=True)) | nodes
    board = make_board(hole, bag, **nodes)
    assert len(board.raster.crowns) == 0 or len(bag.flights.tracks) == len(bag.shots)  # see `bag_for`
    return solve_map(board, sketch=make_sketch(board, hole), seed=seed, threads=threads)


def with_fields(board: Board, value: Any) -> Board:
    """The board with its value map written by hand: value(lie, x, y) on arrays, at every node."""
    old = board.game.field
    new = []
    for grid, field in ((board.nodes.coarse, old.coarse), (board.nodes.fine, old.fine)):
        x = grid.x0_yd + np.arange(grid.columns) * grid.step_yd
        y = grid.y0_yd + np.arange(grid.rows) * grid.step_yd
        filled = np.stack([value(lie, x[None, :], y[:, None]) + 0.0 * field[lie, :, :].astype(bool)
                           for lie in range(field.shape[0])])  # fmt: skip
        new.append(np.ascontiguousarray(filled))
    return replace(board, game=board.game._replace(field=old._replace(coarse=new[0], fine=new[1])))


def with_numbers(board: Board, changes: dict[int, float]) -> Board:
    """The board with some of its numbers changed, in every group that holds them."""
    numbers = board.game.numbers.copy()
    for column, number in changes.items():
        numbers[column] = number
    game = board.game
    return replace(
        board,
        game=game._replace(
            ground=game.ground._replace(numbers=numbers), field=game.field._replace(numbers=numbers)
        ),
    )


def with_relief(board: Board, height: Any) -> Board:
    """The board on hilly ground: height(x, y) [yd] on arrays, its slopes by central differences."""
    raster = board.raster
    ny, nx = raster.surface.shape
    x = raster.x0_yd + np.arange(nx)[None, :] * raster.cell_yd
    y = raster.y0_yd + np.arange(ny)[:, None] * raster.cell_yd
    h = 0.01
    planes = [height(x, y), (height(x + h, y) - height(x - h, y)) / (2 * h),
              (height(x, y + h) - height(x, y - h)) / (2 * h)]  # fmt: skip
    relief = relief_cells(*(np.broadcast_to(plane, (ny, nx)) for plane in planes))
    return replace(board, game=board.game._replace(ground=board.game.ground._replace(relief=relief)))


def row_of(bag: Bag, club: str, flight: str = "stock") -> int:
    """Row of a club's first shot of one flight."""
    return next(k for k, shot in enumerate(bag.shots.shots) if (shot.club.name, shot.flight) == (club, flight))


def shot(
    board: Board,
    x: float,
    y: float,
    lie: int,
    row: int,
    bearing_deg: float = 0.0,
    *,
    scale: float = 1.0,
    replay: float = 3.0,
    luck: tuple[float, float, float, float, float] = (0.999999, 0.0, 0.0, 0.0, 0.0),
    wind: tuple[float, float] = (0.0, 0.0),
    trees: tuple[float, float, float] = (0.5, 0.5, 0.0),
) -> dict[str, float]:
    """Play one shot through the engine's own function; `luck` is a middling solid strike unless given.

    `wind` is its velocity along x and y [yd/s]; `trees` the uniform numbers of a branch: hit, keep and turn.
    """
    drawn = Luck(*map(float, luck), float(wind[0]), float(wind[1]), *map(float, trees))
    out = play_shot(
        board.game, float(x), float(y), int(lie), row, math.radians(bearing_deg), scale, replay, drawn
    )
    return dict(zip(RESULT, out, strict=True))
