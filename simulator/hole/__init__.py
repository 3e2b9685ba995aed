"""What the ground is: holes, surfaces, tees, pins, the rules of relief, and the files they come from."""

from simulator.hole.course import BadHole, Course, bundled_courses, load_course
from simulator.hole.crowns import Crown, Tree
from simulator.hole.files import bundled_holes, load_hole
from simulator.hole.model import Feature, Hole, Mark, Spot
from simulator.hole.pins import PinPlace, pin_at, pin_from_words, read_pin_place
from simulator.hole.pinsheet import read_pin_sheet
from simulator.hole.slopes import Slope
from simulator.hole.surfaces import LIE_OF, PAINT_ORDER, WORDS, Lie, Surface

__all__ = [
    "LIE_OF",
    "PAINT_ORDER",
    "WORDS",
    "BadHole",
    "Course",
    "Crown",
    "Feature",
    "Hole",
    "Lie",
    "Mark",
    "PinPlace",
    "Slope",
    "Spot",
    "Surface",
    "Tree",
    "bundled_courses",
    "bundled_holes",
    "load_course",
    "load_hole",
    "pin_at",
    "pin_from_words",
    "read_pin_place",
    "read_pin_sheet",
]
