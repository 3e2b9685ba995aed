"""A green on two levels: its back (or front) half so much higher, a part of the green in the file."""

from __future__ import annotations

from simulator.hole.terrain import BANK_GRADE, BLEND_LEAST_YD
from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, need

MOST_STEP_YD = 5.0
"""Largest step between two levels [yd]: more is no green."""

CLEAR_YD = 0.5
"""The bank begins so far from the middle [yd], where the height of the green is known and a pin may stand."""

LEAST_LEVEL_YD = 4.0
"""Shortest upper level [yd]: room for a hole."""


def read_tiers(features: list[Feature], draft: Draft) -> None:
    """The two levels of the green, when the words give it any; after the heights of the hole.

    Raises
    ------
    UsageError
        More levels than two, a step that is none, two steps.
    """
    for feature in [f for f in features if f.kind == "green"]:
        tiers, step = feature.take("tiers"), feature.take("tier_up")
        if tiers is not None and "a" in tiers.numbers:
            three = '("three tiers"): words know two levels; a file may have a "green_part" for each'
            need(tiers.numbers["a"].value == 2.0, tiers.token, three)
        if tiers is not None or step is not None:
            _two_levels(feature, step, draft)


def _two_levels(feature: Feature, step: Said | None, draft: Draft) -> None:
    u = draft.units
    green = draft.of("green")[0]
    front, back = draft.green_front_yd, draft.green_back_yd
    middle, half = 0.5 * (front + back), draft.green_half_yd + 5.0
    rise, up = a.TIER_STEP, "back"
    if step is not None:
        rise = u.yd(step.numbers["a"])
        most = f"({step.shown}): allowed: up to {u.shown(MOST_STEP_YD)}"
        need(0.0 < rise <= MOST_STEP_YD, step.token, most)
        raised = step.words["way"] in ("up", "above")
        up = step.words["p"] if raised else {"front": "back", "back": "front"}[step.words["p"]]
    room = max(0.5 * (back - front) - CLEAR_YD - LEAST_LEVEL_YD, 0.0)
    bank = min(max(BLEND_LEAST_YD, rise / BANK_GRADE), room)
    foot = CLEAR_YD + bank
    low, high = (middle + foot, back + 2.0) if up == "back" else (front - 2.0, middle - foot)
    slope, falls = green.keys.get("slope_pct", 0.0), green.keys.get("falls", "")
    name = draft.name_for(f"{up} level")
    left, right = draft.green_offset_yd - half, draft.green_offset_yd + half
    keys = {"name": name, "from": low, "to": high, "left": left, "right": right, "slope_pct": slope}
    if slope:
        keys["falls"] = falls
    if not draft.heights:
        draft.heights = [(0.0, 0.0, 0.0), (round(middle / 2.0), 0.0, 0.0), (middle, 0.0, 0.0)]
        draft.assumed.append("The front of the green is level with the tee: the words give no height for it.")
    # the height is of the part's own middle: the fall of the green carries on under the step
    along = 0.5 * (foot + 0.5 * (back - front)) * (1.0 if up == "back" else -1.0)
    climbs = slope / 100.0 * along * {"front": 1.0, "back": -1.0}.get(falls.split()[0] if falls else "", 0.0)
    keys["height"] = draft.heights[-1][2] + rise + climbs
    entry = Entry("green_part", keys, feature.text)
    told = f"the {up} half of the green, up a bank of {u.shown(bank)} from its middle"
    if step is None:
        entry.assume(f"{told}, {u.shown(rise)} above the rest", "from", "to", "height")
    else:
        entry.assume(told, "from", "to")
    if "slope_pct" not in green.keys:
        entry.assume("both levels level", "slope_pct")
    draft.entries.append(entry)
