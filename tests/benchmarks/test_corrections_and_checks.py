"""An hour of talk, about 9,000 words, through the corrections and the checks."""

from __future__ import annotations

from typing import Any

import pytest

from extract.assemble import assemble
from extract.checks import run_checks
from extract.corrections import find_corrections
from extract.pipeline import Extractor
from extract.record import SessionFacts
from extract.trade import load_trade
from tests.extract.narrations import transcript_of

_TALK = [
    "The relief on this neck is 12 thou, and the action's 5/64 inch at the twelfth fret.",
    "Give it three, no, four sixteenths at the heel, and don't force it.",
    "Two foot, call it 600 millimeters, that's what the shelf wants.",
    "So I said 12 thou on the relief, it's 8 thou, my glasses were on my head.",
    "Wipe it down, flip it over, and have a look at the back while you're there.",
    "The strike side, no, the time side, is the one that broke, as I told you.",
]
_LINES = _TALK * 110


@pytest.fixture(scope="module")
def doc() -> Any:
    return Extractor().read(transcript_of(_LINES), load_trade("general"))


def test_corrections(benchmark: Any, doc: Any) -> None:
    found = benchmark(find_corrections, doc, doc._.measures, doc._.trade)
    assert found


def test_checks(benchmark: Any, doc: Any) -> None:
    record = assemble(doc, SessionFacts(title="hour", source="hour.vtt", duration=3600))
    benchmark(run_checks, record, doc._.trade)
