"""Carry in wind: an independent integrator, and what magazines and weather tables print.

Winds here are the same at every height, as such figures are meant, but where a height is named. Where the
model departs from a printed figure the test says by how much: the departure is asserted, both ways.
"""

from __future__ import annotations

import math

import pytest
from flown import NAMES, STRIKES, by_scipy, fly, gain
from truth_rows import outside

from simulator.physics.wind import felt_from_forecast, forecast_from_felt, height_ratio

# Yards gained or lost by the six strikes; computed with another program when the aerodynamic constants were
# fitted (November 2026), kept as a regression: printed to 0.1.
CHANGES = [
    ("head 5", {"head_mph": 5}, (-8.6, -9.0, -8.2, -6.0, -6.2, -5.1)),
    ("head 10", {"head_mph": 10}, (-18.1, -19.1, -17.5, -12.9, -13.6, -11.2)),
    ("head 20", {"head_mph": 20}, (-39.6, -42.7, -39.4, -29.3, -31.7, -26.7)),
    ("head 30", {"head_mph": 30}, (-64.6, -70.7, -65.7, -49.2, -54.4, -46.7)),
    ("tail 5", {"head_mph": -5}, (7.7, 7.8, 7.1, 5.1, 5.1, 4.2)),
    ("tail 10", {"head_mph": -10}, (14.5, 14.4, 13.2, 9.3, 9.2, 7.4)),
    ("tail 20", {"head_mph": -20}, (25.4, 24.1, 22.3, 15.3, 14.3, 11.6)),
]
DRIFT_PER_10_MPH = (17.5, 15.7, 13.7, 13.4, 11.9, 9.5)


@pytest.mark.parametrize(("label", "change", "known"), CHANGES, ids=[c[0] for c in CHANGES])
def test_head_and_tail(label, change, known):
    for name, expected in zip(NAMES, known, strict=True):
        flown = fly(STRIKES[name], **change)
        along, _ = by_scipy(STRIKES[name], **change)
        assert flown.carry_yd == pytest.approx(along, abs=0.1), name
        assert gain(name, **change) == pytest.approx(expected, abs=0.11), name


@pytest.mark.parametrize("mph", [10, 20])
def test_drift_across(mph):
    for name, expected in zip(NAMES, DRIFT_PER_10_MPH, strict=True):
        flown = fly(STRIKES[name], from_left_mph=mph)
        along, side = by_scipy(STRIKES[name], from_left_mph=mph)
        assert flown.side_yd == pytest.approx(side, abs=0.1)
        assert flown.carry_yd == pytest.approx(along, abs=0.1)
        assert flown.side_yd * 10 / mph == pytest.approx(expected, abs=0.2)  # nearly in proportion
        assert fly(STRIKES[name], from_left_mph=-mph).side_yd == pytest.approx(-flown.side_yd, abs=1e-9)


SOURCES = {"GA": "Golf Australia, February 2020", "USGTF": "USGTF news, August 2021"}


def within(found: float, least: float, most: float, *, beyond: float, what: str) -> None:
    """A figure printed as least to most: the model departs from it by no more than `beyond` yards."""
    over = max(least - found, found - most, 0.0)
    assert over <= beyond, f"{what}: {found:.1f} against {least:g} to {most:g}"


@pytest.mark.parametrize(
    ("what", "name", "head_mph", "least", "most", "beyond"),
    [
        # Golf Australia, February 2020, a professional into 10 mph: driver 16.5 m, 7-iron 15-15.8 m, a
        # 54-degree wedge 12.3 m. The pitching wedge stands in for the last: longer, hence more wind: +4 yd.
        ("GA driver", "driver", 10, 18.0, 18.0, 0.5),
        ("GA 7-iron", "7-iron", 10, 16.4, 17.3, 2.0),
        ("GA wedge", "PW", 10, 13.5, 13.5, 4.2),
        # the same: 7-iron steps of 15 + 22 + 26 m to 30 mph, 69 yd in all
        ("GA 7-iron 30 mph", "7-iron", 30, 69.0, 69.0, 2.0),
        # USGTF news, August 2021, a slightly long average man: driver -12/+9 at 10 mph, 6-iron -12/+8 at 10,
        # -20/+12 at 15; the slower strikes, their 7-iron for his 6-iron
        ("USGTF driver head", "slower driver", 10, 12.0, 12.0, 1.0),
        ("USGTF driver tail", "slower driver", -10, 9.0, 9.0, 0.5),
        ("USGTF iron head", "slower 7-iron", 10, 12.0, 12.0, 1.7),
        ("USGTF iron tail", "slower 7-iron", -10, 8.0, 8.0, 1.3),
        ("USGTF iron head 15", "slower 7-iron", 15, 20.0, 20.0, 2.2),
        ("USGTF iron tail 15", "slower 7-iron", -15, 12.0, 12.0, 0.5),
    ],
)  # fmt: skip
def test_published_yards(what, name, head_mph, least, most, beyond):
    outside(
        SOURCES[what.split()[0]],
        f"{what.split(maxsplit=1)[1]}, {abs(head_mph)} mph {'against' if head_mph > 0 else 'with'}",
        abs(gain(name, head_mph=head_mph)),
        (least, most),
        0.1 * most,
        "yd",
    )
    within(abs(gain(name, head_mph=head_mph)), least, most, beyond=beyond, what=what)


@pytest.mark.parametrize(("head_mph", "yards"), [(10, 13.0), (-10, 9.0), (2, 2.5), (-2, 2.0)])
def test_a_250_yard_drive(head_mph, yards):
    # A golf newsletter of 2007: 250-yd drives, -13/+9 at 10 mph, -2.5/+2 at 2 mph. Between our two drivers
    # (279 and 219 yd), in proportion, the model gives the wind more: 15.6/12.0 and 2.8/2.7.
    slow, fast = fly(STRIKES["slower driver"]).carry_yd, fly(STRIKES["driver"]).carry_yd
    share = (250.0 - slow) / (fast - slow)
    found = (1 - share) * abs(gain("slower driver", head_mph=head_mph)) + share * abs(
        gain("driver", head_mph=head_mph)
    )
    outside(
        "a golf newsletter of 2007",
        f"250-yd drive, {abs(head_mph)} mph {'against' if head_mph > 0 else 'with'}",
        found,
        yards,
        0.1 * yards,
        "yd",
    )
    within(
        found, yards, yards, beyond=3.1 if abs(head_mph) == 10 else 0.8, what=f"250-yd drive {head_mph} mph"
    )
    assert found >= yards  # the departure has a side: we give the wind more


def test_one_percent_a_mile_an_hour_against_half_with_it():
    """Common practice, also Golf Monthly 2021: 1 % of the distance per mph against, half a per cent with.

    Irons and wedges keep the rule against within 0.3 of a per cent (0.96 to 1.28), drivers lose 0.6; with
    the wind irons and wedges gain 0.65 to 0.97, more than the rule's half, drivers 0.43 to 0.52. The
    rule's shape (against costs more than with it gives) holds for all.
    """
    for name in NAMES:
        carry = fly(STRIKES[name]).carry_yd
        head = -gain(name, head_mph=10) / carry * 10
        tail = gain(name, head_mph=-10) / carry * 10
        rule = "common practice; Golf Monthly 2021"
        outside(rule, f"carry lost per mph against, {name}", head, 1.0, 0.2, "%")
        outside(rule, f"carry gained per mph with it, {name}", tail, 0.5, 0.2, "%")
        assert 0.5 < tail / head < 0.85
        if "driver" in name:
            assert head == pytest.approx(0.62, abs=0.05) and tail == pytest.approx(0.5, abs=0.1)
        else:
            assert head == pytest.approx(1.0, abs=0.3)
            assert 0.6 <= tail <= 1.0


def test_a_yard_a_mile_an_hour_for_the_average_golfer():
    # Golf Digest (Rice & Broadie): average golfers add as many yards as the wind has mph against them.
    # The slower strikes lose 1.1 (wedge) to 1.4 (7-iron) yd per mph at 10 mph: up to 0.4 more than the rule.
    for name in NAMES[3:]:
        outside(
            "Golf Digest (Rice & Broadie)",
            f"per mph against, {name}",
            -gain(name, head_mph=10) / 10,
            1.0,
            0.2,
            "yd",
        )
        within(-gain(name, head_mph=10) / 10, 1.0, 1.0, beyond=0.4, what=f"yard per mph, {name}")


def test_crosswind_yard_and_a_half_a_mile_an_hour():
    # Wilson 2015 (a golf club maker's advice page): about 1.5 yd of drift per mph across.
    drift = {name: fly(STRIKES[name], from_left_mph=10).side_yd / 10 for name in NAMES}
    for name in NAMES:
        outside(
            "Wilson 2015, a golf club maker's advice page",
            f"drift per mph across, {name}",
            drift[name],
            1.5,
            0.3,
            "yd",
        )
        within(drift[name], 1.5, 1.5, beyond=0.3 if name in NAMES[:3] else 0.6, what=f"drift per mph, {name}")


def test_landing_angle_in_wind():
    # Against the wind the ball falls steeper, with it shallower: tour 7-iron 48 deg calm, 58 in 10 mph
    # against, 39 with (of the model before its landing correction of 3 deg; another program's).
    angle = {mph: fly(STRIKES["7-iron"], head_mph=mph).angle_deg for mph in (-10, 0, 10)}
    for mph, known in ((-10, 39.0), (0, 48.0), (10, 58.0)):
        assert angle[mph] - 3.0 == pytest.approx(known, abs=0.6)
    for name in NAMES:
        still = fly(STRIKES[name]).angle_deg
        assert fly(STRIKES[name], head_mph=10).angle_deg > still + 5
        assert fly(STRIKES[name], head_mph=-10).angle_deg < still - 5


@pytest.mark.parametrize(
    ("height_m", "log", "power"),
    # Ratios to the wind at 10 m: log law with roughness 0.03 m, and the seventh-root profile of neutral open
    # ground (AMS glossary), an independent description of the same thing
    [(1, 0.60, 0.72), (2, 0.72, 0.79), (5, 0.88, 0.91), (20, 1.12, 1.10), (30, 1.19, 1.17)],
)  # fmt: skip
def test_wind_profile(height_m, log, power):
    outside(
        "AMS glossary: seventh-root profile",
        f"wind at {height_m} m over that at 10 m",
        height_ratio(height_m),
        power,
        0.07,
    )
    assert height_ratio(height_m) == pytest.approx(log, abs=0.005)
    assert (height_m / 10.0) ** (1 / 7) == pytest.approx(power, abs=0.005)
    # where a ball flies the two agree within 0.03, at a player's head within 0.07
    assert height_ratio(height_m) == pytest.approx(
        power, abs=0.03 if height_m >= 5 else 0.07 if height_m == 2 else 0.13
    )


def test_wind_profile_ends_and_returns():
    assert height_ratio(0.03) == 0.0 and height_ratio(0.01) == 0.0
    assert height_ratio(10.0) == 1.0
    assert forecast_from_felt(felt_from_forecast(12.0)) == pytest.approx(12.0)
    for bad in (0.0, -1.0, math.nan, math.inf):
        with pytest.raises(ValueError, match="no log law"):
            height_ratio(bad)
    with pytest.raises(ValueError, match="no log law"):
        height_ratio(2.0, reference_m=0.02)


@pytest.mark.parametrize(
    ("wind_height_m", "name", "head", "drift"),
    # 10 mph quoted at 10 m and felt at 2 m, log law; another program's figures, printed to 0.1
    [(10.0, "7-iron", -20.9, 16.8), (10.0, "driver", -19.7, None), (2.0, "7-iron", -30.8, 23.3)],
)  # fmt: skip
def test_flight_through_the_profile(wind_height_m, name, head, drift):
    profile = {"roughness_m": 0.03, "wind_height_m": wind_height_m}
    along, _ = by_scipy(STRIKES[name], head_mph=10, **profile)
    assert fly(STRIKES[name], head_mph=10, **profile).carry_yd == pytest.approx(along, abs=0.1)
    assert gain(name, head_mph=10, **profile) == pytest.approx(head, abs=0.11)
    if drift is not None:
        assert fly(STRIKES[name], from_left_mph=10, **profile).side_yd == pytest.approx(drift, abs=0.11)
    # a forecast wind costs as much as one 1.08 times as strong at every height, within 4 % of the loss
    if wind_height_m == 10.0:
        assert gain(name, head_mph=10.8) == pytest.approx(gain(name, head_mph=10, **profile), rel=0.04)
