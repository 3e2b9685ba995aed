"""Full tee-to-green sequences: the first shot as asked, every later one by the value map's plan."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import entry, in_place, kernel
from .air import moment_wind
from .game import Luck
from .luck import normal, seed_key, sequence_key, stroke_key, turned, uniform
from .shot import intended_shot, play_shot
from .value import plan_at, putts_at, putts_drawn

_PUTTING = np.uint64(0x5851F42D4C957F2D)  # moves putts to a stream of their own
_DAY = np.uint64(0x2545F4914F6CDD1D)  # and what is drawn once a sequence

EVEN_TRIES = 2
"""Tries of a stroke whose luck is evened out."""
_TURN = np.uint64(2**64 // EVEN_TRIES)


@kernel
def draw_putts(game, plane, x, y, key):
    """Putts drawn from the place where the ball came to the green, by the sequence's putting stream."""
    return putts_drawn(game.field, plane, x, y, uniform(stroke_key(key ^ _PUTTING, 0), c.SLOT_PUTT))


@in_place
def stroke_luck(key, turn, wind_x, wind_y):
    """The luck of one try of a stroke, `turn` / 2**64 on round the circle from the stroke's own."""
    return Luck(
        turned(key, c.SLOT_MIXTURE, turn),
        normal(key, c.SLOT_SPEED, turn),
        normal(key, c.SLOT_START, turn),
        normal(key, c.SLOT_TILT, turn),
        normal(key, c.SLOT_LIE, turn),
        wind_x,
        wind_y,
        turned(key, c.SLOT_TREE_HIT, turn),
        turned(key, c.SLOT_TREE_REST, turn),
        turned(key, c.SLOT_TREE_TURN, turn),
    )


@in_place
def total_after(ball):
    """Strokes of a shot and the map's value after it, expected over a ball lost and a ball holed."""
    found = ball.cost + (1.0 - ball.holed) * ball.value
    return (1.0 - ball.lost) * found + ball.lost * (ball.lost_cost + ball.lost_value)


@entry
def play(
    game, seed, x, y, lie, action, start_action, start_value, max_strokes, evened, first, last, out, trail
):
    """Play sequences first..last-1 to the hole.

    Sequence k draws the same luck whatever is asked of it: alternatives share it.

    Parameters
    ----------
    game : Game
    seed : int
    x, y, lie : float, float, int
        The asked place.
    action : float64[ACTION_COLUMNS]
        First shot of every sequence.
    start_action : float64[ACTION_COLUMNS]
        How the asked place is played when a stroke is replayed from it: the map's own choice.
    start_value : float
        The map's value of the asked place.
    max_strokes : int
        A sequence longer than this is cut and scored as it stands.
    evened : bool
        Whether every stroke after the first is tried EVEN_TRIES times for the expected score, by luck moved
        in even steps round the circle (a lattice: Cranley and Patterson, "Randomization of number theoretic
        methods for multiple integration", SIAM Journal on Numerical Analysis 13 (1976) 904-914; from
        memory). The last try is the stroke that counts; what the mean of the tries comes to by the map,
        less what it came to, is added to the expected score. Its own mean is nothing, whatever the map.
    out : float64[n, OUT_COLUMNS]
        Written row by row (codes.py).
    trail : float64[n, strokes, 3]
        Written: x, y and lie of the places off the green from which strokes after the first were played by
        the plan; as many as there is room for.
    """
    numbers = game.ground.numbers
    pin_x, pin_y = numbers[c.PIN_X], numbers[c.PIN_Y]
    green = int(numbers[c.LIE_GREEN])
    root = seed_key(seed)
    for k in range(first, last):
        key = sequence_key(root, k)
        day = stroke_key(key ^ _DAY, 0)
        wind_x, wind_y = moment_wind(
            numbers, uniform(day, c.SLOT_GUST) - 0.5, uniform(day, c.SLOT_SWING) - 0.5
        )
        at_x, at_y, at_lie = x, y, lie
        at_start, replay = True, start_value
        strokes, penalties, evening = 0.0, 0.0, 0.0
        shot, aim, reach = action[0], action[1], action[2]
        stroke = 0
        to_green = -1.0
        row_out = out[k]
        row_out[c.OUT_PUTTS] = 0.0
        while True:
            dx, dy = pin_x - at_x, pin_y - at_y
            distance = math.sqrt(dx * dx + dy * dy)
            if stroke > 0:
                if at_start:
                    shot, aim, reach = start_action[0], start_action[1], start_action[2]
                else:
                    shot, aim, reach = plan_at(game, at_lie, at_x, at_y)
                    if shot == c.NO_SHOT:
                        shot, aim, reach = c.PART_SHOT, 0.0, 0.0
            luck = stroke_key(key, stroke)
            row, scale = intended_shot(numbers, game.strikes, at_lie, shot, reach, distance)
            tries = EVEN_TRIES if stroke > 0 and evened else 1
            for tried in range(tries):
                turn = np.uint64(tries - 1 - tried) * _TURN  # the last try is the stroke itself
                ball = play_shot(
                    game,
                    at_x,
                    at_y,
                    at_lie,
                    row,
                    math.atan2(dx, dy) + aim,
                    scale,
                    replay,
                    stroke_luck(luck, turn, wind_x, wind_y),
                )
                if tries > 1:
                    evening += total_after(ball) / tries
            done = False
            next_x, next_y, next_lie, spent, value = ball.x, ball.y, ball.lie, ball.cost, ball.value
            if ball.lost > 0.0 and uniform(luck, c.SLOT_FOUND) < ball.lost:
                next_x, next_y, next_lie = ball.lost_x, ball.lost_y, ball.lost_lie
                spent, value = ball.lost_cost, ball.lost_value
            elif ball.holed > 0.0 and uniform(luck, c.SLOT_HOLED) < ball.holed:
                done = True
                value = 0.0
            if tries > 1:
                evening -= spent + value
            strokes += spent
            penalties += spent - 1.0
            if stroke == 0:
                row_out[c.OUT_FIRST_COST] = spent
                row_out[c.OUT_FIRST_VALUE] = value
                row_out[c.OUT_X], row_out[c.OUT_Y] = ball.rest_x, ball.rest_y
                row_out[c.OUT_LAND_X], row_out[c.OUT_LAND_Y] = ball.land_x, ball.land_y
                row_out[c.OUT_SURFACE] = ball.surface
                row_out[c.OUT_BRANCH] = ball.branch
                row_out[c.OUT_FEATURE] = ball.feature
                row_out[c.OUT_PENALTY_FIRST] = spent - 1.0
                away_x, away_y = (next_x, next_y) if next_lie >= 0 else (at_x, at_y)
                leaves = math.sqrt((away_x - pin_x) ** 2 + (away_y - pin_y) ** 2)
                row_out[c.OUT_LEAVES] = 0.0 if done else leaves
            stroke += 1
            if done:
                to_green = strokes
                row_out[c.OUT_EXPECTED] = strokes
                break
            if next_lie >= 0:
                at_x, at_y, at_lie, at_start = next_x, next_y, next_lie, False
                replay = value  # the place's own, just read
                if stroke <= trail.shape[1] and at_lie < green:
                    trail[k, stroke - 1, 0] = at_x
                    trail[k, stroke - 1, 1] = at_y
                    trail[k, stroke - 1, 2] = at_lie
                if at_lie >= green:
                    to_green = strokes
                    putts = draw_putts(game, at_lie - green, at_x, at_y, key)
                    row_out[c.OUT_EXPECTED] = strokes + putts_at(game.field, at_lie - green, at_x, at_y)
                    row_out[c.OUT_PUTTS] = putts
                    strokes += putts
                    break
            if stroke >= max_strokes:
                row_out[c.OUT_EXPECTED] = strokes
                to_green = strokes
                break
        row_out[c.OUT_EXPECTED] += evening
        row_out[c.OUT_SCORE] = strokes
        row_out[c.OUT_PENALTIES] = penalties
        row_out[c.OUT_TO_GREEN] = to_green
