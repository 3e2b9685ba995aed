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

LOW_OR_HIGH_SINGLE = {"low": (3.0, "1 to 5"), "high": (8.0, "7 to 9")}
"""The same for "low single figures" and "high single figures"."""

TEENS = {
    "low": (13.0, "12 to 14"), "mid": (15.0, "14 to 16"), "high": (18.0, "17 to 19"), "": (16.0, "13 to 19"),
}  # fmt: skip
"""The same for "in the teens", "high teens"."""

THIRDS_OF_TEN = {"low": 2.0, "mid": 5.0, "middle": 5.0, "high": 8.0}
"""Strokes over the ten in "low 80s", "mid 80s", "high 80s": the middles of its thirds."""

_SHAPED = r"(?:fade|draw|slice|hook)"
AGE = (
    r"(?:\d+[\s-]*)?(?:years?|yrs?)[\s-]*old\b|aged?\b(?:\s*\d+)?"
    r"|(?:juniors?|seniors?|kid|child|boys|girls|old|young|elderly|teenager)\b"
)
AGE_ADVICE = 'age changes nothing by itself: say a handicap and a distance, "handicap 18, driver 170"'
"""Words of an age: beside a handicap and a distance they say nothing more, alone they say too little."""

AGE_TOO = 'age changes nothing by itself: say {}, for example "{}"'
"""The same where one of the two was said, with what is missing."""

_SAY_INSTEAD: tuple[tuple[str, str], ...] = (
    (
        r"(?:tour|touring|teaching|club)[\s-]+(?:pro|professional|player)\b|pro\b|professional\b",
        'say a handicap: "plus 2" is about a club professional, "plus 5" one on a tour',
    ),
    (
        r"(?:average|typical|ordinary|normal|decent|good|weak|bad|club|college|county|varsity)[\s-]+(?:club\s+)?"
        r"(?:golfer|player|amateur|champion|handicap(?:per)?)\b",
        'say a handicap, for example "handicap 15", or a score, "shoots 90"',
    ),
    (
        r"(?:never|rarely|seldom)\s+(?:miss(?:es)?|goes)\s+(?:it\s+)?(?:left|right|long|short)\b",
        'say the side that is missed: "miss right"',
    ),
    (
        r"(?:it\s+)?(?:(?:dead|very|fairly)\s+)?(?:straight|wild|erratic|accurate)\b(?:\s+(?:hitter|driver))?"
        r"|(?:dispersion|spread)\b",
        'say how wide: "driver 205, 50 wide" (8 of 10 balls)',
    ),
    (
        r"\d+\s*(?:yards?|yds?|y|m|metres?)?\s*total\b|(?:rolls?|runs?)\s+(?:out\s+)?(?:to\s+)?\d+",
        "a club has its carry or its total, the run is worked out: leave one of them out",
    ),
    (
        r"(?:half|three[\s-]*quarters?|3/4|1/2|full|part)\b",
        "swings short of full are worked out from the full carry: say that alone",
    ),
    (
        r"(?:wedges|irons|woods|hybrids|gaps?|gapping)\b|\d+\s*(?:yards?|yds?|m)?\s+(?:gaps?|between|apart)\b",
        'say each club with its distance: "7i 150, 8i 140, pw 118, 52 105, 56 90"',
    ),
    (
        r"(?:swing|club(?:head)?|head|ball)[\s-]*speed\b",
        'say the carry it brings: "driver 205"',
    ),
    (
        r"\d{1,2}(?:\.\d)?\s*(?:$|[,;]|driver\b)",
        'a number alone: say "handicap 14", what club it is, "7-iron 140", or "aged 74"',
    ),
    (AGE, AGE_ADVICE),
    (
        r"aims?\b|aiming\b|sets?\s+up\b|lines?\s+up\b",
        'where to aim is what the answer finds; to try a line of his own, compare HOLE "driver 15 left"',
    ),
    (
        r"(?:tops?|thins?|duffs?|fats?|chunks?|shanks?)\b",
        "how often goes into a player file: mishit_rate = 0.2 under [club.driver] is one in five",
    ),
    (
        r"(?:low|high)\s+(?:ball\s+)?(?:hitter|flight|ball)\b",
        'say it with the shot, "driver low", "7-iron low"',
    ),
    (r"(?:yips?|yipper)\b", "putting goes into a player file: [putting] with handicap = 20"),
    (
        r"(?:\d+\s*%|accuracy|(?:fairways?|greens?)\s+(?:hit\s+)?\d+|hits\s+\d+\s*%)",
        'say how wide a club goes: "driver 205, 50 wide" (8 of 10 balls)',
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
        r"(?:good|bad|weak|poor|great|solid|strong)[\s-]+(?:short[\s-]+game|chipper|chipping|wedge\s+player|bunker\s+player)\b"
        r"|short[\s-]+game\b",
        "the short game goes into a player file: short_game = 0.9 is a tenth tighter than the level's",
    ),
    (
        r"\d+\s*(?:yards?|yds?|y|metres?|m)?\s+(?:off|from)\s+the\s+tee\b|(?:good|best|max(?:imum)?|big|long)\s+drives?\b",
        'say the usual drive: "drives it 210"',
    ),
    (r"(?:short|long|left|right)\s*(?:$|[,;])", 'say that it is missed there: "miss short", "miss right"'),
    (
        r"plus\s+(?:handicap(?:per)?|figures?|golfer|player|man|woman)\b",
        'say how far: "plus 2"',
    ),
    (r"±|\+/-", 'say how deep eight balls of ten come down: "driver 205, 30 deep"'),
    (r"(?:breaks?|broke)\s+\d+", 'say an average score, "shoots 88", or a handicap'),
)
SAY_INSTEAD = tuple((re.compile(pattern), advice) for pattern, advice in _SAY_INSTEAD)
"""What golfers say of a player that names no number of his, and what to say for it."""
