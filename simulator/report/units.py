"""Yards or metres: where lengths and winds become words. Figures are in yards (putts: feet) and mph."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass

from ..errors import UsageError
from ..units import FT_PER_YD, M_PER_YD, MPS_PER_MPH

NAMES = ("yards", "metres")
"""Units somebody may ask for."""

_NUMBER = re.compile(r"\d+(?:,\d{3})*(?:\.\d+)?")
_FEET = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?) ft\b")
_SAID = re.compile(
    rf"(?<![\w.])({_NUMBER.pattern})((?: to | and | by |, ){_NUMBER.pattern})*[ -](yd|yards|yard)\b"
)
_MPH = re.compile(rf"(?<![\w.])({_NUMBER.pattern})((?: to | and | \+- ){_NUMBER.pattern})* mph\b")
_QUOTED = re.compile(r"""(?<!\w)(?:'[^']*'|"[^"]*")(?!\w)""")


@dataclass(frozen=True)
class Units:
    """How lengths are written.

    Attributes
    ----------
    name : str
        ``"yards"`` or ``"metres"``.
    """

    name: str = "yards"

    @property
    def metric(self) -> bool:
        return self.name == "metres"

    @property
    def short(self) -> str:
        """``"yd"`` or ``"m"``."""
        return "m" if self.metric else "yd"

    def of(self, yards: float) -> float:
        """A length in this unit."""
        return yards * M_PER_YD if self.metric else yards

    def in_yards(self, length: float) -> float:
        """Yards in a length given in this unit."""
        return length / M_PER_YD if self.metric else length

    def whole(self, yards: float) -> int:
        """A length in whole units."""
        return round(self.of(yards))

    def clear(self, yards: float) -> str:
        """A length with its unit that nobody may be nearer than: never less than it is."""
        return f"{math.ceil(self.of(yards))} {self.short}"

    def number(self, yards: float, digits: int = 0, signed: bool = False) -> str:
        """A length without its unit, for tables whose heading names it."""
        value = round(self.of(yards), digits) + 0.0  # no minus zero
        return f"{value:{'+' if signed else ''}.{digits}f}"

    def length(self, yards: float) -> str:
        """A length with its unit: "213 yd"."""
        return f"{self.whole(yards)} {self.short}"

    def range(self, low_yd: float, high_yd: float) -> str:
        """A range: "200 to 245 yd"; one number when both round to it."""
        low, high = self.whole(low_yd), self.whole(high_yd)
        return f"{low} {self.short}" if low == high else f"{low} to {high} {self.short}"

    def side(self, offset_yd: float) -> str:
        """An offset, right positive: "9 yd left"; empty when it rounds to nothing."""
        size = self.whole(abs(offset_yd))
        return f"{size} {self.short} {'left' if offset_yd < 0.0 else 'right'}" if size else ""

    def bare_side(self, offset_yd: float, digits: int = 0) -> str:
        """The same without the unit: "9 left", "0"; with decimals "9.3 left"."""
        size = self.number(abs(offset_yd), digits)
        return f"{size} {'left' if offset_yd < 0.0 else 'right'}" if float(size) else "0"

    def mark(self, offset_yd: float) -> str:
        """The same for a narrow column: "9L", "12R", "0"."""
        size = self.whole(abs(offset_yd))
        return f"{size}{'L' if offset_yd < 0.0 else 'R'}" if size else "0"

    def putt(self, feet: float) -> str:
        """The length of a putt: "12 ft", "3.7 m"."""
        return f"{feet / FT_PER_YD * M_PER_YD:.1f} m" if self.metric else f"{feet:.0f} ft"

    def wind(self, mph: float) -> str:
        """A speed of the wind without its unit, whole miles an hour or a tenth of a metre a second."""
        return f"{round(mph * MPS_PER_MPH, 1):g}" if self.metric else f"{mph:.0f}"

    @property
    def wind_unit(self) -> str:
        """``"mph"`` or ``"m/s"``."""
        return "m/s" if self.metric else "mph"

    def place(self, words: str) -> str:
        """Ready words for where a ball lies, yards and the feet of a putt turned into this unit."""
        if not self.metric:
            return words
        return _FEET.sub(lambda feet: self.putt(float(feet[1])), self.sentence(words))

    def sentence(self, words: str) -> str:
        """A ready sentence, lengths and winds in it turned into this unit."""
        if not self.metric:
            return words
        return _MPH.sub(lambda found: _NUMBER.sub(self._wind, found[0][:-3]) + "m/s", self._lengths(words))

    def _wind(self, found: re.Match[str]) -> str:
        return self.wind(float(found[0].replace(",", "")))

    def _lengths(self, words: str) -> str:
        """Words with the yards in them turned into metres, as many decimals as they had."""

        def metres(found: re.Match[str]) -> str:
            text = found[0][: -len(found[3])]
            return _NUMBER.sub(_converted, text) + ("m" if found[3] == "yd" else "metres")

        return _SAID.sub(metres, words)

    def complaint(self, words: str) -> str:
        """An error's line, yards in it turned into this unit; what is quoted stays as it was typed.

        Miles an hour stay: what is wrong with a wind is told in what a bare number of it is.
        """
        if not self.metric:
            return words
        return "".join(part if quoted else self._lengths(part) for part, quoted in _quoted_or_not(words))


def _quoted_or_not(words: str) -> Iterator[tuple[str, bool]]:
    """The words in pieces, and of each whether it stands between quotation marks."""
    done = 0
    for found in _QUOTED.finditer(words):
        yield words[done : found.start()], False
        yield found[0], True
        done = found.end()
    yield words[done:], False


def _converted(found: re.Match[str]) -> str:
    text = found[0]
    digits = len(text.partition(".")[2])
    return f"{float(text.replace(',', '')) * M_PER_YD:,.{digits}f}"


YARDS, METRES = Units("yards"), Units("metres")


def units_named(name: str) -> Units:
    """The units somebody asked for, by any usual word.

    Raises
    ------
    UsageError
        A word that is none of them.
    """
    word = name.strip().casefold()
    if word in ("yards", "yard", "yd", "yds", "y"):
        return YARDS
    if word in ("metres", "metre", "meters", "meter", "m"):
        return METRES
    raise UsageError(f"units {name!r}; allowed: {' or '.join(NAMES)}")
