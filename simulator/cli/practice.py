"""`practice`: what one thing better is worth."""

from __future__ import annotations

from typing import Annotated

import typer

from . import options as o
from .day import Day
from .say import play_progress
from .where import holes_of, in_use, unnamed


def practice(
    *,
    target: Annotated[
        str,
        typer.Argument(
            metavar="HOLE",
            help="A hole file, a hole or a course of 'holesim list', or a folder of hole files.",
        ),
    ],
    player: o.PlayerOption = None,
    tee: o.TeeOption = None,
    pin: o.PinOption = None,
    without: o.WithoutOption = None,
    day: Day,
    sequences: o.SequencesOption = 5_000,
    seed: o.SeedOption = 1,
    threads: o.ThreadsOption = None,
    as_json: o.JsonOption = False,
    units: o.UnitsOption = "yards",
) -> None:
    """What practice is worth: strokes a round from 10 yd more, a degree less spread, half the mishits.

    Example: holesim practice withy-drain --player isolde
    """
    from ..report.jsonout import dumps
    from ..report.practicetext import practice_text
    from ..report.units import units_named
    from ..strategy import practice as work

    shown = units_named(units)
    who = o.player_of(player, without)
    holes = [in_use(hole, tee, pin, who) for _, hole in holes_of(target)]
    days = [day.read(hole, None) for hole in holes]
    found = work.practice(
        holes, who, conditions=days, sequences=sequences, seed=seed, threads=threads, progress=play_progress()
    )
    notes = unnamed(player, who)
    typer.echo(dumps(found.to_dict()) if as_json else practice_text(found, notes, shown))
