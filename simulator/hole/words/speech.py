"""Turns of speech put into the words of the grammar: "inside the corner", "green guarded by bunkers"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from simulator.hole.words.cardtees import by_the_card
from simulator.hole.words.corners import each_corner, round_the_corner
from simulator.hole.words.falsefront import false_fronts
from simulator.hole.words.lex import Token, listed
from simulator.hole.words.readings import green_readings
from simulator.hole.words.tokenruns import key_of
from simulator.hole.words.trade import in_plain_words
from simulator.hole.words.vocabulary import FILLERS, HEADS, LONGEST_HEAD

_BENDS = frozenset(listed("corner corners bend dogleg turn elbow"))
_BUNKERS = frozenset(
    head for head, kind in HEADS.items() if kind == "bunker" and head[-1].endswith("s")
)
_TWO = frozenset(("pair", "couple"))
_ORDINALS = frozenset(("st", "nd", "rd", "th"))
_OTHER = {"left": "right", "right": "left"}
_SAYS_SIZE = {
    "narrow": frozenset(("wide",)), "tight": frozenset(("wide",)), "generous": frozenset(("wide",)),
    "shallow": frozenset(("deep",)),
}  # fmt: skip
"""Words for a size, and the one behind a number that tells it."""

_FALLS_AWAY = frozenset(listed("drops drop downhill falls descends"))
_RISES = frozenset(listed("climbs climb uphill rises"))
_OF_TEE_SHOTS = frozenset(listed("tee shot fairway from off to down up by plays"))

_ROUND = frozenset(listed("round around surrounds surrounding encircles encircling"))
_ENCIRCLES = ("encircling", "green")
_GUARDED = frozenset(listed("guarded protected defended"))
_OUT = frozenset((("out",), ("ob",), ("oob",), listed("out of bounds")))
_ALONG = frozenset(listed("along beyond over past by at is marked beside"))


def in_grammar(tokens: list[Token]) -> list[Token]:
    """The same hole with these turns of speech in words that the grammar has."""
    tokens = false_fronts(round_the_corner(_corner_to_corner(in_plain_words(tokens))))
    begun = _tee_shot(green_readings(by_the_card(_which_hole(tokens))))
    plain = _told_sizes(_pin_high(_pairs(_coloured(_plainly(begun)))))
    return _guarded(_one_boundary(_at_the_bend(each_corner(_island(_sides_apart(_both_sides(plain)))))))


def _corner_to_corner(tokens: list[Token]) -> list[Token]:
    """ "Falls from back left to front right" is "falls front right"."""
    ends = {"front": "back", "back": "front"} | _OTHER
    out: list[Token] = []
    for token in tokens:
        out.append(token)
        keys = [key_of(one) for one in out[-5:]]
        if len(keys) == 5 and keys[2] == "to" and [ends.get(key) for key in keys[:2]] == keys[3:]:
            out[-5:] = out[-2:]
            if len(out) > 2 and key_of(out[-3]) == "from":  # falls from the back to the front
                del out[-3]
    return out


def _which_hole(tokens: list[Token]) -> list[Token]:
    """Begun with "the 7th" or "no 7", the words are about hole 7."""
    start = 1 if tokens and tokens[0].key == "the" else 0
    first = tokens[start : start + 2]
    if [token.kind for token in first] == ["number", "word"] and first[1].key in _ORDINALS:
        number, word = first
    elif [token.kind for token in first] == ["word", "number"] and first[0].key in ("no", "number"):
        word, number = first
    else:
        return tokens
    rest = tokens[start + 2 :]
    said_hole = rest[:1] and rest[0].key == "hole"
    return [replace(word, key="hole"), number, *(rest[1:] if said_hole else rest)]


def _tee_shot(tokens: list[Token]) -> list[Token]:
    """ "Drops 40 feet from tee to fairway" and "tee shot downhill 12" are a fairway so far below the tee."""
    out: list[Token] = []
    run: list[Token] = []
    for token in [*tokens, None]:
        if token is not None and not _is_break(token):
            run.append(token)
            continue
        keys = {one.key for one in run if one.kind == "word"}
        falls = [one for one in run if one.key in _FALLS_AWAY | _RISES]
        sizes = [one for one in run if one.kind == "number"]
        told = "fairway" in keys or {"tee", "shot"} <= keys or {"tee", "off"} <= keys
        rest = keys - _FALLS_AWAY - _RISES - _OF_TEE_SHOTS - set(FILLERS)
        if told and len(falls) == len(sizes) == 1 and not rest:
            way = "below" if falls[0].key in _FALLS_AWAY else "above"
            fairway, *over = (replace(falls[0], key=key) for key in ("fairway", way, "tee"))
            run = [fairway, *sizes, *over]
        out += run if token is None else [*run, token]
        run = []
    return out


def _pairs(tokens: list[Token]) -> list[Token]:
    """ "A pair of bunkers" are two."""
    out: list[Token] = []
    for k, token in enumerate(tokens):
        of = [one.key for one in tokens[k + 1 : k + 4]]
        if token.key in _TWO and of[:1] == ["of"] and any((one,) in _BUNKERS for one in of[1:]):
            out.append(replace(token, kind="number", value=2.0))
        elif not (out and token.key == "of" and out[-1].key in _TWO):
            out.append(token)
    return out


def _plainly(tokens: list[Token]) -> list[Token]:
    """ "Trees line the left side" stand there, "straight across" is across, "230 to the corner" at 230."""
    out: list[Token] = []
    bend = any(HEADS.get((token.key,)) == "bend" for token in tokens)
    k = 0
    while k < len(tokens):
        token, k = tokens[k], k + 1
        behind = [key_of(one) for one in tokens[k : k + 3]]
        following = behind[0] if behind else ""
        of_trees = bool(out) and HEADS.get((out[-1].key,)) == "trees"
        near = following == "behind" or behind[:2] == ["in", "front"]
        alone = not out or (out[-1].kind == "word" and key_of(out[-1]) not in _OTHER)
        if token.key in ("right", "straight") and near and alone:  # "right behind the green" is behind it
            continue
        if token.key in ("narrows", "widens") and following == "from":  # "narrows from 35 to 22 at 260"
            told = tokens[k + 1 : k + 3]
            if [one.kind for one in told] == ["number", "word"] and told[1].key == "to":
                out += [told[0], replace(told[1], key="wide"), replace(told[1], kind="soft", key=","), token]
                k += 2
                continue
        if token.key == "shot" and following in ("over", "across"):  # "second shot over a lake 300 to 380"
            while out and key_of(out[-1]) in ("tee", "approach", *FILLERS):
                out.pop()
            continue
        lines = of_trees and token.key in ("line", "lines") and following in (*_OTHER, "the", "both", "each")
        if lines or (token.key == "straight" and following == "across"):
            continue
        if bend and token.kind == "number" and following == "to" and "corner" in behind[1:]:
            out.append(replace(token, kind="word", key="at"))
            k += behind.index("corner") + 1
        out.append(token)
    return out


def _told_sizes(tokens: list[Token]) -> list[Token]:
    """ "A shallow green 14 deep", "a narrow green 12 wide": the number says it."""
    out: list[Token] = []
    for k, token in enumerate(tokens):
        run = tokens[k : next((j for j in range(k, len(tokens)) if _goes_over(tokens, j)), len(tokens))]
        sizes = {b.key for a, b in pairwise(run) if a.kind == "number"}
        if token.key == "long" and "deep" in sizes and run[1].key in ("narrow", "green"):
            continue
        if token.kind != "word" or not _SAYS_SIZE.get(token.key, frozenset()) & sizes:
            out.append(token)
    return out


def _goes_over(tokens: list[Token], k: int) -> bool:
    """Whether another feature begins behind a break at k."""
    noun = k + 1 < len(tokens) and (tokens[k + 1].key,) in HEADS
    return tokens[k].kind == "hard" or (_is_break(tokens[k]) and noun)


def _pin_high(tokens: list[Token]) -> list[Token]:
    """ "Pin high on the left" is beside the green."""
    out: list[Token] = []
    for token in tokens:
        if token.key == "high" and out and out[-1].key in ("pin", "flag", "hole"):
            out[-1] = replace(out[-1], key="at")
            out.append(replace(token, key="green"))
        else:
            out.append(token)
    return out


def _coloured(tokens: list[Token]) -> list[Token]:
    """The same words; refuses stakes without a colour, which mark nothing."""
    for k, token in enumerate(tokens):
        behind = tokens[k + 1].key if k + 1 < len(tokens) else ""
        colour = tokens[k - 1].key if k else ""
        if token.key == "stakes" and colour not in ("white", "red", "yellow") and (behind,) not in HEADS:
            raise token.error(
                'of which colour? "white stakes left 30" is out of bounds, "red stakes right 200 to 240" a '
                "penalty area"
            )
    return tokens


def _both_sides(tokens: list[Token]) -> list[Token]:
    """ "25 left and right" is left and right 25; "200 to 260 left and right" is as it stands."""
    out: list[Token] = []
    for k, token in enumerate(tokens):
        out.append(token)
        run = out[-4:]
        keys = [key_of(one) for one in run[1:]]
        ranged = len(out) > 4 and key_of(out[-5]) in ("to", "until", "at", "from")
        told = k + 1 < len(tokens) and tokens[k + 1].kind == "number"
        if keys in (["left", "and", "right"], ["right", "and", "left"]) and run[0].kind == "number":
            if not ranged and not told:
                out[-4:] = [*run[1:], run[0]]
    return out


def _sides_apart(tokens: list[Token]) -> list[Token]:
    """ "Left 40 right 30" and "40 left 30 right" are two, as with a comma between."""
    out: list[Token] = []
    for k, token in enumerate(tokens):
        pairs = [tokens[j] for j in range(k - 2, k + 2) if 0 <= j < len(tokens)]
        keys = [key_of(one) if key_of(one) in _OTHER else one.kind for one in pairs]
        sides = [keys[::2], keys[1::2]]
        if ["number", "number"] in sides and (["left", "right"] in sides or ["right", "left"] in sides):
            out.append(replace(token, kind="soft", key=","))
        out.append(token)
    return out


def _island(tokens: list[Token]) -> list[Token]:
    """ "Island green", "surrounded by water" and "water all round the green" are water that encircles it."""
    out: list[Token] = []
    moats: list[Token] = []
    k = 0
    while k < len(tokens):
        token, k = tokens[k], k + 1
        following = [key_of(one) for one in tokens[k : k + 4]]
        skipped = next((n for n, key in enumerate(following) if key not in (*FILLERS, "by", "with")), 0)
        behind = following[skipped : skipped + 1]
        if key_of(token) == "island" and behind == ["green"]:
            moats.append(replace(token, kind="hard", key=";"))
            moats += [replace(token, key=word) for word in ("water", *_ENCIRCLES)]
        elif token.key in _ROUND and behind == ["green"] and _is_of("water", out):
            while key_of(out[-1]) in ("all", "right", "completely"):
                out.pop()
            out += [replace(token, key=word) for word in _ENCIRCLES]
            k += skipped + 1
        elif token.key in _ROUND and behind == ["green"]:  # the builder asks on which sides
            while out and key_of(out[-1]) in ("all", "completely"):
                out.pop()
            out.append(replace(token, key="round"))
        elif token.key == "surrounded" and HEADS.get(tuple(behind)) == "water":
            while out and (key_of(out[-1]) in FILLERS or _is_break(out[-1])):
                out.pop()
            out += [replace(token, kind="hard", key=";"), tokens[k + skipped]]
            out += [replace(token, key=word) for word in _ENCIRCLES]
            k += skipped + 1
        else:
            out.append(token)
    return out + moats


def _is_of(kind: str, out: list[Token]) -> bool:
    """Whether the words since the last break are about a feature of a kind."""
    run = next((out[k + 1 :] for k in range(len(out) - 1, -1, -1) if _is_break(out[k])), out)
    return any(HEADS.get((one.key,)) == kind for one in run)


def _is_break(token: Token) -> bool:
    return token.kind in ("hard", "soft")


def _bend_of(tokens: list[Token]) -> tuple[str, Token | None]:
    """Side of the bends, "" when they go both ways or there is none; the number that tells where it is."""
    sides, at = set(), []
    for k, token in enumerate(tokens):
        if HEADS.get((token.key,)) != "bend":
            continue
        ends = (j for j in range(k + 1, len(tokens)) if _ends_bend(tokens[j]))
        run = tokens[k + 1 : next(ends, len(tokens))]
        told = [key_of(one) for one in run if key_of(one) in _OTHER]
        if told:
            sides |= set(told)  # "dogleg left at 240, right at 400" are two
            at += [b for a, b in pairwise(run) if a.key == "at" and b.kind == "number"]
    return (sides.pop() if len(sides) == 1 else ""), at[0] if len(at) == 1 else None


def _ends_bend(token: Token) -> bool:
    """Whether what is said of bends is over: a full break, or the noun of something else."""
    return token.kind == "hard" or (token.kind == "word" and (token.key,) in HEADS)


def _at_the_bend(tokens: list[Token]) -> list[Token]:
    """ "On the inside of the corner" is a side of the line, "on the corner" a place along it."""
    side, at = _bend_of(tokens)
    out: list[Token] = []
    for k, token in enumerate(tokens):
        corner = token.kind == "word" and token.key in _BENDS
        told = k + 1 < len(tokens) and not _is_break(tokens[k + 1]) and key_of(tokens[k + 1]) in _OTHER
        back = len(out)
        while back and key_of(out[back - 1]) in (*FILLERS, "of", "at", "on", "in", "round", "around"):
            back -= 1
        lead = out[back:]
        on = any(key_of(one) in ("at", "on", "in", "round", "around") for one in lead)
        if not corner:
            out.append(token)
            continue
        if told:  # "dogleg right" is the bend; "on the corner right" and "on the right corner" lie right
            out = [*out[:back], *_there(out, token, at, tokens[k + 1 :])] if on else [*out, token]
            continue
        if side and at is None and _is_of("bunker", out) and not _is_placed(out, tokens[k + 1 :]):
            raise token.error(f'how far on is it? Say "dogleg {side} at 235", or of the bunker "at 240"')
        if back and out[back - 1].key in ("inside", "outside") and side:
            meant = side if out[back - 1].key == "inside" else _OTHER[side]
            rest = out[: back - 1]
            while rest and key_of(rest[-1]) in (*FILLERS, "on", "at"):
                rest.pop()
            out = [*rest, replace(out[back - 1], key=meant), *_there(rest, token, at, tokens[k + 1 :])]
        elif side and at is not None and on and _is_inside(out, lead):  # where it is cut
            place = _there(out, token, at, tokens[k + 1 :], round_it=_is_of("trees", out))
            out = [*out[:back], replace(token, key=side), *place]
        elif on and at is not None:
            out = [*out[:back], replace(token, key="at"), replace(at, start=token.start, end=token.end)]
        else:
            out.append(token)
    return out


def _there(
    before: list[Token], corner: Token, at: Token | None, behind: list[Token], *, round_it: bool = True
) -> list[Token]:
    """The place of what lies at a corner, unless a number of its own says it: an area may go round it."""
    if at is None or _is_placed(before, behind):
        return []
    word = "corner" if round_it and not _is_of("bunker", before) and not _is_of("tree", before) else "at"
    return [replace(corner, key=word), replace(at, start=corner.start, end=corner.end)]


def _is_inside(before: list[Token], lead: list[Token]) -> bool:
    """What is "in the corner", and trees "on the corner" without a side; a bunker there is in the way."""
    sided = any(key_of(one) in (*_OTHER, "both") for one in before[-4:])
    return any(key_of(one) == "in" for one in lead) or (_is_of("trees", before) and not sided)


def _is_placed(before: list[Token], behind: list[Token]) -> bool:
    """Whether a number between two features says where this one is; without one it is at the corner."""
    start = next((j for j in range(len(before) - 1, -1, -1) if _is_break(before[j])), -1)
    ends = (j for j, one in enumerate(behind) if one.kind == "hard" or (one.key,) in HEADS)
    run = before[start + 1 :]
    return any(one.kind == "number" for one in [*run, *behind[: next(ends, len(behind))]])


def _one_boundary(tokens: list[Token]) -> list[Token]:
    """ "Out of bounds along the road right" and "the road right is out of bounds" are the road right."""
    out: list[Token] = []
    run: list[Token] = []
    for token in [*_unbracketed(tokens), None]:
        if token is None or _is_break(token):
            out += _road_alone(run)
            if token is not None:
                out.append(token)
            run = []
        else:
            run.append(token)
    return out


def _unbracketed(tokens: list[Token]) -> list[Token]:
    """ "OB right (fence) 35": what marks a boundary, or that it is one, without its brackets."""
    out: list[Token] = []
    k = 0
    while k < len(tokens):
        within = range(k + 1, min(k + 2 + LONGEST_HEAD, len(tokens)))
        end = next((j for j in within if tokens[j].key == ")"), k)
        inside = tokens[k + 1 : end]
        if tokens[k].key == "(" and HEADS.get(tuple(one.key for one in inside)) == "out":
            out += inside
            k = end + 1
        else:
            out.append(tokens[k])
            k += 1
    return out


def _road_alone(run: list[Token]) -> list[Token]:
    """One run of words without "out of bounds" where a road, a fence or the like says it too.

    A hedge alone is a hedge: beside "out of bounds" it is what marks it.
    """
    hedge = next((k for k, one in enumerate(run) if one.key == "hedge"), None)
    if hedge is not None and any(one.key in ("ob", "oob") for one in run[hedge + 1 : hedge + 2]):
        run = run[:hedge] + run[hedge + 1 :]
    heads: list[tuple[int, int]] = []
    k = 0
    while k < len(run):
        size = next(
            (
                size
                for size in range(min(LONGEST_HEAD, len(run) - k), 0, -1)
                if HEADS.get(tuple(one.key for one in run[k : k + size])) == "out"
            ),
            0,
        )
        if size:
            heads.append((k, k + size))
        k += size or 1
    general = [one for one in heads if tuple(t.key for t in run[one[0] : one[1]]) in _OUT]
    if len(heads) != 2 or len(general) != 1:
        return run
    (low, high), other = general[0], next(one for one in heads if one not in general)
    joined = run[high : other[0]] if low < other[0] else run[other[1] : low]
    if low < other[0] and any(one.kind == "number" for one in joined):
        return run  # "out left 30 and a road right 40" are two
    if low < other[0]:
        while joined and (joined[-1].key in _ALONG or joined[-1].key in FILLERS):
            joined.pop()
        return run[:low] + joined + run[other[0] :]
    while low > other[1] and (run[low - 1].key in FILLERS or run[low - 1].key in ("is", "as", "marked")):
        low -= 1
    return run[:low] + run[high:]


def _guarded(tokens: list[Token]) -> list[Token]:
    """ "Green guarded by two bunkers left and right": the bunkers are greenside ones."""
    out: list[Token] = []
    by = False
    for k, token in enumerate(tokens):
        if by and token.key in ("bunker", "bunkers", "trap", "traps"):
            out.append(replace(token, key="greenside"))
            by = False
        behind = tokens[k + 1].key if k + 1 < len(tokens) else ""
        if token.key in _GUARDED and behind in ("by", "with"):
            out.append(replace(token, kind="soft", key=","))
            by = True
        elif not (by and token.key in ("by", "with") and tokens[k - 1].key in _GUARDED):
            out.append(token)
        by = by and not _is_break(token)
    return out
