"""The options of the command line, each said once."""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from ..errors import UsageError

if TYPE_CHECKING:
    from ..player import Player

DEFAULT_PLAYER = "barnaby"
"""The demo player taken when nobody is named."""

OLD_OUT = typer.Option("--output", hidden=True)
OLD_FORCE = typer.Option("--replace", hidden=True)
"""Spellings of earlier versions, still read, undocumented."""


def out(help_text: str, metavar: str = "FILE") -> Any:
    """The option that says where something is written: spelt alike in every command."""
    return typer.Option("--out", "-o", metavar=metavar, help=help_text)


HoleArgument = Annotated[
    str, typer.Argument(metavar="HOLE", help="A hole file, a hole of 'holesim list', or words.")
]
PlayerOption = Annotated[
    str | None,
    typer.Option(
        "--player", metavar="PLAYER",
        help=f"A player file, a player of 'holesim list', or words: \"handicap 15, driver 205\"; "
        f"{DEFAULT_PLAYER} if left out.",
    ),
]  # fmt: skip
WithoutOption = Annotated[
    list[str] | None,
    typer.Option(
        "--without", metavar="CLUB", help='Leave a club at home: driver, "driver,3w"; again for more.'
    ),
]
TeeOption = Annotated[
    str | None, typer.Option("--tee", metavar="NAME", help="Tee; the file's first if left out.")
]
PinOption = Annotated[
    str | None,
    typer.Option(
        "--pin", metavar="WORDS",
        help='Pin: its name, "tucked left", "22 on, 5 left"; the file\'s first if left out.',
    ),
]  # fmt: skip
FromOption = Annotated[
    str | None,
    typer.Option(
        "--from", metavar="PLACE",
        help='Ask from elsewhere than the tee: "164 out, left rough", "230 on, 12 right", "20 short of the '
        'green", "150 to the front", "left bunker", or "x,y" in yards.',
    ),
]  # fmt: skip
PlayedOption = Annotated[
    int | None,
    typer.Option(
        "--played", min=0, max=30, metavar="N", help="With --from: strokes played so far; gives par words."
    ),
]  # fmt: skip
SequencesOption = Annotated[
    int,
    typer.Option(
        "--sequences", min=100, max=1_000_000, metavar="N", help="Plays of the hole for each alternative."
    ),
]  # fmt: skip
SeedOption = Annotated[
    int, typer.Option("--seed", min=0, max=2**32 - 1, metavar="N", help="Same seed, same answer.")
]
JsonOption = Annotated[bool, typer.Option("--json", help="JSON on standard output, nothing else.")]
FullOption = Annotated[bool, typer.Option("--full", help="Every alternative with its standard errors.")]
QuickOption = Annotated[
    bool, typer.Option("--quick", help="Take the player as exact: no confidence, no turning points.")
]
PlotOption = Annotated[
    Path | None, typer.Option("--plot", "-o", metavar="FILE", help="Draw the answer: .png, .svg or .pdf.")
]
ForceOption = Annotated[bool, typer.Option("--force", help="Write over a file that is there.")]
ThreadsOption = Annotated[
    int | None,
    typer.Option(
        "--threads", min=1, max=256, metavar="N", help="How many work at once; all cores if left out."
    ),
]  # fmt: skip
UnitsOption = Annotated[
    str, typer.Option("--units", metavar="UNITS", help="'yards' or 'metres', on everything but JSON and CSV.")
]
ReadUnitsOption = Annotated[
    str,
    typer.Option(
        "--units", metavar="UNITS",
        help="'yards' or 'metres', of what is shown and written, and of what is given without a unit.",
    ),
]  # fmt: skip
TargetOption = Annotated[
    str | None,
    typer.Option(
        "--target", metavar="N",
        help="Recommend by the chance of N strokes or better on the hole; par, birdie, bogey too.",
    ),
]  # fmt: skip
LeaveOption = Annotated[
    str | None,
    typer.Option(
        "--leave", metavar="RANGE", help='Recommend by the chance of leaving "90-110" (yards, or "82-100 m").'
    ),
]
LandOption = Annotated[
    str | None,
    typer.Option(
        "--land", metavar="RANGE", help='Recommend by the chance that this ball finishes "150-172" away.'
    ),
]
WindOption = Annotated[
    str | None,
    typer.Option(
        "--wind", metavar="WORDS", help='"12 mph from 2 o\'clock", "helping, off the right", "NW 10".'
    ),
]
WindAtOption = Annotated[
    str | None,
    typer.Option(
        "--wind-at", metavar="WHERE", help="'forecast' (10 m, if left out) or 'felt' (head height)."
    ),
]
GustsOption = Annotated[
    str | None,
    typer.Option("--gusts", metavar="MPH", help="How far the wind gusts either side, for example 4."),
]
SwingOption = Annotated[
    str | None,
    typer.Option("--swing", metavar="DEGREES", help="How far its direction swings either side."),
]
TemperatureOption = Annotated[
    str | None,
    typer.Option("--temperature", metavar="T", help='"12 C" or "55 F".'),
]
AltitudeOption = Annotated[
    str | None,
    typer.Option("--altitude", metavar="HEIGHT", help='"1200 m" or "3,000 ft".'),
]
PressureOption = Annotated[
    str | None,
    typer.Option(
        "--pressure", metavar="P", help='"950 hPa" at the course, or "sea level 1020" with --altitude.'
    ),
]
HumidityOption = Annotated[
    str | None,
    typer.Option("--humidity", metavar="H", help='"60 %".'),
]
FirmnessOption = Annotated[
    str | None,
    typer.Option("--firmness", metavar="WORDS", help='"firm", "soft fairways, medium greens", or 0 to 1.'),
]
StimpOption = Annotated[
    str | None,
    typer.Option("--stimp", metavar="FEET", help='Speed of the greens: 10 (Stimpmeter), "9 to 10", "quick".'),
]
HeightOption = Annotated[
    str | None,
    typer.Option(
        "--height", metavar="YARDS", help='Height of the target over the ball, 6, "5 m"; below is negative.'
    ),
]
AdjustedOption = Annotated[
    str | None,
    typer.Option(
        "--adjusted",
        metavar="YARDS",
        help="The second number of a laser that adjusts for slope, in the unit of the first.",
    ),
]


def check_one_form(as_json: bool, full: bool) -> None:
    """Refuse (UsageError) two forms of one answer."""
    if as_json and full:
        raise UsageError("--json and --full: choose one (the JSON has everything)")


def check_new_file(path: Path | None, force: bool) -> None:
    """Refuse a hole or player file that would not be read again, or to write over one that is there, unless
    asked to (UsageError).
    """
    if path is not None and path.suffix.lower() != ".toml":
        raise UsageError(f"--out {str(path)!r}; allowed: a file that ends in .toml")
    if path is not None and os.path.exists(path) and not force:
        raise UsageError(
            f"{str(path)!r} is there already; allowed: another name, or --force to write over it"
        )


def player_of(named: str | None, without: list[str] | None = None) -> Player:
    """The player somebody named, or the demo player, with some clubs left at home."""
    from ..player import load_player

    player = load_player(DEFAULT_PLAYER if named is None else named)
    names = [name.strip() for text in without or () for name in text.split(",")]
    return player.without(name for name in names if name) if without else player
