"""Published strokes, greens and leaves the levels are measured against; each with its source."""

from __future__ import annotations

import numpy as np

# M. Broadie, "Assessing Golfer Performance on the PGA TOUR", Interfaces 42(2), 2012, table 9 (second hand;
# three transcriptions agree): tour average strokes to hole out by distance [yd] from tee, fairway, rough,
# sand, recovery.
TOUR_STROKES = np.array([
    # yd   tee   fairway rough  sand  recovery
    (10, np.nan, 2.18, 2.34, 2.43, 3.45), (20, np.nan, 2.40, 2.59, 2.53, 3.51),
    (30, np.nan, 2.52, 2.70, 2.66, 3.57),
    (40, np.nan, 2.60, 2.78, 2.82, 3.71), (50, np.nan, 2.66, 2.87, 2.92, 3.79),
    (60, np.nan, 2.70, 2.91, 3.15, 3.83),
    (70, np.nan, 2.72, 2.93, 3.21, 3.84), (80, np.nan, 2.75, 2.96, 3.24, 3.84),
    (90, np.nan, 2.77, 2.99, 3.24, 3.82),
    (100, 2.92, 2.80, 3.02, 3.23, 3.80), (120, 2.99, 2.85, 3.08, 3.21, 3.78),
    (140, 2.97, 2.91, 3.15, 3.22, 3.80),
    (160, 2.99, 2.98, 3.23, 3.28, 3.81), (180, 3.05, 3.08, 3.31, 3.40, 3.82),
    (200, 3.12, 3.19, 3.42, 3.55, 3.87),
    (220, 3.17, 3.32, 3.53, 3.70, 3.92), (240, 3.25, 3.45, 3.64, 3.84, 3.97),
    (260, 3.45, 3.58, 3.74, 3.93, 4.03),
    (280, 3.65, 3.69, 3.83, 4.00, 4.10), (300, 3.71, 3.78, 3.90, 4.04, 4.20),
    (320, 3.79, 3.84, 3.95, 4.12, 4.31),
    (340, 3.86, 3.88, 4.02, 4.26, 4.44), (360, 3.92, 3.95, 4.11, 4.41, 4.56),
    (380, 3.96, 4.03, 4.21, 4.55, 4.66),
    (400, 3.99, 4.11, 4.30, 4.69, 4.75), (420, 4.02, 4.19, 4.40, 4.83, 4.84),
    (440, 4.08, 4.27, 4.49, 4.97, 4.94),
    (460, 4.17, 4.34, 4.58, 5.11, 5.03), (480, 4.28, 4.42, 4.68, 5.25, 5.13),
    (500, 4.41, 4.50, 4.77, 5.40, 5.22),
    (540, 4.65, 4.66, 4.96, 5.68, 5.41), (600, 4.82, 4.89, 5.25, 6.10, 5.70),
])  # fmt: skip
TOUR_LIES = ("tee", "fairway", "rough", "sand", "trees")

COUNTED = {
    "tee": ((160, 260), (300, 600)), "fairway": ((10, 600),), "rough": ((10, 600),),
    "sand": ((10, 300),), "trees": ((100, 400),),
}  # fmt: skip
"""Rows that are fitted and counted, by lie [yd]. Not counted: tees at 100-140 and 280 (a peg cannot cost
strokes: the source's short holes are harder than its fairways), sand beyond 300 and recovery below 100 (a
chip-out already beats those rows)."""

LIMITS = {
    "tee": (0.10, None),
    "fairway": (0.06, 0.15),
    "rough": (0.06, 0.15),
    "sand": (0.12, None),
    "trees": (0.25, None),
}
"""Largest rms and worst miss aimed for [strokes]."""


def tour_rows(lie: str) -> tuple[np.ndarray, np.ndarray]:
    """Distances [yd] and strokes of one column, the rows that count."""
    column = TOUR_STROKES[:, 1 + TOUR_LIES.index(lie)]
    at = TOUR_STROKES[:, 0]
    keep = np.isfinite(column) & np.any([(at >= a) & (at <= b) for a, b in COUNTED[lie]], axis=0)
    return at[keep], column[keep]


NINETY_LINE = (2.79, 0.0066)
"""Strokes from the tee of golfers who average 90: base and per yard (Broadie 2008, Science and Golf V, as
quoted in Broadie 2012; second hand). Mean of all rounds, courses as they are."""

NINETY_COURSE_YD = 6300.0
"""Length over which a golfer's mean of 90 makes the 90-golfer."""

NINETY_LIMIT = 0.15
SLOPE_LIMIT = 0.10
"""Strokes a hole, and share of the slope, that are aimed for."""

SHOOTER_OF_90 = (35.0, 59.0)
"""Greens hit [%] and median leave [ft] of a 90-shooter from 150 yd of fairway (Broadie, magazine column)."""

FIFTEEN_GREENS = 22.0
"""Greens hit [%] by 15 handicaps from 150 to 200 yd of fairway (the same)."""

RATING_LINES = {
    ("man", 0.0): (40.9 / 18, 1 / 220), ("man", 20.0): (50.7 / 18, 1 / 160),
    ("woman", 0.0): (40.1 / 18, 1 / 180), ("woman", 24.0): (51.3 / 18, 1 / 120),
}  # fmt: skip
"""Course Rating System, yardage ratings a hole at a time: scratch and bogey, better half of rounds, no
obstacles."""

RATING_LIMIT = {0.0: 0.15, 20.0: 0.20, 24.0: 0.20}
SLOPE_PER_STROKE = {"man": 5.381, "woman": 4.24}
"""Slope rating over bogey rating less course rating."""

LADDER = (
    # handicap, who, 20-60 yd: greens %, median leave % of distance; 100-150 yd: the same
    (-5.0, "64-71", 96, 7.3, 85, 5.4), (-1.0, "72-79", 95, 9.4, 77, 5.8), (4.5, "70-83", 93, 13.8, 63, 8.7),
    (18.5, "84-97", 81, 16.9, 46, 12.0), (36.5, "97-120", 75, 20.3, 25, 17.3),
)  # fmt: skip
"""Broadie 2008, table 2, from the fairway (second hand). Handicaps: average score less 72, the
professionals' two groups on harder courses at -5 and -1 (ours)."""

ROUGH_LADDER = (
    # handicap, who, 20-60 yd: greens %, median leave %; 100-150 yd: the same
    (4.5, "70-83", 86, 15.4, 53, 10.4), (18.5, "84-97", 72, 21.0, 34, 13.5),
    (36.5, "97-120", 64, 25.6, 25, 18.4),
)  # fmt: skip
"""The same table from the rough, amateurs (professionals' rough was tournament rough)."""

SAND_LEAVES = {-5.0: 16.0, 4.5: 30.0, 18.5: 40.0}
SAND_YD = np.array([13.0, 15.0, 17.0])
"""Broadie 2008, table 1: median leave from sand [% of the distance] by handicap; taken as 15 yd (ours)."""

LADDER_LIMIT = (8.0, 2.5)
"""Points of greens hit and of median leave; ours, the source gives no error."""

NEAR_YD = np.array([22.0, 31.0, 40.0, 49.0, 58.0])
FAR_YD = np.array([103.0, 112.0, 120.0, 129.0, 138.0, 147.0])
"""Distances that stand for 20-60 and 100-150 yd."""
