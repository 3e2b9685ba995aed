"""Files are written beside their place and renamed, so that nobody ever finds half of one."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from .errors import FileError

ANYBODY = 0o666
"""Rights of a written file before the mask of its owner: a temporary file would be its owner's alone."""


@contextmanager
def written_whole(path: str | Path) -> Iterator[Path]:
    """A temporary path beside ``path``, of the same suffix; renamed to it when the block ends well.

    Raises
    ------
    FileError
        The folder is missing or cannot be written, or the disk is full. Nothing is left behind.
    """
    target = Path(path)
    draft: Path | None = None
    try:
        target = target.resolve()  # a link stays a link: what it leads to is written
        if target.exists() and not target.is_file():  # a device would be replaced by a file
            found = "a folder" if target.is_dir() else "something that is not a file"
            raise FileError(str(path), "", found, "a file of yours")
        handle, name = tempfile.mkstemp(prefix=".holesim-", suffix=target.suffix, dir=target.parent)
        os.close(handle)
        draft = Path(name)
        yield draft
        os.chmod(draft, ANYBODY & ~_mask())
        os.replace(draft, target)
        draft = None
    except (OSError, ValueError, RuntimeError) as error:  # a zero byte in the path; a ring of links
        reason = getattr(error, "strerror", None) or str(error)
        raise FileError(
            str(path), "", f"a place that cannot be written ({reason})", "a folder of yours"
        ) from None
    finally:
        if draft is not None:
            draft.unlink(missing_ok=True)


def write_text(path: str | Path, text: str) -> None:
    """Write text as UTF-8, whole or not at all (see `written_whole`)."""
    with written_whole(path) as draft:
        draft.write_text(text, encoding="utf-8")


def _mask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
