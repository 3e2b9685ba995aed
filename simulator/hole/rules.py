"""Relief under the Rules of Golf (R&A and USGA, 2023 edition), as data that tables read.

One row per option: what it costs, where the next ball goes and the rule that says so. Which option
a player takes is the value map's business; which exist is this file's.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum

CLUB_LENGTH_YD = 1.27
"""Length of the longest club but the putter [yd] (Rules of Golf, Definitions: club-length).

A driver of about 45 3/4 in (assumed; 48 in is the longest allowed, Equipment Rules part 2).
"""


class Situation(IntEnum):
    """Why a ball is not, or need not be, played where it came to rest."""

    OUT_OF_BOUNDS = 0
    LOST = 1
    YELLOW = 2
    RED = 3
    UNPLAYABLE = 4
    UNPLAYABLE_IN_BUNKER = 5


class Way(IntEnum):
    """Where the next ball goes."""

    AS_IT_LIES = 0
    PREVIOUS_SPOT = 1
    """Where the last stroke was made; from the teeing area it may be teed again."""
    BACK_ON_LINE = 2
    """On the line from the hole through the reference point, any distance behind that point."""
    LATERAL = 3
    """Within some club-lengths of the reference point, not nearer the hole."""
    FAIRWAY_EDGE = 4
    """Between the lines from the hole through the ball's and the nearest fairway's reference points."""


class Reference(IntEnum):
    """From where relief is measured."""

    BALL = 0
    CROSSING = 1
    """Where the ball last crossed the edge of the penalty area (or, for E-5, the boundary)."""
    PREVIOUS_SPOT = 2


@dataclass(frozen=True)
class ReliefOption:
    """One thing a player may do.

    Parameters
    ----------
    rule : number in the Rules of Golf 2023, or the Model Local Rule.
    way, reference : where the next ball goes and from where that is measured.
    strokes : penalty strokes.
    club_lengths : size of the relief area round (LATERAL), or beyond (FAIRWAY_EDGE) the reference.
    stay_in_bunker : the ball must be dropped in the same bunker.
    """

    rule: str
    way: Way
    reference: Reference
    strokes: int
    club_lengths: int = 0
    stay_in_bunker: bool = False

    @property
    def relief_yd(self) -> float:
        """Size of the relief area [yd]."""
        return self.club_lengths * CLUB_LENGTH_YD


_PLAY_PENALTY = ReliefOption("17.1b", Way.AS_IT_LIES, Reference.BALL, 0)  # a dry one
_PENALTY_DISTANCE = ReliefOption("17.1d(1)", Way.PREVIOUS_SPOT, Reference.PREVIOUS_SPOT, 1)
_PENALTY_BACK = ReliefOption("17.1d(2)", Way.BACK_ON_LINE, Reference.CROSSING, 1, club_lengths=1)
_PENALTY_LATERAL = ReliefOption("17.1d(3)", Way.LATERAL, Reference.CROSSING, 1, club_lengths=2)

OPTIONS: dict[Situation, tuple[ReliefOption, ...]] = {
    Situation.OUT_OF_BOUNDS: (ReliefOption("18.2b", Way.PREVIOUS_SPOT, Reference.PREVIOUS_SPOT, 1),),
    Situation.LOST: (ReliefOption("18.2b", Way.PREVIOUS_SPOT, Reference.PREVIOUS_SPOT, 1),),
    Situation.YELLOW: (_PLAY_PENALTY, _PENALTY_DISTANCE, _PENALTY_BACK),
    Situation.RED: (_PLAY_PENALTY, _PENALTY_DISTANCE, _PENALTY_BACK, _PENALTY_LATERAL),
    Situation.UNPLAYABLE: (
        ReliefOption("19.2a", Way.PREVIOUS_SPOT, Reference.PREVIOUS_SPOT, 1),
        ReliefOption("19.2b", Way.BACK_ON_LINE, Reference.BALL, 1, club_lengths=1),
        ReliefOption("19.2c", Way.LATERAL, Reference.BALL, 1, club_lengths=2),
    ),
    Situation.UNPLAYABLE_IN_BUNKER: (
        ReliefOption("19.3a/19.2a", Way.PREVIOUS_SPOT, Reference.PREVIOUS_SPOT, 1),
        ReliefOption("19.3a/19.2b", Way.BACK_ON_LINE, Reference.BALL, 1, club_lengths=1, stay_in_bunker=True),
        ReliefOption("19.3a/19.2c", Way.LATERAL, Reference.BALL, 1, club_lengths=2, stay_in_bunker=True),
        ReliefOption("19.3b", Way.BACK_ON_LINE, Reference.BALL, 2, club_lengths=1),
    ),
}
"""Every option of each situation. Rule 19 is not for balls in a penalty area (19.1): play on under 17.1.

Stroke and distance (18.1) may be taken at any time for one stroke; it is listed where it matters.
"""

LOCAL_RULE_E5 = ReliefOption("Model Local Rule E-5", Way.FAIRWAY_EDGE, Reference.CROSSING, 2, club_lengths=2)
"""Alternative to stroke and distance for a ball lost outside a penalty area or out of bounds.

Committee Procedures 2023, 8E-5: the ball's reference point is where it was estimated to stop or last
crossed the boundary; the fairway's is the nearest point of fairway not nearer the hole. The drop is
between the lines from the hole through the two, or within two club-lengths outside them, in the
general area, not nearer the hole than the ball's point. Not meant for the highest competitions.
"""


def situation_of(relief: str) -> Situation:
    """Situation of a ball in a penalty area by the colour of its stakes, ``"red"`` or ``"yellow"``.

    Raises
    ------
    ValueError
        Another colour.
    """
    if relief == "yellow":
        return Situation.YELLOW
    if relief == "red":
        return Situation.RED
    raise ValueError(f"relief {relief!r}; allowed: red, yellow")
