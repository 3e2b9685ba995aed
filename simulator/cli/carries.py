"""`carries`: the player's numbers today."""

from __future__ import annotations

from typing import Annotated

import typer

from ..errors import UsageError
from . import options as o
from .day import Air


def carries(
    *,
    distance: Annotated[
        str | None,
        typer.Argument(
            metavar="DISTANCE",
            help='Yards to the target; a laser\'s pair as "164, adjusted 169". Left out: the table of clubs.',
        ),
    ] = None,
    player: o.PlayerOption = None,
    without: o.WithoutOption = None,
    air: Air,
    height: o.HeightOption = None,
    adjusted: o.AdjustedOption = None,
    as_json: o.JsonOption = False,
    units: o.UnitsOption = "yards",
) -> None:
    """The player's numbers today: carry and run of every club, or the number to hit for a distance.

    Wind words refer to the shot. Example: holesim carries "164, adjusted 169" --wind "12 mph against"
    """
    from ..report import carrytext
    from ..report.jsonout import dumps
    from ..report.units import units_named
    from ..strategy import carries as numbers
    from ..strategy.distancewords import read_adjusted, read_distance, read_height
    from ..strategy.effective import effective_distance

    shown = units_named(units)
    who = o.player_of(player, without)
    day = air.read()
    height_yd = None if height is None else read_height(height)
    if distance is None:
        if adjusted is not None:
            raise UsageError("--adjusted goes with a distance: holesim carries 164 --adjusted 169")
        table = numbers.carries(who, day, height_yd=height_yd or 0.0)
        text = (
            dumps(carrytext.table_dict(who, day, table))
            if as_json
            else carrytext.table(who, day, table, shown)
        )
        typer.echo(text)
        return
    level, pair = read_distance(distance)
    if adjusted is not None:
        pair = read_adjusted(adjusted, distance)
    found = effective_distance(who, day, level, height_yd=height_yd, adjusted_yd=pair)
    text = (
        dumps(carrytext.sum_dict(who, day, found)) if as_json else carrytext.sum_text(who, day, found, shown)
    )
    typer.echo(text)
