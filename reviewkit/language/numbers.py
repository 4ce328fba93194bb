"""Spoken numbers to digits, as golfers say them: "one fifty two", "a buck forty", "hundred and two".

Works on pieces and never across a comma, so "six, seven" stays two numbers. "one" becomes a number only where
its neighbours say it counts something; elsewhere ("that one", "one of those") it stays the word.
"""

from __future__ import annotations

from dataclasses import replace

from reviewkit.language.pieces import COMMA, ENDS, Piece


def _words(text: str) -> tuple[str, ...]:
    return tuple(text.split())


UNITS = {w: n for n, w in enumerate(_words("one two three four five six seven eight nine"), 1)}
_TEENS = _words("ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen")
TEENS = {w: n for n, w in enumerate(_TEENS, 10)}
_TENS = _words("twenty thirty forty fifty sixty seventy eighty ninety")
TENS = {w: n * 10 for n, w in enumerate(_TENS, 2)} | {"fourty": 40}
_FIRST = _words("first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth")
_NEXT = _words("thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth")
_TENTHS = _words("thirtieth fortieth fiftieth sixtieth seventieth eightieth ninetieth")
ORDINALS = {w: n for n, w in enumerate(_FIRST + _NEXT, 1)} | {w: n * 10 for n, w in enumerate(_TENTHS, 3)}
PLURALS = {w: n for n, w in enumerate(_words("twos threes fours fives sixes sevens eights nines"), 2)}
CLUB_NOUNS = frozenset(_words("iron irons wood woods hybrid hybrids"))
SHORT_UNITS = frozenset(_words("feet foot footer footers inches inch percent degree degrees putts"))
_LENGTHS = frozenset(_words("foot metre yard inch step pace"))
_ABBREVIATED = {"i": "iron", "w": "wood", "h": "hybrid", "m": "metres", "y": "yards"}
_TAILS = {"'s": "is", "'ll": "will", "'d": "would"}
_COUPLED = frozenset(
    _words(
        "feet foot yards metres inches paces steps putts shots strokes holes over under birdies pars bogeys"
    )
)
_YARDAGE_BEFORE = frozenset(
    _words("got from leaves left have is was about called says plays it's that's had hit")
)
_YARDAGE_AFTER = frozenset(
    _words("yards yard metres metre out left to in for off up down into plays over from")
)
_COUNTED = frozenset(
    _words(
        """over under putt putts putted par pars birdie bogey eagle double shot shots stroke strokes
        yard foot metre inch iron club wood hybrid penalty hop bounce more off up down"""
    )
)
_NOT_COUNTED = frozenset(
    _words(
        """this that the which any every each another no some first last next good bad big nice easy hard
        only right little other long short wrong your my his her their our lovely great decent"""
    )
)
_COUNTS = frozenset(_words("plus minus hole number in through after thru off by"))


def numbers(given: list[Piece]) -> list[Piece]:
    """The pieces with every number as digits and its value."""
    made: list[Piece] = []
    at = 0
    while at < len(given):
        phrase = _phrase(given, at)
        if phrase is None:
            phrase = _count(given, at)
        if phrase is None:
            phrase = [given[at]], at + 1
        made += phrase[0]
        at = phrase[1]
    return _spread(made)


def shown(value: float) -> str:
    """152.0 as "152", 2.5 as "2.5"."""
    return str(int(value)) if value == int(value) else f"{value:g}"


def _text(given: list[Piece], at: int) -> str:
    return given[at].text if 0 <= at < len(given) else ""


def _number(first: Piece, last: Piece, value: float) -> Piece:
    return first.to(last, shown(value), value)


def _phrase(given: list[Piece], at: int) -> tuple[list[Piece], int] | None:
    """Set phrases that hold a number without naming it: "a foot and a half", "a couple of feet", a dozen."""
    words = [_text(given, at + step) for step in range(5)]
    article = words[0] in ("a", "an", "one", "1")
    if article and words[1] in _LENGTHS and words[2:5] == ["and", "a", "half"]:
        return [_number(given[at], given[at + 4], 1.5), given[at + 1]], at + 5
    if words[0] == "half" and words[1] in ("a", "an") and words[2] in _LENGTHS:
        return [_number(given[at], given[at + 1], 0.5)], at + 2
    skip = 1 if words[0] == "a" else 0
    if words[skip] == "couple":
        of = 1 if words[skip + 1] == "of" else 0
        if words[skip + 1 + of] in _COUPLED:
            return [_number(given[at], given[at + skip + of], 2)], at + skip + of + 1
        if words[skip + 1 + of] == "hundred":
            return [_number(given[at], given[at + skip + of + 1], 200)], at + skip + of + 2
    if words[:3] == ["half", "a", "dozen"]:
        return [_number(given[at], given[at + 2], 6)], at + 3
    if words[:2] == ["a", "dozen"]:
        return [_number(given[at], given[at + 1], 12)], at + 2
    if words[0] in ("three", "3") and words[1] in ("quarter", "quarters"):
        return [given[at].to(given[at + 1], "three-quarter")], at + 2
    return None


def _count(given: list[Piece], at: int) -> tuple[list[Piece], int] | None:
    """A cardinal, an ordinal, a plural ("fives") or a number with a verb's tail ("two's the one")."""
    piece = given[at]
    ordinal = _ordinal(given, at)
    if ordinal:
        return ordinal
    if piece.text in PLURALS or (piece.text[0].isdigit() and piece.text.endswith("s")):
        stem = PLURALS.get(piece.text) or float(piece.text.rstrip("s").rstrip("'"))
        if piece.text.endswith("'s") and _text(given, at - 1) != "par":
            return [replace(piece, text=shown(stem), value=stem), replace(piece, text="is")], at + 1
        return [replace(piece, text=f"{shown(stem)}s", value=stem)], at + 1
    for tail, verb in _TAILS.items():
        stem_word = piece.text.removesuffix(tail)
        if stem_word != piece.text and (small := _simple(stem_word)) is not None and stem_word != "one":
            return [replace(piece, text=shown(small), value=small), replace(piece, text=verb)], at + 1
    cardinal = _cardinal(given, at)
    if cardinal is None:
        return None
    value, end = cardinal
    if end == at + 1 and piece.text == "one" and not _counts(given, at):
        return None
    if value < 100 and [_text(given, end + step) for step in range(2)] == ["and", "a"]:
        part = {"half": 0.5, "quarter": 0.25}.get(_text(given, end + 2))
        if part:
            value, end = value + part, end + 3
    elif _text(given, end) in (".5", ".25", ".75"):
        value, end = value + float(given[end].text), end + 1
    return [_number(piece, given[end - 1], value)], end


def _ordinal(given: list[Piece], at: int) -> tuple[list[Piece], int] | None:
    text = given[at].text
    if text in ORDINALS:
        return [replace(given[at], text=nth(ORDINALS[text]), value=ORDINALS[text])], at + 1
    if text[0].isdigit() and text[-2:] in ("st", "nd", "rd", "th"):
        return [replace(given[at], value=float(text[:-2]))], at + 1
    following = ORDINALS.get(_text(given, at + 1), 99)
    if text in TENS and following < 10 and given[at + 1].joined:
        value = TENS[text] + following
        return [given[at].to(given[at + 1], nth(value), value)], at + 2
    return None


def nth(value: int) -> str:
    """7 as "7th"."""
    ending = "th" if 10 < value % 100 < 14 else {1: "st", 2: "nd", 3: "rd"}.get(value % 10, "th")
    return f"{value}{ending}"


def _simple(text: str) -> float | None:
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


def _small(given: list[Piece], at: int) -> tuple[float, int] | None:
    """A number under a hundred said in one breath, or one run of digits; and where it ends."""
    text = _text(given, at)
    value = _simple(text)
    if value is None:
        return None
    unit = UNITS.get(_text(given, at + 1))
    if text in TENS and unit and not (_text(given, at + 2) in CLUB_NOUNS and unit > 1):
        return value + unit, at + 2
    return value, at + 1


def _cardinal(given: list[Piece], at: int) -> tuple[float, int] | None:
    article = _text(given, at) == "a"
    begin = at + 1 if article else at
    if _text(given, begin) == "buck" and (after := _small(given, begin + 1)) and after[0] < 100:
        return 100 + after[0], after[1]
    head = (1.0, begin) if _text(given, begin) in ("hundred", "thousand") else _small(given, begin)
    if head is None or (article and head[1] != begin):
        return None
    value, end = head
    if _text(given, end) == "thousand":
        rest = _cardinal(given, end + 1)
        return (value * 1000 + rest[0], rest[1]) if rest and rest[0] < 1000 else (value * 1000, end + 1)
    if _text(given, end) == "hundred":
        return _below_hundred(given, end + 1, value * 100)
    if end == begin + 1 and given[begin].text.isdigit() and 100 <= value <= 900 and value % 100 == 0:
        return _below_hundred(given, end, value)
    if 1 <= value <= 9 and end == begin + 1:
        return _yardage(given, begin, value) or (value, end)
    return value, end


def _below_hundred(given: list[Piece], at: int, hundreds: float) -> tuple[float, int]:
    """What follows "four hundred": "and ten", "ten", or nothing that belongs to it."""
    begin = at + 1 if _text(given, at) == "and" else at
    rest = _small(given, begin)
    if rest is None or not 1 <= rest[0] < 100 or _text(given, rest[1]) in CLUB_NOUNS | {"hundred"}:
        return hundreds, at
    if _text(given, begin) == "one" and begin > at and _text(given, begin + 1) in ("of", "more"):
        return hundreds, at
    return hundreds + rest[0], rest[1]


def _yardage(given: list[Piece], at: int, head: float) -> tuple[float, int] | None:
    """ "one fifty two", "five-ten", "one oh four": a unit that stands for hundreds, or None."""
    before = _text(given, at - 1)
    if before == "par":
        return None
    if _text(given, at + 1) in ("oh", "o", "zero", "0") and (unit := _simple(_text(given, at + 2))):
        return (head * 100 + unit, at + 3) if unit < 10 else None
    rest = _small(given, at + 1)
    if rest is None:
        return None
    tail, end = rest
    after = _text(given, end)
    if (
        given[at].text.isdigit()
        and given[at + 1].text.isdigit()
        and 2 <= head
        and tail < 10
        and end == at + 2
    ):
        # A listener drops the "-ty" of "thirty five feet" and keeps two digits.
        return (head * 10 + tail, end) if after in ("feet", "foot", "yards", "metres") else None
    if not 10 <= tail < 100 or tail != int(tail) or after in SHORT_UNITS | CLUB_NOUNS | {"hundred"}:
        return None
    if given[at].text.isdigit() and given[at + 1].text.isdigit():
        # A listener's own digits: "1 52" is a yardage only where the talk around it says so.
        told = given[at + 1].joined or before in _YARDAGE_BEFORE or after in _YARDAGE_AFTER
        if not told or head > 6:
            return None
    return head * 100 + tail, end


def _counts(given: list[Piece], at: int) -> bool:
    """Whether a lone "one" counts something, by its neighbours."""
    before, after = _text(given, at - 1), _text(given, at + 1)
    further = _text(given, at + 2)
    if before in _NOT_COUNTED:
        return after in ("over", "under", "putt") and before not in ("this", "that", "which")
    if before in _COUNTS or after in _COUNTED or before == "par":
        return True
    if after in ("or", "to") and (_simple(further) or further in ("play", "go", "par")):
        return True
    if before in (COMMA, "and", "or") and _simple(_text(given, at - 2)):
        return True
    begins = at == 0 or before in ENDS
    return begins and (after in ENDS or (after == "is" and "par" in (_text(given, at + 3), further)))


def _spread(given: list[Piece]) -> list[Piece]:
    """What digits need after all: "7i", "10m", "157 iron" as "150 7 iron", "par 4410", "1:43"."""
    made: list[Piece] = []
    for at, piece in enumerate(given):
        before, after = _text(given, at - 1), _text(given, at + 1)
        if piece.joined and piece.text in _ABBREVIATED and before[:1].isdigit():
            made.append(replace(piece, text=_ABBREVIATED[piece.text], joined=False))
        elif ":" in piece.text and len(piece.text) > 1:
            hours, minutes = piece.text.split(":")
            yards = int(hours) * 100 + int(minutes)
            told = 1 <= int(hours) <= 6 and (before in _YARDAGE_BEFORE or after in _YARDAGE_AFTER)
            made.append(replace(piece, text=str(yards), value=yards) if told else piece)
        elif piece.value and piece.value > 9 and after in CLUB_NOUNS and piece.value % 10 > 1:
            made += _two(piece, piece.value - piece.value % 10, piece.value % 10)
        elif piece.value and before == "par" and 3000 < piece.value < 6700:
            made += _two(piece, piece.value // 1000, piece.value % 1000)
        else:
            made.append(piece)
    return made


def _two(piece: Piece, first: float, second: float) -> list[Piece]:
    return [replace(piece, text=shown(value), value=value) for value in (first, second)]
