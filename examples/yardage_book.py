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
            carried = "goes on" if trouble.clear_yd is None else f"carried at {trouble.clear_yd:.0f}"
            print(f"  {trouble.name}: reached from {trouble.reach_yd:.0f} yd, {carried}")
print(*save_cards(holes, "card.pdf"))
