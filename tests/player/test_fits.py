"""The fitted files say where they are from, hold what is read, and their curves are monotone."""

import itertools
import tomllib
from importlib import resources

import numpy as np
import pytest

from simulator.fits.bench import amateurs, tour
from simulator.fits.bench.solver import fit_bounded
from simulator.fits.tables import write_table
from simulator.physics.lies import EFFECTS, FITTED, effects
from simulator.player.curves import drive_total_yd, fitted_curves
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
        assert (b.part.direction_sd_deg >= a.part.direction_sd_deg - 1e-9).all()
        assert (b.part.distance_sd_pct >= a.part.distance_sd_pct - 1e-9).all()


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


def test_fitted_numbers_lie_where_the_fit_looks_for_them():
    curves, lies = fitted_curves(), stored("physics", "lies.toml")
    first, last = curves.handicap.index(amateurs.ANCHORS[0]), curves.handicap.index(amateurs.ANCHORS[-1])
    rate, spread = (np.array(getattr(curves, name)[first : last + 1]) for name in ("mishit_rate", "spread_scale"))
    found = [rate[0], *np.diff(rate), spread[0], *np.diff(spread)]
    found += [curves.short_power[last], curves.mishit_loss_pct, curves.short_loss_pct]
    of_tour = {name: np.atleast_1d(getattr(curves, name))[0] for name in tour.SKILL} | lies
    of_tour |= stored("tables", "holing_out.toml")
    pairs = [*zip(found, amateurs.ASSUMED.values(), strict=True)]
    pairs += [(of_tour[name], bounds) for name, bounds in tour.ASSUMED.items()]
    for number, (low, plausible, high) in pairs:
        assert low < plausible < high
        assert low - 1e-4 <= number <= high + 1e-4


def test_a_fit_is_pulled_to_what_is_plausible():
    # The closed form of ridge regression: (A'A + P'P) x = A'b + P'P plausible, P the pull over each width.
    slopes = np.array([[2.0, 1.0, 0.0], [1.0, -1.0, 0.0], [0.5, 3.0, 0.0]])
    wanted = np.array([3.0, 0.2, 4.0])
    assumed = {"a": (0.0, 1.0, 4.0), "b": (0.0, 0.5, 2.0), "untold": (-1.0, 0.7, 1.0)}
    low, plausible, high = np.array(list(assumed.values())).T
    weight = np.diag((1.5 / (high - low)) ** 2)
    ridge = np.linalg.solve(slopes.T @ slopes + weight, slopes.T @ wanted + weight @ plausible)
    assert ((ridge > low) & (ridge < high)).all()
    for jagged, within in ((False, 2e-3), (True, 5e-3)):
        fit = fit_bounded(lambda x: slopes @ x - wanted, assumed, pull=1.5, steps=50, jagged=jagged)
        assert fit.x == pytest.approx(ridge, abs=within)
        assert fit.x[2] == pytest.approx(0.7, abs=1e-6 if not jagged else within)  # nothing tells it: it stays


def test_a_jagged_misfit_is_tried_on_without_slopes():
    """Steps as high as a player's choices make them: least squares stops far from the least, where no step pays."""

    def misses(x):
        return np.array([3.0 * (x[0] - 1.3), 2.0 * (x[1] + 0.4)]) + 0.15 * np.sign(np.sin(90.0 * x))

    assumed = {"a": (0.0, 0.5, 2.0), "b": (-1.0, 0.6, 1.0)}
    plain, on = (fit_bounded(misses, assumed, 0.0, 30, jagged=jagged) for jagged in (False, True))
    assert on.misfit < 0.7 * plain.misfit and on.nfev > plain.nfev
    assert on.x == pytest.approx([1.3, -0.4], abs=0.1)


def test_write_table_round_trip(tmp_path):
    write_table(tmp_path / "t.toml", {"script": "x"}, {"a": [1.0, 2.5], "b": 3.25})
    found = tomllib.loads((tmp_path / "t.toml").read_text(encoding="utf-8"))
    assert found == {"script": "x", "a": [1, 2.5], "b": 3.25}
    assert [p.name for p in tmp_path.iterdir()] == ["t.toml"]
