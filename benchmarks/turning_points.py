"""How far turning points scatter, against what they say: ``python benchmarks/turning_points.py [--seeds 8]``.

Answers of several boards are worked out for seed after seed. A row for each thing that turns one of them,
from the same alternative to the same other in three seeds at least: how often, the mean, how far it scatters
from one seed to the next and what its standard errors say (root of their mean square).
"""

from __future__ import annotations

import argparse
from collections import defaultdict

import numpy as np

from simulator import compare, load_hole, load_player
from simulator.strategy.confidence import Flip

BOARDS = (
    ("withy-drain", "barnaby", ("driver", "3-wood")),
    ("withy-drain", "isolde", ("driver", "3-wood")),
    ("long-sluice", "isolde", ("driver", "3-wood")),
    ("eel-trap", "isolde", ("6-iron", "7-iron")),
    ("eel-trap", "barnaby", ("5-hybrid", "6-iron")),
)


def main() -> None:
    plain = argparse.RawDescriptionHelpFormatter
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=plain)
    parser.add_argument("--seeds", type=int, default=8)
    seeds = parser.parse_args().seeds
    print(f"{'board':<24}{'what':<16}{'to':<10}{'seeds':>6}{'mean':>8}{'scatter':>9}{'said':>8}  unit")
    ratios: dict[str, list[float]] = defaultdict(list)
    for hole, player, clubs in BOARDS:
        found: dict[tuple[str, str, str], list[Flip]] = defaultdict(list)
        for seed in range(1, seeds + 1):
            answer = compare(load_hole(hole), load_player(player), clubs=clubs, seed=seed)
            for flip in answer.flips:
                if flip.to is not None and flip.amount_standard_error is not None:
                    best, to = answer.best, answer.alternatives[flip.to]
                    found[flip.what, f"{best.club} {best.flight}", to.club].append(flip)
        for (what, _, club), flips in sorted(found.items()):
            if len(flips) < 3:
                continue
            amounts = np.array([flip.amount for flip in flips])
            said = float(np.sqrt(np.mean([(flip.amount_standard_error or 0.0) ** 2 for flip in flips])))
            scatter = float(amounts.std(ddof=1))
            ratios[what].append((scatter / said) ** 2)
            print(
                f"{hole + ', ' + player:<24}{what:<16}{club:<10}{len(flips):>6}{amounts.mean():>8.2f}"
                f"{scatter:>9.3f}{said:>8.3f}  {flips[0].unit}",
                flush=True,
            )
    for what, squares in ratios.items():
        print(f"{what}: scatter over what is said {np.sqrt(np.mean(squares)):.2f} (root of the mean square)")


if __name__ == "__main__":
    main()
