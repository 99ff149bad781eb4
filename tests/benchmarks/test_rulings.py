"""An hour of talk, ruled on from end to end: what each further ruling costs the person who waits for it."""

from __future__ import annotations

from itertools import count
from pathlib import Path
from typing import Any

import pytest

from extract.pipeline import Extractor
from extract.record import Record
from extract.rulings import Hand, Ruling, RulingLog, amend, apply, stet, strike
from extract.rulings.items import items_of
from tests.benchmarks.test_corrections_and_checks import _LINES
from tests.extract.narrations import transcript_of

_RULINGS = 500


@pytest.fixture(scope="module")
def record() -> Record:
    return Extractor().record(transcript_of(_LINES))


@pytest.fixture(scope="module")
def rulings(record: Record) -> list[Ruling]:
    """A ruling on each of 500 items, and one figure in ten amended."""
    proofed = apply(record, ())
    given: list[Ruling] = []
    for number, item in enumerate(list(items_of(record).values())[:_RULINGS]):
        hand = Hand("Ada", ruling_id=f"ruling-{number:06d}")
        if item.kind == "measure" and number % 10 == 0:
            given.append(amend(proofed, item.id, {"figure": "13 thou"}, hand, because="heard_wrong"))
        else:
            given.append((strike if number % 3 == 0 else stet)(proofed, item.id, hand))
    return given


def test_apply(benchmark: Any, record: Record, rulings: list[Ruling]) -> None:
    proofed = benchmark(apply, record, rulings)
    assert proofed.kept == len(rulings)


def test_apply_after_every_id_has_changed(benchmark: Any, record: Record, rulings: list[Ruling]) -> None:
    renamed = record.model_copy(
        update={"measures": tuple(one.model_copy(update={"id": f"{one.id}0"}) for one in record.measures)}
    )
    proofed = benchmark(apply, renamed, rulings)
    assert proofed.moved


def test_append(benchmark: Any, record: Record, rulings: list[Ruling], tmp_path: Path) -> None:
    log = RulingLog(tmp_path / "rulings.json")
    for one in rulings:
        log.append(one)
    proofed, number = apply(record, ()), count()
    item = next(iter(items_of(record)))

    def give() -> Ruling:
        return log.append(stet(proofed, item, Hand("Ada", ruling_id=f"further-{next(number):06d}")))

    benchmark(give)
