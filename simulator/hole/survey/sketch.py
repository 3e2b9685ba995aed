"""The hole file a survey ends in: a sketch whose names of points have become numbers."""

from __future__ import annotations

import datetime
import math
from collections.abc import Mapping
from typing import Any

from ...errors import FileError
from ...toml_text import block, comment, in_metres, one_line
from ...toml_text import value as toml_value
from ...units import M_PER_YD, YD_PER_M
from ..fields import show
from ..heights import LEAST_SPOTS
from ..sketch import KINDS
from .solve import Point, Surveyed

STATIONS = ("from_yd", "to_yd", "at_yd", "front_yd")
OFFSETS = ("left_yd", "right_yd", "offset_yd", "left_of_yd", "right_of_yd")
BETWEEN = ("depth_yd", "width_yd", "on_yd", "crown_yd")
"""Keys that take a station, an offset, or (a pair of points) the gap between two."""

WIDTH_SHARE = 0.85
"""Width of a green of which only the depth was read, over that depth: greens are a little deeper than wide;
assumed."""

EVEN_GROUND = "The ground climbs or falls evenly between the tee and the one height that was measured."

LEAST_EDGE_SD_YD = 0.5
"""Edges surer than this are not marked [yd]: the raster of the ground has cells of a yard."""


def sketch_data(found: Surveyed) -> dict[str, Any]:
    """The hole as data of a sketch file.

    Raises
    ------
    FileError
        A name that is no point, where a number belongs.
    """
    out: dict[str, Any] = {"name": found.survey.name, "par": found.survey.par}
    corners = [[round(x, 1), round(y, 1)] for x, y in found.line.points]
    if len(corners) == 2:
        out["length_yd"] = round(found.length_yd, 1)
    else:
        out["line_yd"] = corners
    taken = dict(found.survey.sketch)
    if found.survey.bearing_deg is not None and "bearing_deg" not in taken:
        out["bearing_deg"] = found.survey.bearing_deg % 360.0
    _add_heights(found, taken, out)
    for key in ("name", "par", "length_yd", "line_yd"):
        taken.pop(key, None)
    _add_green(found, taken)
    for key, value in taken.items():
        out[key] = _resolved(found, key, value) if isinstance(value, list) and key != "heights_yd" else value
    return out


def _add_heights(found: Surveyed, taken: dict[str, Any], out: dict[str, Any]) -> None:
    """The heights that were measured, unless the sketch gives its own.

    Spot heights need three places. When only one was measured from the tee, the ground half way is put half
    way up, and said.
    """
    rows = [
        [round(p.station_yd, 1), round(p.offset_yd, 1), round(p.height_yd, 1)]
        for p in found.points.values()
        if p.height_yd is not None
    ]
    if len(rows) < 2 or "heights_yd" in taken or "heights_m" in taken:
        return
    if len(rows) == LEAST_SPOTS - 1:
        rows.insert(1, [round(0.5 * (a + b), 2) for a, b in zip(*rows, strict=True)])
        told = taken.get("assumed", [])
        if isinstance(told, list):
            taken["assumed"] = [*told, EVEN_GROUND]
    out["heights_yd"] = rows


def _add_green(found: Surveyed, taken: dict[str, Any]) -> None:
    """A green and a pin from front, flag and back, when the sketch draws none."""
    at = {name.casefold(): name for name in found.points}
    if "green" not in taken and "front" in at and "back" in at:
        ends = [at["front"], at["back"]]
        depth = math.dist(*(_xy(found.points[name]) for name in ends))
        taken["green"] = [
            {
                "name": "green",
                "front_yd": ends[0],
                "depth_yd": ends,
                "offset_yd": at.get("flag", ends[0]),
                "width_yd": round(WIDTH_SHARE * depth, 1),
            }
        ]
    if "pin" not in taken and "flag" in at:
        taken["pin"] = [{"name": "today", "at_yd": at["flag"], "offset_yd": at["flag"]}]


def _resolved(found: Surveyed, kind: str, entries: list[Any]) -> list[Any]:
    out = []
    for number, entry in enumerate(entries, start=1):
        if not isinstance(entry, Mapping):
            return entries
        where = f"hole, {kind} {number}"
        one: dict[str, Any] = {}
        sds: list[float] = []
        for key, value in entry.items():
            in_yards, yards = _in_yards(key, value)
            one[in_yards] = _value(found, where, in_yards, yards, sds)
        if kind in KINDS and max(sds, default=0.0) >= LEAST_EDGE_SD_YD:
            one["edge_sd_yd"] = round(max(sds), 1)
        out.append(one)
    return out


def _in_yards(key: str, value: Any) -> tuple[str, Any]:
    """A key in metres whose value names points as the same key in yards, which points are known in."""
    several = value if isinstance(value, list) else [value]
    if not key.endswith("_m") or not any(isinstance(one, str) for one in several):
        return key, value
    yards = [YD_PER_M * one if isinstance(one, int | float) else one for one in several]
    return f"{key.removesuffix('_m')}_yd", yards if isinstance(value, list) else yards[0]


def _value(found: Surveyed, where: str, key: str, value: Any, sds: list[float]) -> Any:
    if key == "points_yd" and isinstance(value, list) and any(isinstance(v, str) for v in value):
        corners = []
        for name in value:
            point = _point(found, where, key, name)
            sds.append(max(point.sd_yd))
            corners.append([round(point.station_yd, 1), round(point.offset_yd, 1)])
        return corners
    if (
        key in BETWEEN
        and isinstance(value, list)
        and len(value) == 2
        and all(isinstance(v, str) for v in value)
    ):
        return round(math.dist(*(_xy(_point(found, where, key, name)) for name in value)), 1)
    if isinstance(value, str) and key in (*STATIONS, *OFFSETS):
        point = _point(found, where, key, value)
        along = key in STATIONS
        sds.append(point.sd_yd[0 if along else 1])
        return round(point.station_yd if along else point.offset_yd, 1)
    if isinstance(value, list) and key in (*STATIONS, *OFFSETS, "stations_yd"):
        return [
            _value(found, where, "from_yd" if key == "stations_yd" else key, v, sds)
            if isinstance(v, str)
            else v
            for v in value
        ]
    return value


def _point(found: Surveyed, where: str, key: str, name: Any) -> Point:
    if isinstance(name, str) and name in found.points:
        return found.points[name]
    allowed = ", ".join(list(found.points)[:12])
    raise FileError(found.survey.source, f"{where}, {key}", f"{show(name)}, no point of the survey", allowed)


def _xy(point: Point) -> tuple[float, float]:
    return point.x_yd, point.y_yd


def sketch_text(found: Surveyed, source: str, *, metric: bool = False) -> str:
    """The hole file, with every point and how sure it is as comments; in metres if wanted."""
    per_yd, unit = (M_PER_YD, "m") if metric else (1.0, "yd")
    lines = [
        comment(f"Made by 'holesim survey' from {source}, {datetime.date.today()}."),
        f"# Points: station, offset (left negative), height [{unit}]; in brackets: 8 in 10 sets of readings.",
    ]
    for p in found.points.values():
        height = "" if p.height_yd is None else f", {per_yd * p.height_yd:+.1f} up"
        (near, far), (left, right) = (
            (per_yd * low, per_yd * high) for low, high in (p.station_80_yd, p.offset_80_yd)
        )
        lines.append(
            f"#   {one_line(p.name)}: "
            f"{per_yd * p.station_yd:.1f} ({near:.0f} to {far:.0f}), "
            f"{per_yd * p.offset_yd:+.1f} ({left:+.0f} to {right:+.0f}){height}"
        )
    lines.append("")
    data = sketch_data(found)
    lines += [f"{key} = {toml_value(value)}" for key, value in data.items() if not _tables(value)]
    for key, value in data.items():
        if _tables(value):
            lines += block(key, [toml_value(one) for one in value])
    text = "\n".join(lines) + "\n"
    return in_metres(text) if metric else text


def _tables(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(one, Mapping) for one in value)
