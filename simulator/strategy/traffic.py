"""Where the balls of a question come to: there its value map is worked hardest."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

import numpy as np

from ..engine import Effort, Opening, Traffic, at_once, places_played, solve_map
from ..hole.model import Hole
from ..tables.game import Board, make_draft, make_sketch
from ..tables.luck import strike_sets
from ..tables.rows import FIRST_GUESS
from . import streams
from .tries import Choice, Place, best_of_each, first_lines, part_families

WORTH_A_LOOK = 0.5
"""Clubs and part swings no farther behind the best are played [strokes]: what may be shown, and then some."""

SEQUENCES = 1024
"""Sequences of each choice that is to be scored anew."""


DOUBT_STROKES, DOUBTS = 0.5, 4
"""What a rough map's values are moved by, one standard deviation [strokes], and how many times over. A ball
in water is dropped where that looks cheapest: of two ways much alike the rough map would show one alone, and
the fine one, which may choose the other, would know little of it."""


def solve_from(
    empty: Board,
    hole: Hole,
    start: tuple[float, float, int],
    *,
    must: Sequence[int] = (),
    others: Sequence[tuple[float, float, int]] = (),
    seed: int,
    effort: Effort | None = None,
    threads: int,
) -> Place:
    """A place on its hole's board, the value map solved with most work where balls played from it come to.

    Parameters
    ----------
    empty : Board
    hole : Hole
    start : (x_yd, y_yd, lie)
    must : sequence of int
        Shot rows of clubs that were asked about.
    others : sequence of (x_yd, y_yd, lie)
        Places played from too, off the green.
    """

    def here(board: Board) -> Place:
        return Place(board, *start, threads)

    def balls(solved: Board, sequences: int) -> Traffic:
        places = [here(solved), *(Place(solved, *other, threads) for other in others)]
        seen = [likely_traffic(place, must, seed + streams.TRAFFIC, sequences) for place in places]
        return Traffic(np.concatenate([one.places for one in seen]), max(one.strokes for one in seen))

    sketch = make_sketch(empty, hole)
    board = solve_map(
        empty, sketch=sketch, draft=make_draft(sketch, hole), seed=seed, effort=effort,
        threads=threads, balls=balls,
    )  # fmt: skip
    return here(board)


def likely_traffic(place: Place, must: Sequence[int], seed: int, sequences: int = SEQUENCES) -> Traffic:
    """Where balls come to after the first shot, and strokes from the place.

    Every shot that might be the answer is played as often, on the line that scores best, by turns on values
    moved by `DOUBT_STROKES`: they decide where a ball is dropped and whether its stroke is replayed.

    Parameters
    ----------
    place : Place
        On a solved board; a sketch will do.
    must : sequence of int
        Shot rows played whatever they score: clubs that were asked about.
    seed : int
    sequences : int
        Of each shot.
    """
    rows, parts = place.board.allowed(place.lie), part_families(place)
    if not rows and not parts:
        return Traffic(np.empty((0, 3)), 0.0)
    owners, actions = first_lines(place, rows, parts)
    replay = FIRST_GUESS[0] + FIRST_GUESS[1] * place.distance_yd
    scores = place.scores(actions, replay, strike_sets(seed, 1, 64))
    home, value = actions[int(scores.argmin())], float(scores.min())
    likely = [
        actions[best]
        for best in best_of_each(owners, scores)
        if owners[best] in must or scores[best] <= value + WORTH_A_LOOK
    ]
    plays, luck, alone = [], np.random.default_rng([seed, 0xD0B7]), replace(place, threads=1)
    count = sequences // DOUBTS
    for turn in range(DOUBTS):
        moved, again = _doubted(alone, luck), value + luck.normal(0.0, DOUBT_STROKES)
        plays += [partial(_places, moved, one, home, again, seed + turn, count) for one in likely]
    return Traffic(np.concatenate(at_once(plays, place.threads)), value)


def _doubted(place: Place, luck: np.random.Generator) -> Place:
    """The place on a map whose values are moved, each node's by luck of its own."""
    game = place.board.game
    coarse, fine = (
        one + luck.normal(0.0, DOUBT_STROKES, one.shape) for one in (game.field.coarse, game.field.fine)
    )
    field = game.field._replace(coarse=coarse, fine=fine)
    return replace(place, board=replace(place.board, game=game._replace(field=field)))


def places_of(place: Place, choices: Sequence[Choice], value: float, seed: int) -> np.ndarray:
    """The same for some choices alone; a stroke replayed is played as the first of them."""
    home = choices[0].action
    return np.concatenate([_places(place, choice.action, home, value, seed, SEQUENCES) for choice in choices])


def _places(
    place: Place, action: np.ndarray, home: np.ndarray, value: float, seed: int, sequences: int
) -> np.ndarray:
    opening = Opening(place.x_yd, place.y_yd, place.lie, action, home, value)
    return places_played(place.board, opening, seed=seed, sequences=sequences, threads=place.threads)
