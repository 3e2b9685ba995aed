"""The same clubs in other hands, off flights that are flown already; and the same shots in more wind."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from ..hole.surfaces import Lie
from ..kernels import codes as c
from ..player.model import Club, Player
from .airs import day_air, flight_air
from .bag import Bag
from .curved import is_curved
from .flights import FRACTIONS, TILTS_DEG, disc_axes, flight_tables
from .shots import in_other_hands
from .strikes import strike_rows

WIDE_STEP_MPH = 6.0
"""Step between wind nodes where a coarse table will do [mph]: carry bends by 0.034 yd per mph squared into
the wind, so a straight line between nodes errs by 0.3 yd."""


def _off(club: Club, carry_yd: float) -> Club:
    """A club whose shares are of another carry: the same yards."""
    ratio = club.carry_yd / carry_yd
    return replace(
        club,
        carry_yd=carry_yd,
        bias_long_pct=100.0 * (ratio * (1.0 + club.bias_long_pct / 100.0) - 1.0),
        distance_sd_pct=ratio * club.distance_sd_pct,
        mishit_loss_pct=ratio * club.mishit_loss_pct,
        mishit_distance_sd_pct=ratio * club.mishit_distance_sd_pct,
    )


def varied_strikes(bag: Bag, player: Player, rows: Sequence[int] | None = None) -> np.ndarray:
    """Strike rows of a player with this bag's clubs, float64[shots, lies, STRIKE_COLUMNS].

    A longer or shorter club is read further along its own flight table: the launch stays, the speed
    changes. Ten per cent of carry moves a landing by less than a yard against flights flown anew.

    Parameters
    ----------
    bag : Bag
    player : Player
        Clubs of the same names, in the same order.
    rows : sequence of int, optional
        Shots to work out; the others stay as they are in the bag. All full swings when left out.
    """
    full = range(bag.shots.first_part)
    index = list(full if rows is None else dict.fromkeys(rows))
    out = bag.strikes.copy()
    if index:
        by_name = {club.name: club for club in player.clubs}
        shots = [bag.shots.shots[k] for k in index]
        moved = [
            replace(shot, spread=_off(by_name[shot.club.name], shot.club.carry_yd))
            if k in full
            else in_other_hands(shot, player)
            for k, shot in zip(index, shots, strict=True)
        ]
        out[index] = strike_rows(tuple(moved), bag.flights.still[index])
    return out


def same_yards(bag: Bag, strikes: np.ndarray) -> np.ndarray:
    """For each shot, the one of the same flight and use that now carries as far as it did, int64[shots].

    Parameters
    ----------
    strikes : float64[shots, lies, STRIKE_COLUMNS]
        Strike rows of a player with this bag's clubs.
    """
    was, now = (rows[:, Lie.TEE, c.STRIKE_REACH] for rows in (bag.strikes, strikes))
    out = np.arange(len(bag.shots))
    kinds = [(shot.flight, shot.club.use) for shot in bag.shots.shots]
    for k in range(bag.shots.first_part):
        alike = [j for j in range(bag.shots.first_part) if kinds[j] == kinds[k]]
        out[k] = alike[int(np.argmin(np.abs(now[alike] - was[k])))]
    return out


def in_wind(bag: Bag, most_mph: float, threads: int = 1) -> Bag:
    """The same shots, flown in winds of up to so much from any side; the day's own wind must be among them.

    Parameters
    ----------
    most_mph : float
        Wind at 10 m [mph].
    """
    steps = max(math.ceil(most_mph / WIDE_STEP_MPH), 1)
    curved = any(is_curved(shot) for shot in bag.shots.shots)
    flights = flight_tables(
        bag.shots,
        flight_air(),
        day_air(bag.conditions, blows=True),
        winds=disc_axes(most_mph, 2 * steps, (steps + 1) // 2, curved),
        heights_yd=bag.flights.heights_yd,
        tracks=bag.flights.tracks.shape[0] > 0,
        threads=threads,
    )
    return replace(bag, flights=flights)


def stock_flights(bag: Bag, rows: np.ndarray, along: np.ndarray, cross: np.ndarray) -> np.ndarray:
    """Carry and drift [yd] of strikes tabled as 1 to their own level, float64[n, 2].

    Parameters
    ----------
    bag : Bag
        In winds of all speeds (`in_wind`).
    rows : int64[n]
        Shots.
    along, cross : float64[n]
        Wind along each (helping positive) and across it (to the right positive) [yd/s].
    """
    winds, flights = bag.flights.winds, bag.flights.flights
    stock = int(np.argmin(np.abs(FRACTIONS - 1.0)))
    level = int(np.argmin(np.abs(TILTS_DEG)))
    base = int(np.argmin(np.abs(bag.flights.heights_yd)))
    table = flights[:, :, :, stock, level, base, :2]

    def node(axis: np.ndarray, at: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        step = axis[1] - axis[0] if axis.size > 1 else 1.0
        where = np.clip((at - axis[0]) / step, 0.0, axis.size - 1.0)
        low = np.minimum(where.astype(int), max(axis.size - 2, 0))
        return low, where - low

    u, wu = node(winds.u, along)
    mirror = np.where((cross < 0.0) & (winds.v[0] == 0.0), -1.0, 1.0)
    v, wv = node(winds.v, mirror * cross)
    up, vp = np.minimum(u + 1, winds.u.size - 1), np.minimum(v + 1, winds.v.size - 1)
    wu, wv = wu[:, None], wv[:, None]
    out = (1.0 - wu) * ((1.0 - wv) * table[rows, u, v] + wv * table[rows, u, vp])
    out = out + wu * ((1.0 - wv) * table[rows, up, v] + wv * table[rows, up, vp])
    out[:, 1] *= mirror
    return np.asarray(out)
