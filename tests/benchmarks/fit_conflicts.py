"""Fits what the signs of one thing told twice weigh, and says how well that carries to talks that were not fitted on.

    python -m tests.benchmarks.fit_conflicts [--write]

A logistic regression with an L2 penalty (the extra `fit`): does a later figure tell an earlier one again, and
otherwise? Signs that can only speak for it weigh nothing or more, those that can only speak against it nothing or less.
The bias is set to where, in the folds, so many right figures are stopped in ten minutes of talk as `STOPS` says.

Fitted on the folders of tests/narrations that may be read, with the marks of told_twice.toml, on the talks of
tests/extract, in which nothing is told twice wrongly, and on the phrases of the checks' tests; judged in ten folds of
whole talks, so that no talk is judged by weights that saw it. `--write` renews extract/data/conflict_weights.toml.
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
from scipy.optimize import minimize
from sklearn.feature_extraction import DictVectorizer
from sklearn.model_selection import GroupKFold

from capture import read_captions
from extract.checks.talk import Talk
from extract.checks.twice import Pair, likeliest, pairs_of
from extract.checks.twice.signs import Scene
from extract.checks.twice.values import agree
from extract.pipeline import Extractor
from extract.record import Record
from extract.trade import load_trade
from extract.weights import Weights
from tests.benchmarks.marked_talks import bracketed, plain
from tests.extract.checks.records import cases, record_of, trade_of
from tests.extract.marked import narration
from tests.extract.narrations import transcript_of

TESTS = Path(__file__).parent.parent
WEIGHTS = TESTS.parent / "extract" / "data" / "conflict_weights.toml"
FOLDERS = ("fitted", "read", "newer", "opened", "wide", "later", "faults_read")
FOLDS = 10
STRENGTH = 1.0
"""Inverse of the L2 penalty; smaller is stronger. Chosen in the folds."""
STOPS = 0.17
"""Right figures stopped in ten minutes of talk, in the folds, at the bias that is chosen."""
_CUES = 2
_PHRASES = ("conflicts.txt", "told.txt", "retold.txt")
_AGAINST = frozenset(
    {"difference", "found_of_other", "hedged", "item_of_kind", "kinds", "moved_on", "new", "other_attribute",
     "other_item", "other_kind", "other_unit", "other_where", "ratio", "ratio_big", "target_then_found",
     "then_left", "untold", "wanted_first"}
)  # fmt: skip
_EITHER = frozenset({"aimed", "both_target", "clause_behind", "gap", "points", "past", "unsaid", "wanted"})


@dataclass(frozen=True)
class MarkedTalk:
    """A talk, its pairs figure by figure, which of them are marked, and the cues of its faults."""

    source: str
    name: str
    minutes: float
    pairs: tuple[tuple[Pair, ...], ...]
    marked: frozenset[tuple[str, str]]
    """Ids of the earlier and the later measure."""
    faults: tuple[int, ...]
    """Cues of all faults: what is stopped beside one is no right figure."""


def main() -> None:
    """Print the table of ten folds; with `--write` renew the weights."""
    talks = marked_talks()
    scores = _in_folds(talks)
    raised = _raised(talks, scores)
    print("| talks | | minutes | told twice | found | right figures stopped | / 10 min |\n|" + "---|" * 7)
    for source, counts in _count(talks, scores, raised).items():
        print(_row(source, counts))
    if "--write" in sys.argv:
        fitted = fit(talks)
        _write(Weights(round(fitted.bias + raised, 2), fitted.signs), len(talks))


def fit(talks: Sequence[MarkedTalk]) -> Weights:
    """The weights that tell the pairs of these talks best."""
    rows = [(pair, _is_marked(talk, pair)) for talk in talks for pair in _differing(talk)]
    columns = DictVectorizer(sparse=False)
    signs = columns.fit_transform([pair.signs for pair, _ in rows])
    side = np.array([1.0 if marked else -1.0 for _, marked in rows])

    def loss(at: Any) -> tuple[float, Any]:
        margin = side * (signs @ at[1:] + at[0])
        slope = -side / (1 + np.exp(margin))
        value = np.logaddexp(0, -margin).sum() + (at[1:] ** 2).sum() / (2 * STRENGTH)
        return value, np.r_[slope.sum(), signs.T @ slope + at[1:] / STRENGTH]

    names = [str(name) for name in columns.get_feature_names_out()]
    bounds = [(None, None), *(_bounds(name) for name in names)]
    best = minimize(loss, np.zeros(len(names) + 1), jac=True, bounds=bounds, method="L-BFGS-B")
    weights = {name: round(float(value), 2) for name, value in zip(names, best.x[1:], strict=True)}
    return Weights(float(best.x[0]), {name: value for name, value in weights.items() if value})


def marked_talks() -> list[MarkedTalk]:
    """All of them, in a fixed order."""
    extractor = Extractor()
    return [*_narrations(extractor), *_other_talks(extractor), *_phrases()]


def _bounds(sign: str) -> tuple[float | None, float | None]:
    if sign in _AGAINST:
        return None, 0.0
    return (None, None) if sign in _EITHER else (0.0, None)


def _differing(talk: MarkedTalk) -> Iterator[Pair]:
    for pairs in talk.pairs:
        yield from (pair for pair in pairs if not agree(pair.first, pair.second))


def _is_marked(talk: MarkedTalk, pair: Pair) -> bool:
    return (pair.first.measure.id, pair.second.measure.id) in talk.marked


def _in_folds(talks: Sequence[MarkedTalk]) -> list[list[tuple[float, Pair]]]:
    """For each talk, each figure's best pair by weights that did not see the talk, unless it agrees with its first."""
    order = np.random.default_rng(0).permutation(len(talks))
    scores: list[list[tuple[float, Pair]]] = [[] for _ in talks]
    for fitting, judged in GroupKFold(FOLDS).split(order, groups=order):
        weights = fit([talks[order[at]] for at in fitting])
        for at in (int(order[one]) for one in judged):
            scores[at] = [found for pairs in talks[at].pairs if (found := likeliest(weights, pairs)) is not None]
    return scores


def _raised(talks: Sequence[MarkedTalk], scores: Sequence[list[tuple[float, Pair]]]) -> float:
    """How much the bias must rise, or sink, for as many right figures to be stopped as are borne with."""
    wrong = sorted(
        (
            score
            for talk, own in zip(talks, scores, strict=True)
            for score, pair in own
            if talk.minutes and _is_false(talk, pair)
        ),
        reverse=True,
    )
    borne = int(STOPS * sum(talk.minutes for talk in talks) / 10)
    return -float(wrong[borne]) - 0.01


def _is_false(talk: MarkedTalk, pair: Pair) -> bool:
    return not any(abs(pair.second.measure.cue - cue) <= _CUES for cue in talk.faults)


def _count(
    talks: Sequence[MarkedTalk], scores: Sequence[list[tuple[float, Pair]]], raised: float
) -> dict[str, Counter[str]]:
    counts: dict[str, Counter[str]] = {}
    for talk, own in zip(talks, scores, strict=True):
        stopped = [pair for score, pair in own if score + raised > 0]
        meant = {second for _, second in talk.marked}
        found = {pair.second.measure.id for pair in stopped} & meant
        right = sum(_is_false(talk, pair) for pair in stopped)
        one = Counter(talks=1, marked=len(meant), found=len(found), right=right, seconds=round(60 * talk.minutes))
        counts.setdefault(talk.source, Counter()).update(one)
    counts["all"] = sum(counts.values(), Counter())
    return counts


def _row(source: str, counts: Counter[str]) -> str:
    minutes = counts["seconds"] / 60
    share = f"{counts['found'] / counts['marked']:.2f}" if counts["marked"] else "–"
    often = f"{10 * counts['right'] / minutes:.2f}" if minutes else "–"
    return (
        f"| {source} | {counts['talks']} | {minutes:.0f} | {counts['marked']} | {share} | {counts['right']} | {often} |"
    )


def _narrations(extractor: Extractor) -> Iterator[MarkedTalk]:
    rows = tomllib.loads(Path(__file__).with_name("told_twice.toml").read_text("utf-8"))["twice"]
    for folder in FOLDERS:
        for path in sorted((TESTS / "narrations" / folder).rglob("gold.json")):
            record = extractor.record(read_captions(path.parent / "narration.vtt"))
            faults = tuple(one["cue"] for one in json.loads(path.read_text("utf-8"))["faults"])
            marks = [row for row in rows if row["talk"] == path.parent.name]
            yield _talk(folder, path.parent.name, record, marks, faults)


def _other_talks(extractor: Extractor) -> Iterator[MarkedTalk]:
    """The talks of the tests of measures, quantities and phases, in which nothing is marked."""
    folder = TESTS / "extract"
    said: dict[str, Sequence[str]] = {}
    for path in sorted((*folder.glob("measures/narrations/*.toml"), *folder.glob("quantities/narrations/*.txt"))):
        if path.suffix == ".toml":
            said[path.stem] = tomllib.loads(path.read_text("utf-8"))["text"].strip().splitlines()
        else:
            said[path.stem] = narration(path).lines
    said |= {name: plain(lines) for name, lines in bracketed().items()}
    for name, lines in said.items():
        yield _talk("other tests", name, extractor.record(transcript_of(lines)), (), ())


def _phrases() -> Iterator[MarkedTalk]:
    """Each phrase is a talk of its own; where a conflict is due, its last figure tells the first one again."""
    for name in _PHRASES:
        path = TESTS / "extract" / "checks" / name
        for case in cases(path):
            record = record_of(case.lines)
            due = [line for line in case.expected if line.startswith("conflict stop")]
            talk = _talk("phrases", case.title, record, (), (), trade_of(path))
            marked = frozenset(
                (pair.first.measure.id, pair.second.measure.id)
                for pairs in talk.pairs
                for pair in pairs
                if any(_tells(line, pair) for line in due)
            )
            cues = tuple(one.cue for one in record.measures if any(one.id == second for _, second in marked))
            yield MarkedTalk(talk.source, talk.name, 0.0, talk.pairs, marked, cues)


def _tells(line: str, pair: Pair) -> bool:
    """The message has both figures, the earlier one first."""
    first, second = (one.measure.display.replace("\N{NO-BREAK SPACE}", " ") for one in (pair.first, pair.second))
    quote = pair.second.measure.quote
    at = line.find(f" {first}")
    return at >= 0 and (line.find(f" {second}", at + 1) > at or line.find(f" {quote}", at + 1) > at)


def _talk(
    source: str,
    name: str,
    record: Record,
    marks: Sequence[dict[str, Any]],
    faults: tuple[int, ...],
    trade: str | None = None,
) -> MarkedTalk:
    scene = Scene(Talk(record, load_trade(trade or record.session.trade or "general")))
    pairs = tuple(tuple(found) for found in pairs_of(scene))
    marked = frozenset(
        (pair.first.measure.id, pair.second.measure.id)
        for found in pairs
        for pair in found
        for mark in marks
        if _is(pair.first.measure, mark["first"]) and _is(pair.second.measure, mark["second"])
    )
    return MarkedTalk(source, name, record.session.duration / 60, pairs, marked, faults)


def _is(measure: Any, mark: dict[str, Any]) -> bool:
    return bool(measure.cue == mark["cue"] and measure.quote == mark["quote"])


def _write(weights: Weights, talks: int) -> None:
    lines = [
        "# What each sign of one thing told twice weighs; above 0 together with the bias they speak for it.",
        "# Made by: python -m tests.benchmarks.fit_conflicts --write",
        f"# Logistic regression with an L2 penalty, C = {STRENGTH:g}; signs that can only speak for or against are",
        f"# held to that side. The bias is set to where, in ten folds, {STOPS:g} right ones are stopped in 10 minutes.",
        f"# Fitted on {talks} talks and phrases, inventions of ours all of them: tests/narrations, the talks of",
        "# tests/extract and the phrases of tests/extract/checks.",
        "",
        "[twice]",
        f"bias = {weights.bias:.2f}",
        *(f"{name} = {value:.2f}" for name, value in sorted(weights.signs.items(), key=lambda pair: -abs(pair[1]))),
    ]
    WEIGHTS.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
