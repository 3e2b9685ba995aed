"""Write a small fitted table as TOML: where it came from, then one list a column."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from ..files import write_text
from ..toml_text import quoted


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


def _list(values: Sequence[object]) -> str:
    return "[" + ", ".join(f"{float(v):.5g}" for v in values) + "]"  # type: ignore[arg-type]
