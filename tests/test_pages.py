"""The pages hold together: every link and path leads somewhere, and lines fit a screen."""

from __future__ import annotations

import re

import pytest
from written import GUIDE, PAGES, ROOT

BY_SCRIPT = ("benchmarks/VALIDATION.md", "benchmarks/levels.md")
NAMED = re.compile(r"(?<![\w/.])(?:simulator|tests|benchmarks|examples|holes)/[\w./-]*\w")
"""A path of this repository, from its top."""

COLUMNS = 120


def prose(text: str) -> str:
    """A page without its fenced blocks."""
    return re.sub(r"^```.*?^```$", "", text, flags=re.DOTALL | re.MULTILINE)


def anchors(text: str) -> set[str]:
    """What the headings of a page are linked by: small letters, hyphens for blanks, a number behind a second one."""
    found: set[str] = set()
    for heading in re.findall(r"^#+ (.*)$", prose(text), re.MULTILINE):
        shown = re.sub(r"\[([^]]*)\]\([^)]*\)", r"\1", heading)
        slug = re.sub(r"[^\w\- ]", "", shown.lower()).replace(" ", "-")
        count = next(n for n in range(99) if (f"{slug}-{n}" if n else slug) not in found)
        found.add(f"{slug}-{count}" if count else slug)
    return found


def test_an_anchor_is_made_as_pages_are_shown() -> None:
    assert anchors("# `confidence` and `flips`\n## A word, [a link](x.md)\n```\n# none\n```\n## A word, a link\n") == {
        "confidence-and-flips", "a-word-a-link", "a-word-a-link-1",
    }  # fmt: skip


@pytest.mark.parametrize("page", PAGES)
def test_every_link_resolves(page: str) -> None:
    for link in re.findall(r"\]\(([^)\s]+)\)", prose(PAGES[page])):
        if re.match(r"[a-z]+:", link):
            continue
        path, _, anchor = link.partition("#")
        target = (ROOT / page).parent / path if path else ROOT / page
        assert target.exists(), link
        if anchor:
            name = target.resolve().relative_to(ROOT).as_posix()
            assert anchor in anchors(PAGES[name]), link


@pytest.mark.parametrize("page", PAGES)
def test_every_file_it_names_is_there(page: str) -> None:
    for path in NAMED.findall(prose(PAGES[page])):
        assert (ROOT / path).exists(), path


@pytest.mark.parametrize("page", sorted({*GUIDE} - {"README.md"}))
def test_the_readme_leads_to_every_page_for_users(page: str) -> None:
    assert f"({page})" in PAGES["README.md"]


@pytest.mark.parametrize("page", sorted({*PAGES} - {*BY_SCRIPT}))
def test_lines_fit_a_screen(page: str) -> None:
    """Commands and answers stand as they are typed and printed."""
    assert not [line for line in prose(PAGES[page]).splitlines() if len(line) > COLUMNS]
