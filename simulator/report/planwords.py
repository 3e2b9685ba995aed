"""What a lesson says of the plan: which club, which line, why, and what the other would risk."""

from __future__ import annotations

from collections.abc import Sequence

from ..strategy.alternative import Alternative
from ..strategy.lesson import Lesson
from ..strategy.result import Answer
from .chosen import TroubleRow, level, runner_up, take_words, title, trouble_share, troubles
from .figures import NOTHING_STROKES, capital, join_words, nearest
from .lines import line_words, middle_words, other_lines, past_flag
from .odds import LEAST_MORE, TROUBLE_WORD, apart, odds
from .phrases import LEAST_LEAVE_YD, trade
from .units import YARDS, Units
from .verdicts import if_figures_hold, right_words, versions

MOST_ASKED = 2
"""Of so many shots that were asked about, and are neither the best nor the runner-up, the cost is told."""

BY_GROUND = ("fairway", "mark")
"""What a shot is aimed by alone: round a corner nobody sees the straight line to the pin."""

POINTED = (*BY_GROUND, "pin")
"""What the words of the aim have told of already."""


def aimed_words(one: Alternative, units: Units = YARDS) -> str:
    """Where a shot is aimed: by the fairway or a mark, at the green from the straight line to the pin."""
    if one.point.by in BY_GROUND:
        return f"aimed {line_words(one, units)}"
    side = units.side(one.aim_offset_yd)
    return f"aimed {side} of the pin line" if side else "aimed at the pin"


def plan_words(result: Lesson, units: Units = YARDS) -> list[str]:
    """Which club, which line, why, what the alternative risks."""
    answer = result.answer
    if answer.verdict == "either":
        return _either(answer, units)
    best, take = answer.best, take_words(answer, answer.recommended, units)
    leaves = units.range(best.leaves_yd["p10"].value, best.leaves_yd["p90"].value)
    line = aimed_words(best, units)
    club = f"{take}, {line}; it leaves {leaves}{past_flag(answer, best)}, 8 in 10."
    point = [] if best.point.by in POINTED else [f"Point it {line_words(best, units)}."]
    middle, others = middle_words(best, units, "The"), other_lines(answer, [answer.recommended], units)
    point += [middle.strip()] if middle else []
    why = [*_how_sure(answer), why_words(answer, units), *([others.strip()] if others else [])]
    why += risk_words(answer, units)
    return [club, *point, *why, *_asked_words(answer, [answer.recommended, runner_up(answer)], units)]


def _either(answer: Answer, units: Units) -> list[str]:
    """The alternatives that will do, as the answer screen names them, and how they are aimed."""
    named = level(answer)
    titles = [title(answer, k, units) for k in named]
    any_ = "either" if len(named) < 3 else "any of them"
    names = join_words([f"the {name}" for name in titles], "or")
    first = f"{capital(names)}: {any_} will do, hit the one you trust.{versions(answer, units)}"
    if held := if_figures_hold(answer, units):
        first = f"The {held}"
    lines = [
        f"The {name} is {aimed_words(answer.alternatives[k], units)}."
        for k, name in zip(named, titles, strict=True)
    ]
    lines.append(other_lines(answer, named, units).strip())
    lines.append(middle_words(answer.best, units, f"With the {titles[0]} the").strip())
    aims = " ".join(line for line in lines if line)
    return [first, aims, *risk_words(answer, units), *_asked_words(answer, named, units)]


def _how_sure(answer: Answer) -> list[str]:
    """The verdict's word, and for how many plausible players it is right; nothing where that is not known."""
    sure = right_words(answer)
    if not sure or runner_up(answer) is None:
        return []
    how = {"clear": "Clearly better", "slight": "Slightly better"}[answer.verdict]
    return [f"{how}{sure}."]


def why_words(answer: Answer, units: Units = YARDS) -> str:
    """What the recommended shot saves against the runner-up."""
    other = runner_up(answer)
    if other is None:
        return "No other club of the bag comes near it from here."
    behind = answer.alternatives[other].difference
    mine, other_name = title(answer, answer.recommended, units), title(answer, other, units)
    error = give_or_take(behind.margin)
    if behind.value <= 0.0:
        return f"On score the {mine} and the {other_name} are level ({error})."
    often = 1.0 / behind.value
    times = "every time" if often < 1.5 else f"every {nearest(often)} times"
    saves = f"The {mine} saves a shot against the {other_name} {times} you play this"
    return f"{saves}: {behind.value:.2f}, {error}."


def give_or_take(margin: float) -> str:
    """An error in words; one that rounds to nothing is still one."""
    return "give or take less than 0.01" if margin < NOTHING_STROKES else f"give or take {margin:.2f}"


def risk_words(answer: Answer, units: Units = YARDS) -> list[str]:
    """What the braver of two gains and costs, as the answer screen has it, and the trouble each finds."""
    other = runner_up(answer)
    if other is None:
        return []
    one, two, n = answer.best, answer.alternatives[other], answer.sequences
    names = title(answer, answer.recommended, units), title(answer, other, units)
    rows = troubles(answer, [answer.recommended, other])
    whole = [TroubleRow("any trouble", (trouble_share(one), trouble_share(two)), said=TROUBLE_WORD)]
    worse = _dearest(rows, 1) or _dearest(whole, 1)  # the whole where it is a little more of each of many
    better = _dearest(rows, 0) or _dearest(whole, 0)
    found = []
    if worse is not None:
        mine, risk = apart(worse.shares, n)
        found.append(f"finds {odds(worse, risk)}, against {mine} with the {names[0]}")
    further_yd = two.leaves_yd["p50"].value - one.leaves_yd["p50"].value
    if answer.start.played is not None and abs(further_yd) >= LEAST_LEAVE_YD:  # else the trade tells it
        found.append(f"leaves {units.length(abs(further_yd))} {'more' if further_yd > 0.0 else 'less'}")
    said = [trade(answer, units)]
    said += [f"The {names[1]} {', and '.join(found)}."] if found else []
    if better is not None:
        price, other_risk = apart(better.shares, n)
        said.append(f"The {names[0]} finds {odds(better, price)}, against {other_risk} with the {names[1]}.")
    return [words for words in said if words]


def _asked_words(answer: Answer, told: Sequence[int | None], units: Units) -> list[str]:
    """What the shots cost that somebody asked about and that are not told of yet, and the dearest reason."""
    said: list[str] = []
    mine = title(answer, answer.recommended, units)
    for k, one in enumerate(answer.alternatives):
        if not one.asked or k in told or one.difference.value < NOTHING_STROKES or len(said) == MOST_ASKED:
            continue
        rows = troubles(answer, [answer.recommended, k])
        dear = _dearest(rows, 1)
        words = f"The {title(answer, k, units)} costs {one.difference.value:.2f} a play more"
        if dear is not None:
            less, more = apart(dear.shares, answer.sequences)
            words += f": it finds {odds(dear, more)}, against {less} with the {mine}"
        said.append(f"{words}.")
    return said


def _dearest(rows: list[TroubleRow], index: int) -> TroubleRow | None:
    """What one of two shots finds more often by `LEAST_MORE`: penalties first, then by how much more."""

    def more(row: TroubleRow) -> float:
        return row.shares[index] - row.shares[1 - index]

    found = [row for row in rows if more(row) >= LEAST_MORE]
    return max(found, key=lambda row: (row.penalty, more(row)), default=None)
