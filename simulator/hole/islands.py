"""Greens drawn inside a pond: water would lie on top of them (`surfaces.PAINT_ORDER`)."""

from __future__ import annotations

from dataclasses import replace

from simulator.hole.model import Feature
from simulator.hole.surfaces import PENALTY_SURFACES, Surface


def cut_islands(features: list[Feature], assumed: list[str]) -> list[Feature]:
    """Features with every green that a penalty area goes all round cut out of that area.

    An area that covers part of a green keeps it: its edge was drawn there.
    """
    greens = [f for f in features if f.surface is Surface.GREEN and f.part_of is None]
    out = []
    for feature in features:
        if feature.surface in PENALTY_SURFACES:
            for green in greens:
                if feature.area.contains_properly(green.area):
                    feature = replace(feature, area=feature.area.difference(green.area))
                    assumed.append(f"Assumed of {feature.name}: that {green.name} inside it is an island.")
        out.append(feature)
    return out
