"""The strokes that notes tell of, each from a place on the hole to another."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import NoReturn

from ...errors import UsageError
from ...hole.model import Hole
from ...hole.rules import OPTIONS, Situation, Way
from ...hole.surfaces import LIE_WORDS, Lie, Surface
from ...tables.shots import PUTTER
from ..distancewords import NUMBER, UNIT
from ..goals import PAR_WORDS
from ..places import tee_start
from ..placewords import read_words
from . import notes as n
from .dropped import beside_ball, beside_water
from .ends import end_of
from .named import area_named, is_ground
from .phrases import NO_CLUB
from .rests import NoBallLies, Rest, from_start, resting
from .unmeasured import UsualLength

_OUT = re.compile(r"out(?:\s+(?!of\b).*)?", re.IGNORECASE)
_GOT_OUT = re.compile(
    r"\b(?:(?:chip|pitch|splash)(?:p?ed|es)?|(?:punch|blast|hack|knock|play)(?:ed|es|s)?|dug|digs?|got|gets?)\b",
    re.IGNORECASE,
)
"""Words of a stroke that brings a ball out of trouble, which is not out of bounds."""

_BACK_ON_LINE = re.compile(r"\bback\s+on\s+(?:the|a)\s+line\b", re.IGNORECASE)
_SAME_SAND = re.compile(r"(?:in\s+)?(?:(?:the|same)\s+)*(?:it|bunker|sand|trap)", re.IGNORECASE)
_HOLED_OUT = re.compile(r"(?:holed|sank|sunk)(?!.*\bputt)", re.IGNORECASE)
_OUT_ALONE = re.compile(rf"{NUMBER}\s*(?:{UNIT})?\s+out", re.IGNORECASE)


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
class PlayedHole:
    """A hole as it was played.

    Attributes
    ----------
    strokes : tuple of Stroke
    holed : bool
        False: picked up, or the notes stop before the hole.
    """

    strokes: tuple[Stroke, ...]
    holed: bool

    @property
    def score(self) -> int:
        """Strokes and penalties."""
        return sum(stroke.strokes + stroke.penalty for stroke in self.strokes)


_OUT_OF_BUNKER = next(
    one
    for one in OPTIONS[Situation.UNPLAYABLE_IN_BUNKER]
    if one.way is Way.BACK_ON_LINE and not one.stay_in_bunker
)
"""What it costs to drop an unplayable ball outside the bunker it lies in."""


def _no_length(club: str, here: tuple[float, float] = (0.0, 0.0)) -> None:
    """Nobody knows how far the clubs go."""


def strokes_of(told: n.Notes, hole: Hole, usual: UsualLength | None = None) -> PlayedHole:
    """The strokes that notes tell of, on a hole with the tee and pin in use.

    Parameters
    ----------
    told : Notes
    hole : Hole
    usual : callable, optional
        How far the player's clubs go, for balls of which only the ground was noted; without it they are
        refused.

    Raises
    ------
    UsageError
        A place that is none, putts from off the green, water without a drop, and the like.
    """
    played = _Telling(hole, _start(told, hole), usual or _no_length).told(told.clauses)
    if told.scored is not None and played.holed:
        score = _OVER_PAR.get(told.scored.split()[0].split("-")[0].casefold())
        if played.score != (int(told.scored) if score is None else hole.par + score):
            why = f"the strokes before it come to {played.score} on a par {hole.par}: mend one of the two"
            raise UsageError(f"notes {told.scored!r}: {why}")
    return played


_OVER_PAR = PAR_WORDS | {"albatross": -3, "triple": 3}
"""Scores by the first word of their names, the rarer ones too."""


def _start(told: n.Notes, hole: Hole) -> Rest:
    if told.start is None:
        return from_start(tee_start(hole))
    return resting(told.start, hole, None)


class _Telling:
    """Clause by clause: where the ball lies, and how many strokes have been played."""

    def __init__(self, hole: Hole, start: Rest, usual: UsualLength) -> None:
        self.hole, self.at, self.usual = hole, start, usual
        self.strokes: list[Stroke] = []
        self.in_water: Stroke | None = None
        self.holed = False

    @property
    def count(self) -> int:
        """Strokes and penalties so far."""
        return sum(stroke.strokes + stroke.penalty for stroke in self.strokes)

    def told(self, clauses: tuple[n.Clause, ...]) -> PlayedHole:
        """The hole that the clauses tell of, one after the other."""
        for clause, behind in zip(clauses, (*clauses[1:], None), strict=True):
            if self.in_water is not None and not isinstance(clause, n.Drop | n.Again):
                self._no_drop(self.in_water, clause.said)
            if isinstance(clause, n.Swing):
                self._swing(clause, replayed=isinstance(behind, n.Again))
            else:
                self._clause(clause)
        if self.in_water is not None:
            self._no_drop(self.in_water, "the end")
        return PlayedHole(tuple(self.strokes), self.holed)

    def _no_drop(self, stroke: Stroke, said: str) -> NoReturn:
        raise n.refused(said, f"where was the ball of stroke {stroke.number} dropped? before {said!r}")

    def _clause(self, clause: n.Clause) -> None:
        if isinstance(clause, n.Out):
            trouble = self.at.lie in (Lie.BUNKER, Lie.TREES, Lie.HEAVY_ROUGH)
            if _OUT.fullmatch(clause.where) and (trouble or _GOT_OUT.search(clause.said)):
                of = f" of the {LIE_WORDS[self.at.lie]}" if trouble else ""
                say = 'Say "out of bounds", or what was left, "to 120 out, fairway"'
                raise n.refused(clause.said, f"out of bounds, or out{of} to where? {say}")
            inside = re.fullmatch(r"lost(?: ball)?\s+\w+\s+(.+)", clause.where, re.IGNORECASE)
            if inside and area_named(inside[1], self.hole) is Surface.WATER:
                say = f'say "into {inside[1]}, drop 150 out"'
                raise n.refused(clause.said, f"a ball in a penalty area: {say}")
            went = "lost" if clause.where.casefold().startswith("lost") else "out of bounds"
            self._add("swing", clause.club, self.at, 1, 1, went)
        elif isinstance(clause, n.Drop):
            self._drop(clause)
        elif isinstance(clause, n.Again):
            self._again(clause)
        elif isinstance(clause, n.Putts):
            if self.at.lie is not Lie.GREEN:
                if clause.count == 1 and _HOLED_OUT.match(clause.said):
                    club = "splash" if self.at.lie is Lie.BUNKER else "chip"
                    self._add("swing", club, None, 1, 0, n.HOLED)
                    return
                where = f"the ball is not on the green but {self.at.told}"
                raise n.refused(clause.said, f'{where}: from there say "putt to 3 ft; 1 putt"')
            self._add("putt", "putt", None, clause.count, 0, clause.said)

    def _add(self, kind: str, club: str, end: Rest | None, strokes: int, penalty: int, went: str) -> None:
        number = self.count + 1
        self.strokes.append(Stroke(number, kind, club, self.at, end, strokes, penalty, went))
        if end is None:
            self.holed = True
        else:
            self.at = end

    def _swing(self, swing: n.Swing, *, replayed: bool) -> None:
        """A swing; of one that is `replayed` it does not matter how far along the ball was given up."""
        kind = "putt" if re.match(r"putt", swing.club.casefold()) else "swing"
        if self.at.lie is Lie.GREEN and kind != "putt":
            noted = f" ({self.at.noted})" if self.at.noted else ""
            raise n.refused(swing.said, f"the ball is on the green{noted}: a putt")
        if kind == "putt" and self.at.lie is not Lie.GREEN:
            kind, swing = "swing", replace(swing, club=PUTTER.name)
        if swing.club == NO_CLUB:
            swing = replace(swing, club=self._club_out_of(swing))
        if kind == "putt" and re.fullmatch(r"\d+(?:\.\d+)?", swing.where):
            swing = replace(swing, where=f"{swing.where} ft")  # putts are told in feet
        if swing.where == n.HOLED:
            self._add(kind, swing.club, None, 1, 0, n.HOLED)
            return
        area = area_named(swing.where, self.hole)
        if area is None and replayed and is_ground(swing.where, self.hole):
            self._add(kind, swing.club, self.at, 1, 1, f"{swing.where}, unplayable")
        elif area is None:
            end = end_of(self.hole, self.at, swing, self.usual(swing.club, self.at.xy_yd))
            if re.search(r"\b(?:plugged|buried)\b", swing.said, re.IGNORECASE):
                end = replace(end, noted="a usual lie there is taken")
            self._add(kind, swing.club, end, 1, 0, end.told)
        elif area is Surface.OUT_OF_BOUNDS:
            self._add(kind, swing.club, self.at, 1, 1, swing.where)
        else:
            self._add(kind, swing.club, self.at, 1, 1, swing.where)
            self.in_water = self.strokes[-1]

    def _club_out_of(self, swing: n.Swing) -> str:
        """The swing that brings a ball out of where it lies, where no club was noted."""
        if self.at.lie is Lie.BUNKER:
            return "splash"
        if self.at.lie in (Lie.TREES, Lie.HEAVY_ROUGH):
            return "punch"
        raise n.refused(swing.said, "which club?")

    def _drop(self, drop: n.Drop) -> None:
        if re.fullmatch(r"(?:again|back|at the same place|from the same place)", drop.place, re.IGNORECASE):
            self._again(n.Again(drop.said))
            return
        last = self.strokes[-1] if self.strokes else None
        out = last is not None and last.penalty == 1 and last.end is last.start and self.in_water is None
        if out and not self.hole.local_rule_e5:
            raise n.refused(drop.said, 'no local rule E-5 here: played from the same place, say "again"')
        end = self._dropped(drop)
        if self.in_water is not None or (out and self.hole.local_rule_e5):
            assert last is not None
            more = 0 if self.in_water is not None else 1  # local rule E-5 costs two strokes
            went = f"{last.went}, dropped {end.told}"
            self.strokes[-1] = replace(last, end=end, penalty=last.penalty + more, went=went)
            self.at, self.in_water = end, None
        elif drop.free:
            self._moved(drop, end)
        else:
            cost = _OUT_OF_BUNKER if self.at.lie is Lie.BUNKER and end.lie is not Lie.BUNKER else None
            noted = "" if cost is None else f"; out of the bunker it costs two, Rule {cost.rule}"
            penalty = 1 if cost is None else cost.strokes
            self._add("drop", "unplayable", end, 0, penalty, f"dropped {end.told}{noted}")

    def _dropped_unsaid(self, drop: n.Drop) -> Rest:
        """Where a ball was dropped, nobody having noted the place; refused where the rules leave it open."""
        last = self.strokes[-1] if self.strokes else None
        end = None
        if self.in_water is not None:
            assert last is not None
            usual_yd = self.usual(last.club, self.at.xy_yd)
            carry_yd = None if usual_yd is None else usual_yd[False]
            end = beside_water(self.hole, self.at, last.went, carry_yd)
        elif drop.free and last is not None:
            end = replace(self.at, noted="no place noted: where it lay, free of what was in the way")
        elif drop.unplayable:
            end = beside_ball(self.hole, self.at)
        if end is None:
            raise n.refused(drop.said, 'dropped where? Say the place, "drop 150 out, right rough"')
        return end

    def _dropped(self, drop: n.Drop) -> Rest:
        """Where a ball was dropped; an unplayable one back on the line (Rule 19.2b) behind where it lay.

        Of a ball in water the line goes through where it crossed the edge, which nobody notes: its place is
        read as any other.
        """
        if re.fullmatch(r"zone", drop.place, re.IGNORECASE):
            raise n.refused(drop.said, 'where is the zone? Say the place, "drop 130 out, fairway"')
        in_sand = self.at.lie is Lie.BUNKER and _SAME_SAND.fullmatch(drop.place.strip())
        if in_sand or not drop.place:
            return self._dropped_unsaid(drop)
        out_alone = _OUT_ALONE.fullmatch(drop.place.strip())
        back = drop.unplayable and self.in_water is None and _BACK_ON_LINE.search(drop.said)
        if out_alone is None or not back:
            return self._dropped_at(drop)
        pin, at = self.hole.pin, self.at
        lay_yd, out_yd = self.hole.out_yd(at.x_yd, at.y_yd), read_words(drop.place).out or 0.0
        if out_yd <= lay_yd:
            why = f"the ball lay {lay_yd:.0f} yd out: back on the line is farther from the hole"
            raise n.refused(drop.said, why)
        share = out_yd / lay_yd
        x, y = (to + share * (of - to) for to, of in ((pin.x_yd, at.x_yd), (pin.y_yd, at.y_yd)))
        end = resting(f"{x:.2f},{y:.2f}", self.hole, at)
        return replace(end, noted="on the line from the hole through the ball")

    def _dropped_at(self, drop: n.Drop) -> Rest:
        """The place of a drop that was noted; water and out of bounds are told as places of a drop."""
        try:
            return resting(drop.place, self.hole, self.at)
        except NoBallLies as error:
            say = 'no ball is dropped there. Say where, "drop 150 out, right rough", or "drop" alone'
            raise n.refused(drop.said, f"that is {error.there}, {say}") from None

    def _moved(self, drop: n.Drop, end: Rest) -> None:
        """Free relief: the ball's place is where it was dropped."""
        if not self.strokes:
            raise n.refused(drop.said, "nothing was played before it")
        last = self.strokes[-1]
        self.strokes[-1] = replace(last, end=end, went=f"{last.went}, dropped {end.told}")
        self.at = end

    def _again(self, clause: n.Again) -> None:
        last = self.strokes[-1] if self.strokes else None
        if last is None:
            raise n.refused(clause.said, "nothing was played before it")
        if last.end is last.start:  # out of bounds, lost, or water: the stroke and the distance are counted
            self.in_water = None
            return
        self._add("drop", "unplayable", last.start, 0, 1, "back where it was played from")
