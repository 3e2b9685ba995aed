"""What a player does on the bench: strokes by distance and lie, greens hit, leaves, and rounds."""

from __future__ import annotations

from collections.abc import Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from ...engine import (
    AIMS_DEG,
    WIDE_AIMS_DEG,
    Effort,
    Sequences,
    default_threads,
    play,
    room_to_choose,
    solve_map,
)
from ...hole.model import Hole
from ...hole.surfaces import Lie, Surface
from ...kernels import codes as c
from ...kernels import solve
from ...physics.lies import LieEffect
from ...player.model import Player
from ...tables.bag import make_bag
from ...tables.game import HOLE_OUT_SCALE, Board, make_board, make_sketch
from ...tables.luck import strike_sets
from ...tables.rasters import Raster, ground_raster
from ...tables.rows import FIRST_GUESS
from ...tables.strikes import strike_rows
from .holes import DEEP_YD, FAIRWAY_YD, LENGTH_YD, PINS_YD, WOOD_YD, open_hole, plain_hole, wooded_hole

QUICK = Effort(few=8, more=32, commit=64, many=64, scrambles=16, again=0)
"""Effort of the fit's maps."""

QUICK_NODES = (16.0, 7.0)
MIDDLE_NODES = (11.0, 5.0)
FINE_NODES = (8.0, 3.5)
"""Node spacings [yd]: for the amateurs' fit, the tour's, whose limits are narrow, and the final table."""

REACH_YD = 42.0
"""How far from the pin they lie as near as the second [yd]: the fit's own, as what is best for plans moves no
level."""

SPREAD = (-0.4, -0.2, 0.0, 0.2, 0.4)
"""A row of a table stands for shots around its distance: places of its mean, as shares of ``bin_yd``."""

LIES = {"tee": Lie.TEE, "fairway": Lie.FAIRWAY, "rough": Lie.ROUGH, "sand": Lie.BUNKER}


def bin_yd(distance_yd: float) -> float:
    """Width of the distances a table's row stands for: its rows are 10 yd apart up to 100, then 20."""
    return 10.0 if distance_yd < 110.0 and distance_yd >= 20.0 else 4.0 if distance_yd < 20.0 else 20.0


@lru_cache(maxsize=8)
def _ground(open_: bool, pin: int) -> tuple[Hole, Raster]:
    hole = open_hole(pin=pin) if open_ else plain_hole(pin)
    return hole, ground_raster(hole, 1.0)


@dataclass(frozen=True)
class Bench:
    """A player's solved maps, one for each pin.

    Attributes
    ----------
    boards : tuple of Board
    """

    boards: tuple[Board, ...]

    def strokes(self, lie: str, distances_yd: np.ndarray) -> np.ndarray:
        """Expected strokes from each distance and lie, float64[n]: mean over pins and places of the row."""
        offsets = np.array([[share * bin_yd(d) for share in SPREAD] for d in distances_yd])
        places = (np.asarray(distances_yd, float)[:, None] + offsets).ravel()
        values = [best_values(board, int(LIES[lie]), places)[:, 0] for board in self.boards]
        return np.mean(values, axis=0).reshape(len(distances_yd), len(SPREAD)).mean(axis=1)

    def approaches(self, lie: str, distances_yd: np.ndarray, each: int = 1000) -> tuple[float, float]:
        """Share of shots that finish on the green, and median distance left over the distance played."""
        greens, left = [], []
        for board in self.boards:
            actions = best_values(board, int(LIES[lie]), distances_yd)
            for d, row in zip(distances_yd, actions, strict=True):
                x, y = place(board, float(d))
                shot = play(
                    board,
                    x,
                    y,
                    int(LIES[lie]),
                    row[1:],
                    row[1:],
                    float(row[0]),
                    seed=5,
                    sequences=each,
                    threads=default_threads(),
                    most_strokes=1,
                )
                greens.append(np.mean(shot.surface == Surface.GREEN))
                left.append(np.median(shot.leaves_yd) / d)
        return float(np.mean(greens)), float(np.mean(left))

    def holes(self, distances_yd: np.ndarray, each: int, seed: int = 7) -> list[Sequences]:
        """Full holes from the tee at each distance, pins in turn."""
        played = []
        for k, d in enumerate(distances_yd):
            board = self.boards[k % len(self.boards)]
            row = best_values(board, int(Lie.TEE), np.array([d]))[0]
            x, y = place(board, float(d))
            played.append(
                play(
                    board,
                    x,
                    y,
                    int(Lie.TEE),
                    row[1:],
                    row[1:],
                    float(row[0]),
                    seed=seed + k,
                    sequences=each,
                    threads=default_threads(),
                )
            )
        return played


def place(board: Board, distance_yd: float) -> tuple[float, float]:
    """Place on the middle of the fairway so far from the pin [yd]; straight below the pin within 10 yd."""
    numbers = board.game.ground.numbers
    pin_x, pin_y = float(numbers[c.PIN_X]), float(numbers[c.PIN_Y])
    side = pin_x if abs(pin_x) < distance_yd / 2.0 else 0.0
    return pin_x - side, pin_y - float(np.sqrt(distance_yd**2 - side**2))


def best_values(board: Board, lie: int, distances_yd: np.ndarray) -> np.ndarray:
    """Best action and its value from places in front of the pin, float64[n, 4]: value, shot, aim, reach."""
    return best_from(board, lie, np.array([place(board, float(d)) for d in distances_yd]))


def best_from(board: Board, lie: int, xy: np.ndarray) -> np.ndarray:
    """The same from any places float64[n, 2]."""
    effort = Effort()
    sets = [
        strike_sets(900 + k, effort.scrambles, n)
        for k, n in enumerate((effort.few, effort.more, effort.many))
    ]
    numbers = board.game.ground.numbers
    known = FIRST_GUESS[0] + FIRST_GUESS[1] * np.hypot(
        xy[:, 0] - numbers[c.PIN_X], xy[:, 1] - numbers[c.PIN_Y]
    )
    count = len(xy)
    ones = np.ones(count)
    nodes = np.column_stack(
        [
            xy, float(lie) * ones, known, np.arange(count) % effort.scrambles, 0.0 * ones,
            effort.few * ones, effort.more * ones, effort.many * ones,
        ]
    )  # fmt: skip
    out = np.empty((count, 4))
    seeds, aims, wide = np.full((count, 1, 3), c.NO_SHOT), np.radians(AIMS_DEG), np.radians(WIDE_AIMS_DEG)

    def work(first: int, last: int) -> None:
        solve.solve_nodes(board.game, 1, nodes, seeds, first, last, aims, wide, *sets, *room_to_choose(), out)

    edges = np.linspace(0, count, 4 * default_threads() + 1).astype(int).tolist()
    with ThreadPoolExecutor(default_threads()) as pool:
        list(pool.map(work, edges[:-1], edges[1:]))
    return out


def bench(
    player: Player,
    *,
    lies: Mapping[str, Mapping[str, LieEffect]] | None = None,
    hole_out_scale: float = HOLE_OUT_SCALE,
    open_: bool = False,
    quick: bool = True,
    nodes: tuple[float, float] = QUICK_NODES,
    seed: int = 1,
) -> Bench:
    """Solve the bench for a player.

    Parameters
    ----------
    player : Player
    lies : Mapping, optional
        Effects of lies to use; the package's own when left out.
    hole_out_scale : float
    open_ : bool
        The obstacle-free hole.
    quick : bool
        Few strikes and nodes this far apart (coarse, fine), as the fit uses; else as an answer is made.
    """
    threads = default_threads()
    bag = make_bag(player, threads=threads)
    if lies is not None:
        bag = replace(bag, strikes=strike_rows(bag.shots.shots, bag.flights.still, lies))
    boards = []
    coarse, fine = nodes if quick else FINE_NODES
    for pin in range(len(PINS_YD)):
        hole, raster = _ground(open_, pin)
        board = make_board(
            hole,
            bag,
            raster,
            coarse_yd=coarse,
            fine_yd=fine,
            reach_yd=REACH_YD,
            hole_out_scale=hole_out_scale,
        )
        if quick:
            boards.append(solve_map(board, seed=seed, effort=QUICK, threads=threads))
        else:
            sketch = make_sketch(board, hole)
            boards.append(solve_map(board, sketch=sketch, seed=seed, threads=threads))
    return Bench(tuple(boards))


def recovery_strokes(
    player: Player,
    distances_yd: np.ndarray,
    *,
    lies: Mapping[str, Mapping[str, LieEffect]] | None = None,
    hole_out_scale: float = HOLE_OUT_SCALE,
    quick: bool = True,
) -> np.ndarray:
    """Expected strokes from inside the woods of the wooded hole, float64[n]: mean over both and
    ``DEEP_YD``."""
    threads, hole = default_threads(), wooded_hole()
    raster = ground_raster(hole, 1.0)
    bag = make_bag(player, raster=raster, threads=threads)
    if lies is not None:
        bag = replace(bag, strikes=strike_rows(bag.shots.shots, bag.flights.still, lies))
    coarse, fine = QUICK_NODES if quick else FINE_NODES
    board = make_board(
        hole, bag, raster, coarse_yd=coarse, fine_yd=fine, reach_yd=REACH_YD, hole_out_scale=hole_out_scale
    )
    board = solve_map(
        board, sketch=None if quick else make_sketch(board, hole), seed=1, effort=QUICK, threads=threads
    )
    pin_x, pin_y = PINS_YD[0][0], LENGTH_YD + PINS_YD[0][1]
    sides = [side * (FAIRWAY_YD / 2.0 + WOOD_YD + deep) for side in (-1.0, 1.0) for deep in DEEP_YD]
    xy = np.array([(x, pin_y - np.sqrt(d * d - (x - pin_x) ** 2)) for x in sides for d in distances_yd])
    values = best_from(board, int(Lie.TREES), xy)[:, 0]
    return np.asarray(values.reshape(len(sides), -1).mean(axis=0))
