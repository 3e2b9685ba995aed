"""After the round: a score is split into choices and swings without anything left over, and each part is right."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from scipy.stats import chi2
from small_games import hole_of
from solved import SEED, THREADS, player_named, straight_hole, value_of

from simulator import load_hole, load_player
from simulator.engine import play
from simulator.errors import NoAnswerError, UsageError
from simulator.hole.surfaces import Lie
from simulator.strategy.errorbars import Estimate
from simulator.strategy.question import Clock, question, solve
from simulator.strategy.review import judging, read_notes, read_round, review, review_round
from simulator.strategy.review.judging import Judge
from simulator.strategy.review.rests import Rest, resting
from simulator.strategy.review.strokes import Stroke, strokes_of
from simulator.strategy.search import search
from simulator.tables.luck import strike_sets

WITHY, EEL = load_hole("withy-drain"), load_hole("eel-trap")
FULL = "driver into withy drain, drop 175 out, right rough; 5-hybrid to 40 out, rough; chip to 12 ft; 2 putts"
SPOTS = ("215 out, fairway", "175 out, right rough", "40 out, fairway")
MAP = 0.015
"""How far the map may be off the plays [strokes]."""


@pytest.fixture(scope="module")
def judge() -> Judge:
    """On a map worked as a review works it, where balls from these places come to."""
    spots = [resting(words, WITHY, None) for words in SPOTS]
    ask = question("review", WITHY, player_named("barnaby"), ("7-iron low",), sequences=1_000, seed=SEED,
                   threads=THREADS)  # fmt: skip
    others = [(spot.x_yd, spot.y_yd, int(spot.lie)) for spot in spots]
    return Judge(solve(ask, Clock(), others), WITHY, player_named("barnaby"), SEED)


def judged(judge: Judge, text: str) -> list:
    return [*judge.hole_played(strokes_of(read_notes(text), judge.hole).strokes)]


def test_an_unplayable_ball_is_lost_by_the_stroke_that_brought_it(judge: Judge) -> None:
    """A pupil who could not swing in a bush was told that a 5-hybrid out of it was a shot better."""
    wood, drop, nine = judged(judge, "3w to 95 out, right trees; unplayable, drop 155 out, right heavy rough; 9i to 30 out")
    assert drop.choice.value == drop.swing.value == 0.0
    usual = judge.judged(wood.stroke)
    worse = 1.0 + nine.before.value - drop.before.value
    assert wood.swing.value == pytest.approx(usual.swing.value + worse, abs=1e-9) and worse > 0.3
    assert wood.choice == usual.choice and wood.better_than.value < usual.better_than.value
    alone = judge.judged(drop.stroke, brought=False)  # notes that begin with it
    assert alone.choice.value == pytest.approx(worse, abs=1e-9)


@pytest.mark.parametrize(
    "text",
    [
        FULL,
        "driver out of bounds; 3-wood 5 left to 215 out, fairway; 7i low to 60 out, left rough; wedge to 20 ft; 3 putts",
        "3w to 95 out, right trees; unplayable, drop 100 out; 9i to 30 ft above; putt to 4 ft; putt holed",
    ],
)
def test_choices_and_swings_are_the_score_less_the_average(judge: Judge, text: str) -> None:
    """The sum telescopes: exact to rounding, whatever each value is."""
    found = judged(judge, text)
    score = sum(one.stroke.strokes + one.stroke.penalty for one in found)
    lost = sum(one.choice.value + one.swing.value for one in found)
    assert lost == pytest.approx(score - found[0].before.value, abs=1e-9)


def test_a_place_is_worth_what_fresh_plays_from_it_take(judge: Judge) -> None:
    """V of three places against 40,000 full sequences of the plan from there, putts by their expectation."""
    for words in SPOTS:
        rest = resting(words, WITHY, None)
        place = replace(judge.tee, x_yd=rest.x_yd, y_yd=rest.y_yd, lie=int(rest.lie))
        best = search(place, SEED, place.board.allowed(place.lie), keep_within=0.3, keep_most=2)[0].action
        value = value_of(place, best, 4.0)
        played = place.play(best, best, value, seed=SEED + 3, sequences=40_000).expected
        error = played.std(ddof=1) / math.sqrt(played.size)
        ours = judge.value(rest)
        assert ours.value == pytest.approx(played.mean(), abs=MAP + 3.0 * math.hypot(error, ours.standard_error)), words


def test_the_first_place_is_put_right_by_full_plays(judge: Judge) -> None:
    """The tee against 400,000 sequences of the same plan, within what is stated: the map alone is 0.007 off here."""
    tee = resting("tee", WITHY, None)
    corrected, plain = (Judge(judge.tee, WITHY, judge.player, SEED, first=one) for one in (tee, None))
    ours, valued = corrected.value(tee), corrected.valued(tee)
    best = valued.best.action
    played = play(judge.tee.board, 0.0, 0.0, int(Lie.TEE), best, best, valued.value, seed=SEED + 31,
                  sequences=400_000, threads=THREADS).expected  # fmt: skip
    error = played.std(ddof=1) / math.sqrt(played.size)
    assert ours.standard_error < 0.006  # 15,000 sequences of rests that vary by 0.55
    assert ours.value == pytest.approx(played.mean(), abs=3.0 * math.hypot(error, ours.standard_error))
    bare = plain.value(tee)
    assert bare.standard_error > 0.005 and ours.value != bare.value  # without sequences it says what maps are off by
    (one,), (two,) = (judged(which, "driver to 215 out, fairway") for which in (corrected, plain))
    assert one.choice == two.choice and one.better_than == two.better_than
    assert one.swing.value == pytest.approx(two.swing.value - ours.value + bare.value, abs=1e-9)


def test_what_was_held_down_out_of_sand_is_judged_as_the_usual_swing(judge: Judge) -> None:
    """It was done, so it is no reason to refuse a round's notes."""
    low, usual = (judged(judge, f"driver left fairway bunker; {club} to 60 out, fairway")[1] for club in ("7i low", "7i"))
    assert low.choice.value == usual.choice.value and low.swing.value == usual.swing.value


def test_the_average_scatters_over_seeds_as_it_says() -> None:
    """Eight seeds, each with a map, strikes and sequences of its own.

    Of normal figures the squared scatter over the mean squared error is chi-square with 7 degrees over 7:
    998 in 1,000 lie between the bounds.
    """
    short = hole_of(straight_hole(150, par=3))
    told = read_notes("7i to 20 ft; 2 putts")
    found = [review(short, player_named("barnaby"), told, seed=seed, threads=THREADS).expected for seed in range(1, 9)]
    scatter = np.var([one.value for one in found], ddof=1)
    stated = np.mean([one.standard_error**2 for one in found])
    low, high = chi2.ppf([0.001, 0.999], 7) / 7
    assert low < scatter / stated < high


def test_what_is_best_is_valued_on_strikes_that_did_not_choose_it(judge: Judge, monkeypatch: pytest.MonkeyPatch) -> None:
    """Of several scores the lowest flatters itself: the value is another set's, and as high again on a third."""
    drawn: list[int] = []
    monkeypatch.setattr(judging, "strike_sets", lambda seed, *n: drawn.append(seed) or strike_sets(seed, *n))
    apart = []
    for words in SPOTS:
        drawn.clear()
        valued = Judge(judge.tee, WITHY, judge.player, SEED + 40).valued(resting(words, WITHY, None))
        assert len(drawn) == len(set(drawn)) == 2  # one to choose, one to value
        assert np.array_equal(valued.strikes, strike_sets(drawn[1], judging.SETS, judging.STRIKES))
        apart.append(valued.value - value_of(valued.place, valued.best.action, valued.value))
    assert abs(float(np.mean(apart))) < 0.003  # three values, each within 0.0015 (one standard error)


def test_a_choice_costs_what_full_plays_of_both_differ_by(judge: Judge) -> None:
    """Driver for the best club from the tee: against the difference of two sets of sequences, luck shared."""
    (found,) = judged(judge, "driver to 200 out, fairway")
    place = judge.tee
    shots = place.board.bag.shots.shots
    rows = [k for k in place.board.allowed(place.lie) if shots[k].club.name in ("driver", found.best.club)]
    choices = search(place, SEED, rows, keep_within=9.0, keep_most=2)
    driver = next(c for c in choices if shots[c.row].club.name == "driver").action
    best = next(c for c in choices if shots[c.row].club.name == found.best.club).action
    value = value_of(place, best, 5.7)
    luck = {"seed": SEED + 5, "sequences": 60_000, "threads": THREADS}
    one, two = (play(place.board, 0.0, 0.0, int(Lie.TEE), a, best, value, **luck).expected for a in (driver, best))
    lost = one - two
    error = lost.std(ddof=1) / math.sqrt(lost.size)
    assert found.choice.value == pytest.approx(lost.mean(), abs=MAP + 3.0 * math.hypot(error, found.choice.standard_error))
    assert found.chosen.club == "driver" and found.best.club != "driver"


def test_swings_of_the_player_s_own_lose_nothing_on_average(judge: Judge) -> None:
    """The strikes of the driver itself, each told as a stroke: their swings average to nothing, and "beats" is
    uniform, its mean one half less half the ties."""
    place = judge.tee
    before = judge.valued(resting("tee", WITHY, None))
    driver = judge.judged(Stroke(1, "swing", "driver", _tee(), _tee(), 1, 0, ""))
    action = judge._chosen(before, driver.stroke)[0].action
    each = before.outcomes(action).ravel()
    played = play(place.board, 0.0, 0.0, int(Lie.TEE), action, before.best.action, before.value, seed=SEED + 9,
                  sequences=20_000, threads=THREADS, most_strokes=1)  # fmt: skip
    again = played.first_cost + played.first_value  # by strikes of their own
    error = math.hypot(again.std(ddof=1) / math.sqrt(again.size), each.std(ddof=1) / math.sqrt(each.size))
    assert each.mean() == pytest.approx(again.mean(), abs=3.0 * error)
    for share in (0.1, 0.5, 0.9):  # and they are spread alike: counts of 20,000 and 8,192
        mark = float(np.quantile(again, share))
        assert (each > mark).mean() == pytest.approx((again > mark).mean(), abs=0.02)


    for end in ("215 out, left rough", "200 out, fairway"):  # "beats" counts those of them that end worse
        (one,) = judged(judge, f"driver to {end}")
        mark = 1.0 + judge.value(resting(end, WITHY, None)).value
        share = (again > mark).mean()
        error = math.hypot(one.better_than.standard_error, math.sqrt(share * (1.0 - share) / again.size))
        assert 0.0 < one.better_than.standard_error < 0.01
        assert one.better_than.value == pytest.approx(share, abs=3.0 * error)
        assert 0.05 < one.better_than.value < 0.95


def _tee() -> Rest:
    return Rest(0.0, 0.0, Lie.TEE, "the white tee")


def test_the_best_shot_is_no_choice_lost_and_a_foolish_one_is(judge: Judge) -> None:
    best = judged(judge, "driver to 200 out, fairway")[0].best
    (found,) = judged(judge, f"{best.club} to 215 out, fairway")
    assert found.choice.value == 0.0 and found.choice.standard_error == 0.0 and not found.aim_given
    (wide,) = judged(judge, "driver 60 right to 200 out, fairway")
    assert wide.aim_given and wide.chosen.aim_offset_yd == pytest.approx(60.0)
    assert wide.choice.value > 0.3
    assert wide.swing.value < found.swing.value  # the same finish is a better swing of a worse choice


def test_a_club_too_long_for_the_distance_was_swung_short(judge: Judge) -> None:
    for club in ("pitching wedge", "sand wedge", "chip", "9-iron"):
        found = judged(judge, f"from 40 out, fairway; {club} to 12 ft")[0]
        assert found.chosen.flight in ("part", "gripped", "punch") and found.chosen.carry_yd < 45.0, club
        assert abs(found.choice.value) < 0.25, club
    with pytest.raises(UsageError, match="no swing short of full"):
        judged(judge, "from 215 out, fairway; chip to 180 out")


def test_a_wedge_whose_ball_came_to_the_hole_was_no_full_one(judge: Judge) -> None:
    """From 60 out to 12 ft with a wedge that carries 74: a choice of 0.4 to 0.9 strokes was lost by it, and won
    back by the swing. Where a full one goes, behind the green, it was a full one."""
    carry_yd = next(club.carry_yd for club in judge.player.clubs if club.name == "sand wedge")
    out = round(carry_yd - 13.0)
    near, over, wet = (
        judged(judge, f"driver to 160 out; 7i to {out} out; sand wedge to {where}")[2]
        for where in ("12 ft", "12 behind the green", "10 behind the green")
    )
    assert near.chosen.flight in ("part", "gripped", "punch") and near.choice.value < 0.1
    assert over.chosen.flight in ("stock", "low") and over.choice.value > near.choice.value + 0.1
    assert over.choice.value == pytest.approx(wet.choice.value, abs=1e-9)


def test_a_club_the_lie_forbids_is_refused(judge: Judge) -> None:
    with pytest.raises(UsageError, match=r"stroke 1: 3-wood from bunker .* is not played"):
        judged(judge, "from 142 out, fairway bunker; 3-wood to 80 out")


def test_putts_are_judged_by_their_table(judge: Judge) -> None:
    putts = judge.tee.board.bag.putts
    for words, direction in (("above", math.pi), ("below", 0.0)):
        found = judged(judge, f"from 100 out; 9i to 12 ft {words}; 2 putts")[1]
        expected, chances, _ = putts.at(0, direction, 12.0)
        assert found.before.value == pytest.approx(expected, abs=1e-6)
        assert found.swing.value == pytest.approx(2.0 - expected, abs=1e-6)
        assert found.better_than == Estimate(pytest.approx(1.0 - chances[1], abs=1e-6), 0.0)
    around = judged(judge, "from 100 out; 9i to 12 ft; 2 putts")[1].before.value
    ends = [putts.at(0, turn, 12.0)[0] for turn in (0.0, math.pi)]
    assert min(ends) - 0.05 < around < max(ends) + 0.05
    missed = judged(judge, "from 100 out; 9i to 12 ft below; putt to 3 ft; putt in")
    assert missed[1].better_than is None
    assert missed[1].swing.value + missed[2].swing.value == pytest.approx(2.0 - missed[1].before.value)


def test_a_whole_review_keeps_its_sums_and_its_seed() -> None:
    told = read_notes("6i to 25 ft; three putts")
    found = review(EEL, player_named("isolde"), told, seed=3, threads=2)
    assert found.score == 4 and found.holed and found.left.value == 0.0
    assert found.choice.value + found.swing.value == pytest.approx(4.0 - found.expected.value)
    assert found.swing.value == pytest.approx(sum(one.swing.value for one in found.strokes))
    again = review(EEL, player_named("isolde"), told, seed=3, threads=1)
    assert again.to_dict() == found.to_dict()
    assert [found.part_of(one) for one in found.strokes] == ["approaches", "putting"]


def test_a_round_adds_its_holes_up_and_stops_where_the_ball_was_picked_up() -> None:
    short = hole_of(straight_hole(150, par=3))
    told = read_round("3: 7i to 20 ft; 2 putts\n4: 7i to 30 out, rough; picked up")
    found = review_round("Home", [(3, short), (4, short)], player_named("barnaby"), told, threads=THREADS)
    one, two = found.holes[3], found.holes[4]
    assert list(found.holes) == [3, 4] and found.score == 4
    assert not two.holed and two.left.value > 2.0
    assert two.choice.value + two.swing.value == pytest.approx(1.0 + two.left.value - two.expected.value)
    assert found.swing.value == pytest.approx(one.swing.value + two.swing.value)
    assert found.left.value == two.left.value and not found.holed
    came_to = found.score + found.left.value
    assert found.choice.value + found.swing.value == pytest.approx(came_to - found.expected.value)
    parts = {name: found.part(name) for name in ("tee shots", "approaches", "short game", "putting")}
    assert {name: part[0] for name, part in parts.items()} == {
        "tee shots": 0, "approaches": 2, "short game": 0, "putting": 2,
    }  # fmt: skip
    total = sum(part[1].value + part[2].value for part in parts.values())
    assert total == pytest.approx(found.choice.value + found.swing.value)
    with pytest.raises(UsageError, match="hole 5 is not on Home; allowed: 3, 4"):
        review_round("Home", [(3, short), (4, short)], player_named("barnaby"), read_round("5: 7i to 20 ft"))
    with pytest.raises(UsageError, match="hole 4: no club '2-iron'"):
        review_round("Home", [(4, short)], player_named("barnaby"), read_round("4: 2-iron to 20 ft"))


def test_a_place_nobody_gets_home_from_is_no_score(tmp_path: Path) -> None:
    """Its value is the map's word for "never", 2,000 and more: it stood as strokes lost and won again."""
    path = tmp_path / "pocket.toml"
    path.write_text(
        'name = "Pocket"\npar = 3\nlength_yd = 90\ngreen = [{ front_yd = 78, depth_yd = 24, width_yd = 24 }]\n'
        'out_of_bounds = [{ name = "quarry", from_yd = -60, to_yd = 160, left_yd = -76, right_yd = -12 },\n'
        '  { name = "field", right_of_yd = 40 }]\n'
    )
    short = load_player("handicap 54, only driver 50, sand wedge 20, putter")
    notes = read_notes("driver to -79,40; driver to 30 out; sw to 12 ft; 2 putts")
    with pytest.raises(NoAnswerError, match="no shot of this bag gets home from"):
        review(load_hole(path), short, notes, threads=1)


def test_a_putt_from_off_the_green_is_judged_as_one() -> None:
    """It was judged as a chip, and a chip noted there is not judged as the putt it might have been."""
    hole, clubs = hole_of(straight_hole(150, par=3)), {}
    for where, swing in (("fairway", "putt"), ("fairway", "chip"), ("rough", "putt")):
        notes = read_notes(f"7i to 17 out, {where}; {swing} to 3 ft; 1 putt")
        stroke = review(hole, player_named("barnaby"), notes, threads=THREADS).strokes[1]
        assert stroke.chosen is not None and stroke.best is not None
        clubs[where, swing] = stroke.chosen.club, stroke.best.club
    assert clubs["fairway", "putt"] == ("putter", "putter")
    assert clubs["fairway", "chip"][0] != "putter" and clubs["fairway", "chip"][1] == "putter"
    assert "putter" not in clubs["rough", "putt"]
