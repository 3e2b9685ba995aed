"""Fill a club from the level: carry in line with the carries given, spread from its carry."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from ..physics.launch import LOFT_DEG
from .levels import Level
from .model import CLUB_NUMBERS, Club
from .names import kind_of


def level_carry_yd(name: str, kind: str, base: Level) -> float:
    """Level carry of a club [yd]; a wedge named by its loft is placed between the kinds of wedge by loft."""
    loft = name.removesuffix("-degree wedge")
    if loft == name or kind_of(name) != kind:
        return base.carry_yd(kind)
    wedges = ("9-iron", "pitching wedge", "gap wedge", "sand wedge", "lob wedge")
    at = [LOFT_DEG[w] for w in wedges]
    yards = [base.carry_yd(w) for w in wedges]
    if float(loft) > at[-1]:
        return yards[-1] + (float(loft) - at[-1]) * (yards[-1] - yards[-2]) / (at[-1] - at[-2])
    return float(np.interp(float(loft), at, yards))


class CarryLine:
    """From the level's carry to this player's, through the clubs whose carry is given.

    Between two given clubs straight, so a missing one keeps its place between them; beyond the longest and
    the shortest given the ratio to that club is kept; with none given it is the level itself.
    """

    def __init__(self, given_yd: Mapping[str, float], level_yd: Mapping[str, float]) -> None:
        names = sorted(given_yd, key=lambda name: level_yd[name])
        self.level_yd = np.array([level_yd[name] for name in names])
        # Out of the level's order (a hybrid past an iron) the line must still rise.
        self.player_yd = np.maximum.accumulate(np.array([given_yd[name] for name in names]))

    def __call__(self, level_carry: float) -> float:
        """Carry [yd] of a club that the level carries ``level_carry`` yards."""
        if not len(self.level_yd):
            return level_carry
        inside = float(np.clip(level_carry, self.level_yd[0], self.level_yd[-1]))
        return float(np.interp(inside, self.level_yd, self.player_yd)) * level_carry / inside


def carries(kinds: Mapping[str, str], given_yd: Mapping[str, float], base: Level | None) -> dict[str, float]:
    """Carry of every club [yd]: given, or on the ``CarryLine`` through those given."""
    if base is None:
        return dict(given_yd)
    own = {name: level_carry_yd(name, kind, base) for name, kind in kinds.items()}
    line = CarryLine(given_yd, own)
    return {name: given_yd[name] if name in given_yd else line(own[name]) for name in kinds}


def driver_yd(kinds: Mapping[str, str], carry_yd: Mapping[str, float], base: Level) -> float:
    """Carry of the driver in this bag [yd], or what it would be if there were one."""
    for name, kind in kinds.items():
        if kind == "driver":
            return carry_yd[name]
    own = {name: level_carry_yd(name, kind, base) for name, kind in kinds.items()}
    return CarryLine(carry_yd, own)(base.driver_carry_yd)


def fill_club(
    name: str,
    kinds: Mapping[str, str],
    carry_yd: Mapping[str, float],
    numbers: Mapping[str, float],
    base: Level | None,
) -> Club:
    """One club from the numbers of its section, the rest from the level.

    Parameters
    ----------
    name : str
    kinds, carry_yd : Mapping
        Launch family and carry [yd] of every club in the bag.
    numbers : Mapping
        What the file gives for this club.
    base : Level or None
        None only when ``numbers`` is complete.
    """
    values: dict[str, float] = {}
    if base is not None:
        values = base.spread(kinds[name], carry_yd[name], driver_yd(kinds, carry_yd, base))
        if "distance_sd_pct" in numbers:  # a mishit keeps its ratio to this player's solid strike
            values["mishit_distance_sd_pct"] *= numbers["distance_sd_pct"] / values["distance_sd_pct"]
    values = {**values, **numbers, "carry_yd": carry_yd[name]}
    return Club(
        name=name,
        kind=kinds[name],
        sources={key: "file" if key in numbers else "level" for key in CLUB_NUMBERS},
        **values,  # type: ignore[arg-type]
    )
