"""How well phases are told from signs, and the fit of what each sign weighs.

    python -m tests.benchmarks.phases [--write]

Needs scikit-learn (the extra `fit`), which nothing else uses. Prints the share of right phases in five folds by talk:
what is scored was never fitted. `--write` fits all talks and renews extract/data/phase_weights.toml.
"""

from __future__ import annotations

import json
import sys
from collections import Counter, defaultdict
from collections.abc import Sequence
from pathlib import Path

import numpy as np
from sklearn.feature_extraction import DictVectorizer
from sklearn.linear_model import LogisticRegression

import extract.measures.phase.weighing as weighing
from extract.measures.phase.signs import Signs, signs_of
from extract.record import Phase
from tests.benchmarks.marked_talks import MarkedTalk, marked_talks, phase_talks

FILE = Path(weighing.__file__).parents[2] / "data" / "phase_weights.toml"
FOLDS = 5
STRENGTH = 0.2
"""Inverse of the penalty on the squares of the weights: picked by the folds among 0.05, 0.1, 0.15, 0.2, 0.3 and 0.4."""
_FEWEST_TALKS = 5
"""A single word counts as a sign where so many talks have it."""
_CLEAR = 5
"""How much more a phrase weighs that was written to be clear than a figure of a talk."""
_LEAST = 0.02
"""Smaller weights are left out of the file."""


def main() -> None:
    """Print the table; with `--write` renew the weights."""
    talks = (*marked_talks(), *phase_talks())
    examples = {id(talk): _examples(talk) for talk in talks}
    print(f"| talks | figures | right in {FOLDS} folds |\n|---|---|---|")
    right: Counter[str] = Counter()
    of: Counter[str] = Counter()
    for fold in range(FOLDS):
        held = talks[fold::FOLDS]
        weights = fit([one for talk in talks if talk not in held for one in examples[id(talk)]])
        for talk in held:
            right[talk.source] += _right(talk, weights)
            of[talk.source] += len(examples[id(talk)])
    for source in of:
        print(f"| {source} | {of[source]} | {right[source] / of[source]:.3f} |")
    print(f"| all | {of.total()} | {right.total() / of.total():.3f} |")
    if "--write" in sys.argv:
        weights = fit([one for talk in talks for one in examples[id(talk)]])
        FILE.write_text(_as_toml(weights, of.total(), len(talks)), "utf-8")


Example = tuple[MarkedTalk, Signs, Phase]


def fit(examples: Sequence[Example]) -> dict[str, tuple[float, ...]]:
    """What each sign weighs for each phase, by logistic regression with a strong penalty."""
    told: defaultdict[str, set[str]] = defaultdict(set)
    for talk, signs, _ in examples:
        for sign in signs:
            told[sign].add(talk.name)
    kept = [
        {
            sign: value
            for sign, value in signs.items()
            if not sign.startswith("word ") or len(told[sign]) >= _FEWEST_TALKS
        }
        for _, signs, _ in examples
    ]
    vectorizer = DictVectorizer()
    model = LogisticRegression(C=STRENGTH, max_iter=3000)
    model.fit(
        vectorizer.fit_transform(kept),
        np.array([phase for _, _, phase in examples]),
        sample_weight=[_CLEAR if talk.source == "phrases" else 1 for talk, _, _ in examples],
    )
    order = [list(model.classes_).index(phase) for phase in weighing.PHASES]
    table: dict[str, tuple[float, ...]] = {"": tuple(float(model.intercept_[row]) for row in order)}
    for sign, column in vectorizer.vocabulary_.items():
        row = tuple(round(float(model.coef_[at][column]), 2) for at in order)
        if max(map(abs, row)) >= _LEAST:
            table[sign] = row
    return table


def _examples(talk: MarkedTalk) -> list[Example]:
    """The signs of each marked figure, those before it having the phases that a reader gave them."""
    marked = {id(finding): mark["phase"] for finding, mark in talk.marks if "phase" in mark}
    for finding in talk.findings:
        finding.phase = marked.get(id(finding), finding.phase)
    return [(talk, signs_of(finding.figure, finding), mark["phase"]) for finding, mark in talk.marks if "phase" in mark]


def _right(talk: MarkedTalk, weights: dict[str, tuple[float, ...]]) -> int:
    """How many phases come out right, each leaning on what was told of those before it."""
    for finding in talk.findings:
        finding.phase = weighing.heaviest(signs_of(finding.figure, finding), weights)
    return sum(finding.phase == mark["phase"] for finding, mark in talk.marks if "phase" in mark)


def _as_toml(weights: dict[str, tuple[float, ...]], figures: int, talks: int) -> str:
    head = [
        "# What each sign of a figure weighs for each phase: as_found, target, as_left, general.",
        f"# Fitted by `python -m tests.benchmarks.phases --write` to {figures} figures of {talks} talks and phrases,",
        f"# all in tests/: multinomial logistic regression, C = {STRENGTH}. Don't edit by hand; the row without a name",
        "# is what each phase weighs before anything is known.",
        "",
    ]
    rows = [
        f"{json.dumps(sign, ensure_ascii=False)} = [{', '.join(f'{one:.2f}' for one in row)}]"
        for sign, row in sorted(weights.items())
    ]
    return "\n".join([*head, *rows, ""])


if __name__ == "__main__":
    main()
