"""Checks on a hole that no single field can make: does it hang together?"""

from __future__ import annotations

import shapely

from simulator.errors import FileError
from simulator.hole.crowns import MOST_CROWNS, Tree
from simulator.hole.line import PlayLine
from simulator.hole.model import Hole, Spot
from simulator.hole.surfaces import WORDS, Surface

LENGTH_FOR_PAR_YD: dict[int, tuple[float, float]] = {
    3: (40.0, 330.0),
    4: (150.0, 600.0),
    5: (300.0, 850.0),
    6: (450.0, 1100.0),
}
"""Shortest and longest hole accepted for a par [yd].

Limits on slips of the pen, not on golf: well outside the ranges that the Rules of Handicapping
(Appendix F, from memory: men's par 3 up to 260 yd, par 4 240-490, par 5 450-710, par 6 from 670;
women's shorter) give to a par, so that juniors' tees and mountain holes pass.
"""

NO_TREE_ON = frozenset({Surface.GREEN, Surface.TEE})

LINE_END_NEAR_GREEN_YD = 30.0
"""How far from the green the line of play may end [yd]: assumed, more than half a deep green."""

NO_TEE_ON = frozenset(
    {
        Surface.WATER,
        Surface.DRY_PENALTY,
        Surface.OUT_OF_BOUNDS,
        Surface.GREEN,
        Surface.BUNKER,
    }
)


def check_line(source: str, par: int, line: PlayLine) -> None:
    """Raise FileError when the length is absurd for the par."""
    low, high = LENGTH_FOR_PAR_YD[par]
    if not low <= line.length_yd <= high:
        raise FileError(
            source,
            "length",
            f"a par {par} of {line.length_yd:,.0f} yd",
            f"{low:g} to {high:g} yd for a par {par}",
        )


def check_names(source: str, what: str, names: list[str]) -> None:
    """Raise FileError when two tees, pins or features share a name."""
    seen: set[str] = set()
    for name in names:
        if name.casefold() in seen:
            raise FileError(source, f"{what} {name!r}", "the name twice", "a name of its own for each")
        seen.add(name.casefold())


def check_hole(hole: Hole) -> None:
    """Raise FileError for a tee, pin or tree where none can be, or a line that misses the green."""
    for tee in hole.tees:
        if hole.surface_at(tee.x_yd, tee.y_yd) in NO_TEE_ON:
            allowed = "a tee on dry ground in bounds"
            raise FileError(hole.source, f"tee {tee.name!r}", _where(hole, tee), allowed)
    for pin in hole.pins:
        if hole.surface_at(pin.x_yd, pin.y_yd) is not Surface.GREEN:
            raise FileError(hole.source, f"pin {pin.name!r}", _where(hole, pin), "a pin on the green")
    for tree in hole.single_trees:
        if hole.surface_at(tree.x_yd, tree.y_yd) in NO_TREE_ON:
            allowed = "a tree beside greens and tees (its crown may hang over them)"
            raise FileError(hole.source, f"tree {tree.name!r}", _where(hole, tree), allowed)
    if len(hole.crown_kinds) > MOST_CROWNS:
        raise FileError(
            hole.source,
            "trees",
            f"{len(hole.crown_kinds)} kinds of crown",
            f"at most {MOST_CROWNS} different heights, bases and densities",
        )
    miss = hole.green.distance(shapely.Point(hole.line[-1]))
    if miss > LINE_END_NEAR_GREEN_YD:
        raise FileError(
            hole.source,
            "length",
            f"a line of play that ends {miss:.0f} yd from the green",
            f"within {LINE_END_NEAR_GREEN_YD:g} yd of it",
        )


def _where(hole: Hole, spot: Spot | Tree) -> str:
    """Where a spot stands, in words."""
    feature = hole.feature_at(spot.x_yd, spot.y_yd)
    if feature is None:
        return "it in the rough"
    word = WORDS[feature.surface]
    inside = word if feature.surface is Surface.OUT_OF_BOUNDS else f"in the {word}"
    return f"it {inside}" if feature.name.startswith(word) else f"it {inside} ({feature.name})"
