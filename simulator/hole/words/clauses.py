"""From tokens to features: where each begins, which words belong to it, and what they say."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from simulator.hole.words.assumed import MOST_ACROSS_YD
from simulator.hole.words.attach import attach, once_by_the_green
from simulator.hole.words.feature import Feature, Said
from simulator.hole.words.lex import Token, listed
from simulator.hole.words.lists import count_each, mark_count
from simulator.hole.words.said import read_said
from simulator.hole.words.speech import in_grammar
from simulator.hole.words.vocabulary import (
    ALIASES,
    BEFORE_A_PLACE,
    FILLERS,
    HEADS,
    LONGEST_HEAD,
    PLACES,
    singular,
)

MOST_FEATURES = 100
"""Features of a hole in words: a limit on slips."""

FARTHEST_BESIDE_YD = 30.0
"""Farther "from the green" than this is short of it, whatever the side [yd] (assumed)."""

ADJECTIVES = frozenset(
    listed("red yellow white blue greenside lone single small big large slight gentle sharp")
)
"""Words that go with the noun behind them, not with the feature before."""

SIZE_WORDS = frozenset(listed("wide long deep tall across by"))
"""Words that make the number before them a size."""

NAME_ENDS = frozenset(listed("left right at behind beyond on from short middle both across"))
"""Words that end a name."""


@dataclass
class _Segment:
    """Words between two breaks; `hard` after a semicolon, full stop or new line."""

    tokens: list[Token]
    hard: bool


def features_of(text: str, tokens: list[Token]) -> list[Feature]:
    """The features of a hole in words, in their order.

    Raises
    ------
    UsageError
        A word that is not understood, or words about no feature.
    """
    found: list[Feature] = []
    for segment in _segments(_over_water(in_grammar(tokens))):
        for feature in _in_segment(text, segment.tokens):
            if feature.kind == "":
                attach(found, feature, segment.hard)
            else:
                found.append(feature)
        if len(found) > MOST_FEATURES:
            raise found[-1].token.error(f"is feature {len(found)}; allowed: up to {MOST_FEATURES}")
    count_each(found)
    for feature in found:
        once_by_the_green(feature.said)
        _off_the_green(feature)
        if feature.kind != "fairway":
            feature.said = [part for one in feature.said for part in _width_and_place(one)]
    return found


def _off_the_green(feature: Feature) -> None:
    """ "right, 3 off the green" and "right of the green, 3 off" are "3 right of the green"."""
    gap = feature.take("off_green")
    if gap is None:
        return
    side = feature.take("beside_green") or (feature.take("side") if "g" in gap.words else None)
    if side is None or side.numbers or "f" in side.words:
        raise gap.token.error(f'({gap.shown}) which way? Say "{gap.numbers["a"].shown} right of the green"')
    shown = f"{side.shown} {gap.shown}"
    feature.said.append(replace(gap, what="beside_green", words={"s": side.words["s"]}, shown=shown))


def _over_water(tokens: list[Token]) -> list[Token]:
    """ "160 over a pond" of a par 3 is a pond in front of the green; of a longer hole it may lie anywhere."""
    for k, token in enumerate(tokens):
        if token.kind != "word" or token.key != "over" or (k and tokens[k - 1].kind == "and"):
            continue
        all_carry = [t.key for t in tokens[max(0, k - 2) : k]] == ["all", "carry"]
        lead = k - 2 if all_carry else k  # "all carry over a ravine" has no number for the carry
        before = [t.key for t in tokens[max(0, lead - 3) : lead] if t.kind in ("word", "number")]
        noun = next((j for j in range(k + 1, len(tokens)) if tokens[j].key not in FILLERS), k)
        stop = next((j for j in range(noun + LONGEST_HEAD, noun, -1) if _is_water(tokens[noun:j])), None)
        if stop is None or any(word in ("carry", "carries", "carried", "clear") for word in before):
            continue
        noun_words = [t.key for t in tokens[noun:stop]]
        if _carried_elsewhere(noun_words, tokens[stop:]):  # "over a lake, carry 140 to clear the lake"
            return [*tokens[:lead], *tokens[stop:]]
        par = next((t.value for p, t in pairwise(tokens) if p.key == "par" and t.kind == "number"), 0.0)
        first = stop + (tokens[stop : stop + 1] != [] and tokens[stop].key == "from")
        if par != 3.0 and [t.kind for t in tokens[first : first + 3]] == ["number", "word", "number"]:
            across = replace(token, key="across")  # "over a lake 60 to 150", "from 60 to 150"
            return [*tokens[:k], *tokens[k + 1 : stop], across, *_over_water(tokens[stop:])]
        if par != 3.0:
            what = " ".join(t.shown for t in tokens[k + 1 : stop])
            raise token.error(
                f'{what}: where along the line? Say "{what} across 100 to 140", "carry 190 to clear it" or '
                f'"{what} in front of the green"'
            )
        brk = replace(token, kind="soft", key=",")
        front = [replace(token, key=word) for word in ("in", "front")]
        return [*tokens[:lead], brk, *tokens[k + 1 : stop], *front, *_over_water(tokens[stop:])]
    return tokens


def _carried_elsewhere(noun: list[str], behind: list[Token]) -> bool:
    """Whether a carry over the same water is told later: it says where that lies."""
    keys = [t.key for t in behind]
    again = any(keys[k : k + len(noun)] == noun for k in range(len(keys)))
    return again and any(key in ("carry", "clear") for key in keys)


def _is_water(tokens: list[Token]) -> bool:
    return HEADS.get(tuple(t.key for t in tokens)) in ("water", "stream")


def _width_and_place(one: Said) -> list[Said]:
    """ "8 wide at 230" is a width of a fairway there; of anything else it is a width, and a place."""
    if one.what != "wide" or "at" not in one.numbers:
        return [one]
    at = one.numbers["at"]
    return [
        replace(one, numbers={"a": one.numbers["a"]}),
        replace(one, what="at", token=at, numbers={"a": at}),
    ]


def _segments(tokens: list[Token]) -> Iterator[_Segment]:
    """Token runs between breaks; an "and" breaks too, except between left and right."""
    run: list[Token] = []
    hard = True
    for k, token in enumerate(tokens):
        if token.kind == "and" and _between_sides(tokens, k):
            run.append(token)
            continue
        if token.kind not in ("hard", "soft", "and"):
            run.append(token)
            continue
        if run:
            yield _Segment(run, hard)
            hard = False
        run = []
        hard = hard or token.kind == "hard"
    if run:
        yield _Segment(run, hard)


def _between_sides(tokens: list[Token], k: int) -> bool:
    """Whether an "and" stands in "left and right", each without a number of its own."""
    if not 0 < k < len(tokens) - 1:
        return False
    sides = {ALIASES.get(tokens[j].key, tokens[j].key) for j in (k - 1, k + 1)}
    before = k > 1 and tokens[k - 2].kind == "number"
    behind = k + 2 < len(tokens) and tokens[k + 2].kind == "number"
    return sides == {"left", "right"} and not (before and behind)


def _heads(tokens: list[Token]) -> list[tuple[int, int, str]]:
    """First word, word behind the last, and kind of every noun that starts a feature."""
    found: list[tuple[int, int, str]] = []
    k = 0
    while k < len(tokens):
        for size in range(min(LONGEST_HEAD, len(tokens) - k), 0, -1):
            kind = HEADS.get(tuple(t.key for t in tokens[k : k + size]))
            if kind is None or any(t.kind not in ("word", "and") for t in tokens[k : k + size]):
                continue
            if kind in PLACES and _is_place(tokens, k, size):
                continue
            if kind == "out" and k > 0 and tokens[k - 1].key in ("runs", "run", "running"):
                continue  # "the fairway runs out at 270"
            if kind == "out" and tokens[k].key == "out" and _is_distance_out(tokens, k, bool(found)):
                continue
            if kind == "number" and (k + 1 == len(tokens) or tokens[k + 1].kind != "number"):
                continue  # "across the whole hole"
            found.append((k, k + size, kind))
            k += size - 1
            break
        k += 1
    stakes = [h for h, after in pairwise(found) if tokens[h[1] - 1].key == "stakes" and h[1] == after[0]]
    return [head for head in found if head not in stakes]  # "yellow stakes pond": the colour of the pond


def _is_distance_out(tokens: list[Token], k: int, named: bool) -> bool:
    """Whether "out" at k goes with the number before it ("creek 100 out"): a boundary says how far it is.

    Where nothing is `named` before it, only a number too large for a distance from the line does.
    """
    behind = tokens[k + 1 :]
    followed = [after.key for t, after in pairwise([*behind, tokens[k]]) if t.kind == "number"]
    sizes = [ALIASES.get(key, key) for key in followed]
    far = not SIZE_WORDS.issuperset(sizes) or any(t.key in ("behind", "beyond", "along") for t in behind)
    number = tokens[k - 1] if k else tokens[k]
    return number.kind == "number" and not far and (named or number.value > MOST_ACROSS_YD)


def _is_place(tokens: list[Token], k: int, size: int) -> bool:
    """Whether a green, fairway or tee at k is where something else is ("left of the green")."""
    before = [t for t in tokens[:k] if t.key not in FILLERS]
    if tokens[k].key == "green" and k + size < len(tokens) and tokens[k + size].key in ("tee", "tees"):
        return True
    return bool(before) and before[-1].kind == "word" and before[-1].key in BEFORE_A_PLACE


def _in_segment(text: str, tokens: list[Token]) -> Iterator[Feature]:
    """Features of one segment; a nameless one ("") for words that belong to the feature before."""
    tokens = _with_names(text, tokens)
    heads = _heads(tokens)
    if as_mark := _as_mark(tokens):
        heads = [(as_mark, as_mark, "mark")]
    if any(kind == "mark" for _, _, kind in heads):
        first = next(head for head in heads if head[2] == "mark")
        first_token = tokens[min(first[0], len(tokens) - 1)]
        tokens = [t for k, t in enumerate(tokens) if not first[0] <= k < first[1]]
        yield _mark(text, tokens[:-2] if as_mark else tokens, first_token)
        return
    if not heads:
        yield _green_edge(text, tokens) or _feature(text, "", "", tokens, len(tokens))
        return
    starts = [_with_adjectives(tokens, head[0], head[2]) for head in heads] + [len(tokens)]
    if heads[0][2] == "fringe" and any(t.kind == "number" for t in tokens[: starts[0]]):
        yield _feature(text, "", "", tokens[: starts[0]], starts[0])  # "20 wide with a collar": of the green
    else:
        starts[0] = 0
    for (low, high, kind), start, stop in zip(heads, starts, starts[1:], strict=False):
        noun = singular(" ".join(t.key for t in tokens[low:high]))
        feature = _feature(text, kind, noun, tokens[start:low] + tokens[high:stop], low - start, tokens[low])
        feature.called = tokens[low].key
        mark_count(feature)
        feature.take_all("another")  # its noun says so
        yield feature


def _with_adjectives(tokens: list[Token], k: int, kind: str) -> int:
    """Where the words of a noun begin: a colour or the like right before it goes with it.

    So does the width of a fringe: "green 24 deep with a 3 yard collar".
    """
    fringe = kind == "fringe"
    while k > 0 and (tokens[k - 1].key in ADJECTIVES or (fringe and tokens[k - 1].kind == "number")):
        k -= 1
    return k


def _as_mark(tokens: list[Token]) -> int | None:
    """Number of words of a segment that ends in "as (a) mark"; None for others."""
    keys = [t.key for t in tokens if t.key not in FILLERS]
    return len(tokens) if keys[-2:] == ["as", "mark"] and len(keys) > 2 else None


def _mark(text: str, tokens: list[Token], head: Token) -> Feature:
    """A mark: its name runs up to the first number, side or word of place."""
    tokens = [t for t in tokens if t.key not in ("as",)]
    stop = 0
    while stop < len(tokens) and tokens[stop].kind in ("word", "text") and tokens[stop].key not in NAME_ENDS:
        stop += 1
    name = text[tokens[0].start : tokens[stop - 1].end] if stop else ""
    words = [w for w in name.strip('"“”').split() if w.casefold() not in ("a", "an", "the")]
    feature = _feature(text, "mark", " ".join(words), tokens[stop:], 0, tokens[0] if tokens else head)
    every = sorted([*tokens, head], key=lambda t: t.start)
    feature.text = text[every[0].start : every[-1].end]
    return feature


def _with_names(text: str, tokens: list[Token]) -> list[Token]:
    """Words behind "called" or "named", up to a number or a side, made one text."""
    for k, token in enumerate(tokens):
        if token.kind != "word" or token.key not in ("called", "named"):
            continue
        stop = k + 1
        while stop < len(tokens) and tokens[stop].kind == "word" and tokens[stop].key not in NAME_ENDS:
            stop += 1
        if stop == k + 1:
            if stop < len(tokens) and tokens[stop].kind == "text":
                return tokens
            raise token.error("what? A name goes behind it")
        name = " ".join(text[tokens[k + 1].start : tokens[stop - 1].end].split())
        whole = replace(token, kind="text", shown=name, key=name, end=tokens[stop - 1].end)
        return [*tokens[:k], whole, *tokens[stop:]]
    return tokens


def _green_edge(text: str, tokens: list[Token]) -> Feature | None:
    """ "front of green 360": a reading of the green itself."""
    words = [t for t in tokens if t.key not in (*FILLERS, "edge", "at")]
    keys = [t.key for t in words]
    if (
        len(words) == 4
        and keys[0] in ("front", "back")
        and keys[1:3] == ["of", "green"]
        and words[3].kind == "number"
    ):
        return _feature(text, "green", "green", [words[0], words[3]], 0, words[2])
    return None


def _feature(
    text: str, kind: str, noun: str, tokens: list[Token], before: int, head: Token | None = None
) -> Feature:
    every = sorted([*tokens, *([head] if head else [])], key=lambda t: t.start)
    feature = Feature(kind, noun, head or every[0])
    feature.text = text[every[0].start : every[-1].end]
    for part in (tokens[:before], tokens[before:]):
        feature.said += [one for told in read_said(text, part) for one in _far_from_green(told)]
    return feature


def _far_from_green(one: Said) -> list[Said]:
    """ "130 from the green on the left" is short of it and left of the line: nothing is so far beside it."""
    number = one.numbers.get("a")
    if one.what == "out_at" and "s" in one.words:  # "left 100 out"
        return [replace(one, words={}), replace(one, what="side", numbers={})]
    far = number is not None and number.value / (3.0 if number.unit == "ft" else 1.0) > FARTHEST_BESIDE_YD
    if one.what != "beside_green" or not far or "from" not in one.shown.casefold():
        return [one]
    return [replace(one, what="short_green", words={}), replace(one, what="side", numbers={})]
