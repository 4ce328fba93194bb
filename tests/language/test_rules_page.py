"""docs/rules.md says what is so: its example is run, its tables held against the rules that ship."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

from reviewkit.language import lexicon, rules
from reviewkit.language.rules import load
from reviewkit.language.talk import read_talk
from reviewkit.language.tokens import sentences
from reviewkit.model import Plan
from tests.support.narrations import transcript

PAGE = (Path(__file__).parents[2] / "docs" / "rules.md").read_text(encoding="utf-8")


def block(language: str) -> str:
    found = re.search(rf"```{language}\n(.*?)```", PAGE, re.DOTALL)
    assert found
    return found[1]


SAID = [tuple(part.strip() for part in line.split("|")) for line in block("text").splitlines()]


@pytest.fixture
def own(tmp_path: Path) -> Path:
    path = tmp_path / "my-rules.toml"
    path.write_text(block("toml"), encoding="utf-8")
    return path


def meanings(said: str, own: Path | None) -> set[str]:
    talk = read_talk(transcript([said]), Plan(), own)
    return {f"{mention.kind} {mention.value}" for utterance in talk for mention in utterance.mentions}


@pytest.mark.parametrize(("said", "told"), SAID)
def test_the_worked_example_works(own: Path, said: str, told: str) -> None:
    wanted = set(told.split(", "))
    assert wanted <= meanings(said, own)
    assert not wanted <= meanings(said, None), "the example would be no example"


def test_the_worked_examples_own_sentences_hold(own: Path) -> None:
    mine = tomllib.loads(block("toml"))
    names = {row["name"] for row in mine["rule"]}
    ours = [rule for rule in load(own).rules if rule.name in names]
    assert {rule.name for rule in ours} == names
    for rule in ours:
        assert all(rule.pattern.search(text) for text in rule.examples)
        assert not any(rule.pattern.search(text) for text in rule.counterexamples)
    words = lexicon.load(own)
    for row in mine["repair"]:
        for heard, meant in row["examples"]:
            assert [s.text for s in sentences(transcript([heard]), words)] == [meant]
        for text in row["counterexamples"]:
            assert [s.text for s in sentences(transcript([text]), words)] == [text]


def test_every_kind_and_key_is_on_the_page() -> None:
    shown = set(re.findall(r"`([\w?]+)`", PAGE))
    kinds = {rule.kind for rule in load().rules if not rule.kind.endswith("?")}
    assert kinds - shown == set()
    keys = {key for path in rules.RULES.glob("*.toml") for row in _tables(path) for key in row}
    assert keys - shown == set()


def test_every_value_of_a_place_a_strike_and_a_contact_is_on_the_page() -> None:
    shown = set(re.findall(r"`([\w?]+)`", PAGE))
    used = {rule.value for rule in load().rules if rule.kind in ("place", "strike", "contact", "lie")}
    assert {str(value) for value in used if value and not str(value).startswith("$")} - shown == set()


def _tables(path: Path) -> list[dict[str, object]]:
    table = tomllib.loads(path.read_text(encoding="utf-8"))
    return [*table.get("rule", []), *table.get("repair", [])]
