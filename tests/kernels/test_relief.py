"""Relief under the Rules of Golf 2023, each option in a hole made for it, against every place allowed.

The value map is written by hand, so what a drop is worth is known: strokes = base of the lie + 0.01 a yard.
"""

import math

import numpy as np
import pytest
from naive import TWO_CLUB_LENGTHS_YD, Ground
from small_games import bag_of, hole_of, row_of, shot, with_fields

from simulator.hole.surfaces import Lie, Surface
from simulator.tables.game import make_board

PIN_Y = 400.0
HEAD = """
name = "relief"
par = 4
length_yd = 400
green = [{ front_yd = 385, depth_yd = 30, width_yd = 30 }]
"""
BASES = {
    Lie.TEE: 2.4, Lie.FAIRWAY: 2.4, Lie.ROUGH: 2.6, Lie.HEAVY_ROUGH: 2.9, Lie.BUNKER: 2.9, Lie.TREES: 3.2,
    Lie.DRY_PENALTY: 3.0, Lie.GREEN: 2.0,
}  # fmt: skip


def game_of(more, bases=None):
    """(board, twin) of a hole with `more` in it and a map of known values."""
    hole = hole_of(HEAD + more)
    known = {**BASES, **(bases or {})}
    board = with_fields(
        make_board(hole, bag_of("isolde"), coarse_yd=10, fine_yd=5),
        lambda lie, x, y: known[Lie(lie)] + 0.01 * np.hypot(x, PIN_Y - y),
    )
    return board, Ground(board, hole)


def play(board, *, x=0.0, y=100.0, aim_deg=0.0, replay=9.0, lie=Lie.FAIRWAY, club="7-iron", **more):
    return shot(board, x, y, lie, row_of(board.bag, club), aim_deg, replay=replay, **more)


def out(x, y):
    return math.hypot(x, PIN_Y - y)


RED_BESIDE = """
penalty_area = [{ name = "burn", colour = "red", from_yd = 0, to_yd = 330, left_yd = 25, right_yd = 60 }]
"""
ACROSS = """
[[penalty_area]]
name = "dyke"
colour = "{colour}"
from_yd = 225
to_yd = 262
left_yd = -80
right_yd = 80
"""


def crossing_of(board, edge_x, x=0.0, y=100.0, aim_deg=0.0):
    """Where the straight ground track crosses x = edge_x."""
    return edge_x, y + (edge_x - x) / math.tan(math.radians(aim_deg))


def test_the_flight_really_ends_in_the_hazard():
    board, _ = game_of(RED_BESIDE)
    result = play(board, aim_deg=15.0)
    assert Surface(int(result["surface"])) is Surface.WATER
    assert (result["rest_x"], result["rest_y"]) == (
        result["land_x"],
        result["land_y"],
    )  # water keeps the ball
    assert 25.0 < result["land_x"] < 60.0


def test_red_lateral_relief():
    # 17.1d(3): one stroke, within two club-lengths of where it crossed, not nearer the hole.
    board, twin = game_of(RED_BESIDE)
    result = play(board, aim_deg=15.0)
    cross = crossing_of(board, 25.0, aim_deg=15.0)
    assert result["cost"] == 2.0
    drop = result["x"], result["y"]
    # a yard for the raster's cell, in which the last dry place is found
    assert math.dist(drop, cross) <= TWO_CLUB_LENGTHS_YD + 1.5
    assert out(*drop) >= out(*cross) - 0.5
    assert twin.surface(*drop) is Surface.ROUGH and result["lie"] == Lie.ROUGH
    assert result["value"] == pytest.approx(twin.value(Lie.ROUGH, *drop), abs=1e-9)
    # the best of a few drops is at most 0.02 strokes behind the best of all of them
    best = twin.penalty_total(*cross, red=True, replay=9.0)
    assert best - 0.02 <= result["cost"] - 1 + result["value"] <= best + 0.03


SIDE_POND = """
[[penalty_area]]
name = "pond"
colour = "{colour}"
from_yd = 340
to_yd = 440
left_yd = 30
right_yd = 70
"""


def test_yellow_has_no_lateral_relief():
    # Hit across the line of play: behind the crossing point, seen from the hole, is 40 yd of water.
    # Red drops beside the crossing point; yellow must go round the back of the pond.
    totals = {}
    for colour in ("red", "yellow"):
        board, twin = game_of(SIDE_POND.format(colour=colour))
        result = play(board, x=-105.0, y=390.0, aim_deg=90.0)
        assert Surface(int(result["surface"])) is Surface.WATER and result["cost"] == 2.0
        totals[colour] = result["cost"] - 1 + result["value"]
        best = twin.penalty_total(30.0, 390.0, red=colour == "red", replay=9.0)
        # seven places stand for the line, each 1.8 times as far back as the last: 10 yd too far here
        assert best - 0.02 <= totals[colour] <= best + (0.12 if colour == "yellow" else 0.03)
        drop = np.array([result["x"], result["y"]])
        if colour == "yellow":
            u = np.array([30.0, -10.0]) / math.hypot(30.0, 10.0)
            assert abs((drop - (30.0, 390.0)) @ (u[1], -u[0])) < 1.0  # on the line of hole and crossing point, to a cell
            assert drop[0] > 70.0
        else:
            assert math.dist(drop, (30.0, 390.0)) <= TWO_CLUB_LENGTHS_YD + 1.0
            assert out(*drop) > out(30.0, 390.0) - 1.0
    assert totals["yellow"] - totals["red"] > 0.3


def test_the_crossing_point_is_known_to_a_cell():
    # Water beside the line: the line from the hole through the crossing point runs on in it, half a yard in
    # after four. The last dry cell stands for the edge, so a drop close behind can count as dry: a player
    # who must say where a ball crossed knows it no better.
    board, twin = game_of(RED_BESIDE.replace("red", "yellow"))
    result = play(board, aim_deg=15.0)
    drop, cross = (result["x"], result["y"]), crossing_of(board, 25.0, aim_deg=15.0)
    if result["lie"] == -1:  # no place close behind counted as dry: the line runs on in water, so he replays
        assert result["cost"] == 2.0
        return
    assert twin.surface(*drop) is Surface.ROUGH
    assert abs(drop[0] - 25.0) < 1.5 and math.dist(drop, cross) < 9.0
    assert out(*drop) > out(*cross) - 1.0


def test_stroke_and_distance_where_it_is_cheapest():
    board, _ = game_of(SIDE_POND.format(colour="yellow"))
    result = play(board, x=-105.0, y=390.0, aim_deg=90.0, replay=3.0)
    assert (result["cost"], result["lie"], result["value"]) == (2.0, -1, 3.0)
    assert (result["x"], result["y"]) == (-105.0, 390.0)


@pytest.mark.parametrize("colour", ["yellow", "red"])
def test_back_on_the_line(colour):
    # 17.1d(2): a stream straight across; the crossing point stays between hole and drop.
    board, twin = game_of(ACROSS.format(colour=colour))
    aim = 4.0
    result = play(board, aim_deg=aim)
    cross = np.array([125.0 * math.tan(math.radians(aim)), 225.0])
    assert Surface(int(result["surface"])) is Surface.WATER
    assert result["cost"] == 2.0
    drop = np.array([result["x"], result["y"]])
    if colour == "yellow":
        u = (cross - (0, PIN_Y)) / out(*cross)
        assert abs((drop - cross) @ (u[1], -u[0])) < 0.2
        assert (drop - cross) @ u > 0.5
    assert out(*drop) > out(*cross) - 0.5
    best = twin.penalty_total(*cross, red=colour == "red", replay=9.0)
    assert result["cost"] - 1 + result["value"] == pytest.approx(best, abs=0.03)


def test_running_in_crosses_where_it_rolled_in():
    board, _twin = game_of(ACROSS.format(colour="yellow"))
    # lands short of the dyke and runs in: the crossing point is on the ground, on the line of play
    carry = play(board, y=0.0, lie=Lie.TEE, club="driver")["land_y"]
    result = play(board, y=222.0 - carry, lie=Lie.TEE, club="driver")
    assert result["land_y"] == pytest.approx(222.0, abs=0.1)
    assert Surface(int(result["surface"])) is Surface.WATER
    assert 225.0 <= result["rest_y"] < 227.0  # it stops where it goes in
    assert result["x"] == pytest.approx(result["land_x"], abs=0.1)
    assert 222.5 < result["y"] < 225.0
    assert result["cost"] == 2.0


def test_out_of_bounds_is_stroke_and_distance():
    # 18.2: whatever it costs, there is nothing else.
    board, _ = game_of("out_of_bounds = [{ right_of_yd = 25 }]")
    for replay in (3.0, 9.0):
        result = play(board, aim_deg=15.0, replay=replay)
        assert (result["cost"], result["lie"], result["value"]) == (2.0, -1, replay)


E5 = """
local_rule_e5 = true
out_of_bounds = [{ right_of_yd = 25 }]
fairway = [{ from_yd = 120, to_yd = 380, left_yd = -15, right_yd = 15 }]
"""


def test_local_rule_costs_two_and_goes_to_the_fairway():
    # Model Local Rule E-5: two strokes, at the edge of the fairway, not nearer the hole.
    board, twin = game_of(E5)
    result = play(board, aim_deg=15.0)
    assert result["cost"] == 3.0 and result["lie"] == Lie.FAIRWAY
    drop, ball = (result["x"], result["y"]), (result["rest_x"], result["rest_y"])
    assert out(*drop) >= out(*ball) - 1e-9
    assert twin.surface(*drop) is Surface.FAIRWAY
    assert 15.0 - TWO_CLUB_LENGTHS_YD - 1.5 < result["x"] < 15.0  # near the edge on the ball's side
    # straight beside where it crossed the boundary, not beside where it lies: 8E-5; rings of two yards are looked at
    crossed = crossing_of(board, 25.0, aim_deg=15.0)
    assert ball[1] > crossed[1] + 10.0
    assert out(*drop) >= out(*crossed) - 2.5
    assert drop[1] == pytest.approx(crossed[1], abs=6.0)
    assert result["value"] == pytest.approx(2.4 + 0.01 * out(*drop), abs=1e-3)


def test_a_ball_that_runs_out_of_bounds_crossed_where_it_ran():
    """Landed in bounds: the boundary is crossed on the straight way from the landing to where it lies."""
    board, _ = game_of(E5)
    for aim_deg in np.arange(4.0, 15.0, 0.05):
        result = play(board, aim_deg=float(aim_deg), club="driver")
        landed, ball = (result["land_x"], result["land_y"]), (result["rest_x"], result["rest_y"])
        if landed[0] < 24.5 and ball[0] > 25.5 and result["surface"] == Surface.OUT_OF_BOUNDS:
            break
    else:
        pytest.fail("no drive ran out")
    share = (25.0 - landed[0]) / (ball[0] - landed[0])
    crossed = 25.0, landed[1] + share * (ball[1] - landed[1])
    assert result["cost"] == 3.0
    assert out(*crossed) - 2.5 <= out(result["x"], result["y"]) <= out(*crossed) + 8.0


def test_local_rule_is_not_taken_where_the_replay_is_cheaper():
    board, _ = game_of(E5)
    fairway = play(board, aim_deg=15.0)["value"]
    for replay, cost in ((fairway + 0.9, 2.0), (fairway + 1.1, 3.0)):
        assert play(board, aim_deg=15.0, replay=replay)["cost"] == cost


HEAVY = """
[[heavy_rough]]
name = "reeds"
lost_chance = 0.25
from_yd = 200
to_yd = 300
left_yd = -60
right_yd = 60
"""


def test_lost_ball():
    board, _twin = game_of(HEAVY)
    result = play(board, replay=4.0)
    assert result["lost"] == 0.25
    assert (result["lost_cost"], result["lost_lie"], result["lost_value"]) == (2.0, -1, 4.0)
    assert (result["cost"], result["lie"]) == (1.0, Lie.HEAVY_ROUGH)
    assert result["value"] == pytest.approx(2.9 + 0.01 * out(result["x"], result["y"]), abs=1e-3)
    assert result["holed"] == 0.0


def test_lost_ball_under_the_local_rule():
    fairway = (
        "local_rule_e5 = true\nfairway = [{ from_yd = 60, to_yd = 190, left_yd = -15, right_yd = 15 }]\n"
    )
    board, twin = game_of(fairway + HEAVY)
    result = play(board, replay=9.0)
    assert (result["lost_cost"], result["lost_lie"]) == (3.0, Lie.FAIRWAY)
    assert twin.surface(result["lost_x"], result["lost_y"]) is Surface.FAIRWAY


@pytest.mark.parametrize(("base", "plays_on"), [(3.5, True), (3.7, False), (4.9, False)])
def test_unplayable_in_heavy_rough(base, plays_on):
    # 19.2: one stroke, back on the line or two club-lengths beside; here out onto plain rough by the edge.
    narrow = HEAVY.replace("= -60", "= -2").replace("= 60", "= 2")
    board, twin = game_of(narrow, {Lie.HEAVY_ROUGH: base})
    result = play(board)
    assert Surface(int(result["surface"])) is Surface.HEAVY_ROUGH
    at = result["rest_x"], result["rest_y"]
    as_it_lies = base + 0.01 * out(*at)
    best = min(as_it_lies, twin.unplayable_total(*at, 9.0, in_bunker=False))
    assert result["cost"] - 1 + result["value"] == pytest.approx(best, abs=0.03)
    assert (result["cost"] == 1.0) == plays_on
    if not plays_on:
        assert math.dist((result["x"], result["y"]), at) <= TWO_CLUB_LENGTHS_YD + 1e-6
        assert out(result["x"], result["y"]) >= out(*at) - 1e-9
        assert result["lie"] == Lie.ROUGH


@pytest.mark.parametrize(("base", "cost"), [(4.5, 1.0), (5.1, 3.0)])
def test_unplayable_in_a_bunker_comes_out_for_two(base, cost):
    # 19.3b: back on the line outside the bunker for two strokes.
    bunker = "bunker = [{ from_yd = 235, to_yd = 255, left_yd = -20, right_yd = 20 }]"
    board, twin = game_of(bunker, {Lie.BUNKER: base})
    result = play(board)
    assert Surface(int(result["surface"])) is Surface.BUNKER
    at = result["rest_x"], result["rest_y"]
    best = min(base + 0.01 * out(*at), twin.unplayable_total(*at, 9.0, in_bunker=True))
    assert result["cost"] == cost
    assert result["cost"] - 1 + result["value"] == pytest.approx(best, abs=0.2)
    assert best <= result["cost"] - 1 + result["value"] + 1e-3
    if cost == 3.0:
        assert result["x"] == pytest.approx(0.0, abs=1e-6) and result["y"] < 235.0
        assert result["lie"] == Lie.ROUGH


def test_unplayable_replay():
    # Stroke and distance is the cheapest from sand that costs nine.
    bunker = "bunker = [{ from_yd = 235, to_yd = 255, left_yd = -20, right_yd = 20 }]"
    board, _ = game_of(bunker, {Lie.BUNKER: 9.0})
    result = play(board, replay=3.0)
    assert (result["cost"], result["lie"], result["value"]) == (2.0, -1, 3.0)


DRY = ACROSS.format(colour="red") + "playable = true\n"


def test_dry_penalty_area_is_played_as_it_lies():
    # 17.1b: no penalty; and no unplayable ball in there (19.1).
    board, _twin = game_of(DRY)
    result = play(board)
    assert Surface(int(result["surface"])) is Surface.DRY_PENALTY
    assert (result["cost"], result["lie"]) == (1.0, Lie.DRY_PENALTY)
    assert (result["x"], result["y"]) == (result["rest_x"], result["rest_y"])
    assert result["rest_y"] > result["land_y"]  # it ran on: no water
    assert result["lost"] == 0.0


def test_dry_penalty_area_too_bad_to_play_from():
    board, twin = game_of(DRY, {Lie.DRY_PENALTY: 7.0})
    result = play(board)
    assert result["cost"] == 2.0 and result["lie"] == Lie.ROUGH
    # behind the crossing point: 225 yd up, where the dyke begins
    assert 221.0 < result["y"] < 225.0
    best = twin.penalty_total(0.0, 225.0, red=True, replay=9.0)
    assert result["cost"] - 1 + result["value"] == pytest.approx(best, abs=0.03)


def test_drops_stay_in_play():
    # A drop may lie in no penalty area and not out of bounds, even where those would be nearer.
    squeezed = """
out_of_bounds = [{ right_of_yd = 64 }]
penalty_area = [
  { name = "burn", colour = "red", from_yd = 0, to_yd = 330, left_yd = 25, right_yd = 60 },
  { name = "ditch", colour = "red", from_yd = 0, to_yd = 330, left_yd = 17, right_yd = 21 },
]
"""
    board, twin = game_of(squeezed)
    result = play(board, aim_deg=15.0)
    assert result["lie"] == Lie.ROUGH
    assert twin.surface(result["x"], result["y"]) is Surface.ROUGH


def test_lost_ball_in_the_mean_of_an_action():
    # The mean of one strike with a chance of loss, written out.
    from simulator.engine import value_actions

    board, _ = game_of(HEAVY)
    strikes = np.zeros((1, 1, 7))
    strikes[0, 0, 0] = 0.999999
    row = row_of(board.bag, "7-iron")
    lie = int(Lie.FAIRWAY)  # numba 0.60 takes no enum from outside
    cost, again = value_actions(board, 0.0, 100.0, lie, np.array([[row, 0.0, 0.0]]), 4.0, strikes)[0, 0]
    one = play(board, replay=4.0)
    assert cost == pytest.approx(0.75 * (1.0 + one["value"]) + 0.25 * 2.0, abs=1e-9)
    assert again == 0.25
