"""Puts this folder on the path (naive.py, small_games.py) by standing in it; keeps the outside checks' figures."""

from __future__ import annotations

import json
from pathlib import Path

import truth_rows

OUTCOMES: dict[str, str] = {}


def pytest_addoption(parser):
    parser.addoption("--truth-rows", metavar="FILE", help="write the outside checks side by side as JSON")


def pytest_runtest_logreport(report):
    if report.when == "call" or report.outcome != "passed":
        OUTCOMES[report.nodeid] = report.outcome


def pytest_sessionfinish(session):
    target = session.config.getoption("--truth-rows")
    if target:
        Path(target).write_text(json.dumps({"rows": truth_rows.ROWS, "outcomes": OUTCOMES}), encoding="utf-8")
