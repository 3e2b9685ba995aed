"""How hard the nodes of a map are worked."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from ..tables.game import Board
from ..tables.reads import node_reads


@dataclass(frozen=True)
class Effort:
    """How hard the value map is worked.

    Attributes
    ----------
    few, more, commit, many : int
        Quasi-random strikes that screen the actions, that decide among the best, that value the chosen
        one while the sweep goes on, and that value it at the end.
    scrambles : int
        Independent shifts of each set, dealt to the nodes by index.
    band_yd : float
        Depth of the distance bands solved together.
    near, sketch : int
        Strikes that decide around the pin (half of `few` screen there), where choices differ little; and on
        the sketch, whose choices every node starts from.
    far_yd : float
        Nodes farther off the line of play choose with `few` strikes twice over: few balls get there.
    again : int
        Sweeps that value the chosen actions anew, after the one that chooses them; none on a sketch.
    least : int
        Where it is known how often balls come to a node: strikes that decide and value one they seldom
        come to.
    idle : int
        Strikes that decide at one they never come to. Some ball does in play: few are better than none.
    unseen : int
        Strikes that value such a node; 0 leaves it at the value it is known by. No fewer where shots are
        chosen: a drop seeks the place that looks best, and of many valued by 8 strikes that is one too good
        by strokes (a par 3 over 150 yd of water).
    draft : int
        Strikes that decide on the draft, from which is seen where balls come to; half of `few` screen there.
    followed : int
        Sequences of each club that are played to see where balls come to.
    """

    few: int = 16
    more: int = 256
    commit: int = 64
    many: int = 256
    near: int = 256
    sketch: int = 128
    scrambles: int = 16
    band_yd: float = 20.0
    again: int = 1
    far_yd: float = 36.0
    least: int = 32
    idle: int = 16
    unseen: int = 32
    draft: int = 32
    followed: int = 2048


LONG_STROKES = 6.0
"""From a place that takes so many strokes to hole out the map is worked as a long hole's: the plan has more
of them to choose, and with each it loses a little to the luck of its strikes."""

LONG = Effort(more=512, near=512, sketch=256, followed=4096)
"""How hard the map of a long hole is worked, for twice the time."""


class Traffic(NamedTuple):
    """What a rough map shows of a question.

    Attributes
    ----------
    places : float64[n, 3]
        Places balls come to off the green: x, y [yd] and lie.
    strokes : float
        Strokes to hole out from where they are played.
    """

    places: np.ndarray
    strokes: float


BUSY_SHARE = 0.8
"""Nodes that together take this share of the readings are worked with all strikes."""


def fewer(reads: np.ndarray, power: float, most: np.ndarray | int, least: int) -> np.ndarray:
    """Strikes for nodes that are read so often, float64[n]: in proportion to a power of it, within bounds.

    Powers of two, as evenly as quasi-random strikes lie.
    """
    often = np.sort(reads)[::-1]
    busy = often[np.searchsorted(np.cumsum(often), BUSY_SHARE * often.sum())]
    wanted = most * (reads / busy) ** power
    return np.minimum(np.maximum(2.0 ** np.ceil(np.log2(np.maximum(wanted, 1.0))), least), most)


def node_rows(board: Board, known: np.ndarray, effort: Effort, places: np.ndarray | None) -> np.ndarray:
    """The rows `solve_nodes` reads, float64[n, 9]; `places` are where balls come to, if that is known."""
    around = board.nodes.place[:, 0] == 1
    cells = np.where(around, board.nodes.fine.step_yd, board.nodes.coarse.step_yd)
    screen = np.where(around, max(effort.few // 2, 1), effort.few)
    decide = np.where(around, min(effort.near, effort.more), effort.more)
    value = np.full(len(known), effort.many)
    if places is not None and len(places):
        reads = node_reads(board.nodes, places)
        # the noise of a value counts as often as it is read; of a choice, regret is the square of the error
        value = fewer(reads, 1.0, value, min(effort.least, effort.many))
        value = np.where(reads > 0.0, value, min(effort.unseen, effort.many))
        some = fewer(reads, 0.5, decide, min(effort.least, effort.more))
        decide = np.where(reads > 0.0, some, min(effort.idle, effort.more))
    scrambles = np.arange(len(known)) % effort.scrambles
    return np.column_stack([board.nodes.table[:, :3], known, scrambles, cells, screen, decide, value])
