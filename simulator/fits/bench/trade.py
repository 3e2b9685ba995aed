"""How the rating lines and the ladder of greens and leaves pull apart for the bogey golfer."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from ...player.levels import level
from ...player.standard import standard_player
from .amateurs import ladder_found, ladder_row, rating
from .measure import Bench, bench
from .rounds import better_half

BOGEY = 20.0
COURSE_YD = 6000.0
CHANGES = ((1.0, 1.0), (1.25, 1.0), (1.5, 1.0), (1.0, 0.88), (1.0, 1.1), (1.5, 0.88))
"""Mishit rate and spread over the level's."""

LIES = ("fairway", "rough")
COLUMNS = ("mishits", "spread", "half", "slope", "greens 20-60", "leave", "greens 100-150", "leave")
WIDE = (9, 8, 8, 8, 15, 14, 17, 14)


def trade_off() -> list[str]:
    """Lines of a small table: what more mishits and more spread do to both."""
    course = np.array([COURSE_YD])
    scratch, line = (rating(h, "man", course)[0] for h in (0.0, BOGEY))
    ladders = np.array([ladder_row(BOGEY, lie) for lie in LIES])
    lines = [
        f"The bogey golfer's trade-off (index {BOGEY:g}): better half a hole, {COURSE_YD:,.0f} yd, against",
        "the rating line, how much too close together he and scratch are there (slope), greens hit and",
        "leaves from fairway / rough.",
        _row(COLUMNS),
        _row(("published", "", *_cells(line / 18, "", ladders))),
    ]
    base, best = level(BOGEY), _half(bench(standard_player(level(0.0))))
    for mishits, spread in CHANGES:
        changed = replace(
            base, mishit_rate=base.mishit_rate * mishits, spread_scale=base.spread_scale * spread
        )
        measured = bench(standard_player(changed))
        half = _half(measured)
        slope = f"{100 * ((half - best) / (line - scratch) - 1.0):+.0f} %"
        found = np.array([ladder_found(measured, lie) for lie in LIES])
        lines.append(_row((f"x {mishits:.2f}", f"x {spread:.2f}", *_cells(half / 18, slope, found))))
    return lines


def _half(measured: Bench) -> float:
    return float(better_half(measured, (COURSE_YD, COURSE_YD))[0])


def _row(cells: Sequence[str]) -> str:
    return "".join(f"{cell:>{wide}}" for cell, wide in zip(cells, WIDE, strict=True))


def _cells(half: float, slope: str, ladders: np.ndarray) -> list[str]:
    """Cells behind the names; ladders : float64[2, 4] by lie of near greens, leave, far greens, leave."""
    pairs = zip(ladders.T, (0, 1, 0, 1), strict=True)
    return [f"{half:.2f}", slope, *(" / ".join(f"{value:.{n}f}" for value in pair) for pair, n in pairs)]
