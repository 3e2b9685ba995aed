"""Drawings that cannot all be meant: ground out of bounds, a fairway over another; and what is not drawn."""

from __future__ import annotations

from itertools import combinations

import shapely

from simulator.hole.model import Feature, Hole
from simulator.hole.surfaces import Surface

LEAST_OUT = {Surface.FAIRWAY: 0.05, Surface.GREEN: 0.01, Surface.WATER: 0.5, Surface.DRY_PENALTY: 0.5}
"""Share of an area that is out of bounds before it is said: a boundary may well run through a lake, hardly
through a fairway (assumed)."""

SAME_STRETCH = 0.5
"""Share of the smaller of two fairways that lies on the other before they are taken for one said twice."""

WILD_YD = 60.0
"""A side on which nothing is drawn farther out than this [yd] is said to be undrawn: one drive in twenty of a
bogey golfer finishes wider than some 40 yards (the answers of the demo holes)."""

_SHARES = (
    (0.95, "all"), (0.7, "most"), (0.42, "half"), (0.29, "a third"), (0.2, "a quarter"), (0.08, "a tenth"),
)  # fmt: skip


def clashes(hole: Hole) -> list[str]:
    """Sentences on areas that contradict each other; none on a hole that hangs together."""
    out = [f for f in hole.features if f.surface is Surface.OUT_OF_BOUNDS]
    said = []
    for feature in hole.features:
        least = LEAST_OUT.get(feature.surface)
        if least is None or not out:
            continue
        share, by = max(((_covered(feature, one), one.name) for one in out), key=lambda pair: pair[0])
        if share >= least:
            said.append(
                f"{_share(share)} of the {feature.name} is out of bounds ({by}) and plays so: is that meant?"
            )
    fairways = [f for f in hole.features if f.surface is Surface.FAIRWAY]
    for one, other in combinations(fairways, 2):
        if max(_covered(one, other), _covered(other, one)) >= SAME_STRETCH:
            said.append(
                f"The {one.name} and the {other.name} are drawn for the same stretch: whatever lies in "
                "either plays as fairway, so the wider one counts. Is that meant?"
            )
    return said


def undrawn(hole: Hole) -> dict[str, float]:
    """Sides on which nothing is drawn beyond `WILD_YD`, and how far from the line the drawing ends [yd]."""
    reach = {"left": 0.0, "right": 0.0}
    shapes = [f.area for f in hole.features]
    shapes += [shapely.Point(t.x_yd, t.y_yd).buffer(0.5 * t.crown_yd, 4) for t in hole.single_trees]
    for shape in shapes:
        for x, y in shapely.get_coordinates(shape):
            offset = hole.station_offset(x, y)[1]
            side = "left" if offset < 0.0 else "right"
            reach[side] = max(reach[side], abs(offset))
    return {side: yards for side, yards in reach.items() if yards < WILD_YD}


def _covered(feature: Feature, by: Feature) -> float:
    return float(feature.area.intersection(by.area).area / feature.area.area)


def _share(share: float) -> str:
    """ "A third": a share in words."""
    words = next((words for least, words in _SHARES if share >= least), "a little")
    return words[0].upper() + words[1:]
