"""The lesson sheet: words inside and apart, keys, a hundred dots, four questions answered by its own text."""

from __future__ import annotations

import dataclasses
import functools
import math
import re
from pathlib import Path
from types import SimpleNamespace

import fake_answers
import fake_lessons
import numpy as np
import pytest
import shapely
from fake_lessons import HOLES
from matplotlib.contour import ContourSet
from matplotlib.figure import Figure
from matplotlib.legend import Legend
from matplotlib.text import Text
from small_games import hole_of
from words_apart import check_words, pdf_words

from simulator.conditions import Conditions, Wind, read_wind
from simulator.errors import UsageError
from simulator.hole import load_hole
from simulator.hole.surfaces import Surface
from simulator.report import shotplot, worthmap
from simulator.report.chosen import TroubleRow, leading, troubles
from simulator.report.cloud import draw_cloud
from simulator.report.daywords import clock
from simulator.report.falls import FALLS, falls_shown
from simulator.report.figures import in_ten, plain_spaces
from simulator.report.groundkey import seen_on
from simulator.report.groundplot import area_patch
from simulator.report.holemap import area_of
from simulator.report.labels import Labels, in_lines
from simulator.report.lessoncharts import draw_scores
from simulator.report.lessonmaps import draw_approach, draw_plan_map
from simulator.report.lessonpages import PAGES, lesson_pages, save_lesson
from simulator.report.lines import line_words
from simulator.report.odds import odds, times_words
from simulator.report.page import frame, own_axes, view_box
from simulator.report.phrases import trade
from simulator.report.planwords import plan_words, risk_words
from simulator.report.sheet import wrapped
from simulator.report.shotplot import words_avoid
from simulator.report.takeaways import (
    aim_words,
    approach_words,
    gap_words,
    score_words,
    two_words,
    worth_words,
)
from simulator.report.units import METRES
from simulator.report.verdicts import verdict
from simulator.report.worthmap import draw_value
from simulator.strategy.errorbars import Estimate
from simulator.strategy.lesson import Lesson
from simulator.strategy.result import Answer


@functools.cache
def made(name: str) -> Lesson:
    return fake_lessons.lesson(name)


@functools.cache
def pages(name: str) -> dict[str, Figure]:
    found = dict(lesson_pages(made(name)))
    for figure in found.values():
        figure.draw_without_rendering()
    return found


@pytest.mark.parametrize("name", HOLES)
@pytest.mark.parametrize("page", PAGES)
def test_words_are_on_the_page_and_cover_no_other(name: str, page: str) -> None:
    check_words(pages(name)[page])


@pytest.mark.parametrize("name", HOLES)
@pytest.mark.parametrize("page", PAGES)
def test_every_page_has_a_key_and_is_as_wide_as_a_phone(name: str, page: str) -> None:
    figure = pages(name)[page]
    assert [key for key in figure.findobj(Legend) if key.get_texts()]
    wide, tall = figure.get_size_inches()
    assert wide == 3.6 and tall <= 9.2


@pytest.mark.parametrize("name", HOLES)
def test_a_hundred_dots_with_their_count(name: str) -> None:
    result = made(name)
    for draw in (draw_plan_map, draw_approach):
        dots = draw(result).collections[-1]
        assert len(dots.get_offsets()) == 100
    answer = result.answer
    for index in leading(answer):
        ax = draw_cloud(result, index)
        clouds = [np.asarray(c.get_offsets()) for c in ax.collections if len(c.get_offsets()) == 100]
        assert len(clouds) == 1
        counts = shotplot.counts(answer, answer.alternatives[index])
        assert sum(counts.values()) == 100
        trouble = {f.name for f in answer.hole.features} & counts.keys()
        shown = sorted(int(t.get_text()) for t in ax.texts if t.get_text().isdigit())
        assert shown == sorted(counts[n] for n in trouble if n in _troubles(result))


MOAT = """
name = "Isle"
par = 3
length_yd = 148
green = [{ points_yd = [[134, -12], [162, -12], [162, 12], [134, 12]] }]
[[penalty_area]]
name = "moat 2"
colour = "red"
xy_yd = [[-34, 116], [34, 116], [34, 180], [-34, 180]]
holes_xy_yd = [[[-16, 130], [-16, 166], [16, 166], [16, 130]]]
"""


def _island(**more: object) -> Lesson:
    """The middle of the balls in its water is dry, on the green."""
    return fake_lessons.lesson(answer=fake_answers.answer(hole_of(MOAT), "barnaby", clubs=fake_lessons.SHORT, **more))


def test_the_count_of_balls_in_water_round_a_green_stands_in_the_water() -> None:
    result = _island()
    moat = area_of(result.answer.hole, "moat 2")
    for index in leading(result.answer):
        ax = draw_cloud(result, index)
        count = shotplot.counts(result.answer, result.answer.alternatives[index])["moat 2"]
        text = next(text for text in ax.texts if text.get_text() == f"{count}")
        assert moat.contains(shapely.Point(text.get_position()))


def test_a_count_stands_before_its_ground() -> None:
    """Behind a name that ends in a figure it would be read with it: "moat 2 4"."""
    result = _island()
    answer = result.answer
    count = shotplot.counts(answer, answer.best)["moat 2"]
    assert f"{count} moat 2" in plain_spaces(shotplot.count_words(answer, answer.best))
    assert f"moat 2 {count}" not in plain_spaces(shotplot.count_words(answer, answer.best))


def test_the_odds_of_a_trouble_whose_name_ends_in_a_figure() -> None:
    """Not "moat 2 1 time in 4"."""
    words = " ".join(two_words(_island()))
    assert "moat 2: " in words and not re.search(r"moat 2 \d", plain_spaces(words))


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("withy drain", "the withy drain 1 time in 7"), ("the burn", "the burn 1 time in 7"), ("Hob's Pond", "Hob's Pond 1 time in 7"),
        ("burn 2", "burn 2: 1 time in 7"), ("out of bounds", "out of bounds 1 time in 7"),
    ],
)  # fmt: skip
def test_an_area_has_the_article_of_its_name(words: str, said: str) -> None:
    assert odds(TroubleRow(words, (0.1, 0.2)), "1 time in 7") == said


def test_areas_of_a_kind_together_are_told_as_one_of_them() -> None:
    """ "Any bunker" of the table is "a bunker" in a sentence; an area somebody calls "any port" keeps its name."""
    one = fake_answers.answer("withy-drain").best
    spread = {name: Estimate(0.03, 0.001) for name in ("a", "b", "c")}
    for surface, row, said in (
        (Surface.BUNKER, "any bunker", "a bunker"), (Surface.WATER, "any penalty area", "a penalty area"),
        (Surface.TREES, "trees", "the trees"),
    ):  # fmt: skip
        areas = [SimpleNamespace(name=name, surface=surface) for name in spread]
        answer = SimpleNamespace(
            alternatives=[dataclasses.replace(one, features=spread)], hole=SimpleNamespace(features=areas)
        )
        (together,) = troubles(answer, [0])
        assert (together.words, odds(together, "1 time in 11")) == (row, f"{said} 1 time in 11")
    assert odds(TroubleRow("any port", (0.1,)), "1 time in 10") == "the any port 1 time in 10"


def test_odds_told_against_each_other_are_told_apart() -> None:
    """Not "5 times in 10, against 5 times in 10"."""
    made = fake_answers.answer()
    best, other = made.recommended, 1 - made.recommended
    shares = {best: 0.452, other: 0.514}
    ones = tuple(
        dataclasses.replace(one, features={**one.features, "withy drain": Estimate(shares.get(k, 0.0), 0.005)})
        for k, one in enumerate(made.alternatives)
    )
    words = plain_spaces(" ".join(risk_words(dataclasses.replace(made, alternatives=ones))))
    assert "finds the withy drain 51 times in 100" in words and "against 45 times in 100 with the" in words


def _troubles(result: Lesson) -> set[str]:
    from simulator.hole.surfaces import TROUBLE

    return {f.name for f in result.answer.hole.features if f.surface in TROUBLE}


def test_labels_of_maps_stay_inside_the_axes() -> None:
    for name in HOLES:
        for draw in (draw_plan_map, draw_approach, draw_value):
            ax = draw(made(name))
            frame = ax.get_window_extent()
            for text in (t for t in ax.texts if t.get_text()):
                box = text.get_window_extent()
                assert frame.x0 <= box.x0 and box.x1 <= frame.x1, text
                assert frame.y0 <= box.y0 and box.y1 <= frame.y1, text


def test_the_sheet_answers_four_questions(tmp_path: Path) -> None:
    """Which club, which line, why, what the alternative risks: read back from the PDF, held to the figures."""
    result = made("withy-drain")
    save_lesson(result, tmp_path / "lesson.pdf", only=("plan",))
    texts = pdf_words(tmp_path / "lesson.pdf")
    assert len(texts) == 1
    first, answer = texts[0], result.answer
    club = re.search(r"Hit the ([\w-]+),", first)
    assert club and club[1] == answer.best.club
    assert answer.best.point.by == "fairway" and abs(answer.best.point.offset_yd) < 1.5
    assert ", aimed at the middle of the fairway;" in " ".join(first.split())
    assert "Point it" not in first and "pin line" not in first  # where it is pointed is told once
    why = re.search(r"saves a shot against the (\w+) every (\d+) times you play this: ([\d.]+), give", first)
    other = answer.alternatives[1]
    assert why and why[1] == other.club and float(why[3]) == pytest.approx(other.difference.value, abs=0.005)
    assert int(why[2]) == round(1.0 / other.difference.value)
    risk = re.search(rf"The {other.club} finds the (.+?) 1 time in (\d+), against", first)
    assert risk and 1.0 / int(risk[2]) == pytest.approx(other.features[risk[1]].value, rel=0.12)
    assert other.features[risk[1]].value > answer.best.features[risk[1]].value


def test_cautions_on_every_page_and_words_never_said(tmp_path: Path) -> None:
    result = made("eel-trap")
    save_lesson(result, tmp_path / "a.pdf", notes=("No --player given, so the demo player Barnaby plays.",))
    texts = pdf_words(tmp_path / "a.pdf")
    assert len(texts) == len(PAGES)
    for text in texts:
        for words in ("Rules of Golf 4.3", "look and shout", "committee decide", "Nobody ahead nearer than 273 yd"):
            assert words in text
        assert not re.search(r"\b(safe\w*|cannot|impossible|never)\b", text, re.IGNORECASE)


def test_attribution_stands_on_every_page(tmp_path: Path) -> None:
    words = "© OpenStreetMap contributors (ODbL)"
    answer = fake_answers.answer(dataclasses.replace(load_hole("withy-drain"), attribution=words))
    save_lesson(fake_lessons.lesson(answer=answer), tmp_path / "a.pdf", only=("aims", "scores"))
    assert all(f"Map data: {words}." in text for text in pdf_words(tmp_path / "a.pdf"))


def test_metres_leave_no_yard_on_a_page(tmp_path: Path) -> None:
    some = ("plan", "aims", "worth", "approach", "patterns")
    save_lesson(made("withy-drain"), tmp_path / "a.pdf", METRES, some)
    text = " ".join(pdf_words(tmp_path / "a.pdf"))
    assert not re.search(r"\d yd\b|\byards\b", text) and "369 m" in text


def test_equal_clubs_are_both_named() -> None:
    level = (
        {"club": "3-wood", "carry_yd": 180.0, "score": 5.2},
        {"club": "driver", "carry_yd": 196.0, "score": 5.21, "difference": 0.01},
    )
    answer = fake_answers.answer(tied=(0, 1), clubs=level)
    words = " ".join(plan_words(fake_lessons.lesson(answer=answer)))
    assert "The 3-wood or the driver: either will do, hit the one you trust." in words
    assert "saves a shot" not in words and "plausible" not in words


@pytest.mark.parametrize("share", [0.4, 0.74, 0.93, 0.99])
def test_the_sheet_is_as_sure_as_the_answer_screen(share: float) -> None:
    """Verdict and share as the screen words them; with a share below two thirds either will do."""
    answer = fake_answers.answer(sure=share)
    words = " ".join(plan_words(fake_lessons.lesson(answer=answer))).replace("\N{NO-BREAK SPACE}", " ")
    screen = verdict(answer).replace("\N{NO-BREAK SPACE}", " ")
    versions = f"for {in_ten(share)} plausible versions of this player"
    assert versions in screen and versions in words
    for said in ("either will do", "lightly better", "learly better"):
        assert (said in words) == (said in screen)
    assert ("Hit the 3-wood" in words) == (share >= 2 / 3)
    sheet = fake_lessons.lesson(answer=answer)
    (_, figure), *_ = lesson_pages(sheet, only=("plan",))
    figure.draw_without_rendering()
    check_words(figure)
    exact = [
        "taken as exact" in " ".join(text.get_text() for text in page.findobj(Text)).replace("\n", " ")
        for page in (figure, pages("withy-drain")["plan"])
    ]
    assert exact == [False, True]  # the second is of a player of whom nothing is in doubt


def test_one_club_alone_is_no_comparison(tmp_path: Path) -> None:
    answer = fake_answers.answer(clubs=({"club": "driver", "carry_yd": 196.0, "score": 5.4},))
    result = fake_lessons.lesson(answer=answer)
    save_lesson(result, tmp_path / "a.pdf", only=("plan", "two", "scores"))
    assert "No other club" in pdf_words(tmp_path / "a.pdf")[0]


@functools.cache
def plain() -> Lesson:
    """A hole without any trouble: nothing closes the room, nothing is named, no ball is counted."""
    answer = fake_answers.answer(load_hole("par 4, 360"))
    wide = {"carry_at_least_yd": None, "finish_at_most_yd": None, "left_edge_yd": None, "right_edge_yd": None}
    alternatives = tuple(
        dataclasses.replace(one, room=one.room and dataclasses.replace(one.room, **wide)) for one in answer.alternatives
    )
    return fake_lessons.lesson(answer=dataclasses.replace(answer, alternatives=alternatives))


def test_nothing_is_explained_that_is_not_drawn() -> None:
    """On an open hole no dashed box runs over the tee and no key, name or number is told that nobody sees."""
    found = dict(lesson_pages(plain(), only=("plan", "two")))
    said = {name: " ".join(text.get_text() for text in figure.findobj(Text)) for name, figure in found.items()}
    assert "room" not in said["plan"] and "Names:" not in said["plan"] and "Arcs: yards from" in said["plan"]
    assert "Numbers:" not in said["two"]
    dashed = [line for line in found["plan"].axes[0].lines if line.get_linewidth() == 0.9]
    assert not dashed
    busy = dict(lesson_pages(made("withy-drain"), only=("plan", "two")))
    said = {name: " ".join(text.get_text() for text in figure.findobj(Text)) for name, figure in busy.items()}
    assert "Names:" in said["plan"] and "Numbers:" in said["two"]


def test_a_name_stands_on_the_ground_it_names() -> None:
    """Of places that cover as little the one on its own ground; ground smaller than the words draws none onto it."""
    ax = own_axes(None)
    frame(ax, -50.0, 50.0, 0.0, 100.0)
    field, bunker = shapely.box(0.0, 0.0, 60.0, 100.0), shapely.Point(20.0, 80.0).buffer(3.0)
    edge, inside = (0.0, 40.0), (30.0, 60.0)
    for within, place in ((None, edge), (field, inside), (bunker, edge)):
        labels = Labels(ax, np.empty((0, 2)))
        text = labels.put("pump-house field", [edge, inside], within=within, fontsize=6)
        assert text is not None and text.get_position() == place
    covered = Labels(ax, np.array([inside, inside] * 10))  # twenty balls are worth more than the ground
    text = covered.put("pump-house field", [edge, inside], within=field, fontsize=6)
    assert text is not None and text.get_position() == edge


def test_a_word_away_from_what_it_names_is_joined_to_it() -> None:
    """ "Pot bunker" stood beside a burn, the bunker under the balls on the fairway."""
    bunker = shapely.Point(0.0, 50.0).buffer(2.0)
    for place, joined in (((0.0, 50.0), False), ((30.0, 50.0), True)):
        ax = own_axes(None)
        frame(ax, -50.0, 50.0, 0.0, 100.0)
        assert Labels(ax, np.empty((0, 2))).put("pot", [place], within=bunker, fontsize=6) is not None
        assert len(ax.lines) == joined
        if joined:
            x, y = ax.lines[0].get_xydata().T
            assert x.min() == pytest.approx(2.0, abs=0.1) and x.max() > 20.0 and y == pytest.approx(50.0, abs=1.0)


def test_a_word_goes_where_it_hides_no_bunker_however_narrow() -> None:
    """One between the places that are looked at was covered by "pin"."""
    ax = own_axes(None)
    frame(ax, -50.0, 50.0, 0.0, 100.0)
    probe = Labels(ax, np.empty((0, 2))).put("pin", [(0.0, 50.0)], fontsize=7)
    assert probe is not None
    x0, x1 = ax.transData.inverted().transform(probe.get_window_extent())[:, 0]
    probe.remove()
    wide = (x1 - x0) / 4.0  # from place to place, five across
    bunker = shapely.box(-0.7 * wide, 48.0, -0.3 * wide, 52.0)
    text = Labels(ax, np.empty((0, 2))).put("pin", [(0.0, 50.0), (20.0, 50.0)], off=bunker, fontsize=7)
    assert text is not None and text.get_position() == (20.0, 50.0)


def test_names_of_wide_ground_lie_on_it() -> None:
    looked_at = 0
    for name in HOLES:
        ax = draw_plan_map(made(name))
        hole, inverse = made(name).answer.hole, ax.transData.inverted()
        for text in (t for t in ax.texts if t.get_fontstyle() == "italic"):
            box = text.get_window_extent().transformed(inverse)
            words = shapely.box(box.x0, box.y0, box.x1, box.y1)
            area = area_of(hole, text.get_text().replace("\n", " ").rsplit(" ", 1)[0]).intersection(view_box(ax))
            x0, _, x1, _ = area.bounds
            if x1 - x0 > 1.5 * (box.x1 - box.x0) and area.area > 4.0 * words.area:
                assert area.intersection(words).area > 0.85 * words.area, text
                looked_at += 1
    assert looked_at >= 2


def test_the_fall_of_a_green_is_told_and_clear_of_words_and_flag() -> None:
    ax = draw_approach(made("long-sluice"))
    (arrow,) = falls_shown(ax)
    (page,) = dict(lesson_pages(made("long-sluice"), only=("approach",))).values()
    assert FALLS in " ".join(text.get_text().replace("\n", " ") for text in page.texts)
    pin = made("long-sluice").answer.hole.pin
    line = shapely.LineString([arrow.xy, arrow.xyann])
    assert line.distance(shapely.Point(pin.x_yd, pin.y_yd)) > 2.0
    inverse = ax.transData.inverted()
    for text in (t for t in ax.texts if t.get_text()):
        box = text.get_window_extent().transformed(inverse)
        assert not shapely.box(box.x0, box.y0, box.x1, box.y1).intersects(line), text
    assert not falls_shown(draw_plan_map(made("long-sluice")))  # too small to be read


def test_no_specks_between_the_lines_of_worth() -> None:
    """One dear place of 3 yards in even ground draws nothing round it; one of 30 yards does."""
    value = made("withy-drain").value
    x, y = np.meshgrid(value.x_yd, value.y_yd)
    middle = (x.mean(), y.mean())
    rings = []
    for radius in (3.0, 15.0):
        even = value.here + 0.002 * (x - x.min())
        strokes = even + 0.8 * (np.hypot(x - middle[0], y - middle[1]) < radius)
        ax = draw_value(
            dataclasses.replace(made("withy-drain"), value=dataclasses.replace(value, strokes=strokes))
        )
        (lines,) = (c for c in ax.collections if isinstance(c, ContourSet))
        parts = [part for path in lines.get_paths() for part in path.to_polygons(closed_only=False)]
        rings.append(sum(bool(np.hypot(*(part - middle).T).max() < radius + 4.0) for part in parts))
    assert rings[0] == 0 < rings[1]


@pytest.mark.parametrize("cross_pt", [90.0, 5000.0])
def test_a_line_of_worth_is_whole_where_no_number_stands(cross_pt: float, monkeypatch: pytest.MonkeyPatch) -> None:
    """A number taken away (here those near the cross, then all) left its gap in the line."""
    monkeypatch.setattr(worthmap, "CROSS_PT", cross_pt)
    ax = draw_value(made("withy-drain"))
    (drawn,) = (c for c in ax.collections if isinstance(c, ContourSet))
    value = made("withy-drain").value
    whole = ax.contour(value.x_yd, value.y_yd, value.strokes - value.here, levels=drawn.levels)
    texts = [text for text in ax.texts if re.fullmatch(r"[+-]\d\.\d+|0", text.get_text())]
    assert bool(texts) == (cross_pt < 100.0)
    inverse = ax.transData.inverted()
    under = shapely.union_all([
        shapely.Point(text.get_position()).buffer(text.get_window_extent().padded(9.0).transformed(inverse).width)
        for text in texts
    ])  # fmt: skip
    lines = [
        shapely.union_all([shapely.LineString(part) for path in one.get_paths() for part in path.to_polygons(closed_only=False)])
        for one in (drawn, whole)
    ]
    missing = lines[1].difference(lines[0].buffer(0.3))
    assert missing.difference(under).length < 1.0, missing.length
    assert (missing.length > 5.0) == bool(texts)


def test_a_place_worth_the_same_is_said_to_be() -> None:
    value = dataclasses.replace(made("withy-drain").value, ten_farther=-0.001, lies={"rough": 0.004})
    words = " ".join(worth_words(dataclasses.replace(made("withy-drain"), value=value)))
    assert "10 yd farther changes little" in words and "rough changes little" in words and "0.00" not in words


def test_two_shots_with_one_club_are_told_by_their_line_once() -> None:
    result = made("withy-drain")
    pair = tuple(
        dataclasses.replace(one, club="sand wedge", aim_offset_yd=aim)
        for one, aim in zip(result.approach.alternatives[:2], (0.0, 3.0), strict=True)
    )
    twice = dataclasses.replace(result, approach=dataclasses.replace(result.approach, alternatives=pair))
    assert "the sand wedge, aimed at the pin." in approach_words(twice)[0]


@pytest.mark.parametrize(
    ("share", "words"),
    [(0.0, "fewer than 1 in 6,666"), (0.002, "1 time in 500"), (0.0004, "1 time in 2,500"), (0.141, "1 time in 7"), (0.55, "6 times in 10"),
     (0.0068, "1 time in 150"), (1.0, "nearly always")],
)  # fmt: skip
def test_shares_as_times(share: float, words: str) -> None:
    assert times_words(share, 20_000).replace("\xa0", " ") == words


def test_files_by_suffix_and_one_picture_alone(tmp_path: Path) -> None:
    result = made("eel-trap")
    names = [p.name for p in save_lesson(result, tmp_path / "l.svg", only=("aims", "scores"))]
    assert names == ["l-1-aims.svg", "l-2-scores.svg"]
    assert [p.name for p in save_lesson(result, tmp_path / "one.png", only=("worth",))] == ["one.png"]
    assert sorted(p.name for p in tmp_path.iterdir()) == ["l-1-aims.svg", "l-2-scores.svg", "one.png"]
    with pytest.raises(UsageError, match="allowed: plan, two, aims"):
        save_lesson(result, tmp_path / "l.svg", only=("clouds",))


def test_the_same_lesson_gives_the_same_bytes(tmp_path: Path) -> None:
    for name in ("a.pdf", "b.pdf"):
        save_lesson(made("eel-trap"), tmp_path / name, only=("scores",))
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


def test_scores_name_the_birdies_and_count_one_as_one() -> None:
    """A scratch player's two ways to play differ by birdies, which "at par or better" hides."""
    answer = fake_answers.answer()
    par = {"birdie_or_better": 0.41, "par": 0.50, "bogey": 0.08, "double_or_worse": 0.01}
    chances = {**answer.best.chances, **{name: Estimate(share, 0.0) for name, share in par.items()}}
    answer = dataclasses.replace(answer, alternatives=(dataclasses.replace(answer.best, chances=chances), *answer.alternatives[1:]))
    words = score_words(_scored(fake_lessons.lesson(answer=answer), [0.41, 0.50, 0.08, 0.007, 0.003]))[0]
    assert "91 at par or better (of them 41 birdies or better), 8 bogeys, 1 double or worse." in words
    # one in two hundred is less than one on the chart below, and no birdie here either
    rare = {**chances, "birdie_or_better": Estimate(0.0053, 0.0)}
    answer = dataclasses.replace(answer, alternatives=(dataclasses.replace(answer.best, chances=rare), *answer.alternatives[1:]))
    assert "birdie" not in score_words(fake_lessons.lesson(answer=answer))[0]


def test_a_score_that_comes_up_is_never_told_as_none() -> None:
    """Counts that add up to 100 round the smallest down: its bar stood under a 0, beside a rarer one's "<1"."""
    axes = draw_scores(_scored(fake_lessons.lesson(), [0.0052, 0.0793, 0.3570, 0.3370, 0.2215]))
    told = [text.get_text() for text in axes.texts]
    assert told.count("<1") == 2 and "0" not in told
    assert told[:5] == ["<1", "8", "36", "34", "22"]


def _scored(result: Lesson, shares: list[float]) -> Lesson:
    """The same lesson with these shares of birdies, pars, bogeys, doubles and worse, in words and on the chart."""
    names = ("birdie_or_better", "par", "bogey", "double_or_worse")
    par = dict(zip(names, (*shares[:3], shares[3] + shares[4]), strict=True))
    ones = tuple(
        dataclasses.replace(one, chances={**one.chances, **{name: Estimate(share, 0.0) for name, share in par.items()}})
        for one in result.answer.alternatives
    )
    rows = np.tile(shares, (len(ones), 1))
    scores = dataclasses.replace(result.scores, shares=rows)
    return dataclasses.replace(result, answer=dataclasses.replace(result.answer, alternatives=ones), scores=scores)


def test_the_chart_of_scores_counts_as_the_words_above_it() -> None:
    """Five counts and three counts that each add up to 100 said 42 bogeys below and 43 above."""
    result = _scored(fake_lessons.lesson(), [0.0052, 0.0835, 0.4255, 0.3276, 0.1582])
    said = re.search(r"in 100 plays (\d+) at par or better.*, (\d+) bogeys, (\d+) doubles or worse", score_words(result)[0])
    told = [0 if text.get_text() == "<1" else int(text.get_text()) for text in draw_scores(result).texts[:5]]
    assert said and told[2] == int(said[2]) and told[3] + told[4] == int(said[3])


def test_two_lines_of_a_club_are_called_left_and_right_and_each_is_told_where_it_points() -> None:
    """Not "hit the driver 26 left" of one, told by the fairway, and "the driver 10 right" of the other, by nothing."""
    two = (
        {"club": "driver", "carry_yd": 196.0, "score": 5.2, "aim_offset_yd": -26.0},
        {"club": "driver", "carry_yd": 196.0, "score": 5.21, "difference": 0.01, "aim_offset_yd": 10.0},
    )
    level = fake_answers.answer(tied=(0, 1), clubs=two)
    left, right = (line_words(one) for one in level.alternatives)
    assert {one.point.by for one in level.alternatives} == {"fairway"} and left != right
    said = plan_words(fake_lessons.lesson(answer=level))
    assert said[0].startswith("The driver (left line) or the driver (right line): either will do")
    assert said[1] == f"The driver (left line) is aimed {left}. The driver (right line) is aimed {right}."
    apart = (two[0], {**two[1], "score": 5.4, "difference": 0.2})
    said = plan_words(fake_lessons.lesson(answer=fake_answers.answer(clubs=apart)))
    assert said[0].startswith(f"Hit the driver (left line), aimed {left};")
    assert f"The driver (right line) points {right}." in said


def test_the_chart_of_aims_says_what_its_yards_are_on_the_ground() -> None:
    """It counts from the pin line, which nobody sees round a corner: "78 to 47 left" of what?"""
    one = {"club": "driver", "carry_yd": 196.0, "score": 5.2, "aim_offset_yd": -20.0}
    result = fake_lessons.lesson(answer=fake_answers.answer(tied=(0,), clubs=(one,)))
    point = result.answer.best.point
    beside = f"{abs(point.offset_yd):.0f} yd left of the middle of the fairway"
    assert point.by == "fairway" and aim_words(result)[0].endswith(f" Here 20 left is {beside}.")
    seen = dataclasses.replace(result.answer.best, point=dataclasses.replace(point, offset_yd=-20.4))  # no corner
    straight = dataclasses.replace(result.answer, alternatives=(seen,))
    assert "Here" not in aim_words(dataclasses.replace(result, answer=straight))[0]


def test_a_line_is_told_by_the_fairway() -> None:
    """Round a corner nobody sees the line to the pin: "80 yd right of the pin line" is no aim."""
    one = ({"club": "driver", "carry_yd": 196.0, "score": 5.2, "aim_offset_yd": -20.0},)
    result = fake_lessons.lesson(answer=fake_answers.answer(tied=(0,), clubs=one))
    best = result.answer.best
    assert best.point.by == "fairway" and round(best.point.offset_yd) != -20
    side = f"{abs(best.point.offset_yd):.0f} yd left of the middle of the fairway"
    assert plan_words(result)[0].startswith(f"Hit the driver, aimed {side};")
    assert "pin line" not in " ".join(plan_words(result))


def test_each_page_has_the_foot_of_the_answer_it_shows() -> None:
    """The shot at the green, of 5,000 plays, stood over the driver's 20,000 and the driver's "nobody ahead"."""
    result = made("withy-drain")
    later = dataclasses.replace(result.approach, sequences=5_000, clear_beyond_yd=176.0)
    pages = dict(lesson_pages(dataclasses.replace(result, approach=later), only=("plan", "approach")))
    told = {name: " ".join(" ".join(t.get_text() for t in page.findobj(Text)).split()) for name, page in pages.items()}
    assert "5,000 plays" in told["approach"] and "nearer than 176 yd" in told["approach"]
    assert f"{result.answer.sequences:,} plays" in told["plan"] and "176 yd" not in told["plan"]


def test_all_on_the_green_leaves_no_others() -> None:
    result = made("eel-trap")
    best = result.approach.best
    on = {name: Estimate(1.0 if name == "green" else 0.0, 0.0) for name in ("green", *best.finish)}
    none = {name: Estimate(0.0, 0.0) for name in best.features}
    approach = dataclasses.replace(
        result.approach, alternatives=(dataclasses.replace(best, finish=on, features=none),)
    )
    assert approach_words(dataclasses.replace(result, approach=approach))[0].endswith(
        "In 100, all finish on the green."
    )


RING = """
name = "Ring"
par = 4
length_yd = 372
green = [{ front_yd = 358, depth_yd = 27, width_yd = 24 }]
fairway = [{ from_yd = 140, to_yd = 345, left_yd = -15, right_yd = 16 }]
trees = [{ name = "copse", from_yd = 340, to_yd = 370, left_yd = -8, right_yd = 8 }]
[[bunker]]
name = "ring"
xy_yd = [[-22, 350], [22, 350], [22, 394], [-22, 394]]
holes_xy_yd = [[[-13, 357], [13, 357], [13, 386], [-13, 386]]]
"""


def test_ground_cut_out_of_an_area_is_not_painted_over() -> None:
    """A ring drawn the same way round as the edge it is cut out of hid the green under sand."""
    (ring,) = (f for f in hole_of(RING).features if f.name == "ring")
    for area in (ring.area, shapely.Polygon(ring.area.exterior, [list(ring.area.interiors[0].coords)[::-1]])):
        edge, hole_in_it = area_patch(dataclasses.replace(ring, area=area)).get_path().to_polygons()
        assert shapely.LinearRing(edge).is_ccw != shapely.LinearRing(hole_in_it).is_ccw


def test_a_name_on_the_shot_at_the_green_stands_clear_of_what_covers_its_ground() -> None:
    """Trees that run on under a bunker are named where they are trees."""
    result = fake_lessons.lesson(answer=fake_answers.answer(hole_of(RING), "barnaby"))
    ax = draw_approach(result)
    (name,) = (text for text in ax.texts if text.get_text() == "copse")
    sand = shapely.box(-22.0, 350.0, 22.0, 394.0)
    assert not sand.contains(shapely.Point(name.get_position()))


def test_no_key_of_lines_that_play_alike_for_a_line_that_was_given() -> None:
    result = made("withy-drain")
    for given in (False, True):
        one = dataclasses.replace(result.answer.best, aim_given=given)
        answer = dataclasses.replace(result.answer, alternatives=(one, *result.answer.alternatives[1:]))
        (page,) = dict(lesson_pages(dataclasses.replace(result, answer=answer), only=("plan",))).values()
        said = " ".join(text.get_text() for text in page.findobj(Text))
        assert ("lines that play alike" in said) != given


def test_a_whole_bunker_has_its_key_however_small() -> None:
    """On a long hole a bunker is a speck of the picture, and yet it is drawn and asked about."""
    hole = load_hole("par 5, 620; bunker left at 230; bunkers both sides of the green")
    ax = draw_plan_map(fake_lessons.lesson(answer=fake_answers.answer(hole, "barnaby")))
    assert Surface.BUNKER in seen_on(ax, hole)


def test_a_lone_tree_has_its_key() -> None:
    """On a hole without a wood: it is drawn like one, and balls meet its branches."""
    for words, kept in (("; oak 5 left at 225, crown 10", True), ("", False)):
        answer = fake_answers.answer(load_hole(f"par 4, 400{words}"), "barnaby")
        ax = draw_plan_map(fake_lessons.lesson(answer=answer))
        assert (Surface.TREES in seen_on(ax, answer.hole)) == kept


def test_a_number_stays_with_its_unit_at_the_end_of_a_line() -> None:
    for wide in np.arange(0.6, 2.4, 0.05):
        for line in wrapped("8 in 10 stay inside 40 m of depth and 27 yd of width", 7.5, float(wide)):
            assert not re.match(r"(m|yd)\b", line), line


def test_the_plan_says_what_the_answer_screen_says_of_gain_and_cost() -> None:
    """ "The 3-wood risks less" of a 3-wood that made more doubles, for it found fewer trees."""
    made = fake_answers.answer()
    for answer in (made, dataclasses.replace(made, alternatives=made.alternatives[::-1], tied=(0,))):
        said = [plain_spaces(line) for line in risk_words(answer)]
        assert said[0] == trade(answer) and "doubles" in said[0]
        assert not re.search("risks|price", " ".join(said))
    assert said[1:] == [
        "The 3-wood leaves 17 yd more.", "The driver finds the withy drain 1 time in 13, against 1 time in 330 with the 3-wood.",
    ]  # fmt: skip


def test_a_little_more_of_each_of_many_troubles_is_told_together() -> None:
    """Five areas found once in a hundred more each."""
    made = fake_answers.answer()
    best, other = made.recommended, 1 - made.recommended

    def with_trouble(extra: float) -> Answer:
        ones = list(made.alternatives)
        for k, more in ((best, 0.0), (other, extra)):
            spread = {name: Estimate(0.01 + more / 5.0, 0.001) for name in ("a", "b", "c", "d", "e")}
            finish = {"fairway": Estimate(0.95 - more, 0.002), "trees": Estimate(0.05 + more, 0.002)}
            ones[k] = dataclasses.replace(ones[k], features=spread, finish=finish)
        return dataclasses.replace(made, alternatives=tuple(ones))

    names = [made.alternatives[k].club for k in (best, other)]
    more = plain_spaces(" ".join(risk_words(with_trouble(0.05))))
    assert f"The {names[1]} finds trouble 1 time in 10, against 1 time in 20 with the {names[0]}" in more
    less = plain_spaces(" ".join(risk_words(with_trouble(-0.03))))
    assert f"The {names[0]} finds trouble 1 time in 20, against 1 time in 50 with the {names[1]}" in less
    assert "finds" not in " ".join(risk_words(with_trouble(0.01)))


def test_trouble_that_is_drawn_and_seldom_met_is_not_told_as_none_drawn() -> None:
    """Beside a boundary, with a ball of the hundred in it, the page said "no trouble drawn here"."""
    result = made("withy-drain")
    answer = result.answer
    rare = {feature.name: Estimate(0.004, 0.001) for feature in answer.hole.features}
    ones = tuple(dataclasses.replace(one, features=rare) for one in answer.alternatives)
    seldom = two_words(dataclasses.replace(result, answer=dataclasses.replace(answer, alternatives=ones)))
    assert all(line.endswith(": in no trouble as often as 1 time in 100.") for line in seldom) and len(seldom) == 2
    harmless = tuple(one for one in answer.hole.features if one.surface in (Surface.FAIRWAY, Surface.GREEN, Surface.TEE))
    plain = dataclasses.replace(answer, hole=dataclasses.replace(answer.hole, features=harmless), alternatives=ones)
    assert all("no trouble drawn here" in line for line in two_words(dataclasses.replace(result, answer=plain)))


@pytest.mark.parametrize(
    ("from_deg", "hands"),
    [(0, "12 o'clock"), (7, "12 o'clock"), (10, "half past 12"), (45, "half past 1"), (315, "half past 10"),
     (320, "half past 10"), (352, "half past 11"), (355, "12 o'clock"), (-45, "half past 10"), (180, "6 o'clock")],
)  # fmt: skip
def test_the_clock_is_told_to_half_an_hour(from_deg: float, hands: str) -> None:
    """Into and off the left was 10 o'clock on one page and 11 on the next; half past 10 came back as 10."""
    assert clock(from_deg) == hands
    wind = read_wind(f"12 mph from {hands}", along_deg=0.0, y_bearing_deg=None)
    assert wind is not None and abs((wind.from_deg - from_deg + 180.0) % 360.0 - 180.0) <= 7.5


WINDY = Conditions(wind=Wind(25.0, 0.0, gust_mph=4.0, swing_deg=20.0), temperature_c=8.0, fairway_firmness=1.0)


def test_a_page_says_the_day() -> None:
    """A 3-wood for 165 yd is a riddle on a page that does not say that 25 mph are against it."""
    result = made("withy-drain")
    assert not any("mph" in text.get_text() for page in pages("withy-drain").values() for text in page.texts)
    answer, approach = (dataclasses.replace(one, conditions=WINDY) for one in (result.answer, result.approach))
    windy = dataclasses.replace(result, answer=answer, approach=approach)
    for name, page in lesson_pages(windy):
        page.draw_without_rendering()
        check_words(page)
        words = " ".join(text.get_text() for text in page.texts)
        of = "first leg" if name == "patterns" else "shot"
        hands = clock(-approach.best.aim_bearing_deg) if name == "approach" else "12 o'clock"
        said = f"Wind 25 +- 4 mph from {hands} of the {of}, +- 20 degrees, taken as forecast, at 10 m; 8 C; "
        assert said + "fairways firm." in words, name


def test_the_room_that_is_drawn_holds_no_trouble() -> None:
    """Where no ball stays short nothing has to be carried: the box was drawn back to the tee, over the lane."""
    answer = fake_answers.answer()
    one = answer.best
    assert one.room is not None
    room = dataclasses.replace(one.room, carry_at_least_yd=None, carry_over=None, starts_yd=110.0)
    ones = tuple(dataclasses.replace(k, room=room) if k is one else k for k in answer.alternatives)
    ax = draw_plan_map(fake_lessons.lesson(answer=dataclasses.replace(answer, alternatives=ones)))
    box = next(line for line in ax.lines if line.get_linestyle() == "--" and len(line.get_xdata()) == 5)
    bearing = math.radians(one.aim_bearing_deg)
    along = np.asarray(box.get_xdata()) * math.sin(bearing) + np.asarray(box.get_ydata()) * math.cos(bearing)
    assert along.min() == pytest.approx(110.0, abs=0.01)


def test_a_long_name_on_a_map_is_broken_into_lines() -> None:
    """On one line it ran from the pond it names over the fairway and the bunker beyond."""
    assert in_lines("pump-house field") == "pump-house field"
    name = "the mill pond below the great oak at the fairway's edge"
    assert in_lines(name).replace("\n", " ") == name and max(map(len, in_lines(name).split("\n"))) <= 34


def test_a_curve_that_map_and_plays_differ_on_tells_no_line() -> None:
    """Its best aim may be better than the plan by less than the map is wrong there."""
    result = made("withy-drain")
    first, second, *rest = result.curves
    doubtful = dataclasses.replace(result, curves=(first, dataclasses.replace(second, map_gap=0.24), *rest))
    club = result.answer.alternatives[second.index].club
    assert any(f"The {club} plays alike" in line for line in aim_words(result)) and not gap_words(result)
    assert not any(f"The {club} plays alike" in line for line in aim_words(doubtful))
    assert f"the {club} 0.24" in gap_words(doubtful)
    (page,) = dict(lesson_pages(doubtful, only=("aims",))).values()
    page.draw_without_rendering()
    check_words(page)
    assert "value map and plays differ" in " ".join(text.get_text() for text in page.texts)


def test_ground_that_lies_under_other_ground_has_no_key() -> None:
    hay = 'heavy_rough = [{ name = "hay", from_yd = 160, to_yd = 220, left_yd = -9, right_yd = 9 }]\n'
    answer = fake_answers.answer(hole_of(RING.replace("trees =", f"{hay}trees =")), "barnaby")
    seen = seen_on(draw_plan_map(fake_lessons.lesson(answer=answer)), answer.hole)
    assert Surface.HEAVY_ROUGH not in seen and Surface.BUNKER in seen


def test_an_error_too_small_to_show_is_not_told_as_none() -> None:
    """Not "give or take 0.00"."""
    answer = fake_answers.answer()
    ones = tuple(
        dataclasses.replace(one, score=Estimate(one.score.value, 0.001), difference=Estimate(one.difference.value, 0.001))
        for one in answer.alternatives
    )
    result = fake_lessons.lesson(answer=dataclasses.replace(answer, alternatives=ones))
    words = " ".join([*plan_words(result), *score_words(result)])
    assert words.count("give or take less than 0.01") == 3 and "0.00" not in words


def test_words_keep_off_aim_lines_as_they_keep_off_balls() -> None:
    """A bunker's name ran up to the cross: between places as good they go where no line runs under them."""
    answer = made("withy-drain").answer
    ax = draw_plan_map(made("withy-drain"))
    xy = words_avoid(answer, [answer.recommended])
    assert len(xy) > 100
    aim = math.radians(answer.best.aim_bearing_deg)
    half = (0.5 * answer.best.carry_yd * math.sin(aim), 0.5 * answer.best.carry_yd * math.cos(aim))
    beside = (half[0] + 40.0, half[1])
    text = Labels(ax, xy).put("left bunker", [half, beside], fontsize=6)
    assert text is not None and text.get_position() == pytest.approx(beside)
