"""What a hole file holds, in words and as plain data, for `holesim check` (players: `playerchecks`)."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..hole.clashes import undrawn
from ..hole.model import Feature, Hole
from ..hole.surfaces import WORDS
from .credits import map_data
from .screen import columns_of, hang, padded
from .slopewords import compass_words, falls_words
from .units import YARDS, Units

SCHEMA = "holesim-check-1"
"""Name and version of the JSON layout of `check`."""

FAR_YD = 999.0
"""A station or offset beyond this is not written out: the area runs off the hole [yd]."""


def hole_text(hole: Hole, units: Units = YARDS) -> str:
    """A hole in words: tees, pins, areas along the line, what was assumed."""
    lines = hang(
        f"{hole.source}: a hole. {hole.name}, par {hole.par}"
        f", {units.length(hole.length_yd)} from the {hole.tee.name} tee"
        + (f", stroke index {hole.stroke_index}" if hole.stroke_index is not None else "")
        + (f", first leg bears {compass_words(hole.bearing_deg)}" if hole.bearing_deg is not None else "")
        + "."
    )
    tees = [f"{t.name} {units.length(hole.with_tee(t.name).length_yd)}" for t in hole.tees]
    pins = [f"{p.name} ({_spot(hole, p.x_yd, p.y_yd, units)})" for p in hole.pins]
    lines += hang(f"Tees: {', '.join(tees)}") + hang(f"Pins: {', '.join(pins)}")
    width = max((columns_of(f.name) for f in hole.features), default=4) + 2
    lines.append(f"{'area':<{width}}{'ground':<18}{units.name + ' on':>16}{'left and right':>22}")
    for feature in hole.features:
        on, across = extent(hole, feature, units)
        ground = WORDS[feature.surface] + (f" ({feature.relief})" if feature.relief else "")
        lines.append(f"{padded(feature.name, width)}{ground:<18}{on:>16}{across:>22}")
    lines += _terrain(hole, units)
    lines += [words for line in map_data(hole) for words in hang(line)]
    if hole.marks:
        marks = [f"{m.name} ({_spot(hole, m.x_yd, m.y_yd, units)})" for m in hole.marks]
        lines += hang("Marks: " + ", ".join(marks))
    lines += _undrawn(hole, units)
    return "\n".join(line.rstrip() for line in [*lines, *assumed_lines(hole.assumed, units)])


def _undrawn(hole: Hole, units: Units) -> list[str]:
    """What lies farther out than anything drawn: it plays as rough for ever."""
    sides = undrawn(hole)
    if not sides:
        return []
    where = " or ".join(f"{units.length(yards)} {side}" for side, yards in sides.items())
    return hang(
        f"Nothing is drawn more than {where} of the line: it plays as rough, however wild the shot. Draw or "
        "name whatever one reaches."
    )


def _terrain(hole: Hole, units: Units) -> list[str]:
    """Slopes, crowns and single trees, each a line; none on a level hole without trees."""
    said = []
    for f in hole.features:
        if f.slope is not None and f.slope.percent > 0.0:
            said.append(falls_words(hole, f))
        if f.crown is not None:
            said.append(f"{f.name}: crowns from {units.range(f.crown.base_yd, f.crown.top_yd)} up")
    for t in hole.single_trees:
        spot, up = _spot(hole, t.x_yd, t.y_yd, units), units.range(t.crown.base_yd, t.crown.top_yd)
        said.append(f"{t.name} ({spot}): crown {units.length(t.crown_yd)} wide, {up} up")
    if hole.has_relief:
        up_yd = hole.height_at(*hole.pin.xy_yd)
        apart = f"{units.number(abs(up_yd), 1)} {units.short} {'above' if up_yd > 0.0 else 'below'}"
        said.append(f"the pin stands {'level with' if abs(up_yd) < 0.05 else apart} the tee")
    return hang("Ground and trees: " + "; ".join(said) + ".") if said else []


def hole_dict(hole: Hole) -> dict[str, Any]:
    """A hole as plain data; lengths in yards, angles in degrees."""
    return {
        "schema": SCHEMA,
        "kind": "hole",
        "source": hole.source,
        "name": hole.name,
        "par": hole.par,
        "length_yd": hole.length_yd,
        "stroke_index": hole.stroke_index,
        "bearing_deg": hole.bearing_deg,
        "local_rule_e5": hole.local_rule_e5,
        "attribution": hole.attribution,
        "tees": [
            {"name": t.name, "x_yd": t.x_yd, "y_yd": t.y_yd, "length_yd": hole.with_tee(t.name).length_yd}
            for t in hole.tees
        ],
        "pins": [{"name": p.name, "x_yd": p.x_yd, "y_yd": p.y_yd} for p in hole.pins],
        "features": [
            {
                "name": f.name, "surface": WORDS[f.surface], "relief": f.relief,
                "area_yd2": float(f.area.area),
                "lost_chance": f.lost_chance, "lost_chance_assumed": f.lost_assumed,
                "slope_pct": None if f.slope is None else f.slope.percent,
                "falls_bearing_deg": None if f.slope is None else f.slope.falls_bearing_deg,
                "crown_base_yd": None if f.crown is None else f.crown.base_yd,
                "crown_top_yd": None if f.crown is None else f.crown.top_yd,
            }
            for f in hole.features
        ],
        "single_trees": [
            {
                "name": t.name, "x_yd": t.x_yd, "y_yd": t.y_yd, "crown_yd": t.crown_yd,
                "crown_base_yd": t.crown.base_yd, "crown_top_yd": t.crown.top_yd,
            }
            for t in hole.single_trees
        ],
        "marks": [{"name": m.name, "x_yd": m.x_yd, "y_yd": m.y_yd} for m in hole.marks],
        "undrawn_beyond_yd": undrawn(hole),
        "pin_height_yd": hole.height_at(*hole.pin.xy_yd),
        "assumed": list(hole.assumed),
    }  # fmt: skip


def extent(hole: Hole, feature: Feature, units: Units = YARDS) -> tuple[str, str]:
    """Where an area is, by the line of play: ("207 to 288", "15 R to 54 R")."""
    found = hole.play_line.corners_of(feature.area)
    (s0, o0), (s1, o1) = found.min(axis=0), found.max(axis=0)
    low, high = (float(np.clip(station, -FAR_YD, FAR_YD)) for station in (s0, s1))
    on = units.range(low, high).removesuffix(f" {units.short}")
    return on, f"{_offset(o0, units)} to {_offset(o1, units)}"


def _offset(yards: float, units: Units) -> str:
    if abs(yards) > FAR_YD:
        return "far L" if yards < 0.0 else "far R"
    return f"{units.whole(abs(yards))} {'L' if yards < 0.0 else 'R'}" if units.whole(yards) else "0"


def _spot(hole: Hole, x_yd: float, y_yd: float, units: Units) -> str:
    station, offset = hole.station_offset(x_yd, y_yd)
    return f"{units.whole(station)} on, {_offset(offset, units)}"


def assumed_lines(sentences: tuple[str, ...], units: Units) -> list[str]:
    """What was filled in, a line each."""
    if not sentences:
        return ["Nothing assumed."]
    return ["Assumed:", *(line for s in sentences for line in hang(f"- {units.sentence(s)}"))]
