"""OpenStreetMap data: .osm XML, and the JSON of query tools with the same nodes, ways and relations."""

from __future__ import annotations

import io
import math
from dataclasses import dataclass, field
from typing import Any
from xml.etree import ElementTree

import numpy as np

from simulator.errors import FileError
from simulator.hole.maps.geojson import ALLOWED
from simulator.hole.maps.tags import clean_tags

Place = tuple[float, float]


@dataclass
class Way:
    """Corners of a way: their keys (node numbers, or places where the file gives no nodes) and its tags."""

    keys: list[Any]
    tags: dict[str, str]


@dataclass
class Relation:
    """Members (kind, number, role) of a relation and its tags."""

    members: list[tuple[str, str, str]]
    tags: dict[str, str]


@dataclass
class Elements:
    """Everything of an OpenStreetMap file by number; `places` says where the keys of ways are."""

    places: dict[Any, Place] = field(default_factory=dict)
    node_tags: dict[str, dict[str, str]] = field(default_factory=dict)
    ways: dict[str, Way] = field(default_factory=dict)
    relations: dict[str, Relation] = field(default_factory=dict)


def read_xml(source: str, raw: bytes) -> Elements:
    """Elements of an .osm file; deleted ones are left out.

    Raises
    ------
    FileError
        XML that is broken or no OpenStreetMap file.
    """
    head = raw[:4096].lower()
    if b"<!doctype html" in head:
        raise FileError(source, "", "an HTML page", ALLOWED)
    if b"<!doctype" in head or b"<!entity" in raw.lower():
        raise FileError(source, "", "XML with a document type of its own", ALLOWED)
    found, root = Elements(), None
    try:
        for event, element in ElementTree.iterparse(io.BytesIO(raw), events=("start", "end")):
            if root is None:
                root = element
                if root.tag not in ("osm", "osmChange"):
                    raise FileError(source, "", f"XML of a kind called {root.tag[:40]!r}", ALLOWED)
            if event == "end" and element.tag in ("node", "way", "relation"):
                if element.get("visible") != "false" and element.get("action") != "delete":
                    _XML[element.tag](found, element)
                element.clear()
            elif event == "end" and element.tag == "delete":
                for gone in element:
                    found.ways.pop(gone.get("id", ""), None)
    except ElementTree.ParseError as error:
        raise FileError(source, "", f"a mistake in the XML ({str(error)[:80]})", ALLOWED) from None
    return found


def read_elements(source: str, data: dict[str, Any]) -> Elements:
    """Elements of the JSON of a query tool (a list `elements` of nodes, ways and relations).

    Raises
    ------
    FileError
        No such list.
    """
    rows = data.get("elements")
    if not isinstance(rows, list):
        raise FileError(source, "elements", "no list", ALLOWED)
    remark = data.get("remark")
    if not rows and isinstance(remark, str):
        words = " ".join(remark.split())[:120]
        raise FileError(source, "elements", f"none; the query tool said {words!r}", "features with golf tags")
    found = Elements()
    for row in rows:
        if not isinstance(row, dict):
            continue
        number, tags = str(row.get("id")), clean_tags(row.get("tags"))
        kind = row.get("type")
        if kind == "node":
            _keep_node(found, number, row.get("lon"), row.get("lat"), tags)
        elif kind == "way":
            keys = _keys(found, row.get("geometry"))
            if not keys:
                nodes = row.get("nodes")
                keys = [str(n) for n in nodes] if isinstance(nodes, list) else []
            found.ways[number] = Way(keys, tags)
        elif kind == "relation":
            members = []
            listed = row.get("members")
            for m in listed if isinstance(listed, list) else []:
                if not isinstance(m, dict):
                    continue
                what, ref, role = str(m.get("type")), str(m.get("ref")), str(m.get("role") or "")
                keys = _keys(found, m.get("geometry"))
                if what == "way" and keys and ref not in found.ways:
                    found.ways[ref] = Way(keys, {})
                elif what == "node" and ref not in found.places:
                    _keep_node(found, ref, m.get("lon"), m.get("lat"), {})
                members.append((what, ref, role))
            found.relations[number] = Relation(members, tags)
    return found


def _keys(found: Elements, geometry: Any) -> list[Any]:
    """Keys of corners written out with a way (null where they are outside a cut-out)."""
    keys: list[Any] = []
    for corner in geometry if isinstance(geometry, list) else []:
        place = _place(corner.get("lon"), corner.get("lat")) if isinstance(corner, dict) else None
        if place is not None:
            found.places[place] = place
            keys.append(place)
    return keys


def _place(lon: Any, lat: Any) -> Place | None:
    try:
        x, y = float(lon), float(lat)
    except (TypeError, ValueError):
        return None
    return (x, y) if math.isfinite(x) and abs(x) <= 360.0 and math.isfinite(y) and abs(y) <= 90.0 else None


def _keep_node(found: Elements, number: str, lon: Any, lat: Any, tags: dict[str, str]) -> None:
    place = _place(lon, lat)
    if place is not None:
        found.places[number] = place
        if tags:
            found.node_tags[number] = tags


def _xml_tags(element: ElementTree.Element) -> dict[str, str]:
    return clean_tags({t.get("k", ""): t.get("v") for t in element.iter("tag")})


def _xml_node(found: Elements, element: ElementTree.Element) -> None:
    _keep_node(found, element.get("id", ""), element.get("lon"), element.get("lat"), _xml_tags(element))


def _xml_keys(found: Elements, element: ElementTree.Element) -> list[Any]:
    keys: list[Any] = []
    for nd in element.iter("nd"):
        place = _place(nd.get("lon"), nd.get("lat"))
        if place is not None:
            found.places[place] = place
        keys.append(place if place is not None else nd.get("ref", ""))
    return keys


def _xml_way(found: Elements, element: ElementTree.Element) -> None:
    found.ways[element.get("id", "")] = Way(_xml_keys(found, element), _xml_tags(element))


def _xml_relation(found: Elements, element: ElementTree.Element) -> None:
    members = []
    for m in element.iter("member"):
        what, ref, role = m.get("type", ""), m.get("ref", ""), m.get("role", "")
        keys = _xml_keys(found, m)
        if what == "way" and keys and ref not in found.ways:
            found.ways[ref] = Way(keys, {})
        members.append((what, ref, role))
    found.relations[element.get("id", "")] = Relation(members, _xml_tags(element))


_XML = {"node": _xml_node, "way": _xml_way, "relation": _xml_relation}


def known(found: Elements, keys: list[Any]) -> list[Any]:
    """Keys of the corners of a way that the file knows; a ring stays one without its first corner."""
    there = [k for k in keys if k in found.places]
    if len(keys) > 3 and keys[0] == keys[-1] and len(there) > 2 and there[0] != there[-1]:
        there.append(there[0])
    return there


def corners(found: Elements, keys: list[Any]) -> np.ndarray:
    """Places (n, 2) of the corners of a way that the file knows."""
    places = [found.places[k] for k in known(found, keys)]
    return np.array(places, dtype=float).reshape(-1, 2)
