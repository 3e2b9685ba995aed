"""Names of clubs: the ways golfers write them, one simple form each."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Mapping
from functools import lru_cache

from ..physics.launch import KINDS, LOFT_DEG, family
from ..spelt import SMALL

_SPOKEN = {word: str(number) for word, number in SMALL.items() if 2 <= number <= 9 or number == 11}
_LETTER = {"w": "wood", "wd": "wood", "wood": "wood", "fairwaywood": "wood", "i": "iron", "iron": "iron",
           **dict.fromkeys(("h", "hy", "hyb", "hybrid", "rescue"), "hybrid")}  # fmt: skip
_WHOLE = {
    "d": "driver", "dr": "driver", "drv": "driver", "driver": "driver", "1w": "driver", "1wood": "driver",
    "minidriver": "2-wood", "mini": "2-wood",
    "p": "pitching wedge", "pw": "pitching wedge", "pitchingwedge": "pitching wedge",
    "pitching": "pitching wedge",
    "g": "gap wedge", "gw": "gap wedge", "aw": "gap wedge", "gapwedge": "gap wedge", "gap": "gap wedge",
    "approachwedge": "gap wedge", "attackwedge": "gap wedge",
    "s": "sand wedge", "sw": "sand wedge", "sandwedge": "sand wedge", "sandiron": "sand wedge",
    "sand": "sand wedge",
    "l": "lob wedge", "lw": "lob wedge", "lobwedge": "lob wedge", "lob": "lob wedge",
    "hybrid": "hybrid", "rescue": "hybrid", "putter": "putter", "pt": "putter",
}  # fmt: skip

WEDGE_LOFT_DEG = (44, 64)
"""Lofts a wedge may be named by ("56", "56-degree") [deg], common practice."""


@lru_cache(maxsize=1024)  # the plausible players of one answer ask for few names, thousands of times
def club_name(text: str) -> str | None:
    """Simple form of a club's name, or None when it is not one we know.

    ``"3w"``, ``"3 Wood"``, ``"three-wood"`` -> ``"3-wood"``; ``"PW"`` -> ``"pitching wedge"``; ``"56"``,
    ``"56 degree"`` -> ``"56-degree wedge"``.
    """
    squeezed = _squeezed(text)
    if squeezed in _WHOLE:
        return _WHOLE[squeezed]
    if found := re.fullmatch(r"([2-9]|11)([a-z]+)", squeezed):
        stem = _LETTER.get(found[2])
        name = f"{found[1]}-{stem}"
        return name if stem and name in KINDS else None
    if found := re.fullmatch(r"([a-z]+)([1-9]|11)", squeezed):  # "iron 7", "W3"
        return club_name(found[2] + found[1]) if found[1] in _LETTER else None
    if found := re.fullmatch(r"(\d\d)(°|deg|degree|degrees)?(wedge)?", squeezed):
        low, high = WEDGE_LOFT_DEG
        return f"{int(found[1])}-degree wedge" if low <= int(found[1]) <= high else None
    return None


def _squeezed(text: str) -> str:
    """A name without gaps and hyphens, a spoken number at its start in figures."""
    squeezed = re.sub(r"[\s_\-]+", "", text.casefold())
    for word, digit in _SPOKEN.items():
        if squeezed.startswith(word):
            squeezed = digit + squeezed[len(word) :]
    return squeezed


def same_club(text: str, bag: Mapping[str, str]) -> str | None:
    """The one club of a bag that a loose name can mean, or None.

    A bare number is the iron of that number, or the only club with it ("7", "knock-down seven"); a wedge
    may be called by its kind or by a loft of that kind ("gap" for the 52, "52" for the gap wedge), a hybrid
    by that word alone, when there is only one of the kind.

    Parameters
    ----------
    bag : Mapping
        Kind of each club by its name.
    """
    bare = _squeezed(text)
    if re.fullmatch(r"[2-9]|11", bare):
        numbered = [name for name in bag if name.startswith(f"{bare}-")]
        irons = [name for name in numbered if name.endswith("-iron")]
        return irons[0] if irons else numbered[0] if len(numbered) == 1 else None
    name = club_name(text)
    if name == "hybrid":
        hybrids = [own for own in bag if bag[own].endswith("hybrid")]
        return hybrids[0] if len(hybrids) == 1 else None
    kind = kind_of(name) if name is not None else None
    if kind is not None and kind.endswith("wedge"):
        of_kind = [own for own in bag if bag[own] == kind]
        return of_kind[0] if len(of_kind) == 1 else None
    return None


def club_key(text: str) -> str:
    """What two spellings of one name share; an unusual name stands for itself, in lower case."""
    return club_name(text) or " ".join(text.casefold().split())


def kind_of(name: str) -> str | None:
    """Launch family of a simple name, or None: a wedge named by loft goes to the nearest kind of wedge."""
    if name in KINDS:
        return name
    if found := re.fullmatch(r"(\d\d)-degree wedge", name):
        loft = int(found[1])
        if loft <= 48:
            return "pitching wedge"
        return "gap wedge" if loft <= 53 else "sand wedge" if loft <= 57 else "lob wedge"
    return None


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """``" (did you mean 'x'?)"`` when something known is close, else an empty string."""
    close = difflib.get_close_matches(word, list(known), n=1, cutoff=0.6)
    return f" (did you mean {close[0]!r}?)" if close else ""


_OTHER_FAMILY_DEG = 3.0
"""A club of another family stands for one that is missing as if its loft were so much farther off (assumed);
irons and hybrids are of one here."""


def like_it(text: str, bag: Mapping[str, str]) -> str:
    """A hint for a club that a bag has not: the one of the nearest loft, else the one spelt most alike.

    Parameters
    ----------
    bag : Mapping
        Kind of each club by its name, not empty.
    """
    kind = kind_of(club_name(text) or "")
    if kind is None:
        return did_you_mean(club_key(text), bag)

    def apart_deg(name: str) -> float:
        families = {"iron" if family(one) == "hybrid" else family(one) for one in (bag[name], kind)}
        return abs(LOFT_DEG[bag[name]] - LOFT_DEG[kind]) + _OTHER_FAMILY_DEG * (len(families) - 1)

    return f" (did you mean {min(bag, key=apart_deg)!r}?)"


def with_flight(club: str, flight: str) -> str:
    """A club and how it is flown: "7-iron low"; of the stock flight, and of a putt, the club alone."""
    return club if flight in ("stock", "putt") else f"{club} {flight}"
