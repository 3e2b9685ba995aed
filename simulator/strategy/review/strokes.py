"""The strokes that notes tell of, each from a place on the hole to another."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace

from ...errors import UsageError
from ...hole.model import Hole
from ...hole.surfaces import LIE_OF, PENALTY_SURFACES, WORDS, Lie, Surface
from ...units import FT_PER_YD, YD_PER_M
from ..by_green import by_the_green
from ..places import place, spot, tee_start
from ..result import Start
from ..words import NUMBER, read_words
from . import notes as n

LONGEST_PUTT_FT = 180.0
"""Longest putt there is [ft]."""

_GREEN = re.compile(
    rf"(?:the\s+)?(?:green\b[\s,:]*)?(?:(?P<size>{NUMBER})\s*(?P<unit>feet|foot|ft|'|′|m|metres?|meters?)?)"
    r"(?P<rest>(?:[\s,]+(?:from|of|the|a|hole|pin|flag|on|green|putt|away|left|right|short|past|long|above|below|"
    r"high|side|behind))*)",
    re.IGNORECASE,
)
_TURNS = {"short": math.pi, "below": None, "above": None, "past": 0.0, "long": 0.0, "behind": 0.0,
          "left": -0.5 * math.pi, "right": 0.5 * math.pi}  # fmt: skip
"""Where the ball is from the hole, turned from the way to the hole as the player saw it; above and below
are by the slope."""


_WATER_WORDS = frozenset(
    ("water", "water hazard", "penalty area", "hazard", "red", "yellow", "pond", "lake", "stream", "ditch")
)


@dataclass(frozen=True)
class Rest:
    """Where a ball lies.

    Attributes
    ----------
    x_yd, y_yd : float
        In the hole frame.
    lie : Lie
    words : str
        The place as a reader would say it.
    putt_ft : float or None
        On the green: how far the hole is.
    sided : bool
        Whether it is known on which side of the hole; if not, the place is one of many.
    """

    x_yd: float
    y_yd: float
    lie: Lie
    words: str
    putt_ft: float | None = None
    sided: bool = True


@dataclass(frozen=True)
class Stroke:
    """One stroke, or the penalty of a drop nobody's stroke was the reason of.

    Attributes
    ----------
    number : int
        Of the stroke on the hole, penalties before it counted.
    kind : str
        ``"swing"``, ``"putt"`` or ``"drop"`` (an unplayable ball: a choice without a swing).
    club : str
        As noted; ``"putt"``, ``"unplayable"``.
    start : Rest
    end : Rest or None
        Where the next is played from; None: holed.
    strokes : int
        Strokes it was: 1, of putts their number, of a drop none.
    penalty : int
        Penalty strokes.
    went : str
        Where the ball went, with what became of it.
    """

    number: int
    kind: str
    club: str
    start: Rest
    end: Rest | None
    strokes: int
    penalty: int
    went: str


@dataclass(frozen=True)
class Played:
    """A hole as it was played.

    Attributes
    ----------
    strokes : tuple of Stroke
    holed : bool
        False: picked up, or the notes stop before the hole.
    score : int
        Strokes and penalties.
    """

    strokes: tuple[Stroke, ...]
    holed: bool

    @property
    def score(self) -> int:
        return sum(stroke.strokes + stroke.penalty for stroke in self.strokes)


def strokes_of(told: n.Notes, hole: Hole) -> Played:
    """The strokes that notes tell of, on a hole with the tee and pin in use.

    Raises
    ------
    UsageError
        A place that is none, putts from off the green, water without a drop, and the like.
    """
    return _Telling(hole, _start(told, hole)).told(told.clauses)


def _start(told: n.Notes, hole: Hole) -> Rest:
    if told.start is None:
        return _rest(tee_start(hole))
    return resting(told.start, hole, None)


def _rest(start: Start) -> Rest:
    return Rest(start.x_yd, start.y_yd, Lie[start.lie.upper().replace(" ", "_")], start.words)


def resting(text: str, hole: Hole, before: Rest | None) -> Rest:
    """Where a ball came to rest, on the green in feet from the hole, elsewhere as `places.place` has it.

    Parameters
    ----------
    before : Rest or None
        Where it was played from: short, past, left and right are as seen from there.
    """
    if by_the_green(text, hole)[0] != text:
        return _rest(place(text, hole))
    found = _GREEN.fullmatch(text.strip())
    if found and (found["unit"] or "green" in text.casefold()):
        return _on_green(text, hole, found, before)
    try:
        said = read_words(text)
    except UsageError as error:
        raise UsageError(f'{error}; on the green feet, "12 ft"') from None
    if said.ground is not Surface.TEE:
        x, y, surface = spot(text, hole, said)
        if surface is Surface.GREEN:
            return _green_rest(hole, x, y, sided=True)
        if surface is Surface.WATER:
            raise n.refused(text, 'that is in the water: say "the water", and where it was dropped')
        if surface is Surface.OUT_OF_BOUNDS:
            raise n.refused(text, 'that is out of bounds: say "out of bounds"')
    return _rest(place(text, hole))


def _on_green(text: str, hole: Hole, found: re.Match[str], before: Rest | None) -> Rest:
    unit = (found["unit"] or "ft").casefold()
    feet = float(found["size"]) * (YD_PER_M * FT_PER_YD if unit[0] == "m" else 1.0)
    if not 0.0 < feet <= LONGEST_PUTT_FT:
        raise n.refused(text, f"found {feet:g} ft from the hole, allowed are up to {LONGEST_PUTT_FT:g}")
    sides = [word for word in re.findall(r"[a-z]+", found["rest"].casefold()) if word in _TURNS]
    if "high" in found["rest"].casefold() and not sides:
        raise n.refused(text, "'pin high' needs left or right")
    if len(sides) > 1:
        raise n.refused(text, f"{sides[0]} or {sides[1]} of the hole? allowed: one of them")
    away = feet / FT_PER_YD
    turn = _turn(hole, sides[0] if sides else "short", before)
    x, y = hole.pin.x_yd + away * math.sin(turn), hole.pin.y_yd + away * math.cos(turn)
    surface = hole.surface_at(x, y)
    if surface is Surface.GREEN or not sides:
        rest = _green_rest(hole, x, y, sided=bool(sides))
        return replace(rest, words=f"{rest.words} {sides[0]}" if sides else rest.words)
    lie = LIE_OF.get(surface)
    if lie is None:
        raise n.refused(text, f"that place is {WORDS[surface]}")
    return Rest(x, y, lie, f"{away:.0f} yd out, {WORDS[surface]}")


def _turn(hole: Hole, side: str, before: Rest | None) -> float:
    """Direction from the hole to the ball, clockwise from +y [rad]."""
    if side in ("above", "below"):
        feature = hole.feature_at(hole.pin.x_yd, hole.pin.y_yd)
        slope = None if feature is None else feature.slope
        falls = math.radians(slope.falls_bearing_deg) if slope is not None else math.pi
        return falls + (math.pi if side == "above" else 0.0)
    from_x, from_y = (0.0, 0.0) if before is None else (before.x_yd, before.y_yd)
    towards = math.atan2(hole.pin.x_yd - from_x, hole.pin.y_yd - from_y)
    turn = _TURNS[side]
    assert turn is not None
    return towards + turn


def _green_rest(hole: Hole, x: float, y: float, sided: bool) -> Rest:
    feet = FT_PER_YD * math.hypot(x - hole.pin.x_yd, y - hole.pin.y_yd)
    return Rest(x, y, Lie.GREEN, f"{feet:.0f} ft", putt_ft=max(feet, 0.1), sided=sided)


def _area(text: str, hole: Hole) -> Surface | None:
    """Penalty area or out of bounds that words name, None where they name none or say how far it is."""
    plain = re.sub(r"^(?:the|a|an)\s+", "", text.strip().casefold())
    if plain in _WATER_WORDS:
        return Surface.WATER
    for feature in hole.features:
        if feature.surface in (*PENALTY_SURFACES, Surface.OUT_OF_BOUNDS) and plain == feature.name.casefold():
            return feature.surface
    return None


class _Telling:
    """Clause by clause: where the ball lies, and how many strokes have been played."""

    def __init__(self, hole: Hole, start: Rest) -> None:
        self.hole, self.at = hole, start
        self.strokes: list[Stroke] = []
        self.in_water: Stroke | None = None
        self.holed = False

    @property
    def count(self) -> int:
        return sum(stroke.strokes + stroke.penalty for stroke in self.strokes)

    def told(self, clauses: tuple[n.Clause, ...]) -> Played:
        for clause in clauses:
            if self.in_water is not None and not isinstance(clause, n.Drop | n.Again):
                self._no_drop(self.in_water, clause.said)
            self._clause(clause)
        if self.in_water is not None:
            self._no_drop(self.in_water, "the end")
        return Played(tuple(self.strokes), self.holed)

    def _no_drop(self, stroke: Stroke, said: str) -> None:
        raise n.refused(said, f"where was the ball of stroke {stroke.number} dropped? before {said!r}")

    def _clause(self, clause: n.Clause) -> None:
        if isinstance(clause, n.Swing):
            self._swing(clause)
        elif isinstance(clause, n.Out):
            went = "lost" if clause.where.casefold().startswith("lost") else "out of bounds"
            self._add("swing", clause.club, self.at, 1, 1, went)
        elif isinstance(clause, n.Drop):
            self._drop(clause)
        elif isinstance(clause, n.Again):
            self._again(clause)
        elif isinstance(clause, n.Putts):
            if self.at.lie is not Lie.GREEN:
                raise n.refused(clause.said, f"the ball is not on the green but {self.at.words}")
            self._add("putt", "putt", None, clause.count, 0, clause.said)

    def _add(self, kind: str, club: str, end: Rest | None, strokes: int, penalty: int, went: str) -> None:
        number = self.count + 1
        self.strokes.append(Stroke(number, kind, club, self.at, end, strokes, penalty, went))
        if end is None:
            self.holed = True
        else:
            self.at = end

    def _swing(self, swing: n.Swing) -> None:
        kind = "putt" if re.match(r"putt", swing.club.casefold()) else "swing"
        if self.at.lie is Lie.GREEN and kind != "putt":
            raise n.refused(swing.said, "the ball is on the green: a putt")
        if kind == "putt" and self.at.lie is not Lie.GREEN:
            kind, swing = "swing", replace(swing, club="chip")  # from the fringe: rolled as a low chip is
        if swing.where == n.HOLED:
            self._add(kind, swing.club, None, 1, 0, n.HOLED)
            return
        area = _area(swing.where, self.hole)
        if area is None:
            end = resting(swing.where, self.hole, self.at)
            self._add(kind, swing.club, end, 1, 0, end.words)
        elif area is Surface.OUT_OF_BOUNDS:
            self._add(kind, swing.club, self.at, 1, 1, swing.where)
        else:
            self._add(kind, swing.club, self.at, 1, 1, swing.where)
            self.in_water = self.strokes[-1]

    def _drop(self, drop: n.Drop) -> None:
        if re.fullmatch(r"(?:again|back|at the same place|from the same place)", drop.place, re.IGNORECASE):
            self._again(n.Again(drop.said))
            return
        last = self.strokes[-1] if self.strokes else None
        end = resting(drop.place, self.hole, self.at)
        out = last is not None and last.penalty == 1 and last.end is last.start and self.in_water is None
        if self.in_water is not None or (out and self.hole.local_rule_e5):
            assert last is not None
            more = 0 if self.in_water is not None else 1  # local rule E-5 costs two strokes
            went = f"{last.went}, dropped {end.words}"
            self.strokes[-1] = replace(last, end=end, penalty=last.penalty + more, went=went)
            self.at, self.in_water = end, None
        elif out:
            raise n.refused(drop.said, "no local rule E-5 here: the next is played from the same place")
        elif drop.free:
            self._moved(drop, end)
        else:
            self._add("drop", "unplayable", end, 0, 1, f"dropped {end.words}")

    def _moved(self, drop: n.Drop, end: Rest) -> None:
        """Free relief: the ball's place is where it was dropped."""
        if not self.strokes:
            raise n.refused(drop.said, "nothing was played before it")
        last = self.strokes[-1]
        self.strokes[-1] = replace(last, end=end, went=f"{last.went}, dropped {end.words}")
        self.at = end

    def _again(self, clause: n.Again) -> None:
        last = self.strokes[-1] if self.strokes else None
        if last is None:
            raise n.refused(clause.said, "nothing was played before it")
        if last.end is last.start:  # out of bounds, lost, or water: the stroke and the distance are counted
            self.in_water = None
            return
        self._add("drop", "unplayable", last.start, 0, 1, "back where it was played from")
