"""Known heights: reading a CSV of points, and choosing the few that a hole file needs."""

from __future__ import annotations

import csv
import io
import math

import numpy as np
import shapely

from simulator.errors import FileError
from simulator.files import decoded, read_bytes
from simulator.hole.heights import LEAST_SPOTS, MOST_RANGE_YD, STEEPEST
from simulator.hole.maps.plane import LocalPlane, from_utm, utm_zone
from simulator.hole.slopes import MOST_GREEN_PCT, fitted_slope
from simulator.units import FT_PER_YD, YD_PER_M

MOST_CSV_BYTES = 100_000_000
"""Largest file of points read [bytes]: three million of them. A limit on slips."""

ALLOWED = "a CSV of points with columns lon, lat, ele_m (or x, y, z)"

LON = ("lon", "long", "longitude", "lng", "x", "easting", "east", "e")
LAT = ("lat", "latitude", "y", "northing", "north", "n")
ELE = ("ele", "elevation", "height", "z", "alt", "altitude", "h", "value")
UNIT_YD = {"m": YD_PER_M, "ft": 1.0 / FT_PER_YD, "yd": 1.0}

NO_DATA_M = -400.0
"""Heights below this mean that there is none [m]: no land lies lower than 430 m under the sea."""

NEAR_YD = 3_000.0
"""A file of points that has none this near the holes is of another place [yd]."""

WIDE_YD = 90.0
"""Heights this far from the line or the green are used [yd] (assumed)."""

EVEN = "The ground climbs or falls evenly between the two heights that the map has on this hole."

CELL_YD = 12.0
GREEN_CELL_YD = 5.0
"""Points are averaged over squares of this side, smaller ones on the green [yd]."""

MOST_SPOTS = 120
"""Most heights in a hole file: the surface through them is solved exactly."""

ENDS_SHARE = 0.5
"""Two heights at least this share of the line apart are those of its ends: the ground between climbs evenly
(assumed)."""

LEAST_APART_YD = 1.6
"""Heights nearer one another than this are one [yd]: hole files refuse those within a yard."""


def read_points(source: str, plane: LocalPlane) -> np.ndarray:
    """Points (n, 3) of a CSV on the plane of a map [yd].

    Columns by name, in any order: longitude, latitude and height (`ele_m`, `ele_ft`; metres when it does not
    say). x, y are longitude and latitude when they lie near the map, else UTM metres in its zone. Three
    columns without names are taken in that order.

    Raises
    ------
    FileError
        No such file, no such columns, a row that is no number, points of another place.
    """
    rows = _rows(source)
    names = [name.strip().lower() for name in rows[0]]
    kx, ky, kz, scale, first = 0, 1, 2, YD_PER_M, 1
    if any(_number(cell) is None for cell in rows[0][:3]):
        kx, ky, kz, scale = _columns(source, names)
        rows, first = rows[1:], 2
    values = []
    for number, row in enumerate(rows, start=first):
        if len(row) <= max(kx, ky, kz):
            raise FileError(source, f"row {number}", f"{len(row)} columns", ALLOWED)
        found = [_number(row[k]) for k in (kx, ky, kz)]
        if row[kz].strip().lower() in ("", "nan", "null", "nodata", "na"):
            continue
        if any(v is None for v in found):
            bad = next(row[k] for k, v in zip((kx, ky, kz), found, strict=True) if v is None)
            raise FileError(source, f"row {number}", repr(bad[:40]), "numbers")
        values.append(found)
    data = np.array(values, dtype=float).reshape(-1, 3)
    data = data[data[:, 2] * scale > NO_DATA_M * YD_PER_M]
    if not len(data):
        raise FileError(source, "", "no points", ALLOWED)
    lonlat = _degrees(source, data[:, :2], plane)
    near = plane.away_yd(lonlat) < NEAR_YD + 20_000.0
    if not near.any() or plane.away_yd(lonlat).min() > NEAR_YD:
        place = f"points of another place ({lonlat[0, 0]:.4f}, {lonlat[0, 1]:.4f})"
        here = f"{plane.lon_deg:.4f}, {plane.lat_deg:.4f}"
        raise FileError(source, "", place, f"points near the holes of the map ({here})")
    return np.column_stack([plane.xy(lonlat), data[:, 2] * scale])[near]


def _rows(source: str) -> list[list[str]]:
    text = decoded(read_bytes(source, source, MOST_CSV_BYTES, ALLOWED), source)
    lines = [line for line in text.splitlines() if line.strip() and not line.startswith("#")]
    if not lines:
        raise FileError(source, "", "an empty file", ALLOWED)
    comma = next((c for c in ("\t", ";", ",") if c in lines[0]), " ")
    try:
        rows = list(csv.reader(io.StringIO("\n".join(lines)), delimiter=comma, skipinitialspace=True))
    except csv.Error as error:
        raise FileError(source, "", f"a mistake in the CSV ({str(error)[:60]})", ALLOWED) from None
    return [[cell for cell in row if cell] for row in rows] if comma == " " else rows


def _number(cell: str) -> float | None:
    try:
        value = float(cell.strip().replace(",", "."))
    except ValueError:
        return None
    return value if math.isfinite(value) else None


def _columns(source: str, names: list[str]) -> tuple[int, int, int, float]:
    """Places of longitude, latitude and height among the columns, and yards in a unit of height."""
    stems = [
        name.rsplit("_", 1) if name.rsplit("_", 1)[-1] in (*UNIT_YD, "deg", "metres", "meters") else [name]
        for name in names
    ]
    found = []
    for what, words in (("longitude", LON), ("latitude", LAT), ("height", ELE)):
        k = next((names_k for word in words for names_k, stem in enumerate(stems) if stem[0] == word), None)
        if k is None:
            raise FileError(source, "first row", f"no {what} among {', '.join(names)[:60]}", ALLOWED)
        found.append(k)
    unit = stems[found[2]][1] if len(stems[found[2]]) > 1 else "m"
    return found[0], found[1], found[2], UNIT_YD.get(unit, YD_PER_M)


def _degrees(source: str, xy: np.ndarray, plane: LocalPlane) -> np.ndarray:
    """Longitudes and latitudes of points given so, or in UTM metres of the map's zone."""
    if np.abs(xy[:, 0]).max() <= 360.0 and np.abs(xy[:, 1]).max() <= 90.0:
        return xy
    if (
        xy[:, 0].min() > 100_000.0
        and xy[:, 0].max() < 900_000.0
        and 0.0 <= xy[:, 1].min() <= xy[:, 1].max() < 1e7
    ):
        return from_utm(xy, utm_zone(plane.lon_deg), plane.lat_deg < 0.0)
    found = f"x {xy[0, 0]:.10g}, y {xy[0, 1]:.10g}"
    raise FileError(
        source, "", found, "longitude and latitude (WGS 84), or UTM metres in the zone of the map"
    )


def spots_of(
    points: np.ndarray, line: shapely.LineString, green: shapely.Geometry
) -> tuple[list[tuple[float, float, float]], list[str]]:
    """The heights a hole file gets, from points (n, 3) in its frame [yd]; and sentences about them.

    Points are averaged over squares, larger ones while there are more than `MOST_SPOTS`; what a hole file
    refuses (cliffs, two heights in one place, a green steeper than a green) is left out.
    """
    if not len(points):
        return [], []
    places = shapely.points(points[:, :2])
    on_green = shapely.intersects(green, places)
    near = on_green | (shapely.distance(line, places) < WIDE_YD)
    points, on_green = points[near], on_green[near]
    if len(points) == LEAST_SPOTS - 1:
        rise = abs(points[1, 2] - points[0, 2])
        if math.dist(*points[:, :2]) > max(ENDS_SHARE * line.length, rise) and rise < MOST_RANGE_YD:
            ends = np.round(np.vstack([points[0], points.mean(axis=0), points[1]]), 2)
            return [(x, y, z) for x, y, z in ends.tolist()], [EVEN]
    if len(points) < LEAST_SPOTS:
        return [], ["Too few heights near this hole: it is level."]
    said = []
    middle = float(np.median(points[:, 2]))
    points, on_green = (
        a[np.abs(points[:, 2] - middle) < MOST_RANGE_YD / 2.0 - 1.0] for a in (points, on_green)
    )
    greens, rest = _averaged(points[on_green], GREEN_CELL_YD), points[~on_green]
    cell = CELL_YD
    while len(others := _averaged(rest, cell)) + len(greens) > MOST_SPOTS and cell < 500.0:
        cell *= 1.2
    greens = greens[: MOST_SPOTS // 2]
    slope = fitted_slope(greens)
    if slope is not None and slope.percent > MOST_GREEN_PCT - 0.1:
        said.append(f"Heights on the green slope it {slope.percent:.0f} %: too steep for one, it is level.")
        greens = greens.mean(axis=0, keepdims=True)
    kept: list[tuple[float, float, float]] = []
    dropped = 0
    for x, y, z in np.round(np.vstack([greens, others]), 2).tolist():
        away = [(math.hypot(x - a, y - b), abs(z - c)) for a, b, c in kept]
        if any(d < LEAST_APART_YD or rise > 0.95 * STEEPEST * d for d, rise in away):
            dropped += 1
            continue
        kept.append((x, y, z))
    if dropped:
        said.append(f"{dropped} heights too near or too steep beside others left out.")
    if len(kept) < LEAST_SPOTS:
        return [], ["Too few heights near this hole: it is level."]
    said.append(f"Ground through {len(kept)} heights, averaged over squares of {cell:.0f} yards.")
    return kept, said


def _averaged(points: np.ndarray, cell_yd: float) -> np.ndarray:
    """Means (m, 3) of the points (n, 3) in each square."""
    if not len(points):
        return points
    cells = np.floor(points[:, :2] / cell_yd).astype(np.int64)
    _, which = np.unique(cells, axis=0, return_inverse=True)
    which = which.ravel()
    count = np.bincount(which)
    return np.column_stack([np.bincount(which, points[:, k]) / count for k in range(3)])
