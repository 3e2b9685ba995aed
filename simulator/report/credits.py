"""Whose data a hole was made from: on every text, picture and file made from it."""

from __future__ import annotations

from ..hole.model import Hole


def map_data(hole: Hole) -> list[str]:
    """The attribution line of a hole as a list of one sentence, [] when it asks for none."""
    return [f"Map data: {hole.attribution}."] if hole.attribution else []
