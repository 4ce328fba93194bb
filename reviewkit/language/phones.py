"""English words as the sounds they are spoken with, from how they are written.

Sounds are those of the ARPAbet, without stress. Spelling is turned into sounds by rules of my own, the
longest run of letters first, and a few words that no rule gets right. That is coarse, and enough to compare
what was heard with what may have been said: the costs of `by_ear` were counted over words spelt out by these
same rules.
"""

from __future__ import annotations

import re
from functools import lru_cache

from reviewkit.language.number_words import ORDINALS, TEENS, TENS, UNITS, words_of

SOUNDS = words_of(
    """AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z
    ZH"""
)
_WORDS = """
zero Z IY R OW; one W AH N; two T UW; three TH R IY; four F AO R; five F AY V; six S IH K S; seven S EH V
AH N; eight EY T; nine N AY N; ten T EH N; eleven IH L EH V AH N; twelve T W EH L V; thirteen TH ER T IY
N; fourteen F AO R T IY N; fifteen F IH F T IY N; sixteen S IH K S T IY N; seventeen S EH V AH N T IY N;
eighteen EY T IY N; nineteen N AY N T IY N; twenty T W EH N T IY; thirty TH ER D IY; forty F AO R T IY;
fifty F IH F T IY; sixty S IH K S T IY; seventy S EH V AH N T IY; eighty EY T IY; ninety N AY N T IY;
hundred HH AH N D R AH D; first F ER S T; second S EH K AH N D; third TH ER D; eighth EY T TH; ninth N AY
N TH; twelfth T W EH L F TH; iron AY ER N; hybrid HH AY B R AH D; wood W UH D; wedge W EH JH; driver D R
AY V ER; pitching P IH CH IH NG; would W UH D; could K UH D; should SH UH D; said S EH D; says S EH Z;
was W AA Z; of AH V; to T UW; do D UW; who HH UW; you Y UW; the DH AH; a AH; i AY; i've AY V; i'd AY D;
i'm AY M; you're Y UH R; they're DH EH R; there DH EH R; where W EH R; have HH AE V; give G IH V; come K
AH M; some S AH M; done D AH N; love L AH V; once W AH N S; our AW ER; hour AW ER; off AO F; laugh L AE
F; cough K AA F; tough T AH F; rough R AH F; enough IH N AH F; though DH OW; through TH R UW; thought TH
AO T; bought B AA T; caught K AA T; daughter D AO T ER; tire T AY ER; tired T AY ER D; fire F AY ER; wire
W AY ER; hire HH AY ER; higher HH AY ER; flyer F L AY ER; buy B AY; by B AY; my M AY; eye AY; bye B AY;
why W AY; try T R AY; dry D R AY; pie P AY; lie L AY; tie T AY; hi HH AY; high HH AY; nigh N AY; night N
AY T"""
_KNOWN = {
    word: tuple(sounds) for word, *sounds in (entry.split() for entry in _WORDS.replace("\n", " ").split(";"))
}
_SPELT = """
tion=SH AH N, sion=ZH AH N, ough=AO, augh=AO, eigh=EY, igh=AY, tch=CH, dge=JH, sch=S K, air=EH R, ear=IH
R, oor=AO R, our=AO R, are$=EH R, ire=AY ER, yre=AY ER, ore$=AO R, ure$=UH R, oh=OW, o$=OW, ^y=Y, ee=IY,
ea=IY, oo=UW, ou=AW, ow=OW, oi=OY, oy=OY, ai=EY, ay=EY, au=AO, aw=AO, oa=OW, ie=IY, ei=EY, ey=IY, ew=UW,
ue=UW, ar=AA R, or=AO R, er=ER, ir=ER, ur=ER, ch=CH, sh=SH, th=TH, ph=F, wh=W, ck=K, ng=NG, qu=K W, kn=N,
wr=R, gh=, x=K S, a=AE, e=EH, i=IH, o=AA, u=AH, y=IY, b=B, c=K, d=D, f=F, g=G, h=HH, j=JH, k=K, l=L, m=M,
n=N, p=P, q=K, r=R, s=S, t=T, v=V, w=W, z=Z"""
_RULES = [
    (letters.strip(), tuple(sounds.split()))
    for letters, _, sounds in (entry.partition("=") for entry in _SPELT.replace("\n", " ").split(","))
]
_SOUND_OF = dict(_RULES)
_LONG = {"a": "EY", "e": "IY", "i": "AY", "o": "OW", "u": "UW", "y": "AY"}
_SOFT = {"c": ("S",), "g": ("JH",)}
_NEXT = re.compile(
    r"(?P<long>[aeiouy])(?P<then>[bcdfgklmnpstvz])e(?=$|[sd]$)"  # "byte", "hoped"
    r"|(?P<soft>c)(?=[eiy])|(?P<mute>(?<=..)e$|(?P<twice>[^eo])(?=(?P=twice)))|"
    + "|".join(f"(?P<_{at}>{letters})" for at, (letters, _) in enumerate(_RULES))
)
_ENDINGS = (
    ("'s", ("Z",)),
    ("s", ("Z",)),
    ("ed", ("D",)),
    ("ing", ("IH", "NG")),
    ("er", ("ER",)),
    ("y", ("IY",)),
)
_NUMBER = re.compile(r"(\d+)(st|nd|rd|th)?")
_DIGITS = {value: word for word, value in UNITS.items()} | {0: "zero"}
_SIMPLE = (
    _DIGITS | {int(value): word for table in (TENS, TEENS) for word, value in table.items()} | {40: "forty"}
)
_NTH = {value: word for word, value in ORDINALS.items()}


def sounds(text: str) -> tuple[str, ...]:
    """The sounds of a piece of talk: of "5 iron" F AY V AY ER N; of marks and signs none."""
    return tuple(sound for word in text.split() for part in _spoken(word) for sound in _sounds(part))


def _spoken(word: str) -> tuple[str, ...]:
    """A number in words, as golfers say it: 152 is "one fifty two"; every other word as it is."""
    found = _NUMBER.fullmatch(word)
    if not found:
        return (word,)
    value = int(found.group(1))
    if found.group(2) and value in _NTH:
        return (_NTH[value],)
    return _number(value)


def _number(value: int) -> tuple[str, ...]:
    if value in _SIMPLE:
        return (_SIMPLE[value],)
    if value < 100:
        return (_SIMPLE[value // 10 * 10], _SIMPLE[value % 10])
    if value >= 1000:
        return tuple(_DIGITS[int(digit)] for digit in str(value))
    rest = value % 100
    if rest == 0:
        return (_DIGITS[value // 100], "hundred")
    return (_DIGITS[value // 100], *(("oh",) if rest < 10 else ()), *_number(rest))


@lru_cache(maxsize=16384)
def _sounds(word: str) -> tuple[str, ...]:
    if word in _KNOWN:
        return _KNOWN[word]
    for ending, more in _ENDINGS:
        if word.endswith(ending) and word.removesuffix(ending) in _KNOWN and len(word) > len(ending) + 2:
            return _KNOWN[word.removesuffix(ending)] + more
    letters = re.sub(r"[^a-z]", "", word)
    if letters in _KNOWN:
        return _KNOWN[letters]
    found: list[str] = []
    for match in _NEXT.finditer(letters):
        if match["long"]:
            found += (_LONG[match["long"]], *_SOFT.get(match["then"], _SOUND_OF[match["then"]]))
        elif match["soft"]:
            found.append("S")
        elif not match["mute"] and match.lastgroup:
            found += _RULES[int(match.lastgroup[1:])][1]
    return tuple(found)
