"""Planes of a sketch: parts of greens, heights of areas, and greens whose spot heights settle their slope."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import shapely
from shapely import MultiPolygon, Polygon

from simulator.errors import FileError
from simulator.hole.fields import Fields, named_entries
from simulator.hole.heights import SpotHeight, read_height
from simulator.hole.line import PlayLine
from simulator.hole.model import Feature
from simulator.hole.shapes import LEAST_AREA_YD2, read_area
from simulator.hole.slopes import MOST_GREEN_PCT, SLOPE_KEYS, fitted_slope, read_slope
from simulator.hole.surfaces import Surface


def read_green_parts(top: Fields, line: PlayLine, features: list[Feature]) -> list[Feature]:
    """The `green_part` tables as features to be painted over the green they lie on.

    A part is what its area and the green have in common, so it may be drawn over the edge.

    Raises
    ------
    FileError
        An area on no green, on two, or over another part; no slope.
    """
    greens = [f for f in features if f.surface is Surface.GREEN]
    parts: list[Feature] = []
    for fields, name in named_entries(top, "green_part"):
        drawn = read_area(fields, line, ("name", *SLOPE_KEYS), is_green=False, sizes=("height",))
        on = [g for g in greens if _common(drawn, g.area).area > LEAST_AREA_YD2]
        if len(on) != 1:
            found = f"an area on {' and '.join(g.name for g in on)}" if on else "an area on no green"
            raise fields.error("", found, "an area on one green")
        area = _common(drawn, on[0].area)
        for other in parts:
            over = _common(area, other.area).area
            if over > LEAST_AREA_YD2:
                found = f"an area over {other.name} as well ({over:.1f} square yards)"
                raise fields.error("", found, "parts that do not overlap")
        middle = area.centroid
        slope = read_slope(fields, line, middle.x, middle.y, MOST_GREEN_PCT, required=True)
        height_yd = read_height(fields)
        parts.append(Feature(name, Surface.GREEN, area, slope=slope, height_yd=height_yd, part_of=on[0].name))
    return parts


def area_heights(source: str, spots: list[SpotHeight], features: list[Feature]) -> list[SpotHeight]:
    """Known heights of the middles of areas that give one.

    Raises
    ------
    FileError
        A spot height inside such an area: its ground would have two heights.
    """
    found = []
    for feature in features:
        if feature.height_yd is None:
            continue
        for spot in spots:
            if shapely.intersects_xy(feature.area, spot.x_yd, spot.y_yd):
                raise FileError(
                    source,
                    "heights",
                    f"{spot.owner} inside {feature.name}, which has a height of its own",
                    "one of the two",
                )
        middle = feature.area.centroid
        found.append(SpotHeight(middle.x, middle.y, feature.height_yd, f"the middle of {feature.name}"))
    return found


def with_fitted_slope(source: str, feature: Feature, spots: list[SpotHeight]) -> Feature:
    """A green without a slope and with three or more spot heights on it, given the plane through those.

    Raises
    ------
    FileError
        When that plane is steeper than a green can be.
    """
    if feature.surface is not Surface.GREEN or feature.slope is not None or not spots:
        return feature
    xyz = np.array([(s.x_yd, s.y_yd, s.z_yd) for s in spots])
    slope = fitted_slope(xyz[shapely.intersects_xy(feature.area, xyz[:, 0], xyz[:, 1])])
    if slope is not None and slope.percent > MOST_GREEN_PCT:
        raise FileError(
            source,
            "heights",
            f"spot heights on {feature.name} that slope it {slope.percent:.1f} %",
            f"at most {MOST_GREEN_PCT:g} % on a green",
        )
    return replace(feature, slope=slope)


def say_planes(features: list[Feature], count: int, assumed: list[str]) -> None:
    """Add what is taken for granted about the ground of a hole with relief, `count` heights known."""
    if count:
        assumed.append("Between the file's heights the ground is interpolated, beyond them it levels out.")
    level = ["Tees"]
    if any(f.surface is Surface.GREEN and f.slope is None for f in features):
        level.append("greens without a slope")
    assumed.append(f"{' and '.join(level)} are level.")


def _common(a: Polygon | MultiPolygon, b: Polygon | MultiPolygon) -> Polygon | MultiPolygon:
    """What two areas share, without the points and lines where they only touch."""
    pieces = [p for p in shapely.get_parts(a.intersection(b)) if p.geom_type == "Polygon"]
    return pieces[0] if len(pieces) == 1 else MultiPolygon(pieces)
