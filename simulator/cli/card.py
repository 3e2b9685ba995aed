"""`card`: pocket pages, one hole each."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ..errors import UsageError
from . import options as o
from .say import say

if TYPE_CHECKING:
    from ..hole import Hole


def card(
    holes: Annotated[
        list[str],
        typer.Argument(
            metavar="HOLE...", help="Hole files, holes or courses of 'holesim list', folders of hole files."
        ),
    ],
    out: Annotated[
        Path,
        typer.Option(
            "-o", "--out", metavar="FILE", help=".pdf for one book; .png or .svg for a file each, numbered."
        ),
    ],
    tee: o.TeeOption = None,
    units: o.UnitsOption = "yards",
) -> None:
    """Pocket cards: map, carries and green of each hole, with blanks for club, line and finish.

    Example: holesim card withy-drain eel-trap -o card.pdf
    """
    from ..hole.yardage import measure
    from ..report.cardpages import save_cards
    from ..report.page import check_plot_path
    from ..report.units import units_named

    unit = units_named(units)
    check_plot_path(out)
    found = [one for given in holes for one in _holes(given)]
    loaded = [hole.with_tee(tee) if tee is not None else hole for _, hole in found]
    numbers = [number for number, _ in found]
    for path in save_cards([measure(hole) for hole in loaded], out, unit, numbers):
        say(f"wrote {path}")


def _holes(given: str) -> list[tuple[int | None, Hole]]:
    """A hole, or the numbered holes of a course; one that cannot be read is told and left out."""
    from ..hole import load_hole
    from ..hole.course import bundled_courses, load_course

    try:
        folder = Path(given).is_dir()
        file = Path(given).is_file()
    except (OSError, ValueError):  # a zero byte in it: the reader of holes says so
        folder = file = False
    if not folder and (file or given not in bundled_courses()):
        return [(None, load_hole(given))]
    course = load_course(given)
    for bad in course.bad:
        say(f"left out: {bad.error}")
    if not course.holes:
        raise UsageError(f"{given}: no hole of it can be read")
    return list(course.numbered())
