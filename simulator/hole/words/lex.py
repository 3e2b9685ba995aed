"""A hole in words, cut into tokens: words, numbers with their units, breaks; each knows where it stood."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from simulator.errors import UsageError
from simulator.spelt import SHORT_FOR, read_number

LONGEST_TEXT = 4000
"""Letters of a hole in words; a very full one has 600. A limit on slips."""

MOST_NUMBER = 3000.0
"""Largest number taken: longer than any hole in metres or yards."""


def listed(words: str) -> tuple[str, ...]:
    """The words of a list written with blanks."""
    return tuple(words.split())


UNIT_WORDS: dict[str, str] = {
    **dict.fromkeys(("yard", "yards", "yd", "yds", "y"), "yd"),
    **dict.fromkeys(("pace", "paces"), "yd"),  # a pace is a yard (common practice on hole-location sheets)
    **dict.fromkeys(("metre", "metres", "meter", "meters", "m", "mtr", "mtrs"), "m"),
    **dict.fromkeys(("foot", "feet", "ft", "'"), "ft"),
    **dict.fromkeys(("%", "percent", "pct"), "percent"),
    **dict.fromkeys(("°", "degree", "degrees", "deg"), "degrees"),
}

_TOKEN = re.compile(
    r"""(?P<text>"[^"\n]*"|“[^”\n]*”)
      | (?P<minus>(?:(?<=\s)|(?<=[,;(])|^)[-–−]\d+(?:\.\d+)?)
      | (?P<number>\d+(?:\.\d+)?)
      | (?P<ob>\b[oO]\.\s?[bB]\.?)
      | (?P<e5>\b[eE][\s-]?5\b)
      | (?P<word>[^\W\d_]+(?:['’][^\W\d_]+)*)
      | (?P<hard>[;\n]|[.!?](?=\s|$))
      | (?P<soft>[,/()])
      | (?P<dash>[-–—−‐‑])
      | (?P<colon>:)
      | (?P<unit>[%°'′’])
      | (?P<space>\s+)
      | (?P<odd>.)""",
    re.VERBOSE,
)


class WordError(UsageError):
    """A refusal of words that points at one of them.

    Parameters
    ----------
    where : the word as it is pointed at; start : where in the text it begins.
    unknown : it is not understood; else it was, and cannot be meant.
    """

    def __init__(self, message: str, where: str = "", start: int = 0, *, unknown: bool = False) -> None:
        super().__init__(message)
        self.where, self.start, self.unknown = where, start, unknown


@dataclass(frozen=True)
class Token:
    """One piece of the text.

    Parameters
    ----------
    kind : "word", "number", "text" (quoted), "hard", "soft" or "and".
    shown : as typed; key : small letters, without possessives.
    value, unit : of a number; the unit is "" when none was said, "yd", "m", "ft", "percent" or "degrees".
    start, end : place in the text.
    """

    kind: str
    shown: str
    key: str
    start: int
    end: int
    value: float = 0.0
    unit: str = ""

    def error(self, why: str, *, unknown: bool = False) -> WordError:
        """A refusal that points at this word; `unknown` where it is not understood at all."""
        shown = self.shown if len(self.shown) <= 40 else self.shown[:37] + "..."
        where = f"{shown!r} (letter {self.start + 1})"
        message = " ".join(f"hole in words: {where} {why}".split())
        return WordError(message, where, self.start, unknown=unknown)


def tokens_of(text: str) -> list[Token]:
    """Tokens of a hole in words (composed letters, NFC).

    Raises
    ------
    UsageError
        A number too large, a minus sign, a text too long.
    """
    if len(text) > LONGEST_TEXT:
        raise UsageError(f"hole in words: {len(text)} letters; allowed: up to {LONGEST_TEXT}")
    raw = [_token(found) for found in _TOKEN.finditer(text) if found.lastgroup != "space"]
    return _joined(_with_units(_spelt(raw)))


def _token(found: re.Match[str]) -> Token:
    kind, shown = str(found.lastgroup), found.group()
    token = Token(kind, shown, shown.casefold(), found.start(), found.end())
    if kind == "minus":
        raise token.error("has a minus sign: say left or right, up or down, short or behind")
    if kind == "number":
        return _numbered(token, float(shown) if len(shown) < 12 else MOST_NUMBER + 1.0)
    if kind in ("ob", "e5"):
        return replace(token, kind="word", key=kind)
    if kind == "odd" and shown != "&":
        return replace(token, kind="word", key="at" if shown == "@" else token.key)
    if kind == "text":
        return replace(token, key=shown[1:-1].strip())
    if kind == "word":
        key = token.key.replace("’", "'")
        key = key.removesuffix("'s") if key != "there's" else "there"
        key = SHORT_FOR.get(key, key)
        return replace(token, key=key, kind="and" if key in ("and", "plus", "then") else "word")
    return replace(token, kind="and", key="and") if shown == "&" else token


def _numbered(token: Token, value: float) -> Token:
    if value > MOST_NUMBER:
        raise token.error(f"is too large; allowed: numbers up to {MOST_NUMBER:,.0f}")
    return replace(token, kind="number", value=value)


def _spelt(tokens: list[Token]) -> list[Token]:
    """Numbers in words made one number each; a hyphen may stand between their words, a name is left alone."""
    out: list[Token] = []
    k = 0
    while k < len(tokens):
        first = tokens[k]
        run = _words_from(tokens, k) if first.kind == "word" else []
        read = read_number([tokens[j].key for j in run])
        if read is None or (out and out[-1].key in ("called", "named")):
            out.append(first)
            k += 1
            continue
        value, used = read
        last = run[used - 1]
        shown = " ".join(token.shown for token in tokens[k : last + 1]).replace(" - ", "-")
        out.append(_numbered(replace(first, shown=shown, end=tokens[last].end), value))
        k = last + 1
    return out


def _words_from(tokens: list[Token], k: int) -> list[int]:
    """Places of the words from one on that nothing but hyphens parts."""
    run = [k]
    while (j := run[-1] + 1) < len(tokens):
        j += tokens[j].kind == "dash"
        if j >= len(tokens) or tokens[j].kind not in ("word", "and"):
            break
        run.append(j)
    return run


def _with_units(tokens: list[Token]) -> list[Token]:
    """Each number with the unit behind it; a hyphen may stand between."""
    out: list[Token] = []
    k = 0
    while k < len(tokens):
        token = tokens[k]
        k += 1
        if token.kind != "number":
            if token.kind != "unit":
                out.append(token)
            elif token.shown not in ("'", "′", "’"):
                raise token.error("stands behind no number")
            continue
        behind = k + 1 if k < len(tokens) and tokens[k].kind == "dash" else k
        unit = tokens[behind].key if behind < len(tokens) else ""
        unit = "'" if unit in ("′", "’") else unit
        if unit == "per" and behind + 1 < len(tokens) and tokens[behind + 1].key == "cent":
            unit, behind = "percent", behind + 1
        if unit in UNIT_WORDS:
            token = replace(token, unit=UNIT_WORDS[unit], end=tokens[behind].end)
            k = behind + 1
        out.append(token)
    return out


def _ends(tokens: list[Token], k: int) -> bool:
    """Whether a word is the last before a break."""
    return k + 1 == len(tokens) or tokens[k + 1].kind in ("hard", "soft")


def _joined(tokens: list[Token]) -> list[Token]:
    """Dashes between numbers made "to", `12 x 8` made "by"; other dashes and colons dropped."""
    out: list[Token] = []
    for k, token in enumerate(tokens):
        between = 0 < k < len(tokens) - 1 and tokens[k - 1].kind == tokens[k + 1].kind == "number"
        if token.kind == "dash":
            after_par = k > 1 and tokens[k - 2].key == "par"
            if between:
                out.append(replace(token, kind="soft" if after_par else "word", key="to"))
        elif between and token.key == "/" and tokens[k - 2].key != "par":  # "210/250"
            out.append(replace(token, kind="word", key="to"))
        elif between and token.key in ("x", "×"):
            out.append(replace(token, kind="word", key="by"))
        elif token.key == "plus" and k and tokens[k - 1].kind == "number" and _ends(tokens, k):
            out.append(replace(token, kind="word", key="onwards"))  # "200 plus"
        elif between and k > 1 and token.kind == "and" and tokens[k - 2].key == "between":
            out.append(replace(token, kind="word", key="to"))
        elif token.kind != "colon":
            out.append(token)
    return out
