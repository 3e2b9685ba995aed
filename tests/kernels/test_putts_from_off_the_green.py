"""A putt that starts on the fairway: rolled on by the grass it crosses, spread as putts are, and when it is played."""

from __future__ import annotations

import math

import numpy as np
import pytest
from from_python import from_python
from small_games import bag_for, bag_of, shot, solved, straight_hole, with_fields, with_relief

from simulator import load_player
from simulator.conditions import Conditions, Wind
from simulator.engine import PART_SWING, PUTT_SWING
from simulator.hole.surfaces import Lie
from simulator.kernels import codes as c
from simulator.kernels.shot import swing_of
from simulator.physics.ground import GROUNDS
from simulator.physics.putting import DEFAULT_STIMP_FT, M_PER_FT, STIMP_RELEASE_MPS
from simulator.strategy.asked import find_choices
from simulator.strategy.tries import Place, part_families
from simulator.tables.game import Board, make_board

swing_of = from_python(swing_of)

CELL_YD = 0.25
EDGE_YD, PIN_YD = 405.0, 420.0
"""Where fairway ends and green begins on the way to the pin: the green of `straight_hole` is 30 yd across."""

APRON = f"fairway = [{{ from_yd = 300, to_yd = {EDGE_YD + 1.0}, left_yd = -15, right_yd = 15 }}]\n"
G_YDPS2 = 9.80665 / 0.9144


@pytest.fixture(scope="module")
def board() -> Board:
    board = make_board(
        straight_hole(int(PIN_YD), more=APRON), bag_of("barnaby"), coarse_yd=10, fine_yd=5, cell_yd=CELL_YD
    )
    return with_fields(board, lambda lie, x, y: 2.4 + 0.05 * lie + 0.006 * np.hypot(x, PIN_YD - y))


def rolled(board: Board, y_yd: float, roll_yd: float, **luck: object) -> dict[str, float]:
    """A putt that would roll so far on the green, from the middle of the fairway straight on."""
    lie = int(Lie.FAIRWAY)
    row = board.part_row(PUTT_SWING, lie, roll_yd)
    return shot(board, 0.0, y_yd, lie, row, scale=roll_yd / board.game.strikes[row, lie, c.STRIKE_REACH], **luck)


def by_energy(y_yd: float, roll_yd: float) -> float:
    """Where a rolling ball ends: each yard of grass takes 2 g mu of the square of its speed.

    By the Stimpmeter's definition it starts with the square of its release speed for every reading it rolls.
    """
    mu = {name: GROUNDS[name].rolling_friction for name in ("FAIRWAY", "GREEN")}
    squared = roll_yd / (DEFAULT_STIMP_FT * M_PER_FT / 0.9144) * (STIMP_RELEASE_MPS / 0.9144) ** 2
    over_fairway = EDGE_YD - y_yd
    left = squared - 2.0 * G_YDPS2 * mu["FAIRWAY"] * over_fairway
    if left < 0.0:
        return y_yd + squared / (2.0 * G_YDPS2 * mu["FAIRWAY"])
    return EDGE_YD + left / (2.0 * G_YDPS2 * mu["GREEN"])


@pytest.mark.parametrize("y_yd", [404.5, 402.0, 398.0, 392.0])
@pytest.mark.parametrize("roll_yd", [4.0, 9.0, 15.0, 24.0, 28.0])
def test_it_rolls_as_far_as_its_energy_takes_it(board: Board, y_yd: float, roll_yd: float) -> None:
    # where the green begins is known to a cell, and a cell of fairway is worth three of green
    assert rolled(board, y_yd, roll_yd)["rest_y"] == pytest.approx(by_energy(y_yd, roll_yd), abs=4.0 * CELL_YD)


@pytest.mark.parametrize("slope", [0.0, 0.03, -0.02])
@pytest.mark.parametrize(("y_yd", "way_yd"), [(404.5, 5.0), (402.0, 17.0), (396.0, 16.0), (391.0, 8.0), (391.0, 30.0)])
def test_it_is_struck_for_the_ground_it_crosses(board: Board, y_yd: float, way_yd: float, slope: float) -> None:
    # struck as hard as it needs to roll so far, the middling putt does: over fairway, on to the green, up and down
    hilly = with_relief(board, lambda x, y: slope * y + 0.0 * x) if slope else board
    lie, away = int(Lie.FAIRWAY), PIN_YD - y_yd
    row, scale = swing_of(hilly.game, 0.0, y_yd, lie, PUTT_SWING, 0.0, way_yd - away, away, 0.0, 1.0)
    rests = shot(hilly, 0.0, y_yd, lie, row, scale=scale)["rest_y"]
    assert rests - y_yd == pytest.approx(way_yd, abs=4.0 * CELL_YD)


def test_it_is_spread_as_a_putt(board: Board) -> None:
    # pace: a share of the roll; line: that of a putt so long; no putt is a mishit
    rng = np.random.default_rng(4)
    who, roll_yd, count = load_player("barnaby").putting, 18.0, 3000
    rests = []
    for _ in range(count):
        one = rolled(board, EDGE_YD + 0.5, roll_yd, luck=(rng.uniform(), *rng.normal(size=4)))
        rests.append((one["rest_x"], one["rest_y"] - EDGE_YD - 0.5))
    x, y = np.array(rests).T
    row = board.part_row(PUTT_SWING, int(Lie.FAIRWAY), roll_yd)
    length_ft = 3.0 * board.bag.shots.shots[row].carry_yd
    angle_deg = math.hypot(who.angle_sd_deg, who.angle_growth_deg_per_ft * length_ft)
    four_errors = 4.0 / math.sqrt(2.0 * count)
    assert np.degrees(np.arctan2(x, y)).std() == pytest.approx(angle_deg, rel=four_errors)
    assert y.std() / roll_yd == pytest.approx(math.hypot(who.distance_sd, 0.1), rel=four_errors + 0.01)
    assert y.mean() == pytest.approx(roll_yd, abs=4.0 * y.std() / math.sqrt(count) + CELL_YD)


def test_no_wind_moves_it(board: Board) -> None:
    hole = straight_hole(int(PIN_YD), more=APRON)
    windy = make_board(hole, bag_for("barnaby", hole, Conditions(wind=Wind(25.0, 70.0))), cell_yd=CELL_YD)
    windy = with_fields(windy, lambda lie, x, y: 3.0 + 0.0 * x + 0.0 * y)
    there, blown = (rolled(one, 400.0, 24.0, wind=blows) for one, blows in ((board, (0.0, 0.0)), (windy, (-11.0, -4.0))))
    assert (there["rest_x"], there["rest_y"]) == (blown["rest_x"], blown["rest_y"])


@pytest.mark.parametrize("handicap", [18, 36, 54])
def test_from_the_apron_an_amateurs_putter_beats_the_wedge(handicap: int) -> None:
    """Teachers' advice to all but the best (common practice): putt wherever you can."""
    fairway = "fairway = [{ from_yd = 20, to_yd = 140, left_yd = -20, right_yd = 20 }]\n"
    board = solved(straight_hole(150, par=3, more=fairway), bag_of(f"handicap = {handicap}\n"))
    near = Place(board, 0.0, 136.0, int(Lie.FAIRWAY), 2)
    scores = {one.action[0]: one.score for one in find_choices(near, 1, []).choices}
    assert scores[PUTT_SWING] < scores[PART_SWING] - 0.1
    for lie, y_yd in ((Lie.ROUGH, 136.0), (Lie.BUNKER, 136.0), (Lie.FAIRWAY, 100.0)):
        assert not [code for code, _ in part_families(Place(board, 0.0, y_yd, int(lie), 2)).values() if code == PUTT_SWING]
