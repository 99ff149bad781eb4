"""Whether a record holds the measures that were said, by the time they were said."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from extract.record import Measure, Record
from extract.units import UnitError, to_unit
from tests.benchmarks.spoken_measures.figures import Figure
from tests.benchmarks.spoken_measures.sentences import Sentence

SLACK = 0.4
"""Seconds a word's time may stray over a sentence's ends."""


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence and where it stands in its recording."""

    sentence: Sentence
    start: float
    end: float
    word_starts: tuple[float, ...]
    """Empty where the voice doesn't tell."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a record has of one sentence."""

    right: bool
    """The measure is there with its value and unit."""
    extra: int
    """Measures in the sentence that nobody said."""
    withdrawn: bool
    """Of a correction: what was taken back is kept, at its second."""
    confidence: float | None
    """How sure the record is of the first measure it has there."""


def judge(said: Said, record: Record) -> Verdict:
    """Hold one sentence against a record of its recording."""
    sentence = said.sentence
    here = [one for one in record.measures if said.start - SLACK <= (one.start + one.end) / 2 <= said.end + SLACK]
    standing = [one for one in here if one.stands]
    hits = [one for one in standing if same(one, sentence.figure)]
    heard = (hits or standing or here)[:1]
    return Verdict(
        right=bool(hits) and (sentence.withdrawn is None or len(standing) == 1),
        extra=max(0, len(standing) - 1),
        withdrawn=sentence.withdrawn is not None and _kept(said, sentence.withdrawn, record),
        confidence=heard[0].heard.confidence if heard and heard[0].heard else None,
    )


def same(measure: Measure, figure: Figure) -> bool:
    """True where a measure of a record has a figure's value, ends and unit; 12 thou and 0.012 in are the same."""
    if measure.unit is None:
        return False
    pairs = [(measure.value, figure.value), (measure.low, figure.low), (measure.high, figure.high)]
    for found, wanted in pairs:
        if (found is None) != (wanted is None):
            return False
        if found is not None and wanted is not None and not _equal(found, measure.unit, wanted, figure.unit):
            return False
    return True


def _kept(said: Said, withdrawn: Figure, record: Record) -> bool:
    by_id = {one.id: one for one in record.measures}
    for one in record.corrections:
        if not said.start - SLACK <= one.start <= said.end + SLACK:
            continue
        measure = by_id.get(one.withdraws.measure or "")
        if measure is not None and same(measure, withdrawn):
            return said.start - SLACK <= measure.start <= said.end + SLACK
        digits = str(withdrawn.value.numerator)
        if withdrawn.said in one.withdraws.text.casefold() or digits in one.withdraws.text.split():
            return True
    return False


def _equal(value: float, unit: str, wanted: Fraction, wanted_unit: str) -> bool:
    try:
        other = to_unit(wanted, wanted_unit, unit)
    except UnitError:
        return False
    return abs(value - float(other)) <= 1e-6 * max(1.0, abs(float(other)))
