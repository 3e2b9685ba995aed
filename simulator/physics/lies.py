"""What a lie does to a shot: carry, spread, mishits, spin and which clubs may be used, by group of clubs.

Everything multiplies the same club's clean strike. The carry factor has a spread of its own because two
balls in the same rough lie differently; it is drawn once a shot, beside the strike's own spread.

Published anchors (the tests hold the figures): rough and fairway leaves of amateurs, Broadie 2008 table 2;
leaves from greenside sand, Broadie 2008 table 1; the tour's cost of rough, sand and recovery shots,
Broadie 2012 (Interfaces 42(2)) table 9; spin from wet grass and from rough, two published radar tests of
one player each. The rest is from memory or assumed, as said beside each row.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from pathlib import Path

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
# Woods: as tight off a peg as their place between irons and driver says (the levels widen them off turf).
_TEED_WOOD = LieEffect(direction_factor=0.83, distance_factor=0.78, mishit_factor=0.7)  # assumed

_FILE = Path(__file__).with_name("lies.toml")

FITTED = (
    "rough_lie_sd", "rough_part_lie_sd", "rough_long_carry",
    "sand_chip_lie_sd", "sand_pitch_lie_sd", "sand_full_lie_sd", "sand_full_carry", "sand_long_carry",
    "trees_wider",
)  # fmt: skip
"""Numbers of these lies that are fitted to the tour's strokes (``python -m simulator.fits.levels``): spreads
of the lie for full and part swings from rough; carry kept by woods and hybrids from rough; spread of the lie
for the shortest swings, for pitches and for full swings from sand, and the carry full swings and long clubs
keep there; direction spread from among trees."""


def effects(fitted: Mapping[str, float]) -> dict[str, dict[str, LieEffect]]:
    """Effects by lie and group from the fitted numbers; a group that is not there may not be used."""
    f = fitted
    # Light rough: ball speed 0.96 +- 0.03 and scatter x 1.3 for irons (from memory), a little less scatter
    # here because amateurs' leaves grow by 6 to 20 % only (table 2): a spread of the lie hurts the tour's
    # tight patterns more than wide ones, as published. Spin: 9-iron and wedges half, middle irons 0.8
    # (radar).
    lie, long = f["rough_lie_sd"], f["rough_long_carry"]
    rough = {
        "wood": LieEffect(True, long - 0.03, lie + 0.01, 1.3, 1.3, 1.7, 0.9),
        "hybrid": LieEffect(True, long, lie, 1.2, 1.2, 1.5, 0.85),
        "iron": LieEffect(True, 0.95, lie, 1.1, 1.1, 1.4, 0.8),
        "wedge": LieEffect(True, 0.97, lie, 1.1, 1.1, 1.4, 0.55),
        "part": LieEffect(True, 1.0, f["rough_part_lie_sd"], 1.1, 1.1, 1.4, 0.55),
    }
    # Heavy rough: 0.80 +- 0.08, scatter x 1.7, spin 0.4 (from memory).
    heavy = {
        "hybrid": LieEffect(True, 0.74, 0.12, 1.8, 1.6, 3.0, 0.5),
        "iron": LieEffect(True, 0.80, 0.12, 1.7, 1.5, 2.5, 0.4),
        "wedge": LieEffect(True, 0.85, 0.12, 1.6, 1.5, 2.5, 0.4),
        "part": LieEffect(True, 0.95, f["rough_part_lie_sd"] + 0.04, 1.4, 1.4, 2.5, 0.4),
    }
    # Sand: "one more club" is ball speed 0.95, so carry about 0.93; spin 0.9; fat shots (from memory).
    full, carry = f["sand_full_lie_sd"], f["sand_full_carry"]
    sand = {
        "hybrid": LieEffect(True, f["sand_long_carry"], full, 1.4, 1.4, 2.5, 0.9),
        "iron": LieEffect(True, carry, full, 1.25, 1.3, 2.0, 0.9),
        "wedge": LieEffect(True, carry, full, 1.25, 1.3, 2.0, 0.9),
        "part": LieEffect(True, 1.0, f["sand_chip_lie_sd"], 1.3, 1.3, 3.0, 0.8),
        "pitch": LieEffect(True, 1.0, f["sand_pitch_lie_sd"], 1.4, 1.4, 3.0, 0.8),
    }
    # Trees: bare ground, roots, a hindered swing (assumed). Branches are not in these numbers: crowns stand
    # on the hole, and the way out sideways is the player's to choose.
    wider, kept = f["trees_wider"], 0.80
    trees = {
        "hybrid": LieEffect(True, kept, 0.15, wider, 1.6, 2.5, 0.7),
        "iron": LieEffect(True, kept, 0.15, wider, 1.6, 2.5, 0.7),
        "wedge": LieEffect(True, kept, 0.15, wider, 1.6, 2.5, 0.7),
        "part": LieEffect(True, 0.85, 0.15, wider, 1.6, 2.5, 0.6),
    }
    return {
        "tee": {
            "driver": CLEAN,  # drives are measured from a tee
            "wood": _TEED_WOOD,
            "hybrid": _TEED_IRON,
            "iron": _TEED_IRON,
            "wedge": _TEED_IRON,
            "part": CLEAN,
        },
        "fairway": {group: CLEAN for group in GROUPS if group != "driver"},  # driver off turf: a rare skill
        "rough": rough,
        "heavy rough": heavy,
        "bunker": sand,
        "trees": trees,
        "dry penalty": heavy,  # assumed as bad as heavy rough; anything worse is for the relief options
        "green": {},  # from the green everybody putts
    }


EFFECTS = effects(tomllib.loads(_FILE.read_text(encoding="utf-8")))
"""Effects by lie and group; a group that is not there may not be used from that lie."""

CHIP_YD, PITCH_YD = 20.0, 60.0
"""Up to the first a part swing is as the group ``part``, from the second on as ``pitch`` where a lie knows
one [yd]: an explosion splashes the ball out of sand on its cushion, a pitch must nip it. Straight between."""


def lie_group(kind: str, part: bool = False) -> str:
    """Group of a kind of club (``launch.KINDS``), or ``part`` for a part swing with it.

    Raises
    ------
    ValueError
        Unknown kind.
    """
    return "part" if part else family(kind)


def lie_effect(
    lie: str,
    group: str,
    carry_yd: float = 0.0,
    among: Mapping[str, Mapping[str, LieEffect]] | None = None,
) -> LieEffect:
    """Effect of a lie on a group of clubs; ``allowed`` is False where the group may not be used.

    Parameters
    ----------
    lie, group : str
    carry_yd : float
        Carry of the shot [yd]; only part swings ask.
    among : Mapping, optional
        Effects to read from, ``EFFECTS`` when left out.

    Raises
    ------
    ValueError
        Unknown lie or group.
    """
    among = EFFECTS if among is None else among
    if lie not in among:
        raise ValueError(f"unknown lie {lie!r}: {', '.join(LIES)}")
    if group not in GROUPS:
        raise ValueError(f"unknown group of clubs {group!r}: {', '.join(GROUPS)}")
    one, pitch = among[lie].get(group, NOT_ALLOWED), among[lie].get("pitch")
    if group != "part" or pitch is None or carry_yd <= CHIP_YD:
        return one
    share = min((carry_yd - CHIP_YD) / (PITCH_YD - CHIP_YD), 1.0)
    numbers = {
        f.name: getattr(one, f.name) + share * (getattr(pitch, f.name) - getattr(one, f.name))
        for f in fields(LieEffect)
        if f.name != "allowed"
    }
    return replace(one, **numbers)
