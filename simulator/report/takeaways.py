"""What a lesson says in plain words, each sentence out of its figures."""

from __future__ import annotations

from collections.abc import Sequence

from ..hole.surfaces import TROUBLE, WORDS, Surface
from ..strategy.alternative import Alternative
from ..strategy.lesson import Lesson
from ..strategy.result import Answer
from .cautions import EXACT, LOOK, RULES
from .chosen import (
    TroubleRow,
    leading,
    par_counts,
    runner_up,
    score_counts,
    shot_words,
    title,
    told_by_line,
    trouble_share,
    troubles,
)
from .credits import map_data
from .figures import HELD, capital, in_hundred, join_words, name_said, nearest, unseen
from .lines import line_words, past_flag
from .shotplot import counts
from .units import YARDS, Units
from .verdicts import if_figures_hold, level, right_words, versions

LEAST_LEAVE_YD = 5.0
"""A gain in distance smaller than this is not told [yd]."""

TROUBLE_WORD = "trouble"
"""What a ball finds where no one area, but all of them together, are worth a sentence."""

LEAST_MORE = 0.02
"""Trouble found so much more often is worth a sentence (share of the plays)."""


def times_words(share: float, sequences: int) -> str:
    """A share as times: "1 time in 7", "6 times in 10", "fewer than 1 in 6,666" for what never came up."""
    if share <= 0.0:
        return unseen(sequences)
    if share < 0.005:
        number = nearest(1.0 / share)
        return f"1{HELD}time in{HELD}{round(number, -2 if number >= 1000 else -1):,}"
    if share <= 0.4:
        number = nearest(1.0 / share)
        return f"1{HELD}time in{HELD}{number if number < 100 else round(number, -1)}"
    tens = nearest(10.0 * share)
    return f"{tens} times in{HELD}10" if tens < 10 else "nearly always"


def aimed_words(one: Alternative, units: Units = YARDS) -> str:
    """Where a shot is aimed, from the straight line to the pin."""
    side = units.side(one.aim_offset_yd)
    return f"aimed {side} of the pin line" if side else "aimed at the pin"


def plan_words(result: Lesson, units: Units = YARDS) -> list[str]:
    """Which club, which line, why, what the alternative risks."""
    answer = result.answer
    if answer.verdict == "either":
        return _either(answer, units)
    best = answer.best
    leaves = units.range(best.leaves_yd["p10"].value, best.leaves_yd["p90"].value)
    line = aimed_words(best, units)
    club = f"Hit the {shot_words(best, units)}, {line}; it leaves {leaves}{past_flag(answer, best)}, 8 in 10."
    point = f"Point it {line_words(best, units)}."
    return [club, point, *_how_sure(answer), why_words(answer, units), *risk_words(answer, units)]


def _either(answer: Answer, units: Units) -> list[str]:
    """The alternatives that will do, as the answer screen names them, and how they are aimed."""
    named = level(answer)
    names = join_words([f"the {title(answer, k, units)}" for k in named], "or")
    any_ = "either" if len(named) < 3 else "any of them"
    first = f"{capital(names)}: {any_} will do, hit the one you trust.{versions(answer, units)}"
    if held := if_figures_hold(answer, units):
        first = f"The {held}"
    lines = [_aimed(answer, k, units) for k in named]
    return [first, " ".join(line for line in lines if line), *risk_words(answer, units)]


def _aimed(answer: Answer, index: int, units: Units) -> str:
    """How a named alternative is aimed; of one whose name has the line only what its yards count from."""
    one = answer.alternatives[index]
    if not told_by_line(answer, index, units):
        return f"The {title(answer, index, units)} is {aimed_words(one, units)}."
    if not units.side(one.aim_offset_yd):
        return ""
    return f"The {shot_words(one, units)}'s {units.bare_side(one.aim_offset_yd)} counts from the pin line."


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
    error = _give_or_take(behind.margin)
    if behind.value <= 0.0:
        return f"On score the {mine} and the {other_name} are level ({error})."
    often = 1.0 / behind.value
    times = "every time" if often < 1.5 else f"every {nearest(often)} times"
    saves = f"The {mine} saves a shot against the {other_name} {times} you play this"
    return f"{saves}: {behind.value:.2f}, {error}."


def _give_or_take(margin: float) -> str:
    """An error in words; one that rounds to nothing is still one."""
    return "give or take less than 0.01" if margin < 0.005 else f"give or take {margin:.2f}"


def risk_words(answer: Answer, units: Units = YARDS) -> list[str]:
    """What the runner-up risks and what it gains."""
    other = runner_up(answer)
    if other is None:
        return []
    one, two, n = answer.best, answer.alternatives[other], answer.sequences
    names = title(answer, answer.recommended, units), title(answer, other, units)
    nearer = one.leaves_yd["p50"].value - two.leaves_yd["p50"].value
    far = units.length(abs(nearer)) if abs(nearer) >= LEAST_LEAVE_YD else ""
    rows = troubles(answer, [answer.recommended, other])
    worse = _dearest([row for row in rows if row.shares[1] - row.shares[0] >= LEAST_MORE], 1)
    better = _dearest([row for row in rows if row.shares[0] - row.shares[1] >= LEAST_MORE], 0)
    whole = TroubleRow(TROUBLE_WORD, (trouble_share(one), trouble_share(two)))
    if worse is None and whole.shares[1] - whole.shares[0] >= LEAST_MORE:  # a little more of each of many
        worse = whole
    if better is None and whole.shares[0] - whole.shares[1] >= LEAST_MORE:
        better = whole
    gains = f" and {'gains' if nearer > 0 else 'loses'} {far}" if far else ""
    said = []
    if worse is not None:
        mine, risk = _apart(worse.shares, n)
        said.append(f"The {names[1]} finds {_odds(worse, risk)} ({names[0]}: {mine}){gains}.")
    elif far:
        risks = "risks no more" if better is None else "risks less"
        said.append(f"The {names[1]} {risks}, {'gains' if nearer > 0 else 'but loses'} {far}.")
    else:
        said.append(f"The {names[1]} risks no more than the {names[0]} and leaves about the same.")
    if better is not None:
        price, other_risk = _apart(better.shares, n)
        words = f"{_odds(better, price)} ({names[1]}: {other_risk})"
        said.append(f"The {names[0]} has its own price: {words}.")
    return said


def _odds(row: TroubleRow, times: str) -> str:
    """A trouble and how often: "the drain 1 time in 7"; "burn 2: 1 time in 7" has two figures to part."""
    words = f"a {row.words[4:]}" if row.words.startswith("any ") else row.words
    if words == TROUBLE_WORD:
        return f"{words} {times}"
    if words[-1:].isdigit():
        return f"{words}: {times}"
    common = words.islower() and not words.startswith(("a ", "the ", WORDS[Surface.OUT_OF_BOUNDS]))
    return f"{'the ' if common else ''}{words} {times}"


def _apart(shares: Sequence[float], sequences: int) -> tuple[str, str]:
    """Two shares of trouble as times; in a hundred where they would be told by the same words."""
    one, two = (times_words(share, sequences) for share in shares)
    if one != two:
        return one, two
    one, two = (f"{nearest(100.0 * share)} times in{HELD}100" for share in shares)
    return one, two


def _told(shares: Sequence[float], sequences: int) -> tuple[str, str]:
    """Two shares as times, told apart where they lie far enough from each other to be worth it."""
    if abs(shares[0] - shares[1]) >= LEAST_MORE:
        return _apart(shares, sequences)
    one, two = (times_words(share, sequences) for share in shares)
    return one, two


def _dearest(rows: list[TroubleRow], index: int) -> TroubleRow | None:
    """The row whose surplus is greatest, penalties before anything else."""
    if not rows:
        return None
    return max(rows, key=lambda row: (row.penalty, row.shares[index] - row.shares[1 - index]))


def aim_words(result: Lesson, units: Units = YARDS) -> list[str]:
    """The flat bottom and the cliff of each club."""
    said = []
    sure = [curve for curve in result.curves[1:] if not curve.map_gap]
    for curve in [result.curves[0], *sure][:2]:
        name = shot_words(result.answer.alternatives[curve.index], units)
        low, high = curve.tie_yd
        ends = [units.bare_side(edge) if units.whole(abs(edge)) else "the pin line" for edge in (low, high)]
        words = f"The {name} plays alike from {ends[0]} to {ends[1]}"
        cliffs = [
            f"{units.length(10.0)} more {side} costs {cost:.2f}"
            for side, cost in (("left", curve.ten_left), ("right", curve.ten_right)) if cost is not None
        ]  # fmt: skip
        said.append(f"{words}; {' and '.join(cliffs)}." if cliffs else f"{words}.")
    return said


def gap_words(result: Lesson, units: Units = YARDS) -> str:
    """Which curves are less sure than their plays, and by how much; empty when none is."""
    gaps = [
        f"the {shot_words(result.answer.alternatives[curve.index], units)} {curve.map_gap:.2f}"
        for curve in result.curves if curve.map_gap
    ]  # fmt: skip
    if not gaps:
        return ""
    return f"Wider where value map and plays differ ({', '.join(gaps)}): there no line can be read off."


def score_words(result: Lesson, units: Units = YARDS) -> list[str]:
    """The scores in whole counts."""
    answer, said = result.answer, []
    for k in leading(answer):
        one, pars = answer.alternatives[k], par_counts(answer.alternatives[k])
        name = title(answer, k, units)
        mean = f"averages {one.score.value:.2f} ({_give_or_take(one.score.margin)})"
        if pars is None:
            said.append(f"From here the {name} {mean}.")
        else:
            said.append(
                f"The {name} {mean}: in 100 plays {pars[0]} at par or better{_birdies(result, k)}, "
                f"{pars[1]} {'bogey' if pars[1] == 1 else 'bogeys'}, "
                f"{pars[2]} {'double' if pars[2] == 1 else 'doubles'} or worse."
            )
    return said


def _birdies(result: Lesson, index: int) -> str:
    """How many of the plays at par or better are birdies; nothing where not one in a hundred is."""
    one = result.answer.alternatives[index]
    birdies = one.chances.get("birdie_or_better")
    few = birdies is None or birdies.value < 0.01
    count = 0 if few else score_counts(one, list(result.scores.shares[index]))[0]
    return f" (of them {count} {'birdie' if count == 1 else 'birdies'} or better)" if count else ""


def worth_words(result: Lesson, units: Units = YARDS) -> list[str]:
    """What a yard and a lie are worth where the shot finishes."""
    value = result.value
    pin = result.answer.hole.pin
    out = ((pin.x_yd - value.here_yd[0]) ** 2 + (pin.y_yd - value.here_yd[1]) ** 2) ** 0.5
    said = [
        f"From the cross, {units.length(out)} out on {value.ground}, this player takes {value.here:.2f} more "
        "shots. Lines: strokes more or fewer than from there."
    ]
    ten = []
    if value.ten_nearer is not None:
        ten.append(f"{units.length(10.0)} nearer {_worth(-value.ten_nearer)}")
    if value.ten_farther is not None:
        ten.append(f"{units.length(10.0)} farther {_worth(value.ten_farther)}")
    if ten:
        said.append(f"{' and '.join(ten)}.")
    lies = [f"{name} {_worth(cost)}" for name, cost in value.lies.items()]
    if lies:
        said.append(f"In place of {value.ground}: {', '.join(lies)}.")
    return [capital(line) for line in said]


LITTLE_STROKES = 0.03
"""A place worth less than this more than another is worth the same [strokes]: neighbouring values of a map
differ by 0.01 to 0.02 from seed to seed."""


def _worth(cost: float) -> str:
    if abs(cost) < LITTLE_STROKES:
        return "changes little"
    return f"{'costs' if cost > 0.0 else 'saves'} {abs(cost):.2f}"


def approach_words(result: Lesson, units: Units = YARDS) -> list[str]:
    """The shot at the green: club, target, misses, room."""
    answer, target, number = result.approach, result.target, units.number
    best = answer.best
    on = counts(answer, best).get(WORDS[Surface.GREEN], 0)  # as the key below the picture has it
    missed = {name: share.value for name, share in target.misses.items() if name != "on"}
    whole = max(sum(missed.values()), 1e-9)
    parts = in_hundred([(100 - on) / 100.0 * share / whole for share in missed.values()])
    where = ", ".join(f"{part} {name}" for name, part in zip(missed, parts, strict=True) if part)
    room = target.flag_room
    green = f"{on} finish on the green; the others: {where}." if where else "all finish on the green."
    said = [
        f"From {units.sentence(answer.start.words)}: the {shot_words(best, units)}, "
        f"{aimed_words(best, units)}. In 100, {green}",
        f"The flag has {number(room.front_yd)} {units.short} of green in front, {number(room.behind_yd)} "
        f"behind, {number(room.left_yd)} left, {number(room.right_yd)} right.",
    ]
    mine = target.middle_room
    depth, width = (units.length(v) for v in target.eight_in_ten_yd)
    middle = (
        f"The middle of the finishes has {number(mine.front_yd)} in front, {number(mine.behind_yd)} behind; "
        if mine.front_yd + mine.behind_yd > 0.0 else "The middle of the finishes is off the green; "
    )  # fmt: skip
    return [*said, f"{middle}8 in 10 stay inside {depth} of depth and {width} of width."]


def pattern_words(result: Lesson, units: Units = YARDS) -> list[str]:
    """The widest and the narrowest pattern, and what mishits do."""
    first, last = result.patterns[0], result.patterns[-1]
    wide = [
        f"the {one.club} {units.length(one.width_yd.value)} across, {units.length(one.depth_yd.value)} deep"
        for one in (first, last)
    ]
    return [
        f"8 of 10 finish inside: {' and '.join(wide)}, each way by itself. Plan with the whole pattern, "
        "not with the best ball of it.",
    ]


def two_words(result: Lesson, units: Units = YARDS) -> list[str]:
    """Where each of the two goes wrong."""
    answer = result.answer
    pair = leading(answer)
    if len(pair) < 2:
        return ["One club stands alone here: the picture shows where it goes wrong."]
    rows = [row for row in troubles(answer, pair) if max(row.shares) >= 0.01][:4]
    drawn = any(feature.surface in TROUBLE for feature in answer.hole.features)
    seldom = "in no trouble as often as 1 time in 100" if drawn else "no trouble drawn here"
    said = []
    for place, k in enumerate(pair):
        found = [_odds(row, _told(row.shares, answer.sequences)[place]) for row in rows]
        words = ", ".join(found) or seldom
        name = title(answer, k, units)
        said.append(f"{capital(name)}: {words}.")
    return said


def foot_words(result: Lesson, units: Units = YARDS) -> str:
    """Whose odds, the cautions, and whose map."""
    answer = result.answer
    exact = f" {EXACT}" if answer.confidence is None else ""
    parts = (
        f"{name_said(answer.player, 'handicap ')}; {answer.sequences:,} plays of each shot, "
        f"seed {answer.seed}: a model's odds.{exact}",
        f"Nobody ahead nearer than {units.clear(answer.clear_beyond_yd)}. {LOOK}",
        RULES, *map_data(answer.hole),
    )  # fmt: skip
    return " ".join(parts)
