"""Drawings that cannot all be meant, and what is not drawn.

Ground out of bounds or under other ground, a fairway over another or off the line, a name on the wrong side.
"""

from __future__ import annotations

from itertools import combinations

import numpy as np
import shapely

from simulator.hole.line import PlayLine
from simulator.hole.model import Feature, Hole
from simulator.hole.surfaces import WORDS, Surface

LEAST_OUT = {
    Surface.FAIRWAY: 0.05, Surface.GREEN: 0.01, Surface.BUNKER: 0.5, Surface.WATER: 0.5,
    Surface.DRY_PENALTY: 0.5,
}  # fmt: skip
"""Share of an area that is out of bounds before it is said: a boundary may well run through a lake, hardly
through a fairway (assumed)."""

LEAST_UNDER = {
    Surface.BUNKER: 0.29, Surface.GREEN: 0.08, Surface.FAIRWAY: 0.5, Surface.HEAVY_ROUGH: 0.95,
    Surface.DRY_PENALTY: 0.95,
}  # fmt: skip
"""Share of an area under another that is painted over it before it is said (assumed): a pond may well cut
into a fairway, and grass that is drawn too wide and runs on under the mown changes nothing."""

OVER = {
    Surface.BUNKER: (Surface.DRY_PENALTY, Surface.WATER),
    Surface.GREEN: (Surface.DRY_PENALTY, Surface.WATER),
    Surface.FAIRWAY: (Surface.TREES, Surface.BUNKER, Surface.DRY_PENALTY, Surface.WATER),
    Surface.HEAVY_ROUGH: (Surface.FAIRWAY, Surface.GREEN),
    Surface.DRY_PENALTY: (Surface.WATER,),
}
"""What hides an area so that it is said. Trees over heavy rough are not told: a map has both of a wood."""

LEAST_ON_LINE_YD = 5.0
"""So much of the line of play has to lie under trees or out of bounds before it is said [yd]."""

BESIDE_YD = 3.0
"""An area named for one side lies wholly farther than this on the other before it is said [yd]."""

SIDES = frozenset(("left", "right"))
"""Words of a name that say on which side of the line its area lies."""

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
    said += _hidden(hole)
    for one, other in combinations(hole.fairways, 2):
        if max(_covered(one, other), _covered(other, one)) >= SAME_STRETCH:
            said.append(
                f"The {one.name} and the {other.name} are drawn for the same stretch: whatever lies in "
                "either plays as fairway, so the wider one counts. Is that meant?"
            )
    return [*said, *_on_the_line(hole), *_wrong_side(hole)]


def _hidden(hole: Hole) -> list[str]:
    """Areas that lie under others, so that no ball ever finds them, or less of them than was drawn."""
    said = []
    for feature in hole.features:
        over = [f for f in hole.features if f.surface in OVER.get(feature.surface, ())]
        if not over:
            continue
        whole = shapely.union_all([f.area for f in over])
        share = float(feature.area.intersection(whole).area / feature.area.area)
        if share >= LEAST_UNDER[feature.surface]:
            by = max(over, key=lambda f: _covered(feature, f))
            where = by.name if by.name == WORDS[by.surface] else f"{by.name} ({WORDS[by.surface]})"
            said.append(
                f"{_share(share)} of the {feature.name} lies under the {where} and plays as that: is that "
                "meant?"
            )
    return said


def _on_the_line(hole: Hole) -> list[str]:
    """A line of play through trees or out of bounds, and one that no fairway lies on."""
    line = shapely.LineString(hole.drawn_line)
    said = []
    for kind, words in ((Surface.TREES, "through the {}"), (Surface.OUT_OF_BOUNDS, "out of bounds ({})")):
        for feature in hole.features:
            if feature.surface is kind and line.intersection(feature.area).length >= LEAST_ON_LINE_YD:
                said.append(f"The line of play runs {words.format(feature.name)}: is that meant?")
    fairways = [f.area for f in hole.fairways]
    if hole.par == 3:
        return said
    if not fairways:
        said.append("No fairway is drawn: the way from tee to green plays as rough.")
    play = _drawn(hole)
    sides = {_side(play, area) for area in fairways}
    if len(sides) == 1 and (side := sides.pop()):
        said.append(f"All fairway lies {side} of the line of play: is that meant?")
    return said


def _wrong_side(hole: Hole) -> list[str]:
    """Areas called left that lie right of the line of play, and the other way round."""
    said, play = [], _drawn(hole)
    for feature in hole.features:
        named = SIDES & set(feature.name.casefold().split())
        if len(named) != 1:
            continue
        side = _side(play, feature.area)
        if side and side not in named:
            said.append(f"The {feature.name} is drawn {side} of the line of play: is that meant?")
    return said


def _drawn(hole: Hole) -> PlayLine:
    """The line of play as it is drawn, whatever tee is in use."""
    return PlayLine(np.array(hole.drawn_line, dtype=float))


def _side(play: PlayLine, area: shapely.Geometry) -> str:
    """The side of a line of play on which all of an area lies; empty of one that lies on both."""
    offsets = play.corners_of(area)[:, 1]
    if offsets.min() > BESIDE_YD:
        return "right"
    return "left" if offsets.max() < -BESIDE_YD else ""


def undrawn(hole: Hole) -> dict[str, float]:
    """Sides on which nothing is drawn beyond `WILD_YD`, and how far from the line the drawing ends [yd].

    What lies behind the end of the line ("out 20 behind the green") is beside no part of it.
    """
    reach = {"left": 0.0, "right": 0.0}
    beside = shapely.LineString(hole.line).buffer(2.0 * WILD_YD, cap_style="flat")
    shapes = [f.area for f in hole.features]
    shapes += [tree.ground for tree in hole.single_trees]
    for shape in shapes:
        for offset in hole.play_line.corners_of(shape.intersection(beside))[:, 1].tolist():
            side = "left" if offset < 0.0 else "right"
            reach[side] = max(reach[side], abs(offset))
    return {side: yards for side, yards in reach.items() if yards < WILD_YD}


def _covered(feature: Feature, by: Feature) -> float:
    return float(feature.area.intersection(by.area).area / feature.area.area)


def _share(share: float) -> str:
    """ "A third": a share in words."""
    words = next((words for least, words in _SHARES if share >= least), "a little")
    return words[0].upper() + words[1:]
