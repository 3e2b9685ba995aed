"""Lists of one kind ("bunkers right at 210, 230 and 250"): what is said once and holds for all of them."""

from __future__ import annotations

from dataclasses import replace

from simulator.hole.words.assumed import MOST_ACROSS_YD
from simulator.hole.words.feature import Feature, Said, need
from simulator.hole.words.lex import Token

SIDED = frozenset(("side", "side_number", "offset", "beside_green", "place"))
"""What puts a feature on one side; on the other side it is another one."""

COUNTED = frozenset(("bunker", "stream", "water"))
"""Kinds that may be told as so many of them at so many places."""

BY_THE_GREEN = frozenset(("beside_green", "behind_green", "short_green"))

PLACED = frozenset(("at", "range", "out_at", "out_range", "from", "to", "carry"))
"""What puts a feature somewhere along the line."""

SIZES, SIDES = frozenset(("long", "wide", "deep", "by", "size")), frozenset(("side", "both"))

_SEVERAL_BUNKERS = ("bunkers", "traps")

MOST_BUNKERS = 12
"""Bunkers that may be told as one number of them: a limit on slips."""


def counts_from_green(one: Said) -> bool:
    """Whether a distance is counted back from the green: "130 from the green", "130 out"."""
    return one.what == "out_at" or (one.what == "short_green" and bool(one.numbers))


def station_apart(feature: Feature) -> None:
    """ "Right 210" is a side and a place along the line, so that others of a list can share the side."""
    for k, one in enumerate(feature.said):
        if one.what != "side_number" or "f" in one.words or one.numbers["a"].value <= MOST_ACROSS_YD:
            continue
        at = one.numbers["a"]
        side = replace(one, what="side", numbers={})
        feature.said[k : k + 1] = [side, replace(one, what="at", token=at, words={})]
        return


def is_head(feature: Feature) -> bool:
    """Whether a feature was called by its noun; the others of a list are told by their places alone."""
    return bool(feature.called)


def open_number(feature: Feature) -> Said | None:
    """A number of which it is not said from where it counts ("left 150"), and not how many there are."""
    for one in feature.said:
        if one.what == "at" and not one.shown.casefold().startswith("at"):
            return one
        if one.what == "bare":
            return one
    return None


def from_green_all(found: list[Feature], loose: Feature) -> None:
    """Numbers before "130 from the green" count from the green as well."""
    told = next((one for one in loose.said if counts_from_green(one)), None)
    if told is None:
        return
    for one in reversed(found):
        bare = open_number(one)
        if one.kind != loose.kind or bare is None:
            return
        from_there = replace(told, token=bare.token, numbers=bare.numbers, shown=bare.shown)
        one.said[one.said.index(bare)] = from_there
        if is_head(one):
            return


def side_of_all(found: list[Feature], loose: Feature) -> None:
    """The side behind a list ("bunkers at 220, 240 and 260 on the right") is that of all of it."""
    side = next((one for one in loose.said if one.what in ("side", "both", "offset")), None)
    if side is not None and side.what == "offset":
        side = replace(side, what="side", words={"s": side.words["s"]}, numbers={})
    if side is None or loose.kind not in ("bunker", "tree", "trees"):
        return
    for one in reversed(found):
        if one.kind != loose.kind or one.has("both", "across", *SIDED):
            return
        one.said.append(replace(side))
        if is_head(one):
            return


def place_of_all(found: list[Feature], loose: Feature) -> None:
    """The place behind a list ("two left and two right at 240") is that of all who have only a side."""
    places = [one for one in loose.said if one.what in PLACED]
    if loose.kind != "bunker" or len(places) != 1:
        return
    for one in reversed(found):
        if one.kind != loose.kind or not {said.what for said in one.said} <= {"side", "count"}:
            return
        one.said.append(places[0])
        if is_head(one):
            return


def share_behind(found: list[Feature], loose: Feature) -> None:
    """What stands behind a list ("at 230 and 250, left", "at 230 and 250, 12 long") is of all without it."""
    kinds = {one.what for one in loose.said}
    alike = next((what for what in (SIZES, SIDES) if kinds <= what), frozenset())
    if found[-1].kind not in COUNTED or is_head(found[-1]) or not alike:
        return
    before = [said for one in found[:-1] for said in one.said]
    last = found[-1]  # what it took over from the others gives way to its own
    last.said = [said for said in last.said if said.what not in kinds or said not in before]
    for one in reversed(found[:-1]):
        one.said += [said for said in loose.said if not one.has(*alike, *(SIDED if alike is SIDES else ()))]
        if is_head(one):
            return


def mark_count(feature: Feature) -> None:
    """ "Two bunkers": the number before the noun is how many."""
    for k, one in enumerate(feature.said):
        if feature.kind in COUNTED and one.what == "bare" and _is_count(one, feature):
            feature.said[k] = replace(one, what="count")
            return


def count_apart(loose: Feature) -> None:
    """ "And three right at 250" of a list of bunkers: a number in words before a side is how many."""
    first = loose.said[0]
    number = first.numbers.get("a")
    if first.what == "offset" and "f" not in first.words and number is not None and _is_counted(number):
        loose.said[:1] = [replace(first, what="count"), replace(first, what="side", numbers={})]


def _is_counted(number: Token) -> bool:
    return number.key.isalpha() and not number.unit and number.value <= MOST_BUNKERS


def count_each(found: list[Feature]) -> None:
    """How many bunkers stand at each place of a list: one, when as many are told as there are places.

    Raises
    ------
    UsageError
        Another number of bunkers than of places.
    """
    for k, head in enumerate(found):
        count = next((one for one in head.said if one.what == "count" and is_head(head)), None)
        told = 1
        for one in found[k + 1 :]:
            if one.kind != head.kind or is_head(one) or counts_itself(one):
                break
            told += 1
        told += sum(one.what == "both" and _names_both(one) for one in head.said)
        if count is None and told == 1 and is_head(head) and head.noun.endswith(_SEVERAL_BUNKERS):
            head.said.append(Said("one_only", head.token, {}, {}, head.called))
        if count is None or told == 1:
            continue
        need(count.numbers["a"].value == told, count.token,
             f"{head.called} at {told} places: say each by itself, "
             '"two bunkers right at 230; bunker left at 250"',
        )  # fmt: skip
        head.said.remove(count)


def _is_count(one: Said, head: Feature) -> bool:
    """Whether a bare number stands before the noun."""
    return one.what == "bare" and one.token.start < head.token.start and not one.numbers["a"].unit


def _names_both(one: Said) -> bool:
    """Whether both sides are named: "each side" may mean as many on either."""
    return one.shown.casefold().startswith(("left", "right"))


def counts_itself(place: Feature) -> bool:
    """ "One right of the green" of a list says how many itself."""
    told = (
        one.what == "count" or (one.what in BY_THE_GREEN and _is_counted(one.numbers["a"]))
        for one in place.said
        if "a" in one.numbers
    )
    return any(told)
