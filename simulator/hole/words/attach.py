"""Words without a noun of their own: whose they are."""

from __future__ import annotations

from dataclasses import replace

from simulator.hole.words.feature import Feature, Said
from simulator.hole.words.lex import listed
from simulator.hole.words.vocabulary import HEADER

PLACING = frozenset(
    listed(
        "range from at on ahead back_by place short_green behind_green beside_green at_green off_place both "
        "carry"
    )
)
"""What is said once of a place; said again it is of another feature of the kind."""

SIDED = frozenset(("side", "side_number", "offset", "beside_green", "place"))
"""What puts a feature on one side; on the other side it is another one."""

LISTED = frozenset(listed("pin tee bunker tree trees mark water heavy_rough rough stream path out bend"))
"""Kinds that may be told as a list ("bunkers left at 230 and 250")."""

BY_NUMBER = frozenset(("bunker", "tree", "stream"))
"""Kinds whose places may be told as numbers alone behind the first ("crosses at 290 and 430")."""

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
        loose.kind, loose.noun = "bend", "bend"
        found.append(loose)
        return
    if (hard or header) and kinds <= {"bare", "named", "long"}:
        loose.kind = "hole"
        found.append(loose)
        return
    if last is None:
        raise loose.token.error("is about no feature: name it first (fairway, pond, bunker, green ...)")
    if last.kind in LISTED and _is_another(last, loose):
        loose.kind, loose.noun = last.kind, last.noun
        if last.kind == "stream":
            loose.said = [replace(one, what="at") if one.what == "bare" else one for one in loose.said]
        _from_green_all(found, loose)
        _side_of_all(found, loose)
        if last.kind != "mark":
            loose.said += [one for one in last.said if _inherited(one, loose)]
        loose.text = f"{last.noun} {loose.text}"
        found.append(loose)
        return
    last.said += loose.said
    last.text += ", " + loose.text


def _from_green_all(found: list[Feature], loose: Feature) -> None:
    """Numbers before "130 from the green" count from the green as well."""
    told = next((one for one in loose.said if one.what == "short_green" and one.numbers), None)
    if told is None:
        return
    for one in reversed(found):
        bare = next((said for said in one.said if said.what == "bare"), None)
        if one.kind != loose.kind or bare is None:
            return
        from_there = replace(told, token=bare.token, numbers=bare.numbers, shown=bare.shown)
        one.said[one.said.index(bare)] = from_there
        if one.token.key in one.noun.split():  # the head of the list
            return


def _side_of_all(found: list[Feature], loose: Feature) -> None:
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
        if one.token.key in one.noun.split():  # the head of the list
            return


def _is_another(last: Feature, loose: Feature) -> bool:
    """Whether loose words place a second feature of the same kind."""
    old, new = {one.what for one in last.said}, {one.what for one in loose.said}
    if last.kind == "tee" and new & NAMES_A_TEE:
        return bool(old & NAMES_A_TEE) or last.noun == "tees"
    if last.kind == "pin":
        placed = {"on", "place", "range", "bare", "at"}
        return bool(new & (old & placed)) or (bool(new & {"place"}) and bool(old & placed))
    if last.kind in BY_NUMBER and "bare" in new and old & {"at", "bare", "range", "offset"}:
        return "at" in old or "bare" in old
    if "bare" in old and any(one.what == "short_green" and one.numbers for one in loose.said):
        return last.kind in ("bunker", "tree")  # "bunkers 150 and 130 from the green"
    far = [one.numbers["a"].value for one in loose.said if one.what == "offset"]
    if last.kind in ("bunker", "tree") and far and far[0] >= ACROSS_LIMIT and old & {"at", "bare"}:
        return True  # "bunkers at 220 and 240 on the right"
    sides = [
        {one.words["s"] for one in f.said if one.what in SIDED and "s" in one.words} for f in (last, loose)
    ]
    if sides[0] and sides[1] and not sides[0] & sides[1]:
        return True
    if last.kind == "out" and "behind_green" in old ^ new:
        return True
    round_green = {"side", "place", "behind_green", "short_green", "beside_green"}
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
        "edge",
        "beside_green",
        "both",
        "behind_green",
        "short_green",
        "place",
    }
    if one.what in ("side",):
        return not loose.has(*sides)
    return one.what in ("tall", "density", "deep", "wide", "crown", "colour") and not loose.has(one.what)
