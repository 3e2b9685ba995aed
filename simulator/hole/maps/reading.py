"""Opening a map file: which kind it is, and every way in which it can be unreadable."""

from __future__ import annotations

import bz2
import gzip
import io
import lzma
import zlib
from pathlib import Path
from typing import Any

import numpy as np

from simulator.errors import FileError
from simulator.files import decoded, read_bytes
from simulator.hole.maps.assemble import assemble
from simulator.hole.maps.geojson import ALLOWED, parse_json, read_geojson
from simulator.hole.maps.model import MapData
from simulator.hole.maps.osm import read_elements, read_xml

MOST_BYTES = 64_000_000
"""Largest map read, unpacked [bytes]: a town with its courses."""

PACKED: dict[bytes, Any] = {b"\x1f\x8b": gzip.open, b"BZh": bz2.open, b"\xfd7zXZ\0": lzma.open}
"""How packed files begin, and what opens them."""

TELLING = (
    "golf", "name", "natural", "leisure", "landuse", "waterway", "highway", "barrier", "building", "ref",
)  # fmt: skip
"""Tags by which two features in one place are told apart."""


def read_map(path_or_name: str | Path) -> MapData:
    """Read a map: GeoJSON, .osm XML or the JSON of a query tool, plain or packed (.gz, .bz2, .xz).

    Raises
    ------
    FileError
        No such file, one that is no map, or a map without any feature.
    """
    source = str(path_or_name)
    raw = _bytes(source)
    start = raw.lstrip(b"\xef\xbb\xbf \t\r\n\x1e")[:1]
    if raw[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raw = decoded(raw, source, "utf-16").encode()
        start = raw.lstrip()[:1]
    if not start:
        raise FileError(source, "", "an empty file", ALLOWED)
    if start == b"<":
        data = assemble(source, read_xml(source, raw.lstrip()))
    elif start in b"{[":
        found = parse_json(source, decoded(raw, source))
        if isinstance(found, dict) and "elements" in found and "features" not in found:
            data = assemble(source, read_elements(source, found))
        else:
            data = read_geojson(source, found)
    else:
        if b"OSMHeader" in raw[:64]:
            raise FileError(source, "", "OpenStreetMap's binary form (.pbf)", f"{ALLOWED}: convert it first")
        if raw[:4] == b"PK\x03\x04":
            raise FileError(source, "", "a .zip", f"{ALLOWED}: unpack it first")
        binary = " (binary data)" if b"\0" in raw[:200] else ""
        raise FileError(source, "", f"a file that is neither JSON nor XML{binary}", ALLOWED)
    if not data.features:
        raise FileError(source, "", "a map without features", "features with golf tags")
    _once(data)
    return data


def _bytes(source: str) -> bytes:
    raw = read_bytes(source, source, MOST_BYTES, ALLOWED)
    opener = next((way for magic, way in PACKED.items() if raw.startswith(magic)), None)
    if opener is not None:
        try:
            with opener(io.BytesIO(raw)) as packed:
                raw = packed.read(MOST_BYTES + 1)
        except (OSError, EOFError, zlib.error, lzma.LZMAError) as error:
            words = " ".join(str(error).split())[:80]
            raise FileError(source, "", f"a file that cannot be read ({words})", ALLOWED) from None
    if len(raw) > MOST_BYTES:
        raise FileError(source, "", f"more than {MOST_BYTES:,} bytes unpacked", ALLOWED)
    return raw


def _once(data: MapData) -> None:
    """Leave out features that are in the map twice: same number, or same tags in the same place."""
    seen: set[object] = set()
    kept = []
    for feature in data.features:
        places = [*feature.points, *feature.lines, *feature.open_edges, *(ring for _, ring in feature.rings)]
        spot = tuple(np.round(p, 7).tobytes() for p in places)
        keys: list[object] = [(spot, tuple(feature.tags.get(key) for key in TELLING))]
        if feature.ident:
            keys.append((feature.ident, spot))
        if any(key in seen for key in keys):
            continue
        seen.update(keys)
        kept.append(feature)
    twice = len(data.features) - len(kept)
    if twice:
        data.notes.append(f"{twice} {'feature' if twice == 1 else 'features'} drawn twice, taken once.")
    data.features = kept
