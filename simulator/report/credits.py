"""Whose data a hole was made from: on every text, picture and file made from it."""

from __future__ import annotations

from collections.abc import Iterable

from ..hole.model import Hole


def map_data(hole: Hole) -> list[str]:
    """The attribution line of a hole as a list of one sentence, [] when it asks for none."""
    return [f"Map data: {hole.attribution}."] if hole.attribution else []


def maps_data(holes: Iterable[Hole]) -> list[str]:
    """The attribution lines of several holes, each once."""
    return list(dict.fromkeys(line for hole in holes for line in map_data(hole)))
