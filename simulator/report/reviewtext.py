"""A hole or a round as it was played, in words: what went to the choice, what to the swing."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ..strategy.errorbars import Estimate
from ..strategy.result import TIE_STROKES
from ..strategy.review.adding import RoundReview
from ..strategy.review.holes import PARTS, HoleReview
from ..strategy.review.judging import Judged
from ..strategy.review.notes import HOLED
from ..strategy.review.strokes import Stroke
from .cautions import EXACT, RULES
from .chosen import shot_words
from .daywords import day_told
from .figures import NOTHING_STROKES, join_words, name_said, pin_said
from .lines import point_words
from .screen import side_by_side, wrap
from .units import YARDS, Units

MOST_NAMED = 3
"""Choices, and swings, that are told of a round."""

DEAR_SWING = 0.3
"""A swing that lost as much is told of [strokes]."""

HOW_JUDGED = (
    "A choice is judged by its odds before the ball was struck, a swing by where the ball went: "
    "luck of bounce and lie goes with it."
)

UNPLAYABLE = "An unplayable ball is lost by the stroke that brought it."

TAKEN = "Lines nobody noted are taken as the best for the club."

BEATS = "Beats: of 100 balls of the player's own, struck with that club from there, so many end worse."

_WIDTHS = (2, 20, 30)


def review_text(
    found: HoleReview | RoundReview, notes: tuple[str, ...] = (), units: Units = YARDS, full: bool = False
) -> str:
    """A hole, a line a stroke, or a round by parts of the game and by holes.

    Parameters
    ----------
    notes : tuple of str
        Sentences about what was taken for granted.
    full : bool
        With standard errors.

    Returns
    -------
    str
        Lines of at most 80 columns, without a final newline.
    """
    if isinstance(found, HoleReview):
        return _hole_text(found, notes, units, full)
    return _round_text(found, notes, units, full)


def _hole_text(found: HoleReview, notes: tuple[str, ...], units: Units, full: bool) -> str:
    hole = found.hole
    where = f"{hole.name}, par {hole.par}, {units.length(hole.length_yd)}"
    lines = wrap(f"{where}; {hole.tee.name} tee, {pin_said(hole.pin.name)}; {name_said(found.player)}")
    lines += wrap(day_told(found.conditions, units=units))
    lines += wrap(verdict(found.player.name, found))
    lines += ["", *_table(found, units, full), ""]
    strokes = [(None, one) for one in found.strokes]
    lines += wrap(choice_words(strokes, units))
    dear = swing_words(strokes, units)
    lines += wrap(dear) if dear else []
    if _lines_taken(found.strokes):
        lines += wrap(TAKEN)
    lines += _doubts([(None, found)], units)
    lines += wrap(f"{how_judged(found.strokes)} {BEATS}")
    return "\n".join([*lines, *_ending([found], notes)])


def _round_text(found: RoundReview, notes: tuple[str, ...], units: Units, full: bool) -> str:
    ones = list(found.holes.values())
    count, player = len(ones), ones[0].player
    lines = wrap(f"{found.course}, {count} {'hole' if count == 1 else 'holes'}; {name_said(player)}")
    lines += wrap(verdict(player.name, found))
    lines += ["", f"{'gained or lost':<26}{'strokes':>8}{'choice':>9}{'swing':>9}"]
    for name in PARTS:
        strokes, choice, swing = found.part(name)
        lines.append(
            f"{name:<26}{strokes:>8}{gained(choice):>9}{gained(swing):>9}{_errors(full, choice, swing)}"
        )
    if found.penalties:
        lines.append(f"{'penalties':<26}{found.penalties:>8}   lost by the strokes above that brought them")
    lines += ["", f"{'hole':<26}{'par':>4}{'score':>7}{'needs':>7}{'choice':>9}{'swing':>9}"]
    for number, one in found.holes.items():
        names = side_by_side([f"{number:>2} {one.hole.name}"], [26])
        score = f"{one.score}{'' if one.holed else '*'}"
        figures = f"{one.hole.par:>4}{score:>7}{one.expected.value:>7.2f}"
        figures += f"{gained(one.choice):>9}{gained(one.swing):>9}{_errors(full, one.choice, one.swing)}"
        lines += [f"{names[0]:<26}{figures}", *names[1:]]
    if any(not one.holed for one in ones):
        lines.append("* not holed: what was left is counted as it goes on average")
    lines.append("")
    every = [(number, one) for number, hole in found.holes.items() for one in hole.strokes]
    lines += wrap(choice_words(every, units))
    dear = swing_words(every, units)
    lines += wrap(dear) if dear else []
    lines += _doubts(list(found.holes.items()), units)
    taken = f"{TAKEN} " if _lines_taken([one for _, one in every]) else ""
    lines += wrap(f"{taken}{how_judged([one for _, one in every])}")
    return "\n".join([*lines, *_ending(ones, notes)])


def how_judged(strokes: Sequence[Judged]) -> str:
    """By what choices and swings are told apart, and who has the cost of an unplayable ball."""
    dropped = any(one.stroke.kind == "drop" for one in strokes)
    return f"{HOW_JUDGED} {UNPLAYABLE}" if dropped else HOW_JUDGED


def _lines_taken(strokes: Iterable[Judged]) -> bool:
    """Whether there was a stroke with a line that nobody noted: not where all were, nor of putts alone."""
    return any(one.chosen is not None and not one.aim_given for one in strokes)


def _doubts(holes: Sequence[tuple[int | None, HoleReview]], units: Units) -> list[str]:
    """Balls noted far beyond their club: the note, or the club's carry, may be a slip."""
    lines = []
    for number, hole in holes:
        for stroke, club, went, carry in hole.doubtful:
            name = f"stroke {stroke}" if number is None else f"hole {number}, stroke {stroke}"
            lines += wrap(
                f"Look again at {name}: {units.length(went)} with the {club} is far beyond this player, "
                f"who carries it {units.length(carry)}."
            )
    return lines


def _ending(holes: Sequence[HoleReview], notes: Iterable[str]) -> list[str]:
    """What the figures stand on, and the rule."""
    assumed = {
        words for one in holes for words in (*one.hole.assumed, *one.player.assumed, *one.conditions.assumed)
    }
    count = f" {len(assumed)} things assumed of hole, player and day (holesim check)." if assumed else ""
    return [line for note in (*notes, f"{EXACT}{count}", RULES) for line in wrap(note)]


def verdict(name: str, found: HoleReview | RoundReview) -> str:
    """Score against the player's own average, and what of the difference is choice and what is swing."""
    more = found.score + found.left.value - found.expected.value
    told = f"{found.score} {'stroke' if found.score == 1 else 'strokes'}"
    if not found.holed:
        told += f" and {found.left.value:.2f} still to play on average"
    against = f"{told}; {name} needs {found.expected.value:.2f} here on average: {_lost(more)}."
    return f"{against} Choices {_verb(found.choice)}, swings {_verb(found.swing)}."


def _lost(strokes: float) -> str:
    if abs(strokes) < NOTHING_STROKES:
        return "as expected"
    return f"{abs(strokes):.2f} {'lost' if strokes > 0.0 else 'gained'}"


def _verb(one: Estimate) -> str:
    if abs(one.value) < NOTHING_STROKES:
        return "cost nothing"
    return f"{'lost' if one.value > 0.0 else 'gained'} {abs(one.value):.2f}"


def gained(one: Estimate) -> str:
    """Strokes gained (the trade's sign): what was lost, turned round."""
    value = round(-one.value, 2) + 0.0
    return f"{value:+.2f}" if value else "0.00"


def _errors(full: bool, *ones: Estimate) -> str:
    return "  +- " + ", ".join(f"{one.standard_error:.3f}" for one in ones) if full else ""


def _table(found: HoleReview, units: Units, full: bool) -> list[str]:
    """A row a stroke, strokes gained as the trade counts them."""
    lines = [
        f"{'':<54}   gained or lost",
        f"{'':>2} {'played':<20} {'went':<30} {'choice':>8} {'swing':>7} {'beats':>7}",
    ]
    for one in found.strokes:
        stroke = one.stroke
        words = units.place(play_words(stroke)), units.place(went_words(stroke))
        rows = side_by_side([f"{stroke.number:>2}", *words], _WIDTHS)
        beats = "" if one.better_than is None else f"{100.0 * one.better_than.value:.0f}"
        figures = f"{gained(one.choice):>8} {gained(one.swing):>7} {beats:>7}".rstrip()
        lines += [f"{rows[0]:<54} {figures}", *rows[1:]]
        if full:
            errors = f"{one.choice.standard_error:>8.3f} {one.swing.standard_error:>7.3f}"
            lines.append(f"{'standard errors':>54} {errors}")
    return lines


def went_words(stroke: Stroke) -> str:
    """Where the ball went; one that is replayed says so."""
    if stroke.end is None:
        return "holed"
    return f"{stroke.went}, again" if stroke.end == stroke.start and stroke.strokes else stroke.went


def play_words(stroke: Stroke) -> str:
    """What was played: the club, or how many putts."""
    out = stroke.kind == "putt" and stroke.end is None and stroke.went != HOLED
    return stroke.went if out else stroke.club


def dear_choice(one: Judged) -> bool:
    """Whether a choice cost so much that it is told."""
    return one.choice.value >= max(TIE_STROKES, one.choice.margin)


Told = tuple[int | None, Judged]
"""A stroke and the number of its hole, where there is more than one."""


def _name(number: int | None, one: Judged) -> str:
    stroke = f"stroke {one.stroke.number}"
    return stroke if number is None else f"hole {number}, {stroke}"


def choice_words(strokes: Sequence[Told], units: Units) -> str:
    """The choices that cost most, and what would have been better."""
    dear = [item for item in strokes if dear_choice(item[1])]
    dear.sort(key=lambda item: -item[1].choice.value)
    if not dear:
        return f"No choice cost as much as {TIE_STROKES:g} strokes."
    said = []
    for number, one in dear[:MOST_NAMED]:
        assert one.best is not None
        played = f"{_name(number, one)}, {units.place(one.stroke.club)}"
        better = f"the {shot_words(one.best, units)} {point_words(one.best.point, units)}"
        said.append(f"{played}: {better} is {one.choice.value:.2f} better")
    more = len(dear) - MOST_NAMED
    rest = f" {more} more cost {TIE_STROKES:g} or more." if more > 0 else ""
    return f"Choices that cost most: {'; '.join(said)}.{rest}"


def swing_words(strokes: Sequence[Told], units: Units) -> str:
    """The swings that cost most."""
    dear = [item for item in strokes if item[1].swing.value >= DEAR_SWING]
    dear.sort(key=lambda item: -item[1].swing.value)
    said = []
    for number, one in dear[:MOST_NAMED]:
        club = "putting" if one.stroke.kind == "putt" else units.place(one.stroke.club)
        share = one.better_than
        beats = "" if share is None else f" (it beats {100.0 * share.value:.0f} in 100 of the player's own)"
        said.append(f"{_name(number, one)}, {club}: {one.swing.value:.2f}{beats}")
    return f"Swings that cost most: {join_words(said)}." if said else ""
