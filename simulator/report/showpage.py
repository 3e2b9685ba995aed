"""The yardage page of a hole: its map, carries to every edge of every trouble, fairway widths, the green."""

from __future__ import annotations

from itertools import pairwise, product
from pathlib import Path
from typing import TYPE_CHECKING

import shapely

from ..hole.surfaces import Surface
from ..hole.troubles import BESIDE_YD, Trouble
from ..hole.yardage import GreenSize, Width, Yardage
from .chosen import PENALTY
from .credits import map_data
from .falls import falls_said
from .figures import join_words
from .groundkey import ground_key
from .holemap import draw_map, letters, off_the_map, whole_hole
from .page import in_style, map_in, own_axes
from .palette import FAINT, GROUND, INK
from .screen import padded, wrap
from .sheet import Sheet, wrapped, write_pages
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

MAP_WIDE_IN, MOST_MAP_IN = 2.05, 5.8
"""Width of the map and its greatest height [in]."""

STRIP_IN = 1.05
"""Width of the strip with the fairway's widths [in]."""

LEAST_STRIP_YD, NUMBER_YD, MORE_NUMBER_YD = 30.0, 16.0, 22.0
"""The strip shows at least so much ground either side of the line, so much more for a number, and for another
behind it [yd]."""

FAR_YD = 100.0
"""Out of bounds or water farther than this from the line of play is none of the hole's (assumed) [yd]."""

CHECK = (
    "Measured on the drawn hole: check on the ground before you trust a number. Local rules and the "
    "committee decide what is what."
)
"""What a yardage page owes its reader."""


@in_style
def draw_widths(yardage: Yardage, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """The fairway laid out straight: its edges from the line of play and its width wherever it was measured.

    Parameters
    ----------
    yardage : Yardage
    ax : Axes, optional
        Made when left out.
    """
    ax = own_axes(ax)
    fairway, putting = GROUND[Surface.FAIRWAY].fill, GROUND[Surface.GREEN].fill
    for one in yardage.widths:
        for low, high in one.pieces:
            ax.plot([low, high], [one.station_yd] * 2, color=INK, linewidth=0.8, zorder=3)
        ax.text(
            one.pieces[-1][1] + 3.0,
            one.station_yd,
            " + ".join(f"{units.whole(high - low)}" for low, high in one.pieces),
            size=5.5,
            ha="left",
            va="center",
            color=INK,
        )
    gap_yd = 1.5 * yardage.width_step_yd  # nearer than this the fairway goes on between two of them
    for first, last in pairwise(yardage.widths):
        if last.station_yd - first.station_yd >= gap_yd:
            continue
        for (a, b), (c, d) in product(first.pieces, last.pieces):
            if max(a, c) < min(b, d):  # the same strip, or a part of it
                ends = [first.station_yd, last.station_yd]
                ax.fill_betweenx(ends, [a, c], [b, d], color=fairway, linewidth=0, zorder=1)
    green = yardage.green
    ax.fill_betweenx(
        [green.front_yd, green.back_yd],
        -0.5 * green.width_yd,
        0.5 * green.width_yd,
        color=putting,
        lw=0,
        zorder=1,
    )
    words = f"{units.whole(green.depth_yd)} deep"
    ax.text(0.0, 0.5 * (green.front_yd + green.back_yd), words, size=5.5, ha="center", va="center", color=INK)
    ax.axvline(0.0, color=FAINT, linewidth=0.6, linestyle=(0, (1, 3)), zorder=2)
    step = units.in_yards(50.0)
    marks = [k * step for k in range(int(yardage.hole.length_yd / step) + 1)]
    ax.set_yticks(marks, [f"{50 * k}" for k in range(len(marks))])
    ax.tick_params(axis="y", left=True, labelleft=True, labelsize=5.5, length=2, pad=1.5)
    edges = [abs(edge) for one in yardage.widths for piece in one.pieces for edge in piece]
    half = max([LEAST_STRIP_YD, *edges])
    most = max([len(one.pieces) for one in yardage.widths], default=1)
    numbers = NUMBER_YD + (most - 1) * MORE_NUMBER_YD
    ax.set(xlim=(-half - 3.0, half + numbers), ylim=(-12.0, green.back_yd + 24.0))
    return ax


@in_style
def show_page(yardage: Yardage, units: Units = YARDS) -> Figure:
    """The whole page."""
    hole = yardage.hole
    sheet = Sheet(f"{hole.name}, par {hole.par}, {units.length(hole.length_yd)}")
    sheet.words(f"From the {hole.tee.name} tee. Numbers are {units.name}; the line runs tee to green.", 6.5)
    tall = map_in(whole_hole(hole), MAP_WIDE_IN, MOST_MAP_IN)
    strip = sheet.axes(tall, MAP_WIDE_IN + 0.3, STRIP_IN)
    ax = sheet.axes(tall, 0.0, MAP_WIDE_IN)
    seen = draw_map(ax, yardage, units)
    draw_widths(yardage, ax=strip, units=units)
    sheet.skip(tall)
    apart = units.length(yardage.width_step_yd)
    sheet.words(f"Right: fairway laid out straight, its width every {apart}.", 6.0, color=FAINT)
    rows = [("", "", "reach", "clear", "beside the line")]
    off = off_the_map(ax, yardage)
    rows += [_row(letter, one, units, off=letter in off) for letter, one in letters(yardage)]
    sheet.table(rows, (0.0, 0.14, -2.02, -2.42, 2.52))
    for line in green_words(yardage.green, units):
        sheet.words(line, 6.5)
    sheet.key(ground_key(seen), columns=3)
    sheet.foot(" ".join(filter(None, (falls_said(ax), foot_words(yardage, units)))))
    return sheet.done()


def foot_words(yardage: Yardage, units: Units = YARDS) -> str:
    """Meaning of the numbers, what is left out, the caution, and whose map it is."""
    how = "Reach: straight from the tee to the nearest edge; clear: a carry over all of it (-: it goes on)."
    return " ".join([how, *no_row_words(yardage, units), CHECK, *map_data(yardage.hole)])


def no_row_words(yardage: Yardage, units: Units = YARDS) -> list[str]:
    """What `far_off` finds, in a sentence; none where it finds nothing."""
    far = far_off(yardage)
    return [f"No row, {units.length(BESIDE_YD)} or more from the line: {join_words(far)}."] if far else []


def far_off(yardage: Yardage) -> list[str]:
    """Penalty areas and out of bounds that are drawn, if not far away, and yet too far off for a row."""
    told, line = {one.name for one in yardage.troubles}, shapely.LineString(yardage.hole.line)
    costly = [f for f in yardage.hole.features if f.surface in PENALTY and f.name not in told]
    return [f.name for f in costly if BESIDE_YD - 1.0 < line.distance(f.area) < FAR_YD]


def _row(letter: str, one: Trouble, units: Units, *, off: bool) -> tuple[str, str, str, str, str]:
    """The row of a trouble; one that lies `off` the map has no letter there, and it is said."""
    words = f"{one.name}, off the map" if off else one.name
    name, *more = wrapped(words, 6.5, 1.55)
    name = f"{name}…" if more else name
    mark = "" if off else letter
    return mark, name, units.number(one.reach_yd), clear_words(one, units), _beside(one, units)


def _width_rows(yardage: Yardage, units: Units) -> list[str]:
    """The fairway's widths for a terminal; neighbours of the same width and edges share a row."""
    gap_yd = 1.5 * yardage.width_step_yd
    runs: list[list[Width]] = []
    for one in yardage.widths:
        before = runs[-1][-1] if runs else None
        near = before is not None and one.station_yd - before.station_yd < gap_yd
        if near and before is not None and _edges(one, units) == _edges(before, units):
            runs[-1].append(one)
        else:
            runs.append([one])
    rows = [f"{'fairway at':<14}{'width':>6}  left and right"]
    for run in runs:
        ends = [units.number(one.station_yd) for one in (run[0], run[-1])]
        at = " to ".join(ends if len(run) > 1 else ends[:1])
        for wide, edges in _edges(run[0], units):
            rows.append(f"{at:<14}{wide:>6}  {edges}")
            at = ""
    return rows


def _edges(one: Width, units: Units) -> list[tuple[str, str]]:
    """Width and edges of everything mown at a station, as shown."""
    return [
        (units.number(high - low), f"{units.mark(low)} to {units.mark(high)}") for low, high in one.pieces
    ]


def clear_words(one: Trouble, units: Units) -> str:
    """The carry over all of a trouble; a bar for one that goes on past the page."""
    return "-" if one.clear_yd is None else units.number(one.clear_yd)


def _beside(one: Trouble, units: Units) -> str:
    if one.line_near_yd is not None and one.line_far_yd is not None:
        return f"across, {units.number(one.line_near_yd)} to {units.number(one.line_far_yd)}"
    return units.side(one.offset_yd) or f"just {one.side}"


def green_words(green: GreenSize, units: Units = YARDS) -> list[str]:
    """The green in words: how far, how deep, where the pins stand."""
    number = units.number
    pins = "; ".join([
        f"{pin.name} {number(pin.on_yd)} on, {number(min(pin.from_left_yd, pin.from_right_yd))} from the "
        f"{'left' if pin.from_left_yd <= pin.from_right_yd else 'right'}"
        for pin in green.pins
    ])  # fmt: skip
    return [
        f"Green: front {number(green.ball_front_yd)}, back {number(green.ball_back_yd)}, "
        f"{units.length(green.depth_yd)} deep, {number(green.width_yd)} wide.",
        *([f"Pins: {pins}."] if pins else []),
    ]


def save_show(yardage: Yardage, path: str | Path, units: Units = YARDS) -> None:
    """Write the page; PNG, SVG or PDF by the suffix."""
    write_pages([("show", show_page(yardage, units))], path)


def show_text(yardage: Yardage, units: Units = YARDS) -> str:
    """The same as a table for a terminal, 80 columns."""
    hole, number = yardage.hole, units.number
    lines = [
        f"{hole.name}, par {hole.par}, {units.length(hole.length_yd)} from the {hole.tee.name} tee "
        f"({units.name})",
        "",
        f"{'trouble':<26}{'kind':<17}{'reach':>6}{'clear':>7}  beside the line",
    ]
    lines += [
        f"{padded(one.name, 25)} {one.kind:<17}{number(one.reach_yd):>6}{clear_words(one, units):>7}  "
        f"{_beside(one, units)}"
        for one in yardage.troubles
    ]
    if not yardage.troubles:
        lines.append("none drawn near the line")
    lines += ["", *_width_rows(yardage, units)]
    if not yardage.widths:
        lines.append("none drawn")
    words = [line for part in green_words(yardage.green, units) for line in wrap(part)]
    return "\n".join([*lines, "", *words, *wrap(foot_words(yardage, units))])
