"""The value map against sequences that were not used to make it, and against finer maps of the same hole."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from solved import (
    HOLES,
    PLAYERS,
    SEED,
    THREADS,
    club_of,
    demo_board,
    level,
    player_named,
    searched,
    solved,
    tee,
)  # fmt: skip

from simulator import load_hole
from simulator.engine import Effort
from simulator.hole.model import Hole
from simulator.hole.surfaces import Lie
from simulator.player.model import Player
from simulator.strategy.result import TIE_STROKES
from simulator.strategy.traffic import solve_from
from simulator.tables.bag import make_bag
from simulator.tables.game import CELL_YD, Board, make_board
from simulator.tables.rasters import ground_raster

FRESH_SEED = 987_654


def gap(hole: str, player: str, sequences: int) -> tuple[float, float]:
    """Fresh sequences under the plan minus the value of the tee on the map, and its standard error.

    Putts are counted by their expectation (the same table draws them): 30,000 sequences are then good to
    about 0.005 strokes. No figure of the map is subtracted from them.
    """
    board = demo_board(hole, player)
    place = tee(board)
    choices, value = searched(board)
    home = choices[0].action
    fresh = place.play(home, home, value, seed=FRESH_SEED, sequences=sequences)
    drawn = fresh.score - fresh.expected  # putts as drawn against their expectation: no bias either
    assert abs(drawn.mean()) < 4.0 * drawn.std(ddof=1) / np.sqrt(sequences)
    return float(fresh.expected.mean() - value), float(fresh.expected.std(ddof=1) / np.sqrt(sequences))


@pytest.mark.parametrize("hole", HOLES[:2])  # a slow test has all three
@pytest.mark.parametrize("player", PLAYERS)
def test_map_against_30_000_fresh_sequences(hole: str, player: str) -> None:
    """Within 0.02 strokes and two standard errors (each at most 0.008) of the sequences' mean."""
    difference, error = gap(hole, player, 30_000)
    assert error < 0.008
    assert abs(difference) < 0.02 + 2.0 * error, (difference, error)


@pytest.mark.slow
@pytest.mark.parametrize("hole", HOLES)
@pytest.mark.parametrize("player", PLAYERS)
def test_map_against_100_000_fresh_sequences(hole: str, player: str) -> None:
    """Within 0.02 strokes, nothing added for the sequences' own error (at most 0.0045)."""
    difference, error = gap(hole, player, 100_000)
    assert error < 0.0045
    assert abs(difference) < 0.02, (difference, error)


def four_times(effort: Effort) -> Effort:
    """Four times the strikes of every kind."""
    return replace(effort, few=4 * effort.few, more=4 * effort.more, commit=4 * effort.commit,
                   many=4 * effort.many, near=4 * effort.near, sketch=4 * effort.sketch)  # fmt: skip


FINER = {"cell_yd": 0.5, "coarse_yd": 4.0, "fine_yd": 1.75}
"""Cell and spacings halved."""


def check_refinement(board: Board, finer: Board) -> tuple[float, str, str]:
    """The tee moves by less than 0.02; the club stays, ties apart."""
    choices, value = searched(board)
    other_choices, other = searched(finer)
    clubs = club_of(board, choices[0]), club_of(finer, other_choices[0])
    assert abs(other - value) < 0.02, (value, other, clubs)
    if clubs[0] != clubs[1]:
        on_finer = {club_of(finer, choice): choice.score for choice in other_choices}
        assert on_finer[clubs[0]] - other_choices[0].score < TIE_STROKES, (clubs, on_finer)
    return other - value, *clubs


def from_tee(drawn: Hole, who: Player, effort: Effort | None, cell_yd: float, **nodes: float) -> Board:
    """The map that a question from the tee is answered with."""
    raster = ground_raster(drawn, cell_yd)
    bag = make_bag(who, None, raster, THREADS)
    empty = make_board(drawn, bag, raster, cell_yd=cell_yd, **nodes)
    return solve_from(empty, drawn, (0.0, 0.0, int(Lie.TEE)), seed=SEED, effort=effort, threads=THREADS).board


def test_refinement() -> None:
    """On the level copy of the par 3: the hilly, wooded ones take half a minute each (slow tests)."""
    drawn, who = level("eel-trap"), player_named("isolde")
    check_refinement(from_tee(drawn, who, None, CELL_YD), from_tee(drawn, who, four_times(Effort()), **FINER))


@pytest.mark.slow
@pytest.mark.parametrize("hole", HOLES)
@pytest.mark.parametrize("player", PLAYERS)
def test_refinement_on_every_demo_hole(hole: str, player: str) -> None:
    """Of the map that a question from the tee is answered with; both are searched twice over, as that is."""
    drawn, who = load_hole(hole), player_named(player)
    check_refinement(from_tee(drawn, who, None, CELL_YD), from_tee(drawn, who, four_times(Effort()), **FINER))


@pytest.mark.slow
@pytest.mark.parametrize("hole", HOLES)
def test_the_map_hardly_moves_with_the_seed(hole: str) -> None:
    """Six maps from strikes of their own: the value of the tee spreads by less than 0.01 (one sd)."""
    values = [
        searched(solved(load_hole(hole), player_named("barnaby"), seed=SEED + 100 * k))[1] for k in range(6)
    ]
    assert np.std(values, ddof=1) < 0.01, values
