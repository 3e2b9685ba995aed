"""A false front: the first yards of a green fall so steeply back that no ball stays on them."""

from __future__ import annotations

from dataclasses import replace

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature
from simulator.hole.words.lex import Token
from simulator.hole.words.tokenruns import key_of

WORD = "falsefront"
"""One word of the grammar for the two."""


def false_fronts(tokens: list[Token]) -> list[Token]:
    """ "False front", which is of the green wherever it is said."""
    out: list[Token] = []
    for token in tokens:
        if out and key_of(out[-1]) == "false" and key_of(token) == "front":
            out[-1] = replace(out[-1], key="green")
            token = replace(token, key=WORD)
        out.append(token)
    return out


def read_false_front(features: list[Feature], draft: Draft) -> None:
    """The part of the green that falls to the front, when the words give it one; after its levels."""
    said = [(f, found) for f in features if f.kind == "green" for found in f.take_all("false_front")]
    if not said:
        return
    feature, _ = said[0]
    front, half = draft.green_front_yd, draft.green_half_yd + 5.0
    if not draft.heights:
        middle = 0.5 * (front + draft.green_back_yd)
        draft.heights = [(0.0, 0.0, 0.0), (round(middle / 2.0), 0.0, 0.0), (middle, 0.0, 0.0)]
        draft.assumed.append("The green is level with the tee: the words give no height for it.")
    # the height is of the part's own middle: its back edge meets the rest of the green
    drop = a.FALSE_FRONT_PCT / 100.0 * 0.5 * a.FALSE_FRONT
    keys = {
        "name": draft.name_for("false front"),
        "from": front - 2.0, "to": front + a.FALSE_FRONT,
        "left": draft.green_offset_yd - half, "right": draft.green_offset_yd + half,
        "slope_pct": a.FALSE_FRONT_PCT, "falls": "front", "height": draft.heights[-1][2] - drop,
    }  # fmt: skip
    entry = Entry("green_part", keys, feature.text)
    entry.assume(f"the first {draft.units.shown(a.FALSE_FRONT)} of the green", "to")
    entry.assume(f"a fall of {a.FALSE_FRONT_PCT:g} % to the front", "slope_pct", "height")
    draft.entries.append(entry)
