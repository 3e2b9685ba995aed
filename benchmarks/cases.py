"""The golf that is timed: who plays what, and the solved boards."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass

import numpy as np

from benchmarks.twin.course import Start
from simulator import load_hole, load_player
from simulator.conditions import Conditions
from simulator.conditions.model import Wind
from simulator.engine import default_threads, play
from simulator.hole.model import Hole
from simulator.hole.sketch import read_sketch
from simulator.hole.surfaces import Lie
from simulator.strategy.search import search
from simulator.strategy.traffic import solve_from
from simulator.strategy.tries import Place
from simulator.tables.bag import make_bag
from simulator.tables.game import Board, make_board
from simulator.tables.rasters import ground_raster

PLAIN = """
name = "Plain par 4"
par = 4
length_yd = 400
fairway = [{ from_yd = 150, to_yd = 380, left_yd = -16, right_yd = 16 }]
green = [{ front_yd = 386, depth_yd = 28, width_yd = 26 }]
bunker = [{ at_yd = 396, offset_yd = -20, depth_yd = 12, width_yd = 8 }]
"""
"""Level, no water, no trees."""


def plain_hole() -> Hole:
    """The calm plain par 4."""
    return read_sketch(tomllib.loads(PLAIN), "plain par 4")


@dataclass(frozen=True)
class Case:
    """A hole solved for a player on a day, and how its sequences start."""

    name: str
    hole: Hole
    board: Board
    start: Start

    @property
    def place(self) -> Place:
        """The tee, on one thread."""
        return Place(self.board, self.start.x_yd, self.start.y_yd, self.start.lie, 1)

    def play(self, action: np.ndarray, seed: int, sequences: int, threads: int = 1, evened: bool = False):
        """The engine's full sequences."""
        s = self.start
        return play(
            self.board, s.x_yd, s.y_yd, s.lie, action, s.home, s.value,
            seed=seed, sequences=sequences, threads=threads, evened=evened,
        )  # fmt: skip


def case(
    name: str, hole: Hole, player: str = "barnaby", conditions: Conditions | None = None, **nodes: float
) -> Case:
    """Solve a hole from its tee with the map's best first shot; `nodes` as in `make_board`."""
    threads = default_threads()
    raster = ground_raster(hole)
    bag = make_bag(load_player(player), conditions or Conditions(), raster, threads)
    empty, tee = make_board(hole, bag, raster, **nodes), hole.tee
    place = solve_from(empty, hole, (tee.x_yd, tee.y_yd, int(Lie.TEE)), seed=1, threads=threads)
    board = place.board
    best = search(place, 3, board.allowed(Lie.TEE), keep_within=1.0, keep_most=2)[0]
    start = Start(tee.x_yd, tee.y_yd, int(Lie.TEE), best.action, best.action, best.score)
    return Case(name, hole, board, start)


def plain_case(**nodes: float) -> Case:
    """Calm and plain."""
    return case("plain par 4, calm", plain_hole(), **nodes)


def windy_case(**nodes: float) -> Case:
    """Wind, trees, water, slopes."""
    day = Conditions(wind=Wind(15.0, 40.0))
    return case("withy-drain, 15 mph", load_hole("withy-drain"), conditions=day, **nodes)
