"""Places and notes in words, as they are read on withy-drain for Barnaby."""

from __future__ import annotations

from simulator.hole import load_hole
from simulator.player import load_player
from simulator.strategy.by_fringe import fringed
from simulator.strategy.places import place
from simulator.strategy.review.notes import read_notes
from simulator.strategy.review.strokes import Stroke, strokes_of
from simulator.strategy.review.unmeasured import usual_length
from simulator.strategy.review.working import in_play

WITHY, BARNABY = load_hole("withy-drain"), load_player("barnaby")
USUAL = usual_length(BARNABY, WITHY)


def placed(words: str) -> tuple[float, float]:
    """Where a place in words is [yd]."""
    there = place(words, fringed(WITHY, words))
    return there.x_yd, there.y_yd


def played(notes: str) -> tuple[Stroke, ...]:
    """The strokes of a hole, by its notes; balls noted without a distance went as far as his usually do."""
    read = read_notes(notes)
    return strokes_of(read, in_play(WITHY, read), USUAL).strokes
