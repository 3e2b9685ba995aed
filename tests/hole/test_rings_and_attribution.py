"""Keys that mapped holes need: rings cut out of areas, heights by x and y, whose data it is."""

from __future__ import annotations

import tomllib

import pytest

from simulator.errors import FileError
from simulator.hole import Hole, Surface
from simulator.hole.sketch import read_sketch

BASE = """
name = "Test Hole"
par = 4
attribution = "Drawn by Ada"
line_yd = [[0, 0], [0, 400]]
green = [{ xy_yd = [[-12, 385], [12, 385], [12, 415], [-12, 415]] }]
penalty_area = [{ name = "moat", colour = "red", xy_yd = [[-40, 200], [40, 200], [40, 260], [-40, 260]], holes_xy_yd = [[[-10, 220], [10, 220], [10, 240], [-10, 240]]] }]
heights_xy_yd = [[0, 0, 3], [30, 100, 4], [-30, 300, 6.5]]
"""


def read(text: str) -> Hole:
    return read_sketch(tomllib.loads(text), "hole.toml")


def test_a_ring_is_cut_out() -> None:
    hole = read(BASE)
    moat = next(f for f in hole.features if f.name == "moat")
    assert moat.area.area == 80 * 60 - 20 * 20
    assert hole.surface_at(0.0, 230.0) is Surface.ROUGH and hole.surface_at(20.0, 230.0) is Surface.WATER


def test_heights_by_x_and_y() -> None:
    hole = read(BASE)
    assert hole.heights == ((0.0, 0.0, 3.0), (30.0, 100.0, 4.0), (-30.0, 300.0, 6.5))
    metres = read(BASE.replace("heights_xy_yd", "heights_xy_m"))
    assert metres.heights[1] == pytest.approx((30 / 0.9144, 100 / 0.9144, 4 / 0.9144))


def test_attribution_is_carried() -> None:
    hole = read(BASE)
    assert hole.attribution == "Drawn by Ada" == hole.with_tee("tee").attribution
    assert read(BASE.replace('attribution = "Drawn by Ada"\n', "")).attribution is None


@pytest.mark.parametrize("old, new, words", [
    ('"Drawn by Ada"', "3", "attribution: found 3; allowed: text in quotes"),
    ('"Drawn by Ada"', f'"{"x" * 201}"', "allowed: 1 to 200 printable characters"),
    ("holes_xy_yd = [[[-10, 220]", "holes_xy_yd = [[[-10]", "a pair of numbers"),
    ("holes_xy_yd = [[[-10, 220], [10, 220], [10, 240], [-10, 240]]]", "holes_xy_yd = 3", "a list of up to"),
    ("holes_xy_yd = [[[-10, 220], [10, 220], [10, 240], [-10, 240]]]", "holes_xy_yd = [[[1, 2]]]", "at least 3 pairs"),
    ("[[[-10, 220], [10, 220], [10, 240], [-10, 240]]]", "[[[-90, 220], [10, 220], [10, 240]]]", "moat"),
    ("[0, 0, 3], ", "[0, 3], ", "a triple of numbers, [x, y, height]"),
    ("[[0, 0, 3]", '[["a", 0, 3]', "found 'a'; allowed: a number"),
    ("par = 4", "par = 4\nheights_yd = [[0, 0, 1], [100, 0, 1], [200, 0, 1]]", "heights_yd as well"),
])  # fmt: skip
def test_refused(old: str, new: str, words: str) -> None:
    assert old in BASE
    with pytest.raises(FileError) as caught:
        read(BASE.replace(old, new))
    assert words in str(caught.value) and "\n" not in str(caught.value)
