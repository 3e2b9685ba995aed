"""Split the published approach patterns into solid strikes and mishits; writes ``player/mishits.toml``.

Run with ``python -m simulator.fits.mishits``.

What is assumed: the share of mishits at 18 handicap and how it runs with handicap, the carry a mishit
loses, and how much wider it is than a solid strike (no source publishes the mixture). What is then solved,
level by level: the solid spread across and along, written as a factor on the two-thirds boxes of the
Course Rating System Manual 2020, and the bias, so that all strikes together have

- at 18 handicap the pattern of the 90-shooter from 150 yards (Broadie): 13 yd short on average, half as long
  again as wide, 35 % on the green (taken as a circle of 15 yd radius);
- elsewhere the median leave of Broadie 2008 table 2, 100-150 yd from the fairway, at 125 yd, with the
  length over the width running from 1.15 at scratch to the 90-shooter's 1.5 and the shortfall from none on
  tour.

The two sources disagree for the same player: the 90-shooter of the column leaves more at 125 yd than the
table's 84-97 group. The column is followed at 18, the table up to 5 and from 36, and in between the table's
leaves are raised by a part of the ratio, so that no weaker level is tighter.
"""

from __future__ import annotations

import datetime
from pathlib import Path

import numpy as np
from scipy.optimize import brentq

from ..player import published as pub
from ..player.boxes import solid_box_yd
from .pattern import Pattern
from .tables import write_table

HANDICAPS = np.array([-5.0, 0.0, 5.0, 10.0, 18.0, 28.0, 36.0, 54.0])
RATE_AT_18 = 0.12
RATE_ZERO_HANDICAP = -7.0
LOSS_PCT = 15.0
FACTOR = 1.5
GREEN_RADIUS_YD = 15.0
LADDER_SHOT_YD = 125.0
SCRATCH_LENGTH_OVER_WIDTH = 1.15
SHORT_PCT_LIMIT = 1.3 * 100.0 * pub.SHOOTER_OF_90_SHORT_YD / pub.SHOOTER_OF_90_SHOT_YD


def mishit_rate(handicap: float) -> float:
    """Share of mishits, on a line through none at +7 handicap."""
    return RATE_AT_18 * (handicap - RATE_ZERO_HANDICAP) / (18.0 - RATE_ZERO_HANDICAP)


def ladder_leave_share(handicap: float) -> float:
    """Median leave of the table as a share of the length, its last step continued past the weakest group."""
    at, leave = pub.LEAVE_HANDICAP, pub.LEAVE_100_150_PCT
    beyond = max(0.0, handicap - at[-1]) * (leave[-1] - leave[-2]) / (at[-1] - at[-2])
    return (float(np.interp(handicap, at, leave)) + beyond) / 100.0


def solve_level(handicap: float, times: float = 1.0) -> dict[str, float]:
    """Solid spread and bias of one level, as described above, from a table leave made ``times`` as long."""
    is_90 = handicap == pub.SHOOTER_OF_90_HANDICAP
    shot = pub.SHOOTER_OF_90_SHOT_YD if is_90 else LADDER_SHOT_YD
    rate, loss = mishit_rate(handicap), LOSS_PCT / 100.0 * shot
    ramp = (handicap + 5.0) / (pub.SHOOTER_OF_90_HANDICAP + 5.0)
    short_pct = 100.0 * pub.SHOOTER_OF_90_SHORT_YD / pub.SHOOTER_OF_90_SHOT_YD * ramp
    mean = -min(short_pct, SHORT_PCT_LIMIT) / 100.0 * shot
    shape = float(
        np.interp(handicap, [0.0, 18.0], [SCRATCH_LENGTH_OVER_WIDTH, pub.SHOOTER_OF_90_DEPTH_OVER_WIDTH])
    )
    widening = 1.0 + rate * (FACTOR**2 - 1.0)

    def pattern(across: float) -> Pattern:
        along_2 = (shape * across) ** 2 - rate * (1.0 - rate) * loss**2 / widening
        return Pattern(
            rate, across, max(along_2, (0.2 * across) ** 2) ** 0.5, mean + rate * loss, loss, FACTOR
        )

    def miss(across: float) -> float:
        if is_90:
            return pub.SHOOTER_OF_90_GREEN_SHARE - pattern(across).share_within(GREEN_RADIUS_YD)
        return pattern(across).median() - times * ladder_leave_share(handicap) * shot

    solved = pattern(brentq(miss, 0.02 * shot, 0.3 * shot))
    width, depth = solid_box_yd(handicap, shot)
    return {
        "handicap": handicap,
        "mishit_rate": rate,
        "mishit_loss_pct": LOSS_PCT,
        "mishit_factor": FACTOR,
        "direction_scale": solved.across / width,
        "distance_scale": solved.along / depth,
        "bias_long_pct": 100.0 * solved.bias / shot,
    }


def leave_share_at(row: dict[str, float], shot_yd: float) -> float:
    """Median leave of a solved level at one length, as a share of it."""
    width, depth = solid_box_yd(row["handicap"], shot_yd)
    return Pattern(
        rate=row["mishit_rate"],
        across=row["direction_scale"] * width / shot_yd,
        along=row["distance_scale"] * depth / shot_yd,
        bias=row["bias_long_pct"] / 100.0,
        loss=row["mishit_loss_pct"] / 100.0,
        factor=row["mishit_factor"],
    ).median()


def raised(handicap: float) -> float:
    """What the table's leaves are multiplied by: the column over the table at 18, 1 up to 5 and from 36."""
    column = leave_share_at(solve_level(18.0), LADDER_SHOT_YD) / ladder_leave_share(18.0)
    return float(np.interp(handicap, [5.0, 18.0, 36.0], [1.0, column, 1.0]))


def main() -> None:
    """Solve every level and write the file."""
    rows = [solve_level(float(h), raised(float(h))) for h in HANDICAPS]
    write_table(
        Path(__file__).parents[1] / "player" / "mishits.toml",
        {
            "script": "python -m simulator.fits.mishits",
            "inputs": "simulator/player/published.py; assumed: "
            f"{RATE_AT_18:g} of strikes mishit at 18 handicap, none at {RATE_ZERO_HANDICAP:g}, "
            f"carry loss {LOSS_PCT:g} %, {FACTOR:g} times as wide",
            "column_over_table": f"{raised(18.0):.3f}",
            "date": datetime.date.today().isoformat(),
        },
        {key: [row[key] for row in rows] for key in rows[0]},
    )


if __name__ == "__main__":
    main()
