"""Lengths whose hundreds were heard as a word that sounds like them: "for 45 playing 470" is a hole of 445.

What stands around says so: a hole's introduction before or behind it, a club taken to it, a target.
"""

from __future__ import annotations

from collections.abc import Collection

from reviewkit.language.number_words import CLUB_NOUNS, LIKE_PAR, LONG_UNITS, words_of
from reviewkit.language.pieces import BREAKS, COMMA, ENDS, Piece, text_at

_SOUNDS = {"to": 2, "too": 2, "do": 2, "free": 3, "for": 4, "fore": 4}
GOALS = ("the", "go", "pin", "flag", "home", "a")
"""Behind a length and "to": what is left to."""
TARGETS = ("pin", "flag", "stick", "hole", "green", "front", "middle", "cup", "flagstick", "centre")
OF_A_HOLE = words_of(
    """it's par stroke index uphill downhill dogleg doglegs straight straightaway into downwind all
    slight slightly bends water bunkers trees playing and driver this yards metres from off"""
)
_BEFORE_HOLE = (*BREAKS, "it's", "it", "is", "hole", "at", "one", "about")
BEFORE_LEFT = (*BREAKS, *words_of("so now i've got have it's still had me about leaves is that's"))
_I_HAVE = ("i", "we", "i've", "we've", "so", "now")
"""With "got" before them, and nothing behind: "so I got to 35, and it's swamp" is 235 left."""
_REACHES = ("carry", "carries", "total", "sorry")
_STARTED = ("it", "it's", "i", "i'm", "i've", "to", "left", "from", "of", "out", "in")
"""Behind "for 35 yards" these tell of a stroke, not of a hole."""
_AIMS = words_of(
    "need needs needed want wants par birdie bogey double eagle putt putts make makes made get gets does do "
    "would will shoot shot total card round i'd i'll i've"
)
_SIGNS = ("sign", "board", "card", "plate", "scorecard", "whites", "yellows", "reds", "blues", "tips")
_LIES = ("downhill", "uphill", "downwind", "dogleg")
_HALF_PAR = ("tar", "car", "pair", "bark")
"""How "par" is heard besides, where a length before it says that it is one."""
_SOON = 6
"""Words after "par 5" within which its length is told by a number alone."""
_PAR_NEAR = 10
"""Words behind "par 4" within which the hole's length is told."""
_CLUB_NEAR = 5
"""Words behind a length within which the club for it is told."""


def headed(given: list[Piece], at: int) -> tuple[float, int]:
    """The length that begins with a word at `at`, and where it ends; 0 where none does."""
    rest = given[at + 1].value if at + 1 < len(given) else None
    if rest is None or not text_at(given, at + 1).isdigit() or not 10 <= rest < 200:
        return 0.0, 0
    if _par_again(given, at) and rest < 100:
        return 400.0 + rest, at + 2
    hundreds = _SOUNDS.get(given[at].text, 0)
    if hundreds == 2 and rest < 100:
        told = _left(given, at) or text_at(given, at - 1) in _REACHES or _playing(given, at)
    elif hundreds == 3 and rest < 100:
        told = text_at(given, at - 1) in ("it's", "that's", "is") or _playing(given, at)
    elif hundreds == 4:
        told = (_doubled if rest >= 100 else _of_a_hole)(given, at) or _described(given, at)
    else:
        told = False
    if hundreds == 4 and rest % 10 == 0 and not told and _then_par(given, at + 3):
        # "The long one, for seventy to par five": 472.
        unit = _SOUNDS.get(text_at(given, at + 2), 0)
        return (400.0 + rest + unit, at + 3) if unit else (0.0, 0)
    # "For 188 yards": the hundreds were heard twice, once as a word.
    return (hundreds * 100.0 + rest % 100, at + 2) if told else (0.0, 0)


def _then_par(given: list[Piece], at: int) -> bool:
    return par_at(given, at + 1) or (text_at(given, at) == COMMA and par_at(given, at + 2))


def _par_again(given: list[Piece], at: int) -> bool:
    """ "Par 4, par 38" is a hole of 438."""
    return given[at].text == "par" == text_at(given, at - 3) and text_at(given, at - 1) == COMMA


def _left(given: list[Piece], at: int) -> bool:
    """ "Got to 35 to the hole", "that's to 10, 4 iron": what is left, or a club taken to it."""
    before = text_at(given, at - 1)
    after = [text_at(given, at + step) for step in (2, 3, 4)]
    left = (after[0] in ("left", "out") and after[1] != "of") or after[:2] == ["to", "go"]
    left = left or (after[0] == "to" and after[1] in GOALS and after[2] in TARGETS)
    club = after[1] in CLUB_NOUNS and (after[0].isdigit() or after[0] in _SOUNDS)
    had = before == "got" and text_at(given, at - 2) in _I_HAVE and after[0] in BREAKS
    had = had and int(text_at(given, at + 1)) >= 20
    return (left and before in BEFORE_LEFT) or had or (club and before in ("that's", "it's"))


def _playing(given: list[Piece], at: int) -> bool:
    """ "For 45 playing 470", "to 10 off the whites", "it's 4 12, par 4": what follows is said of a hole."""
    before = text_at(given, at - 1)
    after = [text_at(given, at + step) for step in (2, 3, 4)]
    four = _SOUNDS[given[at].text] == 4
    if before not in _BEFORE_HOLE and not (four and _numbered(given, at - 1)):
        return False
    if after[0] == COMMA or (after[0] in ENDS and four):
        return after[1] == "par" and after[2].isdigit()
    if after[0] in ("off", "from"):
        return after[1] in ("the", "our", "these", "those", "my")
    if after[0] in LONG_UNITS:
        return four and before != "it" and after[1] not in _STARTED
    return after[0] in ("playing", "dogleg") or (after[0] == "par" and after[1].isdigit())


def _of_a_hole(given: list[Piece], at: int) -> bool:
    """ "Par 5, downwind for once, for 88," and whatever else tells that "for" and two digits are a hole's."""
    alone = text_at(given, at + 2) in BREAKS and _after_par(given, at)
    return alone or _opens_with_a_club(given, at) or _playing(given, at)


def _numbered(given: list[Piece], at: int) -> bool:
    """Whether a hole's or a par's number stands at `at`."""
    number = given[at].value if at >= 0 else None
    return number is not None and number <= 18 and text_at(given, at - 1) in (*BREAKS, "par", "hole")


def _opens_with_a_club(given: list[Piece], at: int) -> bool:
    """ "For 91, hit my 3 wood off the tee": a hole's length opens the talk, and a club is taken to it."""
    opens = text_at(given, at - 1) in ("", *ENDS) and text_at(given, at + 2) == COMMA
    taken = {text_at(given, at + step) for step in range(3, 3 + _CLUB_NEAR)}
    return opens and not taken.isdisjoint({*CLUB_NOUNS, "driver", "tee"})


def _doubled(given: list[Piece], at: int) -> bool:
    """ "The 9th, for 188 yards" for one of 488."""
    before, unit, beyond = (text_at(given, at + step) for step in (-1, 2, 3))
    opens = before in BREAKS or (before in ("4", "5") and text_at(given, at - 2) in ("par", "per"))
    told = unit in LONG_UNITS or text_at(given, at - 2) in ("par", "per")
    told = told or (unit in BREAKS and (beyond in OF_A_HOLE or beyond == "for"))
    told = told or (unit in BREAKS and _names_a_hole(given, at - 2))
    # "It's a 6 iron. For 129. And it's short" tells what the club is for.
    club = before in BREAKS and text_at(given, at - 2) in (*CLUB_NOUNS, "wedge", "driver")
    return opens and told and not club


def _after_par(given: list[Piece], at: int) -> bool:
    """ "Par 5, downwind for once," right before, with no other number since."""
    if text_at(given, at - 1) != COMMA:
        return False
    for back in range(2, 2 + _SOON):
        if text_at(given, at - back).isdigit():
            return text_at(given, at - back) in ("4", "5") and text_at(given, at - back - 1) == "par"
    return False


def _names_a_hole(given: list[Piece], at: int) -> bool:
    """Whether "the 4th" or "hole 4" opens the talk right before."""
    number = text_at(given, at)
    if number[:-2].isdigit() and number[-2:] in ("st", "nd", "rd", "th"):
        return text_at(given, at - 1) in (*BREAKS, "the", "so")
    return number.isdigit() and text_at(given, at - 1) == "hole"


def _described(given: list[Piece], at: int) -> bool:
    """Whether it is a hole by how it lies, by the driver taken to it, its sign or its par.

    "A par 5 that runs back down to the beach for 78 and" is a length, "a bogey does for 78" a total. So are
    "the hardest one for 30, driver", "for 55 downhill" and "it says for 198 on the sign".
    """
    after = text_at(given, at + 2)
    behind = at + 2 + (after in LONG_UNITS)
    if after in _LIES or _to_be_driven(given, behind) or _on_a_sign(given, behind):
        return True
    ended = after in (*BREAKS, "and", *LONG_UNITS)
    return ended and (_behind_a_par(given, at) or _before_a_par(given, at))


def _behind_a_par(given: list[Piece], at: int) -> bool:
    """Whether a par stands before, and how the hole looks behind it, not what somebody needs there."""
    least = 2 if text_at(given, at - 1) == COMMA else 3
    back = next((back for back in range(least, 3 + _PAR_NEAR) if par_at(given, at - back)), 0)
    between = [text_at(given, place) for place in range(at - back + 1, at)]
    return back > 0 and not any(word.isdigit() or word in _AIMS for word in between)


def _to_be_driven(given: list[Piece], at: int) -> bool:
    """Whether a driver is named at `at`, right behind a length."""
    return text_at(given, at) in BREAKS and text_at(given, at + 1) == "driver"


def _on_a_sign(given: list[Piece], at: int) -> bool:
    return text_at(given, at) in ("on", "off") and text_at(given, at + 2) in _SIGNS


def _before_a_par(given: list[Piece], at: int) -> bool:
    """Whether a par is told right behind the number that follows `at`: "the last for 168 yards, a par 5".

    "13 for 102, par 4" is another reading's.
    """
    words = (*LIKE_PAR, *_HALF_PAR)
    return not text_at(given, at - 1).isdigit() and any(
        par_at(given, at + step, words) for step in range(3, 7)
    )


def par_at(given: list[Piece], at: int, words: Collection[str] = LIKE_PAR) -> bool:
    """Whether the number of a par stands at `at`, behind one of these words for "par"."""
    return text_at(given, at) in ("3", "4", "5") and text_at(given, at - 1) in words
