"""A player in words: ``"handicap 15, driver 205"``, ``"scratch, 7-iron 160 total, miss short right"``.

Words become the contents of a bag file, which is then read like any other. A word that is not understood is
pointed at.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from ..errors import FileError
from ..toml_text import short_line
from .names import club_name, did_you_mean
from .published import BOGEY_HANDICAP, SCORE_OVER_HANDICAP
from .spoken import SAY_INSTEAD, SPOKEN_HANDICAP, THIRDS_OF_TEN

ALLOWED = (
    'words such as "handicap 15", "plus 2", "scratch", "bogey golfer", "high handicapper", "shoots 90", '
    '"woman", "left-handed", '
    '"driver 205", "7-iron 150 total", "driver 190 m", "drives it 230", "50 wide", "30 deep", '
    '"driver tee only", "no 3-wood", "only driver 150, 7-iron and sand wedge", '
    '"fade", "slices the driver 30 yards", "miss short right", "called Ada"'
)
"""What the words may be, the end of every refusal."""

_NUMBER = r"(?P<number>\d{1,9}(?:\.\d{1,9})?)"
_UNIT = r"(?:\s*(?P<unit>yards?|yds?|y|metres?|meters?|m)\b)?"
_UPPER = r"\s*(?:-|–|to|and)\s*(?P<upper>\d{2,3})(?![\d.])"
"""The other end of a range of yards or scores."""
_TEE_ONLY = r"(?:only\s+(?:from|off)\s+(?:the\s+)?tee|tee\s+only|(?:from|off)\s+(?:the\s+)?tee\s+only)"
_HANDICAP = r"(?:handicap(?:per)?|hcp\.?|hdcp\.?|h/?cap\.?|hc|hi|index)"
_NEEDED_UNIT = r"(?P<unit>yards?|yds?|y|metres?|meters?|m)\b"
_NO_NUMBER = r"(?P<number>)(?P<unit>)"
"""Groups of a pattern whose number stands behind the club."""
_SHAPED = "fade|draw|slice|hook"
_SIDE = r"(?:short|long|left|right)"
MOST_CURVE_SAID_YD = 60.0
"""More yards than this before a shape are the club's carry [yd]: no solid strike curves so far (assumed)."""
_SKIP = re.compile(
    r"(?:[\s,;]|\b(?:and|with|a|an|the|is|of|who|he|she|her|his|player|golfer|hits?|plays?|has|have|i'm|i|am|my"
    r"|tends?\s+to|usually|mostly|often|at\s+home|carries(?=\s+(?:\D|(?:[2-9]|11)[\s-]*[a-z])))\b)+"
)
_SINGLE = frozenset(
    {"scratch", "woman", "man", "female", "male", "lady", "fade", "draw", "bogey", "handicap", "hcp", "plus",
     "beginner", "novice", "pro", "junior", "senior", "scr"}
)  # fmt: skip
"""Words that alone are enough to be words rather than the name of a file."""


def looks_like_words(text: str) -> bool:
    """Whether a text that is no file can be meant as a player in words rather than as a path."""
    if not text.strip() or "\\" in text or re.search(r"\.[A-Za-z]\w*$|(^|\s)[./~]|\S/\S*/", text):
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
    """Whether a text names a handicap, so that what is not understood of it is told as a player's words."""
    return looks_like_words(text) and re.search(rf"\b{_HANDICAP}\b", text.casefold()) is not None


NOT_UNDERSTOOD = "is not understood there"


def quoted(text: str) -> str:
    """A player in words as messages and answers name its source."""
    return f'"{short_line(text, 120)}"'


class _Reader:
    """Reads one text from left to right, filling the table of a bag file."""

    def __init__(self, text: str) -> None:
        self.said, self.text, self.at = text, text.casefold(), 0
        self.table: dict[str, Any] = {}
        self.club: str | None = None  # the last one named: widths and uses behind it are its own
        self.on_club = False  # whether the last thing said was about that club
        self.bogey = False
        self.granted: list[str] = []

    def read(self) -> dict[str, Any]:
        while True:
            if found := _SKIP.match(self.text, self.at):
                self.at = found.end()
                self.on_club = self.on_club and not re.search("[,;]", found[0])
            if self.at >= len(self.text):
                break
            if not (self._phrase() or self._drive() or self._club()):
                self.refuse()
        self._check_set()
        if self.bogey:
            self.put("handicap", BOGEY_HANDICAP[self.table.get("sex", "man")])
        if "hand" in self.table and self.table["hand"] == "right":
            del self.table["hand"]
        return self.table

    def refuse(self, why: str = NOT_UNDERSTOOD) -> None:
        words = re.findall(r"[^\s,;]+", self.text[self.at :])
        word = words[0] if words else self.text[self.at :]
        known = ("handicap", "scratch", "shoots", "plus", "woman", "driver", "hybrid", "carry", "total",
                 "wide", "deep", "miss", "fade", "draw", "slice", "hook", "without", "only", "called",
                 "left-handed")  # fmt: skip
        for pattern, advice in SAY_INSTEAD if why == NOT_UNDERSTOOD else ():
            if found := pattern.match(self.text, self.at):
                raise FileError(quoted(self.said), "", f"{found[0]!r}; {advice}", ALLOWED)
        hint = "" if word in known else did_you_mean(word, known)
        unknown = word not in known and why == NOT_UNDERSTOOD and not hint
        if unknown and not self.text[: self.at].strip() and word.isalpha() and len(word) > 2:
            hint = f' (a name is said "called {word.title()}")'
        if word in known and why == NOT_UNDERSTOOD:  # the word is ours: what follows it is not
            why = f"is not followed by {words[1]!r}" if len(words) > 1 else "wants more behind it"
        raise FileError(quoted(self.said), "", f"{word!r}, which {why}{hint}", ALLOWED)

    def put(self, key: str, value: object) -> None:
        if key in self.table:
            self.refuse(f"says the {key} a second time")
        self.table[key] = value

    def section(self, club: str) -> dict[str, Any]:
        return self.table.setdefault("club", {}).setdefault(club, {})

    def put_size(self, club: str | None, stem: str, found: re.Match[str]) -> None:
        """A length of a club, or of the last one named, in the unit it was said in; the middle of a range."""
        club = club or self.club
        if club is None:
            self.refuse("needs a club before it")
            return
        section = self.section(club)
        stems = ("carry", "total") if stem in ("carry", "total") else (stem,)
        if any(f"{s}_{u}" in section for s in stems for u in ("yd", "m")):
            self.refuse(f"says a second {stem} of the {club}")
        unit = "m" if (found["unit"] or "y").startswith("m") else "yd"
        size = _plain(found["number"])
        if found.groupdict().get("upper"):
            size = 0.5 * (size + _plain(found["upper"]))
            self.granted.append(f"{found[0].strip()!r} is taken as {size:g}, the middle of it.")
        section[f"{stem}_{unit}"] = size

    def _check_set(self) -> None:
        """Refuse clubs that are spoken of and not in the set that "only" names; one left at home is not."""
        own = self.table.get("clubs")
        if own is None:
            return
        sections = self.table.get("club", {})
        for name in [club for club in sections if club not in own]:
            if sections[name] != {"use": "never"}:
                found = f"the {name}, and a set without it"
                raise FileError(quoted(self.said), "", found, 'behind "only" every club of the set')
            del sections[name]
        if not sections:
            self.table.pop("club", None)

    def _put_into_set(self, name: str, sized: bool) -> None:
        """A club of the set; named a second time only to give its distance."""
        own = self.table["clubs"]
        if self.table.get("club", {}).get(name, {}).get("use") == "never":
            self.refuse(f"names the {name}, which was left out")
        if name not in own:
            own.append(name)
        elif not sized:
            self.refuse(f"names the {name} a second time")

    def _phrase(self) -> bool:
        for pattern, act in _PHRASES:
            if found := pattern.match(self.text, self.at):
                act(self, found)
                self.at = found.end()
                self.on_club = act in (_width, _tee_only, _miss, _shape) and self.club is not None
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
        verb = _DRIVES.match(self.text, self.at)
        found = _CLUB_SIZE.match(self.text, verb.end()) if verb else None
        if found is None:
            return False
        carried = "carr" in found[0] or "in the air" in found[0] or self.text[: self.at].endswith("carries ")
        if not carried and _stem(found) != "total":
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
            self._put_into_set("putter", False)
            self.at, self.on_club = putter.end(), False
            return True
        named = self.name_of_club(self.at)
        if named is None:
            return False
        name, end = named
        found = _CLUB_SIZE.match(self.text, end)
        if in_set:
            self._put_into_set(name, found is not None)
        if found and found["unit"] and _CURVE_NEXT.match(self.text, found.end()) and self._is_curve(found):
            pass  # "driver 30 yd slice": the yards are the slice's, and the next phrase reads them
        elif found:
            self.put_size(name, _stem(found), found)
            end = found.end()
        elif not in_set and _NOT_ALONE.match(self.text, end) is None:
            self.at = end
            gap = _SKIP.match(self.text, end)
            self.at = gap.end() if gap else end
            if self.at >= len(self.text):
                raise FileError(quoted(self.said), "", f"the {name} without a distance", ALLOWED)
            self.refuse(f"is no distance of the {name}")
        self.club, self.at, self.on_club = name, end, True
        if not in_set:
            self.section(name)
        return True


def _stem(found: re.Match[str]) -> str:
    words = f"{found['before'] or ''} {found['after'] or ''}"
    if found["low"]:
        return "low_carry"
    return "total" if re.search(r"total|overall|run", words) else "carry"


_CLUB_SIZE = re.compile(
    r"\s*[:=]?\s*(?P<low>low|held[ -]down|knock-?down)?\s*"
    r"(?P<before>carr(?:y|ies)(?:\s+of)?|total(?:\s+of)?|goes|hits|is|of)?\s*(?:(?:about|around|roughly)\s+)?"
    rf"{_NUMBER}(?:{_UPPER}(?!\s*-?\s*(?:i|h|w)))?{_UNIT}"
    r"(?:\s*(?P<after>carry|in the air|total|overall|with run|run included)\b)?"
)
_CURVE_BEHIND = re.compile(
    rf"\s*(?:by\s+|about\s+|around\s+)?{_NUMBER}(?![\d.]){_UNIT}"
    r"(?!\s*(?:carry|total|overall|in the air|with run|run included|wide|across|deep|-|to\s+\d))"
)
"""How far a club curves, behind its name; not a width, a range or a distance that says it is one."""
_CURVE_NEXT = re.compile(rf"[\s-]*(?:{_SHAPED})\b")
_DRIVES = re.compile(
    r"(?:drives?(?:\s+(?:it|the\s+ball))?|driving\s+distance|tee\s+shots?|off\s+the\s+tee"
    r"|(?:(?<=hits )|(?<=carries ))(?:it|the\s+ball|drives?))"
    r"(?=\s*(?:[:=]|carr|goes|go\b|of\b|is\b|about\b|around\b|\d))"
    r"\s*(?:goes|go|about|around)?"
)
"""A drive spoken of without its club: the driver's, and a total unless a carry is said."""
_NOT_ALONE = re.compile(rf"[\s,;]*(?:is\s+)?(?:{_TEE_ONLY}"
                        r"|\d+(?:\.\d+)?\s*(?:yards?|yds?|y|m|metres?)?"
                        r"\s*(?:wide|deep)|misses|miss\b|fades?\b|draws?\b|slices?\b|hooks?\b)")  # fmt: skip


def _plain(digits: str) -> float:
    """A number as it would stand in a file."""
    return int(digits) if digits.isdigit() else float(digits)


def _handicap(reader: _Reader, found: re.Match[str]) -> None:
    sign = found["sign"]
    number = _plain(found["number"])
    reader.put("handicap", -number if sign else number)


def _score(reader: _Reader, found: re.Match[str]) -> None:
    reader.put("handicap", _plain(found["number"]) - SCORE_OVER_HANDICAP)


def _scores(reader: _Reader, found: re.Match[str]) -> None:
    """ "85 to 90", "high 80s": the middle, and that it was taken."""
    parts = found.groupdict()
    if parts.get("decade"):
        score = float(parts["decade"]) + THIRDS_OF_TEN[parts["third"] or "mid"]
    else:
        score = 0.5 * (float(parts["number"]) + float(parts["upper"]))
    reader.put("handicap", score - SCORE_OVER_HANDICAP)
    reader.granted.append(f"{found[0].strip()!r} is taken as an average score of {score:g}.")


def _spoken(reader: _Reader, found: re.Match[str]) -> None:
    """A word for a level: a handicap that stands for it, said."""
    word = next((key for key in SPOKEN_HANDICAP if found[0].startswith(key)), "beginner")
    value, meant = SPOKEN_HANDICAP[word]
    reader.put("handicap", value)
    said = found[0].strip()
    reader.granted.append(
        f"{said!r} is taken as handicap {value:g} (golfers mean {meant}): say the number if you know it."
    )


def _both_ways(reader: _Reader, found: re.Match[str]) -> None:
    reader.granted.append(f"{found[0].strip()!r} is taken as no side missed more than the other.")


def _bogey(reader: _Reader, found: re.Match[str]) -> None:
    if reader.bogey or "handicap" in reader.table:
        reader.refuse("says the handicap a second time")
    reader.bogey = True


def _sex(reader: _Reader, found: re.Match[str]) -> None:
    reader.put("sex", "woman" if found[0][0] in "wflg" and not found[0].startswith("gentle") else "man")


def _hand(reader: _Reader, found: re.Match[str]) -> None:
    reader.put("hand", "left" if found[0].startswith("left") else "right")


def _place(reader: _Reader, key: str) -> dict[str, Any]:
    """Where a habit goes: to the club just spoken of, when no comma lies between, else to all clubs."""
    return reader.section(reader.club) if reader.on_club and reader.club is not None else reader.table


def _miss(reader: _Reader, found: re.Match[str]) -> None:
    table = _place(reader, "miss")
    if "miss" in table:
        reader.refuse("says the miss a second time")
    table["miss"] = found["miss"]


def _shape(reader: _Reader, found: re.Match[str]) -> None:
    table = _place(reader, "shape")
    if "shape" in table:
        reader.refuse("says the shape a second time")
    table["shape"] = found["shape"]
    if found["number"]:
        _put_curve(reader, table, found)


def _put_curve(reader: _Reader, table: dict[str, Any], found: re.Match[str]) -> None:
    """How far it curves; without a club the longest one's."""
    if table is not reader.table:
        reader.put_size(None, "curve", found)
        return
    unit = "m" if (found["unit"] or "y").startswith("m") else "yd"
    table[f"curve_{unit}"] = _plain(found["number"])


def _shape_of_club(reader: _Reader, found: re.Match[str]) -> None:
    """ "slices the driver 30 yards", "30 yd slice with the driver": a club's own shape, and how far."""
    named = reader.name_of_club(found.end())
    if named is None:
        reader.at = found.end()
        reader.refuse("is no club that curves")
        return
    name, end = named
    section = reader.section(name)
    if "shape" in section:
        reader.refuse(f"says the shape of the {name} a second time")
    section["shape"] = found["shape"]
    reader.club = name
    behind = None if found["number"] else _CURVE_BEHIND.match(reader.text, end)
    if found["number"]:
        reader.put_size(name, "curve", found)
    elif behind:
        reader.put_size(name, "curve", behind)
        end = behind.end()
    elif size := _CLUB_SIZE.match(reader.text, end):
        reader.put_size(name, _stem(size), size)
        end = size.end()
    # the phrase ends behind the club: read it as skipped text
    reader.text = reader.text[: found.end()] + " " * (end - found.end()) + reader.text[end:]


def _tee(reader: _Reader, found: re.Match[str]) -> None:
    reader.put("tee", found["tee"])


def _width(reader: _Reader, found: re.Match[str]) -> None:
    reader.put_size(None, "width" if found["what"] in ("wide", "across") else "depth", found)


def _tee_only(reader: _Reader, found: re.Match[str]) -> None:
    if reader.club is None:
        reader.refuse("needs a club before it")
        return
    reader.section(reader.club)["use"] = "tee only"


def _only(reader: _Reader, found: re.Match[str]) -> None:
    """ "only driver 150, 7-iron, sand wedge": from here on clubs named are the whole set."""
    if reader.name_of_club(found.end()) is None:
        reader.refuse("is not followed by a club")
    reader.put("clubs", [])


def _without(reader: _Reader, found: re.Match[str]) -> None:
    named = reader.name_of_club(found.end())
    if named is None:
        reader.at = found.end()
        reader.refuse("is no club to leave out")
        return
    section = reader.section(named[0])
    if section or named[0] in reader.table.get("clubs", ()):
        reader.refuse(f"leaves out the {named[0]} that was just given")
    section["use"] = "never"
    # the phrase ends behind the club: read it as skipped text
    reader.text = reader.text[: found.end()] + " " * (named[1] - found.end()) + reader.text[named[1] :]


def _name(reader: _Reader, found: re.Match[str]) -> None:
    reader.put("name", found["name"].strip().title())


_Act = Callable[[_Reader, re.Match[str]], None]
_SIGN = r"(?P<sign>plus\s*|\+\s*|-\s*)?"
_PHRASES: tuple[tuple[re.Pattern[str], _Act], ...] = tuple(
    (re.compile(pattern), act)
    for pattern, act in (
        (rf"{_HANDICAP}\s*(?:index\s*)?(?:of\s*|is\s*|[:=]\s*)?(?:(?:about|around|roughly)\s+)?"
         rf"{_SIGN}{_NUMBER}(?![\w.])", _handicap),
        (rf"(?<=plays )to\s+{_SIGN}{_NUMBER}(?![\w.])", _handicap),
        (r"(?:beginner|novice|newcomer)\b", _spoken),
        (rf"(?:high|mid|low)(?:dle)?[\s-]+{_HANDICAP}s?\b(?!\s*\d)", _spoken),
        (rf"single[\s-]+(?:figures?|digits?)(?:\s+{_HANDICAP})?\b", _spoken),
        (rf"off\s+(?:of\s+)?{_SIGN}{_NUMBER}(?![\w.])", _handicap),
        (rf"{_SIGN}{_NUMBER}[\s-]*{_HANDICAP}(?:\s+index)?\b", _handicap),
        (rf"(?P<sign>plus\s*|\+\s*){_NUMBER}(?![\w.])", _handicap),
        (r"scr(?:atch)?\b", lambda reader, found: reader.put("handicap", 0.0)),
        (r"bogey\b", _bogey),
        (rf"shoots?\s+(?:between\s+|from\s+)?{_NUMBER}{_UPPER}(?!\w)", _scores),
        (rf"shoots?\s+(?:about\s+|around\s+)?{_NUMBER}(?![\w.])", _score),
        (r"(?:shoots?\s+)?(?:in\s+)?(?:the\s+)?(?:(?P<third>low|mid(?:dle)?|high)[\s-]*)?(?P<decade>[6-9]0|1[0-3]0)"
         r"(?:['’]?s)\b(?:[\s-]*shooter)?", _scores),
        (rf"{_NUMBER}[\s-]*shooter\b", _score),
        (r"(?:woman|women|female|lady|ladies|girl)(?:'s)?\b", _sex),
        (r"(?:man|men|male|gentleman|boy)(?:'s)?\b", _sex),
        (r"(?:from|off)\s+(?:the\s+)?(?P<tee>[^\W\d_]+)\s+tees?\b(?!\s+only)", _tee),
        (r"(?:left|right)[\s-]?hand(?:ed|er)?\b|lefty\b", _hand),
        (r"(?:usual\s+)?miss(?:es|ing)?\s*(?:is\s+|[:=]\s*)?(?:both\s+(?:ways|sides)|left\s+and\s+right"
         r"|right\s+and\s+left|either\s+(?:way|side))\b|two[\s-]way\s+miss\b", _both_ways),
        (rf"(?:usual\s+)?miss(?:es|ing)?\s*(?:is\s+|[:=]\s*)?(?P<miss>{_SIDE}(?:[\s-]+(?:and\s+)?{_SIDE})?)\b",
         _miss),
        (rf"(?P<shape>{_SHAPED})(?:e?s)?\s+(?:the|his|her|my|a)\s+(?!balls?\b)(?=[^\s,;]){_NO_NUMBER}",
         _shape_of_club),
        (rf"(?P<shape>{_SHAPED})e?s\s+(?=driver\b|(?:[1-9]|11)[\s-]?(?:w|i|h)){_NO_NUMBER}", _shape_of_club),
        (rf"{_NUMBER}[\s-]*{_NEEDED_UNIT}[\s-]*(?P<shape>{_SHAPED})\s+(?:with|off)\s+"
         r"(?:the\s+|his\s+|her\s+|my\s+|an?\s+)?",
         _shape_of_club),
        (rf"{_NUMBER}[\s-]*{_NEEDED_UNIT}[\s-]*(?P<shape>{_SHAPED})\b", _shape),
        (rf"(?P<shape>{_SHAPED})(?:s|r)?\b(?:\s+(?:it|(?:the|his|her|my)\s+ball)\b)?(?:\s*(?:of\s+)?{_NUMBER}{_UNIT}(?![\s\w]*(?:wide|deep)))?",
         _shape),
        (rf"{_NUMBER}{_UNIT}\s*(?P<what>wide|across|deep)\b", _width),
        (rf"(?P<what>width|depth)\s*(?:of\s+)?{_NUMBER}{_UNIT}",
         lambda reader, found: reader.put_size(None, found["what"], found)),
        (rf"{_TEE_ONLY}\b", _tee_only),
        (r"(?:only|just|nothing\s+but)\s+(?:(?:has|have|carr(?:y|ies)|owns?|plays?|uses?|hits?)\s+)?"
         r"(?:(?:these\s+)?clubs?\s*[:,]?\s+)?(?:an?\s+|the\s+|his\s+|her\s+|my\s+)?", _only),
        (r"(?:without|no|never|leav(?:es|ing)"
         r"|(?:doesn't|does not|don't|do not)(?=\s+(?:hit|use|carry|play|have|own)))\s+"
         r"(?:(?:hits?|uses?|carry|carries|plays?|have|has|owns?)\s+)?"
         r"(?:the\s+|an?\s+|his\s+|her\s+|my\s+)?", _without),
        (r"(?:called|named?)\s*[:=]?\s*(?P<name>[^\W\d_][\w'’-]*)", _name),
    )
)  # fmt: skip


def player_said(text: str) -> tuple[dict[str, Any], list[str]]:
    """The contents of a bag file that some words mean, and sentences on what was taken for granted.

    Raises
    ------
    FileError
        A word that is not understood where it stands, or something said twice.
    """
    reader = _Reader(text)
    return reader.read(), reader.granted


def player_table(text: str) -> dict[str, Any]:
    """The contents of a bag file that some words mean; raises as `player_said`."""
    return player_said(text)[0]
