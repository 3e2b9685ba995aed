"""Flight tables: every shot at shares of its carry, tilts, bearings to the wind and landing heights."""

from __future__ import annotations

import math
from typing import Any, NamedTuple

import numpy as np

from ._compile import kernel, part, table_entry
from .trajectory import FAN, FAN_ROOM, MAX_STEPS, Air, between, come_down, fly_fan

TRACK_POINTS = 12
"""Points kept of a ground track, at 1/12, 2/12 ... 12/12 of the distance along."""


class Launches(NamedTuple):
    """How swings of all speeds leave the club.

    Attributes
    ----------
    angles, spins : float64[shot, ng]
        Stock launch angle [rad] and backspin [rad/s] at ball speeds start + i step.
    meant : float64[shot]
        The stock strike, whose launch all strikes of the shot keep, over the carry tabled as 1.
    start, step : float
        [yd/s]
    """

    angles: Any
    spins: Any
    meant: Any
    start: Any
    step: Any


class Axes(NamedTuple):
    """Nodes of a flight table.

    Attributes
    ----------
    fractions : float64[nf]
        Shares of the carry tabled as 1, ascending, > 0: strike f carries ``fractions[f] * carries`` in still
        reference air, untilted, to its own level.
    tilts : float64[nt]
        Spin-axis tilts [rad].
    along_winds, cross_winds : float64[nu, nv]
        Wind along the strike's start line (helping positive) and across it (towards the right) [yd/s] at each
        node of both axes of the wind, at the height the air's wind refers to.
    heights : float64[nh]
        Landing heights [yd].
    """

    fractions: Any
    tilts: Any
    along_winds: Any
    cross_winds: Any
    heights: Any


@kernel
def _keep_track(path, n, steps, end_share, step, track):
    """Side and height where flight n of a fan is 1/12 ... 12/12 of the way along to its lowest landing."""
    last = steps - 1
    end, _ = between(
        path[last, 1, n], path[last, 4, n], path[steps, 1, n], path[steps, 4, n], step, end_share
    )
    i = 0
    for k in range(TRACK_POINTS):
        goal = end * (k + 1) / TRACK_POINTS
        while i < last and path[i + 1, 1, n] < goal:
            i += 1
        s = end_share
        if k < TRACK_POINTS - 1:
            s = (goal - path[i, 1, n]) / max(path[i + 1, 1, n] - path[i, 1, n], 1e-9)
            for _ in range(3):
                at, v = between(path[i, 1, n], path[i, 4, n], path[i + 1, 1, n], path[i + 1, 4, n], step, s)
                s = min(max(s - (at - goal) / (step * max(v, 1e-3)), 0.0), 1.0)
        else:
            i = last
        track[k, 0] = between(path[i, 0, n], path[i, 3, n], path[i + 1, 0, n], path[i + 1, 3, n], step, s)[0]
        track[k, 1] = between(path[i, 2, n], path[i, 5, n], path[i + 1, 2, n], path[i + 1, 5, n], step, s)[0]


@kernel
def _on_grid(values, start, step, at):
    """Piecewise-linear value on a uniform grid, held constant beyond its ends."""
    place = min(max((at - start) / step, 0.0), values.shape[0] - 1.0)
    i = min(int(place), max(values.shape[0] - 2, 0))
    j = min(i + 1, values.shape[0] - 1)
    return values[i] + (place - i) * (values[j] - values[i])


@part
def _solve_speed(air, launches, shot, stock, carry, guess, zero, room, path, landing):
    """Ball speed [yd/s] whose still-air carry is `carry` [yd]; returns (speed, launch, spin).

    With ``stock > 0`` the strike keeps the stock strike's launch and its spin falls with speed (a
    mishit); otherwise launch and spin are read off the tables at the speed tried. Secant on
    log carry against log speed (nearly a straight line) inside a bracket. `zero` is one 0.0: no tilt,
    and the ball's own level.
    """
    low, high = math.log(0.05), math.log(150.0)
    target = math.log(carry)
    x = math.log(guess)
    slope = 0.7  # of log speed against log carry, to start with
    x_before, y_before = 0.0, -1e9
    speed, launch, spin = guess, 0.0, 0.0
    for _ in range(60):
        speed = math.exp(x)
        at = stock if stock > 0.0 else speed
        launch = _on_grid(launches.angles[shot], launches.start, launches.step, at)
        spin = _on_grid(launches.spins[shot], launches.start, launches.step, at)
        spin *= speed / stock if stock > 0.0 else 1.0
        steps = fly_fan(air, speed, launch, spin, zero, 0.0, 0.0, 0.0, room, path)
        come_down(air, speed, spin, zero, 0.0, steps, 0, path, landing)
        gone = landing[0, 0]
        y = math.log(max(gone, 1e-9))
        if abs(gone - carry) < 1e-4 or high - low < 1e-13:
            break
        if y < target:
            low = max(low, x)
        else:
            high = min(high, x)
        if y_before > -1e8 and abs(y - y_before) > 1e-12:
            slope = (x - x_before) / (y - y_before)
        x_before, y_before = x, y
        x += slope * (target - y)
        if not (low < x < high):
            x = 0.5 * (low + high)
    return speed, launch, spin


@table_entry
def fill_flights(reference: Air, air: Air, launches, carries, axes, first, last, out, tracks, speeds):
    """Fill the flight and track tables of shots `first` to `last` - 1.

    Parameters
    ----------
    reference : Air
        Air the player's carries are meant in; its wind is not used.
    air : Air
        Air of the day; its own wind is not used.
    launches : Launches
    carries : float64[shot]
        Still-air carry tabled as 1 [yd], > 0.
    axes : Axes
    out : float32[shot, nu, nv, nf, nt, nh, 6]
        Filled: the six numbers of `come_down`.
    tracks : float32[shot, nu, nv, nf, nt, TRACK_POINTS, 2]
        Filled: side and height at k/12 of the distance along to the lowest landing height. A first
        axis of length zero: no tracks are kept.
    speeds : float64[shot, nf]
        Filled: ball speeds solved for [yd/s].
    """
    fractions, tilts, along_winds, cross_winds, heights = axes
    path, room = np.empty((MAX_STEPS + 1, 6, FAN)), np.empty(FAN_ROOM)
    zero = np.zeros(1)
    lowest = heights[0]
    for height in heights:  # numba takes half a second to compile its own minimum
        lowest = min(lowest, height)
    once = np.empty((1, 6))
    landing = np.empty((heights.shape[0], 6))
    for shot in range(first, last):
        stock = 0.0
        guess = 5.0 * math.sqrt(carries[shot])
        for f in range(-1, fractions.shape[0]):  # -1: the stock strike; one call, compiled once
            share = launches.meant[shot] if f < 0 else fractions[f]
            speed, launch, spin = _solve_speed(
                reference,
                launches,
                shot,
                stock,
                carries[shot] * share,
                guess,
                zero,
                room,
                path,
                once,
            )
            if f < 0:
                stock = speed
            else:
                speeds[shot, f] = speed
            if f + 1 < fractions.shape[0]:
                guess = speed * (fractions[f + 1] / share) ** 0.7
            if f < 0:
                continue
            for u in range(along_winds.shape[0]):
                for v in range(along_winds.shape[1]):
                    for first_tilt in range(0, tilts.shape[0], FAN):
                        fan = tilts[first_tilt : first_tilt + FAN]
                        flown = fly_fan(
                            air,
                            speed,
                            launch,
                            spin,
                            fan,
                            cross_winds[u, v],
                            along_winds[u, v],
                            lowest,
                            room,
                            path,
                        )
                        for n in range(fan.shape[0]):
                            t = first_tilt + n
                            _, steps, cut = come_down(
                                air, speed, spin, heights, lowest, flown, n, path, landing
                            )
                            for j in range(heights.shape[0]):
                                for c in range(6):
                                    out[shot, u, v, f, t, j, c] = landing[j, c]
                            if tracks.shape[0] > 0:
                                _keep_track(path, n, steps, cut, air.step_s, tracks[shot, u, v, f, t])
