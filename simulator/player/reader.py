"""Reads a player in words from left to right; what a phrase says is told to it (`phrases.py`)."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import Any, NamedTuple, NoReturn

from ..errors import FileError
from ..spelt import in_figures
from ..toml_text import short_line
from .levels import STANDARD_SET
from .names import club_name, did_you_mean
from .patterns import CLUB_SIZE, CURVE_NEXT, DRIVES, MOST_CURVE_SAID_YD, NOT_ALONE, SKIP
from .published import BOGEY_HANDICAP
from .spoken import AGE_ADVICE, AGE_TOO, SAY_INSTEAD

ALLOWED = (
    'words such as "handicap 15", "plus 2", "scratch", "bogey golfer", "high handicapper", "shoots 90", '
    '"woman", "left-handed", '
    '"driver 205", "7-iron 150 total", "driver 190 m", "drives it 230", "50 wide", "30 deep", '
    '"driver tee only", "no 3-wood", "only driver 150, 7-iron and sand wedge", '
    '"fade", "slices the driver 30 yards", "miss short right", "called Ada"'
)
"""What the words may be, the end of a refusal that cannot say what to write instead."""

IN_SHORT = 'words such as "handicap 15, driver 205, miss right"'
"""The same behind one that can."""

MOST_APART = 1.3
"""A range of a club whose ends differ by more than this factor is none (assumed)."""

NOT_UNDERSTOOD, NO_DISTANCE = "is not understood there", "is no distance of"


def quoted(text: str) -> str:
    """A player in words as messages and answers name its source."""
    return f'"{short_line(text, 120)}"'


def in_words(source: str) -> bool:
    """Whether a source is a player's own words (`quoted`), not the name of a file."""
    return source.startswith('"')


_MARK = re.compile(r"(?<=\w)\s*[:=]\s*(?=\d)|(?<=[a-z])-(?=\d{2,3}(?!\w))")
"""What stands between a club and its distance and says nothing: "7i: 150", "driver-210"."""

_STOP = re.compile(r"(?<=\w)(?<!hcp)\.(?=\s|$)|(?<=hcp)\.(?=\s+\D|$)", re.IGNORECASE)
"""A full stop parts what is said, as a semicolon does; that of "hcp. 15" does not."""

_IRONS = re.compile(
    r"\b(?:irons?\s+)?([2-8])[\s-]*(?:i(?:rons?)?)?\s*(?:-|–|to|through)\s*"
    r"(pw|pitching\s+wedge|9[\s-]?i(?:rons?)?)\b",
    re.IGNORECASE,
)
"""A run of irons: "5-PW", "5 to 9 iron"."""


def _each_iron(found: re.Match[str]) -> str:
    last = ["pitching wedge"] if found[2].casefold().startswith("p") else []
    return ", ".join([f"{number}-iron" for number in range(int(found[1]), 10)] + last)


_DIGIT = r"(?:[2-9]|11)(?!\d)"
_MANY = r"(?:hybrids|rescues|(?:fairway\s+)?woods)\b"
_NUMBERED = re.compile(
    # no comma before the kind: "handicap 8, 3 and 5 woods"
    rf"(?<![\d.])(?P<digits>{_DIGIT}(?:\s*(?:/|&|and)\s*{_DIGIT})+)[\s-]*(?P<kind>{_MANY})"
    rf"|\b(?P<first>{_MANY})\s*:?\s*(?P<behind>{_DIGIT}(?:\s*(?:,|/|&|and)\s*{_DIGIT})+)(?!\s*[-.\w])",
    re.IGNORECASE,
)
"""Numbers of one kind: "hybrids 4 and 5", "3 and 5 woods"."""


def _each_numbered(found: re.Match[str]) -> str:
    kind = "wood" if "wood" in (found["kind"] or found["first"]).casefold() else "hybrid"
    return ", ".join(f"{digits}-{kind}" for digits in re.findall(r"\d+", found["digits"] or found["behind"]))


LOFTS_DEG = {"pitching wedge": (43, 48), "gap wedge": (49, 53), "sand wedge": (54, 58), "lob wedge": (58, 64)}
"""Lofts that wedges have: "sand wedge 56" names one more likely than its carry (common practice)."""


class Phrase(NamedTuple):
    """A pattern, and what its words do; `of_club` where they may speak of the club before them."""

    pattern: re.Pattern[str]
    act: Callable[[Reader, re.Match[str]], None]
    of_club: bool = False


class Reader:
    """Reads one text from left to right, filling the table of a bag file."""

    def __init__(self, text: str, phrases: Sequence[Phrase]) -> None:
        # a mark is a blank, of its own length: places in the text are told
        self.typed, text = text, _IRONS.sub(_each_iron, in_figures(text, ones=True))
        text = _NUMBERED.sub(_each_numbered, text)
        text = _STOP.sub(";", text).replace("(", " ").replace(")", ";")
        plain = _MARK.sub(lambda found: " " * len(found[0]), text.casefold())
        self.said, self.text, self.at = text, plain, 0
        self.phrases = phrases
        self.table: dict[str, Any] = {}
        self.club: str | None = None  # the last one named: widths and uses behind it are its own
        self.on_club = False  # whether the last thing said was about that club
        self.bogey = False
        self.aged: re.Match[str] | None = None
        self.unit = "m" if re.search(r"\b(?:in|all)\s+met(?:re|er)s\b", self.text) else "yd"
        self.granted: list[str] = []

    def read(self) -> dict[str, Any]:
        """The contents of a bag file; raises FileError at the first word that is not understood."""
        while True:
            if found := SKIP.match(self.text, self.at):
                self.at = found.end()
                self.on_club = self.on_club and not re.search("[,;]", found[0])
            if self.at >= len(self.text):
                break
            if not (self._phrase() or self._drive() or self._club()):
                self.refuse()
        self._check_set()
        self._check_age()
        if self.bogey:
            self.put("handicap", BOGEY_HANDICAP[self.table.get("sex", "man")])
        if "hand" in self.table and self.table["hand"] == "right":
            del self.table["hand"]
        return self.table

    def refuse(self, why: str = NOT_UNDERSTOOD) -> NoReturn:
        """Refuse (FileError) the word that is read next, with what to say instead where that is known."""
        words = re.findall(r"[^\s,;]+", self.text[self.at :])
        word = words[0] if words else self.text[self.at :]
        known = ("handicap", "scratch", "shoots", "plus", "woman", "driver", "hybrid", "carry", "total",
                 "wide", "deep", "miss", "fade", "draw", "slice", "hook", "without", "only", "called",
                 "left-handed")  # fmt: skip
        for pattern, advice in SAY_INSTEAD if why == NOT_UNDERSTOOD or NO_DISTANCE in why else ():
            if found := pattern.match(self.text, self.at):
                raise FileError(quoted(self.typed), "", f"{found[0].strip()!r}; {advice}", IN_SHORT)
        hint = "" if word in known else did_you_mean(word, known)
        unknown = word not in known and why == NOT_UNDERSTOOD and not hint
        if unknown and not self.text[: self.at].strip() and word.isalpha() and len(word) > 2:
            hint = f' (a name is said "called {word.title()}")'
        if word in known and why == NOT_UNDERSTOOD:  # the word is ours: what follows it is not
            why = f"is not followed by {words[1]!r}" if len(words) > 1 else "wants more behind it"
        raise FileError(quoted(self.typed), "", f"{word!r}, which {why}{hint}", ALLOWED)

    def put(self, key: str, value: object) -> None:
        """Fill in a key at the top of the file; said twice it is refused."""
        if key in self.table:
            self.refuse(f"says the {key} a second time")
        self.table[key] = value

    def pass_over(self, found: re.Match[str], end: int) -> None:
        """What stands between a phrase and a place behind it is read: blanks from now on."""
        self.text = self.text[: found.end()] + " " * (end - found.end()) + self.text[end:]

    def section(self, club: str) -> dict[str, Any]:
        """The section of a club, made if it is not there."""
        return self.table.setdefault("club", {}).setdefault(club, {})

    def put_size(self, club: str | None, stem: str, found: re.Match[str]) -> None:
        """A length of a club, or of the last one named, in the unit it was said in; the middle of a range."""
        club = club or self.club
        if club is None:
            self.refuse("needs a club before it")
        section = self.section(club)
        stems = ("carry", "total") if stem in ("carry", "total") else (stem,)
        if any(f"{s}_{u}" in section for s in stems for u in ("yd", "m")):
            self.refuse(f"says a second {stem} of the {club}")
        unit = self.unit_of(found)
        size = plain_number(found["number"])
        if found.groupdict().get("upper"):
            upper = plain_number(found["upper"])
            if not 1.0 / MOST_APART <= upper / max(size, 1) <= MOST_APART:
                self.at = found.start()
                self.refuse(f"is no distance: {size:g} and {upper:g} are too far apart for one club")
            size = 0.5 * (size + upper)
            self.granted.append(f"{found[0].strip()!r} is taken as {size:g}, the middle of it.")
        section[f"{stem}_{unit}"] = size

    def unit_of(self, found: re.Match[str]) -> str:
        """ "m" or "yd": as said behind the number, else that of the whole text."""
        return ("m" if found["unit"].startswith("m") else "yd") if found["unit"] else self.unit

    def _check_age(self) -> None:
        """Refuse an age where nobody says how well and how far: it would be lost in a level's lengths."""
        sized = any(f"{stem}_{u}" in club for club in self.table.get("club", {}).values()
                    for stem in ("carry", "total") for u in ("yd", "m"))  # fmt: skip
        levelled = self.bogey or "handicap" in self.table
        if self.aged is None or (sized and levelled):
            return
        advice = AGE_TOO.format("how far too", "driver 150") if levelled else AGE_ADVICE
        advice = AGE_TOO.format("a handicap too", "handicap 18") if sized else advice
        raise FileError(quoted(self.typed), "", f"{self.aged[0].strip()!r}; {advice}", IN_SHORT)

    def _check_set(self) -> None:
        """Refuse clubs that are spoken of and not in the set that "only" names; one left at home is not."""
        own = self.table.get("clubs")
        if own is None:
            return
        sections = self.table.get("club", {})
        for name in [club for club in sections if club not in own]:
            if sections[name] != {"use": "never"}:
                found = f"the {name}, and a set without it"
                raise FileError(quoted(self.typed), "", found, 'behind "only" every club of the set')
            del sections[name]
        if not sections:
            self.table.pop("club", None)

    def put_into_set(self, name: str, *, sized: bool) -> None:
        """A club of the set; named a second time only to give its distance."""
        own = self.table["clubs"]
        if self.table.get("club", {}).get(name, {}).get("use") == "never":
            self.refuse(f"names the {name}, which was left out")
        if name not in own:
            own.append(name)
        elif not sized:
            self.refuse(f"names the {name} a second time")

    def _phrase(self) -> bool:
        for phrase in self.phrases:
            if found := phrase.pattern.match(self.text, self.at):
                phrase.act(self, found)
                self.at = found.end()
                self.on_club = phrase.of_club and self.club is not None
                return True
        return False

    def name_of_club(self, at: int) -> tuple[str, int] | None:
        """The club that the next one to three words name, the longest name first, and where it ends."""
        words = re.match(r"[^\s,;]+(?:[ \t]+[^\s,;]+){0,2}", self.text[at:])
        said = words[0] if words else ""
        while said:
            name = club_name(said)
            if name is not None and name != "putter":
                return name, at + len(said)
            said = said.rpartition(" ")[0].rstrip()
        return None

    def _drive(self) -> bool:
        """ "drives it 250": where drives are measured is where they come to rest."""
        verb = DRIVES.match(self.text, self.at)
        found = CLUB_SIZE.match(self.text, verb.end()) if verb else None
        if found is None:
            return False
        carried = "carr" in found[0] or "in the air" in found[0] or self.text[: self.at].endswith("carries ")
        if not carried and stem_of(found) != "total":
            verb_at = self.at - len("hits ") if verb and verb[0].startswith("it") else self.at
            shown = self.said[verb_at : found.end()].strip()
            self.granted.append(f"{shown!r} is taken as the driver's total: drives are measured at rest.")
        self.put_size("driver", "carry" if carried else "total", found)
        self.club, self.at, self.on_club = "driver", found.end(), True
        return True

    @staticmethod
    def _is_curve(found: re.Match[str]) -> bool:
        return not found["before"] and not found["after"] and float(found["number"]) <= MOST_CURVE_SAID_YD

    def _club(self) -> bool:
        in_set = "clubs" in self.table
        if in_set and (putter := re.compile(r"putter\b(?!\s*\d)").match(self.text, self.at)):
            self.put_into_set("putter", sized=False)
            self.at, self.on_club = putter.end(), False
            return True
        named = self.name_of_club(self.at)
        if named is None:
            return False
        name, end = named
        found = CLUB_SIZE.match(self.text, end)
        if in_set:
            self.put_into_set(name, sized=found is not None)
        if found and found["unit"] and CURVE_NEXT.match(self.text, found.end()) and self._is_curve(found):
            pass  # "driver 30 yd slice": the yards are the slice's, and the next phrase reads them
        elif found:
            self._check_loft(name, found)
            self.put_size(name, stem_of(found), found)
            end = found.end()
        elif not in_set and name not in STANDARD_SET and self._is_all_of_it(end):
            self.granted.append(f"The {name} is in the bag with the level's carry: no distance was said.")
        elif not in_set and NOT_ALONE.match(self.text, end) is None:
            self.at = end
            gap = SKIP.match(self.text, end)
            self.at = gap.end() if gap else end
            if self.at >= len(self.text):
                what = f"the {name} without a distance; say it behind the club, or leave the club out"
                raise FileError(quoted(self.typed), "", what, IN_SHORT)
            another = self.name_of_club(self.at)
            if another and CLUB_SIZE.match(self.text, another[1]) is None:
                what = (
                    f"the {name} without a distance before the {another[0]}; a whole set is said "
                    '"only driver, 3w, 5-PW, 52, putter"'
                )
                raise FileError(quoted(self.typed), "", what, IN_SHORT)
            self.refuse(f"{NO_DISTANCE} the {name}")
        self.club, self.at, self.on_club = name, end, True
        if not in_set:
            self.section(name)
        return True

    def _is_all_of_it(self, end: int) -> bool:
        """Whether a comma, "and" or the end stands behind a club that a word names: "56" may be anything."""
        named = re.search("[a-z]", self.text[self.at : end])
        return named is not None and re.match(r"\s*(?:$|[,;]|and\b)", self.text[end:]) is not None

    def _check_loft(self, name: str, found: re.Match[str]) -> None:
        """Refuse a number behind a wedge that may be its loft."""
        low, high = LOFTS_DEG.get(name, (0, 0))
        told = found["unit"] or found["before"] or found["after"] or found["upper"] or found["low"]
        if not told and low <= float(found["number"]) <= high:
            self.at = found.start("number")
            number = found["number"]
            self.refuse(f'may be its loft or its carry: say "{number} 80" or "{name} {number} yards"')


def stem_of(found: re.Match[str]) -> str:
    """What a length behind a club is: "carry", "total" or "low_carry"."""
    words = f"{found['before'] or ''} {found['after'] or ''}"
    if found["low"]:
        return "low_carry"
    return "total" if re.search(r"total|overall|run", words) else "carry"


def plain_number(digits: str) -> float:
    """A number as it would stand in a file."""
    return int(digits) if digits.isdigit() else float(digits)
