"""Putts: chance to hole and what a miss leaves, by distance, with the best pace.

Model of one putt from distance d, meant to stop `pace` past the hole: it starts off line by a normal
angle and rolls ``(d + pace)(1 + normal)``. It drops if it gets to the hole at a speed
``v = sqrt(2 a (roll - d))`` and within ``R sqrt(1 - v / limit)`` of the hole's middle; otherwise it
rests where its roll ends and is putted again. Yards, seconds, radians.
"""

from __future__ import annotations

import math

import numpy as np

from ._compile import kernel, part, table_entry


@kernel
def _at(values, root_step, distance):
    """Value at a distance from a table uniform in the root of distance."""
    place = min(math.sqrt(distance) / root_step, values.shape[0] - 1.0)
    i = min(int(place), values.shape[0] - 2)
    return values[i] + (place - i) * (values[i + 1] - values[i])


@kernel
def _putt(distance, pace, angle_sd, roll_sd, green, nodes, values, root_step):
    """(chance to hole, sum of `values` over the misses) of one putt.

    `green` is (deceleration, hole radius, capture limit), `nodes` the quadrature nodes and weights:
    rows 0-1 Gauss-Legendre on (0, 1), 2-3 Gauss-Hermite for the roll, 4-5 for the angle.
    """
    roll_mean = distance + pace
    slowing, radius, limit = green[0], green[1], green[2]
    # holed: over the roll past the hole, from just there to the fastest that can drop
    low = max(0.0, pace - 6.0 * roll_sd)
    high = min(0.5 * limit * limit / slowing, pace + 6.0 * roll_sd)
    made, kept = 0.0, 0.0
    if high > low:
        for i in range(nodes.shape[1]):
            x = nodes[0, i]
            past = low + (high - low) * x * x  # squared: the speed is then smooth in x
            z = (past - pace) / roll_sd
            density = math.exp(-0.5 * z * z) / (roll_sd * math.sqrt(2.0 * math.pi))
            half = radius * math.sqrt(max(1.0 - math.sqrt(2.0 * slowing * past) / limit, 0.0))
            chance = 1.0
            if half < distance:
                chance = math.erf(math.asin(half / distance) / (angle_sd * math.sqrt(2.0)))
            share = nodes[1, i] * 2.0 * x * (high - low) * density * chance
            made += share
            kept += share * _at(values, root_step, past)
    # every roll, dropped or not, minus the part that dropped
    total = 0.0
    for i in range(nodes.shape[1]):
        if nodes[3, i] == 0.0:
            continue
        roll = max(roll_mean + roll_sd * nodes[2, i], 0.0)
        for j in range(nodes.shape[1]):
            if nodes[5, j] == 0.0:
                continue
            angle = angle_sd * nodes[4, j]
            half_turn = math.sin(0.5 * angle)
            gap = math.sqrt((roll - distance) ** 2 + 4.0 * roll * distance * half_turn * half_turn)
            total += nodes[3, i] * nodes[5, j] * _at(values, root_step, gap)
    return made, max(total - kept, 0.0)


@kernel
def _spreads(distance, pace, skill):
    """(angle sd, roll sd) of a putt: skill = (angle sd, its growth with distance, distance sd)."""
    angle_sd = math.sqrt(skill[0] * skill[0] + (skill[1] * distance) ** 2)
    return angle_sd, skill[2] * (distance + pace)


@part
def _best_pace(distance, least, most, skill, green, nodes, values, root_step):
    """(pace, expected putts) of the pace of least expected putts: scans, each finer about the best.

    One call of `_putt`, in a loop: each further call would be compiled again.
    """
    best, best_cost = 0.0, 1e9
    for turn in range(4):
        points = 13 if turn == 0 else 9
        width = (most - least) / (points - 1)
        for i in range(points):
            pace = least + i * width
            angle_sd, roll_sd = _spreads(distance, pace, skill)
            cost = 1.0 + _putt(distance, pace, angle_sd, roll_sd, green, nodes, values, root_step)[1]
            if cost < best_cost:
                best, best_cost = pace, cost
        least, most = max(best - width, least), min(best + width, most)
    return best, best_cost


@table_entry
def fill_putts(skill, green, paces, nodes, root_step, expected, chances, pace):
    """Fill a putting table over distances ``(i root_step)^2`` [yd].

    Parameters
    ----------
    skill : float64[3]
        Angle sd [rad], its growth with distance [rad/yd], distance sd (share of the roll).
    green : float64[3]
        Deceleration [yd/s^2], hole radius [yd], capture limit [yd/s].
    paces : float64[2]
        Furthest short of the hole as a share of the distance, and furthest past it [yd], that are tried.
    nodes : float64[6, n]
        Quadrature, see `_putt`.
    root_step : float
        Step of the root of distance [yd^0.5].
    expected : float64[nd]
        Filled: expected putts; 1 at distance zero.
    chances : float64[nd, nk]
        Filled: chance to be down in at most 1, 2, ... nk putts.
    pace : float64[nd]
        Filled: the pace chosen, roll meant to end this far past the hole [yd].
    """
    nd = expected.shape[0]
    pace[0] = 0.0
    for i in range(nd):  # loops, not slices: numba takes a second to compile a slice assignment
        expected[i] = 1.0
    for _ in range(20):
        moved = 0.0
        for i in range(1, nd):
            d = (i * root_step) ** 2
            pace[i], cost = _best_pace(d, -paces[0] * d, paces[1], skill, green, nodes, expected, root_step)
            moved = max(moved, abs(cost - expected[i]))
            expected[i] = cost
        if moved < 1e-6:
            break
    before = np.zeros(nd)
    for k in range(chances.shape[1]):
        chances[0, k] = 1.0
        for i in range(1, nd):
            d = (i * root_step) ** 2
            angle_sd, roll_sd = _spreads(d, pace[i], skill)
            made, later = _putt(d, pace[i], angle_sd, roll_sd, green, nodes, before, root_step)
            chances[i, k] = min(made + later, 1.0)
        for i in range(nd):
            before[i] = chances[i, k]
