"""Words on a picture, each put where it covers no other."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

import numpy as np

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.text import Text
    from matplotlib.transforms import Bbox

MARGIN_PT = 1.5
"""Clear space round a word [points]."""


class Labels:
    """Places words inside axes whose limits and size are final.

    Parameters
    ----------
    ax : Axes
    avoid_xy : array (n, 2)
        Places that a word should rather not cover, in data units; a word goes where it covers fewest.
    """

    def __init__(self, ax: Axes, avoid_xy: np.ndarray) -> None:
        self.ax = ax
        self.frame = ax.get_window_extent()
        self.avoid = ax.transData.transform(avoid_xy) if len(avoid_xy) else np.empty((0, 2))
        self.taken: list[Bbox] = []

    def keep_clear(self, x: float, y: float, radius_pt: float) -> None:
        """Keep words off a marker at a place in data units."""
        from matplotlib.transforms import Bbox

        px, py = self.ax.transData.transform((x, y))
        r = radius_pt * self._pixels
        self.taken.append(Bbox([[px - r, py - r], [px + r, py + r]]))

    def put(self, words: str, places: Iterable[tuple[float, float]], **style: Any) -> Text | None:
        """Write words at the first-best of some places (data units, the middle of the words).

        Returns
        -------
        Text or None
            None when every place would cover another word or leave the axes.
        """
        text = self.ax.text(0.0, 0.0, words, ha="center", va="center", clip_on=True, **style)
        best: tuple[int, tuple[float, float], Bbox] | None = None
        for place in places:
            text.set_position(place)
            box = text.get_window_extent().padded(MARGIN_PT * self._pixels)
            inside = (
                self.frame.x0 <= box.x0 and box.x1 <= self.frame.x1
                and self.frame.y0 <= box.y0 and box.y1 <= self.frame.y1
            )  # fmt: skip
            if not inside or any(box.overlaps(other) for other in self.taken):
                continue
            covered = int(
                ((self.avoid >= (box.x0, box.y0)) & (self.avoid <= (box.x1, box.y1))).all(axis=1).sum()
            )
            if best is None or covered < best[0]:
                best = (covered, place, box)
                if covered == 0:
                    break
        if best is None:
            text.remove()
            return None
        text.set_position(best[1])
        self.taken.append(best[2])
        return text

    @property
    def _pixels(self) -> float:
        """Pixels in a point."""
        return self.ax.get_figure(root=True).dpi / 72.0  # type: ignore[union-attr]
