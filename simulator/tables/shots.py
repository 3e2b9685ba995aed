"""The list of shots a player has: a shot is club x flight x part, not a club."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from ..physics.strike import PART_CARRIES_RATIO, SHORTEST_PART_CARRY_YD
from ..player.model import Club, PartSpread, Player


@dataclass(frozen=True)
class Shot:
    """One row of the shot tables.

    Attributes
    ----------
    club : Club
    flight : str
        ``"stock"`` or ``"part"``.
    carry_yd : float
        Stock carry of the shot; a part swing's intended carry may be scaled below it.
    spread : Club or PartSpread
        Where its spreads are read from.
    """

    club: Club
    flight: str
    carry_yd: float
    spread: Club | PartSpread


def list_shots(player: Player) -> tuple[tuple[Shot, ...], int]:
    """Every shot of a player: full swings longest first, then part swings shortest first.

    Part swings are made with the shortest club, at carries in a fixed ratio up to its full carry.

    Returns
    -------
    shots : tuple of Shot
    first_part : int
        Row of the shortest part swing.
    """
    shots = [Shot(club, "stock", club.carry_yd, club) for club in player.clubs]
    last = player.clubs[-1]
    count = int(np.ceil(np.log(last.carry_yd / SHORTEST_PART_CARRY_YD) / np.log(PART_CARRIES_RATIO)))
    carries = np.geomspace(SHORTEST_PART_CARRY_YD, last.carry_yd, max(count, 1) + 1)
    first_part = len(shots)
    shots += [Shot(last, "part", float(carry), player.part.at(float(carry))) for carry in carries]
    return tuple(shots), first_part
