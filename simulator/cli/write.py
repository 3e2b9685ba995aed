"""Writing a text file whole: beside its place first, then renamed."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from ..errors import UsageError


def write_text(path: Path, text: str, *, force: bool) -> None:
    """Write a file; one that is there is kept unless forced.

    Raises
    ------
    UsageError
        The file is there already, or its place cannot be written.
    """
    if path.is_dir():
        raise UsageError(f"{str(path)!r} is a folder; allowed: the name of a file")
    if path.exists() and not force:
        raise UsageError(
            f"{str(path)!r} is there already; allowed: another name, or --force to write over it"
        )
    temporary = None
    try:
        handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=".holesim-", suffix=".toml")
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
        mask = os.umask(0)
        os.umask(mask)
        os.chmod(temporary, 0o666 & ~mask)
        os.replace(temporary, path)
        temporary = None
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise UsageError(f"{str(path)!r} cannot be written: {why}") from None
    finally:
        if temporary is not None:
            Path(temporary).unlink(missing_ok=True)
