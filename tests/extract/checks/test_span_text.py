"""Spans in messages: the unit said where its figures can be read, another of its system where they can't."""

from __future__ import annotations

import pytest

from extract.checks.span_text import span_text
from tests.extract.checks.records import record_of


@pytest.mark.parametrize(
    ("said", "span", "text"),
    [
        ("3 ft", (0.01, 1.0, "millimeter"), "0.39 to 39 thou"),  # 0.01 mm is 0.394 thou: 25.4 mm/in, NIST SP 811 B.8
        ("2 mm", (1.6, 3.2, "millimeter"), "1.6 to 3.2 mm"),
        ("5/16 in", (0.02, 1.2, "millimeter"), "0.79 to 47 thou"),
        ("27 A", (0.00001, 20.0, "ampere"), "0.01 mA to 20 A"),
        ("465 Hz", (20_000.0, 3_000_000_000.0, "hertz"), "0.02 to 3000 MHz"),
        ("3.8 MΩ", (0.3, 20_000.0, "ohm"), "0.0003 to 20 kΩ"),
        ("90 °C", (0.0, 60.0, "degC"), "0 to 60 °C"),
    ],
)
def test_a_span_can_be_read_at_a_glance(said: str, span: tuple[float, float, str], text: str) -> None:
    measure = record_of((f"It's [{said} | {said}].",)).measures[0]
    assert span_text(*span, measure).replace("\N{NO-BREAK SPACE}", " ") == text
