"""The ground of one hole: which pieces of the map matter to it, in the frame of its file."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

import numpy as np
import shapely
from shapely import Polygon

from simulator.hole.maps import edges, growth
from simulator.hole.maps.frame import Frame
from simulator.hole.maps.gather import GREEN, TEE, Piece, Site
from simulator.hole.maps.greens import HoleGreen, other_greens
from simulator.hole.maps.kinds import SAID_WATER, Ground
from simulator.hole.maps.place import Area, Placed, polygons
from simulator.hole.maps.tees import HoleTees

REACH_YD: dict[str, float] = {
    "bunker": 100.0, "fairway": 110.0, "green": 110.0, "heavy_rough": 130.0, "path": 90.0, "tee_ground": 90.0,
    "trees": 150.0, "penalty_area": 200.0, "out_of_bounds": 205.0,
}  # fmt: skip
"""How far from the line ground of a kind can matter [yd] (assumed): for what costs strokes, the edge of the
engine's map."""

OUTSIDE_TREES_YD = 40.0
"""Trees out of bounds matter this far outside [yd]: their crowns stop balls."""

HAZARD_SHARE = 0.5
"""Water lying to this share in a marked penalty area is part of it, and has its colour."""

WET_SHARE = 0.85
"""A marked penalty area with water drawn inside it, less than this share of it, is dry around it."""

PAD_YD = 4.0
"""Ground kept dry round a tee that the map has only as a point [yd]."""

COURSE_LAND = Ground("out_of_bounds", "outside the course")
SEA = Ground("out_of_bounds", "sea")
BOUNDARY = Ground("out_of_bounds", "beyond the boundary")


@dataclass(eq=False)
class Around:
    """What lies round a line of play, in its frame; sentences for the report."""

    pieces: list[Piece] = field(default_factory=list)
    out_of_bounds: Area | None = None
    assumed: list[str] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)


def nobody() -> Placed:
    """A feature without name or number: what the importer draws itself."""
    return Placed("", {}, np.empty((0, 2)))


def around(
    site: Site,
    line: np.ndarray,
    green: HoleGreen,
    tees: HoleTees,
    frame: Frame,
    box: Polygon,
    outside_is_out: bool = True,
    sea_is_red: bool = False,
) -> Around:
    """Pieces of ground round a line of play.

    Parameters
    ----------
    line : (n, 2), green, tees : on the plane of the map; box : in the frame of the hole.
    outside_is_out : whether the outline of the grounds is the boundary.
    sea_is_red : the sea is a red penalty area, not out of bounds.
    """
    out = Around()
    play = shapely.LineString(frame.xy(line))
    own_green, own_tees = frame.area(green.area), [frame.area(t) for t in tees.grounds]
    must = [own_green, *own_tees[:1]]
    window = shapely.box(*shapely.transform(box, frame.on_map).bounds)
    out.pieces = [_framed(p, frame, window) for p in _within_reach(site, green, tees.grounds, line)]
    if outside_is_out:
        _boundary(site, out, frame, shapely.LineString(line), [green.area, *tees.grounds[:1]], box)
    beyond, no_side = edges.beyond_lines([frame.xy(b) for b in site.bounds_lines], play, box)
    out.warnings += no_side
    coast = [frame.xy(c) for c in site.coast]
    wet = edges.sea(coast, box)
    if wet is None and any(box.intersects(shapely.LineString(line)) for line in coast):
        out.warnings.append("The coastline near the hole is not whole in the map: no sea drawn.")
    if wet is not None and (
        wet.intersection(play).length > 0.1 * play.length or wet.intersects(own_green.centroid)
    ):
        out.warnings.append("The coastline runs the wrong way or through the hole: no sea drawn.")
        wet = None
    for area, ground in ((beyond, BOUNDARY), (wet, SEA)):
        if area is not None:
            red = ground is SEA and sea_is_red
            out.pieces.append(
                Piece(nobody(), area, ground._replace(key="penalty_area", colour="red") if red else ground)
            )
    if wet is not None:
        out.assumed.append(f"The sea is {'a red penalty area' if sea_is_red else 'out of bounds'}.")
    out.pieces = [p for p in out.pieces if _kept(p, play, must, out)]
    growth.clear(out.pieces, play, own_green, own_tees, out.warnings)
    out.warnings += [
        f"The outline of {word} has gaps in the map: what it holds is not all drawn."
        for word, edge in site.gaps if edge.distance(shapely.LineString(line)) < REACH_YD["penalty_area"]
    ]  # fmt: skip
    _colours(out)
    pads = [shapely.Point(xy).buffer(PAD_YD) for xy in frame.xy(np.array([t[1:] for t in tees.spots]))]
    _off_own_ground(out, own_green, [*own_tees, *pads])
    out.pieces += [Piece(nobody(), area, TEE) for area in own_tees]
    item = replace(green.piece.item, tags={}) if green.piece else nobody()
    out.pieces.append(Piece(item, own_green, GREEN))
    if out.out_of_bounds is not None:
        out.pieces.append(Piece(nobody(), out.out_of_bounds, COURSE_LAND))
    return out


def _within_reach(site: Site, green: HoleGreen, tees: list[Area], line: np.ndarray) -> Iterator[Piece]:
    """Pieces of the map within reach of a line, its own green and tees aside."""
    shape, own = shapely.LineString(line), {id(t) for t in tees}
    near = site.grounds_within(shape, max(REACH_YD.values()))
    for piece in [*near, *other_greens(site, green), *site.tees]:
        if id(piece.area) not in own and piece.area.distance(shape) <= REACH_YD.get(piece.ground.key, 0.0):
            yield piece


def _framed(piece: Piece, frame: Frame, window: Polygon) -> Piece:
    """A piece in the frame of the hole, what is far outside its box cut off first."""
    area = piece.area if window.contains(piece.area) else piece.area.intersection(window)
    return replace(piece, area=frame.area(area))


def _boundary(
    site: Site,
    out: Around,
    frame: Frame,
    line: shapely.LineString,
    must: list[shapely.Geometry],
    box: Polygon,
) -> None:
    """The ground outside the course as out of bounds, where the map has an outline that can be one."""
    outlines = edges.outlines_near(site, line)
    if not outlines:
        out.assumed.append("No outline of the course in the map: nothing is out of bounds because of it.")
        return
    grounds = edges.grounds_of(outlines, line, must)
    if grounds is None:
        out.warnings.append(
            "The outline of the course leaves part of this hole outside: not used as a boundary."
        )
        return
    out.out_of_bounds = edges.outside(frame.area(grounds), box)
    if out.out_of_bounds is not None:
        keep = shapely.union_all([frame.area(place) for place in must]).buffer(1.0)
        out.out_of_bounds = polygons(out.out_of_bounds.difference(keep))
        out.assumed.append("Outside the outline of the course is out of bounds (stakes may stand elsewhere).")


def _kept(piece: Piece, play: shapely.LineString, must: list[shapely.Geometry], out: Around) -> bool:
    """Whether a piece matters once the edge of the course is known; inverted boundaries are put right."""
    if piece.ground.key == "out_of_bounds" and edges.drawn_over(piece, play, must):
        word = piece.item.tags.get("name") or piece.ground.word
        if piece.item.tags.get("golf") == "out_of_bounds" and piece.area.contains(play):
            rest = edges.outside(piece.area, shapely.box(*play.bounds).buffer(205.0, join_style="mitre"))
            if rest is None:
                return False
            piece.area = rest  # drawn round the course: what it does not hold is out
            return True
        out.warnings.append(f"Out of bounds ({word}) is drawn over the hole: left out.")
        return False
    edge = out.out_of_bounds
    if edge is None or piece.ground is SEA:
        return True
    if piece.ground.key == "trees":
        piece.area = piece.area.difference(edge.buffer(-OUTSIDE_TREES_YD, quad_segs=2))
    elif piece.ground.key != "penalty_area" or piece.ground.word != "sea":
        rest = piece.area.difference(edge)
        if rest.area < piece.area.area - 1.0:
            piece.area = rest
    return not piece.area.is_empty


def _colours(out: Around) -> None:
    """Water takes the colour of the penalty area it lies in, which is dry around it; else it is red."""
    marked = [
        p for p in out.pieces if p.ground.key == "penalty_area" and p.ground.colour and p.ground.word != "sea"
    ]
    assumed = False
    for piece in out.pieces:
        if piece.ground.key != "penalty_area" or piece.ground.colour:
            continue
        colour = ""
        for other in marked:
            if other.ground.word == "beach":
                continue
            common = piece.area.intersection(other.area).area
            if common > HAZARD_SHARE * piece.area.area:
                colour = other.ground.colour
                if common < WET_SHARE * other.area.area:
                    other.ground = other.ground._replace(playable=True, word="penalty area")
                break
        assumed |= not colour
        piece.ground = piece.ground._replace(colour=colour or "red")
    if assumed:
        out.assumed.append(SAID_WATER)


def _off_own_ground(out: Around, green: Area, tees: list[Area]) -> None:
    """Cut the hole's own green and tees out of water, roads and the like that are drawn across them."""
    dry = shapely.union_all([green, *tees]).buffer(1.0, quad_segs=2)
    tee_ground = shapely.union_all(tees).buffer(0.5, quad_segs=2) if tees else Polygon()
    if out.out_of_bounds is not None:
        out.out_of_bounds = polygons(out.out_of_bounds.difference(dry))
    for piece in out.pieces:
        key = piece.ground.key
        if key not in ("penalty_area", "out_of_bounds", "bunker"):
            continue
        own = tee_ground if key == "bunker" else dry
        if not piece.area.intersects(own):
            continue
        over = piece.area.intersection(own).area
        piece.area = piece.area.difference(own)
        if over > 10.0:
            word = piece.item.tags.get("name") or piece.ground.word
            out.warnings.append(
                f"{word[:1].upper()}{word[1:]} is drawn over the tee or the green: cut away there."
            )
