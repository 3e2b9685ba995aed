"""Nodes, ways and relations of OpenStreetMap put together into features."""

from __future__ import annotations

from typing import Any

import numpy as np

from simulator.errors import FileError
from simulator.hole.maps.model import OSM_ATTRIBUTION, MapData, MapFeature
from simulator.hole.maps.osm import Elements, Way, corners, known

AREA_TYPES = ("multipolygon", "boundary")
MAIN = ("golf", "natural", "landuse", "leisure", "waterway", "landcover", "building")
"""Keys that say what a thing is."""

INNER = ("inner", "enclave", "hole")
LINE_ROLES = ("", "line", "hole", "path", "way", "forward", "main", "centerline", "centreline")

NOT_TAGS = frozenset({"type", "source", "created_by", "note", "fixme", "source:date", "id", "name"})
"""Tags that say nothing of what a thing is."""

Member = tuple[str, Way, str]
"""A way of a relation that is in the file: its number, itself, and its role."""


def assemble(source: str, found: Elements) -> MapData:
    """Features of the tagged nodes, ways and relations of a file.

    A multipolygon relation without tags of its own takes those of its outer ways, and these are then its
    edge, no features beside it. Rings that do not close are left out and said.

    Raises
    ------
    FileError
        Golf features, and none of them with corners.
    """
    data = MapData(source, [], [], OSM_ATTRIBUTION)
    edges: set[str] = set()
    hole_lines: set[str] = set()
    for number, relation in found.relations.items():
        tags = relation.tags
        feature = MapFeature(f"relation/{number}", tags)
        ways = [
            (ref, found.ways[ref], role)
            for what, ref, role in relation.members
            if what == "way" and ref in found.ways
        ]
        if tags.get("golf") == "hole" and tags.get("type") not in AREA_TYPES:
            hole_lines |= _hole_relation(found, ways, feature)
        else:
            if tags.get("type") not in AREA_TYPES and not any(
                role in ("outer", "inner") for _, _, role in ways
            ):
                continue
            edges |= _edges(ways, feature)
            missing = sum(what == "way" and ref not in found.ways for what, ref, _ in relation.members)
            _rings(found, ways, feature, data, missing)
        if (not feature.empty or feature.open_edges) and _says_something(feature.tags):
            data.features.append(feature)
    lost = 0
    for number, way in found.ways.items():
        if number in edges or number in hole_lines or not _says_something(way.tags):
            continue
        line = corners(found, way.keys)
        if len(line) >= 2:
            data.features.append(MapFeature(f"way/{number}", way.tags, lines=[line]))
        elif "golf" in way.tags:
            lost += 1
    if lost and not any("golf" in feature.tags for feature in data.features):
        found_words = f"{lost} golf features without corners (an export of tags or centres only)"
        raise FileError(source, "", found_words, "ways with their corners or with their nodes in the file")
    if lost:
        data.notes.append(
            f"{lost} golf features without corners in the file left out: export them with their nodes."
        )
    for number, tags in found.node_tags.items():
        data.features.append(MapFeature(f"node/{number}", tags, points=[np.array([found.places[number]])]))
    return data


def _says_something(tags: dict[str, str]) -> bool:
    return any(key not in NOT_TAGS for key in tags)


def _same_thing(relation: dict[str, str], way: dict[str, str]) -> bool:
    """Whether a way repeats what its relation is: the edge of it, not a second one without its islands."""
    return any(way.get(key) == relation[key] for key in MAIN if key in relation)


def _edges(ways: list[Member], feature: MapFeature) -> set[str]:
    """Numbers of the outer ways that are no more than the edge of a relation.

    One without tags of its own takes theirs; else they are those that say the same thing.
    """
    outer = [(ref, way) for ref, way, role in ways if role not in INNER]
    if _says_something(feature.tags):
        return {ref for ref, way in outer if _same_thing(feature.tags, way.tags)}
    telling = [(ref, way) for ref, way in outer if _says_something(way.tags)]
    for _, way in telling:
        feature.tags = {**way.tags, **feature.tags}
    return {ref for ref, _ in telling}


def _hole_relation(found: Elements, ways: list[Member], feature: MapFeature) -> set[str]:
    """The line of a hole drawn as a relation: its member that is tagged a hole, else its plain open ways.

    It goes to `feature`; the numbers of the ways it is made of are returned.
    """
    tagged = [(ref, way) for ref, way, _ in ways if way.tags.get("golf") == "hole"]
    plain = [
        (ref, way) for ref, way, role in ways
        if role in LINE_ROLES and not _says_something(way.tags) and way.keys[:1] != way.keys[-1:]
    ]  # fmt: skip
    used = set()
    for ref, way in tagged or plain:
        line = corners(found, way.keys)
        if len(line) >= 2:
            feature.lines.append(line)
            feature.tags = {**way.tags, **feature.tags}
            used.add(ref)
    return used


def _rings(found: Elements, ways: list[Member], feature: MapFeature, data: MapData, missing: int) -> None:
    """Closed rings of the ways of a relation, outer and inner ones joined apart."""
    open_ends = 0
    named = any(role in INNER for _, _, role in ways)
    for role in ("outer", "inner"):
        parts = [known(found, way.keys) for _, way, r in ways if (r in INNER) == (role == "inner")]
        rings, left = join_rings([p for p in parts if len(p) >= 2])
        open_ends += len(left)
        feature.open_edges += [corners(found, chain) for chain in left]
        for ring in rings:
            feature.rings.append((role if named else "", corners(found, ring)))
    if open_ends or missing:
        name = feature.tags.get("name") or feature.tags.get("golf") or feature.ident
        what = "its edge has gaps" if open_ends else "parts of its edge are not in the file"
        data.notes.append(f"{name} ({feature.ident}): {what}; drawn from what there is.")


def join_rings(parts: list[list[Any]]) -> tuple[list[list[Any]], list[list[Any]]]:
    """Rings from ways that share their ends, whatever their order and direction.

    Parameters
    ----------
    parts : keys of the corners of each way.

    Returns
    -------
    The closed rings, and the chains of ways that were left open.
    """
    rings = [p for p in parts if p[0] == p[-1] and len(p) >= 4]
    loose = [p for p in parts if p[0] != p[-1]]
    by_end: dict[Any, list[int]] = {}
    for k, part in enumerate(loose):
        for end in (part[0], part[-1]):
            by_end.setdefault(end, []).append(k)
    left: list[list[Any]] = []
    used = [False] * len(loose)
    for first in range(len(loose)):
        if used[first]:
            continue
        used[first] = True
        chain = list(loose[first])
        while chain[0] != chain[-1]:
            k = next((k for k in by_end[chain[-1]] if not used[k]), -1)
            if k < 0:
                k = next((k for k in by_end[chain[0]] if not used[k]), -1)
                if k < 0:
                    break
                chain.reverse()
            used[k] = True
            chain += loose[k][1:] if loose[k][0] == chain[-1] else loose[k][-2::-1]
        if chain[0] == chain[-1] and len(chain) >= 4:
            rings.append(chain)
        else:
            left.append(chain)
    return rings, left
