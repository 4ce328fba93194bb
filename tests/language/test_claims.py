"""Claims about the score: rules against their examples, sentences against what a listener takes of them."""

from __future__ import annotations

import tomllib

import pytest

from reviewkit.language import rules
from reviewkit.language.claims import claims
from reviewkit.language.tokens import Sentence, sentences
from reviewkit.model import Mention, Segment, Transcript, Word

SCORE_RULES = tomllib.loads((rules.RULES / "score.toml").read_text(encoding="utf-8"))["rule"]
EXAMPLES = [(row["name"], text, True) for row in SCORE_RULES for text in row.get("examples", ())]
EXAMPLES += [(row["name"], text, False) for row in SCORE_RULES for text in row.get("counterexamples", ())]


def talk(text: str) -> tuple[Sentence, ...]:
    """`text` as said in one go, three words a second."""
    words = tuple(Word(word, k / 3, (k + 1) / 3) for k, word in enumerate(text.split()))
    return sentences(Transcript((Segment(words),)))


def read(text: str) -> list[Mention]:
    book, said = rules.load(), talk(text)
    return claims(said, [book.in_sentence(sentence) for sentence in said])


def plain(text: str, *kinds: str) -> list[tuple[str, object]]:
    return [(m.kind, m.value) for m in read(text) if not m.mood and m.kind in kinds]


@pytest.mark.parametrize(("name", "text", "fires"), EXAMPLES)
def test_a_rule_fires_on_its_examples_and_not_on_its_counterexamples(
    name: str, text: str, fires: bool
) -> None:
    book = rules.load()
    rule = next(rule for rule in book.rules if rule.name == name)
    said = talk(text)
    # A rule that fires may still yield to a longer or heavier one of its kind.
    if fires or rule.kind == "mask":
        fired = any(rule.pattern.search(sentence.text) for sentence in said)
    else:
        fired = any(mention.rule == name for sentence in said for mention in book.in_sentence(sentence))
    assert fired == fires


SCORES = ("strokes", "score_word", "hole_to_par")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Rolled that in from nowhere for a birdie.", [("score_word", -1)]),
        ("Knocked it in for a five.", [("strokes", 5)]),
        ("And I walk off with a scrappy old seven.", [("strokes", 7)]),
        ("Tap in, four, moving on.", [("strokes", 4)]),
        # The standing said again is no score, another number is.
        ("It's in! Birdie! Five over! Five!", [("score_word", -1)]),
        ("Tapped that in. That's two under. Two, I tell you.", []),
        ("Tapped that in. That's two under. Three.", [("strokes", 3)]),
        ("Two putts for par there.", [("score_word", 0)]),
        ("Two feet left. And five.", [("strokes", 5)]),
        ("In. Five there. Seven one-putts, let me check that. No, six of them.", [("strokes", 5)]),
        ("That's a double bogey, sadly.", [("score_word", 2)]),
        ("A snowman, folks.", [("strokes", 8)]),
        ("Six on a par five.", [("strokes", 6)]),
        ("He had a five, and a seven for me too.", [("strokes", 7)]),
        ("I'm three over for the hole.", [("hole_to_par", 3)]),
        ("Ah sure look, a six, what can you do.", [("strokes", 6)]),
        ("Scrambled a four.", [("strokes", 4)]),
        ("Missed the par putt, so bogey.", [("score_word", 1)]),
        ("Had a look at birdie, settled for par.", [("score_word", 0)]),
        ("The wife made a four and I made a six.", [("strokes", 6)]),
        ("That could've been a double, so I'm delighted with a bogey.", [("score_word", 1)]),
        ("So that's a net birdie.", []),
        ("Par, bogey, par so far.", []),
        ("Nearly a birdie.", []),
        # what the hole is, what was hoped for, another day, another player: none of them this score
        ("It's a long par five up the hill.", []),
        ("I really need a birdie here.", []),
        ("If I could make a four I'd be delighted.", []),
        ("Last week I took a nine here.", []),
        ("He's in for a four.", []),
        ("My brother made a six.", []),
        ("You can write down a five.", [("strokes", 5)]),
        ("Gave one back straight away, bogey on two.", [("score_word", 1), ("score_word", 1)]),
        ("That's four birdies and two bogeys for the day.", []),
        ("This is for birdie.", []),
        ("I hit a seven from there.", []),
        ("It's a six or a hard seven from here.", []),
        ("I'm off fifteen these days.", []),
    ],
)
def test_this_holes_score(text: str, expected: list[tuple[str, object]]) -> None:
    assert plain(text, *SCORES) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("So that makes it five over after six.", [("running", 5), ("played", 6)]),
        ("Minus two with three to play.", [("running", -2), ("to_play", 3)]),
        ("Which gets me back to level par.", [("running", 0)]),
        ("We've gone from one under to two over.", [("running", 2)]),
        ("From two over to level.", [("running", 0)]),
        ("Out in thirty-nine.", [("nine", 39)]),
        ("Back in thirty-eight, seventy-seven total.", [("nine", 38), ("total", 77)]),
        ("Double bogey, ouch, from plus one to plus three.", [("running", 3)]),
        ("I was two over coming in here, so three over now.", [("running", 3)]),
        ("My mate is on four over and I'm on six over.", [("running", 6)]),
        ("She's kind when she's winning, so that's two over through three.", [("running", 2), ("played", 3)]),
        ("My mate had a five, so that's two over.", []),
        ("And he says no, sir, you're seven over.", [("running", 7)]),
        ("Five over for the twelve.", [("running", 5)]),
        ("Eighty-four, twelve over.", [("total", 84), ("running", 12)]),
        ("That's twenty-two shots after four holes.", [("total", 22), ("played", 4)]),
        ("It's a par seventy-one this place.", [("par_total", 71)]),
        ("The putt stopped two feet over the edge.", []),
        ("It settled twelve feet under the hole.", []),
        ("Two over is the target today.", []),
        ("My partner's dropped level with me.", []),
    ],
)
def test_the_standing(text: str, expected: list[tuple[str, object]]) -> None:
    kinds = ("running", "played", "to_play", "nine", "total", "par_total")
    assert plain(text, *kinds) == expected


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("So I'm lying three in the trap.", 3, "lying"),
        ("That's me hitting five now.", 5, "hitting"),
        ("Reload, three off the tee.", 3, "hitting"),
        ("This is my fourth coming up.", 4, "hitting"),
        ("It's on the green in two.", 2, "on"),
    ],
)
def test_strokes_counted_aloud(text: str, value: int, unit: str) -> None:
    counts = [m for m in read(text) if m.kind == "count" and not m.mood]
    assert (value, unit) in [(m.value, m.unit) for m in counts]


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("Eight feet left for bogey.", 1, ""),
        ("Twelve footer for par.", 0, ""),
        ("Birdie putt coming up.", -1, ""),
        ("Ten feet for a six.", 6, "strokes"),
    ],
)
def test_what_a_putt_is_for_is_no_score_yet(text: str, value: int, unit: str) -> None:
    found = read(text)
    assert [(m.value, m.unit) for m in found if m.kind == "putt_for"] == [(value, unit)]
    assert not [m for m in found if m.kind in SCORES and not m.mood]


def test_a_total_that_is_put_right_loses_its_weight_and_the_right_one_counts() -> None:
    found = [m for m in read("So that makes me nine over. No, hang on, it's eight.") if m.kind == "running"]
    assert [m.value for m in found] == [9, 8]
    assert found[0].weight < 0.5 < found[1].weight


def test_a_total_denied_is_the_one_told_before() -> None:
    said = "So that's me five over. I've counted that drop twice. It's four over, no five."
    found = [m for m in read(said) if m.kind == "running"]
    assert [m.value for m in found] == [5, 4]
    assert found[0].weight < 0.5 < found[1].weight
    said = (
        "In, that's five over. Next hole, a driver down the middle, then a seven iron onto the green, "
        "thirty feet from the hole, and up to the edge. Tapped in for par. It's four over, no five."
    )
    assert [m.value for m in read(said) if m.kind == "running"] == [5, 4, 5]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("That's nine over. The sixth, par four. It weren't nine over, it's ten.", [9, 10]),
        ("I wasn't five over back there, I was two, so it's three now.", [3]),
        ("I said four over. It isn't four, it's five.", [5]),
        # Nothing was denied: the number may be anything.
        ("That's nine over. The sixth, par four. It's ten.", [9]),
    ],
)
def test_a_standing_denied_gives_way_to_the_one_told_behind_it(text: str, expected: list[int]) -> None:
    found = [m for m in read(text) if m.kind == "running" and not m.mood]
    assert [m.value for m in found] == expected
    assert all(m.weight < 0.5 for m in found[:-1]) or len(found) == 1


@pytest.mark.parametrize(
    ("said", "counts"),
    [
        # A standing is denied, doubted, or counted again.
        ("So I wasn't six over back there, it's four.", 4),
        ("I told you three over, it's four, I forgot the drop.", 4),
        ("And that makes me five over, does it? It's four, says she.", 4),
        ("That puts me seventeen over. Bob is shaking his head. It's nineteen.", 19),
        ("So that's seven over. No, he says eight, and he's right.", 8),
        ("I make that four over. Hold on. Five.", 5),
        ("He's six over and I'm on five.", 5),
        # A club, or too far off.
        ("That's four over. He says seven, and I say eight.", 4),
        ("I make that four over. Hold on. Nine.", 4),
        ("That's four over. Five.", 4),
    ],
)
def test_the_standing_that_counts_in_the_end(said: str, counts: int) -> None:
    found = [m for m in read(said) if m.kind == "running" and not m.mood]
    assert max(reversed(found), key=lambda m: m.weight >= 0.5).value == counts


def test_a_score_that_is_put_right() -> None:
    found = [m for m in read("Tapped in. Six. No, seven, I forgot a chip.") if m.kind == "strokes"]
    assert [m.value for m in found] == [6, 7]
    assert found[0].weight < 0.5 < found[1].weight


def test_a_claim_recalled_is_marked() -> None:
    found = [m for m in read("I said six over, and it's five over.") if m.kind == "running"]
    assert [(m.value, m.mood) for m in found] == [(6, "not"), (5, "")]


@pytest.mark.parametrize(
    "text", ["tapped in for par and that's one under", "Tapped in for par, and that's one under."]
)
def test_talk_without_marks_reads_the_same(text: str) -> None:
    assert plain(text, "score_word", "running") == [("score_word", 0), ("running", -1)]


def test_the_sign_of_a_standing_is_in_its_value() -> None:
    values = [
        plain(f"That's {text}.", "running")
        for text in ("three under", "three over", "plus three", "minus three")
    ]
    assert values == [[("running", k)] for k in (-3, 3, 3, -3)]
