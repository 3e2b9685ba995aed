"""Reviews without an engine: real notes on a real hole, figures that are made up."""

from __future__ import annotations

from typing import Any

from simulator.conditions import Conditions
from simulator.hole import Hole, load_hole
from simulator.player import Player, load_player
from simulator.strategy.alternative import ClubAndLine
from simulator.strategy.errorbars import Estimate
from simulator.strategy.pointing import Pointing
from simulator.strategy.review import HoleReview, RoundReview, read_notes
from simulator.strategy.review.judging import EXACT, Judged
from simulator.strategy.review.notes import Notes
from simulator.strategy.review.strokes import strokes_of
from simulator.strategy.review.working import in_play

BUSY = (
    "driver out of bounds; driver 8 left into withy drain, drop 175 out, right rough; 5-hybrid to 95 out, right trees; "
    "unplayable, drop 100 out; 9-iron to 80 out; pitch to 20 out, left bunker; splash to 30 ft; "
    "putt to 4 ft; 2 putts"
)
"""Notes with something of everything, on withy-drain."""

BEST = ClubAndLine("3-wood", "stock", 176.0, 176.0, -9.2, 3.0, Pointing("fairway", "the middle of the fairway", -4.0))


def hole_review(hole: Hole | None = None, player: Player | None = None, notes: Notes | None = None, **_: Any) -> HoleReview:
    """A review whose choices cost 0.1 and whose swings 0.4 each."""
    hole, told = hole or load_hole("withy-drain"), notes or read_notes(BUSY)
    hole = in_play(hole, told)
    played = strokes_of(told, hole)
    error = Estimate(0.0, 0.004, 30.0)
    judged = []
    for one in played.strokes:
        choice = EXACT if one.kind == "putt" else Estimate(0.1, 0.004, 30.0)
        swing = EXACT if one.kind == "drop" else Estimate(0.4, 0.004, 30.0)
        best = None if one.kind == "putt" else BEST
        beats = Estimate(0.12, 0.004, 15.0) if one.kind == "swing" else None
        judged.append(Judged(one, best, best, False, Estimate(4.0, 0.004, 30.0), choice, swing, beats))
    total = sum(one.choice.value + one.swing.value for one in judged)
    left = EXACT if played.holed else Estimate(2.07, 0.005, 30.0)
    expected = Estimate(played.score + left.value - total, error.standard_error, 30.0)
    who = player or load_player("barnaby")
    return HoleReview(hole, who, Conditions(), tuple(judged), played.score, played.holed, expected, left, 1)


def round_review(course: str, holes: Any, player: Player, notes: Any, **_: Any) -> RoundReview:
    """Such reviews of the holes there are notes of."""
    by_number = dict(holes)
    return RoundReview(course, {number: hole_review(by_number[number], player, told) for number, told in notes.items()})
