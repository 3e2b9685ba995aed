"""The value map against a general solver of decision problems, on the engine's own transitions.

A small hole with nodes far apart is a finite problem: at each node a few actions, each a mean over fixed
strikes. Its transition matrix is made here, shot by shot through the engine's one shot function, every finish
spread over the nodes round it by bilinear weights written here. QuantEcon's DiscreteDP solves it.
"""

from dataclasses import replace

import numba
import numpy as np
import pytest
from naive import Ground
from one_ball import play_shot
from small_games import bag_of, solved, straight_hole, tell

from simulator.engine import value_actions
from simulator.hole.surfaces import LIE_OF, Lie, Surface
from simulator.kernels import codes as c
from simulator.kernels.game import Luck
from simulator.physics.ground import GROUNDS
from simulator.tables.luck import strike_sets


def _play_shots(game, x, y, lie, rows, bearing, scales, replay, drawn):
    """One shot a strike; float64[strikes, n]. Still air, no trees: their luck is not used."""
    out = np.empty((x.size, 15))
    for n in range(x.size):
        luck = drawn[n]
        one = play_shot(
            game, x[n], y[n], lie, rows[n], bearing[n], scales[n], replay,
            Luck(luck[0], luck[1], luck[2], luck[3], luck[4], 0.0, 0.0, 0.5, 0.5, 0.0),
        )  # fmt: skip
        out[n] = np.array(one[:15])
    return out


play_shots = _play_shots if numba.config.DISABLE_JIT else numba.njit(error_model="numpy")(_play_shots)

PLAYER = """
name = "three clubs"
handicap = 10
clubs = ["5-iron", "9-iron", "54-degree wedge"]
"""
# out of bounds on one side: replayed strokes are self-loops of the problem
HOLE = """
fairway = [{ from_yd = 20, to_yd = 160, left_yd = -14, right_yd = 14 }]
bunker = [{ from_yd = 165, to_yd = 180, left_yd = -26, right_yd = -17 }]
out_of_bounds = [{ right_of_yd = 32 }]
"""
AIMS = np.radians([-7.0, 0.0, 4.0])
STRIKES = 32
REPLAY = 50.0  # dearer than anything: nobody replays by choice


class Problem:
    """Nodes, actions and strikes; the map as one vector over the nodes."""

    def __init__(self, hole, board):
        self.hole, self.board, self.ground = hole, board, Ground(board, hole)
        self.table, self.place = board.nodes.table, board.nodes.place
        self.count = len(self.table)
        grids = board.nodes.coarse, board.nodes.fine
        most = max(grid.rows for grid in grids), max(grid.columns for grid in grids)
        self.index = np.full((2, len(Lie), *most), -1)  # which node stands there
        self.index[tuple(self.place.T)] = np.arange(self.count)
        # scrambles dealt to the nodes: one scramble everywhere would err the same way everywhere
        self.sets = strike_sets(31, 16, STRIKES)
        self.actions = [self._actions(k) for k in range(self.count)]
        # the map is solved for balls anywhere in a node's cell; the engine's means of an action are not
        self.on_node = self.transitions(0.0)
        self.in_cell = self.transitions(1.0)

    def _actions(self, k):
        """The same number of actions at every node: the map's own, clubs and part swings at a few aims."""
        grid, lie, j, i = self.place[k]
        plan = self.board.game.fine_plan if grid else self.board.game.coarse_plan
        distance = self.table[k, 3]
        out = [plan[lie, j, i].astype(float)]
        for aim in AIMS:
            out += [(float(row), aim, 0.0) for row in self.board.allowed(int(lie))]
            out += [(c.PART_SHOT, aim, share * distance - distance) for share in (0.6, 0.9)]
        return np.array(out)

    def swings(self, lie, shot, reach, distance, x, y, bearing):
        """Rows and scales: part swings, chips and putts take the shortest tabled that is enough, scaled down."""
        bag, strikes = self.board.bag, self.board.game.strikes
        if shot >= 0.0:
            return np.full(distance.size, int(shot)), np.ones(distance.size)
        carry = np.maximum(distance + reach, 1.0)
        if shot == c.PUTT_SHOT:
            carry = np.array([self.weight(*place) for place in zip(x, y, bearing, carry, strict=True)])
        first, end = bag.shots.families[{c.PART_SHOT: 0, c.PUNCH_SHOT: 1, c.PUTT_SHOT: 2}[shot]]
        stock = strikes[first:end, lie, c.STRIKE_CARRY] * strikes[first:end, lie, c.STRIKE_FRACTION]
        enough = stock >= carry[:, None]
        part = np.where(enough.any(axis=1), enough.argmax(axis=1), stock.size - 1)
        return first + part, np.minimum(np.maximum(carry, 1.0) / stock[part], 1.0)

    def weight(self, x, y, bearing, way):
        """How far a putt that rolls so far here would roll on a level green of the default reading.

        A yard of grass takes of the square of a rolling ball's speed in proportion to its friction.
        """
        cell, total = self.board.raster.cell_yd, 0.0
        for start in np.arange(0.0, way, cell):
            length = min(cell, way - start)
            on = start + 0.5 * length
            there = self.ground.surface(x + on * np.sin(bearing), y + on * np.cos(bearing)).name
            total += length * GROUNDS[there].rolling_friction
        return total / GROUNDS["GREEN"].rolling_friction

    def transitions(self, spread):
        """(cost[node, action], chances[node, action, node]) from single shots; a replay stays at its node."""
        cost = np.zeros((self.count, len(self.actions[0])))
        chances = np.zeros((*cost.shape, self.count))
        pin_x, pin_y = self.hole.pin.x_yd, self.hole.pin.y_yd
        for k in range(self.count):
            lie = int(self.table[k, 2])
            step = (self.board.nodes.fine if self.place[k, 0] else self.board.nodes.coarse).step_yd
            drawn = self.sets[k % 16]
            x, y = (self.table[k, :2] + spread * step * drawn[:, 5:7]).T
            dx, dy = pin_x - x, pin_y - y
            ahead = np.where(np.hypot(dx, dy) < 1e-9, 0.0, np.arctan2(dx, dy))  # from the pin itself: up the hole
            for a, (shot, aim, reach) in enumerate(self.actions[k]):
                rows, scales = self.swings(lie, shot, reach, np.hypot(dx, dy), x, y, ahead + aim)
                out = play_shots(
                    self.board.game, x, y, lie, rows, ahead + aim, scales, REPLAY, drawn
                )
                surface, stays = out[:, 14].astype(int), 1.0 - out[:, 5]
                cost[k, a] += out[:, 3].sum() / STRIKES
                chances[k, a, k] += (surface == Surface.OUT_OF_BOUNDS).sum() / STRIKES
                green = surface == Surface.GREEN
                for kept, there_x, there_y in zip(stays[green], out[green, 12], out[green, 13], strict=True):
                    cost[k, a] += kept * self.ground.value(Lie.GREEN, there_x, there_y) / STRIKES
                on = out[~green & (surface != Surface.OUT_OF_BOUNDS)]
                lies = np.array([int(LIE_OF[Surface(int(one))]) for one in on[:, 14]], dtype=int)
                nodes, weights = self.weights(lies, on[:, 12], on[:, 13])
                np.add.at(chances[k, a], nodes, weights / STRIKES)
        return cost, chances

    def weights(self, lies, x, y):
        """Nodes round places and their bilinear weights, [place, 4] each; 0 for those without a value."""
        fine = self.board.nodes.fine
        across, up = (x - fine.x0_yd) / fine.step_yd, (y - fine.y0_yd) / fine.step_yd
        inside = (across >= 0) & (across < fine.columns - 1) & (up >= 0) & (up < fine.rows - 1)
        nodes, weights = np.zeros((2, x.size, 4))
        for grid, chosen in ((self.board.nodes.coarse, ~inside), (fine, inside)):
            column = np.clip((x[chosen] - grid.x0_yd) / grid.step_yd, 0.0, grid.columns - 1.000001)
            row = np.clip((y[chosen] - grid.y0_yd) / grid.step_yd, 0.0, grid.rows - 1.000001)
            i, j = column.astype(int), row.astype(int)
            for n, (dj, di) in enumerate(((0, 0), (0, 1), (1, 0), (1, 1))):
                node = self.index[int(grid is fine), lies[chosen], j + dj, i + di]
                near = (1 - np.abs(column - i - di)) * (1 - np.abs(row - j - dj))
                nodes[chosen, n], weights[chosen, n] = np.maximum(node, 0), np.where(node >= 0, near, 0.0)
        return nodes.astype(int), weights / weights.sum(axis=1, keepdims=True)

    def with_map(self, values):
        """The board with these node values."""
        field = self.board.game.field
        fields = [np.full_like(field.coarse, np.nan), np.full_like(field.fine, np.nan)]
        for grid in (0, 1):
            rows = np.flatnonzero(self.place[:, 0] == grid)
            fields[grid][tuple(self.place[rows, 1:].T)] = values[rows]
        new = field._replace(coarse=fields[0], fine=fields[1])
        return replace(self.board, game=self.board.game._replace(field=new))

    def map(self):
        """The engine's own values, averaged over each node's cell as they are read between nodes.

        The average of a straight line between two nodes over the half cells round one of them is 3/4 of it
        and 1/8 of each neighbour, on each axis.
        """
        field = self.board.game.field
        grids = [field.coarse.copy(), field.fine.copy()]
        for grid in grids:
            plain = grid.copy()
            for axis in (1, 2):
                bend = np.roll(plain, 1, axis) + np.roll(plain, -1, axis) - 2.0 * plain
                edge = [slice(None)] * 3
                for end in (0, -1):
                    edge[axis] = end
                    bend[tuple(edge)] = 0.0
                grid += 0.125 * np.where(np.isfinite(bend), bend, 0.0)
        return np.array([grids[g][lie, j, i] for g, lie, j, i in self.place])

    def means(self, values):
        """(cost, again)[node, action]: engine means with this map, replays left open."""
        board, out = self.with_map(values), []
        for k in range(self.count):
            x, y, lie = self.table[k, :3]
            strikes = self.sets[k % 16 : k % 16 + 1]
            out.append(value_actions(board, x, y, int(lie), self.actions[k], REPLAY, strikes)[:, 0])
        return np.array(out)


def solve_dp(cost, chances):
    """Least expected cost: QuantEcon's backward induction, no discount, far past absorption."""
    from quantecon.markov import DiscreteDP, backward_induction

    states, actions = cost.shape
    reward = np.zeros((states + 1, actions))
    reward[:states] = -cost
    full = np.zeros((states + 1, actions, states + 1))
    full[:states, :, :states] = chances
    full[:states, :, states] = 1.0 - chances.sum(axis=2)  # holed out or on the green: done
    full[states, :, states] = 1.0
    problem = DiscreteDP(reward, full, 1.0 - 1e-12)  # at 1 exactly it warns that other methods are off
    return -backward_induction(problem, 120, np.zeros(states + 1))[0][0, :states]


@pytest.fixture(scope="module")
def problem():
    hole = straight_hole(180, par=3, more=HOLE)
    return Problem(hole, solved(hole, bag_of(PLAYER), coarse_yd=14, fine_yd=14))


def test_engine_means_are_the_transitions_made_by_hand(problem):
    # With any map: cost + chances x map. The last digits are the kernel's reading of putts at 1e-6 of a step.
    cost, chances = problem.on_node
    total = chances.sum(axis=2)
    assert chances.min() >= 0.0 and total.max() < 1.0 + 1e-9 and (cost >= 1.0 - 1e-9).all()
    values = 2.6 + 0.3 * np.sin(np.arange(problem.count))
    mean = problem.means(values)
    looped = mean[..., 0] + mean[..., 1] * values[:, None]
    assert np.abs(looped - (cost + chances @ values)).max() < 1e-4
    assert (mean[..., 1] > 0.02).any()  # some strokes are replayed


def test_fixed_point_by_the_engine_is_the_solvers(problem):
    # The engine's means and its closed form of the replayed stroke, iterated until nothing moves.
    known = solve_dp(*problem.on_node)
    values = np.full(problem.count, 3.0)
    for _ in range(80):
        mean = problem.means(values)
        fresh = (mean[..., 0] / np.maximum(1.0 - mean[..., 1], 1e-3)).min(axis=1)
        moved, values = np.abs(fresh - values).max(), fresh
        if moved < 1e-11:
            break
    assert moved < 1e-11
    assert np.abs(values - known).max() < 1e-4


def test_value_map_is_near_the_solvers_optimum(problem):
    # The map is solved in bands, with strikes of its own and a search over all actions; the solver has a few
    # actions (the map's own among them) and takes the luckiest of them on 32 strikes. The sd of a shot's
    # outcome is 0.5 to 0.8 strokes; quasi-random strikes bring the error of a node to a few hundredths.
    gap = problem.map() - solve_dp(*problem.in_cell)
    tell(
        f"map minus solver: mean {gap.mean():+.3f} rms {np.sqrt((gap**2).mean()):.3f} "
        f"worst {np.abs(gap).max():.3f}"
    )
    assert -0.02 < gap.mean() < 0.06
    assert np.abs(gap).max() < 0.25


def test_map_is_the_value_of_its_own_plan(problem):
    # Each node's stored action for ever: a linear system, on strikes the map has not seen.
    cost, chances = problem.in_cell
    own = np.linalg.solve(np.eye(problem.count) - chances[:, 0], cost[:, 0])
    gap = problem.map() - own
    tell(f"map minus its plan: mean {gap.mean():+.3f} rms {np.sqrt((gap**2).mean()):.3f}")
    assert abs(gap.mean()) < 0.02
    assert np.sqrt((gap**2).mean()) < 0.06
