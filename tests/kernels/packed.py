"""Whether the loops that work several balls or flights at once do: read off the machine code made of them.

Run as a program it prints a line for each, for the processor that NUMBA_CPU_NAME names.
"""

import platform
import sys

import numba

from simulator.engine.ahead import kernel_types
from simulator.kernels import descent, luck, rest, trajectory
from simulator.tables.airs import flight_air

INTEL, ARM = {"divide": "divpd", "widen": "cvtps2pd"}, {"divide": "fdiv\tv", "widen": "fcvtl"}
PACKED = {"x86_64": INTEL, "AMD64": INTEL, "aarch64": ARM, "arm64": ARM}
"""How a division of several numbers at once begins in a machine's language, and single made double precision."""

NUMBERS, FLOAT, COUNT, COLUMN = numba.float64[::1], numba.float64, numba.int64, numba.uint64
AIR = numba.typeof(flight_air())

LOOPS = {
    "luck._middles": (luck._middles, (NUMBERS, COLUMN, COUNT), "divide"),
    "descent.come_down": (descent.come_down, kernel_types()[descent.come_down], "widen"),
    "rest._hop": (rest._hop, (NUMBERS, NUMBERS, COUNT), "divide"),
    "rest._roll": (rest._roll, (NUMBERS, NUMBERS, COUNT), "divide"),
    "trajectory._stage": (
        trajectory._stage, (AIR, NUMBERS, COUNT, FLOAT, FLOAT, FLOAT, FLOAT, COLUMN, COLUMN), "divide",
    ),
}  # fmt: skip


def is_packed(name: str) -> bool:
    step, types, does = LOOPS[name]
    fresh = type(step)(step.py_func, targetoptions=step.targetoptions)  # of code read from disk numba knows no text
    fresh.compile(types)
    return PACKED[platform.machine()][does] in next(iter(fresh.overloads.values())).library.get_asm_str()


if __name__ == "__main__":
    for name in LOOPS:
        sys.stdout.write(f"{name} {'packed' if is_packed(name) else 'one by one'}\n")
