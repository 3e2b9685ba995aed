"""Arguments of no letters: a path of none is the folder one stands in, and nobody means that by it."""

from __future__ import annotations

from collections.abc import Sequence

from ..errors import UsageError


def refuse_nothing(arguments: Sequence[str]) -> None:
    """Refuse an argument without a letter, whatever it stands for.

    Raises
    ------
    UsageError
        Names what it stands behind.
    """
    before = ""
    for argument in arguments:
        name, is_set, value = argument.partition("=")
        if not argument.strip() or (is_set and name.startswith("--") and not value.strip()):
            behind = name if is_set else before
            where = f"{behind}: " if behind else ""
            raise UsageError(f"{where}found nothing between the quotes; allowed: something (holesim --help)")
        before = argument
