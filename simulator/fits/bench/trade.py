"""How the rating lines and the ladder of greens and leaves pull apart for the bogey golfer."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from ...player.levels import level
from ...player.standard import standard_player
from .amateurs import ladder_row, rating
from .measure import bench
from .published import FAR_YD, NEAR_YD
from .rounds import better_half

BOGEY = 20.0
COURSE_YD = 6000.0
CHANGES = ((1.0, 1.0), (1.25, 1.0), (1.5, 1.0), (1.0, 1.1), (1.0, 1.2), (1.25, 1.1))
"""Mishit rate and spread over the level's."""


def trade_off() -> list[str]:
    """Lines of a small table: what more mishits and more spread do to both."""
    near_green, near_leave, far_green, far_leave = ladder_row(BOGEY)
    line = rating(BOGEY, "man", np.array([COURSE_YD]))[0] / 18
    lines = [
        f"The bogey golfer's trade-off (index {BOGEY:g}): better half a hole over {COURSE_YD:,.0f} yd",
        "against the rating line, beside greens hit and leaves.",
        f"{'mishits':>8}{'spread':>8}{'half':>8}{'greens 20-60':>14}{'leave':>7}"
        f"{'greens 100-150':>16}{'leave':>7}",
        f"{'published':>16}{line:8.2f}{near_green:14.0f}{near_leave:7.1f}{far_green:16.0f}{far_leave:7.1f}",
    ]
    base = level(BOGEY)
    for mishits, spread in CHANGES:
        changed = replace(
            base, mishit_rate=base.mishit_rate * mishits, spread_scale=base.spread_scale * spread
        )
        measured = bench(standard_player(changed))
        half = better_half(measured, (COURSE_YD, COURSE_YD))[0] / 18
        near, far = (measured.approaches("fairway", d) for d in (NEAR_YD, FAR_YD))
        lines.append(
            f"{'x ' + format(mishits, '.2f'):>8}{'x ' + format(spread, '.2f'):>8}{half:8.2f}"
            f"{100 * near[0]:14.0f}{100 * near[1]:7.1f}{100 * far[0]:16.0f}{100 * far[1]:7.1f}"
        )
    return lines
