"""Which words led to what: a round's reading taken apart hole by hole, from its folder's words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from reviewkit.errors import FolderError
from reviewkit.language.talk import read_talk
from reviewkit.log import RoundFolder
from reviewkit.log.amended import base_reading
from reviewkit.log.transcript import load_transcript
from reviewkit.model import HeardAgain, HoleScore, HoleSpan, Mention, Round, Shot, Talk, Utterance
from reviewkit.pipeline import confirmed, own_rules
from reviewkit.reasoning import hearing_of, likeliest, par_odds, reason_talk, within
from reviewkit.shots import clubs_told_last, tell

CANDIDATE = "?"
"""Kinds that end so are not settled yet; what they come to stands beside them under another kind."""


@dataclass(frozen=True, slots=True)
class HoleExplanation:
    """One hole's reading and what it rests on.

    `talk` are the hole's utterances, candidates left out. `par` is par -> probability by words and card,
    `counts` strokes, penalties included, -> probability by the tale of strokes alone. `shots` and `score` are
    the reading's, with what a person has confirmed taken as certain. `again` tells of
    another hearing, where the hole was listened to again.
    """

    span: HoleSpan
    score: HoleScore
    talk: Talk
    par: Mapping[int, float]
    counts: Mapping[int, float]
    shots: tuple[Shot, ...]
    again: HeardAgain | None = None

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
    transcript = load_transcript(folder.transcript_json)
    talk = read_talk(transcript, plan, Path(named) if named else own_rules(folder))
    cuts = [float(cut) for cut in settings.get("cuts") or ()]
    reading = reason_talk(transcript, talk, plan, cuts, confirmed(folder))
    spans = [span for span in reading.spans if hole in (None, span.hole)]
    if hole is not None and not spans:
        played = ", ".join(str(span.hole) for span in reading.spans) or "none"
        raise FolderError(folder.path, f"has no hole {hole}.", f"Holes played: {played}.")
    clubs_last = clubs_told_last(within(talk, span) for span in reading.spans)
    return tuple(
        _hole(reading, span, within(talk, span), hearing_of(transcript, span), clubs_last) for span in spans
    )


def _hole(
    reading: Round, span: HoleSpan, spoken: Talk, again: HeardAgain | None, clubs_last: bool
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
        again=again,
    )


def _settled(utterance: Utterance) -> Utterance:
    kept = tuple(mention for mention in utterance.mentions if not mention.kind.endswith(CANDIDATE))
    return replace(utterance, mentions=kept)
