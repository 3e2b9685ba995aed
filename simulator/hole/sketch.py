"""Hole sketches: a hole written by hand in TOML, by station and offset. See holes/ for examples."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any, TypeVar

import numpy as np
import shapely

from simulator.hole.check import check_hole, check_line, check_names
from simulator.hole.clashes import clashes
from simulator.hole.collar import MOST_COLLAR_YD, add_collars
from simulator.hole.crowns import CROWN_LENGTHS, CROWN_PLAIN, Tree, read_crown, say_crowns
from simulator.hole.fields import Fields, named_entries, show
from simulator.hole.heights import check_heights, read_height, read_heights
from simulator.hole.islands import cut_islands
from simulator.hole.legs import read_line
from simulator.hole.line import PlayLine
from simulator.hole.model import Feature, Hole, Mark, Spot, paint_sorted
from simulator.hole.planes import area_heights, read_green_parts, say_planes, with_fitted_slope
from simulator.hole.shapes import read_area
from simulator.hole.slopes import MOST_GREEN_PCT, MOST_GROUND_PCT, SLOPE_KEYS, read_slope
from simulator.hole.spots import read_marks, read_pins, read_tees, read_trees, tee_pads
from simulator.hole.surfaces import LOST_CHANCE, WORDS, Surface

Placed = TypeVar("Placed", Spot, Tree, Mark)

KINDS: dict[str, Surface] = {
    "rough": Surface.ROUGH,
    "heavy_rough": Surface.HEAVY_ROUGH,
    "fairway": Surface.FAIRWAY,
    "trees": Surface.TREES,
    "path": Surface.PATH,
    "tee_ground": Surface.TEE,
    "green": Surface.GREEN,
    "bunker": Surface.BUNKER,
    "penalty_area": Surface.WATER,
    "out_of_bounds": Surface.OUT_OF_BOUNDS,
}
"""Keys of a sketch that hold areas. A penalty area that is playable becomes DRY_PENALTY."""

MOST_ATTRIBUTION = 200
"""Longest attribution line [characters]: it has to fit under a picture."""
MOST_ASSUMED, LONGEST = 500, 200
"""Most sentences of `assumed`, and letters in one: limits on slips."""

MOST_EDGE_SD_YD = 60.0
"""An edge less sure than this was never measured [yd]."""

TOP_KEYS = (
    "name",
    "par",
    "bends",
    "bearing_deg",
    "stroke_index",
    "local_rule_e5",
    "attribution",
    "tee",
    "pin",
    "tree",
    "mark",
    "assumed",
    "green_part",
    *KINDS,
)
TOP_LENGTHS = ("length", "line", "heights", "heights_xy")
"""Keys at the top of a hole's file; of the second with `UNITS` behind them."""

HINTS = {
    "water": "penalty_area",
    "pond": "penalty_area",
    "lake": "penalty_area",
    "stream": "penalty_area",
    "hazard": "penalty_area",
    "ob": "out_of_bounds",
    "oob": "out_of_bounds",
    "sand": "bunker",
    "wood": "trees",
    "flag": "pin",
    "hole": "pin",
    "tees": "tee",
    "pins": "pin",
    "marks": "mark",
    "si": "stroke_index",
    "spot_heights": "heights_yd",
    "elevations": "heights_yd",
    "levels": "heights_yd",
    "slopes": "green_part",
}


def read_sketch(data: dict[str, Any], source: str) -> Hole:
    """Hole from the parsed TOML of a sketch.

    Raises
    ------
    FileError
        Anything wrong, in one line that names feature and field.
    """
    top = Fields(source, "", data, elsewhere=TOP_KEYS)
    top.refuse_unknown(TOP_KEYS, TOP_LENGTHS, HINTS)
    name = top.text("name", "") if "name" in data else None
    if name is None:
        raise top.error("name", "no such key", "the name of the hole, in quotes")
    par = top.integer("par", 3, 6, required=True)
    assert par is not None
    line = read_line(top)
    check_line(source, par, line)
    assumed = read_assumed(top)
    features = _read_features(top, line)
    features += read_green_parts(top, line, features)
    heights = read_heights(top, line)
    tees = read_tees(top, line, heights, assumed)
    pins = read_pins(top, line, features, assumed)
    features += tee_pads(line, tees, features, assumed)
    features = cut_islands(features, assumed)
    trees = read_trees(top, line)
    marks = read_marks(top, line)
    features = [with_fitted_slope(source, f, heights) for f in features]
    heights += area_heights(source, heights, features)
    check_heights(source, heights)
    _say_lost(features, assumed)
    say_crowns([f.crown for f in features if f.crown] + [t.crown for t in trees], assumed)
    check_names(source, "tee", [t.name for t in tees])
    check_names(source, "pin", [p.name for p in pins])
    check_names(source, "mark", [m.name for m in marks])
    check_names(source, "feature", [f.name for f in features] + [t.name for t in trees])
    drawn = tuple(map(tuple, line.points.tolist()))
    hole = Hole(
        name=name,
        par=par,
        line=drawn,
        drawn_line=drawn,
        tees=tuple(tees),
        pins=tuple(pins),
        tee=tees[0],
        pin=pins[0],
        features=paint_sorted(features),
        source=source,
        bearing_deg=top.number("bearing_deg", 0.0, 360.0),
        stroke_index=top.integer("stroke_index", 1, 18),
        local_rule_e5=top.flag("local_rule_e5"),
        single_trees=tuple(trees),
        heights=tuple((s.x_yd, s.y_yd, s.z_yd) for s in heights),
        attribution=top.text("attribution", most=MOST_ATTRIBUTION),
        marks=tuple(marks),
    )
    if hole.has_relief:
        say_planes(features, len(heights), assumed)
    hole = replace(_to_frame(hole, line), assumed=tuple(assumed)).with_tee(tees[0].name)
    check_hole(hole)
    return replace(hole, assumed=(*hole.assumed, *clashes(hole)))


def read_assumed(top: Fields) -> list[str]:
    """Sentences of `assumed`: what whoever wrote the file took for granted; said with every answer."""
    value = top.table.get("assumed", [])
    if not isinstance(value, list) or len(value) > MOST_ASSUMED:
        raise top.error("assumed", show(value), f"a list of up to {MOST_ASSUMED} sentences in quotes")
    for sentence in value:
        if not isinstance(sentence, str) or not sentence.isprintable() or not 0 < len(sentence) <= LONGEST:
            raise top.error("assumed", show(sentence), f"1 to {LONGEST} printable characters in quotes")
    return list(value)


def _read_features(top: Fields, line: PlayLine) -> list[Feature]:
    features: list[Feature] = []
    collars: dict[str, float] = {}
    for kind, surface in KINDS.items():
        for fields, name in named_entries(top, kind):
            features.append(_read_feature(fields, name, kind, surface, line))
            if surface is Surface.GREEN:
                if (wide_yd := fields.length("collar", 0.0, 0.0, MOST_COLLAR_YD)) > 0.0:
                    collars[name] = wide_yd
    if not any(f.surface is Surface.GREEN for f in features):
        example = "green = [{ front_yd = 380, depth_yd = 30, width_yd = 26 }]"
        raise top.error("green", "no green", f"at least one, for example {example}")
    return add_collars(features, collars)


def _read_feature(fields: Fields, name: str, kind: str, surface: Surface, line: PlayLine) -> Feature:
    plain: tuple[str, ...] = ("name",)
    relief = None
    if kind == "penalty_area":
        plain = ("name", "colour", "playable")
    elif "colour" in fields.table:
        raise fields.error("colour", show(fields.table["colour"]), "none: only a penalty_area has a colour")
    elif kind in ("heavy_rough", "rough", "trees", "bunker", "fairway"):
        plain = ("name", "lost_chance", *(("from_assumed",) if kind == "fairway" else ()))
    sizes: tuple[str, ...] = ()
    if surface is Surface.TREES:
        plain, sizes = (*plain, *CROWN_PLAIN), CROWN_LENGTHS
    elif kind not in ("penalty_area", "out_of_bounds"):
        plain, sizes = (*plain, *SLOPE_KEYS), ("height", *(("collar",) if kind == "green" else ()))
    area = read_area(fields, line, plain, is_green=surface is Surface.GREEN, sizes=(*sizes, "edge_sd"))
    crown = slope = height = None
    if surface is Surface.TREES:
        crown = read_crown(fields)
    elif sizes:
        most = MOST_GREEN_PCT if surface is Surface.GREEN else MOST_GROUND_PCT
        slope = read_slope(fields, line, area.centroid.x, area.centroid.y, most)
        height = read_height(fields)
    if kind == "penalty_area":
        relief = fields.choice("colour", ("red", "yellow"))
        surface = Surface.DRY_PENALTY if fields.flag("playable") else Surface.WATER
    lost = fields.number("lost_chance", 0.0, 1.0)
    return Feature(
        name,
        surface,
        area,
        relief,
        lost_chance=LOST_CHANCE.get(surface, 0.0) if lost is None else lost,
        lost_assumed=lost is None,
        crown=crown,
        slope=slope,
        height_yd=height,
        edge_sd_yd=fields.length("edge_sd", 0.0, 0.0, MOST_EDGE_SD_YD),
        from_assumed=fields.flag("from_assumed"),
    )


def _say_lost(features: list[Feature], assumed: list[str]) -> None:
    for surface, chance in LOST_CHANCE.items():
        if any(f.surface is surface and f.lost_assumed for f in features):
            assumed.append(f"A ball in {WORDS[surface]} is lost {100.0 * chance:g} times in 100.")


def _to_frame(hole: Hole, line: PlayLine) -> Hole:
    """Turn everything so that the first leg runs along +y (the origin is set with the tee)."""
    hx, hy = line.headings[0]
    if hx == 0.0 and hy > 0.0:
        return hole
    turn = np.array([[hy, hx], [-hx, hy]])  # rows (x, y) times this: heading -> (0, 1)
    turn_deg = math.degrees(math.atan2(hx, hy))
    origin = line.points[0]

    def turned(xy: np.ndarray) -> np.ndarray:
        return (xy - origin) @ turn

    def placed(it: Placed) -> Placed:
        x, y = turned(np.array([it.x_yd, it.y_yd])).tolist()
        return replace(it, x_yd=x, y_yd=y)

    def feature(f: Feature) -> Feature:
        slope = f.slope and replace(f.slope, falls_bearing_deg=(f.slope.falls_bearing_deg - turn_deg) % 360.0)
        return replace(f, area=shapely.transform(f.area, turned), slope=slope)

    drawn = tuple(map(tuple, turned(line.points).tolist()))
    tees, pins = tuple(map(placed, hole.tees)), tuple(map(placed, hole.pins))
    return replace(
        hole,
        line=drawn,
        drawn_line=drawn,
        tees=tees,
        pins=pins,
        tee=tees[0],
        pin=pins[0],
        features=tuple(map(feature, hole.features)),
        single_trees=tuple(map(placed, hole.single_trees)),
        heights=tuple((*turned(np.array([x, y])).tolist(), z) for x, y, z in hole.heights),
        marks=tuple(map(placed, hole.marks)),
    )
