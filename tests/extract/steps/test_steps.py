"""Steps of phrases.toml and of whole narrations, and what holds for any narration."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from spacy.tokens import Doc

from extract.spans import Action
from extract.steps import find_steps
from extract.trade import guess_trade, load_trade
from tests.extract.narrations import transcript_of
from tests.extract.pipes import parsed

_HERE = Path(__file__).parent
_WORST = 0.5
_OVERALL = 0.72


@dataclass(frozen=True, slots=True)
class Told:
    """A narration of our own with the steps that a careful reader finds in it."""

    name: str
    cues: tuple[str, ...]
    gaps: tuple[float, ...]
    steps: tuple[tuple[int, int, str], ...]
    """First and last cue, and the words of verb and object."""


def _narrations() -> list[Told]:
    told = []
    for path in sorted((_HERE / "narrations").glob("*.txt")):
        said, expected = path.read_text(encoding="utf-8").split("\n->\n")
        lines = [line.partition(" | ") for line in said.splitlines() if line and not line.startswith("#")]
        steps = [re.match(r"(\d+)-(\d+) (.+)", line) for line in expected.splitlines() if line]
        told.append(
            Told(
                path.stem,
                tuple(cue for cue, _, _ in lines),
                tuple(float(gap or 0.04) for _, _, gap in lines),
                tuple((int(step[1]), int(step[2]), step[3]) for step in steps if step),
            )
        )
    return told


NARRATIONS = _narrations()


def _steps(cues: list[str] | tuple[str, ...], gaps: tuple[float, ...] = ()) -> tuple[Doc, tuple[Action, ...]]:
    transcript = transcript_of(cues, gaps)
    trade = load_trade(guess_trade(transcript.text))
    doc = parsed(transcript, trade)
    return doc, find_steps(doc, (), trade)


@pytest.mark.parametrize(
    "case", tomllib.loads((_HERE / "phrases.toml").read_text(encoding="utf-8"))["case"], ids=lambda case: case["title"]
)
def test_steps_are_found_and_look_alikes_are_not(case: dict[str, Any]) -> None:
    _, found = _steps(case["cues"])
    assert [f"{one.verb} / {one.object} / {one.mode} / {one.text}" for one in found] == case["steps"]


def _words(phrase: str) -> set[str]:
    return {word.removesuffix("s") for word in re.findall(r"[a-z]+", phrase.lower())} - {
        "the",
        "of",
        "and",
        "a",
        "with",
    }


def _matched(told: Told) -> tuple[int, int]:
    """How many expected steps were found (same cues give or take one, a shared word), and how many in all."""
    doc, found = _steps(told.cues, told.gaps)
    cue = doc._.narration.cue
    left = [(cue[one.start], cue[one.end - 1], _words(f"{one.verb} {one.object}")) for one in found]
    hits = 0
    for first, last, words in told.steps:
        fits = [one for one in left if one[0] <= last + 1 and one[1] >= first - 1 and one[2] & _words(words)]
        if fits:
            hits += 1
            left.remove(min(fits, key=lambda one: abs(one[0] - first)))
    return hits, len(found)


def test_most_steps_of_our_own_narrations_are_found() -> None:
    results = {told.name: (*_matched(told), len(told.steps)) for told in NARRATIONS}
    scores = {name: 2 * hits / (found + wanted) for name, (hits, found, wanted) in results.items()}
    assert {name: score for name, score in scores.items() if score < _WORST} == {}
    hits, found, wanted = (sum(column) for column in zip(*results.values(), strict=True))
    assert 2 * hits / (found + wanted) >= _OVERALL


@pytest.mark.parametrize("told", NARRATIONS, ids=lambda told: told.name)
def test_every_step_has_a_place_of_its_own_and_reads_like_an_instruction(told: Told) -> None:
    doc, found = _steps(told.cues, told.gaps)
    ends = 0
    for one in found:
        assert 0 <= ends <= one.start < one.end <= len(doc)
        ends = one.end
        assert one.verb
        assert one.text[0].isupper()
        assert not one.text.endswith((".", ",", " "))
        assert not re.search(r"\b(i|my|me|we|um|uh)\b", one.text.lower())


@settings(max_examples=15, deadline=None)
@given(data=st.data())
def test_spans_are_sorted_and_apart_in_any_order_of_cues(data: st.DataObject) -> None:
    cues = data.draw(st.permutations(data.draw(st.sampled_from(NARRATIONS)).cues))
    doc, found = _steps(cues)
    borders = [at for one in found for at in (one.start, one.end)]
    assert borders == sorted(borders)
    assert all(0 <= at <= len(doc) for at in borders)


@pytest.mark.parametrize("told", NARRATIONS, ids=lambda told: told.name)
def test_an_unrelated_cue_changed_keeps_the_other_steps(told: Told) -> None:
    doc, before = _steps(told.cues, told.gaps)
    cue = doc._.narration.cue
    busy = {k for one in before for k in range(cue[one.start] - 2, cue[one.end - 1] + 7)}
    idle = [k for k in range(1, len(told.cues)) if k not in busy]
    for changed in idle[:2]:
        cues = [*told.cues]
        cues[changed] = "It has been raining since breakfast, would you believe it."
        _, after = _steps(cues, told.gaps)
        assert [(one.verb, one.object, one.text) for one in after] == [
            (one.verb, one.object, one.text) for one in before
        ]


def test_a_step_told_afterwards_is_put_before() -> None:
    _, found = _steps(["Now I file the nut slots.", "Before that I had the strings off."])
    assert [one.verb for one in sorted(found, key=lambda one: one.order)] == ["remove", "file"]
    assert [one.verb for one in found] == ["file", "remove"]


def test_no_words_hold_no_steps() -> None:
    assert _steps(["um"])[1] == ()
