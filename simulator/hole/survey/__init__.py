"""Laser readings from one or more stands, solved for the places of all points."""

from .advise import Advice
from .readings import Survey, read_survey
from .sketch import sketch_data, sketch_text
from .solve import Point, Surveyed, solve_survey

__all__ = [
    "Advice", "Point", "Survey", "Surveyed", "read_survey", "sketch_data", "sketch_text", "solve_survey",
]  # fmt: skip
