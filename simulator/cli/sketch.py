"""`sketch`: a hole file from words."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from . import options as o
from .notes import notes_of
from .say import say


def sketch(
    words: Annotated[
        str, typer.Argument(metavar="WORDS", help="The hole in words, in quotes; or a .txt file of them.")
    ],
    out: Annotated[
        Path | None, o.out("The hole file to write (TOML); printed if left out.")
    ] = None,
    force: o.ForceOption = False,
    as_json: o.JsonOption = False,
    units: Annotated[
        str | None,
        typer.Option(
            "--units", metavar="UNITS",
            help="'yards' or 'metres', of the file and on screen; those of the words if left out.",
        ),
    ] = None,
) -> None:  # fmt: skip
    """A hole file from words; without -o it is printed. What the words do not
    say is assumed, and marked.

    Example: holesim sketch "par 4, 372; pond right 213 to 254" -o my-12th.toml

    The same words may stand in place of HOLE in compare, plan and check.

    \b
    Say par and length first, then features: ";" or a new line between them,
    commas within one. Yards, unless the length is in m ("342 m") or it says
    "all in metres". Distances are along the line of play from the first tee.
      fairway 28 wide, 150 to 340 | 14 left, 16 right | narrows to 20 at 260
      split fairway: left 20 wide, right 30 wide, 12 apart
      green 24 deep, 20 wide, falls front left 2%   | small green | large green
      two tier green, back 3 ft up  | pin 6 paces on
      green front 360, back 384 | pin 7 on, 3 left  | pins front and back left
      pond right 213 to 254, edge 14, far edge 40   | lake left of the green
      stream across at 230 | ditch 20 short of the green, dry | carry 190
      yellow penalty area 300 to 320, playable      | river all down the left
      out left 34 | out both sides 45 | road right 40 from 200 to 300
      bunker left at 230 | cross bunker at 210 | two bunkers right 220 to 260
      three bunkers right 210, 230 and 250 | bunker 150 out left | creek 100 out
      bunkers both sides of the green | bunker short right of the green
      trees right 180 to 260, 15 tall | heavy rough both sides, edge 25
      lone tree 12 left at 230, crown 10 | oak 20 right at 300
      dogleg left at 230 | left 40 at 230 (degrees) | bends right at 240
      white tee; red tee 40 ahead | green 6 up | tee 10 above the fairway
      mark church tower 12 right at 400 | pine 20 left at 260 as mark
      stroke index 7, bearing 68 | pond called Mill Pond right 200 to 240
      edge of pond 213, gap 14 to line at 213, right   (laser readings)
    "14 right" is the near edge of an area, the middle of a bunker or a tree.
    "3 left" of a pin counts from the middle of the green; "3 from the left"
    from its edge, as "3 left" of --pin does.
    """
    from dataclasses import replace

    from ..files import write_text
    from ..hole.words import hole_from_words
    from ..report import checks
    from ..report.jsonout import dumps
    from ..report.units import METRES, YARDS, units_named

    shown = None if units is None else units_named(units)
    o.check_new_file(out, force)
    found = hole_from_words(notes_of(words), None if shown is None else shown.metric)
    shown = shown or (METRES if found.metric else YARDS)
    if out is not None:
        write_text(out, found.toml_text)
        say(f"wrote {out}")
    for warning in found.warnings:
        say(f"warning: {warning}")
    hole = found.hole if out is None else replace(found.hole, source=str(out))
    if as_json:
        answer = {
            "schema": "holesim-sketch-1",
            "file": None if out is None else str(out),
            "toml": found.toml_text,
            "assumed": list(found.assumed),
            "warnings": list(found.warnings),
            "hole": checks.hole_dict(hole),
        }
        typer.echo(dumps(answer))
    else:
        typer.echo(found.toml_text.rstrip() if out is None else checks.hole_text(hole, shown))
