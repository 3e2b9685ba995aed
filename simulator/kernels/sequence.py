"""Full tee-to-green sequences: the first shot as asked, every later one by the value map's plan."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from . import volley as v
from ._compile import entry, in_place, kernel, part
from .air import moment_wind
from .angles import line_to
from .descent import come_down
from .game import Luck
from .luck import normals, seed_key, sequence_key, stroke_key, turned, uniform
from .passing import past_trees
from .rest import come_to_rest
from .shot import settle, strike, swing_of
from .value import plan_at, putts_at, putts_drawn
from .volley import TOGETHER

_PUTTING = np.uint64(0x5851F42D4C957F2D)  # moves putts to a stream of their own
_DAY = np.uint64(0x2545F4914F6CDD1D)  # and what is drawn once a sequence

# What is known of a sequence between two strokes
SEQUENCE, WIND_X, WIND_Y = 0, 1, 2  # which it is, its wind [yd/s]
AT_X, AT_Y, AT_LIE = 3, 4, 5  # where its ball is
AT_START, REPLAY = 6, 7  # 1 at the asked place; value of the place
STROKES, PENALTIES = 8, 9
EVENING = 10  # what the tries of its strokes come to, less what the strokes came to
STATE_COLUMNS = 11

EVEN_TRIES = 2
"""Tries of a stroke whose luck is evened out."""
_TURN = np.uint64(2**64 // EVEN_TRIES)


@kernel
def draw_putts(game, plane, x, y, key):
    """Putts drawn from the place where the ball came to the green, by the sequence's putting stream."""
    return putts_drawn(game.field, plane, x, y, uniform(stroke_key(key ^ _PUTTING, 0), c.SLOT_PUTT))


@in_place
def draw_strike(balls, ball, key, turn):
    """The uniform numbers of a try of a stroke that `luck_of` wants turned into normal ones.

    `turn` / 2**64 on round the circle from the stroke's own.
    """
    i = np.uintp(ball)
    balls[v.LUCK_SPEED + i] = turned(key, c.SLOT_SPEED, turn)
    balls[v.LUCK_START + i] = turned(key, c.SLOT_START, turn)
    balls[v.LUCK_TILT + i] = turned(key, c.SLOT_TILT, turn)
    balls[v.LUCK_LIE + i] = turned(key, c.SLOT_LIE, turn)


@kernel
def turn_normal(balls, count):
    """Make normal numbers of those drawn for so many balls."""
    for column in (v.LUCK_SPEED, v.LUCK_START, v.LUCK_TILT, v.LUCK_LIE):
        normals(balls, column, count)


@in_place
def luck_of(balls, ball, key, turn, wind_x, wind_y):
    """The luck of a try of a stroke whose normal numbers are drawn."""
    i = np.uintp(ball)
    return Luck(
        turned(key, c.SLOT_MIXTURE, turn),
        balls[v.LUCK_SPEED + i],
        balls[v.LUCK_START + i],
        balls[v.LUCK_TILT + i],
        balls[v.LUCK_LIE + i],
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


@kernel
def _next_shot(game, state, start_action):
    """How a sequence goes on from where its ball lies: shot, aim [rad], reach [yd]."""
    if state[AT_START] > 0.5:
        return start_action[0], start_action[1], start_action[2]
    shot, aim, reach = plan_at(game, int(state[AT_LIE]), state[AT_X], state[AT_Y])
    if shot == c.NO_SHOT:
        shot, aim, reach = c.PART_SHOT, 0.0, 0.0
    return shot, aim, reach


@part
def _open(game, root, k, x, y, lie, start_value, state, row_out):
    """Sequence k before its first stroke."""
    numbers = game.ground.numbers
    day = stroke_key(sequence_key(root, k) ^ _DAY, 0)
    gust, swing = uniform(day, c.SLOT_GUST) - 0.5, uniform(day, c.SLOT_SWING) - 0.5
    state[SEQUENCE] = k
    state[WIND_X], state[WIND_Y] = moment_wind(numbers, gust, swing)
    state[AT_X], state[AT_Y], state[AT_LIE], state[AT_START], state[REPLAY] = x, y, lie, 1.0, start_value
    state[STROKES], state[PENALTIES], state[EVENING] = 0.0, 0.0, 0.0
    row_out[c.OUT_PUTTS] = 0.0


@in_place
def _note_first(numbers, ball, spent, value, away_x, away_y, done, row_out):
    """What is kept of the first shot of a sequence; the next stroke is played from (away_x, away_y)."""
    row_out[c.OUT_FIRST_COST] = spent
    row_out[c.OUT_FIRST_VALUE] = value
    row_out[c.OUT_X], row_out[c.OUT_Y] = ball.rest_x, ball.rest_y
    row_out[c.OUT_LAND_X], row_out[c.OUT_LAND_Y] = ball.land_x, ball.land_y
    row_out[c.OUT_SURFACE] = ball.surface
    row_out[c.OUT_BRANCH] = ball.branch
    row_out[c.OUT_FEATURE] = ball.feature
    row_out[c.OUT_PENALTY_FIRST] = spent - 1.0
    leaves = math.sqrt((away_x - numbers[c.PIN_X]) ** 2 + (away_y - numbers[c.PIN_Y]) ** 2)
    row_out[c.OUT_LEAVES] = 0.0 if done else leaves


@part
def _go_on(game, balls, first_ball, tries, stroke, key, state, row_out, trail):
    """Settle a sequence's stroke, whose tries lie together in the volley; returns whether there is another.

    With a last stroke `row_out` is filled.
    """
    numbers = game.ground.numbers
    green = int(numbers[c.LIE_GREEN])
    for tried in range(tries):
        ball = settle(game, balls, first_ball + tried, state[REPLAY])
        if tries > 1:
            state[EVENING] += total_after(ball) / tries
    luck = stroke_key(key, stroke)
    done = False
    next_x, next_y, next_lie, spent, value = ball.x, ball.y, ball.lie, ball.cost, ball.value
    if ball.lost > 0.0 and uniform(luck, c.SLOT_FOUND) < ball.lost:
        next_x, next_y, next_lie = ball.lost_x, ball.lost_y, ball.lost_lie
        spent, value = ball.lost_cost, ball.lost_value
    elif ball.holed > 0.0 and uniform(luck, c.SLOT_HOLED) < ball.holed:
        done = True
        value = 0.0
    if tries > 1:
        state[EVENING] -= spent + value
    state[STROKES] += spent
    state[PENALTIES] += spent - 1.0
    if stroke == 0:
        away_x, away_y = (next_x, next_y) if next_lie >= 0 else (state[AT_X], state[AT_Y])
        _note_first(numbers, ball, spent, value, away_x, away_y, done, row_out)
    putts, expected_putts = 0.0, 0.0
    if not done and next_lie >= 0:
        state[AT_X], state[AT_Y], state[AT_LIE], state[AT_START] = next_x, next_y, next_lie, 0.0
        state[REPLAY] = value  # the place's own, just read
        if stroke < trail.shape[0] and next_lie < green:
            trail[stroke, 0], trail[stroke, 1], trail[stroke, 2] = next_x, next_y, next_lie
        if next_lie >= green:
            done = True
            putts = float(draw_putts(game, next_lie - green, next_x, next_y, key))
            expected_putts = putts_at(game.field, next_lie - green, next_x, next_y)
            row_out[c.OUT_PUTTS] = putts
    row_out[c.OUT_TO_GREEN] = state[STROKES]
    row_out[c.OUT_EXPECTED] = state[STROKES] + expected_putts + state[EVENING]
    row_out[c.OUT_SCORE] = state[STROKES] + putts
    row_out[c.OUT_PENALTIES] = state[PENALTIES]
    return not done


@entry
def play(
    game, seed, x, y, lie, action, start_action, start_value, max_strokes, evened, first, last,
    balls, states, out, trail,
):  # fmt: skip
    """Play sequences first..last-1 to the hole, some side by side: a stroke of each, then the next of each.

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
    balls : float64[ROOM]
    states : float64[TOGETHER, STATE_COLUMNS]
        To work in, of this call alone.
    out : float64[n, OUT_COLUMNS]
        Written row by row (codes.py).
    trail : float64[n, strokes, 3]
        Written: x, y and lie of the places off the green from which strokes after the first were played by
        the plan; as many as there is room for.
    """
    numbers = game.ground.numbers
    pin_x, pin_y = numbers[c.PIN_X], numbers[c.PIN_Y]
    root = seed_key(seed)
    most_tries = EVEN_TRIES if evened else 1
    together = TOGETHER // most_tries
    for start in range(first, last, together):
        going = min(last - start, together)
        for n in range(going):
            _open(game, root, start + n, x, y, lie, start_value, states[n], out[start + n])
        stroke = 0
        while going > 0 and stroke < max_strokes:
            tries = most_tries if stroke > 0 else 1
            for n in range(going):
                key = stroke_key(sequence_key(root, int(states[n, SEQUENCE])), stroke)
                for tried in range(tries):  # the last try is the stroke itself
                    draw_strike(balls, n * tries + tried, key, np.uint64(tries - 1 - tried) * _TURN)
            turn_normal(balls, going * tries)
            for n in range(going):
                state = states[n]
                shot, aim, reach = action[0], action[1], action[2]
                if stroke > 0:
                    shot, aim, reach = _next_shot(game, state, start_action)
                at_x, at_y, at_lie = state[AT_X], state[AT_Y], int(state[AT_LIE])
                dx, dy = pin_x - at_x, pin_y - at_y
                distance = math.sqrt(dx * dx + dy * dy)
                line_x, line_y = line_to(dx, dy, distance)
                row, scale = swing_of(game, at_x, at_y, at_lie, shot, aim, reach, distance, line_x, line_y)
                key = stroke_key(sequence_key(root, int(state[SEQUENCE])), stroke)
                for tried in range(tries):
                    turn, ball = np.uint64(tries - 1 - tried) * _TURN, n * tries + tried
                    strike(
                        game,
                        balls,
                        ball,
                        at_x,
                        at_y,
                        at_lie,
                        row,
                        line_x,
                        line_y,
                        aim,
                        scale,
                        luck_of(balls, ball, key, turn, state[WIND_X], state[WIND_Y]),
                    )
            come_down(game, balls, going * tries)
            past_trees(game, balls, going * tries)
            come_to_rest(game.ground, balls, going * tries)
            still = 0
            for n in range(going):
                k = int(states[n, SEQUENCE])
                key = sequence_key(root, k)
                if _go_on(game, balls, n * tries, tries, stroke, key, states[n], out[k], trail[k]):
                    for q in range(STATE_COLUMNS):
                        states[still, q] = states[n, q]
                    still += 1
            going = still
            stroke += 1
