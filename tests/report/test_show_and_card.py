"""Yardage page and pocket card: words apart, numbers as measured, the green within what the rules allow."""

from __future__ import annotations

import dataclasses
import functools
import json
import re
from pathlib import Path

import matplotlib
import numpy as np
import pytest
import shapely
import shapely.affinity
from fake_lessons import HOLES
from matplotlib.colors import to_rgb
from matplotlib.figure import Figure
from pypdf import PdfReader
from pypdf.generic import ContentStream
from small_games import hole_of
from words_apart import check_words, pdf_words

from simulator.cli import _run
from simulator.hole import load_hole
from simulator.hole.surfaces import Surface
from simulator.hole.words import hole_from_words
from simulator.hole.yardage import Yardage, measure
from simulator.report.cardpages import card_page, card_pages, save_cards
from simulator.report.checks import hole_text
from simulator.report.holemap import area_of, letters
from simulator.report.palette import GROUND, STYLE
from simulator.report.showpage import clear_words, draw_widths, save_show, show_page, show_text
from simulator.report.units import METRES, YARDS

LIMIT_IN_PER_YD = (3.0 / 8.0) / 5.0
"""Clarification 4.3a(1)/1 of the Rules of Golf (2019): an image of a green at 3/8 inch to 5 yards or smaller."""

LIMIT_PAGE_IN = (4.25, 7.0)
"""The same: a book or paper with such an image no larger than 4 1/4 by 7 inches."""


@functools.cache
def measured(name: str) -> Yardage:
    return measure(load_hole(name))


@functools.cache
def drawn(name: str, kind: str) -> Figure:
    figure = show_page(measured(name)) if kind == "show" else card_pages([measured(name)])[0][1]
    figure.draw_without_rendering()
    return figure


@pytest.mark.parametrize("name", HOLES)
@pytest.mark.parametrize("kind", ["show", "card"])
def test_words_are_on_the_page_and_cover_no_other(name: str, kind: str) -> None:
    check_words(drawn(name, kind))


@pytest.mark.parametrize("name", HOLES)
def test_every_trouble_has_its_letter_on_the_map_and_its_row(name: str) -> None:
    figure = drawn(name, "show")
    shown = {text.get_text() for ax in figure.axes for text in ax.texts}
    rows = {text.get_text() for text in figure.texts}
    for letter, one in letters(measured(name)):
        assert letter in shown, one.name
        assert {letter, one.name, f"{one.reach_yd:.0f}", clear_words(one, YARDS)} <= rows


def test_a_boundary_that_goes_on_has_no_carry_over_it() -> None:
    """Nobody carries a lane along the whole hole: its row has a bar, a drain beside the fairway a number."""
    rows = {line.split("  ")[0]: line for line in show_text(measured("withy-drain")).splitlines()}
    assert re.search(r"out of bounds +37 +-  37 yd left$", rows["drove lane"])
    assert re.search(r"water +\d+ +\d+  \d+ yd right$", rows["withy drain"])


def busy(count: int) -> Yardage:
    """The busiest hole with bunkers more, one of them with a long name."""
    hole = load_hole("withy-drain")
    bunker = next(f for f in hole.features if f.surface is Surface.BUNKER)
    more = [
        dataclasses.replace(
            bunker, name=f"{k}th bunker of the long old causeway", area=shapely.affinity.translate(bunker.area, 0, -9 * k)
        )
        for k in range(1, count + 1)
    ]
    return measure(dataclasses.replace(hole, features=(*hole.features, *more)))


@pytest.mark.parametrize("count", [0, 3, 8])
def test_a_card_has_a_row_for_every_letter_on_its_map(count: int) -> None:
    """And none for another; a name that is too long goes on below."""
    yardage = busy(count)
    figure = card_pages([yardage])[0][1]
    figure.draw_without_rendering()
    check_words(figure)
    rows = [text.get_text() for text in figure.texts]
    on_map = {text.get_text() for text in figure.axes[0].texts if len(text.get_text()) == 1}
    assert on_map == {words for words in rows if len(words) == 1 and words != "-"}
    assert len(on_map) == min(13 + count, 16)
    if count == 3:
        first = next(words for words in rows if words.startswith("1th bunker"))
        assert first != "1th bunker of the long old causeway"
        assert "1th bunker of the long old causeway".removeprefix(first).strip() in rows


@pytest.mark.parametrize("number", range(1, 19))
def test_no_card_has_a_letter_in_its_rows_that_is_not_on_its_map(number: int) -> None:
    """Of a lane beside the map the row had the letter "a", and nobody found it."""
    figure = card_pages([measured(f"ostrel-heath/{number}")])[0][1]
    rows = {text.get_text() for text in figure.texts}
    on_map = {text.get_text() for text in figure.axes[0].texts if len(text.get_text()) == 1}
    assert on_map == {words for words in rows if len(words) == 1 and words != "-"}


def test_a_hole_without_trouble_has_no_empty_table() -> None:
    figure = card_pages([measure(load_hole("par 4, 360"))])[0][1]
    words = [text.get_text() for text in figure.texts]
    assert "No trouble drawn." in words and "reach" not in words


@pytest.mark.parametrize("name", HOLES)
@pytest.mark.parametrize("kind", ["show", "card"])
def test_no_letter_hides_what_it_names_and_no_number_a_bunker(name: str, kind: str) -> None:
    figure = drawn(name, kind)
    ax = next(ax for ax in figure.axes if any(text.get_text() == "a" for text in ax.texts))
    shown = {text.get_text(): text for text in ax.texts}
    for letter, one in letters(measured(name)):
        box = shown[letter].get_window_extent().transformed(ax.transData.inverted())
        area = area_of(measured(name).hole, one.name)
        assert area.intersection(shapely.box(box.x0, box.y0, box.x1, box.y1)).area < 0.5 * area.area, one.name
        for text in (t for t in ax.texts if t.get_text().isdigit()):
            box = text.get_window_extent().transformed(ax.transData.inverted())
            hidden = area.intersection(shapely.box(box.x0, box.y0, box.x1, box.y1)).area
            assert hidden < 0.5 * area.area, (one.name, text.get_text())


@pytest.mark.parametrize("kind", ["show", "card"])
def test_the_letter_of_a_slanting_stream_stands_at_it(kind: str) -> None:
    """At the corner of its box it stood in open rough, 60 yards off; and no number of the line gives way to it."""
    words = "par 5, 478; dogleg right at 240; ob left 30; green 30 deep; lone tree 10 left at 330; creek across at 400"
    yardage = measure(hole_from_words(words).hole)
    page = show_page(yardage) if kind == "show" else card_pages([yardage])[0][1]
    (letter,) = (letter for letter, one in letters(yardage) if one.name == "creek")
    ax = next(ax for ax in page.axes if letter in {text.get_text() for text in ax.texts})
    placed = {text.get_text(): shapely.Point(text.get_position()) for text in ax.texts}
    assert {str(mark) for mark in range(50, 451, 50)} <= set(placed)
    assert area_of(yardage.hole, "creek").distance(placed[letter]) < 0.08 * np.ptp(ax.get_xlim())


def test_widths_stand_at_every_ten_yards() -> None:
    strip = drawn("long-sluice", "show").axes[0]
    words = [text.get_text() for text in strip.texts]
    for one in measured("long-sluice").widths:
        assert " + ".join(f"{high - low:.0f}" for low, high in one.pieces) in words
    assert "33 deep" in words


def test_whoever_paces_metres_has_a_width_at_every_ten_of_them(capsys) -> None:
    """The JSON stays in yards, whatever is shown."""
    assert _run(["show", "withy-drain", "--units", "metres"]) == 0
    rows = capsys.readouterr().out.partition("fairway at")[2].partition("\n\n")[0].splitlines()[1:]
    paced = [int(number) for row in rows for number in re.findall(r"^\d+(?: to \d+)?", row)[0].split(" to ")]
    assert {140, 300, 330, 350} <= set(paced)  # the file mows 148 to 334 and 358 to 390 yd
    assert all(one % 10 == 0 for one in paced)
    assert _run(["show", "withy-drain", "--units", "metres", "--json"]) == 0
    widths = json.loads(capsys.readouterr().out)["fairway_widths"]
    assert all(one["station_yd"] % 10 == 0 for one in widths)
    metric = measure(measured("withy-drain").hole, width_step_yd=METRES.in_yards(10.0))
    words = " ".join(text.get_text() for text in show_page(metric, METRES).texts)
    assert "its width every 10 m." in words


def test_both_halves_of_a_split_fairway_are_shown(capsys) -> None:
    """Only the wider one was; beside a bunker in the middle the strip ran zigzag from side to side."""
    words = "par 4, 400; split fairway, left 20 wide, right 30 wide, 12 apart; bunker in between at 230"
    hole = hole_from_words(words).hole
    strip = draw_widths(measure(hole))
    assert sum(text.get_text() == "20 + 30" for text in strip.texts) == 24  # 150 to 380
    drawn = [part.get_paths()[0].get_extents() for part in strip.collections][:-1]
    assert {(box.x0, box.x1) for box in drawn} == {(-26.0, -6.0), (6.0, 36.0)}
    assert _run(["show", words]) == 0
    table = capsys.readouterr().out.partition("fairway at")[2].partition("\n\n")[0].splitlines()[1:]
    assert [" ".join(row.split()) for row in table] == ["150 to 380 20 26L to 6L", "30 6R to 36R"]


def test_rows_alike_are_one(capsys) -> None:
    assert _run(["show", "par 4, 400; fairway 30 wide; pond across 200 to 230"]) == 0
    table = capsys.readouterr().out.partition("fairway at")[2].partition("\n\n")[0].splitlines()[1:]
    assert [" ".join(row.split()) for row in table] == ["150 to 190 30 15L to 15R", "240 to 380 30 15L to 15R"]


def test_the_terminal_table_says_the_same_in_80_columns() -> None:
    text = show_text(measured("withy-drain"))
    assert all(len(line) <= 80 for line in text.splitlines())
    row = next(line for line in text.splitlines() if line.startswith("withy drain"))
    assert row.split()[-5:] == ["208", "286", "15", "yd", "right"]
    assert "cross dyke" in text and "across, 340 to 350" in text
    assert "34 yd deep" in text and " yd" not in show_text(measured("withy-drain"), METRES)


def _green_boxes(path: Path) -> list[tuple[float, float]]:
    """Sizes [pt] of the paths filled with the green's colour, page by page, read from the PDF's drawing."""
    sizes = []
    for page in PdfReader(path).pages:
        stream = ContentStream(page.get_contents(), page.pdf)
        colour, points = None, []
        matrix, stack = np.eye(3), []
        for operands, operator in stream.operations:
            if operator == b"rg":
                colour = tuple(float(v) for v in operands)
            elif operator == b"q":
                stack.append(matrix.copy())
            elif operator == b"Q":
                matrix = stack.pop()
            elif operator == b"cm":
                a, b, c, d, e, f = (float(v) for v in operands)
                matrix = np.array([[a, b, 0.0], [c, d, 0.0], [e, f, 1.0]]) @ matrix
            elif operator in (b"m", b"l"):
                x, y = (float(v) for v in operands)
                points.append((np.array([x, y, 1.0]) @ matrix)[:2])
            elif operator in (b"f", b"F", b"B", b"b", b"B*", b"f*", b"b*", b"S", b"s", b"n"):
                green = np.allclose(colour or (0, 0, 0), to_rgb(GROUND[Surface.GREEN].fill), atol=2e-3)
                if green and operator not in (b"S", b"s", b"n") and len(points) > 2:
                    sizes.append(tuple(np.ptp(np.array(points), axis=0)))
                points = []
    return sizes


@pytest.mark.parametrize("name", HOLES)
def test_the_card_keeps_the_limits_of_rule_4_3(name: str, tmp_path: Path) -> None:
    save_cards([measured(name)], tmp_path / "card.pdf")
    page = PdfReader(tmp_path / "card.pdf").pages[0]
    wide, tall = float(page.mediabox.width) / 72.0, float(page.mediabox.height) / 72.0
    assert wide <= LIMIT_PAGE_IN[0] and tall <= LIMIT_PAGE_IN[1]
    x0, y0, x1, y1 = load_hole(name).green.bounds
    sizes = _green_boxes(tmp_path / "card.pdf")
    assert sizes  # the drawing was found
    largest = max(sizes, key=lambda size: size[0] * size[1])
    assert largest[0] / 72.0 <= (x1 - x0) * LIMIT_IN_PER_YD and largest[1] / 72.0 <= (y1 - y0) * LIMIT_IN_PER_YD
    assert largest[1] / 72.0 > 0.5 * (y1 - y0) * LIMIT_IN_PER_YD  # and is of use


@pytest.mark.parametrize("name", HOLES)
def test_the_card_shows_the_ground_round_the_green(name: str) -> None:
    """Bunkers beside a green are about 12 yards from it to their far side: half of that at the least is seen."""
    figure = drawn(name, "card")
    x0, y0, x1, y1 = load_hole(name).green.bounds
    boxes = [(*ax.get_xlim(), *ax.get_ylim()) for ax in figure.axes]
    left, right, low, high = min(boxes, key=lambda box: abs(box[0] + box[1] - x0 - x1) + abs(box[2] + box[3] - y0 - y1))
    assert min(x0 - left, right - x1, y0 - low, high - y1) >= 7.0


def test_the_parts_of_one_water_are_told_apart_on_the_card() -> None:
    hole = load_hole(Path(__file__).parents[2] / "holes" / "ostrel-heath" / "11-the-eyot.toml")
    words = [text.get_text() for text in card_pages([measure(hole)])[0][1].texts]
    assert "river, left" in words and words.count("river, across") == 2 and "river" not in words
    assert "mill lane, off the map right" in " ".join(words)  # 58 yards beside the line; the map shows 45


@pytest.mark.parametrize("page", ["card", "show"])
def test_a_letter_has_its_ground_on_the_map(page: str) -> None:
    """Willows that begin where the map ends were not to be seen: their "f" stood on bare ground."""
    yardage = measure(load_hole("ostrel-heath/11"))
    with matplotlib.rc_context(fname=STYLE):
        figure = show_page(yardage) if page == "show" else card_page(yardage)
    mapped = {text.get_text() for ax in figure.axes for text in ax.texts}
    listed = {text.get_text() for text in figure.texts}
    assert {"b", "c", "d", "e"} <= mapped & listed and not {"f"} & (mapped | listed)
    assert "willows behind, off the map" in " ".join(text.get_text() for text in figure.texts)


def test_the_card_has_blanks_and_no_advice(tmp_path: Path) -> None:
    save_cards([measured(name) for name in HOLES], tmp_path / "card.pdf", numbers=(1, 2, 3))
    texts = pdf_words(tmp_path / "card.pdf")
    assert len(texts) == 3
    for number, (text, name) in enumerate(zip(texts, HOLES, strict=True), start=1):
        assert f"{number} {load_hole(name).name} par" in text
        for word in ("club", "line", "finish", "1:480", "Local rules and the committee decide"):
            assert word in text
        assert "Hit the" not in text and "safe" not in text.lower()


def test_attribution_on_page_and_card(tmp_path: Path) -> None:
    words = "© OpenStreetMap contributors (ODbL)"
    yardage = measure(dataclasses.replace(load_hole("eel-trap"), attribution=words))
    save_show(yardage, tmp_path / "show.pdf")
    save_cards([yardage], tmp_path / "card.pdf")
    for name in ("show.pdf", "card.pdf"):
        assert f"Map data: {words}." in pdf_words(tmp_path / name)[0]
    assert f"Map data: {words}." in " ".join(show_text(yardage).split())


NAMES = """
name = "Names"
par = 4
length_yd = 372
fairway = [{ from_yd = 140, to_yd = 345, left_yd = -15, right_yd = 16 }]
green = [{ front_yd = 358, depth_yd = 27, width_yd = 24 }]
bunker = [{ name = "the great bunker before the old fire station", at_yd = 235, offset_yd = -20, depth_yd = 14, width_yd = 9 }]
trees = [{ name = "竹林", from_yd = 250, to_yd = 340, left_yd = 27, right_yd = 66 }]
"""


@pytest.mark.filterwarnings("ignore:Glyph")
def test_a_name_cut_short_ends_in_an_ellipsis_and_wide_letters_keep_the_columns() -> None:
    shown = measure(hole_of(NAMES))
    rows = [line for line in show_text(shown).splitlines() if " trees  " in line or " bunker  " in line]
    assert any(row.startswith("the great bunker before…  bunker ") for row in rows)
    assert any(row.startswith("竹林" + 22 * " " + "trees ") for row in rows)  # four columns of letters
    drawn_names = [text.get_text() for text in show_page(shown).texts]
    assert [name[-1] for name in drawn_names if name.startswith("the great bunker")] == ["…"]
    listed = hole_text(hole_of(NAMES)).splitlines()
    heads = next(line.index("ground") for line in listed if line.startswith("area "))
    wood = next(line for line in listed if line.startswith("竹林"))
    assert wood.index("trees") == heads - 2
