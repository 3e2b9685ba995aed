"""A stream that crosses the line aslant: by where it meets each edge of the fairway, and straight on."""

from __future__ import annotations

import math
from typing import Any

from simulator.hole.words import assumed as a
from simulator.hole.words.area_ends import STREAM_WIDTH
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, need

SAY = 'where it meets each edge of the fairway, "creek diagonal from 190 left to 230 right"'

LEAST_SLANT_YD = 1.0
"""Less than this from edge to edge is straight across [yd]."""

POINT_YD = 0.1
"""How wide a band is at its pointed ends [yd]: none may have no width."""


def diagonal(feature: Feature, draft: Draft, entry: Entry) -> None:
    """The band of a stream that crosses aslant.

    Raises
    ------
    UsageError
        Without both stations, of one side twice, or of what is no stream.
    """
    left, right = _met(feature, draft)
    u, fairway = draft.units, (draft.fairway_left_yd, draft.fairway_right_yd)
    wide = feature.take("wide") or feature.take("long")
    width = STREAM_WIDTH.get(feature.noun, a.ALONG["stream"])
    if wide is not None:
        width = u.yd(next(iter(wide.numbers.values())))
    else:
        entry.assume(f"{u.shown(width)} wide")
    slope = (right - left) / sum(fairway)
    # it ends beside the tee or the back of the green, however flat it meets the line
    first, last = (left, right) if slope > 0.0 else (right, left)
    before, behind = first / abs(slope), (draft.green_back_yd - last) / abs(slope)
    beyond = (before, behind) if slope > 0.0 else (behind, before)
    low, high = (min(a.CROSSING_REACH, edge + more) for edge, more in zip(fairway, beyond, strict=True))
    entry.assume(
        "straight on from the edges of the fairway, "
        f"to {u.shown(low)} left and {u.shown(high)} right of the line"
    )
    half = 0.5 * width * math.hypot(1.0, slope)  # along the line; across the stream it is the width

    def across(station: float) -> tuple[float, float]:
        edges = [(station - left + end) / slope - fairway[0] for end in (-half, half)]
        held = sorted(min(max(edge, -low), high) for edge in edges)
        return held[0], max(held[1], held[0] + POINT_YD)

    middles = left + slope * (fairway[0] - low), left + slope * (fairway[0] + high)
    stations = sorted(middle + end for middle in middles for end in (-half, half))
    bands = [across(station) for station in stations]
    colour: dict[str, Any] = {key: entry.keys[key] for key in ("colour", "playable") if key in entry.keys}
    name = draft.name_for(str(entry.keys.get("name", "")), feature.word, f"diagonal {feature.word}")
    entry.keys = {
        "name": name, **colour, "stations": stations,
        "left": [band[0] for band in bands], "right": [band[1] for band in bands],
    }  # fmt: skip
    draft.entries.append(entry)


def _met(feature: Feature, draft: Draft) -> tuple[float, float]:
    """Stations at which it meets the left and the right edge of the fairway."""
    told = feature.take_all("diagonal")
    said = next((one for one in told if "a" in one.numbers), told[0])
    token, u = said.token, draft.units
    need(feature.kind == "stream", token,
         "only a stream crosses diagonally in words: give its corners in the file (points_yd)")  # fmt: skip
    need("a" in said.numbers, token, f"from where to where? Say {SAY}")
    need(said.words["s"] != said.words["t"], token, f"twice the same side: say {SAY}")
    stations = {said.words["s"]: u.yd(said.numbers["a"]), said.words["t"]: u.yd(said.numbers["b"])}
    left, right = stations["left"], stations["right"]
    need(abs(right - left) >= LEAST_SLANT_YD, token, 'is straight across: say "across at 230"')
    need(min(left, right) > 0.0 and max(left, right) < draft.green_back_yd, token, "lies beyond the hole")
    return left, right
