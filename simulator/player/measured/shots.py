"""Measured shots of a player, club by club."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Shots:
    """Measured shots of one club.

    Attributes
    ----------
    club : str
        Simple name.
    carry_yd, offline_yd : float64[shots]
        Straight from the ball to where it came down, as launch monitors and lasers measure a carry (common
        practice), and how far right of the target line that is.
    total_yd : float64[shots] or None
        Carry and run, where the file has it; not a number for a shot without.
    """

    club: str
    carry_yd: np.ndarray
    offline_yd: np.ndarray
    total_yd: np.ndarray | None

    @property
    def mean_run_yd(self) -> float | None:
        """Mean of what the balls ran, over the shots that have a total; None where none has."""
        return None if self.total_yd is None else float(np.nanmean(self.total_yd - self.carry_yd))

    @property
    def direction_deg(self) -> np.ndarray:
        """Direction of each shot, right positive [deg]; wider than long counts as square to the line."""
        share = np.divide(
            self.offline_yd, self.carry_yd, out=np.sign(self.offline_yd), where=self.carry_yd > 0.0
        )
        return np.degrees(np.arcsin(np.clip(share, -1.0, 1.0)))


@dataclass(frozen=True)
class Read:
    """What a file of shots holds.

    Attributes
    ----------
    shots : mapping of str to Shots
        By club, in the order the clubs appear.
    left_aside : tuple of str
        Rows that could not be read, each with its reason.
    """

    shots: Mapping[str, Shots]
    left_aside: tuple[str, ...]
