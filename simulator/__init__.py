"""holesim: which club, which line, and how sure.

>>> from simulator import load_hole, load_player, plan, compare

Nothing heavy is imported until one of these is used.
"""

from __future__ import annotations

from typing import Any

__version__ = "0.1.0"
__all__ = ["compare", "load_hole", "load_player", "plan"]

_HOME = {
    "load_hole": "simulator.hole",
    "load_player": "simulator.player",
    "plan": "simulator.strategy.ask",
    "compare": "simulator.strategy.ask",
}


def __getattr__(name: str) -> Any:
    if name not in _HOME:
        raise AttributeError(f"module 'simulator' has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(_HOME[name]), name)
