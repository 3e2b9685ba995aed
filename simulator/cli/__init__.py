"""The command line: parse, call, print, exit status. Heavy imports stand inside the commands.

Exit status: 0 answered, 2 wrong usage or file, 3 no answer to a fair question, 130 interrupted,
1 a mistake of ours (with its traceback).
"""

from __future__ import annotations

import gc
import os
import sys
from functools import cache
from typing import Annotated

import typer

from .. import __version__
from ..errors import SimulatorError
from ..report.cautions import RULE
from .answer import compare, plan
from .card import card
from .carries import carries
from .check import check, list_
from .course import course
from .empty import refuse_nothing
from .flat import flat
from .lesson import lesson
from .maps import import_map
from .new import new
from .player import fit
from .practice import practice
from .review import review
from .say import INTERRUPTED, say, say_short, warnings_said
from .show import show
from .sketch import sketch
from .survey import survey

app = typer.Typer(
    add_completion=False, rich_markup_mode=None, pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80},
    help=f"Which club, which line, and how sure: a simulator of golf holes. {RULE}",
)  # fmt: skip

GARBAGE_AFTER = 50_000
"""Objects made between two looks for garbage. Of what imports make, a second's worth, nothing becomes any:
at Python's own 700 a tenth of that second is spent on looking."""

for command in (plan, compare, carries, course, practice, review, check, survey):
    app.command()(flat(command))
for drawn in (lesson, show, card):
    app.command()(flat(drawn))
app.command("list")(flat(list_))
app.add_typer(new, name="new")
app.command("import-map")(flat(import_map))
app.command()(flat(sketch))

player_app = typer.Typer(help="Players: from measured shots.", rich_markup_mode=None)
player_app.command("fit")(flat(fit))
app.add_typer(player_app, name="player")


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


@cache
def command_line() -> typer.core.TyperGroup:
    """All commands and their options, read off the signatures once: that takes longer than many answers."""
    return typer.main.get_command(app)  # type: ignore[return-value]


def main(arguments: list[str] | None = None) -> None:
    """Run a command and exit; the only place where errors become text on standard error."""
    gc.set_threshold(GARBAGE_AFTER)
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # threads for matrices this small only turn and wait
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")  # a name in letters the terminal has not
    sys.exit(_run(arguments))


def _run(arguments: list[str] | None) -> int:
    usage_error = next(c for c in typer.BadParameter.__mro__ if c.__name__ == "ClickException")
    try:
        refuse_nothing(sys.argv[1:] if arguments is None else arguments)
        with warnings_said():
            status = command_line().main(args=arguments, prog_name="holesim", standalone_mode=False)
        if sys.stdout is not None:  # None: closed by whoever started us, who wants no answer
            sys.stdout.flush()
        if status == INTERRUPTED:
            say("interrupted")
        return status if isinstance(status, int) else 0
    except SimulatorError as error:
        say_short(str(error))
        return error.exit_status
    except (KeyboardInterrupt, typer.Abort):
        say("interrupted")
        return INTERRUPTED
    except BrokenPipeError:  # the reader has seen enough (holesim ... | head)
        _abandon_output()
        return 0
    except OSError as error:
        if not _output_is_full():  # a file that nobody guarded: a mistake of ours
            raise
        _abandon_output()
        say(f"standard output cannot be written ({error.strerror or error}); allowed: a place with room")
        return SimulatorError.exit_status
    except usage_error as error:  # type: ignore[misc]
        said = error.format_message()
        instead = next((words for name, words in _MADE_BY.items() if f"No such command '{name}'" in said), "")
        if said.startswith("No such option: --plot"):
            said, instead = "No such option: --plot;", "a drawing goes to -o FILE"
        say_short(f"{said} {instead or '(holesim --help)'}")
        return 2


_MADE_BY = {
    "hole": 'A hole is made by sketch from words (holesim sketch "par 4, 372; fairway 28 wide" -o 7th.toml), '
    "by survey from laser readings, by import-map from a map",
}
"""Commands that people look for, and what does it."""


def _abandon_output() -> None:
    """What is still in the buffer goes nowhere, so that leaving does not try again and fail again."""
    if sys.stdout is not None:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _output_is_full() -> bool:
    """Whether standard output is what could not be written: it fails once more."""
    try:
        sys.stdout.flush()
        sys.stdout.write("\n")
        sys.stdout.flush()
    except OSError:
        return True
    return False
