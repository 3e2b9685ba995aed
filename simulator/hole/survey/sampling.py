"""Places drawn as likely as the readings make them: what stays uncertain where circles bend."""

from __future__ import annotations

import numpy as np

from .network import Adjusted, Frame

LEAST_WALKERS, STRETCH = 80, 2.0
"""Sets of places that walk together, and the scale of their moves (the paper's)."""

BURN_STEPS, THIN_STEPS = 400, 60
"""Moves before any place is kept, and between two that are."""

NEVER = 1e9
"""Cost of a place that cannot be: finite, so that two of them can be compared."""


def sampled(found: Adjusted, draws: int, seed: int) -> dict[str, np.ndarray]:
    """Places that would fit the readings, each of shape (draws, 2), likely ones more often.

    Drawn with density exp(-1/2 sum of ((reading - f(places)) / sd)^2) over the free coordinates, with a soft
    wall at each side that was told, so a place far from linear in its readings (a gap to a point at another
    range) keeps its skew. Sampler: affine invariant ensemble with stretch moves (Goodman and Weare, 2010,
    Comm. App. Math. Comp. Sci. 5, 65-80), started from adjustments of readings drawn anew. It walks in range
    and direction from the stand that read a point: straight on an arc, on which steps in x and y come no way.
    """
    rng = np.random.default_rng(seed)
    frame = Frame(found.network, found.places)
    polar = _Polar(frame)
    size = len(frame.columns)
    half = max(size + 1, LEAST_WALKERS // 2)
    start = frame.free_of(found.places)
    data = frame.value
    walkers = np.empty((2, half, size))
    for k in range(2 * half):
        frame.value = data + frame.sd * rng.standard_normal(len(data))
        walkers[k % 2, k // 2] = polar.of(frame.settled(start)[None])[0]
    frame.value = data
    cost = np.stack([polar.cost(group) for group in walkers])
    kept: list[np.ndarray] = []
    keep_from = BURN_STEPS
    while sum(map(len, kept)) < draws:
        for _ in range(keep_from or THIN_STEPS):
            for group in (0, 1):
                _stretch(polar, walkers, cost, group, rng)
        keep_from = 0
        kept.append(walkers.reshape(-1, size).copy())
    xy = polar.places(np.concatenate(kept)[:draws])[0]
    return {name: xy[:, k] for k, name in enumerate(frame.names)}


def _stretch(
    polar: _Polar, walkers: np.ndarray, cost: np.ndarray, group: int, rng: np.random.Generator
) -> None:
    """One stretch move of every walker of a group, along the line to one of the other group."""
    count, size = walkers[group].shape
    others = walkers[1 - group][rng.integers(0, count, count)]
    z = ((STRETCH - 1.0) * rng.random(count) + 1.0) ** 2 / STRETCH
    moved = others + z[:, None] * (walkers[group] - others)
    new = polar.cost(moved)
    chance = (size - 1.0) * np.log(z) + cost[group] - new
    taken = np.log(rng.random(count)) < chance
    walkers[group][taken] = moved[taken]
    cost[group][taken] = new[taken]


class _Polar:
    """Free coordinates of a frame as range and direction from the point that a place was first read from.

    Directions count from that of the best place, so that none comes near half a turn. A point that only one
    coordinate is free of, or no distance leads to, keeps its x and y. A point of which one range is all that
    is known lies within a quarter turn of its best place: ahead of who read it.
    """

    def __init__(self, frame: Frame) -> None:
        self._frame = frame
        free = [name for name in frame.names if all((name, axis) in frame.columns for axis in (0, 1))]
        known = [name for name in frame.names if name not in free]
        at = {name: k for k, name in enumerate(frame.names)}
        others = {*frame.offset.tolist(), *frame.direction.tolist()}
        pairs = [
            (frame.names[a], frame.names[b])
            for k, (a, b) in enumerate(zip(frame.a, frame.b, strict=True)) if k not in others
        ]  # fmt: skip
        lengths = [name for pair in pairs for name in pair]
        self._chain: list[tuple[int, int]] = []  # point, from
        away, turned, heading = [], [], []  # its two columns, and where it lies from there
        while step := next(((a, b) for a, b in pairs if a in known and b in free and b not in known), None):
            origin, name = step
            known.append(name)
            dx, dy = frame.base[at[name]] - frame.base[at[origin]]
            self._chain.append((at[name], at[origin]))
            away.append(frame.columns[name, 0])
            turned.append(frame.columns[name, 1])
            heading.append(float(np.arctan2(dx, dy)))
        self._away, self._turned = np.array(away, dtype=int), np.array(turned, dtype=int)
        self._heading = np.array(heading)
        alone = [lengths.count(frame.names[point]) == 1 for point, _ in self._chain]
        self._alone = self._turned[np.array(alone, dtype=bool)]

    def of(self, x: np.ndarray) -> np.ndarray:
        """Ranges and directions of free coordinates in x and y, (k, n) -> (k, n)."""
        xy, out = self._frame.spread(x), x.copy()
        point, origin = np.array(self._chain, dtype=int).reshape(-1, 2).T
        dx, dy = np.moveaxis(xy[:, point] - xy[:, origin], -1, 0)
        out[:, self._away] = np.hypot(dx, dy)
        out[:, self._turned] = (np.arctan2(dx, dy) - self._heading + np.pi) % (2.0 * np.pi) - np.pi
        return out

    def places(self, rows: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Every point's place (k, points, 2), and the logarithm of the ground one step covers (k,)."""
        xy = self._frame.spread(rows)
        away, way = rows.T[self._away], rows.T[self._turned] + self._heading[:, None]
        step = np.stack([away * np.sin(way), away * np.cos(way)], axis=-1)
        for (point, origin), each in zip(self._chain, step, strict=True):  # in order: a chain from the tee
            xy[:, point] = xy[:, origin] + each
        ground = np.log(np.maximum(away, 1e-9)).sum(axis=0)
        good = (away > 0.0).all(axis=0)
        good &= (np.abs(rows[:, self._alone]) < 0.5 * np.pi).all(axis=1)
        return xy, np.where(good, ground, -NEVER)

    def cost(self, rows: np.ndarray) -> np.ndarray:
        """Minus the logarithm of the density over ranges and directions, (k, n) -> (k,)."""
        xy, ground = self.places(rows)
        return self._frame.cost(xy) - ground
