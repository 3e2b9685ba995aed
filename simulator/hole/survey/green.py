"""Front, flag and back of a green in the order they must have, whichever stands they were read from."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise
from typing import Protocol

from ...errors import FileError
from .readings import Survey

FLAG, ENDS = "flag", ("front", "back")
"""Names of the points of a green that are read one behind the other."""

SLACK_YD = 2.0
"""A flag may lie so far outside front and back [yd]: a laser's error at both, and the slope of an edge."""


class _Placed(Protocol):
    @property
    def station_yd(self) -> float: ...


def check_green(survey: Survey, points: Mapping[str, _Placed]) -> None:
    """Refuse a green whose back lies before its front, or whose flag lies off it.

    Raises
    ------
    FileError
        Naming the readings that put them there.
    """
    at = {name.casefold(): name for name in points}
    order = [name for name in (ENDS[0], FLAG, ENDS[1]) if name in at]
    pairs = list(pairwise(order))
    if ENDS[0] in order and ENDS[1] in order:
        pairs.insert(0, ENDS)
    for near, far in pairs:
        nearer, farther = points[at[near]].station_yd, points[at[far]].station_yd
        slack = 0.0 if (near, far) == ENDS else SLACK_YD
        if farther > nearer - slack:
            continue
        said = _readings(survey, at[far]) + _readings(survey, at[near])
        raise FileError(
            survey.source, f"points {near} and {far}",
            f"the {far} {farther:.0f} yd along the line of play, the {near} {nearer:.0f} ({', '.join(said)})",
            f"a {far} beyond the {near}: read them again",
        )  # fmt: skip


def _readings(survey: Survey, point: str) -> list[str]:
    return [f"{r.words} {r.level_yd:.0f}" for r in survey.ranges if r.point == point]
