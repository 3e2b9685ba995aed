"""The room: what the ground gives a shot, as a box along its line that holds no trouble."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from ..hole.model import Hole
from ..hole.surfaces import TROUBLE
from ..tables.rasters import Raster
from . import estimate
from .aimline import AimLine
from .errorbars import Estimate, figure

WIDE_YD, BEYOND_YD = 80, 120
"""Trouble farther from the line, or farther past the middle of the pattern, closes nothing [yd]."""

SHORT_SHARE = 0.005
"""With fewer balls than this short of it, ground behind the pattern is nothing to carry."""

SEED_YD = 40.0
"""Free ground is looked for so far from the middle of the pattern when that is in trouble itself [yd]."""

_NOT_TOLD = ("inside", "lies_across", "starts_yd")
"""Of a room, what the JSON has in another form or not at all."""


@dataclass(frozen=True)
class Room:
    """A box along the aim line that holds no trouble; of all such boxes the one with most finishes.

    Attributes
    ----------
    carry_at_least_yd, finish_at_most_yd : float or None
        Ends of the box, from the ball along the aim line; None where nothing closes it.
    left_edge_yd, right_edge_yd : float or None
        Sides of the box, from the aim line, right positive.
    carry_over, finish_before, left_closed_by, right_closed_by : str or None
        Names of the areas that close it.
    inside : Estimate
        Share of the sequences whose first shot finishes in it.
    lies_across : bool
        Whether what closes the near end lies between the ball and most finishes, so that they fly over it. A
        boundary beside the line that comes nearer on this side of the box does not.
    starts_yd : float
        Where the box itself starts, for pictures: where hardly a ball stays short there is nothing to carry,
        but what lies there is trouble all the same.
    """

    carry_at_least_yd: float | None
    carry_over: str | None
    finish_at_most_yd: float | None
    finish_before: str | None
    left_edge_yd: float | None
    left_closed_by: str | None
    right_edge_yd: float | None
    right_closed_by: str | None
    inside: Estimate
    lies_across: bool = True
    starts_yd: float = 0.0

    @property
    def closed(self) -> bool:
        """Whether anything closes the box at all."""
        ends = (self.carry_at_least_yd, self.finish_at_most_yd, self.left_edge_yd, self.right_edge_yd)
        return any(end is not None for end in ends)

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        out = {name: value for name, value in vars(self).items() if name not in _NOT_TOLD}
        return {**out, **figure("inside", self.inside)}


def find_room(raster: Raster, hole: Hole, line: AimLine, finishes_yd: np.ndarray) -> Room | None:
    """The room of a shot on a line; None when all about its middle is trouble.

    Parameters
    ----------
    raster : Raster
        The ground the shots were played on.
    finishes_yd : float (n, 2)
        Where its balls finish, before relief.
    """
    along, across = line.seen(*finishes_yd.T)
    middle = float(np.median(along)), float(np.median(across))
    feature = _ground(raster, line, int(max(middle[0], 1.0)) + BEYOND_YD)
    closing = np.array([f.surface in TROUBLE for f in hole.features] + [False])
    trouble = closing[feature]
    seed = _seed(trouble, middle)
    if seed is None:
        return None
    near, far, left, right = _grown(trouble, _fullest(trouble, seed, along, across))
    rows, columns = trouble.shape
    names = [f.name for f in hole.features]

    def end(at: int, is_open: bool, beyond: np.ndarray) -> tuple[float | None, str | None]:
        """Where the box ends and what closes it; nothing where it is open."""
        if is_open:
            return None, None
        return float(at), names[int(np.bincount(beyond[closing[beyond]]).argmax())]

    nothing_short = float(np.mean(along < near)) < SHORT_SHARE
    near_yd, over = end(near, near == 0 or nothing_short, feature[max(near - 1, 0), left:right])
    far_yd, before = end(far, far == rows, feature[min(far, rows - 1), left:right])
    left_yd, left_by = end(left - WIDE_YD, left == 0, feature[near:far, max(left - 1, 0)])
    right_yd, right_by = end(right - WIDE_YD, right == columns, feature[near:far, min(right, columns - 1)])
    hits = np.ones(len(along), dtype=bool)
    for values, low, high in ((along, near_yd, far_yd), (across, left_yd, right_yd)):
        hits &= values >= (-np.inf if low is None else low)
        hits &= values < (np.inf if high is None else high)
    across_it = False
    if over is not None:
        flown = np.floor(across).astype(int).clip(-WIDE_YD, WIDE_YD - 1) + WIDE_YD
        across_it = bool((feature[:near] == names.index(over)).any(axis=0)[flown].mean() > 0.5)
    return Room(
        carry_at_least_yd=near_yd, carry_over=over, finish_at_most_yd=far_yd, finish_before=before,
        left_edge_yd=left_yd, left_closed_by=left_by, right_edge_yd=right_yd, right_closed_by=right_by,
        inside=estimate.share(hits), lies_across=across_it, starts_yd=float(near),
    )  # fmt: skip


def _ground(raster: Raster, line: AimLine, far_yd: int) -> np.ndarray:
    """Feature index of every square yard along and across the line, int (along, across)."""
    x, y = line.at(np.arange(far_yd)[:, None] + 0.5, np.arange(-WIDE_YD, WIDE_YD)[None, :] + 0.5)
    i = np.rint((x - raster.x0_yd) / raster.cell_yd).astype(int).clip(0, raster.feature.shape[1] - 1)
    j = np.rint((y - raster.y0_yd) / raster.cell_yd).astype(int).clip(0, raster.feature.shape[0] - 1)
    return raster.feature[j, i].astype(int)


def _seed(trouble: np.ndarray, middle: tuple[float, float]) -> tuple[int, int] | None:
    """The free square nearest to the middle of the pattern."""
    s, t = np.nonzero(~trouble)
    if s.size == 0:
        return None
    away = np.hypot(s + 0.5 - middle[0], t + 0.5 - WIDE_YD - middle[1])
    k = int(np.argmin(away))
    return (int(s[k]), int(t[k])) if away[k] <= SEED_YD else None


def _fullest(
    trouble: np.ndarray, seed: tuple[int, int], along: np.ndarray, across: np.ndarray
) -> tuple[int, int, int, int]:
    """First and last row, first and last column (ends excluded) of the box round a square with most balls."""
    rows, columns = trouble.shape
    held, _, _ = np.histogram2d(
        along, across, bins=(np.arange(rows + 1.0), np.arange(columns + 1.0) - WIDE_YD)
    )
    sums = np.zeros((rows + 1, columns + 1))
    sums[1:, 1:] = held.cumsum(axis=0).cumsum(axis=1)
    s, t = seed
    column = np.arange(columns)
    left = np.where(trouble[:, :t], column[:t] + 1, 0).max(axis=1, initial=0)
    right = np.where(trouble[:, t:], column[t:], columns).min(axis=1, initial=columns)
    blocked = np.flatnonzero(trouble[:, t])
    first = int(blocked[blocked < s].max(initial=-1)) + 1
    last = int(blocked[blocked > s].min(initial=rows))
    far = np.arange(s + 1, last + 1)
    best, box = (-1.0, 0.0), (s, s + 1, t, t + 1)
    ahead_left = np.maximum.accumulate(left[s:last])
    ahead_right = np.minimum.accumulate(right[s:last])
    behind_left, behind_right = 0, columns
    for near in range(s, first - 1, -1):
        behind_left, behind_right = max(behind_left, left[near]), min(behind_right, right[near])
        low, high = np.maximum(ahead_left, behind_left), np.minimum(ahead_right, behind_right)
        count = sums[far, high] - sums[near, high] - sums[far, low] + sums[near, low]
        size = (far - near) * (high - low)
        # the largest of those with most balls, of equal ones the farthest
        k = len(far) - 1 - int(np.argmax(np.where(count == count.max(), size, -1)[::-1]))
        if (float(count[k]), float(size[k])) > best:
            best, box = (float(count[k]), float(size[k])), (near, int(far[k]), int(low[k]), int(high[k]))
    return box


def _grown(trouble: np.ndarray, box: tuple[int, int, int, int]) -> tuple[int, int, int, int]:
    """The box with every side moved out until trouble stops it."""
    near, far, left, right = box
    rows, columns = trouble.shape
    while far < rows and not trouble[far, left:right].any():
        far += 1
    while near > 0 and not trouble[near - 1, left:right].any():
        near -= 1
    while left > 0 and not trouble[near:far, left - 1].any():
        left -= 1
    while right < columns and not trouble[near:far, right].any():
        right += 1
    return near, far, left, right
