"""`review`: after the round, the choice or the swing?"""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from ..errors import UsageError
from . import options as o
from .day import Day
from .notes import notes_of
from .say import progress, say
from .where import course_or_hole, in_use, unnamed


def review(
    target: Annotated[
        str,
        typer.Argument(
            metavar="HOLE", help="A hole as for plan, or a course: a folder, or one of 'holesim list'."
        ),
    ],
    played: Annotated[
        str,
        typer.Argument(metavar="NOTES", help="What was played, in words, in quotes; or a .txt file of it."),
    ],
    *,
    player: o.PlayerOption = None,
    tee: o.TeeOption = None,
    pin: o.PinOption = None,
    without: o.WithoutOption = None,
    day: Day,
    seed: o.SeedOption = 1,
    threads: o.ThreadsOption = None,
    plot: Annotated[
        Path | None,
        typer.Option("--plot", metavar="FILE", help="Draw it, a page a hole: .png, .svg or .pdf."),
    ] = None,
    full: o.FullOption = False,
    as_json: o.JsonOption = False,
    units: o.UnitsOption = "yards",
) -> None:
    """After the round: did the strokes go to the choice or to the swing?

    Example: holesim review withy-drain "driver into withy drain, drop 175 out,
    right rough; 5-hybrid to 40 out; chip to 12 ft; 2 putts"

    \b
    Strokes stand between semicolons: a club (with its line if it was noted:
    "driver 8 left"), "to", and where the ball went:
      215 out, right rough | 230 on, 12 right     as for --from
      12 ft | 30 ft above | 8 ft left             on the green
      holed | out of bounds | lost
      into withy drain, drop 175 out, right rough | into the water, again
    and "2 putts", "chip to 6 ft", "unplayable, drop 150 out", "picked up".
    Of a course a line a hole, its number first: "7: driver to 160 out; ...".
    "back pin", "yellow tee" or "from 150 out" may stand before the strokes.
    """
    if as_json and full:
        raise UsageError("--json and --full: choose one (the JSON has everything)")
    from ..report.jsonout import dumps
    from ..report.page import check_plot_path
    from ..report.reviewtext import hole_text, round_text
    from ..report.units import units_named
    from ..strategy import review as work

    shown = units_named(units)
    if plot is not None:
        check_plot_path(plot)
    told, who = notes_of(played), o.player_of(player, without)
    course, holes = course_or_hole(target)
    notes = unnamed(player, who)
    found: work.HoleReview | work.RoundReview
    if course is None:
        hole = in_use(holes[0][1], tee, pin)
        found = work.review(
            hole, who, work.read_notes(told), conditions=day.read(hole, None), seed=seed, threads=threads,
            progress=progress(),
        )  # fmt: skip
        text = hole_text(found, notes, shown, full)
    else:
        numbered = [(number or 0, in_use(hole, tee, pin)) for number, hole in holes]
        found = work.review_round(
            course, numbered, who, work.read_round(told),
            day=lambda hole: day.read(hole, None), seed=seed, threads=threads, progress=progress(),
        )  # fmt: skip
        text = round_text(found, notes, shown, full)
    head = {"schema": "holesim-review-1", "player": who.name, "seed": seed}
    typer.echo(dumps({**head, **found.to_dict()}) if as_json else text)
    if plot is not None:
        from ..report.reviewpage import save_review

        for path in save_review(found, plot, shown):
            say(f"wrote {path}")
