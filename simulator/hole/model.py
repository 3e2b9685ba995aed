"""The hole as the rest of the program sees it: areas, places and a line of play, in yards."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from functools import cached_property

import numpy as np
import shapely
from shapely import MultiPolygon, Polygon

from simulator.errors import UsageError, check_text
from simulator.hole.crowns import Crown, Tree
from simulator.hole.line import PlayLine
from simulator.hole.slopes import Slope
from simulator.hole.surfaces import PAINT_RANK, Surface
from simulator.hole.terrain import Terrain

Point = tuple[float, float]


@dataclass(frozen=True, eq=False)
class Feature:
    """One named area of the hole.

    Parameters
    ----------
    name : str
        Unique on the hole.
    surface : Surface
    area : Polygon or MultiPolygon
        In the hole frame [yd].
    relief : "red", "yellow" or None
        Colour of a penalty area (Rule 17.1a), None for everything else.
    lost_chance : float
        Chance that a ball finishing here is not found, 0 to 1.
    lost_assumed : bool
        True when `lost_chance` is the default of the surface, not from the file.
    crown : Crown or None
        Of trees; None for everything else.
    slope : Slope or None
        Of an area the file gives a plane; on greens also the plane through the spot heights on them.
    height_yd : float or None
        Height of the area's middle above the zero of the file's heights, where it gives one.
    part_of : str or None
        Name of the green that this is a part of, with a slope of its own, or whose fringe this is.
    edge_sd_yd : float
        How well its edge is known [yd], one standard deviation; 0 when nobody said.
    from_assumed : bool
        True for a fairway of which whoever wrote the file was not told where it begins.
    """

    name: str
    surface: Surface
    area: Polygon | MultiPolygon
    relief: str | None = None
    lost_chance: float = 0.0
    lost_assumed: bool = True
    crown: Crown | None = None
    slope: Slope | None = None
    height_yd: float | None = None
    part_of: str | None = None
    edge_sd_yd: float = 0.0
    from_assumed: bool = False

    @property
    def is_fringe(self) -> bool:
        """Whether this is the fringe round a green: it plays as fairway, and nobody calls it one."""
        return self.surface is Surface.FAIRWAY and self.part_of is not None

    @property
    def is_green(self) -> bool:
        """Whether this is a whole green, not a part of one."""
        return self.surface is Surface.GREEN and self.part_of is None

    @property
    def middle(self) -> Point:
        """Middle of the area [yd]; a place in it where that is outside, because it bends round something."""
        centre = self.area.centroid
        middle = centre if self.area.contains(centre) else self.area.representative_point()
        return middle.x, middle.y


@dataclass(frozen=True)
class Spot:
    """A named place: a tee or a pin position, in the hole frame [yd]."""

    name: str
    x_yd: float
    y_yd: float

    @property
    def xy_yd(self) -> Point:
        return self.x_yd, self.y_yd


@dataclass(frozen=True)
class Mark:
    """Something to point at (a tree, a post, a roof), in the hole frame [yd]; it never touches a ball."""

    name: str
    x_yd: float
    y_yd: float


@dataclass(frozen=True, eq=False)
class Hole:
    """A golf hole seen from the tee in use.

    Frame: yards, origin at the tee in use, +y along the first leg of the line as drawn in the file,
    +x to the right of it. Changing the tee moves the origin and turns nothing.

    Parameters
    ----------
    line : corners of the line of play, from the tee in use (0, 0) to the green.
    drawn_line : corners of the line as the file draws it, whichever tee is in use.
    features : in paint order, bottom first (see `surfaces.PAINT_ORDER`), file order within a surface.
    bearing_deg : compass bearing of +y [deg], None when unknown.
    assumed : one sentence for everything the reader filled in by itself.
    single_trees : trees that stand alone; `features` holds the areas of trees.
    heights : places of known height (x, y, z), z above the zero of the file's heights.
    attribution : line that everything made from this hole has to carry, for example
        "© OpenStreetMap contributors (ODbL)"; None when nobody asks for one.
    marks : what a line can be worded by; no part of the ground.
    """

    name: str
    par: int
    line: tuple[Point, ...]
    tees: tuple[Spot, ...]
    pins: tuple[Spot, ...]
    tee: Spot
    pin: Spot
    features: tuple[Feature, ...]
    bearing_deg: float | None = None
    stroke_index: int | None = None
    local_rule_e5: bool = False
    source: str = ""
    assumed: tuple[str, ...] = ()
    drawn_line: tuple[Point, ...] = field(default=(), repr=False)
    single_trees: tuple[Tree, ...] = ()
    heights: tuple[tuple[float, float, float], ...] = ()
    attribution: str | None = None
    marks: tuple[Mark, ...] = ()

    def __repr__(self) -> str:
        """Name, par, length, tee and pin, how much is drawn."""
        where = f"{self.length_yd:.0f} yd from the {self.tee.name} tee, pin {self.pin.name}"
        return f"<Hole {self.name!r}: par {self.par}, {where}, {len(self.features)} areas>"

    @cached_property
    def play_line(self) -> PlayLine:
        """The line of play from the tee in use, with its geometry."""
        return PlayLine(np.array(self.line, dtype=float))

    @property
    def length_yd(self) -> float:
        """Length along the line of play from the tee in use [yd]."""
        return self.play_line.length_yd

    def at(self, station_yd: float, offset_yd: float = 0.0) -> Point:
        """Place (x, y) [yd] by yards along the line from the tee in use and yards right of it."""
        return self.play_line.at(station_yd, offset_yd)

    def station_offset(self, x_yd: float, y_yd: float) -> Point:
        """Station and offset [yd] of a place: of the nearest point of the line."""
        return self.play_line.station_offset(x_yd, y_yd)

    def out_yd(self, x_yd: float, y_yd: float) -> float:
        """Straight distance from a place to the pin in use [yd]."""
        return math.hypot(self.pin.x_yd - x_yd, self.pin.y_yd - y_yd)

    @property
    def has_relief(self) -> bool:
        """Whether the file gives any height or slope; without, the ground is level."""
        return bool(self.heights) or any(f.slope is not None and f.slope.percent > 0.0 for f in self.features)

    @property
    def crown_kinds(self) -> tuple[Crown, ...]:
        """The crowns of its trees, one of each kind (what the file says of them aside)."""
        crowns = [f.crown for f in self.features if f.crown] + [t.crown for t in self.single_trees]
        return tuple(dict.fromkeys(replace(crown, assumed=()) for crown in crowns))

    @cached_property
    def terrain(self) -> Terrain:
        """The height of the ground, relative to the tee in use."""
        return Terrain(self.heights, self.features)

    def height_at(self, x_yd: float, y_yd: float) -> float:
        """Height of the ground at a place above the tee in use [yd]; 0 on a hole without heights."""
        if not self.has_relief:
            return 0.0
        return float(self.terrain.at(np.array([x_yd]), np.array([y_yd]))[0])

    def with_tee(self, name: str) -> Hole:
        """The same hole from another tee, moved so that that tee is at (0, 0).

        Raises
        ------
        UsageError
            When the hole has no tee of that name; lists those it has.
        """
        check_text("tee", name, self.tees[0].name)
        tee = _named(self, "tee", tee_name(name), self.tees)
        return _moved(self, tee)

    def with_pin(self, name: str) -> Hole:
        """The same hole with another pin in use.

        Raises
        ------
        UsageError
            When the hole has no pin of that name; lists those it has.
        """
        check_text("pin", name, self.pins[0].name)
        return replace(self, pin=_named(self, "pin", name, self.pins))

    @cached_property
    def green(self) -> Polygon | MultiPolygon:
        """Everything of the green that the pin stands on (touching greens are one)."""
        union = shapely.union_all([f.area for f in self.features if f.surface is Surface.GREEN])
        here = shapely.Point(self.pin.x_yd, self.pin.y_yd)
        return next((part for part in shapely.get_parts(union) if part.intersects(here)), union)

    @property
    def fairways(self) -> list[Feature]:
        """The areas drawn as fairway, the fringe of greens aside."""
        return [f for f in self.features if f.surface is Surface.FAIRWAY and not f.is_fringe]

    def uncovered(self, feature: Feature) -> shapely.Geometry:
        """The ground of one of its areas that no later one lies over [yd]."""
        rank = next(k for k, one in enumerate(self.features) if one is feature)
        return feature.area.difference(shapely.union_all([f.area for f in self.features[rank + 1 :]]))

    def feature_at(self, x_yd: float, y_yd: float) -> Feature | None:
        """The topmost feature at a place, None on bare rough."""
        for feature in reversed(self.features):
            if shapely.contains_xy(feature.area, x_yd, y_yd):
                return feature
        return None

    def surface_at(self, x_yd: float, y_yd: float) -> Surface:
        """What a ball at a place lies on."""
        feature = self.feature_at(x_yd, y_yd)
        return Surface.ROUGH if feature is None else feature.surface

    def bounds(self, margin_yd: float = 0.0) -> tuple[float, float, float, float]:
        """Box (min x, min y, max x, max y) [yd] round the line, the tees and the pins, widened."""
        spots = [(s.x_yd, s.y_yd) for s in (*self.tees, *self.pins)]
        xy = np.array([*self.line, *self.drawn_line, *spots])
        low, high = xy.min(axis=0) - margin_yd, xy.max(axis=0) + margin_yd
        return float(low[0]), float(low[1]), float(high[0]), float(high[1])


def paint_sorted(features: Iterable[Feature]) -> tuple[Feature, ...]:
    """Features bottom first; the given order is kept within a surface."""
    return tuple(sorted(features, key=lambda f: PAINT_RANK[f.surface]))


def line_from(drawn: tuple[Point, ...], tee: Spot) -> tuple[Point, ...]:
    """Line of play from a tee: straight to the first corner of the drawn line still ahead of it."""
    line = PlayLine(np.array(drawn, dtype=float))
    station, _ = line.station_offset(tee.x_yd, tee.y_yd)
    ahead = [p for p, s in zip(drawn, line.stations, strict=True) if s > station + 1e-6]
    return ((tee.x_yd, tee.y_yd), *(ahead or [drawn[-1]]))


def _moved(hole: Hole, tee: Spot) -> Hole:
    """The hole with its origin at `tee` (given in the present frame) and that tee in use."""
    dx, dy = tee.x_yd, tee.y_yd

    def shift(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple((x - dx, y - dy) for x, y in points)

    def spot(s: Spot) -> Spot:
        return Spot(s.name, s.x_yd - dx, s.y_yd - dy)

    step = np.array([dx, dy])
    features = tuple(replace(f, area=shapely.transform(f.area, lambda xy: xy - step)) for f in hole.features)
    return replace(
        hole,
        tee=spot(tee),
        pin=spot(hole.pin),
        features=features,
        tees=tuple(spot(s) for s in hole.tees),
        pins=tuple(spot(s) for s in hole.pins),
        line=shift(line_from(hole.drawn_line, tee)),
        drawn_line=shift(hole.drawn_line),
        single_trees=tuple(replace(t, x_yd=t.x_yd - dx, y_yd=t.y_yd - dy) for t in hole.single_trees),
        heights=tuple((x - dx, y - dy, z) for x, y, z in hole.heights),
        marks=tuple(replace(m, x_yd=m.x_yd - dx, y_yd=m.y_yd - dy) for m in hole.marks),
    )


def tee_name(said: str) -> str:
    """A tee's name without the word tee, which is put behind it: "red" of "red tee", "main" of "tee"."""
    words = said.split()
    if len(words) > 1 and words[-1].casefold() in ("tee", "tees"):
        return " ".join(words[:-1])
    return MAIN_TEE if said.strip().casefold() in ("tee", "tees") else said


MAIN_TEE = "main"
"""What a tee without a name is called."""


def _named(hole: Hole, what: str, name: str, spots: tuple[Spot, ...]) -> Spot:
    for spot in spots:
        if spot.name.casefold() == name.strip().casefold():
            return spot
    names = ", ".join(s.name for s in spots)
    raise UsageError(f"{hole.source or hole.name}: no {what} called {name!r}; this hole has: {names}")
