"""An hour of talk, about 9,000 words, through the numbers and the quantities; and twice as much takes twice as long."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from extract.numbers import find_numbers
from extract.quantities import find_quantities
from tests.extract.marked import narration, read

_NARRATIONS = Path(__file__).parent.parent / "extract" / "quantities" / "narrations"
_LINES = tuple(line for path in sorted(_NARRATIONS.glob("*.txt")) for line in narration(path).lines)


@pytest.fixture(scope="module", params=[1, 2], ids=["one hour", "two hours"])
def doc(request: pytest.FixtureRequest) -> Any:
    words = sum(len(line.split()) for line in _LINES)
    return read(_LINES * round(9000 * request.param / words), "general")


def test_numbers(benchmark: Any, doc: Any) -> None:
    assert len(benchmark(find_numbers, doc)) == len(doc._.numbers)


def test_quantities(benchmark: Any, doc: Any) -> None:
    found = benchmark(find_quantities, doc, doc._.numbers, doc._.trade)
    assert len(found) == len(doc._.quantities) > 500
