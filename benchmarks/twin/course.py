"""Full sequences, a batch at a time: all balls of a batch play their stroke together."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from simulator.kernels import codes as c
from simulator.tables.game import Board

from .air import ALONG, Branches, Flights
from .ground import Run, flight_entry, pace
from .reading import Array, Reading
from .relief import Choices, from_bad_lie, from_penalty, replay_offer

BATCH = 16384
"""Balls played together: enough to hide the cost of a call, few enough to stay in the processor's cache."""


@dataclass(frozen=True)
class Start:
    """Where and how every sequence starts, and how the place is played when a stroke is replayed from it."""

    x_yd: float
    y_yd: float
    lie: int
    action: Array
    home: Array
    value: float


class Twin:
    """The golf of a solved board in numpy.

    Attributes
    ----------
    drawn : int
        Gaussian and uniform numbers drawn so far.
    """

    def __init__(self, board: Board) -> None:
        self.read = read = Reading(board.game)
        n, strikes = read.numbers, board.game.strikes
        if n[c.LOCAL_RULE_STROKES] > 0.0:
            raise NotImplementedError("the twin knows no local rule E-5")
        self.strikes, self.flights = strikes, Flights(read)
        self.branches = Branches(read) if board.game.trees.canopy.shape[0] > 1 else None
        self.drawn, self.shots = 0, 0
        stock = strikes[..., c.STRIKE_CARRY] * strikes[..., c.STRIKE_FRACTION]
        self.parts = {}
        for family in range(c.FAMILIES):
            low, count = (int(n[at + c.FAMILY_WIDE * family]) for at in (c.FAMILY_FIRST, c.FAMILY_COUNT))
            self.parts[-1.0 - family] = low, np.ascontiguousarray(stock[low : low + count].T)

    def play(
        self, start: Start, sequences: int, generator: np.random.Generator, most_strokes: int = 60
    ) -> Array:
        """Scores, float64[sequences]."""
        parts = [
            self._batch(start, min(BATCH, sequences - k), generator, most_strokes)
            for k in range(0, sequences, BATCH)
        ]
        return np.concatenate(parts)

    def _batch(self, start: Start, count: int, generator: np.random.Generator, most_strokes: int) -> Array:
        read, n = self.read, self.read.numbers
        score = np.zeros(count)
        at = np.arange(count)
        x, y = np.full(count, start.x_yd), np.full(count, start.y_yd)
        lie, home = np.full(count, start.lie), np.ones(count, bool)
        wind_x, wind_y = np.zeros(count), np.zeros(count)
        if n[c.WIND_SPEED] or n[c.WIND_GUST]:
            gust, swing = self._uniform(generator, 2, count) - 0.5
            speed = n[c.WIND_SPEED] + 2.0 * gust * n[c.WIND_GUST]
            bearing = n[c.WIND_BEARING] + 2.0 * swing * n[c.WIND_SWING]
            wind_x, wind_y = speed * np.sin(bearing), speed * np.cos(bearing)
        for stroke in range(most_strokes):
            if stroke == 0:
                action = np.broadcast_to(start.action, (count, 3))
                replay = np.full(count, start.value)
            else:
                action, replay = np.empty((at.size, 3)), np.empty(at.size)
                action[home], replay[home] = start.home, start.value
                gone = ~home
                action[gone] = read.plan(lie[gone], x[gone], y[gone])
                replay[gone] = read.value(lie[gone], x[gone], y[gone])
            done, spent, x, y, lie, stayed = self._stroke(
                x, y, lie, action, replay, (wind_x[at], wind_y[at]), generator
            )
            home &= stayed
            score[at] += spent
            on = (lie >= read.green) & ~done & ~stayed
            if on.any():
                chances = read.putts(lie[on] - read.green, x[on], y[on], slice(1, 5))
                u = self._uniform(generator, int(on.sum()))
                score[at[on]] += 1.0 + (u[:, None] >= chances).sum(axis=1)
            go = ~(done | on)
            at, x, y, lie, home = at[go], x[go], y[go], lie[go], home[go]
            if not at.size:
                break
        return score

    def _uniform(self, generator: np.random.Generator, *shape: int) -> Array:
        out = generator.random(shape)
        self.drawn += out.size
        return out

    def _rows(self, lie: Array, shot: Array, reach: Array, out: Array) -> tuple[Array, Array]:
        """Shot row and scale of each action."""
        row, scale = shot.astype(np.intp), np.ones(lie.size)
        for code, (first, stock) in self.parts.items():
            k = np.flatnonzero(shot == code)
            if not k.size:
                continue
            carry, have = np.maximum(out[k] + reach[k], 1.0), stock[lie[k]]
            enough = have >= carry[:, None]
            pick = np.where(enough.any(axis=1), enough.argmax(axis=1), have.shape[1] - 1)
            row[k] = first + pick
            scale[k] = np.minimum(carry / np.maximum(have[np.arange(k.size), pick], 1e-6), 1.0)
        return row, scale

    def _stroke(
        self, x: Array, y: Array, lie: Array, action: Array, replay: Array, wind: tuple[Array, Array],
        generator: np.random.Generator,
    ) -> tuple[Array, Array, Array, Array, Array, Array]:  # fmt: skip
        """One stroke of every ball: holed, strokes spent, next x, y, lie, played from the old place again."""
        read, n, count = self.read, self.read.numbers, x.size
        self.shots += count
        dx, dy = read.pin[0] - x, read.pin[1] - y
        reach, putts = action[:, 2].copy(), np.flatnonzero(action[:, 0] == c.PUTT_SHOT)
        out = np.hypot(dx, dy)
        if putts.size:
            bearing = np.arctan2(dx[putts], dy[putts]) + action[putts, 1]
            way = np.maximum(out[putts] + reach[putts], 1.0)
            reach[putts] = pace(read, x[putts], y[putts], bearing, way) - out[putts]
        row, scale = self._rows(lie, action[:, 0], reach, out)
        s = self.strikes[row, lie].T
        z_speed, z_start, z_tilt, z_lie = generator.standard_normal((4, count))
        self.drawn += 4 * count
        mishit = self._uniform(generator, count) < s[c.STRIKE_MISHIT_RATE]
        swing = np.where(
            mishit,
            s[c.STRIKE_MISHIT_KEEP] + s[c.STRIKE_MISHIT_SD] * z_speed,
            1.0 + s[c.STRIKE_SD] * z_speed,
        ) * (1.0 + s[c.STRIKE_LIE_SD] * z_lie)  # fmt: skip
        wide = np.where(mishit, s[c.STRIKE_MISHIT_WIDE], 1.0) * n[c.SIDE]
        fraction = np.maximum(scale * s[c.STRIKE_FRACTION] * swing, n[c.FRACTION_0])
        bearing = (
            np.arctan2(dx, dy) + action[:, 1] + s[c.STRIKE_START_BIAS] + wide * s[c.STRIKE_START_SD] * z_start
        )
        tilt = wide * s[c.STRIKE_TILT_SD] * z_tilt
        sin_b, cos_b = np.sin(bearing), np.cos(bearing)
        along_wind, cross_wind = wind[0] * sin_b + wind[1] * cos_b, wind[0] * cos_b - wind[1] * sin_b
        corners, mirror = self.flights.axes(row, fraction, tilt, along_wind, cross_wind)
        along, side, v_along, v_side, down, spin = self.flights.land(x, y, bearing, corners, mirror).T.copy()
        land_x, land_y = x + along * sin_b + side * cos_b, y + along * cos_b - side * sin_b
        vx, vy = v_along * sin_b + v_side * cos_b, v_along * cos_b - v_side * sin_b
        if self.branches is not None:
            near = self.branches.near(x, y, bearing, along, side)
            if near.size:
                some = [(i[near], w[near]) for i, w in corners]
                u_hit, u_keep, u_turn = self._uniform(generator, 3, near.size)
                lowest = along[near]
                if self.flights.table.shape[5] > 1:
                    lowest = self.flights.at_height(some, 0)[:, ALONG]
                hit, way, off, height = self.branches.first(
                    x[near], y[near], bearing[near], some, mirror[near], lowest, -np.log(u_hit)
                )
                k, way, off, height = near[hit], way[hit], off[hit], height[hit]
                left = np.maximum(along[k] - way, 0.0) * n[c.TREE_KEEP] * u_keep[hit]
                head_x, head_y = np.sin(2.0 * np.pi * u_turn[hit]), np.cos(2.0 * np.pi * u_turn[hit])
                land_x[k] = x[k] + way * sin_b[k] + off * cos_b[k] + left * head_x
                land_y[k] = y[k] + way * cos_b[k] - off * sin_b[k] + left * head_y
                vx[k], vy[k], spin[k] = n[c.TREE_SPEED] * head_x, n[c.TREE_SPEED] * head_y, 0.0
                down[k] = np.sqrt(2.0 * n[c.GRAVITY] * np.maximum(height, 0.5))
                along[k], side[k] = way, off
        entry_x, entry_y = x.copy(), y.copy()
        wet = np.flatnonzero(read.penalty[read.cell(land_x, land_y)])
        if wet.size:
            entry_x[wet], entry_y[wet] = flight_entry(
                read, x[wet], y[wet], bearing[wet], along[wet], side[wet], land_x[wet], land_y[wet]
            )
        run = Run(read, land_x, land_y, vx, vy, down, spin * s[c.STRIKE_SPIN])
        entry_x = np.where(run.entered, run.entry_x, entry_x)
        entry_y = np.where(run.entered, run.entry_y, entry_y)
        return self._settle(x, y, lie, replay, run, (entry_x, entry_y), s[c.STRIKE_SIDEWAYS], generator)

    def _settle(
        self, x: Array, y: Array, old_lie: Array, replay: Array, run: Run, entry: tuple[Array, Array],
        sideways: Array, generator: np.random.Generator,
    ) -> tuple[Array, Array, Array, Array, Array, Array]:  # fmt: skip
        """By the Rules: lost, out of bounds, penalty area, unplayable, holed, or as it lies."""
        read, n, game = self.read, self.read.numbers, self.read.game
        cell = read.cell(run.x, run.y)
        fate, feature = read.fate[cell], game.feature_rows[game.feature[cell] + 1]
        lie = read.lie[cell] + np.where(fate == c.FATE_GREEN, feature[:, c.FEATURE_PLANE].astype(np.intp), 0)
        lost = np.flatnonzero((feature[:, c.FEATURE_LOST] > 0.0) & (fate <= c.FATE_GREEN))
        if lost.size:
            lost = lost[self._uniform(generator, lost.size) < feature[lost, c.FEATURE_LOST]]
        gone = fate == c.FATE_OUT
        gone[lost] = True
        penalty = (fate == c.FATE_PENALTY_WET) | (fate == c.FATE_PENALTY_DRY)
        rests = ~gone & (fate != c.FATE_PENALTY_WET)
        best = Choices(np.full(x.size, 1e9), x.copy(), y.copy(), np.full(x.size, -1), np.zeros(x.size))
        at = np.flatnonzero(rests)
        best.total[at], best.lie[at] = read.value(lie[at], run.x[at], run.y[at]), lie[at]
        best.x[at], best.y[at] = run.x[at], run.y[at]
        out = np.flatnonzero(gone)
        replay_offer(best, out, replay, n[c.PENALTY_STROKES])
        wet = np.flatnonzero(penalty)
        if wet.size:
            from_penalty(read, best, wet, entry, feature[:, c.FEATURE_LATERAL] > 0.5, replay)
        bad = np.flatnonzero(rests & (fate == c.FATE_PLAY))
        bad = bad[game.lie_rows[lie[bad]] != c.UNPLAYABLE_NEVER]
        if bad.size:
            from_bad_lie(read, best, bad, run.x, run.y, replay)
        on = np.flatnonzero(rests & (fate == c.FATE_GREEN))
        done = np.zeros(x.size, bool)
        if on.size:
            chance = self._holed(x[on], y[on], run, on, sideways[on])
            maybe = chance > 0.0
            on, chance = on[maybe], chance[maybe]
            done[on] = self._uniform(generator, on.size) < chance
        stayed = best.lie < 0
        best.x[stayed], best.y[stayed], best.lie[stayed] = x[stayed], y[stayed], old_lie[stayed]
        return done, 1.0 + best.penalty, best.x, best.y, best.lie, stayed

    def _holed(self, x: Array, y: Array, run: Run, on: Array, sideways: Array) -> Array:
        """Chance that a ball from off the green that rolled past the hole was holed on the way."""
        n, read = self.read.numbers, self.read
        dx, dy = run.x[on] - read.pin[0], run.y[on] - read.pin[1]
        past = dx * run.head_x[on] + dy * run.head_y[on]
        wide = np.abs(dx * run.head_y[on] - dy * run.head_x[on])
        strip = np.maximum(0.5 * sideways * read.out_yd(x, y), 0.25)
        may = (past > 0.0) & (past < n[c.CAPTURE_PAST]) & (past <= run.rolled[on]) & (wide <= strip)
        share = np.where(may, past / n[c.CAPTURE_PAST], 1.0)
        half = n[c.HOLE_HALF_WIDTH] * np.sqrt(1.0 - np.sqrt(share))
        return np.where(may, np.minimum(n[c.HOLE_OUT_SCALE] * half / strip, 0.9), 0.0)
