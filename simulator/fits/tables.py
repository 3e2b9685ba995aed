"""Write and read a small fitted table as TOML: where it came from, then numbers and lists of them."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from ..files import write_text
from ..toml_text import quoted


def write_numbers(
    path: Path, origin: Mapping[str, str], table: Mapping[str, float | Sequence[float]]
) -> None:
    """Write ``origin`` (script, inputs, date) and numbers or lists of them, by a temporary file and a rename.

    Numbers are kept to five figures.
    """
    lines = ["# Made by a script: run it again, do not edit."]
    lines += [f"{key} = {quoted(value)}" for key, value in origin.items()]
    lines += [""]
    lines += [
        f"{key} = {_list(v) if isinstance(v, Sequence) else format(v, '.5g')}" for key, v in table.items()
    ]
    write_text(path, "\n".join(lines) + "\n")


def write_table(path: Path, origin: Mapping[str, str], columns: Mapping[str, Sequence[object]]) -> None:
    """Write ``origin`` (script, inputs, date) and ``columns`` to ``path``, by a temporary file and a rename.

    A column is a list of numbers or of lists of numbers; numbers are kept to five figures.
    """
    lines = ["# Made by a script: run it again, do not edit."]
    lines += [f"{key} = {quoted(value)}" for key, value in origin.items()]
    lines += [""]
    for key, values in columns.items():
        if values and isinstance(values[0], Sequence):
            lines += [f"{key} = ["] + [f"    {_list(row)}," for row in values] + ["]"]  # type: ignore[arg-type]
        else:
            lines += [f"{key} = {_list(values)}"]
    write_text(path, "\n".join(lines) + "\n")


def read_table(path: Path) -> dict[str, Any]:
    """What such a file holds."""
    return tomllib.loads(path.read_text(encoding="utf-8"))


def _list(values: Sequence[object]) -> str:
    return "[" + ", ".join(f"{float(v):.5g}" for v in values) + "]"  # type: ignore[arg-type]
