"""A yardage book from Python: carries, the fairway where it is narrowest, and a card of two holes."""

from simulator import load_hole
from simulator.hole.yardage import measure
from simulator.report.cardpages import save_cards

holes = [measure(load_hole(name)) for name in ("withy-drain", "long-sluice")]
for one in holes:
    narrow = min(one.widths, key=lambda width: width.width_yd)
    print(f"{one.hole.name}: narrowest at {narrow.station_yd:.0f} yd, {narrow.width_yd:.0f} yd wide")
    for trouble in one.troubles:
        if trouble.side == "across":
            reach, clear = trouble.reach_yd, trouble.clear_yd
            print(f"  {trouble.name}: reached from {reach:.0f} yd, carried at {clear:.0f}")
print(*save_cards(holes, "card.pdf"))
