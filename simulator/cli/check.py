"""`check` and `list`: what a file holds, and what comes with the program."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Annotated

import typer

from . import options as o


def check(
    file: Annotated[
        str,
        typer.Argument(
            metavar="FILE", help="A hole or player file, a name of 'holesim list', or words for either."
        ),
    ],
    as_json: o.JsonOption = False,
    units: o.UnitsOption = "yards",
) -> None:
    """What a hole or player file holds, and what was assumed.

    Example: holesim check my-hole.toml
    """
    from ..hole import load_hole
    from ..player import load_player
    from ..report import checks, playerchecks
    from ..report.jsonout import dumps
    from ..report.units import units_named

    shown = units_named(units)
    if _is_player(file):
        player = load_player(file)
        text = playerchecks.player_text(player, shown)
        typer.echo(dumps(playerchecks.player_dict(player)) if as_json else text)
    else:
        hole = load_hole(file)
        typer.echo(dumps(checks.hole_dict(hole)) if as_json else checks.hole_text(hole, shown))


def list_(units: o.UnitsOption = "yards") -> None:
    """The demo holes, courses and players that come with the program.

    Example: holesim list
    """
    from ..hole import bundled_courses, bundled_holes, load_course, load_hole
    from ..player import bundled_players, load_player
    from ..report.figures import handicap_said
    from ..report.units import units_named

    shown = units_named(units)
    typer.echo("holes:")
    for name in bundled_holes():
        hole = load_hole(name)
        typer.echo(f"  {name:<16} {hole.name}, par {hole.par}, {shown.length(hole.length_yd)}")
    typer.echo("courses:")
    for name in bundled_courses():
        course = load_course(name)
        typer.echo(f"  {name:<16} {course.name}, {len(course.holes)} holes, par {course.par}: {name}/1 ...")
    typer.echo("players:")
    for name in bundled_players():
        player = load_player(name)
        of = f", handicap {handicap_said(player.handicap)}" if player.handicap is not None else ""
        typer.echo(f"  {name:<16} {player.name}{of}, {len(player.clubs)} clubs")


def _is_player(source: str) -> bool:
    """Whether a file looks like a player's bag; anything unreadable is left to the reader of holes."""
    from ..hole import bundled_holes
    from ..hole.fields import UNITS
    from ..hole.sketch import TOP_KEYS, TOP_LENGTHS
    from ..player import bundled_players
    from ..player.bag import PLAYER_KEYS
    from ..player.words import is_player_words, speaks_of_a_player

    path = Path(source)
    try:
        if not os.path.isfile(path):
            named = source.casefold() in bundled_players() and source not in bundled_holes()
            meant = is_player_words(source) or speaks_of_a_player(source)
            return named or (source not in bundled_holes() and meant)
        import tomllib

        top = tomllib.loads(path.read_text("utf-8-sig"))
    except (OSError, ValueError, RecursionError):
        return False
    hole_keys = {*TOP_KEYS, *(stem + unit for stem in TOP_LENGTHS for unit in UNITS)}
    # a name and a tee may be either's
    return len(top.keys() & set(PLAYER_KEYS)) > len(top.keys() & hole_keys)
