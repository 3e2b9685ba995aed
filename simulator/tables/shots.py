"""The list of shots a player has: a shot is club x flight x part, not a club."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from ..physics.heights import PUNCH, PUNCH_LOFT_DEG, SHAPES
from ..physics.launch import LOFT_DEG
from ..physics.strike import PART_CARRIES_RATIO, SHORTEST_PART_CARRY_YD
from ..player.model import Club, PartSpread, Player, Putting
from ..player.runs import punch_gain, punch_run_yd
from ..units import FT_PER_YD

GRIPPED_LOFT_DEG = 45.0
"""Clubs of this loft and more are gripped down or swung three quarters between full carries (common
practice). Longer ones gain nothing by it: their gaps are no wider than their spread along."""

LONGEST_STRIKE = 1.3
"""Strikes are tabled up to this share of the carry that is tabled as 1."""

SPREADS_TABLED = 3.0
"""Of swings short of full, strikes are tabled up to so many standard deviations over the carry that is meant,
from a clean lie: from the worst of lies two. A full swing's end is nearer 1.3 of its carry than that."""


PUTTS_YD = tuple(np.geomspace(5.0, 100.0, 11).tolist())
"""Putts from off the green tabled, by how far each would roll on the green [yd]; shorter ones are scaled. The
longest is as hard as 30 yd up a slope, half of them fairway."""

GRASS_SD = 0.1
"""How much less sure the pace of a putt is that starts off the green, as a share of its roll (assumed)."""

PUTTER = Club("putter", "putter", PUTTS_YD[-1], *(0.0,) * 7, 1.0)
"""Stands for the player's putter; its spread is `Putting`'s."""


@dataclass(frozen=True)
class Shot:
    """One row of the shot tables.

    Attributes
    ----------
    club : Club
    flight : str
        ``"stock"``, ``"low"``, ``"high"``, ``"part"``, ``"gripped"``, ``"punch"`` or ``"putt"``.
    carry_yd : float
        Stock carry of the shot; a part swing's intended carry may be scaled below it. Of a putt, how far it
        would roll on a level green at the default Stimpmeter reading.
    spread : Club or PartSpread
        Where its spreads are read from.
    stretch : float
        The carry that the flight tables have as 1, over the stock carry.
    """

    club: Club
    flight: str
    carry_yd: float
    spread: Club | PartSpread
    stretch: float = 1.0

    @property
    def tabled_yd(self) -> float:
        """The carry that the flight tables have as 1 [yd]."""
        return self.carry_yd * self.stretch


@dataclass(frozen=True)
class ShotList:
    """Every shot of a player: full swings longest first, then three families, shortest first.

    Attributes
    ----------
    shots : tuple of Shot
    first_part, first_punch, first_putt : int
        Rows where the part swings, the punches, and the putts from off the green start.
    """

    shots: tuple[Shot, ...]
    first_part: int
    first_punch: int
    first_putt: int

    @classmethod
    def of_full(cls, shots: tuple[Shot, ...]) -> ShotList:
        """Full swings alone."""
        return cls(shots, len(shots), len(shots), len(shots))

    @property
    def families(self) -> tuple[tuple[int, int], ...]:
        """First row of each family, and the row behind its last one, in the order of their codes."""
        starts = (self.first_part, self.first_punch, self.first_putt)
        return tuple(zip(starts, (*starts[1:], len(self.shots)), strict=True))

    def __len__(self) -> int:
        return len(self.shots)


def list_shots(player: Player, *, shaped: bool = False) -> ShotList:
    """Every shot of a player.

    Part swings are made with the shortest club, at carries in a fixed ratio up to its full carry, and beyond
    it by gripping down on the next club that is long enough, with that club's own spread; punches in the same
    way with a middle iron.

    Parameters
    ----------
    shaped : bool
        Shots held down too: worth their time only where there is wind or a tree.
    """
    full = [
        Shot(club, flight, full_carry_yd(club, flight), club)
        for club in player.clubs
        for flight in club.flights
        if flight != "low" or shaped
    ]
    last = player.clubs[-1]
    longest_yd = last.carry_yd
    parts = [
        _short(last, "part", carry_yd, player.part.at(carry_yd), longest_yd)
        for carry_yd in _part_carries(longest_yd)
    ]
    parts += [Shot(club, "gripped", club.carry_yd, club) for club in reversed(_gripped(player))]
    iron = min(player.clubs, key=lambda club: abs(LOFT_DEG[club.kind] - PUNCH_LOFT_DEG))
    longest_yd = iron.carry_yd * PUNCH.carry_factor
    punches = [
        _short(iron, "punch", carry_yd, _punched(player, carry_yd), longest_yd)
        for carry_yd in _part_carries(longest_yd)
    ]
    putts = [_putted(player.putting, roll_yd) for roll_yd in PUTTS_YD]
    first_putt = len(full) + len(parts) + len(punches)
    shots = tuple(full + parts + punches + putts)
    return ShotList(shots, len(full), len(full) + len(parts), first_putt)


def in_other_hands(shot: Shot, player: Player) -> Shot:
    """A swing short of full as spread as another player's who means it to go as far."""
    if shot.flight == "putt":
        return replace(shot, spread=_putt_spread(player.putting, shot.carry_yd))
    if shot.flight == "punch":
        return replace(shot, spread=_punched(player, shot.carry_yd))
    if shot.flight == "part":
        return replace(shot, spread=player.part.at(shot.carry_yd))
    theirs = player.club(shot.club.name)
    spread = replace(
        shot.spread,
        direction_sd_deg=theirs.direction_sd_deg,
        distance_sd_pct=theirs.distance_sd_pct,
        mishit_rate=theirs.mishit_rate,
        mishit_distance_sd_pct=theirs.mishit_distance_sd_pct,
    )
    return replace(shot, spread=spread)


def _putted(putting: Putting, roll_yd: float) -> Shot:
    return _short(PUTTER, "putt", roll_yd, _putt_spread(putting, roll_yd), PUTTS_YD[-1])


def _putt_spread(putting: Putting, roll_yd: float) -> PartSpread:
    """Of a putt from off the green: as of one on it as hard, the pace less sure by the longer grass."""
    growth_deg = putting.angle_growth_deg_per_ft * roll_yd * FT_PER_YD
    return PartSpread(
        carry_yd=roll_yd,
        direction_sd_deg=math.hypot(putting.angle_sd_deg, growth_deg),
        distance_sd_pct=100.0 * math.hypot(putting.distance_sd, GRASS_SD),
        bias_right_deg=0.0,
        bias_long_pct=0.0,
        mishit_rate=0.0,
        mishit_loss_pct=0.0,
        mishit_distance_sd_pct=0.0,
        mishit_direction_factor=1.0,
    )


def _short(club: Club, flight: str, carry_yd: float, spread: PartSpread, longest_yd: float) -> Shot:
    """A swing short of full, its strikes tabled as far as its spread asks and the longest one goes."""
    widest = (1.0 + SPREADS_TABLED * spread.distance_sd_pct / 100.0) / LONGEST_STRIKE
    return Shot(club, flight, carry_yd, spread, max(1.0, min(widest, longest_yd / carry_yd)))


def _gripped(player: Player) -> tuple[Club, ...]:
    """Clubs that are gripped down for carries between two full swings, longest first."""
    wedges = [club for club in player.clubs if LOFT_DEG[club.kind] >= GRIPPED_LOFT_DEG]
    return tuple(club for club in wedges if club.carry_yd > player.clubs[-1].carry_yd)


def part_club(player: Player, carry_yd: float) -> Club | None:
    """The club a part swing of a carry is made with on a clean lie, None beyond the longest gripped down."""
    able = [club for club in (player.clubs[-1], *reversed(_gripped(player))) if club.carry_yd >= carry_yd]
    return able[0] if able else None


def full_carry_yd(club: Club, flight: str) -> float:
    """Stock carry of a full shot [yd]: held down, the player's own number if there is one."""
    if flight == "low" and club.low_carry_yd is not None:
        return club.low_carry_yd
    return club.carry_yd * SHAPES[flight].carry_factor


def _punched(player: Player, carry_yd: float) -> PartSpread:
    """Spread of a punch or chip: it ends as spread as the part swing that goes as far, run and all (assumed).

    Of a tenth more carry it goes less than a tenth farther in all, so its carry may be so much wider.
    """
    spread = player.part.at(carry_yd + punch_run_yd(carry_yd))
    wider = player.chipping / punch_gain(carry_yd)
    return replace(
        spread,
        direction_sd_deg=player.chipping * spread.direction_sd_deg,
        distance_sd_pct=wider * spread.distance_sd_pct,
        mishit_distance_sd_pct=wider * spread.mishit_distance_sd_pct,
    )


def _part_carries(longest_yd: float) -> list[float]:
    """Carries of a family of part swings, shortest first."""
    count = int(np.ceil(np.log(longest_yd / SHORTEST_PART_CARRY_YD) / np.log(PART_CARRIES_RATIO)))
    return [float(c) for c in np.geomspace(SHORTEST_PART_CARRY_YD, longest_yd, max(count, 1) + 1)]
