"""Fits what the signs of a statement taken back weigh, and says how well that carries to talks that were not fitted on.

    python -m tests.benchmarks.fit_corrections [--write]

Three logistic regressions with an L2 penalty (the extra `fit`): is the second of two neighbouring figures said in place
of the first, is a figure said in place of one from long before, is a statement taken back by the remark beside it? A
sign that can only speak for a correction weighs nothing or more, one that can only speak against it nothing or less:
it keeps a sign that is rare in the talks from being learnt upside down. The bias is then raised by a fixed amount, to
where precision and recall are level in the folds.

Fitted on the talks of tests/benchmarks/takeback_talks.py and judged in ten folds of whole talks: no talk is judged by
weights that saw it. `--write` renews extract/data/takeback_weights.toml.
"""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
from scipy.optimize import minimize
from sklearn.feature_extraction import DictVectorizer
from sklearn.model_selection import GroupKFold

from extract.corrections.evidence import Reasons
from extract.corrections.far_pairs import far_pairs, far_reasons
from extract.corrections.near_pairs import near_pairs, near_reasons
from extract.corrections.statement_reasons import statement_reasons
from extract.corrections.statements import statements, unit_starts
from extract.weights import Weights
from tests.benchmarks.marked_talks import FOLDERS
from tests.benchmarks.takeback_talks import MarkedTalk, marked_talks

WEIGHTS = Path(__file__).parent.parent.parent / "extract" / "data" / "takeback_weights.toml"
FOLDS = 10
BESIDE = 0.2
"""How much a statement counts that another reading of a marked remark gives."""
_AGAINST = frozenset(
    {"affirm", "affirmed", "another_subject",
     "answer_signs", "asking", "behind", "breaks", "change", "changed", "claim_signs",
     "comparing", "counting", "denied_right", "empty_claim", "far", "figures", "figures_both", "gap", "joined",
     "joined_first", "lone_no", "long", "more_figures", "open_words", "other_attribute", "other_thing", "others",
     "others_between", "own_denied", "range", "digit", "doubted", "limit", "other_kind",
     "repeated", "says_again", "session_unturned", "unsigned", "wide", "work", "worked",
     "you_between"}
)  # fmt: skip
_EITHER = frozenset(
    {"asked", "bare", "both_bare", "inside", "near", "next", "opens", "own", "session", "short", "unit_dropped",
     "unit_supplied", "you"}
)  # fmt: skip


@dataclass(frozen=True)
class Model:
    """How one of the three is fitted."""

    name: str
    strength: float
    """Inverse of the L2 penalty; smaller is stronger. Chosen in the folds."""
    raised: float
    read: Callable[[MarkedTalk, int], list[Candidate]]

    @staticmethod
    def bounds(sign: str) -> tuple[float | None, float | None]:
        """What the weight of a sign may be."""
        if sign in _AGAINST:
            return None, 0.0
        return (None, None) if sign in _EITHER or sign.startswith("by_") else (0.0, None)


@dataclass(frozen=True)
class Candidate:
    """What may be a correction, and the mark that it is, if any."""

    talk: int
    reasons: Reasons
    mark: int | None
    takes: frozenset[Hashable]
    """Of two candidates that take the same, only the likelier is believed."""
    passed: bool = False
    """Not counted when it is found: its answer is marked, or its remark."""
    weight: float = 1.0


def main() -> None:
    """Print the table of ten folds; with `--write` renew the weights."""
    talks = marked_talks()
    written = []
    print("| judged | talks | marked | found | right | precision | recall | F1 |\n|" + "---|" * 8)
    for model in MODELS:
        candidates = [one for number, talk in enumerate(talks) for one in model.read(talk, number)]
        for source, counts in _in_folds(model, candidates, talks).items():
            print(_row(f"{model.name}, {source}", counts))
        written.append((model, fit(model, candidates)))
    if "--write" in sys.argv:
        _write(written, len(talks))


def fit(model: Model, candidates: Sequence[Candidate]) -> Weights:
    """The weights that tell these candidates best, the bias raised."""
    columns = DictVectorizer(sparse=False)
    rows = columns.fit_transform([one.reasons for one in candidates])
    side = np.array([1.0 if one.mark is not None else -1.0 for one in candidates])
    weight = np.array([one.weight for one in candidates])

    def loss(at: Any) -> tuple[float, Any]:
        margin = side * (rows @ at[1:] + at[0])
        slope = -weight * side / (1 + np.exp(margin))
        value = (weight * np.logaddexp(0, -margin)).sum() + (at[1:] ** 2).sum() / (2 * model.strength)
        return value, np.r_[slope.sum(), rows.T @ slope + at[1:] / model.strength]

    names = [str(name) for name in columns.get_feature_names_out()]
    bounds = [(None, None), *(model.bounds(name) for name in names)]
    best = minimize(loss, np.zeros(len(names) + 1), jac=True, bounds=bounds, method="L-BFGS-B")
    weights = {name: round(float(value), 2) for name, value in zip(names, best.x[1:], strict=True)}
    return Weights(round(float(best.x[0]) + model.raised, 2), {name: value for name, value in weights.items() if value})


def _in_folds(model: Model, candidates: Sequence[Candidate], talks: Sequence[MarkedTalk]) -> dict[str, Counter[str]]:
    groups = [one.talk for one in candidates]
    scores = np.zeros(len(candidates))
    for fitting, judged in GroupKFold(FOLDS).split(groups, groups=groups):
        fitted = fit(model, [candidates[at] for at in fitting])
        scores[judged] = [fitted.sum(candidates[at].reasons) for at in judged]
    by_talk: dict[int, list[tuple[float, Candidate]]] = {number: [] for number in range(len(talks))}
    for score, one in zip(scores, candidates, strict=True):
        by_talk[one.talk].append((float(score), one))
    counts: dict[str, Counter[str]] = {}
    for number, scored in by_talk.items():
        own = _score(scored)
        own["talks"] = 1
        counts.setdefault(talks[number].source, Counter()).update(own)
    counts["all"] = sum(counts.values(), Counter())
    return counts


def _score(scored: Sequence[tuple[float, Candidate]]) -> Counter[str]:
    """Marks that some candidate of a talk is, candidates believed, and those of them that are right."""
    taken: set[Hashable] = set()
    right: set[int] = set()
    found = 0
    for score, one in sorted(scored, key=lambda pair: -pair[0]):
        if score > 0 and taken.isdisjoint(one.takes):
            taken |= one.takes
            found += one.mark is not None or not one.passed
            right |= {one.mark} if one.mark is not None else set()
    return Counter(marked=len({one.mark for _, one in scored} - {None}), found=found, right=len(right))


def _near(talk: MarkedTalk, number: int) -> list[Candidate]:
    found = []
    for wrong, right in near_pairs(talk.scene, talk.signs):
        mark, partly = talk.pair(wrong, right)
        takes = frozenset({("wrong", wrong), ("right", right)})
        found.append(Candidate(number, near_reasons(talk.scene, talk.signs, wrong, right), mark, takes, partly))
    return found


def _far(talk: MarkedTalk, number: int) -> list[Candidate]:
    found = []
    for wrong, right in far_pairs(talk.scene, talk.signs):
        mark, partly = talk.pair(wrong, right)
        takes = frozenset({("wrong", wrong), ("right", right)})
        found.append(Candidate(number, far_reasons(talk.scene, talk.signs, wrong, right), mark, takes, partly))
    return found


def _statement(talk: MarkedTalk, number: int) -> list[Candidate]:
    """Readings of one marked remark share its weight."""
    read = [(one, talk.statement(one)) for one in statements(talk.scene, talk.signs, unit_starts(talk.scene))]
    often = Counter(mark for _, mark in read)
    found = []
    for one, mark in read:
        beside = mark is None and talk.beside_a_mark(one)
        weight = often[mark] ** -0.5 if mark is not None else BESIDE if beside else 1.0
        takes = frozenset(range(min(one.begin, one.answer[0]), one.answer[1]))
        reasons = statement_reasons(talk.scene, talk.signs, one)
        found.append(Candidate(number, reasons, mark, takes, beside, weight))
    return found


MODELS = (Model("near", 3.0, 0.15, _near), Model("far", 3.0, 0.1, _far), Model("statement", 1.0, 0.4, _statement))


def _row(name: str, counts: Counter[str]) -> str:
    precision, recall = counts["right"] / (counts["found"] or 1), counts["right"] / (counts["marked"] or 1)
    f1 = 2 * counts["right"] / ((counts["found"] + counts["marked"]) or 1)
    numbers = " | ".join(str(counts[one]) for one in ("talks", "marked", "found", "right"))
    return f"| {name} | {numbers} | {precision:.2f} | {recall:.2f} | {f1:.3f} |"


def _write(fitted: Sequence[tuple[Model, Weights]], talks: int) -> None:
    strengths = ", ".join(f"{model.strength:g} ({model.name})" for model, _ in fitted)
    raised = ", ".join(f"{model.raised:g}" for model, _ in fitted)
    lines = [
        "# What each sign of a statement taken back weighs; above 0 together with the bias they speak for it.",
        "# Made by: python -m tests.benchmarks.fit_corrections --write",
        f"# Logistic regression with an L2 penalty, C = {strengths}; signs that can only speak",
        f"# for or against a correction are held to that side. The bias is raised by {raised}.",
        f"# Fitted on {talks} talks and phrases, inventions of ours all of them: tests/narrations",
        f"# ({', '.join(FOLDERS)}), the phrases of tests/extract/corrections, and the talks of",
        "# tests/extract marked in its marked_talks.toml.",
    ]
    for model, one in fitted:
        lines += ["", f"[{model.name}]", f"bias = {one.bias:.2f}"]
        ranked = sorted(one.signs.items(), key=lambda pair: -abs(pair[1]))
        lines += [f"{name} = {value:.2f}" for name, value in ranked]
    WEIGHTS.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
