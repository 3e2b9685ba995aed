"""The ground of a hole cut to size and named, and its single trees: what goes into its file."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

import numpy as np
import shapely
from shapely import Polygon

from simulator.hole.crowns import LEAST_CROWN_YD, MOST_CROWN_YD, MOST_TOP_YD
from simulator.hole.line import PlayLine
from simulator.hole.maps.frame import Frame, cut
from simulator.hole.maps.gather import Piece, Site
from simulator.hole.maps.ground import Around
from simulator.hole.maps.kinds import Ground
from simulator.hole.maps.tags import length_yd
from simulator.units import M_PER_YD

TREE_REACH_YD = 80.0
"""How far from the line a single tree can matter [yd] (assumed)."""

CROWN_YD = 8.0
"""Width of a single tree's crown without one [yd] (assumed)."""

MOST_TREES, MOST_OF_A_KIND = 250, 250
"""Most single trees and most areas of a kind in a file: the nearest to the line are kept."""

MERGED = ("out_of_bounds", "heavy_rough", "path")
"""Nameless ground of these kinds is one feature for each word, however many pieces the map has of it."""

ON_LINE_YD = 8.0
"""Ground whose middle is nearer the line than this is neither left nor right of it [yd]."""


@dataclass(eq=False)
class Plot:
    """One area of a hole file."""

    key: str
    name: str
    area: Polygon
    ground: Ground


@dataclass(frozen=True)
class TreeSpot:
    """One single tree of a hole file; its height is 0 when unknown."""

    name: str
    x: float
    y: float
    crown_yd: float
    top_yd: float


@dataclass(eq=False)
class Names:
    """Names given so far: each only once in a file, the distances in them in its unit."""

    metric: bool = False
    taken: set[str] = field(default_factory=set)

    def on(self, station_yd: float) -> str:
        """How far along the line a thing lies, with the unit: names are shown as they are on every page."""
        far, unit = (round(station_yd * M_PER_YD), "m") if self.metric else (round(station_yd), "yd")
        return f"({far} {unit} on)" if far >= 0 else f"({-far} {unit} behind the tee)"

    def free(self, name: str) -> str:
        """The name, with a number behind it when it is taken."""
        full, k = name, 2
        while full.casefold() in self.taken:
            full, k = f"{name} {k}", k + 1
        self.taken.add(full.casefold())
        return full


def plots_of(found: Around, line: np.ndarray, box: Polygon, names: Names) -> list[Plot]:
    """Areas of a hole file: cut to the box, few corners, one polygon each, nearest the line first.

    Sentences about what was decided or left out go to `found`.
    """
    play, play_line = shapely.LineString(line), PlayLine(line)
    pieces = []
    for piece in _merged(found.pieces):
        area = cut(piece.area, box)
        if area is None:
            continue
        if piece.ground.said and piece.ground.said not in found.assumed:
            found.assumed.append(piece.ground.said)
        pieces += [(float(part.distance(play)), piece, part) for part in shapely.get_parts(area)]
    pieces.sort(key=lambda one: (one[1].ground.key != "green", one[0]))
    count: Counter[str] = Counter()
    plots = []
    for _, piece, part in pieces:
        key = piece.ground.key
        count[key] += 1
        if count[key] <= MOST_OF_A_KIND:
            plots.append(Plot(key, names.free(_name(piece, part, play_line, names)), part, piece.ground))
    for key, number in count.items():
        if number > MOST_OF_A_KIND:
            word = key.replace("_", " ")
            found.warnings.append(
                f"{number} areas of {word}: the {MOST_OF_A_KIND} nearest the line are kept."
            )
    return plots


def _merged(pieces: list[Piece]) -> list[Piece]:
    """Nameless pieces of one kind and word as one, so that a street of houses is one feature."""
    out: list[Piece] = []
    groups: dict[tuple[str, str], list[Piece]] = {}
    for piece in pieces:
        if piece.ground.key in MERGED and "name" not in piece.item.tags:
            groups.setdefault((piece.ground.key, piece.ground.word), []).append(piece)
        else:
            out.append(piece)
    for same in groups.values():
        first = same[0]
        said = next((p.ground.said for p in same if p.ground.said), "")
        area = shapely.union_all([p.area for p in same])
        out.append(Piece(first.item, area, first.ground._replace(said=said)))
    return out


def _name(piece: Piece, part: Polygon, line: PlayLine, names: Names) -> str:
    """A name of at most 60 printable characters: the map's, or side, word and distance along the line."""
    given = (
        piece.item.tags.get("name", "") if piece.ground.key not in ("green", "fairway", "tee_ground") else ""
    )
    if given:
        return given[:50].strip()
    if piece.ground.key == "green":
        return "green"
    if piece.ground.key == "out_of_bounds" or piece.ground.word == "sea":
        return piece.ground.word
    middle = part.representative_point()
    station, offset = line.station_offset(middle.x, middle.y)
    side = "" if abs(offset) < ON_LINE_YD else "left " if offset < 0.0 else "right "
    return f"{side}{piece.ground.word} {names.on(station)}".replace("tee_ground", "tee ground")


def trees_of(
    site: Site, frame: Frame, line: np.ndarray, found: Around, off: shapely.Geometry, names: Names
) -> list[TreeSpot]:
    """Single trees near the line, the nearest first; those drawn on greens and tees (`off`) are left out."""
    if not site.trees:
        return []
    play, play_line = shapely.LineString(line), PlayLine(line)
    xy = frame.xy(np.vstack([item.points for item in site.trees]))
    whose = np.repeat(np.arange(len(site.trees)), [len(item.points) for item in site.trees])
    places = shapely.points(xy)
    away = shapely.distance(play, places)
    near, on_green, plain = away <= TREE_REACH_YD, 0, False
    off_limits = shapely.intersects(off, places)
    spots: list[tuple[float, float, float, float, float]] = []
    for k in np.flatnonzero(near).tolist():
        if off_limits[k]:
            on_green += 1
            continue
        tags = site.trees[whose[k]].tags
        crown = length_yd(tags.get("diameter_crown"))
        plain |= crown is None
        wide = min(max(crown or CROWN_YD, LEAST_CROWN_YD), MOST_CROWN_YD)
        top = length_yd(tags.get("height")) or 0.0
        x, y = xy[k].tolist()
        spots.append((float(away[k]), x, y, wide, top if 1.0 <= top <= MOST_TOP_YD else 0.0))
    spots.sort()
    if on_green:
        found.warnings.append(
            f"{on_green} single {'tree' if on_green == 1 else 'trees'} drawn on a green or tee left out."
        )
    if len(spots) > MOST_TREES:
        found.warnings.append(f"{len(spots)} single trees: the {MOST_TREES} nearest the line are kept.")
    if spots and plain:
        found.assumed.append(f"Single trees without a width have crowns {CROWN_YD:.0f} yards wide.")
    out = []
    for _, x, y, wide, top in spots[:MOST_TREES]:
        station, offset = play_line.station_offset(x, y)
        side = "left" if offset < 0.0 else "right"
        out.append(TreeSpot(names.free(f"{side} tree {names.on(station)}"), x, y, wide, top))
    return out
