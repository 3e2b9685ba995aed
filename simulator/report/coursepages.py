"""The drawn pages of a course: the team page for the wall, then a summary for each player's hand."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from ..strategy.courseasked import CourseAnswer
from .sheet import write_pages
from .summarypages import summary_pages
from .teampages import team_pages
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.figure import Figure


def course_pages(
    answer: CourseAnswer, target: int | None = None, units: Units = YARDS
) -> list[tuple[str, Figure]]:
    """Named pages of A4; none when no hole has an answer.

    Parameters
    ----------
    answer : CourseAnswer
    target : int, optional
        Score whose breaking is told, in strokes.
    units : Units
    """
    return [*team_pages(answer, units), *summary_pages(answer, target, units)]


def save_course(
    answer: CourseAnswer, path: str | Path, target: int | None = None, units: Units = YARDS
) -> list[Path]:
    """Write the pages, one PDF or a PNG or SVG each (`sheet.write_pages`); returns the files written."""
    pages = course_pages(answer, target, units)
    return write_pages(pages, path) if pages else []
