"""What a course's results are called in a cell: club, line, how sure."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from ..conditions import Scenario
from ..player import Player
from ..player.names import with_flight
from ..strategy.courseasked import FIRST_PINS, CourseAnswer, Pins
from ..strategy.pointing import FINEST_YD
from ..strategy.tees import holes_without
from .cautions import EXACT
from .chosen import SWINGS, called
from .figures import HELD, tenths
from .units import YARDS, Units

BRIEF_WITHIN = "one tenth"
"""How far the brief form lies from the full one (`benchmarks/brief_confidence.py`)."""


def best_of(result: dict[str, Any]) -> dict[str, Any]:
    """The recommended alternative of a result."""
    answer = result["answer"]
    return dict(answer["alternatives"][answer["recommended"]])


def club_words(one: dict[str, Any], units: Units = YARDS) -> str:
    """Club and flight: "5-iron low"; a part swing by its carry."""
    swing = called(one["flight"], one["carry_yd"])
    words = with_flight(one["club"], swing)
    return f"{words} {units.number(one['carry_yd'])}" if swing in SWINGS else words


MIDDLES = ("fairway", "green")
"""What a line is told by the middle of."""


def line_mark(one: dict[str, Any], units: Units = YARDS) -> str:
    """How far left or right of what it is pointed by: "9L", "12R", "mid"; else by its name: "pin 9L".

    Yards from the middle of the fairway or the green stand alone; half of a split fairway, a mark and the
    straight line to the pin are named before them.
    """
    point = one["point"]
    mark = "" if abs(point["offset_yd"]) < FINEST_YD else units.mark(point["offset_yd"])
    name = "pin" if point["by"] == "pin" else _named(point)
    return f"{name} {mark}".strip() if name else mark or "mid"


def side_words(one: dict[str, Any], units: Units = YARDS) -> str:
    """The same for a sentence: "9 left of the middle", "at the middle", "at the pin"."""
    point = one["point"]
    side = "" if abs(point["offset_yd"]) < FINEST_YD else units.bare_side(point["offset_yd"])
    if point["by"] in MIDDLES:
        name = str(point["name"]) if point["half"] else "the middle"
    else:
        name = f"the {'pin' if point['by'] == 'pin' else _named(point)}"
    return f"{side} of {name}" if side else f"at {name}"


def _named(point: dict[str, Any]) -> str:
    """What a line is told by that is no middle of a whole fairway or green: the half, or the mark."""
    return str(point["half"] if point["by"] in MIDDLES else point["name"].removeprefix("the "))


def line_legend(results: Sequence[dict[str, Any]], units: Units = YARDS) -> str:
    """What the words of `line_mark` count."""
    points = [best_of(one)["point"] for one in results]
    words = (
        f"Line: {units.name} left (L) or right (R) of the middle (mid) of fairway or green where it comes "
        "down"
    )
    words += "; pin: of the straight line to it" if any(one["by"] == "pin" for one in points) else ""
    named = any(one["by"] != "pin" and _named(one) for one in points)
    return f"{words}; behind a name: of that." if named else f"{words}."


def runner_up(result: dict[str, Any]) -> dict[str, Any] | None:
    """The best of the other alternatives, None when there is none."""
    answer = result["answer"]
    others = [one for k, one in enumerate(answer["alternatives"]) if k != answer["recommended"]]
    return min(others, key=lambda one: one["expected_score"], default=None)


def tied_clubs(result: dict[str, Any], units: Units = YARDS) -> list[str]:
    """Clubs as good as the recommended one."""
    answer = result["answer"]
    others = (k for k in answer["tied"] if k != answer["recommended"])
    return [club_words(answer["alternatives"][k], units) for k in others]


def sure_words(result: dict[str, Any]) -> str:
    """How sure the choice is: the verdict, and for how many of ten plausible players where that is known.

    Without either the plays alone say: as good as another, or not.
    """
    answer = result["answer"]
    verdict = answer.get("verdict") or ("either" if tied_clubs(result) else "clear")
    confidence = answer.get("confidence")
    if confidence is None:
        return str(verdict)
    return f"{verdict} {tenths(confidence['best_share'])}"


def share_words(result: dict[str, Any]) -> str:
    """For how many of ten plausible players the choice is the best: "9/10"; empty where that is not known.

    A club that nothing comes near has no other to be worse than: empty too.
    """
    confidence = result["answer"].get("confidence")
    return "" if confidence is None else tenths(confidence["best_share"])


def sure_legend(results: Sequence[dict[str, Any]]) -> str:
    """What the tenths of `sure_words` count, and how far they may be off."""
    if not any(share_words(one) for one in results):
        return f"sure: {EXACT.lower()}"
    return (
        "sure: for how many of ten plausible versions of this player the club is the best, by the brief "
        f"form: mostly within {BRIEF_WITHIN} of the full one of 'compare'."
    )


def changes(answer: CourseAnswer, result: dict[str, Any]) -> list[tuple[str, dict[str, Any]]]:
    """Days on which the recommended club is not as good as another: (name of the day, its best)."""
    mine = club_words(best_of(result))
    found = []
    for day in answer.scenarios:
        if day.name == result["scenario"]:
            continue
        for other in answer.of(result["answer"]["player"], day.name, result["pins"]):
            if other["number"] == result["number"]:
                tied = [club_words(other["answer"]["alternatives"][k]) for k in other["answer"]["tied"]]
                if mine not in tied:
                    found.append((day.name, best_of(other)))
    return found


def scenario_words(scenario: Scenario) -> str:
    """A day's name, with what is said of it where that adds something."""
    said = ", ".join(f"{key.replace('_', ' ')} {text}" for key, text in scenario.words.items())
    return f"{scenario.name} ({said})" if said and said != scenario.name else scenario.name


def where_words(answer: CourseAnswer, player: Player | None = None) -> str:
    """Tees and pins in use: "white tees, back pins"; of one player alone where his own page is meant."""
    players = answer.players if player is None else (player,)
    own = [one for one in players if one.tee is not None and answer.tee is None]
    if answer.tee is None and not own and answer.pins[0] == FIRST_PINS:
        return "each hole's first tee and pin"
    tees = "each hole's first tee" if answer.tee is None else f"{answer.tee} tees"
    if len(players) == 1 and own:
        tees = f"{own[0].tee} tees{_first_tee_on(answer, own[0].tee or '')}"
    elif own:
        tees += f" ({', '.join(f'{one.name} {one.tee}' for one in own)})"
    return f"{tees}, {pin_words(answer.pins[0])}"


def _first_tee_on(answer: CourseAnswer, tee: str) -> str:
    """Holes without that tee, which are played from their first; empty where all have it."""
    without = holes_without(answer.course, tee)
    return f" (first tee on {', '.join(without)})" if without else ""


def pin_words(pins: Pins) -> str:
    """A set of pins: "back pins", "pins of sunday.csv"."""
    if pins == FIRST_PINS:
        return "each hole's first pin"
    if pins.sheet is not None or any(letter.isdigit() for letter in pins.name):
        return f"pins {'of ' if pins.sheet is not None else ''}{pins.name}"
    return f"{pins.name} pins"


def held(words: str) -> str:
    """Words that are not broken at the end of a line."""
    return words.replace(" ", HELD)
