"""A simple hole simulated anew in numpy, without the engine, under the same simple plan.

A straight fairway, a round green, nothing else; one full club and chips at the pin. Here are drawn: strikes
from the bag's spreads, flights from the flight table by scipy, every hop by Penner's law, the roll, putts
from the putting table. The engine plays the same plan: full club until a part swing reaches, then a part
swing straight at the pin with a carry of nine tenths of the distance. Only numbers in tables are shared.
"""

import math
from dataclasses import replace

import numpy as np
import pytest
from naive import BALL_RADIUS_M, YD, Flights
from small_games import bag_of, straight_hole, tell, with_numbers

from simulator.engine import play
from simulator.hole.surfaces import Lie
from simulator.kernels import codes as c
from simulator.physics.ground import GROUNDS, HOP_LEAST_MPS, RESTITUTION_MOST, TILT_MOST_MPS, TILT_MOST_RAD
from simulator.physics.lies import lie_effect, lie_group
from simulator.physics.strike import start_and_curve_sd
from simulator.tables.flights import FRACTIONS, turn_per_tilt
from simulator.tables.game import make_board

LENGTH_YD, HALF_FAIRWAY_YD, GREEN_RADIUS_YD = 330.0, 16.0, 14.0
PLAYER = 'name = "two clubs"\nhandicap = 12\nclubs = ["5-iron", "sand wedge"]\n'
PART_SHARE = 0.9
N = 60_000


def surface_of(x, y):
    """Name of the ground at each place, by its own geometry (no raster)."""
    out = np.where(np.hypot(x, y - LENGTH_YD) < GREEN_RADIUS_YD, "GREEN", "ROUGH")
    return np.where((out == "ROUGH") & (np.abs(x) < HALF_FAIRWAY_YD) & (y > 40) & (y < 300), "FAIRWAY", out)


def penner(surface, along, into, spin):
    """Penner's impact on arrays [m/s, rad/s], the surface of each ball by name."""
    column = {
        name: [getattr(GROUNDS[s], name) for s in ("GREEN", "ROUGH", "FAIRWAY")]
        for name in ("tilt_scale", "restitution_scale", "friction")
    }
    which = np.select([surface == "GREEN", surface == "ROUGH"], [0, 1], 2)
    scale, bouncy, mu = (np.array(column[name])[which] for name in column)
    v, phi = np.hypot(along, into), np.arctan2(along, into)
    theta = np.minimum(
        np.radians(15.4) * np.minimum(v, TILT_MOST_MPS) / 18.6 * phi / np.radians(44.4) * scale,
        np.minimum(phi, TILT_MOST_RAD),
    )
    u, n = v * np.sin(phi - theta), v * np.cos(phi - theta)
    e = np.where(n <= 20, 0.510 - 0.0375 * n + 0.000903 * n * n, 0.120)
    e = np.minimum(e * bouncy, RESTITUTION_MOST)
    slip = u + BALL_RADIUS_M * spin
    grips = 2 / 7 * np.abs(slip) <= mu * (1 + e) * n
    push = np.sign(slip) * mu * (1 + e) * n
    gripped = 5 / 7 * u - 2 / 7 * BALL_RADIUS_M * spin
    spin = np.where(grips, -gripped / BALL_RADIUS_M, spin - 2.5 * push / BALL_RADIUS_M)
    u, n = np.where(grips, gripped, u - push), e * n
    return u * np.cos(theta) - n * np.sin(theta), n * np.cos(theta) + u * np.sin(theta), spin


def run_to_rest(x, y, vx, vy, down, spin):
    """Every hop until it would start lower than the engine plays it (0.6 m/s up), then the roll in tenths of a yard; x, y in yards.

    Returns the places at rest, and which balls dropped into the hole on the way: rolling over it within
    R sqrt(1 - v / 1.63 m/s) of its middle (Holmes 1991, Penner 2002, from memory).
    """
    along, into = np.hypot(vx, vy) * YD, down * YD
    head = np.stack([vx, vy]) / np.maximum(np.hypot(vx, vy), 1e-9)
    hops = np.ones(x.size, dtype=bool)
    for _ in range(400):
        k = np.flatnonzero(hops)
        if not k.size:
            break
        along[k], out, spin[k] = penner(surface_of(x[k], y[k]), along[k], into[k], spin[k])
        ends = out < HOP_LEAST_MPS
        hops[k[ends]] = False
        k, out = k[~ends], out[~ends]
        step = along[k] * 2 * out / 9.80665 / YD
        x[k], y[k], into[k] = x[k] + head[0, k] * step, y[k] + head[1, k] * step, out
        back = k[along[k] < 0]
        along[back], spin[back], head[:, back] = -along[back], -spin[back], -head[:, back]
    v = 5 / 7 * along - 2 / 7 * BALL_RADIUS_M * spin
    head, v, step = head * np.sign(v), np.abs(v), 0.1
    holed = np.zeros(x.size, dtype=bool)
    mu = {s: GROUNDS[s].rolling_friction for s in ("GREEN", "ROUGH", "FAIRWAY")}
    for _ in range(4000):
        k = np.flatnonzero((v > 1e-6) & ~holed)
        if not k.size:
            break
        here = surface_of(x[k], y[k])
        slow = (
            np.select([here == "GREEN", here == "ROUGH"], [mu["GREEN"], mu["ROUGH"]], mu["FAIRWAY"]) * 9.80665
        )
        length = np.minimum(step, v[k] ** 2 / (2 * slow) / YD)
        # abreast of the hole within this step?
        ahead = -(x[k] * head[0, k] + (y[k] - LENGTH_YD) * head[1, k])
        beside = np.abs(x[k] * head[1, k] - (y[k] - LENGTH_YD) * head[0, k]) * YD
        there = (ahead >= 0) & (ahead < length) & (v[k] < 1.63)
        holed[k[there & (beside < 0.054 * np.sqrt(np.maximum(1 - v[k] / 1.63, 0)))]] = True
        x[k], y[k] = x[k] + head[0, k] * length, y[k] + head[1, k] * length
        v[k] = np.sqrt(np.maximum(v[k] ** 2 - 2 * slow * length * YD, 0.0))
    return x, y, holed


class Golf:
    """The bag as spreads and tables; everything drawn with numpy."""

    def __init__(self, bag, seed):
        self.bag, self.rng = bag, np.random.default_rng(seed)
        self.flights = [Flights(bag.flights, row) for row in range(len(bag.shots))]
        self.turn = turn_per_tilt(bag.flights.still)
        self.roots = np.sqrt(bag.putts.distance_yd)

    def effect(self, lie, row):
        """What the lie does to the shot of a row."""
        shot = self.bag.shots.shots[row]
        group = lie_group(shot.club.kind, shot.flight in ("part", "punch"))
        return lie_effect(lie.name.lower(), group, shot.carry_yd)

    def swing(self, lie, distance):
        """Row and scale for each ball: the full iron, or the shortest part swing that is long enough."""
        parts = range(self.bag.shots.first_part, self.bag.shots.first_punch)
        carries = np.array([
            self.bag.shots.shots[r].carry_yd
            * self.effect(lie, r).carry_factor
            for r in parts
        ])  # fmt: skip
        goal = np.maximum(PART_SHARE * distance, 1.0)
        k = np.minimum(np.searchsorted(carries, goal), carries.size - 1)
        full = goal > carries[-1]
        row = np.where(full, 0, self.bag.shots.first_part + k)
        return row, np.where(full, 1.0, np.minimum(goal / carries[k], 1.0))

    def strike(self, x, y, lie):
        """One stroke of every ball from one kind of lie, straight at the pin; rests and holed."""
        rng, distance = self.rng, np.hypot(x, LENGTH_YD - y)
        rows, scales = self.swing(lie, distance)
        out = np.zeros((x.size, 6))
        start = np.arctan2(-x, LENGTH_YD - y)
        for row in np.unique(rows):
            k = np.flatnonzero(rows == row)
            shot = self.bag.shots.shots[row]
            spread, effect = shot.spread, self.effect(lie, row)
            solid = (1 + spread.bias_long_pct / 100) * effect.carry_factor
            bad = rng.random(k.size) < spread.mishit_rate * effect.mishit_factor
            mean = 1 + spread.bias_long_pct / 100 - bad * spread.mishit_loss_pct / 100
            sd = np.where(bad, spread.mishit_distance_sd_pct, spread.distance_sd_pct) / 100
            carry = rng.normal(mean, sd * effect.distance_factor)
            carry *= rng.normal(effect.carry_factor, effect.carry_factor_sd, k.size)
            wide = np.where(bad, spread.mishit_direction_factor, 1.0) * effect.direction_factor
            start_sd, curve_sd = start_and_curve_sd(math.radians(spread.direction_sd_deg))
            start[k] += rng.normal(0, start_sd * wide)
            tilt = rng.normal(0, curve_sd * wide) / np.interp(solid / shot.stretch, FRACTIONS, self.turn[row])
            out[k] = self.flights[row](start[k], scales[k] * carry / shot.stretch, tilt)
            out[k, 5] *= effect.spin_factor
        s, t = np.sin(start), np.cos(start)
        return run_to_rest(
            x + out[:, 0] * s + out[:, 1] * t, y + out[:, 0] * t - out[:, 1] * s,
            out[:, 2] * s + out[:, 3] * t, out[:, 2] * t - out[:, 3] * s, out[:, 4], out[:, 5].copy(),
        )  # fmt: skip

    def hole_out(self, count):
        """Strokes of `count` plays of the hole from its tee."""
        x, y, strokes = np.zeros(count), np.zeros(count), np.zeros(count)
        where = np.full(count, "TEE", dtype="<U8")
        for _ in range(40):
            playing = where != "DONE"
            if not playing.any():
                break
            for lie in (Lie.TEE, Lie.FAIRWAY, Lie.ROUGH):
                k = np.flatnonzero(playing & (where == lie.name))
                if not k.size:
                    continue
                strokes[k] += 1
                x[k], y[k], holed = self.strike(x[k].copy(), y[k].copy(), lie)
                where[k] = np.where(holed, "DONE", surface_of(x[k], y[k]))
                green = k[where[k] == "GREEN"]
                strokes[green] += self.putts(np.hypot(x[green], y[green] - LENGTH_YD))
                where[green] = "DONE"
        return strokes

    def putts(self, distance):
        """Putts drawn from the table's chances."""
        u, table = self.rng.random(distance.size), self.bag.putts
        chances = np.stack(
            [np.interp(np.sqrt(distance), self.roots, table.chances[0, 0, :, n]) for n in range(4)]
        )
        return 1 + (u >= chances).sum(axis=0)


def planned_board(bag):
    """The engine's board with the same plan written at every node, no map needed."""
    hole = straight_hole(
        LENGTH_YD, green_yd=2 * GREEN_RADIUS_YD,
        more="fairway = [{ from_yd = 40, to_yd = 300, "
        f"left_yd = -{HALF_FAIRWAY_YD}, right_yd = {HALF_FAIRWAY_YD} }}]\n"
        "tee_ground = [{ xy_yd = [[-3, -9], [3, -9], [3, -5], [-3, -5]] }]",
    )  # fmt: skip
    # fine raster: the other simulation has none; near nodes: the plan's carry depends on the node's distance
    board = make_board(hole, bag, coarse_yd=2.0, fine_yd=1.0, cell_yd=0.5)
    board = with_numbers(board, {c.HOLE_OUT_SCALE: 1.0})
    game, plans = board.game, []
    for grid, plan in ((board.nodes.coarse, game.coarse_plan), (board.nodes.fine, game.fine_plan)):
        x = grid.x0_yd + np.arange(grid.columns)[None, :] * grid.step_yd
        y = grid.y0_yd + np.arange(grid.rows)[:, None] * grid.step_yd
        distance = np.hypot(x, LENGTH_YD - y)
        new = np.full(plan.shape, c.NO_SHOT, np.float32)
        for lie in range(plan.shape[0]):
            full = PART_SHARE * distance > board.longest_yd(c.PART_SHOT, lie)
            new[lie, ..., 0] = np.where(full, 0.0, c.PART_SHOT)
            new[lie, ..., 1] = 0.0
            new[lie, ..., 2] = np.where(full, 0.0, (PART_SHARE - 1.0) * distance)
        plans.append(new)
    field = game.field._replace(
        coarse=np.where(board.nodes.coarse.wanted, 3.0, np.nan),
        fine=np.where(board.nodes.fine.wanted, 3.0, np.nan),
    )
    return replace(board, game=game._replace(field=field, coarse_plan=plans[0], fine_plan=plans[1]))


def test_expected_score_and_distribution():
    bag = bag_of(PLAYER)
    board = planned_board(bag)
    action = np.array([0.0, 0.0, 0.0])
    mine = play(board, 0.0, 0.0, int(Lie.TEE), action, action, 5.0, seed=6, sequences=4 * N, threads=2).score
    other = Golf(bag, 12).hole_out(N)
    error = math.hypot(mine.std() / math.sqrt(mine.size), other.std() / math.sqrt(N))
    tell(
        f"engine {mine.mean():.4f}, numpy {other.mean():.4f}, "
        f"difference {mine.mean() - other.mean():+.4f} +- {error:.4f}"
    )
    # 3 standard errors, and 0.01 for what the engine does coarser: skips as one run, the plan by nodes
    assert mine.mean() == pytest.approx(other.mean(), abs=3 * error + 0.01)
    for score in range(3, 9):
        p, q = np.mean(mine == score), np.mean(other == score)
        se = math.sqrt(q * (1 - q) * (1 / N + 1 / mine.size))
        assert p == pytest.approx(q, abs=4 * se + 0.006), score
