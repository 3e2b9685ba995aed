"""How golfers speak of a stroke: words for the strike, which say nothing, and places that are none yet."""

from __future__ import annotations

import re

_HOW = (
    "topped|thinned|thin|shanked|duffed|chunked|fatted|fat|skulled|bladed|skied|toed|heeled|hooked|sliced|pulled|"
    "pushed|blocked|duck-hooked|mishit|miss-hit|flushed|pured|striped|hit"
)
_MISHIT = re.compile(
    rf"\b(?:(?:a\s+(?:bit|touch|little)|slightly|badly|really|just)\s+)?(?:{_HOW})\b,?\s*", re.IGNORECASE
)
"""How a ball was struck: the place it came to says it all."""

_WHERE_BEGINS = re.compile(r"\s(?:to|into|in|onto|on|finds|found|leaving)\s|->|→|:", re.IGNORECASE)

_CLUB = r"(?:driver|\w+[\s-]?(?:wood|hybrid|iron)|wedge|[1-9][wih]?)"
_GROUND = r"(?:middle|centre|center|fairway|straight|left|right|rough)"
_INSTEAD = tuple(
    (re.compile(pattern, re.IGNORECASE), why)
    for pattern, why in (
        (
            r".*\bup[\s-]+and[\s-]+down\b.*|.*\b(?:chip|pitch|splash|wedge)\w*\s+and\s+(?:an?\s+|one\s+)?putt\w*",
            'how near did it come? Say both strokes, "chip to 6 ft; 1 putt"',
        ),
        (
            rf".+?[\s,]+(?P<yards>\d+)\s*(?:yards?|yds?|yd|y|m)?[\s,]+(?:down\s+the\s+)?{_GROUND}.*",
            'gone or left? Say "to {yards} on, fairway" for what it went from the tee, '
            '"to {yards} out, fairway" for what was left ("left half" and "right rough" are places too)',
        ),
        (
            rf"(?:{_MISHIT.pattern})*{_CLUB}?\s*",
            'to where? For example "to 150 out", "to 60 out, right rough"',
        ),
        (
            r".+?[\s,]+(?:(?:short|long|left|right|pin[\s-]high)[\s,]*)+",
            'how far, and on what? Say "to 10 behind the green", "to 20 short of the green", '
            '"to 15 out, left rough"',
        ),
    )
)
"""What golfers note that leaves the place open, and what to say for it."""


def without_mishits(clause: str) -> str:
    """A clause without words for how the ball was struck; none is looked for in the place it went to."""
    begins = _WHERE_BEGINS.search(f" {clause}")
    at = len(clause) if begins is None else max(begins.start() - 1, 0)
    before = _MISHIT.sub("", clause[:at]).rstrip(" ,")
    if before == clause[:at].rstrip(" ,"):
        return clause
    return f"{before} {clause[at:].lstrip()}".strip() if before else ""


def say_instead(clause: str) -> str | None:
    """What to say for a clause that leaves the place open; None where it is not known."""
    for pattern, why in _INSTEAD:
        if found := pattern.fullmatch(clause):
            return why.format(**found.groupdict())
    return None
