"""How well attributes are told from signs, and the fit of what each sign weighs.

    python -m tests.benchmarks.attributes [--write]

Needs scipy (it comes with the extra `fit`). Prints the share of right attributes in five folds by talk: what is scored
was never fitted. `--write` fits all talks and renews extract/data/attribute_weights.toml. The talks are read without
weights of attributes, so that the fit comes out the same however often it is made; fit the items before it and the
phases after it.
"""

from __future__ import annotations

import json
import sys
from collections import Counter, defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import extract.measures.attribute.weighing as weighing
from extract.measures.attribute import INFERRED, SAID
from extract.measures.attribute.proposals import propose
from extract.measures.attribute.signs import signs_of
from tests.benchmarks.choice import FOLDS, Choice, fit, right_in_folds
from tests.benchmarks.marked_talks import Mark, MarkedTalk, marked_talks
from tests.benchmarks.narrations import words

FILE = Path(weighing.__file__).parents[2] / "data" / "attribute_weights.toml"
PENALTY = 1.0
"""Picked by the folds among 0.5, 1, 2 and 4."""
_OFTEN = 6
"""Marks after which a name has signs of its own."""
_CLEAR = 5
"""How much more a phrase weighs that was written to be clear than a figure of a talk."""


@dataclass(frozen=True)
class Example:
    """One marked figure: the signs of what is proposed, and which of it a reader would accept."""

    talk: MarkedTalk
    choice: Choice


def main() -> None:
    """Print the table; with `--write` renew the weights."""
    weighing.attribute_weights = lambda: ({}, frozenset())  # type: ignore[assignment]
    talks = marked_talks()
    names = _frequent(talks)
    examples = [one for talk in talks for one in _examples(talk, names)]
    of: Counter[str] = Counter(one.talk.source for one in examples)
    right = right_in_folds(talks, [(one.talk, one.choice) for one in examples], PENALTY)
    print(f"| talks | figures | right in {FOLDS} folds |\n|---|---|---|")
    for source in of:
        print(f"| {source} | {of[source]} | {right[source] / of[source]:.3f} |")
    print(f"| all | {of.total()} | {right.total() / of.total():.3f} |")
    if "--write" in sys.argv:
        FILE.write_text(
            _as_toml(fit([one.choice for one in examples], PENALTY), names, of.total(), len(talks)), "utf-8"
        )


def _examples(talk: MarkedTalk, names: frozenset[str]) -> list[Example]:
    found = []
    for finding, mark in talk.marks:
        if not any(mark["attribute"]) or weighing.is_sure(finding):
            continue
        proposals = propose(finding.figure, finding, SAID, INFERRED)
        signs = signs_of(finding.figure, finding, proposals, names)
        times = _CLEAR if talk.source == "phrases" else 1
        right = [_accepts(talk, mark, one.name) for one in proposals]
        found.append(Example(talk, Choice(signs, right, times)))
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
