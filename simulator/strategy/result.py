"""What an answer is: plain frozen data, finished before any word is written about it."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, ClassVar

from ..conditions import Conditions
from ..hole.model import Hole, Point
from ..player.model import Player
from .aimline import AimLine
from .alternative import Alternative
from .confidence import Confidence, Flip, verdict
from .day import DayNote
from .errorbars import Estimate, figure

if TYPE_CHECKING:
    from .goals import Goal, GoalLine

SCHEMA = "holesim-answer-1"
"""Name and version of the JSON layout; changes when a key changes its meaning."""

TIE_STROKES = 0.03
"""Differences below this are no difference to a player [strokes]: three in a hundred plays of the hole."""


@dataclass(frozen=True)
class Start:
    """Where the question is asked from.

    Attributes
    ----------
    x_yd, y_yd : float
        Place in the hole frame.
    lie : str
        Lie word, for example ``"tee"`` or ``"rough"``.
    words : str
        The place as a reader would say it, for example ``"the back tee"``.
    out_yd : float
        Straight distance to the pin.
    played : int or None
        Strokes already played on the hole; None when not known (then par words mean nothing).
    """

    x_yd: float
    y_yd: float
    lie: str
    words: str
    out_yd: float
    played: int | None

    @property
    def xy_yd(self) -> Point:
        return self.x_yd, self.y_yd


@dataclass(frozen=True)
class Answer:
    """The answer to "which club, which line?" on one hole for one player.

    Attributes
    ----------
    question : str
        ``"plan"`` or ``"compare"``.
    value_map_score : Estimate
        Expected strokes by the value map's own best choice (same footing as the scores).
    tied : tuple of int
        Alternatives that cannot be told from the recommended one: nothing is within the 95 % interval of the
        difference, or that is below TIE_STROKES. Includes it.
    alternatives : tuple of Alternative
        The recommended one, then the others by expected score; asked ones always among them.
    clear_beyond_yd : int
        Nobody ahead may be nearer than this.
    clear_beyond_error_yd : float
        Standard error of the longest ball that goes into it.
    day : DayNote
        What the wind at the other height would change, and what a putt from below the hole saves.
    confidence : Confidence or None
        For how many plausible versions of the player each alternative is best; None: taken as exact.
    flips : tuple of Flip
        What would turn the answer; empty where it was not looked for.
    warnings : tuple of str
        One line each.
    settings : dict
        What made the numbers: cell and node sizes, strikes, versions.
    seconds : dict of str to float
        Where the time went; not part of the answer, left out of `to_dict`.
    goal : Goal or None
        What the recommendation goes by (then `tied` does too); None: the lowest average score.
    goal_line : GoalLine or None
        What the recommended line gains and costs where it is not the club's best line for the average.
    lowest_score : int
        Index of the alternative that would be recommended without a goal.
    against : Alternative or None
        What was measured beside the alternatives without being one of them; left out of `to_dict`.
    """

    question: str
    hole: Hole
    player: Player
    conditions: Conditions
    start: Start
    seed: int
    sequences: int
    value_map_score: Estimate
    tied: tuple[int, ...]
    alternatives: tuple[Alternative, ...]
    clear_beyond_yd: int
    clear_beyond_error_yd: float
    day: DayNote
    warnings: tuple[str, ...]
    settings: dict[str, Any]
    seconds: dict[str, float] = field(repr=False)
    goal: Goal | None = None
    goal_line: GoalLine | None = None
    lowest_score: int = 0
    confidence: Confidence | None = None
    flips: tuple[Flip, ...] = ()
    against: Alternative | None = field(default=None, repr=False)

    recommended: ClassVar[int] = 0
    """Index of the recommended alternative: it stands first."""

    def __repr__(self) -> str:
        """The shots with their scores, on one line: all of it (`to_dict`) would fill pages."""
        shots = ", ".join(map(str, self.alternatives))
        asked = f"{self.question} of {self.hole.name} from {self.start.words}, {self.player.name}"
        return f"<Answer: {asked}: {shots}; {self.verdict}>"

    @property
    def verdict(self) -> str:
        """``"clear"``, ``"slight"`` or ``"either"`` (`confidence.verdict`); with a goal by its ties."""
        if self.goal is not None:
            return "either" if len(self.tied) > 1 else "clear"
        return verdict([one.difference for one in self.alternatives[1:]], self.confidence)

    @property
    def best(self) -> Alternative:
        """The recommended alternative."""
        return self.alternatives[self.recommended]

    def line_of(self, one: Alternative) -> AimLine:
        """The line an alternative is aimed on."""
        return AimLine(*self.start.xy_yd, one.aim_bearing_deg)

    def to_dict(self) -> dict[str, Any]:
        """The whole answer as plain JSON-ready data; the same for any thread count."""
        return {
            "schema": SCHEMA,
            "question": self.question,
            "hole": self.hole.name,
            "par": self.hole.par,
            "tee": self.hole.tee.name,
            "pin": self.hole.pin.name,
            "player": self.player.name,
            "start": {
                "words": self.start.words,
                "lie": self.start.lie,
                "x_yd": self.start.x_yd,
                "y_yd": self.start.y_yd,
                "out_yd": self.start.out_yd,
                "played": self.start.played,
            },
            "conditions": self.conditions.to_dict(),
            "seed": self.seed,
            "sequences": self.sequences,
            **figure("value_map_score", self.value_map_score),
            "recommended": self.recommended,
            "tied": list(self.tied),
            "goal": None if self.goal is None else dict(vars(self.goal)),
            "goal_line": None if self.goal_line is None else self.goal_line.to_dict(),
            "lowest_score": self.lowest_score,
            "verdict": self.verdict,
            "confidence": None if self.confidence is None else self.confidence.to_dict(),
            "flips": [flip.to_dict() for flip in self.flips],
            "clear_beyond_yd": self.clear_beyond_yd,
            "clear_beyond_standard_error_yd": self.clear_beyond_error_yd,
            "other_wind_height_carry_yd": self.day.other_height_carry_yd,
            "below_hole_strokes": self.day.below_hole_strokes,
            "alternatives": [alternative.to_dict() for alternative in self.alternatives],
            "attribution": self.hole.attribution,
            "assumed": [*self.hole.assumed, *self.player.assumed, *self.conditions.assumed],
            "warnings": list(self.warnings),
            "settings": self.settings,
        }
