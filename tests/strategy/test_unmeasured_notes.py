"""A ball of which only the ground was noted is put where the club usually goes, and the reader is told so."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
import shapely
from on_withy_drain import BARNABY, USUAL, WITHY, played
from solved import THREADS, bag_named, level, player_named

from simulator.conditions import Conditions
from simulator.engine import Opening, play
from simulator.errors import UsageError
from simulator.hole import Lie, Surface
from simulator.strategy.carries import carries
from simulator.strategy.review.notes import read_notes
from simulator.strategy.review.strokes import strokes_of
from simulator.strategy.review.unmeasured import usual_length, usual_putt_ft
from simulator.tables.game import make_board


def test_usual_lengths_are_those_of_the_carries_table() -> None:
    """The run is read off a small table; `carries` flies and runs the ball with the game's own kernels."""
    rows = [row for row in carries(BARNABY, Conditions()) if row.flight == "stock"]
    assert len(rows) > 8
    for row in rows:
        total_yd = row.still_carry_yd + row.still_run_yd
        assert USUAL(row.club) == pytest.approx((row.still_carry_yd, total_yd), abs=2.0), row.club
    assert USUAL("chip") is None and USUAL("one-iron of a friend") is None


@pytest.mark.parametrize(
    "noted, lie, side",
    [("driver right rough", Lie.ROUGH, 1), ("driver, left rough", Lie.ROUGH, -1), ("driver fairway", Lie.FAIRWAY, 0),
     ("driver to the right rough", Lie.ROUGH, 1), ("drive in right rough", Lie.ROUGH, 1), ("driver in the middle", Lie.FAIRWAY, 0),
     ("driver down the middle", Lie.FAIRWAY, 0), ("driver - fairway", Lie.FAIRWAY, 0), ("pushed driver right rough", Lie.ROUGH, 1),
     ("driver left half of the fairway", Lie.FAIRWAY, -1), ("driver deep rough on the left", Lie.HEAVY_ROUGH, -1),
     ("driver finished in the rough on the left", Lie.ROUGH, -1)],
)  # fmt: skip
def test_ground_alone_lies_where_the_club_goes(noted: str, lie: Lie, side: int) -> None:
    end = played(f"{noted}; 7-iron to 20 ft; 2 putts")[0].end
    station_yd, offset_yd = WITHY.station_offset(end.x_yd, end.y_yd)
    assert end.lie is lie
    carry_yd, total_yd = USUAL("driver")
    assert station_yd == pytest.approx(total_yd if lie is Lie.FAIRWAY else carry_yd, abs=8.0)  # the nearest such
    assert side * offset_yd > 0.0 if side else abs(offset_yd) < 8.0
    assert "no distance noted: the club's usual carry" in end.told


def test_the_next_stroke_goes_on_from_there() -> None:
    first, second = played("3w right rough; 8-iron rough; chip to 6 ft; 1 putt")[:2]
    gone = [WITHY.station_offset(one.end.x_yd, one.end.y_yd)[0] for one in (first, second)]
    assert gone[1] - gone[0] == pytest.approx(USUAL("8-iron")[0], abs=8.0)


def test_what_was_noted_is_not_put_elsewhere() -> None:
    """A distance, an area or a bunker by its name are places already."""
    for noted in ("driver to 170 out, right rough", "driver right rough 170 out", "driver 170 out, right rough"):
        end = played(noted)[0].end
        assert WITHY.out_yd(end.x_yd, end.y_yd) == pytest.approx(170.0, abs=0.5) and not end.noted, noted
    assert played("driver into withy drain, drop 175 out, right rough")[0].penalty == 1
    assert not played("driver to 170 out; 6-iron left bunker")[1].end.noted


@pytest.mark.parametrize(
    "noted, why",
    [("driver fairway; driver rough", "notes 'driver rough': how far along"),  # it would be past the green
     ("chip to the rough", "notes 'chip to the rough': how far along"),
     ("driver left trees", f"notes 'driver left trees': no left trees about {USUAL('driver')[0]:.0f} yd on"),
     ("driver to 170 out; 5i on", "no club '5i' in the bag"),  # it was asked for the distance of "the green"
     ("driver to 150 out; chip on", "how far from the hole"), ("driver to 170 out; 7-iron to 40 out; wedge on", "how far from the hole")],
)  # fmt: skip
def test_no_place_is_made_up_where_the_usual_length_says_none(noted: str, why: str) -> None:
    with pytest.raises(UsageError, match=why):
        played(noted)


def test_without_a_player_ground_alone_is_refused() -> None:
    with pytest.raises(UsageError, match="how far along"):
        strokes_of(read_notes("driver right rough"), WITHY)


def test_a_green_hit_from_afar_leaves_the_average_putt() -> None:
    for noted in ("7-iron on", "7-iron green", "7-iron hits the green"):
        end = played(f"driver fairway; {noted}; 2 putts")[1].end
        assert end.putt_ft == pytest.approx(usual_putt_ft(WITHY), abs=0.5) and not end.sided
        assert "no distance noted" in end.told
    told = played("driver fairway; 7-iron on; 2 putts from 40 ft")[1].end
    assert told.putt_ft == pytest.approx(40.0) and not told.noted


def test_the_average_putt_on_a_round_green_is_two_thirds_of_its_radius() -> None:
    """Closed form: the mean of r over a disc about the hole is 2 R / 3."""
    pin = WITHY.pin
    disc = shapely.Point(pin.x_yd, pin.y_yd).buffer(12.0, quad_segs=64)
    features = tuple(
        replace(one, area=disc) if one.surface is Surface.GREEN else one for one in WITHY.features
    )
    assert usual_putt_ft(replace(WITHY, features=features)) == pytest.approx(3.0 * 8.0, rel=0.01)


@pytest.mark.parametrize("name", ["barnaby", "isolde"])
@pytest.mark.parametrize("noted, ground", [("right rough", Surface.ROUGH), ("fairway", Surface.FAIRWAY)])
@pytest.mark.parametrize("club", ["driver", "3-wood"])
def test_it_is_near_where_such_balls_end(name: str, noted: str, ground: Surface, club: str) -> None:
    """The middle one of the player's own balls that come to rest on such ground."""
    hole = level("withy-drain")
    board = make_board(hole, bag_named(name))
    shots = board.bag.shots.shots
    row = next(k for k, shot in enumerate(shots) if shot.club.name == club and shot.flight == "stock")
    action = np.array([float(row), 0.0, 0.0])
    opening = Opening(0.0, 0.0, int(Lie.TEE), action, action, 5.0)
    balls = play(board, *opening, seed=5, sequences=4_000, threads=THREADS)
    there = [hole.station_offset(x, y) for x, y in balls.rest_yd[balls.surface == ground]]
    stations = [station for station, offset in there if noted == "fairway" or offset > 0.0]
    assert len(stations) > 200
    stroke = strokes_of(read_notes(f"{club} {noted}"), hole, usual_length(player_named(name), hole)).strokes[0]
    station_yd, _ = hole.station_offset(stroke.end.x_yd, stroke.end.y_yd)
    assert station_yd == pytest.approx(float(np.median(stations)), abs=17.0)
