"""Where a fairway begins and ends across the line: cut by water, split, with sand in it, at its ends."""

from __future__ import annotations

import pytest

from simulator.hole.cuts import fairway_across, fairways, mown_strips
from simulator.hole.model import Hole
from simulator.hole.sketch import read_sketch
from simulator.hole.yardage import measure

FAIRWAY = {"from_yd": 100, "to_yd": 350, "left_yd": -20, "right_yd": 20}


def drawn(fairway: list[dict[str, object]] | None = None, **more: object) -> Hole:
    """A straight par 4 of 400 yd whose fairway is 40 wide, with something on it."""
    return read_sketch({
        "name": "Cut", "par": 4, "length_yd": 400, "fairway": fairway or [FAIRWAY],
        "green": [{"at_yd": 400, "offset_yd": 0, "depth_yd": 30, "width_yd": 24}], **more,
    }, "cut")  # fmt: skip


def area(left_yd: float, right_yd: float, **more: object) -> dict[str, object]:
    return {"name": "it", "from_yd": 190, "to_yd": 210, "left_yd": left_yd, "right_yd": right_yd, **more}


WATER = {"colour": "red"}


def test_water_that_lies_over_an_edge_is_the_edge() -> None:
    """The middle of what is left, not of the mown ground under the water."""
    hole = drawn(penalty_area=[area(-50, -10, **WATER)])
    assert fairway_across(hole, 200.0, 0.0) == pytest.approx((-10, 20))
    assert fairway_across(hole, 180.0, 0.0) == pytest.approx((-20, 20))  # short of it


@pytest.mark.parametrize(("offset", "edges"), [(-6.0, (-20, -4)), (3.0, (6, 20)), (-3.0, (-20, -4)), (40.0, (6, 20))])
def test_a_fairway_that_water_runs_through_is_two(offset: float, edges: tuple[float, float]) -> None:
    """The one nearest to the place; in the water, too, and beside all of it."""
    hole = drawn(penalty_area=[area(-4, 6, **WATER)])
    assert fairway_across(hole, 200.0, offset) == pytest.approx(edges)
    assert len(fairways(hole, 200.0)) == 2


def test_sand_in_a_fairway_lies_in_one_fairway_but_is_not_mown() -> None:
    """Whoever is told the middle of the fairway looks at all of it; a ball comes down on one part."""
    hole = drawn(bunker=[area(-4, 6)])
    assert fairway_across(hole, 200.0, -10.0) == pytest.approx((-20, 20))
    assert mown_strips(hole, 200.0) == [pytest.approx((-20, -4)), pytest.approx((6, 20))]
    width = next(one for one in measure(hole).widths if one.station_yd == 200.0)
    assert (width.left_yd, width.right_yd) == pytest.approx((-20, -4))
    assert width.pieces == [pytest.approx((-20, -4)), pytest.approx((6, 20))]  # the other one was told nowhere


def test_sand_over_the_edge_ends_the_fairway() -> None:
    hole = drawn(bunker=[area(12, 28)])
    assert fairway_across(hole, 200.0, 0.0) == pytest.approx((-20, 12))


@pytest.mark.parametrize("turn_deg", [-25.0, 13.0, 40.0])
def test_behind_a_bend_the_fairway_goes_on(turn_deg: float) -> None:
    """Cuts there run askew to both axes; the drive's part of the fairway stays what it was."""
    hole = drawn(bends=[{"at_yd": 200, "turn_deg": turn_deg}], penalty_area=[area(-50, -10, **WATER)])
    assert fairway_across(hole, 280.0, 0.0) == pytest.approx((-20, 20), abs=0.1)
    assert mown_strips(hole, 280.0) == [pytest.approx((-20, 20), abs=0.1)]
    assert [one.station_yd for one in measure(hole).widths][-3:] == [330.0, 340.0, 350.0]


def test_two_fairways_with_rough_between_them() -> None:
    """A split fairway; between the two the nearer one counts."""
    hole = drawn([{**FAIRWAY, "right_yd": -8}, {**FAIRWAY, "left_yd": 10}])
    assert fairway_across(hole, 200.0, 0.0) == pytest.approx((-20, -8))
    assert fairway_across(hole, 200.0, 2.0) == pytest.approx((10, 20))


def test_before_and_behind_its_ends_there_is_no_fairway() -> None:
    hole = drawn()
    assert fairway_across(hole, 101.0, 0.0) == pytest.approx((-20, 20))
    assert fairway_across(hole, 349.0, 0.0) == pytest.approx((-20, 20))
    assert fairway_across(hole, 99.0, 0.0) is None and fairway_across(hole, 351.0, 0.0) is None


def test_a_fairway_far_beside_a_place_is_not_the_one_there() -> None:
    hole = drawn()
    assert fairway_across(hole, 200.0, 49.0) == pytest.approx((-20, 20))
    assert fairway_across(hole, 200.0, 51.0) is None
