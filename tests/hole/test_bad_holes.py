"""Broken hole files: each gives one line that names file, feature, field, what was found and is allowed."""

from __future__ import annotations

import math
import os
import tomllib
import warnings

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from simulator.errors import FileError
from simulator.hole import Hole, bundled_holes, load_hole
from simulator.hole.files import MOST_BYTES, bundled_folder, parse_file
from simulator.hole.sketch import read_sketch

BASE = """
name = "Test Hole"
par = 4
stroke_index = 9
length_yd = 400
bends = [{ at_yd = 240, turn_deg = 10 }]
tee = [{ name = "white" }, { name = "red", at_yd = 40 }]
green = [{ front_yd = 385, depth_yd = 30, width_yd = [20, 26, 22] }]
pin = [{ name = "front", on_yd = 6 }, { name = "back", on_yd = 24, offset_yd = 3 }]
fairway = [{ from_yd = 150, to_yd = 380, left_yd = [-15, -12], right_yd = 14 }]
bunker = [{ name = "left trap", at_yd = 260, offset_yd = -20, depth_yd = 12, width_yd = 8 }]
penalty_area = [{ name = "pond", colour = "red", from_yd = 205, to_yd = 280, left_yd = 18, right_yd = 50 }]
out_of_bounds = [{ name = "lane", left_of_yd = -36 }]
trees = [{ name = "copse", points_yd = [[290, 30], [340, 30], [340, 60]] }]
"""

WAYS = (
    "one way to give the area: from/to with left/right, left_of or right_of, at with depth/width, "
    "points, xy, or front (a green)"
)

CASES: dict[str, tuple[str, str, str]] = {
    # kind: (text of BASE, what stands there instead, the line after "hole.toml: ")
    "toml syntax": (
        "par = 4",
        "par = = 4",
        "found a mistake in the TOML (Invalid value (at line 3, column 7)); allowed: TOML 1.0",
    ),
    "toml key twice": (
        "par = 4",
        "par = 4\npar = 5",
        "found a mistake in the TOML (Cannot overwrite a value (at line 4, column 8)); "
        "allowed: TOML 1.0",
    ),
    "no name": (
        'name = "Test Hole"',
        "",
        "name: found no such key; allowed: the name of the hole, in quotes",
    ),
    "blank name": (
        '"Test Hole"',
        '" "',
        "name: found ' '; allowed: 1 to 60 printable characters",
    ),
    "control characters": (
        '"Test Hole"',
        "\"Test\\u001b[31m\"",
        "name: found 'Test\\x1b[31m'; allowed: 1 to 60 printable characters",
    ),
    "no par": (
        "par = 4",
        "",
        "par: found no such key; allowed: a whole number from 3 to 6",
    ),
    "par 7": (
        "par = 4",
        "par = 7",
        "par: found 7; allowed: a whole number from 3 to 6",
    ),
    "par in words": (
        "par = 4",
        'par = "four"',
        "par: found 'four'; allowed: a whole number from 3 to 6",
    ),
    "par true": (
        "par = 4",
        "par = true",
        "par: found True; allowed: a whole number from 3 to 6",
    ),
    "stroke index 19": (
        "stroke_index = 9",
        "stroke_index = 19",
        "stroke_index: found 19; allowed: a whole number from 1 to 18",
    ),
    "bearing": (
        "par = 4",
        "par = 4\nbearing_deg = 400",
        "bearing_deg: found 400; allowed: a number from 0 to 360",
    ),
    "local rule as text": (
        "par = 4",
        "par = 4\nlocal_rule_e5 = \"yes\"",
        "local_rule_e5: found 'yes'; allowed: true or false",
    ),
    "no length": (
        "length_yd = 400",
        "",
        "length_yd: found no such key; allowed: a number (length_yd or length_m)",
    ),
    "length NaN": (
        "length_yd = 400",
        "length_yd = nan",
        "length_yd: found nan; allowed: a finite number",
    ),
    "length without end": (
        "length_yd = 400",
        "length_yd = inf",
        "length_yd: found inf; allowed: a finite number",
    ),
    "length beyond floats": (
        "length_yd = 400",
        "length_yd = 1" + "0" * 400,
        "length_yd: found 1" + "0" * 56 + "...; allowed: a number from 1 to 1000000",
    ),
    "4,000-yard par 4": (
        "length_yd = 400",
        "length_yd = 4000",
        "length: found a par 4 of 4,000 yd; allowed: 150 to 600 yd for a par 4",
    ),
    "400-yard par 3": (
        "par = 4",
        "par = 3",
        "length: found a par 3 of 400 yd; allowed: 40 to 330 yd for a par 3",
    ),
    "both units": (
        "length_yd = 400",
        "length_yd = 400\nlength_m = 366",
        "length: found both length_yd and length_m; allowed: one of them",
    ),
    "bend past the end": (
        "at_yd = 240, turn_deg",
        "at_yd = 440, turn_deg",
        "bend 1, at_yd: found a bend at 440 yd; allowed: between 0 and 400 yd, in order",
    ),
    "turn back": (
        "turn_deg = 10",
        "turn_deg = 170",
        "bend 1, turn_deg: found 170; allowed: a number from -120 to 120",
    ),
    "unknown key, near miss": (
        "bunker =",
        "bunkr =",
        "found unknown key 'bunkr'; allowed: perhaps bunker",
    ),
    "unknown key, other word": (
        "bunker =",
        "pond =",
        "found unknown key 'pond'; allowed: perhaps penalty_area",
    ),
    "unknown key in a feature": (
        "depth_yd = 12",
        "dept_yd = 12",
        "bunker 'left trap': found unknown key 'dept_yd'; allowed: perhaps depth_yd",
    ),
    "no unit": (
        "depth_yd = 12",
        "depth = 12",
        "bunker 'left trap': found unknown key 'depth'; allowed: perhaps depth_yd",
    ),
    "key of another shape": (
        "depth_yd = 12",
        "right_yd = 12",
        "bunker 'left trap': found right_yd and at_yd; allowed: " + WAYS,
    ),
    "key strayed into a block": (
        "bunker =",
        "[[rough]]\nfrom_yd = 1\nto_yd = 9\nleft_yd = 0\nright_yd = 5\nbunker =",
        "rough: found the key bunker inside this table; allowed: bunker above the first "
        "[[...]] of the file: TOML reads on to the next one",
    ),
    "missing key in a feature": (
        ", depth_yd = 12",
        "",
        "bunker 'left trap', depth_yd: found no such key; allowed: a number (depth_yd or "
        "depth_m)",
    ),
    "wrong type in a feature": (
        "depth_yd = 12",
        "depth_yd = [12]",
        "bunker 'left trap', depth_yd: found [12]; allowed: a number",
    ),
    "negative width": (
        "width_yd = 8",
        "width_yd = -8",
        "bunker 'left trap', width_yd: found -8; allowed: a number above 0",
    ),
    "offset NaN": (
        "offset_yd = -20",
        "offset_yd = nan",
        "bunker 'left trap', offset_yd: found nan; allowed: a finite number",
    ),
    "feature of no shape": (
        ", at_yd = 260, offset_yd = -20, depth_yd = 12, width_yd = 8",
        "",
        "bunker 'left trap': found no shape; allowed: " + WAYS,
    ),
    "feature as a number": (
        "bunker = [{",
        "bunker = [7, {",
        'bunker 1: found 7; allowed: a table of keys, for example {name = "white"}',
    ),
    "kind as a number": (
        "trees = [{",
        "path = 7\ntrees = [{",
        "path: found 7; allowed: tables, [[path]] or path = [{...}, {...}]",
    ),
    "from beyond to": (
        "from_yd = 205, to_yd = 280",
        "from_yd = 280, to_yd = 205",
        "penalty area 'pond', from_yd: found from 280 yd to 205 yd; allowed: from less than "
        "to",
    ),
    "edges crossed": (
        "left_yd = 18, right_yd = 50",
        "left_yd = 50, right_yd = 18",
        "penalty area 'pond', left_yd: found left 50 yd, right 18 yd at station 205 yd; "
        "allowed: left less than right (offsets are negative on the left)",
    ),
    "stations out of order": (
        "from_yd = 205, to_yd = 280",
        "stations_yd = [205, 280, 260]",
        "penalty area 'pond', stations_yd: found [205, 280, 260]; allowed: two or more, "
        "increasing",
    ),
    "too few offsets": (
        "from_yd = 205, to_yd = 280, left_yd = 18",
        "stations_yd = [205, 240, 280], left_yd = [18, 20]",
        "penalty area 'pond', left_yd: found 2 offsets; allowed: one, or 3: one for each "
        "station",
    ),
    "a list without from and to": (
        "left_of_yd = -36",
        "left_of_yd = [-36, -30, -36]",
        "out of bounds 'lane', from_yd: found no such key; allowed: a number (from_yd or "
        "from_m)",
    ),
    "beyond the map": (
        "left_of_yd = -36",
        "left_of_yd = -236",
        "out of bounds 'lane', left_of_yd: found -236; allowed: less than 200 yd from the "
        "line",
    ),
    "ring that crosses itself": (
        "[[290, 30], [340, 30], [340, 60]]",
        "[[150, 30], [190, 50], [190, 30], [150, 60]]",
        "trees 'copse': found a ring that crosses itself (self-intersection near x 42.0, y "
        "174.0 yd); allowed: corners in order round the area",
    ),
    "empty area": (
        "[[290, 30], [340, 30], [340, 60]]",
        "[[290, 30], [340, 30], [320, 30]]",
        "trees 'copse': found an empty area; allowed: an area of at least 0.25 square yards",
    ),
    "two corners": (
        "[[290, 30], [340, 30], [340, 60]]",
        "[[290, 30], [340, 30]]",
        "trees 'copse', points_yd: found 2 of them; allowed: a list of at least 3 pairs, "
        "[[a, b], ...]",
    ),
    "corner of three numbers": (
        "[290, 30]",
        "[290, 30, 4]",
        "trees 'copse', points_yd: found [290, 30, 4]; allowed: a pair of numbers, [a, b]",
    ),
    "corner without end": (
        "[290, 30]",
        "[290, -inf]",
        "trees 'copse', points_yd: found -inf; allowed: a finite number",
    ),
    "unknown colour": (
        'colour = "red"',
        'colour = "blue"',
        "penalty area 'pond', colour: found 'blue'; allowed: red or yellow",
    ),
    "no colour": (
        'colour = "red", ',
        "",
        "penalty area 'pond', colour: found no such key; allowed: red or yellow",
    ),
    "colour on a bunker": (
        'name = "left trap",',
        'name = "left trap", colour = "red",',
        "bunker 'left trap', colour: found 'red'; allowed: none: only a penalty_area has a "
        "colour",
    ),
    "lost chance above 1": (
        'name = "copse",',
        'name = "copse", lost_chance = 5,',
        "trees 'copse', lost_chance: found 5; allowed: a number from 0 to 1",
    ),
    "name twice": (
        'name = "copse"',
        'name = "Pond"',
        "feature 'pond': found the name twice; allowed: a name of its own for each",
    ),
    "two tees of one name": (
        'name = "red", at',
        'name = "white", at',
        "tee 'white': found the name twice; allowed: a name of its own for each",
    ),
    "no green": (
        "green = [{ front_yd = 385, depth_yd = 30, width_yd = [20, 26, 22] }]",
        "",
        "green: found no green; allowed: at least one, for example green = [{ front_yd = "
        "380, depth_yd = 30, width_yd = 26 }]",
    ),
    "front on a bunker": (
        "at_yd = 260, offset_yd = -20",
        "front_yd = 260",
        "bunker 'left trap', front_yd: found a front edge; allowed: front only on a green; "
        "elsewhere at",
    ),
    "green of negative width": (
        "[20, 26, 22]",
        "[20, -26, 22]",
        "green, width_yd: found [20, -26, 22]; allowed: numbers above 0",
    ),
    "green too far off": (
        "front_yd = 385",
        "front_yd = 300",
        "length: found a line of play that ends 70 yd from the green; allowed: within 30 yd "
        "of it",
    ),
    "pin off the green": (
        "on_yd = 24",
        "on_yd = 34",
        "pin 'back': found it in the rough; allowed: a pin on the green",
    ),
    "pin in the water": (
        "from_yd = 205, to_yd = 280, left_yd = 18",
        "from_yd = 205, to_yd = 400, left_yd = -5",
        "pin 'front': found it in the water (pond); allowed: a pin on the green",
    ),
    "pin out of bounds": (
        "left_of_yd = -36",
        "right_of_yd = -1, from_yd = 300, to_yd = 500",
        "pin 'front': found it out of bounds (lane); allowed: a pin on the green",
    ),
    "pin in two ways": (
        "on_yd = 24,",
        "on_yd = 24, at_yd = 409,",
        "pin 'back': found the place in two ways; allowed: on_yd or at_yd with offset_yd, or "
        "x_yd and y_yd",
    ),
    "pin without a place": (
        '{ name = "front", on_yd = 6 }',
        '{ name = "front" }',
        "pin 'front', on_yd: found no such key; allowed: a number (on_yd or on_m)",
    ),
    "tee in the water": (
        "at_yd = 40",
        "at_yd = 240, offset_yd = 30",
        "tee 'red': found it in the water (pond); allowed: a tee on dry ground in bounds",
    ),
    "tee out of bounds": (
        "at_yd = 40",
        "at_yd = 40, offset_yd = -50",
        "tee 'red': found it out of bounds (lane); allowed: a tee on dry ground in bounds",
    ),
    "tee with x alone": (
        "at_yd = 40",
        "x_yd = 4",
        "tee 'red', y_yd: found no such key; allowed: a number (y_yd or y_m)",
    ),
    # -- heights, slopes, trees --
    "two spot heights": (
        "tee = [{", "heights_yd = [[0, 0, 1], [200, 0, 2]]\ntee = [{",
        "heights_yd: found 2 of them; allowed: a list of at least 3 triples, "
        "[[station, offset, height], ...]",
    ),
    "spot heights as a number": (
        "tee = [{", "heights_m = 4\ntee = [{",
        "heights_m: found 4; allowed: a list of at least 3 triples, [[station, offset, height], ...]",
    ),
    "spot height of two numbers": (
        "tee = [{", "heights_yd = [[0, 0, 1], [200, 0], [300, 0, 1]]\ntee = [{",
        "heights_yd: found [200, 0]; allowed: a triple of numbers, [station, offset, height]",
    ),
    "spot height NaN": (
        "tee = [{", "heights_yd = [[0, 0, 1], [200, 0, nan], [300, 0, 1]]\ntee = [{",
        "heights_yd: found nan; allowed: a finite number",
    ),
    "spot heights in both units": (
        "tee = [{", "heights_yd = [[0, 0, 1], [9, 0, 1], [3, 0, 1]]\nheights_m = []\ntee = [{",
        "heights: found both heights_yd and heights_m; allowed: one of them",
    ),
    "heights without a unit": (
        "tee = [{", "heights = [[0, 0, 1]]\ntee = [{",
        "found unknown key 'heights'; allowed: perhaps heights_yd",
    ),
    "a height in orbit": (
        "tee = [{", "heights_yd = [[0, 0, 1], [200, 0, 9000], [300, 0, 1]]\ntee = [{",
        "heights_yd: found 9000; allowed: a number from -6000 to 6000",
    ),
    "a mountain": (
        "tee = [{", "heights_yd = [[0, 0, 1], [200, 0, 190], [400, 0, 1]]\ntee = [{",
        "heights: found heights from 1 to 190 yd; allowed: at most 150 yd between the lowest and the "
        "highest",
    ),
    "a height twice": (
        "tee = [{", "heights_yd = [[0, 0, 1], [200, 0, 2], [400, 0, 1], [200.5, 0.5, 2]]\ntee = [{",
        "heights: found spot height 2 and spot height 4 in one place; allowed: places at least 1 yd apart",
    ),
    "a cliff": (
        "tee = [{", "heights_yd = [[0, 0, 1], [200, 0, 2], [205, 0, 12], [400, 0, 1]]\ntee = [{",
        "heights: found 10 yd of height over 5 yd between spot height 2 and spot height 3; allowed: slopes "
        "up to 100 %",
    ),
    "a tee with a height on a spot height": (
        'tee = [{ name = "white" }',
        'heights_yd = [[0, 0, 1], [9, 0, 1], [99, 0, 1]]\ntee = [{ name = "white", height_yd = 3 }',
        "heights: found spot height 1 and tee 'white' in one place; allowed: places at least 1 yd apart",
    ),
    "a tee with a height in words": (
        '{ name = "white" }', '{ name = "white", height_yd = "high" }',
        "tee 'white', height_yd: found 'high'; allowed: a number",
    ),
    "a spot height on an area with a height": (
        "width_yd = [20, 26, 22] }]",
        "width_yd = [20, 26, 22], height_yd = 3 }]\nheights_yd = [[0, 0, 1], [99, 0, 1], [400, 2, 1]]",
        "heights: found spot height 3 inside green, which has a height of its own; allowed: one of the two",
    ),
    "spot heights that make a green too steep": (
        "tee = [{",
        "heights_yd = [[0, 0, 1], [388, 0, 1], [400, 6, 2], [400, -6, 2], [412, 0, 3]]\ntee = [{",
        "heights: found spot heights on green that slope it 8.3 %; allowed: at most 6 % on a green",
    ),
    "a green of 60 per cent": (
        "width_yd = [20, 26, 22] }]", 'width_yd = [20, 26, 22], slope_pct = 60, falls = "left" }]',
        "green, slope_pct: found 60; allowed: a number from 0 to 6",
    ),
    "a fairway of 60 per cent": (
        "right_yd = 14 }]", 'right_yd = 14, slope_pct = 60, falls = "left" }]',
        "fairway, slope_pct: found 60; allowed: a number from 0 to 40",
    ),
    "a negative slope": (
        "width_yd = [20, 26, 22] }]", 'width_yd = [20, 26, 22], slope_pct = -2, falls = "left" }]',
        "green, slope_pct: found -2; allowed: a number from 0 to 6",
    ),
    "a slope that falls nowhere": (
        "width_yd = [20, 26, 22] }]", "width_yd = [20, 26, 22], slope_pct = 2 }]",
        "green, falls: found no such key beside slope_pct = 2; allowed: front, back, left, right, front left "
        "..., or falls_deg",
    ),
    "a slope that falls upwards": (
        "width_yd = [20, 26, 22] }]", 'width_yd = [20, 26, 22], slope_pct = 2, falls = "up" }]',
        "green, falls: found 'up'; allowed: front, back, left, right, front left ..., or falls_deg",
    ),
    "a slope that falls two ways": (
        "width_yd = [20, 26, 22] }]",
        'width_yd = [20, 26, 22], slope_pct = 2, falls = "left", falls_deg = 9 }]',
        "green, falls: found both falls and falls_deg; allowed: one of them",
    ),
    "words where degrees belong": (
        "width_yd = [20, 26, 22] }]", 'width_yd = [20, 26, 22], slope_pct = 2, falls_deg = "left" }]',
        "green, falls_deg: found 'left'; allowed: a number; words go with falls",
    ),
    "a way to fall without a slope": (
        "width_yd = [20, 26, 22] }]", 'width_yd = [20, 26, 22], falls = "left" }]',
        "green, falls: found 'left' without slope_pct; allowed: both or neither",
    ),
    "water on a slope": (
        'colour = "red",', 'colour = "red", slope_pct = 2, falls = "left",',
        "penalty area 'pond': found unknown key 'slope_pct'; allowed: name, colour, playable, from_yd, "
        "to_yd, stations_yd, left_yd, right_yd, edge_sd_yd (or _m for metres)",
    ),
    "a part of a green without a slope": (
        "tee = [{", "green_part = [{ from_yd = 400, to_yd = 420, left_yd = -20, right_yd = 20 }]\ntee = [{",
        "green part, slope_pct: found no such key; allowed: a number from 0 to 6",
    ),
    "a part of no green": (
        "tee = [{",
        "green_part = [{ from_yd = 300, to_yd = 320, left_yd = -9, right_yd = 9, slope_pct = 0 }]\ntee = [{",
        "green part: found an area on no green; allowed: an area on one green",
    ),
    "a part of two greens": (
        "green = [{",
        "green_part = [{ from_yd = 300, to_yd = 420, left_yd = -9, right_yd = 9, slope_pct = 0 }]\n"
        'green = [{ name = "old green", at_yd = 330, depth_yd = 20, width_yd = 20 }, { name = "new green", ',
        "green part: found an area on old green and new green; allowed: an area on one green",
    ),
    "parts that overlap": (
        "tee = [{",
        "green_part = [{ from_yd = 400, to_yd = 420, left_yd = -9, right_yd = 9, slope_pct = 0 }, { name = "
        '"shelf", from_yd = 390, to_yd = 401, left_yd = 0, right_yd = 4, slope_pct = 0 }]\ntee = [{',
        "green part 'shelf': found an area over green part 1 as well (4.0 square yards); allowed: parts that "
        "do not overlap",
    ),
    "branches above the top": (
        'name = "copse",', 'name = "copse", height_yd = 10, base_yd = 12,',
        "trees 'copse', base_yd: found branches from 12 yd on a tree of 10 yd; allowed: a base below the top",
    ),
    "branches above the top nobody gave": (
        'name = "copse",', 'name = "copse", base_m = 20,',
        "trees 'copse', base_m: found branches from 21.8723 yd on a tree of 21 yd; allowed: a base below "
        "the top",
    ),
    "a tree to the clouds": (
        'name = "copse",', 'name = "copse", height_yd = 300,',
        "trees 'copse', height_yd: found 300; allowed: a number from 1 to 130",
    ),
    "branches under the ground": (
        'name = "copse",', 'name = "copse", base_yd = -1,',
        "trees 'copse', base_yd: found -1; allowed: a number from 0 to 130",
    ),
    "unknown density": (
        'name = "copse",', 'name = "copse", density = "thick",',
        "trees 'copse', density: found 'thick'; allowed: open or medium or dense",
    ),
    "density in two ways": (
        'name = "copse",', 'name = "copse", density = "open", hit_length_m = 5,',
        "trees 'copse', density: found both density and hit_length_m; allowed: one of them",
    ),
    "a crown on a bunker": (
        'name = "left trap",', 'name = "left trap", density = "open",',
        "bunker 'left trap': found unknown key 'density'; allowed: name, lost_chance, slope_pct, falls, "
        "falls_deg, turn_deg, at_yd, offset_yd, depth_yd, width_yd, height_yd, edge_sd_yd (or _m for metres)",
    ),
    "a tree without a crown": (
        "tee = [{", "tree = [{ at_yd = 200, offset_yd = 30 }]\ntee = [{",
        "tree, crown_yd: found no such key; allowed: a number (crown_yd or crown_m)",
    ),
    "a crown as wide as a wood": (
        "tee = [{", "tree = [{ at_yd = 200, offset_yd = 30, crown_yd = 90 }]\ntee = [{",
        "tree, crown_yd: found 90; allowed: a number from 1.5 to 60",
    ),
    "a tree by its diameter": (
        "tee = [{", "tree = [{ at_yd = 200, offset_yd = 30, diameter_yd = 9 }]\ntee = [{",
        "tree: found unknown key 'diameter_yd'; allowed: perhaps crown_yd",
    ),
    "a tree without a place": (
        "tee = [{", 'tree = [{ name = "oak", crown_yd = 9 }]\ntee = [{',
        "tree 'oak', at_yd: found no such key; allowed: a number (at_yd or at_m)",
    ),
    "a tree on the green": (
        "tee = [{", 'tree = [{ name = "oak", at_yd = 400, crown_yd = 9 }]\ntee = [{',
        "tree 'oak': found it in the green; allowed: a tree beside greens and tees (its crown may hang over "
        "them)",
    ),
    "a tree with the name of a wood": (
        "tee = [{", 'tree = [{ name = "Copse", at_yd = 200, offset_yd = 30, crown_yd = 9 }]\ntee = [{',
        "feature 'Copse': found the name twice; allowed: a name of its own for each",
    ),
    "line and length": (
        "length_yd = 400",
        "length_yd = 400\nline_yd = [[0, 0], [0, 400]]",
        "line_yd: found a line as well as length or bends; allowed: one of the two",
    ),
}


def write(folder, text):
    path = folder / "hole.toml"
    path.write_text(text, encoding="utf-8")
    return path


def refusal(path):
    """The one line a file is refused with; warnings count as failures."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        with pytest.raises(FileError) as caught:
            load_hole(path)
    line = str(caught.value)
    assert "\n" not in line and line.startswith(f"{path}: ")
    return line.removeprefix(f"{path}: ")


def test_the_base_is_sound(tmp_path):
    assert load_hole(write(tmp_path, BASE)).name == "Test Hole"
    assert load_hole(write(tmp_path, RICH)).has_relief


@pytest.mark.parametrize("kind", CASES)
def test_broken_sketch(kind, tmp_path):
    old, new, line = CASES[kind]
    assert BASE.count(old) >= 1
    assert refusal(write(tmp_path, BASE.replace(old, new, 1))) == line


# -- files that are no sketch at all ----------------------------------------------------------------


def test_no_such_file(tmp_path):
    line = refusal(tmp_path / "nowhere.toml")
    assert line == f"found no such file; allowed: a .toml file, or one of {', '.join(bundled_holes())}"


def test_misspelt_demo_hole():
    assert refusal("withy-drian") == "found no such file; allowed: perhaps withy-drain"


def test_directory(tmp_path):
    assert refusal(tmp_path) == "found a folder; allowed: a .toml file"


def test_pipe(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    assert refusal(tmp_path / "pipe") == "found something that is not a file; allowed: a .toml file"


def test_other_kind_of_file(tmp_path):
    path = tmp_path / "hole.csv"
    path.write_text("1,2,3")
    assert refusal(path) == "found a .csv file; allowed: a hole sketch, a .toml file"


@pytest.mark.skipif(os.geteuid() == 0, reason="root may read everything")
def test_unreadable(tmp_path):
    path = write(tmp_path, BASE)
    path.chmod(0)
    assert refusal(path) == (
        "found a file that cannot be read (Permission denied); allowed: a .toml file"
    )


def test_read_error(tmp_path, monkeypatch):
    def fail(*_args, **_kwargs):
        raise OSError(5, "Input/output error")

    path = write(tmp_path, BASE)
    monkeypatch.setattr("pathlib.Path.open", fail)
    assert refusal(path) == (
        "found a file that cannot be read (Input/output error); allowed: a .toml file"
    )


def test_zero_byte_in_the_path():
    with pytest.raises(FileError, match=r"found (no such file|a file that cannot be read)"):
        load_hole("hole\0.toml")


def test_path_too_long():
    with pytest.raises(FileError, match=r"found (no such file|a file that cannot be read)"):
        load_hole("x" * 5000)


def test_not_utf8(tmp_path):
    path = tmp_path / "hole.toml"
    path.write_bytes(b'name = "caf\xe9"')
    assert refusal(path) == "found a byte at 11 that is not UTF-8; allowed: UTF-8 text"


def test_too_big(tmp_path):
    path = write(tmp_path, BASE + "#" * MOST_BYTES)
    assert refusal(path) == "found more than 1,000,000 bytes; allowed: a .toml file"


def test_nested_too_deep(tmp_path):
    line = refusal(write(tmp_path, "name = " + "[" * 100_000))
    assert line == "found lists nested too deep; allowed: TOML"


def test_empty_file(tmp_path):
    assert refusal(write(tmp_path, "")) == "name: found no such key; allowed: the name of the hole, in quotes"


# -- anything at all ---------------------------------------------------------------------------------

RICH = BASE.replace("tee = [{", """heights_yd = [[0, 0, 3], [150, 20, 1], [300, -20, 0], [400, 30, 2]]
tree = [{ name = "oak", at_yd = 330, offset_yd = 20, crown_yd = 12, height_yd = 18, density = "open" }]
green_part = [{ from_yd = 402, to_yd = 420, left_yd = -20, right_yd = 20, slope_pct = 1, falls = "back" }]
tee = [{ height_yd = 1, at_yd = 9, """, 1).replace(
    "[20, 26, 22]", '[20, 26, 22], slope_pct = 2.5, falls_deg = 200', 1
).replace('name = "copse",', 'name = "copse", height_yd = 9, base_yd = 1, hit_length_yd = 4,')

SKETCHES = [BASE, RICH, RICH, *((bundled_folder() / f"{name}.toml").read_text() for name in bundled_holes())]
JUNK = st.one_of(
    st.booleans(), st.integers(), st.floats(), st.text(max_size=8), st.just([]), st.just({}),
    st.floats(-500, 500), st.lists(st.floats(-500, 500), max_size=5),
    st.lists(st.lists(st.floats(-90, 500), min_size=2, max_size=2), max_size=6),
)


def leaves(value, path=()):
    """Every path to a value in nested tables and lists."""
    yield path
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, inner in items:
        yield from leaves(inner, (*path, key))


def test_a_ring_by_a_hair_is_refused() -> None:
    """It crossed nothing as it was read, and itself once the hole was moved to its tee 9 yards on."""
    data = tomllib.loads(RICH)
    data["trees"][0]["points_yd"] = [[0.0, 0.0], [-2.5e-210, 2.0], [0.0, 1.0], [1.0, 0.0]]
    with pytest.raises(FileError, match="crosses itself"):
        read_sketch(data, "hair")


def hole_or_refusal(data):
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        try:
            hole = read_sketch(data, "mutant")
        except FileError as error:
            assert "\n" not in str(error) and len(str(error)) < 600
            return None
    assert isinstance(hole, Hole) and all(f.area.is_valid and f.area.area > 0 for f in hole.features)
    assert math.isfinite(hole.height_at(20.0, 200.0))
    return hole


@settings(max_examples=300, deadline=None)
@given(data=st.data())
def test_any_value_replaced_or_taken_away(data):
    sketch = tomllib.loads(data.draw(st.sampled_from(SKETCHES)))
    for _ in range(data.draw(st.integers(1, 3))):
        path = data.draw(st.sampled_from([p for p in leaves(sketch) if p]))
        holder = sketch
        for key in path[:-1]:
            holder = holder[key]
        action = data.draw(st.sampled_from(["replace", "scale", "remove", "rename"]))
        if action == "scale" and isinstance(holder[path[-1]], float | int):
            holder[path[-1]] *= data.draw(st.sampled_from([-1, 0, 0.5, 2, 1e300]))
        elif action == "rename" and isinstance(holder, dict):
            holder[data.draw(st.text(max_size=6))] = holder.pop(path[-1])
        elif action == "remove":
            holder.pop(path[-1])
        else:
            holder[path[-1]] = data.draw(JUNK)
    hole_or_refusal(sketch)


@settings(max_examples=200, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_any_text(data, tmp_path):
    """Bytes cut out, doubled or overwritten anywhere in a file."""
    raw = bytearray(data.draw(st.sampled_from(SKETCHES)).encode())
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(raw) - 1))
        size = data.draw(st.integers(0, 30))
        doubled = bytes(raw[at : at + 2 * size])
        raw[at : at + size] = data.draw(st.one_of(st.binary(max_size=6), st.just(doubled)))
    path = tmp_path / "mutant.toml"
    path.write_bytes(raw)
    try:
        sketch = parse_file(path, "mutant")
    except FileError as error:
        assert "\n" not in str(error)
    else:
        hole_or_refusal(sketch)
