"""The picture: words inside and apart, keys, counts that can be counted, colours told apart, files whole."""

from __future__ import annotations

import functools
import os
import subprocess
import sys
import warnings
from pathlib import Path

import fake_answers
import numpy as np
import pytest
from fake_lessons import SHORT
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.colors import to_rgb
from matplotlib.figure import Figure
from matplotlib.text import Text
from words_apart import check_apart

from simulator.errors import UsageError
from simulator.hole import Surface, load_hole
from simulator.report import shotplot
from simulator.report.chosen import leading
from simulator.report.palette import GROUND, SHOTS
from simulator.report.plot import draw_plan, save_plan
from simulator.report.text import answer_screen
from simulator.strategy.places import place
from simulator.strategy.result import Answer

CASES = (
    "withy-drain tee", "eel-trap tee", "long-sluice tee",
    "withy-drain 160 out", "long-sluice 180 out", "alone",
)  # fmt: skip


def made(case: str) -> Answer:
    name, _, where = case.partition(" ")
    if case == "alone":
        return fake_answers.answer(clubs=({"club": "driver", "carry_yd": 196.0, "score": 5.4},))
    if where == "tee":
        return fake_answers.answer(name, clubs=SHORT) if name == "eel-trap" else fake_answers.answer(name)
    hole = load_hole(name)
    return fake_answers.answer(hole, "isolde", start=place(where, hole), question="plan", clubs=SHORT)


@functools.cache
def picture(case: str) -> tuple[Answer, Axes]:
    """Answer and finished picture of a case; only looked at, never changed."""
    answer = made(case)
    ax = draw_plan(answer)
    ax.get_figure().canvas.draw()
    return answer, ax


def texts(figure: Figure) -> list[Text]:
    """All words on the page that are drawn."""
    found = [t for t in figure.findobj(Text) if t.get_visible() and t.get_text().strip()]
    inside = figure.bbox
    return [t for t in found if t.axes is None or t.get_window_extent().overlaps(inside)]


@pytest.mark.parametrize("case", CASES)
def test_words_are_on_the_page_and_cover_no_other(case: str) -> None:
    figure = picture(case)[1].get_figure()
    assert isinstance(figure, Figure)
    words = texts(figure)
    check_apart(figure, words, within_px=0.0)


@pytest.mark.parametrize("case", CASES)
def test_names_and_arcs_stay_inside_the_drawing(case: str) -> None:
    _, ax = picture(case)
    frame = ax.get_window_extent()
    inside = [t for t in ax.texts if not t.get_text().startswith("Crosses")]
    assert any(t.get_text().endswith(" yd") for t in inside)
    assert any(t.get_text() == "pin" for t in inside)
    for text in inside:
        box = text.get_window_extent()
        assert frame.x0 <= box.x0 and box.x1 <= frame.x1 and frame.y0 <= box.y0 and box.y1 <= frame.y1


@pytest.mark.parametrize("case", CASES)
def test_equal_aspect_and_everything_in_view(case: str) -> None:
    answer, ax = picture(case)
    (x0, y0), (x1, y1) = ax.transData.transform([(0, 0), (10, 10)])
    assert x1 - x0 == pytest.approx(y1 - y0, rel=1e-6)
    low, high = ax.get_xlim(), ax.get_ylim()
    for dots in ax.collections:
        xy = np.asarray(dots.get_offsets())
        assert (xy[:, 0] > low[0]).all() and (xy[:, 0] < low[1]).all()
        assert (xy[:, 1] > high[0]).all() and (xy[:, 1] < high[1]).all()
    assert low[0] < answer.hole.pin.x_yd < low[1] and high[0] < answer.hole.pin.y_yd < high[1]


def test_a_hundred_dots_and_counts_that_can_be_counted() -> None:
    answer = fake_answers.answer()
    ax = draw_plan(answer)
    assert len(ax.collections) == 2
    drain = next(f for f in answer.hole.features if f.name == "withy drain")
    for dots, index in zip(reversed(ax.collections), leading(answer), strict=True):
        xy = np.asarray(dots.get_offsets())
        assert len(xy) == 100
        counts = shotplot.counts(answer, answer.alternatives[index])
        assert sum(counts.values()) == 100
        in_drain = sum(answer.hole.feature_at(x, y) is drain for x, y in xy)
        assert in_drain == counts.get("withy drain", 0)
        row = next(
            line for line in answer_screen(answer).splitlines() if line.startswith("ball in drove lane")
        )
        cell = row[len("ball in drove lane (out)") :].split()[index]
        assert counts["drove lane"] == int(cell)  # the screen says the same


def test_keys_hold_clubs_counts_and_ground() -> None:
    ax = draw_plan(fake_answers.answer())
    legends = [c for c in ax.get_children() if type(c).__name__ == "Legend"]
    words = [t.get_text() for legend in legends for t in legend.get_texts()]
    assert len(legends) == 2
    assert words[0].startswith("3-wood, at the middle of the fairway (recommended)\nof 100: ") and " fairway, " in words[0]
    assert words[1].startswith("driver, at the middle of the fairway (runner-up)\nof 100: ")
    assert {"fairway", "green", "rough", "water", "bunker", "out of bounds", "trees"} <= set(words)
    frame = ax.get_window_extent()
    for legend in legends:
        assert legend.get_window_extent().y1 <= frame.y0  # beside the drawing, not on it
    assert "Rules of Golf 4.3" in "\n".join(t.get_text() for t in ax.texts)
    title = ax.get_title(loc="left")
    assert "Withy Drain, par 4, 404 yd" in title and "Barnaby (handicap 18)" in title


def test_draws_into_given_axes_and_leaves_global_settings_alone() -> None:
    import matplotlib

    before = dict(matplotlib.rcParams)
    figure = Figure(figsize=(8, 10))
    FigureCanvasAgg(figure)
    ax = figure.add_axes((0.1, 0.3, 0.5, 0.6))
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        assert draw_plan(fake_answers.answer(), ax=ax) is ax
        figure.canvas.draw()
    assert ax.get_figure() is figure and figure.get_size_inches().tolist() == [8, 10]
    assert dict(matplotlib.rcParams) == before


def test_no_pyplot_and_no_window(tmp_path: Path) -> None:
    code = (
        "import sys, fake_answers\n"
        "from simulator.report.plot import save_plan\n"
        "save_plan(fake_answers.answer(n=300), sys.argv[1])\n"
        "assert 'matplotlib.pyplot' not in sys.modules\n"
    )
    paths = os.pathsep.join([str(Path(__file__).parent), str(Path(__file__).parents[2])])
    command = [sys.executable, "-c", code, str(tmp_path / "plan.png")]
    done = subprocess.run(command, env={**os.environ, "PYTHONPATH": paths}, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr


# Machado, Oliveira and Fernandes (2009), "A physiologically-based model for simulation of color vision
# deficiency", IEEE Trans. Visualization and Computer Graphics 15, severity 1.0, on linear RGB (from memory;
# each row adds up to 1, as theirs do).
BLIND = {
    "protan": (0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998),
    "deutan": (0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881),
    "tritan": (1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900),
    "none": (1, 0, 0, 0, 1, 0, 0, 0, 1),
}


def lab(colour: str, blind: str) -> np.ndarray:
    """CIE L*a*b* (D65; sRGB by IEC 61966-2-1) of a colour as seen."""
    c = np.array(to_rgb(colour))
    linear = np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4)
    seen = np.clip(np.array(BLIND[blind]).reshape(3, 3) @ linear, 0.0, 1.0)
    to_xyz = np.array(
        [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]]
    )  # fmt: skip
    ratio = to_xyz @ seen / np.array([0.9505, 1.0, 1.089])
    f = np.where(ratio > 0.008856, np.cbrt(ratio), 7.787 * ratio + 16 / 116)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


@pytest.mark.parametrize("blind", BLIND)
def test_shots_are_told_apart_by_every_eye(blind: str) -> None:
    """A difference of 20 in L*a*b* (CIE 1976) is several times what side-by-side patches need (2.3)."""
    one, other = (lab(shot.colour, blind) for shot in SHOTS)
    assert np.linalg.norm(one - other) > 20
    for shot in SHOTS:
        for ground in GROUND.values():
            assert np.linalg.norm(lab(shot.colour, blind) - lab(ground.fill, blind)) > 30


def test_without_colour_shots_differ_in_shape_fill_and_lightness_and_trouble_is_hatched() -> None:
    one, other = SHOTS
    assert one.marker != other.marker and one.dash != other.dash
    assert abs(lab(one.colour, "none")[0] - lab(other.colour, "none")[0]) > 20
    assert abs(lab(one.face, "none")[0] - lab(other.face, "none")[0]) > 60
    trouble = (Surface.WATER, Surface.DRY_PENALTY, Surface.BUNKER, Surface.OUT_OF_BOUNDS, Surface.TREES)
    hatches = [GROUND[s].hatch for s in trouble]
    assert all(hatches) and len(set(hatches)) == len(hatches)


@pytest.mark.parametrize(("suffix", "start"), [("png", b"\x89PNG"), ("svg", b"<?xml"), ("pdf", b"%PDF")])
def test_saves_whole_files_and_nothing_else(tmp_path: Path, suffix: str, start: bytes) -> None:
    answer = fake_answers.answer("eel-trap", clubs=SHORT)
    target = tmp_path / f"plan.{suffix}"
    save_plan(answer, target)
    first = target.read_bytes()
    assert first.startswith(start) and os.listdir(tmp_path) == [target.name]
    save_plan(answer, target)
    assert target.read_bytes() == first  # no date inside


def test_png_is_as_wide_as_a_phone(tmp_path: Path) -> None:
    from matplotlib.image import imread

    save_plan(fake_answers.answer(), tmp_path / "plan.png")
    height, width = imread(tmp_path / "plan.png").shape[:2]
    assert width == 1080 and height > width


@pytest.mark.parametrize("name", ["plan", "plan.jpg", "plan.txt", "no/plan.png", "folder.png", "bad\0.png"])
def test_refuses_what_cannot_be_written(tmp_path: Path, name: str) -> None:
    (tmp_path / "folder.png").mkdir()
    with pytest.raises(UsageError, match="plot") as caught:
        save_plan(fake_answers.answer(), tmp_path / name)
    assert "\n" not in str(caught.value)
    assert os.listdir(tmp_path) == ["folder.png"]


def test_no_broken_file_when_writing_fails(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target = tmp_path / "plan.png"
    target.write_bytes(b"old")

    def full(*_args: object, **_more: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Figure, "savefig", full)
    with pytest.raises(UsageError, match="No space left"):
        save_plan(fake_answers.answer(), target)
    assert os.listdir(tmp_path) == ["plan.png"] and target.read_bytes() == b"old"
