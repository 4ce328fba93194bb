"""Score the reader on a folder of invented rounds.

    python -m tests.eval FOLDER [--level clean,asr,narration] [--hide ID,ID] [--errors]

Prints a table of figures a level (all rounds, and shown and hidden ones apart), and with --errors every
error with its words, hole by hole. Rounds named by --hide count in the figures; their errors are never shown.
"""

from __future__ import annotations

import argparse
import json
import sys
import tempfile
from pathlib import Path

from tests.eval.rounds import LEVELS, Case, find_cases, find_unread, heard_words, read_case
from tests.eval.score import Check, check_round, figures, shares
from tests.eval.show import print_calibration, print_errors, print_figures, print_rounds


def run_level(cases: list[Case], level: str, keep: Path) -> dict[str, list[Check]]:
    """Every check of every round, by its id. A reader's failure is told on stderr and counts as all wrong."""
    checks = {}
    for case in cases:
        reading = read_case(case, level, keep)
        if reading.failure:
            print(f"{level} {case.id}: {reading.failure}", file=sys.stderr)
        checks[case.id] = list(check_round(case.truth, reading.holes, reading.shots))
    return checks


def names(text: str) -> frozenset[str]:
    return frozenset(name for name in text.replace(",", " ").split() if name)


def levels(text: str) -> list[str]:
    """Levels in the order of LEVELS; an unknown one is wrong usage."""
    chosen = names(text)
    if unknown := sorted(chosen - set(LEVELS)):
        raise argparse.ArgumentTypeError(f"no level {', '.join(unknown)}; there are {', '.join(LEVELS)}.")
    return [level for level in LEVELS if level in chosen]


def arguments() -> argparse.Namespace:
    cli = argparse.ArgumentParser(
        prog="python -m tests.eval",
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    cli.add_argument("folder", type=Path, help="holds ID/truth.json with ID/clean.vtt and so on")
    cli.add_argument("--level", type=levels, default=["clean"], metavar="LEVELS", help=", ".join(LEVELS))
    cli.add_argument("--only", type=names, default=frozenset(), metavar="IDS", help="only these rounds")
    cli.add_argument("--hide", type=names, default=frozenset(), metavar="IDS", help="count, never show")
    cli.add_argument("--errors", action="store_true", help="every error with its words")
    cli.add_argument("--figures", type=names, default=frozenset(), help="only errors of these")
    cli.add_argument("--keep", type=Path, metavar="DIR", help="keep the round folders here")
    cli.add_argument("--json", type=Path, metavar="FILE", help="write the figures")
    return cli.parse_args()


def main() -> None:
    args = arguments()
    hide = args.hide | find_unread(args.folder)
    result = {}
    with tempfile.TemporaryDirectory() as scratch:
        keep = args.keep or Path(scratch)
        for level in args.level:
            cases = find_cases(args.folder, level, args.only)
            if not cases:
                sys.exit(f"{args.folder}: no round with truth.json and {LEVELS[level]}.")
            checks = run_level(cases, level, keep)
            if args.errors:
                for case in cases:
                    if case.id not in hide:
                        heard = heard_words(case, level, keep)
                        print_errors(case, heard, level, checks[case.id], args.figures)
            print_rounds(level, checks, hide)
            print_figures(level, checks, hide)
            print_calibration(keep, level, cases)
            result[level] = shares(figures(check for each in checks.values() for check in each))
    if args.json:
        args.json.write_text(json.dumps(result, indent=1) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
