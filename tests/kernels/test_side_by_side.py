"""The loops that work several balls or flights at once, on this processor and on others."""

import os
import platform
import subprocess
import sys
from pathlib import Path

import numba
import packed
import pytest

pytestmark = [
    pytest.mark.skipif(bool(numba.config.DISABLE_JIT), reason="nothing is compiled"),
    pytest.mark.skipif(platform.machine() not in packed.PACKED, reason="instructions of another machine"),
]


@pytest.mark.parametrize("name", packed.LOOPS)
def test_several_are_worked_at_once(name):
    # a branch or a call in these loops and the compiler takes one after another: right, and half as fast
    assert packed.is_packed(name)


@pytest.mark.skipif(packed.PACKED.get(platform.machine()) is not packed.INTEL, reason="processors of one family")
@pytest.mark.parametrize("processor", ["haswell", "skylake-avx512"])
def test_they_are_on_processors_with_and_without_wide_registers(processor):
    # a number read for some of the balls only is dear to gather on the narrower: `_hop` bounced one after another there
    env = os.environ | {
        "NUMBA_CPU_NAME": processor, "NUMBA_CPU_FEATURES": "", "PYTHONPATH": os.pathsep.join(filter(None, sys.path)),
    }  # fmt: skip
    command = [sys.executable, str(Path(packed.__file__))]
    told = subprocess.run(command, env=env, capture_output=True, text=True, check=True, timeout=120).stdout
    assert told.splitlines() == [f"{name} packed" for name in packed.LOOPS]
