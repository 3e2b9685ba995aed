"""Puts this folder on the path by standing in it; the folder that bad inputs are written to."""

from pathlib import Path

import pytest
from bad_inputs import Folder


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Folder:
    """An empty folder of bad inputs, the one commands are run in."""
    monkeypatch.chdir(tmp_path)
    return Folder(tmp_path)
