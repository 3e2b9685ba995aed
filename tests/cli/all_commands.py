"""Every command by its whole name, those of groups too."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from simulator.cli import command_line


def _walk(group: Any, name: str = "") -> Iterator[tuple[str, Any]]:
    for key, one in group.commands.items():
        if hasattr(one, "commands"):
            yield from _walk(one, f"{name}{key} ")
        else:
            yield f"{name}{key}", one


COMMANDS: dict[str, Any] = dict(_walk(command_line()))
