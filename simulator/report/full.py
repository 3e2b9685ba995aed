"""Everything an answer holds, with standard errors: what --full prints."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from ..strategy.alternative import Alternative
from ..strategy.confidence import Flip
from ..strategy.errorbars import Estimate
from ..strategy.goals import TIE_SHARE
from ..strategy.reach import Reach
from ..strategy.result import TIE_STROKES, Answer
from . import lines as lines_
from . import phrases
from .cautions import RULES
from .chosen import equals, title
from .credits import map_data
from .figures import join_words, plain_spaces, plus_minus, unseen
from .screen import COLUMNS, hang, wrap
from .text import caption
from .turns import way_words
from .units import YARDS, Units
from .verdicts import goal_words, verdict

CHANCES = {
    "birdie_or_better": "birdie or better",
    "par": "par",
    "bogey": "bogey",
    "double_or_worse": "double or worse",
    "penalty_this_shot": "penalty with this ball",
    "penalty_on_hole": "penalty on the hole",
    "fairway": "fairway hit",
    "green_in_regulation": "green in regulation",
    "branch_this_shot": "a branch on its way",
    "three_putt": "three putts or more",
}
"""Words of what is counted in 100 plays, by their names in the JSON."""

LATER = "Scores take for granted that later shots are chosen well: each is the value map's choice."


def full_tables(answer: Answer, notes: tuple[str, ...] = (), units: Units = YARDS) -> str:
    """Every alternative with its standard errors, then what was assumed and what made the numbers.

    Returns
    -------
    str
        Lines of at most 80 columns (more only where a name is longer), without a final newline.
    """
    lines = [
        *wrap(verdict(answer, units)),
        *wrap(lines_.pointing(answer, units)),
        "",
    ]
    lines += [*wrap(caption(answer, units)), "", *_summary(answer, units), *_sureness(answer, units)]
    for index in range(len(answer.alternatives)):
        lines += ["", *_details(answer, index, units)]
    lines += ["", *_foot(answer, notes, units)]
    return plain_spaces("\n".join(line.rstrip() for line in lines))


def _summary(answer: Answer, units: Units) -> list[str]:
    """One line an alternative: line, score, map, paired difference."""
    strokes = "score" if answer.start.played is not None else "strokes from here"
    rows = [["", "line", "expected", "by the map", "behind"]]
    for k, one in enumerate(answer.alternatives):
        behind = "" if k == answer.recommended else plus_minus(one.difference, signed=True)
        aim = units.side(one.aim_offset_yd) or "at the pin"
        rows.append([title(answer, k, units), aim, plus_minus(one.score), plus_minus(one.map_score), behind])
    wide = [max(map(len, column)) for column in zip(*rows, strict=True)]
    lines = wrap(f"Expected {strokes} +- standard error, by the map alone, behind the best (paired):")
    for k, (name, *cells) in enumerate(rows, start=-1):
        mark = "*" if k == answer.recommended else "=" if k in answer.tied else " "
        told = "".join(f"  {cell:>{width}}" for cell, width in zip(cells, wide[1:], strict=True))
        lines.append(f"{mark} {name:<{wide[0]}}{told}")
    lines.append("* recommended" + ("   = tied with it" if len(answer.tied) > 1 else ""))
    tied = equals(answer)
    if len(tied) > 1:
        least = f"{TIE_STROKES:g} strokes" if answer.goal is None else f"{100 * TIE_SHARE:.0f} plays in 100"
        why = f"difference within its 95 % margin or below {least}"
        lines += wrap(f"Tied: {join_words([title(answer, k, units) for k in tied])} ({why}).")
    return lines


def _sureness(answer: Answer, units: Units) -> list[str]:
    """For how many plausible players each is best, and what would turn the answer."""
    sure = answer.confidence
    if sure is None:
        return wrap(f"Verdict: {answer.verdict}; player taken as exact.")
    shares = [
        f"{title(answer, k, units)} {100.0 * share:.0f} +- {100.0 * error:.0f}"
        for k, (share, error) in enumerate(zip(sure.shares, sure.shares_standard_error, strict=True))
    ]
    lines = wrap(
        f"Verdict: {answer.verdict}; best for so many in 100 of {sure.draws} plausible versions of the "
        f"player (map anew for {sure.solved}): {', '.join(shares)}."
    )
    for flip in answer.flips:
        tried = f"tried {_tried(flip, units)}"
        if flip.amount is None or flip.to is None:
            name = f"{flip.what.replace('_', ' ')}{f' ({flip.name})' if flip.name else ''}"
            lines += wrap(f"  No {name} turns it; {tried}.", "    ")
        else:
            change = way_words(flip, units, exact=True)
            lines += wrap(f"  Turns to the {title(answer, flip.to, units)} with {change}; {tried}.", "    ")
    return lines


def _tried(flip: Flip, units: Units) -> str:
    if flip.unit == "yd":
        return f"{units.number(flip.tried[0])} to {units.number(flip.tried[1])} {units.short}"
    if flip.unit == "mph":
        return f"{units.wind(flip.tried[0])} to {units.wind(flip.tried[1])} {units.wind_unit}"
    return f"{flip.tried[0]:g} to {flip.tried[1]:g} {flip.unit}"


def _swing(one: Alternative, units: Units) -> str:
    """Its flight and carry; of a putt how far it is meant to roll."""
    if one.flight == "putt":
        return f"to roll {units.length(one.carry_yd)}"
    return f"{one.flight} swing, carry {units.length(one.carry_yd)}"


def _details(answer: Answer, index: int, units: Units) -> list[str]:
    one = answer.alternatives[index]
    first, last = (
        _side(end, units) + _unsure(error, units)
        for end, error in zip(one.aims_yd, one.aims_error_yd, strict=True)
    )
    band = "aim as given" if one.aim_given else f"plays alike from {first} to {last}"
    lines = wrap(
        f"{title(answer, index, units)}: {_swing(one, units)}, "
        f"{lines_.line_words(one, units)}, {_side(one.aim_offset_yd, units)} "
        f"(bearing {one.aim_bearing_deg:.1f} deg from the first leg); {band}.",
        "  ",
    )
    near, half, far = (_yards(one.leaves_yd[p], units) for p in ("p10", "p50", "p90"))
    lines += wrap(
        f"  leaves {near} to {far}, half of them {half} or less; worst tenth averages "
        f"{plus_minus(one.worst_tenth_mean, digits=2)}",
        "  ",
    )
    lines += _ground(one, units)
    if one.goal is not None and answer.goal is not None:
        label = goal_words(answer.goal, units)
        lines.append(f"  {label}: {plus_minus(one.goal, 100.0, 2)} in 100 plays")
    chances = {CHANCES.get(k, k): e for k, e in one.chances.items() if e is not None}
    lines += _columns("in 100 plays", chances, answer.sequences)
    lines += _columns("this ball finishes, by ground", one.finish, answer.sequences)
    named = dict(one.features)
    for feature in answer.hole.features:
        named.setdefault(feature.name, Estimate(0.0, 0.0))
    lines += _columns("this ball finishes, by name", named, answer.sequences)
    return lines


def _ground(one: Alternative, units: Units) -> list[str]:
    """Middle and width of the pattern, the room, and every trouble ahead with the margin."""
    middle, wide = one.middle_right_yd, one.wide_yd
    side = "left" if middle.value < 0.0 else "right"
    away = replace(middle, value=abs(middle.value))
    lines = wrap(
        f"  the middle finishes {_yards(away, units)} {side} of the line, 1 in 20 wider than "
        f"{_yards(wide, units)}",
        "  ",
    )
    if one.room is not None:
        inside = plus_minus(one.room.inside, 100.0, 2)
        lines += wrap(f"  {lines_.room_of(one.room, units)} {inside} in 100 inside.", "  ")
    if one.reach:
        carry, finish = one.reach[0].carry_yd, one.reach[0].finish_yd
        carried = "" if one.flight == "putt" else f"carry less than {_yards(carry, units)} and "
        ahead = [f"{r.name} {units.whole(r.starts_yd)} ({_spare(r, units)})" for r in one.reach]
        lines += wrap(
            f"  999 of 1,000 {carried}finish short of "
            f"{_yards(finish, units)}; trouble ahead starts at: "
            f"{', '.join(ahead)}",
            "    ",
        )
    return lines


def _spare(reach: Reach, units: Units) -> str:
    spare = units.whole(reach.starts_yd) - units.whole(reach.finish_yd.value)
    return f"{spare} to spare" if reach.spare_yd >= 0.0 else "in reach"


def _yards(estimate: Estimate, units: Units) -> str:
    value, error = units.number(estimate.value, 1), units.number(estimate.standard_error, 1)
    return f"{value} +- {error} {units.short}"


def _side(offset_yd: float, units: Units) -> str:
    side = units.side(offset_yd)
    return f"{side} of the pin line" if side else "on the pin line"


def _unsure(error_yd: float | None, units: Units) -> str:
    """How sure an end of the aims that play alike is; without an error nothing farther out was tried."""
    return " or more" if error_yd is None else f" (+- {units.number(error_yd, 1)})"


def _columns(head: str, shares: Mapping[str, Estimate], sequences: int) -> list[str]:
    """Shares as counts in 100 with their standard errors; those never seen in one closing line."""
    lines = [f"  {head}:"]
    width = max((len(name) for name in shares), default=0) + 2
    unmet = [name for name, share in shares.items() if share.value == 0.0]
    met = {name: share for name, share in shares.items() if share.value > 0.0}
    cells = [f"{name:<{width}}{plus_minus(share, 100.0, 2):>15}" for name, share in met.items()]
    across = max(1, (COLUMNS - 4) // (width + 18))
    for k in range(0, len(cells), across):
        lines.append("    " + "   ".join(cells[k : k + across]))
    if unmet:
        never = f"{unseen(sequences)}: {', '.join(unmet)}"
        lines += wrap(never, "    ", "    ")
    return lines


def _foot(answer: Answer, notes: tuple[str, ...], units: Units) -> list[str]:
    whose = " ".join([phrases.whose(answer), *notes, *map_data(answer.hole)])
    longest = units.number(answer.clear_beyond_error_yd, 1)
    ahead = f"{phrases.people(answer, units)} The longest ball is sure to +- {longest} {units.short}."
    lines = wrap(ahead) + wrap(whose)
    assumed = [*answer.hole.assumed, *answer.player.assumed, *answer.conditions.assumed]
    if assumed:
        lines.append("Assumed:")
        for sentence in assumed:
            lines += hang(f"- {units.sentence(sentence)}")
    lines += wrap(LATER)
    lines += [line for warning in answer.warnings for line in hang(f"Warning: {units.sentence(warning)}")]
    settings = ", ".join(f"{key} {value}" for key, value in answer.settings.items())
    lines += wrap(f"Made with seed {answer.seed}, {answer.sequences:,} sequences each; {settings}.")
    if answer.seconds:
        laps = [f"{name.replace('_', ' ')} {seconds:.2f} s" for name, seconds in answer.seconds.items()]
        lines += wrap(f"Time: {', '.join(laps)}; {sum(answer.seconds.values()):.2f} s in all.")
    return lines + wrap(RULES)
