"""A hole from words: tokens, features, a drafted file, and the hole that its reader makes of it."""

from __future__ import annotations

import re
import tomllib
import unicodedata
from dataclasses import dataclass

from simulator.hole.clashes import clashes
from simulator.hole.model import Hole
from simulator.hole.sketch import read_sketch
from simulator.hole.words.areas import read_areas
from simulator.hole.words.bounds import read_bounds
from simulator.hole.words.bunkers import read_bunkers
from simulator.hole.words.camber import lay_camber, take_camber
from simulator.hole.words.clauses import features_of
from simulator.hole.words.collars import read_collar
from simulator.hole.words.fairways import clear_approach, read_fairways
from simulator.hole.words.falsefront import read_false_front
from simulator.hole.words.greens import read_green, read_pins
from simulator.hole.words.header import read_header
from simulator.hole.words.lex import WordError, tokens_of
from simulator.hole.words.points import read_points
from simulator.hole.words.refused import with_others
from simulator.hole.words.remarks import passed_over
from simulator.hole.words.tees import read_levels, read_tees
from simulator.hole.words.tiers import read_tiers
from simulator.hole.words.write import said, toml_text

SOURCE = "hole in words"
"""What stands for the file name in messages."""

_PAR = re.compile(r"\bpar[\s-]*(?:[3-6]|three|four|five|six)\b", re.IGNORECASE)
_NUMBER = re.compile(r"\d+")
_HOLE_NUMBER = re.compile(r"^\s*(?:hole\s+)?\d{1,2}\s*[,.-]\s*(?=[^\W\d])", re.IGNORECASE)
"""The number of a hole before its name: "hole 4, Quarry Bend"."""


@dataclass(frozen=True, eq=False)
class WordsHole:
    """A hole read from words.

    Parameters
    ----------
    toml_text : the hole file that says the same, with comments.
    assumed : sentences: what the words do not say and what was taken for it.
    warnings : those of them that a reader should see at once (readings that hardly fix a place).
    hole : what `load_hole` makes of the file.
    metric : the file is in metres.
    """

    toml_text: str
    assumed: tuple[str, ...]
    warnings: tuple[str, ...]
    hole: Hole
    metric: bool = False


def looks_like_words(text: str) -> bool:
    """Whether a text is meant as a hole in words: it says a par and one more number."""
    found = _PAR.search(text)
    return found is not None and _NUMBER.search(text[: found.start()] + text[found.end() :]) is not None


def hole_from_words(text: str, metric: bool | None = None) -> WordsHole:
    """Hole from a description such as "par 4, 372; fairway 28 wide; out left 34; green 24 deep, pin 7 on".

    Parameters
    ----------
    metric : whether the file is to be in metres; in the unit of the words when left out.

    Raises
    ------
    UsageError
        A word that is not understood or does not settle where something is; one line that points at it.
    FileError
        Words that were understood and make no hole (a tee in a pond).
    """
    text = unicodedata.normalize("NFC", text)  # so that letters are counted alike everywhere
    try:
        return _read(text, metric)
    except WordError as error:
        raise with_others(text, error, lambda rest: _read(rest, metric)) from None


def _read(text: str, metric: bool | None) -> WordsHole:
    """The same of composed letters; stops at the first word that is refused."""
    name, body, shift = _name(text)
    tokens, remarks = passed_over(text, tokens_of(" " * shift + body))
    features = features_of(text, tokens)
    draft = read_header(features)
    draft.assumed += remarks
    if metric is not None:
        draft.units.written = "m" if metric else "yd"
    if name:
        draft.name = name
        draft.top_assumed = [key for key in draft.top_assumed if key != "name"]
    levels = [f for f in features if f.kind in ("tee", "fairway", "green", "climb")]
    read_green(features, draft)
    read_collar(features, draft)
    camber = take_camber(features)
    read_fairways(features, draft)
    read_levels(levels, draft)
    lay_camber(camber, draft)
    read_tiers(features, draft)
    read_false_front(features, draft)
    read_tees(features, draft)
    read_pins(features, draft)
    read_areas(features, draft)
    clear_approach(draft)
    read_bunkers(features, draft)
    read_points(features, draft)
    read_bounds(features, draft)
    for feature in features:
        feature.finish()
    written = toml_text(draft, text)
    hole = read_sketch(tomllib.loads(written), SOURCE)
    doubtful = clashes(hole)  # not in the file: its reader finds them anew until the drawing is mended
    return WordsHole(
        written, (*said(draft), *doubtful), (*draft.warnings, *doubtful), hole, draft.units.written == "m"
    )


def _name(text: str) -> tuple[str, str, int]:
    """Name before a colon ("My 12th: par 4 ..."), the rest, and how many letters were cut."""
    head, colon, body = text.partition(":")
    found = _PAR.search(text)
    if not colon or found is None or found.start() < len(head) or any(c in head for c in ";\n"):
        return "", text, 0
    name = " ".join(_HOLE_NUMBER.sub("", head).strip(' "“”').split())
    if not name or len(name) > 60 or not name.isprintable():
        return "", text, 0
    return name, body, len(head) + 1
