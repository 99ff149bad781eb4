"""Statements taken back and their look-alikes, read through the whole pipeline."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

import pytest

from extract.pipeline import Extractor
from extract.record import Correction, Record
from extract.trade import load_trade
from tests.extract.narrations import transcript_of

_HERE = Path(__file__).parent


@dataclass(frozen=True, slots=True)
class Due:
    withdrawn: str
    holds: str
    value: float | None
    unit: str | None
    scope: str


@dataclass(frozen=True, slots=True)
class Case:
    title: str
    cues: tuple[str, ...]
    due: tuple[Due, ...]
    gone: tuple[str, ...] | None


def _due(line: str) -> Due:
    withdrawn, holds, figure, *scope = (part.strip() for part in line.removeprefix("->").split("|"))
    value, _, unit = figure.partition(" ")
    known = figure != "-"
    return Due(
        withdrawn,
        holds,
        float(value) if known else None,
        unit if known else None,
        "earlier_session" if scope else "this_session",
    )


def cases(name: str) -> list[Case]:
    found = []
    for block in (_HERE / name).read_text(encoding="utf-8").split("\n## ")[1:]:
        title, *lines = block.strip().splitlines()
        gone = next((line.removeprefix("gone ") for line in lines if line.startswith("gone ")), None)
        found.append(
            Case(
                title,
                tuple(line for line in lines if not line.startswith(("->", "gone "))),
                tuple(_due(line) for line in lines if line.startswith("->")),
                None if gone is None else tuple(one.strip() for one in gone.split(";")),
            )
        )
    return found


@pytest.fixture(scope="module")
def extractor() -> Extractor:
    return Extractor()


def _read(extractor: Extractor, cues: tuple[str, ...]) -> Record:
    return extractor.record(transcript_of(cues), trade=load_trade("general"))


@pytest.mark.parametrize("case", [pytest.param(case, id=case.title) for case in cases("taken_back.txt")])
def test_what_is_taken_back_and_what_holds_instead(case: Case, extractor: Extractor) -> None:
    record = _read(extractor, case.cues)
    assert [_shown(one, due) for one, due in zip(record.corrections, case.due, strict=False)] == list(case.due)
    assert len(record.corrections) == len(case.due)
    if case.gone is not None:
        assert [one.quote for one in record.measures if not one.stands] == list(case.gone)


def _shown(one: Correction, due: Due) -> Due:
    """A correction in the terms of what is due: the due words where it holds them."""
    withdrawn = due.withdrawn if due.withdrawn.lower() in one.withdraws.text.lower() else one.withdraws.text
    holds = due.holds if due.holds.lower() in one.replacement.lower() else one.replacement
    value = due.value if one.value is not None and one.value == pytest.approx(due.value) else one.value
    return Due(withdrawn, holds, value, one.unit, one.scope)


@pytest.mark.parametrize("case", [pytest.param(case, id=case.title) for case in cases("stands.txt")])
def test_look_alikes_take_nothing_back(case: Case, extractor: Extractor) -> None:
    record = _read(extractor, case.cues)
    assert [one.quote for one in record.corrections] == []
    assert all(one.stands for one in record.measures)


def test_most_of_what_is_taken_back_at_benches_nobody_wrote_rules_for_is_found(extractor: Extractor) -> None:
    due = cases("other_benches.txt")
    found = sum(bool(_read(extractor, case.cues).corrections) for case in due)
    assert found >= 0.75 * len(due)


def test_few_look_alikes_at_such_benches_are_taken_for_corrections(extractor: Extractor) -> None:
    due = cases("other_look_alikes.txt")
    mistaken = [case.title for case in due if _read(extractor, case.cues).corrections]
    assert len(mistaken) <= 0.1 * len(due), mistaken


def test_most_of_what_is_taken_back_in_plain_speech_is_found_with_what_holds(extractor: Extractor) -> None:
    due = cases("plain_speech.txt")
    missed = [case.title for case in due if not _is_found(case, _read(extractor, case.cues))]
    assert len(missed) <= 0.15 * len(due), missed


def _is_found(case: Case, record: Record) -> bool:
    """The one correction due: its figure where it has one, else words of both sides."""
    (due,) = case.due
    if len(record.corrections) != 1:
        return False
    (one,) = record.corrections
    if due.value is not None:
        return one.unit == due.unit and one.value == pytest.approx(due.value)
    return _words(due.holds) <= _words(one.replacement) and bool(_words(due.withdrawn) & _words(one.withdraws.text))


def _words(text: str) -> set[str]:
    return set(re.findall(r"[a-z0-9']+", text.lower()))


def test_look_alikes_of_plain_speech_take_nothing_back(extractor: Extractor) -> None:
    due = cases("plain_look_alikes.txt")
    mistaken = [case.title for case in due if _read(extractor, case.cues).corrections]
    assert len(mistaken) <= 0.05 * len(due), mistaken
