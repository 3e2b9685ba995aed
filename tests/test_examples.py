"""The examples of the README run as they stand."""

from __future__ import annotations

import runpy
from pathlib import Path

import pytest
from written import README

EXAMPLES = Path(__file__).parents[1] / "examples"


@pytest.mark.parametrize(
    ("name", "says", "writes"),
    [
        ("yardage_book", "cross dyke: reached from 340 yd", "card.pdf"),
        pytest.param("lesson_pictures", "plays alike", "lesson.png", marks=pytest.mark.slow),
        pytest.param("after_the_round", "lost by the choice", "played.png", marks=pytest.mark.slow),
        pytest.param("driver_or_3_wood", "12 mph against: driver", None, marks=pytest.mark.slow),
    ],
)
def test_example(
    name: str, says: str, writes: str | None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:  # fmt: skip
    monkeypatch.chdir(tmp_path)
    runpy.run_path(str(EXAMPLES / f"{name}.py"))
    assert says in capsys.readouterr().out
    if writes is not None:
        assert (tmp_path / writes).stat().st_size > 5_000


def test_every_example_is_listed_here_and_in_the_readme() -> None:
    for path in EXAMPLES.glob("*.py"):
        assert path.stem in Path(__file__).read_text("utf-8")
        assert f"examples/{path.name}" in README
