"""Where the pins of a hole are: those of the map, else the middle of the green."""

from __future__ import annotations

import math

import shapely

from simulator.hole.maps.gather import Site
from simulator.hole.maps.lines import HoleLine
from simulator.hole.maps.place import Area
from simulator.hole.maps.plots import Plot
from simulator.hole.maps.refs import Label, tee_number
from simulator.hole.maps.tags import tee_words

SHARED_YD = 15.0
"""Lines that end farther apart than this on one green have each their part of it [yd]."""

PIN_OFF_YD = 3.0
"""A pin up to this far off the edge of its green is on it [yd]; those at the edge are moved in."""


def pins_of(
    site: Site, green: Area, line: HoleLine, label: Label, said: list[str]
) -> list[tuple[str, float, float]]:
    """Pins on a green, name and place; none when the map has none there. Sentences go to `said`.

    `label` is the hole: of a line that is played as two, each has the pins with its own number.
    """
    inside = shapely.Polygon() if green.is_empty else green.buffer(-0.5)
    found: list[tuple[str, float, float]] = []
    for pin in site.pins:
        says = {one.number for one in tee_number(pin.tags)}
        if says and label.number not in says:
            continue  # another hole's on a shared green
        for x, y in pin.points.tolist():
            point = shapely.Point(x, y)
            if green.distance(point) > PIN_OFF_YD or inside.is_empty:
                continue
            if not inside.contains(point):
                point = shapely.get_point(shapely.shortest_line(inside, point), 0)
                said.append("A pin on the edge of the green is moved in half a yard.")
            if not says and _nearer_end(site, green, line, point):
                continue
            if any(math.hypot(point.x - a, point.y - b) < 1.0 for _, a, b in found):
                continue
            words = tee_words(pin.tags)
            found.append((words[0] if words else "mapped", point.x, point.y))
    return found[:6]


def _nearer_end(site: Site, green: Area, line: HoleLine, pin: shapely.Point) -> bool:
    """Whether another line that ends elsewhere on a green has a pin nearer its end."""
    own = shapely.Point(line.xy[-1])
    for one in site.lines:
        end = shapely.Point(one.xy[-1])
        if one is not line and end.distance(own) > SHARED_YD and green.distance(end) < 1.0:
            if end.distance(pin) < own.distance(pin):
                return True
    return False


def settled_pins(
    pins: list[tuple[str, float, float]], plots: list[Plot], end: shapely.Point, shared: bool = False
) -> list[tuple[str, float, float]]:
    """Pins with names of their own that stand on bare green, in the frame of the hole.

    Without any, one in the middle of the green, or at the end of the line where the green is `shared`.
    Of a green in pieces the one nearest the end counts; what is painted over it (sand, water) is no place
    for a pin.

    Raises
    ------
    ValueError
        No bare green.
    """
    pieces = shapely.get_parts(shapely.union_all([p.area for p in plots if p.key == "green"]))
    green = min(pieces, key=end.distance)
    over = shapely.union_all([p.area for p in plots if p.key in ("bunker", "penalty_area", "out_of_bounds")])
    bare = green.difference(over)
    if bare.is_empty:
        raise ValueError("its green lies under sand, water or out of bounds")
    inner = bare.buffer(-1.0) if not bare.buffer(-1.0).is_empty else bare
    kept = [pin for pin in pins if bare.buffer(-0.2).intersects(shapely.Point(pin[1:]))]
    if not kept:
        middle = end if shared else green.centroid
        if not inner.intersects(middle):
            middle = max(shapely.get_parts(inner), key=lambda part: part.area).representative_point()
        return [("middle", middle.x, middle.y)]
    out: list[tuple[str, float, float]] = []
    for name, x, y in kept:
        same = sum(other.split(" ")[0] == name for other, _, _ in out)
        out.append((f"{name} {same + 1}" if same else name, x, y))
    return out
