"""Works out which words a rule cannot do without, and with which it begins, from the tree of its pattern.

    python -m tests.language.needs

writes reviewkit/rules/needed.json. The library's parser is not a published interface, which is why this is no
part of the package; whatever it gives that is not known here counts as "anything".
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import product
from pathlib import Path
from re import _parser  # type: ignore[attr-defined]
from typing import Any

from reviewkit.language.needed import NEEDED, mark
from reviewkit.language.rules import load
from reviewkit.language.tokens import sentences
from reviewkit.speech import timed_text
from tests.language.begins import words_begun

_MOST = 600
"""Spellings followed up within one pattern."""
_CUT = "\0"
"""Stands for anything at all in a spelling."""
ROUNDS = sorted((Path(__file__).parents[2] / "fixtures" / "rounds").glob("*/clean.vtt"))


@lru_cache(maxsize=1)
def _said() -> Counter[str]:
    """In how many sentences of the committed rounds each word is said: what is said often tells little."""
    spoken = (sentence for path in ROUNDS for sentence in sentences(timed_text.read(path)))
    return Counter(word for sentence in spoken for word in set(sentence.text.split()))


def words_needed(pattern: str) -> frozenset[str]:
    """Words of which every match of `pattern`, put between word ends, has at least one; empty if unknown."""
    return _words(_spellings(_parser.parse(pattern)))


def _words(spellings: Iterable[str]) -> frozenset[str]:
    """One whole word of each spelling, as few as may be; none at all when a spelling has none."""
    open_ = [_whole(spelling) for spelling in set(spellings)]
    return _chosen(open_) if all(open_) else frozenset()


def _chosen(sets: Iterable[frozenset[str]]) -> frozenset[str]:
    """One word of each of the sets, as few as may be, and such as are seldom said."""
    open_ = set(sets)
    told: set[str] = set()
    while open_:
        counts = Counter(word for words in open_ for word in words)
        told.add(min(counts, key=lambda word: ((_said()[word] + 0.2) / counts[word], -len(word), word)))
        open_ = {words for words in open_ if not words & told}
    return frozenset(told)


def _whole(spelling: str) -> frozenset[str]:
    """The whole words of a spelling."""
    return frozenset(word for word in spelling.split(" ") if word and _CUT not in word)


def _spellings(parts: Sequence[tuple[Any, Any]]) -> set[str]:
    """What a run of the pattern may spell; `_CUT` where that is open."""
    made = {""}
    for kind, given in parts:
        made = _few(_joined(*pair) for pair in product(made, _part(str(kind), given)))
    return made


def _joined(left: str, right: str) -> str:
    return left + right[1:] if left.endswith(_CUT) and right.startswith(_CUT) else left + right


def _few(spellings: Iterable[str]) -> set[str]:
    """The spellings, or fewer that say less: of their inner words one, then less of either edge."""
    made = set(spellings)
    for less in (_inner, _ending, _beginning):
        if len(made) <= _MOST:
            return made
        made = less(made)
    return made


def _inner(spellings: set[str]) -> set[str]:
    """The spellings with one inner word each, where they have any, between their edges."""
    apart = [(spelling, spelling.split(" ")) for spelling in spellings]
    inner = {spelling: _whole(" ".join(words[1:-1])) for spelling, words in apart}
    told = _chosen(words for words in inner.values() if words)
    made = {spelling for spelling, words in inner.items() if not words}
    for spelling, words in apart:
        made |= {f"{words[0]} {_CUT} {word} {_CUT} {words[-1]}" for word in inner[spelling] & told}
    return made


def _ending(spellings: set[str]) -> set[str]:
    return {
        spelling.rsplit(" ", 1)[0] + f" {_CUT}" if " " in spelling else spelling for spelling in spellings
    }


def _beginning(spellings: set[str]) -> set[str]:
    return {f"{_CUT} " + spelling.split(" ", 1)[1] if " " in spelling else _CUT for spelling in spellings}


def _part(kind: str, given: Any) -> set[str]:
    """What one part of a pattern may spell."""
    if kind == "LITERAL":
        return {chr(given)}
    if kind == "IN" and all(str(each) == "LITERAL" for each, _ in given):
        return {chr(letter) for _, letter in given}
    if kind == "BRANCH":
        return _few(_of_all(given[1]))
    if kind == "SUBPATTERN":
        return _spellings(given[-1])
    if kind in ("MAX_REPEAT", "MIN_REPEAT"):
        least, most, body = given
        once = _spellings(body)
        if most == 1:
            return _few([*once, *([] if least else [""])])
        if least:
            return {_joined(spelling, _CUT) for spelling in once}
        # What is repeated whole words at a time leaves its neighbour whole.
        opened, ended = all(part[:1] == " " for part in once), all(part[-1:] == " " for part in once)
        return {"", f"{' ' * opened}{_CUT}{' ' * ended}"} if opened or ended else {_CUT}
    return {""} if kind in ("AT", "ASSERT", "ASSERT_NOT") else {_CUT}


def _of_all(branches: Iterable[Sequence[tuple[Any, Any]]]) -> Iterator[str]:
    for branch in branches:
        yield from _spellings(branch)


def table() -> dict[str, dict[str, list[str]]]:
    """What is known of the shipped patterns, by their marks."""
    sources = {mark(rule.source): rule.source for rule in load().rules}
    rows = {
        key: {"need": sorted(words_needed(source)), "begin": sorted(words_begun(source))}
        for key, source in sorted(sources.items())
    }
    return {key: row for key, row in rows.items() if any(row.values())}


def main() -> None:
    NEEDED.unlink(missing_ok=True)
    rows = [f"{json.dumps(key)}: {json.dumps(row)}" for key, row in table().items()]
    NEEDED.write_text("{\n" + ",\n".join(rows) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
