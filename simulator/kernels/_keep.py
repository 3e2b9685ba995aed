"""What becomes of compiled code on disk: kept if it can be, compiled anew if not, and never a failed answer.

numba lets every trouble with its cache through: a full disk, a file cut short by a kill. Each would end a
question whose answer needs no file at all. Folders of other versions that nobody has used for a month are
taken away when something new is kept.
"""

from __future__ import annotations

import contextlib
import os
import re
import shutil
import time
import warnings
from pathlib import Path
from typing import Any


class NotKeptWarning(UserWarning):
    """Compiled code cannot be kept on disk: the next start compiles again."""


_TOLD: set[str] = set()


def _tell(folder: Path, reason: str) -> None:
    """Once a process: the first kernel that cannot be kept speaks for all."""
    if not _TOLD:
        _TOLD.add(reason)
        warnings.warn(
            f"the compiled simulation cannot be kept in {folder} ({reason}): the next start compiles it "
            "again; allowed: a folder with room that HOLESIM_CACHE_DIR names",
            NotKeptWarning,
            stacklevel=2,
        )


UNUSED_DAYS = 30.0
"""A folder of another version is removed when it has not been used for so long [days]."""

_FOLDER = re.compile(r"kernels-[0-9a-f]{16}")
_USED: set[Path] = set()
_CLEANED: set[Path] = set()


def _mark_used(folder: Path) -> None:
    """Once a process: the folder's own time says when it was last read, whatever the disk notes."""
    if folder not in _USED:
        _USED.add(folder)
        with contextlib.suppress(OSError):  # somebody else's, read only: it is theirs to clean
            os.utime(folder)


def _remove_unused(folder: Path) -> None:
    """Once a process, when something is kept in `folder`: take away its neighbours that nobody uses.

    Only folders named as these are (rmtree follows no link); what cannot be removed stays, and fails nothing.
    """
    if folder in _CLEANED:
        return
    _CLEANED.add(folder)
    oldest = time.time() - UNUSED_DAYS * 86_400.0
    try:
        for other in folder.parent.iterdir():
            ours = _FOLDER.fullmatch(other.name) and other.is_dir()
            if ours and other != folder and _last_used(other) < oldest:
                shutil.rmtree(other, ignore_errors=True)
    except OSError:
        pass


def _last_used(folder: Path) -> float:
    """The latest time anything in a folder was written or read [s since 1970]."""
    times = []
    for path in (folder, *folder.rglob("*")):
        stat = path.stat()
        # a folder is read by whoever lists its neighbours, this function too: only its writing counts
        times.append(stat.st_mtime if path.is_dir() else max(stat.st_mtime, stat.st_atime))
    return max(times)


class Kept:
    """The cache of one function as numba's dispatcher asks it.

    Parameters
    ----------
    inner : numba cache or None
        None where there is no folder to keep anything in.
    folder : Path
        The one that was wanted.
    reason : str
        Why there is none.
    """

    def __init__(self, inner: Any, folder: Path, reason: str = "") -> None:
        self._inner, self._folder, self._reason = inner, folder, reason

    @property
    def cache_path(self) -> str:
        """The folder, as numba's statistics ask for it."""
        return str(self._folder)

    def load_overload(self, signature: Any, context: Any) -> Any:
        """What was kept, or None: then numba compiles."""
        if self._inner is None:
            return None
        try:
            found = self._inner.load_overload(signature, context)
        except Exception:  # a file cut short or scrambled raises whatever its bytes happen to mean
            self._forget()
            return None
        if found is not None:
            _mark_used(self._folder)
        return found

    def save_overload(self, signature: Any, compiled: Any) -> None:
        """Keep it if there is room."""
        if self._inner is None:
            _tell(self._folder, self._reason)
            return
        try:
            self._inner.save_overload(signature, compiled)
        except OSError as error:
            self._inner = None
            self._reason = error.strerror or str(error)
            _tell(self._folder, self._reason)
            return
        _remove_unused(self._folder)

    def _forget(self) -> None:
        """An index without entries, so that what is compiled next is kept over what could not be read."""
        try:
            self._inner.flush()
        except OSError as error:
            self._inner, self._reason = None, error.strerror or str(error)
