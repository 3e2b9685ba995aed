"""What practice might change of a player: the same bag, one thing better."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

import numpy as np

from ..player.levels import LOWEST_HANDICAP, level
from ..player.model import Club, Player

LEAST_SHARE = 0.3
"""No spread is taken below this share of what it is."""

LEVEL_BETTER = 5.0
"""How much better the short game of the comparison is [handicap strokes]."""

CHIP_YD = 40.0
"""Part swings up to here [yd] are most of a short game; chosen."""

ALIKE = 0.96
"""A better level's spread and mishits of short swings over these shares of the own are as good as the same;
the levels of 15 and 10 are 0.87 apart; chosen."""


def total_direction_deg(club: Club) -> float:
    """Direction standard deviation of all strikes, mishits too [deg]."""
    widening = 1.0 + club.mishit_rate * (club.mishit_direction_factor**2 - 1.0)
    return club.direction_sd_deg * float(widening**0.5)


def each_club(player: Player, change: Callable[[Club], Club]) -> Player:
    """The player with every full swing changed."""
    return replace(player, clubs=tuple(change(club) for club in player.clubs))


def longer(player: Player, yards: float) -> Player:
    """So many yards more with the longest club, and with every full swing in proportion."""
    ratio = 1.0 + yards / player.clubs[0].carry_yd

    def change(club: Club) -> Club:
        low = None if club.low_carry_yd is None else ratio * club.low_carry_yd
        return replace(club, carry_yd=ratio * club.carry_yd, low_carry_yd=low)

    return each_club(player, change)


def longer_driver(player: Player, yards: float) -> Player:
    """So many yards more with the longest club alone."""
    first = player.clubs[0]
    return replace(player, clubs=(replace(first, carry_yd=first.carry_yd + yards), *player.clubs[1:]))


def straighter(player: Player, degrees: float) -> Player:
    """The direction spread of every full swing, mishits and all, so many degrees less."""

    def change(club: Club) -> Club:
        total = total_direction_deg(club)
        share = max(1.0 - degrees / total, LEAST_SHARE) if total > 0.0 else 1.0
        return replace(club, direction_sd_deg=share * club.direction_sd_deg)

    return each_club(player, change)


def fewer_mishits(player: Player, share: float) -> Player:
    """The mishit rates of all swings, part swings too, times `share`."""
    part = replace(player.part, mishit_rate=share * player.part.mishit_rate)
    return replace(
        each_club(player, lambda club: replace(club, mishit_rate=share * club.mishit_rate)), part=part
    )


def tour_putting(player: Player) -> Player:
    """Putting of the best level there is, that of tour players."""
    return replace(player, putting=level(LOWEST_HANDICAP).putting)


def better_short_game(player: Player) -> Player:
    """Part swings of a level LEVEL_BETTER strokes better, as the level has them.

    The player's own part swings stay where they are in proportion to the level's: what is changed is the
    ratio of the two levels, men's: that of women's levels is the same to 0.005.
    """
    if player.handicap is None:
        raise ValueError("a player without a handicap has no level")
    own = level(player.handicap).part
    to = level(max(player.handicap - LEVEL_BETTER, LOWEST_HANDICAP)).part
    at = player.part.carry_yd

    def ratio(name: str) -> np.ndarray:
        better, now = (np.interp(at, part.carry_yd, getattr(part, name)) for part in (to, own))
        return np.asarray(better / now)

    part = player.part
    return replace(
        player,
        part=replace(
            part,
            direction_sd_deg=part.direction_sd_deg * ratio("direction_sd_deg"),
            distance_sd_pct=part.distance_sd_pct * ratio("distance_sd_pct"),
            mishit_rate=part.mishit_rate * ratio("mishit_rate"),
            mishit_distance_sd_pct=part.mishit_distance_sd_pct * ratio("mishit_distance_sd_pct"),
        ),
    )


def no_short_game(player: Player) -> str:
    """Why `better_short_game` says nothing of a player; empty where it does.

    The tour's level has none better, and where two levels' part swings are nearly the same a gain of one
    over the other says nothing about practice.
    """
    if player.handicap is None:
        return "the player has no handicap"
    better, own = better_short_game(player).part, player.part
    short = own.carry_yd <= CHIP_YD
    spread = (better.distance_sd_pct / own.distance_sd_pct)[short].mean()
    if spread > ALIKE and (better.mishit_rate / own.mishit_rate)[short].mean() > ALIKE:
        return "the two levels chip alike, which says nothing of what practice would bring"
    return ""


def unbiased(player: Player) -> Player:
    """Full swings that average on the aim and at the stock carry."""
    return each_club(player, lambda club: replace(club, bias_right_deg=0.0, bias_long_pct=0.0))


def biased(player: Player) -> bool:
    """Whether any full swing is off its aim on average."""
    return any(club.bias_right_deg != 0.0 or club.bias_long_pct != 0.0 for club in player.clubs)


@dataclass(frozen=True)
class Change:
    """One thing better.

    Attributes
    ----------
    words : str
        As a reader would say it.
    make : callable
        From the player to the better one.
    shorter : int
        Clubs less that may now do for the same shot.
    nothing : callable
        Why it means nothing for a player; empty where it does.
    """

    words: str
    make: Callable[[Player], Player]
    shorter: int = 0
    nothing: Callable[[Player], str] = lambda player: ""


CHANGES: Mapping[str, Change] = MappingProxyType(
    {
        "carry_all_10_yd": Change(
            "10 yd more with the driver, all full swings in proportion", lambda p: longer(p, 10.0), 1
        ),
        "carry_driver_10_yd": Change("10 yd more with the driver alone", lambda p: longer_driver(p, 10.0)),
        "direction_1_deg": Change("direction of full swings 1 degree tighter", lambda p: straighter(p, 1.0)),
        "mishits_halved": Change("half the mishits", lambda p: fewer_mishits(p, 0.5)),
        "short_game_5_better": Change(
            "short game of a level 5 strokes better", better_short_game, nothing=no_short_game
        ),
        "putting_tour": Change("putting of a tour player", tour_putting),
    }
)
"""What is tried; the bias has a comparison of its own (`practice.BIAS`)."""
