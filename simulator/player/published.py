"""Published figures on how amateurs and professionals strike the ball; no choice of ours is made here.

Handicaps in these tables are our reading of each source's group, by one published rule and one habit: an
average score lies about 3 above the course handicap (Knuth, USGA Handicap Research Team), and club
golfers' regular tees are rated about 69 (common practice), so a handicap is the average score less 72. A
tour player is put at -5 (from memory).
"""

from __future__ import annotations

import numpy as np

SCORE_OVER_HANDICAP = 72.0
"""Average score less handicap [strokes]: a course rating of 69 and 3 strokes (Knuth)."""

PER_AXIS_TWO_THIRDS = 1.93
"""Width of the middle two thirds of a normal over its standard deviation, 2 x 0.967."""

# Course Rating System Manual 2020, accuracy table: two-thirds landing areas, width x depth [yd], by shot
# length. Read per axis. They describe the better half of play: good contact, no mishits, no bias.
BOX_SHOT_YD = np.array([90.0, 110, 130, 150, 170, 190, 210, 230, 250])
SCRATCH_WIDTH_YD = np.array([11.0, 12, 13, 15, 18, 23, 29, 35, 41])
SCRATCH_DEPTH_YD = np.array([14.0, 15, 15, 16, 17, 18, 19, 20, 21])
BOGEY_WIDTH_YD = np.array([16.0, 17, 18, 20, 24, 29])
BOGEY_DEPTH_YD = np.array([19.0, 21, 23, 25, 28, 34])

WOMEN_SCRATCH_WIDTH_YD = np.array([12.0, 14, 17, 20, 26, 30, 34])
WOMEN_SCRATCH_DEPTH_YD = np.array([15.0, 16, 17, 18, 20, 24, 28])
WOMEN_BOGEY_WIDTH_YD = np.array([17.0, 19, 21, 24])
WOMEN_BOGEY_DEPTH_YD = np.array([22.0, 24, 27, 30])
"""The same table's women, from 90 yd on."""

SCRATCH_HANDICAP = 0.0
BOGEY_HANDICAP = {"man": 20.0, "woman": 24.0}
"""Handicap index of the rating system's two players."""

# Mean length of a tee shot, run included [yd], by handicap index: R&A/USGA distance report, UK 1996-2018 (men
# 240, 220, 204, 187 for up to 5, 6-12, 13-20, 21 and more; women 196, 178, 153, 138, 118 for up to 5, 6-12,
# 13-20, 21-28, 29 and more; second hand), beside the rating system's 250 / 200 yd (men, 0 and 20) and 210 /
# 150 yd (women, 0 and 24). The first row is the tour: men 289 in the years of the strokes table (from
# memory), women a carry of 223 (2023) and a run. The middles of the open groups (3; 26 men, 34 women) are
# ours, the last row continues the line.
DRIVE_HANDICAP = {
    "man": np.array([-5.0, 0, 9, 16.5, 26, 36, 54]),
    "woman": np.array([-5.0, 0, 9, 16.5, 24, 34, 54]),
}
DRIVE_TOTAL_YD = {
    "man": np.array([289.0, 250, 220, 204, 187, 172, 149]),
    "woman": np.array([246.0, 206, 177, 157, 144, 123, 103]),
}

# Broadie 2014, Every Shot Counts, and a magazine column of his: the 90-shooter from 150 yards.
SHOOTER_OF_90_HANDICAP = 18.0
SHOOTER_OF_90_SHOT_YD = 150.0
SHOOTER_OF_90_SHORT_YD = 13.0

# Direction of long tee shots, standard deviation of all strikes [deg], by average score: Broadie 2008 table 1
# (64-79: 4.0, 70-83: 5.4, 84-97: 6.4, 97-120: 8.1) and Broadie & Ko 2009 (80-golfer 5.5, 100-golfer 7.9).
DRIVE_SCORE = np.array([71.5, 76.5, 80.0, 90.5, 100.0, 108.5])
DRIVE_DIRECTION_SD_DEG = np.array([4.0, 5.4, 5.5, 6.4, 7.9, 8.1])

DRIVE_RUN_TOTAL_YD = np.array([200.0, 250.0])
DRIVE_RUN_YD = np.array([20.0, 25.0])
"""Run of an ordinary drive by its length [yd]: rating system, bogey player 180 + 20 and scratch player 225 +
25; longer ones run 25 too (tour, 2023: 275 + 25)."""
