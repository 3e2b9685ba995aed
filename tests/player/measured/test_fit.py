"""Players with known numbers, refitted from their shots."""

import numpy as np
import pytest
from made import CLUBS, drawn_clubs, level_club, shots_of

from simulator.errors import UsageError
from simulator.player.habits import MISS_SD
from simulator.player.levels import level
from simulator.player.measured import fit_player
from simulator.player.measured.fit import BEFORE
from simulator.player.measured.likelihood import SLIP, Club, log_likelihood

EIGHT_IN_TEN = 1.2816
FIELDS = {  # field of the club, scale, part of the doubt
    "carry_yd": (np.log, "carry_pct"),
    "direction_sd_deg": (np.log, "direction_log"),
    "distance_sd_pct": (np.log, "distance_log"),
    "bias_right_deg": (float, "bias_right_deg"),
    "mishit_rate": (lambda p: np.log(p / (1 - p)), "mishit_logit"),
}


def refitted(handicap, shots, rng, names=CLUBS):
    """For one drawn player: error and stated standard deviation of every number, by field."""
    clubs = drawn_clubs(handicap, rng, names)
    fit = fit_player({c.name: shots_of(c, shots, rng) for c in clubs}, level(handicap))
    out = {field: [] for field in FIELDS}
    for one in fit.clubs:
        truth = next(c for c in clubs if c.name == one.club)
        for field, (scale, part) in FIELDS.items():
            sd = getattr(one.doubt, part) / (100.0 if part == "carry_pct" else 1.0)
            out[field].append((scale(one.numbers[field]) - scale(getattr(truth, field)), sd))
    return out


def gathered(players, shots, seed, names=CLUBS):
    rng = np.random.default_rng(seed)
    rows = {field: [] for field in FIELDS}
    done = 0
    while done < players:
        try:
            one = refitted(float(rng.uniform(0, 30)), shots, rng, names)
        except UsageError:  # two clubs of one carry: such a draw is no bag
            continue
        done += 1
        for field in FIELDS:
            rows[field] += one[field]
    return {field: np.array(values) for field, values in rows.items()}


def test_gradient_of_the_likelihood():
    """Against central differences of the value."""
    rng = np.random.default_rng(3)
    club = level_club("6-iron", 12)
    shots = shots_of(club, 40, rng)
    data = Club(shots.carry_yd, shots.direction_deg, 1.5, 1.4, club.carry_yd)
    x = np.array([np.log(club.carry_yd) + 0.02, 0.4, np.log(4.0), np.log(0.08), -1.5, np.log(0.2)])
    _, gradient = log_likelihood(x, data)
    for k in range(len(x)):
        step = np.zeros(len(x))
        step[k] = 1e-5
        slope = (log_likelihood(x + step, data)[0] - log_likelihood(x - step, data)[0]) / 2e-5
        assert gradient[k] == pytest.approx(slope, rel=1e-5, abs=1e-5)


def test_likelihood_against_scipy():
    """The mixture's density from scipy.stats normals, row by row."""
    from scipy.stats import norm

    club = Club(np.array([140.0, 118.0, 30.0]), np.array([1.0, -4.0, 20.0]), 1.5, 1.4, 140.0)
    x = np.array([np.log(142.0), 0.4, np.log(4.0), np.log(0.08), -1.5, np.log(0.2)])
    p = 1 / (1 + np.exp(1.5))
    solid = norm.pdf(club.carry_yd, 142.0, 142.0 * 0.08) * norm.pdf(club.direction_deg, 0.4, 4.0)
    missed = norm.pdf(club.carry_yd, 142.0 * 0.8, 142.0 * 0.12) * norm.pdf(club.direction_deg, 0.4, 5.6)
    slip = 1 / (1.5 * 140.0 * 90.0)
    expected = np.log((1 - SLIP) * ((1 - p) * solid + p * missed) + SLIP * slip).sum()
    assert log_likelihood(x, club)[0] == pytest.approx(expected, rel=1e-12)


def test_a_thousand_shots_find_the_numbers():
    rows = gathered(4, 1000, 11)
    # 20 clubs: the mean error lies within four stated standard errors of nothing
    for field, values in rows.items():
        error, sd = values.T
        assert abs(error.mean()) < 4 * np.sqrt((sd**2).mean() / len(error)), field
    assert np.abs(rows["carry_yd"][:, 0]).max() < 0.02
    assert np.abs(rows["direction_sd_deg"][:, 0]).max() < 0.12


def test_few_shots_lean_on_the_level():
    rng = np.random.default_rng(5)
    club = level_club("7-iron", 10)
    one = {n: fit_player({"7-iron": shots_of(club, n, rng)}, level(10)).clubs[0] for n in (1, 10, 300)}
    learnt = [one[n].learnt["direction_log"] for n in (1, 10, 300)]
    assert learnt[0] < 0.1 < learnt[1] < 0.7 < learnt[2]
    assert one[1].numbers["direction_sd_deg"] == pytest.approx(club.direction_sd_deg, rel=0.1)


def test_one_club_teaches_another():
    """A player whose seven clubs are all wide: the eighth, with three shots, is wider than the level too."""
    rng = np.random.default_rng(6)
    from dataclasses import replace

    names = ("driver", "3-wood", "5-iron", "6-iron", "7-iron", "9-iron", "sand wedge")
    wide = [replace(c, direction_sd_deg=1.4 * c.direction_sd_deg) for c in (level_club(n, 10) for n in names)]
    few = shots_of(level_club("8-iron", 10), 3, rng)
    shots = {c.name: shots_of(c, 200, rng) for c in wide}
    alone = fit_player({"8-iron": few}, level(10)).clubs[0].numbers["direction_sd_deg"]
    both = fit_player({**shots, "8-iron": few}, level(10))
    with_others = next(c for c in both.clubs if c.club == "8-iron").numbers["direction_sd_deg"]
    assert with_others > 1.1 * alone


def test_a_wild_row_moves_nothing():
    rng = np.random.default_rng(7)
    club = level_club("7-iron", 12)
    clean = shots_of(club, 40, rng)
    from dataclasses import replace

    wild = replace(
        clean, carry_yd=np.append(clean.carry_yd, 14.0), offline_yd=np.append(clean.offline_yd, -90.0)
    )
    a, b = (fit_player({"7-iron": s}, level(12)).clubs[0] for s in (clean, wild))
    for field in ("carry_yd", "direction_sd_deg", "distance_sd_pct"):
        assert b.numbers[field] == pytest.approx(a.numbers[field], rel=0.02)
    assert list(b.slips) == [40]
    # the plain standard deviation, which the wild row ruins
    assert wild.direction_deg.std() > 1.8 * clean.direction_deg.std()


def test_bias_is_not_spread():
    rng = np.random.default_rng(8)
    from dataclasses import replace

    club = replace(level_club("driver", 15), bias_right_deg=3.0)
    fit = fit_player({"driver": shots_of(club, 400, rng)}, level(15)).clubs[0]
    se = club.direction_sd_deg * 1.1 / 400**0.5
    assert fit.numbers["bias_right_deg"] == pytest.approx(3.0, abs=4 * se)
    assert fit.numbers["direction_sd_deg"] == pytest.approx(club.direction_sd_deg, rel=4 / 800**0.5)


def test_a_usual_miss_is_found_from_shots_of_two_clubs():
    """Right with the driver and left with the 7-iron, by as much as "miss right" and "miss left" mean, 30 shots of
    each: about half of it is found, and the truth is no rarity outside the stated interval. A quarter was, and 3
    intervals in 100 held it, where a bias of 2 degrees was believed to be one golfer in twenty."""
    from dataclasses import replace

    found, held = [], []
    for seed in range(20):
        rng = np.random.default_rng([30, seed])
        clubs = [level_club("driver", 15), level_club("7-iron", 15)]
        sides = (1.0, -1.0) if seed % 2 else (-1.0, 1.0)
        clubs = [
            replace(c, bias_right_deg=side * MISS_SD * c.direction_sd_deg)
            for c, side in zip(clubs, sides, strict=True)
        ]
        fits = fit_player({c.name: shots_of(c, 30, rng) for c in clubs}, level(15)).clubs
        for fit in fits:
            true = next(c for c in clubs if c.name == fit.club).bias_right_deg
            found.append(fit.numbers["bias_right_deg"] / true)
            held.append(abs(fit.numbers["bias_right_deg"] - true) < EIGHT_IN_TEN * fit.doubt.bias_right_deg)
    # a share found scatters by (1 degree in 30 shots) / (2 degrees) = 0.5, so 40 of them by 0.08
    assert np.mean(found) > 0.5 - 2 * 0.08
    # two kinds of club that miss to opposite sides are rare in what is believed: below 80, but no rarity
    assert np.mean(held) > 0.4


def test_two_clubs_of_one_carry_are_refused():
    rng = np.random.default_rng(9)
    club = level_club("7-iron", 12)
    shots = shots_of(club, 500, rng)
    from dataclasses import replace

    with pytest.raises(UsageError, match="both carry"):
        fit_player({"7-iron": shots, "8-iron": replace(shots, club="8-iron")}, level(12))


@pytest.mark.slow
def test_table_of_bias_and_coverage(capsys):
    """Eighty in a hundred truths inside the stated 80 % intervals (72 to 88), from 10 to 1,000 shots a club."""
    lines = [f"{'shots':>6} {'number':<18}{'mean error':>11}{'in its sd':>10}{'covered %':>11}"]
    missed = []
    for shots, players in ((10, 60), (30, 60), (100, 60), (1000, 30)):
        for field, values in gathered(players, shots, 100 + shots).items():
            error, sd = values.T
            covered = 100 * np.mean(np.abs(error) < EIGHT_IN_TEN * sd)
            lines.append(
                f"{shots:>6} {field:<18}{error.mean():>11.4f}{(error / sd).mean():>10.2f}{covered:>11.0f}"
            )
            if not 72 <= covered <= 88:
                missed.append((shots, field, covered))
    with capsys.disabled():
        print("\n" + "\n".join(lines))  # noqa: T201
    assert not missed
    assert len(BEFORE) == 6
