"""Whole narrations of trades that have no file of their own, read as a stranger would mark them.

The marks were made before the rules were run on them. The floors are what the rules reach, a little rounded down: they
hold the ground that was won, and say nothing of narrations that nobody has marked.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from extract.spans import Measured
from tests.extract.measures.reading import measures_of, quote

_FILES = sorted((Path(__file__).parent / "narrations").glob("*.toml"))
_SMALL_WORDS = {"the", "a", "an", "of", "at", "on", "in", "to", "and", "for"}


@dataclass
class Score:
    """How many of the marks were met."""

    marked: int = 0
    found: int = 0
    attribute: int = 0
    item: int = 0
    phase: int = 0


def _words(*phrases: str | None) -> set[str]:
    """Content words, singular."""
    said = {word for phrase in phrases for word in re.findall(r"[a-z0-9]+", (phrase or "").lower())}
    return {
        word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word for word in said
    } - (_SMALL_WORDS)


def _same_figure(said: str, mark: str) -> bool:
    """The quantities stage may take an article with the number or leave it."""
    return _words(said) == _words(mark)


def _score(path: Path) -> Score:
    narration = tomllib.loads(path.read_text(encoding="utf-8"))
    doc, measures = measures_of(narration["text"].strip().splitlines())
    cues = doc._.narration.cue
    left = list(measures)
    score = Score()
    for mark in narration["measure"]:
        score.marked += 1
        here = [
            one
            for one in left
            if cues[one.quantity.start] == mark["cue"] and _same_figure(quote(doc, one), mark["quote"])
        ]
        if here:
            left.remove(here[0])
            _add(score, mark, here[0])
    return score


def _add(score: Score, mark: dict[str, Any], measure: Measured) -> None:
    score.found += 1
    score.attribute += bool(_words(measure.attribute) & _words(*mark["attribute"]))
    score.item += bool(_words(measure.item, measure.attribute) & _words(*mark["item"]))
    score.phase += measure.phase == mark["phase"]


@pytest.fixture(scope="module")
def total() -> Score:
    scores = [_score(path) for path in _FILES]
    return Score(*(sum(getattr(one, field) for one in scores) for field in Score.__dataclass_fields__))


def test_enough_figures_are_marked(total: Score) -> None:
    assert total.marked >= 600
    assert total.found >= 0.85 * total.marked


def test_attributes(total: Score) -> None:
    assert total.attribute >= 0.85 * total.found


def test_items(total: Score) -> None:
    assert total.item >= 0.73 * total.found


def test_phases(total: Score) -> None:
    assert total.phase >= 0.77 * total.found
