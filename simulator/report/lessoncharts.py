"""The charts of a lesson: score against aim, the scores themselves, the player's pattern of a club."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..strategy.lesson import Lesson
from ..strategy.patterns import ClubPattern
from ..strategy.result import TIE_STROKES
from . import shotplot
from .chosen import leading, score_counts, shot_words, title
from .figures import LEAST_COUNT
from .page import in_style, numbered, own_axes
from .palette import CURVES, FAINT, INK, PAPER, SHOTS
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.axes import Axes

BESIDE_YD = 22.0
"""Shown either side of the aims that matter and of the line to the pin [yd]."""

MOST_OVER = 0.6
"""Score over the best that a chart of aims still shows [strokes]."""


@in_style
def draw_aims(result: Lesson, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """Expected score against aim for each club, two standard errors either side, and the tie band.

    Parameters
    ----------
    result : Lesson
    ax : Axes, optional
        Made when left out.
    units : Units
        Of the aims.
    """
    ax = own_axes(ax, 3.0)
    best = min(float(curve.scores.min()) for curve in result.curves)
    for curve, look in zip(result.curves, CURVES, strict=False):
        x = units.of(1.0) * curve.aims_yd
        name = shot_words(result.answer.alternatives[curve.index], units)
        ax.fill_between(
            x, curve.scores - curve.margins, curve.scores + curve.margins, color=look.colour,
            alpha=0.22, linewidth=0, zorder=2,
        )  # fmt: skip
        ax.plot(
            x, curve.scores, color=look.colour, linestyle=look.dash, linewidth=1.4, marker=look.marker,
            markevery=8, markersize=3.5, markerfacecolor=look.face, label=name, zorder=4,
        )  # fmt: skip
        low, high = (units.of(edge) for edge in curve.tie_yd)
        level = float(curve.scores.min()) + TIE_STROKES
        ax.plot([low, high], [level] * 2, color=look.colour, linewidth=3.0, solid_capstyle="butt", zorder=3)
    ends = [units.of(v) for c in result.curves for v in (*c.tie_yd, c.best_yd)]
    beside = units.of(BESIDE_YD)
    top = min(best + MOST_OVER, max(float(c.scores.max()) for c in result.curves))
    ax.axvline(0.0, color=FAINT, linewidth=0.6, linestyle=(0, (1, 3)), zorder=1)
    ax.set(xlim=(min(0.0, *ends) - beside, max(0.0, *ends) + beside), ylim=(best - 0.06, top + 0.04))
    ax.set_xlabel(f"aim, {units.name} left (-) and right of the pin line", fontsize=6.5, color=INK)
    ax.set_ylabel("expected score", fontsize=6.5, color=INK)
    numbered(ax)
    return ax


@in_style
def draw_scores(result: Lesson, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """How often each score comes up in 100 plays, the recommended shot beside the runner-up.

    Parameters
    ----------
    result : Lesson
    ax : Axes, optional
        Made when left out.
    """
    ax = own_axes(ax, 2.6)
    answer, scores = result.answer, result.scores
    pair = leading(answer)
    wide = 0.8 / len(pair)
    for place, (index, look) in enumerate(zip(pair, SHOTS, strict=False)):
        shares = scores.shares[index]
        at = np.arange(len(shares)) + (place - (len(pair) - 1) / 2.0) * wide
        ax.bar(
            at, 100.0 * shares, 0.92 * wide, facecolor=look.face, edgecolor=look.colour, linewidth=0.9,
            hatch=None if look.face == look.colour else "////", label=title(answer, index, units), zorder=3,
        )  # fmt: skip
        counts = score_counts(answer.alternatives[index], list(shares))
        for x, share, whole in zip(at, shares, counts, strict=True):
            # counts add to 100: some round down
            words = f"{whole}" if whole and share >= LEAST_COUNT else "<1"
            ax.text(x, 100.0 * share + 1.0, words, ha="center", va="bottom", size=6.5, color=INK, zorder=5)
    ax.set_xticks(np.arange(len(scores.names)), [name.replace(" or ", "\nor ") for name in scores.names])
    ax.set(ylim=(0.0, 100.0 * float(scores.shares[pair].max()) + 8.0), xlim=(-0.6, len(scores.names) - 0.4))
    numbered(ax)
    ax.set_ylabel("plays in 100", fontsize=6.5, color=INK)
    return ax


@in_style
def draw_pattern(club: ClubPattern, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """A hundred finishes of one club and the box that holds 8 of 10 each way.

    Parameters
    ----------
    club : ClubPattern
    ax : Axes, optional
        Made when left out.
    units : Units
        Of the axes.
    """
    ax = own_axes(ax, 3.6)
    scale, look = units.of(1.0), SHOTS[0]
    dots = scale * club.finishes_yd[: shotplot.DOTS]
    ax.scatter(dots[:, 0], dots[:, 1], s=4.0, c=look.face, edgecolors=PAPER, linewidths=0.3, zorder=3)
    (x0, x1), (y0, y1) = (scale * np.array(edges) for edges in (club.across_yd, club.along_yd))
    ax.plot([x0, x1, x1, x0, x0], [y0, y0, y1, y1, y0], color=SHOTS[1].colour, linewidth=1.0, zorder=4)
    ax.axvline(0.0, color=FAINT, linewidth=0.6, linestyle=(0, (1, 3)), zorder=1)
    half = 1.08 * max(float(np.abs(dots[:, 0]).max()), 0.5 * float(np.ptp(dots[:, 1])))
    middle = 0.5 * float(dots[:, 1].min() + dots[:, 1].max())
    ax.set_aspect("equal", adjustable="box")
    ax.set(xlim=(-half, half), ylim=(middle - half, middle + half))
    ax.set_title(
        f"{club.club}\n{units.whole(club.width_yd.value)} x {units.whole(club.depth_yd.value)}", fontsize=6.5,
        fontweight="normal", color=INK, loc="center", pad=2,
    )  # fmt: skip
    numbered(ax, 5.5)
    ax.locator_params(axis="both", nbins=4)
    return ax
