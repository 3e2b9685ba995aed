"""Putts on a plane: holed and left by direction to the fall line and distance, with the best pace.

Model of one putt, as `putting` has it, on a plane. x runs from the ball to the hole, y to the side the
ground rises to. With a0 the deceleration on the level and G = k g slope, the ball slows by
``a = a0 + G cos(phi)`` along x (phi = 0: it lies below the hole and is putted up) and is pulled by
``G sin(phi)`` across. For a small heading t, ``dt / d(ln v) = (G sin(phi) - G cos(phi) t) / a``, so after the
share ``1 - rho`` of a roll of L, with m = G cos(phi) / a and q = 1 - m / 2::

    y = t0 L (1 - rho^q) / q + G sin(phi) / (a m) L [(1 - rho) - (1 - rho^q) / q]

Putting up (m > 0) an error of line grows on the way, putting down the plane gathers it. Right line:
y = 0 at the hole for the pace meant. The slope is misread by a share of itself,
along x and across alike and each for itself: by e across, the line is wrong by e times the aim of the same
slope squarely across; by e along, the roll is wrong by the share ``e G / a`` and the line by as much of the
aim, the other way. Yards, seconds, radians.
"""

from __future__ import annotations

import math

import numpy as np

from ._compile import kernel, table_entry

FIRST_WIDTH = 0.25  # first step of the search for the pace [yd]
NEXT_WIDTH = 0.06  # step when it is sought again, against the better values
SCANS = 4  # three tries each; the step shrinks when the best is inside
MOST_TURNS = 11  # that the values are worked out in, until they stand


CELL, TURN, SHARE, WEIGHT = range(4)
"""What is kept of a place a ball may be left at: lower node of the flattened table, share of the way to the
next direction and to the next distance, share of the balls."""


@kernel
def _left_at(ball, weight, shape, steps, x, y, up_x, up_y):
    """Keep where (x, y) from the hole is in a table by direction from straight below it and root of distance.

    `shape`: of the table; `up_x`, `up_y`: unit vector up the slope.
    """
    gap = math.sqrt(x * x + y * y)
    place = min(math.sqrt(gap) / steps[0], shape[1] - 1.0)
    i = min(int(place), shape[1] - 2)
    across = math.acos(min(max(-(x * up_x + y * up_y) / max(gap, 1e-12), -1.0), 1.0)) / steps[1]
    k = min(int(across), shape[0] - 2)
    ball[CELL], ball[TURN], ball[SHARE], ball[WEIGHT] = k * shape[1] + i, across - k, place - i, weight


@kernel
def _missed(values, balls, dropped):
    """Sum of a table over the misses: over every roll, minus the part that drops, the first of `balls`."""
    flat, next_way = values.reshape(values.size), np.uintp(values.shape[1])
    kept, total = 0.0, 0.0
    for p in range(balls.shape[0]):
        if p == dropped:
            kept, total = total, 0.0
        cell, share = np.uintp(int(balls[p, CELL])), balls[p, SHARE]
        beside = cell + next_way
        near = flat[cell] + share * (flat[cell + np.uintp(1)] - flat[cell])
        far = flat[beside] + share * (flat[beside + np.uintp(1)] - flat[beside])
        total += balls[p, WEIGHT] * (near + balls[p, TURN] * (far - near))
    return max(total - kept, 0.0)


@kernel
def line_across(along, steep, left):
    """Right line, above the straight one to the hole [rad], were the slope squarely across.

    `along`, `steep`: m and G / a of the putt's own direction; `left`: share of the roll that lies past the
    hole. A putt that lies at phi to the fall line takes sin(phi) of it.
    """
    bend = 1.0 - 0.5 * along
    turned = left**bend
    return -steep * (1.0 - left - (1.0 - turned) / bend) / along * bend / (1.0 - turned)


@kernel
def _putt(distance, pace, line_variance, reading_sd, way, green, nodes, lattice, shape, steps, balls):
    """Chance to hole one putt, and in `balls` where it is left: first the part that drops, then every roll.

    `way`: (a, m, G / a, up_x, up_y, variance of the roll's share but for the reading); `green`: (hole radius,
    capture limit, furthest leave past the hole); `nodes`, `lattice`: quadrature, see `fill_sloped_putts`;
    `shape`, `steps`: of the table, steps of the root of distance and of the direction; `balls`:
    float64[nodes + lattice, 4], written. What dropped is kept where it would have come to rest, had it
    rolled over the middle of the hole, to be taken off again.
    """
    slowing, along, steep, up_x, up_y, plain = way[0], way[1], way[2], way[3], way[4], way[5]
    radius, limit, furthest = green[0], green[1], green[2]
    pull = steep * up_y
    bend = 1.0 - 0.5 * along
    roll_mean = distance + pace
    # the line for this pace; a putt meant to stop short is aimed to rest on the line to the hole
    aim_across = line_across(along, steep, max(pace, 0.0) / roll_mean)
    aim = aim_across * up_y
    # reading: the slope across misread turns the line; the slope along misread changes roll and line
    read = steep * reading_sd
    roll_variance = plain + read * read
    roll_share = math.sqrt(roll_variance)
    lean = -aim * read * read / roll_variance
    across = aim_across * reading_sd
    angle_sd = math.sqrt(line_variance + across * across + aim * aim * read * read * plain / roll_variance)
    roll_sd = roll_share * roll_mean
    # holed: over the roll past the hole, from just there to the fastest that can drop
    low = max(0.0, pace - 6.0 * roll_sd)
    high = min(0.5 * limit * limit / slowing, pace + 6.0 * roll_sd)
    made = 0.0
    for i in range(nodes.shape[1]):
        for q in range(balls.shape[1]):
            balls[i, q] = 0.0
        if high > low:
            x = nodes[0, i]
            past = low + (high - low) * x * x  # squared: the speed is then smooth in x
            roll = distance + past
            z = (past - pace) / roll_sd
            density = math.exp(-0.5 * z * z) / (roll_sd * math.sqrt(2.0 * math.pi))
            half = radius * math.sqrt(max(1.0 - math.sqrt(2.0 * slowing * past) / limit, 0.0))
            left = past / roll
            turned = left**bend
            reach = roll * (1.0 - turned) / bend
            middle = aim * reach + pull * roll * (1.0 - left - (1.0 - turned) / bend) / along
            lean_here = lean * z * roll_share
            lowest = math.asin(min(max((-half - middle) / reach, -1.0), 1.0)) - lean_here
            highest = math.asin(min(max((half - middle) / reach, -1.0), 1.0)) - lean_here
            norm = 1.0 / (angle_sd * math.sqrt(2.0))
            chance = 0.5 * (math.erf(highest * norm) - math.erf(lowest * norm))
            share = nodes[1, i] * 2.0 * x * (high - low) * density * chance
            made += share
            beyond = min(past, furthest)
            roll = distance + beyond
            side = roll / bend * (aim - 0.5 * pull - middle / reach)
            _left_at(balls[i], share, shape, steps, beyond, side, up_x, up_y)
    for i in range(lattice.shape[1]):
        roll = min(max(roll_mean + roll_sd * lattice[0, i], 0.0), distance + furthest)
        reach = roll / bend
        angle = angle_sd * lattice[1, i] + lean * lattice[0, i] * roll_share
        half_turn = math.sin(0.5 * angle)
        x = roll - distance - 2.0 * reach * half_turn * half_turn
        y = (aim - 0.5 * pull) * reach + reach * math.sin(angle)
        _left_at(balls[nodes.shape[1] + i], lattice[2, i], shape, steps, x, y, up_x, up_y)
    return made


@table_entry
def fill_sloped_putts(
    ways, line_variance, reading_sd, green, paces, nodes, lattice, steps, every, expected, chances, pace
):
    """Fill the putting table of a plane over directions from straight below and root of distance.

    Parameters
    ----------
    ways : float64[nk, 6]
        By direction: deceleration a [yd/s^2], m (not zero), G / a, unit vector up the slope (x to the hole, y
        across), variance of the roll as a share of it but for the reading.
    line_variance : float64[nd]
        Variance of the starting line but for the reading [rad^2].
    reading_sd : float
        Sd of the slope read, as a share of it, along the putt and across alike.
    green : float64[3]
        Hole radius [yd], capture limit [yd/s], furthest leave past the hole [yd].
    paces : float64[2]
        Furthest short of the hole as a share of the distance, and furthest past it [yd], that are tried.
    nodes : float64[2, n]
        Gauss-Legendre nodes on (0, 1) and weights, over the paces that drop.
    lattice : float64[3, n]
        Points of two normal variables, roll and line, and weights.
    steps : float64[2]
        Steps of the root of distance [yd^0.5] and of the direction [rad].
    every : int
        The pace is sought at each `every`-th distance; between them it is interpolated.
    expected : float64[nk, nd]
        In: a first guess, 1 at distance zero. Filled: expected putts.
    chances : float64[nk, nd, n]
        Filled: chance to be down in at most 1, 2, ... n putts.
    pace : float64[nk, nd]
        In: a first guess. Filled: the pace chosen, roll meant to end this far past the hole [yd].
    """
    nk, nd = expected.shape
    shape, dropped = (nk, nd), nodes.shape[1]
    # where putts of a pace are left changes no more while what they are worth there does
    balls, made = np.empty((nk, nd, dropped + lattice.shape[1], WEIGHT + 1)), np.empty((nk, nd))
    for stage in range(4):  # seek, value, seek, value; one call of `_putt`, else compiled at each
        seek = stage % 2 == 0
        for k in range(nk):
            for i in range(every if seek else 1, nd, every if seek else 1):
                d = (i * steps[0]) ** 2
                best, width = pace[k, i], FIRST_WIDTH if stage == 0 else NEXT_WIDTH
                low_cost, mid_cost = 0.0, 0.0
                for j in range(SCANS * 3 if stage == 0 else 3 if seek else 1):
                    place = j % 3
                    trial = best + (place - 1) * width if seek else best
                    trial = min(max(trial, -paces[0] * d), paces[1])
                    made[k, i] = _putt(
                        d, trial, line_variance[i], reading_sd, ways[k], green, nodes, lattice, shape, steps,
                        balls[k, i],
                    )  # fmt: skip
                    if not seek:
                        break
                    cost = _missed(expected, balls[k, i], dropped)
                    if place == 0:
                        low_cost = cost
                    elif place == 1:
                        mid_cost = cost
                    elif mid_cost <= low_cost and mid_cost <= cost:
                        bow = low_cost - 2.0 * mid_cost + cost
                        if bow > 0.0:
                            best += 0.5 * width * (low_cost - cost) / bow
                        width *= 0.4
                    else:
                        best += width if cost < low_cost else -width
                        best = min(max(best, -paces[0] * d), paces[1])
                if seek:
                    pace[k, i] = best
        if seek:
            for k in range(nk):
                for i in range(1, nd):
                    low = i // every * every
                    high = min(low + every, nd - 1)
                    if low == 0:
                        pace[k, i] = pace[k, every]
                    elif high > low:
                        pace[k, i] = pace[k, low] + (pace[k, high] - pace[k, low]) * (i - low) / (high - low)
            continue
        for _ in range(1 if stage == 1 else MOST_TURNS):
            moved = 0.0
            for k in range(nk):
                for i in range(1, nd):
                    putts = 1.0 + _missed(expected, balls[k, i], dropped)
                    moved = max(moved, abs(putts - expected[k, i]))
                    expected[k, i] = putts
            if moved < 1e-5:
                break
    before = np.zeros((nk, nd))
    for count in range(chances.shape[2]):
        for k in range(nk):
            chances[k, 0, count] = 1.0
            for i in range(1, nd):
                chance = made[k, i] + _missed(before, balls[k, i], dropped)
                chances[k, i, count] = min(max(chance, before[k, i]), 1.0)
        for k in range(nk):
            for i in range(nd):
                before[k, i] = chances[k, i, count]
