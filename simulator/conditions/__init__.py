"""The day: wind, air, firmness of the ground and speed of the greens."""

from .model import Conditions, Wind, at_both_heights, misread
from .options import conditions_from
from .scenarios import STILL, Scenario, read_scenarios
from .windwords import read_wind

__all__ = [
    "STILL",
    "Conditions",
    "Scenario",
    "Wind",
    "at_both_heights",
    "conditions_from",
    "misread",
    "read_scenarios",
    "read_wind",
]
