"""Fit the levels to published golf, and say how far off they are: ``python -m simulator.fits.levels``.

Two stages on the bench of ``bench/holes.py``: the tour's skill and the lies to the tour's strokes, then the
amateurs' curves to rating lines, greens hit and leaves. Written are ``player/levels.toml``,
``physics/lies.toml`` and ``tables/holing_out.toml``; then the table of every target, ours, tolerance and miss
and the figure, to ``benchmarks/levels.md`` and ``benchmarks/levels.png``.

``--check`` makes only the table and the figure, from the files as they are. ``simulator.fits.putting`` and
``simulator.fits.slow_woods`` are fitted before.
"""

from __future__ import annotations

import datetime
import subprocess
import sys
from collections.abc import Sequence
from functools import cache
from pathlib import Path

import numpy as np

from ..files import write_text
from ..player.curves import CURVES, NUMBERS, Curves
from .bench import amateurs, tour
from .bench.measure import Bench, bench
from .bench.published import TOUR_LIES, TOUR_STROKES
from .bench.table import Row, ladders, ninety_rows, rating_rows, tour_columns, tour_misses, tour_putting, who
from .bench.trade import trade_off
from .tables import write_table

ROOM = Path(__file__).parents[1]
DOCS = ROOM.parent / "benchmarks"
LEVELS, LIES, HOLING = (
    ROOM / "player/levels.toml",
    ROOM / "physics/lies.toml",
    ROOM / "tables/holing_out.toml",
)

INPUTS = (
    "Broadie 2012 table 9; Broadie 2008 table 2; Course Rating System yardage ratings; "
    "R&A/USGA distance report; bench and assumed numbers of simulator/fits/bench"
)


def origin(inputs: str) -> dict[str, str]:
    """What a fitted file says of itself."""
    return {"script": "python -m simulator.fits.levels", "inputs": inputs, "date": str(datetime.date.today())}


def write(curves: Curves, found: tour.TourFit) -> None:
    """Write the three files."""
    table: dict[str, float | Sequence[float]] = {"handicap": curves.handicap}
    table |= {name: getattr(curves, name) for name in (*CURVES, *NUMBERS)}
    write_table(LEVELS, origin(INPUTS), table)
    write_table(LIES, origin("Broadie 2012 table 9: tour, rough, sand and recovery columns"), found.lies)
    write_table(
        HOLING,
        origin("Broadie 2012 table 9: tour, fairway and rough near the green; bounds 1 to 3 assumed"),
        {"hole_out_scale": found.hole_out_scale},
    )


def fit() -> None:
    """Both stages, from what is assumed: the files' own numbers play no part."""
    curves = amateurs.plausible(tour.plausible())
    found = tour.as_kept(tour.fit_trees(curves, tour.fit_tour(curves, say), say))
    write(amateurs.fit_amateurs(found, say), found)


def say(line: str) -> None:
    """Print at once."""
    print(line, flush=True)


def table(rounds: int = 5000) -> tuple[list[Row], list[str]]:
    """Every row of the table, and what is printed below it."""

    @cache
    def man(handicap: float) -> Bench:
        return bench(who(handicap), quick=False)

    @cache
    def open_(handicap: float, sex: str) -> Bench:
        return bench(who(handicap, sex), open_=True, quick=False)

    @cache
    def plain(handicap: float, sex: str) -> Bench:
        return man(handicap) if sex == "man" else bench(who(handicap, sex), quick=False)

    rows = [*tour_columns(man(-5.0), quick=False), *tour_putting(), *ladders(man)]
    rows += [*rating_rows(plain, False, rounds), *rating_rows(open_, True, rounds), *ninety_rows()]
    notes = ["Tour, level less published, by distance [strokes]; not every row counts:"]
    notes.append("  yd  " + "".join(f"{lie:>9}" for lie in TOUR_LIES[:-1]))
    misses = tour_misses(man(-5.0))
    for k, distance in enumerate(TOUR_STROKES[:, 0]):
        cells = [
            f"{misses[lie][k]:+9.2f}" if np.isfinite(misses[lie][k]) else " " * 9 for lie in TOUR_LIES[:-1]
        ]
        notes.append(f"{distance:5.0f} " + "".join(cells))
    notes += ["", *trade_off()]
    return rows, notes


def check() -> list[Row]:
    """Print the table, write it and the figure beside the documents; returns the rows."""
    from .bench.figure import draw

    rows, notes = table()
    head = f"{'group':<22}{'what':<44}{'target':>9}{'ours':>9}  {'tolerance':>11}{'miss':>9}"
    lines = [head, *(row.text() for row in rows), "", *notes]
    missed = [row for row in rows if not row.met]
    lines += [
        "",
        f"{len(missed)} of {sum(row.tolerance is not None for row in rows)} counted figures are missed.",
    ]
    print("\n".join(lines))
    DOCS.mkdir(exist_ok=True)
    text = (
        "# Levels\n\nWritten by `python -m simulator.fits.levels` on "
        f"{datetime.date.today()}. What is on the bench, and why: `simulator/fits/bench/holes.py`.\n\n"
        "![Each curve with its data](levels.png)\n\n```text\n"
        + "\n".join(line.rstrip() for line in lines)
        + "\n```\n"
    )
    write_text(DOCS / "levels.md", text)

    @cache
    def quick(handicap: float, sex: str) -> Bench:
        return bench(who(handicap, sex))

    draw(DOCS / "levels.png", quick)
    return rows


def main(arguments: list[str]) -> None:
    """Fit and check, or only check."""
    if arguments not in ([], ["--check"]):
        sys.exit("usage: python -m simulator.fits.levels [--check]")
    if not arguments:
        fit()
        # the package read its files when it was imported: a fresh one measures them
        subprocess.run([sys.executable, "-m", "simulator.fits.levels", "--check"], check=True)
        return
    check()


if __name__ == "__main__":
    main(sys.argv[1:])
