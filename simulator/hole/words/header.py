"""The hole as a whole: par, length, units, bends, stroke index, bearing, name."""

from __future__ import annotations

from simulator.errors import UsageError
from simulator.hole.legs import MOST_TURN_DEG
from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft
from simulator.hole.words.feature import Feature, Said, Units, need, plain
from simulator.hole.words.lex import Token
from simulator.hole.words.vocabulary import HEADER

UNNAMED = "My hole"
"""Name of a hole that is given none."""

LEAST_LENGTH = 40.0
"""A number of the header from here on is the length of the hole."""


def read_header(features: list[Feature]) -> Draft:
    """Par, length and units of a hole, and what else is said of all of it; takes its features away.

    Raises
    ------
    UsageError
        No par, no length, or either twice.
    """
    header = [f for f in features if f.kind in HEADER and f.kind != "climb"]
    header += [_length_of_climb(f) for f in features if f.kind == "climb"]
    features[:] = [f for f in features if f not in header]
    par, length = _par_and_length(header, features)
    unit = _unit(header, length)
    units = Units(unit)
    draft = Draft(units, "", int(par.value), units.yd(length))
    if unit == "m" and length.unit == "m" and not any(f.kind == "units" for f in header):
        draft.assumed.append("Numbers without a unit are metres, as the length of the hole is.")
    names = [said for f in header for said in f.take_all("named")]
    need(len(names) < 2, names[-1].token if names else par, "is a second name of the hole")
    if names:
        draft.name = names[0].numbers["a"].key
    else:
        draft.name = UNNAMED
        draft.top_assumed.append("name")
    for feature in header:
        _read(feature, draft)
        feature.finish()
    draft.turns.sort()
    for before, after in zip(draft.turns, draft.turns[1:], strict=False):
        if after[0] - before[0] < 1.0:
            raise UsageError(f"hole in words: two bends at {units.shown(after[0])}; say where each is")
    return draft


def _length_of_climb(climb: Feature) -> Feature:
    """ "440 uphill 30 ft" is a length and a climb: the number before the word is the hole's."""
    apart = Feature("hole", "hole", climb.token)
    for one in list(climb.said):
        far = one.what == "bare" and one.numbers["a"].unit != "ft" and one.numbers["a"].value >= LEAST_LENGTH
        if far and one.token.start < climb.token.start:
            climb.said.remove(one)
            apart.said.append(one)
    return apart


def _par_and_length(header: list[Feature], others: list[Feature]) -> tuple[Token, Token]:
    par: Token | None = None
    lengths: list[Token] = []
    for feature in header:
        bare = feature.take_all("bare", "long")
        for said in bare:
            token = said.numbers["a"]
            if feature.kind == "par" and par is not None and token.value < 10.0:
                raise token.error(f"is a second par (the first is {par.shown})")
            if (
                feature.kind == "par"
                and said.token.start > feature.token.start
                and par is None
                and token.value < 10.0
            ):
                par = token
                need(
                    token.value in (3.0, 4.0, 5.0, 6.0) and not token.unit,
                    token,
                    "is no par; allowed: 3 to 6",
                )
            elif feature.kind in ("stroke_index", "bearing", "bend", "number") and said is _own(
                feature, bare
            ):
                feature.said.append(said)
            else:
                lengths.append(token)
        if feature.kind == "par" and par is None:
            raise feature.token.error("without a number; allowed: par 3, par 4, par 5, par 6")
    if par is None:
        raise UsageError('hole in words: no par; say for example "par 4, 372; fairway 28 wide"')
    if not lengths:
        everything = [said for feature in (*header, *others) for said in feature.said]
        for said in (one for one in everything if one.what == "behind_green" and one.numbers):
            # "165 over water"
            raise said.token.error(f"({said.shown}): say the length alone, and where what lies there is")
        raise par.error('is the par; how long is the hole? For example "par 4, 372"')
    need(
        lengths[0].value >= LEAST_LENGTH,
        lengths[0],
        f"is too short for a hole; allowed: {LEAST_LENGTH:g} or more",
    )
    need(len(lengths) == 1, lengths[-1],
         f"is a second length of the hole (the first is {lengths[0].shown}); another tee has its colour: "
         f'"red tee {lengths[-1].shown}"')  # fmt: skip
    return par, lengths[0]


def _own(feature: Feature, bare: list[Said]) -> Said:
    """The number that belongs to a header word: the first behind it, else the first."""
    behind = [said for said in bare if said.token.start > feature.token.start]
    return (behind or bare)[0]


def _unit(header: list[Feature], length: Token) -> str:
    for feature in header:
        if feature.kind == "units":
            return "m" if "met" in feature.noun else "yd"
    return "m" if length.unit == "m" else "yd"


def _read(feature: Feature, draft: Draft) -> None:
    if feature.kind == "stroke_index":
        draft.top["stroke_index"] = int(plain(_number(feature), 1.0, 18.0, "stroke index"))
    elif feature.kind == "bearing":
        draft.top["bearing_deg"] = plain(_number(feature), 0.0, 360.0, "compass bearing")
    elif feature.kind == "number":
        number = int(plain(_number(feature), 1.0, 99.0, "number of a hole"))
        if draft.name == UNNAMED:
            draft.name = f"Hole {number}"
            draft.top_assumed.remove("name")
    elif feature.kind == "e5":
        draft.top["local_rule_e5"] = True
    elif feature.kind == "bend":
        _bend(feature, draft)


def _number(feature: Feature) -> Token:
    said = feature.take("bare", "degrees")
    if said is None:
        raise feature.token.error("without a number")
    return said.numbers["a"]


def _bend(feature: Feature, draft: Draft) -> None:
    """A turn of the line: "left 40 at 230", "dogleg left at 230", "bends slightly right"."""
    at, degrees, sharp = feature.take("at"), feature.take("degrees"), feature.take("sharpness")
    out = feature.take("out_at")  # so far from the middle of the green
    need(at is None or out is None, feature.token, "is placed twice along the line")
    side = feature.take("side", "side_number", "offset")
    bare = feature.take("bare")
    if side is None:
        raise feature.token.error("which way? Say left or right")
    number = side.numbers.get("a") or (bare.numbers["a"] if bare else None)
    if number is not None and at is None and number.value > MOST_TURN_DEG:
        at, number = side if side.numbers else bare, None  # "dogleg left 230"
    elif bare is not None and side.numbers:  # "dogleg 30 left 220"
        need(at is None and bare.numbers["a"].value > MOST_TURN_DEG, bare.numbers["a"],
             "of what? Say where it bends \"at 230\" and how far it turns, \"left 30\"")  # fmt: skip
        at = bare
    if degrees is not None or number is not None:
        need(degrees is None or number is None, side.token, "has two sizes of turn")
        token = degrees.numbers["a"] if degrees is not None else number
        assert token is not None
        turn = plain(token, 0.0, MOST_TURN_DEG, "turn in degrees")
    else:
        usual = a.DOGLEG_DEG if feature.noun.startswith("dog") else a.BEND_DEG
        word = sharp.words["word"] if sharp else ""
        turn = {"slight": a.SLIGHT_DEG, "sharp": a.SHARP_DEG}.get(word, usual)
        draft.assumed.append(f"The line turns {turn:g} degrees {side.words['s']}: the words give no degrees.")
        draft.top_assumed.append("turn_deg")
    where = at or out
    if where is not None:
        told = draft.units.yd(where.numbers["a"])
        station = told if out is None else draft.length_yd - told
        need(1.0 < station < draft.length_yd - 1.0, where.numbers["a"], "is not between tee and green")
    else:
        station = round(max(a.BEND_SHARE * draft.length_yd, draft.length_yd - a.BEND_TO_GREEN))
        draft.assumed.append(f"The line bends at {draft.units.shown(station)}: the words do not say where.")
        draft.top_assumed.append("at")
    draft.turns.append((station, turn if side.words["s"] == "right" else -turn))
