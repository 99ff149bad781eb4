"""How well a number without a unit is told to be a measure, and in which unit; and the fit of what each reason weighs.

    python -m tests.benchmarks.bare_figures [--write]

Needs scipy (it comes with the extra `fit`). A number may be no measure at all, or have one of the units that a
neighbour, its form or the trade lends it: a conditional logistic regression over these, each reason with its strength,
the penalty drawing towards [by_hand] of data/evidence.toml. Prints the share of right answers in five folds by talk,
beside those by hand (which were set with all talks but `later` in sight) and those as they stand. `--write` renews the
file's [weights]. While a talk is read for the fit, numbers lend what a reader would say that they are, so that the fit
comes out the same however often it is made.
"""

from __future__ import annotations

import importlib
import json
import sys
import tomllib
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from scipy.optimize import minimize
from scipy.sparse import csr_matrix

from capture import read_captions
from capture.transcript import Transcript
from extract.narration import make_doc
from extract.quantities.candidate import Candidate, Neighbours, Reasons
from extract.quantities.draft import Draft
from extract.quantities.evidence import evidence_for
from extract.quantities.knowledge import knowledge
from extract.quantities.scene import Scene
from extract.quantities.supply import candidates_for, in_parts, supply
from extract.trade import guess_trade, load_trade
from tests.benchmarks.marked_talks import FOLDERS, TESTS
from tests.benchmarks.narrations import same_quantity, same_value
from tests.extract.marked import Marked, language, narration, phrases, single_lines
from tests.extract.narrations import transcript_of

FILE = TESTS.parent / "extract" / "data" / "evidence.toml"
FOLDS = 5
PENALTY = 2.0
"""Picked by the folds among 0.5, 1, 2, 4 and 8."""
_TIMES = {"phrases": 4.0, "quantities": 3.0}
"""How much more a figure weighs that a test of this stage asks for than one of a talk."""
_LATER_STAGES = ["measures", "corrections", "steps", "remarks"]

Gold = dict[str, Any]


@dataclass(frozen=True)
class Talk:
    """A narration with its marked measures."""

    source: str
    transcript: Transcript
    golds: list[Gold]
    exact: bool
    """Every measure is marked with its very cue."""


@dataclass(frozen=True)
class Choice:
    """What speaks for each unit of one bare number, which are right, and whether it is right that it is no measure."""

    talk: int
    source: str
    reasons: list[Mapping[str, float]]
    right: list[bool]
    none: bool


def main() -> None:
    """Print the table; with `--write` renew the weights."""
    talks = list(_talks())
    choices = [one for place, talk in enumerate(talks) for one in _choices(place, talk)]
    by_hand, now = _by_hand(), knowledge().evidence.weights
    of = Counter(one.source for one in choices)
    right = [Counter(one.source for one in choices if _is_right(one, weights)) for weights in (by_hand, now)]
    in_folds: Counter[str] = Counter()
    for fold in range(FOLDS):
        weights = fit([one for one in choices if one.talk % FOLDS != fold], by_hand)
        in_folds.update(one.source for one in choices if one.talk % FOLDS == fold and _is_right(one, weights))
    columns = [*right, in_folds]
    print(f"| talks | bare numbers | by hand | as they stand | in {FOLDS} folds |\n|---|---|---|---|---|")
    for source in of:
        shares = " | ".join(f"{one[source] / of[source]:.3f}" for one in columns)
        print(f"| {source} | {of[source]} | {shares} |")
    print(f"| all | {of.total()} | " + " | ".join(f"{one.total() / of.total():.3f}" for one in columns) + " |")
    if "--write" in sys.argv:
        _write(fit(choices, by_hand))


def fit(choices: Sequence[Choice], start: Mapping[str, float]) -> dict[str, float]:
    """Weights under which the right answers have the largest share, none too far from where they start.

    What speaks for a measure may come to weigh nothing, never the contrary: so no rare reason is learnt upside down.
    """
    usable = [one for one in choices if any(one.right) or (one.none and one.reasons)]
    names = sorted(start)
    column = {name: place for place, name in enumerate(names)}
    first = np.array([start[name] for name in names])
    cells: list[tuple[int, int, float]] = []
    group: list[int] = []
    accepted: list[bool] = []
    fixed: list[float] = []
    weight: list[float] = []
    for place, one in enumerate(usable):
        for reasons, right in [({}, one.none), *zip(one.reasons, one.right, strict=True)]:
            cells += [(len(group), column[name], strength) for name, strength in reasons.items() if strength]
            fixed.append(0.0 if reasons else knowledge().evidence.enough)
            group.append(place)
            accepted.append(right)
        weight.append(_TIMES.get(one.source, 1.0))
    rows, columns, strengths = zip(*cells, strict=True)
    matrix = csr_matrix((strengths, (rows, columns)), shape=(len(group), len(names)))
    groups, good = np.array(group), np.array(accepted, dtype=float)
    counts, offset = np.array(weight), np.array(fixed)
    starts = np.flatnonzero(np.r_[True, groups[1:] != groups[:-1]])

    def loss(weights: Any) -> tuple[float, Any]:
        sums = matrix @ weights + offset
        raised = np.exp(sums - np.maximum.reduceat(sums, starts)[groups])
        all_of, good_of = np.add.reduceat(raised, starts), np.add.reduceat(raised * good, starts)
        slope = matrix.T @ ((raised * good / good_of[groups] - raised / all_of[groups]) * counts[groups])
        value = np.sum(counts * (np.log(all_of) - np.log(good_of)))
        away = weights - first
        return float(value + PENALTY / 2 * away @ away), PENALTY * away - slope

    bounds = [(0, None) if here > 0 else (None, 0) if here < 0 else (None, None) for here in first]
    best = minimize(loss, first, jac=True, method="L-BFGS-B", bounds=bounds, options={"maxiter": 300}).x
    return {name: round(float(best[place]), 2) for name, place in column.items()}


def _is_right(choice: Choice, weights: Mapping[str, float]) -> bool:
    sums = [sum(weights[name] * strength for name, strength in one.items()) for one in choice.reasons]
    best = max(sums, default=-np.inf)
    if best < knowledge().evidence.enough:
        return choice.none
    return choice.right[sums.index(best)]


def _talks() -> Iterator[Talk]:
    for folder in FOLDERS:
        for path in sorted((TESTS / "narrations" / folder).rglob("gold.json")):
            golds = json.loads(path.read_text("utf-8"))["measures"]
            yield Talk(folder, read_captions(path.parent / "narration.vtt"), golds, exact=False)
    here = TESTS / "extract" / "quantities"
    for path in sorted((here / "narrations").glob("*.txt")):
        yield _marked("quantities", narration(path))
    for one in phrases(here / "phrases" / "left_out.txt"):
        yield _marked("phrases", one)
    for name in ("said", "meanings", "not_measures", "manner"):
        for one in single_lines(here / "phrases" / f"{name}.txt"):
            yield _marked("phrases", one)


def _marked(source: str, talk: Marked) -> Talk:
    golds = [
        {
            "cue": one.cue,
            "value": float((one.low + one.high) / 2),
            "low": float(one.low) if one.low != one.high else None,
            "high": float(one.high) if one.low != one.high else None,
            "unit": one.unit or "dimensionless",
        }
        for one in talk.expected
    ]
    return Talk(source, transcript_of(talk.lines), golds, exact=True)


def _choices(place: int, talk: Talk) -> list[Choice]:
    found: list[Choice] = []

    def listen(scene: Scene, draft: Draft, near: Neighbours) -> Draft | None:
        candidates = candidates_for(scene, draft, near)
        one = _choice(place, talk, scene, draft, near, candidates)
        found.append(one)
        if not any(one.right):
            return None if one.none else supply(scene, draft, near)
        right = candidates[one.right.index(True)]
        return replace(draft, unit=right.unit, number=in_parts(draft.number, right))

    stage = importlib.import_module("extract.quantities")
    stage.supply = listen  # type: ignore[attr-defined]
    doc = make_doc(language(), talk.transcript)
    doc._.trade = load_trade(guess_trade(talk.transcript.text))
    language()(doc, disable=_LATER_STAGES)
    stage.supply = supply  # type: ignore[attr-defined]
    return found


def _choice(
    place: int, talk: Talk, scene: Scene, draft: Draft, near: Neighbours, candidates: list[Candidate]
) -> Choice:
    beside: Reasons = evidence_for(scene, draft, near.counted)
    cue = scene.cue(draft.start)
    golds = [one for one in talk.golds if abs(one["cue"] - cue) <= (0 if talk.exact else 1)]
    right = [any(same_quantity(gold, _as_record(draft, one)) for gold in golds) for one in candidates]
    none = not any(right) and not any(_is_said(gold, draft) for gold in golds)
    return Choice(place, talk.source, [beside | {**one.reasons} for one in candidates], right, none)


def _is_said(gold: Gold, draft: Draft) -> bool:
    """True where a marked measure has the number's own value; one without any unit is told by no candidate."""
    return gold["unit"] != "dimensionless" and same_value(
        gold["value"], gold["unit"], float(draft.number.value), gold["unit"]
    )


def _as_record(draft: Draft, candidate: Candidate) -> Gold:
    number = in_parts(draft.number, candidate)
    ends = {"low": number.low, "high": number.high}
    found = {name: None if end is None else float(end) for name, end in ends.items()}
    return {"value": float(number.value), "unit": candidate.unit.name, **found}


def _by_hand() -> dict[str, float]:
    return dict(tomllib.loads(FILE.read_text("utf-8"))["by_hand"])


def _write(weights: Mapping[str, float]) -> None:
    """Set the file's last table anew."""
    head, _ = FILE.read_text("utf-8").split("[weights]\n", 1)
    lines = (f"{name} = {weights[name]:g}" for name in _by_hand())
    FILE.write_text(head + "\n".join(["[weights]", *lines, ""]), "utf-8")


if __name__ == "__main__":
    main()
