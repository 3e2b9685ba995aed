"""The chances of a round's totals, drawn."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from ..strategy.rounds import Round
from .page import in_style, numbered, own_axes
from .palette import INK, SHOTS

if TYPE_CHECKING:
    from matplotlib.axes import Axes

MOST_SHOWN = 0.998
"""Share of all rounds that the chart shows."""


@in_style
def draw_round(one: Round, *, ax: Axes | None = None) -> Axes:
    """Rounds in 100 by their total: filled where most are (`Round.most`); left of a line a target is broken.

    Parameters
    ----------
    one : Round
    ax : Axes, optional
        Made when left out.
    """
    ax = own_axes(ax, 2.0)
    low, high = _shown(one)
    totals = np.arange(low, high + 1)
    chances = 100.0 * one.chances[totals - one.least]
    first, last, _ = one.most()
    inside = (totals >= first) & (totals <= last)
    look, other = SHOTS
    for part, face in ((inside, look.face), (~inside, other.face)):
        ax.bar(
            totals[part], chances[part], 0.8, facecolor=face, edgecolor=look.colour, linewidth=0.8, zorder=3
        )
    if (target := _target(one)) is not None:
        ax.axvline(target - 0.5, color=other.colour, linestyle=other.dash, linewidth=1.4, zorder=4)
    ax.set(xlim=(low - 0.8, high + 0.8), ylim=(0.0, 1.08 * float(chances.max())))
    ax.set_xlabel("strokes", fontsize=7.0, color=INK, labelpad=1.5)
    ax.set_ylabel("rounds in 100", fontsize=7.0, color=INK)
    numbered(ax, 7.0)
    ax.locator_params(axis="x", integer=True)
    ax.locator_params(axis="y", nbins=4)
    return ax


def _shown(one: Round) -> tuple[int, int]:
    """Least and greatest total of the chart."""
    return one.quantile(0.5 - 0.5 * MOST_SHOWN), one.quantile(0.5 + 0.5 * MOST_SHOWN)


def _target(one: Round) -> int | None:
    """The target a line stands at: where its chance is told, and the line is in the chart."""
    low, high = _shown(one)
    shown = one.breaking is not None and one.target is not None and low <= one.target <= high + 1
    return one.target if shown else None


def chart_words(one: Round) -> str:
    """What the chart shows."""
    first, last, held = one.most()
    words = f"Filled: {100.0 * held:.0f} in 100 rounds, {first} to {last}."
    target = _target(one)
    return words if target is None else f"{words} Left of the dashed line {target} is broken."
