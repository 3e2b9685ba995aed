"""Jobs on a cluster of machines: a dask scheduler as an executor."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Executor
from contextlib import contextmanager
from typing import cast

from ..errors import UsageError

TIMEOUT_S = 15
"""How long a scheduler is waited for [s]."""


@contextmanager
def cluster_executor(address: str) -> Iterator[Executor]:
    """An executor on the workers of a dask scheduler, for `course.play_course`.

    Parameters
    ----------
    address : str
        Of the scheduler, ``"tcp://10.0.0.5:8786"``. Its workers need the same holesim.

    Raises
    ------
    UsageError
        dask.distributed is not installed, or no scheduler answers there.
    """
    try:
        from distributed import Client
    except ImportError:
        raise UsageError(
            "--cluster needs dask.distributed, which is not installed: pip install 'holesim[cluster]'"
        ) from None
    try:
        client = Client(address, timeout=TIMEOUT_S)
    except (OSError, ValueError, TimeoutError) as error:
        found = " ".join(str(error).split())[:120]
        raise UsageError(
            f"no scheduler at {address[:80]!r} ({found}); allowed: an address such as tcp://10.0.0.5:8786"
        ) from None
    with client:
        # not pure: the same job twice is two jobs; a lost worker's job is given to another
        yield cast(Executor, client.get_executor(pure=False))
