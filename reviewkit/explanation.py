"""Which words led to what: a round's reading taken apart hole by hole, from its folder's words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from reviewkit.errors import FolderError
from reviewkit.hearings import hearings, together
from reviewkit.language.talk import read_talk
from reviewkit.log import RoundFolder
from reviewkit.log.amended import base_reading
from reviewkit.log.transcript import load_transcript
from reviewkit.model import HoleScore, HoleSpan, Mention, Round, Shot, Talk, Transcript, Utterance
from reviewkit.pipeline import confirmed, own_rules
from reviewkit.reasoning import likeliest, par_odds, reason_talk, within
from reviewkit.shots import clubs_told_last, tell
from reviewkit.speech.manner import FIRST

CANDIDATE = "?"
"""Kinds that end so are not settled yet; what they come to stands beside them under another kind."""


@dataclass(frozen=True, slots=True)
class HoleExplanation:
    """One hole's reading and what it rests on.

    `talk` are the hole's utterances, candidates left out. `par` is par -> probability by words and card,
    `counts` strokes, penalties included, -> probability by the tale of strokes alone. `shots` and `score` are
    the reading's, with what a person has confirmed taken as certain. Where the hole was heard more than once,
    `hearings` is manner -> what was heard in it, that of `talk` first, and `odds` strokes -> probability over
    them all.
    """

    span: HoleSpan
    score: HoleScore
    talk: Talk
    par: Mapping[int, float]
    counts: Mapping[int, float]
    shots: tuple[Shot, ...]
    odds: Mapping[int, float]
    hearings: Mapping[str, str]

    def mentions(self, shot: Shot) -> tuple[Mention, ...]:
        """Those said while a told stroke was told; none for an implied one."""
        if not shot.evidence:
            return ()
        return tuple(
            mention
            for utterance in self.talk
            for mention in utterance.mentions
            if shot.start_s <= mention.start_s and mention.end_s <= shot.end_s
        )


def explain(folder: RoundFolder, hole: int | None = None) -> tuple[HoleExplanation, ...]:
    """Every hole in order of play, or the one asked for.

    Raises FolderError without a transcript or for a hole that was not played, CardError for the rules file.
    """
    if not folder.transcript_json.exists():
        raise FolderError(folder.path, "keeps no words to explain.", "Read the footage again.")
    plan = base_reading(folder).plan
    settings = folder.meta.get("settings") or {}
    named = str(settings.get("rules") or "")
    rules = Path(named) if named else own_rules(folder)
    cuts = [float(cut) for cut in settings.get("cuts") or ()]
    facts = confirmed(folder)
    words = dict(hearings(load_transcript(folder.transcript_json)))
    talks = {name: read_talk(heard, plan, rules) for name, heard in words.items()}
    readings = {name: reason_talk(heard, talks[name], plan, cuts, facts) for name, heard in words.items()}
    reading = together(readings)
    spans = [span for span in reading.spans if hole in (None, span.hole)]
    if hole is not None and not spans:
        played = ", ".join(str(span.hole) for span in reading.spans) or "none"
        raise FolderError(folder.path, f"has no hole {hole}.", f"Holes played: {played}.")
    clubs_last = {
        name: clubs_told_last(within(talks[name], span) for span in told.spans)
        for name, told in readings.items()
    }
    explained = []
    for span in spans:
        taken = reading.taken.get(span.hole, FIRST.name)
        spoken, heard = within(talks[taken], span), _heard(span, taken, words)
        explained.append(_hole(reading, span, spoken, heard, clubs_last[taken]))
    return tuple(explained)


def _hole(
    reading: Round, span: HoleSpan, spoken: Talk, heard: Mapping[str, str], clubs_last: bool
) -> HoleExplanation:
    mentions = [mention for utterance in spoken for mention in utterance.mentions]
    odds = par_odds(mentions, reading.plan, span.hole)
    return HoleExplanation(
        span=span,
        score=next(score for score in reading.scores if score.hole == span.hole),
        talk=tuple(_settled(utterance) for utterance in spoken),
        par=odds,
        counts=tell(span, spoken, likeliest(odds), clubs_last).counts,
        shots=tuple(shot for shot in reading.shots if shot.hole == span.hole),
        odds=reading.odds[span.hole],
        hearings=heard,
    )


def _heard(span: HoleSpan, taken: str, words: Mapping[str, Transcript]) -> dict[str, str]:
    """What each manner heard of the hole, the one taken first; nothing where it was heard once."""
    heard = {
        name: " ".join(word.text for word in words[name].words if span.start_s <= word.start_s < span.end_s)
        for name in (taken, *(name for name in words if name != taken))
    }
    return heard if len(set(heard.values())) > 1 else {}


def _settled(utterance: Utterance) -> Utterance:
    kept = tuple(mention for mention in utterance.mentions if not mention.kind.endswith(CANDIDATE))
    return replace(utterance, mentions=kept)
