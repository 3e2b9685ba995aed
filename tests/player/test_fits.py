"""The fitted files are what their scripts give."""

import tomllib
from importlib import resources

import numpy as np
import pytest

from simulator.fits import mishits, part_swings
from simulator.fits.tables import write_table


def stored(name):
    return tomllib.loads(resources.files("simulator.player").joinpath(name).read_text(encoding="utf-8"))


def test_mishits_file_is_its_scripts():
    file = stored("mishits.toml")
    assert file["handicap"] == mishits.HANDICAPS.tolist()
    for i, handicap in enumerate(file["handicap"]):
        row = mishits.solve_level(handicap, mishits.raised(handicap))
        for key, value in row.items():
            assert file[key][i] == pytest.approx(value, rel=1e-3), (handicap, key)


def test_part_swings_file_is_its_scripts():
    file = stored("part_swings.toml")
    assert file["carry_yd"] == part_swings.NODES_YD.tolist()
    assert np.shape(file["direction_sd_deg"]) == (len(file["handicap"]), len(file["carry_yd"]))
    for name in ("script", "inputs", "date"):
        assert file[name]
    for i, handicap in enumerate(file["handicap"]):
        direction, distance = part_swings.solve_level(handicap)
        assert file["direction_sd_deg"][i] == pytest.approx(direction, rel=1e-3)
        assert file["distance_sd_pct"][i] == pytest.approx(distance, rel=1e-3)


def test_write_table_round_trip(tmp_path):
    write_table(tmp_path / "t.toml", {"script": "x"}, {"a": [1.0, 2.5], "b": [[1.0], [2.0]]})
    assert tomllib.loads((tmp_path / "t.toml").read_text()) == {"script": "x", "a": [1, 2.5], "b": [[1], [2]]}
    assert [p.name for p in tmp_path.iterdir()] == ["t.toml"]
