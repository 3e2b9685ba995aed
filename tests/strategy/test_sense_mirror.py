"""Sense: a mirrored hole, player and luck give the same values; wider spreads never help."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
import shapely
from solved import (
    HOLES,
    PLAYERS,
    SEED,
    THREADS,
    demo_board,
    level,
    level_board,
    player_named,
    searched,
    solved,
    tee,
    wider,
)  # fmt: skip

from simulator import engine, load_hole
from simulator.hole.model import Hole, Spot
from simulator.hole.slopes import Slope
from simulator.kernels import codes as c
from simulator.player.model import Player
from simulator.strategy import search as searching
from simulator.strategy.result import TIE_STROKES
from simulator.strategy.search import search, tie_band
from simulator.strategy.tries import Choice
from simulator.tables.bag import make_bag
from simulator.tables.game import Board, make_board
from simulator.tables.luck import strike_sets
from simulator.tables.nodes import Grid, Nodes
from simulator.tables.rasters import Raster, ground_raster

FINE_YD = 3.37
"""Node spacing near the pin for the mirror test: with 3.5 the middle of a cell can fall on a node, and the
cell's lie then gets its nodes on one side only (one node more, no other value)."""


def mirrored_hole(hole: Hole) -> Hole:
    """The hole seen in a mirror standing on the y axis."""

    def spot(s: Spot) -> Spot:
        return Spot(s.name, -s.x_yd, s.y_yd)

    def line(points: tuple[tuple[float, float], ...]) -> tuple[tuple[float, float], ...]:
        return tuple((-x, y) for x, y in points)

    def slope(s: Slope | None) -> Slope | None:
        return None if s is None else replace(s, falls_bearing_deg=-s.falls_bearing_deg % 360.0)

    features = tuple(  # a crown is an area's own: it goes where the area goes
        replace(f, area=shapely.transform(f.area, lambda xy: xy * (-1.0, 1.0)), slope=slope(f.slope))
        for f in hole.features
    )
    return replace(
        hole, features=features, line=line(hole.line), drawn_line=line(hole.drawn_line),
        tee=spot(hole.tee), pin=spot(hole.pin), tees=tuple(map(spot, hole.tees)),
        pins=tuple(map(spot, hole.pins)),
        single_trees=tuple(replace(t, x_yd=-t.x_yd) for t in hole.single_trees),
        heights=tuple((-x, y, z) for x, y, z in hole.heights),
    )  # fmt: skip


def mirrored_player(player: Player) -> Player:
    """The same player with left for right: only the bias has a side."""
    return replace(
        player, clubs=tuple(replace(k, bias_right_deg=-k.bias_right_deg) for k in player.clubs)
    )


def mirrored_nodes(nodes: Nodes, mirror: Nodes) -> Nodes:
    """The nodes of `mirror` in the order of those they are the images of.

    Nodes at one distance are sorted left to right and the scrambles are dealt in that order: image and
    node must get the same one.
    """

    def grid(one: Grid, other: Grid) -> Grid:
        assert (one.rows, one.columns, one.step_yd) == (other.rows, other.columns, other.step_yd)
        assert np.array_equal(one.wanted[:, :, ::-1], other.wanted)
        right = one.x0_yd + (one.columns - 1) * one.step_yd
        assert other.x0_yd == pytest.approx(-right, abs=1e-9)
        return other

    coarse, fine = grid(nodes.coarse, mirror.coarse), grid(nodes.fine, mirror.fine)
    place = nodes.place.copy()
    place[:, 3] = np.where(place[:, 0] == 0, coarse.columns, fine.columns) - 1 - place[:, 3]
    assert {tuple(row) for row in place} == {tuple(row) for row in mirror.place}
    return replace(mirror, table=nodes.table * (-1.0, 1.0, 1.0, 1.0), place=place,
                   off_line_yd=nodes.off_line_yd)  # fmt: skip


def with_side(board: Board, side: float) -> Board:
    """The board with all sideways luck of its strikes mirrored (side -1) or not (1)."""
    game = board.game
    numbers = game.numbers.copy()
    numbers[c.SIDE] = side
    return replace(
        board, game=game._replace(ground=game.ground._replace(numbers=numbers),
                                  field=game.field._replace(numbers=numbers)),
    )  # fmt: skip


def mirrored_strikes(seed: int, sets: int, strikes: int) -> np.ndarray:
    """Strikes from the mirrored place of a node's cell, thrown off branches the mirrored way.

    Their start and curve are the game's SIDE.
    """
    out = strike_sets(seed, sets, strikes)
    out[..., [c.LUCK_CELL_X, c.LUCK_TURN]] *= -1.0
    return out


def mirrored_raster(raster: Raster, image: Raster) -> Raster:
    """The raster of the image, in numbers that are those of the original to the last bit.

    Everything is checked against the image's own raster first: heights (metres apart) agree to a fraction
    of a millimetre, and a cell whose middle lies on a crown's rim may fall either way.
    """
    assert raster.x0_yd + (raster.surface.shape[1] - 1) * raster.cell_yd == pytest.approx(-image.x0_yd)
    assert np.array_equal(raster.surface[:, ::-1], image.surface)
    assert np.array_equal(raster.feature[:, ::-1], image.feature)
    assert (raster.canopy[:, ::-1] != image.canopy).sum() <= 2 + raster.canopy.astype(bool).sum() // 1000
    assert np.array_equal(raster.crowns, image.crowns)
    assert np.abs(raster.height[:, ::-1] - image.height).max() < 5e-4
    assert np.abs(raster.grad_x[:, ::-1] + image.grad_x).max() < 5e-4
    assert np.abs(raster.grad_y[:, ::-1] - image.grad_y).max() < 5e-4
    turned = (raster.planes[:, 1] + image.planes[:, 1] + 1.0) % (2.0 * np.pi) - 1.0
    assert raster.planes[:, 0] == pytest.approx(image.planes[:, 0]) and turned == pytest.approx(0.0, abs=1e-9)
    assert np.array_equal(raster.feature_planes, image.feature_planes)
    return image._replace(
        canopy=np.ascontiguousarray(raster.canopy[:, ::-1]),
        height=np.ascontiguousarray(raster.height[:, ::-1]),
        grad_x=np.ascontiguousarray(-raster.grad_x[:, ::-1]),
        grad_y=np.ascontiguousarray(raster.grad_y[:, ::-1]),
        planes=np.column_stack([raster.planes[:, 0], -raster.planes[:, 1]]),
    )


def best(board: Board) -> tuple[Choice, float]:
    """Best action from the tee and its value."""
    place = tee(board)
    choice = search(place, SEED, board.allowed(place.lie), keep_within=0.3, keep_most=4)[0]
    return choice, choice.score


def check_mirror(
    hole: Hole, player: Player, board: Board, monkeypatch: pytest.MonkeyPatch, **nodes: float
) -> None:
    """`board` is the hole as `plan` solves it; `nodes` are spacings of the strict half."""
    image, reflected = mirrored_hole(hole), mirrored_player(player)
    raster = ground_raster(hole)
    across = mirrored_raster(raster, ground_raster(image))
    nodes = {"fine_yd": FINE_YD, **nodes}
    here = make_board(hole, make_bag(player, None, raster, THREADS), raster, **nodes)
    there = make_board(image, make_bag(reflected, None, across, THREADS), across, **nodes)
    assert np.array_equal(here.game.ground.surface[:, ::-1], there.game.ground.surface)
    there = replace(there, nodes=mirrored_nodes(here.nodes, there.nodes))

    # every node searched: which corners of a sketch's cell come first has a side
    here = engine.solve_map(here, seed=SEED, threads=THREADS)
    with monkeypatch.context() as patch:
        patch.setattr(engine.maps, "strike_sets", mirrored_strikes)
        patch.setattr(searching, "strike_sets", mirrored_strikes)
        there = engine.solve_map(with_side(there, -1.0), seed=SEED, threads=THREADS)
        image_choice, image_value = best(there)
    choice, value = best(here)
    # sums of the mirror image round otherwise, 1e-16 a term; a branch that falls the other way at one strike
    # of a node, where two ways are level to as much, is worth that much again at every node that reads it
    assert image_value == pytest.approx(value, abs=1e-8)
    assert image_choice.row == choice.row
    assert image_choice.action[1] == pytest.approx(-choice.action[1], abs=1e-9)

    # the image under luck of its own, both as `plan` solves them: the map's noise is what is left
    plain = solved(image, reflected)
    choices, value = searched(board)
    plain_choices, plain_value = searched(plain)
    assert plain_value == pytest.approx(value, abs=0.01)
    scores = {one.row: one for one in choices}
    other = plain_choices[0]
    assert scores[other.row].score - choices[0].score < TIE_STROKES + 0.01  # a tied club at the most
    low, high = tie_band(tee(board), scores[other.row], value, SEED).ends_yd
    step = other.carry_yd * np.radians(1.0)  # the band is read in steps of one degree
    assert low - step <= -other.carry_yd * np.sin(other.action[1]) <= high + step


COARSE = {"coarse_yd": 18.1, "fine_yd": 8.03}
"""Node spacings of the strict half in the default run: equal to the last bit at any spacing, so why wait."""


def test_mirror(monkeypatch: pytest.MonkeyPatch) -> None:
    """A par 4 on the level."""
    board = level_board("withy-drain", "isolde")
    check_mirror(level("withy-drain"), player_named("isolde"), board, monkeypatch, **COARSE)


def test_mirror_of_hills_trees_and_sloping_greens(monkeypatch: pytest.MonkeyPatch) -> None:
    """A par 3 with all of them; its tee looks down on a green in two planes, trees on either side."""
    hole = load_hole("eel-trap")
    assert hole.heights and hole.single_trees and any(f.crown for f in hole.features)
    assert len({f.slope.falls_bearing_deg for f in hole.features if f.slope}) > 1
    check_mirror(hole, player_named("isolde"), demo_board("eel-trap", "isolde"), monkeypatch, **COARSE)


@pytest.mark.slow
@pytest.mark.parametrize("hole", HOLES)
@pytest.mark.parametrize("player", PLAYERS)
def test_mirror_of_every_demo_hole(hole: str, player: str, monkeypatch: pytest.MonkeyPatch) -> None:
    check_mirror(load_hole(hole), player_named(player), demo_board(hole, player), monkeypatch)


WIDTHS = (0.75, 1.0, 1.35)


def scores_by_width(hole: str, player: str) -> list[float]:
    out = []
    for factor in WIDTHS:
        if factor == 1.0:
            board = level_board(hole, player)
        else:
            board = solved(level(hole), wider(player_named(player), factor))
        out.append(searched(board)[1])
    return out


# three maps of a par 5 take as long as those of the other holes together
@pytest.mark.parametrize("hole", [*HOLES[:2], pytest.param(HOLES[2], marks=pytest.mark.slow)])
def test_a_wider_direction_spread_never_helps(hole: str) -> None:
    """Value of the tee at its best, three widths of every direction spread: never lower by over 0.01.

    On level ground without crowns.
    """
    scores = scores_by_width(hole, "isolde")
    assert np.all(np.diff(scores) > -0.01), scores
    assert scores[-1] - scores[0] > 0.05, scores  # and four fifths more of it does cost something


@pytest.mark.slow
@pytest.mark.parametrize("hole", HOLES)
def test_a_wider_direction_spread_never_helps_the_other_player(hole: str) -> None:
    scores = scores_by_width(hole, "barnaby")
    assert np.all(np.diff(scores) > -0.01), scores
