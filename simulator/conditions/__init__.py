"""The day: wind, air, firmness of the ground and speed of the greens."""

from .clubs import MPH_PER_CLUB, clubs_to_mph
from .model import Conditions, Wind, at_both_heights, misread
from .options import conditions_from
from .scenarios import STILL, Scenario, read_scenarios
from .windwords import read_wind

__all__ = [
    "MPH_PER_CLUB",
    "STILL",
    "Conditions",
    "Scenario",
    "Wind",
    "at_both_heights",
    "clubs_to_mph",
    "conditions_from",
    "misread",
    "read_scenarios",
    "read_wind",
]
