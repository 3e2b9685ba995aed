"""The last thing that is taken and the first that is not, of winds and the options beside them."""

from __future__ import annotations

import pytest

from simulator.conditions import conditions_from, read_wind
from simulator.conditions.beaufort import BEAUFORT_MPH
from simulator.errors import UsageError


def blowing(words: str, **more: str) -> object:
    return read_wind(words, along_deg=0.0, y_bearing_deg=0.0, **more)


def test_the_strongest_force_and_the_next() -> None:
    last = len(BEAUFORT_MPH) - 1
    assert blowing(f"force {last} against").speed_mph == BEAUFORT_MPH[last]
    with pytest.raises(UsageError, match=f"too strong; allowed: force 0 to {last}"):
        blowing(f"force {last + 1} against")


def test_three_hours_of_a_clock_are_one_direction_and_four_are_not() -> None:
    assert blowing("10 mph between 1 and 4 o'clock").from_deg == 75.0
    with pytest.raises(UsageError, match="is no one direction"):
        blowing("10 mph between 1 and 5 o'clock")


def test_the_last_minute_of_an_hour() -> None:
    assert blowing("10 mph from 2:59").from_deg == pytest.approx(89.5)
    with pytest.raises(UsageError, match="on no clock"):
        blowing("10 mph from 2:60")


@pytest.mark.parametrize(("option", "value"), [("wind_at", "felt"), ("gusts", "4"), ("swing", "20")])
def test_what_goes_with_a_wind_wants_one(option: str, value: str) -> None:
    with pytest.raises(UsageError, match="given without a wind"):
        conditions_from(**{option: value})


@pytest.mark.parametrize("gusts", ["to 18", "up to 18", "peak 18", "gusting 18"])
def test_a_peak_is_told_from_how_far_either_side(gusts: str) -> None:
    assert blowing("12 mph against", gusts=gusts).gust_mph == 6.0
    assert blowing("12 mph against", gusts="4").gust_mph == 4.0


def test_a_foot_has_twelve_inches() -> None:
    assert conditions_from(stimp="9'11\"").stimp_ft == pytest.approx(9.0 + 11.0 / 12.0)
    with pytest.raises(UsageError, match="a foot has 12 inches"):
        conditions_from(stimp="9'12\"")
