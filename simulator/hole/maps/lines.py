"""Hole lines: one clean line of play from each, and which of them are the same hole twice."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
import shapely

from simulator.hole.legs import MOST_TURN_DEG
from simulator.hole.maps.place import Placed, distinct
from simulator.hole.maps.refs import Label, labels_of

LEAST_LEG_YD = 10.0
"""Corners nearer to their neighbours than this make no leg [yd]: wobble of the mapper's hand."""

WOBBLE_YD = (2.0, 5.0, 10.0, 20.0)
"""How far the line of play may leave the mapper's [yd]: the first whose line never doubles back."""

JOIN_YD = 40.0
"""Pieces of one hole line are joined over gaps up to this [yd]."""

SHORTEST_YD, LONGEST_YD = 40.0, 1100.0
"""Hole lines outside these are no holes [yd]: the limits of hole files."""

SAME_LINE_YD = 10.0
"""Two lines whose ends and middles are all nearer than this are one hole drawn twice [yd]."""


@dataclass(eq=False)
class HoleLine:
    """A line of play as mapped.

    Parameters
    ----------
    xy : (n, 2) corners from tee to green [yd], on the plane of the map.
    labels : the holes it is played as.
    assumed, warnings : sentences for the report.
    starts : starts of other lines to the same green, (2,) each: forward tees drawn as lines of their own.
    course : name of the grounds it lies on, "" when unknown.
    """

    ident: str
    tags: dict[str, str]
    xy: np.ndarray
    labels: list[Label]
    assumed: list[str] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)
    starts: list[tuple[float, float, dict[str, str]]] = field(default_factory=list)
    course: str = ""

    @property
    def length_yd(self) -> float:
        """Length along the line [yd]."""
        return float(np.hypot(*np.diff(self.xy, axis=0).T).sum())

    def shape(self) -> shapely.LineString:
        """The line as a geometry."""
        return shapely.LineString(self.xy)

    def reverse(self) -> None:
        """Turn it round."""
        self.xy = self.xy[::-1].copy()


def hole_line(item: Placed) -> HoleLine | None:
    """The line of play of a feature tagged as a hole, not yet cleaned; None when it has no line."""
    if not item.lines:
        return None
    line = HoleLine(item.ident, item.tags, item.lines[0], labels_of(item.tags))
    if len(item.lines) > 1:
        whole, left = joined(item.lines)
        line.xy = distinct(whole)
        line.assumed.append(f"Its line is in {len(item.lines)} pieces, joined.")
        if left:
            line.warnings.append(f"{left} of the pieces of its line {'is' if left == 1 else 'are'} far away,"
                                 " left out.")  # fmt: skip
    return line


def joined(pieces: list[np.ndarray]) -> tuple[np.ndarray, int]:
    """One line from pieces in any order and direction, the longest first; and how many did not fit."""
    rest = sorted(pieces, key=lambda p: -float(np.hypot(*np.diff(p, axis=0).T).sum()))
    line = rest.pop(0)
    while rest:
        gaps = [
            (float(np.hypot(*(line[end] - piece[other]))), k, end, other)
            for k, piece in enumerate(rest) for end in (0, -1) for other in (0, -1)
        ]  # fmt: skip
        gap, k, end, other = min(gaps)
        if gap > JOIN_YD:
            break
        piece = rest.pop(k)
        ahead = piece if other == 0 else piece[::-1]
        line = np.vstack([line, ahead]) if end == -1 else np.vstack([ahead[::-1], line])
    return line, len(rest)


def clean(xy: np.ndarray) -> np.ndarray | None:
    """Corners of a line of play: few, apart, never doubling back; None when that cannot be had."""
    for wobble in WOBBLE_YD:
        line = shapely.get_coordinates(shapely.simplify(shapely.LineString(xy), wobble))
        keep = [line[0]]
        for corner in line[1:-1]:
            if (
                np.hypot(*(corner - keep[-1])) >= LEAST_LEG_YD
                and np.hypot(*(corner - line[-1])) >= LEAST_LEG_YD
            ):
                keep.append(corner)
        keep.append(line[-1])
        out = np.array(keep)
        if np.hypot(*(out[-1] - out[0])) < 1.0:
            return None
        if _largest_turn_deg(out) < MOST_TURN_DEG - 5.0:
            return out
    return None


def _largest_turn_deg(xy: np.ndarray) -> float:
    step = np.diff(xy, axis=0)
    way = np.degrees(np.arctan2(step[:, 0], step[:, 1]))
    return float(np.abs((np.diff(way) + 180.0) % 360.0 - 180.0).max(initial=0.0))


def without_copies(lines: list[HoleLine]) -> tuple[list[HoleLine], list[str]]:
    """Lines without those drawn twice, and sentences about them.

    A shorter line with the same number that ends on the same spot is another tee of that hole.
    """
    kept: list[HoleLine] = []
    notes: list[str] = []
    for line in sorted(lines, key=lambda one: -one.length_yd):
        for other in kept:
            same, alike = _same(line, other), bool(set(line.labels) & set(other.labels))
            nameless = not any(label.number for label in line.labels)
            if same == "line" and not any(label.number for label in other.labels):
                other.labels, nameless = line.labels, True
            if same == "line" and (alike or nameless):
                notes.append(f"Hole {_words(other)} is drawn twice, taken once.")
                break
            if same == "tee" and alike:
                other.starts.append((float(line.xy[0, 0]), float(line.xy[0, 1]), line.tags))
                other.assumed.append("A shorter line to the same green is another tee of this hole.")
                break
        else:
            kept.append(line)
    return [line for line in lines if line in kept], notes


def _same(line: HoleLine, other: HoleLine) -> str:
    """ "line": the same way; "tee": the same end and way but a later start; "" otherwise."""
    a, b = line.shape(), other.shape()
    if shapely.hausdorff_distance(a, b) < SAME_LINE_YD:
        return "line"
    ends = float(np.hypot(*(line.xy[-1] - other.xy[-1])))
    if (
        ends < 2.0 * SAME_LINE_YD
        and b.distance(shapely.Point(line.xy[0])) < 40.0
        and line.length_yd > 0.5 * other.length_yd
    ):
        return "tee"
    return ""


def _words(line: HoleLine) -> str:
    return ", ".join(label.words for label in line.labels if label.number) or line.ident or "without a number"
