"""Colours, hatches and markers of the pictures: our own, told apart by the colour-blind and without colour.

Ground is light and trouble is hatched, so a print without colour still shows it; the two shots differ in
colour, lightness, marker and line. No colour stands for good or bad.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from ..hole.surfaces import Surface

STYLE = Path(__file__).with_name("holesim.mplstyle")

INK = "#2b2b2b"
FAINT = "#6e6e6e"
PAPER = "#ffffff"


@dataclass(frozen=True)
class Ground:
    """How one kind of ground is drawn."""

    fill: str
    edge: str
    hatch: str = ""


GROUND: dict[Surface, Ground] = {
    Surface.ROUGH: Ground("#f2f3ea", "#f2f3ea"),
    Surface.HEAVY_ROUGH: Ground("#e3e2c6", "#8d8a5c", "||"),
    Surface.FAIRWAY: Ground("#d5e4c3", "#a9bf92"),
    Surface.TREES: Ground("#ced9cb", "#5f7a63", "oo"),
    Surface.PATH: Ground("#e4dfd9", "#b3aaa0"),
    Surface.TEE: Ground("#d5e4c3", "#7f9a68"),
    Surface.GREEN: Ground("#bcd8a8", "#5c7d49"),
    Surface.BUNKER: Ground("#f6e8c0", "#a58a3e", "...."),
    Surface.DRY_PENALTY: Ground("#dde6ee", "#4f6f8f", "\\\\\\\\"),
    Surface.WATER: Ground("#c5dcee", "#3a6591", "----"),
    Surface.OUT_OF_BOUNDS: Ground("#e2e2e2", "#9a9a9a", "xxxx"),
}
"""Fill, edge (and hatch) colour, hatch."""


@dataclass(frozen=True)
class ShotLook:
    """How one alternative is drawn: dots and aim line."""

    colour: str
    face: str
    marker: str
    size: float
    dash: Literal["-", "--", "-.", ":"]


SHOTS: tuple[ShotLook, ShotLook] = (
    ShotLook("#1d2f6f", "#1d2f6f", "o", 9.0, "-"),
    ShotLook("#b8540a", "#ffffff", "^", 13.0, "--"),
)
"""The recommended (dark, filled, round) and the runner-up (lighter, open, three-cornered)."""


CURVES: tuple[ShotLook, ...] = (
    *SHOTS,
    ShotLook("#6fb7c9", "#ffffff", "s", 10.0, "-."),
    ShotLook("#7a6a55", "#7a6a55", "D", 8.0, ":"),
)
"""Looks of up to four alternatives drawn as curves: told apart by dash and marker where colour fails."""

CONTOUR = "#4b2142"
"""Lines of equal worth on a map of ground."""

MARKED = Ground("#f6e8c0", INK)
"""A cell that is told apart from its neighbours: by its frame; the tint is for the look from afar."""
