"""`holesim import-map`: report, JSON, exit status, files."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from simulator.cli import _run
from simulator.hole import load_hole

MAPS = Path(__file__).parents[1] / "hole" / "maps"
COURSE = str(MAPS / "tidewrack.osm")
OSM = "© OpenStreetMap contributors (ODbL)"


def test_report(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["import-map", COURSE, "-o", str(tmp_path / "holes")]) == 0
    out, err = capsys.readouterr()
    assert "23 of 24 holes written" in " ".join(out.split())
    assert "4 4 355 04.toml: white, yellow, red; no green" in " ".join(out.split())
    assert "not written: its line is 25 yd long" in out
    assert "- 6: No tee in the map: the start of its line." in out
    assert f"Map data: {OSM}" in out and "local rules and the committee decide" in " ".join(out.split())
    assert all(len(line) <= 80 for line in out.splitlines())
    assert err == "holesim: 1 of 24 holes not written\n"
    assert len(list((tmp_path / "holes").glob("*.toml"))) == 23


def test_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["import-map", COURSE, "-o", str(tmp_path), "--json", "--sea", "red", "--outside", "rough"]) == 0
    report = json.loads(capsys.readouterr().out)
    assert report["schema"] == "holesim-import-1" and report["attribution"] == OSM
    first = report["holes"][0]
    assert (first["hole"], first["par"], first["complete"], first["failed"]) == ("1", 4, True, None)
    assert load_hole(first["file"]).attribution == OSM
    assert set(first) == {
        "hole", "name", "file", "complete", "failed", "par", "length_yd", "stroke_index", "tees", "pins", "ground",
        "missing", "assumed", "warnings",
    }  # fmt: skip


def test_heights(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rows = [f"{-123.4 + 0.0002 * (k % 20)},{-48.9 + 0.0002 * (k // 20)},{10 + 0.1 * (k % 7)}" for k in range(400)]
    (tmp_path / "z.csv").write_text("lon,lat,ele_m\n" + "\n".join(rows))
    run = ["import-map", COURSE, "-o", str(tmp_path / "o"), "--elevation", str(tmp_path / "z.csv")]
    assert _run(run) == 0
    assert len(load_hole(tmp_path / "o" / "01.toml").heights) > 20


@pytest.mark.parametrize("more, words", [
    (["--sea", "blue"], "--sea 'blue'; allowed: out or red"),
    (["--outside", "fairway"], "--outside 'fairway'; allowed: out or rough"),
    (["--attribution", "x" * 201], "--attribution: allowed are up to 200"),
    (["--elevation", "none.csv"], "none.csv: found no such file"),
])  # fmt: skip
def test_refused(more: list[str], words: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["import-map", COURSE, "-o", str(tmp_path / "o"), *more]) == 2
    out, err = capsys.readouterr()
    assert out == "" and words in err and err.count("\n") == 1
    assert not (tmp_path / "o").exists()


def test_a_file_for_a_folder_and_no_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "o").write_text("")
    assert _run(["import-map", COURSE, "-o", str(tmp_path / "o")]) == 2
    assert _run(["import-map", "none.geojson", "-o", str(tmp_path / "p")]) == 2
    assert capsys.readouterr().err.count("\n") == 2


def test_a_folder_nobody_may_make_is_a_mistake_of_the_request(capsys: pytest.CaptureFixture[str]) -> None:
    """Once, not for every hole, and not as a fair question without an answer; /proc takes no folders, whoever asks."""
    assert _run(["import-map", COURSE, "-o", "/proc/none/holes"]) == 2
    out, err = capsys.readouterr()
    assert out == "" and err.count("\n") == 1 and "/proc/none/holes: found a place that cannot be written" in err


def test_nothing_could_be_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Files of an earlier run stay, and the exit status says that there is no answer."""
    assert _run(["import-map", COURSE, "-o", str(tmp_path)]) == 0
    before = {p.name: p.read_bytes() for p in tmp_path.iterdir()}
    assert _run(["import-map", COURSE, "-o", str(tmp_path), "--outside", "rough"]) == 3
    assert "no hole could be written" in capsys.readouterr().err
    assert {p.name: p.read_bytes() for p in tmp_path.iterdir()} == before
    assert _run(["import-map", COURSE, "-o", str(tmp_path), "--outside", "rough", "--force"]) == 0
    assert {p.name: p.read_bytes() for p in tmp_path.iterdir()} != before


def test_attribution_of_ones_own(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for text, want in (("Drawn by Ada, 2026", "Drawn by Ada, 2026"), ("none", None)):
        assert _run(["import-map", COURSE, "-o", str(tmp_path), "--force", "--attribution", text]) == 0
        assert load_hole(tmp_path / "01.toml").attribution == want
    capsys.readouterr()


def test_check_says_whose_data(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["import-map", COURSE, "-o", str(tmp_path)]) == 0
    capsys.readouterr()
    assert _run(["check", str(tmp_path / "02.toml")]) == 0
    assert f"Map data: {OSM}." in capsys.readouterr().out
    assert _run(["check", str(tmp_path / "02.toml"), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["attribution"] == OSM
