"""Words on a drawn page, held against its edges and against each other."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from matplotlib.figure import Figure
from matplotlib.text import Text


def check_apart(figure: Figure, words: Sequence[Text], within_px: float) -> None:
    """No word leaves the figure, and none covers another by so many pixels or more both ways.

    All pairs at once: a page has hundreds of words.
    """
    boxes = [text.get_window_extent() for text in words]
    for text, box in zip(words, boxes, strict=True):
        assert box.x0 >= 0 and box.y0 >= 0, text
        assert box.x1 <= figure.bbox.x1 and box.y1 <= figure.bbox.y1, text
    x0, y0, x1, y1 = np.array([box.extents for box in boxes]).T
    wide = np.minimum(x1[:, None], x1) - np.maximum(x0[:, None], x0)
    tall = np.minimum(y1[:, None], y1) - np.maximum(y0[:, None], y0)
    covered = np.argwhere(np.triu(np.minimum(wide, tall) >= within_px, k=1))
    assert not covered.size, [(words[a].get_text(), words[b].get_text()) for a, b in covered]
