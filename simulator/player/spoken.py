"""Players as they are spoken of without a number, and words that settle nothing and what to say for them."""

from __future__ import annotations

import re

SPOKEN_HANDICAP: dict[str, tuple[float, str]] = {
    "beginner": (36.0, "28 to 54"),
    "high": (26.0, "19 and more"),
    "mid": (14.0, "10 to 18"),
    "low": (5.0, "up to 9"),
    "single": (7.0, "5 to 9"),
}
"""Handicap index taken for a word, and what golfers mean by it (common practice)."""

THIRDS_OF_TEN = {"low": 2.0, "mid": 5.0, "middle": 5.0, "high": 8.0}
"""Strokes over the ten in "low 80s", "mid 80s", "high 80s": the middles of its thirds."""

_SHAPED = r"(?:fade|draw|slice|hook)"
_SAY_INSTEAD: tuple[tuple[str, str], ...] = (
    (
        r"(?:tour|touring|teaching|club)[\s-]+(?:pro|professional|player)\b|pro\b|professional\b",
        'say a handicap: "plus 2" is about a club professional, "plus 5" one on a tour',
    ),
    (
        r"(?:average|typical|ordinary|normal|decent|good|weak|bad|club)[\s-]+(?:club\s+)?"
        r"(?:golfer|player|amateur|handicap(?:per)?)\b",
        'say a handicap, for example "handicap 15", or a score, "shoots 90"',
    ),
    (
        r"(?:juniors?|seniors?|kid|child|boys|girls|old|young|elderly|teenager)\b",
        'age changes nothing by itself: say a handicap and a distance, "handicap 18, driver 170"',
    ),
    (
        r"(?:short|long|big)[\s-]+hitt?er\b|(?:hits|drives)\s+it\s+(?:short|long|far|miles)\b",
        'say how far: "driver 190", "drives it 210"',
    ),
    (
        rf"(?:big|huge|slight|small|little|gentle|baby|high|low|push|pull)[\s-]+{_SHAPED}s?r?\b",
        'say how far it curves, behind a club: "driver 205 slice 30", or the shape alone',
    ),
    (r"(?:push|pull|block)(?:es|s|er|ed)?\b", 'say to which side: "miss right"'),
    (
        r"(?:good|bad|weak|poor|great|solid|shaky)[\s-]+(?:putter|putting|lag\s+putter)\b|putt(?:er|s|ing)\b",
        "putting goes into a player file: [putting] with handicap = 8",
    ),
    (
        r"(?:good|bad|weak|poor|great|solid)[\s-]+(?:short[\s-]+game|chipper|chipping|wedge\s+player)\b"
        r"|short[\s-]+game\b",
        "the short game goes into a player file: short_game = 0.9 is a tenth tighter than the level's",
    ),
    (r"(?:breaks?|broke)\s+\d+", 'say an average score, "shoots 88", or a handicap'),
)
SAY_INSTEAD = tuple((re.compile(pattern), advice) for pattern, advice in _SAY_INSTEAD)
"""What golfers say of a player that names no number of his, and what to say for it."""
