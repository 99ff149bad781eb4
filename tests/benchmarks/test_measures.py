"""An hour of talk, about 9,000 words, through the measures."""

from __future__ import annotations

from typing import Any

import pytest

from extract.measures import find_measures
from extract.pipeline import Extractor
from extract.trade import load_trade
from tests.extract.narrations import transcript_of

_TALK = [
    "now before i touched it the action was eleven sixty fourths at the twelfth fret",
    "thin the top to two and a half millimeters at the edge and leave the middle alone",
    "the seat frame's twenty one inches wide at the front and it's eighteen at the back",
    "soak the brass parts for ten minutes and rinse them and dry them and put them by",
    "i get four thousandths of relief and i want twelve so back it off a quarter turn",
    "there that's a whole lot better than it was when she came through that door",
]
_LINES = _TALK * 100


@pytest.fixture(scope="module")
def doc() -> Any:
    return Extractor().read(transcript_of(_LINES), load_trade("strings"))


def test_measures(benchmark: Any, doc: Any) -> None:
    found = benchmark(find_measures, doc, doc._.quantities, doc._.trade)
    assert len(found) == len(doc._.quantities) > 500
