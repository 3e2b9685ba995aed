"""Short ways of jotting a hole, put into words of the grammar: "bunker through the fairway", "falls away"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from simulator.hole.words.lex import Token, listed
from simulator.hole.words.tokenruns import BREAKS, SIDES, as_words, key_of, noun_at, runs
from simulator.hole.words.vocabulary import FILLERS

_RUNS_OFF = frozenset(listed("runs falls slopes drops tilts falling sloping running goes slope fall"))
_ENDS = frozenset(listed("front back left right"))
_SHORT = frozenset(listed("short before in"))
_BY_EDGE = frozenset(("tree", "trees", "water", "heavy_rough"))
"""What stands off the fairway unless it is said to stand at its edge; a bunker does so anyway."""


def falls_away(tokens: list[Token]) -> list[Token]:
    """A green that "runs away to the back left" falls there; one that only falls away falls to the back."""
    out: list[Token] = []
    for run in runs(tokens, BREAKS):
        at = next((k for k, one in enumerate(run) if one.key == "away"), None)
        green = any(noun_at(run, k)[1] == "green" for k in range(len(run)))
        if at is None or not green or not at or run[at - 1].key not in _RUNS_OFF:
            out += run
            continue
        told = any(key_of(one) in _ENDS for one in run[at:])
        rest = run[at + 1 :] if told else [*as_words(run[at], "to back"), *_break_of(run)]
        out += [*run[: at - 1], replace(run[at - 1], key="falls"), *rest]
    return out


def _break_of(run: list[Token]) -> list[Token]:
    return [run[-1]] if run[-1].kind in BREAKS else []


def through_the_fairway(tokens: list[Token]) -> list[Token]:
    """What lies through the fairway of a dogleg lies outside its corner; a side that is said is the side."""
    bend = any(noun_at(tokens, k)[1] == "bend" for k in range(len(tokens)))
    out: list[Token] = []
    for run in runs(tokens):
        at = next((k for k, one in enumerate(run) if one.key == "through" and _is_fairway(run, k + 1)), None)
        if at is None or not bend:
            out += run
            continue
        end = next(k for k in range(at, len(run)) if run[k].key == "fairway") + 1
        nouns = [k for k in range(len(run)) if noun_at(run, k)[0] and not at < k < end]
        low = max((k for k in nouns if k < at), default=0)
        high = min((k for k in nouns if k >= end), default=len(run))
        sided = any(key_of(one) in SIDES for one in [*run[low:at], *run[end:high]])
        out += [*run[:at], *([] if sided else as_words(run[at], "outside corner")), *run[end:]]
    return out


def _is_fairway(run: list[Token], k: int) -> bool:
    """Whether "fairway" stands at k, behind an article or none."""
    return [one.key for one in run[k : k + 2] if one.key != "the"][:1] == ["fairway"]


def narrows_there(tokens: list[Token]) -> list[Token]:
    """ "Narrows at 230 to 18" is "narrows to 18 at 230"."""
    out: list[Token] = []
    for token in tokens:
        out.append(token)
        verb, *_ = [key_of(one) for one in out[-5:-4]] or [""]
        run = out[-4:]
        told = [key_of(one) for one in run[::2]] == ["at", "to"]
        sized = told and all(one.kind == "number" for one in run[1::2])
        if verb in ("narrows", "widens", "pinches") and sized:
            out[-4:] = [*run[2:], *run[:2]]
    return out


def a_drop_of(tokens: list[Token]) -> list[Token]:
    """ "A drop of 15 yards" from tee to green is downhill 15."""
    out: list[Token] = []
    for k, token in enumerate(tokens):
        behind = [one.kind if one.kind == "number" else one.key for one in tokens[k + 1 : k + 3]]
        if token.key == "drop" and behind == ["of", "number"]:
            out.append(replace(token, key="drops"))
        elif not (token.key == "of" and out and out[-1].key == "drops"):
            out.append(token)
    return out


def stream_crosses_again(tokens: list[Token]) -> list[Token]:
    """A stream that "crosses at 270 and again 60 short of the green" is drawn twice."""
    out: list[Token] = []
    for run in runs(tokens):
        heads = [(k, *noun_at(run, k)) for k in range(len(run)) if noun_at(run, k)[1] == "stream"]
        for k, token in enumerate(run):
            rest = [one for one in run[k + 1 :] if one.key not in FILLERS]
            number = bool(rest) and rest[0].kind == "number"
            short = bool(rest[number:]) and rest[number].key in _SHORT
            told = len(heads) == 1 and any(one.kind == "number" for one in run[heads[0][0] : k])
            if token.kind == "and" and short and told:
                noun = run[heads[0][0] : heads[0][0] + heads[0][1]]
                out += as_words(token, ";") + [replace(one, start=token.start, end=token.end) for one in noun]
            else:
                out.append(token)
    return out


def at_the_edge(tokens: list[Token]) -> list[Token]:
    """An oak at the "left edge of the fairway" stands on it, and a pond there begins at it."""
    out: list[Token] = []
    for run in runs(tokens, BREAKS):
        kinds = [noun_at(run, k)[1] for k in range(len(run))]
        kind = next((one for one in kinds if one and one != "fairway"), "")
        at = next(
            (k for k, (a, b) in enumerate(pairwise(run)) if key_of(a) in SIDES and b.key == "edge"
             and [one.key for one in run[k + 2 : k + 5] if one.key not in ("of", "the")][:1] == ["fairway"]),
            None,
        )  # fmt: skip
        if at is None or kind not in _BY_EDGE:
            out += run
            continue
        end = next(k for k in range(at, len(run)) if run[k].key == "fairway") + 1
        side, edge = run[at : at + 2]
        nought = replace(edge, kind="number", key="0", shown="0", value=0.0, unit="")
        lead = run[:at]
        while lead and key_of(lead[-1]) in (*FILLERS, "on", "at", "down", "along"):
            lead.pop()
        out += [*lead, nought, side, *as_words(edge, "of fairway"), *run[end:]]
    return out
