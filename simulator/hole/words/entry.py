"""Lines of a hole file in the making: keys and values, and which of them nobody said."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import numpy as np

from simulator.hole.words import assumed as a
from simulator.hole.words.angled import Ellipse
from simulator.hole.words.feature import Units
from simulator.hole.words.lex import listed

PLAIN = frozenset(listed("name turn_deg colour playable slope_pct falls density lost_chance from_assumed"))
"""Keys without a unit; all others are lengths in yards here, in the unit of the hole in the file."""


@dataclass
class Entry:
    """One table of a hole file.

    Parameters
    ----------
    kind : key of the file ("bunker"); keys : its values, lengths in yards.
    text : the words it came from.
    assumed : keys nobody said; reasons : the same in words, for the answer.
    """

    kind: str
    keys: dict[str, Any]
    text: str = ""
    assumed: list[str] = field(default_factory=list)
    reasons: list[str] = field(default_factory=list)

    def assume(self, reason: str, *keys: str) -> None:
        """Note keys that were filled in, and what was filled in."""
        self.assumed += [key for key in keys if key not in self.assumed]
        if reason and reason not in self.reasons:
            self.reasons.append(reason)

    @property
    def sentence(self) -> str:
        """What was assumed of it, as a sentence; empty when nothing was."""
        if not self.reasons:
            return ""
        name = str(self.keys.get("name", self.kind)).replace("_", " ")
        if self.kind in ("pin", "tee") and name != self.kind:
            name = f"{name} {self.kind}"
        return f"Assumed of {name}: {', '.join(self.reasons)}."[:200]


@dataclass
class Draft:
    """A hole in the making.

    Parameters
    ----------
    units : of the file; par, length_yd, turns : of the line of play ((at, degrees) each).
    fairway_left_yd, fairway_right_yd : from the line to its edges, for what stands beside it.
    green_front_yd, green_back_yd, green_half_yd, green_offset_yd : the green's ends, half width, offset,
        along and across the line of play; green : its own shape, which may lie at an angle to it.
    between : offsets of the inner edges of a split fairway [yd]; None of any other.
    """

    units: Units
    name: str
    par: int
    length_yd: float
    turns: list[tuple[float, float]] = field(default_factory=list)
    top: dict[str, Any] = field(default_factory=dict)
    top_assumed: list[str] = field(default_factory=list)
    assumed: list[str] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)
    entries: list[Entry] = field(default_factory=list)
    heights: list[tuple[float, float, float]] = field(default_factory=list)
    fairway_left_yd: float = 16.0
    fairway_right_yd: float = 16.0
    fairway_from_yd: float = 0.0
    fairway_to_yd: float = 0.0
    green_front_yd: float = 0.0
    green_back_yd: float = 0.0
    green_half_yd: float = 12.0
    green_offset_yd: float = 0.0
    green: Ellipse = field(default_factory=lambda: Ellipse(a.GREEN_DEPTH, a.GREEN_WIDTH))
    between: tuple[float, float] | None = None

    def fairway_edge(self, side: str, at_yd: float | None = None) -> float:
        """From the line to the edge of the fairway on a side [yd]; of one that narrows, at a station."""
        usual = self.fairway_left_yd if side == "left" else self.fairway_right_yd
        for keys in (one.keys for one in self.of("fairway")):
            stations = keys.get("stations")
            if at_yd is not None and stations is not None and stations[0] <= at_yd <= stations[-1]:
                return abs(float(np.interp(at_yd, stations, keys[side])))
        return usual

    def assume_once(self, sentence: str) -> None:
        """Note what is assumed of the hole as a whole."""
        if sentence not in self.assumed:
            self.assumed.append(sentence)

    def of(self, kind: str) -> list[Entry]:
        """The entries of a kind, in the order of the words."""
        return [entry for entry in self.entries if entry.kind == kind]

    def name_for(self, *wishes: str) -> str:
        """The first of some names that no entry has; the last with a number when all are taken."""
        taken = {str(e.keys.get("name", "")).casefold() for e in self.entries}
        taken |= {f"{e.keys['name']} tee".casefold() for e in self.of("tee")}
        wishes = tuple(" ".join(w.split())[:50] for w in wishes if w.strip())
        for wish in wishes:
            if wish.casefold() not in taken:
                return wish
        number = 2
        while f"{wishes[-1]} {number}".casefold() in taken:
            number += 1
        return f"{wishes[-1]} {number}"
