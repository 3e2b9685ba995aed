"""`card`: pocket pages, one hole each."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from . import options as o
from .say import say_written
from .where import holes_of


def card(
    holes: Annotated[
        list[str],
        typer.Argument(
            metavar="HOLE", help="Hole files, holes or courses of 'holesim list', folders of hole files."
        ),
    ],
    *,
    tee: o.TeeOption = None,
    out: Annotated[Path, o.out("The pages: .pdf for one book; .png or .svg for a file each, numbered.")],
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
    found = [one for given in holes for one in holes_of(given)]
    loaded = [hole.with_tee(tee) if tee is not None else hole for _, hole in found]
    numbers = [number for number, _ in found]
    say_written(save_cards([measure(hole) for hole in loaded], out, unit, numbers), out)
