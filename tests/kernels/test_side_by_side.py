"""The loops that work several balls or flights at once: read off the machine code the compiler made of them."""

import platform

import numba
import pytest

from simulator.engine.ahead import kernel_types
from simulator.kernels import descent, luck, rest, trajectory
from simulator.tables.airs import flight_air

INTEL, ARM = {"divide": "divpd", "widen": "cvtps2pd"}, {"divide": "fdiv\tv", "widen": "fcvtl"}
PACKED = {"x86_64": INTEL, "AMD64": INTEL, "aarch64": ARM, "arm64": ARM}
"""How a division of several numbers at once begins in a machine's language, and single made double precision."""

NUMBERS, FLOAT, COUNT, COLUMN = numba.float64[::1], numba.float64, numba.int64, numba.uint64
AIR = numba.typeof(flight_air())


@pytest.mark.skipif(bool(numba.config.DISABLE_JIT), reason="nothing is compiled")
@pytest.mark.skipif(platform.machine() not in PACKED, reason="instructions of another machine")
@pytest.mark.parametrize(
    ("step", "types", "does"),
    [
        (luck._middles, (NUMBERS, COLUMN, COUNT), "divide"),
        (descent.come_down, kernel_types()[descent.come_down], "widen"),
        (rest._hop, (NUMBERS, NUMBERS, COUNT), "divide"),
        (rest._roll, (NUMBERS, NUMBERS, COUNT), "divide"),
        (trajectory._stage, (AIR, NUMBERS, COUNT, FLOAT, FLOAT, FLOAT, FLOAT, COLUMN, COLUMN), "divide"),
    ],
)
def test_several_are_worked_at_once(step, types, does):
    # a branch or a call in these loops and the compiler takes one after another: right, and half as fast
    fresh = type(step)(step.py_func, targetoptions=step.targetoptions)  # of code read from disk numba knows no text
    fresh.compile(types)
    assert PACKED[platform.machine()][does] in next(iter(fresh.overloads.values())).library.get_asm_str()
