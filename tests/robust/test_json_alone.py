"""`--json`: JSON and nothing else on standard output, of every command that has it, whatever else it writes and says."""

from __future__ import annotations

import json
import shlex
import shutil

import pytest
from bad_inputs import HOLES, Folder, commands, options
from runs import judge, run

FEW = "--sequences 100 --quick"
LINES = {
    "plan": f"eel-trap {FEW} --plot plan.png",
    "compare": f"eel-trap 6i '152 shot' {FEW} --plot two.svg",
    "carries": "152",
    "practice": "eel-trap --sequences 100",
    "review": "eel-trap '6-iron on; 2 putts' --plot played.png",
    "check": "'handicap 15, driver 205, fade'",
    "survey": "survey.toml -o surveyed.toml",
    "sketch": "'par 4, 372; pond left 213 to 254, gap 14 to line at 200' -o sketched.toml",
    "show": "eel-trap -o show.pdf",
    "import-map": "map.geojson -o mapped",
    "player fit": "shots.csv --level 3 -o fitted.toml --plot shots.png",
    "course": f"links {FEW} --player 'handicap 15, 7i 140' -o out --pages wall.svg --target 4",
}
"""Each with something to write or to say beside the answer where it can."""


def test_no_command_is_forgotten() -> None:
    having = {" ".join(names) for names, command in commands() if any("--json" in one.opts for one in options(command))}
    assert having == set(LINES)


@pytest.mark.parametrize("name", LINES)
def test_standard_output_is_json_alone(name: str, folder: Folder, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(folder.path)
    (folder.path / "links").mkdir(exist_ok=True)
    shutil.copy(next(hole for hole in HOLES if hole.stem == "eel-trap"), folder.path / "links" / "01.toml")
    arguments = [*name.split(), *shlex.split(LINES[name]), "--json"]
    seen = run(arguments, seconds=120)
    judge(arguments, seen, folder.path)
    assert seen.status == 0, seen
    assert isinstance(json.loads(seen.out), dict) and seen.out.endswith("}\n") and seen.out.count("\n}") == 1
    assert all(line.startswith("holesim: ") for line in seen.err.splitlines())
