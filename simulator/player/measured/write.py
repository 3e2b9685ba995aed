"""The player file a fit ends in."""

from __future__ import annotations

import datetime
from dataclasses import asdict

from ...physics.launch import LOFT_DEG
from ..check import one_line
from ..levels import STANDARD_SET
from .fit import Fit

MOST_CLUBS = 13
"""Clubs besides the putter: Rules of Golf 4.1b allows 14 in all."""


def player_text(fit: Fit, name: str, source: str, today: datetime.date | None = None) -> str:
    """A player file in TOML: the fitted clubs, what is not known of them, and the rest of a standard set."""
    lines = [
        f"# Fitted by 'holesim player fit' from {one_line(source, 100)}, {today or datetime.date.today()},",
        f"# leaning on the level of a {fit.handicap:g} handicap where shots are few.",
        "# For preparation, practice and lessons, not during a round (Rules of Golf 4.3).",
        f"name = {_quoted(name)}",
        f"handicap = {fit.handicap:g}   # a plus handicap is negative",
        "# clubs that were not measured come from the level",
        f"clubs = [{', '.join(_quoted(club) for club in _bag(fit))}]",
    ]
    measured = {club.club for club in fit.clubs}
    for name_of in _bag(fit):
        if name_of not in measured:
            lines += [
                "",
                f"[club.{_quoted(name_of)}]   # not measured: its carry keeps its place between those",
            ]
            lines.append("bias_long_pct = 0   # that were, which are carries as they came")
    for club in fit.clubs:
        rows = len(club.shots.carry_yd)
        lines += ["", f"[club.{_quoted(club.club)}]   # {rows} shot{'s' if rows > 1 else ''}"]
        lines += [f"{key} = {_figure(value)}" for key, value in club.numbers.items()]
        lines += ["", f"[club.{_quoted(club.club)}.doubt]   # one standard deviation of what is not known"]
        lines.append(f"shots = {rows}")
        lines += [f"{key} = {_figure(value)}" for key, value in asdict(club.doubt).items()]
    return "\n".join(lines) + "\n"


def _bag(fit: Fit) -> list[str]:
    """Measured clubs, and those of a standard set whose place (loft) none of them takes."""
    lofts = [LOFT_DEG[club.kind] for club in fit.clubs]
    extra = [kind for kind in STANDARD_SET if all(abs(LOFT_DEG[kind] - loft) >= 1.6 for loft in lofts)]
    return [*(club.club for club in fit.clubs), *extra][:MOST_CLUBS]


def _quoted(text: str) -> str:
    clean = "".join(c if c.isprintable() else " " for c in text)
    return '"' + clean.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _figure(value: float) -> str:
    return f"{value + 0.0:.4g}"
