"""GeoJSON (RFC 7946) to map features: collections, single features, bare geometries, sequences of lines."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Callable
from typing import Any

import numpy as np

from simulator.errors import FileError
from simulator.hole.fields import show
from simulator.hole.maps.model import OSM_ATTRIBUTION, MapData, MapFeature
from simulator.hole.maps.plane import from_utm, from_web_mercator
from simulator.hole.maps.tags import clean_tags

ALLOWED = "GeoJSON with longitude and latitude (WGS 84), or an .osm file"
"""What a map may be, for messages."""

MOST_NESTING = 12
"""Geometry collections inside one another."""


def parse_json(source: str, text: str) -> Any:
    """JSON of a file; a sequence of features (one a line, RFC 8142) is one collection.

    Raises
    ------
    FileError
        Text that is neither.
    """
    try:
        return json.loads(text)
    except RecursionError:
        raise FileError(source, "", "lists nested too deep", ALLOWED) from None
    except ValueError as error:
        lines = [line.strip("\x1e \t\r") for line in text.split("\n")]
        rows = [line for line in lines if line]
        try:
            if len(rows) < 2 or not all(row.startswith("{") and row.endswith("}") for row in rows):
                raise ValueError
            return {"type": "FeatureCollection", "features": [json.loads(row) for row in rows]}
        except (ValueError, RecursionError):
            words = " ".join(str(error).split())[:90]
            raise FileError(source, "", f"a mistake in the JSON ({words})", ALLOWED) from None


def read_geojson(source: str, data: Any) -> MapData:
    """Map of parsed GeoJSON; features that cannot be read are left out and counted.

    Raises
    ------
    FileError
        No GeoJSON, or coordinates in a grid that is not known.
    """
    if isinstance(data, list):
        data = {"type": "FeatureCollection", "features": data}
    if not isinstance(data, dict):
        raise FileError(source, "", f"JSON that is {show(data)}", ALLOWED)
    kind = data.get("type")
    if kind == "FeatureCollection" or (kind is None and "features" in data):
        rows = data.get("features")
        if not isinstance(rows, list):
            raise FileError(source, "features", show(rows), "a list of features")
    elif kind == "Feature":
        rows = [data]
    elif "coordinates" in data or "geometries" in data:
        rows = [{"type": "Feature", "geometry": data, "properties": {}}]
    else:
        raise FileError(source, "", f"JSON of type {show(kind)}", ALLOWED)
    grid = _grid(source, data)
    features, unread = [], 0
    holes: list[str] = []
    for row in _flattened(rows, 0):
        feature = _feature(row, grid)
        if feature is None:
            unread += 1
            tags = clean_tags(row.get("properties")) if isinstance(row, dict) else {}
            if tags.get("golf") == "hole":
                holes.append(tags.get("ref") or tags.get("name") or "without a number")
        else:
            features.append(feature)
    notes = []
    if unread:
        many = "1 feature" if unread == 1 else f"{unread} features"
        among = f", hole {', '.join(holes[:18])} among them" if holes else ""
        notes.append(f"{many} without a place that can be read left out{among}.")
    return MapData(source, features, notes, _attribution(data, features))


def _flattened(rows: list[Any], depth: int) -> list[Any]:
    """Features of a list whose members may be whole collections or bare geometries."""
    out: list[Any] = []
    for row in rows:
        if isinstance(row, dict) and isinstance(row.get("features"), list) and depth < MOST_NESTING:
            out += _flattened(row["features"], depth + 1)
        elif isinstance(row, dict) and "geometry" not in row and {"coordinates", "geometries"} & row.keys():
            out.append({"type": "Feature", "geometry": row, "properties": {}})
        else:
            out.append(row)
    return out


def _grid(source: str, data: dict[str, Any]) -> Callable[[np.ndarray], np.ndarray] | None:
    """From the file's coordinates to degrees; None when they are degrees already."""
    crs = data.get("crs")
    name = json.dumps(crs)[:500].lower() if isinstance(crs, dict | str) else ""
    found = re.search(r"epsg([:/\d.]+)", name)
    code = (re.findall(r"\d{4,6}", found[1]) or [""])[-1] if found else ""
    if code in ("", "4326", "4258", "4269", "4979"):
        return None
    if code in ("3857", "900913", "3785"):
        return from_web_mercator
    if re.fullmatch(r"32[67]\d\d", code) and 1 <= int(code[3:]) <= 60:
        zone, south = int(code[3:]), code[2] == "7"
        return lambda xy: from_utm(xy, zone, south)
    raise FileError(source, "crs", f"coordinates in EPSG:{code}", "longitude and latitude (WGS 84)")


def _feature(row: Any, grid: Callable[[np.ndarray], np.ndarray] | None) -> MapFeature | None:
    if not isinstance(row, dict):
        return None
    properties = row.get("properties")
    tags = clean_tags(properties)
    if isinstance(row.get("tags"), dict):
        tags = {**clean_tags(row["tags"]), **tags}
    feature = MapFeature(_ident(row, tags), tags)
    _add_geometry(feature, row.get("geometry"), grid, 0)
    return None if feature.empty else feature


def _ident(row: dict[str, Any], tags: dict[str, str]) -> str:
    """Kind and number in the map, from the places where exporters put them."""
    for value in (tags.get("full_id"), row.get("id"), tags.get("id")):
        text = str(value) if isinstance(value, str | int) and not isinstance(value, bool) else ""
        found = re.fullmatch(r"(n|w|r|node|way|relation)/?(-?\d+)", text)
        if found:
            return f"{ {'n': 'node', 'w': 'way', 'r': 'relation'}[found[1][0]] }/{found[2]}"
        kind = tags.get("osm_type") or (tags.get("type") if tags.get("type") in ("node", "way") else None)
        if kind in ("node", "way", "relation") and re.fullmatch(r"-?\d+", text):
            return f"{kind}/{text}"
    kind = tags.get("osm_type")
    if kind in ("node", "way", "relation") and tags.get("osm_id"):
        return f"{kind}/{tags['osm_id']}"
    return f"way/{tags['osm_way_id']}" if tags.get("osm_way_id") else ""


def _add_geometry(
    feature: MapFeature, geometry: Any, grid: Callable[[np.ndarray], np.ndarray] | None, depth: int
) -> None:
    """Add what can be read of a geometry; the rest is left out."""
    if not isinstance(geometry, dict) or depth > MOST_NESTING:
        return
    kind, coordinates = geometry.get("type"), geometry.get("coordinates")
    if kind == "GeometryCollection" and isinstance(geometry.get("geometries"), list):
        for one in geometry["geometries"]:
            _add_geometry(feature, one, grid, depth + 1)
        return
    parts = coordinates if isinstance(coordinates, list) else []
    if kind in ("Point", "LineString", "Polygon"):
        parts = [parts]
    if kind in ("Point", "MultiPoint"):
        found = _corners(feature, parts, grid)
        feature.points += [corner[None] for corner in found] if found is not None else []
    elif kind in ("LineString", "MultiLineString"):
        for part in parts:
            line = _corners(feature, part, grid)
            if line is not None and len(line) > 1:
                feature.lines.append(line)
    elif kind in ("Polygon", "MultiPolygon"):
        for polygon in parts:
            for number, ring in enumerate(polygon if isinstance(polygon, list) else []):
                corners = _corners(feature, ring, grid)
                if corners is not None and len(corners) >= 3:
                    closed = np.vstack([corners, corners[:1]])  # once more does no harm
                    feature.rings.append(("inner" if number else "outer", closed))
                elif not number:
                    break  # holes of nothing


def _corners(
    feature: MapFeature, part: Any, grid: Callable[[np.ndarray], np.ndarray] | None
) -> np.ndarray | None:
    """Places (n, 2) of a list of positions, those that are none skipped; heights go to the feature."""
    if not isinstance(part, list):
        return None
    rows = [
        row for row in part
        if isinstance(row, list) and len(row) >= 2
        and all(isinstance(v, int | float) and not isinstance(v, bool) and abs(v) < 1e9 for v in row[:2])
    ]  # fmt: skip
    if not rows:
        return None
    xy = np.array([row[:2] for row in rows], dtype=float)
    xy = grid(xy) if grid is not None else xy
    good = np.isfinite(xy).all(axis=1) & (np.abs(xy[:, 0]) <= 360.0) & (np.abs(xy[:, 1]) <= 90.0)
    high = [
        (x, y, float(row[2])) for row, (x, y), ok in zip(rows, xy.tolist(), good, strict=True)
        if ok and len(row) > 2 and isinstance(row[2], int | float) and math.isfinite(row[2])
    ]  # fmt: skip
    if high:
        feature.heights.append(np.array(high))
    return xy[good] if good.any() else None


def _attribution(data: dict[str, Any], features: list[MapFeature]) -> str | None:
    """The line a file asks for; OpenStreetMap's own when it is from there."""
    said = ""
    for holder in (data, data.get("metadata"), data.get("properties")):
        if isinstance(holder, dict):
            for key in ("attribution", "copyright", "license", "generator", "timestamp"):
                said += f" {holder.get(key)}" if isinstance(holder.get(key), str) else ""
    osm = (
        "openstreetmap" in said.lower()
        or "overpass" in said.lower()
        or any(f.ident or "osm_id" in f.tags for f in features)
    )
    if osm:
        return OSM_ATTRIBUTION
    own = data.get("attribution")
    return " ".join(own.split())[:200] or None if isinstance(own, str) and own.isprintable() else None
