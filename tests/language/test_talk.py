"""Utterances, whose stroke was meant, and whether it was played."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewkit.language.players import anonymise, partners
from reviewkit.language.talk import read_talk
from reviewkit.language.tokens import sentences
from reviewkit.model import Mention, Plan, Segment, Talk, Transcript, Word
from tests.support.narrations import transcript


def talk(*lines: str, names: tuple[str, ...] = ()) -> Talk:
    return read_talk(transcript(lines), Plan(names=names))


def found(given: Talk, *kinds: str) -> list[Mention]:
    return [mention for utterance in given for mention in utterance.mentions if mention.kind in kinds]


def moods(line: str, kind: str) -> list[tuple[object, str]]:
    return [(mention.value, mention.mood) for mention in found(talk(line), kind)]


@pytest.mark.parametrize(
    ("lines", "names", "expected"),
    [
        (["I'm out with Tadhg today.", "Tadhg hit it left."], (), {"tadhg"}),
        (["My buddy Ines hit it long.", "Then Ines took two putts."], (), {"ines"}),
        (["So Ines's ball is short."], (), {"ines"}),
        (["Ines hit it long."], ("Ines",), {"ines"}),
        # Named once, at the start of a sentence, by what only a player does or has.
        (["Graham duffs his."], (), {"graham"}),
        (["Ollie's away."], (), {"ollie"}),
        (["Then Priya holes hers."], (), {"priya"}),
        (["Morwenna splashed out and took two putts."], (), {"morwenna"}),
        (["Meanwhile Bryn chips to four feet."], (), {"bryn"}),
        (["Olu hits driver, miles."], (), {"olu"}),
        (["Tamsin shanked."], (), {"tamsin"}),
        (["Fergus's tee shot is in the water."], (), {"fergus"}),
        (["Sunniva is first to play."], (), {"sunniva"}),
        # In talk without capitals a name is known from elsewhere.
        (["graham duffs his"], ("Graham",), {"graham"}),
        (["graham duffs his"], (), set()),
        (["will holes his", "will it hold"], (), set()),
        (["Driver holes nobody's putt.", "Birdie putts scare me.", "Par drives are rare."], (), set()),
        (["Bunker shot, and it's out.", "Wedge to four feet.", "Putt's away."], (), set()),
        (["Tuesday's putt was better.", "Yesterday's drive was longer."], (), set()),
        (["Everyone hits driver here.", "Nobody chips from there."], (), set()),
        (["Quillback Flats drives me mad."], (), set()),
        (
            ["Clubhouse left of the green.", "The clubhouse chips at my nerves. Clubhouse chips it."],
            (),
            set(),
        ),
        # A recogniser's other spelling, where only a name is written big: between marks, before a score.
        (["Merv hit driver. Oh, Merv is in.", "Lying two, Murk, on already."], (), {"merv", "murk"}),
        (["Merv hit driver. Oh, Merv is in.", "Murk, seven."], (), {"merv", "murk"}),
        (["Merv hit driver. Oh, Merv is in.", "Murk by the dam."], (), {"merv"}),
        # Whoever goes by a role, with a capital or without, once he does something.
        (["The Secretary, who had made four, whistled."], (), {"secretary"}),
        (["and our vicar hit his into the trees"], (), {"vicar"}),
        (["The colonel's whiskers are wet.", "I asked the doctor about it."], (), set()),
        # Capitals alone make nobody a player: places, days, clubs, the first word of a sentence.
        (["Standing on the tee at Quillback Flats.", "Quillback Flats was wet on Monday."], (), set()),
        (["Driver went left.", "I hit Driver again."], (), set()),
        (["That Is just hit it.", "Then Is holed it."], (), set()),
        (["Short putt left.", "Missed it."], (), set()),
        # Nor does a word put right, whatever was written big.
        (["Plastic never had a chance.", "And, Plastic, never again."], (), set()),
    ],
)
def test_partners_are_those_who_act(lines: Sequence[str], names: tuple[str, ...], expected: set[str]) -> None:
    words = transcript(lines)
    assert partners(words, sentences(words), names) == expected


def test_a_partners_name_gives_way_everywhere_and_offsets_still_fit() -> None:
    (said,) = sentences(transcript(["And Ines's ball, well, Ines hit it."]))
    hidden = anonymise(said, frozenset({"ines"}))
    assert hidden.text == "and partner's ball , well , partner hit it ."
    for token, at in zip(hidden.tokens, hidden.starts, strict=True):
        assert hidden.text[at : at + len(token.text)] == token.text
    assert anonymise(said, frozenset({"tadhg"})) is said
    (role,) = sentences(transcript(["I saw the Vicar hit it."]))
    assert anonymise(role, frozenset({"vicar"})).text == "i saw partner hit it ."


def test_a_titled_or_accented_name_is_a_name() -> None:
    lines = ["Father Benedek had a nine iron.", "I have Maïra's ball here. Maïra hit hers."]
    words = transcript(lines)
    assert partners(words, sentences(words), ()) == {"benedek", "maïra"}


def test_a_partners_strokes_are_anothers_whatever_the_name() -> None:
    read = talk("I'm out with Zebedee.", "Zebedee hit driver into the rough.", "I hit 3 wood in the fairway.")
    assert [(m.value, m.mood) for m in found(read, "club", "place")] == [
        *(("D", "other"), ("rough", "other")),
        *(("3W", ""), ("fairway", "")),
    ]


@pytest.mark.parametrize(
    ("line", "kind", "expected"),
    [
        ("She holed out from the bunker.", "holed", [(None, "other")]),
        ("My mate hit driver, a big one, into the rough.", "place", [("rough", "other")]),
        # Another's turn reaches on through the sentence, not into the next.
        ("My mate hit driver. I hit 3 wood.", "club", [("D", "other"), ("3W", "")]),
        ("I should have hit 9 iron, but I hit 8 iron.", "club", [("9I", "not"), ("8I", "")]),
        ("I was going to hit driver.", "club", [("D", "plan")]),
        # What else is meant is told in the same form.
        (
            "I'm going to aim left, and let the wind carry it on to the fairway.",
            "place",
            [("fairway", "plan")],
        ),
        ("I was going to lay up, and I pulled it on to the fairway.", "place", [("fairway", "")]),
        # The words of the game are nobody's name, however the listener writes them.
        ("By the watch and Wedge, full one. Wedge from eighty, on the green.", "place", [("green", "")]),
        ("Not a 7 iron, a 6 iron.", "club", [("7I", "not"), ("6I", "")]),
        ("It's not the driver, it's the 3 wood.", "club", [("D", "not"), ("3W", "")]),
        ("No, 7 iron it is.", "club", [("7I", "")]),
        ("Not my best 7 iron.", "club", [("7I", "")]),
        ("Talked myself out of the 5 wood and hit 4 hybrid.", "club", [("5W", "not"), ("4H", "")]),
        ("Talked myself out of a par with the 5 wood.", "club", [("5W", "with")]),
        ("Should be a wedge, but I've taken 9.", "club", [("9I", "")]),
        ("I'd the 8 iron in my hand, but I've swapped it for the 9.", "club", [("8I", "plan"), ("9I", "")]),
        ("I had every intention of hitting 5 wood.", "club", [("5W", "plan")]),
        ("The smart money says lay up out to the left.", "miss", [("left", "plan")]),
        ("I pulled the 5 hybrid on it.", "miss", []),
        ("I pulled the shot.", "miss", [("left", "")]),
        ("It drifted off in the right rough.", "place", [("rough", "")]),
        ("It came out of the rough.", "place", []),
        ("It's in the grass there, next to the bunker.", "place", [("rough", "")]),
        ("Should be a par, but I've taken 9.", "club", []),
        ("Last week I hit driver here.", "club", [("D", "past")]),
        ("Ten years ago that was a pitching wedge.", "club", [("PW", "past")]),
        ("There's water all down the left.", "miss", [("left", "land")]),
        ("There's a big bunker on the right.", "miss", [("right", "land")]),
        ("Hit it into the water.", "place", [("penalty", "")]),
        ("Pulled it left into the rough.", "miss", [("left", "")]),
        # What was planned and done is not only meant.
        ("The plan is three wood, and the plan is executed.", "club", [("3W", "")]),
        ("The plan is three wood, and then the eight iron.", "club", [("3W", "plan"), ("8I", "")]),
        # Who answers speaks of himself.
        ("Don't ask me, he said, I'm in the gorse.", "place", [("rough", "other")]),
        ("I waved at him and hit driver.", "club", [("D", "")]),
        # A statement of its own is not meant, though no comma was heard before it.
        ("Don't you dare look up it's on, 12 feet.", "place", [("green", "")]),
        ("I hope it's on the green.", "place", [("green", "plan")]),
        ("That one wanders off and doesn't go in.", "stayed_out", [(None, "")]),
        ("5 wood in the hand, then the wind dropped, so 5 iron.", "club", [("5W", "plan"), ("5I", "")]),
    ],
)
def test_moods_say_whose_and_whether(line: str, kind: str, expected: list[tuple[object, str]]) -> None:
    assert moods(line, kind) == expected


def test_moods_reach_so_many_words_where_no_mark_is_heard() -> None:
    far = "my mate hit it left and there was a good laugh about that one coming down the hill"
    run_on = f"{far} 90 to the pin pitching wedge and it's on the green"
    assert moods(run_on, "club") == [("PW", "")]
    assert moods("he's hit pitching wedge and it's on the green", "club") == [("PW", "other")]


def test_moods_themselves_are_not_handed_on() -> None:
    assert found(talk("I should have hit 9 iron.", "She hit driver."), "mood", "mask") == []


def test_utterances_part_at_marks_and_at_silences() -> None:
    read = talk("Driver in the fairway. Lovely! And now", "a wedge.")
    assert [utterance.text for utterance in read] == [
        "driver in the fairway .",
        "lovely !",
        "and now a wedge .",
    ]
    words = tuple(Word(text, at, at + 0.3) for text, at in (("Driver", 0.0), ("Wedge", 0.4), ("Putt", 2.0)))
    apart = read_talk(Transcript((Segment(words),)), Plan())
    assert [utterance.text.strip(" .") for utterance in apart] == ["driver wedge", "putt"]
    assert apart[1].gap_s == pytest.approx(2.0 - 0.7)


@given(st.lists(st.text(alphabet="abI ,.!?'’-0157é", min_size=1, max_size=20), max_size=15))
def test_utterances_share_out_every_word_in_order(lines: list[str]) -> None:
    given = transcript([line for line in lines if line.strip()])
    read = read_talk(given, Plan())
    spans = [(utterance.first, utterance.last) for utterance in read]
    assert all(first <= last for first, last in spans)
    # A word with a mark inside it ("2.Two") may end one utterance and begin the next.
    assert all(before[1] <= after[0] for before, after in itertools.pairwise(spans))
    assert all(u.first <= m.first <= m.last <= u.last for u in read for m in u.mentions)
    assert all(u.gap_s >= 0 and u.start_s <= u.end_s for u in read)


def test_a_club_told_across_a_pause_that_is_written_as_a_comma() -> None:
    """What a recogniser without full stops writes between two breaths parts no length from its club."""
    spoken = (
        "so that is the fairway and a lucky one at that, 142 to the flag, so it's an 8, and onto the green, "
        * 4
    )
    at, words = 0.0, []
    for word in spoken.split():
        words.append(Word(word, at, at + 0.2))
        at += 0.6 if word.endswith(",") else 0.22
    found = read_talk(Transcript((Segment(tuple(words)),)), Plan())
    assert len(found) > 4
    assert [m.value for u in found for m in u.mentions if m.kind == "club"] == ["8I"] * 4


@pytest.mark.parametrize(
    ("told", "lengths"), [("It's 2205 metres to the flag.", []), ("It's 205 metres to the flag.", [205])]
)
def test_a_length_that_no_hole_has_is_none(told: str, lengths: list[int]) -> None:
    talk = read_talk(transcript([told]), Plan())
    assert [m.value for said in talk for m in said.mentions if m.kind == "distance"] == lengths
