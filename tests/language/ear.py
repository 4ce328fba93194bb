"""Counts what listeners make of the sounds of speech, and how sure one must be to put it right.

    python -m tests.language.ear ROUND...

writes reviewkit/rules/by_ear.json and following.json from invented rounds: folders with `clean.vtt`, what was
said, and `asr.json`, what a listener made of it; and from text files of nothing but such talk. The more the
better: the files that ship were counted over 127 hearings of 90 rounds and 60 other talks.

Costs: words said and heard are aligned, and where they differ their sounds are, again and again, each time
with the costs counted the time before. Words that follow one another: counted, those said in a row only once
left out. Weights: every stretch that sounds like a phrase is one of its uses,
or none; a logistic regression tells which. What it prints was tried on rounds left out of the count.
"""

from __future__ import annotations

import json
import sys
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import asdict, dataclass
from difflib import SequenceMatcher
from pathlib import Path

import numpy as np
from scipy.optimize import minimize

from reviewkit.language import by_ear, lexicon
from reviewkit.language.by_ear import Costs, Likeness, Weights
from reviewkit.language.following import COUNTED, Following
from reviewkit.language.phones import SOUNDS
from reviewkit.language.pieces import COMMA, ENDS, Piece
from reviewkit.language.tokens import as_heard
from reviewkit.model import Segment, Word
from tests.eval.rounds import read_text
from tests.language.followed import following

_PARTS = 10
"""Of the rounds, one after another is left out of what is tried on it."""
_ROUNDS = 8
"""How often costs are counted anew."""
_LONGEST = 6
"""Words of a difference; what is longer is hardly aligned."""
_STRANGE = 4.2
"""Cost of a sound, at the mean, above which two texts have nothing to do with each other."""
_RARE = 12.0
"""Counts, shared out as sounds are heard anyhow, that stand for what was never heard for a sound."""
_LOST = len(SOUNDS)
_SEEN = 5
"""Uses of a neighbour from which it has a weight of its own."""
_STEADY = 0.3
"""How strongly the measures' weights are held near 0, and those of words 1: there are few of each."""


@dataclass(frozen=True)
class Use:
    """A stretch that sounds like a phrase: its measures and neighbours, and whether the phrase was said."""

    likeness: Likeness
    measures: tuple[float, ...]
    beside: tuple[str, str]
    said: bool


Sides = tuple[list[Piece], list[Piece]]
Spelt = tuple[int, ...]


def both_sides(path: Path) -> Sides:
    """What was said and what was heard in one round, before anything is put right."""
    said, heard = (_pieces(read_text(path / name).segments) for name in ("clean.vtt", "asr.json"))
    return said, heard


def _pieces(segments: Sequence[Segment]) -> list[Piece]:
    known = lexicon.load()
    return as_heard(
        segments, {word: as_one for word, as_one in known.spelling.items() if word not in known.misheard}
    )


def _read(path: Path) -> list[Piece]:
    """A text of talk, a word a second."""
    words = path.read_text(encoding="utf-8").split()
    return _pieces([Segment(tuple(Word(word, at, at + 1.0) for at, word in enumerate(words)))])


def _text(talk: Sequence[Piece]) -> str:
    return " ".join(piece.text for piece in talk)


def _aligned(said: Sequence[Piece], heard: Sequence[Piece]) -> Iterator[tuple[bool, list[int], list[int]]]:
    """(alike, places said, places heard) stretch by stretch, without marks."""
    sides = [
        [(at, piece.text) for at, piece in enumerate(side) if piece.text not in (COMMA, *ENDS)]
        for side in (said, heard)
    ]
    matcher = SequenceMatcher(None, *([text for _, text in side] for side in sides), autojunk=False)
    for tag, begin, end, first, last in matcher.get_opcodes():
        yield (
            tag == "equal",
            [at for at, _ in sides[0][begin:end]],
            [at for at, _ in sides[1][first:last]],
        )


def costs(rounds: Sequence[Sides]) -> Costs:
    """Log odds of the sounds heard for each sound said."""
    anyhow = np.full(len(SOUNDS), 0.5)
    pairs = []
    for said, heard in rounds:
        for piece in heard:
            np.add.at(anyhow, list(by_ear.coded(piece.text)), 1)
        for alike, one, other in _aligned(said, heard):
            if not alike and len(one) <= _LONGEST and len(other) <= _LONGEST:
                spelt = [
                    by_ear.coded(" ".join(side[at].text for at in places))
                    for side, places in ((said, one), (heard, other))
                ]
                if all(spelt) and 0.4 < len(spelt[0]) / len(spelt[1]) < 2.5:
                    pairs.append((spelt[0], spelt[1]))
    anyhow /= anyhow.sum()
    heard_for, added = _counted(pairs, anyhow)
    return Costs(np.log(heard_for[:, :_LOST] / anyhow), np.log(heard_for[:, _LOST]), np.log(added / anyhow))


def _counted(pairs: Sequence[tuple[Spelt, Spelt]], anyhow: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Probabilities of each sound heard, or lost, for each said; and of one heard for none, at each place."""
    rare = _RARE * np.append(anyhow * 0.9, 0.1)
    heard_for = np.tile(rare / rare.sum(), (_LOST, 1)) * 0.3
    heard_for[np.arange(_LOST), np.arange(_LOST)] += 0.7
    added = anyhow * 0.05
    for _ in range(_ROUNDS):
        counts, places = np.full((_LOST + 1, _LOST + 1), 0.0), 0
        costs_for, costs_added = (-np.log(heard_for)).tolist(), (-np.log(added)).tolist()
        for said, heard in pairs:
            cost, steps = _steps(said, heard, costs_for, costs_added)
            if cost <= _STRANGE * max(len(said), len(heard)):
                places += len(said) + 1
                for step in steps:
                    counts[step] += 1
        kept = counts[:_LOST] + rare
        heard_for = kept / kept.sum(axis=1, keepdims=True)
        added = (counts[_LOST, :_LOST] + rare[:_LOST]) / max(places, 1)
    return heard_for, added


def _steps(
    said: Sequence[int], heard: Sequence[int], costs_for: list[list[float]], added: list[float]
) -> tuple[float, list[tuple[int, int]]]:
    """The cheapest way from one run of sounds to the other: its cost and (said, heard) steps."""
    best: list[list[tuple[float, int, int]]] = []
    for row in range(len(said) + 1):
        best.append([])
        for at in range(len(heard) + 1):
            ways = [(0.0, -1, -1)] if row == at == 0 else []
            if row and at:
                ways.append((best[row - 1][at - 1][0] + costs_for[said[row - 1]][heard[at - 1]], 1, 1))
            if row:
                ways.append((best[row - 1][at][0] + costs_for[said[row - 1]][_LOST], 1, 0))
            if at:
                ways.append((best[row][at - 1][0] + added[heard[at - 1]], 0, 1))
            best[row].append(min(ways))
    steps = []
    row, at = len(said), len(heard)
    while row or at:
        _, down, along = best[row][at]
        steps.append((said[row - 1] if down else _LOST, heard[at - 1] if along else _LOST))
        row, at = row - down, at - along
    return best[-1][-1][0], steps


def uses(sides: Sides, counted: Costs, known: Following) -> list[Use]:
    """Every stretch of a round that sounds like a phrase. `known` is counted over other talks than this."""
    said, heard = sides
    told = _told(said, heard)
    return [
        Use(
            each,
            by_ear.measures(heard, each, counted, known),
            by_ear.beside(heard, each),
            any(each.phrase.said in told[at] for at in range(each.begin, each.end)),
        )
        for each in by_ear.likenesses(heard, counted)
    ]


def _told(said: Sequence[Piece], heard: Sequence[Piece]) -> defaultdict[int, set[str]]:
    """The phrases said at each place heard, and right beside it."""
    place = {}
    for _, one, other in _aligned(said, heard):
        for step, at in enumerate(one):
            if other:
                place[at] = other[step * len(other) // len(one)]
    told: defaultdict[int, set[str]] = defaultdict(set)
    words = [piece.text for piece in said]
    for phrase in by_ear.phrases():
        wanted = phrase.said.split()
        for at in range(len(words) - len(wanted) + 1):
            last = at + len(wanted) - 1
            if words[at : last + 1] == wanted and at in place and last in place:
                for near in range(place[at] - 1, place[last] + 2):
                    told[near].add(phrase.said)
    return told


def weights(found: Sequence[Use]) -> dict[str, Weights]:
    """What each kind of phrase goes by."""
    kinds = sorted({use.likeness.phrase.kind for use in found})
    return {kind: _weights([use for use in found if use.likeness.phrase.kind == kind]) for kind in kinds}


def _weights(found: Sequence[Use]) -> Weights:
    beside = [Counter(use.beside[side] for use in found) for side in (0, 1)]
    before, after = ([word for word, count in words.items() if count >= _SEEN] for words in beside)
    phrases = sorted({use.likeness.phrase.said for use in found})
    rows = np.array(
        [
            [
                *use.measures,
                *(use.beside[0] == word for word in before),
                *(use.beside[1] == word for word in after),
                *(use.likeness.phrase.said == phrase for phrase in phrases),
            ]
            for use in found
        ],
        dtype=float,
    )
    of = len(found[0].measures)
    held = np.array([0.0, *[_STEADY] * (of - 1), *[1.0] * (rows.shape[1] - of)])
    fitted = _fitted(rows, np.array([use.said for use in found]), held)
    parts = np.split(fitted.round(2), np.cumsum([of, len(before), len(after)]))
    named = [
        dict(zip(words, part.tolist(), strict=True))
        for words, part in zip((before, after, phrases), parts[1:], strict=True)
    ]
    return Weights(tuple(parts[0].tolist()), *named)


def _fitted(rows: np.ndarray, said: np.ndarray, held: np.ndarray) -> np.ndarray:
    """Logistic regression, each weight held near 0 by `held`."""

    def loss(weight: np.ndarray) -> tuple[float, np.ndarray]:
        odds = rows @ weight
        missed = 1 / (1 + np.exp(-odds)) - said
        return (
            float(np.logaddexp(0, np.where(said, -odds, odds)).sum() + (held * weight**2).sum() / 2),
            rows.T @ missed + held * weight,
        )

    return np.asarray(minimize(loss, np.zeros(rows.shape[1]), jac=True, method="L-BFGS-B").x)


def table(counted: Costs, weighed: dict[str, Weights]) -> str:
    """The file's text."""
    lists = {name: getattr(counted, name).round(2).tolist() for name in ("heard", "lost", "added")}
    return json.dumps({**lists, "weights": {kind: asdict(each) for kind, each in weighed.items()}}) + "\n"


def main(paths: Sequence[Path]) -> None:
    folders = [path for path in paths if path.is_dir()]
    rounds, others = [both_sides(path) for path in folders], [_read(path) for path in paths if path.is_file()]
    talks = {_text(said): said for said, _ in rounds}
    part = {text: at % _PARTS for at, text in enumerate(talks)}
    known = [
        following([*others, *(said for text, said in talks.items() if part[text] != left_out)])
        for left_out in range(_PARTS)
    ]
    counted = costs(rounds)
    parts = [part[_text(said)] for said, _ in rounds]
    found = [
        (at, use) for at, sides in zip(parts, rounds, strict=True) for use in uses(sides, counted, known[at])
    ]
    by_ear.COUNTED.write_text(table(counted, weights([use for _, use in found])), encoding="utf-8")
    shipped = asdict(following([*others, *talks.values()]))
    COUNTED.write_text(json.dumps(shipped, ensure_ascii=False) + "\n", encoding="utf-8")
    print(f"{len(rounds)} hearings of {len(talks)} rounds, {len(others)} other talks")
    _tried(found)


def _tried(found: Sequence[tuple[int, Use]]) -> None:
    """Prints how the weights of nine parts do on the tenth."""
    tried: defaultdict[str, Counter[str]] = defaultdict(Counter)
    for left_out in range(_PARTS):
        known = weights([use for at, use in found if at != left_out])
        for use in (use for at, use in found if at == left_out):
            kind = use.likeness.phrase.kind
            likely = by_ear.weighed(use.likeness, use.measures, use.beside, known[kind])
            given = likely >= by_ear.LIKELY
            tried[kind].update({"given": given, "right": given and use.said, "said": use.said})
    for kind, count in sorted(tried.items()):
        print(f"{kind}: {count['said']} said, {count['given']} given, {count['right']} of them right")


if __name__ == "__main__":
    main([Path(argument) for argument in sys.argv[1:]])
