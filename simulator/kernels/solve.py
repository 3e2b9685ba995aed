"""Scoring actions from one place, choosing the best, and solving the nodes of the value map."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import entry, kernel
from .shot import intended_shot, play_shot


@kernel
def score_action(game, x, y, lie, shot, aim, reach, replay, strikes):
    """Mean of one action over prepared strikes, the replayed stroke left open.

    Parameters
    ----------
    shot, aim, reach : float
        The action (codes.py).
    replay : float
        Value of playing again from here, used to choose between reliefs.
    strikes : float64[n, STRIKE_LUCK]

    Returns
    -------
    cost : float
        Mean strokes spent plus value of the next place, without the replays' values.
    again : float
        Chance that the next stroke is played from here again.
    """
    numbers = game.ground.numbers
    dx, dy = numbers[c.PIN_X] - x, numbers[c.PIN_Y] - y
    row, scale = intended_shot(numbers, game.strikes, lie, shot, reach, math.sqrt(dx * dx + dy * dy))
    bearing = math.atan2(dx, dy) + aim
    cost, again = 0.0, 0.0
    count = strikes.shape[0]
    for k in range(count):
        (_, _, next_lie, spent, value, holed, lost, lost_cost, _, _, lost_lie, lost_value,
         _, _, _, _, _, _) = play_shot(game, x, y, lie, row, bearing, scale, replay, strikes[k, 0],
                                       strikes[k, 1], strikes[k, 2], strikes[k, 3], strikes[k, 4])
        found = 1.0 - lost
        if next_lie < 0:
            cost += found * spent
            again += found
        else:
            cost += found * (spent + (1.0 - holed) * value)
        if lost > 0.0:
            cost += lost * lost_cost
            if lost_lie < 0:
                again += lost
            else:
                cost += lost * lost_value
    return cost / count, again / count


@kernel
def closed(cost, again):
    """Value of an action repeated until it is not replayed: cost / (1 - again), the self-loop summed exactly."""
    return cost / max(1.0 - again, 1e-3)


@kernel
def _candidates(game, x, y, lie, aims, wide_aims, out):
    """First list of actions to try from a place; returns how many were written to `out`."""
    numbers = game.ground.numbers
    dx, dy = numbers[c.PIN_X] - x, numbers[c.PIN_Y] - y
    distance = math.sqrt(dx * dx + dy * dy)
    first, count = int(numbers[c.PART_FIRST]), int(numbers[c.PART_COUNT])
    recovery = game.lie_rows[lie] == c.UNPLAYABLE_GENERAL
    n = 0
    full_reach = 0.0  # longest part swing
    if count > 0:
        strike = game.strikes[first + count - 1, lie]
        full_reach = strike[c.STRIKE_CARRY] * strike[c.STRIKE_FRACTION]
    for shot in range(first):
        strike = game.strikes[shot, lie]
        if strike[c.STRIKE_ALLOWED] < 0.5:
            continue
        carry = strike[c.STRIKE_CARRY] * strike[c.STRIKE_FRACTION]
        if carry > distance + 0.06 * distance + 6.0:
            continue
        if carry < 0.42 * min(distance, 230.0):
            continue
        for k in range(aims.size):
            out[n, 0], out[n, 1], out[n, 2] = shot, aims[k], 0.0
            n += 1
    if count > 0:
        if distance < 1.15 * full_reach:
            for share in (0.5, 0.64, 0.76, 0.86, 0.95, 1.03):
                carry = share * distance
                if carry > full_reach:
                    continue
                for k in range(aims.size):
                    out[n, 0], out[n, 1], out[n, 2] = c.PART_SHOT, aims[k], carry - distance
                    n += 1
        if recovery:
            for carry in (25.0, 60.0):
                if carry < distance and carry <= full_reach:
                    for k in range(wide_aims.size):
                        out[n, 0], out[n, 1], out[n, 2] = c.PART_SHOT, wide_aims[k], carry - distance
                        n += 1
    if n == 0:  # too near for every full shot and no part swing: the shortest allowed, straight at it
        for shot in range(first - 1, -1, -1):
            if game.strikes[shot, lie, c.STRIKE_ALLOWED] > 0.5:
                out[0, 0], out[0, 1], out[0, 2] = shot, 0.0, 0.0
                return 1
    return n


@kernel
def _best_few(scores, count, keep, picked):
    """Indices of the `keep` smallest of scores[:count], ties to the lower index; returns how many."""
    n = min(keep, count)
    for k in range(n):
        best = -1
        for i in range(count):
            taken = False
            for j in range(k):
                taken = taken or picked[j] == i
            if not taken and (best < 0 or scores[i] < scores[best]):
                best = i
        picked[k] = best
    return n


@kernel
def choose(game, x, y, lie, known, aims, wide_aims, few, more, known_shot, known_aim, known_reach, scratch):
    """Best action from a place: screened with few strikes, re-scored with more, then refined.

    Parameters
    ----------
    known : float
        Value of the place as far as it is known (NaN: not yet).
    few, more : float64[n, STRIKE_LUCK]
        Strikes that screen, strikes that decide.
    known_shot, known_aim, known_reach : float
        An action to start from (shot -2: search them all).
    scratch : float64[m, 4]
        Room for the candidates.

    Returns
    -------
    shot, aim, reach : float
    """
    numbers = game.ground.numbers
    dx, dy = numbers[c.PIN_X] - x, numbers[c.PIN_Y] - y
    distance = math.sqrt(dx * dx + dy * dy)
    replay = known
    if replay != replay:
        replay = numbers[c.GUESS_BASE] + numbers[c.GUESS_PER_YD] * distance
    picked = np.empty(8, np.int64)
    best_shot, best_aim, best_reach, best = known_shot, known_aim, known_reach, 1e9
    if known_shot < -1.5:
        count = _candidates(game, x, y, lie, aims, wide_aims, scratch)
        for k in range(count):
            cost, again = score_action(game, x, y, lie, scratch[k, 0], scratch[k, 1], scratch[k, 2],
                                       replay, few)
            scratch[k, 3] = closed(cost, again)
        kept = _best_few(scratch[:, 3], count, 6, picked)
    else:
        scratch[0, 0], scratch[0, 1], scratch[0, 2] = known_shot, known_aim, known_reach
        picked[0], kept = 0, 1
    # one loop for the re-scoring of the best few and for both rounds of refinement
    tries = np.empty((24, 3))
    n = 0
    for k in range(kept):
        for q in range(3):
            tries[n, q] = scratch[picked[k], q]
        n += 1
    for stage in range(3):
        if stage > 0:
            step = 0.035 / stage  # 2 degrees, then 1
            n = 0
            for turn in (-1.0, 1.0):
                tries[n, 0], tries[n, 1], tries[n, 2] = best_shot, best_aim + turn * step, best_reach
                n += 1
            if best_shot < -0.5:
                stretch = 0.06 * (distance + best_reach) / stage + 0.3
                for turn in (-1.0, 1.0):
                    tries[n, 0], tries[n, 1], tries[n, 2] = best_shot, best_aim, best_reach + turn * stretch
                    n += 1
        start_shot, start_aim, start_reach = best_shot, best_aim, best_reach
        for k in range(n):
            cost, again = score_action(game, x, y, lie, tries[k, 0], tries[k, 1], tries[k, 2], replay, more)
            score = closed(cost, again)
            if score < best - 1e-12:
                best, best_shot, best_aim, best_reach = score, tries[k, 0], tries[k, 1], tries[k, 2]
        if stage > 0 and best_shot == start_shot and best_aim == start_aim and best_reach == start_reach:
            continue
    return best_shot, best_aim, best_reach


@entry
def solve_nodes(game, mode, nodes, first, last, aims, wide_aims, few, more, many, out):
    """Value and action of nodes[first:last] from committed values.

    Parameters
    ----------
    game : Game
    mode : int
        0 search every action, 1 refine the known one, 2 keep it and value it anew.
    nodes : float64[n, 8]
        x, y [yd], lie, known value (NaN: none), known action (3 columns), scramble.
    first, last : int
        Which nodes.
    aims, wide_aims : float64[k]
        Aims off the pin to try first [rad]; from recovery lies the wide ones too.
    few, more, many : float64[scrambles, strikes, STRIKE_LUCK]
        Strikes that screen, decide and value. `many` never chooses: a value from the strikes that chose
        it would be too low.
    out : float64[n, 4]
        Written: value, shot, aim, reach.
    """
    scratch = np.empty((900, 4))
    numbers = game.ground.numbers
    for k in range(first, last):
        node = nodes[k]
        x, y, lie, known = node[0], node[1], int(node[2]), node[3]
        scramble = int(node[7])
        shot, aim, reach = node[4], node[5], node[6]
        if mode < 2:
            if mode == 0:
                shot = -2.0
            shot, aim, reach = choose(game, x, y, lie, known, aims, wide_aims, few[scramble], more[scramble],
                                      shot, aim, reach, scratch)
        replay = known
        if replay != replay:
            replay = numbers[c.GUESS_BASE] + numbers[c.GUESS_PER_YD] * math.sqrt(
                (numbers[c.PIN_X] - x) ** 2 + (numbers[c.PIN_Y] - y) ** 2)
        cost, again = score_action(game, x, y, lie, shot, aim, reach, replay, many[scramble])
        out[k, 0], out[k, 1], out[k, 2], out[k, 3] = closed(cost, again), shot, aim, reach


@entry
def evaluate(game, x, y, lie, actions, replay, strikes, first, last, out):
    """Mean of each action from one place over each set of strikes, the replayed stroke left open.

    Parameters
    ----------
    actions : float64[n, ACTION_COLUMNS]
    replay : float
        Value of playing again from here.
    strikes : float64[sets, strikes, STRIKE_LUCK]
    first, last : int
        Which (action, set) pairs, counted action by action.
    out : float64[n, sets, 2]
        Written: cost without the replays' values, chance of a replay.
    """
    sets = strikes.shape[0]
    for pair in range(first, last):
        k, s = pair // sets, pair % sets
        cost, again = score_action(game, x, y, lie, actions[k, 0], actions[k, 1], actions[k, 2],
                                   replay, strikes[s])
        out[k, s, 0], out[k, s, 1] = cost, again
