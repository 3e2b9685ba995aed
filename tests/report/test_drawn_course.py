"""A course's drawn pages: words inside and apart, every cell as in the texts, marks without colour, files."""

from __future__ import annotations

import itertools
import json
import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import course_results
import matplotlib
import numpy as np
import pytest
from course_results import LONG, NORTH, down
from matplotlib.colors import to_rgb
from matplotlib.figure import Figure
from matplotlib.patches import Rectangle
from matplotlib.text import Text
from words_apart import check_words, pdf_words

from simulator.conditions import STILL
from simulator.hole import load_course
from simulator.player import load_player
from simulator.report.coursepages import course_pages, save_course
from simulator.report.coursetable import course_summary
from simulator.report.palette import MARKED, PAPER, SHOTS, STYLE
from simulator.report.paper import MARGIN_IN, TALL_IN, WIDE_IN
from simulator.report.roundchart import chart_words, draw_round
from simulator.report.sheet import width_in, wrapped
from simulator.report.summarypages import summary_pages
from simulator.report.summarywords import row_words
from simulator.report.team import team_page
from simulator.report.teampages import team_pages
from simulator.report.teamwords import cell_of, expected_words
from simulator.report.units import METRES, YARDS, Units
from simulator.strategy import running
from simulator.strategy.course import play_course
from simulator.strategy.courseasked import CourseAnswer, Failure
from simulator.strategy.rounds import add_up

CLUBS = (
    ("driver", "stock", 210.0), ("3-wood", "stock", 190.0), ("5-iron", "low", 160.0),
    ("pitching wedge", "part", 71.6), ("50-degree wedge", "gripped", 87.6),
)  # fmt: skip
"""From the shortest name to the longest."""

OWED = "© OpenStreetMap contributors (ODbL)"


@pytest.fixture(autouse=True)
def as_written() -> Iterator[None]:
    """Pages are measured as they are written."""
    with matplotlib.rc_context(fname=STYLE):
        yield


@pytest.fixture(scope="module")
def one_player() -> CourseAnswer:
    """18 holes, one player, two days, of the stand-in."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(running, "work", course_results.result)
        return play_course(
            load_course("ostrel-heath"), [load_player("barnaby")], scenarios=[STILL, NORTH], threads=1
        )


def made(of: CourseAnswer, names: tuple[str, ...], holes: int, days: int = 2, sure: bool = True) -> CourseAnswer:
    """The same for other players: clubs, lines and shares differ from cell to cell, some change with the day."""
    results = []
    for result in json.loads(json.dumps(of.results)):
        if result["number"] > holes or (days == 1 and result["scenario"] != "still"):
            continue
        for name in names:
            one = json.loads(json.dumps(result))
            number, told = one["number"], one["answer"]
            told["player"] = name
            k = 7 * number + 3 * len(name)
            club = CLUBS[k % 4] if k % 9 else CLUBS[4]
            if one["scenario"] == "north" and k % 3 == 0:
                club = ("7-iron", "stock", 140.0)
            best = told["alternatives"][told["recommended"]]
            best |= dict(zip(("club", "flight", "carry_yd"), club, strict=True))
            best["aim_offset_yd"] = float(5 * number % 23 - 11)
            one["habit"]["aim_offset_yd"] = float(number % 2)
            if sure:
                told["confidence"] = {"best_share": (0.81, 0.97, 0.04)[k % 3]}
                told["verdict"] = "slight"
            results.append(one)
    course = replace(of.course, holes=of.course.holes[:holes], numbers=of.course.numbers[:holes])
    players = tuple(replace(of.players[0], name=name) for name in names)
    return replace(
        of, course=course, players=players, results=tuple(results), scenarios=of.scenarios[:days]
    )


@pytest.fixture(scope="module")
def busy(one_player: CourseAnswer) -> CourseAnswer:
    """Nine players with long names on 18 holes with long ones, two days, a hole in part without an answer."""
    long = made(one_player, LONG, 18)
    for result in long.results:
        result["answer"]["hole"] = f"The Long Crooked Ash of {result['answer']['hole']}"
    holes = tuple(replace(hole, name=f"The Long Crooked Ash of {hole.name}", attribution=OWED) for hole in long.course.holes)
    results = tuple(r for r in long.results if (r["number"], r["answer"]["player"]) != (5, "Cy"))
    failures = (Failure(5, "Kestrel", "no club for it", "Cy"),)
    return replace(long, course=replace(long.course, holes=holes), results=results, failures=failures)


@pytest.fixture(scope="module")
def plain(one_player: CourseAnswer) -> CourseAnswer:
    return made(one_player, ("Barnaby",), 3, days=1, sure=False)


def drawn(pages: list[tuple[str, Figure]]) -> list[Figure]:
    for _, figure in pages:
        figure.draw_without_rendering()
    return [figure for _, figure in pages]


def said(figure: Figure) -> str:
    return " ".join(" ".join(text.get_text() for text in figure.texts).split())


CASES = [("plain", YARDS), ("busy", YARDS), ("busy", METRES)]


@pytest.mark.parametrize(("case", "units"), CASES)
def test_words_are_on_the_paper_and_cover_no_other(
    case: str, units: Units, request: pytest.FixtureRequest
) -> None:
    answer = request.getfixturevalue(case)
    shown = replace(answer, players=answer.players[:2])
    for figure in drawn([*team_pages(answer, units), *summary_pages(shown, 90, units)]):
        assert tuple(figure.get_size_inches()) == (WIDE_IN, TALL_IN)
        check_words(figure)
        sides = [0.9 * MARGIN_IN * figure.dpi, (WIDE_IN - 0.9 * MARGIN_IN) * figure.dpi]
        for text in figure.texts:
            box = text.get_window_extent()
            assert sides[0] <= box.x0 and box.x1 <= sides[1], text
        if units.metric:
            assert not re.search(r"\byd\b|\byards?\b", said(figure))


def rows_of(figure: Figure) -> list[tuple[float, str]]:
    """Where the row of each hole begins, from the top, and its number; then where the rows end."""
    left = min(text.get_position()[0] for text in figure.texts)
    texts = sorted(figure.texts, key=lambda text: -text.get_position()[1])
    found = [
        (text.get_position()[1], text.get_text())
        for text in texts
        if text.get_text().isdigit() and text.get_ha() == "right" and text.get_fontweight() == "bold"
    ]
    end = next(text.get_position()[1] for text in texts if text.get_text() == "expected")
    assert left < 0.1 and found
    return [*found, (end, "")]


def column_of(figure: Figure, left: float) -> dict[str, str]:
    """What stands in a column of the team's table: name, cells and sum by the number of the hole."""
    rows = rows_of(figure)
    cells: dict[str, str] = {}
    for (top, number), (bottom, _) in itertools.pairwise(rows):
        lines = [
            text
            for text in figure.texts
            if abs(text.get_position()[0] - left) < 1e-6 and bottom + 1e-6 < text.get_position()[1] <= top + 1e-6
        ]
        cells[number] = " ".join(text.get_text() for text in sorted(lines, key=lambda t: -t.get_position()[1]))
    return cells


def columns_of(figure: Figure, names: tuple[str, ...]) -> dict[str, dict[str, str]]:
    """The cells of every player whose name stands at the head of a column, whole."""
    top = rows_of(figure)[0][0]
    heads: dict[float, list[Text]] = {}
    for text in figure.texts:
        if text.get_position()[1] > top and text.get_fontweight() == "bold":
            heads.setdefault(round(text.get_position()[0], 6), []).append(text)
    found = {}
    for left, texts in heads.items():
        words = " ".join(t.get_text() for t in sorted(texts, key=lambda t: -t.get_position()[1]))
        name = next((name for name in names if name == words.replace("- ", "-")), None)
        if name is not None:
            found[name] = column_of(figure, left)
    return found


@pytest.mark.parametrize(("case", "units"), CASES)
def test_every_cell_is_as_in_the_text(case: str, units: Units, request: pytest.FixtureRequest) -> None:
    """Read off the page by place, and off the text by column."""
    answer = request.getfixturevalue(case)
    names = tuple(player.name for player in answer.players)
    cells: dict[str, dict[str, str]] = {}
    for figure in drawn(team_pages(answer, units)):
        if any(text.get_text() == "expected" for text in figure.texts):
            cells |= columns_of(figure, names)
    assert set(cells) == set(names)
    text = team_page(answer, units)
    for name in names:
        whole = re.sub(r"(?<=\w)- ", "-", down(text, name)).removeprefix(name).split()
        page = " ".join(cells[name].values()).split()
        # the text leaves out what stands behind the last hole on the page: the sum
        assert page == whole[: len(page)] and whole[len(page) :] == expected_words(answer, name).split()
        for result in answer.of(name):
            words = cell_of(answer, result, units).words.replace("\xa0", " ")
            assert cells[name][str(result["number"])] == words
    if case == "busy":
        assert cells["Cy"]["5"] == "-"
        assert [expected_words(answer, name).partition(" ")[2] for name in names] == [
            "(17 of 18)" if name == "Cy" else "" for name in names
        ]


def frames(figure: Figure) -> list[Rectangle]:
    edge = to_rgb(MARKED.edge)
    found = figure.findobj(Rectangle)
    return [box for box in found if box.get_linewidth() == 1.0 and to_rgb(box.get_edgecolor()[:3]) == edge]


def test_a_mark_is_a_frame_a_star_and_a_legend(busy: CourseAnswer) -> None:
    """Not the tint alone: as many frames as stars, each round the words of its own cell."""
    pages = [f for f in drawn(team_pages(busy)) if any(t.get_text() == "expected" for t in f.texts)]
    marked = 0
    for figure in pages:
        stars = [t for t in figure.texts if re.match(r"(\d+[LR]|mid)\*", t.get_text())]
        boxes = [box.get_window_extent() for box in frames(figure)]
        assert len(boxes) == len(stars) + 1  # the legend's
        for star in stars:
            box = star.get_window_extent()
            assert sum(b.x0 <= box.x0 and box.x1 <= b.x1 and b.y0 <= box.y0 and box.y1 <= b.y1 for b in boxes) == 1
        assert "Framed and *: another club is better on another of the days" in said(figure)
        marked += len(stars)
    assert marked == team_page(busy).count("* ") - team_page(busy).count("* changes")
    luminance = np.array([0.2126, 0.7152, 0.0722]) @ np.array([to_rgb(MARKED.fill), to_rgb(PAPER)]).T
    assert luminance[0] > 0.75 * luminance[1]  # words stay readable on it in grey


def test_what_cells_change_to_is_told(busy: CourseAnswer) -> None:
    words = " ".join(said(figure) for figure in drawn(team_pages(busy)))
    for line in team_page(busy).split("* changes with the day:")[1].split("Without")[0].split("\n  "):
        if line.strip() and not line.startswith("  "):
            assert " ".join(line.split()) in words


@pytest.mark.parametrize("case", ["plain", "busy"])
def test_title_caution_and_credit_are_on_every_page(case: str, request: pytest.FixtureRequest) -> None:
    answer = request.getfixturevalue(case)
    pages = course_pages(replace(answer, players=answer.players[:4]))
    for name, figure in pages:
        words = said(figure)
        assert words.startswith("Ostrel Heath") and "each hole's first tee and pin" in words
        for one in ("still", "Rules of Golf 4.3", "committee", "look and shout", "Nobody ahead nearer than 273 yd"):
            assert one in words, name
        assert words.count(f"Map data: {OWED}.") == (1 if case == "busy" else 0)
        assert not re.search(r"\b(safe\w*|cannot)\b", words, re.IGNORECASE)


def test_a_day_alone_marks_nothing_on_paper(plain: CourseAnswer) -> None:
    ((_, figure),) = team_pages(plain)
    assert not frames(figure) and "*" not in said(figure)
    assert "nothing is known of what the wind would change" in said(figure)


def test_holes_after_a_round_go_on_another_page(one_player: CourseAnswer) -> None:
    """27 holes: 18 and 9, the sums below the last of them."""
    twice = made(one_player, ("Barnaby", "Isolde"), 18)
    more = json.loads(json.dumps([one for one in twice.results if one["number"] <= 9]))
    for one in more:
        one["number"] += 18
    course = replace(
        twice.course,
        holes=(*twice.course.holes, *twice.course.holes[:9]),
        numbers=(*twice.course.numbers, *range(19, 28)),
    )
    pages = drawn(team_pages(replace(twice, course=course, results=(*twice.results, *more))))
    numbers = []
    for figure in pages:
        check_words(figure)
        numbers.append([t.get_text() for t in figure.texts if t.get_text().isdigit() and t.get_fontweight() == "bold"])
    assert numbers[:2] == [[str(n) for n in range(1, 19)], [str(n) for n in range(19, 28)]]
    assert ["expected" in said(figure).split() for figure in pages[:2]] == [False, True]
    assert "told on a later page" in said(pages[0]) and all("Page" in said(figure) for figure in pages)


@pytest.mark.parametrize("letters", [1, 100])
def test_no_letter_of_a_name_is_lost(one_player: CourseAnswer, letters: int) -> None:
    """Names without a blank in them too, of players and of holes."""
    name = "Wolferstanabernathy"[:9] * (letters // 9) + "W" * (letters % 9)
    answer = made(one_player, (name, "Bo"), 18)
    course = replace(answer.course, holes=tuple(replace(hole, name=name) for hole in answer.course.holes))
    for one in answer.results:
        one["answer"]["hole"] = name
    pages = drawn(course_pages(replace(answer, course=course)))
    heads = ""
    for figure in pages:
        check_words(figure)
        heads += "".join(said(figure).split())
    assert heads.count(name) >= 1 + 18 + 18  # over the column of the team; in three tables


def test_lines_are_no_wider_than_asked_and_lose_nothing() -> None:
    words = "Ottoline-Marguerite Featherstonehaugh 9L*\xa0>9/10 " + "x" * 90
    for wide in (0.3, 0.9, 2.0, 9.0):
        lines = wrapped(words, 8.0, wide, "bold")
        assert all(width_in(line, 8.0, "bold") <= wide + 1e-5 for line in lines)
        assert "".join(lines).replace(" ", "") == words.replace(" ", "")
    assert wrapped("Ottoline-Marguerite", 8.0, 0.9, "bold") == ["Ottoline-", "Marguerite"]
    wide = width_in("5-iron low", 8.0)
    assert wrapped("5-iron low", 8.0, wide) == ["5-iron low"] and wrapped("5-iron low", 8.0, wide - 0.01) == [
        "5-iron", "low",
    ]  # fmt: skip


@pytest.mark.parametrize(("case", "units"), CASES)
def test_the_summary_says_what_the_text_says(case: str, units: Units, request: pytest.FixtureRequest) -> None:
    """Every word of a player's text, but for how the ranking is set, stands on the page too."""
    answer = request.getfixturevalue(case)
    answer = replace(answer, players=answer.players[:2])
    found: dict[str, str] = {}
    for name, figure in summary_pages(answer, 90, units):
        found[name] = f"{found.get(name, '')} {said(figure)}".strip()
    assert len(found) == len(answer.players)
    parts = course_summary(answer, 90, units).split("\n\n")
    assert "habit: " in "".join(found.values()) and len(parts) >= 5 * len(found)
    for k, page in enumerate(found.values()):
        head, table, legend, round_, ranking = parts[5 * k : 5 * k + 5]
        assert sorted(" ".join(table.split()).split()) == sorted(
            word for word in " ".join(table.split()).split() if f" {word} " in f" {page} "
        )
        for words in (legend, *round_.split("\nOther days")[:1]):
            assert " ".join(words.split()) in page
        for words in head.replace("\n", " ").split("; "):
            assert words in page
        listed = " ".join(ranking.split("Nobody ahead")[0].split()).split(": ", 1)[1]
        for one in re.findall(r"(\d+ [A-Z][^;()]*? \d+\.\d\d \+- \d\.\d\d)", listed):
            hole, worth = re.match(r"(.*) (\S+ \+- \S+)", one).groups()  # type: ignore[union-attr]
            assert worth in page and all(part in page for part in hole.split())
        for habit in re.findall(r"\(([^)]*)\)", listed):
            assert f"habit: {habit}" in page


@pytest.mark.parametrize(("case", "units"), CASES)
def test_every_row_of_the_summary_is_as_in_the_text(
    case: str, units: Units, request: pytest.FixtureRequest
) -> None:
    """Read off the page by place: the words from the number of a hole down to the next, column by column."""
    answer = request.getfixturevalue(case)
    answer = replace(answer, players=answer.players[:1])
    rows: dict[str, list[str]] = {}
    for figure in drawn(summary_pages(answer, 90, units)):
        tops = [
            (text.get_position()[1], text.get_text())
            for text in figure.texts
            if text.get_text().isdigit() and text.get_ha() == "right" and text.get_fontweight() == "bold"
        ]
        end = [(text.get_position()[1], "") for text in figure.texts if text.get_text().startswith("Line: ")]
        for (top, number), (bottom, _) in itertools.pairwise(sorted([*tops, *end], reverse=True)):
            inside = [text for text in figure.texts if bottom + 1e-6 < text.get_position()[1] <= top + 1e-6]
            inside.sort(key=lambda text: (round(text.get_position()[0], 5), -text.get_position()[1]))
            rows[number] = " ".join(text.get_text() for text in inside).split()
    results = answer.of(answer.players[0].name)
    assert list(rows) == [str(one["number"]) for one in results]
    text = course_summary(answer, 90, units)
    for one in results:
        words = [word for cell in row_words(answer, one, units) for word in cell.split()]
        assert rows[words[0]] == words and len(words) >= 11
        assert all(word in text for word in words)


def test_a_summary_is_one_page(busy: CourseAnswer, plain: CourseAnswer, one_player: CourseAnswer) -> None:
    assert len(summary_pages(plain)) == 1
    usual = made(one_player, ("Barnaby", "Isolde"), 18)
    assert [name for name, _ in summary_pages(usual, 90)] == ["barnaby", "isolde"]


def test_bars_of_the_ranking_are_as_long_as_what_they_stand_for(plain: CourseAnswer) -> None:
    """0.3, 0.2 and 0.1 strokes, the stand-in's."""
    ((_, figure),) = summary_pages(plain)
    bars = [box for box in figure.patches + figure.findobj(Rectangle) if box.get_zorder() == 1.0 and box.axes is None]
    wide = {round(b.get_y(), 6): b.get_width() for b in bars if to_rgb(b.get_facecolor()) == to_rgb(SHOTS[0].colour)}
    assert len(wide) == 3
    ordered = [wide[y] for y in sorted(wide, reverse=True)]
    assert ordered == pytest.approx([3 * ordered[2], 2 * ordered[2], ordered[2]])


def test_the_chart_has_the_chances_of_the_round(plain: CourseAnswer) -> None:
    one = add_up(plain.of("Barnaby"), 15)
    ax = draw_round(one)
    bars = {round(bar.get_x() + bar.get_width() / 2): bar for bar in ax.patches}
    for total, bar in bars.items():
        assert bar.get_height() == pytest.approx(100.0 * one.chances[total - one.least])
        low, high, _ = one.most()
        inside = low <= total <= high
        assert (to_rgb(bar.get_facecolor()) == to_rgb(PAPER)) is not inside
    assert sum(bar.get_height() for bar in bars.values()) > 99.5
    (line,) = ax.lines
    assert line.get_xdata()[0] == 14.5 and not draw_round(add_up(plain.of("Barnaby"), 90)).lines
    assert "Left of the dashed line 15 is broken" in chart_words(one)


def test_the_chart_tells_no_target_that_the_words_leave_out(plain: CourseAnswer) -> None:
    """Where holes have no answer no score of the others breaks anything."""
    part = add_up(plain.of("Barnaby"), 15, missing=1)
    assert not draw_round(part).lines and "broken" not in chart_words(part)


def test_files_of_the_pages(plain: CourseAnswer, one_player: CourseAnswer, tmp_path: Path) -> None:
    answer = made(one_player, ("Ada Wold", "Ben/../Ash"), 3)
    for name in ("a.pdf", "b.pdf"):
        assert save_course(answer, tmp_path / name) == [tmp_path / name]
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()
    texts = pdf_words(tmp_path / "a.pdf")
    assert len(texts) == 3 and "Ada Wold" in texts[0] and "The round" in texts[2]
    written = save_course(answer, tmp_path / "c.svg")
    assert [path.name for path in written] == ["c-1-team.svg", "c-2-ada-wold.svg", "c-3-ben-ash.svg"]
    nobody = replace(answer, results=())
    assert save_course(nobody, tmp_path / "d.pdf") == [] and not (tmp_path / "d.pdf").exists()


def test_letters_that_mean_mathematics_elsewhere_are_letters(one_player: CourseAnswer) -> None:
    answer = made(one_player, ("A$x_1$B",), 3)
    for figure in drawn(course_pages(answer)):
        check_words(figure)
        assert "A$x_1$B" in said(figure)
        assert not any(text.get_parse_math() for text in figure.texts)
