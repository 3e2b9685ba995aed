"""What the ground can be, which lie a ball has on it, and which area wins where two overlap."""

from __future__ import annotations

from enum import IntEnum


class Surface(IntEnum):
    """Kinds of ground; the number is the code in the engine's surface raster."""

    ROUGH = 0
    FAIRWAY = 1
    TEE = 2
    HEAVY_ROUGH = 3
    BUNKER = 4
    GREEN = 5
    TREES = 6
    WATER = 7
    """Penalty area nobody can play from."""
    DRY_PENALTY = 8
    """Penalty area a ball can be played from (Rule 17.1b)."""
    OUT_OF_BOUNDS = 9
    PATH = 10


class Lie(IntEnum):
    """How a ball can lie when it is struck; the number is the row in the tables of lies."""

    TEE = 0
    FAIRWAY = 1
    ROUGH = 2
    HEAVY_ROUGH = 3
    BUNKER = 4
    TREES = 5
    DRY_PENALTY = 6
    GREEN = 7


LIE_OF: dict[Surface, Lie] = {
    Surface.ROUGH: Lie.ROUGH,
    Surface.FAIRWAY: Lie.FAIRWAY,
    Surface.TEE: Lie.FAIRWAY,
    Surface.HEAVY_ROUGH: Lie.HEAVY_ROUGH,
    Surface.BUNKER: Lie.BUNKER,
    Surface.GREEN: Lie.GREEN,
    Surface.TREES: Lie.TREES,
    Surface.DRY_PENALTY: Lie.DRY_PENALTY,
    Surface.PATH: Lie.FAIRWAY,
}
"""Lie of a ball at rest on a surface; water and out of bounds have none.

A tee that is not the one in use is mown short, so it plays as fairway; from a path there is free
relief within one club-length (Rules of Golf 2023, 16.1b), taken here as a clean lie on the spot.
"""

PAINT_ORDER: tuple[Surface, ...] = (
    Surface.ROUGH,  # what everything else is cut out of
    Surface.HEAVY_ROUGH,  # grass left to grow; mowing (fairway) cuts through it
    Surface.FAIRWAY,
    Surface.TREES,  # a clump standing in the fairway is still trees
    Surface.PATH,  # a path through the trees is a path
    Surface.TEE,  # teeing areas, greens and bunkers are built on top of what was there
    Surface.GREEN,
    Surface.BUNKER,  # a bunker cut into a green is sand; the fringe drawn too wide does not hide it
    Surface.DRY_PENALTY,  # a marked penalty area includes the bunkers inside its stakes
    Surface.WATER,  # the wet part of a dry penalty area stays wet
    Surface.OUT_OF_BOUNDS,  # the boundary overrules everything
)
"""Bottom to top: where areas overlap the later one is what the ball lies on."""

PAINT_RANK: dict[Surface, int] = {surface: rank for rank, surface in enumerate(PAINT_ORDER)}

WORDS: dict[Surface, str] = {
    Surface.ROUGH: "rough",
    Surface.FAIRWAY: "fairway",
    Surface.TEE: "tee",
    Surface.HEAVY_ROUGH: "heavy rough",
    Surface.BUNKER: "bunker",
    Surface.GREEN: "green",
    Surface.TREES: "trees",
    Surface.WATER: "water",
    Surface.DRY_PENALTY: "dry penalty area",
    Surface.OUT_OF_BOUNDS: "out of bounds",
    Surface.PATH: "path",
}

LIE_WORDS: dict[Lie, str] = {lie: lie.name.lower().replace("_", " ") for lie in Lie}

TROUBLE: tuple[Surface, ...] = (
    Surface.OUT_OF_BOUNDS, Surface.WATER, Surface.DRY_PENALTY, Surface.BUNKER, Surface.TREES,
    Surface.HEAVY_ROUGH,
)  # fmt: skip
"""Trouble in the order of what it costs: a stroke and the distance, a stroke, part of a stroke."""

PENALTY_SURFACES = frozenset({Surface.WATER, Surface.DRY_PENALTY})

LOST_CHANCE: dict[Surface, float] = {Surface.HEAVY_ROUGH: 0.03, Surface.TREES: 0.05}
"""Chance that a ball finishing there is not found in three minutes (Rule 18.2a), 0 elsewhere.

Assumed: no published count by surface is known to us. A file may give `lost_chance` per feature.
In a penalty area a ball is known to be there (Rule 17.1), so it is never *lost* in this sense.
"""
