"""Write the Sobol points the strikes are made of: ``python -m simulator.fits.sobol``.

Importing scipy.stats takes longer than answering the question, so its points are kept in a file;
a test compares the file with scipy.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np

from ..files import written_whole

POINTS = 4096
DIMENSIONS = 12
TARGET = Path(__file__).resolve().parents[1] / "tables" / "sobol.npy"


def sobol_points() -> np.ndarray:
    """First points of scipy's unscrambled Sobol sequence (Joe and Kuo's direction numbers), uint32."""
    from scipy.stats import qmc

    unit = qmc.Sobol(DIMENSIONS, scramble=False, bits=32).random(POINTS)
    return np.asarray(np.round(unit * 2.0**32), dtype=np.uint32)


def main() -> None:
    """Write the file."""
    with written_whole(TARGET) as draft:
        np.save(draft, sobol_points())
    print(f"wrote {TARGET}: {POINTS} points, {DIMENSIONS} dimensions")


if __name__ == "__main__":
    main()
