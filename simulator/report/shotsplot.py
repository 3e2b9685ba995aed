"""Measured shots of each club with the pattern fitted to them."""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from ..player.measured import ClubFit, Fit
from .page import PAGE_IN, in_style, new_figure, own_axes, write_page
from .palette import FAINT, INK, SHOTS
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

ACROSS = 2
"""Clubs side by side on a phone's width."""

EIGHT_IN_TEN = 1.2816
"""Normal quantile: eight of ten solid strikes land within this many standard deviations either side."""

TALL_IN = 2.1
"""Height of one club's drawing [in]."""


@in_style
def draw_shots(club: ClubFit, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """One club: every shot, the box that holds 8 of 10 solid strikes each way, where a mishit falls.

    Parameters
    ----------
    club : ClubFit
    ax : Axes, optional
        Made when left out.
    units : Units
    """
    ax = own_axes(ax, TALL_IN, PAGE_IN / ACROSS)
    n, shots, look = _shown(club, units), club.shots, SHOTS[0]
    offline, carry = units.of(1.0) * shots.offline_yd, units.of(1.0) * shots.carry_yd
    aside = np.zeros(len(carry), bool)
    aside[club.slips] = True
    size = 9.0 if len(aside) <= 60 else 3.0
    ax.scatter(offline[~aside], carry[~aside], s=size, c=look.face, lw=0, zorder=3)
    ax.scatter(offline[aside], carry[aside], s=14, c=FAINT, marker="x", lw=0.8, zorder=3)
    wide = EIGHT_IN_TEN * math.tan(math.radians(n["direction_sd_deg"])) * n["carry"]
    deep = EIGHT_IN_TEN * n["distance_sd_pct"] / 100.0 * n["carry"]
    middle = n["carry"] * math.tan(math.radians(n["bias_right_deg"]))
    box_x = middle + wide * np.array([-1, 1, 1, -1, -1])
    box_y = n["carry"] + deep * np.array([-1, -1, 1, 1, -1])
    ax.plot(box_x, box_y, color=SHOTS[1].colour, lw=1.1, zorder=4)
    short = n["carry"] * (1.0 - n["mishit_loss_pct"] / 100.0)
    ax.plot([middle - wide, middle + wide], [short, short], color=SHOTS[1].colour, lw=1.1, ls=":", zorder=4)
    ax.axvline(0.0, color=FAINT, lw=0.6, zorder=1)
    half = 1.15 * max(wide + abs(middle), np.abs(offline[~aside]).max(initial=1.0))
    low = min(carry[~aside].min(initial=short), short)
    high = max(carry[~aside].max(initial=n["carry"]), n["carry"] + deep)
    ax.set(xlim=(-half, half), ylim=(low - 0.08 * high, 1.06 * high))
    ax.set_title(
        f"{club.club}, {units.length(club.numbers['carry_yd'])} ({club.strikes})",
        fontsize=7,
        fontweight="normal",
        color=INK,
        loc="left",
    )
    ax.tick_params(labelsize=6, length=2, left=True, bottom=True, labelleft=True, labelbottom=True)
    ax.locator_params(axis="x", nbins=5)
    ax.locator_params(axis="y", nbins=6)
    return ax


_CROSSES = ("No strike of their club, beyond the picture: {}.", "Cross: no strike of this club.")


def _shown(club: ClubFit, units: Units) -> dict[str, float]:
    """The fitted numbers where balls come down, with the carry in the unit shown."""
    return {**club.seen, "carry": units.of(club.seen["carry_yd"])}


@in_style
def save_shots(fit: Fit, path: str | Path, units: Units = YARDS) -> None:
    """All clubs on one page, as a picture file."""
    write_page(_page(fit, units), path)


def _page(fit: Fit, units: Units) -> Figure:
    rows = -(-len(fit.clubs) // ACROSS)
    tall = rows * TALL_IN + 0.7
    figure = new_figure(PAGE_IN, tall)
    grid = figure.add_gridspec(
        rows, ACROSS, left=0.1, right=0.97, top=1.0 - 0.42 / tall, bottom=0.58 / tall, hspace=0.42, wspace=0.3
    )
    crosses = [0, 0]  # beyond the picture, on it
    for k, club in enumerate(fit.clubs):
        ax = draw_shots(club, ax=figure.add_subplot(grid[divmod(k, ACROSS)]), units=units)
        for slip in club.slips:
            x, y = (units.of(float(at[slip])) for at in (club.shots.offline_yd, club.shots.carry_yd))
            crosses[int(ax.viewLim.contains(x, y))] += 1
    words = f"Where the ball came down, {units.name}; in brackets: shots"
    figure.text(0.02, 1.0 - 0.06 / tall, words, fontsize=8, va="top", color=INK)
    words = "Box: 8 of 10 solid strikes each way. Dotted: a usual mishit."
    if sum(crosses):
        words += "\n" + " ".join(_CROSSES[k].format(n) for k, n in enumerate(crosses) if n)
    figure.text(0.02, 0.03 / tall, words, fontsize=6.5, va="bottom", color=INK)
    return figure
