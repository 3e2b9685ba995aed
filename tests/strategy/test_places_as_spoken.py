"""Places in a golfer's own words: read as they are meant, or refused with what to say instead."""

from __future__ import annotations

import pytest
from on_withy_drain import WITHY, placed

from simulator.errors import UsageError
from simulator.strategy.places import place


@pytest.mark.parametrize(
    "words, same",
    [
        ("150 out L rough", "150 out, left rough"),
        ("150 out, rough rhs", "150 out, right rough"),
        ("12 yds R of green", "12 right of the green"),
        ("about 150 out", "150 out"),
        ("roughly 150 out, left rough", "150 out, left rough"),
        ("230 down the middle", "230 on, fairway"),
        ("210 m straight down the fairway", "210 m on, fairway"),
        ("230 on, 12 right of the line", "230 on, 12 right"),
        ("150 out, 10 yards left of centre", "150 out, 10 left"),
        ("24 right, pin high", "pin high, 24 right"),
        ("pin high right 24 yards", "pin high, 24 right"),
        ("pin high left, 24", "pin high, 24 left"),
        ("150 out, 5 yards into the right rough", "150 out, 5 right of the fairway"),
        ("20 short of the front edge", "20 short of the green"),
        ("20 off the front", "20 short of the green"),
        ("150 to the green", "150 short of the green"),
        ("one fifty out", "150 out"),
        ("150-yards out", "150 out"),
        ("leaving 150, rt rough", "150 out, right rough"),
        ("150ish out", "150 out"),
        ("150, 10 left", "150 out, 10 left"),
        ("a hundred and sixty-four yards out, left rough", "164 out, left rough"),
        ("two thirty on, twelve right", "230 on, 12 right"),
        ("two hundred on, left rough", "200 on, left rough"),
        ("five paces behind the green", "5 behind the green"),
        ("one fifty to the front", "150 to the front"),
        ("10 off the fairway left at 160 out", "160 out, 10 left of the fairway"),
        ("200 on, 5 yards off the fairway on the right", "200 on, 5 right of the fairway"),
        ("150 yds left, fairway", "150 out, fairway"),  # it was the left half
        ("20 yards short and left of the green", "20 short left of the green"),
        ("20 short of the green, left", "20 short left of the green"),
        ("ten short of the cross dyke", "10 short of the cross dyke"),
    ],
)
def test_said_otherwise(words: str, same: str) -> None:
    assert placed(words) == pytest.approx(placed(same), abs=0.01)


@pytest.mark.parametrize(
    "words, why",
    [
        ("240 drive", 'say how far on from the tee it is: "240 on"'),
        ("160 out - left rough", "a comma goes there"),
        ("150 out, by the elbow bunker", "beside elbow bunker, not in it: say how far"),  # it was put into the sand
        ("100 out by the willow carr", "beside willow carr, not in it"),
        ("right of the apron", "beside apron, not in it"),
        ("180 out, near the reed bed", "'near' is not understood there .say how far"),
        ("at 230 on the right", 'Say "230 on, right rough" or "230 out, right rough"'),
        ("150 on the left, rough", 'Say "150 on, left rough" or "150 out, left rough"'),
        ("10 left of fairway at 240", 'Say "240 on" or "240 out"'),
        ("150 left, rough", 'Say "150 out, rough" or "150 out, left rough"'),
        ("250 down the left", 'say "250 on" from the tee'),
        ("between the bunkers", "say how far it is to the pin and on what"),
        ("half way", 'say how far: "200 on" from the tee'),
        ("230 on, right", '"230 on, right rough"'),
        ("150-160 out", "'150-160' is not one distance; say one, \"155 out\""),
    ],
)
def test_refused_with_what_to_say(words: str, why: str) -> None:
    with pytest.raises(UsageError, match=why) as refused:
        place(words, WITHY)
    assert repr(words) in str(refused.value) and "\n" not in str(refused.value)


def test_a_name_with_by_in_it_is_one() -> None:
    assert placed("reeds by the lane, 180 out") == pytest.approx(placed("180 out, left heavy rough"), abs=2.0)


def test_so_far_short_of_the_green_and_left_of_it() -> None:
    short, left, both = (
        WITHY.station_offset(*placed(words))
        for words in ("20 short of the green", "short left of the green", "20 yards short left of the green")
    )
    assert both == pytest.approx((short[0], left[1]), abs=0.1)
