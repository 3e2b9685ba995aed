"""The fitted files say where they are from, hold what is read, and their curves are monotone."""

import itertools
import tomllib
from importlib import resources

import numpy as np
import pytest

from simulator.fits.bench.amateurs import BOUNDS, start_of, unpacked
from simulator.fits.tables import read_table, write_table
from simulator.physics.lies import EFFECTS, FITTED, effects
from simulator.player.curves import CURVES, drive_total_yd, fitted_curves
from simulator.player.levels import level


def stored(package, name):
    return tomllib.loads(resources.files(f"simulator.{package}").joinpath(name).read_text(encoding="utf-8"))


@pytest.mark.parametrize(
    ("package", "name"),
    [("player", "levels.toml"), ("physics", "lies.toml"), ("physics", "slow_woods.toml"), ("tables", "holing_out.toml")],
)
def test_file_is_stamped(package, name):
    file = stored(package, name)
    assert file["script"].startswith("python -m simulator.fits.") and file["inputs"] and file["date"]


def test_lies_are_those_of_the_file():
    file = stored("physics", "lies.toml")
    assert set(FITTED) <= set(file)
    assert effects(file) == EFFECTS


@pytest.mark.parametrize("sex", ["man", "woman"])
def test_weaker_players_are_worse_in_everything(sex):
    rows = [level(h, sex) for h in np.arange(-5.0, 54.5, 0.5)]
    for a, b in itertools.pairwise(rows):
        assert b.mishit_rate >= a.mishit_rate
        assert b.driver_carry_yd * (1 - b.mishit_rate * b.mishit_loss_pct / 100) < a.driver_carry_yd * (
            1 - a.mishit_rate * a.mishit_loss_pct / 100
        )
        one, two = (who.spread("7-iron", 120.0, 200.0) for who in (a, b))
        assert two["direction_sd_deg"] >= one["direction_sd_deg"] - 1e-9
        assert two["distance_sd_pct"] >= one["distance_sd_pct"] - 1e-9
        # Chips may be level for a while: the short game's power falls while its base rises.
        assert (b.part.direction_sd_deg >= 0.995 * a.part.direction_sd_deg).all()


def test_women_are_shorter_and_wider_at_a_length():
    for handicap in (-5.0, 0.0, 10.0, 24.0, 36.0):
        man, woman = level(handicap), level(handicap, "woman")
        assert woman.driver_carry_yd < man.driver_carry_yd
        assert drive_total_yd(handicap, "woman") < drive_total_yd(handicap, "man")
        assert woman.spread("7-iron", 130.0, 200.0)["direction_sd_deg"] >= man.spread("7-iron", 130.0, 200.0)["direction_sd_deg"]


def test_unknown_sex():
    with pytest.raises(ValueError, match="man or woman"):
        level(10.0, "x")


def test_a_part_swing_is_never_tighter_than_a_full_one_of_its_carry():
    for handicap in (-5.0, 0.0, 18.0, 36.0, 54.0):
        who = level(handicap)
        for carry in (40.0, 60.0, 80.0, 95.0):
            full, part = who.spread("sand wedge", carry, who.driver_carry_yd), who.part.at(carry)
            assert part.direction_sd_deg > 0.97 * full["direction_sd_deg"]
            assert part.distance_sd_pct > 0.97 * full["distance_sd_pct"]


def test_numbers_of_the_fit_round_trip():
    curves = fitted_curves()
    again = unpacked(start_of(curves), curves)
    for name in CURVES:
        assert getattr(again, name) == pytest.approx(getattr(curves, name), abs=2e-3)
    low, high = np.array(list(BOUNDS.values())).T
    assert ((start_of(curves) >= low - 1e-3) & (start_of(curves) <= high + 1e-3)).all()


def test_write_table_round_trip(tmp_path):
    write_table(tmp_path / "t.toml", {"script": "x"}, {"a": [1.0, 2.5], "b": 3.25})
    assert read_table(tmp_path / "t.toml") == {"script": "x", "a": [1, 2.5], "b": 3.25}
    assert [p.name for p in tmp_path.iterdir()] == ["t.toml"]
