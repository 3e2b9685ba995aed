"""`holesim sketch`: prints, writes, refuses to overwrite; every phrase of its help and of its page is understood."""

from __future__ import annotations

import json
import re
import tomllib
from pathlib import Path

import pytest
from all_commands import COMMANDS
from written import GUIDE

from simulator.cli import _run
from simulator.errors import SimulatorError
from simulator.hole import load_hole
from simulator.hole.words import hole_from_words

WORDS = "par 4, 372; fairway 28 wide; pond right 213 to 254, edge 14 right; out left 34; green 24 deep, pin 7 on"


def help_phrases() -> list[str]:
    text = COMMANDS["sketch"].help.split("the first tee.\n")[1].split('"14 right"')[0]
    lines = [re.sub(r"\((degrees|laser readings)\)", "", line) for line in text.splitlines()]
    return [part.strip() for line in lines for part in line.split("|") if part.strip()]


def page_phrases() -> list[str]:
    rows = GUIDE["holes/WORDS.md"].split("| What | Say, for example |")[1].split("\n\n")[0].splitlines()[2:]
    return [phrase for row in rows for phrase in re.findall(r"`([^`]+)`", row.split("|")[2])]


def whole(phrase: str) -> str:
    if "par " in phrase:
        return phrase
    if phrase.startswith("14 left"):
        return f"par 4, 380; fairway {phrase}"
    if phrase.startswith("carry 190") and "pond" not in phrase:
        return f"par 4, 380; stream {phrase}"
    return f"par 4, 380; {'fairway ' if phrase.startswith('narrows') else ''}{phrase}"


@pytest.mark.parametrize("phrase", [*help_phrases(), *page_phrases()])
def test_every_phrase_shown_is_understood(phrase: str) -> None:
    hole_from_words(whole(phrase))


def test_there_are_many_of_them() -> None:
    assert len(help_phrases()) > 30 and len(page_phrases()) > 50


def test_printed(capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["sketch", WORDS]) == 0
    out, err = capsys.readouterr()
    assert out.rstrip("\n") == hole_from_words(WORDS).toml_text.rstrip("\n") and err == ""


def test_written_whole_and_not_over_another(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "it.toml"
    assert _run(["sketch", WORDS, "-o", str(path)]) == 0
    out, err = capsys.readouterr()
    said = "".join(out.split())  # a long folder's name turns the line, one too long for a line within a word
    assert f"{path}:ahole" in said and "30yardsacross" in said and f"wrote {path}" in err
    assert load_hole(path).length_yd == 372 and [p.name for p in tmp_path.iterdir()] == ["it.toml"]
    before = path.read_text()
    assert _run(["sketch", "par 3, 150", "-o", str(path)]) == 2
    assert "--force" in capsys.readouterr().err and path.read_text() == before
    assert _run(["sketch", "par 3, 150", "-o", str(path), "--force"]) == 0
    assert load_hole(path).par == 3
    assert _run(["sketch", "par 3, 150", "-o", str(tmp_path / "it.png")]) == 2
    assert _run(["sketch", "par 3, 150", "-o", str(tmp_path / "none" / "it.toml")]) == 2


def test_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["sketch", WORDS + "; pond left 213 to 254, gap 14 to line at 200", "--json"]) == 0
    out, err = capsys.readouterr()
    found = json.loads(out)
    assert list(found) == ["schema", "file", "toml", "assumed", "warnings", "hole"]
    assert found["schema"] == "holesim-sketch-1" and found["file"] is None and found["hole"]["par"] == 4
    assert len(found["warnings"]) == 1 and "warning: The gap of 14 yards" in err


def test_notes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    notes = tmp_path / "12th.txt"
    notes.write_text("My 12th: par 4, 372\nout left 34.\npond right 213 to 254, edge 14\n")
    assert _run(["sketch", str(notes)]) == 0
    assert 'name = "My 12th"' in capsys.readouterr().out
    assert _run(["sketch", str(tmp_path / "none.txt")]) == 2


def test_words_in_place_of_a_file(capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["check", WORDS]) == 0
    assert "hole in words: a hole. My hole, par 4, 372 yd from the main tee" in capsys.readouterr().out
    assert _run(["check", WORDS.replace("pond", "pand")]) == 2
    out, err = capsys.readouterr()
    assert out == "" and err == "holesim: hole in words: 'pand' (letter 30) not understood; perhaps 'pond'\n"


@pytest.mark.parametrize("phrase", [*help_phrases(), *page_phrases()])
def test_no_number_is_dropped_in_silence(phrase: str) -> None:
    """A number one larger gives another hole, or is refused."""
    words = whole(phrase)
    plain = tomllib.loads(hole_from_words(words).toml_text)
    for number in re.finditer(r"\d+(?:\.\d+)?", words):
        text = f"{words[: number.start()]}{float(number.group()) + 1.0:g}{words[number.end() :]}"
        try:
            other = tomllib.loads(hole_from_words(text).toml_text)
        except SimulatorError:
            continue
        assert other != plain, f"{number.group()} says nothing in {words!r}"
