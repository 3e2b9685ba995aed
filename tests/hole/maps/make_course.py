"""Draws an invented course into a map, with every way in which real mappers differ.

    python tests/hole/maps/make_course.py      writes tests/hole/maps/tidewrack.geojson and tidewrack.osm

The course lies in the open South Pacific, names and figures are made up. Places are drawn in yards, x east and
y north, and turned into degrees with pyproj (an azimuthal equidistant projection on WGS 84), so that the reader's
own formulas are checked by what they were not made with.
"""

from __future__ import annotations

import json
import math
from functools import cache
from pathlib import Path
from typing import Any
from xml.sax.saxutils import quoteattr

import numpy as np

HERE = Path(__file__).parent
LON, LAT = -123.4, -48.9
YD = 0.9144
XY = list[tuple[float, float]]


def degrees(points: Any, lon: float = LON, lat: float = LAT) -> np.ndarray:
    """Longitudes and latitudes (n, 2) of places in yards round a place."""
    xy = np.asarray(points, dtype=float) * YD
    return np.round(np.column_stack(_backwards(lon, lat).transform(xy[:, 0], xy[:, 1])), 7)


@cache
def _backwards(lon: float, lat: float) -> Any:
    import pyproj

    crs = pyproj.CRS.from_proj4(f"+proj=aeqd +lat_0={lat} +lon_0={lon} +ellps=WGS84 +units=m")
    return pyproj.Transformer.from_crs(crs, crs.geodetic_crs, always_xy=True)


def ellipse(x: float, y: float, wide: float, deep: float, n: int = 16) -> XY:
    turn = np.linspace(0.0, 2.0 * math.pi, n, endpoint=False)
    return [(x + wide / 2 * math.cos(t), y + deep / 2 * math.sin(t)) for t in turn]


def box(x0: float, y0: float, x1: float, y1: float) -> XY:
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


class Sheet:
    """Features in yards; the same ones become GeoJSON and .osm."""

    def __init__(self) -> None:
        self.items: list[tuple[str, Any, dict[str, Any]]] = []

    def point(self, x: float, y: float, **tags: Any) -> None:
        self.items.append(("point", (x, y), tags))

    def line(self, points: Any, **tags: Any) -> None:
        self.items.append(("line", [list(points)], tags))

    def lines(self, parts: Any, **tags: Any) -> None:
        self.items.append(("line", [list(p) for p in parts], tags))

    def area(self, ring: XY, *holes: XY, **tags: Any) -> None:
        self.items.append(("area", [[ring, *holes]], tags))

    def areas(self, polygons: list[list[XY]], **tags: Any) -> None:
        self.items.append(("area", polygons, tags))


class Hole:
    """One hole of the sheet: straight up or down a column, unless it bends."""

    def __init__(self, sheet: Sheet, x: float, y: float, length: float, up: bool, bend: float = 0.0) -> None:
        self.sheet, self.length, self.x, self.y, self.sign, self.bend = sheet, length, x, y, 1 if up else -1, bend

    def at(self, station: float, offset: float = 0.0) -> tuple[float, float]:
        """Place by station and offset; a bend moves what is beyond 60 % of the way to one side."""
        over = max(0.0, station - 0.6 * self.length)
        side = offset + over * self.bend
        return self.x + self.sign * side, self.y + self.sign * station

    def line(self) -> XY:
        corners = [self.at(0.0), self.at(self.length)]
        return [corners[0], self.at(0.6 * self.length), corners[1]] if self.bend else corners

    def round(self, station: float, offset: float, wide: float, deep: float, **tags: Any) -> None:
        self.sheet.area(ellipse(*self.at(station, offset), wide, deep), **tags)

    def quad(self, s0: float, s1: float, o0: float, o1: float) -> XY:
        return [self.at(s0, o0), self.at(s0, o1), self.at(s1, o1), self.at(s1, o0)]

    def fairway(self, s0: float, s1: float, half: float = 16.0, **tags: Any) -> None:
        left = [self.at(s, -half + 2 * math.sin(s / 25.0)) for s in np.arange(s0, s1, 12.0)]
        right = [self.at(s, half + 2 * math.cos(s / 30.0)) for s in np.arange(s0, s1, 12.0)]
        self.sheet.area([*left, *right[::-1]], **{"golf": "fairway", **tags})

    def green(self, **tags: Any) -> None:
        self.round(self.length, 0.0, 26.0, 30.0, golf="green", **tags)

    def tee(self, station: float, offset: float = 0.0, depth: float = 9.0, **tags: Any) -> None:
        self.sheet.area(self.quad(station - depth / 2, station + depth / 2, offset - 3.5, offset + 3.5),
                        **{"golf": "tee", **tags})  # fmt: skip

    def pin(self, on: float = 0.0, **tags: Any) -> None:
        self.sheet.point(*self.at(self.length + on), golf="pin", **tags)


def draw() -> Sheet:
    """The whole course."""
    s = Sheet()
    lengths = [402, 170, 512, 355, 388, 420, 365, 158, 430, 531, 180, 395, 410, 482, 375, 440, 352, 405]
    holes = [Hole(s, 200.0 * k, 0.0 if k % 2 == 0 else 540.0, lengths[k], k % 2 == 0,
                  {0: 0.25, 4: -0.3, 11: 0.2}.get(k, 0.0)) for k in range(18)]  # fmt: skip
    for k, hole in enumerate(holes):
        if k + 1 not in (6,):
            tees(hole, k + 1)
        if k + 1 not in (4, 11):
            hole.green()
        if k + 1 not in (3, 13):
            hole.pin(on=2.0)
        if hole.length > 250 and k + 1 not in (7, 9, 10):
            hole.fairway(140.0, hole.length - 25.0)
        hole.round(hole.length - 8.0, 20.0, 9.0, 13.0, golf="bunker", natural="sand")
        if hole.length > 300:
            hole.round(235.0, -24.0, 8.0, 14.0, golf="bunker")
    lines(s, holes)
    quirks(s, holes)
    short_loop(s)
    surroundings(s, holes)
    return s


def tees(hole: Hole, number: int) -> None:
    """Tees, each hole in another mapper's manner."""
    if number == 5:
        for at, colour in ((0.0, "white"), (22.0, "yellow"), (60.0, "red")):
            hole.sheet.point(*hole.at(at), golf="tee", tee=colour)
    elif number == 7:
        hole.tee(2.0, name="White tee")
        hole.tee(18.0, 4.0, description="gelbe Abschläge, Herren")
        hole.tee(58.0, -3.0, name="Ladies")
    elif number == 15:
        hole.tee(18.0, depth=40.0, tee="white;yellow;red")
    elif number == 16:
        hole.tee(0.0)
        hole.tee(25.0)
        hole.tee(70.0)
    elif number == 12:
        hole.tee(40.0, tee="red")
    else:
        hole.tee(0.0, tee="white")
        hole.tee(20.0, tee="yellow", ref=str(number))
        hole.tee(55.0, 3.0, tee="red", surface="grass")


def lines(s: Sheet, h: list[Hole]) -> None:
    """Hole lines with their tags in every spelling."""
    tags: dict[int, dict[str, Any]] = {
        1: {"ref": "1", "par": "4", "handicap": "7", "dist": "368"},
        2: {"ref": "02", "par": 3, "handicap": 15},
        3: {"ref": "Hole 3", "handicap": "1", "name": "Long Shingle"},
        4: {"ref": "4", "par": "4", "handicap": "11"},
        5: {"name": "5. Samphire", "par": "par 4", "handicap": "5"},
        6: {"ref": "6", "par": "4", "handicap": "3"},
        7: {"ref": "#7", "par": "4.0", "handicap": "9"},
        8: {"ref": "8", "par": "3/4", "handicap": "17", "dist": "158 yd"},
        9: {"ref": "9", "par": "4", "handicap": "27"},
        10: {"ref": "10", "par": "5", "handicap": "2"},
        11: {"ref": "11", "par": "3", "handicap": "16"},
        12: {"ref": "12", "par": "4", "handicap": "8"},
        13: {"ref": "13", "par": "4", "handicap": "6"},
        14: {"ref": "14", "par": "3", "handicap": "4"},
        15: {"ref": "15", "par:white": "4", "par:red": "5", "handicap": "14"},
        16: {"ref": "16", "par": "4", "handicap": "10", "dist": "320 m"},
        17: {"ref": "17", "par": "4", "handicap": "18;12"},
        18: {"ref": "18", "par": "4", "handicap": "13", "name": "Home Reef"},
    }
    for number, hole in enumerate(h, start=1):
        line = hole.line()
        own = {"golf": "hole", **tags[number]}
        if number == 2:
            line = line[::-1]
        if number == 17:
            line = [line[0], hole.at(hole.length - 22.0)]  # stops at the front edge of the green
        if number == 10:
            s.lines([[hole.at(300.0), hole.at(hole.length)], [hole.at(300.0), hole.at(0.0)]], **own)
        elif number == 12:
            s.items.append(("line", [line], {"tags": own, "id": "way/4012"}))
        else:
            s.line(line, **own)
    s.line(h[0].line(), golf="hole", **tags[1])  # once more, as exports of relations do
    s.line([(-300.0, 0.0), (-300.0, 25.0)], golf="hole", ref="19", par="3")


def quirks(s: Sheet, h: list[Hole]) -> None:
    """One trouble a hole."""
    x, y = h[1].at(95.0, 6.0)
    s.area(ellipse(x, y, 70, 60, 24), ellipse(x + 3, y, 18, 14, 12), natural="water", water="pond", name="Island Pond")
    h[2].round(300.0, 34.0, 30.0, 60.0, golf="lateral_water_hazard", natural="water", water="lake")
    s.area(ellipse(*h[3].at(h[3].length + 6.0, 45.0), 24, 20), golf="green", name="Practice putting green")
    s.line([h[4].at(210.0, -120.0), h[4].at(214.0, 0.0), h[4].at(208.0, 110.0)], waterway="stream", width="3", name="Kelp Burn")
    s.line([h[5].at(120.0, 30.0), h[5].at(330.0, 32.0)], natural="tree_row")
    for k in range(6):
        s.point(*h[5].at(180.0 + 20.0 * k, -30.0), natural="tree", height="14", diameter_crown="9 m")
    s.point(*h[5].at(h[5].length, 3.0), natural="tree")
    s.area(ellipse(*h[5].at(250.0, -70.0), 50, 160, 24), natural="wood")
    bow = [h[6].at(140, -16), h[6].at(340, -14), h[6].at(340, 16), h[6].at(330, -18), h[6].at(300, 15), h[6].at(140, 16)]
    s.area(bow, golf="fairway")
    h[6].round(230.0, 42.0, 40.0, 90.0, golf="lateral_water_hazard")
    h[6].round(230.0, 42.0, 18.0, 40.0, natural="water")
    s.line([h[7].at(80.0, -60.0), h[7].at(84.0, 60.0)], golf="water_hazard", waterway="ditch")
    shared = [h[8].at(140.0, -15.0), h[8].at(400.0, -15.0), (h[9].x + 15.0, h[8].at(400.0)[1]), (h[9].x + 15.0, h[8].at(140.0)[1])]
    s.area(shared, golf="fairway")  # one fairway for 9 and 10
    s.items.append(("collection", [ellipse(*h[10].at(h[10].length), 26.0, 30.0), h[10].at(h[10].length + 2.0)], {"golf": "green"}))
    h[11].round(300.0, 40.0, 30.0, 30.0, golf="bunker", **{"@id": "way/777"})
    h[11].round(300.0, 40.0, 30.0, 30.0, golf="bunker", **{"@id": "way/777"})
    s.line([h[12].at(20.0, 14.0), h[12].at(380.0, 22.0)], golf="cartpath")
    s.line([h[12].at(200.0, -60.0), h[12].at(205.0, 60.0)], highway="service")
    s.line([h[12].at(100.0, -34.0), h[12].at(300.0, -34.0)], barrier="hedge")
    s.line([h[12].at(100.0, -38.0), h[12].at(300.0, -38.0)], barrier="fence")
    s.area(h[12].quad(350.0, 356.0, 40.0, 48.0), building="yes")
    s.area(h[12].quad(300.0, 320.0, 45.0, 70.0), building="house")
    s.area(h[13].quad(-20.0, 500.0, -60.0, 60.0), landuse="residential")
    s.area(h[13].quad(200.0, 260.0, 62.0, 90.0), landuse="residential", name="Limpet Row")
    s.area(h[14].quad(150.0, 300.0, -70.0, -40.0), natural="heath")
    s.line([h[15].at(50.0, 45.0), h[15].at(400.0, 48.0)], golf="out_of_bounds")
    s.area(h[16].quad(120.0, 250.0, 24.0, 60.0), natural="scrub")
    s.point(*h[16].at(0.0, 12.0), ele="12.0")
    for at, side, z in ((100.0, 25.0, "9"), (200.0, -25.0, "7.5"), (300.0, 30.0, "8"), (340.0, -30.0, "10"),
                        (352.0, 26.0, "10.6")):  # fmt: skip
        s.point(*h[16].at(at, side), ele=z, natural="peak")
    s.area(h[17].quad(100.0, 200.0, -100.0, -40.0), natural="wetland")


def short_loop(s: Sheet) -> None:
    """Five short holes south of the others that use the numbers 1 to 5 once more."""
    for k in range(5):
        hole = Hole(s, 300.0 + 70.0 * k, -300.0 if k % 2 == 0 else -180.0, 120.0, k % 2 == 0)
        s.line(hole.line(), golf="hole", ref=str(k + 1), par="3", handicap=str(k + 1))
        hole.tee(0.0)
        hole.green()


def surroundings(s: Sheet, h: list[Hole]) -> None:
    """Grounds with an enclave, the coast, practice ground, a green that belongs to nothing."""
    outer = [(-110.0, -420.0), (700.0, -420.0), (3300.0, -120.0), (3560.0, -110.0), (3560.0, 700.0), (-110.0, 700.0)]
    enclave = box(640.0, 600.0, 760.0, 680.0)
    s.area(outer, enclave, leisure="golf_course", name="Tidewrack", operator="nobody")
    s.line([(3540.0, -700.0), (3530.0, 200.0), (3545.0, 1200.0)], natural="coastline")
    s.area(box(1200.0, -110.0, 1300.0, -40.0), golf="driving_range")
    s.area(ellipse(1250.0, -70.0, 20.0, 20.0), golf="green")
    s.area(ellipse(1500.0, -60.0, 24.0, 24.0), golf="green", ref="19")


def geojson(sheet: Sheet) -> dict[str, Any]:
    """The sheet as a feature collection, tags in the styles of several exporters in turn."""
    features = []
    for number, (kind, shape, tags) in enumerate(sheet.items):
        if kind == "point":
            geometry: dict[str, Any] = {"type": "Point", "coordinates": degrees([shape])[0].tolist()}
        elif kind == "line":
            parts = [degrees(p).tolist() for p in shape]
            geometry = {"type": "LineString", "coordinates": parts[0]}
            if len(parts) > 1:
                geometry = {"type": "MultiLineString", "coordinates": parts}
        elif kind == "collection":
            ring = degrees([*shape[0], shape[0][0]])
            three = [[*row, 4.0] for row in ring.tolist()]
            point = {"type": "Point", "coordinates": degrees([shape[1]])[0].tolist()}
            geometry = {"type": "GeometryCollection", "geometries": [{"type": "Polygon", "coordinates": [three]}, point]}
        else:
            polygons = [[degrees([*ring, ring[0]]).tolist() for ring in rings] for rings in shape]
            geometry = {"type": "Polygon", "coordinates": polygons[0]}
        features.append({"type": "Feature", "properties": styled(number, tags), "geometry": geometry})
    return {"type": "FeatureCollection", "generator": "an export of OpenStreetMap data", "features": features}


def styled(number: int, tags: dict[str, Any]) -> dict[str, Any]:
    """Tags flat, nested, or in one text, as different exporters write them."""
    if "tags" in tags or "@id" in tags:
        return tags
    style = number % 4
    if style == 1:
        return {"@id": f"way/{9000 + number}", "tags": tags}
    if style == 2:
        text = ",".join(f'"{k}"=>"{v}"' for k, v in tags.items())
        return {"osm_id": str(9000 + number), "other_tags": text, "z_order": 0}
    if style == 3:
        return {**tags, "id": f"way/{9000 + number}", "surface": None, "note": ""}
    return dict(tags)


class Xml:
    """An .osm file under construction."""

    def __init__(self) -> None:
        self.nodes: dict[tuple[float, float], int] = {}
        self.rows: list[str] = []
        self.next = 1

    def number(self) -> int:
        self.next += 1
        return self.next

    def node(self, place: tuple[float, float], tags: dict[str, Any] | None = None) -> int:
        if place not in self.nodes:
            self.nodes[place] = self.number()
            lon, lat = degrees([place])[0]
            self.rows.append(f'<node id="{self.nodes[place]}" lat="{lat}" lon="{lon}">{tag_rows(tags or {})}</node>')
        return self.nodes[place]

    def way(self, places: Any, tags: dict[str, Any]) -> int:
        refs = [self.node((float(x), float(y))) for x, y in places]
        number = self.number()
        self.rows.append(f'<way id="{number}">' + "".join(f'<nd ref="{r}"/>' for r in refs) + tag_rows(tags) + "</way>")
        return number

    def relation(self, members: list[tuple[int, str]], tags: dict[str, Any]) -> None:
        rows = "".join(f'<member type="way" ref="{ref}" role="{role}"/>' for ref, role in members)
        self.rows.append(f'<relation id="{self.number()}">{rows}{tag_rows(tags)}</relation>')


def tag_rows(tags: dict[str, Any]) -> str:
    return "".join(f"<tag k={quoteattr(str(k))} v={quoteattr(str(v))}/>" for k, v in tags.items())


def osm(sheet: Sheet) -> str:
    """The sheet as .osm XML; rings of areas with holes split over several ways, one relation without tags."""
    xml = Xml()
    for kind, shape, tags in sheet.items:
        tags = {k: v for k, v in tags.get("tags", tags).items() if not k.startswith("@")}
        if kind == "point":
            xml.node(shape, tags)
        elif kind == "line" and len(shape) > 1:
            xml.relation([(xml.way(part, {}), "") for part in shape], tags)
        elif kind == "line":
            xml.way(shape[0], tags)
        elif kind == "collection":
            xml.way([*shape[0], shape[0][0]], tags)
        elif len(shape[0]) == 1:
            ring = shape[0][0]
            xml.way([*ring, ring[0]], tags)
        else:
            outer, *inner = shape[0]
            own = tags.get("leisure") == "golf_course"
            members = [(m, "outer") for m in halves(xml, outer, {} if own else tags)]
            members += [(m, "inner") for ring in inner for m in halves(xml, ring, {})]
            xml.relation(members[::-1], {"type": "multipolygon", **(tags if own else {})})
    return '<?xml version="1.0" encoding="UTF-8"?>\n<osm version="0.6">\n' + "\n".join(xml.rows) + "\n</osm>\n"


def halves(xml: Xml, ring: XY, tags: dict[str, Any]) -> list[int]:
    """A ring as two ways that share their ends, the second drawn backwards."""
    middle = len(ring) // 2
    return [xml.way(ring[: middle + 1], tags), xml.way([ring[0], *ring[:middle - 1:-1]], tags)]


def write() -> None:
    """Write both files."""
    sheet = draw()
    (HERE / "tidewrack.geojson").write_text(json.dumps(geojson(sheet), ensure_ascii=False, separators=(",", ":")) + "\n", "utf-8")
    (HERE / "tidewrack.osm").write_text(osm(sheet), "utf-8")


if __name__ == "__main__":
    write()
