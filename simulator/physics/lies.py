"""What a lie does to a shot: carry, spread, mishits, spin and which clubs may be used, by group of clubs.

Everything multiplies the same club's clean strike. The carry factor has a spread of its own because two
balls in the same rough lie differently; it is drawn once a shot, beside the strike's own spread.

Published anchors (the tests hold the figures): rough and fairway leaves of amateurs, Broadie 2008 table 2;
leaves from greenside sand, Broadie 2008 table 1; the tour's cost of rough, sand and recovery shots,
Broadie 2012 (Interfaces 42(2)) table 9; spin from wet grass and from rough, two published radar tests of
one player each. The rest is from memory or assumed, as said beside each row.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from .launch import family

GROUPS = ("driver", "wood", "hybrid", "iron", "wedge", "part")
"""Groups of clubs a lie tells apart; ``part`` is any part swing, whatever the club."""

LIES = ("tee", "fairway", "rough", "heavy rough", "bunker", "trees", "dry penalty", "green")
"""Lies, in the words of the hole's codes (lower case, spaces)."""


@dataclass(frozen=True)
class LieEffect:
    """Factors on a clean strike.

    Parameters
    ----------
    allowed : bool
        May this group be used from here at all.
    carry_factor, carry_factor_sd : float
        Mean of the factor on carry and its standard deviation from lie to lie.
    direction_factor, distance_factor : float
        On the direction and distance standard deviations, of solid strikes and mishits alike.
    mishit_factor : float
        On the mishit rate (cap the product below 1).
    spin_factor : float
        On the spin at landing.
    """

    allowed: bool = True
    carry_factor: float = 1.0
    carry_factor_sd: float = 0.0
    direction_factor: float = 1.0
    distance_factor: float = 1.0
    mishit_factor: float = 1.0
    spin_factor: float = 1.0


CLEAN = LieEffect()
NOT_ALLOWED = replace(CLEAN, allowed=False)

# Teed irons: near circular and tighter than from turf (Broadie, the 90-shooter from 150 yd); amounts assumed.
_TEED_IRON = LieEffect(direction_factor=0.95, distance_factor=0.8, mishit_factor=0.6)
_TEED_WOOD = LieEffect(direction_factor=0.95, distance_factor=0.9, mishit_factor=0.7)  # assumed

# Light rough: ball speed 0.96 +- 0.03 and scatter x 1.3 for irons (from memory), a little less scatter
# here because amateurs' leaves grow by 6 to 20 % only (table 2). Spin: 9-iron and wedges about half,
# middle irons 0.8 (radar).
_ROUGH = {
    "wood": LieEffect(True, 0.90, 0.06, 1.3, 1.3, 1.5, 0.9),
    "hybrid": LieEffect(True, 0.93, 0.05, 1.2, 1.2, 1.3, 0.85),
    "iron": LieEffect(True, 0.95, 0.05, 1.15, 1.15, 1.25, 0.8),
    "wedge": LieEffect(True, 0.97, 0.05, 1.15, 1.15, 1.25, 0.55),
    "part": LieEffect(True, 1.0, 0.05, 1.15, 1.2, 1.3, 0.55),
}

# Heavy rough: 0.80 +- 0.08, scatter x 1.7, spin 0.4 (from memory).
_HEAVY_ROUGH = {
    "hybrid": LieEffect(True, 0.74, 0.10, 1.8, 1.6, 2.5, 0.5),
    "iron": LieEffect(True, 0.80, 0.08, 1.7, 1.5, 2.0, 0.4),
    "wedge": LieEffect(True, 0.85, 0.08, 1.6, 1.5, 2.0, 0.4),
    "part": LieEffect(True, 0.95, 0.10, 1.4, 1.4, 2.0, 0.4),
}

# Sand: "one more club" is ball speed 0.95, so carry about 0.93; spin 0.9; fat shots (all from memory).
# Part swings: amounts set so that leaves from about 15 yd meet table 1 (16, 30 and 40 % of the distance).
_BUNKER = {
    "hybrid": LieEffect(True, 0.88, 0.06, 1.4, 1.4, 2.5, 0.9),
    "iron": LieEffect(True, 0.93, 0.05, 1.25, 1.3, 2.0, 0.9),
    "wedge": LieEffect(True, 0.93, 0.05, 1.25, 1.3, 2.0, 0.9),
    "part": LieEffect(True, 1.0, 0.08, 1.35, 1.45, 2.5, 0.8),
}

# Trees: a punch through a gap, often sideways. Assumed; the tour's recovery shots cost 1.0 stroke more
# than the fairway at 100 yd and 0.7 at 200. Branches themselves are not in these numbers.
_TREES = {
    "hybrid": LieEffect(True, 0.65, 0.20, 2.2, 1.6, 2.5, 0.7),
    "iron": LieEffect(True, 0.65, 0.20, 2.2, 1.6, 2.5, 0.7),
    "wedge": LieEffect(True, 0.60, 0.20, 2.2, 1.6, 2.5, 0.7),
    "part": LieEffect(True, 0.85, 0.15, 2.0, 1.6, 2.5, 0.6),
}

EFFECTS: dict[str, dict[str, LieEffect]] = {
    "tee": {
        "driver": CLEAN,  # drives are measured from a tee
        "wood": _TEED_WOOD,
        "hybrid": _TEED_IRON,
        "iron": _TEED_IRON,
        "wedge": _TEED_IRON,
        "part": CLEAN,
    },
    "fairway": {group: CLEAN for group in GROUPS if group != "driver"},  # driver off turf: a rare skill
    "rough": _ROUGH,
    "heavy rough": _HEAVY_ROUGH,
    "bunker": _BUNKER,
    "trees": _TREES,
    "dry penalty": _HEAVY_ROUGH,  # assumed as bad as heavy rough; anything worse is for the relief options
    "green": {},  # from the green everybody putts
}
"""Effects by lie and group; a group that is not there may not be used from that lie."""


def lie_group(kind: str, part: bool = False) -> str:
    """Group of a kind of club (``launch.KINDS``), or ``part`` for a part swing with it.

    Raises
    ------
    ValueError
        Unknown kind.
    """
    return "part" if part else family(kind)


def lie_effect(lie: str, group: str) -> LieEffect:
    """Effect of a lie on a group of clubs; ``allowed`` is False where the group may not be used.

    Raises
    ------
    ValueError
        Unknown lie or group.
    """
    if lie not in EFFECTS:
        raise ValueError(f"unknown lie {lie!r}: {', '.join(LIES)}")
    if group not in GROUPS:
        raise ValueError(f"unknown group of clubs {group!r}: {', '.join(GROUPS)}")
    return EFFECTS[lie].get(group, NOT_ALLOWED)
