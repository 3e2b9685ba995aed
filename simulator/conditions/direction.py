"""Where the wind comes from, put together word by word."""

from __future__ import annotations

import math
from typing import NoReturn

from ..errors import UsageError
from ..toml_text import short_line
from ..units import one_turn_deg

QUARTERING_DEG = 45.0
"""Off dead against, or dead behind, of a wind that is both that and off a side (common practice)."""

MOSTLY_DEG = 22.5
"""The same where one of the two is said to be the lesser: half way to the greater."""

_WHICH_SIDE = "from which side? say off the left or off the right"
_OPPOSITE = {"against": "helping", "helping": "against", "left": "right", "right": "left"}


class Direction:
    """Direction words of one phrase.

    Parameters
    ----------
    shown : str
        The phrase as quoted in refusals.
    along_deg, y_bearing_deg
        As in `windwords.read_wind`.
    """

    def __init__(self, shown: str, along_deg: float, y_bearing_deg: float | None) -> None:
        self.shown, self.along_deg, self.y_bearing_deg = shown, along_deg, y_bearing_deg
        self.assumed: list[str] = []
        self._exact: tuple[float, str] | None = None  # bearing it comes from in the hole frame; its words
        self._loose: tuple[float, str] | None = None  # degrees that may be a compass's or off a side
        self._senses: list[tuple[str, str]] = []
        self._flip = False

    def _refuse(self, word: str, why: str) -> NoReturn:
        raise UsageError(f"wind {self.shown}: {short_line(word)!r} {why}")

    def _set(self, bearing_deg: float, word: str) -> None:
        if self._exact is not None:
            self._refuse(word, f"is a second direction beside {self._exact[1]!r}")
        self._exact = (one_turn_deg(bearing_deg + (180.0 if self._flip else 0.0)), word)
        self._flip = False

    def clock(self, off_deg: float, word: str) -> None:
        """A clock's hand, degrees clockwise off 12, which is where the shot goes."""
        self._set(self.along_deg + off_deg, word)

    def compass(self, bearing_deg: float, word: str) -> None:
        """A compass bearing [deg]."""
        if not 0.0 <= bearing_deg <= 360.0:
            self._refuse(word, "is on no compass; allowed: 0 to 360 degrees")
        if self.y_bearing_deg is None:
            self._refuse(
                word,
                "is a compass direction and the bearing of this hole is not known; give bearing_deg in the "
                "hole file, or say it by the clock (2 o'clock) or plainly (off the right)",
            )
        self._set(bearing_deg - self.y_bearing_deg, word)

    def degrees(self, value: float, word: str) -> None:
        """Degrees, of the compass or off dead against: a side said with them settles it."""
        if self._loose is not None:
            self._refuse(word, f"is a second direction beside {self._loose[1]!r}")
        self._loose = (value, word)

    def plain(self, sense: str, word: str) -> None:
        """A plain word: its sense, and itself."""
        if sense == "toward":
            self._flip = True
            return
        found = self._word(_OPPOSITE.get(sense, ""))
        if found is not None:
            self._refuse(word, f"contradicts {found[1]!r}")
        self._senses.append((sense, word))

    def _word(self, *senses: str) -> tuple[str, str] | None:
        return next(((s, w) for s, w in self._senses if s in senses), None)

    def _lesser(self) -> str | None:
        """Which of "along" and "side" is said to be the lesser part."""
        kind = {"against": "along", "helping": "along", "left": "side", "right": "side", "across": "side"}
        for k, (sense, word) in enumerate(self._senses):
            if sense not in ("slightly", "mostly"):
                continue
            after = [kind[s] for s, _ in self._senses[k + 1 :] if s in kind]
            before = [kind[s] for s, _ in self._senses[:k] if s in kind]
            if not after + before:
                self._refuse(word, "of what? say into, helping, off the left or off the right with it")
            of = after[0] if after else before[-1]
            if sense == "slightly":
                return of
            return "side" if of == "along" else "along"
        return "along" if self._word("across") else None

    def _plain_deg(self) -> float | None:
        """Bearing off dead against by the plain words alone, clockwise; None when there are none."""
        along, side, across = (
            self._word("against", "helping"),
            self._word("left", "right"),
            self._word("across"),
        )
        self._quartered(along, side)
        lesser = self._lesser()
        if along is None and side is None:
            if across is not None:
                self._refuse(across[1], _WHICH_SIDE)
            return None
        if side is None:
            if across is not None:
                self._refuse(across[1], _WHICH_SIDE)
            return 0.0 if along is None or along[0] == "against" else 180.0
        if along is None:
            off = 90.0
            soft = self._word("slightly")
            if soft is not None and across is None:
                self._refuse(soft[1], "and what is the rest? say into or helping with it")
        else:
            off = QUARTERING_DEG
            if lesser is not None:
                off = MOSTLY_DEG if lesser == "side" else 90.0 - MOSTLY_DEG
            if self._loose is not None:
                off = self._loose[0]
            self._loose = None
            if along[0] == "helping":
                off = 180.0 - off
        return off if side[0] == "right" else -off

    def _quartered(self, along: tuple[str, str] | None, side: tuple[str, str] | None) -> None:
        """Quartering is half along, half across: it wants both said, unless a clock or compass says them."""
        quarter = self._word("quartering")
        if quarter is None or self._exact is not None:
            return
        if along is None:
            name = side[0] if side else "right"
            self._refuse(
                quarter[1],
                f'may be into or helping; say "into, off the {name}" or "helping, off the {name}", or a '
                f'clock, "from {2 if name == "right" else 10} o\'clock"',
            )
        if side is None:
            self._refuse(quarter[1], _WHICH_SIDE)

    def from_deg(self) -> float:
        """Bearing it comes from in the hole frame [deg], 0 <= bearing < 360.

        Raises
        ------
        UsageError
            No direction, two of them, or words that contradict each other.
        """
        if self._loose is not None:
            value, word = self._loose
            side = self._word("left", "right")
            if side is None:
                self.compass(value, word)
                self._loose = None
            elif not value <= 90.0:
                self._refuse(
                    word, f"off a side ({side[1]!r}): allowed: 0 to 90 degrees, off dead against or behind"
                )
            elif self._word("against", "helping") is None:
                self._senses.append(("against", word))
                self.assumed.append(f"{word!r} and {side[1]!r} taken as that much off dead against")
        if self._flip:
            self._refuse("to", "where? say it with a clock, a compass point or a side")
        plain = self._plain_deg()
        if self._exact is not None:
            self._agree(self._exact)
            bearing = self._exact[0]
        elif plain is None:
            raise UsageError(
                f"wind {self.shown}: where from is not said; allowed: 2 o'clock, NW, 240 degrees, into, "
                "helping, off the left, off the right"
            )
        else:
            bearing = self.along_deg + plain
        return one_turn_deg(bearing)

    def _agree(self, exact: tuple[float, str]) -> None:
        """Refuse plain words that are untrue of a direction said exactly."""
        off = math.radians(exact[0] - self.along_deg)
        truth = {
            "against": math.cos(off),
            "helping": -math.cos(off),
            "right": math.sin(off),
            "left": -math.sin(off),
        }
        for sense, word in self._senses:
            if truth.get(sense, 1.0) < -1e-9:
                self._refuse(word, f"contradicts {exact[1]!r}")
