"""A line is told by the ground where the ball comes down today, not where it would on a still day."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from small_games import hole_of

from simulator import compare, load_player
from simulator.conditions import Conditions, Wind
from simulator.hole import Hole
from simulator.player import Player
from simulator.report.plot import draw_plan
from simulator.strategy.aimwords import in_degrees
from simulator.strategy.alternative import Alternative
from simulator.strategy.answering import answer_at
from simulator.strategy.carries import carries
from simulator.strategy.habit import habit_of
from simulator.strategy.question import Clock, Question, question, solve
from simulator.strategy.result import Answer
from simulator.strategy.review import working
from simulator.strategy.review.notes import read_notes
from simulator.strategy.review.unmeasured import usual_length
from simulator.strategy.review.working import review
from simulator.strategy.tries import Place

TURN_AT_YD, TURN_DEG = 200.0, 40.0
"""The line of the hole below runs straight, then turns right; its fairway lies evenly about it."""

BEND = f"""
name = "Bend"
par = 4
length_yd = 430
bends = [{{ at_yd = {TURN_AT_YD}, turn_deg = {TURN_DEG} }}]
green = [{{ front_yd = 416, depth_yd = 28, width_yd = 24 }}]
pin = [{{ name = "middle", on_yd = 14 }}]
fairway = [{{ from_yd = 120, to_yd = 400, left_yd = -25, right_yd = 25 }}]
"""

AGAINST = Conditions(wind=Wind(20.0, 0.0))
CLUBS = ("driver", "4-hybrid", "7-iron", "pitching wedge", "sand wedge")


@pytest.fixture(scope="module")
def hole() -> Hole:
    return hole_of(BEND)


@pytest.fixture(scope="module")
def player() -> Player:
    """Of few clubs, which a map is sooner worked for: where the driver points does not hang on the others."""
    whole = load_player("handicap 5, driver 250")
    return replace(whole, clubs=tuple(one for one in whole.clubs if one.name in CLUBS))


@pytest.fixture(scope="module")
def asked(hole: Hole, player: Player) -> Question:
    """The driver along the first leg, into the wind: it comes down beside the bend."""
    turn = math.degrees(math.atan2(hole.pin.x_yd, hole.pin.y_yd))
    clubs = [f"driver@{-turn:.4f}deg"]
    return question("compare", hole, player, clubs, conditions=AGAINST, sequences=400, seed=1, threads=1)


@pytest.fixture(scope="module")
def solved_tee(asked: Question) -> Place:
    return solve(asked, Clock())


@pytest.fixture(scope="module")
def answer(asked: Question, solved_tee: Place) -> Answer:
    return answer_at(solved_tee, asked, Clock(), None)


def _driver(answer: Answer) -> Alternative:
    return next(one for one in answer.alternatives if one.club == "driver" and one.asked)


def _today_yd(player: Player) -> float:
    return next(
        one.today_carry_yd for one in carries(player, AGAINST) if (one.club, one.flight) == ("driver", "stock")
    )  # type: ignore[return-value]


def _left_of_the_line_yd(down_yd: float) -> float:
    """How far a ball straight on past the bend is left of the second leg: across that leg, worked by hand."""
    return max(down_yd - TURN_AT_YD, 0.0) * math.sin(math.radians(TURN_DEG))


def test_yards_beside_the_fairway_are_those_where_it_comes_down(answer: Answer, player: Player) -> None:
    """At 250 yards the first leg is 32 left of the middle; the ball comes down before 220."""
    driver, today = _driver(answer), _today_yd(player)
    middle = float(np.median(driver.landings_yd[:, 1]))  # the first leg is the y axis; a fifth are mishits
    assert today - 12.0 < middle < today + 3.0 < 225.0
    assert driver.point.by == "fairway" and driver.carry_yd == pytest.approx(250.0)
    assert driver.point.offset_yd == pytest.approx(-_left_of_the_line_yd(today), abs=0.3)
    assert _left_of_the_line_yd(250.0) > _left_of_the_line_yd(today) + 15.0


def test_what_is_said_is_read_again_as_the_same_line(answer: Answer, hole: Hole, player: Player) -> None:
    """But for the bend: the fairway is looked for where the line of play is a carry away, and beside that place
    its middle is told across the second leg, up to 5 yards from where a straight ball comes down."""
    off = _driver(answer).point.offset_yd
    words = f"driver {abs(off):.1f} yd left of the middle of the fairway"
    turn = float(in_degrees(words, hole, player, None, AGAINST).partition("@")[2].removesuffix("deg"))
    bearing = turn + math.degrees(math.atan2(hole.pin.x_yd, hole.pin.y_yd))
    assert bearing == pytest.approx(0.0, abs=1.5)  # 6 yd at the carry; 20 and more without the day


def test_the_middle_of_the_fairway_is_where_the_club_comes_down(hole: Hole, player: Player) -> None:
    at = {}
    for name, day, carry in (("still", None, 250.0), ("against", AGAINST, _today_yd(player))):
        turn = float(in_degrees("driver down the fairway", hole, player, None, day)[len("driver@") : -len("deg")])
        at[name] = turn + math.degrees(math.atan2(hole.pin.x_yd, hole.pin.y_yd))
        far = [np.hypot(*hole.at(station)) for station in np.arange(200.0, 300.0, 0.25)]
        x, y = hole.at(200.0 + 0.25 * int(np.argmax(np.array(far) >= carry)))
        assert at[name] == pytest.approx(math.degrees(math.atan2(x, y)), abs=0.2)
    assert at["still"] > at["against"] + 4.0


def test_a_habit_along_the_line_aims_where_the_ball_comes_down(
    hole: Hole, player: Player, tmp_path: Path
) -> None:
    who = tmp_path / "who.toml"
    who.write_text('name = "W"\nhandicap = 5\nhabit = "driver@line"\n[club.driver]\ncarry_yd = 250\n')
    habit = float(habit_of(load_player(who), hole, AGAINST)[len("driver@") : -len("deg")])
    said = float(in_degrees("driver down the fairway", hole, player, None, AGAINST)[len("driver@") : -len("deg")])
    assert habit == pytest.approx(said, abs=0.05)


def test_a_line_noted_after_the_round_is_told_the_same(
    answer: Answer, hole: Hole, player: Player, solved_tee: Place, monkeypatch: pytest.MonkeyPatch
) -> None:

    def of_that_day(asked: Question, *_: object) -> Place:
        assert asked.conditions == AGAINST
        return solved_tee  # where a club points hangs on no map

    monkeypatch.setattr(working, "solve", of_that_day)
    turn = math.degrees(math.atan2(hole.pin.x_yd, hole.pin.y_yd))
    notes = read_notes(f"driver {turn:.4f} degrees left to 190 out, fairway; 7i to 20 ft; 2 putts")
    told = review(hole, player, notes, conditions=AGAINST, threads=1).strokes[0].chosen
    assert told is not None
    assert told.point.offset_yd == pytest.approx(_driver(answer).point.offset_yd, abs=0.1)


def test_a_ball_from_a_high_tee_is_pointed_where_it_comes_down(hole: Hole, player: Player) -> None:
    """20 yards of drop carry a drive of 250 some 26 farther: 16 yards of it across the second leg."""
    high = hole_of(BEND + "heights_yd = [[0, 0, 20], [90, -60, 0], [90, 60, 0], [430, 0, 0], [430, 60, 0]]\n")
    turn = math.degrees(math.atan2(high.pin.x_yd, high.pin.y_yd))
    level, driver = (
        _driver(compare(one, player, [f"driver@{-turn:.4f}deg"], quick=True, sequences=2000, threads=1))
        for one in (hole, high)
    )
    # the same strikes on both: what the drop adds to each is known without their scatter
    added = float(np.median(driver.landings_yd[:, 1] - level.landings_yd[:, 1]))
    assert added > 20.0
    assert level.today_carry_yd == 250.0
    assert driver.today_carry_yd == pytest.approx(250.0 + added, abs=1.5)
    assert driver.point.by == "fairway"
    assert driver.point.offset_yd == pytest.approx(-_left_of_the_line_yd(driver.today_carry_yd), abs=0.3)
    assert length_of(player, high)[0] == pytest.approx(driver.today_carry_yd, abs=1.5)  # nearly the same line


def length_of(player: Player, hole: Hole) -> tuple[float, float]:
    """Carry, carry and run, that a drive noted without a distance is given."""
    found = usual_length(player, hole)("driver")
    assert found is not None
    return found


def test_the_cross_on_the_picture_is_where_it_comes_down(answer: Answer, player: Player) -> None:
    """The key says that it is where the shot is aimed to land: not 30 yards beyond the balls."""
    ax = draw_plan(answer)
    crosses = [line.get_xydata()[0] for line in ax.lines if line.get_marker() == "x"]
    mine = min(crosses, key=lambda xy: abs(xy[0]))
    assert mine == pytest.approx([0.0, _today_yd(player)], abs=0.5)
