"""All figures of a course: JSON, and CSV with a line for every alternative."""

from __future__ import annotations

import csv
import io
from typing import Any

from ..hole.surfaces import WORDS
from ..strategy.courseasked import CourseAnswer
from ..strategy.errorbars import figure
from ..strategy.rounds import add_up, ranked, worth
from .coursewords import sure_words
from .full import CHANCES

SCHEMA = "holesim-course-1"
"""Name and version of the JSON layout; changes when a key changes its meaning."""


def course_dict(answer: CourseAnswer, target: int | None = None) -> dict[str, Any]:
    """The whole course as plain JSON-ready data."""
    return {
        "schema": SCHEMA,
        "course": answer.course.name,
        "tee": answer.tee,
        "players": [{"name": one.name, "handicap": one.handicap, "tee": one.tee} for one in answer.players],
        "scenarios": [{"name": one.name, "words": dict(one.words)} for one in answer.scenarios],
        "pins": [one.name for one in answer.pins],
        "sequences": answer.sequences,
        "seed": answer.seed,
        "rounds": _rounds(answer, target),
        "holes": [{key: one[key] for key in one if key not in ("schema", "plays")} for one in answer.results],
        "failures": [
            {key: getattr(one, key) for key in ("number", "hole", "player", "scenario", "pins", "message")}
            for one in answer.failures
        ],
    }


def _rounds(answer: CourseAnswer, target: int | None) -> list[dict[str, Any]]:
    out = []
    for player in answer.players:
        for day in answer.scenarios:
            for where in answer.pins:
                results = answer.of(player.name, day.name, where.name)
                if not results:
                    continue
                missing = answer.missing(player.name, day.name, where.name)
                out.append(
                    {
                        "player": player.name,
                        "scenario": day.name,
                        "pins": where.name,
                        **add_up(results, target, missing=missing).to_dict(),
                        "ranking": [
                            {"number": one["number"], **figure("worth", worth(one))}
                            for one in ranked(results)
                        ],
                    }
                )
    return out


_FINISH = {f"finish_{word.replace(' ', '_')}": word for word in WORDS.values()}
"""Columns of the shares at rest on each ground, and its word."""

COLUMNS = (
    "number", "hole", "hole_par", "stroke_index", "tee", "pin", "player", "scenario", "pins", "role", "tied",
    "sure", "best_for", "best_for_standard_error", "club", "flight", "carry_yd", "aim_offset_yd",
    "aim_bearing_deg", "pointed_by", "pointed_right_yd", "first_as_good_yd", "last_as_good_yd",
    "expected_score", "standard_error", "difference", "difference_standard_error", "map_score",
    *(name for chance in CHANCES for name in (chance, f"{chance}_standard_error")),
    "worst_tenth_mean", "leaves_p10_yd", "leaves_p50_yd", "leaves_p90_yd", *_FINISH, "clear_beyond_yd",
    "sequences", "seed",
)  # fmt: skip
"""Of the CSV. Those that are named as in the JSON are what they are there: `par` is the chance of one."""


def course_csv(answer: CourseAnswer) -> str:
    """CSV (RFC 4180) with names in line 1: for each hole, player, day and pin a line for every alternative.

    The column `role` says which is the ``best``, which are ``other`` and which is the ``habit``.
    """
    out = io.StringIO()
    writer = csv.DictWriter(out, COLUMNS, extrasaction="ignore")
    writer.writeheader()
    for result in answer.results:
        told = result["answer"]
        for k, one in enumerate(told["alternatives"]):
            best = k == told["recommended"]
            writer.writerow({
                **_line(result, one, "best" if best else "other"), **_best_for(told, k),
                "tied": int(k in told["tied"]), "sure": sure_words(result) if best else "",
            })  # fmt: skip
        writer.writerow({**_line(result, result["habit"], "habit"), "tied": ""})
    return out.getvalue()


def _best_for(told: dict[str, Any], index: int) -> dict[str, float]:
    """Share of the plausible players for whom an alternative is best, and its error; none when not known."""
    sure = told.get("confidence")
    if sure is None:
        return {}
    shares, errors = sure["shares"], sure["shares_standard_error"]
    return {"best_for": shares[index], "best_for_standard_error": errors[index]}


def _line(result: dict[str, Any], one: dict[str, Any], role: str) -> dict[str, Any]:
    """Everything that a line may say of an alternative or a habit, by column."""
    told, errors = result["answer"], one["standard_errors"]
    first, last = one["aim_offset_within_tie_yd"]
    return {
        **told, **result, **one, "hole_par": told["par"], "role": role,
        "pointed_by": one["point"]["name"], "pointed_right_yd": one["point"]["offset_yd"],
        "first_as_good_yd": first, "last_as_good_yd": last,
        **{f"{name}_standard_error": errors.get(name) for name in CHANCES},
        **{f"leaves_{share}_yd": far for share, far in one["leaves_yd"].items()},
        **{column: one["finish"].get(word, 0.0) for column, word in _FINISH.items()},
    }  # fmt: skip
