"""Streams of luck: what chooses draws other luck than what values, and holes other luck than each other."""

import itertools

from simulator.strategy import streams
from simulator.strategy.traffic import DOUBTS

STREAMS = {name: value for name, value in vars(streams).items() if name.isupper() and not name.startswith("_")}


def test_only_patterns_share_their_luck() -> None:
    """They are struck on a field of their own."""
    drawn = [value for name, value in STREAMS.items() if name not in ("PATTERNS", "TRAFFIC")]
    drawn += range(streams.TRAFFIC, streams.TRAFFIC + DOUBTS)
    assert len(set(drawn)) == len(drawn)


def test_holes_and_places_begin_beyond_the_streams_of_the_one_before() -> None:
    for next_seed in (streams.of_hole, streams.of_place):
        starts = [next_seed(2**32 - 1_000, number) for number in range(40)]
        assert starts[0] == 2**32 - 1_000 and all(0 <= one < 2**32 for one in starts)
        assert all((b - a) % 2**32 > max(STREAMS.values()) for a, b in itertools.pairwise(starts))
