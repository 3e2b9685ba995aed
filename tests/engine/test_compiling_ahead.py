"""The second process that compiles: started once, where it can help, and compiling what is called later."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from simulator import load_hole, load_player, plan
from simulator.engine import ahead
from simulator.kernels._compile import entries

ROOT = Path(__file__).parents[2]


@pytest.fixture
def processes(monkeypatch: pytest.MonkeyPatch) -> list[dict[str, Any]]:
    """What would have been started."""
    started: list[dict[str, Any]] = []

    def popen(command: list[str], **more: Any) -> str:
        started.append({"command": command, **more})
        return "a process"

    monkeypatch.setattr(ahead, "_STARTED", [])
    monkeypatch.setattr(ahead.subprocess, "Popen", popen)
    monkeypatch.setattr(ahead, "default_threads", lambda: 2)
    monkeypatch.setattr(ahead, "CACHE_FOLDER", Path("somewhere"))
    return started


def test_it_is_started_once_and_says_nothing(processes: list[dict[str, Any]]) -> None:
    ahead.start()
    ahead.start()
    (one,) = processes
    assert one["command"] == [sys.executable, "-P", "-m", "simulator.engine.ahead"]
    assert one["stdin"] == one["stdout"] == one["stderr"] == subprocess.DEVNULL
    assert one["env"]["PYTHONPATH"].split(os.pathsep)[0] == str(ROOT)


def test_one_core_or_nowhere_to_meet_and_it_is_not_started(
    processes: list[dict[str, Any]], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ahead, "default_threads", lambda: 1)
    ahead.start()
    monkeypatch.setattr(ahead, "default_threads", lambda: 2)
    monkeypatch.setattr(ahead, "CACHE_FOLDER", None)
    ahead.start()
    assert not processes


def test_no_room_for_a_process_is_no_error(monkeypatch: pytest.MonkeyPatch, processes: list[dict[str, Any]]) -> None:
    tried = []

    def full(*_: Any, **__: Any) -> None:
        tried.append(1)
        raise OSError("no room")

    monkeypatch.setattr(ahead.subprocess, "Popen", full)
    ahead.start()
    assert tried and not processes


@pytest.mark.skipif(os.environ.get("NUMBA_DISABLE_JIT") == "1", reason="nothing is compiled")
def test_what_is_compiled_ahead_is_what_an_answer_calls() -> None:
    """Types that fit no call would cost a second compiling, and nobody would see it."""
    plan(load_hole("eel-trap"), load_player("isolde"), sequences=100, quick=True)
    for kernel, types in ahead.kernel_types().items():
        if kernel.__name__ in entries():
            assert types in kernel.signatures, kernel.__name__


@pytest.mark.slow
def test_it_leaves_each_kernel_on_disk_once(tmp_path: Path) -> None:
    """As a new user's first answer starts it: a folder with nothing in it.

    Twice would be one whose types here are not those the entries call it with.
    """
    env = {**os.environ, "HOLESIM_CACHE_DIR": str(tmp_path), "PYTHONPATH": str(ROOT)}
    subprocess.run([sys.executable, "-m", "simulator.engine.ahead"], env=env, check=True, timeout=300)
    for kernel in ahead.kernel_types():
        assert len(list(tmp_path.rglob(f"*.{kernel.__name__}-*.nbc"))) == 1, kernel.__name__
