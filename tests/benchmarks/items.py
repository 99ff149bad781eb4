"""How well the thing that has a measure is told from signs, and the fit of what each sign weighs.

    python -m tests.benchmarks.items [--write]

Needs scipy (it comes with the extra `fit`). Prints the share of right items in five folds by talk, beside the rules
alone: what is scored was never fitted. `--write` fits all talks and renews extract/data/item_weights.toml. The talks
are read without weights, so that the fit comes out the same however often it is made; fit the attributes after it.
"""

from __future__ import annotations

import json
import sys
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

import extract.measures.attribute.weighing as attribute_weighing
import extract.measures.item.weighing as weighing
from extract.measures.item.proposals import propose
from extract.measures.item.signs import signs_of
from tests.benchmarks.choice import FOLDS, Choice, fit, right_in_folds
from tests.benchmarks.marked_talks import Mark, MarkedTalk, marked_talks
from tests.benchmarks.narrations import words

FILE = Path(weighing.__file__).parents[2] / "data" / "item_weights.toml"
PENALTY = 2.0
"""Picked by the folds among 1, 2 and 4."""
_CLEAR = 5
"""How much more a phrase weighs that was written to be clear than a figure of a talk."""


@dataclass(frozen=True)
class Example:
    """One marked figure: the signs of what is proposed, which of it a reader would accept, and whether the rules do."""

    talk: MarkedTalk
    choice: Choice
    by_rules: bool


def main() -> None:
    """Print the table; with `--write` renew the weights."""
    weighing.item_weights = lambda: {}  # type: ignore[assignment]
    attribute_weighing.attribute_weights = lambda: ({}, frozenset())  # type: ignore[assignment]
    talks = marked_talks()
    examples = [one for talk in talks for one in _examples(talk)]
    of: Counter[str] = Counter(one.talk.source for one in examples)
    by_rules: Counter[str] = Counter(one.talk.source for one in examples if one.by_rules)
    right = right_in_folds(talks, [(one.talk, one.choice) for one in examples], PENALTY)
    print(f"| talks | figures | by the rules | in {FOLDS} folds |\n|---|---|---|---|")
    for source in of:
        shares = (by_rules[source] / of[source], right[source] / of[source])
        print(f"| {source} | {of[source]} | {shares[0]:.3f} | {shares[1]:.3f} |")
    print(f"| all | {of.total()} | {by_rules.total() / of.total():.3f} | {right.total() / of.total():.3f} |")
    if "--write" in sys.argv:
        choices = [one.choice for one in examples]
        FILE.write_text(_as_toml(fit(choices, PENALTY), of.total(), len(talks)), "utf-8")


def _examples(talk: MarkedTalk) -> list[Example]:
    found = []
    for finding, mark in talk.marks:
        proposals = propose(finding.figure, finding)
        if not any(mark.get("item") or [""]) or not proposals:
            continue
        right = [_accepts(talk, mark, one.thing.name) for one in proposals]
        by_rules = finding.item is not None and _accepts(talk, mark, finding.item.name)
        times = _CLEAR if talk.source == "phrases" else 1
        choice = Choice(signs_of(finding.figure, finding, proposals), right, times)
        found.append(Example(talk, choice, by_rules))
    return found


def _accepts(talk: MarkedTalk, mark: Mark, name: str) -> bool:
    """A phrase asks for the very name; a reader of a talk takes every name that shares a word."""
    if talk.source == "phrases":
        return bool(name == mark["item"])
    return bool(words(name) & words(" ".join(mark["item"])))


def _as_toml(weights: dict[str, float], figures: int, talks: int) -> str:
    head = [
        "# What each sign of a proposed thing weighs.",
        f"# Fitted by `python -m tests.benchmarks.items --write` to {figures} figures of {talks} talks, all in tests/:",
        f"# conditional logistic regression, penalty {PENALTY}. Don't edit by hand.",
        "",
        "[weights]",
    ]
    lines = (f"{json.dumps(sign, ensure_ascii=False)} = {weight:.2f}" for sign, weight in sorted(weights.items()))
    return "\n".join([*head, *lines, ""])


if __name__ == "__main__":
    main()
