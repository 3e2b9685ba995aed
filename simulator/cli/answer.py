"""`plan` and `compare`: which club, which line."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Annotated, Any, NamedTuple

import typer

from . import options as o
from .day import Day
from .say import play_progress, say
from .where import Where, unnamed

if TYPE_CHECKING:
    from ..conditions import Conditions
    from ..hole.model import Hole
    from ..player import Player
    from ..report.units import Units
    from ..strategy.result import Answer, Start

DEFAULT_SEQUENCES = 20_000
"""As `strategy.ask` has it; said here because importing that is slow."""


class Wanted(NamedTuple):
    """What is wanted beside the lowest average."""

    target: o.TargetOption = None
    leave: o.LeaveOption = None
    land: o.LandOption = None


class Run(NamedTuple):
    """How long to play, and how to show it."""

    sequences: o.SequencesOption = DEFAULT_SEQUENCES
    seed: o.SeedOption = 1
    quick: o.QuickOption = False
    threads: o.ThreadsOption = None
    plot: o.PlotOption = None
    full: o.FullOption = False
    as_json: o.JsonOption = False
    units: o.UnitsOption = "yards"


def plan(hole: o.HoleArgument, where: Where, wanted: Wanted, day: Day, run: Run) -> None:
    """The best club and line on a hole, and what every other would do.

    Example: holesim plan withy-drain --from "164 out, left rough"
    """
    _answer(hole, None, where, wanted, day, run)


def compare(
    hole: o.HoleArgument,
    clubs: Annotated[
        list[str],
        typer.Argument(
            metavar="CLUB",
            help='Clubs by any usual name ("3w", "7-iron low", "152 shot"); an aim may follow: "driver 8 '
            'left" is 8 yards left of the straight line to the pin, "driver 3 degrees left"; driver@-8 too.',
        ),
    ],
    where: Where,
    wanted: Wanted,
    day: Day,
    run: Run,
) -> None:
    """Driver or 3-wood here? The clubs named, each on its best line or the one given.

    Example: holesim compare withy-drain driver 3-wood
    """
    _answer(hole, clubs, where, wanted, day, run)


def _answer(
    hole_name: str, clubs: list[str] | None, where: Where, wanted: Wanted, day: Day, run: Run
) -> None:
    """Everything cheap first, so that a slip is told before the work; then the answer."""
    o.check_one_form(run.as_json, run.full)
    where.check()
    from ..report.units import units_named
    from ..strategy.goals import read_goal

    units = units_named(run.units)
    if run.plot is not None:
        from ..report.page import check_plot_path

        check_plot_path(run.plot)
    player = where.who()
    hole = where.hole(hole_name, player)
    start, goal = where.start(hole), read_goal(*wanted, hole.par)
    if goal is not None:
        from ..strategy.places import tee_start

        goal.check(start or tee_start(hole))
    conditions = day.read(hole, start)
    clubs = check_clubs(player, clubs, units, hole, start, conditions)
    from ..report.text import room_for_turns
    from ..strategy import ask

    notes = unnamed(where.player, player)
    settings: dict[str, Any] = {
        "conditions": conditions, "start": start, "sequences": run.sequences, "seed": run.seed,
        "threads": run.threads, "quick": run.quick, "progress": play_progress(), "goal": goal,
        "turns": lambda found: run.as_json or run.full or room_for_turns(found, notes, units),
    }  # fmt: skip
    if clubs is None:
        answer = ask.plan(hole, player, **settings)
    else:
        answer = ask.compare(hole, player, clubs, **settings)
    _show(answer, notes, run, units)


def check_clubs(
    player: Player,
    clubs: list[str] | None,
    units: Units,
    hole: Hole,
    start: Start | None,
    conditions: Conditions,
) -> list[str] | None:
    """Refuse a club that is not in the bag, or an aim that is none; say what a distance means.

    Returns the clubs with lines in words as degrees.
    """
    if not clubs:
        return clubs
    from ..report.phrases import swing_words
    from ..strategy.aimwords import in_degrees
    from ..strategy.clubwords import shot_meant

    here = (start.x_yd, start.y_yd) if start is not None else None
    aimed = [in_degrees(text, hole, player, here, conditions) for text in clubs]
    for text, told in zip(clubs, aimed, strict=True):
        meant = shot_meant(player, told)
        if meant.by_distance:
            say(f"{text}: {swing_words(meant, units)}")
        if told != text and meant.aim is not None:
            off = units.side(meant.carry_yd * math.sin(meant.aim.turn_rad(meant.carry_yd)))
            beside = f"{off} of the straight line to the pin, at its carry" if off else "straight at the pin"
            say(f"{text}: {beside}")
    return aimed


def _show(answer: Answer, notes: tuple[str, ...], run: Run, units: Units) -> None:
    for warning in answer.warnings:
        say(f"warning: {units.sentence(warning)}")
    if run.as_json:
        from ..report.jsonout import answer_json

        typer.echo(answer_json(answer))
    elif run.full:
        from ..report.full import full_tables

        typer.echo(full_tables(answer, notes, units))
    else:
        from ..report.text import answer_screen

        typer.echo(answer_screen(answer, notes, units))
    if run.plot is not None:
        from ..report.plot import save_plan

        save_plan(answer, run.plot, units)
        say(f"wrote {run.plot}")
