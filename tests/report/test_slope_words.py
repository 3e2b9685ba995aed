"""Which way a green falls is told as a player sees it, round a bend and by compass."""

import pytest

from simulator.hole import load_hole
from simulator.report.checks import hole_text


def ground(words):
    text = " ".join(hole_text(load_hole(words)).split())
    return text[: text.index("Assumed:")]


def test_a_green_behind_a_dogleg_falls_towards_its_front_and_by_compass():
    """Bearing 90, a bend of 35 right: the last leg bears 125, towards the tee is 305."""
    said = ground("par 4, 398, dogleg right 35 at 240, bearing 90; green falls to the front 3%")
    assert "first leg bears 90 deg by compass, east" in said
    assert "green falls 3 % towards the front (305 deg by compass, north-west)" in said


@pytest.mark.parametrize("way", ["front", "back", "left", "right", "front left", "back right"])
@pytest.mark.parametrize("bend", ["", ", dogleg left 60 at 200"])
def test_without_a_bearing_no_compass_is_named(way, bend):
    said = ground(f"par 4, 380{bend}; green falls {way} 2%")
    assert f"green falls 2 % towards the {way};" in said
    assert "compass" not in said and "bearing" not in said


def test_a_tee_is_said_once():
    """Files that name no tee, or call it "red tee", are told as everybody speaks."""
    from simulator.hole.sketch import read_sketch

    data = {"name": "Plain", "par": 3, "length_yd": 150, "green": [{"front_yd": 136, "depth_yd": 28, "width_yd": 24}]}
    assert "from the main tee" in hole_text(read_sketch(data, "plain.toml"))
    named = read_sketch({**data, "tee": [{"name": "tee"}, {"name": "Red Tee", "at_yd": 20}]}, "named.toml")
    assert [tee.name for tee in named.tees] == ["main", "Red"]
    assert named.with_tee("red tee").tee.name == named.with_tee("red").tee.name == "Red"
    assert named.with_tee("tee").tee.name == "main"
    assert "tee tee" not in hole_text(named)


@pytest.mark.parametrize(
    ("terrain", "said"),
    [("green 6 below the tee", "the pin stands 6.0 yd below the tee"),
     ("green 2 above the tee", "the pin stands 2.0 yd above the tee"),
     ("green falls to the front 3%", "the pin stands level with the tee")],
)  # fmt: skip
def test_a_check_says_how_high_the_pin_stands(terrain, said):
    assert said in ground(f"par 3, 150; {terrain}")
