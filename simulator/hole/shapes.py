"""Areas of a sketch: from the keys of one table to a polygon.

Ways to give an area (lengths end in _yd or _m; offsets are positive to the right of the line):

    from, to, left, right      a band along the line; left and right may be lists of offsets,
                               evenly spaced from `from` to `to`
    stations, left, right      the same with the stations of the list written out
    left_of or right_of        everything beyond an offset on one side, the whole length of the
                               hole or only `from` to `to`; a list as above
    at, offset, depth, width   an ellipse round a station; turn_deg turns it clockwise
    front, depth, width        a green from its front edge; width may be a list, front to back
    points                     corners [station, offset]
    xy                         corners [x, y]; holes_xy, rings of such corners, are cut out of it
"""

from __future__ import annotations

import math

import numpy as np
import shapely
from shapely import Polygon

from simulator.hole.fields import Fields, show
from simulator.hole.line import PlayLine

OPEN_SIDE_YD = 200.0
"""How far from the line an area open to one side is drawn [yd]; the engine's map ends there too."""

OPEN_END_YD = 150.0
"""How far past both ends of the line it is drawn [yd]."""

HAIR_DECIMALS = 6
"""Corners are told apart to a millionth of a yard."""

LEAST_AREA_YD2 = 0.25
"""Smaller areas [yd2] are taken for slips of the pen: a quarter of one cell of the engine's map."""

ELLIPSE_CORNERS = 96
"""Corners of an ellipse: its area comes out 0.07 % small, 0.01 yd at the edge of a 20 yd green."""

SHAPES: dict[str, tuple[tuple[str, ...], tuple[str, ...], tuple[str, ...]]] = {
    # name: (keys that mark it, all its lengths, its plain keys)
    "band": (("left", "right"), ("from", "to", "stations", "left", "right"), ()),
    "side": (("left_of", "right_of"), ("left_of", "right_of", "from", "to", "stations"), ()),
    "ellipse": (("at",), ("at", "offset", "depth", "width"), ("turn_deg",)),
    "front": (("front",), ("front", "offset", "depth", "width"), ("turn_deg",)),
    "points": (("points",), ("points",), ()),
    "xy": (("xy",), ("xy", "holes_xy"), ()),
}

WAYS = "from/to with left/right, left_of or right_of, at with depth/width, points, xy, or front (a green)"


def read_area(
    fields: Fields, line: PlayLine, plain: tuple[str, ...], is_green: bool, sizes: tuple[str, ...] = ()
) -> Polygon:
    """Area given by a table of a sketch.

    Parameters
    ----------
    fields : the table; line : the line it is stationed along.
    plain, sizes : plain keys and lengths the table may hold besides the shape's own.
    is_green : whether `front` is allowed.

    Returns
    -------
    Polygon (or MultiPolygon) [yd], in the coordinates of `line`.

    Raises
    ------
    FileError
        Unknown, missing or contradictory keys, edges that cross, rings that cross, empty areas.
    """
    found = [name for name, (marks, _, _) in SHAPES.items() if any(fields.has(m) for m in marks)]
    if len(found) == 1:
        _, lengths, own = SHAPES[found[0]]
        fields.refuse_unknown((*plain, *own), (*lengths, *sizes))
    else:
        every = tuple(dict.fromkeys(stem for _, lengths, _ in SHAPES.values() for stem in lengths))
        fields.refuse_unknown((*plain, "turn_deg"), (*every, *sizes))
        given = [fields.key(m) for name in found for m in SHAPES[name][0] if fields.has(m)]
        raise fields.error("", " and ".join(given) or "no shape", f"one way to give the area: {WAYS}")
    if found[0] == "front" and not is_green:
        raise fields.error(fields.key("front"), "a front edge", "front only on a green; elsewhere at")
    area = {
        "band": _band,
        "side": _side,
        "ellipse": _ellipse,
        "front": _front,
        "points": _corners,
        "xy": _corners,
    }[found[0]](fields, line)
    return _checked(fields, area)


def _checked(fields: Fields, area: Polygon) -> Polygon:
    if area.convex_hull.area < LEAST_AREA_YD2:
        raise fields.error("", "an empty area", f"an area of at least {LEAST_AREA_YD2} square yards")
    # corners nearer than anybody measures: what is a ring by a hair alone is none once the hole is moved
    seen = shapely.transform(area, lambda corners: np.round(corners, HAIR_DECIMALS))
    if not seen.is_valid:
        reason = shapely.is_valid_reason(seen).lower()  # "self-intersection[12 34]"
        what, _, place = reason.partition("[")
        if place:
            x, y = (float(v) for v in place.rstrip("]").split())
            what += f" near x {x:.1f}, y {y:.1f} yd"
        raise fields.error("", f"a ring that crosses itself ({what})", "corners in order round the area")
    return area


def _edge_stations(fields: Fields, stems: tuple[str, ...], open_low: float, open_high: float) -> np.ndarray:
    """Stations of the edges of a band: written out, or evenly spaced for the longest list."""
    if fields.has("stations"):
        if fields.has("from") or fields.has("to"):
            raise fields.error(fields.key("stations"), "stations as well as from/to", "one of the two")
        stations = fields.lengths("stations")
        if len(stations) < 2 or np.any(np.diff(stations) <= 0.0):
            raise fields.error(
                fields.key("stations"), show(fields.table[fields.key("stations")]), "two or more, increasing"
            )
        return stations
    count = max(2, *(len(fields.lengths(stem)) for stem in stems))
    if count > 2 or math.isinf(open_low):
        low, high = fields.length("from"), fields.length("to")
    else:
        low, high = fields.length("from", open_low), fields.length("to", open_high)
    if low >= high:
        key = fields.key("from") if fields.has("from") else fields.key("to")
        raise fields.error(key, f"from {low:.6g} yd to {high:.6g} yd", "from less than to")
    return np.linspace(low, high, count)


def _edge(fields: Fields, stem: str, stations: np.ndarray) -> np.ndarray:
    """Offsets of one edge at each station."""
    values = fields.lengths(stem)
    if len(values) == 1:
        return np.full(len(stations), values[0])
    if len(values) == len(stations):
        return values
    if fields.has("stations"):
        raise fields.error(
            fields.key(stem), f"{len(values)} offsets", f"one, or {len(stations)}: one for each station"
        )
    return np.interp(stations, np.linspace(stations[0], stations[-1], len(values)), values)


def _band(fields: Fields, line: PlayLine) -> Polygon:
    stations = _edge_stations(fields, ("left", "right"), -math.inf, math.inf)
    left, right = _edge(fields, "left", stations), _edge(fields, "right", stations)
    if np.any(left > right) or np.all(left == right):
        k = int(np.argmax(left - right))
        found = f"left {left[k]:.6g} yd, right {right[k]:.6g} yd at station {stations[k]:.6g} yd"
        raise fields.error(
            fields.key("left"), found, "left less than right (offsets are negative on the left)"
        )
    return line.band(stations, left, right)


def _side(fields: Fields, line: PlayLine) -> Polygon:
    if fields.has("left_of") and fields.has("right_of"):
        raise fields.error("", "both left_of and right_of", "one of them; write two areas")
    stem = "left_of" if fields.has("left_of") else "right_of"
    stations = _edge_stations(fields, (stem,), -OPEN_END_YD, line.length_yd + OPEN_END_YD)
    edge = _edge(fields, stem, stations)
    if np.any(np.abs(edge) >= OPEN_SIDE_YD):
        raise fields.error(
            fields.key(stem),
            show(fields.table[fields.key(stem)]),
            f"less than {OPEN_SIDE_YD:g} yd from the line",
        )
    far = np.full(len(stations), OPEN_SIDE_YD)
    return line.band(stations, -far, edge) if stem == "left_of" else line.band(stations, edge, far)


def _place(fields: Fields, line: PlayLine, station: float, local: np.ndarray) -> Polygon:
    """Polygon from (right, ahead) coordinates round a station and the table's offset and turn."""
    turn = math.radians(fields.number("turn_deg", -360.0, 360.0, 0.0) or 0.0)
    centre = np.array(line.at(station, fields.length("offset", 0.0)))
    hx, hy = line.heading(station)
    heading = math.atan2(hx, hy) + turn
    ahead = np.array([math.sin(heading), math.cos(heading)])
    right = np.array([math.cos(heading), -math.sin(heading)])
    return Polygon(centre + local[:, :1] * right + local[:, 1:] * ahead)


def _ellipse(fields: Fields, line: PlayLine) -> Polygon:
    station = fields.length("at")
    depth, width = fields.size("depth"), fields.size("width")
    angle = np.linspace(0.0, 2.0 * math.pi, ELLIPSE_CORNERS, endpoint=False)
    local = np.column_stack([np.cos(angle) * width / 2.0, np.sin(angle) * depth / 2.0])
    return _place(fields, line, station, local)


def _front(fields: Fields, line: PlayLine) -> Polygon:
    """A green from its front edge: an ellipse, or an outline through a list of widths."""
    depth = fields.size("depth")
    station = fields.length("front") + depth / 2.0
    widths = fields.lengths("width")
    if np.any(widths <= 0.0):
        raise fields.error(fields.key("width"), show(fields.table[fields.key("width")]), "numbers above 0")
    if len(widths) == 1:
        angle = np.linspace(0.0, 2.0 * math.pi, ELLIPSE_CORNERS, endpoint=False)
        return _place(
            fields,
            line,
            station,
            np.column_stack([np.cos(angle) * widths[0] / 2.0, np.sin(angle) * depth / 2.0]),
        )
    ahead = np.linspace(-depth / 2.0, depth / 2.0, len(widths))
    outline = Polygon(
        np.concatenate(
            [
                np.column_stack([-widths / 2.0, ahead]),
                np.column_stack([widths / 2.0, ahead])[::-1],
            ]
        )
    )
    # Rounding the corners inwards by a quarter of the least size keeps depth and widths.
    radius = min(float(widths.min()), depth) / 4.0
    rounded = outline.buffer(-radius).buffer(radius)
    ring = rounded.exterior if rounded.geom_type == "Polygon" else outline.exterior
    return _place(fields, line, station, np.asarray(ring.coords)[:-1])


def _corners(fields: Fields, line: PlayLine) -> Polygon:
    stem = "points" if fields.has("points") else "xy"
    corners = fields.pairs(stem, least=3)
    if stem == "points":
        corners = np.array([line.at(s, o) for s, o in corners])
    return Polygon(corners, fields.rings("holes_xy") if fields.has("holes_xy") else None)
