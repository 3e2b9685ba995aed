"""The player's numbers for today: carry and run of every club."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from ..conditions import Conditions
from ..errors import UsageError
from ..player.model import Player
from ..tables.carries import gets_there, runs_yd, stock_landings
from ..tables.shots import list_shots

HEIGHT_YD = (-60.0, 60.0)
"""Heights of the target over the ball taken [yd]."""


@dataclass(frozen=True)
class Carry:
    """One shot's numbers.

    Attributes
    ----------
    club, flight : str
    still_carry_yd, still_run_yd : float
        In still air at 25 C and sea level, on level medium fairway.
    today_carry_yd, today_run_yd : float or None
        In today's air and wind, to today's height and on today's fairway; None where the ball never gets as
        high as that.
    drift_yd : float or None
        How far the wind moves it sideways, right positive.
    """

    club: str
    flight: str
    still_carry_yd: float
    still_run_yd: float
    today_carry_yd: float | None
    today_run_yd: float | None
    drift_yd: float | None


def carries(
    player: Player, conditions: Conditions, *, along_deg: float = 0.0, height_yd: float = 0.0
) -> tuple[Carry, ...]:
    """Every full shot of a player, still and today, longest first.

    Parameters
    ----------
    conditions : Conditions
        Gusts and swings are left out: the mean wind.
    along_deg : float
        Bearing of the shot in the frame the wind is given in [deg].
    height_yd : float
        Height of the landing place over the ball [yd].

    Raises
    ------
    UsageError
        A height out of its range.
    """
    check_within("height", height_yd, HEIGHT_YD)
    listed = list_shots(player, shaped=True)
    count = listed.first_part
    level = stock_landings(listed, Conditions(), 0.0, 0.0, count)
    today = stock_landings(listed, conditions, along_deg, height_yd, count)
    runs = runs_yd(level, Conditions()), runs_yd(today, conditions)
    high = gets_there(today)
    return tuple(
        Carry(
            shot.club.name,
            shot.flight,
            float(level[k, 0]),
            float(runs[0][k]),
            float(today[k, 0]) if high[k] else None,
            float(runs[1][k]) if high[k] else None,
            float(today[k, 1]) if high[k] else None,
        )
        for k, shot in enumerate(listed.shots[:count])
    )


def check_within(what: str, value: float, limits: tuple[float, float]) -> None:
    """Refuse (UsageError) what is no length, or one outside its limits [yd]."""
    if not isinstance(value, int | float | np.number) or isinstance(value, bool):
        raise UsageError(f"{what} {str(value)[:60]}: a number of yards is allowed")
    if not limits[0] <= value <= limits[1]:
        found = f"{value:.1f}".removesuffix(".0")
        raise UsageError(f"{what} {found} yd: {limits[0]:g} to {limits[1]:g} yd is allowed")
