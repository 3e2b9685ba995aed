"""Notes as they are jotted in a car park: commas between strokes, a bare drop, "sideways", "topped 60 yards"."""

from __future__ import annotations

import math

import pytest
import shapely
from on_withy_drain import BARNABY, WITHY, placed, played

from simulator.errors import UsageError
from simulator.hole import Lie, Surface, load_hole
from simulator.hole.rules import CLUB_LENGTH_YD
from simulator.hole.words import hole_from_words
from simulator.strategy.review.named import water_named
from simulator.strategy.review.notes import Out, Putts, Swing, read_notes
from simulator.strategy.review.numbered import read_round
from simulator.strategy.review.strokes import strokes_of
from simulator.strategy.review.unmeasured import usual_length

EEL, LONG = load_hole("eel-trap"), load_hole("long-sluice")


def on(hole, notes: str):
    return strokes_of(read_notes(notes), hole, usual_length(BARNABY, hole))


COMMAS = [
    ("dr right rough, 7i short, chip to 6 ft, 2 putts", ["dr", "7i", "chip", "putt"], 5),
    ("D fairway, 6-iron just short, chip-in", ["D", "6-iron", "chip"], 3),
    ("driver OB, provisional driver fairway 170 left, 6i short of green, chip 8ft, putt",
     ["driver", "driver", "6i", "chip", "putt"], 6),
    ("driver lost, 3 off the tee fairway, 6i on, 2p", ["driver", "driver", "6i", "putt"], 6),
    ("driver - lost in the reeds - 3 off the tee fairway - 6i on - 2 putts", ["driver", "driver", "6i", "putt"], 6),
    ("driver lost in the reeds, went back, driver fairway, 6i on, 2 putts", ["driver", "driver", "6i", "putt"], 6),
    ("tee shot, driver fairway, second shot, 6i on, 2 putts", ["driver", "6i", "putt"], 4),
    ("driver fairway, 6i left bunker, sw, splash to 8', miss, tap in", ["driver", "6i", "sw", "putt"], 5),
    ("driver fairway, 6i r bunker, out first time to 3m, 2 putts", ["driver", "6i", "splash", "putt"], 5),
    ("driver fairway, 6i to the fringe, putt 3ft, putt", ["driver", "6i", "putter", "putt"], 4),
    ("driver plugged right rough, free drop, 6i short of the green, chip dead, tap in",
     ["driver", "6i", "chip", "putt"], 4),
]  # fmt: skip


@pytest.mark.parametrize(("noted", "clubs", "score"), COMMAS)
def test_commas_part_strokes_where_a_club_follows(noted: str, clubs: list[str], score: int) -> None:
    """Strokes were swallowed ("lost in the reeds - 3 off the tee fairway") or the whole line was refused."""
    found = on(WITHY, noted)
    assert [one.club for one in found.strokes] == clubs
    assert (found.score, found.holed) == (score, True)


def test_a_wood_behind_a_comma_is_trees_and_no_club() -> None:
    (stroke,) = on(WITHY, "driver 250 out, right wood").strokes
    assert stroke.end is not None and stroke.end.lie is Lie.TREES


@pytest.mark.parametrize("said", ["drop", "drop two club lengths", "took a drop", "penalty drop", "dropped beside it"])
def test_a_bare_drop_is_beside_the_water_where_the_club_meets_it(said: str) -> None:
    """Red: within two club-lengths of the edge, not nearer the hole (Rule 17.1d(3)); it was refused."""
    drain = next(one for one in WITHY.features if one.name == "withy drain")
    carry_yd = usual_length(BARNABY, WITHY)("driver")[0]
    for water in ("the drain", "withy drain", "water right", "the drain, right", "the withy drain left"):
        first, second = played(f"driver in {water}; {said}; 6i to 40 out")
        assert (first.penalty, second.number) == (1, 3)
        end = first.end
        assert end.lie is Lie.ROUGH and "no place noted" in end.noted and "withy drain" in end.noted
        away_yd = drain.area.distance(shapely.Point(end.xy_yd))
        assert 0.0 < away_yd <= 2.0 * CLUB_LENGTH_YD + 0.01
        station_yd = WITHY.station_offset(*end.xy_yd)[0]
        assert abs(station_yd - max(carry_yd, 207.0)) < 6.0  # the drain begins at 207


def test_a_side_is_part_of_a_name_before_it_is_a_side() -> None:
    two = load_hole("par 4, 400; pond left 150 to 190; pond right 200 to 240")
    assert [one.name for one in water_named("right pond", two)] == ["right pond"]
    assert [one.name for one in water_named("the drain, right", WITHY)] == ["withy drain"]


def test_a_bare_drop_from_yellow_water_is_behind_it_on_the_line() -> None:
    pool = next(one for one in LONG.features if one.name == "sluice pool")
    drop = on(LONG, "driver fairway; 5h fairway; 7i in the pool; drop; 9i to 10 ft").strokes[2].end
    assert LONG.surface_at(*drop.xy_yd) not in (Surface.WATER, Surface.OUT_OF_BOUNDS)
    out_yd, edge_yd = LONG.out_yd(*drop.xy_yd), pool.area.distance(shapely.Point(drop.xy_yd))
    assert 0.0 < edge_yd < 3.0
    line = shapely.LineString([LONG.pin.xy_yd, drop.xy_yd])
    assert line.intersects(pool.area) and out_yd > 25.0  # on the far side from the hole


def test_an_unplayable_ball_within_two_club_lengths() -> None:
    for said in ("unplayable, 2 club lengths", "unplayable, drop", "unplayable, dropped two clublengths"):
        ball, drop, swing = on(WITHY, f"dr left rough, {said}, 6i to 80 out").strokes
        moved_yd = math.dist(ball.end.xy_yd, drop.end.xy_yd)
        assert 0.0 < moved_yd <= 2.0 * CLUB_LENGTH_YD + 0.01 and (drop.penalty, swing.number) == (1, 3), said
        assert WITHY.out_yd(*drop.end.xy_yd) >= WITHY.out_yd(*ball.end.xy_yd) - 0.01
    sand = on(EEL, "8i plugged in bunker left, unplayable, drop in bunker, splash to 10 ft, 2 putts")
    assert sand.score == 5 and sand.strokes[1].end.xy_yd == sand.strokes[0].end.xy_yd


def test_gorse_that_was_drawn_needs_no_distance() -> None:
    hole = hole_from_words("par 4, 415; gorse both sides, edge 20, 150 to 330").hole
    carry_yd = usual_length(BARNABY, hole)("driver")[0]
    for noted in ("driver into the right gorse", "driver right gorse", "driver, gorse on the right"):
        end = on(hole, f"{noted}; 7i to 60 out").strokes[0].end
        assert end.lie is Lie.HEAVY_ROUGH and end.x_yd > 20.0, noted
        assert end.y_yd == pytest.approx(carry_yd, abs=3.0)


def test_what_was_left_behind_the_ground() -> None:
    for noted in ("3w fairway 210 left", "3w 210 left, fairway", "3w 190 yards, fairway, 210 left"):
        end = played(noted)[0].end
        assert end.lie is Lie.FAIRWAY and WITHY.out_yd(*end.xy_yd) == pytest.approx(210.0, abs=0.5), noted
    end = played("driver down the right, 175 left from light rough")[0].end
    assert end.lie is Lie.ROUGH and WITHY.out_yd(*end.xy_yd) == pytest.approx(175.0, abs=0.5)
    assert WITHY.station_offset(*end.xy_yd)[1] > 0.0


@pytest.mark.parametrize(
    "noted", ["5h topped 60 yards", "topped 5h 60 yards", "5h duffed it only 60", "5h chunked 60 yards down the fairway"]
)
def test_a_bad_strike_with_yards_went_so_far(noted: str) -> None:
    first, second = played(f"driver fairway; {noted}")
    went_yd = WITHY.station_offset(*second.end.xy_yd)[0] - WITHY.station_offset(*first.end.xy_yd)[0]
    assert went_yd == pytest.approx(60.0, abs=0.5)


def test_short_and_out_of_reach_is_the_usual_carry() -> None:
    (_, second), carry = played("driver to 215 out; 8i short"), usual_length(BARNABY, WITHY)("8i")[0]
    assert WITHY.out_yd(*second.end.xy_yd) == pytest.approx(215.0 - carry, abs=3.0) and "usual carry" in second.went
    with pytest.raises(UsageError, match=r"usual carry, 1.. yd, ends where no ball lies: say where"):
        played("driver to 192 out; 6i short")  # in the cross dyke
    with pytest.raises(UsageError, match="how far, and on what"):
        played("driver to 215 out; 8i just short")


def test_sideways_is_the_nearest_fairway() -> None:
    for said in ("chipped out sideways", "punch sideways", "hacked out sideways"):
        first, second = played(f"driver to 230 out, right trees; {said}")
        end = second.end
        assert end.lie is Lie.FAIRWAY
        fairway = shapely.union_all([one.area for one in WITHY.features if one.surface is Surface.FAIRWAY])
        nearest_yd = fairway.distance(shapely.Point(first.end.xy_yd))
        assert math.dist(first.end.xy_yd, end.xy_yd) == pytest.approx(nearest_yd + 1.0, abs=0.5), said


def test_out_without_a_club_is_out_of_sand_or_trees() -> None:
    for said in ("out to 15 ft", "got out to 15 ft", "out nicely to 15 ft"):
        assert played(f"driver fairway; 6i left bunker; {said}")[2].club == "splash", said
    assert played("driver to 230 out, right trees; out to 150 out, fairway")[1].club == "punch"
    with pytest.raises(UsageError, match="which club"):
        played("driver fairway; out to 15 ft")
    with pytest.raises(UsageError, match='out to where? Say "out to 15 ft"'.replace("?", r"\?")):
        played("driver fairway; 6i left bunker; out")


@pytest.mark.parametrize("said", ["holed bunker shot", "holed out from the bunker", "holed it", "holed"])
def test_holed_from_the_sand(said: str) -> None:
    found = on(EEL, f"6i to the front bunker; {said}")
    assert [(one.kind, one.club) for one in found.strokes] == [("swing", "6i"), ("swing", "splash")]
    assert found.score == 2 and found.holed


def test_trees_hit_on_the_way_say_nothing_of_the_place() -> None:
    for said in ("driver hit a tree, left rough", "driver off a tree, left rough", "driver left rough, clipped a branch"):
        assert played(said)[0].end.xy_yd == played("driver left rough")[0].end.xy_yd, said


def test_trees_short_of_the_usual_carry_are_the_nearest_there() -> None:
    end = played("driver right trees")[0].end  # the alders end at 170, he carries 197
    assert end.lie is Lie.TREES and WITHY.station_offset(*end.xy_yd)[0] == pytest.approx(168.0, abs=2.5)
    assert "nearest to the club's usual carry" in end.noted
    with pytest.raises(UsageError, match="no left trees"):
        played("driver left trees")


def test_a_pitch_on_from_far_has_the_average_putt() -> None:
    assert "the green's average" in played("driver to 80 out, fairway; wedge on")[1].went
    with pytest.raises(UsageError, match="notes 'wedge on': how far from the hole"):
        played("driver to 30 out, fairway; wedge on")


def test_a_score_that_does_not_fit_says_only_that() -> None:
    with pytest.raises(UsageError) as refused:
        played("driver to 200 out; 3w to 30 short; chip in for par")
    assert str(refused.value) == "notes 'par': the strokes before it come to 3 on a par 4: mend one of the two"


def test_a_drop_in_the_water_is_told_as_one() -> None:
    with pytest.raises(UsageError, match="notes 'drop 60 out': that is in the water, no ball is dropped there"):
        played("driver fairway; 6i in the dyke; drop 60 out; wedge to 10 ft")
    with pytest.raises(UsageError, match="where is the zone"):
        played("driver fairway; 6i in the dyke; drop zone; wedge to 10 ft")
    assert played("driver fairway; 6i in the dyke; drop zone 75 out; wedge to 10 ft")[1].went.endswith("75 yd out, fairway")


def test_a_round_names_every_hole_to_mend() -> None:
    noted = "1: driver\n2: driver to 200 out; 6i to 20 ft; 2 putts\n3: shanked\n7: up and down"
    with pytest.raises(UsageError, match=r"^hole 1: notes 'driver': to where\?.*\(holes 3, 7 need mending too\)$"):
        read_round(noted)


def test_letters_for_sides_and_clubs() -> None:
    assert played("driver fairway; 5hy l bunker")[1].end.xy_yd == pytest.approx(placed("left bunker"), abs=0.1)
    assert played("3wd fairway")[0].end == played("3-wood fairway")[0].end
    kinds = [type(one) for one in read_notes("driver lost in the reeds; driver fairway; 2p").clauses]
    assert kinds == [Out, Swing, Putts]


def test_the_tee_shot_is_no_tee() -> None:
    """ "tee shot, driver ..." was taken for a tee of that name, and the stroke with it."""
    notes = read_notes("tee shot driver right rough; 6i to 20 ft")
    assert notes.tee is None and len(notes.clauses) == 2


