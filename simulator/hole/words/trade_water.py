"""Ways of speaking of water: streams that turn, water on several sides of the green, up to the fairway."""

from __future__ import annotations

from dataclasses import replace

from simulator.hole.words.assumed import GREEN_GAP
from simulator.hole.words.lex import Token, listed
from simulator.hole.words.tokenruns import SIDES, as_words, key_of, noun_at, number_at, phrase_at, runs
from simulator.hole.words.vocabulary import FILLERS

_ENDS = frozenset(listed("front back short long behind"))
_ROUND_GREEN = {"left": "left", "right": "right", "short": "short", "front": "short", "long": "behind",
                "behind": "behind", "back": "behind"}  # fmt: skip
_GOES = frozenset(listed("runs running turns goes continues comes flows then and before it back"))
_CROSSES = frozenset(listed("crosses cross crossing across cuts cutting"))
_TOUCHES = (
    "hugging", "hugs", "tight to", "tight against", "hard against", "right up to", "right against", "against",
    "touching", "bordering",
)  # fmt: skip


def stream_that_turns(tokens: list[Token]) -> list[Token]:
    """A stream beside the line and across it is two: "down the left then crosses in front of the green"."""
    out: list[Token] = []
    for run in runs(tokens):
        heads = [(k, *noun_at(run, k)) for k in range(len(run)) if noun_at(run, k)[0]]
        nouns = [one for one in heads if one[2] not in ("green", "fairway", "tee", "pin", "path", "trees")]
        if len(nouns) == 1 and nouns[0][2] == "stream":
            out += _two_streams(run, nouns[0][0], nouns[0][1])
        else:
            out += run
    return out


def _two_streams(run: list[Token], k: int, size: int) -> list[Token]:
    """The two parts of such a stream; the run as it is of any other."""
    # "cuts across" is one crossing
    cross = [j for j, one in enumerate(run) if one.key in _CROSSES and not (j and run[j - 1].key in _CROSSES)]
    beside = [j for j, one in enumerate(run) if key_of(one) in SIDES]
    joint = [j for j, one in enumerate(run) if j > k and (one.kind == "and" or one.kind == "soft"
                                                         or one.key in ("before", "then"))]  # fmt: skip
    if len(cross) != 1 or len(beside) != 1 or any(key_of(one) == "diagonal" for one in run):
        return run
    low, high = sorted((cross[0], beside[0]))
    between = [j for j in joint if low < j < high]
    if not between:
        return run
    start = between[-1]  # ", and then" is one joint; what stands before it ("edge 22") is of the first part
    while start - 1 in between:
        start -= 1
    head, first, second = run[k : k + size], run[:start], run[between[-1] + 1 :]
    ends = [second.pop()] if second and second[-1].kind == "hard" else []
    crossing = second if cross[0] > beside[0] else first
    at = next((one for one in crossing if one.kind == "number"), None)
    joint_at = run[start]
    there = [replace(one, start=joint_at.start, end=joint_at.start) for one in head]
    if crossing is second:  # down a side as far as it crosses
        until = [] if at is None else [*as_words(joint_at, ", to"), at]
        if at is None:
            until = [*as_words(joint_at, ", to"), number_at(joint_at, GREEN_GAP["stream"], "yd"),
                     *as_words(joint_at, "short of the green")]  # fmt: skip
        first = first if any(one.kind == "number" and key_of(first[j - 1]) == "to"
                             for j, one in enumerate(first)) else [*first, *until]  # fmt: skip
        second = [*there, *_plain(second)]
    else:
        rest = _plain(second)
        begun = at is None or any(key_of(one) == "from" for one in rest)
        since = [] if at is None or begun else [*as_words(joint_at, "from"), at]
        second = [*there, *_plain(rest), *since]
        if since and not any(key_of(a) == "to" for a in rest):
            second += as_words(joint_at, "to the green")
    return [*first, *as_words(joint_at, ";"), *second, *ends]


def _plain(words: list[Token]) -> list[Token]:
    """Without the verb that a part of a stream begins with."""
    while words and words[0].key in _GOES:
        words = words[1:]
    return words


def round_the_back(tokens: list[Token]) -> list[Token]:
    """ "Water down the left and round the back of the green" lies behind it too."""
    out: list[Token] = []
    k = 0
    while k < len(tokens):
        rest = [one.key for one in tokens[k : k + 6]]
        words = [key for key in rest if key not in ("the", "of")]
        ends = (["back", "green"], ["front", "green"])
        around = words[:1] in (["round"], ["around"]) and words[1:3] in ends
        noun = _noun_before(tokens, k) if around else []
        if noun:
            used = next(j for j in range(k, len(tokens)) if tokens[j].key == "green") + 1
            while out and out[-1].kind in ("and", "soft"):
                out.pop()
            where = "behind the green" if words[1] == "back" else "in front of the green"
            here = [replace(one, start=tokens[k].start, end=tokens[k].start) for one in noun]
            out += [*as_words(tokens[k], ";"), *here, *as_words(tokens[k], where)]
            k = used
        else:
            out.append(tokens[k])
            k += 1
    return out


def _noun_before(tokens: list[Token], k: int) -> list[Token]:
    """The noun of the last area spoken of before k, within the same full break."""
    for j in range(k - 1, -1, -1):
        if tokens[j].kind == "hard":
            break
        size, kind = noun_at(tokens, j)
        if size and kind in ("water", "stream", "trees", "heavy_rough"):
            return tokens[j : j + size]
    return []


def sides_of_the_green(tokens: list[Token]) -> list[Token]:
    """ "Water left, right and behind the green" are three; a peninsula green is one with water told so."""
    out: list[Token] = []
    around = False
    k = 0
    while k < len(tokens):
        size, kind = noun_at(tokens, k)
        stop, places, green = _places(tokens, k + size)
        if size and kind in ("water", "heavy_rough", "trees") and len(places) > 1 and green:
            noun = tokens[k : k + size]
            for n, place in enumerate(places):
                words = "behind the green" if place == "behind" else f"{place} of the green"
                out += [*(as_words(tokens[k], ";") if n else []), *noun, *as_words(tokens[k], words)]
            k, around = stop, around or kind == "water"
        else:
            out.append(tokens[k])
            k += 1
    if around:
        out = [one for one in out if one.key != "peninsula"]
    return out


def _places(tokens: list[Token], k: int) -> tuple[int, list[str], bool]:
    """Sides of the green named one after another from k: where they end, which, whether all is told."""
    places: list[str] = []
    green = False
    j = k
    while j < len(tokens) and tokens[j].kind != "hard":
        key = tokens[j].key
        if key_of(tokens[j]) in _ROUND_GREEN and tokens[j].kind == "word":
            ends = {key_of(tokens[j]), key_of(tokens[j - 1])} & _ENDS
            if places and ends and tokens[j - 1].key in _ROUND_GREEN:
                return k, [], False  # "short right" is one place
            places.append(_ROUND_GREEN[key_of(tokens[j])])
        elif key == "green" and places:
            green = True
            j += 1
            break
        elif tokens[j].kind not in ("soft", "and") and key not in (*FILLERS, "of", "to", "on"):
            return k, [], False
        j += 1
    told = green or "behind" in places or "short" in places
    return j, list(dict.fromkeys(places)), told and (j == len(tokens) or green or tokens[j].kind == "hard")


def touching(tokens: list[Token]) -> list[Token]:
    """ "Lake left hugging the fairway" has its edge there."""
    out: list[Token] = []
    k = 0
    while k < len(tokens):
        size = phrase_at(tokens, k, _TOUCHES)
        behind = k + size
        while size and behind < len(tokens) and tokens[behind].key in FILLERS:
            behind += 1
        if size and behind < len(tokens) and tokens[behind].key == "fairway":
            out += [*as_words(tokens[k], ", edge"), number_at(tokens[k], 0.0)]
            out += as_words(tokens[k], "from fairway ,")
            k = behind + 1
        else:
            out.append(tokens[k])
            k += 1
    return out
