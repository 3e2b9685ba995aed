"""Puts the stand-ins of tests/report on the path; a file of laser readings."""

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[1] / "report"))

READINGS = """
name = "Mill 7th"
par = 4
[[stand]]
name = "tee"
readings = [
  { to = "flag", range_yd = 340 }, { to = "front", range_yd = 331 }, { to = "back", range_yd = 356 },
  { to = "oak", range_yd = 341, side = "right" }, { gap_yd = 20, between = ["flag", "oak"] },
]
[hole]
fairway = [{ from_yd = 150, to_yd = "front", left_yd = -15, right_yd = 15 }]
"""


@pytest.fixture
def readings(tmp_path: Path) -> Path:
    """A file of laser readings from the tee."""
    path = tmp_path / "readings.toml"
    path.write_text(READINGS)
    return path
