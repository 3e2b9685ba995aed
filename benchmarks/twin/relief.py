"""Cheapest legal way on of many balls at once: every place allowed, a row of candidates a ball."""

from __future__ import annotations

import numpy as np

from simulator.kernels import codes as c

from .reading import Array, Reading


class Choices:
    """Best way on so far of each ball: total strokes, place, lie (-1: the old place) and penalty."""

    def __init__(self, total: Array, x: Array, y: Array, lie: Array, penalty: Array) -> None:
        self.total, self.x, self.y, self.lie, self.penalty = total, x, y, lie, penalty

    def offer(self, at: Array, total: Array, x: Array, y: Array, lie: Array, penalty: float) -> None:
        """Another way on for the balls `at`, taken where it is cheaper."""
        good = total < self.total[at]
        at = at[good]
        self.total[at], self.x[at], self.y[at] = total[good], x[good], y[good]
        self.lie[at], self.penalty[at] = lie[good], penalty


def back_places(read: Reading, x: Array, y: Array) -> tuple[Array, Array]:
    """Seven places behind (x, y) on the line from the hole, float64[n, 7]."""
    back = [read.numbers[c.DROP_BACK]]
    for _ in range(6):
        back.append(1.8 * back[-1] + 1.5)
    away = np.maximum(read.out_yd(x, y), 1e-6)
    ux, uy = (x - read.pin[0]) / away, (y - read.pin[1]) / away
    return x[:, None] + ux[:, None] * back, y[:, None] + uy[:, None] * back


def beside_places(read: Reading, x: Array, y: Array) -> tuple[Array, Array]:
    """Five places two club-lengths from (x, y), not nearer the hole, float64[n, 5]."""
    turn = np.pi / 4 * np.arange(-2, 3)
    away = np.maximum(read.out_yd(x, y), 1e-6) / read.numbers[c.TWO_CLUBS]
    ux, uy = ((x - read.pin[0]) / away)[:, None], ((y - read.pin[1]) / away)[:, None]
    return x[:, None] + ux * np.cos(turn) + uy * np.sin(turn), y[:, None] + uy * np.cos(turn) - ux * np.sin(
        turn
    )


def drop(
    read: Reading,
    best: Choices,
    at: Array,
    places: tuple[Array, Array],
    strokes: float,
    no_sand: bool = False,
) -> None:
    """Offer the best of a row of places to each ball of `at`."""
    x, y = places
    cell = read.cell(x, y)
    lie = read.lie[cell]
    allowed = read.fate[cell] <= c.FATE_GREEN
    if no_sand:
        allowed &= read.game.lie_rows[lie] != c.UNPLAYABLE_SAND
    total = np.full(x.shape, 1e9)
    total[allowed] = strokes + read.value(lie[allowed], x[allowed], y[allowed])
    k = np.arange(at.size), total.argmin(axis=1)
    best.offer(at, total[k], x[k], y[k], lie[k], strokes)


def replay_offer(best: Choices, at: Array, replay: Array, strokes: float) -> None:
    """Offer stroke and distance."""
    best.offer(at, strokes + replay[at], best.x[at], best.y[at], np.full(at.size, -1), strokes)


def from_penalty(
    read: Reading, best: Choices, at: Array, entry: tuple[Array, Array], lateral: Array, replay: Array
) -> None:
    """Rule 17.1d."""
    strokes = read.numbers[c.PENALTY_STROKES]
    drop(read, best, at, back_places(read, entry[0][at], entry[1][at]), strokes)
    red = at[lateral[at]]
    if red.size:
        drop(read, best, red, beside_places(read, entry[0][red], entry[1][red]), strokes)
    replay_offer(best, at, replay, strokes)


def from_bad_lie(read: Reading, best: Choices, at: Array, x: Array, y: Array, replay: Array) -> None:
    """Rules 19.2 and 19.3; only balls for which a drop could be cheaper are looked at."""
    n = read.numbers
    strokes = n[c.PENALTY_STROKES]
    rough = read.map_value(np.full(at.size, int(n[c.LIE_ROUGH])), x[at], y[at]) - n[c.LIE_GAIN]
    bound = np.where(np.isnan(rough), -np.inf, rough)
    at = at[best.total[at] > strokes + np.minimum(replay[at], bound)]
    if not at.size:
        return
    sand = read.game.lie_rows[best.lie[at]] == c.UNPLAYABLE_SAND
    inside, other = at[sand], at[~sand]
    if inside.size:
        drop(read, best, inside, back_places(read, x[inside], y[inside]), n[c.SAND_STROKES], no_sand=True)
    if other.size:
        drop(read, best, other, back_places(read, x[other], y[other]), strokes)
        drop(read, best, other, beside_places(read, x[other], y[other]), strokes)
    replay_offer(best, at, replay, strokes)
