"""Balls of the game, measured and fitted: the game lands those of the written player where they came from."""

from dataclasses import asdict

import numpy as np
import pytest
from made import level_club
from small_games import player_of, straight_hole, tell

from simulator.engine import play
from simulator.hole.surfaces import Lie
from simulator.player import load_player
from simulator.player.levels import level
from simulator.player.measured import fit_player, player_text
from simulator.player.measured.landed import landed, struck
from simulator.player.measured.shots import Shots
from simulator.player.model import CLUB_NUMBERS
from simulator.tables.bag import make_bag
from simulator.tables.game import make_board

BALLS = 10_000
FLAT = straight_hole(
    640, par=5, more="fairway = [{ from_yd = -40, to_yd = 900, left_yd = -250, right_yd = 250 }]\n"
)
CLUBS = {"driver": Lie.TEE, "7-iron": Lie.FAIRWAY}  # clean lies


def shots_of_the_game(player, name):
    """Carries straight from the ball, as a launch monitor has them, and sides."""
    board = make_board(FLAT, make_bag(player, threads=2, shaped=False), coarse_yd=120, fine_yd=100)
    row = next(k for k, shot in enumerate(board.bag.shots.shots) if shot.club.name == name)
    action, home = np.array([float(row), 0.0, 0.0]), np.zeros(3)
    found = play(
        board,
        0.0,
        0.0,
        int(CLUBS[name]),
        action,
        home,
        5.0,
        seed=3,
        sequences=BALLS,
        threads=2,
        most_strokes=1,
    )
    x, y = found.landing_yd.T
    return Shots(name, np.hypot(x, y), x, None)


def test_a_fitted_player_lands_balls_where_they_were_measured(tmp_path):
    """25 handicap. A driver came down 2.0 yd short and all patterns 5 % too narrow, while a curving ball's
    loss of carry and turn was taken twice: once measured, once by the game."""
    player = player_of("handicap = 25\n[club.driver]\nbias_right_deg = 3\n")
    before = {name: shots_of_the_game(player, name) for name in CLUBS}
    path = tmp_path / "me.toml"
    path.write_text(player_text(fit_player(before, level(25)), "Pat", "shots.csv"), encoding="utf-8")
    again = load_player(path)
    for name, was in before.items():
        now = shots_of_the_game(again, name)
        tell(f"{name}: {was.carry_yd.mean():.2f}, {now.carry_yd.mean():.2f} yd; "
             f"{was.direction_deg.std():.3f}, {now.direction_deg.std():.3f} deg")  # fmt: skip
        # 0.2 yd and 0.7 % are the errors of so many balls; the table of curving balls' loss (`runs.toml`) has the
        # driver's 0.8 yd too large
        assert now.carry_yd.mean() == pytest.approx(was.carry_yd.mean(), abs=1.2)
        assert now.direction_deg.std() == pytest.approx(was.direction_deg.std(), rel=0.02)
        assert now.direction_deg.mean() == pytest.approx(was.direction_deg.mean(), abs=0.25)
        for share in (0.1, 0.5, 0.9):
            assert np.quantile(now.carry_yd, share) == pytest.approx(
                np.quantile(was.carry_yd, share), abs=2.0
            )


@pytest.mark.parametrize("name", ["driver", "3-wood", "7-iron", "sand wedge"])
@pytest.mark.parametrize("handicap", [0.0, 20.0, 45.0])
def test_struck_undoes_landed(name, handicap):
    club = level_club(name, handicap)
    numbers = {key: asdict(club)[key] for key in CLUB_NUMBERS}
    seen = landed(name, numbers)
    assert seen["carry_yd"] < numbers["carry_yd"]
    ratio = numbers["mishit_distance_sd_pct"] / numbers["distance_sd_pct"]
    back = struck(name, seen, ratio, numbers["mishit_direction_factor"])
    for key, value in numbers.items():
        assert back[key] == pytest.approx(value, rel=0.001, abs=1e-9), key


def test_a_direction_is_of_the_straight_carry():
    """A carry of 100 yards that comes down 50 to the right went 30 degrees off: sin 30 = 1/2."""
    shots = Shots("7-iron", np.array([100.0, 20.0, 0.0]), np.array([50.0, -30.0, 0.0]), None)
    np.testing.assert_allclose(shots.direction_deg, [30.0, -90.0, 0.0], atol=1e-9)
