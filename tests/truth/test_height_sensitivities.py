"""Targets above and below the ball: the flight is cut where the ground is; the trade's yard for a yard."""

from __future__ import annotations

import pytest
from flown import NAMES, STRIKES, by_scipy, fly, gain
from truth_rows import outside

# Yards of carry to a landing 10 yd up and 10 yd down: another program's, printed to 0.1
UP = (-12.7, -9.7, -8.7, -14.2, -11.0, -10.3)
DOWN = (10.9, 8.7, 8.0, 11.6, 9.4, 8.7)


@pytest.mark.parametrize(("up_yd", "known"), [(10, UP), (-10, DOWN)])
def test_carry_to_another_level(up_yd, known):
    for name, expected in zip(NAMES, known, strict=True):
        flown = fly(STRIKES[name], up_yd=up_yd).carry_yd
        assert flown == pytest.approx(by_scipy(STRIKES[name], up_yd=up_yd)[0], abs=0.1)
        assert gain(name, up_yd=up_yd) == pytest.approx(expected, abs=0.06), name


def test_a_yard_of_carry_for_a_yard_of_height():
    """Common practice (golfdigest.com too): a yard for a yard, up and down.

    Tour irons and wedges keep it within 0.3 of a yard; the flatter a ball falls the more a hill takes: up
    to 1.4 yd a yard uphill (slower driver), 1.2 down. Uphill always takes more than downhill gives.
    """
    for name in NAMES:
        up, down = -gain(name, up_yd=10) / 10, gain(name, up_yd=-10) / 10
        for way, found in (("up", up), ("down", down)):
            outside(
                "common practice (golfdigest.com too)",
                f"carry for a yard of height {way}, {name}",
                found,
                1.0,
                0.3,
                "yd",
            )
        assert up > down
        flat = 0.45 if "driver" in name else 0.3
        assert up == pytest.approx(1.0, abs=flat) and down == pytest.approx(1.0, abs=flat)


def test_a_club_for_ten_yards_of_height():
    # golfblogger: one club for 10 yd of height. Tour irons, 12 yd apart, lose 8.7-9.7: 0.7-0.8 of a club
    club_yd = (fly(STRIKES["7-iron"]).carry_yd - fly(STRIKES["PW"]).carry_yd) / 3
    for name in ("7-iron", "PW"):
        outside(
            "golfblogger",
            f"clubs for 10 yd of height, {name}",
            -gain(name, up_yd=10) / club_yd,
            1.0,
            0.35,
            "clubs",
        )
        assert -gain(name, up_yd=10) / club_yd == pytest.approx(1.0, abs=0.35)


def test_height_is_not_a_fixed_rule():
    """The flight is cut, so the second ten yards up take more than the first and wind changes them all."""
    for name in NAMES:
        first, both = gain(name, up_yd=10), gain(name, up_yd=20)
        assert both - first < first
    against = (
        fly(STRIKES["7-iron"], head_mph=20, up_yd=10).carry_yd - fly(STRIKES["7-iron"], head_mph=20).carry_yd
    )
    assert -against < 0.75 * -gain("7-iron", up_yd=10)  # it falls steeply there: a hill takes less


def test_small_changes_of_the_strike():
    # per +1 mph of ball, +1 deg of launch, +250 rpm: another program's, printed to 0.1
    for name, per_mph, per_deg, per_rpm in zip(
        NAMES,
        (2.0, 1.6, 1.4, 2.2, 1.7, 1.7),
        (1.8, -0.4, -0.8, 1.6, -0.1, -0.4),
        (-1.8, -0.6, -0.3, -0.8, -0.3, -0.2),
        strict=True,
    ):
        mph, launch, rpm = STRIKES[name]
        carry = fly(STRIKES[name]).carry_yd
        assert fly((mph + 1, launch, rpm)).carry_yd - carry == pytest.approx(per_mph, abs=0.07)
        assert fly((mph, launch + 1, rpm)).carry_yd - carry == pytest.approx(per_deg, abs=0.07)
        assert fly((mph, launch, rpm + 250)).carry_yd - carry == pytest.approx(per_rpm, abs=0.07)
