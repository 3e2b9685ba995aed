"""Which alternatives are shown, what each is called, and which troubles matter to them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ..hole.surfaces import PENALTY_SURFACES, TROUBLE, WORDS, Surface
from ..player.names import with_flight
from ..player.runs import punch_run_yd
from ..strategy.alternative import Alternative, ClubAndLine
from ..strategy.result import Answer
from .figures import LEAST_COUNT, in_hundred, nearest
from .units import YARDS, Units

MOST_SHOWN = 3
"""Clubs in the table of the answer screen."""

MOST_ASKED = 4
"""The same where so many were asked about, or three and an unasked one is recommended."""

NAMED = 2
"""Up to this many areas of a kind have a row each, more are one row together."""

SWINGS = {"part": "part", "punch": "punch", "chip": "chip", "gripped": "gripped down to"}
"""Words of the flights that are told by their carry: the club alone does not say which shot it is."""

MOST_DIGITS = 3
"""Decimals of a carry at most."""

LINE_NAMES = {
    2: ("left", "right"),
    3: ("left", "middle", "right"),
    4: ("far left", "left", "right", "far right"),
}
"""What so many lines of one shot are called, from the left; more are numbered."""

PENALTY = PENALTY_SURFACES | {Surface.OUT_OF_BOUNDS}
"""Ground that costs a stroke: penalty areas, and what is out of bounds."""

TOGETHER = {
    Surface.WATER: ("any penalty area", "a penalty area"),
    Surface.DRY_PENALTY: ("any dry penalty area", "a dry penalty area"),
    Surface.BUNKER: ("any bunker", "a bunker"),
}
"""Areas of a kind in one row: in the table, and in a sentence; others by the word of their ground."""

HARDLY = 0.01
"""A goal reached less often than this with every club is none to choose a club by."""


def shown(answer: Answer, most: int = MOST_ASKED) -> list[int]:
    """Indices of the alternatives in the table: the recommended, then those asked about, then the best.

    At most `MOST_SHOWN`, or `most` where fewer would leave out one that was asked about. With a goal the
    best are those that reach it most often, and the one of the lowest average is kept; without one, the one
    that is best for more plausible versions of the player than the recommended.
    """
    rest = [k for k in range(len(answer.alternatives)) if k != answer.recommended]
    rest.sort(key=lambda k: (not answer.alternatives[k].asked, _rank(answer, k)))
    wanted = 1 + sum(answer.alternatives[k].asked for k in rest)
    found = [answer.recommended, *rest][: min(max(wanted, MOST_SHOWN), most)]
    if answer.goal is not None and answer.lowest_score not in found:
        if answer.alternatives[found[-1]].asked and MOST_SHOWN <= len(found) < most:
            found.append(answer.lowest_score)
        else:
            found[-1] = answer.lowest_score
    often, last = _right_most_often(answer), found[-1]
    if often is not None and often not in found and len(found) > 2 and not answer.alternatives[last].asked:
        found[-1] = often
    return found


def _right_most_often(answer: Answer) -> int | None:
    """The alternative that is best for more plausible players than the recommended; None where none is."""
    sure = answer.confidence
    if answer.goal is not None or sure is None:
        return None
    most = max(range(len(sure.shares)), key=lambda k: sure.shares[k])
    return most if sure.shares[most] > sure.best_share else None


def left_out(answer: Answer, indices: list[int]) -> list[int]:
    """Indices of the alternatives that were asked about and are not among these, the best first."""
    missing = [k for k, one in enumerate(answer.alternatives) if one.asked and k not in indices]
    return sorted(missing, key=lambda k: _rank(answer, k))


def _rank(answer: Answer, index: int) -> float:
    one = answer.alternatives[index]
    return one.score.value if answer.goal is None or one.goal is None else -one.goal.value


def all_bad(answer: Answer) -> bool:
    """Whether every alternative finishes in trouble more often than not."""
    return all(trouble_share(one) > 0.5 for one in answer.alternatives)


def trouble_share(one: Alternative) -> float:
    """Share of this ball that finishes in any trouble."""
    words = [WORDS[surface] for surface in TROUBLE]
    return sum(one.finish[word].value for word in words if word in one.finish)


def runner_up(answer: Answer) -> int | None:
    """Index of the alternative the recommended one is measured against, None when it is alone.

    The best of those that were asked about or that the verdict names beside it: where it is *either* by what
    is not known of the player, that is not always the next by the score.
    """
    others = shown(answer)[1:]
    named = level(answer) if answer.verdict == "either" else others
    wanted = [k for k in others if k in named or answer.alternatives[k].asked]
    return next(iter(wanted or others), None)


def goal_chance(answer: Answer, index: int) -> float:
    """Share of an alternative's plays that reach the goal; 0 without one."""
    chance = answer.alternatives[index].goal
    return 0.0 if chance is None else chance.value


def out_of_reach_goal(answer: Answer) -> bool:
    """Whether a goal is asked for that no club reaches: the lowest average is told of then."""
    return answer.goal is not None and goal_chance(answer, answer.recommended) < HARDLY


def level(answer: Answer) -> list[int]:
    """Indices of the alternatives named in an *either*, three at most; of a goal out of reach only one."""
    if out_of_reach_goal(answer):
        return [answer.lowest_score]
    same, others = equals(answer)[:3], shown(answer)[1:]
    if len(same) > 1 or not others:
        return same
    sure = answer.confidence
    other = others[0] if sure is None else max(others, key=lambda k: sure.shares[k])
    return [*same, other]


def leading(answer: Answer) -> list[int]:
    """Indices of the recommended alternative and of the runner-up, where there is one."""
    other = runner_up(answer)
    return [answer.recommended] if other is None else [answer.recommended, other]


def equals(answer: Answer) -> list[int]:
    """The recommended alternative and those tied with it, best first."""
    others = [k for k in answer.tied if k != answer.recommended]
    return [answer.recommended, *sorted(others, key=lambda k: _rank(answer, k))]


def title(answer: Answer, index: int, units: Units = YARDS) -> str:
    """What an alternative is called: its shot, and which of its lines where several are played with it.

    "driver (left line)": the yards of a line count from what it is pointed by, which a name has no room for.
    No two of an answer are called the same: carries that are one in whole units have decimals.
    """
    one = answer.alternatives[index]
    alike = [other for other in answer.alternatives if shot_words(other, units) == shot_words(one, units)]
    digits = next((k for k in range(MOST_DIGITS) if _are_lines(alike, units, k)), MOST_DIGITS)
    words = shot_words(one, units, digits)
    aims_yd = sorted(other.aim_offset_yd for other in alike if shot_words(other, units, digits) == words)
    return shot_words(one, units, digits, _line_name(aims_yd.index(one.aim_offset_yd), len(aims_yd)))


def _are_lines(alike: list[Alternative], units: Units, digits: int) -> bool:
    """Whether shots that are called the same, with so many decimals in their carries, differ in line."""
    named = [(shot_words(one, units, digits), one.aim_offset_yd) for one in alike]
    return len(set(named)) == len(named)


def _line_name(place: int, lines: int) -> str:
    """Which of so many lines one is, counted from the left; empty where there is one only."""
    if lines in LINE_NAMES:
        return f"{LINE_NAMES[lines][place]} line"
    return f"line {place + 1} of {lines}" if lines > 1 else ""


def told_by_line(answer: Answer, index: int, units: Units = YARDS) -> bool:
    """Whether the shot alone does not tell an alternative from the others, so that its title has the line."""
    words = shot_words(answer.alternatives[index], units)
    return sum(shot_words(other, units) == words for other in answer.alternatives) > 1


def called(flight: str, carry_yd: float) -> str:
    """A flight as golfers say it: a punch that runs farther than it flies is a chip (common practice)."""
    return "chip" if flight == "punch" and punch_run_yd(carry_yd) > carry_yd else flight


def shot_words(one: ClubAndLine, units: Units = YARDS, digits: int = 0, line: str = "") -> str:
    """Club and shot; one that is not a full swing by its carry; which line, where that is said."""
    swing = SWINGS.get(called(one.flight, one.carry_yd))
    name = with_flight(one.club, one.flight) if swing is None else one.club
    carry = "" if swing is None else f"{swing} {units.number(one.carry_yd, digits)} {units.short}"
    more = ", ".join(filter(None, (carry, line)))
    return f"{name} ({more})" if more else name


def take_words(answer: Answer, index: int, units: Units = YARDS) -> str:
    """ "Hit the driver"; a putter is taken."""
    verb = "Take" if answer.alternatives[index].flight == "putt" else "Hit"
    return f"{verb} the {title(answer, index, units)}"


def par_shares(one: Alternative) -> tuple[float, float, float] | None:
    """Shares of par or better, bogey, double or worse; None where par has no meaning."""
    names = ("birdie_or_better", "par", "bogey", "double_or_worse")
    chances = [one.chances.get(name) for name in names]
    values = [chance.value for chance in chances if chance is not None]
    return (values[0] + values[1], values[2], values[3]) if len(values) == len(names) else None


def par_counts(one: Alternative) -> tuple[int, int, int] | None:
    """The same as whole counts in 100 plays that add up to 100."""
    shares = par_shares(one)
    if shares is None:
        return None
    good, bogey, worse = in_hundred(shares)
    return good, bogey, worse


def score_counts(one: Alternative, shares: Sequence[float]) -> list[int]:
    """Shares of scores as whole counts in 100 plays; from birdie to triple they add up to `par_counts`.

    Rounded by themselves they may differ by one from what the words beside them and the answer screen say.
    """
    pars = par_counts(one)
    if pars is None:
        return in_hundred(list(shares))
    birdie, par, _, double, triple = shares
    under = nearest(pars[0] * birdie / max(birdie + par, 1e-9))
    over = nearest(pars[2] * double / max(double + triple, 1e-9))
    return [under, pars[0] - under, pars[1], over, pars[2] - over]


@dataclass(frozen=True)
class TroubleRow:
    """One row of trouble.

    Attributes
    ----------
    words : str
        As the table has it: the name of an area, "any bunker".
    shares : tuple of float
        Share of this ball that finishes there, per alternative.
    penalty : bool
    said : str
        As a sentence has it, where that is not the area's name: "a bunker".
    """

    words: str
    shares: tuple[float, ...]
    penalty: bool = False
    said: str = ""


def fewer_rows(rows: list[TroubleRow], most: int) -> list[TroubleRow]:
    """At most so many rows of trouble, the last of them all the rest together.

    Penalty areas and boundaries are kept before other trouble, and then what is met most often.
    """
    if len(rows) <= most:
        return rows
    kept = most_met(rows, most - 1)
    rest = [row for row in rows if row not in kept]
    together = tuple(sum(shares) for shares in zip(*(row.shares for row in rest), strict=True))
    return [*kept, TroubleRow("other trouble" if kept else "any trouble", together)]


def most_met(rows: list[TroubleRow], most: int) -> list[TroubleRow]:
    """So many rows, in the order they were in: penalties first, and then what is met most often."""
    ranked = sorted(rows, key=lambda row: (not row.penalty, -max(row.shares)))[:most]
    return [row for row in rows if row in ranked]


def troubles(answer: Answer, indices: list[int]) -> list[TroubleRow]:
    """Troubles that at least one of the alternatives finds once in 200 plays, the dearest kind first."""
    ones = [answer.alternatives[k] for k in indices]
    rows: list[TroubleRow] = []
    for surface in TROUBLE:
        areas = [f.name for f in answer.hole.features if f.surface is surface]
        met = [name for name in areas if max(_share(one, name) for one in ones) >= LEAST_COUNT]
        kind = [
            TroubleRow(_named(name, surface), tuple(_share(one, name) for one in ones), surface in PENALTY)
            for name in met
        ]
        if len(met) > NAMED:
            together = tuple(sum(_share(one, name) for name in areas) for one in ones)
            words, said = TOGETHER.get(surface, (WORDS[surface], ""))
            kind = [TroubleRow(words, together, surface in PENALTY, said)]
        rows += sorted(kind, key=lambda row: -max(row.shares))
    return rows


def out_of_reach(answer: Answer, indices: list[int]) -> list[str]:
    """Penalty areas and boundaries that none of the alternatives found in any sequence."""
    ones = [answer.alternatives[k] for k in indices]
    return [
        f.name
        for f in answer.hole.features
        if f.surface in PENALTY and all(_share(one, f.name) == 0.0 for one in ones)
    ]


def _share(one: Alternative, name: str) -> float:
    return one.features[name].value if name in one.features else 0.0


def _named(name: str, surface: Surface) -> str:
    return f"{name} (out)" if surface is Surface.OUT_OF_BOUNDS else name
