"""A transcript as sentences of golf talk: numbers as digits, spellings made one, misheard words put right.

Text is lower case; number words are digits ("7", "2.5", "7th", "par 5s"), a lone "one" only where it counts
something; compounds are apart ("7 iron", "up and down"); commas, dashes and dots of hesitation are ",".
"two's" is "2 is"; metres, yards and feet have one spelling each. Every token knows the words it came from.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

from reviewkit.language import by_ear
from reviewkit.language.clauses import parted
from reviewkit.language.fillers import without_fillers
from reviewkit.language.fragments import whole
from reviewkit.language.lexicon import load
from reviewkit.language.loops import without_loops
from reviewkit.language.number_words import LENGTHS, simple, words_of
from reviewkit.language.numbers import numbers
from reviewkit.language.pieces import COMMA, ENDS, Piece, pieces
from reviewkit.language.repair import Lexicon
from reviewkit.language.silences import without_silences
from reviewkit.model import Segment, Transcript, Word

PAUSE_S = 0.5
"""A silence that ends a sentence where no mark does."""
BARE_PAUSE_S = 0.45
"""The same where it is written down without full stops."""
BARE_WORDS, BARE_BESIDE = 40, 12
"""So many words without one are more than anybody says in a sentence; so many where it goes on like that."""
COMMA_NEAR = 20
"""Words around a comma in which the listener writes commas where they belong."""
BREATH_S = 0.05
COUNTING_PAUSE_S = 0.9
_LEADING = frozenset(
    words_of(
        "a an the my our and at by from half i i'm i've i'd into onto it's that's is or par than was with"
    )
)
"""Words that stand before others."""
COMMA_PAUSE_S = 0.2
"""The same after a comma there."""


@dataclass(frozen=True, slots=True)
class Token:
    """`first` and `last` are word indices, both included; times in seconds.

    `value` is set for numbers (152, 2.5) and ordinals (7th is 7). `repaired` holds the words as heard when a
    repair changed them, else nothing.
    """

    text: str
    value: float | None
    first: int
    last: int
    start_s: float
    end_s: float
    repaired: str = ""


@dataclass(frozen=True, slots=True)
class Sentence:
    """Tokens said in one go. `text` joins them with blanks, `starts` are their character offsets in it.

    `segment` is the index of the transcript's segment in which it began. `goes_on` where no more than a comma
    is written behind it.
    """

    tokens: tuple[Token, ...]
    text: str
    starts: tuple[int, ...]
    segment: int
    goes_on: bool = False

    def with_next(self, other: Sentence) -> Sentence:
        """Both in one, a comma between them."""
        tokens = (*self.tokens[:-1], replace(self.tokens[-1], text=COMMA), *other.tokens)
        return of_tokens(tokens, self.segment)


def of_tokens(tokens: tuple[Token, ...], segment: int, goes_on: bool = False) -> Sentence:
    """The sentence that the tokens make."""
    starts, at = [], 0
    for token in tokens:
        starts.append(at)
        at += len(token.text) + 1
    return Sentence(tokens, " ".join(token.text for token in tokens), tuple(starts), segment, goes_on)


def sentences(transcript: Transcript, lexicon: Lexicon | None = None) -> tuple[Sentence, ...]:
    """The talk as sentences, in order. Linear in the number of words."""
    return said(transcript.segments, load() if lexicon is None else lexicon)


@lru_cache(maxsize=2)
def said(spoken: tuple[Segment, ...], lexicon: Lexicon) -> tuple[Sentence, ...]:
    """`sentences` of a transcript's segments, kept for the next one who asks."""
    words, segments = _words(spoken)
    mended = parted(by_ear.mended(lexicon.mend(_apart(words, segments, lexicon.spelling))))
    return tuple(_sentence(run, words, segments) for run in _runs(mended))


def as_heard(spoken: tuple[Segment, ...], spelling: Mapping[str, str]) -> list[Piece]:
    """The words' pieces with numbers as digits and sentences' ends as marks, before any is put right."""
    return _apart(*_words(spoken), spelling)


def _apart(words: tuple[Word, ...], segments: list[int], spelling: Mapping[str, str]) -> list[Piece]:
    marked = _with_borders(pieces(words, spelling), _borders(words, segments))
    return whole(numbers(without_fillers(without_loops(marked), words)))


def _words(spoken: tuple[Segment, ...]) -> tuple[tuple[Word, ...], list[int]]:
    """All words without what was heard in silence, and the index of the segment that each is of."""
    words = without_silences([word for segment in spoken for word in segment.words])
    return words, [index for index, segment in enumerate(spoken) for _ in segment.words]


def _borders(words: tuple[Word, ...], segments: list[int]) -> frozenset[int]:
    """Indices of words after which a sentence ends though no mark says so.

    A segment's end counts where the next word begins in upper case. Where talk goes on without full stops it
    counts unless the words run on without a breath, and a comma with a breath after it is one, too.
    """
    bare, commas = _bare(words)
    ends = set()
    for index in range(len(words) - 1):
        word, following = words[index], words[index + 1]
        gap_s = following.start_s - word.end_s
        turned = segments[index] != segments[index + 1]
        if index in bare:
            parted = word.text.endswith(",") or index not in commas
            silent = gap_s > BARE_PAUSE_S or (gap_s > COMMA_PAUSE_S and word.text.endswith(","))
            fresh = gap_s > BREATH_S or (parted and not _hangs(word.text, following.text))
        else:
            silent = gap_s > PAUSE_S
            fresh = following.text[:1].isupper() and following.text.split("'")[0] != "I"
        if (silent or (turned and fresh)) and not (index and _counting(words[index - 1 : index + 2])):
            ends.add(index)
    return frozenset(ends)


def _counting(words: Sequence[Word]) -> bool:
    """Whether three words are a count: "4, 5, 6" is said in one, however slowly."""
    if any(after.start_s - word.end_s > COUNTING_PAUSE_S for word, after in pairwise(words)):
        return False
    numbers = [simple(word.text.lower().strip(",")) for word in words]
    return all(
        now is not None and after is not None and 1 <= now < 15 and after - now in (0, 1)
        for now, after in pairwise(numbers)
    )


def _hangs(text: str, following: str) -> bool:
    """Whether nobody ends a sentence between these words: "looking at ten | metres", "half a | yard"."""
    word, after = text.lower(), following.lower().strip(".,!?")
    number = word == "hundred" or simple(word) is not None
    counted = number and (after in LENGTHS or simple(after) is not None)
    return counted or word in _LEADING


def _bare(words: tuple[Word, ...]) -> tuple[set[int], set[int]]:
    """Indices of words in long stretches without a full stop, and those of them with a comma near."""
    bare: set[int] = set()
    commas: set[int] = set()
    begun, stretches = 0, []
    for index, word in enumerate(words):
        if word.text.endswith(ENDS) or index == len(words) - 1:
            stretches.append(range(begun, index + 1))
            begun = index + 1
        elif word.text.endswith(","):
            commas.update(range(index - COMMA_NEAR, index + COMMA_NEAR))
    long = [len(stretch) > BARE_WORDS for stretch in stretches]
    for at, stretch in enumerate(stretches):
        beside = any(long[max(0, at - 1) : at + 2])
        if len(stretch) > (BARE_BESIDE if beside else BARE_WORDS):
            bare.update(stretch)
    return bare, commas


def _with_borders(given: list[Piece], borders: frozenset[int]) -> list[Piece]:
    """Put a full stop after each border word that has no mark of its own."""
    marked: list[Piece] = []
    for at, piece in enumerate(given):
        marked.append(piece)
        last = at + 1 == len(given) or given[at + 1].first > piece.last
        if last and piece.last in borders and piece.text not in ENDS:
            if piece.text == ",":
                marked[-1] = Piece(".", piece.first, piece.last, soft=True)
            else:
                marked.append(Piece(".", piece.last, piece.last))
    return marked


def _runs(given: list[Piece]) -> Iterator[list[Piece]]:
    run: list[Piece] = []
    for piece in given:
        run.append(piece)
        if piece.text in ENDS:
            yield run
            run = []
    if run:
        yield run


def _sentence(run: list[Piece], words: tuple[Word, ...], segments: list[int]) -> Sentence:
    tokens = tuple(
        Token(
            text=piece.text,
            value=piece.value,
            first=piece.first,
            last=piece.last,
            start_s=words[piece.first].start_s,
            end_s=max(words[piece.first].start_s, words[piece.last].end_s),
            repaired=piece.heard,
        )
        for piece in run
    )
    return of_tokens(tokens, segments[tokens[0].first], run[-1].soft)
