"""Figures and errors, printed for a person."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby, pairwise
from pathlib import Path

from reviewkit.model import Word
from tests.eval.rounds import Case, rows
from tests.eval.score import Check, figures, shares

A_ROUND = (
    *("hole.found", "hole.start_3s", "hole.par", "hole.strokes", "hole.running"),
    *("shot.f1", "shot.kind", "shot.result", "shot.distance.recall"),
)
BINS = (0.0, 0.5, 0.7, 0.8, 0.9, 0.95, 0.99, 1.01)


def print_figures(level: str, checks: Mapping[str, Sequence[Check]], hide: frozenset[str]) -> None:
    """One line a figure: all rounds, then the shown and the hidden ones apart."""
    groups = [set(checks), set(checks) - hide, set(checks) & hide]
    tables = [figures(check for name in sorted(group) for check in checks[name]) for group in groups]
    print(f"\n{level:28} {'all':>6} {'shown':>6} {'hidden':>6}")
    columns = [shares(table) for table in tables]
    for name in columns[0]:
        values = [f"{column[name]:6.3f}" if name in column else "   n/a" for column in columns]
        right, of = tables[0].get(name, (0, 0))
        print(f"{name:28} {' '.join(values)}  {f'({right} of {of})' if of else ''}")


def print_rounds(level: str, checks: Mapping[str, Sequence[Check]], hide: frozenset[str]) -> None:
    """One line a round, to see which manner of speech is read worst."""
    print(f"\n{level:12}" + " ".join(f"{name.partition('.')[2]:>9}" for name in A_ROUND))
    for name, each in checks.items():
        share = shares(figures(each))
        mark = " (hidden)" if name in hide else ""
        print(f"{name + mark:12}" + " ".join(f"{share.get(figure, 0):9.3f}" for figure in A_ROUND))


def print_errors(
    case: Case, heard: Sequence[Word], level: str, checks: Iterable[Check], only: frozenset[str]
) -> None:
    """Hole by hole: what was wanted and got, then what was said, and below it what was heard (`~`).

    `only` keeps errors whose figure contains one of its words.
    """
    wrong = [check for check in checks if not check.right and _kept(check, only)]
    order = {hole["hole"]: hole["play_order"] for hole in case.truth["holes"]}
    wrong.sort(key=lambda check: order.get(check.hole, 99))
    for hole, group in groupby(wrong, key=lambda check: check.hole):
        print(f"\n== {level} {case.id} hole {hole}")
        for check in group:
            about = f"  ({check.about})" if check.about else ""
            print(f"  ! {check.figure}: want {check.wanted}, got {check.got}{about}")
        for line in _words(case, hole, heard):
            print(f"    {line}")


def _kept(check: Check, only: frozenset[str]) -> bool:
    return not only or any(word in check.figure for word in only)


def _words(case: Case, hole: int, heard: Sequence[Word]) -> Iterator[str]:
    """The hole's utterances, each with the words heard from its start to the next one's."""
    spoken = case.truth["utterances"]
    ends = [utterance["start_s"] for utterance in spoken[1:]] + [float("inf")]
    for utterance, end in zip(spoken, ends, strict=True):
        if utterance["hole"] == hole:
            start = utterance["start_s"]
            yield f"{start:7.1f} {utterance['text']}"
            text = " ".join(word.text for word in heard if start <= word.end_s - 0.1 < end)
            if text and text != utterance["text"]:
                yield f"      ~ {text}"


def print_calibration(keep: Path, level: str, cases: Sequence[Case]) -> None:
    """How often a score told with some confidence is right: the two columns should agree."""
    pairs = []
    for case in cases:
        table = keep / level / case.id / "holes.csv"
        wanted = {hole["hole"]: hole["strokes"] for hole in case.truth["holes"]}
        for row in rows(table) if table.is_file() else ():
            right = row["strokes"] == str(wanted.get(int(row["hole"])))
            pairs.append((float(row["confidence"]), right))
    print(f"\n{level} confidence  mean  right  holes")
    for low, high in pairwise(BINS):
        inside = [pair for pair in pairs if low <= pair[0] < high]
        if inside:
            mean, right = (sum(column) / len(inside) for column in zip(*inside, strict=True))
            print(f"  {low:4.2f} - {min(high, 1):4.2f}    {mean:6.3f} {right:6.3f} {len(inside):6d}")
