"""A ball of which only the ground was noted went as far as the club goes on that day, not on a still one."""

from __future__ import annotations

import pytest
from small_games import straight_hole

from simulator.conditions import Conditions, Wind
from simulator.hole.surfaces import Lie
from simulator.player import load_player
from simulator.strategy.carries import carries
from simulator.strategy.review.notes import read_notes
from simulator.strategy.review.strokes import strokes_of
from simulator.strategy.review.unmeasured import usual_length
from simulator.strategy.review.working import review

FAIRWAY = "fairway = [{ from_yd = 130, to_yd = 390, left_yd = -18, right_yd = 18 }]"
HOLE, PLAYER = straight_hole(410, more=FAIRWAY), load_player("handicap 12, only driver 230, 5h, 7i, pw, sw")
DAYS = {
    "against": Conditions(wind=Wind(15.0, 0.0)),
    "helping": Conditions(wind=Wind(15.0, 180.0)),
    "high, cold and firm": Conditions(altitude_m=2134.0, temperature_c=0.0, fairway_firmness=1.0),
    "soft": Conditions(fairway_firmness=0.0),
}


@pytest.mark.parametrize("day", DAYS)
@pytest.mark.parametrize("club", ["driver", "7-iron"])
def test_usual_lengths_are_those_of_the_table_of_that_day(day: str, club: str) -> None:
    row = next(one for one in carries(PLAYER, DAYS[day]) if (one.club, one.flight) == (club, "stock"))
    assert row.today_carry_yd is not None and row.today_run_yd is not None
    usual = usual_length(PLAYER, HOLE, DAYS[day])(club)
    assert usual == pytest.approx((row.today_carry_yd, row.today_carry_yd + row.today_run_yd), abs=0.5)
    assert abs(usual[1] - row.still_carry_yd - row.still_run_yd) > 3.0


@pytest.mark.parametrize(("noted", "lie"), [("right rough", Lie.ROUGH), ("fairway", Lie.FAIRWAY)])
def test_the_ball_lies_where_the_wind_left_it(noted: str, lie: Lie) -> None:
    notes, row = read_notes(f"driver {noted}; 7i to 20 ft; 2 putts"), carries(PLAYER, DAYS["against"])[0]
    end = strokes_of(notes, HOLE, usual_length(PLAYER, HOLE, DAYS["against"])).strokes[0].end
    assert end is not None and end.lie is lie and row.club == "driver" and row.today_carry_yd is not None
    went = row.today_carry_yd + (row.today_run_yd or 0.0 if lie is Lie.FAIRWAY else 0.0)
    assert HOLE.station_offset(end.x_yd, end.y_yd)[0] == pytest.approx(went, abs=4.0)


def test_a_usual_drive_into_the_wind_is_no_better_than_usual() -> None:
    """Put at its still length it beat 100 of 100 of the player's own balls of that day and gained 0.43."""
    notes = read_notes("driver fairway; 7i to 20 ft; 2 putts")
    still, against = (
        review(HOLE, PLAYER, notes, conditions=day, threads=1).strokes[0] for day in (None, DAYS["against"])
    )
    assert abs(against.swing.value - still.swing.value) < 0.15
    assert still.better_than is not None and against.better_than is not None
    assert 0.4 < against.better_than.value < 0.9
