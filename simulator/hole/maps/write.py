"""A hole as the text of a hole file."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
import shapely

from simulator.hole.maps.plots import Plot, TreeSpot
from simulator.hole.sketch import KINDS
from simulator.toml_text import block, comment, quoted

FIRST = ("green", "bunker", "fairway", "penalty_area", "out_of_bounds", "trees")
"""Kinds of ground in the order a reader wants them; the others follow."""


@dataclass(eq=False)
class HoleText:
    """What a hole file says, in the frame of its line [yd]."""

    name: str
    par: int
    line: np.ndarray
    tees: list[tuple[str, float, float]]
    pins: list[tuple[str, float, float]]
    plots: list[Plot]
    trees: list[TreeSpot] = field(default_factory=list)
    heights: list[tuple[float, float, float]] = field(default_factory=list)
    stroke_index: int | None = None
    bearing_deg: float | None = None
    attribution: str | None = None
    comments: list[str] = field(default_factory=list)

    def toml(self) -> str:
        """The text of the file."""
        lines = [comment(words) for words in self.comments]
        lines += ["", f"name = {quoted(self.name)}", f"par = {self.par}"]
        if self.stroke_index is not None:
            lines.append(f"stroke_index = {self.stroke_index}")
        if self.bearing_deg is not None:
            lines.append(f"bearing_deg = {self.bearing_deg:.1f}")
        if self.attribution:
            lines.append(f"attribution = {quoted(self.attribution)}")
        lines.append(f"line_yd = {_pairs(self.line)}")
        lines += block("tee", [_spot(*tee) for tee in self.tees])
        lines += block("pin", [_spot(*pin) for pin in self.pins])
        if self.heights:
            lines += ["", f"heights_xy_yd = {_pairs(np.array(self.heights), 2)}"]
        for key in (*FIRST, *(k for k in KINDS if k not in FIRST)):
            lines += block(key, [_area(plot) for plot in self.plots if plot.key == key])
        lines += block("tree", [_tree(tree) for tree in self.trees])
        return "\n".join(lines) + "\n"


def _spot(name: str, x: float, y: float) -> str:
    return f"{{ name = {quoted(name)}, x_yd = {_n(x)}, y_yd = {_n(y)} }}"


def _area(plot: Plot) -> str:
    said = [f"name = {quoted(plot.name)}"]
    if plot.key == "penalty_area":
        said.append(f'colour = "{plot.ground.colour or "red"}"')
        if plot.ground.playable:
            said.append("playable = true")
    if plot.key == "trees":
        if 1.0 <= plot.ground.top_yd <= 130.0:
            said.append(f"height_yd = {_n(plot.ground.top_yd)}")
        if plot.ground.base_yd >= 0.0:
            said.append(f"base_yd = {_n(plot.ground.base_yd)}")
        if plot.ground.dense:
            said.append('density = "dense"')
    said.append(f"xy_yd = {_ring(plot.area.exterior)}")
    if plot.area.interiors:
        said.append(f"holes_xy_yd = [{', '.join(_ring(ring) for ring in plot.area.interiors)}]")
    return f"{{ {', '.join(said)} }}"


def _tree(tree: TreeSpot) -> str:
    height = f", height_yd = {_n(tree.top_yd)}" if tree.top_yd else ""
    place = f"x_yd = {_n(tree.x)}, y_yd = {_n(tree.y)}"
    return f"{{ name = {quoted(tree.name)}, {place}, crown_yd = {_n(tree.crown_yd)}{height} }}"


def _ring(ring: shapely.LinearRing) -> str:
    return _pairs(shapely.get_coordinates(ring)[:-1])


def _pairs(rows: np.ndarray, digits: int = 1) -> str:
    return "[" + ", ".join("[" + ", ".join(_n(v, digits) for v in row) + "]" for row in rows.tolist()) + "]"


def _n(value: float, digits: int = 1) -> str:
    """A number with so many decimals at most; heights have two: 0.1 yd tilts a green by 0.4 %."""
    text = f"{value:.{digits}f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
