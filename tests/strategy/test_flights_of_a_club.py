"""Of a club's flights the better is shown, whatever the luck of the strikes that screen them."""

from __future__ import annotations

import pytest
import solved as sv

from simulator.hole.surfaces import Lie
from simulator.strategy import search as search_module
from simulator.strategy.search import PLAIN_TIE, search
from simulator.strategy.tries import Place


def test_a_flight_that_gains_next_to_nothing_gives_way_to_the_stock_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """A lay-up was "the gap wedge low" for 0.002 strokes: it is a gain that has to be worth teaching the shot.

    And flights that are close by the few strikes are both settled: the better was not looked at where those had it
    for the worse.
    """
    board = sv.demo_board("eel-trap", "isolde")
    tee = Place(board, 0.0, 0.0, int(Lie.TEE), sv.THREADS)
    shots = board.bag.shots.shots
    stock, low = (
        next(k for k, shot in enumerate(shots) if (shot.club.name, shot.flight) == ("6-iron", flight)) for flight in ("stock", "low")
    )
    for gain, first in ((0.001, stock), (PLAIN_TIE + 0.001, low), (-0.01, stock)):
        scores = {stock: 3.2, low: 3.2 - gain}
        monkeypatch.setattr(search_module, "_refine", lambda _, start, *__, of=scores: (start, of[int(start[0])]))
        for must in (frozenset(), frozenset((stock, low))):  # of plan, and of a comparison that names the club
            found = search(tee, 1, [stock, low], keep_within=1.0, keep_most=1, must=must)
            assert [one.row for one in found][:1] == [first], gain
            assert len(found) == (2 if must else 1)
