"""Launch, lies, ground and wind at the edges of their tables, where another branch would begin."""

from __future__ import annotations

import numpy as np
import pytest

from simulator.physics.ground import FIRMNESS_ROWS, GROUNDS, ground_of
from simulator.physics.launch import FAST_FALL_LIMIT_DEG, MEN, WOMEN, launch, part_launch
from simulator.physics.lies import CHIP_YD, PITCH_YD, lie_effect
from simulator.physics.wind import ROUGHNESS_OPEN_M, height_ratio


@pytest.mark.parametrize("kind", ["driver", "7-iron"])
def test_a_ball_faster_than_the_men_s_row_starts_lower_yet(kind: str) -> None:
    """Above the row it goes on falling, by 1.5 degrees at the most however fast."""
    row = MEN[kind]
    at = [float(launch(kind, row.ball_speed_mph + more)[0]) for more in (0.0, 10.0, 1000.0)]
    assert at[0] == pytest.approx(row.launch_deg)
    assert at[0] - 0.3 > at[1] > at[2]
    assert at[2] == pytest.approx(row.launch_deg - FAST_FALL_LIMIT_DEG, abs=0.01)


def test_a_part_swing_faster_than_full_is_the_full_one() -> None:
    full_angle, full_spin = launch("sand wedge", 70.0)
    for speed in (70.0, 90.0):
        angle, spin = part_launch("sand wedge", 70.0, speed)
        assert (float(angle), float(spin)) == pytest.approx((float(full_angle), float(full_spin)))
    half_angle, half_spin = part_launch("sand wedge", 70.0, 35.0)
    assert float(half_angle) == pytest.approx(float(full_angle) + 6.0) and float(half_spin) < 0.6 * float(full_spin)


def test_the_women_s_hybrid_is_placed_from_a_club_of_more_loft_than_the_men_s() -> None:
    """Their row stands where an older table has a 7-wood, 21 degrees: a 4-hybrid of 22.5 is near it, so that it
    differs from it less than the men's does from theirs of 19."""
    apart = [rows["hybrid"].carry_yd - rows["4-hybrid"].carry_yd for rows in (WOMEN, MEN)]
    assert 0.0 < apart[0] < 0.6 * apart[1]


def test_from_sand_a_swing_goes_over_from_splash_to_pitch() -> None:
    """As the shortest up to 20 yards, as a pitch from 60 on, straight between: more spread all the way."""
    sds = [lie_effect("bunker", "part", carry).carry_factor_sd for carry in (3.0, 20.0, 30.0, 40.0, 50.0, 60.0, 90.0)]
    assert sds[0] == sds[1] and sds[5] == sds[6]
    steps = np.diff(sds[1:6])
    assert steps == pytest.approx(np.full(4, steps[0])) and steps[0] > 0.0
    assert (CHIP_YD, PITCH_YD) == (20.0, 60.0)


@pytest.mark.parametrize(("firmness", "rows"), [(0.0, (0,)), (0.2, (0, 1)), (0.5, ()), (0.8, (1, 2)), (1.0, (2,))])
def test_a_ground_between_two_rows_names_the_sources_of_both(firmness: float, rows: tuple[int, ...]) -> None:
    ground = ground_of("FAIRWAY", firmness)
    named = [row.source in ground.source for row in FIRMNESS_ROWS["FAIRWAY"]]
    assert [k for k, one in enumerate(named) if one] == (list(rows) or [1])
    if not rows:
        assert ground.source == GROUNDS["FAIRWAY"].source


def test_there_is_no_wind_down_in_the_grass() -> None:
    """The law's own figure at a third of the roughness length would blow backwards."""
    assert height_ratio(ROUGHNESS_OPEN_M) == height_ratio(ROUGHNESS_OPEN_M / 3.0) == 0.0
    assert 0.0 < height_ratio(2.0 * ROUGHNESS_OPEN_M) < height_ratio(2.0)
