"""The player file a fit ends in."""

from __future__ import annotations

import datetime
import tomllib
from dataclasses import asdict

from ...errors import UsageError
from ...toml_text import comment, quoted, short_line, value
from ..bag import player_from_table
from ..boxes import SEXES
from ..levels import handicap_said
from ..model import MOST_CLUBS
from .fit import Fit

FIGURES = 4
"""Significant figures of a fitted number."""


def player_text(fit: Fit, name: str, source: str) -> str:
    """A player file in TOML: the fitted clubs, what is not known of them, and the rest of a standard set.

    Raises
    ------
    UsageError
        More clubs than a bag holds.
    FileError
        Clubs that a player file cannot hold together.
    """
    if len(fit.clubs) > MOST_CLUBS:
        raise UsageError(
            f"{len(fit.clubs)} clubs were measured and a bag holds {MOST_CLUBS} and a putter (Rule 4.1b: "
            "14); leave the shots of some out to write a player file"
        )
    lines = [
        comment(f"Fitted by 'holesim player fit' from {short_line(source, 100)}, {datetime.date.today()},"),
        f"# leaning on the level of a {handicap_said(fit.handicap)} handicap where shots are few.",
        "# For preparation, practice and lessons, not during a round (Rules of Golf 4.3).",
        f"name = {quoted(name)}",
        f"handicap = {fit.handicap:g}   # a plus handicap is negative",
        *([f"sex = {quoted(fit.sex)}"] if fit.sex != SEXES[0] else []),
        "# clubs that were not measured are filled in by those that were, and by the level",
        f"clubs = [{', '.join(quoted(club) for club in _bag(fit))}]",
    ]
    for club in (*fit.clubs, *fit.others):
        rows = club.strikes
        # a carry nobody measured is left out: it keeps its place between those that were
        numbers = {key: figure for key, figure in club.numbers.items() if rows or key != "carry_yd"}
        how = f"{rows} shot{'s' if rows > 1 else ''}" if rows else "not measured: as the other clubs show"
        lines += ["", f"[club.{quoted(club.club)}]   # {how}"]
        lines += [f"{key} = {value(figure, FIGURES)}" for key, figure in numbers.items()]
        lines += ["", f"[club.{quoted(club.club)}.doubt]   # one standard deviation of what is not known"]
        lines.append(f"shots = {rows}")
        lines += [f"{key} = {value(figure, FIGURES)}" for key, figure in asdict(club.doubt).items()]
    text = "\n".join(lines) + "\n"
    player_from_table(tomllib.loads(text), f"player of {source}")  # what cannot be read is not written
    return text


def _bag(fit: Fit) -> list[str]:
    """Measured clubs, and those of a standard set round them."""
    return [club.club for club in (*fit.clubs, *fit.others)]


def put_in(fit: Fit) -> tuple[str, ...]:
    """Clubs of a standard set that were not measured, put into the file's bag: nobody said he owns them."""
    return tuple(club.club for club in fit.others)
