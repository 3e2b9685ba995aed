"""`course`: every hole for every player at once."""

from __future__ import annotations

from contextlib import nullcontext
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, NamedTuple

import typer

from ..errors import UsageError
from . import options as o
from .say import say, say_written

if TYPE_CHECKING:
    from ..conditions import Scenario
    from ..player import Player
    from ..report.units import Units
    from ..strategy.courseasked import CourseAnswer, Pins

DEFAULT_SEQUENCES = 5_000
"""As `strategy.course` has it; said here because importing that is slow."""

HOLES_MISSING = 2
"""Exit status when a hole has no answer."""


class Who(NamedTuple):
    """Players, and how they are named."""

    player: Annotated[
        list[str] | None,
        typer.Option(
            "--player", metavar="PLAYER",
            help="A player file, a player of 'holesim list', or words; again for more; "
            f"{o.DEFAULT_PLAYER} if left out.",
        ),
    ] = None  # fmt: skip
    players: Annotated[
        Path | None, typer.Option("--players", metavar="DIR", help="Every player file of a folder.")
    ] = None
    initials: Annotated[
        bool, typer.Option("--initials", help="Initials for names, in everything written.")
    ] = False


class What(NamedTuple):
    """Tee, pins and days."""

    tee: o.TeeOption = None
    pin: Annotated[
        list[str] | None,
        typer.Option(
            "--pin", metavar="WORDS",
            help='Pin: its name, "back left" or "22 on, 5 left"; again for more; each file\'s first if left '
            "out.",
        ),
    ] = None  # fmt: skip
    pins: Annotated[
        Path | None,
        typer.Option("--pins", metavar="FILE", help="A hole-location sheet: CSV of hole, on, left or right."),
    ] = None
    scenarios: Annotated[
        Path | None, typer.Option("--scenarios", metavar="FILE", help="Days to plan for: winds, firmness.")
    ] = None
    target: Annotated[
        int | None,
        typer.Option(
            "--target", min=1, max=400, metavar="SCORE", help="Also the chance of a round below this."
        ),
    ] = None


class Work(NamedTuple):
    """How it is worked and where it goes."""

    sequences: o.SequencesOption = DEFAULT_SEQUENCES
    seed: o.SeedOption = 1
    quick: Annotated[
        bool, typer.Option("--quick", help="Take the players as exact: faster, but not how sure a choice is.")
    ] = False
    threads: o.ThreadsOption = None
    cluster: Annotated[
        str | None, typer.Option("--cluster", metavar="ADDRESS", help="A dask scheduler to work on.")
    ] = None
    out: Annotated[Path | None, o.out("Folder for the results; what is there is not worked anew.", "DIR")] = (
        None
    )
    pages: Annotated[
        Path | None,
        typer.Option(
            "--pages", metavar="FILE",
            help="Team page and summaries drawn on A4: .pdf for one file; .png or .svg for a file a page.",
        ),
    ] = None  # fmt: skip
    as_json: o.JsonOption = False
    units: o.UnitsOption = "yards"


def course(
    folder: Annotated[
        str, typer.Argument(metavar="DIR", help="A folder of hole files, or a course of 'holesim list'.")
    ],
    who: Who,
    what: What,
    work: Work,
) -> None:
    """Every hole of a course for every player: clubs and lines, the round, the team page.

    Example: holesim course ostrel-heath --player isolde --player barnaby -o out
    """
    from ..hole import load_course
    from ..report.units import units_named
    from ..strategy.cluster import cluster_executor
    from ..strategy.course import play_course

    unit = units_named(work.units)
    ground = load_course(folder)
    players = _players(who)
    pins = _pins(what)
    days = _days(what)
    _check_pages(work)
    with nullcontext() if work.cluster is None else cluster_executor(work.cluster) as executor:
        answer = play_course(
            ground, players, scenarios=days, pins=pins, tee=what.tee, sequences=work.sequences,
            seed=work.seed, quick=work.quick, out=work.out, executor=executor,
            threads=work.threads, progress=say,
        )  # fmt: skip
    _show(answer, what.target, work, unit)
    if answer.mistakes:
        raise answer.mistakes[0]
    if answer.failures:
        raise typer.Exit(HOLES_MISSING)


def _players(who: Who) -> list[Player]:
    from ..player import load_player
    from ..player.bag import UNNAMED
    from ..strategy.initials import numbered, with_initials

    named = list(who.player or [])
    if who.players is not None:
        files = sorted(who.players.glob("*.toml")) if who.players.is_dir() else []
        if not files:
            raise UsageError(f"{who.players}: no player file in it; allowed: a folder of them")
        named += [str(file) for file in files]
    players = numbered([load_player(name) for name in named or [o.DEFAULT_PLAYER]])
    if any(player.name == f"{UNNAMED} 1" for player in players):
        say(f'players in words without a name are "{UNNAMED} 1" and so on; "called Ada" gives one')
    return with_initials(players) if who.initials else players


def _pins(what: What) -> list[Pins]:
    from ..hole import read_pin_sheet
    from ..strategy.courseasked import FIRST_PINS, Pins

    words = what.pin or []
    found = []
    if what.pins is not None:
        found.append(Pins(what.pins.name, None, read_pin_sheet(what.pins)))
    found += [Pins(text, text) for text in words]
    return found or [FIRST_PINS]


def _days(what: What) -> tuple[Scenario, ...]:
    from ..conditions import STILL, read_scenarios

    return (STILL,) if what.scenarios is None else read_scenarios(what.scenarios)


def _check_pages(work: Work) -> None:
    """Refuse pages that could not be written, before the work (UsageError); the folder of -o may be new."""
    if work.pages is None:
        return
    from ..report.page import SUFFIXES, check_plot_path
    from ..strategy.store import Store

    if work.pages.parent == work.out and work.pages.suffix.lower().lstrip(".") in SUFFIXES:
        Store(work.out)
    check_plot_path(work.pages)


def _show(answer: CourseAnswer, target: int | None, work: Work, unit: Units) -> None:
    from ..files import write_text
    from ..report.coursefiles import course_csv, course_dict
    from ..report.coursetable import course_summary, failure_lines
    from ..report.jsonout import dumps
    from ..report.team import team_page

    for line in failure_lines(answer):
        say(line)
    for one in answer.results:
        for warning in one["answer"]["warnings"]:
            say(f"warning: hole {one['number']}, {one['answer']['player']}: {unit.sentence(warning)}")
    everything = dumps(course_dict(answer, target))
    summary, team = course_summary(answer, target, unit), team_page(answer, unit)
    if work.out is not None:
        for name, text in (
            ("course.json", everything), ("course.csv", course_csv(answer)), ("summary.txt", summary),
            ("team.txt", team),
        ):  # fmt: skip
            write_text(work.out / name, text if text.endswith("\n") else text + "\n")
    typer.echo(everything if work.as_json else f"{summary}\n\n{team}" if len(answer.players) > 1 else summary)
    if work.out is not None:
        say(f"all figures: {work.out / 'course.csv'} and course.json; pages: summary.txt, team.txt")
    if work.pages is not None:
        _draw(answer, target, work.pages, unit)


def _draw(answer: CourseAnswer, target: int | None, path: Path, unit: Units) -> None:
    from ..report.coursepages import save_course

    files = save_course(answer, path, target, unit)
    say_written(files, path)
    if not files:
        say(f"{path}: not written, no hole has an answer")
