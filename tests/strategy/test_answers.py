"""Answers of `plan` and `compare`: they agree, and every key of their JSON means what it is said to mean."""

from __future__ import annotations

import json
import math
from functools import cache
from typing import Any

import numpy as np
import pytest
from small_games import hole_of
from solved import hole_named, one_map_for_one_place, player_named

from simulator import compare, load_hole, plan
from simulator.engine import MOST_STROKES, maps
from simulator.errors import NoAnswerError, UsageError
from simulator.hole.surfaces import WORDS
from simulator.strategy import question as strategy_question
from simulator.strategy.places import place
from simulator.strategy.result import Answer

SEQUENCES = 4_000

TOP_KEYS = {
    "schema", "hole", "player", "seed", "sequences", "value_map_score", "recommended", "tied",
    "clear_beyond_yd", "alternatives", "warnings", "conditions",
}  # fmt: skip
SHARES = {
    "birdie_or_better", "par", "bogey", "double_or_worse", "penalty_this_shot", "penalty_on_hole", "fairway",
    "green_in_regulation", "three_putt", "branch_this_shot",
}  # fmt: skip
ALTERNATIVE_KEYS = SHARES | {
    "club", "flight", "aim_offset_yd", "aim_bearing_deg", "expected_score", "standard_error", "difference",
    "difference_standard_error", "margin_95", "difference_margin_95", "worst_tenth_mean", "finish", "features", "leaves_yd",
}  # fmt: skip


@pytest.fixture(autouse=True)
def one_map(monkeypatch: pytest.MonkeyPatch) -> None:
    one_map_for_one_place(monkeypatch)


@cache
def answer(kind: str, seed: int = 1, sequences: int = SEQUENCES) -> Answer:
    """The answers these tests look at, each worked out once."""
    withy, isolde = hole_named("withy-drain"), player_named("isolde")
    options: dict[str, Any] = {"seed": seed, "sequences": sequences, "quick": True, "threads": 2}
    if kind == "plan":
        return plan(withy, isolde, **options)
    if kind == "compare":
        return compare(withy, isolde, ["driver", "3w"], **options)
    if kind == "given":
        return compare(withy, isolde, ["driver@-8", "driver@-3deg", "driver"], **options)
    if kind == "par 3":
        return plan(load_hole("eel-trap"), player_named("barnaby"), **options)
    if kind == "rough":
        return plan(withy, isolde, start=place("164 out, left rough", withy), **options)
    if kind == "rough, one played":
        return plan(withy, isolde, start=place("164 out, left rough", withy, 1), **options)
    raise AssertionError(kind)


KINDS = ("plan", "compare", "given", "par 3", "rough", "rough, one played")


@pytest.mark.parametrize("kind", KINDS)
def test_keys_and_footing(kind: str) -> None:
    """Every promised key is there, the whole is JSON, and the figures are consistent with one another."""
    found = answer(kind).to_dict()
    again = json.loads(json.dumps(found, allow_nan=False))  # NaN or infinity would raise
    assert set(again) >= TOP_KEYS
    assert again["alternatives"] and again["recommended"] in again["tied"]
    assert sorted(again["tied"]) == again["tied"] and again["warnings"] == []
    assert isinstance(again["clear_beyond_yd"], int) and again["sequences"] == SEQUENCES
    best = again["alternatives"][again["recommended"]]
    assert best["difference"] == 0.0 and best["difference_standard_error"] == 0.0
    for n, one in enumerate(again["alternatives"]):
        assert set(one) >= ALTERNATIVE_KEYS
        assert 0.0 < one["standard_error"] < 0.05
        gap = one["expected_score"] - best["expected_score"]
        assert one["difference"] == pytest.approx(gap, abs=1e-9)  # the same strikes and sequences, paired
        # paired, a difference is surer than the two scores taken apart
        apart = math.hypot(one["standard_error"], best["standard_error"])
        assert 0.0 <= one["difference_standard_error"] < apart
        # 95 % of t: 1.96 with all degrees of freedom, 2.13 with those of the scrambles alone
        for name in ("", "difference_"):
            error = one[f"{name}standard_error"]
            assert 1.959 * error <= one[f"{name}margin_95"] <= 2.132 * error
        tie = abs(one["difference"]) < max(0.03, one["difference_margin_95"])
        assert tie or n not in again["tied"]
        assert n == again["recommended"] or abs(one["difference"]) > 0.03 or n in again["tied"]
        leaves = one["leaves_yd"]
        assert set(leaves) == {"p10", "p50", "p90"} and 0.0 <= leaves["p10"] <= leaves["p50"] <= leaves["p90"]


@pytest.mark.parametrize("kind", KINDS)
def test_shares(kind: str) -> None:
    """Shares add up, features are parts of surfaces, and each has its standard error."""
    found = answer(kind)
    hole = found.hole
    for one in found.to_dict()["alternatives"]:
        assert sum(one["finish"].values()) == pytest.approx(1.0, abs=1e-12)
        assert set(one["finish"]) <= set(WORDS.values())
        surface_of = {f.name: WORDS[f.surface] for f in hole.features}
        assert set(one["features"]) <= set(surface_of)
        for surface in one["finish"]:
            drawn = sum(share for name, share in one["features"].items() if surface_of[name] == surface)
            undrawn = one["finish"][surface] - drawn
            assert undrawn > -1e-12 and (surface == "rough" or undrawn < 1e-12)
        errors = one["standard_errors"]
        for name in SHARES:
            assert (one[name] is None) == (errors[name] is None)
            if one[name] is not None:
                p = one[name]
                assert 0.0 <= p <= 1.0
                binomial = math.sqrt(max(p * (1.0 - p), 1.0 / SEQUENCES) / SEQUENCES)
                assert errors[name] == pytest.approx(binomial, rel=0.01)
        for group in ("finish", "features"):
            assert set(errors[group]) == set(one[group])
            assert all(error > 0.0 for error in errors[group].values())
        assert errors["worst_tenth_mean"] > 0.0
        assert one["penalty_this_shot"] <= one["penalty_on_hole"]
        if one["par"] is not None:
            words = ("birdie_or_better", "par", "bogey", "double_or_worse")
            assert sum(one[word] for word in words) == pytest.approx(1.0, abs=1e-12)


@pytest.mark.parametrize("kind", KINDS)
def test_figures_are_those_of_the_sequences(kind: str) -> None:
    """The counted figures recomputed from what every sequence left behind."""
    found = answer(kind)
    pin = np.array([found.hole.pin.x_yd, found.hole.pin.y_yd])
    here = np.array([found.start.x_yd, found.start.y_yd])
    for one in found.alternatives:
        assert one.scores.shape == (SEQUENCES,) and one.finishes_yd.shape == (SEQUENCES, 2)
        # an estimate free of chance to 3 standard errors of the plain mean
        error = one.scores.std(ddof=1) / math.sqrt(SEQUENCES)
        assert abs(one.score.value - one.scores.mean()) < 3.5 * error
        worst = np.sort(one.scores)[-SEQUENCES // 10 :]
        assert one.worst_tenth_mean.value == pytest.approx(worst.mean(), abs=1e-9)
        par = found.hole.par
        if one.chances["par"] is not None:
            assert one.chances["par"].value == np.mean(one.scores == par)
            assert one.chances["bogey"] is not None
            assert one.chances["bogey"].value == np.mean(one.scores == par + 1)
        surfaces = [WORDS[found.hole.surface_at(x, y)] for x, y in one.finishes_yd[:500]]
        for surface, share in one.finish.items():
            seen = surfaces.count(surface) / 500
            assert abs(seen - share.value) < 4.5 * math.sqrt(max(seen * (1 - seen), 0.01) / 500)
        penalty = one.chances["penalty_this_shot"]
        if penalty is not None and penalty.value < 0.002:  # hardly a relief: leaves are where balls finished
            left = np.quantile(np.linalg.norm(one.finishes_yd - pin, axis=1), [0.1, 0.5, 0.9])
            assert left == pytest.approx([one.leaves_yd[k].value for k in ("p10", "p50", "p90")], abs=1.5)
        # the aim: offset at the intended carry from the straight line to the pin, right positive
        ahead = math.atan2(*(pin - here))
        turn = math.radians(one.aim_bearing_deg) - ahead
        turn = math.atan2(math.sin(turn), math.cos(turn))
        assert one.aim_offset_yd == pytest.approx(one.carry_yd * math.sin(turn), abs=1e-6)
        assert 0.0 <= one.aim_bearing_deg < 360.0
        assert one.aims_yd[0] <= one.aim_offset_yd + 1e-9 and one.aim_offset_yd <= one.aims_yd[1] + 1e-9
        # balls fly about where they are aimed: the bias of these players is under 2 degrees
        flown = one.landings_yd - here
        off = np.median(np.arctan2(flown[:, 0], flown[:, 1])) - math.radians(one.aim_bearing_deg)
        assert abs(math.degrees(math.atan2(math.sin(off), math.cos(off)))) < 3.0


def test_plan_and_compare_agree() -> None:
    """The same club at the same aim, the same seed: the same number; other seeds: within their errors."""
    planned = {(one.club, one.flight): one for one in answer("plan").alternatives}
    both = [one for one in answer("compare").alternatives if (one.club, one.flight) in planned]
    assert len(both) >= 2
    for one in both:
        other = planned[one.club, one.flight]
        if one.aim_offset_yd == other.aim_offset_yd:
            assert one.score == other.score and one.chances == other.chances
        apart = math.hypot(one.score.standard_error, other.score.standard_error)
        assert abs(one.score.value - other.score.value) < 3.0 * apart + 0.005  # 0.005: aims so fine are alike
    fresh = {(one.club, one.flight): one for one in answer("compare", seed=2).alternatives}
    assert {("driver", "stock"), ("3-wood", "stock")} <= set(fresh)
    for one in answer("compare").alternatives:
        other = fresh[one.club, one.flight]
        apart = math.hypot(one.score.standard_error, other.score.standard_error)
        assert abs(one.score.value - other.score.value) < 3.5 * apart + 0.01  # maps of two seeds: 0.003 each


def test_compare_adds_the_better_club_nobody_asked_about() -> None:
    found = answer("compare")
    asked = {one.club for one in found.alternatives if one.asked}
    assert asked == {"driver", "3-wood"}
    extra = [one for one in found.alternatives if not one.asked]
    assert len(extra) == 1 and extra[0].club == answer("plan").best.club
    assert not any(one.asked for one in answer("plan").alternatives)


def test_same_seed_same_answer() -> None:
    """Byte for byte, on one thread as on two; another seed moves the figures."""
    hole, player = load_hole("eel-trap"), player_named("barnaby")
    one = plan(hole, player, sequences=SEQUENCES, threads=1, quick=True)
    assert json.dumps(one.to_dict()) == json.dumps(answer("par 3").to_dict())
    assert answer("compare", seed=2).best.score != answer("compare").best.score


def test_given_aims() -> None:
    """Yards and degrees are taken as said, scored as said, and cannot beat the aim that was searched for."""
    found = answer("given")
    given = [one for one in found.alternatives if one.aim_given]
    searched = next(one for one in found.alternatives if one.club == "driver" and not one.aim_given)
    assert len(given) == 2 and all(one.club == "driver" and one.asked for one in given)
    by_yards = next(one for one in given if abs(one.aim_offset_yd + 8.0) < 1e-9)
    by_degrees = next(one for one in given if one is not by_yards)
    ahead = math.degrees(math.atan2(found.hole.pin.x_yd, found.hole.pin.y_yd))
    assert by_degrees.aim_bearing_deg == pytest.approx((ahead - 3.0) % 360.0, abs=1e-9)
    for one in given:
        limit = 3.0 * max(one.difference.standard_error, searched.difference.standard_error)
        assert one.score.value > searched.score.value - limit - 0.005


def test_clear_beyond() -> None:
    """The same for any seed of the sequences and any number of them; above every finish seen, by 20 yards."""
    found = answer("compare")
    few = answer("compare", sequences=100)
    assert few.clear_beyond_yd == found.clear_beyond_yd
    farthest = max(
        float(np.linalg.norm(ends, axis=1).max())
        for one in found.alternatives
        for ends in (one.finishes_yd, one.landings_yd)
    )
    assert found.clear_beyond_yd >= farthest + 20.0 - 1.0  # 4,000 strikes of another seed against 32,768
    # the answers of another seed may aim elsewhere: the strikes are the same, the ground they meet is not
    assert abs(answer("compare", seed=2).clear_beyond_yd - found.clear_beyond_yd) <= 5


def test_clear_beyond_of_one_aim_does_not_know_the_seed() -> None:
    hole, player = load_hole("eel-trap"), player_named("isolde")
    seen = set()
    for seed in (1, 2):
        one = compare(hole, player, ["6-iron@0", "driver@0"], seed=seed, sequences=100, quick=True)
        assert {"6-iron", "driver"} == {k.club for k in one.alternatives if k.asked}
        seen.add(one.clear_beyond_yd)
    assert len(seen) == 1


def test_strokes_already_played() -> None:
    """Without them par words are null and scores count from here; with them scores are of the hole."""
    here, hole = answer("rough"), answer("rough, one played")
    for one, other in zip(here.alternatives, hole.alternatives, strict=True):
        found, full = one.to_dict(), other.to_dict()
        for word in ("birdie_or_better", "par", "bogey", "double_or_worse", "green_in_regulation"):
            assert found[word] is None and full[word] is not None
        assert found["fairway"] is None and full["fairway"] is None  # not a tee shot
        assert full["expected_score"] == pytest.approx(found["expected_score"] + 1.0, abs=1e-12)
        assert full["worst_tenth_mean"] == pytest.approx(found["worst_tenth_mean"] + 1.0, abs=1e-12)
        assert full["difference"] == found["difference"]
    assert hole.value_map_score.value == pytest.approx(here.value_map_score.value + 1.0, abs=1e-12)
    assert here.to_dict()["start"]["played"] is None
    assert "driver" not in {one.club for one in here.alternatives}  # no driver off the turf
    # one stroke played on a par 4: on the green with the next one is in regulation
    green = hole.best.finish["green"].value
    regulation = hole.best.chances["green_in_regulation"]
    assert regulation is not None and abs(regulation.value - green) < 0.01  # holed shots count too


def test_fairway_is_null_on_a_par_3_only() -> None:
    assert all(one.chances["fairway"] is None for one in answer("par 3").alternatives)
    for one in answer("plan").alternatives:
        fairway = one.chances["fairway"]
        assert fairway is not None and fairway.value == one.finish["fairway"].value


REFUSED = [
    ({"clubs": ["9-wood"]}, "no club '9-wood'"),
    ({"clubs": ["driver@up"]}, "is not an aim"),
    ({"clubs": []}, "no club to compare"),
    ({"clubs": ["driver"], "sequences": 99}, "sequences 99"),
    ({"clubs": ["driver"], "sequences": 2_000_001}, "sequences 2000001"),
    ({"clubs": ["driver"], "seed": -1}, "seed -1"),
    ({"clubs": ["driver"], "seed": 2**32}, "seed 4294967296"),
    ({"clubs": ["driver"], "conditions": {"wind_mph": 10}}, "conditions"),
    ({"clubs": ["driver"], "start": "164 out, left rough"}, "driver is not played from rough"),
    ({"clubs": ["driver"], "start": "200 out"}, "driver is not played from fairway"),
]


@pytest.mark.parametrize(("options", "because"), REFUSED, ids=lambda v: str(v)[:40])
def test_refused_in_one_line(options: dict[str, Any], because: str, monkeypatch: pytest.MonkeyPatch) -> None:
    hole = load_hole("withy-drain")
    if "start" in options:
        options = {**options, "start": place(options["start"], hole)}
    monkeypatch.setattr(strategy_question, "solve_from", lambda *_, **__: pytest.fail("nobody waits for the map"))
    with pytest.raises(UsageError) as caught:
        compare(hole, player_named("isolde"), **options)
    assert because in str(caught.value) and "\n" not in str(caught.value)


ISLAND = """
name = "Island"
par = 4
length_yd = 400
green = [{ name = "green", front_yd = 390, depth_yd = 20, width_yd = 20 }]
pin = [{ name = "middle", on_yd = 10 }]
"""


@pytest.mark.parametrize(
    ("kind", "colour"), [("penalty_area", "yellow"), ("penalty_area", "red"), ("out_of_bounds", "")]
)
def test_a_green_nobody_reaches(
    kind: str, colour: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nothing but sea to an island 400 yards away: words that say so, or a score that was really played.

    Never NaN, never the number at which a sequence was given up (60 shots, two strokes each) as a score.
    However far the map got: such a one never settles, and where balls are dropped a sweep of it is slow, so those
    two are left after five. Three clubs are enough to get lost with.
    """
    if kind == "penalty_area":
        monkeypatch.setattr(maps, "MOST_SWEEPS", 4)
    look = f', colour = "{colour}"' if colour else ""
    parts = [(12, 388, -300, 300), (412, 600, -300, 300), (388, 412, -300, -12), (388, 412, 12, 300)]
    areas = ", ".join(
        f'{{ name = "sea {n}"{look}, from_yd = {a}, to_yd = {b}, left_yd = {left}, right_yd = {right} }}'
        for n, (a, b, left, right) in enumerate(parts)
    )
    hole = hole_of(f"{ISLAND}{kind} = [{areas}]\n")
    try:
        found = plan(hole, player_named("handicap 18, only 5-iron, 9-iron and sand wedge"), sequences=200, quick=True)
    except NoAnswerError as error:
        assert "\n" not in str(error) and len(str(error)) > 20
        return
    assert "NaN" not in json.dumps(found.to_dict(), allow_nan=False)
    assert found.best.scores.max() < MOST_STROKES, (found.value_map_score, found.best.score)
