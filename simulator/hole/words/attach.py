"""Words without a noun of their own: whose they are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from simulator.hole.words.feature import Feature, Said, need
from simulator.hole.words.lex import listed
from simulator.hole.words.lists import (
    PLACED,
    SIDED,
    SIZES,
    count_apart,
    counts_from_green,
    counts_itself,
    from_green_all,
    open_number,
    place_of_all,
    share_behind,
    side_of_all,
    station_apart,
)
from simulator.hole.words.vocabulary import HEADER

PLACING = frozenset(
    listed(
        "range from at on out_at ahead back_by place short_green behind_green beside_green at_green "
        "off_place both carry"
    )
)
"""What is said once of a place; said again it is of another feature of the kind."""

LISTED = frozenset(
    listed("pin tee bunker tree trees mark water heavy_rough rough stream path out bend waste runoff")
)
"""Kinds that may be told as a list ("bunkers left at 230 and 250")."""

AREAS = frozenset(listed("water heavy_rough rough trees waste runoff"))
"""Kinds that may lie on two sides of the green."""

BY_NUMBER = frozenset(("bunker", "tree", "stream"))
"""Kinds whose places may be told as numbers alone behind the first ("crosses at 290 and 430")."""

OFFSETS = frozenset(("offset", "side_number", "side_edge", "edge"))
"""How far from the line the first of a list lies, and the others unless they say it themselves."""

NAMES_A_TEE = frozenset(("colour", "who"))

SEVERAL = frozenset(
    ("bunkers", "traps", "sand traps", "greenside bunkers", "fairway bunkers", "pot bunkers", "cross bunkers")
)

ACROSS_LIMIT = 100.0
"""Numbers of a second range below this are distances from the line, above it along the line."""


def attach(found: list[Feature], loose: Feature, hard: bool) -> None:
    """Words without a noun: about the feature before, another of its kind, or the hole as a whole."""
    last = found[-1] if found else None
    kinds = {one.what for one in loose.said}
    if not loose.said:
        return
    header = last is None or last.kind in HEADER
    if (
        (hard or header)
        and kinds <= {"side", "side_number", "offset", "at", "degrees", "sharpness"}
        and (kinds & {"side", "side_number", "offset"})
    ):
        _check_bend(last, loose)
        loose.kind, loose.noun = "bend", last.noun if last is not None and last.kind == "bend" else "bend"
        found.append(loose)
        return
    if (hard or header) and kinds <= {"bare", "named", "long"}:
        loose.kind = "hole"
        found.append(loose)
        return
    if last is None:
        raise loose.token.error("is about no feature: name it first (fairway, pond, bunker, green ...)")
    if last.kind in ("bunker", "tree"):
        station_apart(last)
        station_apart(loose)
    if last.kind == "bunker":
        count_apart(loose)
        placed = last.has(*PLACED) and last.has(*SIDED)
        need(not placed or not kinds <= {"side"}, loose.token,
             'where along the line? Say "bunkers both sides at 230" for the same place')  # fmt: skip
    _corner_told_by_number(last, loose)
    if not loose.has("count", "another"):
        once_by_the_green(last.said, loose.said)
    if last.kind in LISTED and _is_another(last, loose):
        loose.kind, loose.noun = last.kind, last.noun
        if last.kind in ("stream", "water"):
            loose.said = [replace(one, what="at") if one.what == "bare" else one for one in loose.said]
        from_green_all(found, loose)
        side_of_all(found, loose)
        place_of_all(found, loose)
        if last.kind != "mark":
            loose.said += [one for one in last.said if _inherited(one, loose)]
        loose.text = f"{last.noun} {loose.text}"
        found.append(loose)
        return
    share_behind(found, loose)
    last.said += loose.said
    last.text += ", " + loose.text


def _corner_told_by_number(last: Feature, loose: Feature) -> None:
    """ "Short left of the green, 15 short" is 15 short of it, on the left."""
    nearer = next((one for one in loose.said if one.what == "short_green" and "a" in one.numbers), None)
    corner = next((one for one in last.said if one.what == "place" and "s" in one.words), None)
    if nearer and corner and corner.words.get("p") in ("short", "front") and len(loose.said) == 1:
        last.said[last.said.index(corner)] = replace(corner, what="side", words={"s": corner.words["s"]})


def once_by_the_green(said: list[Said], behind: Sequence[Said] = ()) -> None:
    """ "In front of the green, 15 short" is one place, told twice: the one with the number holds.

    Whether the number is said in the same breath or in what stands `behind`.
    """
    for what in ("short_green", "behind_green"):
        if {"a" in one.numbers for one in (*said, *behind) if one.what == what} == {True, False}:
            said[:] = [one for one in said if one.what != what or "a" in one.numbers]


def _check_bend(last: Feature | None, loose: Feature) -> None:
    """Refuse "left 30" by itself: a bend of 30 degrees is called one, and what lies 30 left has a name."""
    told = loose.has("at", "degrees", "sharpness") or (last is not None and last.kind == "bend")
    number = next((one for one in loose.said if one.what in ("side_number", "offset")), None)
    if number is None and not loose.has("degrees", "sharpness") and (last is None or last.kind != "bend"):
        one = loose.said[0]
        raise one.token.error(f'({loose.text}): what is there? Name it, or say "dogleg" for a bend')
    if number is not None:
        shown, side = number.numbers["a"].shown, number.words["s"]
        need(told, number.token, f'({number.shown}): of what? Say "dogleg {side} {shown} at 230" for a bend '
             f'(degrees), or name what lies there, "out {side} {shown}"')  # fmt: skip


def _is_another(last: Feature, loose: Feature) -> bool:
    """Whether loose words place a second feature of the same kind."""
    counts = [one.numbers["a"].value for one in loose.said if "a" in one.numbers]
    one_more = last.kind == "bunker" and counts_itself(loose) and (last.noun in SEVERAL or 1.0 in counts)
    if loose.take_all("another") or one_more:  # of one bunker "five behind the green" are yards
        return True
    old, new = {one.what for one in last.said}, {one.what for one in loose.said}
    if last.kind == "tee" and new & NAMES_A_TEE:
        return bool(old & NAMES_A_TEE) or last.noun == "tees"
    if last.kind == "pin":
        placed = {"on", "place", "range", "bare", "at"}
        return bool(new & (old & placed)) or (bool(new & {"place"}) and bool(old & placed))
    if last.kind in BY_NUMBER and "bare" in new and old & {"at", "bare", "range", "offset"}:
        return "at" in old or "bare" in old
    numbers = [one.numbers["a"].value for one in loose.said if one.what == "bare"]
    if last.kind == "water" and "at" in old and numbers and numbers[0] >= ACROSS_LIMIT:
        return True  # "ponds right at 200 and 300"
    if open_number(last) is not None and any(counts_from_green(one) for one in loose.said):
        return last.kind in ("bunker", "tree")  # "bunkers 150 and 130 from the green"
    far = [one.numbers["a"].value for one in loose.said if one.what == "offset"]
    if last.kind in ("bunker", "tree") and far and far[0] >= ACROSS_LIMIT and old & {"at", "bare"}:
        return True  # "bunkers at 220 and 240 on the right"
    sides = [
        {one.words["s"] for one in f.said if one.what in SIDED and "s" in one.words} for f in (last, loose)
    ]
    if sides[0] and sides[1] and not sides[0] & sides[1]:
        return True
    by_green = {"short_green", "behind_green", "beside_green", "place"}
    if last.kind in AREAS and not counts and old & by_green and new <= by_green:
        return True  # "pond short and right of the green" is two
    if last.kind == "out" and "behind_green" in old ^ new:
        return True
    round_green = {"side", "both", "place", "behind_green", "short_green", "beside_green"}
    if last.noun in SEVERAL and old & round_green and new & round_green:
        return True
    both = old & new & PLACING
    if both == {"range"}:
        numbers = [n.value for one in loose.said if one.what == "range" for n in one.numbers.values()]
        return max(numbers) >= ACROSS_LIMIT
    return bool(both)


def _inherited(one: Said, loose: Feature) -> bool:
    """Whether a thing said of the first of a list holds for this one too: its side, its sizes."""
    sides = {
        "side",
        "offset",
        "side_number",
        "side_edge",
        "edge",
        "beside_green",
        "both",
        "behind_green",
        "short_green",
        "place",
    }
    if one.what in ("side", "both") or (one.what in OFFSETS and loose.kind not in ("pin", "tee", "bend")):
        return not loose.has(*sides)
    if one.what in ("long", "by", "size"):
        return loose.kind == "bunker" and not loose.has("range", *SIZES)
    return one.what in ("tall", "density", "deep", "wide", "crown", "colour") and not loose.has(one.what)
