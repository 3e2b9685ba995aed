"""What each stroke was worth: the choice by its odds before the ball was struck, the swing by where it went.

From a place p the player needs V(p) strokes on average, playing the map's best shot. The shot that was
chosen, a, would on average have led to Q(p, a); the ball came to rest at q. Then

    lost by the choice   Q(p, a) - V(p)
    lost by the swing    strokes and penalties + V(q) - Q(p, a)

add up over the hole to its score less V of the first place: nothing is counted twice and nothing is left
over. An unplayable ball is lost by the stroke that brought it, as one in water is: V is of a usual lie in the
place, and nobody drops out of one that can be played. (Broadie, "Assessing golfer performance on the PGA
TOUR", Interfaces 42, 2012, splits a score into strokes gained in this way, from memory; there the average of
all players stands for Q and V at once, so that choices are not seen.)

V and Q are read off the map. Where the hole was begun, full sequences of the map's plan put V and every Q
right by what the map is off (as `estimate.score` does): the player's average, and with it the sum over a
hole, owes nothing to the map's own error. In between that error moves strokes from one swing to the next; it
is stated as measured.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import takewhile

import numpy as np

from ...engine import PART_SWING, PUTT_SWING
from ...errors import UsageError
from ...hole.model import Hole
from ...hole.surfaces import LIE_WORDS, Lie
from ...player.model import Player
from ...tables.luck import strike_sets
from ...tables.shots import PUTTER
from .. import streams
from ..aimwords import in_degrees
from ..alternative import ClubAndLine
from ..answering import refuse_hopeless
from ..asked import FAR_BEHIND, TOO_MUCH, TOO_MUCH_YD, asked_club
from ..clubline import club_and_line
from ..clubwords import Aim, club_and_aim, short_swing, shot_distance
from ..errorbars import Estimate, mean, total
from ..estimate import MAP_ERROR, share
from ..ground import features_at
from ..search import NEAR_BEST, given_aim, given_part, search
from ..tries import Choice, Place, part_families
from .rests import Rest
from .spoken import short_of_full
from .strokes import Stroke

SETS, STRIKES = 16, 512
"""Scrambles and strikes in each that value a place and a swing; as many others choose what is best there."""

SEQUENCES = 15_000
"""Full sequences from the first place, luck evened out: under 0.1 s of processor, an error of 0.003 to 0.004
strokes."""

CLOSE, MOST_CLOSE = 0.1, 4
"""Shots the search puts so near its best are valued too [strokes], so many at the most."""

EXACT = Estimate(0.0, 0.0)
"""Known without error."""


@dataclass(frozen=True)
class Judged:
    """One stroke, judged.

    Attributes
    ----------
    stroke : Stroke
    chosen, best : ClubAndLine or None
        What was played, and what the map would have played; None for putts.
    aim_given : bool
        The line was noted; otherwise the club's best is taken.
    before : Estimate
        Expected strokes from where it was played.
    choice, swing : Estimate
        Strokes lost by each; less than 0: gained.
    better_than : Estimate or None
        Share of the player's strikes with this club on this line (or of his putts from there) that end
        worse; None for a drop.
    """

    stroke: Stroke
    chosen: ClubAndLine | None
    best: ClubAndLine | None
    aim_given: bool
    before: Estimate
    choice: Estimate
    swing: Estimate
    better_than: Estimate | None


@dataclass(frozen=True)
class Valued:
    """A place off the green: what the map makes it worth, with what, and over which strikes.

    `off` is what is added to all that the map says of it, and how sure that is.
    """

    place: Place
    best: Choice
    value: float
    strikes: np.ndarray
    seed: int
    off: Estimate

    def outcomes(self, action: np.ndarray) -> np.ndarray:
        """Strokes of every strike with an action from here, float64[SETS, STRIKES]; the best is replayed."""
        each = self.strikes.reshape(SETS * STRIKES, 1, -1)
        found = self.place.values(action[None], self.value, each)[0]
        return (found[:, 0] + self.value * found[:, 1]).reshape(SETS, STRIKES)

    @cached_property
    def usual(self) -> np.ndarray:
        """The same of the best."""
        return self.outcomes(self.best.action)

    def expected(self, outcomes: np.ndarray) -> Estimate:
        """Expected strokes of an action from its outcomes."""
        return total([mean(outcomes.mean(axis=1)), self.off])


class Judge:
    """Values the places of one hole for one player, each once.

    Parameters
    ----------
    tee : Place
        Any place on the hole's solved board.
    hole : Hole
    player : Player
    seed : int
        Of the strikes.
    first : Rest, optional
        Where the hole was begun: the place that full sequences are played from.
    """

    def __init__(self, tee: Place, hole: Hole, player: Player, seed: int, first: Rest | None = None) -> None:
        self.tee, self.hole, self.player, self.seed = tee, hole, player, seed
        self._first = None if first is None else _key(first)
        self._known: dict[tuple[float, float, int], Valued] = {}

    def judged(self, stroke: Stroke, drops: Sequence[Stroke] = (), *, brought: bool = True) -> Judged:
        """One stroke, judged.

        Parameters
        ----------
        stroke : Stroke
        drops : sequence of Stroke
            Of the unplayable ball it came to, if it did: its penalty and what it is worth there are lost by
            the stroke.
        brought : bool
            A drop's ball was brought there by a stroke before it, which has its cost; else it is a choice.

        Raises
        ------
        UsageError
            A club that is not in the bag or not played from there.
        NoAnswerError
            A place that no shot gets home from.
        """
        end = drops[-1].end if drops else stroke.end
        before, after = self.value(stroke.start), EXACT if end is None else self.value(end)
        taken = stroke.strokes + stroke.penalty + sum(drop.penalty for drop in drops)
        if stroke.kind == "putt":
            swing = _plus(total([after, before.times(-1.0)]), taken)
            return Judged(stroke, None, None, False, before, EXACT, swing, self._fewer_putts(stroke))
        if stroke.kind == "drop":
            choice = EXACT if brought else _plus(total([after, before.times(-1.0)]), taken)
            instead = self._shot(self.valued(stroke.start))
            return Judged(stroke, None, instead, False, before, choice, EXACT, None)
        valued = self.valued(stroke.start)
        chosen, given = self._chosen(valued, stroke)
        outcomes = valued.outcomes(chosen.action)
        expected = valued.expected(outcomes)
        choice = mean((outcomes - valued.usual).mean(axis=1))
        swing = _plus(total([after, expected.times(-1.0)]), taken)
        worse = outcomes > taken + self._by_map(end) + 1e-9
        played, best_shot = self._shot(valued, chosen), self._shot(valued)
        return Judged(stroke, played, best_shot, given, before, choice, swing, _share_of(worse))

    def hole_played(self, strokes: Sequence[Stroke]) -> tuple[Judged, ...]:
        """The strokes of a hole, each judged."""
        found = []
        for k, stroke in enumerate(strokes):
            drops = [*takewhile(lambda one: one.kind == "drop", strokes[k + 1 :])]
            found.append(self.judged(stroke, drops, brought=k > 0))
        return tuple(found)

    def value(self, rest: Rest) -> Estimate:
        """Expected strokes from where a ball lies."""
        if rest.lie is Lie.GREEN:
            return Estimate(self._putts(rest)[0], 0.0)
        valued = self.valued(rest)
        return valued.expected(valued.usual)

    def _by_map(self, rest: Rest | None) -> float:
        """The bare value of a place, as the outcomes of strikes have it."""
        if rest is None or rest.lie is Lie.GREEN:
            return 0.0 if rest is None else self.value(rest).value
        return self.valued(rest).value

    def valued(self, rest: Rest) -> Valued:
        """A place off the green with what it is worth, worked out once."""
        key = _key(rest)
        if key not in self._known:
            place = replace(self.tee, x_yd=rest.x_yd, y_yd=rest.y_yd, lie=int(rest.lie))
            seed = streams.of_place(self.seed, len(self._known))
            found = search(
                place, seed, place.board.allowed(place.lie), keep_within=CLOSE, keep_most=MOST_CLOSE
            )
            replay = found[0].score
            # the search's own strikes are few: now and then its first is 0.015 behind
            choosing = strike_sets(seed + streams.CHOOSING, SETS, STRIKES)
            scores = place.scores(np.array([one.action for one in found]), replay, choosing)
            best = found[int(np.argmin(scores))]
            # the lowest of several scores flatters itself: other strikes say what it is worth
            strikes = strike_sets(seed + streams.FIRST_SHOTS, SETS, STRIKES)
            value = float(place.scores(best.action[None], replay, strikes)[0])
            refuse_hopeless(value, rest.words)
            off = Estimate(0.0, MAP_ERROR)
            if key == self._first:
                off = _off(place, best.action, value, seed + streams.PLAYS)
            self._known[key] = Valued(place, best, value, strikes, seed, off)
        return self._known[key]

    def _putts(self, rest: Rest) -> tuple[float, np.ndarray]:
        """Expected putts and the chances to be down in at most 1, 2 ... from a place on a green."""
        assert rest.putt_ft is not None
        putts, raster = self.tee.board.bag.putts, self.tee.board.raster
        feature = features_at(self.hole, np.array([rest.x_yd]), np.array([rest.y_yd]))[0]
        plane = max(int(raster.feature_planes[feature]), 0) if feature >= 0 else 0
        if rest.sided:
            bearing = math.radians(180.0) + self.tee.board.bearing_rad(rest.x_yd, rest.y_yd)
            turns = [bearing - float(raster.planes[plane, 1])]
        else:
            turns = [math.pi * (k + 0.5) / 12.0 for k in range(12)]
        found = [putts.at(plane, turn, rest.putt_ft)[:2] for turn in turns]
        return float(np.mean([one for one, _ in found])), np.mean([chances for _, chances in found], axis=0)

    def _fewer_putts(self, stroke: Stroke) -> Estimate | None:
        """Chance of more putts than these; of a single one that missed, None: too little is known of it."""
        if stroke.end is not None:
            return None
        chances = self._putts(stroke.start)[1]
        return Estimate(float(1.0 - chances[min(stroke.strokes, len(chances)) - 1]), 0.0)

    def _chosen(self, valued: Valued, stroke: Stroke) -> tuple[Choice, bool]:
        """What was played, and whether its line was noted."""
        place, start = valued.place, stroke.start
        here, day = start.xy_yd, place.board.bag.conditions
        text = in_degrees(stroke.club, self.hole, self.player, here, day)
        club, aim = club_and_aim(text)
        given = aim is not None
        if short_of_full(text):
            putter = PUTTER.name if short_swing(club) == PUTT_SWING else None
            return self._part(valued, stroke, putter, aim), given
        shots = place.board.bag.shots
        asked = asked_club(self.player, text, shots)
        if asked.short is not None and asked.part_yd is not None:
            return given_part(place, asked.part_yd, aim, valued.value, valued.seed, asked.short), given
        meant, allowed = shots.shots[asked.rows[0]].club, place.board.allowed(place.lie)
        rows = [row for row in asked.rows if row in allowed]
        if not rows:  # held down out of sand: it was done, so it is judged as the club's usual swing there
            rows = [row for row in allowed if shots.shots[row].club is meant]
        name = meant.name
        carries_yd = [shots.shots[row].carry_yd for row in asked.rows]
        if shot_distance(club) is None and self._was_held_back(place, stroke, carries_yd):
            return self._part(valued, stroke, name, aim), given
        if not rows:
            where = f"{name} from {LIE_WORDS[start.lie]} ({stroke.start.words})"
            raise UsageError(f"stroke {stroke.number}: {where} is not played; name another club, or a chip")
        if aim is not None:
            return given_aim(place, rows[0], aim, valued.value, valued.seed), True
        found = search(place, valued.seed, rows, keep_within=NEAR_BEST, keep_most=4, must=frozenset(rows))
        return next(choice for choice in found if choice.row in rows), False

    def _was_held_back(self, place: Place, stroke: Stroke, carries_yd: Sequence[float]) -> bool:
        """Whether a club with these carries, one a flight, was swung short of full.

        It was where it is much too long for the distance; or, where part swings are played, too long by the
        yards of that alone, and its ball stopped nearer to the pin than half of the excess (assumed).
        """
        if min(carries_yd, default=0.0) > TOO_MUCH * place.distance_yd + TOO_MUCH_YD:
            return True
        over_yd = max(carries_yd, default=0.0) - place.distance_yd
        in_reach = place.board.bag.shots.first_part in part_families(place)
        if over_yd <= TOO_MUCH_YD or stroke.penalty or not in_reach:
            return False
        left_yd = 0.0 if stroke.end is None else math.dist(stroke.end.xy_yd, self.hole.pin.xy_yd)
        return left_yd < 0.5 * over_yd

    def _part(self, valued: Valued, stroke: Stroke, club: str | None, aim: Aim | None) -> Choice:
        """The best swing short of full from a place, with a club where the bag has one so.

        A putt is one where it is noted; from where none is looked at it was a chip that rolled.
        """
        place = valued.place
        if not part_families(place):
            far = f"{place.distance_yd:.0f} yd out"
            raise UsageError(f"stroke {stroke.number}: no swing short of full is played {far}; name the club")
        shots = place.board.bag.shots.shots
        found = search(place, valued.seed, [], keep_within=FAR_BEHIND, keep_most=len(shots))
        mine = [one for one in found if shots[one.row].club.name == club]
        swung = [one for one in found if shots[one.row].flight != "putt"]
        best = (mine or swung or found)[0]
        if aim is None or best.action[0] != PART_SWING:
            return best
        return given_part(place, best.carry_yd, aim, valued.value, valued.seed)

    def _shot(self, valued: Valued, choice: Choice | None = None) -> ClubAndLine:
        return club_and_line(self.hole, valued.place, choice or valued.best)


def _key(rest: Rest) -> tuple[float, float, int]:
    return *rest.xy_yd, int(rest.lie)


def _off(place: Place, action: np.ndarray, value: float, seed: int) -> Estimate:
    """Strokes that full sequences from a place take more than the map says after their first shot."""
    played = place.play(action, action, value, seed=seed, sequences=SEQUENCES, evened=True)
    return mean(played.expected - played.first_cost - played.first_value)


def _share_of(hits: np.ndarray) -> Estimate:
    """Share of quasi-random strikes, bool[sets, strikes]; of none or all, as sure as plain draws make it."""
    some = hits.any() and not hits.all()
    return mean(hits.mean(axis=1)) if some else share(hits)


def _plus(one: Estimate, strokes: float) -> Estimate:
    return replace(one, value=one.value + strokes)
