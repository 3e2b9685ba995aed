"""How far a course's brief form of confidence lies from the full one of a single answer, and what each costs.

Run as ``python benchmarks/brief_confidence.py [HOLE:PLAYER ...]`` (about 25 s of processor a board). Both
forms are worked out on the same solved board with the same seeds, and the full one with another seed too:
what it differs by from itself is scatter that nobody sees on the answer screen.
"""

from __future__ import annotations

import sys
import time
from dataclasses import replace

import numpy as np

from simulator import load_hole, load_player
from simulator.strategy.answering import answer_at, never
from simulator.strategy.plausible import BRIEF, FULL, Form
from simulator.strategy.question import Clock, question, solve

BOARDS = (
    "withy-drain:barnaby", "withy-drain:isolde", "eel-trap:barnaby", "eel-trap:isolde", "long-sluice:isolde",
    "ostrel-heath/4:isolde", "ostrel-heath/9:barnaby", "ostrel-heath/12:isolde",
)  # fmt: skip

OTHER_SEED = 1_001
"""The full form's second seed."""

SEQUENCES = 5_000


def shares(board: str) -> list[tuple[float, float]]:
    """(best share, processor seconds) of the brief form, the full one, and the full one of another seed."""
    name, who = board.split(":")
    hole, player = load_hole(name), load_player(who)
    asked = question("plan", hole, player, sequences=SEQUENCES, seed=1, threads=1)
    place = solve(asked, Clock())
    exact = answer_at(place, asked, Clock(), None)

    def sure(form: Form, seed: int) -> tuple[float, float]:
        began = time.process_time()
        answer = answer_at(place, replace(asked, seed=seed), Clock(), form, turns=never)
        spent = time.process_time() - began
        if answer.confidence is None:
            return 1.0, spent
        same = [k for k, one in enumerate(answer.alternatives) if one.club == exact.best.club]
        return sum(answer.confidence.shares[k] for k in same), spent

    began = time.process_time()
    answer_at(place, asked, Clock(), None)
    alone = time.process_time() - began
    found = [sure(BRIEF, 1), sure(FULL, 1), sure(FULL, OTHER_SEED)]
    return [(share, spent - alone) for share, spent in found]


def main(boards: tuple[str, ...]) -> None:
    """Print a line a board and what they come to."""
    rows = []
    print(f"{'board':<24} {'brief':>6} {'full':>6} {'again':>6}   seconds brief, full")
    for board in boards:
        (brief, quick_s), (full, full_s), (again, _) = shares(board)
        rows.append((brief - full, again - full, quick_s, full_s))
        print(f"{board:<24} {brief:6.2f} {full:6.2f} {again:6.2f}   {quick_s:.1f} {full_s:.1f}", flush=True)
    off = np.array(rows)
    print(
        f"brief from full: mean {off[:, 0].mean():+.3f}, size {np.abs(off[:, 0]).mean():.3f}, "
        f"most {np.abs(off[:, 0]).max():.3f}; full from itself, another seed: size "
        f"{np.abs(off[:, 1]).mean():.3f}, "
        f"most {np.abs(off[:, 1]).max():.3f}; seconds {off[:, 2].mean():.1f} and {off[:, 3].mean():.1f}"
    )


if __name__ == "__main__":
    main(tuple(sys.argv[1:]) or BOARDS)
