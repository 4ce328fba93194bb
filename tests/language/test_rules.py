"""The rule book against its own examples, and what a user's rules file may do to it."""

from __future__ import annotations

import os
import tomllib
from pathlib import Path

import pytest

from reviewkit.errors import CardError
from reviewkit.language.needed import known
from reviewkit.language.rulebook import Rule
from reviewkit.language.rules import RULES, groups_of, load
from reviewkit.language.tokens import Sentence, sentences
from reviewkit.model import Mention, Segment, Transcript, Word

BOOK = load()
EXAMPLES = [(rule, text) for rule in BOOK.rules for text in rule.examples]
COUNTEREXAMPLES = [(rule, text) for rule in BOOK.rules for text in rule.counterexamples]


def said(text: str) -> tuple[Sentence, ...]:
    """`text` in one go, as a listener gives it: marks written to the word before them."""
    words: list[str] = []
    for word in text.split():
        if word in (",", ".", "!", "?") and words:
            words[-1] += word
        else:
            words.append(word)
    timed = tuple(Word(word, at * 0.3, at * 0.3 + 0.28) for at, word in enumerate(words))
    return sentences(Transcript((Segment(timed),)))


def mentions(text: str, rules: Path | None = None) -> list[Mention]:
    return load(rules).mentions(said(text))


def label(value: object) -> str:
    return value.name if isinstance(value, Rule) else str(value)


@pytest.mark.parametrize(("rule", "text"), EXAMPLES, ids=label)
def test_a_rule_makes_a_mention_of_its_examples(rule: Rule, text: str) -> None:
    found = mentions(text)
    if rule.kind == "mask":
        # A mask makes no mention; it is at work when its words are in the sentence.
        assert any(rule.pattern.search(sentence.text) for sentence in said(text))
    elif not any(mention.rule == rule.name for mention in found):
        # A heavier rule of the same kind may have the words.
        assert rule.kind in {mention.kind for mention in found}
        assert any(rule.pattern.search(sentence.text) for sentence in said(text))


@pytest.mark.parametrize(("rule", "text"), COUNTEREXAMPLES, ids=label)
def test_a_rule_makes_none_of_its_counterexamples(rule: Rule, text: str) -> None:
    assert rule.name not in {mention.rule for mention in mentions(text)}
    if rule.kind == "mask":
        assert not any(rule.pattern.search(sentence.text) for sentence in said(text))


def own(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "my-rules.toml"
    path.write_text(text, encoding="utf-8")
    return path


def clubs(text: str, rules: Path | None) -> list[object]:
    return [mention.value for mention in mentions(text, rules) if mention.kind == "club"]


def test_no_two_rules_of_the_package_share_a_name() -> None:
    """The later one would replace the earlier without a word."""
    files = sorted(RULES.glob("*.toml"))
    names = [
        rule["name"] for path in files for rule in tomllib.loads(path.read_text("utf-8")).get("rule", ())
    ]
    assert len(names) > 100 and len(set(names)) == len(names)


def test_a_users_file_adds_words_and_keeps_those_there_are(tmp_path: Path) -> None:
    rules = own(tmp_path, '[classes.club]\n"widowmaker" = "2I"\n')
    assert clubs("the widowmaker and then an 8 iron", None) == ["8I"]
    assert clubs("the widowmaker and then an 8 iron", rules) == ["2I", "8I"]


def test_a_users_rule_replaces_the_one_of_its_name(tmp_path: Path) -> None:
    rules = own(
        tmp_path,
        '[[rule]]\nname = "club by name"\nkind = "club"\npattern = "trusty spoon"\nvalue = "3W"\n',
    )
    assert clubs("a driver , then the trusty spoon", rules) == ["3W"]


def test_a_pattern_and_a_class_may_be_lists_of_alternatives(tmp_path: Path) -> None:
    rules = own(
        tmp_path,
        '[classes]\nlofty = ["spoon", "brassie|cleek"]\n'
        '[[rule]]\nname = "mine"\nkind = "club"\npattern = ["old <lofty>", "trusty"]\nvalue = "3W"\n',
    )
    assert clubs("the old cleek , the old spoon , the trusty , a brassie", rules) == ["3W", "3W", "3W"]


def test_a_rule_can_be_switched_off(tmp_path: Path) -> None:
    rules = own(tmp_path, '[[rule]]\nname = "club by name"\noff = true\n')
    assert clubs("driver , down the middle", None) == ["D"]
    assert clubs("driver , down the middle", rules) == []
    assert len(load(rules).rules) == len(BOOK.rules) - 1


def test_a_mask_hides_words_from_the_kinds_it_lists(tmp_path: Path) -> None:
    rules = own(
        tmp_path,
        '[[rule]]\nname = "the club bar"\nkind = "mask"\npattern = "driver bar"\nvalue = "club"\n',
    )
    assert clubs("past the driver bar with an 8 iron", None) == ["D", "8I"]
    assert clubs("past the driver bar with an 8 iron", rules) == ["8I"]


def test_a_changed_file_is_read_again(tmp_path: Path) -> None:
    rules = own(tmp_path, '[classes.club]\n"spoon" = "3W"\n')
    assert clubs("the spoon again", rules) == ["3W"]
    text = '[classes.club]\n"spoon" = "5W"\n# changed\n'
    rules.write_text(text, encoding="utf-8")
    os.utime(rules, ns=(1, 10**18))
    assert clubs("the spoon again", rules) == ["5W"]


RULE = '[[rule]]\nname = "mine"\nkind = "club"\npattern = "{}"\n'


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("[[rule]\n", "not valid TOML"),
        ('[[rule]]\nkind = "club"\npattern = "x"\n', "needs a name"),
        ('[[rule]]\nname = "mine"\nkind = "club"\n', "rule mine needs a kind and a pattern"),
        ('[[rule]]\nname = "mine"\npattern = "x"\n', "rule mine needs a kind and a pattern"),
        (RULE.format("x") + 'patern = "x"\n', "rule mine: patern"),
        (RULE.format("(x"), "rule mine: the pattern is not valid"),
        ('[[rule]]\nname = "mine"\nkind = "club"\npattern = []\n', "rule mine needs a kind and a pattern"),
        (
            '[[rule]]\nname = "mine"\nkind = "club"\npattern = ["x", 3]\n',
            "rule mine needs a kind and a pattern",
        ),
        (RULE.format("the <clubb>"), "rule mine uses <clubb>"),
        (RULE.format("x") + 'value = "$n"\n', "rule mine has no group n"),
        (RULE.format("x") + 'value = "{n}I"\n', "rule mine has no group n"),
        (RULE.format("x") + 'unit = "$unit"\n', "rule mine has no group unit"),
        (RULE.format("x") + 'value = "5"\n', "rule mine: '5' is no club"),
        (RULE.format("x") + "value = 5\n", "rule mine: '5' is no club"),
        ('[classes.club]\n"spoon" = "3"\n', "class club: '3' is no club"),
        (RULE.format("x") + 'weight = "heavy"\n', "rule mine"),
        (RULE.format("x") + 'need = "x"\n', "rule mine"),
        (RULE.format("x") + 'examples = ["x", 3]\n', "rule mine"),
        ('rule = "club"\n', "rule"),
        ('classes = "club"\n', "classes"),
        ("[classes]\nclub = 3\n", "club"),
        ("[classes]\nmine = []\n", "class mine"),
        ('[classes.club]\n"x" = ["D"]\n', "club"),
    ],
)
def test_a_mistake_names_the_file_and_the_rule(tmp_path: Path, text: str, told: str) -> None:
    path = own(tmp_path, text)
    with pytest.raises(CardError) as caught:
        load(path)
    assert str(path) in str(caught.value)
    assert told in caught.value.problem
    assert caught.value.remedy


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(CardError, match=r"nowhere\.toml: cannot be read"):
        load(tmp_path / "nowhere.toml")


def test_a_shipped_pattern_in_a_users_rule_is_checked_too(tmp_path: Path) -> None:
    shipped = next(rule for rule in BOOK.rules if any(known(rule.source)) and "'" not in rule.source)
    path = own(
        tmp_path, f"[[rule]]\nname = 'mine'\nkind = 'club'\npattern = '{shipped.source}'\nvalue = '$none'\n"
    )
    with pytest.raises(CardError) as caught:
        load(path)
    assert "rule mine has no group none" in caught.value.problem


@pytest.mark.parametrize("rule", BOOK.rules, ids=lambda rule: rule.name)
def test_a_shipped_rule_has_the_groups_that_it_refers_to(rule: Rule) -> None:
    named = [name for slot in (rule.value, rule.unit, rule.mood) for name in groups_of(slot)]
    assert set(named) <= set(rule.pattern.groupindex)
