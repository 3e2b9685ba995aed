"""Driver or 3-wood here? The question asked from Python, still and into a wind."""

from simulator import compare, load_hole, load_player
from simulator.conditions import Conditions, Wind

hole, player = load_hole("withy-drain"), load_player("isolde")
for day in (Conditions(), Conditions(wind=Wind(speed_mph=12, from_deg=0.0))):
    answer = compare(hole, player, ["driver", "3-wood"], conditions=day, sequences=5_000)
    words = "still air" if day.wind is None else f"{day.wind.speed_mph:.0f} mph against"
    for one in answer.alternatives:
        print(f"{words:>16}: {one.club:<8} {one.score.value:.2f} +- {one.score.standard_error:.2f}")
