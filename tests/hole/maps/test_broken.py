"""Broken maps: one clear line or a report, never a traceback, nothing half-written."""

from __future__ import annotations

import bz2
import copy
import gzip
import json
import random
import tempfile
from pathlib import Path
from typing import Any

import pytest
import small_maps as sm
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from simulator.errors import FileError, UnwritableError
from simulator.hole import load_hole
from simulator.hole.maps import Settings, import_map

GOOD = sm.collection(sm.one_hole()[0])
LINE, TEE, GREEN = 0, 1, 2


def text(data: Any) -> bytes:
    return json.dumps(data).encode()


def changed(path: list[Any], value: Any) -> bytes:
    """The good map with one thing in it changed."""
    data = copy.deepcopy(GOOD)
    here = data
    for key in path[:-1]:
        here = here[key]
    here[path[-1]] = value
    return text(data)


def shape(kind: str, coordinates: Any) -> dict[str, Any]:
    return {"type": kind, "coordinates": coordinates}


# name: the file, and a part of the one line that refuses it
REFUSED: dict[str, tuple[bytes, str]] = {
    "empty": (b"", "an empty file"),
    "blank": (b"  \n\n ", "an empty file"),
    "text": (b"this is no map", "neither JSON nor XML"),
    "binary": (b"\x89PNG\x00\x00\x00\x00", "neither JSON nor XML (binary data)"),
    "zip": (b"PK\x03\x04\x00\x00\x00\x00", "unpack it first"),
    "pbf": (b"\x00\x00\x00\x0d\x0a\x09OSMHeader\x18\x7c", "binary form (.pbf)"),
    "packed otherwise, cut short": (bz2.compress(text(GOOD))[:300], "cannot be read"),
    "an HTML page": (b"<!DOCTYPE html><html><body>429</body></html>", "an HTML page"),
    "a query that failed": (text({"elements": [], "remark": "runtime error: timed out"}), "runtime error: timed out"),
    "centres in elements": (text({"elements": [{"type": "way", "id": 1, "tags": {"golf": "hole"},
                                                "center": {"lat": 1, "lon": 2}}]}), "without corners"),
    "centres as points": (text({"type": "FeatureCollection", "features": [
        {"type": "Feature", "properties": {"golf": "hole"}, "geometry": shape("Point", [1, 2])}]}),
                          "1 golf=hole are points"),
    "packed rubbish": (b"\x1f\x8b\x08\x00rubbish", "cannot be read"),
    "packed, cut short": (gzip.compress(text(GOOD))[:-20], "cannot be read"),
    "half of it": (text(GOOD)[:300], "a mistake in the JSON"),
    "not UTF-8": (text(GOOD).replace(b"white", b"wh\xffte"), "that is not UTF"),
    "a number": (b"[1, 2", "a mistake in the JSON"),
    "true": (b"{}", "JSON of type None"),
    "a list of nothing": (b"[]", "a map without features"),
    "a list of numbers": (b"[1, 2, 3]", "a map without features"),
    "nested too deep": (b"[" * 100_000 + b"]" * 100_000, "nested too deep"),
    "another type": (text({"type": "Topology", "objects": {}}), "JSON of type 'Topology'"),
    "features missing": (text({"type": "FeatureCollection"}), "features: found None"),
    "features a word": (text({"type": "FeatureCollection", "features": "none"}), "features: found 'none'"),
    "no features": (text({"type": "FeatureCollection", "features": []}), "a map without features"),
    "elements a word": (text({"elements": "none"}), "elements: found no list"),
    "no elements": (text({"elements": []}), "a map without features"),
    "no golf": (text({"type": "FeatureCollection", "features": [
        {"type": "Feature", "properties": {"natural": "water"}, "geometry": shape("Point", [1, 2])}]}), "golf=hole"),
    "greens only": (text({"type": "FeatureCollection", "features": GOOD["features"][GREEN:]}),
                    "no hole line (1 greens, 0 tees)"),
    "another grid": (text({**GOOD, "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::27700"}}}),
                     "crs: found coordinates in EPSG:27700"),
    "metres as degrees": (changed(["features", LINE, "geometry"], shape("LineString", [[4e5, 3e5], [4e5, 3.1e5]])),
                          "no hole line"),
    "XML, other": (b"<html><body>404</body></html>", "XML of a kind called 'html'"),
    "XML, broken": (b"<osm><node id='1' lat='1' lon='1'></osm>", "a mistake in the XML"),
    "XML, cut": (b"<osm version='0.6'><node id='1'", "a mistake in the XML"),
    "XML, bomb": (b'<!DOCTYPE x [<!ENTITY a "aaaa">]><osm>&a;</osm>', "a document type of its own"),
    "XML, nothing": (b"<osm version='0.6'></osm>", "a map without features"),
    "XML, places wrong": (b"<osm><node id='1' lat='x' lon='y'/><way id='2'><nd ref='1'/><nd ref='3'/>"
                          b"<tag k='golf' v='hole'/></way></osm>", "without corners"),
}  # fmt: skip


@pytest.mark.parametrize("name", REFUSED)
def test_refused_in_one_line(name: str, tmp_path: Path) -> None:
    raw, words = REFUSED[name]
    path = tmp_path / "map.geojson"
    path.write_bytes(raw)
    with pytest.raises(FileError) as caught:
        import_map(path, tmp_path / "out")
    assert words in str(caught.value) and "\n" not in str(caught.value) and len(str(caught.value)) < 400
    assert not (tmp_path / "out").exists()


def test_no_such_file_and_a_folder(tmp_path: Path) -> None:
    for path, words in ((tmp_path / "none.osm", "no such file"), (tmp_path, "a folder"), ("a\0b", "no such file")):
        with pytest.raises(FileError, match=words):
            import_map(path, tmp_path / "out")


NAN = float("nan")
BAD_LINES: dict[str, tuple[Any, str]] = {
    "one corner": (shape("LineString", [[-123.4, -48.9]]), "no hole line"),
    "one place twice": (shape("LineString", [[-123.4, -48.9]] * 2), "no hole line"),
    "no corners": (shape("LineString", []), "no hole line"),
    "words": (shape("LineString", [["a", "b"], ["c", "d"]]), "no hole line"),
    "null": (None, "no hole line"),
    "NaN": (shape("LineString", [[NAN, NAN], [NAN, NAN]]), "no hole line"),
    "a huge number": (shape("LineString", [[1e300, 1e300], [10**400, 2]]), "no hole line"),
}


@pytest.mark.parametrize("name", BAD_LINES)
def test_hole_without_a_line(name: str, tmp_path: Path) -> None:
    geometry, words = BAD_LINES[name]
    path = tmp_path / "map.geojson"
    path.write_bytes(changed(["features", LINE, "geometry"], geometry))
    with pytest.raises(FileError, match=words):
        import_map(path, tmp_path / "out")
    assert not (tmp_path / "out").exists()


def doubling(hole: Any) -> list[tuple[float, float]]:
    return [hole.at(0.0), hole.at(300.0), hole.at(10.0, 3.0), hole.at(320.0), hole.at(0.0, 5.0), hole.at(400.0)]


def test_failing_holes_do_not_stop_the_others(tmp_path: Path) -> None:
    sheet = sm.mc.Sheet()
    sm.one_hole(sheet=sheet)
    sheet.line([(500.0, 0.0), (500.0, 20.0)], golf="hole", ref="2", par="3")
    sheet.line([(700.0, 0.0), (700.0, 4000.0)], golf="hole", ref="3")
    _, hole = sm.one_hole(sheet=sheet, x=1200.0, line=False)
    sheet.line(doubling(hole), golf="hole", ref="4", par="4")
    sm.one_hole(sheet=sheet, x=1500.0, ref="5")
    report = sm.imported(tmp_path, sheet)
    failed = {h.hole: h.failed for h in report.holes if h.file is None}
    assert set(failed) >= {"2", "3"} and all("\n" not in words for words in failed.values())
    assert {h.hole for h in report.written} >= {"1", "5"}
    assert sorted(p.name for p in (tmp_path / "out").iterdir()) == sorted(Path(h.file or "").name for h in report.written)


def test_a_folder_that_is_a_file(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("something of mine")
    with pytest.raises(UnwritableError, match="a place that cannot be written") as refused:
        import_map(sm.write_map(tmp_path, sm.one_hole()[0]), tmp_path / "out", Settings())
    assert "\n" not in str(refused.value)
    assert (tmp_path / "out").read_text() == "something of mine"


def test_files_that_are_there_stay(tmp_path: Path) -> None:
    path = sm.write_map(tmp_path, sm.one_hole()[0])
    (tmp_path / "out").mkdir()
    mine = tmp_path / "out" / "01.toml"
    mine.write_text("mine")
    report = import_map(path, tmp_path / "out")
    assert "is there already" in report.holes[0].failed and mine.read_text() == "mine"
    assert import_map(path, tmp_path / "out", Settings(replace=True)).written and mine.read_text() != "mine"
    assert [p.name for p in (tmp_path / "out").iterdir()] == ["01.toml"]


JUNK = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8) | st.sampled_from(
        ["Point", "LineString", "Polygon", "hole", "green", "FeatureCollection", "Feature", -123.4, -48.9, 180.0]),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(
        st.sampled_from(["type", "coordinates", "geometry", "properties", "features", "tags", "golf", "ref", "par"]),
        inner, max_size=4), max_leaves=12,
)  # fmt: skip
QUICK = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def run(raw: bytes) -> None:
    """Import something broken: a report or a FileError, and every file that is there loads."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "map").write_bytes(raw)
        try:
            report = import_map(folder / "map", folder / "out")
        except FileError as error:
            assert "\n" not in str(error)
            assert not (folder / "out").exists()
            return
        files = {str(p) for p in (folder / "out").iterdir()} if (folder / "out").exists() else set()
        assert files == {h.file for h in report.written}
        for file in files:
            load_hole(file)
        assert all(h.failed and "\n" not in h.failed for h in report.holes if h.file is None)


@QUICK
@given(JUNK)
def test_any_json(value: Any) -> None:
    run(json.dumps(value).encode())


@QUICK
@given(st.integers(0, 2**32))
def test_a_good_map_with_things_changed(seed: int) -> None:
    """Values of the good map replaced, removed or doubled at random places."""
    luck = random.Random(seed)
    data = copy.deepcopy(GOOD)
    for _ in range(luck.randint(1, 6)):
        here: Any = data
        while True:
            keys = list(here) if isinstance(here, dict) else list(range(len(here)))
            if not keys:
                break
            key = luck.choice(keys)
            if isinstance(here[key], dict | list) and luck.random() < 0.85:
                here = here[key]
                continue
            junk = [None, [], {}, "", "x", -1, 0, 1e9, 91.0, NAN, [[]], [0, 0], "Polygon", "LineString", here[key], True]
            if isinstance(here, list) and luck.random() < 0.4:
                here.insert(key, here[key]) if luck.random() < 0.5 else here.pop(key)
            else:
                here[key] = luck.choice(junk)
            break
    run(json.dumps(data).encode())


@QUICK
@given(st.integers(0, 2**32))
def test_osm_with_lines_missing(seed: int) -> None:
    """An .osm file with rows dropped, doubled or shuffled: nodes, ways and members are missing."""
    luck = random.Random(seed)
    head, *rows, tail, _ = sm.mc.osm(sm.one_hole()[0]).split("\n")
    kept = [row for row in rows[1:] if luck.random() < 0.8]
    if luck.random() < 0.5:
        luck.shuffle(kept)
    run("\n".join([head, rows[0], *kept, tail]).encode())


@QUICK
@given(st.lists(st.tuples(st.floats(-300, 300), st.floats(-100, 600)), min_size=0, max_size=12),
       st.sampled_from(["hole", "green", "tee", "fairway", "bunker", "water_hazard", "out_of_bounds", "pin", "course", "coast"]),
       st.booleans())  # fmt: skip
def test_any_outline(corners: list[tuple[float, float]], what: str, as_line: bool) -> None:
    """Outlines that cross themselves, have no area, lie across the hole, as areas and as lines."""
    sheet, _ = sm.one_hole()
    tags = {"course": {"leisure": "golf_course"}, "coast": {"natural": "coastline"}}.get(what, {"golf": what})
    if corners:
        sheet.line(corners, **tags) if as_line else sheet.area(corners, **tags)
    run(json.dumps(sm.collection(sheet)).encode())
