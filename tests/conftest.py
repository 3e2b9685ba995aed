"""Puts this folder on the path (naive.py, small_games.py) by standing in it; keeps the outside checks' figures."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest
import truth_rows

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # as the command line has it; before numpy is imported

OUTCOMES: dict[str, str] = {}


def pytest_addoption(parser):
    parser.addoption("--truth-rows", metavar="FILE", help="write the outside checks side by side as JSON")


def pytest_configure(config):
    if config.getoption("--truth-rows") and config.getoption("numprocesses", None):
        raise pytest.UsageError("--truth-rows: what was held against the outside is kept in one process (-n 0)")


def pytest_runtest_logreport(report):
    if report.when == "call" or report.outcome != "passed":
        OUTCOMES[report.nodeid] = report.outcome


def pytest_sessionfinish(session):
    target = session.config.getoption("--truth-rows")
    if target:
        Path(target).write_text(json.dumps({"rows": truth_rows.ROWS, "outcomes": OUTCOMES}), encoding="utf-8")
