"""The sentences of the answer screen; each says one thing the figures hold."""

from __future__ import annotations

import math

import numpy as np

from ..strategy.result import Alternative, Answer
from .chosen import equals, par_counts, runner_up, shown, title
from .figures import every_words, join_words, range_words, score_digits, side_words

RULES = (
    "For preparation, practice and lessons, not during a round (Rules of Golf 4.3); local rules and the "
    "committee decide."
)
"""Rule 4.3a (Rules of Golf 2023): no device that recommends a club or a line during a round."""

LOOK = "Blind ground, paths, other holes: look and shout."

_SPREAD = ("direction_sd_deg", "distance_sd_pct")
_MISHIT = ("mishit_rate", "mishit_loss_pct", "mishit_distance_sd_pct", "mishit_direction_factor")


def line_words(one: Alternative) -> str:
    """The line of one alternative, from the straight line ball to pin."""
    if abs(one.aim_offset_yd) < 0.5:
        return "at the pin"
    return f"{side_words(one.aim_offset_yd)} of the pin line"


def line_and_band(one: Alternative) -> str:
    """The line in short, and the first and last line that play alike: "9L (15L to 3L)"."""
    low, high = (_short_side(yd) for yd in one.aims_yd)
    band = "" if one.aim_given or low == high else f" ({low} to {high})"
    return f"{_short_side(one.aim_offset_yd)}{band}"


def _short_side(offset_yd: float) -> str:
    whole = round(offset_yd)
    return f"{abs(whole)}{'L' if whole < 0 else 'R'}" if whole else "0"


def leaves_words(one: Alternative) -> str:
    """Distance left, 8 in 10."""
    return range_words(one.leaves_yd["p10"], one.leaves_yd["p90"])


def verdict(answer: Answer) -> str:
    """The answer in one plain sentence."""
    equal = equals(answer)[:3]
    best = answer.best
    if len(equal) > 1:
        names = join_words([title(answer, k) for k in equal], "or")
        return f"{_capital(names)}: equal over many plays, hit the one you trust{_unasked(answer, equal)}."
    name = title(answer, answer.recommended)
    leaves = f"leaves {leaves_words(best)}"
    if answer.question == "compare" and not best.asked:
        asked = [title(answer, k) for k, one in enumerate(answer.alternatives) if one.asked]
        than = {1: f"the {asked[0]}" if asked else "it", 2: "both"}.get(len(asked), "all of them")
        return f"Better than {than}, though not asked about: {name}, {line_words(best)}; {leaves}."
    return f"Hit the {name}, {line_words(best)}; it {leaves}."


def _unasked(answer: Answer, equal: list[int]) -> str:
    if answer.question != "compare":
        return ""
    names = [title(answer, k) for k in equal if not answer.alternatives[k].asked]
    return f" (the {join_words(names)} was not asked about)" if names else ""


def trade(answer: Answer) -> str:
    """What the braver of the first two gains and costs against the other; empty when there is one only."""
    other = runner_up(answer)
    if other is None:
        return ""
    pair = [answer.recommended, other]
    brave, steady = sorted(pair, key=lambda k: _boldness(answer.alternatives[k]), reverse=True)
    one, two = answer.alternatives[brave], answer.alternatives[steady]
    names = f"the {title(answer, brave)}", f"the {title(answer, steady)}"
    good, bad = _balance(one, two)
    against = f"Against {names[1]}, {names[0]}"
    if good and bad:
        words = f"{against} {good} but {bad} in 100 plays"
    elif bad:
        words = f"{against} gains nothing: it {bad} in 100 plays"
    elif good:
        words = f"{against} {good} in 100 plays"
    else:
        words = f"In 100 plays {names[0]} and {names[1]} come out alike"
    if answer.start.played is None:
        further = round(one.leaves_yd["p50"] - two.leaves_yd["p50"])
        words += f", leaving {abs(further)} yd {'more' if further > 0 else 'less'}" if further else ""
    return f"{words}; {_margin(answer, other)}."


def _boldness(one: Alternative) -> tuple[float, float]:
    doubles = one.chances["double_or_worse"]
    penalty = one.chances["penalty_this_shot"]
    return (0.0 if penalty is None else penalty.value), (0.0 if doubles is None else doubles.value)


def _balance(one: Alternative, two: Alternative) -> tuple[str, str]:
    """What `one` has to the good and to the bad of `two` in 100 plays, each as "gains 2 pars"."""

    def more(name: str) -> int:
        a, b = one.chances.get(name), two.chances.get(name)
        return 0 if a is None or b is None else round(100.0 * (a.value - b.value))

    def count(number: int, single: str, plural: str) -> str:
        return f"{abs(number)} {single if abs(number) == 1 else plural}"

    first, second = par_counts(one), par_counts(two)  # as the table has them, so that the sums come out
    pars, doubles = (first[0] - second[0], first[2] - second[2]) if first and second else (0, 0)
    gains = [count(pars, "par", "pars")] if pars > 0 else []
    loses = [count(pars, "par", "pars")] if pars < 0 else []
    costs: list[str] = []
    saves: list[str] = []
    for number, single, plural in (
        (doubles, "double", "doubles"),
        (more("penalty_this_shot"), "penalty", "penalties"),
    ):
        if number:
            (costs if number > 0 else saves).append(count(number, single, plural))
    return _said(("gains", gains), ("saves", saves)), _said(("loses", loses), ("costs", costs))


def _said(*parts: tuple[str, list[str]]) -> str:
    return " and ".join(f"{verb} {join_words(counts)}" for verb, counts in parts if counts)


def _margin(answer: Answer, other: int) -> str:
    if other in answer.tied:
        return "over many plays neither is ahead"
    behind = answer.alternatives[other].difference
    strokes = max(behind.value, 0.0)
    name = title(answer, answer.recommended)
    size = f"{strokes:.{max(1, score_digits(behind.standard_error))}f}"
    return f"the {name} is ahead by {size} strokes, {every_words(strokes)}"


def people(answer: Answer) -> str:
    """Who must be clear: the longest of all strikes, and how wide one in twenty finishes."""
    wide = max(_wide_yd(answer, answer.alternatives[k]) for k in shown(answer))
    return (
        f"Nobody ahead nearer than {answer.clear_beyond_yd} yd; 1 in 20 finish wider than {wide} yd "
        f"either side. {LOOK}"
    )


def _wide_yd(answer: Answer, one: Alternative) -> int:
    """Distance beside the aim line that one in twenty finishes beyond, rounded up [yd]."""
    aim = math.radians(one.aim_bearing_deg)
    x = one.finishes_yd[:, 0] - answer.start.x_yd
    y = one.finishes_yd[:, 1] - answer.start.y_yd
    return math.ceil(np.quantile(np.abs(x * math.cos(aim) - y * math.sin(aim)), 0.95))


def whose(answer: Answer) -> str:
    """Whose numbers these are: file, level, assumed."""
    player = answer.player
    clubs = [c for c in player.clubs if c.name in {answer.alternatives[k].club for k in shown(answer)}]
    sources = {
        "carries": {c.sources.get("carry_yd", "level") for c in clubs},
        "spreads": {c.sources.get(key, "level") for c in clubs for key in _SPREAD},
        "mishits": {c.sources.get(key, "level") for c in clubs for key in _MISHIT},
        "putting": set(player.putting.sources.values()) or {"level"},
    }
    found = {"file": "from the file", "both": "from file and level", "level": "from the level"}
    groups: dict[str, list[str]] = {}
    for what, names in sources.items():
        key = "both" if len(names) > 1 else next(iter(names), "level")
        groups.setdefault(key, []).append(what)
    parts = [f"{join_words(groups[key])} {words}" for key, words in found.items() if key in groups]
    of = f" (handicap {player.handicap:g})" if player.handicap is not None else ""
    count = len(answer.hole.assumed) + len(player.assumed)
    more = f"; {count} things assumed (--full)" if count else ""
    return f"{player.name}{of}: {', '.join(parts)}{more}."


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
