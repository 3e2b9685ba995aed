"""`survey`: a hole from laser readings."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from . import options as o
from .say import say


def survey(
    readings: Annotated[
        str, typer.Argument(metavar="READINGS", help="A file of laser readings (holes/LASER.md).")
    ],
    out: Annotated[Path | None, o.out("The hole file to write (TOML).")] = None,
    force: o.ForceOption = False,
    as_json: o.JsonOption = False,
    units: o.UnitsOption = "yards",
) -> None:
    """A hole from laser readings: every point, how sure it is, which reading disagrees, what to read next.

    Example: holesim survey readings.toml -o my-hole.toml
    """
    from ..files import write_text
    from ..hole.files import parse_readings
    from ..hole.sketch import read_sketch
    from ..hole.survey import read_survey, sketch_data, sketch_text, solve_survey
    from ..report import surveytext
    from ..report.jsonout import dumps
    from ..report.units import units_named

    shown = units_named(units)
    o.check_new_file(out, force)
    found = solve_survey(read_survey(parse_readings(Path(readings), readings), readings))
    if out is not None:
        read_sketch(sketch_data(found), f"{readings}, [hole]")  # nothing is written that would not be read
        write_text(out, sketch_text(found, Path(readings).name, metric=shown.metric))
        say(f"wrote {out}")
    if as_json:
        for warning in surveytext.warnings(found, shown):
            say(f"warning: {warning}")
        typer.echo(dumps(surveytext.survey_dict(found)))
    else:
        typer.echo(surveytext.survey_text(found, shown))
