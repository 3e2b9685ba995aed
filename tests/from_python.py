"""Kernels called from Python: what only other kernels call has no way in of its own."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numba


def from_python(kernel: Any) -> Callable[..., Any]:
    """A compiled function that hands its arguments on to `kernel`, by position."""
    if numba.config.DISABLE_JIT:
        return kernel  # type: ignore[no-any-return]

    @numba.njit(error_model="numpy")
    def call(*args):  # type: ignore[no-untyped-def]
        return kernel(*args)

    return call  # type: ignore[no-any-return]
