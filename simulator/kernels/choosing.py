"""The best action from one place: what is tried, what is scored again, and where its aim settles."""

from __future__ import annotations

import math

from . import codes as c
from ._compile import kernel, part
from .scoring import closed, score_action
from .shot import intended_shot
from .value import AIM_APART, REACH_APART

HEAD_SHARE = 0.035
"""Share of its still-air carry by which a club may exceed the distance, per yd/s of head wind: more than any
shot loses (1.3 % per mph)."""

LOW_HEAD = 2.0
"""Head wind [yd/s] from which a shot held down is looked at from every lie; from recovery lies always."""

PART_BEYOND = 1.15
"""Part swings are looked at up to this share of the longest; beyond it a full swing nearly always wins."""

RUNNING_YD = 45.0
"""Nearer than this a low running part swing is looked at too [yd]."""

PUTTED_YD = 30.0
"""Nearer than this a putt from off the green is looked at too, where the lie allows it [yd]."""

FAMILY_SHARES = ((0.5, 0.11), (0.3, 0.11), (0.94, 0.04))
"""Carries first tried of a part swing, a punch and a putt, as shares of the distance: least and step."""

KEPT = 4
"""Actions of the screening that are scored again; no more seeds than this."""

FIRST_AIMS, LEADING = 3, 3
"""Every club is tried at so many aims first; so many clubs are then tried at all of them."""

MOST_CANDIDATES = 900
"""Room for the actions of one screening."""

AIM_STEP, LEAST_AIM_STEP, MOST_AIM_STEP = 0.8, 0.03, 0.15
"""Step of refining an aim, as a share of the spread of the shot's directions, and its bounds [rad]. What a
line costs bends over as much as balls are spread: a shorter step is short beside the luck of the strikes, a
longer one oversteps hazards."""

REACH_STEP = 0.06
"""Step of refining a part swing's carry, as a share of it."""


@kernel
def _candidates(game, x, y, lie, aims, wide_aims, out):
    """First list of actions to try from a place; returns how many were written to `out`."""
    numbers = game.ground.numbers
    dx, dy = numbers[c.PIN_X] - x, numbers[c.PIN_Y] - y
    distance = math.sqrt(dx * dx + dy * dy)
    first = int(numbers[c.FAMILY_FIRST])
    # what carries too far in still air may be right against the wind
    turn = numbers[c.WIND_BEARING] - math.atan2(dx, dy)
    head = -(numbers[c.WIND_SPEED] + numbers[c.WIND_GUST]) * math.cos(turn)
    reach_most = 1.08 + max(head, 0.0) * HEAD_SHARE
    recovery = game.lie_rows[lie] == c.UNPLAYABLE_GENERAL
    n = 0
    full_reach = 0.0  # longest part swing
    longest = 0.0  # a short hitter's longest clubs are looked at however far it is
    for shot in range(first):
        if game.strikes[shot, lie, c.STRIKE_ALLOWED] > 0.5:
            carry = game.strikes[shot, lie, c.STRIKE_REACH]
            longest = max(longest, carry)
    least = min(0.42 * min(distance, 230.0), 0.8 * longest)
    for shot in range(first):
        if game.strikes[shot, lie, c.STRIKE_ALLOWED] < 0.5:
            continue
        carry = game.strikes[shot, lie, c.STRIKE_REACH]
        if carry > reach_most * distance + 8.0 or carry < least:
            continue
        if game.strikes[shot, lie, c.STRIKE_LOW] > 0.5 and not (recovery or head > LOW_HEAD):
            continue
        for k in range(FIRST_AIMS):
            out[n, 0], out[n, 1], out[n, 2] = shot, aims[k], 0.0
            n += 1
    for family in range(c.FAMILIES):
        kind, start = -1.0 - family, c.FAMILY_WIDE * family
        last = int(numbers[c.FAMILY_FIRST + start] + numbers[c.FAMILY_COUNT + start]) - 1
        longest = game.strikes[last, lie, c.STRIKE_REACH]
        if family == 0:
            full_reach = longest
        elif game.strikes[last, lie, c.STRIKE_ALLOWED] < 0.5:
            continue
        if distance < (PART_BEYOND * full_reach, RUNNING_YD, PUTTED_YD)[family]:
            least, step = FAMILY_SHARES[family]
            for q in range(6):
                carry = (least + step * q) * distance
                if carry <= longest:
                    for k in range(FIRST_AIMS):
                        out[n, 0], out[n, 1], out[n, 2] = kind, aims[k], carry - distance
                        n += 1
        if recovery:
            for q in range(3):
                carry = 25.0 + 45.0 * q
                if carry < distance and carry <= longest:
                    for k in range(wide_aims.size):
                        out[n, 0], out[n, 1], out[n, 2] = kind, wide_aims[k], carry - distance
                        n += 1
    if n == 0:  # too near for every full shot, or none allowed: the best that can be had, straight at the pin
        out[0, 0], out[0, 1], out[0, 2] = c.PART_SHOT, 0.0, full_reach - distance
        n = 1
        for shot in range(first):
            if game.strikes[shot, lie, c.STRIKE_ALLOWED] > 0.5:
                out[0, 0], out[0, 2] = shot, 0.0
    return n


@kernel
def _more_aims(scratch, count, aims, done, leading):
    """Add the aims not yet tried for the clubs (or part carries) that lead; returns the new count.

    Rows of one club stand together, best few of them first found by a pass over all rows.
    """
    n = count
    for _ in range(leading):
        best = -1
        for i in range(count):
            taken = False
            for j in range(count, n):
                taken = taken or (scratch[j, 0] == scratch[i, 0] and scratch[j, 2] == scratch[i, 2])
            if not taken and (best < 0 or scratch[i, 3] < scratch[best, 3]):
                best = i
        if best < 0:
            break
        for k in range(done, aims.size):
            scratch[n, 0], scratch[n, 1], scratch[n, 2] = scratch[best, 0], aims[k], scratch[best, 2]
            n += 1
    return n


@kernel
def _best_few(scratch, count, keep, picked):
    """Rows of the `keep` lowest scores of the first `count`, ties to the lower row; returns how many."""
    n = min(keep, count)
    for k in range(n):
        best = -1
        for i in range(count):
            taken = False
            for j in range(k):
                taken = taken or picked[j] == i
            if not taken and (best < 0 or scratch[i, 3] < scratch[best, 3]):
                best = i
        picked[k] = best
    return n


@kernel
def _merged(tries, count):
    """Make one of tries that play one shot on nearly one line, their mean; returns how many are left.

    Neighbours' choices differ by the luck of their strikes more than by their places. The last column counts.
    """
    n = 0
    for k in range(count):
        found = 0
        while found < n and not (
            tries[found, 0] == tries[k, 0]
            and abs(tries[found, 1] - tries[k, 1]) < AIM_APART
            and abs(tries[found, 2] - tries[k, 2]) < REACH_APART
        ):
            found += 1
        if found == n:
            n += 1
            for q in range(3):
                tries[found, q] = tries[k, q]
            tries[found, 3] = 0.0
        tries[found, 3] += 1.0
        for q in range(1, 3):
            tries[found, q] += (tries[k, q] - tries[found, q]) / tries[found, 3]
    return n


@part
def _refine(game, x, y, lie, spread, replay, strikes, balls, best, column, step, lowest):
    """Move one number of an action to where the parabola through three scores a step apart is lowest.

    So few strikes cannot tell which of two aims close together is better, and the lower of two noisy scores
    is mostly the luckier; scores far apart say where between them the best lies.

    Parameters
    ----------
    balls : float64[ROOM]
        Room to play in.
    best : float64[ACTION_COLUMNS]
        The action; changed.
    column : int
        Which of its numbers.
    step : float
    lowest : float
        Its score over the strikes.

    Returns
    -------
    float
        The score of the middle one of the three.
    """
    middle, before, after = best[column], 0.0, 0.0
    for k in range(3):  # one call: compiled once
        off = (-1.0, 1.0, 2.0 if after < before else -2.0)[k]
        if k == 2 and before >= lowest and after >= lowest:
            break  # else once more beyond the better side, which then is the middle
        best[column] = middle + off * step
        cost, again = score_action(game, x, y, lie, spread, best[0], best[1], best[2], replay, strikes, balls)
        score = closed(cost, again)
        if k == 0:
            before = score
        elif k == 1:
            after = score
        elif off > 0.0:
            middle += step
            before, lowest, after = lowest, after, score
        else:
            middle -= step
            before, lowest, after = score, before, lowest
    bend = before - 2.0 * lowest + after
    off = -1.0 if before < after else 1.0
    if bend > 0.0:
        off = min(max(0.5 * (before - after) / bend, -1.0), 1.0)
    best[column] = middle + off * step
    return lowest


@part
def choose(
    game, x, y, lie, spread, replay, seeds, aims, wide_aims, few, more, balls, scratch, tries, picked, best
):
    """Best action from a place: screened with few strikes, re-scored with more, then refined.

    Parameters
    ----------
    spread : float
        Side of the node's cell [yd].
    replay : float
        Value of playing again from here, as far as it is known.
    seeds : float64[k, ACTION_COLUMNS]
        Actions good nearby, tried first (NO_SHOT: no action); if there is none, every action is searched.
    few, more : float64[n, STRIKE_LUCK]
        Strikes that screen, strikes that decide.
    balls : float64[ROOM]
        Room to play in.
    scratch : float64[m, 4]
        Room for the candidates.
    tries : float64[KEPT, 4]
    picked : int64[KEPT]
        Room too.
    best : float64[ACTION_COLUMNS]
        Written: the action.
    """
    numbers = game.ground.numbers
    dx, dy = numbers[c.PIN_X] - x, numbers[c.PIN_Y] - y
    distance = math.sqrt(dx * dx + dy * dy)
    n = 0
    for k in range(seeds.shape[0]):
        if seeds[k, 0] != c.NO_SHOT:
            for q in range(3):
                tries[n, q] = seeds[k, q]
            n += 1
    if n > 0:
        n = _merged(tries, n)
    else:
        count, scored = _candidates(game, x, y, lie, aims, wide_aims, scratch), 0
        for turn in range(2):  # every club at a few aims, then the leading clubs at all of them
            if turn == 1:
                count = _more_aims(scratch, count, aims, FIRST_AIMS, LEADING)
            for k in range(scored, count):
                cost, again = score_action(
                    game, x, y, lie, spread, scratch[k, 0], scratch[k, 1], scratch[k, 2], replay, few, balls
                )
                scratch[k, 3] = closed(cost, again)
            scored = count
        n = _best_few(scratch, count, KEPT, picked)
        for k in range(n):
            for q in range(3):
                tries[k, q] = scratch[picked[k], q]
    lowest = 1e9
    for k in range(n):
        cost, again = score_action(
            game, x, y, lie, spread, tries[k, 0], tries[k, 1], tries[k, 2], replay, more, balls
        )
        score = closed(cost, again)
        if score < lowest - 1e-12:
            lowest = score
            for q in range(3):
                best[q] = tries[k, q]
    row, _ = intended_shot(numbers, game.strikes, lie, best[0], best[2], distance)
    step = min(max(AIM_STEP * game.strikes[row, lie, c.STRIKE_SIDEWAYS], LEAST_AIM_STEP), MOST_AIM_STEP)
    for column in range(1, 3 if best[0] < 0.0 else 2):  # the aim, then how far a part swing carries
        lowest = _refine(game, x, y, lie, spread, replay, more, balls, best, column, step, lowest)
        step = REACH_STEP * (distance + best[2]) + 0.3
