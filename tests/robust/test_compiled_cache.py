"""Compiled code that cannot be kept, or was kept badly: the answer comes all the same."""

from __future__ import annotations

import json
import os
import random
import time
from pathlib import Path

import pytest
from runs import shell

from simulator.kernels._keep import UNUSED_DAYS, Kept

ASKED = "$H carries 150 --json"
SENTENCE = b"holesim: warning: the compiled simulation cannot be kept in "


def kept_files(folder: Path) -> dict[Path, int]:
    return {path: path.stat().st_size for path in folder.rglob("*.nb[ic]")}


def test_a_cache_on_a_full_disk(tmp_path: Path) -> None:
    """No file may grow over 16 KiB, which numba meets as it meets a full disk: some code fits, some does not."""
    done = shell(f"ulimit -f 16; {ASKED}", tmp_path, HOLESIM_CACHE_DIR=str(tmp_path / "cache"))
    assert done.returncode == 0 and json.loads(done.stdout)["club"], done.stderr
    assert done.stderr.startswith(SENTENCE + bytes(tmp_path)) and done.stderr.count(b"\n") == 1
    assert b"File too large" in done.stderr and b"HOLESIM_CACHE_DIR" in done.stderr
    assert kept_files(tmp_path)  # something was written before it was full


def test_a_cache_that_is_a_file(tmp_path: Path) -> None:
    """And a home that cannot be written either: nothing else is kept anywhere."""
    (tmp_path / "cache").write_text("mine")
    home = {"HOME": "/proc/none", "XDG_CACHE_HOME": "/proc/none"}
    done = shell(ASKED, tmp_path, HOLESIM_CACHE_DIR=str(tmp_path / "cache"), **home)
    assert done.returncode == 0 and json.loads(done.stdout)["club"]
    assert done.stderr.startswith(SENTENCE) and done.stderr.count(b"\n") == 1 and b"Not a directory" in done.stderr
    assert (tmp_path / "cache").read_text() == "mine"


def test_a_cache_cut_short(tmp_path: Path) -> None:
    """Files that end anywhere, or hold something else: compiled anew, kept anew, nothing said."""
    cache, luck = tmp_path / "cache", random.Random(4)
    first = shell(ASKED, tmp_path, HOLESIM_CACHE_DIR=str(cache))
    whole = kept_files(cache)
    assert first.returncode == 0 and first.stderr == b"" and whole
    for k, path in enumerate(sorted(whole)):  # by turns the index and the code of a function
        kept = path.read_bytes()
        if k % 4:
            path.write_bytes(b"not this" if k % 5 == 0 else kept[: luck.randrange(len(kept))])
    again = shell(ASKED, tmp_path, HOLESIM_CACHE_DIR=str(cache))
    assert (again.returncode, again.stdout, again.stderr) == (0, first.stdout, b"")
    assert kept_files(cache).keys() == whole.keys()
    mended = {path: path.stat().st_mtime_ns for path in whole}
    last = shell(ASKED, tmp_path, HOLESIM_CACHE_DIR=str(cache))
    assert (last.returncode, last.stdout, last.stderr) == (0, first.stdout, b"")
    assert {path: path.stat().st_mtime_ns for path in whole} == mended  # read, not compiled


def old_folder(cache: Path, name: str, days: float, read_days: float | None = None) -> Path:
    """A folder of compiled code last written so many days ago, its file last read `read_days` ago."""
    folder = cache / name / "deep"
    folder.mkdir(parents=True)
    file = folder / "kernel.1.nbc"
    file.write_bytes(b"code")
    written = time.time() - days * 86_400.0
    read = written if read_days is None else time.time() - read_days * 86_400.0
    os.utime(file, (read, written))
    for path in (folder, folder.parent):
        os.utime(path, (written, written))
    return folder.parent


class _Keeps:
    """numba's cache as `Kept` calls it: keeps, and finds."""

    def save_overload(self, signature: object, compiled: object) -> None:
        pass

    def load_overload(self, signature: object, context: object) -> str:
        return "code"


def test_folders_nobody_uses_are_taken_away_when_something_is_kept(tmp_path: Path) -> None:
    """Other versions' folders after a month without use; nothing else in the folder, whatever its age."""
    ours = old_folder(tmp_path, f"kernels-{'0' * 16}", 90.0)
    unused = old_folder(tmp_path, f"kernels-{'a' * 16}", UNUSED_DAYS + 1.0)
    young = old_folder(tmp_path, f"kernels-{'b' * 16}", UNUSED_DAYS - 1.0)
    read = old_folder(tmp_path, f"kernels-{'c' * 16}", 90.0, read_days=UNUSED_DAYS - 1.0)
    others = [old_folder(tmp_path, name, 90.0) for name in ("kernels-mine", "results", f"kernels-{'d' * 16}-x")]
    link = tmp_path / f"kernels-{'e' * 16}"
    link.symlink_to(others[0])
    kept = Kept(_Keeps(), ours)
    Kept(_Keeps(), young).load_overload(None, None)
    assert unused.exists()  # nothing was kept yet
    kept.save_overload(None, None)
    assert not unused.exists()
    assert all(folder.exists() for folder in (ours, young, read, link, *others))


def test_reading_marks_a_folder_as_used(tmp_path: Path) -> None:
    folder = old_folder(tmp_path, f"kernels-{'0' * 16}", 90.0)
    Kept(_Keeps(), folder).load_overload(None, None)
    assert time.time() - folder.stat().st_mtime < 3600.0
    Kept(_Keeps(), old_folder(tmp_path, f"kernels-{'1' * 16}", 0.0)).save_overload(None, None)
    assert folder.exists()


def test_what_cannot_be_removed_fails_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(path: Path) -> list[Path]:
        raise PermissionError(13, "Permission denied")

    unused = old_folder(tmp_path, f"kernels-{'a' * 16}", 90.0)
    monkeypatch.setattr(Path, "iterdir", refuse)
    Kept(_Keeps(), tmp_path / f"kernels-{'0' * 16}").save_overload(None, None)
    monkeypatch.undo()
    monkeypatch.setattr(os, "utime", lambda folder: refuse(folder))
    Kept(_Keeps(), tmp_path / f"kernels-{'1' * 16}").load_overload(None, None)
    assert unused.exists()
