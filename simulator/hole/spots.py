"""Tees, pins, single trees and marks of a sketch."""

from __future__ import annotations

import numpy as np
import shapely

from simulator.hole.crowns import CROWN_LENGTHS, CROWN_PLAIN, LEAST_CROWN_YD, MOST_CROWN_YD, Tree, read_crown
from simulator.hole.fields import Fields, entries_of, named_entries
from simulator.hole.heights import SpotHeight, read_height
from simulator.hole.line import PlayLine
from simulator.hole.model import MAIN_TEE, Feature, Mark, Spot, tee_name
from simulator.hole.surfaces import Surface

TREE_HINTS = {
    f"{word}{unit}": "crown_yd" for word in ("diameter", "width", "spread") for unit in ("", "_yd", "_m")
}

PAD_DEPTH_YD = 8.0
PAD_WIDTH_YD = 6.0
"""Mown ground drawn round a tee for which the file gives none [yd]: assumed, common practice."""


def _place(fields: Fields, line: PlayLine, origins: dict[str, float]) -> tuple[float, float]:
    """Place (x, y) of a tee, pin, tree or mark: station (from one of some origins) and offset, or x and y."""
    given = [stem for stem in origins if fields.has(stem)]
    by_xy = fields.has("x") or fields.has("y")
    if len(given) + by_xy > 1 or (by_xy and fields.has("offset")):
        ways = " or ".join(f"{stem}_yd" for stem in origins)
        raise fields.error("", "the place in two ways", f"{ways} with offset_yd, or x_yd and y_yd")
    if by_xy:
        return fields.length("x"), fields.length("y")
    stem = given[0] if given else next(iter(origins))
    return line.at(origins[stem] + fields.length(stem), fields.length("offset", 0.0))


def read_tees(top: Fields, line: PlayLine, heights: list[SpotHeight], assumed: list[str]) -> list[Spot]:
    """Tees in the order of the file; one at the start of the line when it names none.

    The heights they give are added to `heights`.
    """
    if not entries_of(top, "tee"):
        assumed.append("One tee, at the start of the line: the file names none.")
        return [Spot(MAIN_TEE, float(line.points[0, 0]), float(line.points[0, 1]))]
    tees = []
    for fields, name in named_entries(top, "tee"):
        fields.refuse_unknown(("name",), ("at", "offset", "x", "y", "height"))
        if any(fields.has(stem) for stem in ("at", "x", "y")):
            place = _place(fields, line, {"at": 0.0})
        else:
            place = line.at(0.0, fields.length("offset", 0.0))
        tees.append(Spot(tee_name(name), *place))
        if (z := read_height(fields)) is not None:
            heights.append(SpotHeight(*place, z, fields.where))
    return tees


def read_pins(top: Fields, line: PlayLine, features: list[Feature], assumed: list[str]) -> list[Spot]:
    """Pins in the order of the file; one in the middle of the green when it names none.

    `on` counts from the front of the green that is nearest the end of the line: the smallest
    station of its edge.
    """
    end = shapely.Point(line.points[-1])
    greens = [f.area for f in features if f.is_green]
    green = min(greens, key=lambda area: area.distance(end))
    if not entries_of(top, "pin"):
        assumed.append("One pin, in the middle of the green: the file names none.")
        middle = green.centroid if green.contains(green.centroid) else green.representative_point()
        return [Spot("middle", middle.x, middle.y)]
    front = float(line.corners_of(green)[:, 0].min())
    pins = []
    for fields, name in named_entries(top, "pin"):
        fields.refuse_unknown(("name",), ("on", "at", "offset", "x", "y"))
        pins.append(Spot(name, *_place(fields, line, {"on": front, "at": 0.0})))
    return pins


def read_trees(top: Fields, line: PlayLine) -> list[Tree]:
    """Trees that stand alone, each with its place, the diameter of its crown and what it is like."""
    trees = []
    for fields, name in named_entries(top, "tree"):
        lengths = ("at", "offset", "x", "y", "crown", *CROWN_LENGTHS)
        fields.refuse_unknown(("name", *CROWN_PLAIN), lengths, TREE_HINTS)
        place = _place(fields, line, {"at": 0.0})
        width = fields.length("crown", None, LEAST_CROWN_YD, MOST_CROWN_YD)
        trees.append(Tree(name, *place, width, read_crown(fields)))
    return trees


def read_marks(top: Fields, line: PlayLine) -> list[Mark]:
    """Marks to point at, by station and offset or by x and y."""
    marks = []
    for fields, name in named_entries(top, "mark"):
        fields.refuse_unknown(("name",), ("at", "offset", "x", "y"))
        marks.append(Mark(name, *_place(fields, line, {"at": 0.0})))
    return marks


def tee_pads(line: PlayLine, tees: list[Spot], features: list[Feature], assumed: list[str]) -> list[Feature]:
    """Mown ground round every tee that stands on no tee ground of the file."""
    grounds = [f.area for f in features if f.surface is Surface.TEE]
    pads = []
    for tee in tees:
        if any(shapely.contains_xy(area, tee.x_yd, tee.y_yd) for area in grounds):
            continue
        station, offset = line.station_offset(tee.x_yd, tee.y_yd)
        ends = np.array([station - PAD_DEPTH_YD / 2.0, station + PAD_DEPTH_YD / 2.0])
        edge = np.array([offset, offset])
        area = line.band(ends, edge - PAD_WIDTH_YD / 2.0, edge + PAD_WIDTH_YD / 2.0)
        name = tee.name if tee.name.endswith("tee") else f"{tee.name} tee"
        pads.append(Feature(name, Surface.TEE, area))
    if pads:
        size = f"{PAD_DEPTH_YD:g} by {PAD_WIDTH_YD:g} yards"
        assumed.append(f"Tees without ground of their own stand on {size} of it.")
    return pads
