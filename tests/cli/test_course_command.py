"""`holesim course`: options, files, exit statuses, with a stand-in for the engine."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import course_results
import pytest
from words_apart import pdf_words

from simulator.cli import _run
from simulator.errors import UsageError
from simulator.strategy import running
from simulator.strategy.jobs import Job

HOLE = 'name = "{name}"\npar = 3\nlength_yd = {length}\ngreen = [{{ front_yd = {front}, depth_yd = 28, width_yd = 26 }}]\n'


def folder_of(folder: Path, count: int = 3) -> Path:
    folder.mkdir()
    for number in range(1, count + 1):
        text = HOLE.format(name=f"Short {number}", length=60 + number, front=46 + number)
        (folder / f"{number:02d}.toml").write_text(text + "bearing_deg = 90\n")
    return folder


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> list[Job]:
    """Jobs asked of the stand-in; the folder `links` has three holes."""
    monkeypatch.chdir(tmp_path)
    folder_of(tmp_path / "links")
    jobs: list[Job] = []

    def stand_in(job: Job, threads: int = 1) -> dict[str, object]:
        jobs.append(job)
        if "hopeless" in job.hole.name:
            raise UsageError("no club for it")
        return course_results.result(job, threads)

    monkeypatch.setattr(running, "work", stand_in)
    return jobs


def test_files_and_the_screen(asked: list[Job], tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    line = ["course", "links", "--player", "isolde", "--player", "barnaby", "-o", "out", "--target", "10"]
    assert _run(line) == 0
    shown, told = capsys.readouterr()
    assert "Isolde (5)" in shown and "Barnaby (18)" in shown and "Breaks 10" in " ".join(shown.split())
    assert "6 of 6: hole" in told
    assert {path.name for path in (tmp_path / "out").iterdir()} == {
        "course.csv", "course.json", "summary.txt", "team.txt", "holes",
    }  # fmt: skip
    assert len(list((tmp_path / "out" / "holes").iterdir())) == 6
    assert (tmp_path / "out" / "summary.txt").read_text().strip() in shown
    assert len(asked) == 6
    first = {path.name: path.read_bytes() for path in (tmp_path / "out").iterdir() if path.is_file()}
    assert _run(line) == 0 and len(asked) == 6  # nothing done again
    assert "6 of 6 plans are there from an earlier run" in capsys.readouterr().err
    assert first == {path.name: path.read_bytes() for path in (tmp_path / "out").iterdir() if path.is_file()}


def test_players_in_words_without_a_name_are_numbered(
    asked: list[Job], capsys: pytest.CaptureFixture[str]
) -> None:
    """Two of them were refused as "two times the player 'Player'"; one alone keeps the name of every answer."""
    words = ["--player", "handicap 9, woman", "--player", "isolde", "--player", "handicap 30"]
    assert _run(["course", "links", *words]) == 0
    told = capsys.readouterr().err
    assert {job.player.name for job in asked} == {"Player 1", "Isolde", "Player 2"}
    assert "\"called Ada\"" in told
    asked.clear()
    assert _run(["course", "links", *words, "--initials"]) == 0
    assert {job.player.name for job in asked} == {"P1", "I", "P2"}
    asked.clear()
    capsys.readouterr()
    assert _run(["course", "links", *words[2:]]) == 0
    assert {job.player.name for job in asked} == {"Isolde", "Player"} and "called" not in capsys.readouterr().err


@pytest.mark.parametrize("out", [[], ["-o", "out"]], ids=["without -o", "with -o"])
def test_pages_on_paper(
    asked: list[Job], tmp_path: Path, capsys: pytest.CaptureFixture[str], out: list[str]
) -> None:
    """A PDF with all pages, or a file a page; the same whether results are kept or not, and read from there."""
    line = ["course", "links", "--player", "isolde", "--player", "barnaby", "--target", "10", *out]
    assert _run([*line, "--pages", "wall.pdf"]) == 0
    shown, told = capsys.readouterr()
    assert "wrote wall.pdf" in told and "The round" not in shown
    team, isolde, barnaby = pdf_words(tmp_path / "wall.pdf")
    assert team.startswith("Links: still; each hole's first tee and pin") and "Isolde Barnaby" in team
    assert "Links, 3 holes, par 9; Isolde (5)" in isolde and "Breaks 10" in isolde and "Barnaby (18)" in barnaby
    assert "yards left" in team and "273 yd" in isolde
    done = len(asked)
    assert _run([*line, "--pages", "wall.svg", "--units", "metres", "--json"]) == 0
    shown, told = capsys.readouterr()
    assert json.loads(shown)["schema"] == "holesim-course-1" and told.count("wrote wall-") == 3
    assert {path.name for path in tmp_path.glob("wall-*")} == {
        "wall-1-team.svg", "wall-2-isolde.svg", "wall-3-barnaby.svg",
    }  # fmt: skip
    assert len(asked) == (done if out else 2 * done)


def test_pages_may_go_to_the_folder_of_results(asked: list[Job], tmp_path: Path) -> None:
    assert _run(["course", "links", "-o", "out", "--pages", "out/wall.pdf"]) == 0
    assert (tmp_path / "out" / "wall.pdf").is_file() and (tmp_path / "out" / "team.txt").is_file()


def test_pages_have_initials_in_their_names_too(asked: list[Job], tmp_path: Path) -> None:
    (tmp_path / "ada.toml").write_text('name = "Ada Wold"\nhandicap = 12\n')
    assert _run(["course", "links", "--player", "ada.toml", "--initials", "--pages", "wall.svg"]) == 0
    assert {path.name for path in tmp_path.glob("*.svg")} == {"wall-1-team.svg", "wall-2-aw.svg"}


def test_no_page_without_an_answer(
    asked: list[Job], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for path in (tmp_path / "links").iterdir():
        path.write_text(HOLE.format(name="hopeless", length=80, front=66))
    assert _run(["course", "links", "--pages", "wall.pdf"]) == 2
    assert "wall.pdf: not written, no hole has an answer" in capsys.readouterr().err
    assert not (tmp_path / "wall.pdf").exists()


def test_metres_on_the_pages_and_not_in_the_figures(
    asked: list[Job], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The files of figures name yards in their headings and stay the same, and nothing is worked again."""
    line = ["course", "links", "--player", "isolde", "--player", "barnaby", "-o", "out"]
    assert _run(line) == 0
    yards = {path.name: path.read_text() for path in (tmp_path / "out").glob("*.*")}
    capsys.readouterr()
    assert _run([*line, "--units", "metres"]) == 0 and len(asked) == 6
    shown = capsys.readouterr().out
    metric = {path.name: path.read_text() for path in (tmp_path / "out").glob("*.*")}
    assert {name for name in yards if yards[name] != metric[name]} == {"summary.txt", "team.txt"}
    assert "carry_yd" in metric["course.csv"]
    for text in (shown, metric["summary.txt"], metric["team.txt"]):
        assert "yards" not in text and " yd" not in text and "Line: metres left" in text


def test_quick_is_another_question(asked: list[Job]) -> None:
    """What was worked with confidence does not stand in for what was asked without, nor the other way."""
    assert _run(["course", "links", "-o", "out"]) == 0
    assert _run(["course", "links", "-o", "out", "--quick"]) == 0
    assert [job.quick for job in asked] == [False] * 3 + [True] * 3


def test_json_alone_on_standard_output(asked: list[Job], capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["course", "links", "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["course"] == "Links" and [one["number"] for one in found["holes"]] == [1, 2, 3]


def test_pins_days_tee_and_settings(asked: list[Job], tmp_path: Path) -> None:
    (tmp_path / "pins.csv").write_text("hole,on,left\n2,9,6\n")
    (tmp_path / "days.toml").write_text("[[scenario]]\nname = 'north'\nwind = '9 mph from N'\n")
    line = ["course", "links", "--pins", "pins.csv", "--pin", "back", "--scenarios", "days.toml", "--tee", "tee"]
    assert _run([*line, "--seed", "4", "--sequences", "700", "--threads", "1"]) == 0
    assert {(job.pins, job.scenario, job.seed, job.sequences) for job in asked} == {
        ("pins.csv", "north", 4, 700), ("back", "north", 4, 700),
    }  # fmt: skip
    pins = {(job.number, job.pins): job.hole.pin.name for job in asked}
    assert pins[2, "pins.csv"] == "9 on, 6 left" and pins[1, "pins.csv"] == "middle" and pins[3, "back"] == "back"
    assert all(job.conditions.wind is not None and job.conditions.wind.from_deg == 270.0 for job in asked)


def test_players_of_a_folder_by_initials(asked: list[Job], tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "squad").mkdir()
    for name in ("Ada Wold", "Ben Ash", "Bo Alder"):
        (tmp_path / "squad" / f"{name.split()[0]}.toml").write_text(f'name = "{name}"\nhandicap = 12\n')
    assert _run(["course", "links", "--players", "squad", "--initials", "-o", "out"]) == 0
    assert {job.player.name for job in asked} == {"AW", "BA", "BA2"}
    everything = capsys.readouterr().out + "".join(
        path.name + path.read_text() for path in (tmp_path / "out").rglob("*") if path.is_file()
    )
    for name in ("Ada", "Wold", "Ben", "Alder"):
        assert name not in everything


def test_a_bad_hole_is_said_and_the_status_is_2(
    asked: list[Job], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "links" / "04.toml").write_text(HOLE.format(name="hopeless", length=80, front=66))
    (tmp_path / "links" / "05.toml").write_text("par = 3\n")
    assert _run(["course", "links"]) == 2
    shown, told = capsys.readouterr()
    for text in (shown, told):
        assert "no answer for hole 5: links/05.toml: name" in " ".join(text.split())
        assert "hole 4 (Barnaby, still, first): no club for it" in " ".join(text.split())
    assert "Short 3" in shown


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (["course", "nowhere"], "no such folder"),
        (["course", "links", "--players", "links/none"], "no player file in it"),
        (["course", "links", "--player", "nobody"], "nobody"),
        (["course", "links", "--player", "isolde", "--player", "isolde"], "two times the player"),
        (["course", "links", "--pins", "none.csv"], "no such file"),
        (["course", "links", "--scenarios", "none.toml"], "no such file"),
        (["course", "links", "--sequences", "3"], "sequences"),
        (["course", "links", "--target", "0"], "target"),
        (["course", "links", "--cluster", "nonsense"], "no scheduler"),
        (["course", "links", "--pages", "wall.doc"], "allowed are files ending in .png, .svg, .pdf"),
        (["course", "links", "--pages", "wall"], "allowed are files ending in .png, .svg, .pdf"),
        (["course", "links", "--pages", "none/wall.pdf"], "there is no folder 'none'"),
        (["course", "links", "-o", "out", "--pages", "out/wall.doc"], "allowed are files ending in"),
        (["course", "links", "-o", "links/01.toml", "--pages", "links/01.toml/wall.pdf"], "cannot be written"),
    ],
)
def test_slips(asked: list[Job], line: list[str], said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(line) == 2
    shown, told = capsys.readouterr()
    assert shown == "" and said in told and told.count("\n") == 1 and not asked and not Path("out").exists()


def test_each_player_plays_from_a_tee_of_his_own(
    asked: list[Job], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Hole 2 has no red tee: that is said, and the first is played; --tee goes before all of it."""
    for name in ("01.toml", "03.toml"):
        path = next((tmp_path / "links").glob(f"{name[:2]}*"))
        path.write_text('tee = [{ name = "white" }, { name = "red", at_yd = 12 }]\n' + path.read_text())
    (tmp_path / "squad").mkdir()
    (tmp_path / "squad" / "ada.toml").write_text('name = "Ada"\nhandicap = 20\nsex = "woman"\ntee = "red"\n')
    (tmp_path / "squad" / "bob.toml").write_text('name = "Bob"\nhandicap = 12\n')
    line = ["course", "links", "--players", "squad", "-o", "out"]
    assert _run(line) == 0
    shown, told = capsys.readouterr()
    tees = {(job.player.name, job.number): job.hole.tee.name for job in asked}
    assert [tees["Ada", k] for k in (1, 2, 3)] == ["red", "main", "red"]
    assert [tees["Bob", k] for k in (1, 2, 3)] == ["white", "main", "white"]
    assert "Ada: no red tee on hole 2, where the first tee is played" in told
    shown = " ".join(shown.split())  # each on his own page, both on the team's
    assert "Ada (20); red tees (first tee on 2)," in shown and "Bob (12); each hole's first tee and pin" in shown
    assert "each hole's first tee (Ada red)" in " ".join(Path("out/team.txt").read_text().split())
    assert _run(line) == 0 and len(asked) == 6  # kept under the same digests
    (tmp_path / "squad" / "ada.toml").write_text('name = "Ada"\nhandicap = 20\nsex = "woman"\n')
    assert _run(line) == 0
    assert [(job.player.name, job.hole.tee.name) for job in asked[6:]] == [("Ada", "white"), ("Ada", "main"), ("Ada", "white")]


def test_a_sheet_with_a_hole_that_is_not_there_is_refused_before_any_work(
    asked: list[Job], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "pins.csv").write_text("hole,on,left\n2,9,6\n9,8,4\n")
    assert _run(["course", "links", "--pins", "pins.csv", "-o", "out"]) == 2
    told = capsys.readouterr().err
    assert "pins.csv: a pin for hole 9, which Links has not; allowed: 1, 2, 3" in told and told.count("\n") == 1
    assert not asked and not Path("out").exists()


def test_plan_takes_a_pin_in_paces(monkeypatch: pytest.MonkeyPatch) -> None:
    import fake_answers

    from simulator.strategy import ask

    pins = []

    def stand_in(hole, player, **more):  # type: ignore[no-untyped-def]
        pins.append(hole.pin)
        return fake_answers.answer(hole, player, n=300)

    monkeypatch.setattr(ask, "plan", stand_in)
    assert _run(["plan", "withy-drain", "--pin", "22 on, 5 left"]) == 0
    assert _run(["plan", "ostrel-heath/7", "--pin", "back"]) == 0
    assert [pin.name for pin in pins] == ["22 on, 5 left", "back right"]
    assert _run(["plan", "withy-drain", "--pin", "60 on"]) == 2


@pytest.mark.slow
@pytest.mark.skipif(os.name == "nt", reason="signals")
def test_ctrl_c_for_real(tmp_path: Path) -> None:
    """Interrupted from outside after the first result, the program keeps it, exits 130, and can go on."""
    folder_of(tmp_path / "links", 4)
    line = [sys.executable, "-m", "simulator", "course", str(tmp_path / "links"), "--sequences", "200",
            "--threads", "1", "-o", str(tmp_path / "out")]  # fmt: skip
    kept = tmp_path / "out" / "holes"
    with subprocess.Popen(line, stderr=subprocess.PIPE, text=True) as process:
        while not (kept.is_dir() and any(path.suffix == ".json" for path in kept.iterdir())):
            assert process.poll() is None
            time.sleep(0.05)
        process.send_signal(signal.SIGINT)
        told = process.communicate(timeout=120)[1]
    assert process.returncode == 130 and "interrupted" in told and "Traceback" not in told
    count = len(list(kept.iterdir()))
    assert 1 <= count < 4 and all(path.suffix == ".json" for path in kept.iterdir())
    done = subprocess.run(line, capture_output=True, text=True, check=True)
    assert f"{count} of 4 plans are there from an earlier run" in done.stderr
    subprocess.run([*line[:-1], str(tmp_path / "whole")], capture_output=True, text=True, check=True)
    cut, whole = (
        {path.relative_to(folder): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
        for folder in (tmp_path / "out", tmp_path / "whole")
    )
    assert cut == whole  # every file, to the last digit
