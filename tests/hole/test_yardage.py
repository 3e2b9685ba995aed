"""Yardage against geometry done by hand, on straight and bent holes."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely

from simulator.hole import Hole, load_hole
from simulator.hole.sketch import read_sketch
from simulator.hole.troubles import BESIDE_YD
from simulator.hole.yardage import measure

PLAIN = {
    "name": "Plain", "par": 4, "length_yd": 380,
    "green": [{"at_yd": 380, "offset_yd": 0, "depth_yd": 30, "width_yd": 24}],
    "pin": [{"name": "middle", "on_yd": 15}, {"name": "left", "on_yd": 15, "offset_yd": -6}],
    "fairway": [{"stations_yd": [150, 350], "left_yd": [-10, -20], "right_yd": [20, 20]}],
    "bunker": [{"name": "pot", "at_yd": 240, "offset_yd": 0, "depth_yd": 8, "width_yd": 8}],
    "penalty_area": [
        {"name": "pond", "colour": "red", "from_yd": 200, "to_yd": 230, "left_yd": 15, "right_yd": 40},
        {"name": "ditch", "colour": "yellow", "from_yd": 300, "to_yd": 306, "left_yd": -80, "right_yd": 80},
    ],
    "out_of_bounds": [{"name": "road", "left_of_yd": -40}],
    "trees": [{"name": "far wood", "from_yd": 100, "to_yd": 200, "left_yd": 90, "right_yd": 120}],
}  # fmt: skip


def plain(**more: object) -> Hole:
    return read_sketch({**PLAIN, **more}, "plain")


def test_near_far_reach_and_clear_of_a_pond_beside_the_line() -> None:
    pond = next(one for one in measure(plain()).troubles if one.name == "pond")
    assert (pond.side, pond.kind) == ("right", "water")
    assert (pond.near_yd, pond.far_yd, pond.offset_yd) == pytest.approx((200, 230, 15), abs=1e-6)
    assert pond.reach_yd == pytest.approx(math.hypot(15, 200))
    assert pond.clear_yd == pytest.approx(math.hypot(40, 230))
    assert pond.line_near_yd is None and pond.line_far_yd is None


def test_a_ditch_across_is_told_on_the_line_and_cut_at_the_page() -> None:
    ditch = next(one for one in measure(plain()).troubles if one.name == "ditch")
    assert ditch.side == "across" and ditch.offset_yd == 0.0
    assert (ditch.line_near_yd, ditch.line_far_yd) == pytest.approx((300, 306))
    assert ditch.reach_yd == pytest.approx(300)
    assert ditch.clear_yd == pytest.approx(math.hypot(BESIDE_YD, 306), rel=2e-3) or ditch.clear_yd < 312


def test_what_goes_on_behind_the_page_has_no_carry_over_it() -> None:
    """A road the length of the hole; one that ends level with the green's back edge is cleared."""
    short = {"name": "wall", "right_of_yd": 40, "from_yd": 100, "to_yd": 395}
    hole = plain(out_of_bounds=[*PLAIN["out_of_bounds"], short])  # type: ignore[misc]
    troubles = {one.name: one for one in measure(hole).troubles}
    assert troubles["road"].clear_yd is None
    assert troubles["wall"].clear_yd == pytest.approx(math.hypot(BESIDE_YD, 395))


@pytest.mark.parametrize("side", [-1, 1])
def test_a_tree_that_reaches_the_line_is_on_the_side_it_stands_on(side: int) -> None:
    """Its crown ends at the line: the last bit of a sine must not put it on the other side."""
    hole = plain(tree=[{"name": "oak", "at_yd": 225.3, "offset_yd": 5.5 * side, "crown_yd": 11}])
    oak = next(one for one in measure(hole).troubles if one.name == "oak")
    assert oak.side == ("right" if side > 0 else "left")
    assert oak.offset_yd == pytest.approx(0.0, abs=0.01) and math.copysign(1.0, oak.offset_yd) == side


WINDING = [[118, -70], [118, 20], [150, 20], [150, 70], [158, 70], [158, 12], [126, 12], [126, -70]]
"""Over the line at 118 to 126, beside it on the right, away again: a stream that does not come back."""


@pytest.mark.parametrize("ball", [(0.0, 0.0), (0.0, 20.0)])
def test_water_round_a_green_is_cleared_short_of_it(ball: tuple[float, float]) -> None:
    """A moat 60 by 60 round an island 24 deep and 20 wide: nobody need carry its far bank to be on."""
    hole = read_sketch({
        "name": "Isle", "par": 3, "length_yd": 140, "pin": [{"name": "middle", "on_yd": 12}],
        "green": [{"points_yd": [[128, -10], [152, -10], [152, 10], [128, 10]]}],
        "penalty_area": [{
            "name": "moat", "colour": "red", "xy_yd": [[-30, 110], [30, 110], [30, 170], [-30, 170]],
            "holes_xy_yd": [[[-10, 128], [-10, 152], [10, 152], [10, 128]]],
        }],
    }, "isle")  # fmt: skip
    found = [one for one in measure(hole, ball).troubles if one.name == "moat"]
    front, back = (one for one in found if one.side == "across")
    left, right = (next(one for one in found if one.side == side) for side in ("left", "right"))
    assert len(found) == 4
    assert (front.line_near_yd, front.line_far_yd) == pytest.approx((110, 128), abs=0.01)
    assert (back.line_near_yd, back.line_far_yd) == pytest.approx((152, 170), abs=0.01)
    assert front.clear_yd == pytest.approx(math.hypot(30, 128 - ball[1]), abs=0.01)
    assert (front.reach_yd, back.reach_yd) == pytest.approx((110 - ball[1], 152 - ball[1]), abs=0.01)
    assert back.clear_yd == pytest.approx(math.hypot(30, 170 - ball[1]), abs=0.01)
    assert (left.offset_yd, right.offset_yd) == pytest.approx((-10, 10), abs=0.01)
    assert sum(one.ground.area for one in found) == pytest.approx(60 * 60 - 24 * 20, abs=1.0)


def test_the_eyots_river_is_cleared_before_its_green_begins() -> None:
    measured = measure(load_hole("ostrel-heath/11"))
    first = next(one for one in measured.troubles if one.name == "river" and one.side == "across")
    assert first.line_far_yd < measured.green.front_yd < first.clear_yd < measured.green.back_yd


def test_a_stream_that_crosses_twice_is_two_and_one_that_bends_away_is_one() -> None:
    bends = [[118, -70], [118, 20], [250, 20], [250, -70], [258, -70], [258, 28], [110, 28], [110, -70]]
    twice = {"name": "burn", "colour": "red", "points_yd": bends}
    hole = plain(penalty_area=[{"name": "beck", "colour": "red", "points_yd": WINDING}, twice], bunker=[])
    found = measure(plain(penalty_area=[twice])).troubles
    across = [(one.line_near_yd, one.line_far_yd) for one in found if one.side == "across"]
    assert across == [pytest.approx((110, 118)), pytest.approx((236, 244)), pytest.approx((250, 258))]  # the pot too
    assert [one.side for one in measure(hole).troubles if one.name == "beck"] == ["across"]


def test_trouble_with_other_trouble_in_it_is_one() -> None:
    """Reeds on both banks of a ditch: there is no ground between to play from."""
    reeds = [{"name": "reeds", "from_yd": 296, "to_yd": 310, "left_yd": -30, "right_yd": 30}]
    found = [one for one in measure(plain(heavy_rough=reeds, fairway=[])).troubles if one.name == "reeds"]
    assert [(one.line_near_yd, one.line_far_yd) for one in found] == [pytest.approx((296, 310))]


def test_distances_from_the_ball_elsewhere() -> None:
    pond = next(one for one in measure(plain(), (10.0, 150.0)).troubles if one.name == "pond")
    assert pond.reach_yd == pytest.approx(math.hypot(5, 50))
    assert pond.near_yd == pytest.approx(200)


def test_what_is_far_from_the_line_is_not_on_the_page() -> None:
    names = [one.name for one in measure(plain()).troubles]
    assert "far wood" not in names and "road" in names
    assert names == sorted(names, key=lambda name: {"road": 0, "pond": 200, "pot": 236, "ditch": 300}[name])


def test_ground_under_another_area_counts_for_the_upper_one() -> None:
    reeds = [{"name": "reeds", "from_yd": 190, "to_yd": 225, "left_yd": 15, "right_yd": 40}]
    found = {one.name: one for one in measure(plain(heavy_rough=reeds)).troubles}
    assert found["reeds"].far_yd == pytest.approx(200)  # the pond begins there


def test_widths_every_ten_yards() -> None:
    widths = {one.station_yd: one for one in measure(plain()).widths}
    for station in range(160, 350, 10):
        if station in (240,):
            continue
        left = np.interp(station, [150, 350], [-10, -20])
        if 200 <= station <= 230:
            assert widths[station].right_yd == pytest.approx(15)  # the pond lies on it
        elif station not in (300,):
            assert widths[station].right_yd == pytest.approx(20)
        if station != 300:
            assert widths[station].left_yd == pytest.approx(left, abs=1e-6)
    assert 240.0 in widths  # the bunker in it leaves two pieces: the wider one counts
    assert widths[240.0].width_yd == pytest.approx(20 - 4, abs=0.1)
    assert 370.0 not in widths


def test_the_green_and_its_pins() -> None:
    green = measure(plain()).green
    assert (green.front_yd, green.back_yd) == pytest.approx((365, 395), abs=0.05)
    assert green.depth_yd == pytest.approx(30, abs=0.1) and green.width_yd == pytest.approx(24, abs=0.1)
    middle, left = green.pins
    assert (middle.on_yd, middle.from_left_yd, middle.from_right_yd) == pytest.approx((15, 12, 12), abs=0.1)
    assert (left.on_yd, left.from_left_yd, left.from_right_yd) == pytest.approx((15, 6, 18), abs=0.1)
    assert green.ball_front_yd == pytest.approx(365, abs=0.05)


def test_stations_run_round_a_bend() -> None:
    """A hole bent at 100 yd: what lies beyond is at the same stations, nearer in a straight line."""
    bent = measure(plain(bends=[{"at_yd": 100, "turn_deg": 60}]))
    pond = next(one for one in bent.troubles if one.name == "pond")
    assert (pond.near_yd, pond.far_yd, pond.offset_yd) == pytest.approx((200, 230, 15), abs=1e-6)
    sin, cos = math.sin(math.radians(60)), math.cos(math.radians(60))
    nearest = (100 * sin + 40 * cos, 100 + 100 * cos - 40 * sin)  # its near right corner, inside the bend
    assert pond.reach_yd == pytest.approx(math.hypot(*nearest))


@pytest.mark.parametrize("name", ["withy-drain", "eel-trap", "long-sluice"])
def test_reach_and_clear_hold_for_ten_thousand_places(name: str) -> None:
    """No place of an area, drawn at random, is nearer than reach, farther than clear or outside the stations."""
    hole = load_hole(name)
    luck = np.random.default_rng(4)
    for one in measure(hole).troubles:
        feature = next((f for f in hole.features if f.name == one.name), None)
        if feature is None:
            continue
        x0, y0, x1, y1 = feature.area.bounds
        xy = np.column_stack([luck.uniform(x0, x1, 10_000), luck.uniform(y0, y1, 10_000)])
        inside = [(x, y) for x, y in xy[shapely.contains_xy(feature.area, xy)][:400]
                  if hole.feature_at(x, y) is feature]  # fmt: skip
        for x, y in inside:
            station, offset = hole.station_offset(x, y)
            if abs(offset) < BESIDE_YD - 1 and 0 < station < hole.length_yd + 39 and y > 0:
                assert one.near_yd - 0.3 <= station <= one.far_yd + 0.3
                assert one.reach_yd - 0.3 <= math.hypot(x, y) <= (one.clear_yd or math.inf) + 0.3


def test_to_dict_is_plain() -> None:
    import json

    out = json.loads(json.dumps(measure(load_hole("eel-trap")).to_dict()))
    assert out["schema"] == "holesim-show-1" and out["green"]["depth_yd"] == pytest.approx(36)
