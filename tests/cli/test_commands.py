"""The commands: which stream gets what, exit status, bad values in one line. A stand-in for the engine."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import fake_answers
import pytest
from typer.testing import CliRunner

from simulator import __version__
from simulator.cli import _run, app
from simulator.errors import NoAnswerError
from simulator.report.text import answer_screen
from simulator.strategy.goals import Goal
from simulator.strategy.question import COMPILING

ROOT = Path(__file__).parents[2]


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[dict[str, Any]]:
    """Stand-ins for plan and compare that write down how they were called."""
    from simulator.strategy import ask

    calls: list[dict[str, Any]] = []

    def answer(question: str) -> Callable[..., object]:
        def stand_in(hole: Any, player: Any, clubs: Any = None, **more: Any) -> object:
            more["progress"](COMPILING)
            more["progress"]("value map of what was compiled")
            calls.append({"question": question, "hole": hole, "player": player, "clubs": clubs, **more})
            warned = ("map and plays differ",)
            return fake_answers.answer(hole, player, start=more["start"], warnings=warned, n=500)

        return stand_in

    monkeypatch.setattr(ask, "plan", answer("plan"))
    monkeypatch.setattr(ask, "compare", answer("compare"))
    return calls


def test_plan_prints_the_answer_and_nothing_else(asked: list, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["plan", "withy-drain", "--player", "isolde"]) == 0
    streams = capsys.readouterr()
    expected = fake_answers.answer("withy-drain", "isolde", warnings=("map and plays differ",), n=500)
    assert streams.out == answer_screen(expected) + "\n"
    assert streams.err.splitlines() == [
        f"holesim: {COMPILING}",  # stages only for somebody watching
        "holesim: warning: map and plays differ",
    ]
    call = asked[0]
    assert (call["sequences"], call["seed"], call["threads"], call["start"]) == (20_000, 1, None, None)


def test_a_player_s_own_tee_is_played_where_the_hole_has_it(
    asked: list, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    player = tmp_path / "ada.toml"
    for tee, more, used, told in (
        ("yellow", [], "yellow", ""),
        ("Yellow tees", [], "yellow", ""),
        ("yellow", ["--tee", "white"], "white", ""),
        ("gold", [], "white", "Withy Drain: Ada plays from the white tee: no gold tee there."),
    ):
        player.write_text(f'name = "Ada"\nhandicap = 20\ntee = "{tee}"\n')
        assert _run(["compare", "withy-drain", "driver", "3w", "--player", str(player), *more]) == 0
        assert asked[-1]["hole"].tee.name == used
        assert told in capsys.readouterr().err
        assert any("no gold tee" in sentence for sentence in asked[-1]["hole"].assumed) == (tee == "gold")


@pytest.mark.parametrize(
    ("place", "told"),
    [("150 out", False), ("164 out, left rough", False), ("20 short of the green", False), ("pin high, 30 right", False),
     ("150 out, 3 left of the fairway", False), ("200 on, 10 right of the fairway", True),
     ("230 on, 12 right", True), ("230 on, left rough", True), ("tee", True), ("0,200", True)],
)  # fmt: skip
def test_a_tee_that_is_not_there_is_told_only_where_the_place_counts_from_it(
    asked: list, place: str, told: bool, capsys: pytest.CaptureFixture[str]
) -> None:
    words = ["plan", "withy-drain", "--player", "handicap 20, off the gold tees, called Wilma", "--from", place]
    assert _run(words) == 0
    assert ("no gold tee there" in capsys.readouterr().err) == told
    assert any("no gold tee" in sentence for sentence in asked[-1]["hole"].assumed) == told


def test_options_reach_the_question(asked: list) -> None:
    words = "compare withy-drain driver@-8 3w --player isolde --tee yellow --played 1 --seed 9"
    more = ["--sequences", "300", "--threads", "2"]
    place = ["--pin", "front left", "--from", "164 out, left rough"]
    assert _run([*words.split(), *more, *place]) == 0
    call = asked[0]
    assert call["question"] == "compare" and call["clubs"] == ["driver@-8", "3w"]
    assert (call["hole"].tee.name, call["hole"].pin.name) == ("yellow", "front left")
    assert (call["sequences"], call["seed"], call["threads"]) == (300, 9, 2)
    assert call["start"].lie == "rough" and call["start"].played == 1


def test_a_goal_reaches_the_question(asked: list) -> None:
    for words, goal in (
        (["--target", "4"], Goal("target", most_strokes=4)),
        (["--target", "bogey"], Goal("target", most_strokes=5)),  # a par 4
        (["--leave", "90-110"], Goal("leave", low_yd=90.0, high_yd=110.0)),
        (["--land", "150 to 172"], Goal("land", low_yd=150.0, high_yd=172.0)),
        ([], None),
    ):
        assert _run(["plan", "withy-drain", *words]) == 0
        assert asked.pop()["goal"] == goal


def test_metres_on_the_page_and_yards_in_the_json(asked: list, capsys: pytest.CaptureFixture[str]) -> None:
    for more in ([], ["--full"]):
        assert _run(["plan", "withy-drain", "--units", "metres", *more]) == 0
        text = capsys.readouterr().out
        assert "369 m" in text and "404 yd" not in text
    pages = []
    for units in ("yards", "metres"):
        assert _run(["plan", "withy-drain", "--units", units, "--json"]) == 0
        pages.append(capsys.readouterr().out)
    assert pages[0] == pages[1]


def test_a_place_that_begins_with_a_minus(asked: list) -> None:
    assert _run(["plan", "withy-drain", "--from", "-8,231"]) == 0
    assert asked[0]["start"].x_yd == -8.0


def test_json_alone_on_standard_output(asked: list, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["compare", "withy-drain", "driver", "3-wood", "--json"]) == 0
    streams = capsys.readouterr()
    data = json.loads(streams.out)
    assert data["schema"] == "holesim-answer-1" and data["warnings"] == ["map and plays differ"]


def test_full_and_the_demo_player_is_said(asked: list, capsys: pytest.CaptureFixture[str]) -> None:
    for more in ([], ["--full"]):
        assert _run(["plan", "withy-drain", *more]) == 0
        text = " ".join(capsys.readouterr().out.split())
        assert "No --player given, so the demo player Barnaby plays." in text
        assert ("+-" in text) == bool(more)


@pytest.mark.parametrize("suffix", ["png", "svg", "pdf"])
def test_plot_is_written_beside_the_answer(
    asked: list, tmp_path: Path, capsys: pytest.CaptureFixture[str], suffix: str
) -> None:
    target = tmp_path / f"plan.{suffix}"
    assert _run(["plan", "eel-trap", "--plot", str(target)]) == 0
    assert target.stat().st_size > 10_000 and os.listdir(tmp_path) == [target.name]
    streams = capsys.readouterr()
    assert "Nobody ahead" in streams.out and streams.err.splitlines()[-1] == f"holesim: wrote {target}"


def test_the_answer_is_not_lost_when_the_plot_fails_at_last(
    asked: list, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    from matplotlib.figure import Figure

    def full(*_args: object, **_more: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Figure, "savefig", full)
    assert _run(["plan", "eel-trap", "--plot", str(tmp_path / "plan.png")]) == 2
    streams = capsys.readouterr()
    assert "Nobody ahead" in streams.out
    assert streams.err.splitlines()[-1].endswith("(No space left on device); allowed: a place with room")
    assert os.listdir(tmp_path) == []


BAD = [
    ["plan"],
    ["plan", "no-such-hole"],
    ["plan", "withy-drain", "more"],
    ["plan", "withy-drain", "--player", "nobody"],
    ["plan", "withy-drain", "--player", ""],
    ["plan", "withy-drain", "--tee", "black"],
    ["plan", "withy-drain", "--pin", "nowhere"],
    ["plan", "withy-drain", "--from", "164 banana"],
    ["plan", "withy-drain", "--from", "4 out"],
    ["plan", "withy-drain", "--from"],
    ["plan", "withy-drain", "--played", "1"],
    ["plan", "withy-drain", "--played", "-1", "--from", "164 out"],
    ["plan", "withy-drain", "--sequences", "99"],
    ["plan", "withy-drain", "--sequences", "1000001"],
    ["plan", "withy-drain", "--sequences", "many"],
    ["plan", "withy-drain", "--sequences", "nan"],
    ["plan", "withy-drain", "--seed", "-1"],
    ["plan", "withy-drain", "--seed", "1.5"],
    ["plan", "withy-drain", "--threads", "0"],
    ["plan", "withy-drain", "--threads", "two"],
    ["plan", "withy-drain", "--json", "--full"],
    ["plan", "withy-drain", "--plot", "plan.jpg"],
    ["plan", "withy-drain", "--plot", "/no/such/folder/plan.png"],
    ["plan", "withy-drain", "--plot", "/"],
    ["plan", "withy-drain", "--colour"],
    ["plan", "withy-drain", "--units", "feet"],
    ["plan", "withy-drain", "--leave", "110-90"],
    ["plan", "withy-drain", "--land", "wedge"],
    ["plan", "withy-drain", "--leave", "90-110", "--target", "4"],
    ["plan", "withy-drain", "--target", "0"],
    ["plan", "withy-drain", "--target", "level"],
    ["plan", "withy-drain", "--target", "3", "--from", "164 out"],
    ["plan", "withy-drain", "--target", "3", "--from", "164 out", "--played", "3"],
    ["check", "withy-drain", "--units", "feet"],
    ["carries", "--units", "feet"],
    ["plan", "isolde"],
    ["compare", "withy-drain"],
    ["compare", "withy-drain", "spoon"],
    ["compare", "withy-drain", "driver@x"],
    ["compare", "withy-drain", "driver", "@3"],
    ["check", "/no/such/file"],
    ["check", "/"],
    ["fly", "withy-drain"],
]


@pytest.mark.parametrize("arguments", BAD, ids=" ".join)
def test_bad_values_cost_one_line_and_no_work(
    arguments: list[str], asked: list, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _run(arguments) == 2
    streams = capsys.readouterr()
    assert streams.out == "" and asked == []
    assert len(streams.err.splitlines()) == 1 and streams.err.startswith("holesim: ")
    assert len(streams.err) > 30


@pytest.mark.parametrize(
    ("error", "status", "words"),
    [
        (NoAnswerError("no club of the bag may be played from this lie"), 3, "no club of the bag"),
        (KeyboardInterrupt(), 130, "interrupted"),
    ],
)
def test_exit_status_of_other_ends(
    error: BaseException, status: int, words: str, monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    from simulator.strategy import ask

    def fails(*_args: object, **_more: object) -> None:
        raise error

    monkeypatch.setattr(ask, "plan", fails)
    assert _run(["plan", "withy-drain"]) == status
    assert words in capsys.readouterr().err


def test_a_mistake_of_ours_keeps_its_traceback(monkeypatch: pytest.MonkeyPatch) -> None:
    from simulator.strategy import ask

    def fails(*_args: object, **_more: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr(ask, "plan", fails)
    with pytest.raises(ZeroDivisionError):
        _run(["plan", "withy-drain"])


def test_check_says_what_is_there(capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["check", "withy-drain"]) == 0
    text = capsys.readouterr().out
    for words in ("Withy Drain, par 4, 404 yd", "yellow 388 yd", "207 to 288", "15 R to 54 R", "Assumed:"):
        assert words in text
    assert max(map(len, text.splitlines())) <= 80
    assert _run(["check", "barnaby"]) == 0
    text = capsys.readouterr().out
    for words in ("Barnaby, handicap 18", "driver", "196", "~", "Assumed:"):
        assert words in text


@pytest.mark.parametrize(("name", "kind"), [("withy-drain", "hole"), ("isolde", "player")])
def test_check_as_json(name: str, kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["check", name, "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["schema"] == "holesim-check-1" and data["kind"] == kind and data["assumed"]


def test_check_knows_a_bag_from_a_hole_and_names_the_fault(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    bag = tmp_path / "bag.toml"
    bag.write_text('name = "Ada"\nhandicap = 12\n[club.driver]\ncarry_yd = 190\n')
    assert _run(["check", str(bag)]) == 0
    assert "Ada, handicap 12" in capsys.readouterr().out
    bag.write_text('name = "Ada"\nhandicap = 12\ntee = "red"\n')  # a hole's file has a name and a tee as well
    assert _run(["check", str(bag)]) == 0
    assert "Ada, handicap 12" in capsys.readouterr().out
    bag.write_text("handicap = 12\n[club.driver]\ncarry_yd = -190\n")
    assert _run(["check", str(bag)]) == 2
    streams = capsys.readouterr()
    assert str(bag) in streams.err and "carry_yd" in streams.err and len(streams.err.splitlines()) == 1
    bag.write_text("par = [")
    assert _run(["check", str(bag)]) == 2
    assert len(capsys.readouterr().err.splitlines()) == 1


def test_list_version_and_bare_call() -> None:
    runner = CliRunner()
    listed = runner.invoke(app, ["list"])
    assert listed.exit_code == 0
    for name in ("withy-drain", "eel-trap", "long-sluice", "barnaby", "isolde"):
        assert name in listed.output
    assert runner.invoke(app, ["--version"]).output == f"holesim {__version__}\n"
    bare = runner.invoke(app, [])
    assert bare.exit_code == 0 and "Commands:" in bare.output


def run(*arguments: str, **more: Any) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": str(ROOT), **more.pop("env", {})}
    command = [sys.executable, "-m", "simulator", *arguments]
    return subprocess.run(command, capture_output=True, text=True, env=environment, timeout=60, **more)


def test_as_a_program_from_another_folder(tmp_path: Path) -> None:
    done = run("check", "eel-trap", cwd=tmp_path)
    assert done.returncode == 0 and "Eel Trap" in done.stdout and done.stderr == ""
    done = run("plan", "nothing-like-it", cwd=tmp_path)
    assert done.returncode == 2 and done.stdout == "" and len(done.stderr.splitlines()) == 1


def test_a_name_the_terminal_has_no_letters_for(tmp_path: Path) -> None:
    bag = tmp_path / "bag.toml"
    bag.write_text('name = "Zoë"\nhandicap = 12\n', encoding="utf-8")
    done = run("check", str(bag), env={"PYTHONIOENCODING": "ascii"})
    assert done.returncode == 0 and "Zo" in done.stdout and done.stderr == ""


def test_a_reader_that_stops_reading() -> None:
    command = f'"{sys.executable}" -m simulator check withy-drain | head -1'
    done = subprocess.run(
        ["bash", "-c", f"set -o pipefail; {command}"], capture_output=True, text=True,
        env={**os.environ, "PYTHONPATH": str(ROOT)}, timeout=60,
    )  # fmt: skip
    assert done.returncode == 0 and done.stderr == ""
