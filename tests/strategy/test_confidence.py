"""How sure: the verdict's rule, the re-scoring of changed players against what is solved anew, turning points."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import norm
from solved import (
    SEED,
    THREADS,
    demo_board,
    hole_named,
    one_map_for_one_place,
    player_named,
    solved,
    tee,
    value_of,
)

from simulator import compare, load_hole
from simulator.conditions import Conditions
from simulator.conditions.model import Wind
from simulator.engine import Effort, hold_plan, revalue_map
from simulator.engine.sweeps import CLIFF_STROKES
from simulator.hole.surfaces import Lie
from simulator.kernels import codes as c
from simulator.player.doubt import FIELD_OF, Doubt, plausible_players
from simulator.player.model import Player
from simulator.strategy import plausible
from simulator.strategy.answering import never
from simulator.strategy.asked import asked_club, find_choices
from simulator.strategy.confidence import EVEN_STROKES, Confidence, verdict
from simulator.strategy.errorbars import Estimate
from simulator.strategy.flips import wider
from simulator.strategy.rescore import lowest, rescore
from simulator.strategy.result import Answer
from simulator.strategy.search import search
from simulator.strategy.tries import Place
from simulator.strategy.turning import turning
from simulator.tables.shots import GRASS_SD
from simulator.tables.varied import varied_strikes

EXACT = Doubt(**{part: 0.0 for part in FIELD_OF})


def sure(share: float) -> Confidence:
    return Confidence(200, 24, (share, 1.0 - share), (0.02, 0.02), share)


@pytest.mark.parametrize(
    "ahead, error, share, said",
    [
        (0.13, 0.005, 0.95, "clear"), (0.13, 0.005, 0.90, "clear"), (0.13, 0.005, 0.89, "slight"),
        (0.13, 0.005, 0.67, "slight"), (0.13, 0.005, 0.66, "either"), (0.029, 0.001, 0.99, "either"),
        (0.05, 0.03, 0.99, "either"), (0.13, 0.005, None, "clear"), (0.02, 0.005, None, "either"),
        (-0.01, 0.001, 0.99, "either"),
    ],
)  # fmt: skip
def test_the_verdict(ahead: float, error: float, share: float | None, said: str) -> None:
    others = [Estimate(0.4, 0.01), Estimate(ahead, error)]
    assert verdict(others, None if share is None else sure(share)) == said


def test_lowest_of_a_parabola_and_of_what_is_none() -> None:
    at = np.array([-2.0, 0.0, 2.0])
    values = np.array([3.0 + 0.1 * (at - 0.7) ** 2, 3.0 + 0.1 * (at - 5.0) ** 2, 3.0 - 0.1 * at**2])
    assert lowest(values) == pytest.approx([3.0, values[1, 2], values[2, 0]])


def test_turning_points_of_lines() -> None:
    def behind(at: float) -> np.ndarray:
        return np.array([0.0, 0.3 - 0.1 * at, 0.9 + 0.5 * at])

    tried, errors = (-4.0, -2.0, 0.0, 2.0, 4.0), np.array([0.0, 0.02, 0.03])
    # 2 is turned to nearer than 1 on the other side is; a lead unsure by 0.03 that goes by 0.5 a unit: 0.06 units
    assert turning(behind, tried, 0.0, errors) == pytest.approx((-1.8, 2, 0.06))
    assert turning(behind, (0.0, 2.0, 4.0), 0.0, errors) == pytest.approx((3.0, 1, 0.2))
    assert turning(behind, (0.0, 2.0, 4.0), 0.0, errors, refine=False) == pytest.approx((3.0, 1, 0.2))
    assert turning(behind, (-1.0, 0.0, 2.0), 0.0, errors) == (None, None, None)
    assert turning(lambda at: np.array([0.0, -0.1]), tried, 0.0, errors) == (0.0, 1, None)
    assert turning(lambda at: np.zeros(1), tried, 0.0, errors) == (None, None, None)


def test_a_turning_point_scatters_as_its_error_says() -> None:
    """A lead of 0.3 strokes that goes by 0.1 a unit, known to 0.02: where it is lost, in 2,000 of them."""
    rng = np.random.default_rng(7)
    found = []
    for off in rng.normal(0.0, 0.02, 2000).tolist():
        turn = turning(lambda at, off=off: np.array([0.0, 0.3 + off - 0.1 * at]), (0.0, 2.0, 4.0), 0.0, np.full(2, 0.02))
        assert turn.amount is not None
        found.append((turn.amount, turn.standard_error))
    amounts, errors = np.array(found).T
    assert errors == pytest.approx(0.2)  # 0.02 / 0.1
    assert amounts.std() == pytest.approx(0.2, rel=3.0 / math.sqrt(2 * 2000))


def test_the_player_himself_has_his_own_rows() -> None:
    bag = demo_board("withy-drain", "barnaby").bag
    assert np.array_equal(varied_strikes(bag, player_named("barnaby")), bag.strikes)
    assert np.array_equal(varied_strikes(bag, player_named("barnaby"), range(len(bag.shots))), bag.strikes)


def test_another_short_game_is_that_of_his_own_bag() -> None:
    """Part swings, chips and putts read off this bag's flights, or tabled for the other player: the same strikes."""
    from simulator.tables.bag import make_bag

    player, board = player_named("barnaby"), demo_board("withy-drain", "barnaby")
    part, putting, bag = player.part, player.putting, board.bag
    wide = replace(part, direction_sd_deg=1.1 * part.direction_sd_deg, mishit_rate=1.3 * part.mishit_rate)
    other = replace(player, part=wide, putting=replace(putting, angle_sd_deg=1.3 * putting.angle_sd_deg))
    rows = [k for k, shot in enumerate(bag.shots.shots) if shot.flight in ("part", "punch", "putt")]
    ours = varied_strikes(bag, other, rows)
    assert ours[rows] == pytest.approx(make_bag(other, None, board.raster, THREADS).strikes[rows], rel=1e-9)
    assert all(not np.allclose(ours[k], bag.strikes[k]) for k in rows)
    longer = replace(part, distance_sd_pct=1.1 * part.distance_sd_pct)  # a table of his own would reach farther
    loose = replace(player, part=longer, putting=replace(putting, distance_sd=1.3 * putting.distance_sd))
    sd = varied_strikes(bag, loose, rows)[:, int(Lie.FAIRWAY), c.STRIKE_SD] / bag.strikes[:, int(Lie.FAIRWAY), c.STRIKE_SD]
    pace = math.hypot(1.3 * putting.distance_sd, GRASS_SD) / math.hypot(putting.distance_sd, GRASS_SD)
    for k in rows:
        assert sd[k] == pytest.approx(pace if bag.shots.shots[k].flight == "putt" else 1.1), bag.shots.shots[k].flight


def test_a_longer_and_wider_player_needs_no_new_flights() -> None:
    """Read further along the same flight table, or flown anew with his own carries: the same strokes."""
    player = player_named("barnaby")
    clubs = tuple(wider(replace(one, carry_yd=1.06 * one.carry_yd, mishit_rate=0.2), 1.2) for one in player.clubs)
    other = replace(player, clubs=clubs)
    board = demo_board("withy-drain", "barnaby")
    from simulator.tables.bag import make_bag

    anew = make_bag(other, None, board.raster, THREADS)
    flown = replace(board, game=board.game._replace(strikes=anew.strikes, flights=anew.flights.packed))
    read = plausible.with_strikes(board, varied_strikes(board.bag, other))
    for row, aim in ((0, -0.05), (1, -0.03), (5, 0.0)):
        action = np.array([row, aim, 0.0])
        one, two = (value_of(tee(b), action, 5.4) for b in (flown, read))
        # the same strikes: what is left is the launch, that of a faster swing or of a fuller strike
        assert one == pytest.approx(two, abs=0.012)


def test_the_plan_held_for_the_same_player_is_worth_what_the_map_says() -> None:
    board = demo_board("eel-trap", "isolde")
    held = revalue_map(board, hold_plan(board, board, seed=SEED + 50), threads=THREADS)
    place = tee(board)
    choice = search(place, SEED, board.allowed(place.lie), keep_within=0.3, keep_most=2)[0]
    # other strikes value every node: 256 at each, smoothed over many nodes
    assert value_of(tee(held), choice.action, 3.2) == pytest.approx(
        value_of(place, choice.action, 3.2), abs=0.015
    )


def test_a_place_nobody_comes_to_keeps_its_value_where_no_strikes_are_asked_for_it() -> None:
    board, player = demo_board("eel-trap", "isolde"), player_named("isolde")
    worse = replace(player, clubs=tuple(wider(club, 1.4) for club in player.clubs))
    near = np.array([[x, y, float(Lie.ROUGH)] for x in (-8.0, 8.0) for y in (140.0, 150.0)])
    held = hold_plan(board, board, seed=SEED, places=near, effort=Effort(many=32, again=0, least=4, unseen=0))
    theirs = plausible.with_strikes(board, varied_strikes(board.bag, worse))
    field, place = revalue_map(theirs, held).game.field, board.nodes.place
    anew = np.array([(field.coarse, field.fine)[one[0]][tuple(one[1:])] for one in place])
    moved = np.abs(anew - held.known)
    valued = held.rows[:, 8] > 0.0
    assert valued.sum() == 8  # the corners about four places
    sharpened = 2.0 * 0.125 * CLIFF_STROKES  # all that a reading of old values is moved by, over both axes
    assert moved[~valued].max() <= sharpened < moved[valued].max()


def test_nothing_is_gained_by_holding_a_plan() -> None:
    """A worse player on the held plan scores no better than on a plan of his own, and not much worse."""
    hole, player = load_hole("eel-trap"), player_named("isolde")
    other = replace(player, clubs=tuple(wider(club, 1.4) for club in player.clubs))
    board = demo_board("eel-trap", "isolde")
    strikes = varied_strikes(board.bag, other)
    held = revalue_map(
        plausible.with_strikes(board, strikes), hold_plan(board, board, seed=SEED), threads=THREADS
    )
    own = solved(hole, other)
    action = search(tee(own), SEED, own.allowed(0), keep_within=0.3, keep_most=2)[0].action
    best, kept = value_of(tee(own), action, 3.4), value_of(tee(held), action, 3.4)
    assert best - 0.01 < kept < best + 0.05


def test_a_player_known_exactly_leaves_no_doubt() -> None:
    player = player_named("barnaby")
    exact = replace(player, clubs=tuple(replace(club, doubt=EXACT) for club in player.clubs))
    answer = compare(load_hole("withy-drain"), exact, ["driver", "3-wood"], sequences=20_000, threads=THREADS)
    behind = answer.alternatives[1].difference  # the answer's own error is left, and nothing else
    least = norm.cdf((behind.value - EVEN_STROKES) / behind.standard_error)
    scatter = np.sqrt(least * (1.0 - least) / 200)
    assert answer.confidence is not None and answer.confidence.best_share >= least - 4.0 * scatter
    assert answer.confidence.best_share >= 0.9
    assert answer.verdict == "clear"
    assert sum(answer.confidence.shares) == pytest.approx(1.0)
    whats = [flip.what for flip in answer.flips]
    assert whats[:4] == ["driver_spread", "driver_carry", "wind_along", "wind_across"]
    spread = answer.flips[0]  # the driver leads to more water: only a tighter one can win
    assert spread.amount is not None and spread.amount < 1.0 and spread.to == 1


def test_what_would_turn_the_answer_is_worked_out_where_it_is_wanted(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever decides sees all the rest of the answer first. Both answers read one map."""
    one_map_for_one_place(monkeypatch)
    seen: list[Answer] = []

    def wanted(answer: Answer) -> bool:
        seen.append(answer)
        return len(seen) == 2

    hole, player, clubs = hole_named("eel-trap"), player_named("isolde"), ["6-iron", "7-iron"]
    without, with_ = (
        compare(hole, player, clubs, sequences=500, threads=THREADS, turns=wanted) for _ in range(2)
    )
    assert without.flips == () and with_.flips
    assert seen[0].confidence == without.confidence == with_.confidence is not None
    assert with_.to_dict() | {"flips": [], "seconds": 0} == without.to_dict() | {"seconds": 0}


def test_quick_is_quick(monkeypatch: pytest.MonkeyPatch) -> None:
    one_map_for_one_place(monkeypatch)
    hole, player, clubs = hole_named("eel-trap"), player_named("isolde"), ["6-iron", "7-iron"]
    answer = compare(hole, player, clubs, sequences=500, threads=THREADS, quick=True)
    assert answer.confidence is None and answer.flips == () and answer.verdict == "clear"
    assert answer.to_dict()["confidence"] is None and answer.to_dict()["flips"] == []


def resolved(name: str, who: str, clubs: list[str], count: int) -> tuple[np.ndarray, np.ndarray]:
    """Strokes the second club is behind the first: by our method and by solving everything anew, each draw."""
    hole, player = load_hole(name), player_named(who)
    board = demo_board(name, who)

    def values(place, who):
        shots = place.board.bag.shots
        wanted = [asked_club(who, text, shots) for text in clubs]
        found = find_choices(place, SEED, wanted)
        choices = found.choices[: len(clubs)]
        return choices, np.array([value_of(place, c.action, found.value) for c in choices]), found.value

    choices, strokes, value = values(tee(board), player)
    again = rescore(tee(board), hole, player, choices, (False,) * 2, strokes - strokes[0], value, SEED)
    players = plausible_players(player, max(count, plausible.SOLVED), SEED)
    maps = plausible.revalued_maps(
        tee(board), players[: plausible.SOLVED], player, SEED, balls=again.balls, nodes=again.nodes
    )
    ours = plausible.plausible_behind(again, players, maps)[:count, 1]
    theirs = []
    for one in players[:count]:
        _, strokes, _ = values(tee(solved(hole, one)), one)
        theirs.append(strokes[1] - strokes[0])
    return ours, np.array(theirs)


@pytest.mark.parametrize(("name", "clubs", "at", "lie"), [
    ("eel-trap", ("6-iron", "7-iron"), (), None),
    ("withy-drain", ("putter", "pitch"), (21.4, 386.0), Lie.FAIRWAY),
    ("eel-trap", ("chip", "pitch"), (0.0, 142.0), Lie.ROUGH),
])  # fmt: skip
def test_players_whose_first_shots_are_not_scored_are_read_off_the_others(
    name: str, clubs: tuple[str, str], at: tuple[float, float], lie: Lie | None
) -> None:
    """All 200 scored, against 72 and what differs between them: off by three tenths at the most of what the players
    differ by, half of that the scatter that is dealt out, which keeps what they differ by as wide as it is. Five
    boards came to a tenth or two (0.002 to 0.016 strokes)."""
    player, board = player_named("isolde"), demo_board(name, "isolde")
    place = tee(board) if lie is None else Place(board, *at, int(lie), THREADS)
    wanted = [asked_club(player, text, board.bag.shots) for text in clubs]
    found = find_choices(place, SEED, wanted)
    again = rescore(
        place, load_hole(name), player, found.choices[: len(clubs)], (False, lie is None), np.zeros(2), found.value, SEED
    )
    players = plausible_players(player, plausible.DRAWS, SEED)
    scored = np.array([
        again.strokes(
            plausible.with_strikes(board, varied_strikes(board.bag, plausible.aimed_off(one, player), again.rows)),
            turns_deg=(0.0,), turned_deg=plausible.turned_right_deg(again, one), strikes=64,
        )
        for one in players
    ])  # fmt: skip
    features = plausible.shot_features(again, players)
    told = plausible.for_all(scored[: plausible.SCORED], features, SEED)
    assert np.array_equal(told[: plausible.SCORED], scored[: plausible.SCORED])
    off = np.sqrt(np.mean((told - scored)[plausible.SCORED :] ** 2, axis=0))
    assert (off < 0.3 * scored.std(axis=0)).all() and (off > 0.0).all()
    assert told.std(axis=0) == pytest.approx(scored.std(axis=0), rel=0.1)
    assert np.array_equal(plausible.for_all(scored, features, SEED), scored)


def test_the_short_game_is_in_doubt_where_one_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    """Twenty yards out a chip is weighed for players who chip otherwise; from the tee they all chip as he does."""
    player, board = player_named("isolde"), demo_board("eel-trap", "isolde")
    seen: list[tuple[Player, ...]] = []
    monkeypatch.setattr(plausible, "plausible_players", lambda *a, **b: seen.append(plausible_players(*a, **b)) or seen[-1])
    for place, clubs in ((tee(board), ("6-iron", "7-iron")), (Place(board, 0.0, 142.0, int(Lie.ROUGH), THREADS), ("chip", "pitch"))):
        found = find_choices(place, SEED, [asked_club(player, text, board.bag.shots) for text in clubs])
        again = rescore(place, load_hole("eel-trap"), player, found.choices[:2], (False,) * 2, np.zeros(2), found.value, SEED)
        plausible.confidence(again, np.zeros(2), form=plausible.BRIEF)
    from_tee, by_the_green = ({one.chipping for one in players} for players in seen)
    assert from_tee == {player.chipping} and len(by_the_green) > 100
    assert [one.clubs for one in seen[0]] == [one.clubs for one in seen[1]]


def test_a_few_players_solved_anew() -> None:
    ours, theirs = resolved("eel-trap", "isolde", ["6-iron", "7-iron"], 2)
    # the method's own scatter over 100 draws is 0.02 to 0.03 strokes, against 0.1 between the players
    assert np.abs(ours - theirs).max() < 0.09


@pytest.mark.slow
@pytest.mark.parametrize(
    "hole, player, clubs",
    [
        ("withy-drain", "barnaby", ["3-wood", "driver"]),
        ("eel-trap", "isolde", ["6-iron", "7-iron"]),
        ("long-sluice", "isolde", ["3-wood", "driver"]),
    ],
)
def test_a_hundred_players_solved_anew(hole: str, player: str, clubs: list[str]) -> None:
    """The same hundred players, each with map and search of his own: the probability within 0.05."""
    ours, theirs = resolved(hole, player, clubs, 100)
    shares = [np.where(np.abs(one) <= 0.01, 0.5, one > 0.0).mean() for one in (ours, theirs)]
    assert shares[0] == pytest.approx(shares[1], abs=0.05)


@pytest.mark.slow
def test_beyond_each_turning_point_the_answer_is_another() -> None:
    """Asked anew in full a good way past each, the other club leads; a good way before it, it does not."""
    hole, player, clubs = load_hole("eel-trap"), player_named("isolde"), ["6-iron", "7-iron"]
    flips = {flip.what: flip for flip in compare(hole, player, clubs, sequences=2000, seed=SEED).flips}

    def behind(player=player, wind: float = 0.0) -> float:
        blows = Wind(abs(wind), 180.0 if wind > 0.0 else 0.0) if wind else None
        asked = compare(
            hole, player, clubs, conditions=Conditions(wind=blows), sequences=2000, seed=SEED, quick=True
        )
        scores = {one.club: one.score.value for one in asked.alternatives}
        return scores["7-iron"] - scores["6-iron"]

    wind = flips["wind_along"].amount
    assert wind is not None and behind(wind=2.0 * wind) < 0.0 < behind(wind=0.5 * wind)
    spread, carry = flips["driver_spread"], flips["driver_carry"]
    assert spread.name == carry.name == "6-iron"
    for flip, change in (
        (spread, lambda club, share: wider(club, spread.amount**share)),
        (carry, lambda club, share: replace(club, carry_yd=club.carry_yd + share * carry.amount)),
    ):
        assert flip.amount is not None and flip.to == 1
        for share in (0.6, 1.5):
            others = tuple(change(c, share) if c.name == "6-iron" else c for c in player.clubs)
            assert (behind(replace(player, clubs=others)) > 0.0) == (share < 1.0), (flip, share)


def test_an_edge_nobody_measured_well_makes_the_answer_less_sure() -> None:
    """The drain's near edge known to 10 yards only: it parts the clubs, and may lie where the 3-wood goes."""
    hole, player = load_hole("withy-drain"), player_named("isolde")
    clubs = tuple(replace(club, doubt=EXACT) for club in player.clubs)
    blurred = tuple(replace(f, edge_sd_yd=10.0) if f.name == "withy drain" else f for f in hole.features)
    shares = []
    for one in (hole, replace(hole, features=blurred)):
        answer = compare(one, replace(player, clubs=clubs), ["driver", "3-wood"], sequences=500, threads=THREADS,
                         turns=never)  # fmt: skip
        assert answer.confidence is not None
        shares.append(answer.confidence.best_share)
    assert shares[1] < shares[0]


def test_even_players_share_and_the_rest_are_counted() -> None:
    behind = np.array([[0.0, 0.2, 0.3], [0.005, 0.0, 0.3], [0.3, 0.2, 0.0], [0.1, 0.0, 0.5]])
    assert plausible.won_by(behind) == pytest.approx([0.375, 0.375, 0.25])
    assert plausible.won_by(behind + 7.0) == pytest.approx(plausible.won_by(behind))


def test_the_error_of_a_share_counts_the_error_of_the_lead() -> None:
    """A lead known to 0.05 strokes leaves the share of close players more in doubt than one known exactly."""
    board, player = demo_board("eel-trap", "isolde"), player_named("isolde")
    choices = search(tee(board), SEED, board.allowed(0), keep_within=0.6, keep_most=2)
    known = np.array([0.0, 0.05])
    again = rescore(tee(board), load_hole("eel-trap"), player, choices, (False, False), known, choices[0].score, SEED)
    exact, vague = (plausible.confidence(again, np.array(e)) for e in ((0.0, 0.0), (0.0, 0.05)))
    draws = np.sqrt(exact.shares[0] * (1.0 - exact.shares[0]) / plausible.DRAWS)
    assert exact.shares_standard_error[0] == pytest.approx(max(draws, 0.005), abs=1e-3)
    assert vague.shares_standard_error[0] > 2.0 * exact.shares_standard_error[0]
