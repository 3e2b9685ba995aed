"""`show`: the yardage page of a hole."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from . import options as o
from .say import say
from .where import hole_of


def show(
    hole: o.HoleArgument,
    tee: o.TeeOption = None,
    pin: o.PinOption = None,
    out: Annotated[Path | None, o.out("Draw the page: .png, .svg or .pdf.")] = None,
    as_json: o.JsonOption = False,
    units: o.UnitsOption = "yards",
) -> None:
    """A yardage page: carries to every edge of every hazard, fairway widths, the green.

    Example: holesim show withy-drain -o withy-drain.png
    """
    from ..hole.yardage import WIDTH_STEP_YD, measure
    from ..report.jsonout import dumps
    from ..report.page import check_plot_path
    from ..report.showpage import save_show, show_text
    from ..report.units import units_named

    unit = units_named(units)
    if out is not None:
        check_plot_path(out)
    there = hole_of(hole, tee, pin)
    # every ten of what a coach paces: metres where they are shown, yards in JSON
    step_yd = unit.in_yards(WIDTH_STEP_YD)
    shown = measure(there, width_step_yd=step_yd)
    if as_json:
        told = shown if step_yd == WIDTH_STEP_YD else measure(there)
        typer.echo(dumps(told.to_dict()))
    else:
        typer.echo(show_text(shown, unit))
    if out is not None:
        save_show(shown, out, unit)
        say(f"wrote {out}")
