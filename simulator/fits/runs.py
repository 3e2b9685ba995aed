"""Run of strikes on level medium fairway by kind of club, carry and strike; writes ``player/runs.toml``.

Run with ``python -m simulator.fits.runs``, again whenever the flight or the bounce changes. No figure of
its own: the game's flight and run, tabled, so that a bag file may give totals and finishing widths.
"""

from __future__ import annotations

import datetime
from pathlib import Path

import numpy as np

from ..conditions import Conditions
from ..physics.launch import KINDS, MEN
from ..player import level
from ..player.model import Club
from ..tables.airs import flight_air
from ..tables.carries import runs_yd
from ..tables.flights import FRACTIONS, TILTS_DEG, flight_tables
from ..tables.shots import Shot, ShotList
from .tables import write_table

SHARES = np.round(np.arange(0.3, 1.29, 0.06), 2)
"""Carries tabled, as shares of the men's tour carry of the kind."""

STRIKES = (0.3, 0.5, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3)
"""Strikes tabled, as shares of the stock carry: a ball half topped to a flier."""


def run_table(kind: str, carries_yd: np.ndarray) -> np.ndarray:
    """Run [yd], shape (carries, strikes), of strikes of one kind of club with these stock carries."""
    spread = level(18).spread("7-iron", 130.0, 190.0)
    shots = tuple(
        Shot(club, "stock", club.carry_yd, club)
        for club in (Club(name=kind, kind=kind, carry_yd=float(c), **spread) for c in carries_yd)
    )
    tables = flight_tables(ShotList(shots, len(shots), len(shots)), flight_air(), flight_air(), threads=2)
    columns = [int(np.argmin(np.abs(FRACTIONS - strike))) for strike in STRIKES]
    straight = tables.flights[:, 0, 0][:, columns, len(TILTS_DEG) // 2, 0].astype(float)
    runs = runs_yd(straight.reshape(-1, straight.shape[-1]), Conditions())
    return runs.reshape(len(shots), len(columns))


def main() -> None:
    columns = {kind: run_table(kind, SHARES * MEN[kind].carry_yd).tolist() for kind in KINDS}
    origin = {
        "script": "python -m simulator.fits.runs",
        "inputs": "the game's own flight in still air at 25 C and run on level medium fairway",
        "date": datetime.date.today().isoformat(),
        "unit": "run in yards by kind of club: a row for each stock carry (shares of MEN[kind].carry_yd), "
        "a column for each strike (shares of the stock carry)",
    }
    named: dict[str, list[object]] = {"shares": SHARES.tolist(), "strikes": list(STRIKES)}
    named |= {f'"{kind}"': values for kind, values in columns.items()}
    write_table(Path(__file__).parents[1] / "player" / "runs.toml", origin, named)


if __name__ == "__main__":
    main()
