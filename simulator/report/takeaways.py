"""What the pages of a lesson say in plain words, out of their figures; of the plan: `planwords`."""

from __future__ import annotations

from ..hole.surfaces import TROUBLE, WORDS, Surface
from ..strategy.aims import AimCurve
from ..strategy.lesson import Lesson
from ..strategy.pointing import FINEST_YD
from ..strategy.result import Answer
from .cautions import EXACT, LOOK, RULES
from .chosen import leading, most_met, par_counts, score_counts, shot_words, title, troubles
from .credits import map_data
from .figures import capital, in_hundred, name_said
from .lines import line_words
from .odds import odds, told
from .planwords import BY_GROUND, aimed_words, give_or_take
from .shotplot import counts
from .units import YARDS, Units

MOST_TROUBLES = 4
"""Troubles told of two ways to play a hole."""


def aim_words(result: Lesson, units: Units = YARDS) -> list[str]:
    """The flat bottom and the cliff of each club."""
    said = []
    sure = [curve for curve in result.curves[1:] if not curve.map_gap]
    for curve in [result.curves[0], *sure][:2]:
        name = shot_words(result.answer.alternatives[curve.index], units)
        low, high = curve.tie_yd
        words = f"The {name} {_alike(low, high, units)}"
        cliffs = [
            f"{units.length(10.0)} more {side} costs {cost:.2f}"
            for side, cost in (("left", curve.ten_left), ("right", curve.ten_right)) if cost is not None
        ]  # fmt: skip
        costs = f"; {' and '.join(cliffs)}" if cliffs else ""
        said.append(f"{words}{costs}.{_by_eye(result, curve, units)}")
    return said


def _by_eye(result: Lesson, curve: AimCurve, units: Units) -> str:
    """What the line of a curve's shot is on the ground, where the axis counts from a pin round the corner."""
    one = result.answer.alternatives[curve.index]
    line, apart_yd = units.bare_side(one.aim_offset_yd), abs(one.aim_offset_yd - one.point.offset_yd)
    if one.point.by not in BY_GROUND or apart_yd < FINEST_YD or line == "0":
        return ""
    return f" Here {line} is {line_words(one, units)}."


def _alike(low_yd: float, high_yd: float, units: Units) -> str:
    """Both ends of the lines that play alike, as "plays alike from 15 left to 13 right of the pin line"."""
    nought = "the pin line"
    low, high = (units.bare_side(edge) if units.whole(abs(edge)) else nought for edge in (low_yd, high_yd))
    of = "" if high == nought else f" of {nought}"
    if low == high:
        return f"plays best {high}{of} alone" if of else f"plays best on {nought} alone"
    if nought not in (low, high) and (low_yd < 0.0) == (high_yd < 0.0):
        low = units.number(abs(low_yd))  # the side is said behind the other end
    return f"plays alike from {low} to {high}{' of it' if low == nought else of}"


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
        mean = f"averages {one.score.value:.2f} ({give_or_take(one.score.margin)})"
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
    out = result.answer.hole.out_yd(*value.here_yd)
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
    often = [row for row in troubles(answer, pair) if max(row.shares) >= 0.01]
    rows = most_met(often, MOST_TROUBLES)
    drawn = any(feature.surface in TROUBLE for feature in answer.hole.features)
    seldom = "in no trouble as often as 1 time in 100" if drawn else "no trouble drawn here"
    said = []
    for place, k in enumerate(pair):
        met = [row for row in rows if row.shares[place]]  # "fewer than 1 in 6,666" tells nothing
        found = [odds(row, told(row.shares, answer.sequences)[place]) for row in met]
        words = ", ".join(found) or seldom
        name = title(answer, k, units)
        said.append(f"{capital(name)}: {words}.")
    return said


def foot_words(answer: Answer, units: Units = YARDS) -> str:
    """Whose odds, the cautions, and whose map, of the answer that a page shows."""
    exact = f" {EXACT}" if answer.confidence is None else ""
    parts = (
        f"{name_said(answer.player, 'handicap ')}; {answer.sequences:,} plays of each shot, "
        f"seed {answer.seed}: a model's odds.{exact}",
        f"Nobody ahead nearer than {units.clear(answer.clear_beyond_yd)}. {LOOK}",
        RULES, *map_data(answer.hole),
    )  # fmt: skip
    return " ".join(parts)
