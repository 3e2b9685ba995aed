"""What is wanted beside the lowest average: a score, a favourite next distance, a place to finish."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..engine import Sequences
from ..errors import UsageError
from ..hole.surfaces import TROUBLE
from ..spelt import in_figures
from .distancewords import UNITS
from .errorbars import Estimate, figure, mean
from .result import Start

TIE_SHARE = 0.02
"""Chances closer together than this are no difference to a player: two in a hundred plays."""

MOST_TARGET = 20
"""Highest score that is a target [strokes]."""

MOST_YD = 700.0
"""Longest distance a range may name [yd]."""

_NUMBER = r"\d{1,4}(?:\.\d{1,4})?"
_UNIT = "|".join(sorted(UNITS, key=len, reverse=True))
_RANGE = re.compile(
    rf"\s*(?P<low>{_NUMBER})\s*(?P<low_unit>{_UNIT})?\s*(?:-|–|to)"
    rf"\s*(?P<high>{_NUMBER})\s*(?P<high_unit>{_UNIT})?\s*"
)


@dataclass(frozen=True)
class GoalLine:
    """The recommended club on its line for the goal, against its best line for the average, same luck.

    Attributes
    ----------
    average_aim_offset_yd : float
        That other line, as `Alternative.aim_offset_yd`.
    cost : Estimate
        Strokes that the line for the goal costs on average.
    gain : Estimate
        Chance of the goal that it gains.
    """

    average_aim_offset_yd: float
    cost: Estimate
    gain: Estimate

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {
            "average_aim_offset_yd": self.average_aim_offset_yd,
            **figure("cost", self.cost),
            **figure("gain", self.gain),
        }


@dataclass(frozen=True)
class Goal:
    """What the recommendation goes by instead of the lowest average score.

    Attributes
    ----------
    kind : str
        ``"target"``: a score of `most_strokes` or better; ``"leave"``: `low_yd` to `high_yd` left to the
        pin; ``"land"``: this ball finishes `low_yd` to `high_yd` from where it is hit. Leave and land
        count only balls that finish in no trouble (bunker, trees, heavy rough, penalty area, out).
    """

    kind: str
    most_strokes: int | None = None
    low_yd: float | None = None
    high_yd: float | None = None

    def check(self, start: Start) -> None:
        """Refuse a score that means nothing from a place, or has no stroke left for it (UsageError)."""
        if self.kind != "target" or self.most_strokes is None:
            return
        if start.played is None:
            raise UsageError("a target is a score on the hole: say how many are played, --played 1")
        if not start.played < self.most_strokes <= MOST_TARGET:
            allowed = f"{start.played + 1} to {MOST_TARGET} strokes on the hole"
            raise UsageError(f"target {self.most_strokes}; allowed: {allowed}")

    def hits(self, played: Sequences, start: Start) -> np.ndarray:
        """Which sequences reach it, bool (n,)."""
        if self.kind == "target":
            assert self.most_strokes is not None
            return np.asarray(np.rint(played.score) + (start.played or 0) <= self.most_strokes)
        rest = played.rest_yd
        gone = np.hypot(rest[:, 0] - start.x_yd, rest[:, 1] - start.y_yd)
        far = played.leaves_yd if self.kind == "leave" else gone
        clear = ~np.isin(played.surface, [int(s) for s in TROUBLE])
        return np.asarray(clear & (far >= self.low_yd) & (far <= self.high_yd))


_EITHER_SIDE = re.compile(
    r"(?P<middle>\d+(?:\.\d+)?)\s*(?:yards?|yds?|yd|y)?\s*(?:\+\s*/?\s*-|±|plus or minus)\s*"
    r"(?P<off>\d+(?:\.\d+)?)\s*(?P<metres>m|metres?|meters?)?"
)
"""A range as its middle and how far it goes either side ("100 +/- 10")."""

PAR_WORDS = {"eagle": -2, "birdie": -1, "par": 0, "bogey": 1, "double bogey": 2, "double": 2}
"""Scores by their names, strokes over par."""


def read_target(text: str, par: int) -> int:
    """A score on the hole [strokes], as a number or by its name.

    Raises
    ------
    UsageError
        Anything else.
    """
    plain = re.sub("(?<=[a-z])-", " ", in_figures(text.casefold(), ones=True))
    words = " ".join(plain.removesuffix("or better").split())
    most = re.fullmatch(
        r"(?:(?:at most|no worse than|max(?:imum)?)\s+)?(.+?)(?:\s+or\s+(?:less|fewer|under))?", words
    )
    under = re.fullmatch(r"(?:under|below|less than|fewer than|break(?:ing)?)\s+(.+)", words)
    if under:
        return max(read_target(under[1], par) - 1, 1)
    words = most[1] if most else words
    if words in PAR_WORDS:
        return par + PAR_WORDS[words]
    if re.fullmatch(r"[0-9]{1,3}", words) and int(words) > 0:
        return int(words)
    names = ", ".join(name for name in PAR_WORDS if name != "double")
    raise UsageError(f"target {text[:40]!r}; allowed: a number of strokes, or {names}")


def read_goal(target: str | None, leave: str | None, land: str | None, par: int) -> Goal | None:
    """The goal that was typed, None when there is none.

    Parameters
    ----------
    target : str, optional
        Score on the hole: ``"4"``, ``"par"``, ``"double bogey"``.
    leave, land : str, optional
        ``"90-110"``, ``"90 to 110 m"``: yards unless metres are said.
    par : int
        Of the hole.

    Raises
    ------
    UsageError
        More than one of them, a range or score that is none.
    """
    typed = {"target": target, "leave": leave, "land": land}
    named = [name for name, given in typed.items() if given is not None]
    if len(named) > 1:
        raise UsageError(f"--{named[0]} and --{named[1]}: one goal at a time")
    if target is not None:
        return Goal("target", most_strokes=read_target(target, par))
    for kind, text in (("leave", leave), ("land", land)):
        if text is not None:
            low, high = read_range(kind, text)
            return Goal(kind, low_yd=low, high_yd=high)
    return None


def read_range(what: str, text: str) -> tuple[float, float]:
    """Two distances as typed [yd]: ``"90-110"``, ``"80 to 100 m"``.

    Raises
    ------
    UsageError
        Anything else, or a range that ends before it begins.
    """
    allowed = f'two distances, the shorter first, 0 to {MOST_YD:.0f} yd: "90-110" (yards), "82-100 m"'
    plain = re.sub(r"\b(?:between|from)\s+|(?<=\d)\s*ish\b", "", in_figures(text.strip().casefold()))
    plain = re.sub(r"^(\d\S*(?: \w+)?)\s+or\s+(?:less|nearer|closer)$", r"0-\1", plain)
    plain = re.sub(r"^(?:under|below|inside|within|less than|up to)\s+(?=\d)", "0-", plain)
    plain = re.sub(r"(?<=\d)\s*(?:and|/|\.\.+|until)\s*(?=\d)", "-", plain)
    if about := _EITHER_SIDE.fullmatch(plain):
        middle, off = float(about["middle"]), float(about["off"])
        plain = f"{max(middle - off, 0.0):g}-{middle + off:g} {about['metres'] or ''}"
    found = _RANGE.fullmatch(plain)
    if not found:
        raise UsageError(f"{what} {text!r} is no range; allowed: {allowed}")
    last = found["high_unit"] or found["low_unit"] or "yd"
    low, high = float(found["low"]) * UNITS[found["low_unit"] or last], float(found["high"]) * UNITS[last]
    if not 0.0 <= low < high <= MOST_YD:
        raise UsageError(f"{what} {text!r}: found {low:.0f} to {high:.0f} yd; allowed: {allowed}")
    return low, high


def chance_difference(one: np.ndarray, other: np.ndarray) -> Estimate:
    """Chance of `one` minus that of `other`, paired sequence by sequence; each bool (sequences,)."""
    return mean(one.astype(float) - other)


def tied_with(best: int, hits: Sequence[np.ndarray]) -> list[int]:
    """Alternatives whose chance cannot be told from that of one: by the paired margin, or `TIE_SHARE`.

    Parameters
    ----------
    best : int
        Index of that one.
    hits : sequence of bool (sequences,)
        Which plays of each alternative reach the goal, the same luck in each.

    Returns
    -------
    list of int
        Their indices, that of the one included.
    """
    out = []
    for k, one in enumerate(hits):
        gap = chance_difference(one, hits[best])
        if abs(gap.value) < max(TIE_SHARE, gap.margin):
            out.append(k)
    return sorted({best, *out})


def recommended(hits: Sequence[np.ndarray], scores: Sequence[float], chosen: int | None = None) -> int:
    """The alternative that reaches the goal most often; of those that tie with it, the lowest score.

    One that was chosen by other luck stays unless another does more than tie with it: the most often of many
    counts flatters itself.

    Parameters
    ----------
    hits : sequence of bool (sequences,)
        Which plays of each alternative reach the goal.
    scores : sequence of float
        Expected strokes of each.
    chosen : int, optional
        Index of the one chosen by other luck.
    """
    most = max(range(len(hits)), key=lambda k: (np.count_nonzero(hits[k]), -scores[k]))
    level = tied_with(most, hits)
    return chosen if chosen in level else min(level, key=lambda k: scores[k])
