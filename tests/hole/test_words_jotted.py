"""Holes as coaches jot them on a card: edges, corners, what falls away, a green at an angle to the line."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from lying import surfaces_over

from simulator.errors import UsageError
from simulator.hole import Hole, Surface
from simulator.hole.words import hole_from_words

BEND = "par 4, 398; dogleg left at 230; "

ALIKE = [
    ("par 4, 380; green runs away to the back left", "par 4, 380; green falls to the back left"),
    ("par 4, 380; green slopes away, bunker right", "par 4, 380; green falls to the back; bunker right of the green"),
    (f"{BEND}bunker through the fairway at 240", f"{BEND}bunker right at 240"),
    (f"{BEND}bunker through the fairway", f"{BEND}bunker right at 230"),
    (f"{BEND}bunker through the fairway right at 260", f"{BEND}bunker right at 260"),
    (
        "par 4, 398, dogleg left at 230, trees inside the corner, bunker through the fairway",  # one sentence
        f"{BEND}trees inside the corner; bunker right at 230",
    ),
    (
        "par 4, 440; stream cuts across at 300 and runs up the right to the green",
        "par 4, 440; stream crosses at 300 and runs up the right to the green",
    ),
    ("par 5, 505; second shot over a lake from 380 to 420", "par 5, 505; second shot over a lake 380 to 420"),
    ("par 4, 350; fairway narrows at 230 to 18", "par 4, 350; fairway narrows to 18 at 230"),
    ("par 3, 135; drop of 15 yards; bunker left", "par 3, 135; downhill 15; bunker left"),
    (
        "par 5, 520; stream crosses at 270 and again 60 short of the green",
        "par 5, 520; stream across at 270; stream across 60 short of the green",
    ),
    (
        "par 5, 520; creek at 270 and in front of the green",
        "par 5, 520; creek at 270; creek in front of the green",
    ),
    ("par 4, 350; lone pine on the left edge of the fairway at 210", "par 4, 350; pine 16 left at 210"),  # was 22
    (
        "par 4, 350; pond right edge of the fairway 210 to 240",
        "par 4, 350; pond right 210 to 240, edge 0 from the fairway",
    ),
    (f"{BEND}oak on the inside of the corner", f"{BEND}oak left at 230"),
    ("par 4, 380; bunkers at 230 left & right", "par 4, 380; bunkers left and right at 230"),
    ("par 3, 165; bunker on the left hand side of the green", "par 3, 165; bunker left of the green"),
    ("par 3, 165; out 12 long", "par 3, 165; out 12 behind the green"),
    ("par 4, 400; out left 90", "par 4, 400; out left, edge 90"),
    ("par 3, 165; run-off right", "par 3, 165; run-off right of the green"),  # was mown from the tee on
    ("par 4, 365; run-off left", "par 4, 365; run-off left of the green"),
]


def drawn(hole: Hole) -> dict[str, object]:
    """What lies where, trees and falls too."""
    return {
        "surfaces": surfaces_over(hole, range(-5, 560, 4), range(-96, 97, 3)).tolist(),
        "crowns": [(round(x, 3), round(y, 3)) for x, y in _trees(hole)],
        "heights": hole.heights,
        "falls": [f.slope for f in hole.features if f.slope is not None],
    }


def _trees(hole: Hole) -> list[tuple[float, float]]:
    return [one.area.centroid.coords[0] for one in hole.features if one.crown is not None]


@pytest.mark.parametrize(("words", "same"), ALIKE)
def test_jotted_and_in_full(words: str, same: str) -> None:
    assert drawn(hole_from_words(words).hole) == drawn(hole_from_words(same).hole)


def test_through_the_fairway_of_a_straight_hole_asks_for_the_side() -> None:
    with pytest.raises(UsageError, match=r"'through'.*on which side"):
        hole_from_words("par 4, 398; bunker through the fairway at 260")


@pytest.mark.parametrize(("words", "deg"), [("right to left", -30.0), ("to the left", -30.0),
                                            ("from front left to back right", 30.0), ("right by 40 degrees", 40.0)])
def test_a_green_at_an_angle(words: str, deg: float) -> None:
    """The ellipse lies as said, and its ends are as far as those of one that does not: front, back and pins on it."""
    hole = hole_from_words(
        f"par 4, 380; green 32 deep, 18 wide, angled {words}; pins front, middle and back; bunker left of the green"
    ).hole
    turn = math.radians(deg)
    corners = shapely.get_coordinates(hole.green) - [0.0, 380.0]
    along = corners @ [math.sin(turn), math.cos(turn)]
    across = corners @ [math.cos(turn), -math.sin(turn)]
    assert np.ptp(along) == pytest.approx(32.0, abs=0.1) and np.ptp(across) == pytest.approx(18.0, abs=0.1)
    front, _, back = hole.pins
    assert (back.x_yd - front.x_yd) * deg > 0.0  # they go with it
    assert all(hole.green.exterior.distance(shapely.Point(one.x_yd, one.y_yd)) > 3.0 for one in hole.pins)
    for one in (front, back):  # half way across the green where they stand
        cut = hole.green.intersection(shapely.LineString([(-50.0, one.y_yd), (50.0, one.y_yd)]))
        assert one.x_yd == pytest.approx(cut.centroid.x, abs=0.3)
    sand = next(f for f in hole.features if f.surface is Surface.BUNKER)
    assert 1.0 < sand.area.distance(hole.green) < 6.0 and not sand.area.intersects(hole.green)


def test_a_green_at_an_angle_ends_where_the_laser_says() -> None:
    green = hole_from_words("par 3, 155; green front 140, back 170, 20 wide, angled right").hole.green
    assert green.bounds[1] == pytest.approx(140.0, abs=0.1) and green.bounds[3] == pytest.approx(170.0, abs=0.1)
