"""An answer, or any other plain data, as JSON: keys in the order they were written, finite numbers only."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from typing import Any

import numpy as np

from ..strategy.result import Answer


def answer_json(answer: Answer) -> str:
    """The whole answer as one JSON object (RFC 8259), without a final newline."""
    return dumps(answer.to_dict())


def dumps(value: Any) -> str:
    """Plain data as JSON text: ASCII, indented, keys in the order given.

    Raises
    ------
    ValueError
        NaN or infinity somewhere (JSON has neither), or something that is not plain data; names the key.
    """
    return json.dumps(plain(value), allow_nan=False, indent=2)


def plain(value: Any, where: str = "answer") -> Any:
    """numpy numbers and arrays, tuples and mappings as what JSON knows."""
    if value is None or isinstance(value, bool | str):
        return value
    if isinstance(value, np.bool_):
        return bool(value)
    if isinstance(value, int | np.integer):
        return int(value)
    if isinstance(value, float | np.floating):
        if not math.isfinite(value):
            raise ValueError(f"{where} is {value}: JSON holds finite numbers only")
        return float(value)
    if isinstance(value, Mapping):
        return {str(key): plain(item, f"{where}.{key}") for key, item in value.items()}
    if isinstance(value, list | tuple | np.ndarray):
        return [plain(item, f"{where}[{k}]") for k, item in enumerate(value)]
    raise ValueError(f"{where} is a {type(value).__name__}: not plain data")
