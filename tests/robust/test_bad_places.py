"""Places that cannot be read or written, a full disk, and a kill in the middle of writing."""

from __future__ import annotations

import errno
import os
import random
import signal
import subprocess
import sys
import time
import tomllib
from pathlib import Path
from typing import Any

import pytest
from bad_inputs import Folder
from runs import PACKAGE, judge, run, shell

from simulator.errors import FileError
from simulator.files import write_text, written_whole

READERS: dict[str, list[str]] = {
    "plan": ["plan", "{}"], "compare": ["compare", "{}", "driver"], "check": ["check", "{}"], "survey": ["survey", "{}"],
    "player": ["carries", "--player", "{}"], "fit": ["player", "fit", "{}", "--level", "3"],
    "mapping": ["player", "fit", "shots.csv", "--level", "3", "--mapping", "{}"], "map": ["import-map", "{}", "-o", "out"],
    "elevation": ["import-map", "map.geojson", "--elevation", "{}", "-o", "out"], "notes": ["sketch", "{}"],
}  # fmt: skip
WRITERS: dict[str, list[str]] = {
    "sketch": ["sketch", "par 4, 372", "--force", "-o", "{}"], "survey": ["survey", "survey.toml", "--force", "-o", "{}"],
    "fit": ["player", "fit", "shots.csv", "--level", "3", "--force", "-o", "{}"],
    "new": ["new", "player", "--name", "Ada", "--handicap", "3", "--force", "-o", "{}"],
    "plot": ["player", "fit", "shots.csv", "--level", "3", "--plot", "{}"],
}  # fmt: skip


def refused(words: list[str], path: object, folder: Folder) -> str:
    arguments = [word.replace("{}", str(path)) for word in words]
    seen = run(arguments)
    judge(arguments, seen, folder.path)
    assert seen.status == 2, seen
    return seen.err


@pytest.mark.parametrize("reader", READERS)
def test_what_cannot_be_read(reader: str, folder: Folder) -> None:
    end = ".txt" if reader == "notes" else ".csv" if reader in ("fit", "elevation") else ".toml"
    path = folder.path / f"bad{end}"
    refused(READERS[reader], path, folder)  # none there
    refused(READERS[reader], folder.path / "none" / f"bad{end}", folder)
    path.mkdir()
    refused(READERS[reader], path, folder)
    path.rmdir()
    path.symlink_to(path)  # a link that leads to itself
    refused(READERS[reader], path, folder)
    path.unlink()
    refused(READERS[reader], "x" * 5000 + end, folder)
    refused(READERS[reader], f"a\0b{end}", folder)
    for content in (b"", b"\xff\xfe\x00", b"\x00" * 100, "Mühle = é".encode("latin-1")):
        path.write_bytes(content)
        if content or reader not in ("notes", "mapping"):  # which may be empty
            refused(READERS[reader], path, folder)
    os.chmod(path, 0)
    if os.geteuid():  # who may read everything is refused nothing
        assert "Permission denied" in refused(READERS[reader], path, folder)


@pytest.mark.parametrize("writer", WRITERS)
def test_what_cannot_be_written(writer: str, folder: Folder) -> None:
    end = ".png" if writer == "plot" else ".toml"
    refused(WRITERS[writer], folder.path / "none" / f"x{end}", folder)
    (folder.path / f"dir{end}").mkdir()
    refused(WRITERS[writer], folder.path / f"dir{end}", folder)
    refused(WRITERS[writer], folder.path / "bag.toml" / f"x{end}", folder)  # a file where a folder should be
    refused(WRITERS[writer], folder.path / ("x" * 300 + end), folder)
    refused(WRITERS[writer], f"a\0b{end}", folder)
    refused(WRITERS[writer], f"/proc/x{end}", folder)
    device = folder.path / f"device{end}"
    device.symlink_to("/dev/full")
    refused(WRITERS[writer], device, folder)
    assert Path("/dev/full").is_char_device()  # not replaced by a file, whoever we are
    if os.geteuid():
        os.chmod(folder.path, 0o500)
        assert "Permission denied" in refused(WRITERS[writer], folder.path / f"x{end}", folder)
        os.chmod(folder.path, 0o700)


def test_a_link_is_written_through(tmp_path: Path) -> None:
    (tmp_path / "link.toml").symlink_to(tmp_path / "real.toml")
    write_text(tmp_path / "link.toml", "a = 1\n")
    assert (tmp_path / "link.toml").is_symlink() and (tmp_path / "real.toml").read_text() == "a = 1\n"


@pytest.mark.parametrize("writer", WRITERS)
@pytest.mark.parametrize("step", ["open", "write", "rename"])
def test_a_full_disk(writer: str, step: str, folder: Folder, monkeypatch: pytest.MonkeyPatch) -> None:
    """Whichever step fails for want of room: one line, what was there stays, no draft stays."""
    target = folder.path / ("x.png" if writer == "plot" else "x.toml")
    target.write_text("old = 1\n")

    def full(*_: Any, **__: Any) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    if step == "write":
        from matplotlib.figure import Figure

        monkeypatch.setattr(Path, "write_text", full)
        monkeypatch.setattr(Figure, "savefig", full)
    else:
        monkeypatch.setattr({"open": "tempfile.mkstemp", "rename": "os.replace"}[step], full)
    assert "No space left on device" in refused(WRITERS[writer], target, folder)
    assert target.read_text() == "old = 1\n"


IN_NO_ROOM = {
    "sketch": ("sketch 'par 4, 372' -o {}.toml", 0),
    "new": ("new player --name Ada --handicap 3 -o {}.toml", 0),
    "show": ("show eel-trap -o {}.png", 1000),
    "card": ("card eel-trap -o {}.svg", 0),
    "import-map": ("import-map map.geojson --json -o {}", 0),
}
"""Commands that write, and the least of the answer that is told on standard output all the same."""


@pytest.mark.parametrize("writer", IN_NO_ROOM)
def test_files_may_not_grow(writer: str, folder: Folder) -> None:
    """A real limit (RLIMIT_FSIZE, 0 bytes: what a full disk is to whoever writes), standard output a pipe."""
    words, told = IN_NO_ROOM[writer]
    before = {path: path.read_bytes() for path in folder.path.rglob("*") if path.is_file()}
    done = shell(f"ulimit -f 0; $H {words.replace('{}', 'new')}", folder.path, PYTHONDONTWRITEBYTECODE="1")
    assert done.returncode == 2 and len(done.stdout) >= told, done
    last = done.stderr.decode().splitlines()[-1]
    assert last.startswith("holesim: new") and last.endswith("(File too large); allowed: a place with room"), done
    after = {path: path.read_bytes() for path in folder.path.rglob("*") if path.is_file()}
    assert after == before


@pytest.mark.parametrize("stop", [KeyboardInterrupt, SystemExit, MemoryError])
def test_stopped_while_writing(stop: type[BaseException], tmp_path: Path) -> None:
    with pytest.raises(stop), written_whole(tmp_path / "x.toml") as draft:
        draft.write_text("half")
        raise stop
    assert list(tmp_path.iterdir()) == []


def test_no_place_is_one_error(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="a folder"):
        write_text(tmp_path, "x")


LONG = 200_000
WRITING = f"""
import sys
from simulator.files import write_text
print("ready", flush=True)
number = 1
while True:
    number += 1
    write_text(sys.argv[1], f"number = {{number}}\\nlong = '{{str(number % 10) * {LONG}}}'\\nlast = {{number}}\\n")
"""


def test_killed_while_writing(tmp_path: Path) -> None:
    """Twelve writers killed at any moment: the file is a whole one every time, and only drafts lie beside it."""
    target = tmp_path / "x.toml"
    write_text(target, "number = 1\nlong = ''\nlast = 1\n")
    luck, seen = random.Random(5), set()
    for _ in range(12):
        with subprocess.Popen(
            [sys.executable, "-c", WRITING, str(target)], stdout=subprocess.PIPE, env={**os.environ, "PYTHONPATH": PACKAGE}
        ) as writer:
            assert writer.stdout is not None and writer.stdout.readline() == b"ready\n"
            time.sleep(0.05 * luck.random())
            writer.send_signal(signal.SIGKILL)
        found = tomllib.loads(target.read_text("utf-8"))
        assert found["number"] == found["last"] and set(found["long"]) <= {str(found["number"] % 10)}
        assert len(found["long"]) in (0, LONG)
        seen.add(found["number"])
    assert len(seen) > 3  # they were really writing
    assert all(p == target or p.name.startswith(".holesim-") for p in tmp_path.iterdir())
