"""How well attributes are told from signs, and the fit of what each sign weighs.

    python -m tests.benchmarks.attributes [--write]

Needs scipy (it comes with the extra `fit`). Prints the share of right attributes in five folds by talk: what is scored
was never fitted. `--write` fits all talks and renews extract/data/attribute_weights.toml. The talks are read without
weights, so that the fit comes out the same however often it is made; fit the phases after it.
"""

from __future__ import annotations

import json
import sys
from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from scipy.optimize import minimize
from scipy.sparse import csr_matrix

import extract.measures.attribute.weighing as weighing
from extract.measures.attribute import INFERRED, SAID
from extract.measures.attribute.proposals import Proposal, propose
from extract.measures.attribute.signs import signs_of
from tests.benchmarks.marked_talks import Mark, MarkedTalk, marked_talks
from tests.benchmarks.narrations import words

FILE = Path(weighing.__file__).parents[2] / "data" / "attribute_weights.toml"
FOLDS = 5
PENALTY = 1.0
"""Half of it times the sum of the squares is added to the loss; picked by the folds among 0.5, 1, 2 and 4."""
_OFTEN = 6
"""Marks after which a name has signs of its own."""
_FEWEST = 3
"""Figures that must show a sign for it to be fitted."""
_CLEAR = 5
"""How much more a phrase weighs that was written to be clear than a figure of a talk."""
_LEAST = 0.05
"""Smaller weights are left out of the file."""


@dataclass(frozen=True)
class Example:
    """One marked figure: its proposals, their signs, and which of them a reader would accept."""

    talk: MarkedTalk
    proposals: list[Proposal]
    signs: list[list[str]]
    right: list[bool]


def main() -> None:
    """Print the table; with `--write` renew the weights."""
    weighing.attribute_weights = lambda: ({}, frozenset())  # type: ignore[assignment]
    talks = marked_talks()
    names = _frequent(talks)
    examples = [one for talk in talks for one in _examples(talk, names)]
    right: Counter[str] = Counter()
    of: Counter[str] = Counter()
    for fold in range(FOLDS):
        held = {id(talk) for talk in talks[fold::FOLDS]}
        weights = fit([one for one in examples if id(one.talk) not in held])
        for one in examples:
            if id(one.talk) in held:
                best = weighing.heaviest(one.proposals, one.signs, weights)
                right[one.talk.source] += one.right[one.proposals.index(best)]
                of[one.talk.source] += 1
    print(f"| talks | figures | right in {FOLDS} folds |\n|---|---|---|")
    for source in of:
        print(f"| {source} | {of[source]} | {right[source] / of[source]:.3f} |")
    print(f"| all | {of.total()} | {right.total() / of.total():.3f} |")
    if "--write" in sys.argv:
        FILE.write_text(_as_toml(fit(examples), names, of.total(), len(talks)), "utf-8")


def fit(examples: Sequence[Example]) -> dict[str, float]:
    """Weights under which the accepted proposals of each figure have the largest share (conditional logistic)."""
    usable = [one for one in examples if any(one.right) for _ in range(_CLEAR if one.talk.source == "phrases" else 1)]
    shown = Counter(sign for one in usable for sign in {sign for signs in one.signs for sign in signs})
    column = {sign: place for place, sign in enumerate(sign for sign, count in shown.items() if count >= _FEWEST)}
    rows = [
        (signs, right, place)
        for place, one in enumerate(usable)
        for signs, right in zip(one.signs, one.right, strict=True)
    ]
    cells = [(row, column[sign]) for row, (signs, _, _) in enumerate(rows) for sign in signs if sign in column]
    matrix = csr_matrix((np.ones(len(cells)), tuple(zip(*cells, strict=True))), shape=(len(rows), len(column)))
    group = np.array([place for _, _, place in rows])
    accepted = np.array([right for _, right, _ in rows], dtype=float)
    starts = np.flatnonzero(np.r_[True, group[1:] != group[:-1]])

    def loss(weights: Any) -> tuple[float, Any]:
        sums = matrix @ weights
        raised = np.exp(sums - np.maximum.reduceat(sums, starts)[group])
        all_of, good_of = np.add.reduceat(raised, starts), np.add.reduceat(raised * accepted, starts)
        slope = matrix.T @ (raised * accepted / good_of[group] - raised / all_of[group])
        value = np.sum(np.log(all_of) - np.log(good_of)) + PENALTY / 2 * weights @ weights
        return float(value), PENALTY * weights - slope

    best = minimize(loss, np.zeros(len(column)), jac=True, method="L-BFGS-B", options={"maxiter": 200}).x
    return {sign: round(float(best[place]), 2) for sign, place in column.items() if abs(best[place]) >= _LEAST}


def _examples(talk: MarkedTalk, names: frozenset[str]) -> list[Example]:
    found = []
    for finding, mark in talk.marks:
        if not any(mark["attribute"]) or weighing.is_sure(finding):
            continue
        proposals = propose(finding.figure, finding, SAID, INFERRED)
        signs = signs_of(finding.figure, finding, proposals, names)
        found.append(Example(talk, proposals, signs, [_accepts(talk, mark, one.name) for one in proposals]))
    return found


def _accepts(talk: MarkedTalk, mark: Mark, name: str) -> bool:
    """A phrase asks for the very name; a reader of a talk takes every name that shares a word."""
    if talk.source == "phrases":
        return name in mark["attribute"]
    return bool(words(name) & words(" ".join(mark["attribute"])))


def _frequent(talks: Sequence[MarkedTalk]) -> frozenset[str]:
    counts: defaultdict[str, int] = defaultdict(int)
    for talk in talks:
        for _, mark in talk.marks:
            for name in mark["attribute"]:
                counts[name] += 1
    return frozenset(name for name, count in counts.items() if count >= _OFTEN)


def _as_toml(weights: dict[str, float], names: frozenset[str], figures: int, talks: int) -> str:
    head = [
        "# What each sign of a proposed attribute weighs.",
        f"# Fitted by `python -m tests.benchmarks.attributes --write` to {figures} figures of {talks} talks, all in",
        f"# tests/: conditional logistic regression, penalty {PENALTY}. Don't edit by hand.",
        "",
        "# Names that the marked talks use often and that have signs of their own.",
        f"names = [{', '.join(json.dumps(name, ensure_ascii=False) for name in sorted(names))}]",
        "",
        "[weights]",
    ]
    return "\n".join(
        [
            *head,
            *(f"{json.dumps(sign, ensure_ascii=False)} = {weight:.2f}" for sign, weight in sorted(weights.items())),
            "",
        ]
    )


if __name__ == "__main__":
    main()
