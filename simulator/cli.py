"""The command line: parse, call, print, exit status. Heavy imports stand inside the commands.

Exit status: 0 answered, 2 wrong usage or file, 3 no answer to a fair question, 130 interrupted,
1 a mistake of ours (with its traceback).
"""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, NamedTuple

import typer

from . import __version__
from . import cli_options as o
from .errors import SimulatorError, UsageError

if TYPE_CHECKING:
    from collections.abc import Callable

    from .conditions import Conditions
    from .hole import Hole
    from .player import Player
    from .strategy.result import Answer, Start

DEFAULT_SEQUENCES = 20_000

INTERRUPTED = 130
"""Exit status after ctrl-C: 128 and the number of the signal, as shells have it."""

RULE = "For preparation, practice and lessons, not during a round (Rules of Golf 4.3)."

app = typer.Typer(
    add_completion=False, rich_markup_mode=None, pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80},
    help=f"Which club, which line, and how sure: a simulator of golf holes. {RULE}",
)  # fmt: skip

@app.command()
def plan(
    hole: o.HoleArgument,
    player: o.PlayerOption = None,
    tee: o.TeeOption = None,
    pin: o.PinOption = None,
    from_: o.FromOption = None,
    played: o.PlayedOption = None,
    wind: o.WindOption = None,
    wind_at: o.WindAtOption = None,
    gusts: o.GustsOption = None,
    swing: o.SwingOption = None,
    temperature: o.TemperatureOption = None,
    altitude: o.AltitudeOption = None,
    pressure: o.PressureOption = None,
    humidity: o.HumidityOption = None,
    firmness: o.FirmnessOption = None,
    stimp: o.StimpOption = None,
    sequences: o.SequencesOption = DEFAULT_SEQUENCES,
    seed: o.SeedOption = 1,
    as_json: o.JsonOption = False,
    full: o.FullOption = False,
    plot: o.PlotOption = None,
    threads: o.ThreadsOption = None,
) -> None:
    """The best club and line on a hole, and what every other would do.

    Example: holesim plan withy-drain --from "164 out, left rough"
    """
    day = _Day(wind, wind_at, gusts, swing, temperature, altitude, pressure, humidity, firmness, stimp)
    run = {"sequences": sequences, "seed": seed, "threads": threads}
    _answer(hole, player, None, tee, pin, from_, played, day, run, as_json, full, plot)


@app.command()
def compare(
    hole: o.HoleArgument,
    clubs: Annotated[
        list[str],
        typer.Argument(
            metavar="CLUB...",
            help="Clubs of the bag; an aim may follow: driver@-8 is 8 yards left of the straight line to the "
            "pin, driver@-3deg 3 degrees left.",
        ),
    ],
    player: o.PlayerOption = None,
    tee: o.TeeOption = None,
    pin: o.PinOption = None,
    from_: o.FromOption = None,
    played: o.PlayedOption = None,
    wind: o.WindOption = None,
    wind_at: o.WindAtOption = None,
    gusts: o.GustsOption = None,
    swing: o.SwingOption = None,
    temperature: o.TemperatureOption = None,
    altitude: o.AltitudeOption = None,
    pressure: o.PressureOption = None,
    humidity: o.HumidityOption = None,
    firmness: o.FirmnessOption = None,
    stimp: o.StimpOption = None,
    sequences: o.SequencesOption = DEFAULT_SEQUENCES,
    seed: o.SeedOption = 1,
    as_json: o.JsonOption = False,
    full: o.FullOption = False,
    plot: o.PlotOption = None,
    threads: o.ThreadsOption = None,
) -> None:
    """Driver or 3-wood here? The clubs named, each on its best line or the one given.

    Example: holesim compare withy-drain driver 3-wood
    """
    day = _Day(wind, wind_at, gusts, swing, temperature, altitude, pressure, humidity, firmness, stimp)
    run = {"sequences": sequences, "seed": seed, "threads": threads}
    _answer(hole, player, clubs, tee, pin, from_, played, day, run, as_json, full, plot)


@app.command()
def carries(
    distance: Annotated[
        str | None,
        typer.Argument(
            metavar="[DISTANCE]",
            help='Yards to the target; a laser\'s pair as "164, adjusted 169". Left out: the table of clubs.',
        ),
    ] = None,
    player: o.PlayerOption = None,
    height: o.HeightOption = None,
    adjusted: o.AdjustedOption = None,
    wind: o.WindOption = None,
    wind_at: o.WindAtOption = None,
    temperature: o.TemperatureOption = None,
    altitude: o.AltitudeOption = None,
    pressure: o.PressureOption = None,
    humidity: o.HumidityOption = None,
    firmness: o.FirmnessOption = None,
    as_json: o.JsonOption = False,
) -> None:
    """The player's numbers today: carry and run of every club, or the number to hit for a distance.

    Wind words refer to the shot. Example: holesim carries "164, adjusted 169" --wind "12 mph against"
    """
    from .conditions import conditions_from
    from .player import load_player
    from .report import carrytext
    from .report.jsonout import dumps
    from .strategy import carries as numbers

    who = load_player(o.DEFAULT_PLAYER if player is None else player)
    day = conditions_from(
        wind, wind_at, None, None, temperature, altitude, pressure, humidity, firmness, None,
        along_deg=0.0, y_bearing_deg=None,
    )  # fmt: skip
    if distance is None:
        if adjusted is not None:
            raise UsageError("--adjusted goes with a distance: holesim carries 164 --adjusted 169")
        table = numbers.carries(who, day, height_yd=height or 0.0)
        text = dumps(carrytext.table_dict(who, day, table)) if as_json else carrytext.table(who, day, table)
        typer.echo(text)
        return
    level, pair = numbers.read_distance(distance)
    found = numbers.effective_distance(
        who, day, level, height_yd=height, adjusted_yd=pair if adjusted is None else adjusted
    )
    text = dumps(carrytext.sum_dict(who, day, found)) if as_json else carrytext.sum_text(who, day, found)
    typer.echo(text)


@app.command()
def check(
    file: Annotated[
        str, typer.Argument(metavar="FILE", help="A hole or player file, or a name of 'holesim list'.")
    ],
    as_json: o.JsonOption = False,
) -> None:
    """What a hole or player file holds, and what was assumed.

    Example: holesim check my-hole.toml
    """
    from .hole import load_hole
    from .player import load_player
    from .report import checks
    from .report.jsonout import dumps

    if _is_player(file):
        player = load_player(file)
        typer.echo(dumps(checks.player_dict(player)) if as_json else checks.player_text(player))
    else:
        hole = load_hole(file)
        typer.echo(dumps(checks.hole_dict(hole)) if as_json else checks.hole_text(hole))


@app.command("list")
def list_() -> None:
    """The demo holes and players that come with the program.

    Example: holesim list
    """
    from .hole import bundled_holes, load_hole
    from .player import bundled_players, load_player

    typer.echo("holes:")
    for name in bundled_holes():
        hole = load_hole(name)
        typer.echo(f"  {name:<16} {hole.name}, par {hole.par}, {hole.length_yd:.0f} yd")
    typer.echo("players:")
    for name in bundled_players():
        player = load_player(name)
        of = f", handicap {player.handicap:g}" if player.handicap is not None else ""
        typer.echo(f"  {name:<16} {player.name}{of}, {len(player.clubs)} clubs")


def _version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"holesim {__version__}")
        raise typer.Exit()


@app.callback(invoke_without_command=True)
def _start(
    context: typer.Context,
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Say the version and stop.")
    ] = False,
) -> None:
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


class _Day(NamedTuple):
    """The day as typed, in the order of `conditions_from`."""

    wind: str | None
    wind_at: str | None
    gusts: str | None
    swing: str | None
    temperature: str | None
    altitude: str | None
    pressure: str | None
    humidity: str | None
    firmness: str | None
    stimp: str | None

    def read(self, hole: Hole, start: Start | None) -> Conditions:
        """Conditions, directions told from the shot (with --from) or from the first leg of the line."""
        from math import atan2, degrees

        from .conditions import conditions_from

        along = 0.0
        if start is not None:
            along = degrees(atan2(hole.pin.x_yd - start.x_yd, hole.pin.y_yd - start.y_yd))
        return conditions_from(*self, along_deg=along, y_bearing_deg=hole.bearing_deg)


def _answer(
    hole_name: str, player_name: str | None, clubs: list[str] | None, tee: str | None, pin: str | None,
    from_: str | None, played: int | None, day: _Day, run: dict[str, Any], as_json: bool, full: bool,
    plot: Path | None,
) -> None:  # fmt: skip
    """Everything cheap first, so that a slip is told before the work; then the answer."""
    if as_json and full:
        raise UsageError("--json and --full: choose one (the JSON has everything)")
    if played is not None and from_ is None:
        raise UsageError("--played goes with --from: on the tee nothing is played yet")
    from .hole import load_hole
    from .player import load_player

    if plot is not None:
        from .report.plot import check_plot_path

        check_plot_path(plot)
    hole = load_hole(hole_name)
    hole = hole.with_tee(tee) if tee is not None else hole
    hole = hole.with_pin(pin) if pin is not None else hole
    player = load_player(o.DEFAULT_PLAYER if player_name is None else player_name)
    start = _place(hole, from_, played)
    run = {**run, "conditions": day.read(hole, start)}
    _check_clubs(player, clubs)
    unnamed = f"No --player given, so the demo player {player.name} plays."
    notes = () if player_name is not None else (unnamed,)
    from .strategy import ask

    if clubs is None:
        answer = ask.plan(hole, player, start=start, progress=_progress(), **run)
    else:
        answer = ask.compare(hole, player, clubs, start=start, progress=_progress(), **run)
    _show(answer, notes, as_json, full)
    if plot is not None:
        from .report.plot import save_plan

        save_plan(answer, plot)


def _place(hole: Hole, from_: str | None, played: int | None) -> Start | None:
    if from_ is None:
        return None
    from .strategy.places import place

    return place(from_, hole, played)


def _check_clubs(player: Player, clubs: list[str] | None) -> None:
    """Refuse a club that is not in the bag, or an aim that is none, before the work."""
    if clubs:
        from .strategy.places import club_and_aim, club_and_flight

        for text in clubs:
            player.club(club_and_flight(club_and_aim(text)[0])[0])


def _show(answer: Answer, notes: tuple[str, ...], as_json: bool, full: bool) -> None:
    for warning in answer.warnings:
        _say(f"warning: {warning}")
    if as_json:
        from .report.jsonout import answer_json

        typer.echo(answer_json(answer))
    elif full:
        from .report.full import full_tables

        typer.echo(full_tables(answer, notes))
    else:
        from .report.text import answer_screen

        typer.echo(answer_screen(answer, notes))


def _progress() -> Callable[[str], None]:
    """Tells what is being waited for: compiling always (it is long), the rest only to somebody watching."""
    watched = sys.stderr.isatty()

    def tell(message: str) -> None:
        if watched or "compil" in message:
            _say(message)

    return tell


def _say(message: str) -> None:
    typer.echo(f"holesim: {message}", err=True)


def _is_player(source: str) -> bool:
    """Whether a file looks like a player's bag; anything unreadable is left to the reader of holes."""
    from .hole import bundled_holes
    from .player import bundled_players

    path = Path(source)
    try:
        if not path.is_file():
            return source in bundled_players() and source not in bundled_holes()
        import tomllib

        top = tomllib.loads(path.read_text("utf-8-sig"))
    except (OSError, ValueError, RecursionError):
        return False
    bag = {"handicap", "clubs", "club", "part", "putting", "short_game"}
    ground = {"par", "length_yd", "length_m", "green", "fairway", "line_yd", "line_m", "tee", "pin"}
    return len(bag & top.keys()) > len(ground & top.keys())


def main(arguments: list[str] | None = None) -> None:
    """Run a command and exit; the only place where errors become text on standard error."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")  # a name in letters the terminal has not
    sys.exit(_run(arguments))


def _run(arguments: list[str] | None) -> int:
    usage_error = next(c for c in typer.BadParameter.__mro__ if c.__name__ == "ClickException")
    try:
        command = typer.main.get_command(app)
        status = command.main(args=arguments, prog_name="holesim", standalone_mode=False)
        sys.stdout.flush()
        if status == INTERRUPTED:
            _say("interrupted")
        return status if isinstance(status, int) else 0
    except SimulatorError as error:
        _say(" ".join(str(error).split()))
        return error.exit_status
    except (KeyboardInterrupt, typer.Abort):
        _say("interrupted")
        return INTERRUPTED
    except BrokenPipeError:  # the reader has seen enough (holesim ... | head)
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except usage_error as error:  # type: ignore[misc]
        words = error.format_message()
        _say(f"{' '.join(words.split())} (holesim --help)")
        return 2
