"""Places and aims in a golfer's words: understood as meant, or refused by pointing at the word."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from small_games import straight_hole

from simulator.cli import _run
from simulator.errors import UsageError
from simulator.hole import Hole, Surface, load_hole
from simulator.hole.sketch import read_sketch
from simulator.hole.surfaces import LIE_WORDS
from simulator.strategy.by_green import by_the_green
from simulator.strategy.clubwords import Aim, club_and_aim
from simulator.strategy.ground import line_place
from simulator.strategy.places import place, plainly

WITHY, LONG, EEL = load_hole("withy-drain"), load_hole("long-sluice"), load_hole("eel-trap")


def out(hole: Hole, x: float, y: float) -> float:
    return math.hypot(hole.pin.x_yd - x, hole.pin.y_yd - y)


UNDERSTOOD = [
    # hole, words, lie, yards out (tolerance), side of the line (-1, 0, 1, None any)
    (WITHY, "164 out, left rough", "rough", 164, -1),
    (WITHY, "164 out, right rough", "rough", 164, 1),
    (WITHY, "left rough, 164 out", "rough", 164, -1),
    (WITHY, "In the left rough, 164 yards out", "rough", 164, -1),
    (WITHY, "150m out", "fairway", 150 / 0.9144, 0),
    (WITHY, "150 m out left rough", "rough", 150 / 0.9144, -1),
    (WITHY, "164 out", "fairway", 164, 0),
    (WITHY, "164", "fairway", 164, 0),
    (WITHY, "164 to the pin", "fairway", 164, 0),
    (WITHY, "rough, 140 out", "rough", 140, None),
    (WITHY, "right heavy rough 150 out", "heavy rough", 150, 1),
    (WITHY, "150 out deep rough on the right", "heavy rough", 150, 1),
    (WITHY, "95 out, right trees", "trees", 95, 1),
    (WITHY, "28 out right bunker", "bunker", 28, 1),
    (WITHY, "20 out left sand", "bunker", 20, -1),
    (WITHY, "left side of the fairway, 160 out", "fairway", 160, -1),
    (WITHY, "160 out, left half of the fairway", "fairway", 160, -1),
    (WITHY, "right half, 160 out", "fairway", 160, 1),
    (WITHY, "160 out, left centre", "fairway", 160, -1),
    (WITHY, "160 out, middle", "fairway", 160, None),
    (WITHY, "150 from the middle of the fairway", "fairway", 150, None),
    (WITHY, "fairway bunker, 142 out", "bunker", 142, None),
    (WITHY, "greenside bunker right, 28 out", "bunker", 28, 1),
    (WITHY, "28 out, right sand trap", "bunker", 28, 1),
    (WITHY, "first cut left, 164 out", "rough", 164, -1),
    (WITHY, "semi-rough left, 164 out", "rough", 164, -1),
    (WITHY, "100 yards short of the pin", "fairway", 100, 0),
    (WITHY, "150 yard marker", "fairway", 150, 0),
    (WITHY, "lying in the left rough, 164 out", "rough", 164, -1),
    (WITHY, "at the 150 m post", "fairway", 150 / 0.9144, 0),
    (LONG, "140 out, left hazard", "dry penalty", 140, -1),
    (LONG, "140 out, left penalty area", "dry penalty", 140, -1),
    (LONG, "250 out", "fairway", 250, 0),
    (LONG, "path, 150 out", "fairway", 150, 1),
    (EEL, "30 out, right bunker", "bunker", 30, 1),
    (EEL, "70 out heavy rough", "heavy rough", 70, None),
]


@pytest.mark.parametrize(("hole", "words", "lie", "yards", "side"), UNDERSTOOD, ids=lambda v: str(v)[:40])
def test_understood(hole: Hole, words: str, lie: str, yards: float, side: int | None) -> None:
    start = place(words, hole)
    assert start.lie == lie
    assert start.out_yd == pytest.approx(yards, abs=5.0)
    assert start.out_yd == pytest.approx(out(hole, start.x_yd, start.y_yd))
    assert start.played is None
    _, offset = hole.station_offset(start.x_yd, start.y_yd)
    if side == 0:
        assert abs(offset) < 1e-6
    elif side is not None:
        assert offset * side > 0
    surface = hole.surface_at(start.x_yd, start.y_yd)
    for turn in np.arange(8) * math.pi / 4:  # well inside: a cell of the engine's raster reads the same
        assert hole.surface_at(start.x_yd + math.cos(turn), start.y_yd + math.sin(turn)) is surface
    assert f"{start.out_yd:.0f} yd out" in start.words


def test_nearest_ground_to_the_line_is_taken() -> None:
    """No rough on the left lies nearer to the line at that distance, by a scan of its own."""
    start = place("164 out, left rough", WITHY)
    _, offset = WITHY.station_offset(start.x_yd, start.y_yd)
    middle = line_place(WITHY, 164.0)
    bearing = math.atan2(middle[0] - WITHY.pin.x_yd, middle[1] - WITHY.pin.y_yd)
    edge = None
    for step in range(600):
        turn = bearing + 0.1 * step / 164.0  # clockwise seen from above, from the pin: the ball's left
        x, y = WITHY.pin.x_yd + 164.0 * math.sin(turn), WITHY.pin.y_yd + 164.0 * math.cos(turn)
        if WITHY.surface_at(x, y) is Surface.ROUGH:
            edge = WITHY.station_offset(x, y)[1]
            break
    assert edge is not None and edge < 0
    assert -3.5 <= offset - edge <= -2.0  # three yards inside it


def test_coordinates_and_stations() -> None:
    start = place("230 on, 12 right", WITHY)
    assert (start.x_yd, start.y_yd) == pytest.approx(WITHY.at(230.0, 12.0))
    assert place("230 on 12 left", WITHY).x_yd == pytest.approx(-12.0)
    assert place("230 on", WITHY).x_yd == pytest.approx(0.0)
    assert place("210m on", WITHY).y_yd == pytest.approx(210 / 0.9144)
    start = place("-8,231.5", WITHY)
    assert (start.x_yd, start.y_yd, start.lie) == (-8.0, 231.5, "fairway")
    assert place(" -8 , 231.5 ", WITHY) == start
    assert place("-8,231.5, fairway", WITHY) == start


@pytest.mark.parametrize("words", ["230 from the tee, 12 right", "230 yards off the tee, 12 right", "230 off tee 12 right"])
def test_a_station_by_its_distance_from_the_tee(words: str) -> None:
    assert place(words, WITHY) == place("230 on, 12 right", WITHY)


def test_metres_from_the_tee() -> None:
    assert place("210 m from the tee", WITHY) == place("210 m on", WITHY)


EDGES = [
    # words, yards short of the front or past the back edge on the line, yards right or left of the side edge
    ("20 short of the green", "front", 20.0), ("20 yards in front of the green", "front", 20.0),
    ("18 m short of green", "front", 18 / 0.9144), ("just short of the green", "front", 5.0),
    ("10 behind the green", "back", 10.0), ("10 over the back of the green", "back", 10.0),
    ("over the back", "back", 5.0), ("just off the green, right", "right", 5.0), ("6 right of the green", "right", 6.0),
    ("7 yards off the green, on the left", "left", 7.0), ("just off the left edge of the green", "left", 5.0),
]  # fmt: skip


@pytest.mark.parametrize(("words", "edge", "yards"), EDGES, ids=[words for words, _, _ in EDGES])
@pytest.mark.parametrize("hole", [WITHY, EEL, load_hole("ostrel-heath/4")], ids=lambda hole: hole.name)
def test_by_the_green(hole: Hole, words: str, edge: str, yards: float) -> None:
    """So far from the edge of the green, by shapely, along the line of play or across it."""
    meant, taken, *_ = by_the_green(words, hole)
    assert ("is taken as five paces" in (taken or "")) == (yards == 5.0)
    start = place(meant, hole)
    here = shapely.Point(start.x_yd, start.y_yd)
    if edge in ("front", "back"):
        far = hole.length_yd + 60.0
        line = shapely.LineString([hole.at(float(s)) for s in np.arange(0.0, far, 0.25)])
        on = line.intersection(hole.green)
        ends = [line.project(shapely.Point(xy)) for xy in shapely.get_coordinates(on)]
        along = line.project(here)
        assert (min(ends) - along if edge == "front" else along - max(ends)) == pytest.approx(yards, abs=0.8)
    else:
        station, offset = hole.station_offset(start.x_yd, start.y_yd)
        assert (offset > 0.0) == (edge == "right")
        across = shapely.LineString([hole.at(station, -99.0), hole.at(station, 99.0)])
        assert across.intersection(hole.green).distance(here) == pytest.approx(yards, abs=0.8)


def test_what_is_said_of_the_green_beside_the_place_stays() -> None:
    meant, *_ = by_the_green("fairway, 20 short of the green", WITHY)
    assert meant.endswith(" on, fairway") and place(meant, WITHY).lie == "fairway"
    assert by_the_green("164 out, left rough", WITHY) is None
    assert by_the_green("10 out, green", WITHY) is None
    with pytest.raises(UsageError, match="off the green where"):
        by_the_green("just off the green", WITHY)


def test_a_refusal_quotes_what_was_typed(capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["plan", "withy-drain", "--from", "20 left of the green, trees"]) == 2
    assert "place '20 left of the green, trees': that place is " in capsys.readouterr().err


@pytest.mark.parametrize("unit", ["", " yards", " m"])
@pytest.mark.parametrize("end", ["front", "middle", "back"])
@pytest.mark.parametrize("hole", [WITHY, EEL, LONG], ids=lambda hole: hole.name)
def test_the_laser_to_the_front_and_back_of_the_green(hole: Hole, end: str, unit: str) -> None:
    """Straight to where the line of play meets the green, by shapely."""
    start = place(f"90{unit} to the {end}", hole)
    line = shapely.LineString([hole.at(float(s)) for s in np.arange(0.0, hole.length_yd + 60.0, 0.25)])
    on = line.intersection(hole.green)
    ends = sorted(line.project(shapely.Point(xy)) for xy in shapely.get_coordinates(on))
    meant = {"front": ends[0], "back": ends[-1], "middle": 0.5 * (ends[0] + ends[-1])}[end]
    away = line.interpolate(meant).distance(shapely.Point(start.x_yd, start.y_yd))
    assert away == pytest.approx(90.0 / (0.9144 if unit == " m" else 1.0), abs=0.8)
    assert hole.station_offset(start.x_yd, start.y_yd)[1] == pytest.approx(0.0, abs=1e-6)
    assert place(f"rough, 90{unit} from the {end} of the green", hole).lie == "rough"


def test_farther_than_the_green_is_from_the_tee() -> None:
    with pytest.raises(UsageError, match=r"place '500 to the front': the tee is \d+ yd from the front"):
        place("500 to the front", WITHY)


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("words", ["230 on, {} rough", "{} rough, 230 off the tee", "230 on in the {} rough"])
def test_ground_beside_the_line_so_far_from_the_tee(words: str, side: str) -> None:
    """The nearest rough straight across the line, by a scan of its own."""
    start = place(words.format(side), WITHY)
    station, offset = WITHY.station_offset(start.x_yd, start.y_yd)
    hand = -1.0 if side == "left" else 1.0
    edge = next(
        off for off in np.arange(0.0, 80.0, 0.1) if WITHY.surface_at(*WITHY.at(230.0, hand * off)) is Surface.ROUGH
    )
    assert start.lie == "rough" and station == pytest.approx(230.0, abs=1e-6)
    assert 2.0 <= hand * offset - edge <= 3.5  # three yards inside it


def test_ground_that_is_not_there_is_told_by_its_distance_from_the_tee() -> None:
    with pytest.raises(UsageError) as caught:
        place("230 on, right trees", WITHY)
    nearest = int(str(caught.value).split()[-3])
    assert str(caught.value).endswith(f"the nearest is {nearest} yd on")
    assert place(f"{nearest} on, right trees", WITHY).lie == "trees"


def test_yards_beside_the_line_at_a_distance_out() -> None:
    for words in ("150 out, 8 right", "8 right, 150 out", "150 yards out and 8 right"):
        start = place(words, WITHY)
        station, offset = WITHY.station_offset(start.x_yd, start.y_yd)
        assert offset == pytest.approx(8.0)
        assert WITHY.at(station) == pytest.approx(line_place(WITHY, 150.0))
    start = place("137 m out and 5 m left", WITHY)
    assert WITHY.station_offset(start.x_yd, start.y_yd)[1] == pytest.approx(-5 / 0.9144)


PINS = [
    # words, yards past the pin along the last leg, yards right of it; None: what is refused
    ("pin high, 25 right", 0.0, 25.0), ("pin-high 25 yards to the right", 0.0, 25.0),
    ("22 short, 6 left of the pin", -22.0, -6.0), ("22 short and 6 left", -22.0, -6.0), ("30 short", -30.0, 0.0),
    ("25 paces past the flag", 25.0, 0.0), ("20 m beyond the hole, 5 m left", 20 / 0.9144, -5 / 0.9144),
    ("25 right of the pin", 0.0, 25.0),
]  # fmt: skip


@pytest.mark.parametrize(("words", "past", "right"), PINS, ids=[words for words, _, _ in PINS])
@pytest.mark.parametrize("hole", [WITHY, load_hole("ostrel-heath/4")], ids=lambda hole: hole.name)
def test_told_by_the_pin(hole: Hole, words: str, past: float, right: float) -> None:
    """By the heading of the last leg, not by stations of the line."""
    (x0, y0), (x1, y1) = hole.line[-2:]
    size = math.hypot(x1 - x0, y1 - y0)
    ahead, aside = ((x1 - x0) / size, (y1 - y0) / size), ((y1 - y0) / size, -(x1 - x0) / size)
    known = [at + past * a + right * b for at, a, b in zip((hole.pin.x_yd, hole.pin.y_yd), ahead, aside, strict=True)]
    start = place(words, hole)
    assert (start.x_yd, start.y_yd) == pytest.approx(known, abs=0.1)
    assert ("counted from the pin" in (plainly(words, hole).taken or "")) == (words in ("22 short and 6 left", "30 short"))


def test_told_by_the_pin_needs_yards_beside_it() -> None:
    for words in ("pin high right", "5 long, left"):
        with pytest.raises(UsageError, match=r"how far (left|right)\? Say \"pin high, 12"):
            place(words, WITHY)
    assert place("100 short of the pin", WITHY) == place("100 out", WITHY)
    assert place("230 on, 12 right", WITHY).x_yd == pytest.approx(12.0)


def test_what_is_left_is_a_distance_out() -> None:
    for words in ("164 left", "164 yards left", "164 left in", "164 remaining", "164 to go"):
        assert place(words, WITHY) == place("164 out", WITHY), words
    assert place("164 left, left rough", WITHY) == place("164 out, left rough", WITHY)
    assert place("150 m left", WITHY) == place("150 m out", WITHY)
    assert place("230 on, 12 left", WITHY).x_yd == pytest.approx(-12.0)


BUNKERS = [
    (WITHY, "elbow bunker", "elbow bunker"),
    (WITHY, "in the elbow bunker", "elbow bunker"),
    (WITHY, "left fairway bunker", "elbow bunker"),
    (WITHY, "the fairway bunker on the left", "elbow bunker"),
    (WITHY, "right greenside trap", "front right bunker"),
    (WITHY, "the left bunker", "left bunker"),
    (EEL, "In the right bunker", "right bunker"),
    (LONG, "left greenside bunker", "left greenside bunker"),
]


@pytest.mark.parametrize(("hole", "words", "name"), BUNKERS, ids=[f"{h.name}, {w}" for h, w, _ in BUNKERS])
def test_a_bunker_by_its_name_or_side(hole: Hole, words: str, name: str) -> None:
    start = place(words, hole)
    bunker = next(feature for feature in hole.features if feature.name == name)
    assert start.lie == "bunker" and bunker.area.contains(shapely.Point(start.x_yd, start.y_yd))
    assert plainly(words, hole).taken == f"the ball is taken to lie in the middle of the {name}"
    yards = out(hole, bunker.area.centroid.x, bunker.area.centroid.y)
    told = plainly(f"{words}, {yards:.0f} out", hole)
    assert told is None or "middle" not in (told.taken or "")  # a distance says where


def test_bunkers_of_one_name_are_listed() -> None:
    bunkers = ", ".join(f"{{ at_yd = {at}, offset_yd = -20, depth_yd = 9, width_yd = 9 }}" for at in (230, 260))
    hole = straight_hole(400, more=f"bunker = [{bunkers}]\n")
    names = [feature.name for feature in hole.features if feature.surface is Surface.BUNKER]
    assert names == ["bunker 1", "bunker 2"]
    with pytest.raises(UsageError, match=r"which of them on this hole: bunker 1 \(1\d\d yd out\), bunker 2 \(1\d\d yd out\)$"):
        place("bunker", hole)
    assert place("in bunker, 140 out", hole).lie == "bunker"


NAMED = [
    # words, area of withy-drain, yards out or on
    ("reed bed, 180 out", "reed bed", 180), ("in the reeds on the right, 180 out", "reed bed", 180),
    ("reeds by the lane, 200 out", "reeds by the lane", 200), ("the willows 80 out", "willow carr", 80),
    ("the fen, 32 out", "fen behind the green", 32), ("230 on, reed bed", "reed bed", 230),
    ("elbow bunker, 140 out", "elbow bunker", 140), ("alders, 220 m out", "alders", 220 / 0.9144),
]  # fmt: skip


@pytest.mark.parametrize(("words", "name", "yards"), NAMED, ids=[words for words, _, _ in NAMED])
def test_an_area_by_its_name(words: str, name: str, yards: float) -> None:
    start = place(words, WITHY)
    feature = WITHY.feature_at(start.x_yd, start.y_yd)
    assert feature is not None and feature.name == name
    station = WITHY.station_offset(start.x_yd, start.y_yd)[0]
    assert (station if words.startswith("230 on") else start.out_yd) == pytest.approx(yards, abs=3.0)


@pytest.mark.parametrize(
    ("words", "why"),
    [
        ("the reeds, 180 out", "which of them on this hole: reeds by the lane"),
        ("the reed bed", "whereabouts? It begins 98 and ends 212 yd out"),
        ("reed bed, 20 out", "not there; on this hole: reed bed (98 to 212 yd out)"),
    ],
)
def test_an_area_that_settles_nothing(words: str, why: str) -> None:
    with pytest.raises(UsageError) as refused:
        place(words, WITHY)
    assert why in str(refused.value)


def test_short_of_and_past_an_area() -> None:
    """Along the line of play: the dyke is crossed at 341 to 350, the bunker lies at 261 to 275."""
    for words, station in (("10 short of the cross dyke", 331.0), ("10 past the elbow bunker", 284.5)):
        start = place(words, WITHY)
        assert WITHY.station_offset(start.x_yd, start.y_yd) == pytest.approx((station, 0.0), abs=1.0)
    assert place("10 short of the dyke, left rough", WITHY).lie == "rough"
    drovers = load_hole("ostrel-heath/7")  # two cross bunkers, the left one from 328 on
    start = place("10 short of the left cross bunker", drovers)
    assert drovers.station_offset(start.x_yd, start.y_yd)[0] == pytest.approx(318.0, abs=3.0)


def test_far_from_the_green_is_short_of_it() -> None:
    assert place("150 yards from the green, left rough", WITHY) == place("150 short of the green, left rough", WITHY)
    with pytest.raises(UsageError, match="off the green where"):
        place("10 from the green", WITHY)


def test_rough_is_not_looked_for_beyond_a_ditch() -> None:
    """Forty short of the green lies in the dyke: the rough before or behind it is meant, not that at its end."""
    start = place("40 short of the green, rough", WITHY)
    assert abs(WITHY.station_offset(start.x_yd, start.y_yd)[1]) < 20.0 and start.out_yd < 75.0


def test_a_small_area_is_a_place() -> None:
    assert place("apron", WITHY).out_yd == pytest.approx(30.0, abs=1.0)
    assert plainly("apron", WITHY).taken == "the ball is taken to lie in the middle of the apron"


@pytest.mark.parametrize("hole", [WITHY, LONG], ids=lambda hole: hole.name)
def test_long_and_to_a_side_of_the_green(hole: Hole) -> None:
    """Beyond the pin, off the green, on that side of the line, and no farther off than a green is wide."""
    for words in ("long right of the green", "over the green right", "long and right of the green"):
        start = place(words, hole)
        station, offset = hole.station_offset(start.x_yd, start.y_yd)
        assert station > hole.station_offset(hole.pin.x_yd, hole.pin.y_yd)[0] and offset > 5.0
        assert 0.0 < hole.green.distance(shapely.Point(start.x_yd, start.y_yd)) < 14.0
        assert "level with its back and right edge" in (plainly(words, hole).taken or "")


def test_no_hazard_is_taken_where_nobody_speaks_of_it() -> None:
    with pytest.raises(UsageError, match="there is front right bunker: say what it lies in"):
        place("short right of the green", WITHY)
    assert place("short right of the green, bunker", WITHY).lie == "bunker"


@pytest.mark.parametrize("end", ["front", "back", "left", "right"])
def test_the_edge_of_the_green_is_on_it(end: str) -> None:
    with pytest.raises(UsageError, match="on the green"):
        place(f"{end} edge of the green", WITHY)


def test_pin_high_in_the_rough_is_the_nearest_there() -> None:
    station, _ = WITHY.station_offset(WITHY.pin.x_yd, WITHY.pin.y_yd)
    for words in ("pin high right rough", "pin high right in the rough", "pin high in the right rough"):
        start = place(words, WITHY)
        assert start.lie == "rough" and WITHY.station_offset(start.x_yd, start.y_yd)[0] == pytest.approx(station, abs=0.1)


def test_yards_left_behind_the_ground_are_out() -> None:
    assert place("fairway, 180 left", WITHY) == place("180 out, fairway", WITHY)
    assert place("left rough, 180 left", WITHY) == place("180 out, left rough", WITHY)


@pytest.mark.parametrize("side", ["left", "right"])
def test_pin_high_beside_the_green(side: str) -> None:
    hole = load_hole("ostrel-heath/4")
    start = place(f"pin high, 8 yards {side} of the green", hole)
    station = hole.station_offset(hole.pin.x_yd, hole.pin.y_yd)[0]
    assert hole.station_offset(start.x_yd, start.y_yd)[0] == pytest.approx(station, abs=0.1)
    edge = shapely.LineString([hole.at(station, -99.0), hole.at(station, 99.0)]).intersection(hole.green)
    assert edge.distance(shapely.Point(start.x_yd, start.y_yd)) == pytest.approx(8.0, abs=0.8)


@pytest.mark.parametrize(
    ("words", "because"),
    [
        ("greenside bunker", "which of them on this hole: front right bunker ("),
        ("right fairway bunker", "there is none such on this hole: elbow bunker ("),
    ],
)
def test_bunkers_are_listed_with_their_distances(words: str, because: str) -> None:
    with pytest.raises(UsageError) as caught:
        place(words, WITHY)
    message = str(caught.value)
    assert message.startswith(f"place {words!r}: {because}")
    for told in message.partition(": ")[2].partition(": ")[2].split(", "):
        name, yards = told.removesuffix(" yd out)").split(" (")
        bunker = next(feature for feature in WITHY.features if feature.name == name)
        assert out(WITHY, bunker.area.centroid.x, bunker.area.centroid.y) == pytest.approx(float(yards), abs=0.6)


def test_a_bend_is_measured_straight_to_the_pin() -> None:
    x, y = line_place(LONG, 300.0)
    station, offset = LONG.station_offset(x, y)
    assert abs(offset) < 1e-9 and station < 258  # before the bend
    assert out(LONG, x, y) == pytest.approx(300.0)
    assert station + 300.0 < LONG.length_yd + 1.0  # along the line it is farther


def test_the_tee_and_strokes_played() -> None:
    for words in ("tee", "the tee", "on the tee box", "0 on", "0,0"):
        start = place(words, WITHY)
        assert (start.x_yd, start.y_yd, start.lie, start.played) == (0.0, 0.0, "tee", 0)
        assert start.words == "the white tee"
    assert place("164 out", WITHY, 1).played == 1
    assert place("tee", WITHY, 2).played == 2


def test_every_lie_word_is_one_the_planner_takes() -> None:
    assert [*LIE_WORDS.values()] == [
        "tee", "fairway", "rough", "heavy rough", "bunker", "trees", "dry penalty", "green"
    ]  # fmt: skip


REFUSED = [
    ("", "no distance"),
    ("rough", "no distance"),
    ("164 banana", "'banana' is not understood"),
    ("164 out behind the rough", "'behind' is not understood"),
    ("164 out left right rough", "'right' is not understood"),
    ("164 out, left", 'a side needs a kind of ground ("164 out, left rough")'),
    ("150, right edge of the fairway", "'edge' is not understood there (say \"left side of the fairway"),
    ("fringe, 12 feet deep", "'fringe' is not understood there (say \"back fringe\", \"fringe, 17 out\""),
    ("10 feet from the hole", "'feet' is not understood there (yards or m are read; a putt is not planned)"),
    ("plugged, right bunker, 28 out", "'plugged' is not understood there (how the ball lies is taken as usual"),
    ("white tee", "'white' is not understood there (the tee is chosen by --tee)"),
    ("lay-up spot", "'lay-up' is not understood there (say how far it is to the pin"),
    ("200 out, 20 left, 3", "the number 3 (yards) has no meaning there"),
    ("on the green", "no shot is planned"),
    ("164 heavy fairway", "'heavy' goes with rough"),
    ("164 out 230 on", "both a distance on and a distance out"),
    ("1 2 3", "the number 1 (yards) has no meaning"),
    ("1,2,3", "the number 1 (yards) has no meaning"),
    ("164 out, out", "'out' is not understood"),
    ("900 out", "found 900 yd out"),
    ("-5 out", "found -5 yd out"),
    ("0 out", "found 0 yd out"),
    ("700 on", "found 700 yd on"),
    ("5000,1", "outside the hole"),
    ("0,-999999999", "outside the hole"),
    ("4 out", "on the green"),
    ("10 out, green", "on the green"),
    ("150 out, right water", "in the water"),
    ("230 on, 25 right", "in the water"),
    ("230 on, 60 left", "out of bounds"),
    ("230 on, 12 right, fairway", "that place is rough, not fairway"),
    ("160 out, right penalty area", "no right dry penalty area"),
    ("300 out, bunker", "the nearest is"),
    ("150 out, tee", 'say "tee" alone'),
    ("1e3 out", "'e' is not understood"),
    ("nan out", "'nan' is not understood"),
    ("164 out; rough", "'out;' is not understood"),
]


@pytest.mark.parametrize(("words", "because"), REFUSED)
def test_refused_in_one_line_that_points(words: str, because: str) -> None:
    with pytest.raises(UsageError) as caught:
        place(words, WITHY)
    message = str(caught.value)
    assert because in message and "\n" not in message
    assert message.startswith(f"place {words!r}")


GOLF_WORDS = st.lists(
    st.sampled_from(
        ["164", "92", "-8", "0.5", "m", "yd", "out", "on", "left", "right", "rough", "heavy", "fairway",
         "bunker", "trees", "penalty", "area", "tee", "green", ",", "the"]
    ),
    max_size=8,
).map(" ".join)  # fmt: skip


@settings(max_examples=150, deadline=None)
@given(st.one_of(st.text(max_size=40), GOLF_WORDS), st.sampled_from([WITHY, LONG, EEL]))
def test_any_words_give_a_place_on_the_hole_or_a_usage_error(words: str, hole: Hole) -> None:
    try:
        start = place(words, hole)
    except UsageError:
        return
    low_x, low_y, high_x, high_y = hole.bounds(100.0)
    assert low_x <= start.x_yd <= high_x and low_y <= start.y_yd <= high_y
    assert start.lie in LIE_WORDS.values()
    surface = hole.surface_at(start.x_yd, start.y_yd)
    assert surface not in (Surface.WATER, Surface.GREEN, Surface.OUT_OF_BOUNDS)


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("driver", ("driver", None)),
        (" 3 wood ", ("3 wood", None)),
        ("driver@-8", ("driver", Aim(-8.0))),
        ("driver@+8", ("driver", Aim(8.0))),
        ("driver@8 left", ("driver", Aim(-8.0))),
        ("three wood five yards left", ("three wood", Aim(-5.0))),
        ("driver@twelve right", ("driver", Aim(12.0))),
        ("driver three degrees left", ("driver", Aim(-3.0, in_degrees=True))),
        ("fifty-six", ("56", None)),
        ("driver @ 8yd right", ("driver", Aim(8.0))),
        ("3w@5m", ("3w", Aim(5 / 0.9144))),
        ("driver@-3deg", ("driver", Aim(-3.0, in_degrees=True))),
        ("driver@3.5 degrees left", ("driver", Aim(-3.5, in_degrees=True))),
        ("driver@-0", ("driver", Aim(0.0))),
    ],
)
def test_club_and_aim(text: str, meant: tuple[str, Aim | None]) -> None:
    assert club_and_aim(text) == meant


@pytest.mark.parametrize(
    "text", ["", "@", "@-8", "driver@", "driver@left", "driver@-8 left", "driver@400", "driver@90deg",
             "driver@nan", "driver@1e2", "driver@8@9", "driver@8 furlongs"],
)  # fmt: skip
def test_aims_refused_in_one_line(text: str) -> None:
    with pytest.raises(UsageError) as caught:
        club_and_aim(text)
    assert "\n" not in str(caught.value) and "allowed" in str(caught.value)


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=30), st.text("0123456789+-. ydmegleftrigh", max_size=12))
def test_any_club_text_is_a_club_or_a_usage_error(club: str, aim: str) -> None:
    try:
        name, meant = club_and_aim(f"{club}@{aim}")
    except UsageError:
        return
    assert name and meant is not None and math.isfinite(meant.right)


@pytest.mark.parametrize(("words", "station", "side", "yards"), [
    ("200 on, 10 right of the fairway", 200.0, 1, 10.0), ("10 right of the fairway, 200 on", 200.0, 1, 10.0),
    ("230 on, 5 m to the left of fairway", 230.0, -1, 5.0 / 0.9144), ("4 left of the fairway, rough, 200 on", 200.0, -1, 4.0),
])  # fmt: skip
def test_so_far_right_of_the_fairway_is_from_its_edge(words: str, station: float, side: int, yards: float) -> None:
    """In the rough, not on the fairway ten right of the line."""
    start = place(words, WITHY)
    assert start.lie == "rough"
    at, offset = WITHY.station_offset(start.x_yd, start.y_yd)
    assert at == pytest.approx(station, abs=0.1) and offset * side > 0.0
    mown = shapely.union_all([f.area for f in WITHY.features if f.surface is Surface.FAIRWAY])
    across = shapely.LineString([WITHY.at(station, 0.0), (start.x_yd, start.y_yd)])
    assert across.difference(mown).length == pytest.approx(yards, abs=0.2)


SAND = {"name": "pot", "at_yd": 200, "offset_yd": 8, "depth_yd": 10, "width_yd": 6}


@pytest.mark.parametrize(("fairway", "more", "words", "offset"), [
    ([-20, 20], {"bunker": [SAND]}, "200 on, 10 right of the fairway", 30.0),  # not ten right of the sand in it
    ([-40, -12], {}, "200 on, 10 right of the fairway", -2.0), ([-40, -12], {}, "200 on, 10 left of the fairway", -50.0),
    ([12, 40], {}, "200 on, 20 left of the fairway", -8.0),  # all of it right of the line, as inside a corner
])  # fmt: skip
def test_a_fairway_has_two_edges_wherever_the_line_runs(fairway, more, words: str, offset: float) -> None:
    hole = read_sketch({
        "name": "Edge", "par": 4, "length_yd": 400, "green": [{"at_yd": 400, "offset_yd": 0, "depth_yd": 30, "width_yd": 24}],
        "fairway": [{"from_yd": 100, "to_yd": 350, "left_yd": fairway[0], "right_yd": fairway[1]}], **more,
    }, "edge")  # fmt: skip
    start = place(words, hole)
    assert hole.station_offset(start.x_yd, start.y_yd) == pytest.approx((200.0, offset), abs=0.06)


def test_right_of_the_fairway_wants_a_distance_along_and_a_fairway() -> None:
    for words, why in (("8 right of the fairway", "how far along"), ("20 on, 8 left of the fairway", "no fairway there, 20 yd on"),
                       ("200 on, 8 left of the fairway, cheese", "'cheese' is not understood")):  # fmt: skip
        with pytest.raises(UsageError, match=why) as error:
            place(words, WITHY)
        assert repr(words) in str(error.value)
