"""The shots on a picture: aim lines and a hundred finishes each, with their counts."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from ..hole.surfaces import TROUBLE, WORDS, Surface
from ..strategy.alternative import Alternative
from ..strategy.ground import features_at
from ..strategy.result import Answer
from .chosen import leading, title
from .figures import HELD, in_hundred, nearest
from .lines import line_words
from .palette import PAPER, SHOTS, ShotLook
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.lines import Line2D

DOTS = 100
"""Finishes drawn of each shot, so that a count can be read off."""

MARGIN_YD = 14.0
"""Ground shown round everything that matters [yd]."""

REST = WORDS[Surface.ROUGH]
"""The ground whose count takes up what rounding leaves over."""


def counts(answer: Answer, one: Alternative) -> dict[str, int]:
    """Finishes of a hundred balls: named trouble, the kind of ground elsewhere; adds up to 100."""
    names = [f.name for f in answer.hole.features if f.surface in TROUBLE]
    shares = {name: one.features[name].value for name in names if name in one.features}
    for surface in Surface:
        if surface not in TROUBLE and WORDS[surface] in one.finish:
            shares[WORDS[surface]] = one.finish[WORDS[surface]].value
    whole = {name: nearest(100.0 * share) for name, share in shares.items()}
    rest = 100 - sum(whole.values())
    if rest and REST in whole and whole[REST] + rest >= 0:
        whole[REST] += rest  # no table shows it, so no two counts of one thing differ
    elif rest:
        whole = dict(zip(shares, in_hundred(list(shares.values())), strict=True))
    return {name: count for name, count in sorted(whole.items(), key=lambda item: -item[1]) if count}


def count_words(answer: Answer, one: Alternative) -> str:
    """The same as words, the count first and held to its ground: "63 fairway, 4 burn 2"."""
    return ", ".join(f"{count}{HELD}{name}" for name, count in counts(answer, one).items())


def hundred(answer: Answer, one: Alternative) -> np.ndarray:
    """A hundred of the finishes, float (100, 2) [yd]: as many on each ground as `counts` says, in order."""
    index = features_at(answer.hole, one.finishes_yd[:, 0], one.finishes_yd[:, 1])
    words = [f.name if f.surface in TROUBLE else WORDS[f.surface] for f in answer.hole.features]
    names = np.array([*words, WORDS[Surface.ROUGH]])[index]
    left = np.ones(len(names), dtype=bool)
    chosen: list[int] = []
    for name, count in counts(answer, one).items():
        rows = np.flatnonzero(left & (names == name))[:count]
        left[rows] = False
        chosen += rows.tolist()
    short = min(DOTS, len(names)) - len(chosen)  # a raster and an outline may differ by a ball at the edge
    chosen += np.flatnonzero(left)[: max(short, 0)].tolist()
    return one.finishes_yd[sorted(chosen)[:DOTS]]


ON_AIM = 60
"""Places on an aim line that words should rather not cover: together worth more than half of the balls."""


def words_avoid(answer: Answer, indices: Sequence[int]) -> np.ndarray:
    """Places that words should rather not cover: a hundred finishes and the aim line of some alternatives."""
    places = []
    for one in (answer.alternatives[k] for k in indices):
        line = answer.line_of(one).at(np.linspace(0.0, one.today_carry_yd, ON_AIM))
        places += [hundred(answer, one), np.column_stack(line)]
    return np.vstack(places)


def draw_shot(ax: Axes, answer: Answer, index: int, look: ShotLook, order: float) -> None:
    """Aim line to where it comes down today and a hundred finishes of one alternative."""
    one, start = answer.alternatives[index], answer.start
    end = answer.line_of(one).at(one.today_carry_yd)
    ax.plot(
        [start.x_yd, end[0]], [start.y_yd, end[1]], color=look.colour, linestyle=look.dash, zorder=3.0 + order
    )
    ax.plot(*end, marker="x", markersize=5, color=look.colour, zorder=5.5, linestyle="none")
    dots = hundred(answer, one)
    ax.scatter(
        dots[:, 0], dots[:, 1], s=look.size, marker=look.marker, facecolors=look.face, linewidths=0.7,
        edgecolors=PAPER if look.face == look.colour else look.colour, zorder=4.0 + order,
        label=title(answer, index),
    )  # fmt: skip


def key_words(answer: Answer, index: int, units: Units = YARDS) -> str:
    """What the key says of one alternative: where it is pointed; on a line of its own its counts."""
    one = answer.alternatives[index]
    role = "recommended" if index == answer.recommended else "runner-up"
    if len(answer.tied) > 1 and index in answer.tied:
        role = "equal"
    head = f"{title(answer, index, units)}, {line_words(one, units)} ({role})"
    return f"{head}\nof 100: {count_words(answer, one)}"


def key_line(look: ShotLook, label: str = "") -> Line2D:
    """Marker and line of a shot for a key."""
    from matplotlib.lines import Line2D

    return Line2D(
        [], [], color=look.colour, linestyle=look.dash, marker=look.marker, markersize=4.5,
        markerfacecolor=look.face, markeredgecolor=look.colour, label=label,
    )  # fmt: skip


def looks(answer: Answer) -> list[tuple[int, ShotLook]]:
    """The alternatives on the picture with their looks."""
    return list(zip(leading(answer), SHOTS, strict=False))


def extent(answer: Answer, indices: list[int]) -> tuple[float, float, float, float]:
    """Least and greatest x, least and greatest y of ball, flag, green, line ahead and finishes [yd]."""
    hole, start = answer.hole, answer.start
    here, _ = hole.station_offset(*start.xy_yd)
    ahead = [point for point in hole.line if hole.station_offset(*point)[0] > here]
    gx0, gy0, gx1, gy1 = hole.green.bounds
    rest = [start.xy_yd, hole.pin.xy_yd, (gx0, gy0), (gx1, gy1), *ahead]
    dots = [hundred(answer, answer.alternatives[k]) for k in indices]
    xy = np.vstack([*dots, np.array(rest)])
    low, high = xy.min(axis=0) - MARGIN_YD, xy.max(axis=0) + MARGIN_YD
    return float(low[0]), float(high[0]), float(low[1]), float(high[1])
