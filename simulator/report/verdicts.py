"""The verdict: which club, how sure, and how much it is worth."""

from __future__ import annotations

from ..strategy.confidence import is_ahead
from ..strategy.goals import Goal
from ..strategy.result import Answer
from .chosen import (
    all_bad,
    equals,
    goal_chance,
    level,
    out_of_reach_goal,
    runner_up,
    shown,
    take_words,
    title,
)
from .figures import (
    LEAST_COUNT,
    NOTHING_STROKES,
    capital,
    count_words,
    every_words,
    in_ten,
    join_words,
    score_digits,
)
from .units import YARDS, Units

ALL_BAD = "Every club finishes in trouble more often than not; least bad: "

LATER_MEAN = "Later shots still go by the lowest average."
"""Said of a target: the plan after this shot is not the one that chases the score."""


def verdict(answer: Answer, units: Units = YARDS) -> str:
    """The answer in one or two plain sentences."""
    if answer.goal is not None:
        return f"{_bad(answer)}{_goal_verdict(answer, answer.goal, units)}"
    if held := if_figures_hold(answer, units):
        return f"{_bad(answer)}{capital(held)}"
    if answer.verdict == "either":
        names = level(answer)
        words = join_words([title(answer, k, units) for k in names], "or")
        any_ = "either" if len(names) < 3 else "any of them"
        said = f"{capital(words)}: {any_} will do, hit the one you trust{_unasked(answer, names, units)}."
        return f"{_bad(answer)}{said}{versions(answer, units)}"
    take = take_words(answer, answer.recommended, units)
    behind = runner_up(answer)
    if behind is None:
        none = "comes near it" if answer.question == "plan" else "is better"
        return f"{_bad(answer)}{take}: no other club of this bag {none} here."
    strokes = max(answer.alternatives[behind].difference.value, 0.0)
    how = {"clear": "clearly better", "slight": "slightly better"}[answer.verdict]
    said = f"{take}: {how}{_than(answer, units)}{size_words(answer, strokes, behind)}"
    return f"{_bad(answer)}{said}{right_words(answer)}."


def right_words(answer: Answer) -> str:
    """For how many of the players this one may be the recommended shot is right; empty when not known."""
    sure = answer.confidence
    return "" if sure is None else f"; right for {in_ten(sure.best_share)} plausible versions of this player"


def if_figures_hold(answer: Answer, units: Units = YARDS) -> str:
    """For a club that is ahead by these figures, which are too little known to be sure of it; else empty."""
    sure, named = answer.confidence, level(answer)
    if answer.goal is not None or answer.verdict != "either" or sure is None or len(named) < 2:
        return ""
    other = named[1]
    lead = answer.alternatives[other].difference
    if len(answer.tied) > 1 or not is_ahead(lead):
        return ""
    name, rival = title(answer, answer.recommended, units), title(answer, other, units)
    return (
        f"{name}{_unasked(answer, [answer.recommended], units)} if the figures hold"
        f"{size_words(answer, lead.value, other)}: right for "
        f"{in_ten(sure.best_share)} plausible versions of this player, the {rival} for "
        f"{in_ten(sure.shares[other])}."
    )


def size_words(answer: Answer, strokes: float, behind: int) -> str:
    """A difference as a shot every so many times, and as a decimal."""
    digits = max(1, score_digits(answer.alternatives[behind].difference.standard_error))
    if round(strokes, digits) <= 0.0:
        return ""
    where = "you play this hole" if answer.start.played is not None else "you play from here"
    return f", by {every_words(strokes, where)} ({strokes:.{digits}f})"


def _bad(answer: Answer) -> str:
    return ALL_BAD if all_bad(answer) else ""


def _than(answer: Answer, units: Units) -> str:
    """Which asked clubs are beaten by one that was not asked about."""
    if answer.question != "compare" or answer.best.asked:
        return ""
    asked = [title(answer, k, units) for k, one in enumerate(answer.alternatives) if one.asked]
    than = {1: f"the {asked[0]}", 2: "both"}.get(len(asked), "all of them") if asked else "the rest"
    return f" than {than}, though you did not ask about it"


def _unasked(answer: Answer, names: list[int], units: Units) -> str:
    if answer.question != "compare":
        return ""
    words = [title(answer, k, units) for k in names if not answer.alternatives[k].asked]
    return f" (you did not ask about the {join_words(words)})" if words else ""


def versions(answer: Answer, units: Units = YARDS) -> str:
    """How many of the players this one may be would do best with the same club."""
    sure = answer.confidence
    if sure is None:
        return ""
    name = title(answer, answer.recommended, units)
    most = max(shown(answer), key=lambda k: sure.shares[k])
    more = ""
    if sure.shares[most] > sure.best_share:
        more = f", the {title(answer, most, units)} for {in_ten(sure.shares[most])}"
    return f" It is the {name} for {in_ten(sure.best_share)} plausible versions of this player{more}."


def goal_words(goal: Goal, units: Units = YARDS) -> str:
    """A goal as the label of its row: "4 or better", "leaves 90 to 110 yd"."""
    if goal.kind == "target":
        return f"{goal.most_strokes} or better"
    assert goal.low_yd is not None and goal.high_yd is not None
    reach = units.range(goal.low_yd, goal.high_yd)
    return f"leaves {reach}" if goal.kind == "leave" else f"finishes {reach} on"


def _goal_verdict(answer: Answer, goal: Goal, units: Units) -> str:
    label = goal_words(goal, units)
    purpose = {
        "target": f"For a {label}",
        "leave": f"To {label.replace('leaves', 'leave')}",
        "land": f"To {label.replace('finishes', 'finish')}",
    }[goal.kind]
    if out_of_reach_goal(answer):
        # the recommended one has the lowest average of those that tie: not the highest chance
        often = max(range(len(answer.alternatives)), key=lambda k: goal_chance(answer, k))
        most = count_words(goal_chance(answer, often), answer.sequences)
        most += " in 100" if goal_chance(answer, often) >= LEAST_COUNT else ""
        with_it = f", with the {title(answer, often, units)}" if goal_chance(answer, often) > 0.0 else ""
        return (
            f"{purpose}, no club of this bag will do here: the most is {most} plays{with_it}. For the lowest "
            f"average it is the {title(answer, answer.lowest_score, units)}."
        )
    chances = [goal_chance(answer, k) for k in range(len(answer.alternatives))]
    counts = [count_words(chance, answer.sequences) for chance in chances]
    same = equals(answer)[:3]
    if len(same) > 1:
        names = join_words([f"{title(answer, k, units)} ({counts[k]})" for k in same], "or")
        any_ = "either" if len(same) < 3 else "any of them"
        said = f"{purpose}, {names} in 100 plays: {any_} will do, hit the one you trust"
        said += _unasked(answer, same, units)
    else:
        name, behind = title(answer, answer.recommended, units), shown(answer)[1:2]
        said = f"{purpose}, hit the {name}: {counts[answer.recommended]} in 100 plays do"
        said += "".join(f", {counts[k]} with the {title(answer, k, units)}" for k in behind)
        if answer.question == "compare" and not answer.best.asked:
            said += "; you did not ask about it"
    later = f" {LATER_MEAN}" if goal.kind == "target" else ""
    return f"{said}. {_line(answer, units)}{_lowest(answer, same, units)}{later}"


def _line(answer: Answer, units: Units) -> str:
    """What the line for the goal gains and costs beside the club's best line for the average."""
    line = answer.goal_line
    if line is None:
        return ""
    off = answer.best.aim_offset_yd - line.average_aim_offset_yd
    gain = count_words(max(line.gain.value, 0.0), answer.sequences)
    cost = f"for {line.cost.value:.2f} strokes" if line.cost.value >= NOTHING_STROKES else "at no cost"
    side = units.side(off) or "a touch"
    of = f"The {answer.best.club}'s line for this lies {side} of its best on average"
    return f"{of}: {gain} more in 100, {cost}. "


def _lowest(answer: Answer, same: list[int], units: Units) -> str:
    """What the goal costs on average."""
    low = answer.lowest_score
    cost = -answer.alternatives[low].difference.value
    if low in same[:1] or cost < NOTHING_STROKES:
        it = "It" if len(same) == 1 else f"The {title(answer, low, units)}"
        return f"{it} has the lowest average too."
    return f"For the lowest average it is the {title(answer, low, units)}, by {cost:.2f}."
