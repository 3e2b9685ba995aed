"""Sense: a mirrored hole, player and luck give the same values; wider spreads never help."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
import shapely
from solved import HOLES, PLAYERS, SEED, THREADS, demo_board, player_named, searched, solved, tee, wider

from simulator import engine, load_hole
from simulator.hole.model import Hole, Spot
from simulator.kernels import codes as c
from simulator.player.model import Player
from simulator.strategy.result import TIE_STROKES
from simulator.strategy.search import Choice, search, tie_band_yd
from simulator.tables.game import Board, make_bag, make_board
from simulator.tables.luck import strike_sets
from simulator.tables.nodes import Grid, Nodes

FINE_YD = 3.37
"""Node spacing near the pin for the mirror test: with 3.5 the middle of a cell can fall on a node, and the
cell's lie then gets its nodes on one side only (one node more, no other value)."""


def mirrored_hole(hole: Hole) -> Hole:
    """The hole seen in a mirror standing on the y axis."""

    def spot(s: Spot) -> Spot:
        return Spot(s.name, -s.x_yd, s.y_yd)

    def line(points: tuple[tuple[float, float], ...]) -> tuple[tuple[float, float], ...]:
        return tuple((-x, y) for x, y in points)

    features = tuple(
        replace(f, area=shapely.transform(f.area, lambda xy: xy * (-1.0, 1.0))) for f in hole.features
    )
    return replace(
        hole, features=features, line=line(hole.line), drawn_line=line(hole.drawn_line),
        tee=spot(hole.tee), pin=spot(hole.pin), tees=tuple(map(spot, hole.tees)),
        pins=tuple(map(spot, hole.pins)),
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
    return replace(mirror, table=nodes.table * (-1.0, 1.0, 1.0, 1.0), place=place)


def with_side(board: Board, side: float) -> Board:
    """The board with all sideways luck of its strikes mirrored (side -1) or not (1)."""
    game = board.game
    numbers = game.numbers.copy()
    numbers[c.SIDE] = side
    return replace(
        board, game=game._replace(ground=game.ground._replace(numbers=numbers),
                                  field=game.field._replace(numbers=numbers)),
    )  # fmt: skip


def boxes_mirrored(seed: int, sets: int, strikes: int) -> np.ndarray:
    """Strikes made from the mirrored place of a node's cell; their start and curve are the game's SIDE."""
    out = strike_sets(seed, sets, strikes)
    out[..., 5] *= -1.0
    return out


def best(board: Board) -> tuple[Choice, float]:
    """Best action from the tee and its value."""
    place = tee(board)
    choices, value = search(place, SEED, board.allowed(place.lie), keep_within=0.3, keep_most=4)
    return choices[0], value


def check_mirror(hole_name: str, player_name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    hole, player = load_hole(hole_name), player_named(player_name)
    image, reflected = mirrored_hole(hole), mirrored_player(player)
    reflected_bag = make_bag(reflected, THREADS)
    here = make_board(hole, make_bag(player, THREADS), fine_yd=FINE_YD)
    there = make_board(image, reflected_bag, fine_yd=FINE_YD)
    assert np.array_equal(here.game.ground.surface[:, ::-1], there.game.ground.surface)
    there = replace(there, nodes=mirrored_nodes(here.nodes, there.nodes))

    # every node searched: which corners of a sketch's cell come first has a side
    here = engine.solve_map(here, seed=SEED, threads=THREADS)
    with monkeypatch.context() as patch:
        patch.setattr(engine, "strike_sets", boxes_mirrored)
        there = engine.solve_map(with_side(there, -1.0), seed=SEED, threads=THREADS)
    choice, value = best(here)
    image_choice, image_value = best(there)
    assert image_value == pytest.approx(value, abs=1e-9)
    assert image_choice.row == choice.row
    assert image_choice.action[1] == pytest.approx(-choice.action[1], abs=1e-9)

    # the image under luck of its own, both as `plan` solves them: the map's noise is what is left
    board, plain = demo_board(hole_name, player_name), solved(image, reflected_bag)
    choices, value = searched(board)
    plain_choices, plain_value = searched(plain)
    assert plain_value == pytest.approx(value, abs=0.01)
    scores = {one.row: one for one in choices}
    other = plain_choices[0]
    assert scores[other.row].score - choices[0].score < TIE_STROKES + 0.01  # a tied club at the most
    low, high = tie_band_yd(tee(board), scores[other.row], value, SEED)
    step = other.carry_yd * np.radians(1.0)  # the band is read in steps of one degree
    assert low - step <= -other.carry_yd * np.sin(other.action[1]) <= high + step


def test_mirror(monkeypatch: pytest.MonkeyPatch) -> None:
    check_mirror("withy-drain", "isolde", monkeypatch)


@pytest.mark.slow
@pytest.mark.parametrize("hole", HOLES)
@pytest.mark.parametrize("player", PLAYERS)
def test_mirror_of_every_demo_hole(hole: str, player: str, monkeypatch: pytest.MonkeyPatch) -> None:
    check_mirror(hole, player, monkeypatch)


WIDTHS = (0.75, 1.0, 1.35)


def scores_by_width(hole: str, player: str) -> list[float]:
    out = []
    for factor in WIDTHS:
        if factor == 1.0:
            board = demo_board(hole, player)
        else:
            board = solved(load_hole(hole), make_bag(wider(player_named(player), factor), THREADS))
        out.append(searched(board)[1])
    return out


@pytest.mark.parametrize("hole", HOLES)
def test_a_wider_direction_spread_never_helps(hole: str) -> None:
    """Value of the tee at its best, three widths of every direction spread: never lower by over 0.01."""
    scores = scores_by_width(hole, "isolde")
    assert np.all(np.diff(scores) > -0.01), scores
    assert scores[-1] - scores[0] > 0.05, scores  # and four fifths more of it does cost something


@pytest.mark.slow
@pytest.mark.parametrize("hole", HOLES)
def test_a_wider_direction_spread_never_helps_the_other_player(hole: str) -> None:
    scores = scores_by_width(hole, "barnaby")
    assert np.all(np.diff(scores) > -0.01), scores
