"""`holesim survey`, as somebody types it."""

import json

from simulator.cli import _run


def test_screen_and_file(readings, tmp_path, capsys):
    out = tmp_path / "mill.toml"
    assert _run(["survey", str(readings), "-o", str(out)]) == 0
    text = capsys.readouterr().out
    assert "25 yards deep: 9 of room in front of the flag, 16 behind" in text
    assert max(map(len, text.splitlines())) <= 80
    assert _run(["check", str(out)]) == 0


def test_json_alone(readings, capsys):
    assert _run(["survey", str(readings), "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert [p["name"] for p in found["points"]] == ["tee", "flag", "front", "back", "oak"]


def test_nothing_is_written_that_would_not_be_read(readings, tmp_path, capsys):
    readings.write_text(readings.read_text().replace('to_yd = "front"', 'to_yd = "barn"'))
    assert _run(["survey", str(readings), "-o", str(tmp_path / "mill.toml")]) == 2
    assert len(capsys.readouterr().err.strip().splitlines()) == 1
    assert [p.name for p in tmp_path.iterdir()] == ["readings.toml"]


def test_a_file_that_is_none_of_readings_is_told_what_is(tmp_path, capsys):
    (tmp_path / "readings.csv").write_text("to,range_yd\nflag,340\n")
    for name, found in (("readings.csv", "a .csv file"), ("readings.toml", "no such file")):
        assert _run(["survey", str(tmp_path / name)]) == 2
        said = capsys.readouterr().err
        assert found in said and "a .toml file of laser readings" in said and "withy-drain" not in said
