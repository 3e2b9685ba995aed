"""A course's pages and files: what is on them, that they fit, and that they say what the results say."""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Callable
from dataclasses import replace

import course_results
import pytest
from course_results import LONG, NORTH, down
from written import JSON_KEYS

from simulator.conditions import STILL
from simulator.hole import load_course
from simulator.player import load_player
from simulator.report.coursefiles import course_csv, course_dict
from simulator.report.coursetable import course_summary, failure_lines
from simulator.report.coursewords import (
    club_words,
    line_legend,
    line_mark,
    side_words,
    sure_words,
    where_words,
)
from simulator.report.full import CHANCES
from simulator.report.jsonout import dumps
from simulator.report.summarywords import both
from simulator.report.team import team_page
from simulator.report.teamwords import missing_words
from simulator.report.units import METRES
from simulator.strategy import running
from simulator.strategy.course import play_course
from simulator.strategy.courseasked import CourseAnswer, Failure, Pins
from simulator.strategy.errorbars import Estimate
from simulator.strategy.rounds import add_up


@pytest.fixture(scope="module")
def patched() -> pytest.MonkeyPatch:
    return pytest.MonkeyPatch()


@pytest.fixture(scope="module")
def answer(patched: pytest.MonkeyPatch) -> CourseAnswer:
    """Three holes, eight players, two days, two sets of pins, one hole without an answer."""
    course = load_course("ostrel-heath")
    course = replace(course, holes=course.holes[:3], numbers=(1, 2, 3))
    barnaby = load_player("barnaby")
    names = ("Barnaby", "Isolde", "Ottoline-Marguerite", "Cy", "Dot", "Ed", "Flo", "Gus")
    with patched.context() as patch:
        patch.setattr(running, "work", course_results.result)
        found = play_course(
            course, [replace(barnaby, name=name) for name in names], scenarios=[STILL, NORTH],
            pins=[Pins("back", "back"), Pins("middle", "middle")], threads=1,
        )  # fmt: skip
    return replace(found, failures=(Failure(4, "Crooked Ash", "04.toml: par: found 9; allowed: 3 to 6"),))


def test_a_players_own_page_names_his_tees_alone(answer: CourseAnswer) -> None:
    """Not his team-mates'; and where the hole has none of that name, the first is said."""
    barnaby, isolde, *others = answer.players
    both_tees = replace(
        answer, players=(replace(barnaby, tee="yellow"), replace(isolde, tee="nobody's"), *others)
    )
    assert where_words(both_tees).startswith("each hole's first tee (Barnaby yellow, Isolde nobody's)")
    numbers = ", ".join(f"{number}" for number, _ in answer.course.numbered())
    assert where_words(both_tees, both_tees.players[1]).startswith(f"nobody's tees (first tee on {numbers}), ")
    assert where_words(both_tees, others[0]).startswith("each hole's first tee, back pins")
    text = course_summary(both_tees, 15)
    pages = [part for part in text.split("Ostrel Heath, ") if part.startswith("3 of 4 holes")]
    assert ["nobody's" in " ".join(page.split()) for page in pages] == [False, True] + [False] * len(others)


def test_the_summary(answer: CourseAnswer) -> None:
    text = course_summary(answer, 15)
    assert max(map(len, text.splitlines())) <= 80
    first = text.split("\n\n")[1].splitlines()
    assert len(first) == 1 + 3 and first[1].split()[:6] == ["1", "First", "Furrow", "4", "3-wood", "9L*"]
    assert "0.13 clear" in first[1] and "driver" in first[1]
    results = answer.of("Barnaby")
    one = add_up(results, 15)
    words = " ".join(text.split())
    assert f"Expected round {one.best.value:.1f}" in words
    low, high, held = one.most()
    assert f"{100 * held:.0f} in 100 rounds {low} to {high}" in words and held >= 0.8
    assert "each hole independent of the others" in words
    assert "3 Quarry Lip 0.30 +- 0.01; 2 Sheep Wash 0.20 +- 0.01; 1 First Furrow 0.10" in words
    assert "no answer for hole 4: 04.toml: par" in words
    assert "Other days and pins: north" in words and "middle pins" in words


def test_a_target_is_told_of_the_whole_course_alone(answer: CourseAnswer) -> None:
    """Three holes of four break 15 by being three; who has all of them is told."""
    north = replace(answer, failures=(Failure(4, "Crooked Ash", "no wind", "Cy", "north"),))
    for found, whole in ((answer, []), (north, [one.name for one in answer.players])):
        parts = [" ".join(part.split()) for part in course_summary(found, 15).split("Ostrel Heath, ")[1:]]
        assert len(parts) == 8
        for words in parts:
            name = words.split("; ")[1].split(" (")[0]
            assert ("Breaks 15 in" in words) == (name in whole)
            assert ("Breaking 15 is left out" in words) == (name not in whole)
            assert words.startswith("3 holes, par" if name in whole else "3 of 4 holes, par")
    rounds = course_dict(north, 15)["rounds"]
    assert {(one["player"], one["scenario"]) for one in rounds if one["breaking"] is None} == {("Cy", "north")}
    assert {one["target"] for one in rounds} == {15}


def test_holes_without_an_answer_are_in_their_order(answer: CourseAnswer) -> None:
    numbers = [Failure(k, "", "") for k in (12, 4, 4, 9)]
    found = replace(answer, failures=(*numbers, Failure(None, "b.toml", "")))
    assert missing_words(found) == "Without an answer, in part at least: 4, 9, 12, b.toml."


@pytest.mark.parametrize("page", [course_summary, team_page])
def test_cautions(answer: CourseAnswer, page: object) -> None:
    words = " ".join(page(answer).split())  # type: ignore[operator]
    for said in ("Rules of Golf 4.3", "committee", "look and shout", "Nobody ahead nearer than 273 yd"):
        assert said in words
    assert not re.search(r"\b(safe\w*|cannot)\b", words, re.IGNORECASE)


@pytest.mark.parametrize("page", [course_summary, team_page])
def test_whose_map_it_is(answer: CourseAnswer, page: Callable[..., str]) -> None:
    """Once, however many holes were made from it; nothing where nobody asks."""
    owed = "© OpenStreetMap contributors (ODbL)"
    holes = tuple(replace(hole, attribution=owed) for hole in answer.course.holes)
    of = replace(answer, course=replace(answer.course, holes=holes))
    assert " ".join(page(of).split()).count(f"Map data: {owed}.") == 1 and "Map data" not in page(answer)


def test_the_team_page(answer: CourseAnswer) -> None:
    text = team_page(answer)
    lines = text.splitlines()
    assert max(map(len, lines)) <= 80
    heads = [line.split() for line in lines if "Barnaby" in line and "in north" not in line]
    assert heads[0] == ["hole,", "par", "Barnaby", "Isolde", "Ottoline-", "Cy"]  # four side by side, the rest below
    assert lines[lines.index(next(line for line in lines if "Barnaby" in line)) + 1].split() == ["Marguerite"]
    rows = [line for line in lines if line.startswith(" 2 ")]
    assert len(rows) == 2 and [row.count("3-wood 9L*") for row in rows] == [4, 4]
    notes = " ".join(text.split())
    assert "* changes with the day: Barnaby in north: the driver, 12 left of the middle, on holes 1, 2 and 3. Isolde" in notes
    assert "Without an answer, in part at least: 4." in notes


def test_holes_that_change_each_its_own_way_are_told_one_by_one(answer: CourseAnswer) -> None:
    """Neither "on 3 the 7-iron 4R" nor "3 7-iron 4R": three figures in a row that all mean something else."""
    results = []
    for one in answer.results:
        of = one["answer"]
        if one["scenario"] == "north" and one["number"] == 3:
            best = {**of["alternatives"][of["recommended"]], "club": "7-iron"}
            best["point"] = {"by": "green", "name": "the middle of the green", "offset_yd": 0.2, "half": ""}
            of = {**of, "alternatives": [best if k == of["recommended"] else a for k, a in enumerate(of["alternatives"])]}
        results.append({**one, "answer": of})
    notes = " ".join(team_page(replace(answer, results=tuple(results))).split())
    assert "Barnaby in north: the driver, 12 left of the middle, on holes 1 and 2; the 7-iron, at the middle, on hole 3. Isolde" in notes


def named(answer: CourseAnswer, names: tuple[str, ...]) -> CourseAnswer:
    """The same course for as many players as there are names."""
    one = [result for result in answer.results if result["answer"]["player"] == "Barnaby"]
    results = tuple(
        {**result, "answer": {**result["answer"], "player": name}} for name in names for result in one
    )
    players = tuple(replace(answer.players[0], name=name) for name in names)
    return replace(answer, players=players, results=results)


@pytest.mark.parametrize("count", range(1, 10))
def test_long_names_are_whole(answer: CourseAnswer, sure_answer: CourseAnswer, count: int) -> None:
    """However many players there are, every letter of every name stands at the head of its own column."""
    for of in (answer, sure_answer):
        text = team_page(named(of, LONG[:count]))
        assert max(map(len, text.splitlines())) <= 80
        for name in LONG[:count]:
            column = down(text, name)
            assert column.replace("- ", "-").startswith(name), column
            assert column.count("3-wood 9L*") == 3


def test_blocks_are_filled_alike(sure_answer: CourseAnswer) -> None:
    """Four players of whom three fit side by side stand two and two, with more room each."""
    rows = [line for line in team_page(named(sure_answer, LONG[:4])).splitlines() if line.startswith(" 2 ")]
    assert [row.count("3-wood") for row in rows] == [2, 2]


def test_long_clubs_and_holes_are_whole(sure_answer: CourseAnswer) -> None:
    """A part swing keeps its carry, which tells it from another: it goes on in the line below."""
    results = json.loads(json.dumps(sure_answer.results))
    for one in results:
        one["answer"]["hole"] = "The Long Crooked Ash"
        best = one["answer"]["alternatives"][one["answer"]["recommended"]]
        best |= {"club": "pitching wedge", "flight": "part", "carry_yd": 71.6}
    course = replace(
        sure_answer.course, holes=tuple(replace(h, name="The Long Crooked Ash") for h in sure_answer.course.holes)
    )
    wide = replace(sure_answer, results=tuple(results), course=course)
    for text in (course_summary(wide), team_page(wide)):
        assert max(map(len, text.splitlines())) <= 80
        at = text.splitlines().index(next(line for line in text.splitlines() if line.startswith(" 2 ")))
        row = " ".join(text.splitlines()[at : at + 3])
        for word in ("Crooked", "Ash", "pitching", "wedge", "part", "72"):
            assert word in row.replace(",", " ").split(), (word, row)


@pytest.mark.parametrize("page", [course_summary, team_page])
def test_pages_in_metres(answer: CourseAnswer, page: Callable[..., str]) -> None:
    """273, 9 and 12 yards; a part swing of 71.6."""
    results = json.loads(json.dumps(answer.results))
    for one in results:
        one["habit"] |= {"flight": "part", "carry_yd": 71.6}
    of = replace(answer, results=tuple(results))
    yards, metres = page(of), page(of, units=METRES)
    assert not re.search(r"\byd\b|\byards?\b", metres)
    words = " ".join(metres.split())
    assert "Line: metres left (L) or right (R)" in words and f"nearer than {0.9144 * 273:.0f} m on any" in words
    assert "9L" in yards and "8L" in metres and "9L" not in metres
    if page is course_summary:
        assert "part 72" in yards and f"part {0.9144 * 71.6:.0f} 8 left of the middle" in words
    else:
        assert "the driver, 12 left of the middle, on holes 1, 2 and 3" in yards and "the driver, 11 left of the middle, on holes" in words


def test_a_day_alone_marks_nothing(answer: CourseAnswer) -> None:
    alone = replace(
        answer, scenarios=(STILL,), results=tuple(r for r in answer.results if r["scenario"] == "still")
    )
    text = " ".join(team_page(alone).split())
    assert "*" not in text and "nothing is known of what the wind would change" in text


def test_no_mark_where_the_club_is_as_good_on_the_other_day(answer: CourseAnswer) -> None:
    """Tied is no change: on the windy day the still day's club is within the tie."""
    results = json.loads(json.dumps(answer.results))
    for one in results:
        one["answer"]["tied"] = [0, 1]
    text = " ".join(team_page(replace(answer, results=tuple(results))).split())
    assert "*" not in text and "No club changes on the other days: north." in text


def test_the_csv_has_every_figure_of_every_alternative(answer: CourseAnswer) -> None:
    rows = list(csv.DictReader(io.StringIO(course_csv(answer))))
    assert len(rows) == len(answer.results) * 3  # two alternatives and the habit
    head = next(csv.reader(io.StringIO(course_csv(answer))))
    assert len(set(head)) == len(head)  # of two columns of one name a reader keeps the last
    assert {row["role"] for row in rows} == {"best", "other", "habit"}
    result = answer.results[0]
    best = next(row for row in rows if row["role"] == "best")
    told = result["answer"]["alternatives"][0]
    assert int(best["hole_par"]) == result["answer"]["par"] and float(best["par"]) == told["par"]
    assert float(best["expected_score"]) == told["expected_score"]
    assert best["pointed_by"] == told["point"]["name"]  # as the pages tell a line
    assert float(best["pointed_right_yd"]) == told["point"]["offset_yd"]
    for name in ("double_or_worse", "penalty_on_hole"):
        assert float(best[name]) == told[name]
        assert float(best[f"{name}_standard_error"]) == told["standard_errors"][name]
    assert set(CHANCES) <= set(best) and None not in best
    grounds = [float(best[name]) for name in best if name.startswith("finish_")]
    assert sum(grounds) == pytest.approx(1.0)


def test_the_json(answer: CourseAnswer) -> None:
    assert course_dict(answer)["failures"][0]["number"] == 4
    answer = replace(answer, failures=())
    found = json.loads(dumps(course_dict(answer, 15)))
    assert found["schema"] == "holesim-course-1"
    assert len(found["holes"]) == len(answer.results) and len(found["rounds"]) == 8 * 2 * 2
    one = found["rounds"][0]
    expected = add_up(answer.of(one["player"]), 15)
    assert one["expected_round"] == expected.best.value and one["breaking"] == expected.breaking.value  # type: ignore[union-attr]
    assert [rank["number"] for rank in one["ranking"]] == [3, 2, 1]
    assert found["holes"][0]["answer"] == json.loads(json.dumps(answer.results[0]["answer"]))


def test_every_key_of_the_json_is_described(answer: CourseAnswer) -> None:
    found = course_dict(answer, 15)
    keys = {*found, *found["rounds"][0], *found["rounds"][0]["ranking"][0], *found["holes"][0],
            *found["failures"][0]}  # fmt: skip
    assert not [key for key in sorted(keys) if f"`{key}`" not in JSON_KEYS and not key.endswith("_standard_error")]


def test_nothing_is_no_minus_zero() -> None:
    assert both(Estimate(-0.004, 0.003), 2) == "0.00 +- <0.01" and both(Estimate(-0.006, 0.005), 2) == "-0.01 +- 0.01"


def test_words_of_a_cell(answer: CourseAnswer) -> None:
    one = {"club": "5-iron", "flight": "low", "carry_yd": 150.0}
    assert club_words(one) == "5-iron low"
    one |= {"club": "sand wedge", "flight": "part", "carry_yd": 41.6}
    assert club_words(one) == "sand wedge part 42"
    one |= {"club": "50-degree wedge", "flight": "gripped", "carry_yd": 87.6}
    assert club_words(one) == "50-degree wedge gripped 88"


@pytest.mark.parametrize(
    ("by", "name", "offset_yd", "mark", "said"),
    [
        ("fairway", "the middle of the fairway", -0.4, "mid", "at the middle"),
        ("fairway", "the middle of the fairway", 13.8, "14R", "14 right of the middle"),
        ("green", "the middle of the green", -3.6, "4L", "4 left of the middle"),
        ("fairway", "the middle of the left fairway", 6.2, "left 6R", "6 right of the middle of the left fairway"),
        ("fairway", "the middle of the right fairway ahead", 0.2, "right", "at the middle of the right fairway ahead"),
        ("fairway", "the middle of the fairway ahead", 6.2, "6R", "6 right of the middle"),
        ("mark", "church tower", -5.0, "church tower 5L", "5 left of the church tower"),
        ("pin", "the straight line to the pin", 0.3, "pin", "at the pin"),
        ("pin", "the straight line to the pin", 9.0, "pin 9R", "9 right of the pin"),
    ],
)
def test_a_line_is_told_by_what_is_seen(
    answer: CourseAnswer, by: str, name: str, offset_yd: float, mark: str, said: str
) -> None:
    """A driver "59R" of the line to a pin round the corner is no aim; the legend tells what a cell counts."""
    half = next((side for side in ("left", "right") if f" {side} " in name), "")
    point = {"by": by, "name": name, "offset_yd": offset_yd, "half": half}
    one = {"point": point, "aim_offset_yd": 59.0}
    assert (line_mark(one), side_words(one)) == (mark, said)
    result = {"answer": {"recommended": 0, "alternatives": [one]}}
    legend = line_legend([result])
    assert ("pin: of the straight line to it" in legend) == (by == "pin")
    assert ("behind a name: of that" in legend) == (mark.startswith(("left", "right", "church")))


def test_how_sure(answer: CourseAnswer) -> None:
    told = answer.results[0]["answer"]

    def sure(**more: object) -> str:
        return sure_words({"answer": {**told, **more}})

    assert sure(verdict=None, confidence=None) == "clear"
    assert sure(verdict=None, confidence=None, tied=[0, 1]) == "either"
    assert sure(verdict="slight", confidence={"best_share": 0.74}) == "slight 7/10"
    assert sure(verdict="slight", confidence={"best_share": 0.89}) == "slight 8/10"  # never more than there are
    assert sure(verdict="clear", confidence={"best_share": 0.97}) == "clear >9/10"
    assert sure(verdict="either", confidence={"best_share": 0.04}) == "either <1/10"


@pytest.fixture(scope="module")
def sure_answer(answer: CourseAnswer) -> CourseAnswer:
    """The same with confidence: 8 in 10 for the first alternative."""
    results = json.loads(json.dumps(answer.results))
    for one in results:
        one["answer"] |= {
            "verdict": "slight",
            "confidence": {
                "draws": 200, "solved": 24, "shares": [0.81, 0.19], "shares_standard_error": [0.03, 0.03],
                "best_share": 0.81, "form": "brief",
            },
        }  # fmt: skip
    return replace(answer, results=tuple(results))


def test_pages_say_for_how_many_players_like_this_one(answer: CourseAnswer, sure_answer: CourseAnswer) -> None:
    text, team = course_summary(sure_answer), team_page(sure_answer)
    assert max(map(len, (text + "\n" + team).splitlines())) <= 80
    assert "0.13 slight 8/10" in text.split("\n\n")[1].splitlines()[1]
    for page in (text, team):
        words = " ".join(page.split())
        assert "ten plausible versions" in words and "brief form" in words and "taken as exact" not in words
    rows = [line for line in team.splitlines() if line.startswith(" 2 ")]
    assert [row.count("3-wood 9L* 8/10") for row in rows] == [3, 3, 2]  # three side by side
    assert "sure: player taken as exact." in " ".join(course_summary(answer).split())
    assert "plausible" not in team_page(answer)


def test_the_widest_row_fits(sure_answer: CourseAnswer) -> None:
    results = json.loads(json.dumps(sure_answer.results))
    for one in results:
        one["answer"]["verdict"] = "either"
        one["answer"]["confidence"]["best_share"] = 0.99
    wide = course_summary(replace(sure_answer, results=tuple(results)))
    assert max(map(len, wide.splitlines())) <= 80 and "either >9/10" in wide


def test_the_csv_says_for_how_many_each_is_best(answer: CourseAnswer, sure_answer: CourseAnswer) -> None:
    rows = list(csv.DictReader(io.StringIO(course_csv(sure_answer))))[:3]
    assert [(row["role"], row["best_for"], row["best_for_standard_error"]) for row in rows] == [
        ("best", "0.81", "0.03"), ("other", "0.19", "0.03"), ("habit", "", ""),
    ]  # fmt: skip
    assert rows[0]["sure"] == "slight 8/10"
    bare = list(csv.DictReader(io.StringIO(course_csv(answer))))
    assert {row["best_for"] for row in bare} == {""}


def test_failures_say_of_what(answer: CourseAnswer) -> None:
    part = replace(answer, failures=(Failure(2, "x", "why", "Cy", "north", "back"), Failure(None, "a.toml", "so")))
    assert failure_lines(part) == ["no answer for hole 2 (Cy, north, back): why", "no answer for a.toml: so"]
