"""The bench: plain straight holes, the same for every level and never tuned.

What is on them, and why:

- Green: round, 29 yd across, 660 square yards. American greens average about 6,000 square feet (from
  memory); the rating system's effective diameters run from 20 to 35 yd.
- Pins: two, 7 yd from the middle, front right and back left: as far out as a pin drawn evenly over the part
  of the green 4 yd and more from its edge is on average (the rating system assumes no pin nearer the edge).
- Fairway: 32 yd wide from the tee to the green (common practice: 28 to 36 yd), so a shot from fairway is
  asked for at any distance, and a short approach may run on.
- Rough: everything else, light. No trees, water, heavy rough or bounds.
- Bunkers: one each side of the green, 8 yd wide and 12 and 16 yd long, 3 yd off it (assumed).
- Level ground, still air, ordinary firmness, greens at the default Stimpmeter reading.

The wooded hole has two woods of ordinary trees (the hole files' own height, base and density) from 12 yd
beside the fairway on and no bunkers; nothing but recovery shots is measured on it.

The obstacle-free hole is fairway all over, without bunkers: what the rating system's yardage ratings stand
for before obstacles are added.
"""

from __future__ import annotations

import tomllib

from ...hole.model import Hole
from ...hole.sketch import read_sketch

LENGTH_YD = 600.0
"""Tee to middle of the green; shorter holes are this one from nearer the green."""

GREEN_YD = 29.0
FAIRWAY_YD = 32.0
PINS_YD = ((5.0, -5.0), (-5.0, 5.0))
"""Right of and beyond the middle of the green."""


def _hole(length_yd: float, pin: tuple[float, float], ground: str) -> Hole:
    front = length_yd - GREEN_YD / 2.0
    text = (
        f'name = "bench"\npar = 5\nlength_yd = {length_yd}\n'
        f"green = [{{ front_yd = {front}, depth_yd = {GREEN_YD}, width_yd = {GREEN_YD} }}]\n"
        f'pin = [{{ name = "pin", on_yd = {GREEN_YD / 2.0 + pin[1]}, offset_yd = {pin[0]} }}]\n{ground}'
    )
    return read_sketch(tomllib.loads(text), "bench")


def plain_hole(pin: int = 0, length_yd: float = LENGTH_YD) -> Hole:
    """The plain hole with one of its pins."""
    half, end = FAIRWAY_YD / 2.0, length_yd - GREEN_YD / 2.0 + 4.0
    ground = (
        f"fairway = [{{ from_yd = -10, to_yd = {end}, left_yd = {-half}, right_yd = {half} }}]\n"
        f"bunker = [{{ at_yd = {length_yd}, offset_yd = -21.5, depth_yd = 16, width_yd = 8 }}, "
        f"{{ at_yd = {length_yd - 8}, offset_yd = 20, depth_yd = 12, width_yd = 8 }}]"
    )
    return _hole(length_yd, PINS_YD[pin], ground)


WOOD_YD = 12.0
"""Rough between the fairway and the woods of the wooded hole [yd], assumed."""

DEEP_YD = (3.0, 6.0)
"""How far inside a wood recovery shots are played from [yd], assumed: few balls finish deeper."""


def wooded_hole(pin: int = 0) -> Hole:
    """The plain hole between two woods of ordinary trees, for recovery shots alone."""
    half, end = FAIRWAY_YD / 2.0, LENGTH_YD - GREEN_YD / 2.0 + 4.0
    near, far = half + WOOD_YD, half + WOOD_YD + 42.0
    reach = f"from_yd = 0, to_yd = {LENGTH_YD + 20.0}"
    ground = (
        f"fairway = [{{ from_yd = -10, to_yd = {end}, left_yd = {-half}, right_yd = {half} }}]\n"
        f'trees = [{{ name = "left", {reach}, left_yd = {-far}, right_yd = {-near} }}, '
        f'{{ name = "right", {reach}, left_yd = {near}, right_yd = {far} }}]'
    )
    return _hole(LENGTH_YD, PINS_YD[pin], ground)


def open_hole(length_yd: float = LENGTH_YD, pin: int = 0) -> Hole:
    """The obstacle-free hole."""
    ground = f"fairway = [{{ from_yd = -20, to_yd = {length_yd + 60}, left_yd = -75, right_yd = 75 }}]"
    return _hole(length_yd, PINS_YD[pin], ground)
