"""Fits what the signs of a step weigh, and says how well that carries to narrations that were not fitted on.

    python -m tests.benchmarks.fit_steps [--write] [FOLDER ...]

A logistic regression (scikit-learn, the extra `fit`), strongly regularised: is a clause part of a marked step? It is
fitted on the marked narrations of FOLDERS in tests/narrations and the shorter ones of
tests/extract/steps/narrations, never on blind or fresh, and judged in five folds of whole narrations: no clause
is judged by weights that saw another clause of its narration. `--write` renews extract/data/step_weights.toml; a FOLDER
of marked narrations that were not fitted on is scored with the weights of all the others.
"""

from __future__ import annotations

import json
import re
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
from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece, pieces_of
from extract.pipeline import Extractor
from extract.steps.evidence import Weights
from extract.steps.gather import Told, gather
from extract.steps.merge import Weighed, merge
from extract.steps.wording import to_action
from extract.trade import guess_trade, load_trade
from tests.benchmarks.narrations import pairs, same_step
from tests.extract.narrations import transcript_of

TESTS = Path(__file__).parent.parent
WEIGHTS = TESTS.parent / "extract" / "data" / "step_weights.toml"
STRENGTH = 0.05
"""Inverse of the L2 penalty; smaller is stronger. Chosen by cross-validation among 0.03, 0.05 and 0.1."""
FOLDS = 5
FOLDERS = ("fitted", "read", "newer", "opened", "wide", "later")
RAREST = 6
"""A sign seen in fewer clauses has no weight: it could only be learnt by heart."""
_PHRASES = TESTS / "extract" / "steps" / "phrases.toml"
_SHORT_NARRATIONS = TESTS / "extract" / "steps" / "narrations"

Step = dict[str, Any]


@dataclass(frozen=True)
class Example:
    """One marked narration, its candidates, and which of them belong to a marked step."""

    group: str
    bench: Bench
    pieces: tuple[Piece, ...]
    told: tuple[Told, ...]
    steps: list[Step]
    right: list[bool]


def main() -> None:
    """Print the table of five folds; with `--write` renew the weights."""
    folders = [Path(name) for name in sys.argv[1:] if name != "--write"]
    extractor = Extractor()
    marked = [example for name in FOLDERS for example in _examples(extractor, TESTS / "narrations" / name)]
    short = [_example(extractor, "short", *short_narration(path)) for path in sorted(_SHORT_NARRATIONS.glob("*.txt"))]
    short += [_example(extractor, "phrase", *phrase) for phrase in _phrases()]
    print("| narrations | precision | recall | F1 | mode |\n|---|---|---|---|---|")
    counts: dict[str, Counter[str]] = {}
    order = np.random.RandomState(0).permutation(len(marked))
    for fold in range(FOLDS):
        held = set(order[fold::FOLDS].tolist())
        weights = fit([one for at, one in enumerate(marked) if at not in held] + short)
        for at in held:
            counts.setdefault(marked[at].group, Counter()).update(score(marked[at], weights))
    for group, one in counts.items():
        print(_row(f"{group}, five folds", one))
    print(_row("all, five folds", sum(counts.values(), Counter())))
    weights = fit(marked + short)
    for folder in folders:
        print(_row(f"{folder.name}, not fitted on", _scored(_examples(extractor, folder), weights)))
    if "--write" in sys.argv:
        _write(weights, len(marked), sum(one.group == "short" for one in short))


def fit(examples: Sequence[Example]) -> Weights:
    """The weights that tell these examples' steps best."""
    told = [one for example in examples for one in example.told]
    often = Counter(sign for one in told for sign in one.signs)
    names = sorted(sign for sign, times in often.items() if times >= RAREST)
    columns = DictVectorizer().fit([dict.fromkeys(names, 1.0)])
    rows = [dict.fromkeys(one.signs, 1.0) for one in told]
    model = LogisticRegression(C=STRENGTH, max_iter=5000)
    model.fit(columns.transform(rows), [right for example in examples for right in example.right])
    signs = {
        str(name): round(float(value), 3)
        for name, value in zip(columns.get_feature_names_out(), model.coef_[0], strict=True)
    }
    return Weights(round(float(model.intercept_[0]), 3), {name: value for name, value in signs.items() if value})


def score(example: Example, weights: Weights) -> Counter[str]:
    """Counts of steps marked, found and right, and of right ones with the right mode."""
    groups = merge(example.bench, example.told, weights)
    found = [_found(example.bench, example.pieces, group) for group in groups]
    found = [one for one in found if one["text"]]
    right = pairs(example.steps, found, same_step)
    same_mode = sum(step["mode"] == got["mode"] for step, got in right)
    return Counter(marked=len(example.steps), found=len(found), right=len(right), mode=same_mode)


def _examples(extractor: Extractor, folder: Path) -> list[Example]:
    marked = []
    for path in sorted(folder.rglob("gold.json")):
        gold = json.loads(path.read_text("utf-8"))
        marked.append(_example(extractor, folder.name, read_captions(path.parent / "narration.vtt"), gold["steps"]))
    return marked


def short_narration(path: Path) -> tuple[Transcript, list[Step]]:
    """A narration of ours whose steps are marked by cues and words, without a mode."""
    said, expected = path.read_text(encoding="utf-8").split("\n->\n")
    lines = [line.partition(" | ") for line in said.splitlines() if line and not line.startswith("#")]
    steps: list[Step] = []
    for line in expected.splitlines():
        if marked := re.match(r"(\d+)-(\d+) (.+)", line):
            words = marked[3].replace("/", " ")
            steps.append(
                {"cue_from": int(marked[1]), "cue_to": int(marked[2]), "verb": words, "object": words, "mode": None}
            )
    return transcript_of([cue for cue, _, _ in lines], [float(gap or 0.04) for _, _, gap in lines]), steps


def _phrases() -> Iterator[tuple[Transcript, list[Step]]]:
    """The phrases of the steps' tests, fitted on and never scored: half of them look like a step and are none."""
    for case in tomllib.loads(_PHRASES.read_text("utf-8"))["case"]:
        steps: list[Step] = []
        for line in case["steps"]:
            said = re.match(r"(.+) / (.*) / (done|doing|planned|advice) / ", line)
            assert said is not None, line
            verb, thing, mode = said.groups()
            steps.append({"cue_from": 0, "cue_to": len(case["cues"]) - 1, "verb": verb, "object": thing, "mode": mode})
        yield transcript_of(case["cues"]), steps


def _example(extractor: Extractor, group: str, transcript: Transcript, steps: list[Step]) -> Example:
    doc = extractor.read(transcript, load_trade(guess_trade(transcript.text)))
    bench = Bench(doc, doc._.trade, doc._.measures)
    pieces = pieces_of(bench)
    told = gather(bench, pieces)
    alone = [_found(bench, pieces, (Weighed(one.candidate, 1.0),)) for one in told]
    nearest = {id(got) for _, got in pairs(steps, alone, same_step)}
    fitting = [[step for step in steps if same_step(step, got)] for got in alone]
    right = [
        id(got) in nearest or any(_meet(step, got) for step in fits) for got, fits in zip(alone, fitting, strict=True)
    ]
    return Example(group, bench, pieces, told, steps, right)


def _meet(step: Step, got: Step) -> bool:
    return bool(got["cue_from"] <= step["cue_to"] and got["cue_to"] >= step["cue_from"])


def _found(bench: Bench, pieces: tuple[Piece, ...], group: tuple[Weighed, ...]) -> Step:
    action = to_action(bench, pieces, group)
    first, last = bench.cue[action.start], bench.cue[action.end - 1]
    return {
        "cue_from": first,
        "cue_to": last,
        "verb": action.verb,
        "object": action.object,
        "mode": action.mode,
        "text": action.text,
    }


def _scored(examples: Sequence[Example], weights: Weights) -> Counter[str]:
    return sum((score(example, weights) for example in examples), Counter())


def _row(name: str, counts: Counter[str]) -> str:
    precision, recall = counts["right"] / (counts["found"] or 1), counts["right"] / (counts["marked"] or 1)
    f1 = 2 * counts["right"] / ((counts["found"] + counts["marked"]) or 1)
    return f"| {name} | {precision:.2f} | {recall:.2f} | {f1:.3f} | {counts['mode'] / (counts['right'] or 1):.2f} |"


def _write(weights: Weights, marked: int, short: int) -> None:
    lines = [
        "# What each sign of a step weighs. Made by: python -m tests.benchmarks.fit_steps --write",
        f"# Logistic regression with an L2 penalty, C = {STRENGTH}; signs seen {RAREST} times or more.",
        f"# Fitted on {marked} marked narrations of tests/narrations ({', '.join(FOLDERS)}) and {short} of",
        "# tests/extract/steps/narrations and its phrases of tests/extract/steps, inventions of ours all of them.",
        f"bias = {weights.bias}",
        "",
        "[signs]",
        *(f'"{name}" = {value}' for name, value in sorted(weights.signs.items(), key=lambda sign: -sign[1])),
    ]
    WEIGHTS.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
