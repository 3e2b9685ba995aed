"""One hole for a notebook: where the flat bottom of the aim is, and its picture beside the plan."""

from matplotlib.figure import Figure

from simulator import load_hole, load_player
from simulator.report.lessoncharts import draw_aims
from simulator.report.lessonmaps import draw_plan_map
from simulator.strategy.lesson import lesson

found = lesson(load_hole("withy-drain"), load_player("barnaby"), ["driver", "3-wood"], sequences=2_000)
for curve in found.curves:
    low, high = curve.tie_yd
    print(f"{curve.club}: {low:+.0f} to {high:+.0f} yd plays alike, best at {curve.best_yd:+.0f}")
figure = Figure(figsize=(8, 5))
draw_plan_map(found, ax=figure.add_subplot(1, 2, 1))
draw_aims(found, ax=figure.add_subplot(1, 2, 2))
figure.savefig("lesson.png")
