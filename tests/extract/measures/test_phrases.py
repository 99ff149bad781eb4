"""Phrases from the bench and what each figure in them measures, of what, where and when."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from extract.spans import Measured
from tests.extract.measures.reading import measures_of, quote

_FILES = sorted((Path(__file__).parent / "phrases").glob("*.toml"))
_PHRASES: list[Any] = [
    pytest.param(row, id=f"{path.stem}: {row['title']}")
    for path in _FILES
    for row in tomllib.loads(path.read_text(encoding="utf-8"))["phrase"]
]


def _found(measure: Measured, field: str, quotes: dict[str, str]) -> str:
    value = getattr(measure, field)
    return quotes.get(value, "") if field == "same_as" else value or ""


@pytest.mark.parametrize("row", _PHRASES)
def test_phrase(row: dict[str, Any]) -> None:
    doc, measures = measures_of(row["says"], row.get("trade", "general"))
    by_quote = {quote(doc, one): one for one in measures}
    quotes = {one.id: said for said, one in by_quote.items()}
    assert list(by_quote) == [figure["quote"] for figure in row["figures"]]
    for figure in row["figures"]:
        wanted = {field: value for field, value in figure.items() if field != "quote"}
        assert {field: _found(by_quote[figure["quote"]], field, quotes) for field in wanted} == wanted
