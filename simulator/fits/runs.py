"""Run of strikes on level medium fairway by kind of club, carry and strike; writes ``player/runs.toml``.

Run with ``python -m simulator.fits.runs``, again whenever the flight or the bounce changes. No figure of
its own: the game's flight and run, tabled, so that a bag file may give totals and finishing widths.
"""

from __future__ import annotations

import datetime
from dataclasses import replace
from pathlib import Path

import numpy as np

from ..conditions import Conditions
from ..physics.launch import KINDS, MEN
from ..physics.strike import SHORTEST_PART_CARRY_YD
from ..player import level
from ..player.fill import fill_club
from ..tables.airs import flight_air
from ..tables.carries import runs_yd
from ..tables.flights import FRACTIONS, TILTS_DEG, flight_tables
from ..tables.shots import Shot, ShotList
from .tables import write_table

SHARES = np.round(np.arange(0.3, 1.29, 0.06), 2)
"""Carries tabled, as shares of the men's tour carry of the kind."""

STRIKES = (0.3, 0.5, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3)
"""Strikes tabled, as shares of the stock carry: a ball half topped to a flier."""


NEAR, FAR = 1, 3
"""Steps of the game's tilt axis at which the turn is read: the first, on which the game measures its own
tilts, and one of three times as much, about the spread of a wide driver's mishits."""


def tabled(kind: str, carries_yd: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    """Strikes of one kind of club with these stock carries.

    Returns
    -------
    run_yd : float64[carries, strikes]
        Of straight strikes.
    turn, bend : float64[carries]
        Angle off line at landing of a stock strike of tilt t: turn * sin(bend * t) / bend.
    drop : float64[carries]
        Share of its carry that a tilted stock strike loses, over its tilt squared [1/rad2].
    """
    any_club = fill_club(kind, {kind: kind}, {kind: 150.0}, {}, level(18))  # only its kind and carry are read
    clubs = (replace(any_club, carry_yd=float(c)) for c in carries_yd)
    shots = tuple(Shot(club, "stock", club.carry_yd, club) for club in clubs)
    tables = flight_tables(ShotList.of_full(shots), flight_air(), flight_air(), threads=2)
    columns = [int(np.argmin(np.abs(FRACTIONS - strike))) for strike in STRIKES]
    flights = tables.flights[:, 0, 0, :, :, 0].astype(float)
    straight = flights[:, columns, len(TILTS_DEG) // 2]
    runs = runs_yd(straight.reshape(-1, straight.shape[-1]), Conditions())
    stock, middle = flights[:, columns[STRIKES.index(1.0)]], len(TILTS_DEG) // 2
    near, far = (np.arctan2(stock[:, middle + k, 1], stock[:, middle + k, 0]) for k in (NEAR, FAR))
    step, tilt = np.radians(TILTS_DEG[middle + NEAR]), np.radians(TILTS_DEG[middle + FAR])
    # sin(3 u) / sin(u) = 3 - 4 sin(u)^2
    bend = np.arcsin(np.sqrt(np.clip(3.0 - far / near, 1e-4, 3.0)) / 2.0) / step
    turn = near * bend / np.sin(bend * step)
    drop = (1.0 - stock[:, middle + FAR, 0] / carries_yd) / tilt**2
    return runs.reshape(len(shots), len(columns)), turn, bend, drop


PUNCH_CARRIES_YD = np.round(np.geomspace(SHORTEST_PART_CARRY_YD, 130.0, 16), 1)
"""Carries of punches and chips tabled [yd]."""


def punched(carries_yd: np.ndarray) -> np.ndarray:
    """Run of punches and chips with a middle iron that carry so far [yd], float64[carries]."""
    iron = fill_club("6-iron", {"6-iron": "6-iron"}, {"6-iron": 150.0}, {}, level(18))
    shots = [Shot(iron, "stock", iron.carry_yd, iron)]  # part swings are launched by the full one's speed
    shots += [Shot(iron, "punch", float(carry), iron) for carry in carries_yd]
    tables = flight_tables(ShotList(tuple(shots), 1, 1, len(shots)), flight_air(), flight_air(), threads=2)
    stock, straight = int(np.argmin(np.abs(FRACTIONS - 1.0))), len(TILTS_DEG) // 2
    return runs_yd(tables.flights[1:, 0, 0, stock, straight, 0].astype(float), Conditions())


def main() -> None:
    origin = {
        "script": "python -m simulator.fits.runs",
        "inputs": "the game's own flight in still air at 25 C and run on level medium fairway",
        "date": datetime.date.today().isoformat(),
        "unit": "run in yards by kind of club: a row for each stock carry (shares of MEN[kind].carry_yd), "
        "a column for each strike (shares of the stock carry); turn, bend and drop of tilted "
        "stock strikes by carry; run of punches and chips by carry in yards",
    }
    named: dict[str, list[object]] = {"shares": SHARES.tolist(), "strikes": list(STRIKES)}
    for kind in KINDS:
        runs, turn, bend, drop = tabled(kind, SHARES * MEN[kind].carry_yd)
        named[f'"{kind}"'] = runs.tolist()
        for what, values in (("turn", turn), ("bend", bend), ("drop", drop)):
            named[f'"{kind} {what}"'] = values.tolist()
    named["punch_carries_yd"] = PUNCH_CARRIES_YD.tolist()
    named["punch_run_yd"] = punched(PUNCH_CARRIES_YD).tolist()
    write_table(Path(__file__).parents[1] / "player" / "runs.toml", origin, named)


if __name__ == "__main__":
    main()
