"""A course's words and files and a few marks of pictures, at the bounds where they change."""

from __future__ import annotations

import csv
import io
import os
from dataclasses import replace
from pathlib import Path
from typing import Any

import course_results
import fake_answers
import matplotlib.pyplot as plt
import numpy as np
import pytest
from course_results import NORTH
from small_games import hole_of

from simulator.conditions import STILL
from simulator.errors import UsageError
from simulator.hole import load_course
from simulator.hole.yardage import measure
from simulator.player import load_player
from simulator.report import summarywords
from simulator.report.coursefiles import course_csv
from simulator.report.coursewords import changes, where_words
from simulator.report.falls import FALL_ARROW_YD, draw_falls, falls_shown
from simulator.report.page import check_plot_path
from simulator.report.roundchart import _target
from simulator.report.shotplot import counts
from simulator.report.showpage import far_off
from simulator.strategy import running
from simulator.strategy.course import play_course
from simulator.strategy.courseasked import FIRST_PINS, CourseAnswer
from simulator.strategy.errorbars import Estimate
from simulator.strategy.rounds import Round


@pytest.fixture(scope="module")
def answer() -> CourseAnswer:
    """Two holes, one player, a still day and one from the north."""
    course = load_course("ostrel-heath")
    course = replace(course, holes=course.holes[:2], numbers=(1, 2))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(running, "work", course_results.result)
        return play_course(course, [load_player("barnaby")], scenarios=[STILL, NORTH], threads=1)


def test_a_club_that_is_still_as_good_on_another_day_is_no_change(answer: CourseAnswer) -> None:
    """In the wind the driver leads; where the 3-wood is tied with it the cell keeps its plain face."""
    assert [day for day, _ in changes(answer, answer.results[0])] == ["north"]

    def tied(one: dict[str, Any]) -> dict[str, Any]:
        return {**one, "answer": {**one["answer"], "tied": [0, 1]}}

    level = replace(answer, results=tuple(tied(one) for one in answer.results))
    assert changes(level, level.results[0]) == []


def test_tees_of_players_are_told_even_where_pins_are_the_first(answer: CourseAnswer) -> None:
    assert answer.pins == (FIRST_PINS,)
    assert where_words(answer) == "each hole's first tee and pin"
    (barnaby,) = answer.players
    own = replace(answer, players=(replace(barnaby, tee="yellow"), replace(barnaby, name="Cy")))
    assert where_words(own).startswith("each hole's first tee (Barnaby yellow), ")


def test_the_table_of_all_figures_says_what_is_tied_and_what_no_ball_found(answer: CourseAnswer) -> None:
    told = {**answer.results[0], "answer": {**answer.results[0]["answer"], "tied": [0, 1]}}
    rows = list(csv.DictReader(io.StringIO(course_csv(replace(answer, results=(told,))))))
    assert [row["tied"] for row in rows] == ["1", "1", ""]
    assert [row["tied"] for row in csv.DictReader(io.StringIO(course_csv(answer)))][:3] == ["1", "0", ""]
    assert all(float(value) >= 0.0 for row in rows for key, value in row.items() if key.startswith("finish_"))


def test_holes_worth_nothing_that_counts_have_no_rank(answer: CourseAnswer) -> None:
    def worth(number: int, strokes: float) -> dict[str, Any]:
        one = answer.results[0]
        habit = {**one["habit"], "difference": strokes, "difference_standard_error": 0.01}
        return {**one, "number": number, "habit": habit}

    found = summarywords.ranking([worth(k, 0.2 - 0.02 * k) for k in range(1, 8)] + [worth(9, 0.049), worth(8, 0.05)])
    assert [one.hole.split()[0] for one in found] == ["1", "2", "3", "4", "5", "6"]
    found = summarywords.ranking([worth(9, 0.049), worth(8, 0.05)])
    assert [one.hole.split()[0] for one in found] == ["8"]


def test_figures_of_a_summary_at_their_ends() -> None:
    assert summarywords.both(Estimate(-0.004, 0.006), 2) == "0.00 +- 0.01"
    assert summarywords._percent(Estimate(0.996, 0.001)) == "more than 99"
    assert summarywords._percent(Estimate(0.994, 0.001)) == "99 +- 0.1"
    assert summarywords._percent(Estimate(0.004, 0.001)) == "fewer than 1"


def test_a_target_without_a_chance_has_no_line_in_the_chart() -> None:
    """Where holes have no answer the target's chance is left out: a line at it would say that it is not."""
    some = Estimate(90.0, 0.1)
    chances = np.full(21, 1.0 / 21.0), np.zeros(21)
    one = Round(18, 72, some, some, some, 80, *chances, 90, Estimate(0.4, 0.01), Estimate(0.3, 0.01))
    assert _target(one) == 90
    assert _target(replace(one, breaking=None, breaking_by_habit=None)) is None
    assert _target(replace(one, target=140)) is None


def test_only_what_lies_too_far_off_for_a_row_is_named_without_one() -> None:
    """A pond 80 yards beside the line is; water across it, whose row is another's, is not left out."""
    ground = (
        'penalty_area = [{ name = "far pond", colour = "red", from_yd = 150, to_yd = 200, left_yd = 80, right_yd = 120 },'
        ' { name = "brook", colour = "red", from_yd = 180, to_yd = 186, left_yd = -40, right_yd = 40 }]\n'
    )
    hole = hole_of(
        'name = "wide"\npar = 4\nlength_yd = 380\ngreen = [{ front_yd = 366, depth_yd = 28, width_yd = 24 }]\n' + ground
    )
    yardage = measure(hole)
    assert far_off(yardage) == ["far pond"]
    assert far_off(replace(yardage, troubles=())) == ["far pond"]


def test_a_hundred_balls_add_up_where_no_rough_takes_up_the_rest() -> None:
    """Thirds of three grounds without rough are 34, 33 and 33; with rough it is the rough that gives or takes."""
    made = fake_answers.answer()
    third = {name: Estimate(1.0 / 3.0, 0.01) for name in ("fairway", "green", "tee")}
    one = replace(made.best, finish=third, features={})
    assert sorted(counts(made, one).values()) == [33, 33, 34]
    half = {"fairway": Estimate(0.004, 0.001), "green": Estimate(0.494, 0.01), "rough": Estimate(0.502, 0.01)}
    assert counts(made, replace(one, finish=half)) == {"green": 49, "rough": 51}


SLOPED = """
name = "sloped"
par = 3
length_yd = 160
green = [{{ front_yd = 145, depth_yd = 30, width_yd = 30, slope_pct = {slope}, falls = "front" }}]
pin = [{{ name = "middle", on_yd = 15 }}, {{ name = "corner", on_yd = 4, offset_yd = 4 }}]
"""


@pytest.mark.parametrize(("slope", "pin", "away"), [(2, "middle", True), (2, "corner", False), (0, "middle", None)])
def test_an_arrow_gives_way_to_the_flag_alone(slope: int, pin: str, away: bool | None) -> None:
    """In the middle of the green, but where the flag is there beside it; on a level green there is none."""
    hole = hole_of(SLOPED.format(slope=slope)).with_pin(pin)
    figure, ax = plt.subplots(figsize=(4, 8))
    ax.set(xlim=(-20, 20), ylim=(130, 190), aspect="equal")
    draw_falls(ax, hole)
    found = [((x0 + x1) / 2.0, (y0 + y1) / 2.0) for arrow in falls_shown(ax)
             for (x1, y1), (x0, y0) in [(arrow.xy, arrow.xyann)]]  # fmt: skip
    plt.close(figure)
    if away is None:
        assert found == []
        return
    ((x, y),) = found
    middle = hole.green.representative_point()
    off_middle = ((x - middle.x) ** 2 + (y - middle.y) ** 2) ** 0.5
    assert (off_middle > FALL_ARROW_YD) == away, (x, y)


def test_a_picture_goes_to_no_pipe(tmp_path: Path) -> None:
    """Renamed over it the picture would take the pipe's place."""
    pipe = tmp_path / "plan.png"
    os.mkfifo(pipe)
    with pytest.raises(UsageError, match="that is no file"):
        check_plot_path(pipe)
