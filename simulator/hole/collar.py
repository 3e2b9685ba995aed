"""The collar of a green: a ring of fringe round it, mown as short as fairway."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from simulator.hole.model import Feature, Hole, paint_sorted
from simulator.hole.surfaces import Surface

FRINGE = "fringe"
"""Name of the ring."""

COLLAR_YD = 2.0
"""How wide a collar is of which nothing is said: two cuts of a pedestrian mower (assumed) [yd]."""

MOST_COLLAR_YD = 10.0
"""Widest collar [yd]: past it, draw a fairway."""


def collar(green: Feature, wide_yd: float, names: Sequence[str] = ()) -> Feature:
    """The fringe round a green, so wide on every side; it lies under the green and its bunkers.

    Parameters
    ----------
    names : sequence of str
        Names that are taken.
    """
    name = FRINGE if FRINGE not in (one.casefold() for one in names) else f"{FRINGE} of {green.name}"
    return Feature(name, Surface.FAIRWAY, green.area.buffer(wide_yd), part_of=green.name)


def with_collars(hole: Hole, wide_yd: float = COLLAR_YD) -> Hole:
    """The hole with a ring of fringe round every green that has none; `assumed` says so."""
    greens = [f for f in hole.features if f.surface is Surface.GREEN and f.part_of is None]
    done = {f.part_of for f in hole.features if f.is_fringe}
    bare = [green for green in greens if green.name not in done]
    if not bare:
        return hole
    features = list(hole.features)
    for green in bare:
        features.append(collar(green, wide_yd, [f.name for f in features]))
    said = f"Assumed of green: {wide_yd:g} yards of fringe all round, mown as short as fairway (collar_yd)."
    return replace(hole, features=paint_sorted(features), assumed=(*hole.assumed, said))
