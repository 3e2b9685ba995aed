"""A map of one or a few holes, drawn in yards, written where a test wants it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import make_course as mc

from simulator.hole import Hole, load_hole
from simulator.hole.maps import HoleReport, MapReport, Settings, import_map


def one_hole(length: float = 400.0, x: float = 0.0, up: bool = True, tee: bool = True, green: bool = True,
             line: bool = True, sheet: mc.Sheet | None = None, **tags: Any) -> tuple[mc.Sheet, mc.Hole]:  # fmt: skip
    """A straight hole with tee and green, its line tagged as asked (par 4, number 1)."""
    sheet = mc.Sheet() if sheet is None else sheet
    hole = mc.Hole(sheet, x, 0.0 if up else length, length, up)
    if line:
        sheet.line(hole.line(), **{"golf": "hole", "ref": "1", "par": "4", "handicap": "5", **tags})
    if tee:
        hole.tee(0.0, tee="white")
    if green:
        hole.green()
    return sheet, hole


def collection(sheet: mc.Sheet, lon: float = mc.LON, lat: float = mc.LAT) -> dict[str, Any]:
    """The sheet as plain GeoJSON at a place on Earth."""
    keep, mc.LON, mc.LAT = (mc.LON, mc.LAT), lon, lat
    plain = mc.degrees.__defaults__
    mc.degrees.__defaults__ = (lon, lat)
    try:
        features = []
        for number, (_, _, tags) in enumerate(sheet.items):
            single = mc.Sheet()
            single.items = [sheet.items[number]]
            feature = mc.geojson(single)["features"][0]
            feature["properties"] = tags
            features.append(feature)
        return {"type": "FeatureCollection", "features": features}
    finally:
        (mc.LON, mc.LAT), mc.degrees.__defaults__ = keep, plain


def write_map(folder: Path, sheet: mc.Sheet, lon: float = mc.LON, lat: float = mc.LAT) -> Path:
    """The sheet as a GeoJSON file."""
    path = folder / "map.geojson"
    path.write_text(json.dumps(collection(sheet, lon, lat)), "utf-8")
    return path


def imported(folder: Path, sheet: mc.Sheet, **settings: Any) -> MapReport:
    """The report of a sheet; its holes go to folder/out."""
    return import_map(write_map(folder, sheet), folder / "out", Settings(**{"replace": True, **settings}))


def only(folder: Path, sheet: mc.Sheet, **settings: Any) -> tuple[HoleReport, Hole]:
    """Report and hole of a sheet that has one."""
    report = imported(folder, sheet, **settings)
    assert len(report.holes) == 1, [h.hole for h in report.holes]
    said = report.holes[0]
    assert said.file is not None, said.failed
    return said, load_hole(said.file)
