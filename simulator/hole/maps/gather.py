"""The features of a map sorted by what they are to a course."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property

import numpy as np
import shapely

from simulator.errors import FileError
from simulator.hole.maps.kinds import Ground, golf_kind, gone, ground_of, is_practice, other_sport
from simulator.hole.maps.lines import HoleLine, hole_line
from simulator.hole.maps.model import MapData, MapFeature
from simulator.hole.maps.place import Area, Placed, area_of, lines_of, place
from simulator.hole.maps.plane import LocalPlane
from simulator.hole.maps.spot_heights import heights_in

FAR_YD = 40_000.0
"""Features farther than this from the middle of the holes are left out [yd]: the plane is good to 0.02 yd in
700 there, and no hole reaches so far."""

NEAR_YD = 600.0
"""Features farther than this from the box round holes, greens and tees are not looked at [yd]: the ground of
a hole file reaches 205 yd past them."""

MOST_NOTES = 10
"""Most outlines named in a report."""

TEE_LINE_YD = 3.0
"""Half the width of a tee drawn as a line [yd] (assumed)."""

LARGE_BUILDING_YD2 = 150.0
"""Buildings from this area on are out of bounds, smaller ones obstructions [yd2] (assumed)."""


@dataclass(eq=False)
class Piece:
    """A tee, green or piece of ground: its tags, its area and what was done to get it."""

    item: Placed
    area: Area
    ground: Ground
    said: str = ""


@dataclass(eq=False)
class Site:
    """A map on its plane: what belongs to holes, and the ground they lie on."""

    plane: LocalPlane
    lines: list[HoleLine] = field(default_factory=list)
    hole_areas: list[Piece] = field(default_factory=list)
    greens: list[Piece] = field(default_factory=list)
    practice_greens: list[Piece] = field(default_factory=list)
    tees: list[Piece] = field(default_factory=list)
    tee_points: list[Placed] = field(default_factory=list)
    pins: list[Placed] = field(default_factory=list)
    grounds: list[Piece] = field(default_factory=list)
    ranges: list[Area] = field(default_factory=list)
    courses: list[Piece] = field(default_factory=list)
    coast: list[np.ndarray] = field(default_factory=list)
    bounds_lines: list[np.ndarray] = field(default_factory=list)
    gaps: list[tuple[str, shapely.Geometry]] = field(default_factory=list)
    trees: list[Placed] = field(default_factory=list)
    heights: np.ndarray = field(default_factory=lambda: np.empty((0, 3)))
    notes: list[str] = field(default_factory=list)

    @cached_property
    def _ground_tree(self) -> shapely.STRtree:
        return shapely.STRtree([piece.area for piece in self.grounds])

    def grounds_within(self, shape: shapely.Geometry, yards: float) -> list[Piece]:
        """Pieces of ground within a distance of a shape, in the order of the map."""
        found = self._ground_tree.query(shape, predicate="dwithin", distance=yards)
        return [self.grounds[k] for k in sorted(found.tolist())]


GREEN, TEE, COURSE, HOLE = (Ground(key, key) for key in ("green", "tee_ground", "course", "hole"))


def origin_of(data: MapData) -> LocalPlane:
    """The plane of a map: it touches the ground in the middle of its hole lines, greens and tees.

    Raises
    ------
    FileError
        Nothing of golf in the map.
    """
    for wanted in (("hole",), ("green", "tee")):
        starts = [
            parts[0][:1] for f in data.features if golf_kind(f.tags) in wanted
            for parts in (f.lines, f.points, [ring for _, ring in f.rings]) if parts
        ]  # fmt: skip
        if starts:
            places = np.vstack(starts)
            lon = np.degrees(
                np.unwrap(np.radians(places[:, 0]))
            )  # medians do not mind the seam at 180 degrees
            away = np.abs(lon - np.median(lon)) + np.abs(places[:, 1] - np.median(places[:, 1]))
            middle = int(np.argmin(away))
            return LocalPlane(float(places[middle, 0]), float(places[middle, 1]))
    raise FileError(
        data.source,
        "",
        "no feature with golf=hole, golf=green or golf=tee",
        "OpenStreetMap's golf tags: lines golf=hole, areas golf=green, tee, fairway, bunker ...",
    )


def gather(data: MapData) -> Site:
    """Sort the features of a map; what is far from every hole is left out.

    Raises
    ------
    FileError
        Nothing of golf in the map.
    """
    borrowed = [f for f in data.features if f.tags.get("golf") and other_sport(f.tags)]
    if borrowed:
        count = f"{len(borrowed)} {'feature' if len(borrowed) == 1 else 'features'}"
        data.notes.append(f"{count} of disc golf, miniature golf or the like left out.")
        data.features = [f for f in data.features if not (f.tags.get("golf") and other_sport(f.tags))]
    plane = origin_of(data)
    site = Site(plane)
    away, low, high = _spans(data.features, plane)
    near = [f for f, yards in zip(data.features, away, strict=True) if yards < FAR_YD]
    low, high = low[away < FAR_YD], high[away < FAR_YD]
    far = sum(golf_kind(f.tags) == "hole" for f in data.features) - sum(
        golf_kind(f.tags) == "hole" for f in near
    )
    if far:
        site.notes.append(
            f"{far} hole {'line lies' if far == 1 else 'lines lie'} more than {FAR_YD / 1760.0:.0f} miles"
            " from the others: left out."
        )
    marks = np.array([golf_kind(f.tags) in ("hole", "green", "tee", "pin") for f in near])
    first, last = low[marks].min(axis=0) - NEAR_YD, high[marks].max(axis=0) + NEAR_YD
    middle = shapely.box(*first, *last)
    shapely.prepare(middle)
    inside = np.all((high >= first) & (low <= last), axis=1)
    placed = [place(f, plane) for f, looked_at in zip(near, inside, strict=True) if looked_at]
    for item in _without_minigolf(placed, site.notes):
        if gone(item.tags):
            continue
        course = item.tags.get("leisure") == "golf_course"
        if item.open_edges and (course or ground_of(item.tags) is not None):
            word = item.tags.get("name") or golf_kind(item.tags) or item.tags.get("natural") or item.ident
            site.gaps.append((word, shapely.MultiLineString(item.open_edges)))
        nowhere = item.area is None and not item.lines and not len(item.points)
        if not (_touches(item, middle) or (nowhere and golf_kind(item.tags) == "hole")):
            continue
        _sort(site, item)
    _sort_greens(site)
    _few_notes(site)
    site.heights = heights_in(near, plane, site.notes)
    return site


def _without_minigolf(placed: list[Placed], notes: list[str]) -> list[Placed]:
    """Features without what is golf by its tags but lies on a miniature golf course."""
    grounds = [p.area or area_of(p)[0] for p in placed if p.tags.get("leisure") == "miniature_golf"]
    small = shapely.union_all([area for area in grounds if area is not None])
    if small.is_empty:
        return placed
    shapely.prepare(small)
    kept = [p for p in placed if not (golf_kind(p.tags) and _lies_in(p, small))]
    if len(kept) < len(placed):
        notes.append(f"{len(placed) - len(kept)} golf features on a miniature golf course left out.")
    return kept


def _lies_in(item: Placed, area: shapely.Geometry) -> bool:
    if item.area is not None:
        return bool(area.contains(item.area.representative_point()))
    corners = np.vstack([*item.lines, item.points]) if item.lines else item.points
    return bool(len(corners)) and bool(shapely.intersects_xy(area, corners[:, 0], corners[:, 1]).all())


def _spans(features: list[MapFeature], plane: LocalPlane) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Least distance of each feature's corners from the origin (n,), their least and largest x and y (n, 2).

    All in yards.
    """
    parts = [[*f.points, *f.lines, *f.open_edges, *(ring for _, ring in f.rings)] for f in features]
    starts = np.concatenate([[0], np.cumsum([sum(map(len, places)) for places in parts])[:-1]]).astype(int)
    lonlat = np.vstack([place for places in parts for place in places])
    xy, away = plane.xy(lonlat), plane.away_yd(lonlat)
    return np.minimum.reduceat(away, starts), np.minimum.reduceat(xy, starts), np.maximum.reduceat(xy, starts)


def _touches(item: Placed, near: shapely.Geometry) -> bool:
    if item.area is not None and near.intersects(item.area):
        return True
    if any(near.intersects(shapely.LineString(line)) for line in item.lines):
        return True
    return bool(len(item.points)) and bool(
        shapely.intersects_xy(near, item.points[:, 0], item.points[:, 1]).any()
    )


def _sort(site: Site, item: Placed) -> None:
    tags, golf = item.tags, golf_kind(item.tags)
    if golf == "hole":
        line = hole_line(item)
        if line is not None and not (item.area is None and _is_ring(item)):
            site.lines.append(line)
        elif len(item.points):
            site.pins.append(item)
        else:
            before = len(site.hole_areas)
            _keep(site.hole_areas, item, HOLE, site.notes)
            if len(site.hole_areas) == before:  # first, where no list of outlines pushes it out
                site.notes.insert(0, f"Hole {item.label}: no line from tee to green: left out.")
    elif golf == "pin":
        site.pins.append(item)
    elif golf == "green":
        _keep(site.practice_greens if is_practice(tags) else site.greens, item, GREEN, site.notes)
    elif golf == "tee":
        if is_practice(tags):
            _keep(site.grounds, item, TEE, site.notes)
        elif item.area is None and not item.lines:
            site.tee_points.append(item)
        elif item.area is None and area_of(item)[0] is None:
            strip = shapely.union_all([shapely.LineString(line).buffer(TEE_LINE_YD) for line in item.lines])
            site.tees.append(Piece(item, strip, TEE))
        else:
            _keep(site.tees, item, TEE, site.notes)
    elif tags.get("leisure") == "golf_course":
        if item.area is not None or item.lines:
            _keep(site.courses, item, COURSE, site.notes)
    elif tags.get("natural") == "coastline":
        site.coast += lines_of(item)
    elif tags.get("natural") == "tree" and len(item.points):
        site.trees.append(item)
    else:
        _sort_ground(site, item)


def _is_ring(item: Placed) -> bool:
    return all(np.hypot(*(line[-1] - line[0])) < 1e-3 for line in item.lines)


def _sort_ground(site: Site, item: Placed) -> None:
    ground = ground_of(item.tags)
    if ground is None or ground.key in ("fence", "rough"):
        return
    closed = bool(item.lines) and _is_ring(item)
    bounds = item.tags.get("golf") == "out_of_bounds"
    is_line = ground.width_yd > 0.0 and item.area is None and not (
        closed and (item.tags.get("area") == "yes" or bounds or _is_pond(item))
    )  # fmt: skip
    if bounds and is_line:
        site.bounds_lines += item.lines
        return
    if (
        ground.key == "path"
        and item.area is not None
        and item.tags.get("area") != "yes"
        and _is_loop(item.area)
    ):
        item.lines, item.area, is_line = lines_of(item), None, True  # a circuit that an exporter filled
    if is_line:
        if not item.lines:
            return
        half = ground.width_yd / 2.0
        lines = [shapely.LineString(line) for line in item.lines]
        strip = shapely.union_all([line.buffer(half, quad_segs=3, cap_style="flat") for line in lines])
        site.grounds.append(Piece(item, strip, ground))
        return
    if ground.key == "range":
        area, _ = area_of(item)
        if area is not None:
            site.ranges.append(area)
        return
    if ground.key == "building":
        area, _ = area_of(item)
        if area is not None:
            key = "out_of_bounds" if area.area >= LARGE_BUILDING_YD2 else "path"
            site.grounds.append(Piece(item, area, ground._replace(key=key)))
        return
    said = ground.said if ground.width_yd == 0.0 else ""
    _keep(site.grounds, item, ground._replace(said=said, width_yd=0.0), site.notes)


def _is_pond(item: Placed) -> bool:
    """Whether a closed line of water is the edge of an area: a hazard, not a stream that runs in a ring."""
    return (golf_kind(item.tags) != "" and "waterway" not in item.tags) or "natural" in item.tags


def _is_loop(area: Area) -> bool:
    return area.area > 8.0 * area.length / 2.0 and area.area > 2000.0


def _keep(pieces: list[Piece], item: Placed, ground: Ground, notes: list[str]) -> None:
    """Add a feature that has to be an area; say what was done to its outline."""
    area, said = area_of(item)
    if said:
        notes.append(f"{ground.word.replace('_', ' ').capitalize()} {item.label}: {said}.")
    if area is not None:
        pieces.append(Piece(item, area, ground, said))


def _few_notes(site: Site) -> None:
    """Not every mended house: the first few outlines are named."""
    if len(site.notes) > MOST_NOTES:
        rest = len(site.notes) - MOST_NOTES
        site.notes[MOST_NOTES:] = [f"{rest} more outlines repaired, closed or left out."]


def _sort_greens(site: Site) -> None:
    """Greens and tees on practice ground belong to no hole, unless a hole line ends on them."""
    if not site.ranges:
        return
    practice = shapely.union_all(site.ranges)
    ends = shapely.MultiPoint([line.xy[k] for line in site.lines for k in (0, -1)])
    alone = [p for p in (*site.greens, *site.tees) if practice.contains(p.area.centroid)
             and not p.area.intersects(ends)]  # fmt: skip
    for piece in [g for g in site.greens if g in alone]:
        site.greens.remove(piece)
        site.practice_greens.append(piece)
    for piece in [t for t in site.tees if t in alone]:
        site.tees.remove(piece)
        site.grounds.append(piece)
    site.tee_points = [t for t in site.tee_points if not practice.contains(shapely.Point(t.points[0]))]
