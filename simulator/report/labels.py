"""Words on a picture, each put where it covers no other."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

import numpy as np
import shapely

from .page import figure_of
from .palette import INK, PAPER

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.text import Text
    from matplotlib.transforms import Bbox

MARGIN_PT = 1.5
"""Clear space round a word [points]."""

LED_PT = 4.0
"""Words farther than this from the ground they name are joined to it [points]."""

LONGEST_NAME = 28
"""Letters of a name on a picture that stand on one line; a longer one is broken into about such lines."""


def in_lines(words: str) -> str:
    """A long name in lines of about equal length: on one it would run over all beside its ground."""
    lines = -(-len(words) // LONGEST_NAME)
    return "\n".join(textwrap.wrap(words, len(words) // lines + 6)) if lines > 1 else words


SPREAD = (5, 3)
"""Places across and down a word that are looked at for the ground they lie on."""


HALO_PT = 1.6
"""Width of the light edge round words on a picture [points]."""


def haloed(text: Text) -> Text:
    """The words with a light edge, so that they read on any ground."""
    from matplotlib.patheffects import withStroke

    text.set_path_effects([withStroke(linewidth=HALO_PT, foreground=PAPER)])
    return text


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

    def put(
        self,
        words: str,
        places: Iterable[tuple[float, float]],
        within: shapely.Geometry | None = None,
        off: shapely.Geometry | None = None,
        **style: Any,
    ) -> Text | None:
        """Write words with a light edge at the first-best of some places (data units, their middle).

        Parameters
        ----------
        words : str
        places : iterable of (float, float)
        within : geometry, optional
            Ground the words name: of places that cover as little, they go where least of them lies off it;
            a fine line joins words away from it to it.
        off : geometry, optional
            Ground of others, which the words would hide or seem to name: least of them lies on it.

        Returns
        -------
        Text or None
            None when every place would cover another word or leave the axes.
        """
        style = {"color": INK, "fontsize": 6.0, "zorder": 7.0, **style}
        text = haloed(self.ax.text(0.0, 0.0, words, ha="center", va="center", clip_on=True, **style))
        at = self.ax.transData.transform
        own = text.get_window_extent().padded(MARGIN_PT * self._pixels)  # laid out once, then moved
        x0, y0 = at((0.0, 0.0))
        best: tuple[int, tuple[float, float], Bbox] | None = None
        for place in places:
            x, y = at(place)
            box = own.translated(x - x0, y - y0)
            if not self._is_free(box):
                continue
            cost = self._covered(box) + self._off(box, within) + self._hidden(box, off)
            if best is None or cost < best[0]:
                best = (cost, place, box)
                if cost == 0:
                    break
        if best is None:
            text.remove()
            return None
        text.set_position(best[1])
        self.taken.append(best[2])
        if within is not None:
            self._lead(best[2], within)
        return text

    def _is_free(self, box: Bbox) -> bool:
        """Whether a box lies inside the axes and over no word or marker."""
        inside = (
            self.frame.x0 <= box.x0 and box.x1 <= self.frame.x1
            and self.frame.y0 <= box.y0 and box.y1 <= self.frame.y1
        )  # fmt: skip
        return inside and not any(box.overlaps(other) for other in self.taken)

    def _covered(self, box: Bbox) -> int:
        """How many of the places to avoid a box covers."""
        return int(((self.avoid >= (box.x0, box.y0)) & (self.avoid <= (box.x1, box.y1))).all(axis=1).sum())

    def _in_data(self, box: Bbox) -> shapely.Polygon:
        """A box of the page in data units."""
        (x0, y0), (x1, y1) = self.ax.transData.inverted().transform([(box.x0, box.y0), (box.x1, box.y1)])
        return shapely.box(x0, y0, x1, y1)

    def _lead(self, box: Bbox, ground: shapely.Geometry) -> None:
        """A fine line from words that stand away from the ground they name: they would be another's."""
        way = shapely.shortest_line(self._in_data(box), ground)
        if way.length * math.sqrt(self._pixels_in_unit) > LED_PT * self._pixels:
            self.ax.plot(*zip(*way.coords, strict=True), color=INK, linewidth=0.6, zorder=6.9)

    def _off(self, box: Bbox, within: shapely.Geometry | None) -> int:
        """How many of a few places spread over a box lie off some ground; none of ground it would hide."""
        if within is None or within.area * self._pixels_in_unit < box.width * box.height:
            return 0
        x, y = np.meshgrid(np.linspace(box.x0, box.x1, SPREAD[0]), np.linspace(box.y0, box.y1, SPREAD[1]))
        xy = self.ax.transData.inverted().transform(np.column_stack([x.ravel(), y.ravel()]))
        return int((~shapely.contains_xy(within, xy)).sum())

    def _hidden(self, box: Bbox, ground: shapely.Geometry | None) -> int:
        """The share of a box on some ground, of as many places: a bunker between two of them counts."""
        if ground is None:
            return 0
        whole = self._in_data(box)
        return math.ceil(SPREAD[0] * SPREAD[1] * whole.intersection(ground).area / whole.area)

    def keep_off(self, one: tuple[float, float], other: tuple[float, float], radius_pt: float) -> None:
        """Keep words off a line between two places in data units."""
        for share in np.linspace(0.0, 1.0, 9):
            x, y = ((1.0 - share) * a + share * b for a, b in zip(one, other, strict=True))
            self.keep_clear(float(x), float(y), radius_pt)

    @property
    def _pixels_in_unit(self) -> float:
        """Square pixels in a square unit of the data."""
        (x0, y0), (x1, y1) = self.ax.transData.transform([(0.0, 0.0), (1.0, 1.0)])
        return float(abs((x1 - x0) * (y1 - y0)))

    @property
    def _pixels(self) -> float:
        """Pixels in a point."""
        return figure_of(self.ax).dpi / 72.0
