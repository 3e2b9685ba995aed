"""Trees on the line, shot by shot: over, under, through, and where a ball that hits a branch ends.

What a tree does to a ball is known from three tests in print (all second hand): Golf Digest 2017, 60 balls
through six species, 41.5 % of the way on average; Today's Golfer, 60 balls, 47 % (oak) and 35 % (copper
beech) of the normal distance; a television test of "25 % air", 24 and 27 of 100 balls past the tree.
"""

import math
from functools import cache

import numba
import numpy as np
import pytest
from from_python import from_python
from small_games import bag_for, hole_of, row_of, shot, solved, tell

from simulator import load_hole
from simulator.hole.surfaces import LIE_OF, Lie, Surface
from simulator.kernels.value import reading
from simulator.tables.game import make_board

reading = from_python(reading)

HEAD = """
name = "trees"
par = 4
length_yd = 400
green = [{ front_yd = 385, depth_yd = 30, width_yd = 30 }]
"""
M = 0.9144  # metres in a yard, exact
HITS = (np.arange(1000) + 0.5) / 1000  # evenly spread uniform numbers of a hit


@cache
def wall(from_yd, to_yd, top_yd, base_yd, hit_yd):
    """A wall of trees across the line, far wider than any shot."""
    hole = hole_of(
        HEAD + f"trees = [{{ from_yd = {from_yd}, to_yd = {to_yd}, left_yd = -80, right_yd = 80, "
        f"height_yd = {top_yd}, base_yd = {base_yd}, hit_length_yd = {hit_yd} }}]\n"
    )
    return make_board(hole, bag_for("isolde", hole), coarse_yd=40, fine_yd=25)


def past(board, row, bearing_deg=0.0, **more):
    """Share of balls that meet no branch, over evenly spread uniform numbers of a hit."""
    hits = [shot(board, 0, 0, Lie.FAIRWAY, row, bearing_deg, trees=(u, 0.5, 0.0), **more) for u in HITS]
    return 1.0 - np.mean([out["branch"] for out in hits])


def height_at(board, row, share):
    """Height of the stock strike this share of the way to its landing, off the table [yd]."""
    tracks = board.bag.flights.tracks[row, 0, 0, 9, 6, :, 1].astype(float)  # carry fraction 1, no tilt
    return float(np.interp(share, np.arange(1, 13) / 12, tracks))


def test_over_near_the_apex_and_into_it_with_a_low_one():
    # 15 yd high, 6 yd thick, half way of the 9-iron: it is over 20 yd up there, the punch about 10.
    board = wall(70, 76, 15, 0.5, 6.0)
    high, punch = row_of(board.bag, "9-iron"), board.bag.shots.first_putt - 1
    assert board.bag.shots.shots[punch].flight == "punch"
    assert height_at(board, high, 0.6) > 20.0 and 5.0 < height_at(board, punch, 0.58) < 12.0
    assert past(board, high) == 1.0
    assert past(board, punch) < 0.45


@pytest.mark.parametrize("hit_yd", [3.0, 6.0, 20.0])
@pytest.mark.parametrize("bearing_deg", [0.0, 25.0])
def test_chance_of_a_hit_is_exponential_in_the_way_through(hit_yd, bearing_deg):
    # 1 - exp(-L / lambda), L the way over the ground under the crown. The kernel counts cells of a yard along
    # the way: L is known to a step at either end, 0.5 yd on average.
    board = wall(70, 82, 15, 0.0, hit_yd)
    length = 12.0 / math.cos(math.radians(bearing_deg))
    share = past(board, board.bag.shots.first_putt - 1, bearing_deg)
    law = math.exp(-length / hit_yd)
    tell(f"past {length:.1f} yd of crown at {hit_yd:g} yd a hit: {share:.3f}, by the law {law:.3f}")
    assert math.exp(-(length + 0.7) / hit_yd) - 1e-3 <= share <= math.exp(-(length - 0.7) / hit_yd) + 1e-3


def test_only_the_part_of_the_way_inside_the_crown_counts():
    # Nothing is hit where the ball comes down before the wall or starts behind it.
    board = wall(70, 82, 15, 0.0, 3.0)
    punch = board.bag.shots.first_putt - 1
    assert past(board, punch, scale=0.4) == 1.0
    behind = [shot(board, 0, 90, Lie.FAIRWAY, punch, 0.0, trees=(u, 0.5, 0.0))["branch"] for u in HITS]
    assert not any(behind)


def test_under_the_branches_with_a_punch():
    # Branches from 12 yd up: the punch stays under 10 all its way, the full 9-iron is 20 to 26 yd up.
    board = wall(40, 60, 40, 12, 2.0)
    punch, high = len(board.bag.shots) - 1, row_of(board.bag, "9-iron")
    assert max(height_at(board, punch, k / 12) for k in range(1, 13)) < 12.0
    assert past(board, punch) == 1.0
    # well inside the crown all the way through: 20 yd at 2 yd a hit leaves e^-10
    assert height_at(board, high, 40 / 120) > 12.5 and past(board, high) < 0.002


def test_ground_below_counts_from_the_ground_the_tree_stands_on():
    # The same wall standing 12 yd lower: the punch passes over its top.
    text = HEAD + (
        "trees = [{ from_yd = 70, to_yd = 82, left_yd = -80, right_yd = 80, height_yd = 15, base_yd = 0, "
        "hit_length_yd = 3 }]\n"
        "heights_yd = [[0, -100, 12], [0, 100, 12], [20, 0, 12], [60, -100, 0], [60, 100, 0], [60, 0, 0], "
        "[400, -100, 0], [400, 100, 0], [400, 0, 0]]\n"
    )
    hole = hole_of(text)
    board = make_board(hole, bag_for("isolde", hole), coarse_yd=40, fine_yd=25)
    punch = board.bag.shots.first_putt - 1
    assert past(board, punch) == 1.0
    assert past(wall(70, 82, 15, 0.0, 3.0), punch) < 0.05


def test_a_quarter_gets_past_a_crown_of_a_quarter_air():
    # The television test's 24 and 27 of 100 through 8 m of crown (5.8 m to a hit).
    thick = 8.0 / M
    board = wall(70, 70 + thick, 15, 0.0, 5.8 / M)
    share = past(board, board.bag.shots.first_putt - 1)
    tell(f"past 8 m of medium crown: {share:.3f}")
    # whole cells under the crown: 8 or 9 of 8.75 yd
    assert 0.23 <= share <= 0.28


def drawn(rng):
    return (rng.uniform(), *rng.normal(size=4))


def among(club, share):
    """(carry, finishes of the balls that hit, finishes of the same strikes with no tree) at a tall tree.

    The tree stands that share of the way to the landing; finishes are (x, y) from where the ball was struck.
    """
    clear = wall(395, 399, 5, 4, 3.0)  # a wall nobody reaches
    row = row_of(clear.bag, club)
    carry = clear.bag.shots.shots[row].carry_yd
    middle = round(share * carry)
    board = wall(middle - 5, middle + 5, 40, 0.0, 5.8 / M)
    rng, ends = np.random.default_rng(9), []
    for _ in range(2000):
        luck, trees = drawn(rng), tuple(rng.uniform(size=3))
        out = shot(board, 0, 0, Lie.FAIRWAY, row, luck=luck, trees=trees)
        if out["branch"]:
            free = shot(clear, 0, 0, Lie.FAIRWAY, row, luck=luck, trees=trees)
            assert free["branch"] == 0.0
            ends.append((out["rest_x"], out["rest_y"], free["rest_x"], free["rest_y"]))
    ends = np.array(ends)
    return carry, ends[:, :2], ends[:, 2:]


@pytest.mark.parametrize("club", ["driver", "6-iron"])
def test_how_far_a_ball_gets_that_hit_a_tree(club):
    # Mean over the balls of the distance from where they were struck, over that with no tree. Where the trees
    # of the published tests stood is not known, and a ball drops about where it hits: the figures say as much
    # about that as about the trees. Measured with the tree at 30, 40 and 50 % of the carry: 33, 41 and
    # 49 % for a driver, 36, 43 and 52 % for a 6-iron. Held here: at two fifths, the published average.
    _, hit, free = among(club, 0.4)
    ways = np.hypot(*hit.T) / np.hypot(*free.T)
    error = ways.std() / math.sqrt(len(ways))
    tell(f"{club}: {len(ways)} hit, {100 * ways.mean():.1f} +- {100 * error:.1f} % of the way")
    assert ways.mean() == pytest.approx(0.415, abs=0.06)
    # oak 47 % and copper beech 35 %: a fair share of the balls ends on either side of both
    assert 0.05 < (ways < 0.35).mean() < 0.5 and 0.05 < (ways > 0.47).mean() < 0.5


def test_a_ball_off_a_branch_goes_any_way_and_not_far():
    # A uniform share, from none to 0.6, of what was left of its carry, in any direction: mean of the
    # displacement none, 95 % of the balls within 0.6 of what was left (a few yards of run on top).
    carry, hit, _ = among("6-iron", 0.5)
    half = 0.5 * carry
    off = hit - [0.0, half]
    assert abs(off[:, 0].mean()) < 4.0 * off[:, 0].std() / math.sqrt(len(off))
    assert abs(off[:, 1].mean()) < 6.0  # hits are before the middle of the crown
    far = np.quantile(np.hypot(*off.T), 0.95)
    assert 0.4 * half < far < 0.6 * half + 15.0


@numba.njit
def _readings(field, lies, x, y, out):
    for k in range(x.shape[0]):
        out[k] = reading(field, lies[k], x[k], y[k])


@pytest.mark.parametrize("name", ["withy-drain", "eel-trap", "long-sluice"])
def test_every_place_a_ball_can_lie_has_a_value(name):
    hole = load_hole(name)
    board = solved(hole, bag_for("barnaby", hole), coarse_yd=16, fine_yd=8)
    raster = board.raster
    none = {Surface.GREEN, Surface.WATER, Surface.OUT_OF_BOUNDS}  # putted from; never played from
    of = np.array([-1 if s in none or s not in LIE_OF else LIE_OF[s] for s in Surface], np.int64)
    lies = of[raster.surface]
    j, i = np.nonzero(lies >= 0)
    x, y = raster.x0_yd + i * raster.cell_yd, raster.y0_yd + j * raster.cell_yd
    out = np.empty(x.size)
    _readings(board.game.field, lies[j, i], x, y, out)
    tell(f"{name}: {x.size} cells, {np.isnan(out).sum()} without a value, {out.min():.2f} to {out.max():.2f}")
    assert np.isfinite(out).all()
    assert out.min() > 1.0 and out.max() < 20.0
