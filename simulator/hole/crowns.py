"""Crowns of trees: from where to where they reach above the ground, and how much air is in them."""

from __future__ import annotations

import math
from dataclasses import dataclass

import shapely

from simulator.hole.fields import Fields
from simulator.units import YD_PER_M

CROWN_PLAIN = ("density",)
CROWN_LENGTHS = ("height", "base", "hit_length")
"""Keys of a table that describe a crown."""

TOP_YD = 21.0
"""Height of a tree nobody measured [yd]: a broadleaf of parkland, mature at 18-30 m by species
(Preston 1976, North American Trees, second hand), 18-24 m on courses (from memory). Assumed."""

BASE_YD = 3.0
"""Height of its lowest branches [yd]: pruned to 2-4 m on courses (from memory). Assumed."""

BASE_SHARE = 0.25
"""Lowest branches of a small tree, as a share of its height (assumed)."""

MOST_TOP_YD = 130.0
"""Highest tree a file may hold [yd]; the tallest known stands 116 m."""

LEAST_CROWN_YD = 1.5
"""Narrowest crown of a single tree [yd]: more than the diagonal of a raster cell, so that it is seen."""

MOST_CROWN_YD = 60.0
"""Widest crown of a single tree [yd]; wider ones are areas."""

MOST_CROWNS = 255
"""Most kinds of crown on a hole: what a byte a cell can tell apart beside none."""

_PATH_M = 8.0
_PASSES = {
    "open": 0.50,  # assumed: winter branches, birches, pines with daylight between
    "medium": 0.25,  # "25 % air": 27 and 24 of 100 balls got past in a television test in California
    "dense": 5.0 / 60.0,  # 5 of 60 within 10 yd of normal, six species (a golf magazine's test, second hand)
}
HIT_LENGTH_YD: dict[str, float] = {
    word: _PATH_M * YD_PER_M / math.log(1.0 / share) for word, share in _PASSES.items()
}
"""Mean way through a crown before a ball hits wood [yd] by density: a length L is passed with chance
exp(-L / length), and the shares above are taken to be of 8 m of crown (assumed)."""

DENSITIES = tuple(HIT_LENGTH_YD)


@dataclass(frozen=True)
class Crown:
    """What of a tree can stop a ball; heights above the ground under it.

    Parameters
    ----------
    base_yd, top_yd : lowest branches and top [yd].
    hit_length_yd : mean way through the crown before a hit [yd].
    assumed : which of "height", "base" and "density" the file does not say.
    """

    base_yd: float
    top_yd: float
    hit_length_yd: float
    assumed: tuple[str, ...] = ()


@dataclass(frozen=True)
class Tree:
    """One tree, its crown a cylinder of diameter `crown_yd`; the ground under it keeps its surface."""

    name: str
    x_yd: float
    y_yd: float
    crown_yd: float
    crown: Crown

    @property
    def ground(self) -> shapely.Polygon:
        """The ground under its crown [yd]."""
        return shapely.Point(self.x_yd, self.y_yd).buffer(self.crown_yd / 2.0)


def read_crown(fields: Fields) -> Crown:
    """Crown given by a table (`height`, `base`, `density` or `hit_length`), the rest assumed.

    Raises
    ------
    FileError
        Numbers out of range, branches above the top, a density given twice or in unknown words.
    """
    assumed = [key for key in ("height", "base") if not fields.has(key)]
    top = fields.length("height", TOP_YD, 1.0, MOST_TOP_YD)
    base = fields.length("base", min(BASE_YD, BASE_SHARE * top), 0.0, MOST_TOP_YD)
    if base >= top:
        found = f"branches from {base:.6g} yd on a tree of {top:.6g} yd"
        raise fields.error(fields.key("base"), found, "a base below the top")
    if "density" in fields.table and fields.has("hit_length"):
        key = fields.key("hit_length")
        raise fields.error("density", f"both density and {key}", "one of them")
    if fields.has("hit_length"):
        hit = fields.length("hit_length", None, 0.5, 200.0)
    else:
        if "density" not in fields.table:
            assumed.append("density")
        word = fields.choice("density", DENSITIES) if "density" in fields.table else "medium"
        hit = HIT_LENGTH_YD[word]
    return Crown(base, top, hit, tuple(assumed))


def say_crowns(crowns: list[Crown], assumed: list[str]) -> None:
    """Add what the crowns take for granted to `assumed`, one sentence for each kind of gap."""
    gaps = {gap for crown in crowns for gap in crown.assumed}
    if "height" in gaps:
        assumed.append(f"Trees without a height are {TOP_YD:g} yards high.")
    if "base" in gaps:
        assumed.append(
            f"Trees without a base have branches from {BASE_YD:g} yards up (small ones from a quarter)."
        )
    if "density" in gaps:
        one_in, path_yd = 1.0 / _PASSES["medium"], _PATH_M * YD_PER_M
        assumed.append(
            "Trees without a density are medium: "
            f"one ball in {one_in:.0f} gets through {path_yd:.0f} yards of crown."
        )
