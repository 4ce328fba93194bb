"""From a transcript to utterances with their mentions: the language room's one way in."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from reviewkit.language import lexicon, rules
from reviewkit.language.cheers import without_idle_cheers
from reviewkit.language.claims import claims
from reviewkit.language.glossary import glossary
from reviewkit.language.left_handed import with_curves_of_his_hand
from reviewkit.language.own_names import nicknames, plainly, with_the_only_hybrid
from reviewkit.language.pars import with_pars_behind_lengths
from reviewkit.language.per_hole import with_scores_of_holes
from reviewkit.language.players import anonymise, partners
from reviewkit.language.rulebook import RuleBook
from reviewkit.language.third_person import as_told_by_himself
from reviewkit.language.tokens import Sentence, sentences
from reviewkit.language.turn_about import with_turns_before_mine
from reviewkit.language.turns import with_turns_told_on
from reviewkit.model import Mention, Plan, Talk, Transcript, Utterance

_CLAUSE_END = re.compile(
    r" (?:,|but|so(?! far | much | hard | wide )|then) "
    r"| and (?=i |it|that|of course|then|what do you know|lo and|sure enough"
    r"|he|she|partner|my |mine|just|still|found|ended)|[.!?]$"
)
_DEEDS = (
    "(?:came|went|missed|pulled|pushed|blocked|hooked|sliced|leaked|tugged|yanked|thinned|chunked|topped|duffed"
    "|shanked|hit it|hung|left it|lost it|flew|fell|put it|sent it|cut it|faded|caught|fatted|skied)"
)
_HELD_BY = (
    "hope|hoping|hoped|wish|pray|if|unless|that|think|thinking|thought|like|me|please|say|says|saying|said"
    "|say that|whether|until|till|when|where|what|because|cause|sure|mean|reckon|though|before"
)
# "Don't you dare look up it's on", "I wasn't going to fiddle about I took the 5 wood": a statement of its
# own, where no comma was heard before it.
_STATED = " (?=(?:it's|that's|i (?:took|hit|used|went with) (?:the|a|an|my)) )"
_ANEW = "".join(rf"(?<! {word})" for word in _HELD_BY.split("|")) + _STATED
_ENDS = {
    # "Talked out of the 5 wood and hit hybrid": what is ruled out reaches no further than the next "and".
    "not": re.compile(rf"{_CLAUSE_END.pattern}| and |{_ANEW}"),
    "past": re.compile(r" (?:,|but|so|then) |[.!?]$"),
    # "I was aiming at the flag and came up short": what happened ends what was meant.
    "plan": re.compile(rf"{_CLAUSE_END.pattern}| because | and (?={_DEEDS} |the (?:game )?plan )|{_ANEW}"),
    "tried": re.compile(rf"{_CLAUSE_END.pattern}| and "),
}
# "I only wanted to move it along to the fairway, and it did that", "the plan is 3 wood, and the plan is
# executed": meant, and done.
_DONE = re.compile(
    r"(?: ,)?(?: and| which) (?:(?:it|i|that|we) (?:did|was|is|do|does)"
    r"(?: (?:just |exactly )?(?:that|so|it))?"
    r"|(?:it|that|the (?:game )?plan) (?:is |was |has been |all )*(?:executed|worked|works|came off|comes off"
    r"|paid off|pays off|held|followed|carried out|kept to))(?= [.,!]|$)"
)
# "I'm going to aim left, and let the wind bring it back": what else is meant is told in the same form.
_MEANT_TOO = re.compile(
    r"(?: ,)?(?: (?:and|or|then|just|maybe|try to|hope to|simply))*"
    r" (?:aim|point|let|keep|hit|carry|land|leave|lay|bring|knock|pitch|chip|bump|run|roll|start|try|trust"
    r"|hope|get|put|use|go|take|make|see|fly|swing|play|peg|tee|send|hold|lag|two putt)"
    r"(?= (?:it|that|this|the|a|an"
    r"|for|to|at|on|in|out|over|up|down|off|my|me|somewhere|one|low|easy|hard|from)(?![a-z]))"
    r"|(?: ,)? and (?:then )?(?:an?|the|another) (?:little |wee )?(?:chip|pitch|wedge|putt)(?= ?[.,]| and)"
    r"|(?: ,)? a (?:hair|touch|shade|smidge|fraction|whisker|bit|little) (?:left|right|short|long) of(?= the)"
)
# A later, plainer word ends another player's turn; these moods reach past commas.
_LONG_REACH = {"other"}
_FURTHEST, _BREATHLESS = 18, 12
"""Words that a mood reaches at most, and where no mark is heard behind it."""
_MARKS = (",", ".", "!", "?")
_WHOLE = {"lost", "short"}
_TO_THE_HOLE = ("togo", "left", "from", "bare", "said")
_LONGEST_HOLE = 900
"""Yards or metres; no hole is as long, a guess."""
_EITHER = ("or", "nor", "and", "a", "an", "the", "my", "with")
"""Words before a club that may be ruled out together with the one before it."""
_ACROSS = ("club", "distance")
"""What may be told across a pause."""
_TOLD_LAST = ("with", "after")
"""A club's moods, see strokes.toml."""
_COLOURED = {
    "club",
    "place",
    "holed",
    "tap",
    "stayed_out",
    "putts",
    "updown",
    "putt",
    "strike",
    "contact",
    "miss",
}
_COLOURED |= {"reload", "drop", "distance", "putter", "again", "iron"}


def read_talk(transcript: Transcript, plan: Plan, user_rules: Path | None = None) -> Talk:
    """Utterances of the whole round in order. Raises CardError for a mistake in the user's rules file."""
    book = rules.load(user_rules)
    said = sentences(transcript, lexicon.load(user_rules))
    own = nicknames(said) | glossary(said)
    said = tuple(plainly(sentence, own) for sentence in said)
    names = partners(transcript, said, plan.names)
    said = as_told_by_himself([anonymise(sentence, names) for sentence in said])
    read = [book.in_sentence(sentence) for sentence in said]
    scores = with_scores_of_holes(claims(said, read), said)
    talk, previous, at = [], 0.0, 0
    for number, sentence in enumerate(said):
        if sentence.goes_on and number + 1 < len(said):
            for mention in _across(book, sentence, said[number + 1], read[number] + read[number + 1]):
                read[number + (mention.first > sentence.tokens[-1].last)].append(mention)
        found = [mention for mention in _coloured(read[number], sentence) if not _beyond(mention)]
        last = sentence.tokens[-1].last
        while at < len(scores) and scores[at].first <= last:
            found.append(scores[at])
            at += 1
        talk.append(_utterance(sentence, found, previous))
        previous = talk[-1].end_s
    settled = with_turns_told_on(
        with_turns_before_mine(with_curves_of_his_hand(with_the_only_hybrid(tuple(talk))))
    )
    return without_idle_cheers(with_pars_behind_lengths(settled))


def _beyond(mention: Mention) -> bool:
    """ "Hitting 4205 to the flag": a length that no hole has, whatever was said."""
    value = mention.value if mention.kind == "distance" else 0
    return isinstance(value, int | float) and value > _LONGEST_HOLE


def _across(book: RuleBook, sentence: Sentence, after: Sentence, found: Sequence[Mention]) -> list[Mention]:
    """What only both sentences say together, where no more than a comma parts them."""
    both = book.in_sentence(sentence.with_next(after))
    border = sentence.tokens[-1].last
    return [
        mention
        for mention in both
        if mention.kind in _ACROSS and mention.last > border and not _known(mention, found)
    ]


def _known(mention: Mention, found: Sequence[Mention]) -> bool:
    return any(m.kind == mention.kind and m.overlaps(mention) for m in found)


def _utterance(sentence: Sentence, found: Sequence[Mention], previous: float) -> Utterance:
    tokens = sentence.tokens
    return Utterance(
        first=tokens[0].first,
        last=tokens[-1].last,
        start_s=tokens[0].start_s,
        end_s=tokens[-1].end_s,
        gap_s=max(0.0, tokens[0].start_s - previous),
        text=sentence.text,
        mentions=tuple(sorted(found, key=lambda mention: (mention.first, mention.last))),
    )


def _coloured(found: list[Mention], sentence: Sentence) -> list[Mention]:
    """Moods handed on to what they reach; mood mentions themselves are dropped."""
    moods = [mention for mention in found if mention.kind == "mood"]
    if not moods:
        return found
    clubs = [mention for mention in found if mention.kind == "club"]
    reaches = [(mood.first, _last_reached(mood, sentence, clubs), str(mood.value)) for mood in moods]
    plain = []
    for mention in found:
        if mention.kind == "mood":
            continue
        if mention.kind in _COLOURED and mention.mood in ("", *_TO_THE_HOLE, *_TOLD_LAST):
            mood = _mood_at(mention, reaches)
            # What a length is to matters more than whether it was planned, but not than whose it is.
            told = mood and (mention.mood in ("", "with") or mood in ("other", "past"))
            mention = replace(mention, mood=mood) if told else mention
        plain.append(mention)
    return plain


def _mood_at(mention: Mention, reaches: Sequence[tuple[int, int, str]]) -> str:
    """The mood whose words stand last before the mention and reach it; "clear" takes moods away.

    "Couldn't find it" and "doesn't go in" are told whole: their own first word colours them no more.
    """
    cleared = max(
        (first for first, _, mood in reaches if mood == "clear" and first <= mention.first), default=-1
    )
    own = mention.first if mention.value in _WHOLE or mention.kind == "stayed_out" else -1
    reaching = [
        (first, mood)
        for first, last, mood in reaches
        if cleared <= first <= mention.first <= last and not (first == own and mood in ("plan", "not"))
    ]
    mood = max(reaching)[1] if reaching else ""
    return "" if mood == "clear" else mood


def _last_reached(mood: Mention, sentence: Sentence, clubs: Sequence[Mention]) -> int:
    """Last word index that a mood colours.

    "Dogleg left no driver 4 hybrid to the corner": what is ruled out is the first club, not the next as well.
    """
    last = _reach(mood, sentence)
    if mood.value != "not":
        return last
    inside = [club.first for club in clubs if mood.first <= club.first <= last]
    words = {token.first: token.text for token in sentence.tokens}
    taken = next((at for at in inside[1:] if words.get(at - 1) not in _EITHER), last + 1)
    return max(mood.last, taken - 1)


def _reach(mood: Mention, sentence: Sentence) -> int:
    """Last word index by its own words: to the end of its clause, another player's further."""
    furthest = _furthest(mood, sentence)
    if mood.value in _LONG_REACH:
        return furthest
    index = next(i for i, token in enumerate(sentence.tokens) if token.first >= mood.first)
    start = sentence.starts[index]
    ending = _ENDS.get(str(mood.value), _CLAUSE_END)
    found = ending.search(sentence.text, start + len(mood.text))
    end = found.start() if found else len(sentence.text)
    while found and mood.value == "plan" and (more := _MEANT_TOO.match(sentence.text, end)):
        found = ending.search(sentence.text, more.end())
        end = found.start() if found else len(sentence.text)
    if mood.value == "plan" and _DONE.match(sentence.text, end):
        return mood.first - 1
    covered = [token.last for token, at in zip(sentence.tokens, sentence.starts, strict=True) if at < end]
    return max(min(covered[-1], furthest), mood.last)


def _furthest(mood: Mention, sentence: Sentence) -> int:
    """Word index that a mood reaches at most: a listener runs sentences together, often without a mark."""
    mark = next((t.first for t in sentence.tokens if t.text in _MARKS and t.first >= mood.last), mood.last)
    words = _FURTHEST if mark <= mood.last + _BREATHLESS else _BREATHLESS
    return min(sentence.tokens[-1].last, mood.last + words)
