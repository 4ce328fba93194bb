"""Who else is in the talk: partners are found by their names, so that their strokes are not the player's."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import lru_cache

from reviewkit.language.number_words import words_of
from reviewkit.language.roles import articles, roles
from reviewkit.language.rules import load
from reviewkit.language.sound import distance
from reviewkit.language.tokens import Sentence, Token, of_tokens
from reviewkit.model import Transcript

PARTNER = "partner"
_BEFORE = frozenset(
    {"and", "with", "buddy", "mate", "sister", "brother", "friend", "wife", "oh", "while", "when"}
)
_AFTER = frozenset(
    words_of(
        """is was has had says said hit hits goes went made makes got knocked took shot played wrote
        told gave did reckons reckoned thinks clapped stuck won lost nearly always just also wants
        never calls looks shouts laughs asked keeps splashed chipped putted holed found drove rolled
        missed tapped finished birdied parred bogeyed doubled picked lagged pitched pulled sliced
        hooked duffed topped"""
    )
)
_NEVER = frozenset(
    words_of(
        """i monday tuesday wednesday thursday friday saturday sunday january february march april may
        june july august september october november december easter christmas today tonight
        yesterday tomorrow everyone everybody nobody someone somebody anyone mother father luck
        physics gravity wind sun rain breeze gust caddie driver par birdie bogey ok okay god
        jesus lord english irish american australian power mike fringe bracken is was are were has had
        have did does do can could would should will what who whose where why how which here there
        this that these those it its not wedge
        wedges iron irons wood woods hybrid rescue putter club clubs putt putts chip pitch drive fairway rough
        bunker bunkers sand trap trees tree water pond creek lake green greens fringe flag pin hole tee rake
        lip cup card eagle double triple yard yards metre metres meters feet foot left right short long
        middle"""
    )
)
_OPENERS = frozenset(
    words_of(
        """and but so oh me then now well meanwhile when while as after because still even also next
        again yes yeah okay right anyway here there though before once since"""
    )
)
_STROKES = (
    "duff|chunk|thin|top|blade|knife|shank|skull|hack|flop|splash|chip|putt|pitch|hole|drain|sink|sank|lag|tap|"
    "birdie|par|bogey|double|drive|drove|tee|slice|hook|pull|push|yank|tug|block|stripe|smash|pipe|nail|reload|"
    "punch|knock|dump|stick|stuck|bomb|smoke|crush|hit|miss|find|found|leave|left|roll|bury|buried|bag|pure|fat"
)
_KIN = frozenset({"dad", "mum", "mom", "mam", "grandad", "granddad", "grandpa"})
"""Names where nothing stands before them, however a recogniser writes them."""
_WHOSE = frozenset({"my", "your", "his", "her", "our", "their", "the", "a"})
_OWN = "(?:his|hers|her|their|theirs)"
_CLUB = "(?:driver|[2-9] (?:iron|wood|hybrid|rescue)|(?:[a-z]+ )?wedge|putter)"
_SURELY = (
    "splash|chip|putt|hole|birdie|bogey|tap|lag|duff|shank|thin|top|skull|blade|reload|tee|pitch|punch|hack|"
    "three putt|drain|chunk"
)
_ED = "(?:s|es|ed|ped|ted|ged|ned|d)?"
_DOES = re.compile(
    rf"[a-z]+ (?:(?:just|then|nearly|almost|also|only|now|has|had|'s) )?"
    rf"(?:(?:{_STROKES}){_ED} (?:[a-z]+ )?(?:{_OWN}|(?:a |the )?{_CLUB})(?![a-z])"
    rf"|(?:{_SURELY}){_ED} (?:it|that|out|in|up|on|onto|to|from|for|past|a|the|him|over"
    rf"|off|first|and|one|\d)(?![a-z])"
    rf"|(?:{_SURELY})(?:s|es|ed|ped|ted|d)(?: [,.!?]|$)"
    rf"|(?:gone|going|goes|taken|taking|pulled) (?:with |for )?(?:a |the )?{_CLUB}(?![a-z])"
    rf"|(?:is|was) (?:away|to (?:putt|go|play)|up 1st|1st (?:up|to (?:go|play|putt))"
    rf"|on the tee)(?![a-z])"
    rf"|(?:puts|put|takes|took|makes|made|gets|got|has|had|plays|played|goes with|sends|sent"
    rf"|lost|loses) {_OWN}(?![a-z]))"
)
_HAS = re.compile(
    r"[a-z]+'s (?:away|turn|to (?:play|putt|go)|up 1st|(?:1st |2nd |3rd |next )?"
    r"(?:ball|putt|drive|chip|tee shot|approach|bunker shot|pitch|par putt|birdie putt|provisional)"
    r"|(?:just |only |already )*(?:hit|chipped|putted|holed|duffed|knocked|splashed|made|missed|driven|pulled"
    r"|pushed|sliced|hooked|topped|thinned|shanked|in with)"
    rf"|(?:gone|going|taking|taken|hitting) (?:(?:it|this|that) on )?(?:with |for )?(?:a |the )?"
    rf"{_CLUB})(?![a-z])"
)
_OFTEN = 2
"""Sentences in which a word that only opens them acts like a player, to be a name."""
_LONG_NAME, _SAME_NAME, _LIKE_NAME = 4, 0.24, 0.31
"""Letters of a name that may be spelt in several ways, and how far apart they may sound; further where it
stands as nothing but a name does, amid a sentence or before a score: "lying two, Murk, on the green"."""
_NAME = re.compile(r"[A-ZÀ-Þ][a-zß-ÿ]{1,11}(?:['’]s)?[,.!?]?$")
_TITLES = frozenset(
    words_of(
        """father sister brother uncle auntie aunt aunty grandad granddad grandma granny gran nan nana
        pa doctor dr mr mrs miss ms captain sir big wee young old little"""
    )
)
"""Words before a name that make no place of it, written with a capital or without."""


def partners(
    transcript: Transcript, sentences: Iterable[Sentence], told: Iterable[str] = ()
) -> frozenset[str]:
    """First names, lower case, of people whom the talk treats as acting. `told` are known beforehand."""
    sentences = tuple(sentences)
    words = transcript.words
    known = {part.lower() for name in told for part in name.split()} | _KIN
    common = {word.text.strip(" ,.!?").removesuffix("'s") for word in words}
    votes: Counter[str] = Counter()
    inside: Counter[str] = Counter()
    lone: set[str] = set()
    for sentence in sentences:
        texts = [token.text for token in sentence.tokens]
        for at, token in enumerate(sentence.tokens):
            name = token.text.removesuffix("'s")
            if not name.isalpha() or token.first != token.last or name in _NEVER:
                continue
            written = words[token.first].text.strip()
            if not written.lower().startswith(name[:2]):
                # "Plastic never had a chance", put right as the flat stick, is nobody's name.
                continue
            if not _NAME.match(written):
                votes[name] += name in known and (_plays(texts, at) or _kin_acts(texts, at))
                continue
            before = texts[at - 1] if at else ""
            after = texts[at + 1] if at + 1 < len(texts) else ""
            inside[name] += bool(before) and before not in ".!?"
            lone |= {name} if _stands_alone(texts, at) else set()
            titled = before.strip(".") in _TITLES
            alone = (titled or not _capital(words, token.first - 1)) and not _capital(words, token.last + 1)
            acts = token.text.endswith("'s") or after in _AFTER or before in _BEFORE
            votes[name] += acts and alone
            # Once is enough where nobody but a player does this, and the word is no other word of the talk.
            if alone and name not in common and name not in words_of_golf() and _plays(texts, at):
                votes[name] += 1
                inside[name] += 1
    found = {name for name, count in votes.items() if count and (inside[name] or name in known)}
    # Whoever only ever opens a sentence is a name when nobody else is called so.
    found |= {
        name
        for name, count in votes.items()
        if count >= _OFTEN and name not in common and name not in words_of_golf()
    }
    found |= roles(([token.text for token in sentence.tokens] for sentence in sentences), _AFTER)
    limits = {name: _LIKE_NAME if name in lone else _SAME_NAME for name in inside}
    return frozenset(
        found | {name for name, limit in limits.items() if _spelt_anew(name, found - _KIN, limit)}
    )


def _stands_alone(texts: Sequence[str], at: int) -> bool:
    """ "Lying two, Murk, on the green", "Murk, six": between marks, where only a name is written big."""
    before, after = texts[at - 1] if at else ".", texts[at + 1] if at + 1 < len(texts) else "."
    if before == ",":
        return after in (",", ".", "!", "?")
    return (
        before in (".", "!", "?")
        and after == ","
        and texts[at + 2 : at + 3] != []
        and texts[at + 2].isdigit()
    )


def _spelt_anew(name: str, found: Iterable[str], limit: float) -> bool:
    """Whether a capitalised word that no rule knows is a name found, as a recogniser spells it elsewhere."""
    if len(name) < _LONG_NAME or name in _NEVER or name in words_of_golf():
        return False
    return any(len(known) >= _LONG_NAME and distance(name, known) < limit for known in found)


def _kin_acts(texts: Sequence[str], at: int) -> bool:
    """ "Dad's on the fairway", but not "my dad's old putter"."""
    if texts[at].removesuffix("'s") not in _KIN or (at and texts[at - 1] in _WHOSE):
        return False
    return texts[at].endswith("'s") or (at + 1 < len(texts) and texts[at + 1] in _AFTER)


def _plays(texts: Sequence[str], at: int) -> bool:
    """Whether the word at `at` is followed by what only a player does or has."""
    said = " ".join(texts[at : at + 7])
    return bool((_HAS if texts[at].endswith("'s") else _DOES).match(said))


@lru_cache(maxsize=1)
def words_of_golf() -> frozenset[str]:
    """All words that the rules know: none of them is taken for a name on the strength of one sentence."""
    return frozenset(word for rule in load().rules for word in re.findall(r"[a-z]{3,}", rule.source))


def _capital(words: tuple[object, ...], at: int) -> bool:
    """Another capitalised word beside it makes a place of a name."""
    text = getattr(words[at], "text", "").strip() if 0 <= at < len(words) else ""
    return bool(re.match(r"[A-Z][a-z]{2,}$", text)) and text.lower() not in _OPENERS


def anonymise(sentence: Sentence, names: frozenset[str]) -> Sentence:
    """The sentence with every partner's name as `partner`, for rules that need not know who it is."""
    if not any(token.text.removesuffix("'s") in names for token in sentence.tokens):
        return sentence
    part_of_it = articles([token.text for token in sentence.tokens], names)
    tokens = tuple(_rename(token, names) for at, token in enumerate(sentence.tokens) if at not in part_of_it)
    return of_tokens(tokens, sentence.segment, sentence.goes_on)


def _rename(token: Token, names: frozenset[str]) -> Token:
    name = token.text.removesuffix("'s")
    return replace(token, text=token.text.replace(name, PARTNER, 1)) if name in names else token
