"""Fits what the signs of a caution, a doubt and a thing left for later weigh, and judges it in five folds by talk.

    python -m tests.benchmarks.fit_remarks [--write]

A logistic regression each (scikit-learn, the extra `fit`), strongly regularised: is this breath marked? Fitted on
the narrations of FOLDERS, and on the phrases of the remarks' tests. `--write` renews
extract/data/remark_weights.toml.
"""

from __future__ import annotations

import json
import sys
import tomllib
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from sklearn.feature_extraction import DictVectorizer
from sklearn.linear_model import LogisticRegression

from capture import read_captions
from capture.transcript import Transcript
from extract.clauses import Bench
from extract.pipeline import Extractor
from extract.remarks.breaths import Breath, breaths_of
from extract.remarks.reading import Reading
from extract.remarks.weighed import plain_remarks
from extract.remarks.weighing import KINDS, candidates, speaks_for
from extract.trade import guess_trade, load_trade
from extract.weights import Weights
from tests.benchmarks.narrations import words
from tests.extract.narrations import transcript_of

TESTS = Path(__file__).parent.parent
WEIGHTS = TESTS.parent / "extract" / "data" / "remark_weights.toml"
STRENGTH = 0.05
"""Inverse of the L2 penalty; smaller is stronger. Chosen by cross-validation among 0.02, 0.05, 0.1 and 0.3."""
MARKED = {"cautions": 5.0, "doubts": 8.0, "follow_ups": 8.0}
"""What a marked breath counts for in the fit, others being 1. Chosen by cross-validation among 4, 5, 6, 8 and 12."""
FOLDS = 5
RAREST = 4
"""A sign seen in fewer breaths has no weight: it could only be learnt by heart."""
FOLDERS = ("fitted", "read", "newer", "opened", "wide", "later")
PHRASES = "phrases"
"""The phrases of the remarks' tests, fitted on and never scored."""


@dataclass(frozen=True)
class Talk:
    """A marked talk: each breath's signs and cue, and for each kind which are marked; null is left out of the fit."""

    group: str
    signs: list[frozenset[str]]
    cues: list[int]
    marked: dict[str, list[bool | None]]
    wanted: dict[str, list[int]]


def main() -> None:
    """Print the table of five folds; with `--write` renew the weights."""
    talks = list(_talks())
    whole = [talk for talk in talks if talk.group != PHRASES]
    phrases = [talk for talk in talks if talk.group == PHRASES]
    order = np.random.RandomState(0).permutation(len(whole))
    print("| remarks, five folds | talks | marked | precision | recall | F1 |\n|---|---|---|---|---|---|")
    for kind in KINDS:
        counts: dict[str, Counter[str]] = {}
        for fold in range(FOLDS):
            held = set(order[fold::FOLDS].tolist())
            weights = fit([talk for at, talk in enumerate(whole) if at not in held] + phrases, kind)
            for at in held:
                counts.setdefault(whole[at].group, Counter()).update(_score(whole[at], kind, weights))
        for group, one in (*counts.items(), ("all", sum(counts.values(), Counter()))):
            print(_row(f"{kind}, {group}", one))
    if "--write" in sys.argv:
        _write({kind: fit(talks, kind) for kind in KINDS}, len(whole))


def fit(talks: Sequence[Talk], kind: str) -> Weights:
    """The weights that tell marked breaths best from others."""
    rows = [
        (signs, right)
        for talk in talks
        for signs, right in zip(talk.signs, talk.marked[kind], strict=True)
        if right is not None
    ]
    often = Counter(sign for signs, _ in rows for sign in signs)
    names = sorted(sign for sign, times in often.items() if times >= RAREST)
    columns = DictVectorizer().fit([dict.fromkeys(names, 1.0)])
    model = LogisticRegression(C=STRENGTH, max_iter=5000, class_weight={True: MARKED[kind], False: 1.0})
    model.fit(columns.transform([dict.fromkeys(signs, 1.0) for signs, _ in rows]), [right for _, right in rows])
    named = zip(columns.get_feature_names_out(), model.coef_[0], strict=True)
    signs = {str(name): round(float(value), 3) for name, value in named}
    return Weights(round(float(model.intercept_[0]), 3), {name: value for name, value in signs.items() if value})


def _score(talk: Talk, kind: str, weights: Weights) -> Counter[str]:
    """Marked cues, breaths believed (one a cue), and marks with a believed breath at most one cue away."""
    believed = sorted(
        {cue for cue, signs in zip(talk.cues, talk.signs, strict=True) if speaks_for(kind, weights, signs) > 0}
    )
    left = list(believed)
    right = 0
    for cue in talk.wanted[kind]:
        near = min((one for one in left if abs(one - cue) <= 1), key=lambda one: abs(one - cue), default=None)
        if near is not None:
            left.remove(near)
            right += 1
    return Counter(talks=1, marked=len(talk.wanted[kind]), found=len(believed), right=right)


def _talks() -> Iterator[Talk]:
    extractor = Extractor()
    for folder in FOLDERS:
        for path in sorted((TESTS / "narrations" / folder).rglob("gold.json")):
            gold = json.loads(path.read_text("utf-8"))
            yield _talk(extractor, folder, read_captions(path.parent / "narration.vtt"), gold)
    for case in tomllib.loads((TESTS / "extract" / "remarks" / "remarks.toml").read_text("utf-8"))["case"]:
        gold = {kind: [{"cue": None, "gist": text} for text in case.get(kind, ())] for kind in KINDS}
        yield _talk(extractor, PHRASES, transcript_of(case["cues"]), gold)


def _talk(extractor: Extractor, group: str, transcript: Transcript, gold: dict[str, list[dict[str, Any]]]) -> Talk:
    trade = load_trade(guess_trade(transcript.text) if group != PHRASES else "general")
    reading = Reading.of(Bench(extractor.read(transcript, trade), trade))
    breaths = breaths_of(reading)
    cues = [reading.bench.cue[breath.start] for breath in breaths]
    marked = {kind: _marks(reading, breaths, cues, gold[kind]) for kind in KINDS}
    wanted = {kind: sorted(one["cue"] or 0 for one in gold[kind]) for kind in KINDS}
    return Talk(group, candidates(reading, breaths, plain_remarks(reading).ruled), cues, marked, wanted)


def _marks(
    reading: Reading, breaths: Sequence[Breath], cues: Sequence[int], marks: Sequence[dict[str, Any]]
) -> list[bool | None]:
    """Of a marked cue the breath that shares most words with the mark; the cue's others are left out."""
    right: list[bool | None] = [False] * len(breaths)
    for mark in marks:
        here = [at for at, cue in enumerate(cues) if mark["cue"] in {None, cue}]
        gist = words(mark["gist"])
        shared = {
            at: len(gist & words(" ".join(reading.bench.lower[breaths[at].start : breaths[at].end]))) for at in here
        }
        best = max(here, key=lambda at: (shared[at], breaths[at].end - breaths[at].start), default=None)
        for at in here:
            right[at] = True if at == best or right[at] is True else None
    return right


def _row(name: str, counts: Counter[str]) -> str:
    precision, recall = counts["right"] / (counts["found"] or 1), counts["right"] / (counts["marked"] or 1)
    f1 = 2 * counts["right"] / ((counts["found"] + counts["marked"]) or 1)
    return f"| {name} | {counts['talks']} | {counts['marked']} | {precision:.2f} | {recall:.2f} | {f1:.2f} |"


def _write(weights: dict[str, Weights], talks: int) -> None:
    lines = [
        "# What each sign of a remark weighs. Made by: python -m tests.benchmarks.fit_remarks --write",
        f"# Logistic regression with an L2 penalty, C = {STRENGTH}; signs seen {RAREST} times or more.",
        f"# Fitted on {talks} marked talks of tests/narrations ({', '.join(FOLDERS)}), inventions of ours all of them.",
    ]
    for kind, one in weights.items():
        lines += ["", f"[{kind}]", f"bias = {one.bias}", "", f"[{kind}.signs]"]
        lines += [f'"{name}" = {value}' for name, value in sorted(one.signs.items(), key=lambda sign: -sign[1])]
    WEIGHTS.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
