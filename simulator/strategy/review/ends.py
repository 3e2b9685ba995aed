"""Where the ball of a swing came to rest: the place that was noted, or what is taken where too little was."""

from __future__ import annotations

import re
from dataclasses import replace

from ...errors import WordsRefused
from ...hole.model import Hole, Point
from ...hole.surfaces import Lie
from . import notes as n
from . import taken
from .advice import say_how_far
from .phrases import ON_GREEN
from .rests import Rest, resting
from .unmeasured import (
    FULL_SHOT_YD,
    NOT_NOTED,
    by_the_green_alone,
    green_in_reach,
    ground_alone,
    usual_putt_ft,
    with_length,
)

BACK_YD = 30.0
"""A ball that ends so much farther from the hole than it lay is told: few are hit backwards [yd]."""

_ON = re.compile(r"\d\s*(?:[a-z]+\s+)?(?:on\b|(?:off|from)\s+(?:the\s+)?tee\b)", re.IGNORECASE)
"""A distance from the tee."""

_PITCHED = re.compile(r"(?:wedge|pitch|lob|flop)\b", re.IGNORECASE)
"""Swings short of full that are played from far enough to miss the hole by as much as a full one."""

_SHORT = re.compile(r"(?:well\s+|way\s+)?short", re.IGNORECASE)
_JUST = re.compile(r"\bjust\b", re.IGNORECASE)


def end_of(hole: Hole, at: Rest, swing: n.Swing, usual_yd: Point | None) -> Rest:
    """Where the ball of a swing from `at` came to rest, doubted where that is behind where it lay.

    Parameters
    ----------
    usual_yd : (carry, carry and run) or None
        How far the club usually goes from there; None: nobody knows, or the swing has no usual length.

    Raises
    ------
    UsageError
        A place that is none, or one that too little was noted of.
    """
    end = _told_end(hole, at, swing, usual_yd)
    back_yd = hole.out_yd(*end.xy_yd) - hole.out_yd(*at.xy_yd)
    if back_yd < BACK_YD:
        return end
    if at.lie is not Lie.TEE and _ON.search(swing.where):
        why = f'"on" counts from the tee, and that is {back_yd:.0f} yd farther from the hole than it lay'
        raise n.refused(swing.said, f'{why}: say what was left, "to 120 out, fairway"')
    told = f"{back_yd:.0f} yd farther from the hole than it lay"
    return replace(end, noted=f"{end.noted}; {told}" if end.noted else told)


def _told_end(hole: Hole, at: Rest, swing: n.Swing, usual_yd: Point | None) -> Rest:
    """The place as it was noted, whether that is likely or not."""
    if (end := taken.by_words(hole, at, swing)) is not None:
        return end
    beside = by_the_green_alone(swing.where)
    if beside is not None and usual_yd is not None and green_in_reach(hole, at.xy_yd, usual_yd):
        return _assumed(hole, at, swing, *beside)
    if usual_yd is not None and _came_up_short(at, swing):
        return taken.short(hole, at, swing, usual_yd[False])
    if ON_GREEN.fullmatch(swing.where) and (usual_yd is not None or _PITCHED.match(swing.club)):
        if hole.out_yd(*at.xy_yd) < FULL_SHOT_YD:
            raise n.refused(swing.said, 'how far from the hole? For example "to 12 ft"')
        end = resting(f"{usual_putt_ft(hole):.0f} ft", hole, at)
        return replace(end, noted=f"{NOT_NOTED}the green's average")
    if ground_alone(swing.where):
        found = None if usual_yd is None else with_length(swing.where, hole, at.xy_yd, usual_yd)
        if found is None:
            example = '"to 60 out, fairway", "to 8 right of the green"'
            raise n.refused(swing.said, f"how far along? For example {example}")
        return _assumed(hole, at, swing, *found)
    if beside is not None:
        raise n.refused(swing.said, say_how_far(swing.where))
    return resting(swing.where, hole, at)


def _came_up_short(at: Rest, swing: n.Swing) -> bool:
    """Whether all that is noted of a second or later shot is that it was short of the green."""
    short = _SHORT.fullmatch(swing.where) is not None and _JUST.search(swing.said) is None
    return short and at.lie is not Lie.TEE


def _assumed(hole: Hole, at: Rest, swing: n.Swing, where: str, noted: str) -> Rest:
    """The place that is taken for one of which too little was noted, and what was taken."""
    try:
        end = resting(where, hole, at)
    except WordsRefused as error:  # told in the words that were noted
        if (near := taken.near(hole, at, where)) is not None:
            return replace(near, noted=f"{NOT_NOTED}nearest to {noted.removeprefix(NOT_NOTED)}")
        raise error.told_of(swing.said, "notes") from None
    return replace(end, noted=noted) if noted else end
