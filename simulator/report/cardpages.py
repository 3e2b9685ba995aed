"""Pocket cards: one page a hole with its map, carries, the green to scale, blanks for the player's plan.

A card holds no advice. Its green keeps to what the Rules of Golf allow of green-reading materials (Rule
4.3a(1) and its clarification 4.3a(1)/1, in force since January 2019): an image of a green at a scale of 3/8
inch to 5 yards (1:480) or smaller, in a book or on paper no larger than 4 1/4 by 7 inches. Checked against
the text of the governing bodies' release of 15 October 2018 as the press printed it in full.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import shapely

from ..hole.surfaces import WORDS
from ..hole.troubles import Trouble
from ..hole.yardage import Yardage
from . import groundplot
from .chosen import PENALTY
from .credits import map_data
from .holemap import draw_map, letters, off_the_map, whole_hole
from .labels import Labels
from .page import EDGE_IN, GAP_IN, figure_of, frame, in_style, map_in, new_figure, view_box
from .palette import FAINT, INK
from .sheet import Sheet, hole_names, line_in, wrapped, write_pages
from .showpage import clear_words, no_row_words
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

PAGE_WIDE_IN, PAGE_TALL_IN = 4.25, 7.0
"""Size of a card [in]: the largest that Clarification 4.3a(1)/1 allows."""

RULE_SCALE = 480
"""A green may be drawn at 1 to this or smaller (the same clarification): 3/8 inch to 5 yards."""

SCALES = (500, 600, 700, 750, 800, 900, 1000, 1250, 1500, 2000)
"""Scales a green is drawn at, the first that fits: a little under the limit, for printers that stretch."""

IN_PER_YD = 36.0
"""Inches in a yard, exact by definition."""

MAP_WIDE_IN, MAP_TALL_IN = 1.85, 4.15
"""Most the map takes of the page [in]."""

BESIDE_YD = 45.0
"""Ground shown either side of the line of play [yd]."""

LEAST_GREEN_IN = 2.0
"""Height of the green's drawing under many troubles [in]; under fewer it goes down as far as a map."""

ROUND_YD = 7.0
"""Least ground shown on every side of the green [yd]: a bunker beside it is seen. More would draw a green of
35 yards smaller than an inch."""

NAME_IN = 1.18
"""Width of the names of troubles; longer ones go on below [in]."""

COSTLY = {WORDS[surface] for surface in PENALTY}

MOST_ROWS = 16
"""Troubles with a letter and a row on a card; the green below still has its height."""

BLANKS = ("club", "line", "finish")
"""What the player writes in, for each of two shots."""

FOOT = (
    "Reach: straight from the tee to the nearest edge; clear: a carry over all of it (-: it goes on). No "
    "advice in it: club, line and finish are yours to write. Green at 1:{scale}; Rule 4.3a(1) allows "
    f"1:{RULE_SCALE} or smaller on paper up to 4 1/4 x 7 in; a local rule (G-11) may allow less. Check "
    "numbers on the ground. Local rules and the committee decide."
)


def green_scale(yardage: Yardage, wide_in: float, tall_in: float) -> int:
    """The first of `SCALES` at which a green and the ground round it fit a space [in]."""
    x0, y0, x1, y1 = yardage.hole.green.bounds
    for scale in SCALES:
        inch = IN_PER_YD / scale
        if (x1 - x0 + 2.0 * ROUND_YD) * inch <= wide_in and (y1 - y0 + 2.0 * ROUND_YD) * inch <= tall_in:
            return scale
    return SCALES[-1]


@in_style
def draw_green(yardage: Yardage, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """The green with its bunkers and pins at one of `SCALES`; the axes are cut to what is shown.

    Parameters
    ----------
    yardage : Yardage
    ax : Axes, optional
        Of the size in inches that the drawing may take; made when left out.
    """
    if ax is None:
        ax = new_figure(2.2, LEAST_GREEN_IN).add_axes((0.0, 0.0, 1.0, 1.0))
    box, dpi = ax.get_window_extent(), figure_of(ax).dpi
    wide_in, tall_in = box.width / dpi, box.height / dpi
    scale = green_scale(yardage, wide_in, tall_in)
    hole = yardage.hole
    x0, y0, x1, y1 = hole.green.bounds
    wide, tall = wide_in * scale / IN_PER_YD, tall_in * scale / IN_PER_YD
    middle_x, middle_y = (x0 + x1) / 2.0, (y0 + y1) / 2.0
    frame(ax, middle_x - wide / 2.0, middle_x + wide / 2.0, middle_y - tall / 2.0, middle_y + tall / 2.0)
    for feature in hole.features:  # no slopes: the drawing is for the shot at the green
        if feature.area.intersects(view_box(ax)):
            ax.add_patch(groundplot.area_patch(feature))
    labels = Labels(ax, shapely.get_coordinates(hole.green))
    for pin in hole.pins:
        if hole.green.covers(shapely.Point(pin.x_yd, pin.y_yd)):
            ax.plot([pin.x_yd], [pin.y_yd], marker="+", markersize=6, color=INK, zorder=6.0, linestyle="none")
            labels.keep_clear(pin.x_yd, pin.y_yd, 3.0)
    for pin, size in zip(hole.pins, yardage.green.pins, strict=False):
        places = [
            (pin.x_yd + dx, pin.y_yd + dy)
            for dx, dy in ((0, 3.2), (0, -3.2), (5, 0), (-5, 0), (0, 5), (0, -5))
        ]
        labels.put(f"{units.number(size.on_yd)} on", places, fontsize=5.5)
    return ax


@in_style
def card_page(yardage: Yardage, units: Units = YARDS, number: int | None = None) -> Figure:
    """One hole on one card."""
    hole = yardage.hole
    of = f"{number}  " if number is not None else ""
    sheet = Sheet(f"{of}{hole.name}", PAGE_WIDE_IN, PAGE_TALL_IN)
    index = f", stroke index {hole.stroke_index}" if hole.stroke_index else ""
    words = f"par {hole.par}, {units.length(hole.length_yd)} from the {hole.tee.name} tee{index}"
    sheet.words(words, 7.0)
    top = sheet.down_in
    tall = map_in(whole_hole(hole, BESIDE_YD), MAP_WIDE_IN, MAP_TALL_IN)
    kept = _kept(yardage)
    ax = sheet.axes(tall, 0.0, MAP_WIDE_IN)
    draw_map(ax, yardage, units, beside_yd=BESIDE_YD, named=kept)
    off = off_the_map(ax, yardage)
    beside = MAP_WIDE_IN + 0.12
    _rows(sheet, yardage, units, beside, kept, off)
    wide = sheet.inner_in - beside
    green = yardage.green
    sheet.words(
        f"Green {units.number(green.depth_yd)} deep, {units.number(green.width_yd)} wide; "
        f"front {units.number(green.ball_front_yd)}, back {units.number(green.ball_back_yd)}",
        6.0, left_in=beside,
    )  # fmt: skip
    space = max(LEAST_GREEN_IN, top + MAP_TALL_IN - sheet.down_in)
    scale = green_scale(yardage, wide, space)
    draw_green(yardage, ax=sheet.axes(space, beside, wide), units=units)
    sheet.down_in = max(sheet.down_in + space, top + tall) + 2.0 * GAP_IN
    foot = " ".join([FOOT.format(scale=scale), *no_row_words(yardage, units), *map_data(hole)])
    _blanks(sheet, len(wrapped(foot, 5.0, sheet.inner_in)) * line_in(5.0))
    sheet.foot(foot, 5.0)
    return sheet.done()


def _kept(yardage: Yardage) -> set[str]:
    """Letters of the troubles on a card: of too many, what costs a stroke and what is nearest stays."""
    return {letter for letter, _ in sorted(letters(yardage), key=lambda item: _rank(item[1]))[:MOST_ROWS]}


def _rows(
    sheet: Sheet, yardage: Yardage, units: Units, left_in: float, kept: Collection[str], off: Collection[str]
) -> None:
    """Letter, name, reach and clear of every trouble that is kept; of one in parts, where each lies.

    One that lies `off` the map, beside it, has no letter there: its side is told, and that it is off.
    """
    if not kept:
        sheet.words("No trouble drawn.", 6.0, left_in=left_in)
        return
    rows = [("", f"{units.name} to", "reach", "clear")]
    parts = Counter(one.name for _, one in letters(yardage))
    for letter, one in letters(yardage):
        if letter in kept:
            name = one.name if parts[one.name] == 1 else f"{one.name}, {one.side}"
            if letter in off:
                side = "" if one.side == "across" else f" {one.side}"
                name = f"{one.name}, off the map{side}"
            first, *more = wrapped(name, 6.0, NAME_IN)
            mark = "" if letter in off else letter
            rows.append((mark, first, units.number(one.reach_yd), clear_words(one, units)))
            rows += [("", words, "", "") for words in more]
    right = sheet.inner_in
    sheet.table(rows, (left_in, left_in + 0.13, -(right - 0.36), -right), 6.0)


def _rank(one: Trouble) -> tuple[bool, float]:
    return one.kind not in COSTLY, abs(one.offset_yd)


def _blanks(sheet: Sheet, foot_in: float) -> None:
    """Lines to write on, down to the foot."""
    bottom = PAGE_TALL_IN - EDGE_IN - foot_in - GAP_IN
    rows = max(1, min(4, int((bottom - sheet.down_in) / 0.3)))
    step = (bottom - sheet.down_in) / rows
    ax = sheet.axes(bottom - sheet.down_in)
    ax.set_axis_off()
    ax.set(xlim=(0.0, sheet.inner_in), ylim=(0.0, bottom - sheet.down_in))
    third = sheet.inner_in / len(BLANKS)
    for row in range(rows):
        y = (rows - 1 - row) * step + 0.06
        for k, word in enumerate(BLANKS):
            ax.text(k * third, y, word, size=6.0, color=FAINT, va="bottom", ha="left")
            ax.plot([k * third + 0.34, (k + 1) * third - 0.08], [y, y], color=FAINT, linewidth=0.6)


def card_pages(
    yardages: Sequence[Yardage], units: Units = YARDS, numbers: Sequence[int | None] | None = None
) -> list[tuple[str, Figure]]:
    """A card for each hole, named by its number; by its place in the book where it has none."""
    marks = list(numbers) if numbers is not None else [None] * len(yardages)
    return [
        (f"hole-{k if number is None else number}", card_page(one, units, number))
        for k, (one, number) in enumerate(zip(yardages, marks, strict=True), start=1)
    ]


def save_cards(
    yardages: Sequence[Yardage],
    path: str | Path,
    units: Units = YARDS,
    numbers: Sequence[int | None] | None = None,
) -> list[Path]:
    """Write the cards, one PDF or a PNG or SVG each; returns the files written."""
    names = None if numbers is None else hole_names(numbers)
    return write_pages(card_pages(yardages, units, numbers), path, names)
