"""What means the same is spelt the same in every command, and a file of the user's is never written over unasked."""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path
from typing import Any

import pytest
from all_commands import COMMANDS

from simulator.cli import _run

SAID_IN_TWO_WAYS = {
    "--out",
    "--target",
    "--player",
    "--pin",
    "--plot",
    "--quick",
    "--name",
    "--units",
    "--sequences",
    "--threads",
}
"""Options whose help differs with the command."""

PAR_3 = ["sketch", "par 3, 150"]
SHOTS = "club,carry,offline\n7i,140,-6\n7i,136,4\n7i,129,9\n"
READINGS = """
name = "Short one"
par = 3
line = ["flag"]
[[stand]]
name = "tee"
readings = [{ to = "flag", range_yd = 150 }, { to = "front", range_yd = 138 }, { to = "back", range_yd = 161 }]
"""


def _shown() -> dict[str, dict[str, Any]]:
    found: dict[str, dict[str, Any]] = defaultdict(dict)
    for command, one in COMMANDS.items():
        for parameter in one.params:
            if parameter.param_type_name == "option" and not parameter.hidden:
                found[next(o for o in parameter.opts if o.startswith("--"))][command] = parameter
    return found


def test_one_word_for_one_thing() -> None:
    shown = _shown()
    assert not {"--output", "--replace", "--overwrite", "--to"} & shown.keys()
    for command, parameter in shown["--out"].items():
        assert sorted(parameter.opts) == ["--out", "-o"], command
        assert parameter.metavar in ("FILE", "DIR"), command
    for option, commands in shown.items():
        if option not in SAID_IN_TWO_WAYS:
            assert len({p.help for p in commands.values()}) == 1, option
        if option not in ("--out", "--target"):
            assert len({p.metavar for p in commands.values()}) == 1, option


@pytest.mark.parametrize("command", COMMANDS)
def test_units_end_the_list_behind_json(command: str) -> None:
    names = [p.opts[0] for p in COMMANDS[command].params if p.param_type_name == "option" and not p.hidden]
    ends = [name for name in ("--json", "--units") if name in names]
    assert names[len(names) - len(ends) :] == ends


@pytest.fixture
def writers(tmp_path: Path) -> dict[str, list[str]]:
    """The commands that write a hole or a player file."""
    (tmp_path / "shots.csv").write_text(SHOTS)
    (tmp_path / "readings.toml").write_text(READINGS)
    return {
        "sketch": PAR_3,
        "new player": ["new", "player", "--name", "Ada", "--handicap", "15"],
        "player fit": ["player", "fit", str(tmp_path / "shots.csv"), "--level", "12"],
        "survey": ["survey", str(tmp_path / "readings.toml")],
    }


@pytest.mark.parametrize("command", ["sketch", "new player", "player fit", "survey"])
def test_what_is_there_stays(
    command: str, writers: dict[str, list[str]], tmp_path: Path, capsys: Any
) -> None:
    arguments, target = writers[command], tmp_path / "mine.toml"
    target.write_text("mine")
    assert _run([*arguments, "--out", str(target)]) == 2
    assert target.read_text() == "mine" and "--force" in capsys.readouterr().err
    assert _run([*arguments, "--out", str(target), "--force"]) == 0
    assert target.read_text() != "mine"
    capsys.readouterr()
    assert _run([*arguments, "-o", str(tmp_path / "mine.doc")]) == 2
    assert "ends in .toml" in capsys.readouterr().err


def test_old_spellings_are_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "ada.toml"
    assert _run(["new", "player", "--name", "Ada", "--handicap", "15", "--output", str(target)]) == 0
    assert target.is_file()
    course = str(Path(__file__).parents[1] / "hole" / "maps" / "tidewrack.osm")
    assert _run(["import-map", course, "--out", str(tmp_path / "out")]) == 0
    assert _run(["import-map", course, "--out", str(tmp_path / "out")]) == 3
    assert "--force writes over it" in capsys.readouterr().err
    assert _run(["import-map", course, "--out", str(tmp_path / "out"), "--replace"]) == 0


@pytest.mark.parametrize(
    ("arguments", "behind"),
    [
        (["course", ""], "course: "),
        (["show", " "], "show: "),
        (["plan", "withy-drain", "--player", ""], "--player: "),
        (["course", "ostrel-heath", "-o", ""], "-o: "),
        (["plan", "withy-drain", "--plot="], "--plot: "),
    ],
)
def test_nothing_between_the_quotes_is_no_folder(
    arguments: list[str], behind: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Any
) -> None:
    """It was the folder one stood in: a whole course was worked and written there."""
    monkeypatch.chdir(tmp_path)
    assert _run(arguments) == 2
    assert capsys.readouterr().err == f"holesim: {behind}found nothing between the quotes; allowed: something (holesim --help)\n"
    assert not list(tmp_path.iterdir())


def test_a_drawing_may_go_to_o_in_every_command(tmp_path: Path, capsys: Any) -> None:
    for command in ("plan", "compare", "review"):
        assert "-o" in next(p for p in COMMANDS[command].params if "--plot" in p.opts).opts
    assert _run(["show", "withy-drain", "--plot", str(tmp_path / "plan.svg")]) == 2
    assert capsys.readouterr().err == "holesim: No such option: --plot; a drawing goes to -o FILE\n"
