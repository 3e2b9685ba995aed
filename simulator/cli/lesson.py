"""`lesson`: pages that teach one shot of one hole."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, NamedTuple

import typer

from ..errors import UsageError
from . import options as o
from .answer import DEFAULT_SEQUENCES, check_clubs
from .day import Day
from .say import play_progress, say, say_written
from .where import Where, unnamed


class Pages(NamedTuple):
    """What is drawn, and how long it is played."""

    sequences: o.SequencesOption = DEFAULT_SEQUENCES
    seed: o.SeedOption = 1
    quick: Annotated[
        bool, typer.Option("--quick", help="Take the player as exact: the verdict without confidence.")
    ] = False
    threads: o.ThreadsOption = None
    out: Annotated[
        Path | None,
        o.out("The sheet: .pdf for one file; .png or .svg for a file a picture; lesson.pdf if left out."),
    ] = None
    only: Annotated[
        list[str] | None,
        typer.Option(
            "--only", metavar="NAME",
            help="plan, two, aims, scores, worth, approach or patterns; again for more; all if left out.",
        ),
    ] = None  # fmt: skip
    units: o.UnitsOption = "yards"


def lesson(
    hole: o.HoleArgument,
    where: Where,
    day: Day,
    pages: Pages,
    clubs: Annotated[
        list[str] | None,
        typer.Argument(metavar="CLUB", help="Clubs to set side by side, as in compare."),
    ] = None,
) -> None:
    """A lesson sheet: the plan, the alternatives, where to aim, what a place is worth, in pictures and words.

    Example: holesim lesson withy-drain driver 3-wood -o lesson.pdf
    """
    where.check()
    from ..report.lessonpages import check_only, save_lesson
    from ..report.page import check_plot_path
    from ..report.units import units_named

    unit, only = units_named(pages.units), tuple(pages.only or ())
    check_only(only)
    out = pages.out or _unnamed_sheet()
    check_plot_path(out)
    player = where.who()
    found = where.hole(hole, player)
    start = where.start(found)
    conditions = day.read(found, start)
    clubs = check_clubs(player, clubs, unit, found, start, conditions)
    from ..strategy import lesson as work

    result = work.lesson(
        found, player, clubs or (), conditions=conditions, start=start, sequences=pages.sequences,
        seed=pages.seed, quick=pages.quick, threads=pages.threads, progress=play_progress(),
    )  # fmt: skip
    for warning in result.answer.warnings:
        say(f"warning: {unit.sentence(warning)}")
    say_written(save_lesson(result, out, unit, only, unnamed(where.player, player)), out)


def _unnamed_sheet() -> Path:
    """Where the sheet goes when nobody says; one that is there is another lesson's (UsageError)."""
    path = Path("lesson.pdf")
    if path.exists():
        raise UsageError(
            f"{str(path)!r} is there already; allowed: another name with -o, or '-o {path}' to write over it"
        )
    return path
