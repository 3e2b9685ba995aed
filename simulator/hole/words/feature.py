"""One feature as it was said: its kind, its noun, and what was said of it, taken piece by piece."""

from __future__ import annotations

from dataclasses import dataclass, field

from simulator.hole.words.lex import Token
from simulator.units import FT_PER_YD, YD_PER_M

WORD_OF_KIND = {
    "stroke_index": "stroke index",
    "heavy_rough": "heavy rough",
    "out": "out of bounds",
    "e5": "local rule",
    "runoff": "run-off",
}


_FALLS = (
    '; only greens and fairways fall in words: "green falls back to front 2%", "fairway falls left to right '
    '4%"; a file can give any ground slope_pct'
)
_SAY_INSTEAD = {
    "falls": _FALLS,
    "way": _FALLS,
    "carry": '; say of what: "carry 190 to clear the pond", "fairway from 150"',
    "short_of": '; say where: "at 190", "190 to 230"',
    "narrowed": '; say from where: "narrows to 20 at 260"',
    "narrows": '; say it of the fairway: "fairway 30 wide, narrows to 20 at 260"',
}
"""What to say for things said of a feature that does not have them."""

_SAY_ONCE = {"fairway": '; one that changes: "fairway 35 wide to 250, then 22", "narrows to 22 at 250"'}
"""What to say where a feature is told a second time."""


@dataclass(frozen=True, eq=False)
class Said:
    """One thing said: which pattern, its words, and the numbers and words in it by group."""

    what: str
    token: Token
    words: dict[str, str]
    numbers: dict[str, Token]
    shown: str


@dataclass(eq=False)
class Feature:
    """A feature and what was said of it.

    Parameters
    ----------
    kind : one of the kinds of `vocabulary`; noun : the words it was called by.
    said : in the order of the words; builders take what they understand, the rest is refused.
    text : the words it was read from.
    called : the first word of its noun as it was typed; empty of the others of a list, told by their places.
    """

    kind: str
    noun: str
    token: Token
    said: list[Said] = field(default_factory=list)
    text: str = ""
    called: str = ""

    def has(self, *what: str) -> bool:
        """Whether anything of some kinds was said and is not taken yet."""
        return any(one.what in what for one in self.said)

    def take(self, *what: str) -> Said | None:
        """The one thing said of some kinds, removed; None when nothing was.

        Raises
        ------
        UsageError
            When it was said twice.
        """
        found = [one for one in self.said if one.what in what]
        if len(found) > 1:
            raise found[1].token.error(
                f"({found[1].shown}): said of the {self.word} already ({found[0].shown})"
                f"{_SAY_ONCE.get(self.kind, '')}"
            )
        if not found:
            return None
        self.said.remove(found[0])
        return found[0]

    def take_all(self, *what: str) -> list[Said]:
        """Everything said of some kinds, removed."""
        found = [one for one in self.said if one.what in what]
        self.said = [one for one in self.said if one.what not in what]
        return found

    def finish(self) -> None:
        """Refuse what no builder took."""
        if self.said:
            one = self.said[0]
            why = _SAY_INSTEAD.get(one.what, "")
            found = f"({one.shown}): not understood of the {self.word or 'hole'}{why}"
            raise one.token.error(found, unknown=True)

    @property
    def word(self) -> str:
        """What it is called in a refusal."""
        return self.noun or WORD_OF_KIND.get(self.kind, self.kind)


class Units:
    """Lengths in yards, numbers without a unit read in the unit of the hole.

    Parameters
    ----------
    unit : "yd" or "m".

    Attributes
    ----------
    written : unit of the file and of the sentences in it; that of the words unless somebody sets it.
    """

    def __init__(self, unit: str) -> None:
        self.unit = self.written = unit

    def yd(self, token: Token) -> float:
        """A length said, in yards.

        Raises
        ------
        UsageError
            When it is a percentage or an angle.
        """
        unit = token.unit or self.unit
        if unit in ("percent", "degrees"):
            raise token.error("is no length")
        return token.value * {"yd": 1.0, "m": YD_PER_M, "ft": 1.0 / FT_PER_YD}[unit]

    def shown(self, yards: float) -> str:
        """A length in the unit of the file, in words."""
        value = yards if self.written == "yd" else yards / YD_PER_M
        number = f"{value:.0f}" if abs(value) >= 10.0 or abs(value - round(value)) < 0.05 else f"{value:.1f}"
        unit = "yard" if self.written == "yd" else "metre"
        return f"{number} {unit}{'' if number == '1' else 's'}"


def plain(token: Token, low: float, high: float, what: str) -> float:
    """A number that is no length, within limits.

    Raises
    ------
    UsageError
        A unit of length, or a number out of range.
    """
    if token.unit in ("yd", "m", "ft"):
        raise token.error(f"is a length; {what} is a number from {low:g} to {high:g}")
    if not low <= token.value <= high:
        raise token.error(f"is no {what}; allowed: {low:g} to {high:g}")
    return token.value


def need(condition: bool, token: Token, why: str) -> None:
    """Refuse at a word unless something holds."""
    if not condition:
        raise token.error(why)
