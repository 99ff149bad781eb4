"""How well procedures are known again, and how long that takes.

    python -m tests.benchmarks.procedures

Over steps: B-cubed precision and recall (Bagga and Baldwin 1998, "Algorithms for Scoring Coreference Chains"). Over
pairs: of two steps of different sessions, whether they are said to be of one procedure. A step's true procedure is that
of the line where it begins. `tuned` was looked at while the rules were made. `unseen` was written at the same time by
the same hand; no weight or bound was chosen for it, but pages made from it were seen, and one reading of "them" was
mended after that.
"""

from __future__ import annotations

import random
import time
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations

from capture.shop import ShopSettings
from publish.procedures import Procedures, SessionWork, procedures_of, work_of
from publish.source import SessionSource
from tests.benchmarks.procedures.talks import HALVES, Talk, records, talks

SIZES = (250, 500, 1000)


def main() -> None:
    """Print two Markdown tables."""
    works: list[SessionWork] = []
    print("| half | sessions | steps | B-cubed P | R | F1 | pairs P | R | F1 |\n|---|---|---|---|---|---|---|---|---|")
    for half in HALVES:
        marked = talks(half)
        made = [
            work_of(SessionSource(talk.slug, record), ShopSettings())
            for talk, record in zip(marked, records(marked), strict=True)
        ]
        # The cue where a step begins is told by its second.
        wanted = _wanted(marked, made)
        found = _found(procedures_of(made))
        cubed, pairs = b_cubed(found, wanted), shared(found, wanted)
        figures = " | ".join(f"{one:.2f}" for one in (*cubed, *pairs))
        print(f"| {half} | {len(made)} | {len(wanted)} | {figures} |", flush=True)
        works += made
    print("\n| sessions | steps | processor time, s |\n|---|---|---|")
    for number in SIZES:
        many = recombined(works, number)
        begun = time.process_time()
        procedures_of(many)
        print(f"| {number} | {sum(len(one.steps) for one in many)} | {time.process_time() - begun:.2f} |", flush=True)


Labels = dict[tuple[str, str], str]
"""Session and id of a step -> its procedure."""


def b_cubed(found: Labels, wanted: Labels) -> tuple[float, float, float]:
    """Precision, recall and F1 over steps."""
    both = Counter((found[key], wanted[key]) for key in wanted)
    ours, theirs = Counter(found[key] for key in wanted), Counter(wanted.values())
    precision = sum(both[found[key], wanted[key]] / ours[found[key]] for key in wanted) / len(wanted)
    recall = sum(both[found[key], wanted[key]] / theirs[wanted[key]] for key in wanted) / len(wanted)
    return precision, recall, _f1(precision, recall)


def shared(found: Labels, wanted: Labels) -> tuple[float, float, float]:
    """Precision, recall and F1 over pairs of steps of two sessions that are said to be of one procedure."""
    right = ours = theirs = 0
    for one, other in combinations(wanted, 2):
        if one[0] == other[0]:
            continue
        said, true = found[one] == found[other], wanted[one] == wanted[other]
        right, ours, theirs = right + (said and true), ours + said, theirs + true
    precision, recall = right / max(ours, 1), right / max(theirs, 1)
    return precision, recall, _f1(precision, recall)


def recombined(works: Sequence[SessionWork], number: int) -> list[SessionWork]:
    """So many sessions, each of the steps of one or two of these, some left out; the same every time."""
    chance = random.Random(1)  # noqa: S311 (no secret)
    made = []
    for at in range(number):
        steps = [step for one in chance.sample(works, chance.choice((1, 1, 2))) for step in one.steps]
        kept = [step for step in steps if chance.random() < 0.85] or steps
        numbered = tuple(replace(step, id=f"s-{at}-{place}", number=place) for place, step in enumerate(kept, 1))
        made.append(replace(works[0], slug=f"session-{at:05d}", steps=numbered, loose=(), cautions=()))
    return made


def _wanted(marked: Sequence[Talk], works: Sequence[SessionWork]) -> Labels:
    wanted: Labels = {}
    for talk, work in zip(marked, works, strict=True):
        starts = talk.starts
        for step in work.steps:
            line = max(at for at, start in enumerate(starts) if start <= step.start + 1e-6)
            wanted[work.slug, step.id] = talk.marks[line]
    return wanted


def _found(procedures: Procedures) -> Labels:
    return {
        (version.work.slug, step.id): one.slug
        for one in procedures.all
        for version in one.versions
        for step in version.steps
    }


def _f1(precision: float, recall: float) -> float:
    return 2 * precision * recall / (precision + recall) if precision + recall else 0.0


if __name__ == "__main__":
    main()
