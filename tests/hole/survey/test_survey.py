"""Simulated lasers: errors match what is stated, slips are found, the file reads back."""

import copy
import json
from functools import cache

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lasers import dogleg_data, survey_data
from scipy import stats

from simulator.errors import FileError
from simulator.hole.line import PlayLine
from simulator.hole.sketch import read_sketch
from simulator.hole.survey import read_survey, sketch_data, sketch_text, solve_survey
from simulator.hole.survey.readings import range_words
from simulator.hole.survey.solve import adjusted_survey
from simulator.hole.terrain import Terrain
from simulator.report.surveytext import survey_text


@cache
def solved_text(text):
    return solve_survey(read_survey(json.loads(text), "readings.toml"))


def solved(data):
    """A survey solved; the same readings once."""
    return solved_text(json.dumps(data, default=lambda number: number.item()))


def slips(data):
    return adjusted_survey(read_survey(copy.deepcopy(data), "readings.toml")).dropped


def coverage(made, names, surveys, seed):
    """Which intervals hold the true station and offset along and beside the true line, and the errors."""
    rng = np.random.default_rng(seed)
    inside = []
    errors = []
    for _ in range(surveys):
        data, truth = made(rng)
        found = solved(data)
        line = PlayLine(np.array([truth["tee"], *(truth[point] for point in data["line"])]))
        for name in names:
            station, offset = line.station_offset(*truth[name])
            p = found.points[name]
            inside += [p.station_80_yd[0] <= station <= p.station_80_yd[1],
                       p.offset_80_yd[0] <= offset <= p.offset_80_yd[1]]  # fmt: skip
            errors.append((p.station_yd - station, p.offset_yd - offset))
    return np.array(inside), np.array(errors)


STRAIGHT = (survey_data, ("pond near", "pond far", "post", "landing"))
BENT = (dogleg_data, ("sand", "oak", "pond", "flag"))


@pytest.mark.parametrize(("made", "names"), [STRAIGHT, BENT], ids=["straight", "dogleg"])
def test_points_are_where_they_are(made, names):
    inside, errors = coverage(made, names, 6, 1)
    assert np.abs(errors).max() < 6.0
    assert np.sqrt((errors**2).mean(axis=0))[0] < 1.6  # a yard of laser, half a yard of rounding
    # n intervals of 80 %: fewer inside would happen once in a thousand if they were honest (binomial)
    assert inside.sum() >= stats.binom.ppf(0.001, len(inside), 0.8)


@pytest.mark.slow
@pytest.mark.parametrize(("made", "names"), [STRAIGHT, BENT], ids=["straight", "dogleg"])
def test_intervals_hold_what_they_say(made, names):
    """Eight in ten (72 to 88) of true stations and offsets inside the stated intervals."""
    inside, _ = coverage(made, names, 60, 2)
    assert 0.72 <= inside.mean() <= 0.88


def test_a_side_is_that_of_the_line_of_play_and_not_of_the_sight_it_was_read_along():
    """A pond right of the first leg, read from the corner: left of the sight from there to the flag."""
    data, truth = dogleg_data(np.random.default_rng(3))
    (tx, ty), (cx, cy), (px, py) = (truth[name] for name in ("flag", "corner", "pond"))
    assert (px - cx) * (ty - cy) - (py - cy) * (tx - cx) < 0.0  # left of that sight
    found = solved(data)
    assert found.points["pond"].offset_yd == pytest.approx(truth["pond"][0], abs=5.0)
    low, high = found.points["flag"].offset_80_yd
    assert low < 0.0 < high


@pytest.mark.parametrize(
    ("slip", "words"),
    [
        (("tee", 1, 18), 'range from the tee to "pond near"'),
        (("tee", 2, -10), 'range from the tee to "pond far"'),
        (("landing", 1, 20), 'range from the landing to "pond near"'),
    ],
)
def test_a_mistyped_reading_is_named(slip, words):
    data, truth = survey_data(np.random.default_rng(5), slip=slip)
    found = solved(data)
    (one,) = found.suspects
    assert words in [one.reading.words, *(r.words for r in one.instead)]
    if one.reading.words == words:
        assert one.off == pytest.approx(slip[2], abs=4.0)
        offset, station = truth["pond near"]
        assert found.points["pond near"].station_yd == pytest.approx(station, abs=3.0)
        assert found.points["pond near"].offset_yd == pytest.approx(offset, abs=6.0)


NOTEBOOK = {
    "name": "Notebook", "par": 4, "line": ["oak", "flag"],
    "stand": [
        {"name": "tee", "readings": [
            {"to": "oak", "range_yd": 248}, {"to": "near", "range_m": 203, "side": "left"},
            {"to": "far", "range_yd": 242, "side": "left"}, {"to": "pond", "range_yd": 199, "side": "right"},
            {"to": "bank", "range_yd": 256, "side": "right"}, {"to": "landing", "range_yd": 205, "side": "right"},
            {"to": "flag", "range_yd": 388, "side": "right"},
            {"gap_yd": 18, "between": ["far", "oak"]}, {"gap_m": 21, "between": ["oak", "bank"]},
        ]},
        {"name": "landing", "readings": [
            {"to": "oak", "range_yd": 43, "side": "left"}, {"to": "near", "range_yd": 27, "side": "left"},
            {"to": "far", "range_yd": 42, "side": "left"}, {"to": "pond", "range_yd": 14, "side": "right"},
            {"to": "bank", "range_m": 49, "side": "right"}, {"to": "flag", "range_yd": 183},
        ]},
    ],
}  # fmt: skip
"""Yards and metres from a hole with a bunker of two ends left, a pond right and an oak straight ahead."""


def test_a_slip_in_a_small_net_is_not_laid_on_another_reading():
    """224 typed for 242: the gap to the oak cannot be then, and the range to the oak was blamed for it."""
    assert not solved(NOTEBOOK).suspects
    data = copy.deepcopy(NOTEBOOK)
    data["stand"][0]["readings"][2]["range_yd"] = 224
    found = solved(data)
    assert found.suspects[0].reading.words == "range from the tee to far"
    assert found.suspects[0].off == pytest.approx(-18.0, abs=2.5)
    assert found.points["far"].station_yd == pytest.approx(242.0, abs=2.0)


def test_slips_are_named():
    """Two in three: of 40 slips of 8 to 25 yards the largest residual named 8, leaving out in turn 24."""
    rng, first, named = np.random.default_rng(4), 0, 0
    rows = [(0, 2), (0, 3), (0, 4), (1, 0), (1, 2), (1, 3), (1, 4)]
    for _ in range(40):
        data = copy.deepcopy(NOTEBOOK)
        stand, row = rows[rng.integers(len(rows))]
        reading = data["stand"][stand]["readings"][row]
        reading["range_yd" if "range_yd" in reading else "range_m"] += int(rng.choice([-1, 1]) * rng.integers(8, 26))
        words = range_words(data["stand"][stand]["name"], reading["to"])
        suspects = slips(data)
        first += bool(suspects) and suspects[0].reading.words == words
        named += bool(suspects) and words in [r.words for r in (suspects[0].reading, *suspects[0].instead)]
    assert first >= 20 and named >= 30


def test_a_point_spelt_two_ways_is_said():
    data = copy.deepcopy(NOTEBOOK)
    data["stand"][1]["readings"][4]["to"] = "bnak"
    assert "bnak was read once: if it is bank, write it the same." in survey_text(solved(data))
    assert "was read once" not in survey_text(solved(NOTEBOOK))


def test_points_may_stand_for_metres_too():
    """ "left_m = 'post'" was refused: names of points were taken for yards alone."""
    data = copy.deepcopy(NOTEBOOK)
    data["hole"] = {"fairway": [{"from_m": 137, "to_m": "flag", "left_m": "near", "right_m": 13}],
                    "rough": [{"from_m": 10, "to_m": 20, "left_m": ["near", -9], "right_m": 5}]}  # fmt: skip
    found = solved(data)
    made = sketch_data(found)
    near = round(found.points["near"].offset_yd, 1)
    (fairway,) = made["fairway"]
    assert fairway["left_yd"] == near and fairway["to_yd"] == pytest.approx(found.points["flag"].station_yd, abs=0.06)
    assert made["rough"][0]["left_yd"] == [near, pytest.approx(-9 / 0.9144)]
    read_sketch({**made, "green": [{"at_m": 355, "offset_m": 0, "depth_m": 20, "width_m": 20}],
                 "pin": [{"name": "middle", "at_m": 355}]}, "made.toml")  # fmt: skip


def test_good_readings_are_left_alone():
    rng = np.random.default_rng(6)
    named = sum(len(slips(survey_data(rng)[0])) for _ in range(8))
    assert named <= 1  # 8 surveys of 16 readings at 1 in 1,000 each


def test_a_gap_between_unequal_ranges_hardly_fixes_and_is_said():
    data = {
        "name": "Gap", "par": 4,
        "stand": [{"name": "tee", "readings": [
            {"to": "flag", "range_yd": 350},
            {"to": "far tree", "range_yd": 260, "side": "right"},
            {"to": "pond", "range_yd": 210, "side": "right"},
            {"to": "rock", "range_yd": 211, "side": "right"},
            {"gap_yd": 14, "between": ["pond", "rock"]},
            {"gap_yd": 92, "between": ["far tree", "flag"]},
        ]}],
    }  # fmt: skip
    found = solved(data)
    tree = found.points["far tree"]
    assert tree.hardly_fixed
    low, high = tree.offset_80_yd
    assert (high - tree.offset_yd) > 0 and (tree.offset_yd - low) > 0
    # skewed: the linear interval would be even
    assert abs((high - tree.offset_yd) - (tree.offset_yd - low)) > 2.0
    assert found.advice is not None


def test_advice_does_what_it_says():
    data = {
        "name": "Next", "par": 4,
        "stand": [{"name": "tee", "readings": [
            {"to": "flag", "range_yd": 350}, {"to": "pine", "range_yd": 214, "side": "left"},
            {"to": "pond", "range_yd": 213, "side": "right"},
            {"gap_yd": 37, "between": ["pond", "pine"]},
            {"to": "church", "range_yd": 352, "side": "right"}, {"gap_yd": 20, "between": ["flag", "church"]},
        ]}],
    }  # fmt: skip
    found = solved(data)
    advice = found.advice
    assert advice.before_yd > 10.0 > advice.after_yd
    better = copy.deepcopy(data)
    a, b = advice.reading.a, advice.reading.b
    better["stand"][0]["readings"].append({"gap_yd": round(advice.reading.value), "between": [a, b]})
    then = solved(better)
    sds = [then.adjusted.sd(advice.point, axis) for axis in (0, 1)]
    assert max(sds) < 1.5 * advice.after_yd + 1.0


DOGLEG = {
    "name": "Bend", "par": 4, "line": ["corner", "flag"],
    "stand": [
        {"name": "tee", "readings": [{"to": "corner", "range_yd": 220}, {"to": "flag", "range_yd": 330, "side": "left"}]},
        {"name": "corner", "readings": [
            {"to": "flag", "range_yd": 150}, {"to": "front", "range_yd": 140}, {"to": "back", "range_yd": 164},
            {"to": "bunker", "range_yd": 120, "side": "right"},
        ]},
    ],
}  # fmt: skip


def test_advice_round_a_bend_is_of_the_right_place():
    """The range that is asked for is about what it will be: the bunker is on its side of the second leg."""
    found = solved(DOGLEG)
    pin = found.pinned_by["bunker"]
    assert {pin.reading.a, pin.reading.b} & {"flag", "front", "back", "tee"} and "bunker" in {pin.reading.a, pin.reading.b}
    other = found.points[pin.reading.a if pin.reading.b == "bunker" else pin.reading.b]
    bunker = found.points["bunker"]
    assert bunker.offset_yd > 0.0
    reach = [np.hypot(*(np.array(found.line.at(bunker.station_yd, offset)) - (other.x_yd, other.y_yd)))
             for offset in bunker.offset_80_yd]  # fmt: skip
    assert min(reach) - 15.0 < pin.reading.value < max(reach) + 15.0


def test_a_gap_that_cannot_be_is_too_short_by_what_it_lacks():
    """Ranges of 90 and 150 are 60 apart at least: 50 is ten too short, not what the tangent would make of it."""
    data = copy.deepcopy(DOGLEG)
    data["stand"][1]["readings"] += [{"to": "sand", "range_yd": 90, "side": "right"}, {"gap_yd": 50, "between": ["sand", "flag"]}]
    (one,) = solved(data).suspects
    assert "gap from the corner between sand and flag" in [one.reading.words, *(r.words for r in one.instead)]
    assert abs(one.off) == pytest.approx(10.0, abs=0.5)


def test_two_sides_for_one_point_are_refused():
    data = copy.deepcopy(DOGLEG)
    data["stand"][0]["readings"].append({"to": "bunker", "range_yd": 330, "side": "left"})
    with pytest.raises(FileError, match='range from the corner to bunker: found side = "right", and "left" for the range from the tee'):
        solved(data)


def test_a_dogleg_read_from_tee_and_corner_bends():
    """Two ranges place the flag of a dogleg: that it lies far from straight ahead convicts no reading."""
    found = solved(DOGLEG)
    assert not found.suspects
    y = (330**2 - 150**2 + 220**2) / (2 * 220)
    flag = found.points["flag"]
    assert (flag.x_yd, flag.y_yd) == pytest.approx((-((330**2 - y**2) ** 0.5), y), abs=0.3)
    assert flag.station_yd == pytest.approx(370.0, abs=0.5)
    # what was read beyond the bend lies along the second leg, on the side that was told
    for name, station in (("front", 360.0), ("back", 384.0)):
        assert found.points[name].station_yd == pytest.approx(station, abs=0.5)
    low, high = found.points["bunker"].offset_80_yd
    assert 0.0 < low < found.points["bunker"].offset_yd < high


def test_a_bend_without_a_side_is_asked_for():
    data = copy.deepcopy(DOGLEG)
    del data["stand"][0]["readings"][1]["side"]
    with pytest.raises(FileError, match="point flag: found readings that leave it left or right"):
        solved(data)


def test_a_side_that_was_told_holds_for_the_interval():
    """A range and a side: a point on the arc right of the line, 40 yd from it or so (half a normal curve)."""
    data = one_stand(
        {"to": "flag", "range_yd": 380}, {"to": "tree", "range_yd": 200, "side": "right"},
        {"to": "edge", "range_yd": 218, "side": "right"}, {"to": "post", "range_yd": 220, "side": "left"},
        {"gap_yd": 35, "between": ["edge", "post"]},
    )  # fmt: skip
    found = solved({**data, "par": 4})
    low, high = found.points["tree"].offset_80_yd
    angle = np.random.default_rng(1).uniform(0.0, np.pi / 2, 400_000)
    offset = 200 * np.sin(angle)
    order = np.argsort(offset)
    share = np.cumsum(np.exp(-0.5 * (offset[order] / 40.0) ** 2))
    wanted = np.interp([0.1, 0.9], share / share[-1], offset[order])
    assert (low, high) == pytest.approx(tuple(wanted), abs=8.0)  # three standard errors of 400 draws, somewhat alike
    assert low < found.points["tree"].offset_yd < high
    # the two sides of a gap of 35: neither can be farther out than that
    assert found.points["edge"].offset_80_yd[0] > 0.0 > found.points["post"].offset_80_yd[1]
    assert found.points["edge"].offset_80_yd[1] < 36.0


def test_heights_meet_at_a_point_that_two_stands_read():
    """Nobody read the height of the second stand, but both read that of the flag."""
    data = {
        "name": "Heights", "par": 4,
        "stand": [
            {"name": "tee", "readings": [{"to": "flag", "range_yd": 380, "height_yd": 6},
                                         {"to": "spot", "range_yd": 240, "side": "left"}]},
            {"name": "spot", "readings": [{"to": "flag", "range_yd": 145, "height_yd": 16, "side": "right"},
                                          {"to": "front", "range_yd": 132, "height_yd": 14}]},
        ],
    }  # fmt: skip
    heights = {name: p.height_yd for name, p in solved(data).points.items()}
    assert heights == pytest.approx({"tee": 0.0, "flag": 6.0, "spot": -10.0, "front": 4.0})
    del data["stand"][0]["readings"][0]["height_yd"]
    found = solved(data)
    assert {p.height_yd for p in found.points.values()} == {None}
    assert "Heights of flag and front were read from the spot, whose own nobody told" in " ".join(
        survey_text(found).split()
    )


def test_the_compass_bearing_of_the_first_leg_is_the_hole_s():
    rows = [{"to": "flag", "range_yd": 380, "bearing_deg": 247.0}]
    rows += [{"to": "front", "range_yd": 370}, {"to": "back", "range_yd": 392}]
    assert read_sketch(sketch_data(solved({**one_stand(*rows), "par": 4})), "made.toml").bearing_deg == 247.0


def test_a_whole_metre_is_rounded_by_more_than_a_whole_yard():
    sds = [
        read_survey(one_stand({"to": "flag", key: 150}), "s").ranges[0].sd_yd for key in ("range_yd", "range_m")
    ]
    assert sds[1] ** 2 - sds[0] ** 2 == pytest.approx((1 / 0.9144**2 - 1.0) / 12.0)


def one_stand(*rows):
    return {"name": "Short", "par": 3, "stand": [{"name": "tee", "readings": list(rows)}]}


LOOSE = one_stand(
    {"to": "front", "range_yd": 142}, {"to": "flag", "range_yd": 158, "adjusted_yd": 163},
    {"to": "back", "range_yd": 172}, {"to": "pond", "range_yd": 101, "side": "left"},
    {"to": "bunker", "range_yd": 155, "side": "left"},
)  # fmt: skip


def test_a_loose_point_is_named_with_the_reading_that_pins_it():
    """Ranges from one stand, all along the line: each loose point has its reading, and that reading works."""
    found = solved(LOOSE)
    assert set(found.pinned_by) == {"pond", "bunker"}
    text = survey_text(found)
    assert "Loose, left and right: pond (" in text and "No one reading more" not in text
    truth = {"pond": (-22.0, 98.6), "bunker": (-17.0, 154.1), "flag": (0.0, 157.9), "tee": (0.0, 0.0),
             "front": (0.0, 142.0), "back": (0.0, 172.0)}  # fmt: skip
    for name, pin in found.pinned_by.items():
        assert pin.before_yd > 20.0
        data = copy.deepcopy(LOOSE)
        a, b = pin.reading.a, pin.reading.b
        gap = round(float(np.hypot(*np.subtract(truth[a], truth[b]))))
        if pin.reading.words.startswith("gap"):
            data["stand"][0]["readings"].append({"gap_yd": gap, "between": [a, b]})
        else:
            data["stand"].append({"name": a, "readings": [{"to": b, "range_yd": gap}]})
        point = solved(data).points[name]
        assert not point.hardly_fixed and point.offset_yd == pytest.approx(truth[name][0], abs=6.0)


def test_the_one_height_that_was_measured_is_in_the_file():
    found = solved(LOOSE)
    data = sketch_data(found)
    assert data["heights_yd"][0][2] == 0.0 and data["heights_yd"][-1][2] == 5.0
    hole = read_sketch(data, "made.toml")
    flag, tee = Terrain(hole.heights, hole.features).at(
        np.array([hole.pin.x_yd, 0.0]), np.array([hole.pin.y_yd, 0.0])
    )
    assert flag - tee == pytest.approx(5.0, abs=0.1)
    assert any("one height" in sentence for sentence in hole.assumed)
    bare = one_stand({"to": "front", "range_yd": 142}, {"to": "flag", "range_yd": 158}, {"to": "back", "range_yd": 172})
    assert "heights_yd" not in sketch_data(solved(bare))


@pytest.mark.parametrize(
    ("front", "flag", "back", "words"),
    [
        (142, 158, 120, "range from the tee to back 120"),
        (142, 136, 172, "range from the tee to flag 136"),
        (142, 180, 172, "a back beyond the flag"),
    ],
)
def test_a_green_in_the_wrong_order_is_refused(front, flag, back, words):
    rows = [{"to": name, "range_yd": yards} for name, yards in (("front", front), ("flag", flag), ("back", back))]
    with pytest.raises(FileError, match=words) as error:
        solved(one_stand(*rows))
    assert "allowed" in str(error.value) and "\n" not in str(error.value)


def test_slope_readings_are_levelled():
    rows = [
        {"to": "flag", "range_yd": 200, "incline_deg": 5.0},
        {"to": "a", "range_yd": 200, "height_yd": 17.4311, "side": "left"},
        {"to": "b", "range_yd": 164, "adjusted_yd": 169, "side": "right"},
    ]
    survey = read_survey({"name": "S", "par": 3, "stand": [{"name": "tee", "readings": rows}]}, "s")
    level = [r.level_yd for r in survey.ranges]
    assert level[0] == pytest.approx(200 * np.cos(np.radians(5.0)))
    assert level[1] == pytest.approx(level[0], abs=1e-3)
    assert level[2] == pytest.approx((164**2 - 5**2) ** 0.5)


def test_front_flag_and_back_make_a_green_and_the_file_reads_back():
    data, _ = survey_data(np.random.default_rng(8))
    landing = data["stand"][1]["readings"]
    flag = next(r for r in landing if r.get("to") == "flag")["range_yd"]
    landing += [{"to": "front", "range_yd": flag - 9}, {"to": "back", "range_yd": flag + 15}]
    data["line"] = ["pine", "flag"]
    data["hole"] = {
        "fairway": [{"from_yd": 140, "to_yd": "front", "left_yd": "post", "right_yd": "pond near"}],
        "penalty_area": [{"name": "pond", "colour": "red", "from_yd": "pond near", "to_yd": "pond far",
                          "left_yd": "pond near", "right_yd": 60}],
    }  # fmt: skip
    found = solved(data)
    import tomllib

    text = sketch_text(found, "readings.toml")
    assert tomllib.loads(text) == sketch_data(found)
    hole = read_sketch(tomllib.loads(text), "made.toml")
    green = next(f for f in hole.features if f.name == "green")
    depth = found.points["back"].station_yd - found.points["front"].station_yd
    assert depth == pytest.approx(24.0, abs=1.5)
    assert green.area.area == pytest.approx(np.pi / 4 * 24 * 0.85 * 24, rel=0.15)
    pond = next(f for f in hole.features if f.name == "pond")
    assert pond.edge_sd_yd >= 0.5
    assert hole.pin.y_yd == pytest.approx(found.points["flag"].y_yd, abs=0.2)


BROKEN = [
    ({"stand": []}, "no stand"),
    ({"stand": [{"name": "tee", "readings": []}]}, "readings"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag"}]}]}, "range_yd"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag", "range_yd": float("nan")}]}]}, "finite"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag", "range_yd": -3}]}]}, "range_yd"),
    ({"stand": [{"name": "tee", "readings": [{"to": "tee", "range_yd": 3}]}]}, "itself"),
    ({"stand": [{"name": "tee", "readings": [{"range_yd": 3}]}]}, "to"),
    ({"stand": [{"name": "tee", "readings": [{"to": "p", "range_yd": 3}]}]}, "flag"),
    ({"stand": [{"name": "tee", "readings": [{"gap_yd": 3, "between": ["p", "q"]}]}], "line": ["p"]}, "line"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag", "range_yd": 300, "side": "up"}]}]}, "left or right"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag", "range_yd": 300},
                                             {"gap_yd": 3, "between": ["flag", "q"]}]}]}, "no range"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag", "range_yd": 300}, {"to": "q", "range_yd": 300},
                                             {"gap_yd": 33, "between": ["flag", "q"]}]}]}, "side"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag", "range_yd": 300}]},
                {"name": "nowhere", "readings": [{"to": "flag", "range_yd": 300}]}]}, "earlier stand"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag", "range_yd": 30, "height_yd": 40}]}]}, "less than"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag", "range_yd": 236, "adjusted_yd": 360}]}]}, "half of the range"),
    ({"stand": [{"name": "tee", "readings": [{"to": "q", "range_yd": 400}, {"to": "flag", "range_yd": 362}]}],
      "line": ["q", "flag"]}, "a turn of 180 degrees at 'q'"),
    ({"stand": [{"name": "tee", "readings": [{"to": "flag", "range_yd": 300}, {"to": "q", "range_yd": 100},
                                             {"gap_yd": 900, "between": ["flag", "q"]}]}]}, "more than both"),
]  # fmt: skip


@pytest.mark.parametrize(("data", "words"), BROKEN)
def test_broken_surveys_are_refused_in_one_line(data, words):
    with pytest.raises(FileError) as error:
        solved({"name": "Broken", "par": 4, **data})
    assert words in str(error.value) and "\n" not in str(error.value)


@settings(max_examples=60, deadline=None)
@given(
    rows=st.lists(
        st.fixed_dictionaries(
            {},
            optional={
                "to": st.sampled_from(["flag", "a", "b", "tee"]),
                "range_yd": st.one_of(st.integers(-5, 400), st.floats(), st.text(max_size=3)),
                "gap_yd": st.integers(0, 400),
                "between": st.lists(st.sampled_from(["flag", "a", "b"]), max_size=3),
                "side": st.sampled_from(["left", "right", "far"]),
                "height_yd": st.integers(-50, 50),
                "bearing_deg": st.integers(-10, 400),
            },
        ),
        max_size=6,
    )
)
def test_any_readings_are_solved_or_refused(rows):
    data = {"name": "Any", "par": 4, "stand": [{"name": "tee", "readings": rows}]}
    try:
        found = solved(data)
    except FileError as error:
        assert "\n" not in str(error)
    else:
        assert all(np.isfinite([p.x_yd, p.y_yd]).all() for p in found.points.values())


def test_points_of_two_words_are_told_apart():
    """ "The range from the pond far to bunker near" read as one thing."""
    assert range_words("pond far", "bunker near") == 'range from "pond far" to "bunker near"'
    assert range_words("tee", "pine") == "range from the tee to pine"
