"""How little is known of a player, and players that would fit what is known."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from functools import lru_cache

import numpy as np

from .model import MOST_MISHITS, Club, Player


@dataclass(frozen=True)
class Doubt:
    """One standard deviation of what is not known of a club, on scales where a normal fits.

    Attributes
    ----------
    carry_pct : float
        Of the stock carry [% of it].
    direction_log, distance_log : float
        Of the logarithms of the spreads of direction and of distance.
    bias_right_deg, bias_long_pct : float
        Of the biases, in their own units.
    mishit_logit : float
        Of the log odds of a mishit.
    """

    carry_pct: float
    direction_log: float
    distance_log: float
    bias_right_deg: float
    bias_long_pct: float
    mishit_logit: float


FIELD_OF = {
    "carry_pct": "carry_yd",
    "direction_log": "direction_sd_deg",
    "distance_log": "distance_sd_pct",
    "bias_right_deg": "bias_right_deg",
    "bias_long_pct": "bias_long_pct",
    "mishit_logit": "mishit_rate",
}
"""The number of a club that each part of the doubt is about."""

LEVEL = Doubt(
    carry_pct=8.0,
    direction_log=0.18,
    distance_log=0.18,
    bias_right_deg=1.0,
    bias_long_pct=2.0,
    mishit_logit=0.4,
)
"""Players of one handicap against their level. Assumed: no table of it was found. For scale: from the
70-83 to the 84-97 scorers of Broadie (2008, Table 1) the spread of direction grows by a factor of 1.19,
exp(0.17), so two golfers in three of one handicap lie within one such group of their own."""

TYPED = Doubt(
    carry_pct=2.0,
    direction_log=0.10,
    distance_log=0.10,
    bias_right_deg=0.5,
    bias_long_pct=1.0,
    mishit_logit=0.25,
)
"""Numbers somebody typed without saying how they were measured. Assumed: half of `LEVEL`, carries better."""


@dataclass(frozen=True)
class ShortDoubt:
    """One standard deviation of what is not known of a player's short game.

    Attributes
    ----------
    spread_log : float
        Of the logarithm of how wide pitches spread, and of chips.
    mishit_logit : float
        Of the log odds that one of them is a mishit.
    putting_log : float
        Of the logarithm of how wide putts spread.
    """

    spread_log: float
    mishit_logit: float
    putting_log: float


SHORT_LEVEL = ShortDoubt(spread_log=0.20, mishit_logit=LEVEL.mishit_logit, putting_log=0.15)
"""Players of one handicap against their level. Assumed as wide as the step from the 70-83 to the 84-97
scorers: of what is left from 20 to 60 yd (Broadie 2008, Table 2), of putts ``tables/putting_levels.toml``."""

SHORT_TYPED = ShortDoubt(spread_log=0.10, mishit_logit=TYPED.mishit_logit, putting_log=0.075)
"""Numbers somebody typed: half of that (assumed)."""

SHARED = 0.6
"""Share of the variance that is the player's rather than the club's: a golfer wider than the level with one
club mostly is so with all, with pitches and with chips. Assumed."""

_SHORT = 0x5407
"""Luck of its own for the short game: how a golfer drives says little of how he chips (assumed)."""


def doubt_of(club: Club) -> Doubt:
    """What is not known of a club: as its file says, else by where each number came from."""
    if club.doubt is not None:
        return club.doubt
    return Doubt(
        **{
            part: getattr(TYPED if club.sources.get(number) == "file" else LEVEL, part)
            for part, number in FIELD_OF.items()
        }
    )


def plausible_players(
    player: Player, count: int, seed: int, *, short_game: bool = True
) -> tuple[Player, ...]:
    """Players that would fit what is known of this one.

    Parameters
    ----------
    count : int
        How many.
    seed : int
        Same seed, same players. Draw k does not depend on how many are drawn.
    short_game : bool
        Whether pitches, chips and putts are drawn too; else they are the player's own.

    Notes
    -----
    Each part of the doubt is normal on its scale, with a share `SHARED` of its variance common to all
    clubs whose numbers come from the level or were typed; a club with a doubt of its own (measured
    shots) is drawn alone. Carries are kept in the bag's order. Players come in pairs, one as far to one side
    of this player as its fellow is to the other: what is linear in the doubt then averages out exactly.
    """
    bags = _plausible_bags(player.clubs, count, seed)
    players = _short_games(player, count, seed) if short_game else [player] * count
    return tuple(replace(one, clubs=clubs) for clubs, one in zip(bags, players, strict=True))


def _short_games(player: Player, count: int, seed: int) -> list[Player]:
    """The player with plausible pitches, chips and putts, drawn apart from his clubs in the same pairs."""
    own_part, own_putting = player.part, player.putting
    typed = "file" in own_part.sources.values() or player.short_game != 1.0
    doubt = SHORT_TYPED if typed else SHORT_LEVEL
    putts = SHORT_TYPED if "file" in own_putting.sources.values() else SHORT_LEVEL
    odds = own_part.mishit_rate / np.maximum(1.0 - own_part.mishit_rate, 1e-9)
    found = []
    for k in range(count):
        rng, side = np.random.default_rng([seed, k // 2, _SHORT]), 1.0 - 2.0 * (k % 2)
        both, pitch, chip, mishit, putt = side * rng.standard_normal(5)
        wide = SHARED**0.5 * both + (1.0 - SHARED) ** 0.5 * pitch
        apart = (1.0 - SHARED) ** 0.5 * (chip - pitch)
        wider, more = np.exp(doubt.spread_log * wide), odds * np.exp(doubt.mishit_logit * mishit)
        part = replace(
            own_part,
            direction_sd_deg=own_part.direction_sd_deg * wider,
            distance_sd_pct=own_part.distance_sd_pct * wider,
            mishit_distance_sd_pct=own_part.mishit_distance_sd_pct * wider,
            mishit_rate=np.minimum(more / (1.0 + more), MOST_MISHITS),
        )
        missed = float(np.exp(putts.putting_log * putt))
        putting = replace(
            own_putting,
            angle_sd_deg=own_putting.angle_sd_deg * missed,
            distance_sd=own_putting.distance_sd * missed,
            angle_growth_deg_per_ft=own_putting.angle_growth_deg_per_ft * missed,
        )
        chipping = player.chipping * float(np.exp(doubt.spread_log * apart))
        found.append(replace(player, part=part, putting=putting, chipping=chipping))
    return found


@lru_cache(maxsize=16)  # the same on every hole of a course
def _plausible_bags(clubs: tuple[Club, ...], count: int, seed: int) -> tuple[tuple[Club, ...], ...]:
    return tuple(
        _draw(clubs, np.random.default_rng([seed, k // 2]), 1.0 - 2.0 * (k % 2)) for k in range(count)
    )


def _draw(bag: tuple[Club, ...], rng: np.random.Generator, side: float) -> tuple[Club, ...]:
    parts = [f.name for f in fields(Doubt)]

    def drawn() -> dict[str, float]:
        return dict(zip(parts, side * rng.standard_normal(len(parts)), strict=True))

    common = drawn()
    clubs = []
    shortest = np.inf
    for club in bag:
        own = drawn()
        measured = club.doubt is not None
        mixed = {
            part: own[part] if measured else SHARED**0.5 * common[part] + (1.0 - SHARED) ** 0.5 * own[part]
            for part in parts
        }
        changed = moved(club, mixed)
        if changed.carry_yd > shortest - 0.5:
            changed = replace(changed, carry_yd=shortest - 0.5)
        shortest = changed.carry_yd
        clubs.append(changed)
    return tuple(clubs)


def moved(club: Club, by: Mapping[str, float]) -> Club:
    """A club moved along each part of its doubt by so many standard deviations."""
    doubt = doubt_of(club)
    step = {part: by.get(part, 0.0) * getattr(doubt, part) for part in FIELD_OF}
    odds = club.mishit_rate / max(1.0 - club.mishit_rate, 1e-9) * np.exp(step["mishit_logit"])
    wider = float(np.exp(step["distance_log"]))
    longer = float(np.exp(step["carry_pct"] / 100.0))
    return replace(
        club,
        carry_yd=club.carry_yd * longer,
        curve_yd=club.curve_yd * longer,
        low_carry_yd=None if club.low_carry_yd is None else club.low_carry_yd * longer,
        direction_sd_deg=club.direction_sd_deg * float(np.exp(step["direction_log"])),
        distance_sd_pct=club.distance_sd_pct * wider,
        mishit_distance_sd_pct=club.mishit_distance_sd_pct * wider,
        bias_right_deg=club.bias_right_deg + step["bias_right_deg"],
        bias_long_pct=club.bias_long_pct + step["bias_long_pct"],
        mishit_rate=float(min(odds / (1.0 + odds), MOST_MISHITS)),
    )
