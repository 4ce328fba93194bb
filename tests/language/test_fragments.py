"""Numbers heard in parts, as a listener wrote them; the sentences are invented here."""

from __future__ import annotations

import pytest

from reviewkit.language.tokens import sentences
from reviewkit.model import Segment, Transcript, Word

WHOLE = {
    "within two yards of it, 180, 8 left": "within 2 yards of it , 188 left",
    "140 for to the flag": "144 to the flag",
    "150 to to the pin": "152 to the pin",
    "so I have 150 to. Left, and": "so i have 152 . left , and",
    "so it's 130 to, 8 iron": "so it's 132 , 8 iron",
    "5th to 5 feet away": "55 feet away",
    "5 to 5 feet, uphill": "55 feet , uphill",
    "30 to 2 feet, downhill": "32 feet , downhill",
    "so 2408 to the hole": "so 248 to the hole",
    "5105 left": "105 left",
    "I've got to 35 to the hole": "i've got 235 to the hole",
    "so I got to 35, and it's swamp": "so i got 235 , and it's swamp",
    "now I've 4 to 5 yards to the pin": "now i've 45 yards to the pin",
    "six five yards with it": "65 yards with it",
    "So to 36 to the stick": "so 236 to the stick",
    "it's 1 under 40 to the pin": "it's 140 to the pin",
    "one under 18 for me": "118 for me",
    "it stopped too and a half feet away": "it stopped 2.5 feet away",
    "part 4 with the woods, 4 of 5.": "par 4 with the woods , 405 .",
    "back into it for 45 playing 470": "back into it 445 playing 470",
    "next, 5, 3, 31, it's a short par 4": "next , 5 , 331 , it's a short par 4",
    "this one's the par 5, 4, 9 to 4, and": "this one's the par 5 , 494 , and",
    "it's back, 3 84, driver": "it's back , 384 , driver",
    "par 4 for 102, and the pond": "par 4 402 , and the pond",
    "thank you. 1, 2, 5, no wind": "thank you . 125 , no wind",
    "to 15 to go, silly": "215 to go , silly",
    "that's to 18 for iron, no": "that's 218 4 iron , no",
    "I mean that's free 20 and it's": "i mean that's 320 and it's",
    "it gets lively, for 110, this straight into it": "it gets lively , 410 , this straight into it",
    "the big par 3 .196 over the gulley": "the big par 3 , 196 over the gulley",
    "so short, it's 4 .81, I am": "so short , it's 481 , i am",
    "shanked it, 9 -5, 9 iron": "shanked it , 95 , 9 iron",
    "there, 110 .72 to the pole": "there , 172 to the pole",
    "88 .54 degree, then": "88 , 54 degree , then",
    "10th 8388 par 4": "10th 8 388 par 4",
    "last hole then, par 5, 112.": "last hole then , par 5 , 512 .",
    "14, par 4, par 38, uphill": "14 , par 4 , 438 , uphill",
    "a par 4300 and 44 yards with frost": "a par 4 344 yards with frost",
    "the long one for 70 to, par 5": "the long one 472 , par 5",
    "it's on .25 feet": "it's on 25 feet",
    "and that's 75 over, so": "and that's 7 , 5 over , so",
    "It's a 6 -10 over.": "it's a 6 , 10 over .",
    "So that's 511 over now.": "so that's 5 , 11 over now .",
    "It's 210 over.": "it's 210 over .",
    "It's 515 over the back tees.": "it's 515 over the back tees .",
    "home hole that's 18341": "home hole that's 18 341",
    "10 is 3, 7, 6 yards": "10 is 376 yards",
    "The 9th, for 188 yards": "the 9th , 488 yards",
    "the 4th, for 155, and it goes uphill": "the 4th , 455 , and it goes uphill",
    "par five, downwind for once, for 72, and if": "par 5 , downwind for once , 472 , and if",
    "the par 5, for 55 from our tees": "the par 5 , 455 from our tees",
    "2 -fifth five to go": "255 to go",
    "one -third at 5 to the stick, 8 iron": "135 to the stick , 8 iron",
    "it's a hundred and seven to 4 across the gully": "it's 174 across the gully",
    "9 -5 to the stake": "95 to the stick",
    "Seven to one left, so a sand wedge": "71 left , so a sand wedge",
    "One third nine. The short one.": "139 . the short one .",
    "I took care, for hundred and five yards this hole": "i took care , 405 yards this hole",
    "from 150 to not bad on the green": "from 152 not bad on the green",
    "again. For 91, hit my three wood off the tee": "again . 491 , hit my 3 wood off the tee",
    "Three, eight, one driver, big slice": "381 driver , big slice",
    "so the opener, 3, 7, 6, par 4.": "so the opener , 376 , par 4 .",
    "that is 3, 4, 5, par 4 it was": "that is 3 , 4 , 5 , par 4 it was",
    "Five's the hardest one for 30, driver": "5 is the hardest one 430 , driver",
    "the last for 168 yards, a car five": "the last 468 yards , a par 5",
    "the eighth is reachable for 55 downhill": "the 8th is reachable 455 downhill",
    "it says for 198 on the sign": "it says 498 on the sign",
    "I've got a third of five footer": "i've got a 35 footer",
    "a par 5 that runs down to the beach for 78 and I": "a par 5 that runs down to the beach 478 and i",
    "100, 18 for my third": "118 for my 3rd",
    "100, 18 from there, and": "118 from there , and",
    "the third. Free 6 -5. Downwind": "the 3rd . 365 . downwind",
    "it's on, went to five feet off": "it's on , 25 feet off",
    "the last. 1 -6 to 5, a one-shotter": "the last . 165 , a one shotter",
    "over the creek. One, fifty, two. And": "over the creek . 152 . and",
    "level with the flag and third of five feet to the left": "level with the flag and 35 feet to the left",
    "it's 160 to across the valley": "it's 162 across the valley",
    "so 70 to 9 iron from there": "so 72 9 iron from there",
    "the last is 310 to, par 4": "the last is 312 , par 4",
    "1 6 to 3 left, up the hill": "163 left , up the hill",
    "110 for yards over the sand": "114 yards over the sand",
    "off the collar, third nine feet, lagged": "off the collar , 39 feet , lagged",
    "it left a hundred and maybe seven": "it left 187",
    "par five, four hundred, and maybe seven yards": "par 5 , 487 yards",
    "found it, 1208 to go": "found it , 128 to go",
    "it's only 1206 and": "it's only 126 and",
    "our five -hundred -eighth yards": "our 508 yards",
    "a hundred and thirty -eighth, I": "138 , i",
    "the 500 -in -3 yard hole": "the 503 yard hole",
}
APART = (
    "par 5 and 2 putts , for 20 points",
    "3 on the 4th , for 155 points",
    "it's a 6 iron . for 129 . and it's short",
    "130 to the front , 150 to the flag",
    "i shot 80 , 2 left to play",
    "that's a 5 , 4 , 43",
    "the 56 over the back",
    "wedge from 90 , 4 feet",
    "from 6 to 4 feet",
    "it rolled 4 to 5 yards past",
    "i had 160 to the flag",
    "i'm 1 under through 18",
    "so to 50 left of the green",
    "i made 3 of 4 , 4 of 5 .",
    "get it down to 35 to the pin",
    "we got to 35 points by then",
    "i've been at it for 20 yards",
    "welcome , for 18 off we go",
    "it's 4 or 5 feet",
    "we're at 150 , 7 iron",
    "4 to 5 feet",
    "hit a 9 to 6 feet",
    "stuffed the 7 to 4 feet",
    "i've 150 to . the flag is back",
    "that's 72 for . me",
    "the par 5 where i need 5 or better for 78 and",
    "i'd be in for 45 , with luck",
    "10 to 18 , par 36",
    "i've been at it for 120 yards",
    "4 , 5 , 6 holes",
    "from 107 to 4 feet",
    "100 , 18 holes",
    "100 , 56 degree",
    "and it went to 5 feet",
    "i won 9 to 5 in the end",
    "2 4th 5 to come",
    "in 2004 and",
    "the 3rd 9 feet",
    "i've 1 , 50 , 2 and 3",
)


def read(text: str) -> str:
    words = tuple(Word(word, at * 0.3, at * 0.3 + 0.2) for at, word in enumerate(text.split()))
    return " ".join(sentence.text for sentence in sentences(Transcript((Segment(words),))))


@pytest.mark.parametrize(("heard", "meant"), WHOLE.items(), ids=WHOLE)
def test_a_number_in_parts_is_made_whole(heard: str, meant: str) -> None:
    assert read(heard) == meant


@pytest.mark.parametrize("said", APART)
def test_numbers_that_stand_apart_stay_so(said: str) -> None:
    assert read(said) == said


def test_what_was_heard_is_kept() -> None:
    words = (Word("140", 0.0, 0.3), Word("for", 0.4, 0.5), Word("to", 0.6, 0.7), Word("go", 0.7, 0.9))
    token = sentences(Transcript((Segment(words),)))[0].tokens[0]
    assert (token.text, token.value, token.first, token.last, token.repaired) == ("144", 144, 0, 1, "140 for")
