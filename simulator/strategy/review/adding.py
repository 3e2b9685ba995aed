"""What comes of several holes together: their reviews added up, by part of the game too."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from ..errorbars import Estimate, figure, total
from .holes import PARTS, HoleReview


@dataclass(frozen=True)
class RoundReview:
    """Some holes of a course as they were played, by number, in the order of the notes.

    Attributes
    ----------
    course : str
    holes : mapping of int to HoleReview
    left_out : tuple of int
        Holes there are notes of that were not worked: somebody interrupted.
    """

    course: str
    holes: Mapping[int, HoleReview]
    left_out: tuple[int, ...] = ()

    @property
    def score(self) -> int:
        """Strokes and penalties of all holes."""
        return sum(one.score for one in self.holes.values())

    @property
    def penalties(self) -> int:
        """Penalty strokes of all holes."""
        return sum(one.penalties for one in self.holes.values())

    @property
    def expected(self) -> Estimate:
        """What the player needs on average for them."""
        return total(one.expected for one in self.holes.values())

    @property
    def holed(self) -> bool:
        """Whether every one of them was played to the end."""
        return all(one.holed for one in self.holes.values())

    @property
    def left(self) -> Estimate:
        """What was still to play on average where they were not: with the score it is what they came to."""
        return total(one.left for one in self.holes.values())

    @property
    def choice(self) -> Estimate:
        """Strokes lost by choices."""
        return total(one.choice for one in self.holes.values())

    @property
    def swing(self) -> Estimate:
        """Strokes lost by swings."""
        return total(one.swing for one in self.holes.values())

    def part(self, name: str) -> tuple[int, Estimate, Estimate]:
        """Strokes of a part of the game, and what was lost there by choices and by swings."""
        mine = [one for hole in self.holes.values() for one in hole.strokes if hole.part_of(one) == name]
        count = sum(one.stroke.strokes for one in mine)
        return count, total(one.choice for one in mine), total(one.swing for one in mine)

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        parts = []
        for name in PARTS:
            count, choice, swing = self.part(name)
            parts.append(
                {"part": name, "strokes": count, **figure("choice", choice), **figure("swing", swing)}
            )
        return {
            "course": self.course, "left_out": list(self.left_out), "score": self.score,
            "penalties": self.penalties,
            **figure("expected", self.expected), **figure("left", self.left),
            **figure("choice", self.choice), **figure("swing", self.swing),
            "parts": parts,
            "holes": [{"number": number, **hole.to_dict()} for number, hole in self.holes.items()],
        }  # fmt: skip
