"""Firmness of fairways and greens in words or numbers."""

from __future__ import annotations

import re

from ..errors import UsageError
from ..physics.ground import FIRMNESS as ROWS
from ..toml_text import short_line
from ..wording import by_word
from .model import FIRMNESS
from .text import clean

WORDS: dict[str, float] = {
    **ROWS,
    "very soft": 0.0, "wet": 0.0, "very wet": 0.0, "soggy": 0.0, "muddy": 0.0, "boggy": 0.0, "heavy": 0.0,
    "spongy": 0.0, "soaked": 0.0, "sodden": 0.0, "waterlogged": 0.0,
    "soft-ish": 0.25, "firm-ish": 0.75, "softish": 0.25,
    "medium soft": 0.25, "fairly soft": 0.25, "quite soft": 0.25, "pretty soft": 0.25,
    "slightly soft": 0.25, "a bit soft": 0.25, "a little soft": 0.25, "on the soft side": 0.25, "damp": 0.25,
    "receptive": 0.25, "holding": 0.25,
    "soft to medium": 0.25, "medium to soft": 0.25, "medium to firm": 0.75, "firm to medium": 0.75,
    "normal": 0.5, "average": 0.5, "medium firm": 0.75, "fairly firm": 0.75, "quite firm": 0.75,
    "pretty firm": 0.75, "slightly firm": 0.75, "a bit firm": 0.75, "a little firm": 0.75,
    "on the firm side": 0.75, "firmish": 0.75, "hard": 1.0, "very hard": 1.0, "rock hard": 1.0,
    "very firm": 1.0, "dry": 1.0, "very dry": 1.0, "bone dry": 1.0, "baked": 1.0, "baked out": 1.0,
    "bouncy": 1.0, "running": 1.0, "fast running": 1.0, "fast and running": 1.0, "firm and fast": 1.0,
    "hard and fast": 1.0, "firm and running": 1.0, "hard and bouncy": 1.0,
}  # fmt: skip
"""0 soft to 1 firm (common practice; there is no agreed scale)."""

_LEVEL = (
    r"(?P<number>-?\d+(?:\.\d+)?)(?:(?P<percent>\s*%)|\s*(?:out of|/)\s*(?P<of>5|10|100)(?!\d))?|(?P<words>"
    + "|".join(sorted(WORDS, key=len, reverse=True))
    + r")(?![a-z])"
)
_PART = re.compile(
    rf"(?:{_LEVEL})|(?P<where>fairways?|greens?)(?![a-z])"
    r"|(?P<skip>,|;|:|=|\s+|(?:and|but|the|ground|turf|course|everything|all|is|are|playing|plays)(?![a-z]))"
)
_SAY_INSTEAD = {
    "fast quick slick slow": 'the speed of the greens is --stimp; say "firm fairways" for run',
    "after rain raining wintry winter summer spring links parkland lush": 'say how it plays: "soft", "firm"',
    "to between": 'say the middle: "medium", "medium to firm"',
    "not": 'say how it is: "medium", "soft"',
    "frozen frosty frost icy": 'harder than "firm" is not tabled',
}
INSTEAD = by_word(_SAY_INSTEAD)
"""Words that settle no firmness, and what to say for them."""

ALLOWED = "soft, medium, firm or a number from 0 to 1, for both or as in 'soft fairways, medium greens'"


def read_firmness(text: str) -> tuple[float | None, float | None]:
    """(fairways, greens) of ``"firm"``, ``"0.3"``, ``"soft fairways, medium greens"``, ``"greens 0.8"``.

    One that is not spoken of is None.

    Raises
    ------
    UsageError
        A word that is not understood, a number outside 0 to 1, one place said twice.
    """
    shown, phrase = short_line(text), clean(text).replace("medium-", "medium ")
    pairs: list[tuple[float | None, str | None]] = [(None, None)]
    at = 0
    while at < len(phrase):
        found = _PART.match(phrase, at)
        if found is None:
            word = short_line(phrase[at:].split()[0].strip(",;:="))
            hint = f"; {INSTEAD[word]}" if word in INSTEAD else ""
            raise UsageError(f"firmness {shown!r}: {word!r} is not understood{hint}; allowed: {ALLOWED}")
        at = found.end()
        if found["skip"]:
            continue
        level, where = pairs[-1]
        if found["where"]:
            if where is not None:
                pairs.append((None, found["where"].rstrip("s")))
            else:
                pairs[-1] = (level, found["where"].rstrip("s"))
            continue
        value = WORDS[found["words"]] if found["words"] else float(found["number"])
        value /= 100.0 if found["percent"] else float(found["of"] or 1.0)
        if not FIRMNESS[0] <= value <= FIRMNESS[1]:
            number = short_line(found["number"], 12)
            counted = found["percent"] or found["of"] or not 2.0 <= value <= 10.0
            of_ten = "" if counted else f'; say "{number} out of 10"'
            limits = f"{FIRMNESS[0]:g} to {FIRMNESS[1]:g}"
            raise UsageError(f"firmness {shown!r}: {number} is outside {limits}{of_ten}")
        if level is not None:
            pairs.append((value, None))
        else:
            pairs[-1] = (value, where)
    return _places(shown, pairs)


def firmness_assumed(text: str) -> list[str]:
    """A line for each word or count that is no step of the scale itself: the step it was taken for."""
    parts = list(_PART.finditer(clean(text).replace("medium-", "medium ")))
    taken = [(found["words"], WORDS[found["words"]]) for found in parts if found["words"]]
    counts = [found for found in parts if found["of"]]
    taken += [(found[0].strip(), float(found["number"]) / float(found["of"])) for found in counts]
    return [
        f"{word!r} taken as firmness {value:g}, of 0 soft to 1 firm"
        for word, value in taken
        if word not in ROWS
    ]


def _places(shown: str, pairs: list[tuple[float | None, str | None]]) -> tuple[float | None, float | None]:
    said: dict[str, float] = {}
    for level, where in pairs:
        if level is None:
            raise UsageError(f"firmness {shown!r}: {where or 'nothing'} how firm? allowed: {ALLOWED}")
        if where is None and len(pairs) > 1:
            raise UsageError(f"firmness {shown!r}: {level:g} is of which, fairways or greens?")
        for place in [where] if where else ["fairway", "green"]:
            if place in said:
                raise UsageError(f"firmness {shown!r}: {place}s are said twice")
            said[place] = level
    return said.get("fairway"), said.get("green")
