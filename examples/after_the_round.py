"""A hole that was played: what went to the choice and what to the swing, and the picture of it."""

from simulator import load_hole, load_player
from simulator.report.reviewpage import save_review
from simulator.strategy.review import read_notes, review

notes = read_notes("driver to 300 out, left rough; 5-wood to 100 out; 50 to 20 ft below; 2 putts")
found = review(load_hole("long-sluice"), load_player("isolde"), notes)
for one in found.strokes:
    choice, swing = one.choice.value, one.swing.value
    print(f"{one.stroke.club:<8} lost by the choice {choice:5.2f}, by the swing {swing:5.2f}")
print(f"{found.score} strokes, {found.expected.value:.2f} on average")
save_review(found, "played.png")
