"""Works out which words a rule cannot do without, from the tree that the library makes of its pattern.

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
    open_ = [
        {word for word in spelling.split(" ") if word and _CUT not in word} for spelling in set(spellings)
    ]
    told: set[str] = set()
    while open_:
        counts = Counter(word for words in open_ for word in words)
        if not all(open_):
            return frozenset()
        told.add(min(counts, key=lambda word: ((_said()[word] + 0.2) / counts[word], -len(word), word)))
        open_ = [words for words in open_ if not words & told]
    return frozenset(told)


def _spellings(parts: Sequence[tuple[Any, Any]]) -> set[str]:
    """What a run of the pattern may spell; `_CUT` where that is open."""
    made = {""}
    for kind, given in parts:
        made = _few(_joined(*pair) for pair in product(made, _part(str(kind), given)))
    return made


def _joined(left: str, right: str) -> str:
    return left + right[1:] if left.endswith(_CUT) and right.startswith(_CUT) else left + right


def _few(spellings: Iterable[str]) -> set[str]:
    """The spellings, or fewer that say less: one whole word of each, and anything around it."""
    made = set(spellings)
    if len(made) <= _MOST:
        return made
    return {f"{_CUT} {word} {_CUT}" for word in _words(word + _CUT for word in made)} or {_CUT}


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
        return {_joined(spelling, _CUT) for spelling in once} if least else {_CUT}
    return {""} if kind in ("AT", "ASSERT", "ASSERT_NOT") else {_CUT}


def _of_all(branches: Iterable[Sequence[tuple[Any, Any]]]) -> Iterator[str]:
    for branch in branches:
        yield from _spellings(branch)


def table() -> dict[str, list[str]]:
    """The marks of the shipped patterns and the words they need."""
    found = {mark(rule.source): sorted(words_needed(rule.source)) for rule in load().rules}
    return {key: words for key, words in sorted(found.items()) if words}


def main() -> None:
    rows = (f"{json.dumps(key)}: {json.dumps(words)}" for key, words in table().items())
    NEEDED.write_text("{\n" + ",\n".join(rows) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
