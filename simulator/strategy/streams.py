"""Streams of luck: what a part of the work adds to the seed of a question to draw luck of its own.

What chooses and what values must not share luck: the best of several noisy scores flatters itself on the luck
that made it the best. What is compared must share it: alternatives, and a player with a better one.
The engine draws a map's strikes from the seed itself on, its sketch's from 10 and its draft's from 20 more
(`engine/maps.py`), in other numbers of strikes than stand beside these.
"""

from __future__ import annotations

MAP_SCATTER = 1
"""What maps of plausible players scatter, beside the scatter of their first shots."""

COARSE, FINE = 11, 12
"""Aims tried by the search, and settled."""

TIE_BAND = 13
"""How far either way a line plays alike."""

CHOOSING = 21
"""Which of a place's first shots is the best one."""

FIRST_SHOTS, PLAYS = 22, 23
"""What the first shots are worth, and full sequences: everything that is reported."""

PLAUSIBLE, PLAUSIBLE_BALLS = 24, 25
"""First shots scored again for plausible players, and where their balls come to."""

TRAFFIC = 26
"""Where balls come to on a map in the making: this one and the next, one for each look (`traffic.DOUBTS`)."""

AIM_CURVE = 31
"""The score against the aim."""

GOAL_LOOK, GOAL_DECIDE, GOAL_BAND = 41, 42, 43
"""Plays that find, choose and bound the line for a goal; its chances are counted on `PLAYS`."""

PATTERNS = 41
"""Every club's pattern: struck on an empty field, so what else draws this stream does not meet it."""

_HOLES_APART, _PLACES_APART = 101, 1_009
"""More than any stream: primes, so that the one seldom comes to the other."""


def of_hole(seed: int, number: int) -> int:
    """Seed of a hole of a course, by its number or place in it: holes err independently."""
    return (seed + _HOLES_APART * number) % 2**32


def of_place(seed: int, number: int) -> int:
    """Seed of the nth place of a hole: places err independently."""
    return (seed + _PLACES_APART * number) % 2**32
