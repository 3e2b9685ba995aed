"""The collar of a green: a ring of fringe round it, mown as short as fairway."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from simulator.hole.model import Feature, Hole, paint_sorted
from simulator.hole.surfaces import Surface

FRINGE = "fringe"
"""Name of the ring."""

COLLAR_YD = 2.0
"""How wide a collar is of which nothing is said: two cuts of a pedestrian mower (assumed) [yd]."""

MOST_COLLAR_YD = 10.0
"""Widest collar [yd]: past it, draw a fairway."""


def add_collars(features: Sequence[Feature], wide_yd: Mapping[str, float]) -> list[Feature]:
    """Features with fringe round some of their greens, under them and their bunkers.

    Parameters
    ----------
    wide_yd : mapping of str to float
        How wide it is on every side, by the name of the green.
    """
    out = list(features)
    for green in features:
        if green.is_green and green.name in wide_yd:
            taken = any(one.name.casefold() == FRINGE for one in out)
            name = f"{FRINGE} of {green.name}" if taken else FRINGE
            ring = green.area.buffer(wide_yd[green.name])
            out.append(Feature(name, Surface.FAIRWAY, ring, part_of=green.name))
    return out


def with_collars(hole: Hole, wide_yd: float = COLLAR_YD) -> Hole:
    """The hole with a ring of fringe round every green that has none; `assumed` says so."""
    done = {f.part_of for f in hole.features if f.is_fringe}
    bare = {f.name: wide_yd for f in hole.features if f.is_green and f.name not in done}
    if not bare:
        return hole
    features = add_collars(hole.features, bare)
    said = f"Assumed of green: {wide_yd:g} yards of fringe all round, mown as short as fairway (collar_yd)."
    return replace(hole, features=paint_sorted(features), assumed=(*hole.assumed, said))
