"""Tees along the line, and how tee, fairway and green stand to each other in height."""

from __future__ import annotations

import math

from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, need

MAIN = "main"
"""Name of the tee that the yards count from, when the words name none there."""

CARD_SHARE = 0.5
"""No tee stands farther on than this share of the hole: a larger number is the hole's length from there."""

LEVEL_STEP_YD = 40.0
"""Spacing of the spot heights on a level fairway [yd]: closer than the hills either end could make it sag."""

MOST_HEIGHT_YD = 150.0
"""Largest difference in height [yd]: what a hole file takes."""


def read_tees(features: list[Feature], draft: Draft) -> None:
    """Tees in the order of the words; the first stands at the start of the line unless it says otherwise.

    Raises
    ------
    UsageError
        Two tees of one name, a tee past the green.
    """
    mine = [f for f in features if f.kind == "tee"]
    told = [
        f
        for f in mine
        if f.has("ahead", "back_by", "at", "bare", "colour", "who", "named", "place", "offset")
    ]
    for feature in told:
        _tee(feature, draft)
    tees = draft.of("tee")
    if all(entry.keys.get("at") for entry in tees):
        entry = Entry("tee", {"name": MAIN})
        unit = "yards" if draft.units.written == "yd" else "metres"
        entry.assume(f"that the {unit} count from it, the start of the line", "name")
        draft.entries.insert(draft.entries.index(tees[0]) if tees else 0, entry)


def _tee(tee: Feature, draft: Draft) -> None:
    colour, who, named, place = tee.take("colour"), tee.take("who"), tee.take("named"), tee.take("place")
    ahead, back, at = tee.take("ahead"), tee.take("back_by"), tee.take("at", "bare")
    offset = tee.take("offset", "side_number")
    words = [one.words.get("word") or one.words.get("p", "") for one in (colour, who, place) if one]
    words = ["forward" if word == "ahead" else word for word in words]
    name = named.numbers["a"].key if named else " ".join(words) or "tee"
    taken = {str(e.keys["name"]).casefold() for e in draft.of("tee")}
    need(name.casefold() not in taken, tee.token, f"is a second {name}: give each tee a name of its own")
    entry = Entry("tee", {"name": name[:50]}, tee.text)
    given = [said for said in (ahead, back, at) if said]
    need(len(given) < 2, tee.token, "is placed twice")
    if given:
        value = draft.units.yd(given[0].numbers["a"])
        station = -value if back else value
        if at is not None and value > CARD_SHARE * draft.length_yd:  # "red tee 340" of a hole of 372
            station = draft.length_yd - value
            if abs(station) >= 0.5:
                entry.assume(f"that {draft.units.shown(value)} is what the hole measures from it", "at")
        need(station < draft.green_front_yd - 20.0, given[0].token, "is too near the green for a tee")
        need(station > -300.0, given[0].token, "is too far back for a tee")
        need(not station or name != "tee", tee.token, 'needs a name: "white tee 20 back"')
        if station:
            entry.keys["at"] = station
    if offset:
        value = draft.units.yd(offset.numbers["a"])
        entry.keys["offset"] = -value if offset.words["s"] == "left" else value
    draft.entries.append(entry)


def read_levels(features: list[Feature], draft: Draft) -> None:
    """Heights of tee, fairway and green from "green 6 up", "tee 10 above the fairway", "downhill 20".

    The tee is the zero. A fairway of which nothing is said climbs evenly from tee to green; a green of which
    nothing is said is level with the fairway.

    Raises
    ------
    UsageError
        A height said twice, or of itself.
    """
    told = [one for f in features if f.kind in ("tee", "fairway", "green", "climb") for one in _levels(f)]
    if not told:
        return
    z: dict[str, float] = {"tee": 0.0}
    waiting = [_step(said, of, draft) for said, of in told]
    for _ in range(3):
        for said, upper, lower, rise in list(waiting):
            if lower in z and upper not in z:
                z[upper] = z[lower] + rise
            elif upper in z and lower not in z:
                z[lower] = z[upper] - rise
            elif upper in z and lower in z:
                need(abs(z[upper] - z[lower] - rise) < 0.05, said.token, f"({said.shown}): a second height")
            else:
                continue
            waiting.remove((said, upper, lower, rise))
    if waiting:  # green against fairway, nothing against the tee
        said, upper, lower, rise = waiting[0]
        z.setdefault("fairway", 0.0)
        z["green"] = rise if upper == "green" else -rise
        draft.assumed.append("The fairway is level with the tee: the words give no height for it.")
    if "green" not in z:
        z["green"] = z["fairway"]
        draft.assumed.append("The green is level with the fairway: the words give no height for it.")
    _spots(z, draft)


def _levels(feature: Feature) -> list[tuple[Said, str]]:
    found = feature.take_all("up", "down")
    if found and feature.kind == "tee" and feature.has("ahead", "back_by", "at", "bare"):
        raise found[0].token.error(f"({found[0].shown}): heights count from the tee at the start of the line")
    if feature.kind == "climb":
        feature.take_all("from_tee", "to_green")  # that is what it counts from and to
        found += feature.take_all("bare")
        if not found:
            raise feature.token.error(f'by how much? For example "{feature.noun} 8"')
    return [(said, feature.noun if feature.kind == "climb" else feature.kind) for said in found]


def _step(said: Said, of: str, draft: Draft) -> tuple[Said, str, str, float]:
    """(what, who, over whom, rise in yards) of one height said."""
    rise = draft.units.yd(said.numbers["a"])
    need(
        rise <= MOST_HEIGHT_YD,
        said.token,
        f"({said.shown}): too much; up to {draft.units.shown(MOST_HEIGHT_YD)}",
    )
    if of in ("uphill", "climbs", "downhill", "drops"):
        return said, "green", "tee", rise if of in ("uphill", "climbs") else -rise
    over = said.words.get("ref", "fairway" if of == "tee" else "tee")
    need(over != of, said.token, f"({said.shown}): over itself")
    return said, of, over, rise if said.what == "up" else -rise


def _spots(z: dict[str, float], draft: Draft) -> None:
    """Spot heights along the line: tee, both ends of the fairway (or half way), middle of the green."""
    middle = 0.5 * (draft.green_front_yd + draft.green_back_yd)
    low, high = draft.fairway_from_yd, min(draft.fairway_to_yd, draft.green_front_yd - 5.0)
    draft.heights = [(0.0, 0.0, z["tee"])]
    if "fairway" in z and low + 20.0 < high:
        count = max(2, math.ceil((high - 10.0 - low) / LEVEL_STEP_YD) + 1)
        step = (high - 10.0 - low) / (count - 1)
        draft.heights += [(round(low + k * step, 1), 0.0, z["fairway"]) for k in range(count)]
    else:
        if "fairway" not in z:
            draft.assumed.append("The ground climbs or falls evenly from tee to green.")
        half = z["fairway"] if "fairway" in z else 0.5 * z["green"]
        draft.heights.append((round(middle / 2.0), 0.0, half))
    draft.heights.append((middle, 0.0, z["green"]))
