"""A fairway that falls to one side: spot heights left and right of the line, so the rough beside it too."""

from __future__ import annotations

import math

import numpy as np

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft
from simulator.hole.words.feature import Feature, Said, need, plain
from simulator.hole.words.tees import LEVEL_STEP_YD

_SIDES = ("left", "right")
MOST_PCT = 15.0
"""Steepest fall across a fairway that words may say [%]: a mown one is seldom beyond 10 (assumed)."""


def take_camber(features: list[Feature]) -> tuple[Said, Said | None, str] | None:
    """The words, the size and the side of a fairway's fall; None where nobody said that it falls.

    Raises
    ------
    UsageError
        A fall along the line, or two of them.
    """
    found = None
    for feature in features:
        verb = next((one for one in feature.said if one.what == "falls"), None)
        if feature.kind != "fairway" or verb is None:
            continue
        need(found is None, verb.token, "a second fall: say one for all of the fairway")
        feature.said.remove(verb)
        ways = [one for one in feature.said if one.what == "way"]
        sides = [one for one in feature.said if one.what == "side" and one.token.start > verb.token.start]
        told = (ways + sides)[:1]
        side = told[0].words.get("q") or told[0].words.get("s", "") if told else ""
        if told and "q" not in told[0].words and verb.shown.casefold().endswith("from"):
            side = {"left": "right", "right": "left"}.get(side, side)
        which = 'to which side? Say "fairway falls left to right 4%"; along the line it is "downhill 12"'
        need(side in _SIDES, verb.token, which)
        for one in told:
            feature.said.remove(one)
        found = verb, feature.take("percent"), side
    return found


def lay_camber(camber: tuple[Said, Said | None, str] | None, draft: Draft) -> None:
    """Heights beside the line where the fairway runs, over and under those of the line itself."""
    if camber is None:
        return
    _, size, side = camber
    percent = a.CAMBER_PCT
    if size is not None:
        percent = plain(size.numbers["a"], 0.1, MOST_PCT, "fall of a fairway in percent")
    told = f"The fairway and the ground beside it fall {side}"
    usual = f" {percent:g} %" if size is None else ""
    draft.assumed.append(f"{told}{usual}, as far as {draft.units.shown(a.CAMBER_REACH)} from the line.")
    line = draft.heights or [(0.0, 0.0, 0.0), (0.5 * (draft.green_front_yd + draft.green_back_yd), 0.0, 0.0)]
    along, heights = [row[0] for row in line], [row[2] for row in line]
    low, high = draft.fairway_from_yd, min(draft.fairway_to_yd, draft.green_front_yd - 5.0) - 10.0
    count = max(2, math.ceil((high - low) / LEVEL_STEP_YD) + 1)
    step = percent / 100.0 * a.CAMBER_REACH * (-1.0 if side == "right" else 1.0)
    spots = []
    for station in np.linspace(low, high, count).round(1).tolist():
        middle = float(np.interp(station, along, heights))
        spots += [(station, -a.CAMBER_REACH, middle - step), (station, a.CAMBER_REACH, middle + step)]
        if min(abs(station - one) for one in along) > 1.0:
            spots.append((station, 0.0, middle))
    level = [(at, away, z) for at, _, z in (line[0], line[-1]) for away in (-a.CAMBER_REACH, a.CAMBER_REACH)]
    draft.heights = [*line, *((s, o, round(z, 2)) for s, o, z in [*spots, *level])]
