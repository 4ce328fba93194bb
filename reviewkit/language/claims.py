"""What is said of the score, settled from its context: whose it is, made or only meant, and what it counts.

The rules of score.toml find candidates, kinds that end in "?". A candidate takes its colour from the words of
its sentence: who was last named before it, what its clause hopes, needs or remembers. A number by itself, and
"for par" or "for a five", are read by what stands before them: a putt still to be holed, or one that was.
"""

from __future__ import annotations

import bisect
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from reviewkit.language.put_right import DENIED, STANDINGS, of_putts, put_right
from reviewkit.language.tokens import Sentence
from reviewkit.model import Mention

CANDIDATE = "?"
SCORES = frozenset(
    {
        *("score_word", "hole_to_par", "strokes", "count", "running", "total", "nine", "par_total"),
        *("points", "putt_for", "bare", "for_word", "for_strokes"),
        *("played", "to_play", "on_tee", "about_hole", "mended"),
    }
)
COLOURS = frozenset({"who", "meant", "past", "mend", "denied", "slack", "done", "length", "tally"})
PLAIN = frozenset({"played", "to_play", "on_tee", "par_total"})
"""Kinds that hold whether or not the clause hopes for something."""
TALLIED = frozenset({"running", "total", "played", "to_play"})
"""Kinds that tell of the round."""
SURE = ("finished", "holed", "sank", "drained", "made", "clean")
"""Words for a ball holed that stay so, whatever length is told behind them."""
AIMS = frozenset({"for_word", "for_strokes", "putt_for"})
MARKS = frozenset({",", ".", "?", "!"})
CLAUSE_ENDS = MARKS | {"but", "so", "because"}
SUBJECTS = frozenset(
    {"i", "i'm", "i've", "it", "it's", "that", "that's", "there's", "then", "he", "she", "we"}
)
"""Words with which "and" begins a clause of its own."""

ENDS_IT = frozenset({"holed", "tap", "putts", "updown"})
"""Mentions of strokes after which a hole is done with."""
HOLE_IN_ONE = "hole in one"
HOLED_WITHIN = 14
"""A number by itself is the score when a ball was holed or missed within so many words before it."""
MOST_BARE = 9
"""A larger number by itself is a hole's."""
MEANT_WITHIN = 9
"""A "need" or "last week" colours so many words after it, in talk written down without commas."""
BACK_WITHIN = 4
"""A "last week" colours so many words before it."""
OTHER_WITHIN = 18
"""Another player's turn reaches so many words on, within the sentence."""
_IN_SO_MANY = "and so many, at the end of a putt"
"""The rule for what may be "in. Five": a score where a putt's length was told."""
_AT_ONCE = 2
"""Words from "missed it" to what that was for: "missed it for par", not "missed, so that is for a bogey"."""
_FOR_ME = 2
"""Words from a score to the "me" of "for me"."""


@dataclass(frozen=True, slots=True)
class _Context:
    """One sentence's candidates and colours, with the clause of every word, and the words before it."""

    candidates: tuple[Mention, ...]
    colours: tuple[Mention, ...]
    clause_starts: tuple[int, ...]
    """Word index at which each clause begins."""

    def clause(self, word: int) -> int:
        return bisect.bisect_right(self.clause_starts, word)

    def before(self, mention: Mention, kind: str) -> Mention | None:
        """The last colour of a kind that begins before `mention` does."""
        found = [c for c in self.colours if c.kind == kind and c.first < mention.first]
        return found[-1] if found else None

    def reaching(self, mention: Mention, kind: str) -> list[Mention]:
        """Colours of a kind in the same clause, and those that reach to the end of their sentence."""
        own = self.clause(mention.first)
        return [
            colour
            for colour in self.colours
            if colour.kind == kind
            if self.clause(colour.first) == own
            or (colour.unit == "sentence" and colour.first < mention.first)
        ]


def claims(sentences: Sequence[Sentence], told: Sequence[Sequence[Mention]]) -> list[Mention]:
    """Claims about the score in order of their first word. Names of partners read `partner` in the sentences.

    Kinds and values are told in rules/score.toml; `running` and `hole_to_par` come with their sign. `told`
    are each sentence's mentions by the whole rule book, as whatever holes a ball finishes the hole.
    """
    found: list[Mention] = []
    mends: list[Mention] = []
    ends: list[int] = []
    done = putted = to_hole = -HOLED_WITHIN
    for sentence, mentions in zip(sentences, told, strict=True):
        done_so = [replace(m, kind="done?", value="holed") for m in mentions if m.kind in ENDS_IT]
        read = [m for m in mentions if m.kind.endswith(CANDIDATE)]
        context = _context(sentence, [*read, *done_so])
        for candidate in context.candidates:
            if _said_again(candidate, next((c for c in reversed(found) if c.kind != "mended"), None)):
                continue
            settled = _settle(candidate, context, done, to_hole)
            if settled is not None:
                found.append(settled)
        putted = max((m.last for m in mentions if m.kind == "putts"), default=putted)
        mends += [c for c in context.colours if c.kind == "mend" and not of_putts(c, putted, found)]
        done = max((c.last for c in context.colours if c.kind == "done"), default=done)
        ends.append(done)
        to_hole = max((c.last for c in context.colours if c.kind == "length"), default=to_hole)
    return put_right(sorted(found, key=lambda mention: (mention.first, mention.last)), mends, ends)


def _said_again(candidate: Mention, before: Mention | None) -> bool:
    """ "Five over! Five!" is the standing again, and no score."""
    if before is None:
        return False
    told = before.kind == "running" and candidate.kind == "bare" and candidate.first == before.last + 1
    return told and candidate.value in (before.value, -float(before.value or 0))


def _context(sentence: Sentence, found: Sequence[Mention]) -> _Context:
    named = [replace(mention, kind=mention.kind.removesuffix(CANDIDATE)) for mention in found]
    starts = [sentence.tokens[0].first]
    # A mark shares the index of the word it is written to.
    starts += [token.first + (token.text in MARKS) for token in sentence.tokens if token.text in CLAUSE_ENDS]
    joined = [
        one.first for one, two in pairwise(sentence.tokens) if one.text == "and" and two.text in SUBJECTS
    ]
    starts = sorted({*starts, *joined})
    by_word = sorted(named, key=lambda mention: (mention.first, mention.last))
    aims = [mention for mention in by_word if mention.kind in AIMS]
    scores = [mention for mention in by_word if mention.kind in SCORES and not _within(mention, aims)]
    # "For par" names a score, but tells of none.
    colours = tuple(m for m in by_word if m.kind in COLOURS and not (m.kind == "done" and _within(m, aims)))
    return _Context(tuple(scores), colours, tuple(starts))


def _within(mention: Mention, aims: Sequence[Mention]) -> bool:
    """Whether a "birdie" is but part of "for birdie"."""
    plain = mention.kind in ("score_word", "strokes", "bare", "done")
    return plain and any(aim.overlaps(mention) for aim in aims)


def _settle(candidate: Mention, context: _Context, done: int, to_hole: int) -> Mention | None:
    """The candidate as a claim, or None where it turns out to be none.

    `done` and `to_hole` are the last words before this sentence of a hole done with and of a putt's length.
    """
    value = 1 if candidate.value == "one" else candidate.value
    if not isinstance(value, int | float):
        return None
    claim = replace(candidate, value=value, mood=candidate.mood or _mood(candidate, context))
    if claim.kind in ("running", "hole_to_par"):
        negative = claim.unit in ("under", "minus", "good")
        claim = replace(claim, value=-value if negative else value, unit="")
    if claim.kind == "on_tee":
        claim = replace(claim, kind="played", value=value - 1, unit="hole")
    if claim.kind in ("for_word", "for_strokes"):
        return _settled_for(claim, context, done, to_hole)
    if claim.kind == "bare":
        return _settled_bare(claim, context, max(done, to_hole) if claim.rule == _IN_SO_MANY else done)
    if claim.rule in ("so many", "for so many") and value > MOST_BARE:
        return None
    if claim.kind == "strokes" and value == 1 and claim.rule != HOLE_IN_ONE:
        return replace(claim, kind="count", unit="lying", weight=0.6)
    if context.reaching(candidate, "slack"):
        claim = replace(claim, weight=claim.weight * 0.8)
    return claim


def _mood(candidate: Mention, context: _Context) -> str:
    """ "other", "plan", "past", "not" or plain, from the words around a candidate."""
    if candidate.kind in STANDINGS and any(
        c.kind == "denied" and c.overlaps(candidate) for c in context.colours
    ):
        return DENIED
    past = [c for c in context.reaching(candidate, "past") if _reaches(c, candidate, c.value == "past")]
    if any(c.value == "counted" for c in past) and candidate.kind in ("score_word", "strokes"):
        return "past"
    past = [c for c in past if c.value != "counted"]
    if past and past[-1].value != "now":
        return str(past[-1].value)
    named = [c for c in context.colours if c.kind == "who" and c.first <= candidate.last]
    if _for_me(candidate, context):
        named = []
    other = named and named[-1].value == "other" and candidate.first - named[-1].last <= OTHER_WITHIN
    if other and not _added_up(candidate, named, context):
        return "other"
    if candidate.kind in PLAIN:
        return ""
    meant = [c for c in context.reaching(candidate, "meant") if _reaches(c, candidate, c.value == "around")]
    holed = context.before(candidate, "done")
    if holed is not None and holed.value == "holed":
        # A ball holed since then makes a deed of what was meant.
        meant = [c for c in meant if c.unit or c.first > holed.last or c.value == "around"]
    return "plan" if meant else ""


def _added_up(candidate: Mention, named: Sequence[Mention], context: _Context) -> bool:
    """ "He's a generous man, so that's 2 over through 3": my card; "he made a 5, so that's 2 over" is his."""
    tally = context.before(candidate, "tally")
    if tally is None or tally.first < named[-1].first or candidate.kind not in TALLIED:
        return False
    his = (c for c in context.candidates if named[0].first <= c.first < tally.first)
    return not any(c.kind not in PLAIN for c in his)


def _for_me(candidate: Mention, context: _Context) -> bool:
    """ "Seven for Bea, and a seven for me too": mine, whoever was named before."""
    return any(
        c.kind == "who" and c.value == "me" and c.first - candidate.last == _FOR_ME and c.text == "me"
        for c in context.colours
    )


def _reaches(colour: Mention, candidate: Mention, back: bool) -> bool:
    """Whether a colour is near enough before a candidate or, where it may colour back, just after it."""
    if colour.unit == "sentence":
        return True
    if colour.first <= candidate.last:
        return candidate.first - colour.last <= MEANT_WITHIN
    return back and colour.first - candidate.last <= BACK_WITHIN


def _settled_for(claim: Mention, context: _Context, done: int, to_hole: int) -> Mention:
    """ "for par": the score when a ball was holed before it, else what the putt is for.

    "Missed it for par" tells what it was for, too.
    """
    holed = context.before(claim, "done")
    length = context.before(claim, "length")
    last_done = holed.last if holed else done
    last_length = length.last if length else to_hole
    here = holed if holed and context.clause(holed.first) == context.clause(claim.first) else None
    if here and here.value == "missed" and claim.first - here.last <= _AT_ONCE:
        return replace(claim, kind="putt_for", mood=DENIED)
    told = here and here.text.startswith(SURE)
    if last_length > last_done and claim.first - last_length <= HOLED_WITHIN and not told:
        unit = "strokes" if claim.kind == "for_strokes" else ""
        return replace(claim, kind="putt_for", unit=unit, weight=claim.weight * 0.8)
    near = claim.first - last_done <= HOLED_WITHIN
    if claim.kind == "for_strokes" and not near:
        return replace(claim, kind="count", unit="hitting", weight=claim.weight * 0.5)
    kind = "strokes" if claim.kind == "for_strokes" else "score_word"
    return replace(claim, kind=kind, weight=claim.weight * (0.9 if near else 0.5))


def _settled_bare(claim: Mention, context: _Context, done: int) -> Mention:
    """A number by itself: the score when a ball was just holed, else the stroke being counted."""
    holed = context.before(claim, "done")
    opens = claim.first == context.clause_starts[0] or claim.rule == _IN_SO_MANY
    if holed is not None and claim.first - holed.last <= HOLED_WITHIN and claim.value != 1:
        return replace(claim, kind="strokes", weight=0.95 if holed.value == "holed" else 0.7)
    if opens and claim.first - done <= HOLED_WITHIN and claim.value in range(2, MOST_BARE + 1):
        return replace(claim, kind="strokes", weight=0.85)
    return replace(claim, kind="count", unit="hitting", weight=0.4)
