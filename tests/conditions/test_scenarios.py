"""Days from a file."""

from __future__ import annotations

from pathlib import Path

import pytest

from simulator.conditions import STILL, Conditions, conditions_from, read_scenarios
from simulator.errors import FileError, UsageError

DAYS = """
[[scenario]]
name = "calm"

[[scenario]]
name = "south-west"
wind = "14 mph from SW"
gusts = "4"
firmness = "firm"
stimp = 11
"""


def test_a_scenario_is_the_options_of_the_command_line(tmp_path: Path) -> None:
    path = tmp_path / "days.toml"
    path.write_text(DAYS)
    calm, windy = read_scenarios(path)
    assert (calm.name, windy.name) == ("calm", "south-west")
    assert calm.conditions(None) == Conditions() == STILL.conditions(None)
    for bearing in (0.0, 130.0):
        typed = conditions_from("14 mph from SW", gusts="4", firmness="firm", stimp="11", along_deg=0.0,
                                y_bearing_deg=bearing)  # fmt: skip
        assert windy.conditions(bearing) == typed
    wind = windy.conditions(130.0).wind
    assert wind is not None and wind.from_deg == pytest.approx(225.0 - 130.0)
    with pytest.raises(UsageError):
        windy.conditions(None)  # a compass wind needs the hole's bearing


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "scenario: found 0 of them"),
        ("scenario = 3", "no list"),
        ("scenario = [3]", "scenario 1: found no table"),
        ("days = []", "unknown key 'days'"),
        ("[[scenario]]\nwinds = 'N 3'", "unknown key 'winds'"),
        ("[[scenario]]\nname = ''", "scenario 1, name"),
        ("[[scenario]]\nwind = ['N']", "scenario 1, wind"),
        ("[[scenario]]\nname = 'a'\nwind = '300 mph from N'", "scenario 'a': found words refused"),
        ("[[scenario]]\nname = 'a'\n[[scenario]]\nname = 'A'", "the name twice"),
        (f"[[scenario]]\ngusts = {10**400}", "scenario 1, gusts: found 1000"),  # no float is as large
        ("[[scenario]]\ngusts = nan", "scenario 1, gusts: found nan"),
        ("[[scenario]\n", "a mistake in the TOML"),
    ],
)
def test_a_bad_file(tmp_path: Path, text: str, said: str) -> None:
    path = tmp_path / "days.toml"
    path.write_text(text)
    with pytest.raises(FileError, match=said) as error:
        read_scenarios(path)
    assert "\n" not in str(error.value)


def test_no_file(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="no such file"):
        read_scenarios(tmp_path / "none.toml")
    with pytest.raises(FileError, match="something that is not a file"):  # a device may have no end
        read_scenarios("/dev/null")
