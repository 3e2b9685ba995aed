"""Greens drawn inside a pond: water would lie on top of them (`surfaces.PAINT_ORDER`)."""

from __future__ import annotations

from dataclasses import replace

import shapely

from simulator.hole.model import Feature
from simulator.hole.surfaces import PENALTY_SURFACES, Surface

JOINED_YD = 3.0
"""Ground no wider than twice this between a green and a bunker inside the same pond is no water [yd]."""


def cut_islands(features: list[Feature], assumed: list[str]) -> list[Feature]:
    """Features with every green that a penalty area goes all round cut out of that area, fringe and all.

    A bunker beside such a green stands on its island. An area that covers part of a green keeps it: its edge
    was drawn there.
    """
    greens = [f for f in features if f.is_green]
    fringes = {f.part_of: f.area for f in features if f.is_fringe}
    sand = [f.area for f in features if f.surface is Surface.BUNKER]
    out = []
    for feature in features:
        if feature.surface in PENALTY_SURFACES:
            whole = feature.area
            for green in greens:
                ground = fringes.get(green.name, green.area)
                if whole.contains_properly(ground):
                    island = _island(ground, [one for one in sand if whole.contains_properly(one)])
                    feature = replace(feature, area=feature.area.difference(island))
                    assumed.append(f"Assumed of {feature.name}: that {green.name} inside it is an island.")
        out.append(feature)
    return out


def _island(green: shapely.Geometry, sand: list[shapely.Geometry]) -> shapely.Geometry:
    """The green, the bunkers beside it and the strips between them."""
    beside = [one for one in sand if one.distance(green) <= 2.0 * JOINED_YD]
    if not beside:
        return green
    ground = shapely.union_all([green, *beside])
    # closing: what is narrower than the two widths grown over it stays filled when they shrink back
    return ground.union(ground.buffer(JOINED_YD).buffer(-JOINED_YD))
