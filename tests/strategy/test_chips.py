"""A chip beside the pitch that goes as far: where both end is as spread."""

from __future__ import annotations

import numpy as np
import pytest
import solved as sv
from small_games import player_of, straight_hole

from simulator.conditions import Conditions
from simulator.engine import PART_SWING, PUNCH_SWING
from simulator.hole.surfaces import Lie
from simulator.player.runs import punch_run_yd
from simulator.strategy.asked import find_choices
from simulator.strategy.tries import Place, is_one
from simulator.tables.carries import runs_yd
from simulator.tables.flights import FRACTIONS, TILTS_DEG


@pytest.fixture(scope="module", params=(5, 18, 36))
def beside(request: pytest.FixtureRequest) -> Place:
    """Thirty yards short of the pin, sixteen of them fairway, at three levels."""
    fairway = "fairway = [{ from_yd = 20, to_yd = 136, left_yd = -20, right_yd = 20 }]\n"
    player = player_of(f"handicap = {request.param}\n")
    board = sv.solved(straight_hole(150, par=3, more=fairway), player, coarse_yd=16.0, fine_yd=8.0)
    return Place(board, 0.0, 120.0, int(Lie.FAIRWAY), 2)


def test_from_the_fairway_a_chip_is_no_worse_than_a_pitch(beside: Place) -> None:
    """Coaches have it for the safer of the two (common practice).

    It was a third of a stroke worse: a ball that carries 6 yards and runs 24 had the spread, in per cent, of
    the least of swings.
    """
    found = find_choices(beside, 1, []).choices
    best = {code: min(one.score for one in found if one.action[0] == code) for code in (PART_SWING, PUNCH_SWING)}
    assert abs(best[PUNCH_SWING] - best[PART_SWING]) < 0.1


def test_the_table_of_runs_is_the_games_own(beside: Place) -> None:
    """Of an iron of another speed too: within a fifth."""
    bag = beside.board.bag
    rows = np.arange(bag.shots.first_punch, len(bag.shots))
    stock, straight = int(np.argmin(np.abs(FRACTIONS - 1.0))), len(TILTS_DEG) // 2
    landings = bag.flights.flights[rows, 0, 0, stock, straight, 0].astype(float)
    tabled = [punch_run_yd(bag.shots.shots[row].carry_yd) for row in rows]
    assert runs_yd(landings, Conditions()) == pytest.approx(np.array(tabled), rel=0.2)


def test_no_swing_short_of_full_stands_twice(beside: Place) -> None:
    """A sand wedge gripped down to 54 yards and one to 55 were two columns: two clubs' tries had met."""
    for short_yd in (45.0, 55.0, 60.0, 65.0):
        found = find_choices(Place(beside.board, 0.0, 150.0 - short_yd, beside.lie, 2), 1, []).choices
        assert not [k for k, one in enumerate(found) if any(is_one(one, other) for other in found[:k])], short_yd
