"""The pages for users keep up: every command, option, key and exit status is in them, and examples work."""

from __future__ import annotations

import json
import re
import shlex
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import course_results
import fake_answers
import fake_lessons
import fake_review
import pytest
from all_commands import COMMANDS
from written import GUIDE, JSON_KEYS, README, ROOT, WHOLE_GUIDE, blocks

from simulator.cli import _run
from simulator.hole import load_hole
from simulator.hole.sketch import KINDS
from simulator.player import load_player
from simulator.player.habits import HABIT_KEYS, TOP_KEYS
from simulator.player.model import CLUB_NUMBERS
from simulator.report.cautions import RULES
from simulator.report.screen import COLUMNS
from simulator.report.table import LABEL
from simulator.report.text import LINES, answer_screen
from simulator.strategy.confidence import Confidence, Flip
from simulator.strategy.errorbars import Estimate
from simulator.strategy.goals import Goal, GoalLine


def lines_of(language: str) -> list[Any]:
    """A parameter for every line of such blocks: its page, the first where it stands on several, and the line."""
    first: dict[str, str] = {}
    for page in GUIDE:
        for block in blocks(language, page):
            for line in block.splitlines():
                first.setdefault(line, page)
    return [pytest.param(line, id=f"{page}: {line}") for line, page in first.items()]


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_and_option_is_described(command: str) -> None:
    assert f"`holesim {command}" in WHOLE_GUIDE
    for parameter in COMMANDS[command].params:
        if getattr(parameter, "hidden", False):  # an old spelling
            continue
        for option in parameter.opts:
            if option.startswith("--"):
                assert f"`{option}" in WHOLE_GUIDE, option


def test_the_overview_lists_every_command_in_a_line_of_its_own() -> None:
    overview = README.split("## Commands\n")[1].split("### Options\n")[0]
    for command in COMMANDS:
        assert re.search(rf"^\| `holesim {command}[ `]", overview, re.MULTILINE), command


def keys(value: Any) -> Iterator[str]:
    """Keys with a fixed meaning, in all of an answer."""
    for key, item in value.items():
        yield key
        if key == "alternatives":
            for one in item:
                yield from one
        elif key == "start":
            yield from item


def test_every_key_of_room_reach_point_and_goal_is_described() -> None:
    line = GoalLine(3.0, Estimate(0.1, 0.01), Estimate(0.1, 0.01))
    answer = fake_answers.answer(n=300, goal=Goal("target", most_strokes=4), goal_line=line).to_dict()
    one = answer["alternatives"][0]
    assert {f"{key}_standard_error" for key in ("cost", "gain")} < answer["goal_line"].keys()
    for part in (answer["goal"], ["average_aim_offset_yd", "cost", "gain"], one["room"], one["reach"][0], one["point"]):
        assert not [
            key for key in part if f"`{key}`" not in JSON_KEYS and not key.endswith("_standard_error_yd")
        ]


def test_every_json_key_is_described() -> None:
    missing = [key for key in keys(fake_answers.answer(n=300).to_dict()) if f"`{key}`" not in JSON_KEYS]
    sure = Confidence(200, 24, (0.9, 0.1), (0.02, 0.02), 0.9)
    flip = Flip("driver_spread", "driver", "times", (0.5, 2.0), 0.8, 1)
    missing += [key for key in (*sure.to_dict(), *flip.to_dict()) if f"`{key}`" not in JSON_KEYS]
    assert not missing


def test_every_key_of_the_files_is_described() -> None:
    others = ("local_rule_e5", "lost_chance", "short_game", "bearing_deg", "stroke_index")
    for word in (*KINDS, *CLUB_NUMBERS, *HABIT_KEYS, *TOP_KEYS, "sex", *others):
        assert f"`{word}" in WHOLE_GUIDE, word


@pytest.mark.parametrize("status", ["0", "1", "2", "3", "130"])
def test_every_exit_status_is_described(status: str) -> None:
    assert re.search(rf"^\| {status} \|", GUIDE["examples/JSON.md"], re.MULTILINE)


@pytest.mark.parametrize(
    "words", ["Rules of Golf 4.3", "Rule 10.2", "Local rules and the committee", "look and shout"]
)
def test_cautions(words: str) -> None:
    assert words in README
    assert not re.search(r"\bsafe(ly|r|st)?\b", WHOLE_GUIDE, re.IGNORECASE)


@pytest.fixture
def workshop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with the files that the pages show or name, and a stand-in for the engine."""
    from simulator.strategy import ask, lesson, practice, review, running
    from simulator.strategy.errorbars import Estimate
    from simulator.strategy.practice import Practice

    def stand_in(hole: Any, player: Any, clubs: Any = None, *, start: Any = None, **_more: Any) -> object:
        return fake_answers.answer(hole, player, start=start, n=300)

    def no_practice(
        holes: Any, player: Any, *, conditions: Any, sequences: int, seed: int, **_more: Any
    ) -> object:
        score = (Estimate(5.0, 0.01),)
        return Practice(player, tuple(holes), tuple(conditions), score, (), (), seed, sequences)

    monkeypatch.setattr(practice, "practice", no_practice)
    monkeypatch.setattr(ask, "plan", stand_in)
    monkeypatch.setattr(ask, "compare", stand_in)
    monkeypatch.setattr(lesson, "lesson", lambda hole, player, *_, **__: fake_lessons.lesson())
    monkeypatch.setattr(review, "review", fake_review.hole_review)
    monkeypatch.setattr(review, "review_round", fake_review.round_review)
    monkeypatch.chdir(tmp_path)
    (tmp_path / "round.txt").write_text("7: driver to 160 out; 8i to 20 ft; 2 putts\n8: 6i to 20 ft; 3 putts\n")
    shown = {"my-hole": "holes/FILE.md", "readings": "holes/LASER.md", "my-bag": "examples/PLAYERS.md"}
    for name, page in shown.items():
        (block,) = blocks("toml", page)
        (tmp_path / f"{name}.toml").write_text(block)
    shutil.copy(ROOT / "tests" / "hole" / "maps" / "tidewrack.geojson", tmp_path / "course.geojson")
    (tmp_path / "points.csv").write_text("lon,lat,ele_m\n-123.4,-48.9,3\n-123.39,-48.9,4\n-123.4,-48.89,5\n")
    (tmp_path / "shots.csv").write_text("club,carry,offline\n7i,140,-6\n7i,136,4\n7i,129,9\n")
    (tmp_path / "range.csv").write_text("club,Flight (m),Dev\n7i,128,-6\n7i,124,4\nBig Dog,190,9\n")
    (tmp_path / "mine.toml").write_text(
        '[columns]\ncarry = "Flight (m)"\noffline = "Dev"\n[clubs]\n"Big Dog" = "driver"\n'
    )
    monkeypatch.setattr(running, "work", course_results.result)
    (tmp_path / "squad").mkdir()
    (tmp_path / "squad" / "ada.toml").write_text('name = "Ada Wold"\nhandicap = 12\n')
    (tmp_path / "pins.csv").write_text("hole,on,left\n2,9,6\n")
    (days,) = blocks("toml", "examples/COURSE.md")
    (tmp_path / "days.toml").write_text(days)
    return tmp_path


def test_the_files_of_the_pages_are_read(workshop: Path) -> None:
    hole, player = load_hole("my-hole.toml"), load_player("my-bag.toml")
    assert len((workshop / "my-hole.toml").read_text().splitlines()) == 12
    assert (hole.par, hole.length_yd, len(hole.pins)) == (4, 372.0, 2)
    assert player.club("driver").carry_yd == 205.0 and len(player.clubs) == 9


SPOKEN = {
    page: [line[2:] for block in blocks("console", page) for line in block.splitlines() if line.startswith("$ ")]
    for page in GUIDE
}


def test_the_transcript_is_the_second_section() -> None:
    assert README.index("## The first ten minutes") < README.index("## Before you use it")
    assert [line.split()[1] for line in SPOKEN["README.md"]] == ["sketch", "compare"]
    assert [line.split()[1] for line in SPOKEN["examples/REVIEW.md"]] == ["review"]


@pytest.mark.parametrize("page", [page for page, lines in SPOKEN.items() if lines])
def test_the_commands_of_a_transcript_run(page: str, workshop: Path) -> None:
    for line in SPOKEN[page]:
        assert _run(shlex.split(line)[1:]) == 0


@pytest.mark.parametrize("line", lines_of("sh"))
def test_the_commands_of_the_pages_run(line: str, workshop: Path) -> None:
    assert _run(shlex.split(line)[1:]) == 0


@pytest.mark.parametrize("page", GUIDE)
def test_every_page_has_an_example_that_is_run(page: str) -> None:
    assert blocks("sh", page)
    assert not re.findall(r"^    holesim ", GUIDE[page], re.MULTILINE)  # indented ones are not


def test_the_python_of_the_readme_runs(workshop: Path) -> None:
    names: dict[str, Any] = {}
    exec(blocks("python", "README.md")[0], names)
    assert "yd: " in names["summary"] and names["as_json"]["start"]["played"] == 1
    assert (workshop / "plan.svg").stat().st_size > 10_000


def test_the_two_lines_that_do_it_all() -> None:
    lines = [line.strip() for line in README.splitlines() if line.startswith("    python3 -m venv")]
    assert len(lines) == 2
    assert lines[0].endswith(".venv/bin/holesim compare withy-drain driver 3-wood")
    assert lines[1].endswith(".venv/bin/python -m pytest -n auto --dist loadfile")
    assert README.index(lines[0]) < 2500  # near the top


PASTED = re.search(r"A real answer:\n\n```\n(.*?)\n```\n", README, re.DOTALL)


def test_the_pasted_answer_is_an_answer_screen() -> None:
    """Its rows and sentences are those of a screen of today; `benchmarks/readme_answer.py` makes it anew."""
    assert PASTED is not None
    lines = PASTED[1].splitlines()
    assert len(lines) <= LINES and max(map(len, lines)) <= COLUMNS
    screen = answer_screen(fake_answers.answer(n=300, sure=0.8)).splitlines()
    labels = [line[:LABEL].strip() for line in screen if line[:4].islower() and re.search(r"\s{3,}\S", line)]
    for label in labels:
        if not label.startswith("ball in") and label != "fairway hit":
            assert any(line.startswith(label) for line in lines), label
    text = " ".join(PASTED[1].split())
    for words in (
        "In 100 plays: Withy Drain",
        "Room (yd):",
        "of that line plays alike.",
        "Nobody ahead nearer than",
    ):
        assert words in text
    assert text.endswith(RULES) and text.startswith(("Hit the ", "3-wood ", "Driver "))


@pytest.mark.slow
def test_the_pasted_answer_is_that_of_this_version(capsys: pytest.CaptureFixture[str]) -> None:
    from read_screen import check_screen

    assert PASTED is not None
    assert _run(["compare", "withy-drain", "driver", "3-wood", "--json"]) == 0
    check_screen(PASTED[1], json.loads(capsys.readouterr().out))
