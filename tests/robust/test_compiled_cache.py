"""Compiled code that cannot be kept, or was kept badly: the answer comes all the same."""

from __future__ import annotations

import json
import random
from pathlib import Path

from test_terminals import shell

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
    (tmp_path / "cache").write_text("mine")
    done = shell(ASKED, tmp_path, HOLESIM_CACHE_DIR=str(tmp_path / "cache"))
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
