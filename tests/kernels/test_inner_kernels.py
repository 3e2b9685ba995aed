"""What only kernels call: one compilation for all constants, the same numbers, and a clear no to Python."""

import numba
import pytest
from from_python import from_python

from simulator.kernels._compile import kernel, part
from simulator.kernels.ground import is_gone

pytestmark = pytest.mark.skipif(bool(numba.config.DISABLE_JIT), reason="nothing is compiled")


@kernel
def _scaled(x, by, turned):
    return -x * by if turned else x * by


@part
def _squared(x):
    return x * x


@numba.njit
def _asked(x):
    return _scaled(x, 2, False) + _scaled(x, 3, True) + _squared(x)


def test_constants_do_not_compile_a_kernel_anew():
    assert _asked(5.0) == 10.0 - 15.0 + 25.0
    assert _scaled.signatures == [(numba.float64, numba.int64, numba.boolean)]


def test_python_is_told_that_there_is_no_way_in():
    with pytest.raises(TypeError, match="is_gone is a kernel for kernels: an entry can be called from Python"):
        is_gone(4, True)
    assert from_python(is_gone)(4, True) and not from_python(is_gone)(4, False)
