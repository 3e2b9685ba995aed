"""A volley: strikes played side by side, and the room they are played in.

A bounce is one long chain of operations, each waiting for the one before. Several balls bounced in one loop
without branches cost little more than one: so a volley's balls are all struck (`shot.strike`), all brought
down to their landings (`descent.come_down`), all taken past the trees (`passing.past_trees`), all bounced and
run to rest (`rest.come_to_rest`), then all settled by the Rules (`shot.settle`).

The room is one float64[ROOM]: column after column of TOGETHER numbers, a ball's at ``column + ball``. The
starts of the columns are constants, by which the compiler knows that they do not overlap.
"""

from __future__ import annotations

import numpy as np

TOGETHER = 64
"""Balls of a volley at the most; a room for so many stays near the processor."""

FLYING = 16
"""Balls that come down at a time: `descent.FLOWN_WIDE` numbers of each are six columns of the room."""

_COLUMNS = 52

(
    # --- of each ball ----------------------------------------------------------------------------
    LUCK_SPEED, LUCK_START, LUCK_TILT, LUCK_LIE,  # its normal numbers, where they are drawn here
    FROM_X, FROM_Y, FROM_LIE,  # where it is played from
    SHOT, LINE_X, LINE_Y,  # row of the shot, unit vector along the start line of the strike
    LAND_X, LAND_Y,  # where it comes down
    ALONG, SIDE,  # the way flown, along the start direction and to its right [yd]
    BRANCH,  # 1 if it drops from a branch
    ENTRY_X, ENTRY_Y,  # last place outside a penalty area, where it went into one
    INSIDE,  # 1 while it is in one
    REST_X, REST_Y,  # where it rests, or starts to run
    SPEED, ROLL,  # at which it starts to run [yd/s], below zero where it spins back; how far it runs [yd]
    HEAD_X, HEAD_Y,  # unit direction of the last movement
    # --- of each that moves, closed up when others have stopped -----------------------------------
    BALL,  # which it is
    X, Y, WAS_X, WAS_Y,  # where it comes down, and did before
    VX, VY, DOWN, SPIN,  # velocity [yd/s], backspin [rad/s]
    NORMAL_X, NORMAL_Y, NORMAL_Z,  # upward unit normal of the ground there
    TILT, BOUNCY, FRICTION,  # of the surface, see `bounce.bounce`
    TOWARDS_X, TOWARDS_Y, TOWARDS_Z,  # unit direction along the ground
    OFF_ALONG, OFF_UP,  # speeds after the bounce, along the ground and away from it [yd/s]
    # --- and of each that runs -------------------------------------------------------------------
    SURFACE,  # code of the surface it is on; -1 before that was looked up
    SQUARED, ON_LEVEL,  # its speed squared, and what that would be on the level, no more [(yd/s)^2]
    PER_STEP,  # columns of the table of skips to a squared speed; 0 for a ball that rolls only
    RUN,  # how far it has run [yd]
    SLOWS, SLOPE_X, SLOPE_Y,  # deceleration on the level [yd/s2]; slope of the ground [yd/yd]
) = (np.uintp(TOGETHER * column) for column in range(_COLUMNS))  # fmt: skip

# --- of each in flight, in the room of what is known of a bounce or a run later -------------------
FRACTION, AXIS = WAS_X, WAS_Y  # share of the shot's carry, tilt of the spin axis [rad]
WIND_X, WIND_Y = NORMAL_X, NORMAL_Y  # velocity of the wind of the moment [yd/s]
HIT, KEEP, TURN = TILT, BOUNCY, FRICTION  # its luck among trees, see `game.Luck`
WALKS, WAY = SURFACE, SQUARED  # which are still on the way to trees, and how far [yd]
BEND, STRAIGHT = ON_LEVEL, PER_STEP  # of its way over the ground, see `passing.bend_of`
NEAR = RUN  # how far along its line it first comes near a crown [yd]
# --- and before it is known where it comes down: its place in the flight tables, see `game.Cell` --
NODE_U, SHARE_U, NODE_V, SHARE_V = SURFACE, SQUARED, ON_LEVEL, PER_STEP
NODE_F, SHARE_F, NODE_T, SHARE_T, MIRROR = RUN, SLOWS, SLOPE_X, SLOPE_Y, OFF_UP
LEVEL, GAP = X, Y  # height it is struck from, and of the ground over the end of its flight [yd]
# --- and the flights themselves, the numbers of a ball on end: room for FLYING balls at a time -----
FLOWN = REST_X  # and the columns up to HEAD_Y

ROOM = TOGETHER * _COLUMNS
