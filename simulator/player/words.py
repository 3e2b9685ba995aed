"""A player in words: ``"handicap 15, driver 205"``, ``"scratch, 7-iron 160 total, miss short right"``.

Words become the contents of a bag file, which is then read like any other. A word that is not understood is
pointed at.
"""

from __future__ import annotations

import re
from typing import Any

from ..errors import FileError
from .patterns import HANDICAP
from .phrases import phrases
from .reader import Reader

_SINGLE = frozenset(
    {"scratch", "woman", "man", "female", "male", "lady", "fade", "draw", "bogey", "handicap", "hcp", "plus",
     "beginner", "novice", "pro", "junior", "senior", "scr"}
)  # fmt: skip
"""Words that alone are enough to be words rather than the name of a file."""


def looks_like_words(text: str) -> bool:
    """Whether a text that is no file can be meant as a player in words rather than as a path."""
    if not text.strip() or "\\" in text or re.search(r"\.[A-Za-z]\w*$|(^|\s)(?:[./]|~(?!\d))|\S/\S*/", text):
        return False
    plain = text.strip().casefold()
    return bool(re.search(r"[\s,\d]|-handicap", plain)) or plain in _SINGLE


def is_player_words(text: str) -> bool:
    """Whether a text is understood as a player in words, from its first word to its last."""
    try:
        return looks_like_words(text) and bool(player_table(text))
    except FileError:
        return False


def speaks_of_a_player(text: str) -> bool:
    """Whether a text names a handicap or a club, or lists things and no par: what is not understood of it is
    told as a player's words."""
    plain = text.casefold()
    if not looks_like_words(text) or re.search(r"\bpar\b", plain):
        return False
    return re.search(rf"[,;]|\b(?:{HANDICAP}|driver|drives|called)\b", plain) is not None


def player_said(text: str) -> tuple[dict[str, Any], list[str]]:
    """The contents of a bag file that some words mean, and sentences on what was taken for granted.

    Raises
    ------
    FileError
        A word that is not understood where it stands, or something said twice.
    """
    reader = Reader(text, phrases())
    return reader.read(), reader.granted


def player_table(text: str) -> dict[str, Any]:
    """The contents of a bag file that some words mean; raises as `player_said`."""
    return player_said(text)[0]
