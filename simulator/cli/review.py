"""`review`: after the round, the choice or the swing?"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from . import options as o
from .day import Day
from .notes import notes_of
from .say import INTERRUPTED, play_progress, say, say_written
from .where import course_or_hole, in_use, unnamed

if TYPE_CHECKING:
    from ..conditions import Conditions
    from ..hole import Hole
    from ..player import Player
    from ..strategy.review import HoleReview, RoundReview


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
        typer.Option("--plot", "-o", metavar="FILE", help="Draw it, a page a hole: .png, .svg or .pdf."),
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
      right rough | fairway | on                  as far as usual
      holed | out of bounds | lost
      into withy drain, drop 175 out, right rough | into the water, again
    and "2 putts", "chip to 6 ft", "unplayable, drop 150 out", "picked up".
    Of a course a line a hole, its number first: "7: driver to 160 out; ...".
    "back pin", "yellow tee" or "from 150 out" may stand before the strokes.
    """
    o.check_one_form(as_json, full)
    from ..report.jsonout import dumps
    from ..report.page import check_plot_path
    from ..report.reviewtext import review_text
    from ..report.units import units_named

    shown = units_named(units)
    if plot is not None:
        check_plot_path(plot)
    who = o.player_of(player, without)
    found = _worked(target, notes_of(played), who, day, tee, pin, seed, threads)
    head = {"schema": "holesim-review-1", "player": who.name, "seed": seed}
    text = review_text(found, unnamed(player, who), shown, full)
    typer.echo(dumps({**head, **found.to_dict()}) if as_json else text)
    if plot is not None:
        from ..report.reviewpage import save_review

        say_written(save_review(found, plot, shown), plot)
    if left_out := getattr(found, "left_out", ()):
        say(f"hole {', '.join(map(str, left_out))}: left out")
        raise typer.Exit(INTERRUPTED)


def _worked(
    target: str,
    told: str,
    who: Player,
    day: Day,
    tee: str | None,
    pin: str | None,
    seed: int,
    threads: int | None,
) -> HoleReview | RoundReview:
    """A hole, or a course whose notes have numbers."""
    from ..strategy import review as work

    course, holes = course_or_hole(target)
    ready = {number or 0: in_use(hole, tee, pin, who) for number, hole in holes}
    settings: dict[str, Any] = {"seed": seed, "threads": threads, "progress": play_progress()}
    if course is None:
        (hole,) = ready.values()
        return work.review(hole, who, work.read_notes(told), conditions=day.read(hole, None), **settings)

    def today(hole: Hole) -> Conditions:
        return day.read(hole, None)

    return work.review_round(course, list(ready.items()), who, work.read_round(told), day=today, **settings)
