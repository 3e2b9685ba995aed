"""What commands do at their edges: mistakes of ours, other spellings of files, units that change no JSON."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from simulator.cli import _run
from simulator.strategy import running
from simulator.strategy.jobs import Job

HOLE = 'name = "Short"\npar = 3\nlength_yd = 61\ngreen = [{ front_yd = 47, depth_yd = 28, width_yd = 26 }]\n'


def test_a_mistake_of_ours_on_a_hole_of_a_course_keeps_its_traceback(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The other holes are done and shown first; then it is raised, for exit status 1."""

    def stand_in(job: Job, threads: int = 1) -> dict[str, object]:
        raise ZeroDivisionError("a slip of ours")

    monkeypatch.setattr(running, "work", stand_in)
    (tmp_path / "links").mkdir()
    (tmp_path / "links" / "01.toml").write_text(HOLE)
    with pytest.raises(ZeroDivisionError, match="a slip of ours"):
        _run(["course", str(tmp_path / "links"), "--player", "isolde"])
    assert "a mistake of ours (ZeroDivisionError" in capsys.readouterr().out


@pytest.mark.parametrize("name", ["ada.toml", "ADA.TOML"])
def test_a_suffix_in_capitals_is_the_same_suffix(name: str, tmp_path: Path) -> None:
    """Some cameras of files shout: the new file is written under the very name."""
    assert _run(["new", "player", "--name", "Ada", "--handicap", "14", "-o", str(tmp_path / name)]) == 0
    assert [path.name for path in tmp_path.iterdir()] == [name]


def test_a_mapping_says_that_left_is_positive(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Of the same file the bias turns round with the mapping, as it does with the option."""
    shots = tmp_path / "shots.csv"
    rows = [(140, 9), (137, 12), (143, 7), (139, 14), (141, 10), (138, 8)]
    shots.write_text("club,carry,offline\n" + "".join(f"7i,{c},{s}\n" for c, s in rows))
    mapping = tmp_path / "mine.toml"
    mapping.write_text("left_positive = true\n")
    found = []
    for more in ([], ["--left-positive"], ["--mapping", str(mapping)]):
        assert _run(["player", "fit", str(shots), "--level", "12", "--json", *more]) == 0
        (club,) = (one for one in json.loads(capsys.readouterr().out)["clubs"] if one["club"] == "7-iron")
        found.append(club["bias_right_deg"])
    assert found[0] > 2.0 and found[1] == pytest.approx(-found[0], abs=1e-3) and found[2] == found[1]


def test_the_json_of_a_yardage_page_knows_no_metres(capsys: pytest.CaptureFixture[str]) -> None:
    """Widths stand every 10 yards in it whatever the table's unit, which steps by 10 metres."""
    told = []
    for units in ("yards", "metres"):
        assert _run(["show", "withy-drain", "--json", "--units", units]) == 0
        told.append(json.loads(capsys.readouterr().out))
    assert told[0] == told[1]
    stations = [one["station_yd"] for one in told[0]["fairway_widths"]]
    assert stations and all(station % 10.0 == 0.0 for station in stations)


@pytest.mark.parametrize(
    ("change", "told"),
    [(("left_yd = -15, right_yd = 15", "left_yd = 15, right_yd = -15"), "[hole]"),
     (("from_yd = 150", "from_yd = 400"), "[hole]")],
)  # fmt: skip
def test_a_survey_whose_hole_cannot_be_writes_nothing(
    change: tuple[str, str], told: str, readings: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Its points are found and its names are right, but the hole they make is refused by its reader."""
    readings.write_text(readings.read_text().replace(*change))
    assert _run(["survey", str(readings), "-o", str(readings.parent / "mill.toml")]) == 2
    said = capsys.readouterr().err
    assert told in said and len(said.strip().splitlines()) == 1
    assert [path.name for path in readings.parent.iterdir()] == ["readings.toml"]


@pytest.mark.parametrize(
    ("text", "kind"),
    [('name = "Nine"\n', "par"), ('name = "Ada"\nhandicap = 9\n', ""), ('name = "Nine"\ntee = "red"\n', "par")],
)
def test_a_file_that_may_be_either_s_is_read_as_a_hole(
    text: str, kind: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A name and a tee are keys of holes and of players: one key of a player's own settles it."""
    path = tmp_path / "either.toml"
    path.write_text(text)
    status = _run(["check", str(path), "--json"])
    shown, said = capsys.readouterr()
    assert (status, kind in said) == (2, True) if kind else json.loads(shown)["kind"] == "player"
