"""The loops that work several balls or flights at once: read off the machine code the compiler made of them."""

import platform

import numba
import pytest

from simulator.kernels import luck, rest, trajectory
from simulator.tables.airs import flight_air

PACKED = {"x86_64": "divpd", "AMD64": "divpd", "aarch64": "fdiv\tv", "arm64": "fdiv\tv"}
"""How a division of several numbers at once begins in a machine's language."""

NUMBERS, FLOAT, COUNT, COLUMN = numba.float64[::1], numba.float64, numba.int64, numba.uint64
AIR = numba.typeof(flight_air())


@pytest.mark.skipif(bool(numba.config.DISABLE_JIT), reason="nothing is compiled")
@pytest.mark.skipif(platform.machine() not in PACKED, reason="instructions of another machine")
@pytest.mark.parametrize(
    ("step", "types"),
    [
        (luck._middles, (NUMBERS, COLUMN, COUNT)),
        (rest._hop, (NUMBERS, NUMBERS, COUNT)),
        (rest._roll, (NUMBERS, NUMBERS, COUNT)),
        (trajectory._stage, (AIR, NUMBERS, COUNT, FLOAT, FLOAT, FLOAT, FLOAT, COLUMN, COLUMN)),
    ],
)
def test_several_are_worked_at_once(step, types):
    # a branch or a call in these loops and the compiler takes one after another: right, and half as fast
    fresh = type(step)(step.py_func, targetoptions=step.targetoptions)  # of code read from disk numba knows no text
    fresh.compile(types)
    assert PACKED[platform.machine()] in next(iter(fresh.overloads.values())).library.get_asm_str()
