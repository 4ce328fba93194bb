"""The words for numbers, and the words beside a number that tell what it is."""

from __future__ import annotations


def words_of(text: str) -> tuple[str, ...]:
    """A list of words written as text, so that tables stay readable."""
    return tuple(text.split())


UNITS = {w: n for n, w in enumerate(words_of("one two three four five six seven eight nine"), 1)}
_TEENS = words_of("ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen")
TEENS = {w: n for n, w in enumerate(_TEENS, 10)}
_TENS = words_of("twenty thirty forty fifty sixty seventy eighty ninety")
TENS = {w: n * 10 for n, w in enumerate(_TENS, 2)} | {"fourty": 40}
_FIRST = words_of("first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth")
_NEXT = words_of("thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth")
_TENTHS = words_of("thirtieth fortieth fiftieth sixtieth seventieth eightieth ninetieth")
ORDINALS = {w: n for n, w in enumerate(_FIRST + _NEXT, 1)} | {w: n * 10 for n, w in enumerate(_TENTHS, 3)}
PLURALS = {w: n for n, w in enumerate(words_of("twos threes fours fives sixes sevens eights nines"), 2)}
TAILS = {"'s": "is", "'ll": "will", "'d": "would"}
CLUB_NOUNS = frozenset(words_of("iron irons wood woods hybrid hybrids"))
SHORT_UNITS = frozenset(words_of("feet foot footer footers inches inch percent degree degrees putts"))
LENGTHS = frozenset(words_of("foot metre yard inch step pace"))
LONG_UNITS = frozenset(words_of("yards metres"))
LIKE_PAR = frozenset(words_of("par per part bar are for"))
"""How listeners write "par" before a number."""
COUPLED = frozenset(
    words_of(
        """feet foot yards metres inches paces steps putts shots strokes holes over under birdies pars
        bogeys"""
    )
)
YARDAGE_BEFORE = frozenset(
    words_of("got from leaves left have is was about called says plays it's that's had hit")
)
YARDAGE_AFTER = frozenset(
    words_of("yards yard metres metre out left to in for off up down into plays over from")
)
ABBREVIATED = {"i": "iron", "w": "wood", "h": "hybrid", "m": "metres", "y": "yards"}


def simple(text: str) -> float | None:
    """The value of one word or one run of digits, None when it is no number."""
    for table in (UNITS, TEENS, TENS):
        if text in table:
            return table[text]
    if text == "zero":
        return 0
    if text[:1].isdigit() or text[:1] == ".":
        try:
            return float(text)
        except ValueError:
            return None
    return None


def shown(value: float) -> str:
    """152.0 as "152", 2.5 as "2.5"."""
    return str(int(value)) if value == int(value) else f"{value:g}"


def nth(value: int) -> str:
    """7 as "7th"."""
    ending = "th" if 10 < value % 100 < 14 else {1: "st", 2: "nd", 3: "rd"}.get(value % 10, "th")
    return f"{value}{ending}"
