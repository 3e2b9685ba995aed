"""Balls among branches: what a hit leaves of a flight. What a crown lets through is the hole's business."""

from __future__ import annotations

KEEP_MOST = 0.6
"""After a hit a ball keeps a uniform share of its remaining carry, from none to this. Set with a random
direction to fit the published averages: through six species of crown the ball ended 41.5 % of the way on
average (Golf Digest 2017, 60 balls); oak 47 %, copper beech 35 % of the normal distance (Today's Golfer,
60 balls)."""

DROP_SPEED_MPS = 2.0
"""Sideways speed of a ball dropping out of a tree [m/s]: assumed."""
