"""`new player`: a player file from a few answers."""

from __future__ import annotations

import re
import sys
from pathlib import Path
from typing import Annotated, Any

import typer

from ..errors import FileError, SimulatorError, UsageError
from . import options as o
from .say import say

new = typer.Typer(
    help="Files of your own from a few answers. Example: holesim new player -o ada.toml",
    rich_markup_mode=None,
    add_completion=False,
)


@new.callback(invoke_without_command=True)
def _start(context: typer.Context) -> None:
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


_ASKED = {
    "name": "The player's name",
    "handicap": "Handicap (15, plus 2, scratch)",
    "sex": "Man or woman",
    "driver": "Driver, yards of carry (205; or 225 total; or 190 m)",
    "iron": "One iron (7-iron 140; or 7-iron 150 total)",
    "miss": "Usual miss (short right; none)",
    "shape": "Usual shape (fade, draw, slice, hook; straight; fade left-handed)",
}
"""The questions, in order."""

_ASKED_METRIC = {
    **_ASKED,
    "driver": "Driver, metres of carry (188; or 205 total; or 206 yd)",
    "iron": "One iron (7-iron 128; or 7-iron 137 total)",
}
"""The same of somebody who counts in metres."""

_BARE_LENGTH = re.compile(r"(?<![\w-])(\d+(?:\.\d+)?)(?=\s*(?:$|,|carry\b|total\b))", re.IGNORECASE)
"""A length without a unit at the end of an answer: not the 7 of a 7-iron."""

_MAY_STAY_OPEN = ("sex", "driver", "iron", "miss", "shape")
"""Left open, the level of the handicap answers them."""


@new.command("player")
def player(
    name: Annotated[str | None, typer.Option("--name", metavar="NAME", help="The player's name.")] = None,
    handicap: Annotated[
        str | None, typer.Option("--handicap", metavar="N", help='Handicap: 15, "plus 2", scratch.')
    ] = None,
    sex: Annotated[
        str | None, typer.Option("--sex", metavar="WORD", help="man or woman: whose level fills in.")
    ] = None,
    driver: Annotated[
        str | None, typer.Option("--driver", metavar="DISTANCE", help='205 (carry), "225 total", "190 m".')
    ] = None,
    iron: Annotated[
        str | None,
        typer.Option("--iron", metavar="WORDS", help='One iron: "7-iron 140", "7-iron 150 total".'),
    ] = None,
    miss: Annotated[
        str | None, typer.Option("--miss", metavar="WORDS", help='Usual miss: "short right", left, none.')
    ] = None,
    shape: Annotated[
        str | None,
        typer.Option(
            "--shape", metavar="WORD", help='fade, draw, slice, hook, straight; "fade left-handed".'
        ),
    ] = None,
    out: Annotated[Path | None, o.out("The player file to write (TOML); printed if left out.")] = None,
    old_out: Annotated[Path | None, o.OLD_OUT] = None,
    force: o.ForceOption = False,
    units: o.ReadUnitsOption = "yards",
) -> None:  # fmt: skip
    """A player file from a few answers; what is not given is asked, where somebody can be asked.

    Example: holesim new player --name Ada --handicap 15 --driver 205 -o ada.toml
    """
    out = out if out is not None else old_out
    o.check_new_file(out, force)
    from ..report.units import units_named

    metric = units_named(units).metric
    given = {"name": name, "handicap": handicap, "sex": sex, "driver": driver, "iron": iron, "miss": miss,
             "shape": shape}  # fmt: skip
    table: dict[str, Any] = {}
    asks = sys.stdin is not None and sys.stdin.isatty()
    for key, text in given.items():
        if text is not None:
            _take(table, key, text, metric)
        elif asks:
            _ask(table, key, metric)
    missing = [f"--{key}" for key in given if key not in _MAY_STAY_OPEN and key not in table]
    if missing:
        raise UsageError(f"new player: {' and '.join(missing)} not given, and nobody there to ask")
    from ..files import write_text
    from ..player.bag import player_from_table
    from ..player.write import bag_text
    from ..toml_text import in_metres

    who = player_from_table(dict(table), "new player")  # refused here rather than when it is used
    text = bag_text(table, who.name)
    if metric:
        text = in_metres(text)
    if out is None:
        typer.echo(text, nl=False)
        return
    write_text(out, text)
    say(f"wrote {out}: {who.name}, {len(who.clubs)} clubs; try: holesim check {out}")


def _ask(table: dict[str, Any], key: str, metric: bool) -> None:
    """Ask until the answer is understood; an empty one leaves it open where that may be."""
    while True:
        asked = (_ASKED_METRIC if metric else _ASKED)[key]
        text = typer.prompt(asked, default="", show_default=False, err=True).strip()
        if not text and key in _MAY_STAY_OPEN:
            return
        try:
            _take(table, key, text, metric)
            return
        except SimulatorError as error:
            found = f"found {error.found}" if isinstance(error, FileError) else str(error)
            say(" ".join(found.split()))


def _take(table: dict[str, Any], key: str, text: str, metric: bool = False) -> None:
    """Put one answer into the table of the bag file, read by the words of a player."""
    from ..player.words import player_table

    asked = (_ASKED_METRIC if metric else _ASKED)[key]
    words = " ".join(text.split())
    if not words:
        raise UsageError(f"{asked}: an empty answer")
    if key == "name":
        if len(words) > 60 or not words.isprintable():
            raise UsageError(f"name {words[:60]!r}; allowed: 1 to 60 printable characters")
        table["name"] = words
        return
    if (key, words.casefold()) in (("miss", "none"), ("shape", "straight"), ("shape", "none")):
        return
    if metric and key in ("driver", "iron"):
        words = _BARE_LENGTH.sub(r"\1 m", words)
    said = {
        "handicap": words if any(c.isalpha() for c in words) else f"handicap {words}",
        "driver": words if "driver" in words.casefold() else f"driver {words}",
        "miss": f"miss {words}",
    }.get(key, words)
    found = player_table(said)
    wanted = {"driver": "club", "iron": "club"}.get(key, key)
    shaped = {"shape", "hand", "curve_yd", "curve_m"}  # a left-hander's fade goes left
    allowed = shaped if key == "shape" else {wanted}
    other_club = key == "driver" and set(found.get("club", ())) != {"driver"}
    if wanted not in found or not set(found) <= allowed or other_club:
        raise UsageError(f"{words!r} is no answer to: {asked}")
    if wanted == "club":
        from ..player.bag import player_from_table

        player_from_table(
            {"handicap": table.get("handicap", 54), **found}, f"{words!r}"
        )  # a distance no club has is refused at once
        table.setdefault("club", {}).update(found["club"])
    else:
        table.update(found)
