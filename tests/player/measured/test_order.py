"""Carries that few shots put in an order no bag can hold."""

from dataclasses import replace

import numpy as np
import pytest
from made import level_club, shots_of

from simulator.errors import SimulatorError, UsageError
from simulator.player import load_player
from simulator.player.levels import STANDARD_SET, level
from simulator.player.measured import fit_player, player_text
from simulator.player.measured.order import APART_YD, in_order


def read_back(fit, tmp_path):
    path = tmp_path / "me.toml"
    path.write_text(player_text(fit, "Pat", "shots.csv"), encoding="utf-8")
    return load_player(path)


@pytest.mark.parametrize("shots", [1, 4, 10])
def test_a_whole_bag_with_few_shots_makes_a_file_that_can_be_read(shots, tmp_path):
    """Neighbours 10 yd apart, 4 shots that scatter by 12 yd each: half of such bags were refused, by the fit or,
    worse, by whoever read the file it had written."""
    for seed in range(4):
        rng = np.random.default_rng([shots, seed])
        handicap = (5.0, 20.0, 36.0)[seed % 3]
        clubs = {name: shots_of(level_club(name, handicap), shots, rng) for name in STANDARD_SET}
        fit = fit_player(clubs, level(handicap))
        carries = [one.numbers["carry_yd"] for one in fit.clubs]
        assert (np.diff(carries) <= -APART_YD + 1e-6).all()
        irons = [one.club for one in fit.clubs if "iron" in one.club]
        assert irons == sorted(irons)
        player = read_back(fit, tmp_path)
        assert [club.name for club in player.clubs] == [one.club for one in fit.clubs]


def test_two_clubs_of_one_carry_are_held_apart(tmp_path):
    club = level_club("7-iron", 12)
    shots = shots_of(club, 500, np.random.default_rng(9))
    fit = fit_player({"7-iron": shots, "8-iron": replace(shots, club="8-iron")}, level(12))
    assert [one.club for one in fit.clubs] == ["7-iron", "8-iron"]
    longer, shorter = (one.numbers["carry_yd"] for one in fit.clubs)
    assert longer - shorter == pytest.approx(APART_YD)
    seen = [one.seen["carry_yd"] for one in fit.clubs]
    assert 0.5 * APART_YD < seen[0] - seen[1] < 1.5 * APART_YD  # the picture draws the same
    assert (longer + shorter) / 2 == pytest.approx(club.carry_yd, rel=0.02)
    assert set(fit.by_loft) == {"7-iron", "8-iron"}
    assert len(read_back(fit, tmp_path).clubs) == 13


def test_swapped_names_are_refused():
    rng = np.random.default_rng(10)
    seven, eight = (shots_of(level_club(name, 12), 60, rng) for name in ("7-iron", "8-iron"))
    swapped = {"7-iron": replace(eight, club="7-iron"), "8-iron": replace(seven, club="8-iron")}
    with pytest.raises(UsageError, match=r"8-iron carries .* more loft carries less") as error:
        fit_player(swapped, level(12))
    assert "\n" not in str(error.value)


def test_a_wood_that_surely_carries_farther_than_a_stronger_one_stays(tmp_path):
    """A slow swing carries a 5-wood farther than a 3-wood (common practice)."""
    rng = np.random.default_rng(11)
    club = level_club("5-wood", 25)
    shots = {name: shots_of(replace(club, name=name, kind=name, carry_yd=carry), 80, rng)
             for name, carry in (("3-wood", 128.0), ("5-wood", 140.0))}  # fmt: skip
    fit = fit_player(shots, level(25))
    assert [one.club for one in fit.clubs] == ["5-wood", "3-wood"]
    assert fit.clubs[0].numbers["carry_yd"] > fit.clubs[1].numbers["carry_yd"] + 5
    assert fit.by_loft == ()
    names = [one.name for one in read_back(fit, tmp_path).clubs]
    assert names.index("5-wood") < names.index("3-wood")


def test_the_better_known_carry_moves_less():
    kinds = {"7-iron": "7-iron", "8-iron": "8-iron", "driver": "driver"}
    found, moved = in_order(
        kinds,
        {"7-iron": 130.0, "8-iron": 134.0, "driver": 210.0},
        {"7-iron": 1.0, "8-iron": 3.0, "driver": 5.0},
    )
    # least squares by hand: 4.5 yd to part, in proportion to the variances 1 and 9
    assert found["7-iron"] == pytest.approx(130.0 + 4.5 / 10)
    assert found["8-iron"] == pytest.approx(134.0 - 4.5 * 9 / 10)
    assert found["driver"] == 210.0 and set(moved) == {"7-iron", "8-iron"}


def test_what_could_not_be_read_back_is_not_written():
    """A driver that carries less than the 7-iron leaves no room for the woods between; 14 clubs fill no bag."""
    rng = np.random.default_rng(12)
    shots = {name: shots_of(replace(level_club(name, 18), carry_yd=carry), 40, rng)
             for name, carry in (("driver", 90.0), ("7-iron", 140.0))}  # fmt: skip
    with pytest.raises(SimulatorError, match=r"of shots\.csv: club") as error:
        player_text(fit_player(shots, level(18)), "Pat", "shots.csv")
    assert "\n" not in str(error.value)
    names = (*STANDARD_SET, "4-iron")
    many = {name: shots_of(level_club(name, 18), 40, rng) for name in names}
    with pytest.raises(UsageError, match="14 clubs were measured and a bag holds 13"):
        player_text(fit_player(many, level(18)), "Pat", "shots.csv")
