"""`player fit`: a player file from measured shots."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from ..errors import UsageError
from . import options as o
from .say import say

if TYPE_CHECKING:
    from ..player.measured import Columns

COLUMN_KEYS = ("club", "carry", "offline", "total")


def fit(
    shots: Annotated[str, typer.Argument(metavar="SHOTS", help="A CSV file: headings, then a row a shot.")],
    level: Annotated[
        float,
        typer.Option(
            "--level", min=-5, max=54, metavar="HANDICAP",
            help="Handicap index whose level fills in what the shots do not tell; +2 on the card is -2.",
        ),
    ],
    sex: Annotated[
        str, typer.Option("--sex", metavar="WORD", help="man or woman: whose level fills in.")
    ] = "man",
    name: Annotated[
        str | None, typer.Option("--name", metavar="NAME", help="The player's name; the file's if left out.")
    ] = None,
    columns: Annotated[
        list[str] | None,
        typer.Option(
            "--columns", metavar="KEY=HEADING",
            help='Which column is what: --columns "carry=Flight (m)"; keys: club, carry, offline, total.',
        ),
    ] = None,
    mapping: Annotated[
        Path | None,
        typer.Option(
            "--mapping", metavar="FILE",
            help="The same in a file, with names of clubs (examples/SHOTS.md).",
        ),
    ] = None,
    left_positive: Annotated[
        bool, typer.Option("--left-positive", help="The file counts left as positive.")
    ] = False,
    out: Annotated[Path | None, o.out("The player file to write (TOML).")] = None,
    force: o.ForceOption = False,
    plot: Annotated[
        Path | None,
        typer.Option("--plot", metavar="FILE", help="Draw the shots and the fit: .png, .svg or .pdf."),
    ] = None,
    as_json: o.JsonOption = False,
    units: o.ReadUnitsOption = "yards",
) -> None:  # fmt: skip
    """A player file from measured shots: what they tell, and the level for what they do not.

    Example: holesim player fit shots.csv --level 12 -o me.toml
    """
    from ..files import write_text
    from ..player.boxes import SEXES
    from ..player.levels import level as level_of
    from ..player.measured import fit_player, player_text, read_shots
    from ..report import fittext
    from ..report.jsonout import dumps
    from ..report.units import units_named
    from ..toml_text import in_metres, short_line

    shown = units_named(units)
    if sex not in SEXES:
        raise UsageError(f"--sex {short_line(sex, 40)!r}; allowed: {' or '.join(SEXES)}")
    o.check_new_file(out, force)
    if plot is not None:
        from ..report.page import check_plot_path

        check_plot_path(plot)
    read = read_shots(shots, _columns(columns, mapping, shown.name, left_positive))
    found = fit_player(read.shots, level_of(level, sex))
    for row in read.left_aside:
        say(f"warning: left aside: {row}")
    if out is not None:
        text = player_text(found, name or out.stem, Path(shots).name)
        write_text(out, in_metres(text) if shown.metric else text)
        say(f"wrote {out}")
    if plot is not None:
        from ..report.shotsplot import save_shots

        save_shots(found, plot, shown)
    typer.echo(dumps(fittext.fit_dict(found, read.left_aside)) if as_json
        else fittext.fit_text(found, shown, read.left_aside)
    )  # fmt: skip


def _columns(columns: list[str] | None, mapping: Path | None, unsaid: str, left_positive: bool) -> Columns:
    """Columns as the options say, over those of the mapping file."""
    from dataclasses import replace

    from ..player.measured import Columns

    read = Columns() if mapping is None else Columns.from_file(mapping)
    headings = dict(read.headings)
    for text in columns or ():
        key, equals, heading = text.partition("=")
        if not equals or key.strip() not in COLUMN_KEYS or not heading.strip():
            raise UsageError(
                f"--columns {text!r}; allowed: KEY=HEADING with a KEY of {', '.join(COLUMN_KEYS)}"
            )
        headings[key.strip()] = heading.strip()
    return replace(read, headings=headings, unsaid=unsaid, left_positive=left_positive or read.left_positive)
