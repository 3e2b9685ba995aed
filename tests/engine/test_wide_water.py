"""Water that most balls come down in: the map reaches its banks, and is swept until it knows the drops."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from small_games import tell

from simulator import load_hole, load_player, plan
from simulator.engine import maps
from simulator.hole.surfaces import LIE_OF, Lie, Surface
from simulator.strategy.traffic import solve_from
from simulator.tables.bag import make_bag
from simulator.tables.game import make_board
from simulator.tables.nodes import BANK_YD, SIDE_YD, place_nodes
from simulator.tables.rasters import ground_raster


def far_edges(words: str) -> tuple[float, float, float]:
    """Leftmost, rightmost and farthest node [yd]."""
    hole = load_hole(words)
    nodes = place_nodes(hole, ground_raster(hole)).table
    return nodes[:, 0].min(), nodes[:, 0].max(), nodes[:, 1].max()


def test_the_map_reaches_past_wide_water() -> None:
    left, right, far = far_edges("par 3, 165; water 40 to 215 across, yellow")
    assert left <= -90.0 - BANK_YD and right >= 90.0 + BANK_YD and far >= 215.0 + BANK_YD
    usual = far_edges("par 3, 165")
    assert far_edges("par 3, 165; stream across at 120") == usual  # a stream is dropped behind, not beside
    assert far_edges("par 3, 165; pond right 60 to 140, edge 10 right") == usual  # its bank is on the map
    assert -usual[0] == pytest.approx(usual[1]) and usual[1] <= SIDE_YD + 5.0


@pytest.mark.parametrize(
    "name", ["par 3, 120; island green", "par 3, 121; island green", "ostrel-heath/9", "long-sluice", "withy-drain"]
)
def test_all_ground_is_read_from_some_node(name: str) -> None:
    """Wherever a ball may lie in a cell of the ground: a place that no node of its lie stands beside is a guess."""
    hole = load_hole(name)
    raster = ground_raster(hole)
    nodes = place_nodes(hole, raster)
    codes = np.array([LIE_OF.get(surface, Lie.GREEN) for surface in Surface])[raster.surface]
    row, column = np.nonzero(codes < Lie.GREEN)
    missed = 0
    for right, up in itertools.product((-0.49, 0.0, 0.49), repeat=2):
        x = raster.x0_yd + (column + right) * raster.cell_yd
        y = raster.y0_yd + (row + up) * raster.cell_yd
        inside = nodes.fine.holds(x, y)
        for grid, here in ((nodes.coarse, ~inside), (nodes.fine, inside)):
            rows, columns, weight = grid.weights(x[here], y[here])
            there = grid.wanted[codes[row, column][here, None], rows, columns] & (weight > 1e-9)
            missed += int((~there.any(axis=1)).sum())
    assert missed == 0


def test_nodes_are_closer_in_a_wood() -> None:
    """A slot through a wood; a hole with trees beside it is none."""
    for name, spacing_yd in (("ostrel-heath/14", 3.5), ("withy-drain", 5.0), ("par 4, 380", 5.0)):
        hole = load_hole(name)
        board = make_board(hole, make_bag(load_player("isolde"), None, ground_raster(hole), 2))
        assert board.nodes.coarse.step_yd == spacing_yd


@pytest.mark.parametrize(
    ("words", "who"),
    [
        ("par 3, 140; water 40 to 190 across, yellow", "handicap 15"),
        ("par 3, 165; water 40 to 215 across, yellow", "handicap 15"),
        ("par 4, 380; water 60 to 190 across", "handicap 28"),
        ("par 3, 120; island green", "handicap 18"),
        ("par 3, 150; island green", "handicap 18"),
    ],
)
def test_the_map_is_right_where_most_balls_are_lost(words: str, who: str) -> None:
    """Ten strokes on a green nobody holds: a score of many drops, each read off the map.

    Without the banks, or swept once, the map was too low by 2 to 5 strokes and later shots followed it. From one
    map to the next the first three are off by -0.18 to +0.05 (three seeds, both efforts, 2026-11-29), 0.11 too low on average at
    the worst and scattered by 0.05 there: three times that is allowed beside it. On the islands it was too low by
    3.7, where a bank lay in a row of cells that no node was asked for, and by 0.5, where nodes that only the fine
    map drops the ball at were left as the rough one had them.
    """
    answer = plan(load_hole(words), load_player(who), sequences=30_000, seed=3, quick=True)
    best = answer.alternatives[0]
    gap = best.map_score.value - best.score.value
    tell(f"{words}: {best.club} {best.score.value:.2f}, map off by {gap:+.2f} +- {best.score.standard_error:.2f}")
    assert abs(gap) <= 0.11 + 3.0 * 0.05 + 3.0 * best.score.standard_error


@pytest.mark.parametrize("words", ["par 3, 140; water 40 to 190 across, yellow", "par 3, 140"])
def test_a_map_is_swept_until_it_settles(words: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """The last sweep moves the nodes by less than a tenth of a stroke on average, drops back over drops too."""
    hole, moved, one_sweep = load_hole(words), [], maps.sweep

    def watched(board, game, nodes, *rest):
        out = one_sweep(board, game, nodes, *rest)
        moved.append(float(np.average(np.abs(out[:, 0] - nodes[:, 3]), weights=nodes[:, 8])))
        return out

    raster = ground_raster(hole)
    bag = make_bag(load_player("handicap 15"), None, raster, 2)
    monkeypatch.setattr(maps, "sweep", watched)
    solve_from(make_board(hole, bag, raster), hole, (0.0, 0.0, int(Lie.TEE)), seed=1, threads=2)
    tell(f"{words}: the last sweeps moved {np.round(moved[3:], 3)}")
    assert moved[-1] <= 0.1
