"""What becomes of compiled code on disk: kept if it can be, compiled anew if not, and never a failed answer.

numba lets every trouble with its cache through: a full disk, a file cut short by a kill. Each would end a
question whose answer needs no file at all.
"""

from __future__ import annotations

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
            return self._inner.load_overload(signature, context)
        except Exception:  # a file cut short or scrambled raises whatever its bytes happen to mean
            self._forget()
            return None

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

    def _forget(self) -> None:
        """An index without entries, so that what is compiled next is kept over what could not be read."""
        try:
            self._inner.flush()
        except OSError as error:
            self._inner, self._reason = None, error.strerror or str(error)
