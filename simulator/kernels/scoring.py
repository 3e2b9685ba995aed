"""What an action from one place costs: its mean over prepared strikes."""

from __future__ import annotations

import math

from . import codes as c
from ._compile import entry, kernel
from .air import moment_wind
from .angles import line_to
from .descent import come_down
from .game import Luck
from .ground import surface_at
from .passing import past_trees
from .rest import come_to_rest
from .shot import settle, strike, swing_of
from .value import plan_at
from .volley import TOGETHER


@kernel
def place_in_cell(ground, lie, x, y, off_x, off_y):
    """The place off (x, y) by these two, or its mirror image in the cell where that is ground of the lie.

    A cell may straddle two kinds of ground: no ball that lies in the rough lies under the trees beside it.
    """
    for sign_x, sign_y in ((1.0, 1.0), (-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0)):
        px, py = x + sign_x * off_x, y + sign_y * off_y
        if int(ground.rows[surface_at(ground, px, py), c.SURFACE_LIE]) == lie:
            return px, py
    return x + off_x, y + off_y


@kernel
def score_action(game, x, y, lie, spread, shot, aim, reach, replay, strikes, balls):
    """Mean of one action over prepared strikes, the replayed stroke left open.

    Parameters
    ----------
    spread : float
        Side of the square round (x, y) from which the strikes are made [yd]; 0 from the spot itself.
    shot, aim, reach : float
        The action (codes.py); BY_PLAN: every strike as the map's plan plays its place.
    replay : float
        Value of playing again from here, used to choose between reliefs.
    strikes : float64[n, STRIKE_LUCK]
    balls : float64[ROOM]
        To play them in (volley.py).

    Returns
    -------
    cost : float
        Mean strokes spent plus value of the next place, without the replays' values.
    again : float
        Chance that the next stroke is played from here again.
    """
    numbers = game.ground.numbers
    cost, again = 0.0, 0.0
    by_plan = shot == c.BY_PLAN
    count = strikes.shape[0]
    for first in range(0, count, TOGETHER):
        volley = min(count - first, TOGETHER)
        for ball in range(volley):
            k = first + ball
            from_x, from_y = x, y
            if spread > 0.0:
                from_x, from_y = place_in_cell(
                    game.ground,
                    lie,
                    x,
                    y,
                    spread * strikes[k, c.LUCK_CELL_X],
                    spread * strikes[k, c.LUCK_CELL_Y],
                )
            wind_x, wind_y = moment_wind(numbers, strikes[k, c.LUCK_GUST], strikes[k, c.LUCK_SWING])
            dx, dy = numbers[c.PIN_X] - from_x, numbers[c.PIN_Y] - from_y
            if by_plan:
                shot, aim, reach = plan_at(game, lie, from_x, from_y)
            distance = math.sqrt(dx * dx + dy * dy)
            line_x, line_y = line_to(dx, dy, distance)
            row, scale = swing_of(game, from_x, from_y, lie, shot, aim, reach, distance, line_x, line_y)
            strike(
                game,
                balls,
                ball,
                from_x,
                from_y,
                lie,
                row,
                line_x,
                line_y,
                aim,
                scale,
                Luck(
                    strikes[k, 0],
                    strikes[k, 1],
                    strikes[k, 2],
                    strikes[k, 3],
                    strikes[k, 4],
                    wind_x,
                    wind_y,
                    0.5 + strikes[k, c.LUCK_HIT],
                    0.5 + strikes[k, c.LUCK_KEEP],
                    0.5 + strikes[k, c.LUCK_TURN],
                ),
            )
        come_down(game, balls, volley)
        past_trees(game, balls, volley)
        come_to_rest(game.ground, balls, volley)
        for ball in range(volley):
            played = settle(game, balls, ball, replay)
            found = 1.0 - played.lost
            if played.lie < 0:
                cost += found * played.cost
                again += found
            else:
                cost += found * (played.cost + (1.0 - played.holed) * played.value)
            if played.lost > 0.0:
                cost += played.lost * played.lost_cost
                if played.lost_lie < 0:
                    again += played.lost
                else:
                    cost += played.lost * played.lost_value
    return cost / count, again / count


@kernel
def closed(cost, again):
    """Value of an action repeated until it is not replayed: the self-loop summed exactly."""
    return cost / max(1.0 - again, 1e-3)


@entry
def evaluate(game, x, y, lie, actions, replay, strikes, first, last, balls, out):
    """Mean of each action from one place over each set of strikes, the replayed stroke left open.

    Parameters
    ----------
    actions : float64[n, ACTION_COLUMNS]
    replay : float
        Value of playing again from here.
    strikes : float64[sets, strikes, STRIKE_LUCK]
    first, last : int
        Which (action, set) pairs, counted action by action.
    balls : float64[ROOM]
        To work in, of this call alone (volley.py).
    out : float64[n, sets, 2]
        Written: cost without the replays' values, chance of a replay.
    """
    sets = strikes.shape[0]
    for pair in range(first, last):
        k, s = pair // sets, pair % sets
        cost, again = score_action(
            game, x, y, lie, 0.0, actions[k, 0], actions[k, 1], actions[k, 2], replay, strikes[s], balls
        )
        out[k, s, 0], out[k, s, 1] = cost, again
