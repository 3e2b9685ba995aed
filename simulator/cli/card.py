"""`card`: pocket pages, one hole each."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from ..errors import UsageError
from . import options as o
from .say import say
from .show import UnitsOption


def card(
    holes: Annotated[
        list[str],
        typer.Argument(
            metavar="HOLE...", help="Hole files, holes of 'holesim list', or a folder of .toml files."
        ),
    ],
    out: Annotated[
        Path,
        typer.Option(
            "-o", "--out", metavar="FILE", help=".pdf for one book; .png or .svg for a file each, numbered."
        ),
    ],
    tee: o.TeeOption = None,
    units: UnitsOption = "yards",
) -> None:
    """Pocket cards: map, carries and green of each hole, with blanks for club, line and finish.

    Example: holesim card withy-drain eel-trap -o card.pdf
    """
    from ..hole import load_hole
    from ..hole.yardage import measure
    from ..report.cardpages import save_cards
    from ..report.page import check_plot_path
    from ..report.units import units_named

    unit = units_named(units)
    check_plot_path(out)
    names = [name for given in holes for name in _files(given)]
    loaded = [load_hole(name) for name in names]
    loaded = [hole.with_tee(tee) if tee is not None else hole for hole in loaded]
    numbers = range(1, len(loaded) + 1) if len(holes) == 1 and len(loaded) > 1 else None  # a course in order
    for path in save_cards([measure(hole) for hole in loaded], out, unit, numbers):
        say(f"wrote {path}")


def _files(given: str) -> list[str]:
    """A hole, or the holes of a folder in the order of their names."""
    try:
        folder = Path(given).is_dir()
    except (OSError, ValueError):  # a zero byte in it: the reader of holes says so
        folder = False
    if not folder:
        return [given]
    names = sorted(str(path) for path in Path(given).glob("*.toml"))
    if not names:
        raise UsageError(f"{given}: no hole file (.toml) in this folder")
    return names
