"""A green at an angle to the line of play: how far it reaches, and where its middle is at a depth."""

from __future__ import annotations

import math
from dataclasses import dataclass

from simulator.hole.words.assumed import GREEN_TURN_DEG
from simulator.hole.words.feature import Feature, need, plain

MOST_TURN_DEG = 60.0
"""A green turned farther lies across the line of play: its depth and width are said the other way round."""


@dataclass(frozen=True)
class Ellipse:
    """An ellipse turned by an angle.

    Parameters
    ----------
    depth_yd, width_yd : its own, along and across the way it lies.
    turn_deg : clockwise: the back of a green turned by 30 lies right.
    """

    depth_yd: float
    width_yd: float
    turn_deg: float = 0.0

    @property
    def deep_yd(self) -> float:
        """From front to back along the line of play [yd]."""
        turn = math.radians(self.turn_deg)
        return math.hypot(self.depth_yd * math.cos(turn), self.width_yd * math.sin(turn))

    @property
    def wide_yd(self) -> float:
        """From side to side across the line of play [yd]."""
        turn = math.radians(self.turn_deg)
        return math.hypot(self.depth_yd * math.sin(turn), self.width_yd * math.cos(turn))

    def middle_yd(self, ahead_yd: float) -> float:
        """Right of the centre, the middle of the green so far beyond it along the line of play [yd]."""
        turn = math.radians(self.turn_deg)
        more = self.depth_yd**2 - self.width_yd**2
        return ahead_yd * more * math.sin(turn) * math.cos(turn) / self.deep_yd**2

    def half_yd(self, ahead_yd: float) -> float:
        """Half of the green's width there [yd]; none off its ends."""
        left = max(1.0 - (2.0 * ahead_yd / self.deep_yd) ** 2, 0.0)
        return 0.5 * self.depth_yd * self.width_yd / self.deep_yd * math.sqrt(left)

    def away(self, ahead_yd: float, right_yd: float) -> float:
        """How far out a place is: 0 at the centre, 1 at the edge, squared."""
        turn = math.radians(self.turn_deg)
        along = ahead_yd * math.cos(turn) + right_yd * math.sin(turn)
        across = right_yd * math.cos(turn) - ahead_yd * math.sin(turn)
        return (2.0 * along / self.depth_yd) ** 2 + (2.0 * across / self.width_yd) ** 2


def own_depth_yd(deep_yd: float, width_yd: float, turn_deg: float) -> float:
    """Depth along the way it lies of an ellipse that reaches so far along the line of play; 0 of none."""
    turn = math.radians(turn_deg)
    return math.sqrt(max(deep_yd**2 - (width_yd * math.sin(turn)) ** 2, 0.0)) / math.cos(turn)


def turn_of(green: Feature) -> tuple[float, bool]:
    """How far the words turn the green [deg clockwise], and whether that is assumed.

    Raises
    ------
    UsageError
        A turn that is none.
    """
    said = green.take("angled")
    if said is None:
        return 0.0, False
    size = GREEN_TURN_DEG
    if "a" in said.numbers:
        size = plain(said.numbers["a"], 0.0, MOST_TURN_DEG, "turn of a green in degrees")
    side = said.words.get("t", said.words["s"])
    need(side != said.words["s"] or "t" not in said.words, said.token,
         'which way? For example "green angled right to left"')  # fmt: skip
    return (-size if side == "left" else size), "a" not in said.numbers
