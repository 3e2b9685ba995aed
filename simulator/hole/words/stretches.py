"""A fairway of one width up to a place and another from there on: "35 wide to 250, then 22"."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

from simulator.hole.words.assumed import STEP_YD
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, Units, need
from simulator.hole.words.lex import Token

SAME_YD = 0.5
"""Two ends nearer than this are the same one said twice."""


@dataclass
class _Stretch:
    """One width and where it begins and ends, as far as that was said."""

    width: Said
    begins: Said | None = None
    ends: Said | None = None


def take_stretches(feature: Feature, draft: Draft, entry: Entry) -> list[Said]:
    """Widths of a fairway at places, two for each step from one stretch to the next; none without a step.

    Raises
    ------
    UsageError
        Stretches that leave a gap or lie over each other.
    """
    stretches = _stretches(feature)
    steps = list(pairwise(stretches))
    if not steps or any(before.ends is None and after.begins is None for before, after in steps):
        return []
    feature.take("thereafter")
    u, found = draft.units, []
    for before, after in steps:
        at = _step(before, after, u)
        found += [_at(before.width, at), _at(after.width, _farther(at, u))]
        for one in (before.width, after.width, before.ends, after.begins):
            if one in feature.said:
                feature.said.remove(one)
        entry.assume(f"the step at {u.shown(u.yd(at))} over {u.shown(STEP_YD)}", "left", "right")
    return found


def _stretches(feature: Feature) -> list[_Stretch]:
    """Widths in the order of the words, each with the ends said behind it."""
    found: list[_Stretch] = []
    for one in feature.said:
        if one.what in ("wide", "narrowed", "bare") and "at" not in one.numbers:
            found.append(_Stretch(one))
        elif found and one.what == "from":
            found[-1].begins = one
        elif found and one.what == "to":
            found[-1].ends = one
    return found


def _step(before: _Stretch, after: _Stretch, units: Units) -> Token:
    """The place where one stretch ends and the next begins."""
    ends = [one.numbers["a"] for one in (before.ends, after.begins) if one is not None]
    need(abs(units.yd(ends[-1]) - units.yd(ends[0])) < SAME_YD, ends[-1],
         f"yet the stretch before it ends at {ends[0].shown}: say where one width goes over into the next"
    )  # fmt: skip
    return ends[0]


def _farther(at: Token, units: Units) -> Token:
    """The far end of a step."""
    return replace(at, value=at.value + STEP_YD / units.yd(replace(at, value=1.0)))


def _at(width: Said, at: Token) -> Said:
    return replace(width, what="wide_at", numbers={"a": width.numbers["a"], "at": at})
