"""Who plays: a bag of clubs, part swings and putting, all as plain frozen values.

A strike is *solid* or a *mishit*. For a target carry c (a club's stock carry, or a part swing's), as
shares of c:

    solid    carry  mean 1 + bias_long                 sd distance_sd           direction sd = direction_sd
    mishit   carry  mean 1 + bias_long - mishit_loss   sd mishit_distance_sd    direction sd = factor * that

Directions are centred on ``bias_right_deg``. Spreads in files are of solid strikes.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from ..errors import UsageError, check_text
from ..physics.putting import ANGLE_GROWTH_DEG_PER_FT
from .names import club_key, like_it, same_club

if TYPE_CHECKING:
    from .doubt import Doubt

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Club:
    """One full swing.

    Parameters
    ----------
    name : str
        As the player says it, in the simple form of ``names.club_name`` ("7-iron").
    kind : str
        Launch family, one of ``physics.launch.KINDS``.
    carry_yd : float
        Stock carry [yd].
    direction_sd_deg, distance_sd_pct : float
        Standard deviations of solid strikes: direction [deg], carry [% of stock].
    bias_right_deg, bias_long_pct : float
        Mean of solid strikes beside the aim [deg, right positive] and beyond stock [%, long positive].
    mishit_rate : float
        Share of strikes that are mishits, 0 to 1.
    mishit_loss_pct, mishit_distance_sd_pct : float
        Mean loss of carry on a mishit against a solid strike, and its standard deviation [% of stock].
    mishit_direction_factor : float
        Direction standard deviation of a mishit over that of a solid strike.
    sources : Mapping[str, str]
        For each number: ``"file"`` or ``"level"``.
    flights : tuple of str
        Ways the player hits it: ``"stock"`` first, then any of ``"low"`` and ``"high"``.
    doubt : Doubt or None
        What is not known of these numbers, where it was measured; None: by their sources.
    curve_yd : float
        How far a solid strike curves between its start line and where it comes down [yd, right positive];
        the start line is set so that all strikes together finish at the aim (beside ``bias_right_deg``).
    low_carry_yd : float or None
        Carry of the shot held down [yd]; None: a share of the stock carry.
    use : str
        One of ``USES``.
    """

    name: str
    kind: str
    carry_yd: float
    direction_sd_deg: float
    distance_sd_pct: float
    bias_right_deg: float
    bias_long_pct: float
    mishit_rate: float
    mishit_loss_pct: float
    mishit_distance_sd_pct: float
    mishit_direction_factor: float
    sources: Mapping[str, str] = field(default_factory=dict, hash=False)
    flights: tuple[str, ...] = ("stock",)
    doubt: Doubt | None = None
    curve_yd: float = 0.0
    low_carry_yd: float | None = None
    use: str = "anywhere"


USES = ("anywhere", "tee only", "never")
"""Where a club is used; one that never is stays at home (``Player.left_out``)."""

MOST_CLUBS = 13
"""Clubs besides the putter: Rules of Golf 4.1b allows 14 in all."""

MOST_MISHITS = 0.9
"""No club's mishit rate is above this, read or drawn (assumed): nothing would be left to call solid."""

CLUB_NUMBERS = (
    "carry_yd", "direction_sd_deg", "distance_sd_pct", "bias_right_deg", "bias_long_pct", "mishit_rate",
    "mishit_loss_pct", "mishit_distance_sd_pct", "mishit_direction_factor",
)  # fmt: skip
"""The number fields of ``Club``."""


@dataclass(frozen=True)
class PartSpread:
    """Spread of one part swing; the fields mean the same as those of ``Club``."""

    carry_yd: float
    direction_sd_deg: float
    distance_sd_pct: float
    bias_right_deg: float
    bias_long_pct: float
    mishit_rate: float
    mishit_loss_pct: float
    mishit_distance_sd_pct: float
    mishit_direction_factor: float


@dataclass(frozen=True)
class PartSwing:
    """Spread of part swings (any carry below the shortest full shot) as curves over the carry.

    Parameters
    ----------
    carry_yd : ndarray, shape (n,)
        Nodes, strictly increasing [yd].
    direction_sd_deg, distance_sd_pct, mishit_rate, mishit_loss_pct, mishit_distance_sd_pct : ndarray,
    shape (n,)
        As in ``Club``, at the nodes.
    mishit_direction_factor : float
        As in ``Club``.
    sources : Mapping[str, str]
        For each field: ``"file"`` or ``"level"``.
    """

    carry_yd: Floats
    direction_sd_deg: Floats
    distance_sd_pct: Floats
    mishit_rate: Floats
    mishit_loss_pct: Floats
    mishit_distance_sd_pct: Floats
    mishit_direction_factor: float
    sources: Mapping[str, str] = field(default_factory=dict)

    def at(self, carry_yd: float) -> PartSpread:
        """Spread for one carry [yd]: straight lines between nodes, constant beyond the ends; no bias."""

        def read(values: Floats) -> float:
            return float(np.interp(carry_yd, self.carry_yd, values))

        return PartSpread(
            carry_yd=float(carry_yd),
            direction_sd_deg=read(self.direction_sd_deg),
            distance_sd_pct=read(self.distance_sd_pct),
            bias_right_deg=0.0,
            bias_long_pct=0.0,
            mishit_rate=read(self.mishit_rate),
            mishit_loss_pct=read(self.mishit_loss_pct),
            mishit_distance_sd_pct=read(self.mishit_distance_sd_pct),
            mishit_direction_factor=self.mishit_direction_factor,
        )


@dataclass(frozen=True)
class Putting:
    """Putting skill.

    Parameters
    ----------
    angle_sd_deg : float
        Standard deviation of the start angle [deg], of a putt of no length.
    distance_sd : float
        Standard deviation of the distance a putt rolls, as a share of it.
    angle_growth_deg_per_ft : float
        Growth of the angle's standard deviation with the length of the putt [deg/ft].
    sources : Mapping[str, str]
        ``"file"`` or ``"level"`` for the first two.
    """

    angle_sd_deg: float
    distance_sd: float
    angle_growth_deg_per_ft: float = ANGLE_GROWTH_DEG_PER_FT
    sources: Mapping[str, str] = field(default_factory=dict, hash=False)


@dataclass(frozen=True)
class Player:
    """A player and the bag.

    Parameters
    ----------
    name : str
    handicap : float or None
        Handicap index; a plus handicap is negative.
    clubs : tuple of Club
        Longest carry first, carries strictly decreasing, putter left out.
    part : PartSwing
    putting : Putting
    short_game : float
        Spread of part swings over that of the level they were filled from: 1 is the level, less is tighter.
        Already applied to ``part``.
    source : str
        Where the player was read from.
    assumed : tuple of str
        One sentence each on what the reader had to assume.
    left_out : tuple of str
        Names of clubs the player has but leaves out of the bag.
    habit : str or None
        What the player does from the tee without a plan: a club, with an aim perhaps (``"3-wood@-8"``).
    tee : str or None
        Name of the tee the player plays from, on holes that have one of that name.
    chipping : float
        Spread of chips and punches over that of the part swings that go as far.
    """

    name: str
    handicap: float | None
    clubs: tuple[Club, ...]
    part: PartSwing
    putting: Putting
    short_game: float
    source: str
    assumed: tuple[str, ...]
    left_out: tuple[str, ...] = ()
    habit: str | None = None
    tee: str | None = None
    chipping: float = 1.0

    def __repr__(self) -> str:
        """Name, handicap and clubs."""
        level = "no handicap" if self.handicap is None else f"handicap {self.handicap:g}"
        return f"<Player {self.name!r}: {level}, {', '.join(club.name for club in self.clubs)}>"

    def club(self, name: str) -> Club:
        """The club of that name, in any simple form ("3w", "3-wood", "three wood").

        Raises
        ------
        UsageError
            No such club in this bag; lists those there are.
        """
        check_text("club", name, self.clubs[0].name)
        wanted = club_key(name)
        for club in self.clubs:
            if club_key(club.name) == wanted:
                return club
        names = [club.name for club in self.clubs]
        if any(club_key(left) == wanted for left in self.left_out):
            raise UsageError(f"{name!r} is left out of the bag; clubs in it: {', '.join(names)}")
        kinds = {club.name: club.kind for club in self.clubs}
        loose = same_club(name, kinds)
        if loose is not None:
            return self.club(loose)
        raise UsageError(
            f"no club {name!r} in the bag of {self.name}{like_it(name, kinds)}; "
            f"clubs there: {', '.join(names)}"
        )

    def without(self, names: Iterable[str]) -> Player:
        """The player with some clubs left out of the bag, named as for ``club``.

        Raises
        ------
        UsageError
            No such club, or none left that may be played from everywhere.
        """
        left = list(dict.fromkeys(self.club(name).name for name in names))
        clubs = tuple(club for club in self.clubs if club.name not in left)
        if all(club.use != "anywhere" for club in clubs):
            raise UsageError(f"without {', '.join(left)}: no club is left to play with from everywhere")
        return replace(self, clubs=clubs, left_out=tuple(dict.fromkeys((*self.left_out, *left))))
