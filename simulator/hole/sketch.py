"""Hole sketches: a hole written by hand in TOML, by station and offset. See holes/ for examples."""

from __future__ import annotations

from typing import Any

import numpy as np
import shapely

from simulator.hole.check import check_hole, check_line, check_names
from simulator.hole.fields import Fields, entries_of, named_fields, show
from simulator.hole.legs import read_line
from simulator.hole.line import PlayLine
from simulator.hole.model import Feature, Hole, Spot, line_from, paint_sorted
from simulator.hole.shapes import read_area
from simulator.hole.spots import read_pins, read_tees, tee_pads
from simulator.hole.surfaces import LOST_CHANCE, WORDS, Surface

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

TOP_KEYS = (
    "name", "par", "bends", "bearing_deg", "stroke_index", "local_rule_e5", "tee", "pin", *KINDS,
)

HINTS = {
    "water": "penalty_area", "pond": "penalty_area", "lake": "penalty_area", "stream": "penalty_area",
    "hazard": "penalty_area", "ob": "out_of_bounds", "oob": "out_of_bounds", "sand": "bunker",
    "wood": "trees", "flag": "pin", "hole": "pin", "tees": "tee", "pins": "pin", "si": "stroke_index",
}


def read_sketch(data: dict[str, Any], source: str) -> Hole:
    """Hole from the parsed TOML of a sketch.

    Raises
    ------
    FileError
        Anything wrong, in one line that names feature and field.
    """
    top = Fields(source, "", data, elsewhere=TOP_KEYS)
    top.refuse_unknown(TOP_KEYS, ("length", "line"), HINTS)
    name = top.text("name", "") if "name" in data else None
    if name is None:
        raise top.error("name", "no such key", "the name of the hole, in quotes")
    par = top.integer("par", 3, 6, required=True)
    assert par is not None
    line = read_line(top)
    check_line(source, par, line)
    assumed: list[str] = []
    features = _read_features(top, line)
    tees = read_tees(top, line, assumed)
    pins = read_pins(top, line, features, assumed)
    features += tee_pads(line, tees, features, assumed)
    _say_lost(features, assumed)
    check_names(source, "tee", [t.name for t in tees])
    check_names(source, "pin", [p.name for p in pins])
    check_names(source, "feature", [f.name for f in features])
    drawn, features, tees, pins = _to_frame(line, features, tees, pins)
    hole = Hole(
        name=name, par=par, line=line_from(drawn, tees[0]), drawn_line=drawn,
        tees=tuple(tees), pins=tuple(pins),
        tee=tees[0], pin=pins[0], features=paint_sorted(features), source=source, assumed=tuple(assumed),
        bearing_deg=top.number("bearing_deg", 0.0, 360.0), stroke_index=top.integer("stroke_index", 1, 18),
        local_rule_e5=top.flag("local_rule_e5"),
    ).with_tee(tees[0].name)
    check_hole(hole)
    return hole


def _read_features(top: Fields, line: PlayLine) -> list[Feature]:
    features = []
    for kind, surface in KINDS.items():
        entries = entries_of(top, kind)
        for number, entry in enumerate(entries, start=1):
            fields, name = named_fields(top, kind.replace("_", " "), entry, number, len(entries))
            features.append(_read_feature(fields, name, kind, surface, line))
    if not any(f.surface is Surface.GREEN for f in features):
        example = "green = [{ front_yd = 380, depth_yd = 30, width_yd = 26 }]"
        raise top.error("green", "no green", f"at least one, for example {example}")
    return features


def _read_feature(fields: Fields, name: str, kind: str, surface: Surface, line: PlayLine) -> Feature:
    plain: tuple[str, ...] = ("name",)
    relief = None
    if kind == "penalty_area":
        plain = ("name", "colour", "playable")
    elif "colour" in fields.table:
        raise fields.error("colour", show(fields.table["colour"]), "none: only a penalty_area has a colour")
    elif kind in ("heavy_rough", "rough", "trees", "bunker", "fairway"):
        plain = ("name", "lost_chance")
    area = read_area(fields, line, plain, is_green=surface is Surface.GREEN)
    if kind == "penalty_area":
        relief = fields.choice("colour", ("red", "yellow"))
        surface = Surface.DRY_PENALTY if fields.flag("playable") else Surface.WATER
    lost = fields.number("lost_chance", 0.0, 1.0)
    return Feature(
        name, surface, area, relief,
        lost_chance=LOST_CHANCE.get(surface, 0.0) if lost is None else lost, lost_assumed=lost is None,
    )


def _say_lost(features: list[Feature], assumed: list[str]) -> None:
    for surface, chance in LOST_CHANCE.items():
        if any(f.surface is surface and f.lost_assumed for f in features):
            assumed.append(f"A ball in {WORDS[surface]} is lost {100.0 * chance:g} times in 100.")


def _to_frame(
    line: PlayLine, features: list[Feature], tees: list[Spot], pins: list[Spot]
) -> tuple[tuple[tuple[float, float], ...], list[Feature], list[Spot], list[Spot]]:
    """Turn everything so that the first leg runs along +y (the origin is set with the tee)."""
    hx, hy = line.headings[0]
    if hx == 0.0 and hy > 0.0:
        return tuple(map(tuple, line.points.tolist())), features, tees, pins
    turn = np.array([[hy, hx], [-hx, hy]])  # rows (x, y) times this: heading -> (0, 1)
    origin = line.points[0]

    def turned(xy: np.ndarray) -> np.ndarray:
        return (xy - origin) @ turn

    def spots(old: list[Spot]) -> list[Spot]:
        return [Spot(s.name, *turned(np.array([s.x_yd, s.y_yd])).tolist()) for s in old]

    new = [
        Feature(f.name, f.surface, shapely.transform(f.area, turned), f.relief, f.lost_chance, f.lost_assumed)
        for f in features
    ]
    return tuple(map(tuple, turned(line.points).tolist())), new, spots(tees), spots(pins)


