"""The command line: parse, call, print, exit status. Heavy imports stand inside the commands.

Exit status: 0 answered, 2 wrong usage or file, 3 no answer to a fair question, 130 interrupted,
1 a mistake of ours (with its traceback).
"""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from . import __version__
from .errors import SimulatorError, UsageError

if TYPE_CHECKING:
    from collections.abc import Callable

    from .hole import Hole
    from .player import Player
    from .strategy.result import Answer, Start

DEFAULT_PLAYER = "barnaby"
"""The demo player taken when nobody is named."""

DEFAULT_SEQUENCES = 20_000

INTERRUPTED = 130
"""Exit status after ctrl-C: 128 and the number of the signal, as shells have it."""

RULE = "For preparation, practice and lessons, not during a round (Rules of Golf 4.3)."

app = typer.Typer(
    add_completion=False, rich_markup_mode=None, pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80},
    help=f"Which club, which line, and how sure: a simulator of golf holes. {RULE}",
)  # fmt: skip

HoleArgument = Annotated[
    str, typer.Argument(metavar="HOLE", help="A hole file, or a hole of 'holesim list'.")
]
PlayerOption = Annotated[
    str | None,
    typer.Option(
        "--player", metavar="PLAYER",
        help=f"A player file, or a player of 'holesim list'; {DEFAULT_PLAYER} if left out.",
    ),
]  # fmt: skip
TeeOption = Annotated[
    str | None, typer.Option("--tee", metavar="NAME", help="Tee; the file's first if left out.")
]
PinOption = Annotated[
    str | None, typer.Option("--pin", metavar="NAME", help="Pin; the file's first if left out.")
]
FromOption = Annotated[
    str | None,
    typer.Option(
        "--from", metavar="PLACE",
        help='Ask from elsewhere than the tee: "164 out, left rough", "230 on, 12 right", or "x,y" in yards.',
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
PlotOption = Annotated[
    Path | None, typer.Option("--plot", metavar="FILE", help="Draw the answer: .png, .svg or .pdf.")
]
ThreadsOption = Annotated[
    int | None, typer.Option("--threads", min=1, max=256, metavar="N", help="All cores if left out.")
]


@app.command()
def plan(
    hole: HoleArgument,
    player: PlayerOption = None,
    tee: TeeOption = None,
    pin: PinOption = None,
    from_: FromOption = None,
    played: PlayedOption = None,
    sequences: SequencesOption = DEFAULT_SEQUENCES,
    seed: SeedOption = 1,
    as_json: JsonOption = False,
    full: FullOption = False,
    plot: PlotOption = None,
    threads: ThreadsOption = None,
) -> None:
    """The best club and line on a hole, and what every other would do.

    Example: holesim plan withy-drain --from "164 out, left rough"
    """
    run = {"sequences": sequences, "seed": seed, "threads": threads}
    _answer(hole, player, None, tee, pin, from_, played, run, as_json, full, plot)


@app.command()
def compare(
    hole: HoleArgument,
    clubs: Annotated[
        list[str],
        typer.Argument(
            metavar="CLUB...",
            help="Clubs of the bag; an aim may follow: driver@-8 is 8 yards left of the straight line to the "
            "pin, driver@-3deg 3 degrees left.",
        ),
    ],
    player: PlayerOption = None,
    tee: TeeOption = None,
    pin: PinOption = None,
    from_: FromOption = None,
    played: PlayedOption = None,
    sequences: SequencesOption = DEFAULT_SEQUENCES,
    seed: SeedOption = 1,
    as_json: JsonOption = False,
    full: FullOption = False,
    plot: PlotOption = None,
    threads: ThreadsOption = None,
) -> None:
    """Driver or 3-wood here? The clubs named, each on its best line or the one given.

    Example: holesim compare withy-drain driver 3-wood
    """
    run = {"sequences": sequences, "seed": seed, "threads": threads}
    _answer(hole, player, clubs, tee, pin, from_, played, run, as_json, full, plot)


@app.command()
def check(
    file: Annotated[
        str, typer.Argument(metavar="FILE", help="A hole or player file, or a name of 'holesim list'.")
    ],
    as_json: JsonOption = False,
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


def _answer(
    hole_name: str, player_name: str | None, clubs: list[str] | None, tee: str | None, pin: str | None,
    from_: str | None, played: int | None, run: dict[str, Any], as_json: bool, full: bool, plot: Path | None,
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
    player = load_player(DEFAULT_PLAYER if player_name is None else player_name)
    start = _place(hole, from_, played)
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
        from .strategy.places import club_and_aim

        for text in clubs:
            player.club(club_and_aim(text)[0])


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
