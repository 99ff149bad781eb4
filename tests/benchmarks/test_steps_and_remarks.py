"""How long an hour of narration takes in the stages that read sentences, steps and remarks, the parser left out.

Run with `pytest tests/benchmarks/test_steps_and_remarks.py`.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture
from spacy.tokens import Doc

from extract.remarks import find_remarks
from extract.segments import sentence_starts
from extract.steps import find_steps
from extract.trade import load_trade
from tests.extract.narrations import transcript_of
from tests.extract.pipes import parsed

_AN_HOUR = 9_000
_FOLDER = Path(__file__).parents[1] / "extract" / "steps" / "narrations"


@pytest.fixture(scope="module")
def hour() -> Doc:
    """Our own narrations, one after the other, until there are as many words as an hour holds."""
    cues: list[str] = []
    texts = [path.read_text(encoding="utf-8").split("\n->\n")[0] for path in sorted(_FOLDER.glob("*.txt"))]
    while sum(len(cue.split()) for cue in cues) < _AN_HOUR:
        for text in texts:
            cues += [line.partition(" | ")[0] for line in text.splitlines() if line and not line.startswith("#")]
    return parsed(transcript_of(cues), load_trade("general"))


def test_sentences(benchmark: BenchmarkFixture, hour: Doc) -> None:
    assert benchmark(sentence_starts, hour)


def test_steps(benchmark: BenchmarkFixture, hour: Doc) -> None:
    assert benchmark(find_steps, hour, (), load_trade("general"))


def test_remarks(benchmark: BenchmarkFixture, hour: Doc) -> None:
    assert benchmark(find_remarks, hour, load_trade("general")).tools
