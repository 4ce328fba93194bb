"""Corrections: kept, re-attached, never lost, and worked in by plain arithmetic."""

from __future__ import annotations

import multiprocessing
from dataclasses import replace
from pathlib import Path

import pytest
from support.corrections import READING, made

from reviewkit.errors import FolderError, ValueRuleError
from reviewkit.log import RoundFolder
from reviewkit.log import amend_make as make
from reviewkit.log.amend_apply import apply, facts_for
from reviewkit.log.amended import base_reading, publish, saved_round
from reviewkit.log.amendments import Correction, append, hole_facts, in_force, load
from reviewkit.model import Round


def worked(*corrections: Correction, reading: Round = READING) -> Round:
    shown, clashes = apply(reading, made(*corrections))
    assert clashes == ()
    return shown


def columns(shown: Round, hole: int, *names: str) -> list[object]:
    score = next(score for score in shown.scores if score.hole == hole)
    return [getattr(score, name) for name in names]


def strokes(shown: Round, hole: int) -> list[tuple[int, str]]:
    return [(shot.stroke, shot.kind) for shot in shown.shots if shot.hole == hole]


def test_a_set_score_moves_the_total_and_answers_its_doubt() -> None:
    shown = worked(make.change(READING, 2, None, "strokes", "5"))
    assert columns(shown, 2, "strokes", "to_par", "running_to_par", "confidence") == [5, 0, 0, 1.0]
    assert [doubt.text for doubt in shown.doubts] == ["The score is set to 5, the strokes add up to 4."]


def test_accepting_a_hole_answers_every_doubt_of_it() -> None:
    shown = worked(make.accept(READING, 2, None))
    assert shown.doubts == ()
    assert columns(shown, 2, "status", "confidence", "doubts") == ["sure", 1.0, ()]


def test_an_added_penalty_counts_in_score_numbers_and_total() -> None:
    # Rules of Golf 18.1: stroke and distance costs one penalty stroke, so the next is the third.
    shown = worked(make.change(READING, 2, 1, "penalty_strokes", "1"))
    assert [number for number, _ in strokes(shown, 2)] == [1, 3, 4, 5]
    assert columns(shown, 2, "strokes", "penalty_strokes", "running_to_par") == [5, 1, 0]


def test_an_added_putt_counts_and_a_result_carries_the_next_lie() -> None:
    shown = worked(
        make.add(READING, 1, 4, None, {"kind": "putt"}),
        make.change(READING, 1, 1, "result", "rough"),
    )
    assert columns(shown, 1, "strokes", "putts", "fairway_hit", "green_in_regulation") == [5, 3, False, True]
    assert [shot.lie for shot in shown.shots if shot.hole == 1] == ["tee", "rough", "green", "green", "green"]
    assert shown.shots[3].told is False


@pytest.mark.parametrize(
    ("correction", "holes"),
    [
        (make.merge(READING, 1, 2), {1: 8}),
        (make.split(READING, 3, 66.0, {"par": "3"}), {1: 4, 2: 2, 3: 2}),
        (make.change(READING, 2, None, "start_s", "34"), {1: 1, 2: 7}),
        (make.change(READING, 2, None, "hole", "1"), {1: 4, 2: 4}),
        (make.delete(READING, 1, None), {2: 4}),
        (make.move(READING, 2, 1, 1, 5), {1: 5, 2: 3}),
        (make.delete(READING, 1, 3), {1: 3, 2: 4}),
    ],
    ids=["merge", "split", "boundary", "renumber", "drop hole", "move stroke", "drop stroke"],
)
def test_shape_corrections_move_strokes_and_lose_none(correction: Correction, holes: dict[int, int]) -> None:
    shown = worked(correction)
    assert {score.hole: score.strokes for score in shown.scores} == holes
    assert {score.hole: len(strokes(shown, score.hole)) for score in shown.scores} == holes
    ends = [score.end_s for score in shown.scores]
    assert [score.start_s for score in shown.scores][1:] == ends[:-1], "holes lie end to end"


def test_corrections_find_their_rows_in_a_reading_that_numbers_and_times_them_otherwise() -> None:
    fixes = made(make.change(READING, 2, 2, "club", "5I"), make.change(READING, 2, None, "par", "4"))
    later = tuple(
        replace(shot, hole=shot.hole + 1, stroke=min(shot.stroke + 1, 40), start_s=shot.start_s + 1.2)
        for shot in READING.shots
    )
    scores = tuple(replace(score, hole=score.hole + 1) for score in READING.scores)
    shown, clashes = apply(replace(READING, scores=scores, shots=later), fixes)
    assert [shot.club for shot in shown.shots if shot.hole == 3] == ["D", "5I", "", ""]
    assert [clash.hole for clash in clashes] == [3, 3], "moved holes are told, not hidden"


def test_a_reading_that_changed_under_a_correction_is_a_clash_and_the_person_wins() -> None:
    fix = make.change(READING, 2, 2, "club", "5I")
    moved = tuple(replace(shot, club="7W") if shot.club == "6I" else shot for shot in READING.shots)
    shown, (clash,) = apply(replace(READING, shots=moved), made(fix))
    assert shown.shots[5].club == "5I"
    assert clash.now == "7W" and shown.doubts[0] == clash.doubt()
    seen = make.accept(shown, 2, 2, "club")
    assert apply(replace(READING, shots=moved), made(fix, replace(seen, was="7W")))[1] == ()


def test_a_correction_whose_place_is_gone_is_told() -> None:
    fix = make.change(READING, 2, 4, "distance_yd", "12ft")
    short = replace(READING, shots=READING.shots[:5])
    shown, (clash,) = apply(short, made(fix))
    assert "no longer has" in clash.text and shown.doubts[0].words == "and center cut"


def test_what_a_better_reading_now_hears_is_not_added_or_deleted_twice() -> None:
    added, dropped = make.add(READING, 1, 4, None, {"kind": "putt"}), make.delete(READING, 2, 2)
    heard = apply(READING, made(added, dropped))[0]
    again, clashes = apply(heard, made(added, dropped))
    assert clashes == ()
    assert [strokes(again, hole) for hole in (1, 2)] == [strokes(heard, hole) for hole in (1, 2)]


def test_undo_takes_back_and_undoing_an_undo_brings_back() -> None:
    fix = make.change(READING, 2, None, "strokes", "5")
    assert worked(fix, make.undo(1)) == READING
    assert in_force(made(fix, make.undo(1), make.undo(2))) == made(fix)


def test_facts_for_the_reasoning_are_the_last_word_on_each_hole() -> None:
    rows = made(
        make.change(READING, 2, None, "strokes", "5"),
        make.change(READING, 2, None, "strokes", "6"),
        make.accept(READING, 1, None),
        make.split(READING, 3, 66.0, {"par": "3"}),
        make.change(READING, 2, 1, "club", "3W"),
    )
    facts = {(fact.hole, fact.field): fact.value for fact in hole_facts(rows)}
    assert facts == {(2, "strokes"): 6, (1, "strokes"): 4, (1, "par"): 4, (3, "start_s"): 66, (3, "par"): 3}


def test_a_fact_lies_in_the_middle_of_its_hole_wherever_its_start_was_moved() -> None:
    moved = apply(READING, made(make.change(READING, 2, None, "start_s", "60")))[0]
    rows = made(make.change(READING, 2, None, "start_s", "60"), make.change(moved, 2, None, "par", "4"))
    facts = {(fact.field, fact.at_s, fact.value) for fact in facts_for(READING, rows)}
    assert facts == {("start_s", 65.5, 60.0), ("par", 65.5, 4.0)}


@pytest.mark.parametrize(
    ("hole", "stroke", "field", "text"),
    [
        (2, 1, "club", "10I"),
        (2, None, "strokes", "four"),
        (2, None, "par", "7"),
        (2, 1, "distance_yd", "far"),
        (9, None, "par", "4"),
        (2, 9, "club", "D"),
        (2, None, "confidence", "1"),
        (2, 1, "kind", ""),
    ],
)
def test_what_cannot_be_meant_is_refused(hole: int, stroke: int | None, field: str, text: str) -> None:
    with pytest.raises(ValueRuleError):
        make.change(READING, hole, stroke, field, text)


def test_metres_and_feet_are_kept_in_yards() -> None:
    # 1 yd is 0.9144 m exactly (international yard and pound agreement, 1959).
    assert make.change(READING, 2, 3, "distance_yd", "100 m").value == "109.361"
    assert make.change(READING, 1, 3, "distance_yd", "12ft").value == "4"


def _append_many(path: Path, start: int) -> None:
    folder = RoundFolder(path)
    for number in range(start, start + 15):
        append(folder, [Correction("set", 1, None, 20.0, "strokes", str(number))])


def test_two_desks_at_once_lose_nothing(tmp_path: Path) -> None:
    writers = [multiprocessing.Process(target=_append_many, args=(tmp_path, start)) for start in (100, 200)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    rows = load(RoundFolder(tmp_path))
    assert [row.id for row in rows] == list(range(1, 31))
    assert {row.value for row in rows} == {str(start + place) for start in (100, 200) for place in range(15)}


def test_hostile_words_come_back_as_plain_text(tmp_path: Path) -> None:
    folder = RoundFolder(tmp_path)
    append(folder, [Correction("set", 1, 1, 2.0, "club", "D", words='<b>a,"b"\x00\u202ec\nd')])
    assert load(folder)[0].words == '<b>a,"b"c d'


def test_a_damaged_file_is_a_told_error(tmp_path: Path) -> None:
    (tmp_path / "amendments.csv").write_text("id,made_at\nx,y\n", encoding="utf-8")
    with pytest.raises(FolderError, match=r"amendments\.csv"):
        load(RoundFolder(tmp_path))


def test_a_new_reading_keeps_the_corrections_and_the_reading_itself(tmp_path: Path) -> None:
    folder = RoundFolder(tmp_path)
    publish(folder, READING, {"sources": []})
    append(folder, [make.change(READING, 2, None, "strokes", "5")])
    shown = publish(folder, READING, {"sources": []})
    assert folder.holes["strokes"].tolist() == [4, 5]
    assert base_reading(folder) == READING
    assert saved_round(folder).shots == shown.shots
    assert folder.meta["doubts"][0]["text"] == shown.doubts[0].text
