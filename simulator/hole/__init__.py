"""What the ground is: holes, surfaces, tees, pins, the rules of relief, and the files they come from."""

from simulator.hole.crowns import Crown, Tree
from simulator.hole.files import bundled_holes, load_hole
from simulator.hole.model import Feature, Hole, Mark, Spot
from simulator.hole.slopes import Slope
from simulator.hole.surfaces import LIE_OF, PAINT_ORDER, WORDS, Lie, Surface

__all__ = [
    "LIE_OF",
    "PAINT_ORDER",
    "WORDS",
    "Crown",
    "Feature",
    "Hole",
    "Lie",
    "Mark",
    "Slope",
    "Spot",
    "Surface",
    "Tree",
    "bundled_holes",
    "load_hole",
]
