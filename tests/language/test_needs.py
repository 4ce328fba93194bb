"""Words that a rule cannot do without, and with which it begins: worked out for every shipped rule."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from reviewkit.language.needed import DIGITS, NEEDED, beginnings
from reviewkit.language.rules import load
from reviewkit.language.tokens import sentences
from reviewkit.speech import timed_text
from tests.language.begins import words_begun
from tests.language.needs import ROUNDS, table, words_needed


def test_the_file_is_up_to_date() -> None:
    kept = json.loads(NEEDED.read_text(encoding="utf-8"))
    assert kept == table(), "write it anew with: python -m tests.language.needs"


@pytest.mark.parametrize(
    ("pattern", "words"),
    [
        ("in the (?:water|pond)", {"water", "pond"}),
        ("(?:so )?fat", {"fat"}),
        ("chunk(?:s|ed)?", {"chunk", "chunks", "chunked"}),
        ("hole \\d+", {"hole"}),
        ("\\d+", set()),
        ("(?:a|\\d+) mile", {"mile"}),
        ("left(?! of)", {"left"}),
        ("[fh]at", {"fat", "hat"}),
        ("(?:so )*wet", {"wet"}),
        ("wet(?: so)*", {"wet"}),
        ("(?:so)*wet", set()),
        ("(?:un)*(?:[a-z] )*wet", set()),
        ("(?:[1-9] [1-9]|fat [1-9]) [1-9] [1-9] [1-9] hen", {"hen"}),
    ],
)
def test_words_of_a_pattern(pattern: str, words: set[str]) -> None:
    assert words_needed(pattern) == words


@pytest.mark.parametrize(
    ("pattern", "words"),
    [
        ("in the (?:water|pond)", {"in"}),
        ("(?:so )?fat", {"so", "fat"}),
        ("(?:so )*fat(?: one)?", {"so", "fat"}),
        ("chunk(?:s|ed)?", {"chunk", "chunks", "chunked"}),
        ("[fh]at a", {"fat", "hat"}),
        ("(?:par )?\\d+", {"par", DIGITS}),
        ("(?:2|[3-5]|1[0-8]) hole", {DIGITS}),
        ("(?:^|, )so", {",", "so"}),
        ("(?<=, )(?!so )(?:and|but)", {"and", "but"}),
        ("i'(?:m|ve)", {"i'm", "i've"}),
        ("par\\d", set()),
        ("par[a-z]*", set()),
        ("[a-z]+ par", set()),
        ("(?:so)+ par", set()),
        ("(?: on)? the", set()),
        ("(?:so)?", set()),
        (".ar", set()),
    ],
)
def test_words_that_begin_a_pattern(pattern: str, words: set[str]) -> None:
    assert words_begun(pattern) == words


@pytest.mark.parametrize("path", ROUNDS, ids=lambda path: path.parent.name)
def test_no_match_is_lost(path: Path) -> None:
    rules = load().rules
    for sentence in sentences(timed_text.read(path)):
        words = {token.text for token in sentence.tokens}
        assert words == set(sentence.text.split())
        begun = dict(beginnings(sentence.text))
        for rule in rules:
            for match in rule.pattern.finditer(sentence.text):
                assert not rule.need or rule.need & words, rule.name
                assert not rule.begin or begun[match.start()] in rule.begin, rule.name


def test_a_rule_whose_class_a_user_changes_is_tried_everywhere(tmp_path: Path) -> None:
    own = tmp_path / "own.toml"
    own.write_text('[classes.sand]\n"kitty litter" = "sand"\n', encoding="utf-8")
    changed = [rule for rule in load(own).rules if "kitty litter" in rule.source]
    assert changed
    known = {rule.name: rule.need for rule in load().rules}
    assert all(not rule.need or rule.need == known[rule.name] for rule in changed)
