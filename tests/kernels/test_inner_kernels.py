"""What only kernels call: one compilation for all constants, the same numbers, and a clear no to Python."""

import numba
import pytest
from from_python import from_python
from numba.core.caching import NullCache

from simulator.kernels._compile import apart, in_place, kernel, part
from simulator.kernels._inner import _can_be_marked
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


@apart
def _seldom(x):
    return x + 1.0


@kernel
def _below(x):
    return _seldom(x) + _seldom(2.0 * x)


@in_place
def _always(x):
    return 3.0 * _below(x)


for _function in (_scaled, _squared, _seldom, _below, _always):
    if hasattr(_function, "_cache"):  # read from disk, as in a second run, what it calls is never compiled
        _function._cache = NullCache()


def code_of(function):
    """What callers are linked to, as text, and what it says of the function itself."""
    code = str(next(iter(function.overloads.values())).library._get_module_for_linking())
    name = function.__name__
    line = next(row for row in code.splitlines() if row.startswith("define") and name in row)
    number = line[line.rindex("#") :].split()[0]
    return code, code[code.index(f"attributes {number} ") :].splitlines()[0]


def test_what_is_in_place_does_not_pass_that_on():
    assert from_python(_always)(4.0) == 3.0 * (5.0 + 9.0)
    assert "alwaysinline" in code_of(_always)[1]
    assert "alwaysinline" not in code_of(_below)[1]  # numba hands a caller's settings down


def test_what_is_apart_is_called():
    assert from_python(_below)(4.0) == 5.0 + 9.0
    if not _can_be_marked():
        pytest.skip("this llvmlite cannot say so: it is copied, with the same numbers")
    assert "noinline" in code_of(_seldom)[1]
    assert code_of(_below)[0].count("call ") >= 2  # to `_seldom`, small as it is


def test_python_is_told_that_there_is_no_way_in():
    with pytest.raises(
        TypeError, match="is_gone is a kernel for kernels: an entry can be called from Python"
    ):
        is_gone(4, True)
    assert from_python(is_gone)(4, True) and not from_python(is_gone)(4, False)
