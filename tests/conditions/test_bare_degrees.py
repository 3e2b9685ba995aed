"""A temperature without its scale, where only one can be meant; and a helper of a wind."""

from __future__ import annotations

import pytest

from simulator.conditions import read_wind
from simulator.conditions.quantities import read_temperature
from simulator.errors import UsageError

ALONG = {"along_deg": 0.0, "y_bearing_deg": None}


@pytest.mark.parametrize(
    ("words", "celsius"),
    [("12", 12.0), ("5 degrees", 5.0), ("cold, 5 degrees", 5.0), ("hot 30", 30.0), ("-2", -2.0), ("68", 20.0),
     ("50 degrees", 10.0), ("warm, 77", 25.0), ("77 F", 25.0), ("40 C", 40.0)],
)  # fmt: skip
def test_degrees_that_can_be_of_one_scale_only(words: str, celsius: float) -> None:
    assert read_temperature(words) == pytest.approx(celsius)


@pytest.mark.parametrize("words", ["31", "38 degrees", "warm, 45", "cold", "freezing"])
def test_degrees_of_either_scale_are_asked_for(words: str) -> None:
    with pytest.raises(UsageError, match="a number with its scale"):
        read_temperature(words)


def test_a_helper_is_a_wind_that_helps() -> None:
    assert read_wind("12 mph helper", **ALONG) == read_wind("12 mph helping", **ALONG)
