"""What measured shots told, club by club."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import asdict
from typing import Any

from ..player.measured import ClubFit, Fit
from ..player.measured.write import put_in
from ..player.pattern import Pattern
from .figures import handicap_said, join_words
from .screen import wrap
from .units import YARDS, Units

SCHEMA = "holesim-fit-1"


def fit_text(fit: Fit, units: Units = YARDS, left_aside: Sequence[str] = ()) -> str:
    """A table: for every club what was learnt, and how much of it came from the shots.

    Parameters
    ----------
    left_aside : sequence of str
        Rows of the file that could not be read.
    """
    lines = [
        f"{'':<16}{'':>6}{'carry':>7}{'wide':>6}{'deep':>6}{'':>9}{'mishits':>8}   from the shots, %",
        f"{'club':<16}{'shots':>6}{units.short:>7}{units.short:>6}{units.short:>6}{'centre':>9}{'in 100':>8}"
        f"{'carry':>7}{'width':>6}{'depth':>6}",
    ]
    for club in fit.clubs:
        n = club.numbers
        wide, deep = map(units.number, _box_yd(club))
        side = n["carry_yd"] * math.tan(math.radians(n["bias_right_deg"]))
        centre = units.bare_side(side) if units.whole(abs(side)) else "on line"
        told = [100.0 * club.learnt[key] for key in ("carry_pct", "direction_log", "distance_log")]
        lines.append(
            f"{club.club:<16}{club.strikes:>6}{units.number(n['carry_yd']):>7}{wide:>6}{deep:>6}"
            f"{centre:>9}{100 * n['mishit_rate']:>8.0f}{told[0]:>7.0f}{told[1]:>6.0f}{told[2]:>6.0f}"
        )
    of = handicap_said(fit.handicap)
    lines += [
        "",
        "Wide and deep each hold 8 of 10 balls at rest, mishits included, as in a player",
        f"file. The rest comes from the level of handicap {of} ({fit.sex}); every answer",
        "allows for what is still not known.",
    ]
    if own := put_in(fit):
        lines += wrap(
            f"Not measured, put into the file's bag from a standard set: {join_words(list(own))}. Delete "
            "from its clubs what is not carried; their patterns are as the measured clubs and the level show."
        )
    if fit.by_loft:
        lines += wrap(
            f"Too few shots to tell the carries of {join_words(list(fit.by_loft))} apart: put in the order "
            "of their lofts."
        )
    for club in fit.clubs:
        if len(club.slips):
            lines += wrap(_slips_said(club, units))
    if left_aside:
        lines += wrap(f"Rows that cannot be read were left aside: {'; '.join(left_aside)}.")
    return "\n".join(lines)


def _slips_said(club: ClubFit, units: Units) -> str:
    """Rows of a club that are no strike of it: "7-iron: 13 yd straight fits no strike of this club ..."."""
    beside = [units.bare_side(club.shots.offline_yd[k]) for k in club.slips[:4]]
    rows = ", ".join(
        f"{units.length(club.shots.carry_yd[k])} {'straight' if side == '0' else side}"
        for k, side in zip(club.slips, beside, strict=False)
    )
    more = f" and {len(club.slips) - 4} more" if len(club.slips) > 4 else ""
    fit, were = ("fits", "was") if len(club.slips) == 1 else ("fit", "were")
    return f"{club.club}: {rows}{more} {fit} no strike of this club and {were} left aside."


def fit_dict(fit: Fit, left_aside: Sequence[str] = ()) -> dict[str, Any]:
    """The same as plain JSON-ready data."""
    return {
        "schema": SCHEMA, "level": fit.handicap, "sex": fit.sex,
        "clubs": [_club_dict(club) for club in fit.clubs],
        "unread_rows": list(left_aside), "put_in": list(put_in(fit)),
        "by_loft": list(fit.by_loft),
    }  # fmt: skip


def _club_dict(club: ClubFit) -> dict[str, Any]:
    wide, deep = _box_yd(club)
    return {
        "club": club.club,
        "shots": club.strikes,
        **club.numbers,
        "width_yd": wide,
        "depth_yd": deep,
        "measured_run_yd": club.shots.mean_run_yd,
        "level_numbers": {key: float(value) for key, value in club.level.items()},
        "doubt": asdict(club.doubt),
        "learnt": dict(club.learnt),
        "left_aside": [
            [float(club.shots.carry_yd[k]), float(club.shots.offline_yd[k])] for k in club.slips
        ],
    }  # fmt: skip


def _box_yd(club: ClubFit) -> tuple[float, float]:
    """Width and depth that 8 of 10 balls finish inside [yd], as `pattern` counts them for a player file."""
    pattern = Pattern(club.as_club())
    return pattern.width_yd(), pattern.depth_yd
