"""What comes of one hole as it was played: its strokes judged, its sums, and the part of the game of each."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from ...conditions import Conditions
from ...hole.model import Hole
from ...hole.surfaces import LIE_WORDS, Lie
from ...player.model import Player
from ..alternative import ClubAndLine
from ..errorbars import Estimate, figure, total
from .judging import Judged
from .rests import Rest

SHORT_GAME_YD = 50.0
"""Nearer to the pin than this a stroke off the green is short game [yd] (assumed; bounds vary)."""

BEYOND, BEYOND_YD = 1.4, 40.0
"""A ball that ends farther off than this times the club's carry, and so many yards more than it, is doubted:
run, wind and slope rarely add half as much (assumed)."""

PARTS = ("tee shots", "approaches", "short game", "putting")
"""Parts of the game, as the trade has them; tee shots are those of par 4s and 5s (common practice)."""


@dataclass(frozen=True)
class HoleReview:
    """One hole as it was played.

    Attributes
    ----------
    hole : Hole
        With the tee and pin that were in use.
    player : Player
    conditions : Conditions
    strokes : tuple of Judged
    score : int
        Strokes and penalties.
    holed : bool
        False: picked up, or the notes stop before the hole.
    expected : Estimate
        What the player needs on average from where the first stroke was played, by the map's plan.
    left : Estimate
        The same from where the last ball lies, nothing where it is holed.
    seed : int
    """

    hole: Hole
    player: Player
    conditions: Conditions
    strokes: tuple[Judged, ...]
    score: int
    holed: bool
    expected: Estimate
    left: Estimate
    seed: int

    @property
    def choice(self) -> Estimate:
        """Strokes lost by choices."""
        return total(one.choice for one in self.strokes)

    @property
    def swing(self) -> Estimate:
        """Strokes lost by swings: with the choices exactly the score, less what the player needs on average.

        Values in between take each other away; what is left to be unsure of are the choices and the ends.
        """
        unsure = total([self.choice, self.expected, self.left])
        value = self.score + self.left.value - self.expected.value - self.choice.value
        return Estimate(value, unsure.standard_error, unsure.freedom)

    @property
    def penalties(self) -> int:
        """Penalty strokes, which are no part of the game: they are lost where the ball was hit."""
        return sum(one.stroke.penalty for one in self.strokes)

    @property
    def doubtful(self) -> tuple[tuple[int, str, float, float], ...]:
        """Strokes whose ball ends far beyond the club: number, club, how far it went and its carry [yd]."""
        found = []
        for one in self.strokes:
            end, chosen = one.stroke.end, one.chosen
            if chosen is None or end is None or one.stroke.penalty:
                continue
            went = math.hypot(end.x_yd - one.stroke.start.x_yd, end.y_yd - one.stroke.start.y_yd)
            if went > max(BEYOND * chosen.carry_yd, chosen.carry_yd + BEYOND_YD):
                found.append((one.stroke.number, chosen.club, went, chosen.carry_yd))
        return tuple(found)

    def part_of(self, one: Judged) -> str:
        """Which part of the game a stroke belongs to."""
        if one.stroke.kind == "putt":
            return "putting"
        if one.stroke.start.lie is Lie.TEE and self.hole.par > 3:
            return "tee shots"
        away = self.hole.out_yd(*one.stroke.start.xy_yd)
        return "short game" if away <= SHORT_GAME_YD else "approaches"

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {
            "hole": self.hole.name, "par": self.hole.par,
            "tee": self.hole.tee.name, "pin": self.hole.pin.name,
            "score": self.score, "penalties": self.penalties, "holed": self.holed,
            "doubtful": [
                {"number": number, "club": club, "went_yd": went, "carry_yd": carry}
                for number, club, went, carry in self.doubtful
            ],
            **figure("expected", self.expected), **figure("left", self.left),
            **figure("choice", self.choice), **figure("swing", self.swing),
            "strokes": [self._stroke(one) for one in self.strokes],
        }  # fmt: skip

    def _stroke(self, one: Judged) -> dict[str, Any]:
        stroke = one.stroke
        return {
            "number": stroke.number, "kind": stroke.kind, "part": self.part_of(one), "club": stroke.club,
            "strokes": stroke.strokes, "penalty": stroke.penalty,
            "from": _spot(stroke.start), "to": _spot(stroke.end), "went": stroke.went,
            **figure("before", one.before), **figure("choice", one.choice), **figure("swing", one.swing),
            **figure("better_than", one.better_than), "aim_given": one.aim_given,
            "chosen": _shot(one.chosen), "best": _shot(one.best),
        }  # fmt: skip


def _spot(rest: Rest | None) -> dict[str, Any] | None:
    if rest is None:
        return None
    return {
        "words": rest.words, "lie": LIE_WORDS[rest.lie], "x_yd": rest.x_yd, "y_yd": rest.y_yd,
        "putt_ft": rest.putt_ft,
    }  # fmt: skip


def _shot(shot: ClubAndLine | None) -> dict[str, Any] | None:
    return None if shot is None else shot.to_dict()
