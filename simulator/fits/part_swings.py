"""Spread of part swings by level and length; writes ``player/part_swings.toml``.

Run with ``python -m simulator.fits.part_swings``.

Median leaves come from Broadie 2008 table 2 (20-60 yd, fairway). How the leave changes with length comes
from the tour: strokes from the fairway (Broadie 2012 table 9) less the shot itself, turned back into the
length of putt with that expectation. Beyond 40 yd the leave runs to the group's own 100-150 yd leave (as
``mishits`` uses it) at 100 yd. Then, as for full swings, the solid spread is solved with an assumed
mixture of mishits.
"""

from __future__ import annotations

import datetime
from pathlib import Path

import numpy as np
from scipy.optimize import brentq

from ..player import published as pub
from .mishits import HANDICAPS, ladder_leave_share, mishit_rate, raised
from .pattern import Pattern
from .tables import write_table

NODES_YD = np.array([3.0, 10.0, 20.0, 40.0, 60.0, 80.0, 100.0])
LOSS_PCT = 25.0
FACTOR = 1.5
LENGTH_OVER_WIDTH = 1.5
SHORTEST_OVER_10_YD = 1.2
"""Leave at 3 yd over that at 10 yd, as shares of the length: assumed, no source goes below 10 yd."""


def tour_shape(length_yd: np.ndarray) -> np.ndarray:
    """Tour leave as a share of the length, over its mean from 20 to 60 yd."""
    leave_ft = np.interp(pub.TOUR_FAIRWAY_STROKES - 1.0, pub.TOUR_PUTTS, pub.TOUR_PUTT_FT)
    share = leave_ft / 3.0 / pub.TOUR_FAIRWAY_YD
    middle = share[(pub.TOUR_FAIRWAY_YD >= 20) & (pub.TOUR_FAIRWAY_YD <= 60)].mean()
    nodes = np.append(3.0, pub.TOUR_FAIRWAY_YD)
    return np.interp(length_yd, nodes, np.append(SHORTEST_OVER_10_YD * share[0], share) / middle)


def median_leave_share(handicap: float) -> np.ndarray:
    """Median leave as a share of the length at the nodes.

    The tour's shape up to 40 yd, on to the group's own full-swing leave at 100 yd; its mean at 20, 40 and
    60 yd is the group's 20-60 yd leave.
    """
    at, table = pub.LEAVE_HANDICAP, pub.LEAVE_20_60_PCT / 100.0
    beyond = max(0.0, handicap - at[-1]) * (table[-1] - table[-2]) / (at[-1] - at[-2])
    near = float(np.interp(handicap, at, table)) + beyond
    far = raised(handicap) * ladder_leave_share(handicap)
    middle = np.isin(NODES_YD, (20.0, 40.0, 60.0))

    def curve(scale: float) -> np.ndarray:
        short = scale * near * tour_shape(np.minimum(NODES_YD, 40.0))
        along = np.clip((np.log(NODES_YD) - np.log(40.0)) / np.log(2.5), 0.0, 1.0)
        return short * (min(far, short[-1]) / short[-1]) ** along

    return curve(brentq(lambda scale: curve(scale)[middle].mean() - near, 0.5, 2.0))


def solve_level(handicap: float) -> tuple[list[float], list[float]]:
    """Solid spread of one level at the nodes: direction [deg], distance [%]."""
    rate = mishit_rate(handicap)

    def pattern(across: float) -> Pattern:
        return Pattern(rate, across, LENGTH_OVER_WIDTH * across, 0.0, LOSS_PCT / 100.0, FACTOR)

    def solid(leave: float) -> float:
        return float(brentq(lambda across: pattern(across).median() - leave, 0.005, 0.6))

    across = np.array([solid(float(leave)) for leave in median_leave_share(handicap)])
    return np.degrees(np.arctan(across)).tolist(), (100.0 * LENGTH_OVER_WIDTH * across).tolist()


def main() -> None:
    """Solve every level and length and write the file."""
    solved = [solve_level(float(handicap)) for handicap in HANDICAPS]
    write_table(
        Path(__file__).parents[1] / "player" / "part_swings.toml",
        {
            "script": "python -m simulator.fits.part_swings",
            "inputs": "simulator/player/published.py, mishit rates of simulator.fits.mishits; assumed: carry "
            f"loss {LOSS_PCT:g} %, {FACTOR:g} times as wide, {LENGTH_OVER_WIDTH:g} times as long as wide",
            "date": datetime.date.today().isoformat(),
        },
        {
            "handicap": HANDICAPS.tolist(),
            "carry_yd": NODES_YD.tolist(),
            "mishit_rate": [mishit_rate(float(h)) for h in HANDICAPS],
            "mishit_loss_pct": [LOSS_PCT] * len(HANDICAPS),
            "mishit_factor": [FACTOR] * len(HANDICAPS),
            "direction_sd_deg": [degrees for degrees, _ in solved],
            "distance_sd_pct": [percent for _, percent in solved],
        },
    )


if __name__ == "__main__":
    main()
