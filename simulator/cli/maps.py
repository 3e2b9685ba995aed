"""`import-map`: hole files from a map."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Annotated

import typer

from ..errors import NoAnswerError, UsageError
from . import options as o
from .say import progress, say


def import_map(
    map_file: Annotated[
        str,
        typer.Argument(metavar="FILE", help="GeoJSON or .osm (also packed) with OpenStreetMap's golf tags."),
    ],
    out: Annotated[
        Path, o.out("Folder for the hole files; made if missing.", "DIR")
    ],
    elevation: Annotated[
        str | None,
        typer.Option(
            "--elevation", metavar="FILE", help="Points with heights: CSV of lon, lat, ele_m (or x, y, z)."
        ),
    ] = None,
    outside: Annotated[
        str,
        typer.Option(
            "--outside", metavar="WHAT", help="Outside the outline of the course: out (of bounds) or rough."
        ),
    ] = "out",
    sea: Annotated[
        str, typer.Option("--sea", metavar="WHAT", help="The sea: out (of bounds) or red (penalty area).")
    ] = "out",
    attribution: Annotated[
        str | None,
        typer.Option(
            "--attribution", metavar="TEXT",
            help="Line that files and pictures carry; OpenStreetMap's if left out, none for your own map.",
        ),
    ] = None,
    force: o.ForceOption = False,
    old_force: Annotated[bool, o.OLD_FORCE] = False,
    as_json: o.JsonOption = False,
    units: o.UnitsOption = "yards",
) -> None:  # fmt: skip
    """Hole files from a map: one for each hole, with a report of what is missing and what was assumed.

    Example: holesim import-map course.geojson -o holes/
    """
    for option, value, allowed in (("--outside", outside, ("out", "rough")), ("--sea", sea, ("out", "red"))):
        if value not in allowed:
            raise UsageError(f"{option} {value!r}; allowed: {' or '.join(allowed)}")
    if os.path.exists(out) and not os.path.isdir(out):
        raise UsageError(f"--out {str(out)!r}: that is a file; allowed: a folder")
    if attribution is not None and (len(attribution) > 200 or not attribution.isprintable()):
        raise UsageError("--attribution: allowed are up to 200 printable characters")
    from ..hole.maps import Settings
    from ..hole.maps import import_map as run
    from ..report.jsonout import dumps
    from ..report.maptext import import_text
    from ..report.units import units_named

    shown = units_named(units)
    line = "" if attribution is not None and attribution.strip().lower() in ("", "none") else attribution
    settings = Settings(elevation, outside == "out", sea == "red", line, force or old_force, shown.metric)
    report = run(map_file, out, settings, progress())
    typer.echo(dumps(report.to_dict()) if as_json else import_text(report, shown))
    if not report.written:
        first = report.holes[0]
        why = shown.sentence(str(first.failed))
        raise NoAnswerError(f"{map_file}: no hole could be written; hole {first.hole}: {why}")
    left = len(report.holes) - len(report.written)
    if left:
        say(f"{left} of {len(report.holes)} holes not written")
