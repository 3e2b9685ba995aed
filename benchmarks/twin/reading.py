"""Tables read at many places at once: the rasters, the value map, the plan, the putts, the flights."""

from __future__ import annotations

import numpy as np

from simulator.kernels import codes as c
from simulator.kernels.game import Game

Array = np.ndarray


def nodes_of(value: Array, start: float, per: float, count: int) -> tuple[Array, Array]:
    """Lower node and share of the way to the next on an even axis, `per` nodes a unit, clamped."""
    place = np.clip((value - start) * per, 0.0, count - 1.0)
    node = np.minimum(place.astype(np.intp), count - 2)
    return node, place - node


AIM_APART, REACH_APART = 0.09, 10.0
"""Neighbouring nodes whose aims [rad] and reaches [yd] are no farther apart than this play the same way."""


class Reading:
    """The arrays of a game, and how each is read at float64[n] places [yd]."""

    def __init__(self, game: Game) -> None:
        self.game = game
        self.numbers = numbers = game.ground.numbers
        self.surface, self.rows = game.ground.surface, game.ground.rows
        self.level = game.ground.relief.shape[0] == 1
        self.height, self.grad_x, self.grad_y, _ = np.moveaxis(game.ground.relief, -1, 0)
        self.fate = self.rows[:, c.SURFACE_FATE].astype(np.intp)[self.surface]
        self.lie = self.rows[:, c.SURFACE_LIE].astype(np.intp)[self.surface]
        self.wet = self.fate == c.FATE_PENALTY_WET
        self.penalty = self.wet | (self.fate == c.FATE_PENALTY_DRY)
        self.pin = float(numbers[c.PIN_X]), float(numbers[c.PIN_Y])
        self.green = int(numbers[c.LIE_GREEN])
        field = game.field
        self.grids = (
            (
                field.coarse,
                game.coarse_plan,
                numbers[c.COARSE_X0],
                numbers[c.COARSE_Y0],
                numbers[c.COARSE_PER_YD],
            ),
            (field.fine, game.fine_plan, numbers[c.FINE_X0], numbers[c.FINE_Y0], numbers[c.FINE_PER_YD]),
        )
        # ground without a value weighs nothing in a mean: its value is 0 here and its weight 0
        self.known = [(np.nan_to_num(g[0]), np.isfinite(g[0])) for g in self.grids]

    def cell(self, x: Array, y: Array) -> tuple[Array, Array]:
        """Raster row and column of places."""
        n = self.numbers
        column = ((x - n[c.RASTER_X0]) * n[c.RASTER_PER_YD]).astype(np.intp)
        row = ((y - n[c.RASTER_Y0]) * n[c.RASTER_PER_YD]).astype(np.intp)
        ny, nx = self.surface.shape
        return np.clip(row, 0, ny - 1), np.clip(column, 0, nx - 1)

    def ground_height(self, x: Array, y: Array) -> Array:
        """Height of the ground [yd]."""
        return self.height[self.cell(x, y)].astype(float) if not self.level else np.zeros(x.shape)

    def out_yd(self, x: Array, y: Array) -> Array:
        """Distance to the pin."""
        return np.hypot(x - self.pin[0], y - self.pin[1])

    def _in_fine(self, x: Array, y: Array) -> Array:
        field, _, x0, y0, per = self.grids[1]
        _, rows, columns = field.shape
        i, j = (x - x0) * per, (y - y0) * per
        return (i >= 0.0) & (i < columns - 1.0) & (j >= 0.0) & (j < rows - 1.0)

    def _corners(self, grid: int, x: Array, y: Array) -> tuple[Array, Array, Array, Array]:
        field, _, x0, y0, per = self.grids[grid]
        i, a = nodes_of(x, x0, per, field.shape[2])
        j, b = nodes_of(y, y0, per, field.shape[1])
        return i, a, j, b

    def map_value(self, lie: Array, x: Array, y: Array) -> Array:
        """Value map off the green, NaN where it has none."""
        out = np.empty(x.shape)
        fine = self._in_fine(x, y)
        for grid, here in ((0, ~fine), (1, fine)):
            if not here.any():
                continue
            i, a, j, b = self._corners(grid, x[here], y[here])
            values, known = self.known[grid]
            columns = values.shape[2]
            flat = (lie[here] * values.shape[1] + j) * columns + i
            values, known = values.reshape(-1), known.reshape(-1)
            total, weight = np.zeros(i.shape), np.zeros(i.shape)
            for step, share in (
                (0, (1.0 - a) * (1.0 - b)), (1, a * (1.0 - b)),
                (columns, (1.0 - a) * b), (columns + 1, a * b),
            ):  # fmt: skip
                at = flat + step
                share = share * known[at]
                total += share * values[at]
                weight += share
            out[here] = np.where(weight > 1e-9, total / np.maximum(weight, 1e-9), np.nan)
        return out

    def value(self, lie: Array, x: Array, y: Array) -> Array:
        """Strokes to hole out from places and lies."""
        n = self.numbers
        on = lie >= self.green
        if not on.any():
            out = self.map_value(lie, x, y)
        else:
            out = np.empty(x.shape)
            out[on] = self.putts(lie[on] - self.green, x[on], y[on], 0)
            out[~on] = self.map_value(lie[~on], x[~on], y[~on])
        blank = np.isnan(out)
        if blank.any():
            worse = np.where(lie[blank] == n[c.LIE_FAIRWAY], 0.0, 0.25)
            out[blank] = n[c.GUESS_BASE] + worse + n[c.GUESS_PER_YD] * self.out_yd(x[blank], y[blank])
        return out

    def plan(self, lie: Array, x: Array, y: Array) -> Array:
        """Action stored at the nearest node that has one, float64[n, 3]."""
        out = np.empty((x.size, 3))
        fine = self._in_fine(x, y)
        for grid, here in ((0, np.flatnonzero(~fine)), (1, np.flatnonzero(fine))):
            if not here.size:
                continue
            i, a, j, b = self._corners(grid, x[here], y[here])
            action, found = self._blended(grid, lie[here], i, a, j, b)
            far = np.flatnonzero(~found)
            if far.size:
                wide = self._nearest(grid, lie[here][far], i[far], a[far], j[far], b[far], range(-3, 5))
                action[far] = wide[0]
                action[far[~wide[1]]] = c.PART_SHOT, 0.0, 0.0  # no plan for miles: straight at it
            out[here] = action
        return out

    def _blended(self, grid: int, lie: Array, i: Array, a: Array, j: Array, b: Array) -> tuple[Array, Array]:
        """The nearest corner's action, blended with corners that play alike; and whether there is one."""
        known, plan = self.known[grid][1], self.grids[grid][1]
        _, rows, columns = known.shape
        flat = (lie * rows + j) * columns + i
        at = flat + np.array([[0], [1], [columns], [columns + 1]])
        is_known, actions = known.reshape(-1)[at], plan.reshape(-1, 3)[at].astype(float)
        apart = np.stack(
            [a * a + b * b, (1 - a) ** 2 + b * b, a * a + (1 - b) ** 2, (1 - a) ** 2 + (1 - b) ** 2]
        )
        apart[~is_known] = np.inf
        n, nearest = np.arange(lie.size), apart.argmin(axis=0)
        near = actions[nearest, n]
        alike = (actions[..., 0] == near[:, 0]) & (np.abs(actions[..., 1] - near[:, 1]) < AIM_APART)
        alike &= np.abs(actions[..., 2] - near[:, 2]) < REACH_APART
        alike &= nearest == (a >= 0.5) + 2 * (b >= 0.5)  # else the nearest of all has no action: no blend
        alike[nearest, n] = True
        weight = alike * np.stack([(1 - a) * (1 - b), a * (1 - b), (1 - a) * b, a * b])
        near[:, 1:] = (weight[..., None] * actions[..., 1:]).sum(axis=0) / np.maximum(
            weight.sum(axis=0), 1e-12
        )[:, None]
        return near, np.isfinite(apart[nearest, n])

    def _nearest(
        self, grid: int, lie: Array, i: Array, a: Array, j: Array, b: Array, reach: tuple[int, ...] | range
    ) -> tuple[Array, Array]:
        known, plan = self.known[grid][1], self.grids[grid][1]
        _, rows, columns = known.shape
        best, at_j, at_i = np.full(i.shape, np.inf), j.copy(), i.copy()
        for dj in reach:
            for di in reach:
                jj, ii = np.clip(j + dj, 0, rows - 1), np.clip(i + di, 0, columns - 1)
                apart = np.where(known[lie, jj, ii], (a - di) ** 2 + (b - dj) ** 2, np.inf)
                nearer = apart < best
                best = np.where(nearer, apart, best)
                at_j, at_i = np.where(nearer, jj, at_j), np.where(nearer, ii, at_i)
        return plan[lie, at_j, at_i].astype(float), np.isfinite(best)

    def putts(self, plane: Array, x: Array, y: Array, column: int | slice) -> Array:
        """Columns of the putting table, linear in direction and in the root of distance."""
        table, n = self.game.field.putts, self.numbers
        dx, dy = x - self.pin[0], y - self.pin[1]
        away = np.hypot(dx, dy)
        place = np.sqrt(away) / n[c.PUTT_STEP]
        k = np.minimum(place.astype(np.intp), table.shape[2] - 2)
        wk = np.minimum(place - k, 1.0)
        tall = not isinstance(column, int)
        wk = wk[:, None] if tall else wk
        if table.shape[1] == 1:
            return (1.0 - wk) * table[plane, 0, k, column] + wk * table[plane, 0, k + 1, column]
        falls = self.game.field.planes[plane]
        fall = dx * falls[:, c.PLANE_FALLS_X] + dy * falls[:, c.PLANE_FALLS_Y]
        turn = np.arccos(np.clip(fall / np.maximum(away, 1e-9), -1.0, 1.0)) / np.pi * (table.shape[1] - 1)
        t = np.minimum(turn.astype(np.intp), table.shape[1] - 2)
        wt = (turn - t)[:, None] if tall else turn - t
        low = (1.0 - wk) * table[plane, t, k, column] + wk * table[plane, t, k + 1, column]
        high = (1.0 - wk) * table[plane, t + 1, k, column] + wk * table[plane, t + 1, k + 1, column]
        return low + wt * (high - low)
