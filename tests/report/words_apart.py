"""Words on a drawn page, held against its edges and against each other; the words of a PDF."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import numpy as np
from matplotlib.axis import Tick
from matplotlib.figure import Figure
from matplotlib.legend import Legend
from matplotlib.text import Text
from pypdf import PdfReader


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


def words_of(figure: Figure) -> list[Text]:
    """All words that are drawn; numbers of ticks outside the axes' limits are not."""
    ticks = {id(tick.label1): ax for ax in figure.axes for tick in ax.findobj(Tick)}
    found = []
    for text in figure.findobj(Text):
        if not text.get_visible() or not text.get_text().strip():
            continue
        if text.axes is not None and not text.axes.axison:
            text_is_key = any(text in legend.get_texts() for legend in text.axes.findobj(Legend))
            if not text_is_key:
                continue
        if id(text) in ticks:
            box, frame = text.get_window_extent(), ticks[id(text)].get_window_extent()
            beside = box.x1 < frame.x0 and frame.y0 <= (box.y0 + box.y1) / 2 <= frame.y1
            below = box.y1 < frame.y0 and frame.x0 <= (box.x0 + box.x1) / 2 <= frame.x1
            if not (beside or below):
                continue
        found.append(text)
    return found


def check_words(figure: Figure) -> None:
    """Words on the figure, and none on an edge or on another."""
    words = words_of(figure)
    assert len(words) > 5
    check_apart(figure, words, within_px=1.5)


def pdf_words(path: Path) -> list[str]:
    """The words of each page."""
    return [" ".join(page.extract_text().split()) for page in PdfReader(path).pages]
