"""Heights of mapped holes: `ele` in the map, CSV files of points, and what is left out."""

from __future__ import annotations

from pathlib import Path

import make_course as mc
import numpy as np
import pytest
import small_maps as sm

from simulator.errors import FileError
from simulator.hole import Hole
from simulator.hole.maps import HoleReport
from simulator.hole.maps.elevation import MOST_SPOTS

pyproj = pytest.importorskip("pyproj")


def hill(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Ground in metres: 1.5 % up along the hole, 1 % down to the right, a swell."""
    return 40.0 + 0.015 * 0.9144 * y - 0.01 * 0.9144 * x + 1.5 * np.sin(y / 70.0)


def grid(step: float = 20.0) -> np.ndarray:
    """Points (n, 3): x and y in yards, height in metres."""
    x, y = (a.ravel() for a in np.meshgrid(np.arange(-80.0, 81.0, step), np.arange(-40.0, 461.0, step)))
    return np.column_stack([x, y, hill(x, y)])


def csv(folder: Path, head: str, rows: np.ndarray, separator: str = ",") -> str:
    path = folder / "points.csv"
    lines = [separator.join(f"{v:.8f}" for v in row) for row in rows.tolist()]
    path.write_text("\n".join([head, *lines] if head else lines) + "\n")
    return str(path)


def hole_with(folder: Path, elevation: str) -> tuple[HoleReport, Hole]:
    return sm.only(folder, sm.one_hole()[0], elevation=elevation)


def assert_is_the_hill(hole: Hole, tolerance_yd: float) -> None:
    """Heights of open ground against the function they were drawn from (tees and green are planes)."""
    base = hill(np.zeros(1), np.zeros(1))[0]
    for x, y in ((0.0, 100.0), (30.0, 180.0), (-35.0, 250.0), (10.0, 330.0)):
        want = (hill(np.array([x]), np.array([y]))[0] - base) / 0.9144
        assert hole.height_at(x, y) == pytest.approx(want, abs=tolerance_yd)


@pytest.mark.parametrize("style", ["lon", "lat first", "feet", "x y z", "no head", "semicolons", "utm"])
def test_columns(tmp_path: Path, style: str) -> None:
    points = grid()
    lonlat, z = mc.degrees(points[:, :2]), points[:, 2:]
    if style == "lat first":
        path = csv(tmp_path, "id,Latitude,Longitude,Elevation", np.column_stack([z * 0, lonlat[:, ::-1], z]))
    elif style == "feet":
        path = csv(tmp_path, "lon,lat,ele_ft", np.column_stack([lonlat, z / 0.3048]))
    elif style == "semicolons":
        path = csv(tmp_path, "lon;lat;ele_m", np.column_stack([lonlat, z]), ";")
        Path(path).write_text(Path(path).read_text().replace(".", ","))
    elif style == "utm":
        zone = int((mc.LON + 180.0) // 6.0) + 1
        to = pyproj.Transformer.from_crs(4326, 32700 + zone, always_xy=True)
        path = csv(tmp_path, "x,y,z", np.column_stack([*to.transform(lonlat[:, 0], lonlat[:, 1]), z[:, 0]]))
    else:
        head = {"lon": "lon,lat,ele_m", "x y z": "x y z", "no head": ""}[style]
        path = csv(tmp_path, head, np.column_stack([lonlat, z]), " " if style == "x y z" else ",")
    said, hole = hole_with(tmp_path, path)
    assert_is_the_hill(hole, 0.35)
    assert any("Ground through" in words for words in said.assumed)
    assert len(hole.heights) <= MOST_SPOTS


def test_many_points_are_averaged(tmp_path: Path) -> None:
    """Points 2 yd apart, each with an error of half a metre: fewer spots, less error."""
    points = grid(2.0)
    points[:, 2] += np.random.default_rng(5).normal(0.0, 0.5, len(points))
    _said, hole = hole_with(tmp_path, csv(tmp_path, "lon,lat,ele_m", np.column_stack([mc.degrees(points[:, :2]), points[:, 2]])))
    assert 60 < len(hole.heights) <= MOST_SPOTS
    assert_is_the_hill(hole, 0.5)


def test_a_green_too_steep_is_level(tmp_path: Path) -> None:
    points = grid(8.0)
    on = np.hypot(points[:, 0], points[:, 1] - 400.0) < 30.0
    points[on, 2] += 0.12 * 0.9144 * points[on, 0]
    said, hole = hole_with(tmp_path, csv(tmp_path, "lon,lat,ele_m", np.column_stack([mc.degrees(points[:, :2]), points[:, 2]])))
    assert any("too steep for one" in words for words in said.assumed)
    assert all(f.slope is None for f in hole.features if f.name == "green")


def test_the_green_slopes_as_the_points(tmp_path: Path) -> None:
    points = grid(6.0)
    on = np.hypot(points[:, 0], points[:, 1] - 400.0) < 40.0
    points[on, 2] = 46.0 - 0.02 * 0.9144 * points[on, 0]
    _, hole = hole_with(tmp_path, csv(tmp_path, "lon,lat,ele_m", np.column_stack([mc.degrees(points[:, :2]), points[:, 2]])))
    slope = next(f.slope for f in hole.features if f.name == "green")
    assert slope is not None and slope.percent == pytest.approx(2.0, abs=0.1)
    assert slope.falls_bearing_deg == pytest.approx(90.0, abs=3.0)


def test_cliffs_and_places_twice_are_left_out(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole()
    for at, z in ((0.0, 5.0), (100.0, 6.0), (200.0, 7.0), (204.0, 40.0), (300.0, 8.0)):
        sheet.point(*hole.at(at, 30.0), natural="peak", ele=str(z))
    said, found = sm.only(tmp_path, sheet)
    assert len(found.heights) in (3, 4) and any("left out" in w or "averaged" in w for w in said.assumed)


def test_third_coordinates_and_contours(tmp_path: Path) -> None:
    sheet, _hole = sm.one_hole()
    for k, y in enumerate(range(0, 420, 60)):
        sheet.line([(-60.0, float(y)), (-20.0, float(y)), (30.0, float(y)), (60.0, float(y))], contour="elevation", ele=str(20 + k))
    _, found = sm.only(tmp_path, sheet)
    assert found.height_at(0.0, 240.0) - found.height_at(0.0, 60.0) == pytest.approx(3.0 / 0.9144, abs=0.5)


@pytest.mark.parametrize("as_line", [False, True])
def test_heights_of_tee_and_green_alone(tmp_path: Path, as_line: bool) -> None:
    """20 m down from tee to green, drawn as areas or as closed lines: the way between falls evenly."""
    sheet, hole = sm.one_hole(160.0, tee=False, green=False, par="3", ele="77")  # a line has no one height
    for ring, tags in ((mc.box(-4.0, -4.0, 4.0, 4.0), {"golf": "tee", "ele": "60"}),
                       (mc.ellipse(*hole.at(160.0), 26.0, 30.0), {"golf": "green", "ele": "40"})):  # fmt: skip
        if as_line:
            sheet.line([*ring, ring[0]], **tags)
        else:
            sheet.area(ring, **tags)
    said, found = sm.only(tmp_path, sheet)
    drop = 20.0 / 0.9144
    assert found.height_at(0.0, 160.0) == pytest.approx(-drop, abs=0.05)
    assert found.height_at(0.0, 80.0) == pytest.approx(-drop / 2.0, abs=0.1)
    assert any("climbs or falls evenly" in words for words in said.assumed)


def test_two_heights_at_one_end_tell_no_slope(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole()
    for at, z in ((0.0, "50"), (30.0, "49")):
        sheet.point(*hole.at(at, 10.0), ele=z)
    said, found = sm.only(tmp_path, sheet)
    assert not found.heights and "Too few heights near this hole: it is level." in said.assumed


def test_zeros_are_no_heights(tmp_path: Path) -> None:
    import json

    data = sm.collection(sm.one_hole()[0])
    text = json.dumps(data).replace("]", "]")
    data = json.loads(text)
    for feature in data["features"]:
        rings = feature["geometry"]["coordinates"]
        for ring in rings if feature["geometry"]["type"] == "Polygon" else [rings]:
            for corner in ring:
                corner.append(0.0)
    (tmp_path / "m.json").write_text(json.dumps(data))
    from simulator.hole import load_hole
    from simulator.hole.maps import import_map

    report = import_map(tmp_path / "m.json", tmp_path / "out")
    assert not load_hole(report.holes[0].file or "").heights


BAD = {
    "": "an empty file",
    "lon,lat\n1,2": "no height among lon, lat",
    "a,b,c\n1,2,3": "no longitude among a, b, c",
    "lon,lat,ele_m\n-123.4,x,3": "row 2: found 'x'",
    "lon,lat,ele_m\n-123.4": "row 2: found 1 columns",
    "-123.4,-48.9,3\n-123.4,x,3": "row 2: found 'x'",
    "lon,lat,ele_m\n": "no points",
    "lon,lat,ele_m\n10.0,50.0,3\n10.1,50.0,4": "points of another place",
    "x,y,z\n5,9000000000,3": "longitude and latitude",
    "lon,lat,ele_m\n-123.4,-48.9,-9999": "no points",
}


@pytest.mark.parametrize("text", BAD)
def test_refused(tmp_path: Path, text: str) -> None:
    (tmp_path / "points.csv").write_text(text)
    with pytest.raises(FileError) as caught:
        hole_with(tmp_path, str(tmp_path / "points.csv"))
    assert BAD[text] in str(caught.value) and "\n" not in str(caught.value)
    assert not (tmp_path / "out").exists()


def test_no_csv(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="no such file"):
        hole_with(tmp_path, str(tmp_path / "none.csv"))
    (tmp_path / "b.csv").write_bytes(b"\xff\xfe\x00lon")
    with pytest.raises(FileError, match="not UTF-8"):
        hole_with(tmp_path, str(tmp_path / "b.csv"))
