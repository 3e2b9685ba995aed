"""What coaches say of a hole in fewer words than the grammar has: "elevated tee 40 ft", "tree lined"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from simulator.hole.words.jotted import (
    a_drop_of,
    at_the_edge,
    falls_away,
    narrows_there,
    stream_crosses_again,
    through_the_fairway,
)
from simulator.hole.words.lex import Token, listed
from simulator.hole.words.tokenruns import BREAKS, as_words, break_behind, key_of, noun_at, phrase_at, runs
from simulator.hole.words.trade_fairway import between_bunkers, cambered, double_bend, split
from simulator.hole.words.trade_water import round_the_back, sides_of_the_green, stream_that_turns, touching
from simulator.hole.words.vocabulary import FILLERS

_RAISED = frozenset(listed("elevated raised perched plateau sunken lowered"))
_LOW = frozenset(("sunken", "lowered"))
_HIGH = frozenset(("above", "up", "below", "down"))
_OLD = frozenset(listed("tall mature towering thick"))
_SIZED = {"shallow": "deep", "narrow": "wide"}
_BETWEEN_SIZES = frozenset(("wide", "broad"))
_LEVELS = {"top": True, "upper": True, "higher": True, "lower": False, "bottom": False}
_HOUSES = (
    "hotel", "clubhouse", "club house", "car park", "practice ground", "practice range", "driving range",
    "practice area", "range", "cemetery", "church", "farm", "farmland", "school", "orchard", "stables",
    "vineyard", "factory", "motorway", "highway", "street", "housing", "estate", "caravan park", "allotments",
    "beach",
)  # fmt: skip
"""What is out of bounds when somebody says so, and not otherwise."""


def in_plain_words(tokens: list[Token]) -> list[Token]:
    """The same hole with these ways of speaking put into words that the grammar has."""
    for put in (falls_away, through_the_fairway, narrows_there, a_drop_of, stream_crosses_again, at_the_edge,
                _beyond, _upper_level, _raised, _sized, _grown, _lined, split, double_bend, cambered,
                stream_that_turns, round_the_back, sides_of_the_green, between_bunkers, touching,
                _named_bounds):  # fmt: skip
        tokens = put(tokens)
    return tokens


def _beyond(tokens: list[Token]) -> list[Token]:
    """A pin behind a bunker and a boundary beyond the trees stand where their own words say."""
    out: list[Token] = []
    for run in runs(tokens, BREAKS):
        kinds = [noun_at(run, k)[1] for k in range(len(run))]
        first = next((kind for kind in kinds if kind), "")
        own = {"pin": ("water", "bunker", "stream"), "out": ("trees", "bunker", "heavy_rough")}.get(first, ())
        k = 0
        while k < len(run):
            behind = k + 1
            while behind < len(run) and run[behind].key in FILLERS:
                behind += 1
            size, kind = noun_at(run, behind)
            over = run[k].key in ("behind", "beyond", "over", "past", "through") and kind in own
            if not over:
                out.append(run[k])
            k = behind + size if over else k + 1
    return [one for k, one in enumerate(out) if not _inside_the_course(out, k)]


def _inside_the_course(tokens: list[Token], k: int) -> bool:
    """Whether k is a word of "out of bounds inside the course": it is as any other."""
    words = ("inside", "within", "the", "course", "internal")
    if tokens[k].key not in words:
        return False
    low = k
    while low and tokens[low - 1].key in words:
        low -= 1
    high = k
    while high + 1 < len(tokens) and tokens[high + 1].key in words:
        high += 1
    keys = [one.key for one in tokens[low : high + 1]]
    return "course" in keys and ("inside" in keys or "within" in keys)


def _upper_level(tokens: list[Token]) -> list[Token]:
    """The top tier is the back one, unless the front is said to be higher; the lower one is the other."""
    keys = [key_of(one) for one in tokens if one.kind != "number" and key_of(one) not in FILLERS]
    behind = list(zip(keys, keys[1:], keys[2:], strict=False))
    front = any(
        ("front", way) in ((a, b), (a, c)) for a, b, c in behind for way in ("up", "above")
    ) or any(("back", way) in ((a, b), (a, c)) for a, b, c in behind for way in ("down", "below"))
    out = []
    for k, token in enumerate(tokens):
        following = tokens[k + 1].key if k + 1 < len(tokens) else ""
        level = following in ("tier", "level", "shelf", "deck") and token.key in _LEVELS
        out += as_words(token, "front" if _LEVELS[token.key] is front else "back") if level else [token]
        if out[-1].key in ("level", "shelf", "deck") and out[-2:-1] and out[-2].key in ("front", "back"):
            out[-1] = replace(out[-1], key="tier")
    return out


def _raised(tokens: list[Token]) -> list[Token]:
    """ "Elevated tee 40 ft" is a tee 40 ft up; "plateau green 6 up" says so already."""
    out: list[Token] = []
    for run in runs(tokens, BREAKS):
        at = next((k for k, one in enumerate(run) if one.key in _RAISED), None)
        nouns = [one for one in run if one.key in ("green", "tee")]
        sizes = [k for k, one in enumerate(run) if one.kind == "number"]
        behind = noun_at(run, at + 1)[1] if at is not None else ""
        said = any(key_of(one) in _HIGH and one.key not in _RAISED for one in run)
        if at is None or len(nouns) != 1 or len(sizes) != 1 or behind not in ("green", "tee", ""):
            out += run
            continue
        if not said and (behind == "" or _says_size(run, sizes[0])):
            out += run  # "tee elevated 60 ft" is read as it stands, "plateau green 24 deep" says no height
            continue
        way = "down" if run[at].key in _LOW else "up"
        added = [] if said else [replace(run[at], key=way)]
        run = [*run[: sizes[0] + 1], *added, *run[sizes[0] + 1 :]]
        out += [one for one in run if one.key not in _RAISED]
    return out


def _says_size(run: list[Token], k: int) -> bool:
    """Whether the word behind the number at k makes it a size of the ground."""
    return k + 1 < len(run) and run[k + 1].key in ("deep", "wide", "long", "by")


def _sized(tokens: list[Token]) -> list[Token]:
    """ "Shallow 18" is 18 deep; a wide landing area 50 wide is 50 wide."""
    out: list[Token] = []
    for k, token in enumerate(tokens):
        following = tokens[k + 1] if k + 1 < len(tokens) else None
        before = tokens[k - 1] if k else None
        if token.key in _SIZED and following is not None and following.kind == "number":
            out.append(replace(token, key=_SIZED[token.key]))
        elif token.key in _BETWEEN_SIZES and _told_behind(tokens, k) and (
            before is None or before.kind != "number"
        ):
            continue
        else:
            out.append(token)
    return out


def _told_behind(tokens: list[Token], k: int) -> bool:
    """Whether a noun stands right behind k and says how wide it is before the next break."""
    if noun_at(tokens, k + 1)[1] not in ("fairway", "green"):
        return False
    run = next(runs(tokens[k + 1 :], BREAKS))
    return any(a.kind == "number" and b.key == "wide" for a, b in pairwise(run))


def _grown(tokens: list[Token]) -> list[Token]:
    """ "Tall trees": how tall is told by a number, and else assumed."""
    out: list[Token] = []
    for k, token in enumerate(tokens):
        size, kind = noun_at(tokens, k + 1)
        alone = not (k and tokens[k - 1].kind == "number")
        if not (token.key in _OLD and alone and size and kind in ("trees", "tree")):
            out.append(token)
    return out


def _lined(tokens: list[Token]) -> list[Token]:
    """ "Tree lined" is trees on both sides, unless trees are spoken of elsewhere."""
    trees = ("tree", "trees")
    at = [k for k, one in enumerate(tokens) if one.key == "lined" and k and tokens[k - 1].key in trees]
    if not at:
        return tokens
    k = at[0]
    nouns = [j for j in range(len(tokens)) if j != k - 1 and noun_at(tokens, j)[1] == "trees"]
    start = k - 1
    while start and tokens[start - 1].key in ("narrow", "tight") and tokens[start - 1].kind == "word":
        start -= 1
    plain = [] if nouns else as_words(tokens[k], "; trees both sides")
    head = break_behind(tokens, k + 1)
    return [*tokens[:start], *tokens[k + 1 : head], *plain, *tokens[head:]]


def _named_bounds(tokens: list[Token]) -> list[Token]:
    """ "Hotel out of bounds right 30": the boundary is called by what lies behind it."""
    out: list[Token] = []
    for run in runs(tokens):
        at = next((k for k in range(len(run)) if phrase_at(run, k, _HOUSES)), None)
        outs = [k for k in range(len(run)) if noun_at(run, k)[1] == "out"]
        mine = ("", "out", "green", "fairway", "tee")
        others = [k for k in range(len(run)) if noun_at(run, k)[1] not in mine]
        plain = len(outs) == 1 and run[outs[0]].key in ("out", "ob", "oob")
        if at is None or not plain or others:
            out += run
            continue
        size = phrase_at(run, at, _HOUSES)
        name = " ".join(one.shown for one in run[at : at + size])
        called = replace(run[at], kind="text", shown=name, key=name)
        rest = [one for k, one in enumerate(run) if not at <= k < at + size]
        ends = [rest.pop()] if rest and rest[-1].kind == "hard" else []
        out += [*(one for one in rest if one.key not in ("is", "as")), called, *ends]
    return out
