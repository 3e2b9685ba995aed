"""The room, the reach and what a line is pointed by, on ground laid out by hand."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import product
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from small_games import hole_of
from solved import bag_named, player_named, straight_hole

from simulator.conditions import Conditions, Wind
from simulator.hole.model import Hole
from simulator.hole.surfaces import TROUBLE
from simulator.hole.words import hole_from_words
from simulator.strategy.aimline import AimLine
from simulator.strategy.carries import carries
from simulator.strategy.pointing import point
from simulator.strategy.reach import FIRM, find_reach
from simulator.strategy.room import _fullest, find_room
from simulator.tables.rasters import ground_raster

GROUND = """
penalty_area = [{ name = "pond", colour = "red", from_yd = 213, to_yd = 254, left_yd = 14, right_yd = 45 }]
out_of_bounds = [{ name = "lane", left_of_yd = -34 }]
bunker = [{ name = "cross bunker", from_yd = 250, to_yd = 262, left_yd = -20, right_yd = 12 }]
heavy_rough = [{ name = "gorse", from_yd = 130, to_yd = 160, left_yd = -30, right_yd = 30 }]
"""


def on(bearing_deg: float) -> AimLine:
    return AimLine(0.0, 0.0, bearing_deg)


STRAIGHT = on(0.0)


@pytest.fixture(scope="module")
def hole() -> Hole:
    return hole_of(straight_hole(380.0, GROUND))


def pattern(along: float, across: float, n: int = 20_000, **spread: float) -> np.ndarray:
    luck = np.random.default_rng(8)
    return np.column_stack(
        [across + spread.get("wide", 12.0) * luck.standard_normal(n),
         along + spread.get("deep", 9.0) * luck.standard_normal(n)]
    )  # fmt: skip


def test_room_between_lane_and_pond(hole: Hole) -> None:
    """Measured off the drawing: gorse ends at 160, the bunker starts at 250, lane 34 left, pond 14 right."""
    balls = pattern(226.0, -8.0)
    room = find_room(ground_raster(hole), hole, STRAIGHT, balls)
    assert room is not None
    assert (room.finish_at_most_yd, room.finish_before) == (250.0, "cross bunker")
    assert (room.left_edge_yd, room.left_closed_by) == (-34.0, "lane")
    assert (room.right_edge_yd, room.right_closed_by) == (14.0, "pond")
    assert room.carry_at_least_yd is None  # the gorse is there, but no ball is short of it
    x, y = balls.T
    inside = float(((x >= -34.0) & (x < 14.0) & (y < 250.0)).mean())
    assert room.inside.value == inside
    assert room.inside.standard_error == pytest.approx(math.sqrt(inside * (1 - inside) / len(x)))


def test_a_short_pattern_has_the_gorse_to_carry(hole: Hole) -> None:
    room = find_room(ground_raster(hole), hole, STRAIGHT, pattern(172.0, 0.0))
    assert room is not None and (room.carry_at_least_yd, room.carry_over) == (160.0, "gorse")
    assert not room.lies_across  # the fairway runs through it


def test_ground_that_no_ball_stays_short_on_is_not_in_the_box(hole: Hole) -> None:
    """There is nothing to carry, and the box still starts behind what lies there."""
    room = find_room(ground_raster(hole), hole, STRAIGHT, pattern(220.0, -11.0))
    assert room is not None and room.carry_at_least_yd is None and room.left_edge_yd is not None
    raster = ground_raster(hole)
    closing = {k for k, f in enumerate(hole.features) if f.surface in TROUBLE}

    def trouble(s: float) -> bool:
        found = set()
        for t in np.arange(room.left_edge_yd + 0.5, min(room.right_edge_yd or 80.0, 80.0)):
            i, j = round((t - raster.x0_yd) / raster.cell_yd), round((s - raster.y0_yd) / raster.cell_yd)
            found.add(int(raster.feature[j, i]))
        return bool(found & closing)

    assert room.starts_yd > 0.0 and trouble(room.starts_yd - 0.5)
    assert not any(trouble(s + 0.5) for s in np.arange(room.starts_yd, room.finish_at_most_yd or 300.0))


def test_a_burn_is_carried() -> None:
    burn = 'penalty_area = [{ name = "burn", colour = "red", from_yd = 150, to_yd = 160, left_yd = -30, right_yd = 30 }]'
    wet = hole_of(straight_hole(380.0, burn))
    room = find_room(ground_raster(wet), wet, STRAIGHT, pattern(172.0, 0.0))
    assert room is not None and (room.carry_at_least_yd, room.carry_over) == (160.0, "burn")
    assert room.lies_across and "lies_across" not in room.to_dict()


def test_a_fence_the_line_leads_away_from_is_not_carried() -> None:
    """Aimed away from it there is more room beyond than short of 200, and no ball flies over it."""
    beside = """
out_of_bounds = [{ name = "fence", right_of_yd = 26 }]
penalty_area = [{ name = "pond", colour = "red", from_yd = 150, to_yd = 260, left_yd = -60, right_yd = -22 }]
"""
    fenced = hole_of(straight_hole(380.0, beside))
    balls = pattern(236.0, 0.0, wide=18.0)
    balls[:600, 1] -= 60.0  # mishits, for which the near end counts
    room = find_room(ground_raster(fenced), fenced, on(-2.2), balls)
    assert room is not None and room.carry_over == "fence" and not room.lies_across
    assert room.carry_at_least_yd is not None and 150.0 < room.carry_at_least_yd < 235.0


def test_room_turns_with_the_line(hole: Hole) -> None:
    """The same ground from a bearing of 3 degrees left: edges from that line, still without trouble."""
    room = find_room(ground_raster(hole), hole, on(-3.0), pattern(220.0, -11.0))
    assert room is not None and room.left_edge_yd is not None and room.right_edge_yd is not None
    far = room.finish_at_most_yd or 262.0
    for s, t in product(np.arange(165.5, far, 1.0), (room.left_edge_yd + 1.0, room.right_edge_yd - 1.0)):
        turn = math.radians(-3.0)
        x, y = s * math.sin(turn) + t * math.cos(turn), s * math.cos(turn) - t * math.sin(turn)
        feature = hole.feature_at(x, y)
        assert feature is None or feature.name in ("fairway", "green")


def test_no_room_at_all() -> None:
    water = 'penalty_area = [{ name = "lake", colour = "red", from_yd = 60, to_yd = 330, left_yd = -90, right_yd = 90 }]'
    lake = hole_of(straight_hole(380.0, water))
    assert find_room(ground_raster(lake), lake, STRAIGHT, pattern(200.0, 0.0)) is None


def test_open_ground_closes_nothing() -> None:
    bare = hole_of(straight_hole(380.0))
    room = find_room(ground_raster(bare), bare, STRAIGHT, pattern(200.0, 0.0))
    assert room is not None and room.inside.value == 1.0
    assert {room.finish_at_most_yd, room.left_edge_yd, room.right_edge_yd, room.carry_at_least_yd} == {None}


@pytest.mark.parametrize("seed", range(12))
def test_the_box_is_the_fullest(seed: int) -> None:
    """Against every box there is, on small random ground; columns as `WIDE_YD` has them, trouble beyond."""
    luck = np.random.default_rng(seed)
    trouble = np.ones((14, 160), dtype=bool)
    trouble[:, 72:88] = luck.random((14, 16)) < 0.12
    s, t = 7, 80
    trouble[s, t] = False
    along, across = luck.uniform(0.0, 14.0, 400), luck.uniform(-8.0, 8.0, 400)
    held, _, _ = np.histogram2d(along, across, bins=(np.arange(15.0), np.arange(-80.0, 81.0)))

    def count(box: tuple[int, int, int, int]) -> float:
        a, b, left, right = box
        return float(held[a:b, left:right].sum())

    best = max(
        count((a, b, left, right))
        for a in range(s + 1) for b in range(s + 1, 15)
        for left in range(71, t + 1) for right in range(t + 1, 90)
        if not trouble[a:b, left:right].any()
    )  # fmt: skip
    box = _fullest(trouble, (s, t), along, across)
    assert not trouble[box[0] : box[1], box[2] : box[3]].any()
    assert count(box) == best


def no_bag() -> Any:
    return SimpleNamespace(shots=SimpleNamespace(first_part=0))


def test_reach_is_where_trouble_starts_and_balls_end(hole: Hole) -> None:
    """Straight balls, mean 200 and spread 6: 999 of 1,000 finish short of 200 + 3.0902 x 6 (normal table)."""
    luck = np.random.default_rng(3)
    far = 200.0 + 6.0 * luck.standard_normal(65_536)
    across = 2.0 * luck.standard_normal(65_536)
    finishes = np.column_stack([across, np.sqrt(far**2 - across**2)])
    found = find_reach(hole, no_bag(), 0, STRAIGHT, finishes - (0.0, 11.0), finishes)
    names = {one.name: one for one in found}
    assert "lane" not in names and "pond" not in names  # beside the way these balls take
    bunker = names["cross bunker"]
    assert bunker.starts_yd == pytest.approx(250.0, abs=0.1)
    assert bunker.finish_yd.value == pytest.approx(
        200.0 + 3.0902 * 6.0, abs=4 * bunker.finish_yd.standard_error
    )
    assert 0.05 < bunker.finish_yd.standard_error < 0.5
    assert bunker.carry_yd.value == pytest.approx(bunker.finish_yd.value - 11.0, abs=0.2)
    assert bunker.spare_yd == bunker.starts_yd - bunker.finish_yd.value
    assert names["gorse"].spare_yd < 0.0 and found[0].name == "cross bunker"


def test_a_wide_pattern_meets_what_is_beside_it(hole: Hole) -> None:
    """The pond's near corner, 213 on and 14 right, is sqrt(213^2 + 14^2) away."""
    finishes = pattern(180.0, 0.0, wide=9.0)
    names = {one.name: one for one in find_reach(hole, no_bag(), 0, STRAIGHT, finishes, finishes)}
    assert names["pond"].starts_yd == pytest.approx(math.hypot(213.0, 14.0), abs=0.1)


@pytest.mark.parametrize("wind", [None, Wind(3.0, 180.0, "felt")])
def test_what_would_bring_it_into_reach(hole: Hole, wind: Wind | None) -> None:
    """The breeze told is the least whole one that adds the spare yards to the stock carry, by `carries`."""
    bag = replace(bag_named("isolde"), conditions=Conditions(wind=wind))
    far = 242.0 + np.linspace(-30.0, 2.0, 65_536)
    finishes = np.column_stack([np.zeros(far.size), far])
    bunker = next(
        r for r in find_reach(hole, bag, 0, STRAIGHT, finishes, finishes) if r.name == "cross bunker"
    )
    assert 5.0 < bunker.spare_yd < 7.0 and bunker.helping_mph is not None

    def carry(mph: float) -> float:
        blowing = Wind(mph, 180.0, "felt") if mph else None
        rows = carries(player_named("isolde"), Conditions(wind=blowing))
        return next(row.today_carry_yd for row in rows if row.club == "driver")

    now = 0.0 if wind is None else wind.speed_mph
    assert carry(now + bunker.helping_mph) - carry(now) >= bunker.spare_yd
    assert carry(now + bunker.helping_mph - 1) - carry(now) < bunker.spare_yd
    runs = [next(row.today_run_yd for row in carries(player_named("isolde"), day) if row.club == "driver")
            for day in (bag.conditions, replace(bag.conditions, fairway_firmness=FIRM))]  # fmt: skip
    assert bunker.firm_reaches == (runs[1] - runs[0] >= bunker.spare_yd)


def test_along_a_line_and_beside_it() -> None:
    along, right = on(90.0).seen(np.array([10.0, 0.0]), np.array([0.0, 10.0]))
    assert along == pytest.approx([10.0, 0.0]) and right == pytest.approx([0.0, -10.0])
    line = AimLine(30.0, -12.0, 25.0)
    assert line.seen(*line.at(180.0, -7.0)) == pytest.approx((180.0, -7.0))


def test_pointed_by_the_fairway_the_green_or_the_pin() -> None:
    """A fairway from 6 left to 26 right has its middle 10 right."""
    text = straight_hole(380.0).replace("left_yd = -18.0, right_yd = 18.0", "left_yd = -6, right_yd = 26")
    hole = hole_of(text)
    found = point(hole, STRAIGHT, 200.0)
    assert (found.by, found.name) == ("fairway", "the middle of the fairway")
    assert found.offset_yd == pytest.approx(-10.0, abs=1e-6)
    green = point(hole, AimLine(0.0, 230.0, 2.0), 150.0)
    assert green.by == "green"
    assert green.offset_yd == pytest.approx(150.0 * math.sin(math.radians(2.0)), abs=0.3)
    pin = point(hole, on(40.0), 200.0)  # no fairway there, no green
    assert pin.by == "pin" and pin.offset_yd == pytest.approx(200.0 * math.sin(math.radians(40.0)))


def test_short_of_the_fairway_it_is_pointed_by_the_fairway_ahead() -> None:
    """Round a corner a short hitter was told "50 yd right of the straight line to the pin" on every hole."""
    hole = hole_from_words("par 5, 521; dogleg left at 250; fairway 150 to 500, 14 left, 20 right").hole
    found = point(hole, STRAIGHT, 120.0)
    assert (found.by, found.name) == ("fairway", "the middle of the fairway ahead")
    assert found.offset_yd == pytest.approx(-3.0, abs=0.1)
    right = point(hole, AimLine(0.0, 0.0, 4.0), 120.0)  # beside it where it begins, not where the ball comes down
    assert right.offset_yd == pytest.approx(152.0 * math.tan(math.radians(4.0)) - 3.0, abs=0.5)
    assert point(hole, STRAIGHT, 160.0).name == "the middle of the fairway"
    assert point(hole, AimLine(0.0, 0.0, 40.0), 120.0).by == "pin"  # nowhere near it
    assert point(hole, STRAIGHT, 40.0).by == "pin"  # it begins too far on
    par_3 = hole_from_words("par 3, 190 over a pond").hole  # what is mown before the green is none to play to
    assert point(par_3, STRAIGHT, 120.0).by == "pin"


def test_halves_of_a_fairway_ahead_are_told_apart() -> None:
    words = "par 4, 410; split fairway, left 22 wide, right 30 wide, 12 apart"
    hole = hole_from_words(words).hole
    found = [point(hole, AimLine(0.0, 0.0, math.degrees(math.atan2(away, 150.0))), 110.0) for away in (-12, 18)]
    assert [(one.name, one.half) for one in found] == [
        ("the middle of the left fairway ahead", "left"), ("the middle of the right fairway ahead", "right"),
    ]  # fmt: skip


WET_EDGE = """
[[penalty_area]]
name = "mere"
colour = "red"
from_yd = 180
to_yd = 220
left_yd = -60
right_yd = -8
"""


def test_the_middle_of_the_fairway_is_not_in_the_water_over_its_edge() -> None:
    """Mown from 18 left to 18 right, under water to 8 left: the middle of what one can play from is 5 right."""
    hole = hole_of(straight_hole(380.0) + WET_EDGE)
    assert point(hole, STRAIGHT, 200.0).offset_yd == pytest.approx(-5.0, abs=1e-6)


def test_a_wide_fairway_has_its_middle_wherever_one_aims_beside_it() -> None:
    hole = hole_of(straight_hole(380.0))
    bearing = math.degrees(math.atan2(46.0, 200.0))
    found = point(hole, on(bearing), math.hypot(46.0, 200.0))
    assert found.by == "fairway" and found.offset_yd == pytest.approx(46.0, abs=1e-6)


def test_halves_far_apart_are_told_apart() -> None:
    """Thirty yards of water lay between them: "the middle of the fairway" was either of two."""
    words = "par 4, 410; split fairway, left 22 wide, right 30 wide, 30 apart; pond between the fairways 200 to 270"
    hole = hole_from_words(words).hole
    named = {away: point(hole, AimLine(0.0, 0.0, math.degrees(math.atan2(away, 225.0))), 225.0).name for away in (-26, 30)}
    assert named == {-26: "the middle of the left fairway", 30: "the middle of the right fairway"}


def test_a_mark_near_the_line_words_it() -> None:
    hole = hole_of(straight_hole(380.0))
    marks = (SimpleNamespace(name="church tower", x_yd=2.0, y_yd=420.0),
             SimpleNamespace(name="lone pine", x_yd=-40.0, y_yd=400.0),
             SimpleNamespace(name="shed", x_yd=0.0, y_yd=30.0))  # fmt: skip
    object.__setattr__(hole, "marks", marks)
    tower = point(hole, STRAIGHT, 200.0)
    assert (tower.by, tower.name) == ("mark", "church tower") and tower.offset_yd == pytest.approx(-2.0)
    bearing = math.degrees(math.atan2(-46.0, 400.0))
    pine = point(hole, on(bearing), 200.0)
    assert pine.name == "lone pine" and pine.offset_yd == pytest.approx(-6.0, abs=0.1)
    assert point(hole, on(5.0), 200.0).by == "fairway"  # none is near that line
