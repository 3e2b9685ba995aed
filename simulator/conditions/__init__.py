"""The day: wind, air, firmness of the ground and speed of the greens."""

from .clubs import MPH_PER_CLUB, clubs_to_mph
from .model import Conditions, Wind, misread, other_height
from .options import conditions_from
from .scenarios import STILL, Scenario, read_scenarios
from .windwords import read_wind

__all__ = [
    "MPH_PER_CLUB",
    "STILL",
    "Conditions",
    "Scenario",
    "Wind",
    "clubs_to_mph",
    "conditions_from",
    "misread",
    "other_height",
    "read_scenarios",
    "read_wind",
]
