"""Kernels that only other kernels call: typed once for each place of call, and without a way in from Python.

numba compiles for every function what lets Python call it, a seventh of all compiling here, and compiles it
anew for every constant it is handed: `f(x, 0)` and `f(x, 1)` are two functions to it.
"""

from __future__ import annotations

from functools import cache
from typing import Any, NoReturn

import llvmlite.binding
import numba
from numba.core.registry import CPUDispatcher

_Dispatcher: Any = CPUDispatcher  # numba publishes no types


class Inner(_Dispatcher):
    """A compiled function without an entry for Python; to call it from there, see `tests/from_python.py`."""

    def get_call_template(self, args: Any, kws: Any) -> Any:
        """What a caller needs to know, with constants taken for the numbers they are."""
        plain = {name: numba.types.unliteral(kind) for name, kind in kws.items()}
        return super().get_call_template(tuple(map(numba.types.unliteral, args)), plain)

    def add_overload(self, compiled: Any) -> None:
        """Note what was compiled for kernels to call; not in the table Python's calls are looked up in."""
        self.overloads[tuple(compiled.signature.args)] = compiled

    def _compile_for_args(self, *_args: Any, **_kws: Any) -> NoReturn:
        """What numba does at a call from Python: there is nothing to jump to."""
        raise TypeError(f"{self.__name__} is a kernel for kernels: an entry can be called from Python")


@cache
def _can_be_marked() -> bool:
    """Older llvmlite (numba 0.60) puts a function's attribute on what it returns, which is no valid code."""
    module = llvmlite.binding.parse_assembly("define i32 @f() {\n  ret i32 0\n}")
    module.get_function("f").add_function_attribute("noinline")
    try:
        module.verify()
    except RuntimeError:
        return False
    return True


class Apart(Inner):
    """An inner function that is called and never copied: what is seldom done stays out of what always is.

    Where LLVM is too old to be told so it is copied: the same numbers, and a longer first wait.
    """

    def add_overload(self, compiled: Any) -> None:
        """Mark what callers are linked to, which is also what is kept on disk for them."""
        if _can_be_marked():
            module = compiled.library._get_module_for_linking()
            module.get_function(compiled.fndesc.llvm_func_name).add_function_attribute("noinline")
        super().add_overload(compiled)
