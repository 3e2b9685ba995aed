"""Marks: read by station or by x and y, moved with the tee, shown, and no part of the golf."""

from __future__ import annotations

import math
import tomllib

import pytest

from simulator.errors import FileError
from simulator.hole import Mark
from simulator.hole.sketch import read_sketch
from simulator.report import checks

BASE = """
name = "Marked"
par = 4
length_yd = 380
bends = [{ at_yd = 200, turn_deg = 90 }]
tee = [{ name = "white" }, { name = "red", at_yd = 50 }]
green = [{ front_yd = 366, depth_yd = 28, width_yd = 24 }]
"""


def hole(marks: str = "", base: str = BASE):
    return read_sketch(tomllib.loads(base + marks), "test")


def test_by_station_and_by_x_and_y():
    marked = hole('mark = [{ name = "tower", at_yd = 400, offset_yd = 12 }, { name = "post", x_yd = 5, y_yd = 70 }]')
    assert marked.marks[0].name == "tower" and marked.marks[1] == Mark("post", 5.0, 70.0)
    assert (marked.marks[0].x_yd, marked.marks[0].y_yd) == pytest.approx((200.0, 188.0))
    moved = marked.with_tee("red")
    assert (moved.marks[1].x_yd, moved.marks[1].y_yd) == (5.0, 20.0)


def test_in_metres_and_in_a_turned_frame():
    base = BASE.replace("length_yd = 380\nbends = [{ at_yd = 200, turn_deg = 90 }]", "line_yd = [[0, 0], [380, 0]]")
    turned = hole('mark = [{ name = "roof", at_m = 91.44, offset_m = -9.144 }]', base)
    assert (turned.marks[0].x_yd, turned.marks[0].y_yd) == pytest.approx((-10.0, 100.0))


def test_a_mark_changes_no_ground():
    plain, marked = hole(), hole('mark = [{ name = "pine", at_yd = 260, offset_yd = -20 }]')
    assert len(plain.features) == len(marked.features) and not marked.single_trees
    for x in range(-60, 260, 20):
        for y in range(0, 260, 20):
            assert plain.surface_at(x, y) is marked.surface_at(x, y)


def test_check_shows_them():
    marked = hole('mark = [{ name = "church tower", at_yd = 100, offset_yd = 12 }]')
    assert "Marks: church tower (100 on, 12 R)" in checks.hole_text(marked)
    shown = checks.hole_dict(marked)["marks"]
    assert shown == [{"name": "church tower", "x_yd": 12.0, "y_yd": 100.0}]
    assert math.isfinite(shown[0]["x_yd"])


@pytest.mark.parametrize(("text", "line"), [
    ('mark = [{ name = "a" }]', "mark 'a', at_yd: found no such key; allowed: a number (at_yd or at_m)"),
    ('mark = [{ name = "a", at_yd = 3 }, { name = "A", at_yd = 4 }]', "mark 'A': found the name twice"),
    ('marks = [{ name = "a", at_yd = 3 }]', "unknown key 'marks'; allowed: perhaps mark"),
    ('mark = [{ name = "a", at_yd = 3, height_yd = 4 }]', "mark 'a': found unknown key 'height_yd'"),
    ("assumed = 3", "assumed: found 3; allowed: a list of up to 500 sentences in quotes"),
    ('assumed = ["ok", 4]', "assumed: found 4; allowed: 1 to 200 printable characters in quotes"),
])
def test_refused(text: str, line: str):
    with pytest.raises(FileError) as raised:
        hole(text)
    assert line in str(raised.value)


def test_what_a_file_says_it_assumed_comes_first():
    assert hole('assumed = ["Width of the green."]').assumed[0] == "Width of the green."
