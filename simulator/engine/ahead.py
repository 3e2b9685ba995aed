"""Compiling in two processes at once: ``python -m simulator.engine.ahead`` is the second of them.

numba compiles one function at a time in a process, and a new user waits for all of it. While the first
process compiles what makes the tables, and makes them, the second compiles everything that plays a shot, then
the entries that call it. Each finds on disk what the other has finished (`kernels/_compile.py`).
"""

from __future__ import annotations

import gc
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import numba

from ..kernels import descent, passing, rest, runs, scoring, sequence, shot
from ..kernels._compile import CACHE_FOLDER
from ..kernels.game import Field, Game, Ground, Luck, Trees
from .threads import default_threads

_STARTED: list[subprocess.Popen[bytes]] = []


def start() -> None:
    """Start the second process, once, where there is a core for it and a folder to meet in."""
    if _STARTED or CACHE_FOLDER is None or default_threads() < 2:
        return
    home = str(Path(__file__).parents[2])
    path = os.pathsep.join(filter(None, [home, os.environ.get("PYTHONPATH")]))
    quiet: Any = subprocess.DEVNULL
    try:
        process = subprocess.Popen(
            [sys.executable, "-P", "-m", __name__],  # not what may be called so in the user's folder
            stdin=quiet, stdout=quiet, stderr=quiet, env={**os.environ, "PYTHONPATH": path},
        )  # fmt: skip
    except OSError:  # no room for another process: this one compiles everything
        return
    _STARTED.append(process)


def kernel_types() -> dict[Any, tuple[Any, ...]]:
    """What is compiled here, in this order, and the types each is called with; see `kernels/game.py`.

    The steps of a shot come first: the first process wants them next, to compile `solve_nodes`, and compiles
    anew what it finds not yet done (three seconds of `settle`, when they were left to `play`).
    """
    f8, f4, i8, u1, i2 = numba.float64, numba.float32, numba.int64, numba.uint8, numba.int16

    def group(kind: type, *members: Any) -> Any:
        return numba.types.BaseTuple.from_types(members, kind)

    ground = group(Ground, f8[::1], u1[:, ::1], f4[:, :, ::1], f8[:, ::1], f8[:, ::1])
    field = group(Field, f8[::1], f8[:, :, :, ::1], f8[:, ::1], f8[:, :, ::1], f8[:, :, ::1])
    flights, tracks = numba.types.Array(f4, 6, "C"), numba.types.Array(f4, 7, "C")
    plan = numba.types.Array(f4, 4, "C")
    trees = group(Trees, u1[:, ::1], f4[:, ::1], f4[:, ::1], f8[:, ::1], tracks)
    game = group(
        Game, ground, field, i2[:, ::1], f8[:, ::1], i8[::1], f8[:, :, ::1], flights, trees, plan, plan
    )
    place, share, action, flag = (f8, f8, i8), (i8, i8), f8[::1], numba.boolean
    balls, states, out = f8[::1], f8[:, ::1], f8[:, :, ::1]
    luck = group(Luck, *(f8 for _ in Luck._fields))
    return {
        shot.strike: (game, balls, i8, *place, i8, f8, f8, f8, f8, luck),
        descent.come_down: (game, balls, i8),
        passing.past_trees: (game, balls, i8),
        rest.come_to_rest: (ground, balls, i8),
        shot.settle: (game, balls, i8, f8),
        sequence.play: (
            game, i8, *place, action, action, f8, i8, flag, *share, balls, states, f8[:, ::1], out
        ),
        scoring.evaluate: (game, *place, f8[:, ::1], f8, f8[:, :, ::1], *share, balls, out),
        runs.fill_runs: (ground, f8[:, ::1], balls, f8[::1]),
    }  # fmt: skip


if __name__ == "__main__":
    gc.freeze()  # of the imports nothing becomes garbage: a twentieth of this process's time went on looking
    for kernel, types in kernel_types().items():
        kernel.compile(types)
