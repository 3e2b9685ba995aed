"""Outside checks side by side: the source, its figure, ours, how near ours is meant to be.

A test that holds a figure against the outside says so here with `outside`; nothing is asserted by it (the test
asserts on its own). ``pytest --truth-rows FILE`` writes what was said, misses included
(``benchmarks/validation.py`` makes the page of it).
"""

from __future__ import annotations

from typing import Any

ROWS: list[dict[str, Any]] = []
"""Said so far by this run."""


def outside(
    source: str,
    what: str,
    ours: float,
    published: float | tuple[float, float],
    within: float,
    unit: str = "",
) -> None:
    """Keep one comparison.

    Parameters
    ----------
    source : str
        Who published it, where and when; "from memory" or "second hand" where it is.
    what : str
        The quantity and its circumstances.
    ours, published : float
        Published may be a range (least, most).
    within : float
        How near ours is meant to be. Where a test allows a known departure this stays the nearness meant, so
        that the departure shows as a miss.
    """
    low, high = published if isinstance(published, tuple) else (published, published)
    apart = max(low - ours, ours - high, 0.0)
    ROWS.append(
        {
            "source": source,
            "what": what,
            "ours": float(ours),
            "published": [float(low), float(high)],
            "within": float(within),
            "unit": unit,
            "met": bool(apart <= within),
        }
    )
